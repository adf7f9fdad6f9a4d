"""Rounds that are printed only as a count, “do steps 3 to 6 again, 5 more times”, read back."""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

import msgspec

from pegwright.lesson import Shift
from pegwright.pattern import (
    Layout,
    Move,
    Peg,
    Round,
    is_address,
    named_pegs,
    parse_address,
    peg_name,
    pegs,
    with_holders,
)
from pegwright.reading.phrase_reader import PhraseReader, Said, UnreadableError

ROUNDS = ("step-again", "step-again-same", "step-again-counted")
LONGEST_ENTRY = 300
"""Characters of an entry in the list of rounds that are looked at."""
_LETTER = re.compile(r"[A-Za-z][A-Za-z0-9]{0,5}")
_LETTERS = re.compile(rf"{_LETTER.pattern}(?:, {_LETTER.pattern})*|")
_PEG = re.compile(r"\b[A-Z]{1,2}[1-9][0-9]{0,4}\b")


class TaughtMove(NamedTuple):
    """A move with the number of the printed step that teaches it."""

    move: Move
    step: int


class RoundReader:
    """Writes out the rounds on a known loom."""

    def __init__(self, words: PhraseReader, loom: Layout, colours: dict[str, str]) -> None:
        self.words = words
        self.colours = colours
        """Letter to name; a colour that first occurs in a list of rounds is added."""
        self.heard: dict[str, str] = {}
        self.ring = loom.pegs if isinstance(loom, Round) else 0
        self.there: dict[str, Peg] = {peg.at: peg for peg in pegs(loom)}

    def steps(self, said: Said) -> tuple[int, int]:
        """Return the first and last of the steps to repeat.

        Raises:
            UnreadableError: they cannot be read.
        """
        return self._span(said.text("steps"))

    def _span(self, text: str) -> tuple[int, int]:
        span = self.words.whole(text.strip(), ("steps-two", "steps-many", "steps-one"))
        if span is None:
            raise UnreadableError(text)
        first = span.number("first", 0)
        return first, span.number("last", first)

    def rounds(
        self, said: Said, rest: str, model: Sequence[TaughtMove]
    ) -> tuple[list[list[TaughtMove]], Shift | None]:
        """Return the rounds after the first, and the shift if all share one and no colour changes, else None.

        Raises:
            UnreadableError: a place or a colour cannot be read, or there is no such peg.
        """
        times = said.number("times")
        ticks = self._ticks(rest)
        changes = any(self.words.all(rest, "detail-colours"))
        shifts = self._shifts(said, ticks, model, times)
        made = []
        plain = True
        moved = list(model)
        for number, shift in enumerate(shifts, start=2):
            moved = [one._replace(move=self._shift_move(one.move, shift)) for one in moved]
            coloured = self._recolour(moved, ticks.get(number, ""), changes)
            plain = plain and coloured == moved
            made.append(coloured)
        first = shifts[0]
        wraps = any(not self._stays_plain(one.move, shifts) for one in model)
        return made, first if plain and set(shifts) == {first} and not wraps else None

    def _stays_plain(self, move: Move, shifts: Sequence[Shift]) -> bool:
        """Return whether no address of a move passes the end of the ring under these shifts."""
        on = sum(shift.pegs for shift in shifts)
        return not self.ring or all(
            1 <= parse_address(peg).number + on <= self.ring for peg in named_pegs(move)
        )

    def _ticks(self, rest: str) -> dict[int, str]:
        """Return the list's entry for each round, by number."""
        heads = [head for head in self.words.all(rest, "tick-round") if rest[head.end : head.end + 1] == ":"]
        begins = [*(head.start for head in heads), len(rest)]
        return {
            head.number("n"): re.split(r"\.(?:\s|$)", rest[head.end + 1 : stop])[0].strip(" :,;")
            for head, stop in zip(heads, begins[1:], strict=True)
        }

    def _shifts(
        self, said: Said, ticks: dict[int, str], model: Sequence[TaughtMove], times: int
    ) -> list[Shift]:
        if said.name == "step-again-same":
            return [Shift(0, 0)] * times
        start = next((peg for one in model for peg in named_pegs(one.move)), None)
        if start is None:
            return [Shift(0, 0)] * times
        told = [_PEG.search(ticks.get(number, "")) for number in range(2, times + 2)]
        if all(told):
            way = [start, *(one[0] for one in told if one)]
            return [self._between(a, b) for a, b in itertools.pairwise(way)]
        end = next(iter(_PEG.findall(said.facts.get("end", ""))), None)
        last = next((peg for one in reversed(model) for peg in reversed(named_pegs(one.move))), None)
        if end is None or last is None:
            raise UnreadableError(said.facts)
        whole = Shift(*(b - a for a, b in zip(parse_address(last), parse_address(end), strict=True)))
        for name in ("shift-pegs", "shift-rows", "shift-round"):
            shift = self.words.whole(said.facts.get("shift", ""), (name,))
            if shift is not None:
                size = shift.number("n")
                along = (
                    [Shift(0, size), Shift(0, -size)]
                    if name != "shift-rows"
                    else [Shift(size, 0), Shift(-size, 0)]
                )
                for one in along:
                    off = whole.pegs - one.pegs * times, whole.rows - one.rows * times
                    if off[1] == 0 and (off[0] % self.ring if self.ring else off[0]) == 0:
                        return [one] * times
        if whole.rows % times or whole.pegs % times:
            raise UnreadableError(said.facts)
        return [Shift(whole.rows // times, whole.pegs // times)] * times

    def _between(self, a: str, b: str) -> Shift:
        one, other = parse_address(a), parse_address(b)
        on = other.number - one.number
        if self.ring:
            on = (on + self.ring // 2) % self.ring - self.ring // 2
        return Shift(other.row - one.row, on)

    def _shift_move(self, move: Move, shift: Shift) -> Move:
        def shift_holder(holder: str) -> str:
            if not is_address(holder):
                return holder
            row, number = parse_address(holder)
            number += shift.pegs
            if self.ring:
                number = (number - 1) % self.ring + 1
            there = peg_name(row + shift.rows, number)
            if there is None:
                raise UnreadableError(holder)
            return there

        return with_holders(move, shift_holder)

    def _recolour(self, moved: list[TaughtMove], tick: str, changes: bool) -> list[TaughtMove]:
        """Return a round with its bands in the colours that its entry in the list names.

        Raises:
            UnreadableError: the text says that colours change, and the entry does not say to which.
        """
        coloured = [at for at, one in enumerate(moved) if hasattr(one.move, "colour")]
        if not coloured:
            return moved
        for part in _parts_of(tick):
            told = self._colours(part, moved, coloured)
            if told is not None:
                made = list(moved)
                for at, letter in told.items():
                    self.colours.setdefault(letter, self.heard.get(letter, ""))
                    made[at] = made[at]._replace(move=msgspec.structs.replace(made[at].move, colour=letter))
                return made
        if changes:
            raise UnreadableError(tick)
        return moved

    def _colours(self, part: str, moved: list[TaughtMove], coloured: list[int]) -> dict[int, str] | None:
        if order := self.words.whole(part, ("tick-order",)):
            said = order.text("letters")
            for letters in (_LETTER.findall(said), _LETTER.findall(_LETTERS.match(said)[0])):  # type: ignore[index]
                if len(letters) == len(moved):
                    return {at: letters[at] for at in coloured}
                if len(letters) == len(coloured):
                    return dict(zip(coloured, letters, strict=True))
            return None
        if every := self.words.whole(part, ("tick-all",)):
            letter = self._letter(every.text("colour"))
            return dict.fromkeys(coloured, letter) if letter else None
        if some := self.words.whole(part, ("tick-steps",)):
            letter = self._letter(some.text("colour"))
            steps = self._numbers(some.text("steps"))
            if letter and steps:
                return {at: letter for at in coloured if moved[at].step in steps}
        letter = self._letter(part)
        return dict.fromkeys(coloured, letter) if letter and len(moved) == 1 else None

    def _letter(self, text: str) -> str:
        """Return the letter of a colour in the list, and remember its name; empty where it is none."""
        said = self.words.whole(text, ("tick-colour",))
        letter = said.text("letter") if said else text
        if not _LETTER.fullmatch(letter) or (said is None and is_address(letter)):
            return ""
        if said is not None:
            self.heard[letter] = said.text("colour")
        return letter

    def _numbers(self, text: str) -> set[int]:
        """Return every step that a text names, with spans written out."""
        found: set[int] = set()
        for name in ("steps-many", "steps-two", "steps-one"):
            for one in self.words.all(text, name):
                first = one.number("first", 0)
                last = one.number("last", first)
                found |= set(range(first, last + 1)) if name == "steps-many" else {first, last}
        return found


def _parts_of(tick: str) -> Iterator[str]:
    """Yield where the colours of an entry may stand: from each word on, to a bracket or to the end.

    On the page the labels of the next picture may follow.
    """
    starts = [at for at in range(min(len(tick), LONGEST_ENTRY)) if at == 0 or tick[at - 1] == " "]
    for start in starts:
        bracket = tick.find(")", start, start + LONGEST_ENTRY)
        if bracket >= 0:
            yield tick[start : bracket + 1]
        yield tick[start:]
