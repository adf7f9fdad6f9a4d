"""A grid of colours as a pattern: a mat worked row on row over one long row of pegs.

Every row lays a band from each peg to the next; then the loops of the row before are lifted over it, two on
each peg and one on the pegs at the two ends. A cord through all loops ends it. Colours in a run, and rows
that come again, are written as repeats, so that they are taught once.
"""

from __future__ import annotations

import math
import re
from collections.abc import Hashable, Sequence
from typing import NamedTuple, TypeVar

import msgspec

from pegwright.finding import LANGUAGES, Language, phrase, word_phrase
from pegwright.pattern import (
    VERSION,
    BandType,
    Colour,
    JoinedLooms,
    Knot,
    Layout,
    Lift,
    Motif,
    Pattern,
    PatternStep,
    Place,
    Repeat,
    Rows,
    Use,
    expand,
)
from pegwright.variants.band_colours import BandColour

__all__ = ["Run", "find_runs", "mat_pattern", "read_mat"]

PEGS = 13  # of the usual straight loom
_PITCH_MM = 16.0
_LIFT = "lift the row before"
T = TypeVar("T", bound=Hashable)


class Run(NamedTuple):
    """Part of a sequence: where it begins, how many things it has, and how often they come."""

    start: int
    length: int
    times: int


def find_runs(sequence: Sequence[T]) -> list[Run]:
    """Return a sequence as runs, one after the other: `length` things that come `times` times.

    From each place on it takes what saves most things, the shorter if equal.
    """
    runs: list[Run] = []
    at = 0
    while at < len(sequence):
        best = Run(at, 1, 1)
        for length in range(1, (len(sequence) - at) // 2 + 1):
            times = 1
            while sequence[at + times * length : at + (times + 1) * length] == sequence[at : at + length]:
                times += 1
            if (times - 1) * length > (best.times - 1) * best.length:
                best = Run(at, length, times)
        runs.append(best)
        at += best.length * best.times
    return runs


def mat_pattern(
    title: str,
    letters: Sequence[Sequence[str]],
    colours: Sequence[BandColour],
    *,
    pegs: int = PEGS,
    band: BandType | None = None,
    language: Language = "en",
) -> Pattern:
    """Return the pattern of a mat: `letters` has a letter for each band, the picture's top row first.

    `pegs` is how many pegs a row of the maker's looms has; as many looms as it takes are joined end to end.
    `band` is the kind of band, the usual one if None. Notes say which row is worked, in `language` and, as
    translations, in the others.
    """
    across = len(letters[0])
    kind = band or BandType()
    used = {letter for row in letters for letter in row}
    words = {each: _Words(each) for each in LANGUAGES}
    rows = [tuple(row) for row in letters]
    steps = [*_row_steps(rows[0], words[language].rows(1, 1))]
    for run in find_runs(rows[1:]):
        first = run.start + 2
        inner: list[PatternStep] = []
        for at in range(run.start, run.start + run.length):
            last = at + 2 + (run.times - 1) * run.length
            note = words[language].rows(at + 2, last if run.length == 1 else at + 2)
            inner += [*_row_steps(rows[at + 1], note), Use(name=_LIFT)]
        if run.times == 1:
            steps += inner
        else:
            again = words[language].rows(first, first + run.length * run.times - 1) if run.length > 1 else ""
            steps.append(Repeat(times=run.times, steps=tuple(inner), note=again))
    steps.append(
        Knot(at=tuple(f"A{peg}" for peg in range(1, across + 2)), note=words[language].text("mat-end"))
    )
    return Pattern(
        pegwright=VERSION,
        title=title,
        language=language,
        level="easy",
        notes=words[language].text("mat-about"),
        translations={
            other: _table(words[language], words[other]) for other in LANGUAGES if other != language
        },
        loom=_loom(across + 1, pegs),
        bands=(kind,),
        colours=tuple(
            Colour(letter=c.letter, name=c.name, hex=c.tint, band=kind.name)
            for c in colours
            if c.letter in used
        ),
        motifs=(_lift_motif(across),),
        steps=tuple(steps),
    )


def read_mat(pattern: Pattern) -> tuple[tuple[str, ...], ...] | None:
    """Return the letters of a mat as `mat_pattern` took them, read from its moves; None if it is no mat."""
    moves = [done.move for done in expand(pattern).moves]
    last = moves.pop() if moves else None
    if not isinstance(last, Knot) or len(last.at) < 3:
        return None
    across = len(last.at) - 1
    rows: list[tuple[str, ...]] = []
    while moves:
        laid, moves = moves[:across], moves[across:]
        places = [(_first_peg(move), move.colour) for move in laid if isinstance(move, Place)]
        if sorted(peg for peg, _ in places) != list(range(1, across + 1)):
            return None
        if rows:
            lifted, moves = moves[: across + 1], moves[across + 1 :]
            pegs = {move.at: move.together for move in lifted if isinstance(move, Lift)}
            if pegs != {f"A{k}": 1 if k in (1, across + 1) else 2 for k in range(1, across + 2)}:
                return None
        rows.append(tuple(letter for _, letter in sorted(places)))
    return tuple(rows) if len(rows) > 1 else None


def _first_peg(move: Place) -> int:
    """Return k of a band that is laid flat over the pegs Ak and Ak+1, else 0."""
    if len(move.over) != 2 or any(not re.fullmatch("A[0-9]+", peg) for peg in move.over) or any(move.twists):
        return 0
    low, high = sorted(int(peg[1:]) for peg in move.over)
    return low if high == low + 1 else 0


class _Words:
    """The texts of a mat in one language; what was said is kept, for the translations."""

    def __init__(self, language: Language) -> None:
        self.language = language
        self.said: dict[str, tuple[str, dict[str, int]]] = {}

    def text(self, name: str, **facts: int) -> str:
        said = word_phrase(phrase(name, **facts), self.language)
        text = f"{said[0].upper()}{said[1:]}."
        self.said[text] = (name, facts)
        return text

    def rows(self, first: int, last: int) -> str:
        return (
            self.text("mat-row", row=first)
            if first == last
            else self.text("mat-rows", first=first, last=last)
        )


def _table(own: _Words, other: _Words) -> dict[str, str]:
    return {text: other.text(name, **facts) for text, (name, facts) in own.said.items()}


def _row_steps(row: Sequence[str], note: str) -> list[PatternStep]:
    """Return the steps that lay one row, runs of colours as repeats; the first carries the note."""
    steps: list[PatternStep] = []
    for run in find_runs(row):
        inner = _lay_bands(row[run.start : run.start + run.length], run.start + 1)
        steps += [Repeat(times=run.times, steps=tuple(inner), pegs=run.length)] if run.times > 1 else inner
    return [msgspec.structs.replace(steps[0], note=note), *steps[1:]]


def _lay_bands(letters: Sequence[str], peg: int) -> list[PatternStep]:
    """Return the steps that lay bands from a peg on, equal ones as repeats."""
    steps: list[PatternStep] = []
    at = 0
    while at < len(letters):
        end = next((k for k in range(at, len(letters)) if letters[k] != letters[at]), len(letters))
        one = Place(colour=letters[at], over=(f"A{peg + at}", f"A{peg + at + 1}"))
        steps.append(Repeat(times=end - at, steps=(one,), pegs=1) if end - at > 1 else one)
        at = end
    return steps


def _lift_motif(across: int) -> Motif:
    inner = Lift(at="A2", together=2)
    middle: PatternStep = Repeat(times=across - 1, steps=(inner,), pegs=1) if across > 2 else inner
    return Motif(name=_LIFT, steps=(Lift(at="A1"), middle, Lift(at=f"A{across + 1}")))


def _loom(needed: int, pegs: int) -> Layout:
    one = Rows(rows=1, pegs=pegs, pitch_mm=_PITCH_MM)
    count = math.ceil(needed / pegs)
    return one if count == 1 else JoinedLooms(looms=(one,) * count, side="beyond", gap_mm=_PITCH_MM)
