"""A recording without a pattern becomes a draft: what is heard clearly is read, the rest is left blank.

Nothing is guessed from words half heard: a step is read where everything that belongs to it was heard, or
follows from what else was said of it. The others are left to the teacher, beside their times.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from pegwright.finding import Finding, Location, finding, phrase
from pegwright.listening.captions import Cue
from pegwright.listening.draft_moves import MadeStep, MoveMaker
from pegwright.listening.draft_sayings import find_sayings
from pegwright.listening.draft_steps import join_steps
from pegwright.listening.draft_words import DraftWord, draft_words, signs_of
from pegwright.pattern import (
    VERSION,
    Colour,
    Layout,
    Move,
    Pattern,
    PatternStep,
    Repeat,
    Round,
    Rows,
    named_pegs,
    parse_address,
)
from pegwright.reading import Answers, Blank, Colours, Lexicon, SentenceReading, TextReading, loom_answered

PAUSE_S = 1.2
"""A silence of so long ends a sentence that has no full stop (no source)."""
_NO_STEP = frozenset(("look", "back", "shown"))


class DraftLine(NamedTuple):
    """A sentence of a recording: when it begins in s, its words, and whether it was read as a step."""

    start_s: float
    text: str
    is_read: bool


class RecordingDraft(NamedTuple):
    """What a recording without a pattern comes to: its sentences, and the reading of the clear ones."""

    lines: tuple[DraftLine, ...]
    reading: TextReading


def draft_recording(
    cues: Sequence[Cue], language: str, loom: Layout | None = None, answers: Answers | None = None
) -> RecordingDraft:
    """Return the draft of a recording. The loom is asked for, unless `loom` or one of the `answers` gives it.

    Raises:
        ValueError: there are no words for the language.
    """
    words = draft_words(cues, language)
    sayings = find_sayings(words, _corrections(words, language))
    steps, palette = join_steps(sayings, words, language)
    lexicon = Lexicon(language)
    colours = Colours(lexicon.colours)
    made = MoveMaker(steps, palette, lambda head: colours.letter(palette.name(head))).make()
    sentences = _join_sentences(cues)
    starts = [start for start, _ in sentences]
    uses = ["aside"] * len(sentences)
    steps_of: dict[int, list[PatternStep]] = {}
    for k, one in enumerate(made):
        at = [_sentence_at(starts, start_s) for start_s in (one.said.said_at or [one.said.start_s])]
        for place in at:
            if uses[place] != "steps":
                uses[place] = "steps" if one.moves else "unread"
        if one.moves:
            steps_of.setdefault(at[0], []).extend(_sentence_steps(made, k))
    items = _fold(made)
    there = tuple(
        SentenceReading(text, k + 1, uses[k], tuple(steps_of.get(k, ())))  # type: ignore[arg-type]
        for k, (_, text) in enumerate(sentences)
    )
    lines = tuple(DraftLine(start, text, uses[k] == "steps") for k, (start, text) in enumerate(sentences))
    found: list[Finding] = [
        finding("sentence-unread", Location(line=k + 1, column=1), sentence=text[:120])
        for k, (_, text) in enumerate(sentences)
        if uses[k] == "unread"
    ]
    if not items:
        found.append(finding("no-steps-read", Location(line=1, column=1)))
        return RecordingDraft(lines, TextReading(None, there, (), tuple(found), language))
    blanks: tuple[Blank, ...] = ()
    loom = loom or loom_answered(answers or {})
    if loom is None:
        loom, blank = _likely_loom([move for one in made for move in one.moves])
        blanks = (blank,)
        found.append(finding("words-leave-open", Location(line=1, column=1), question=blank.question))
    names = {letter: name for name, letter in colours.names.items()}
    used = dict.fromkeys(move.colour for one in made for move in one.moves if hasattr(move, "colour"))
    pattern = Pattern(
        pegwright=VERSION,
        title="?",
        loom=loom,
        colours=tuple(Colour(letter=one, name=names[one], hex=lexicon.tint(names[one])) for one in used),
        steps=items,
        language=language,
    )
    return RecordingDraft(lines, TextReading(pattern, there, blanks, tuple(found), language))


def _corrections(words: Sequence[DraftWord], language: str) -> frozenset[int]:
    """Return the words with which something is taken back."""
    text, at = "", []
    for k, word in enumerate(words):
        at += [k] * (len(word.text) + 1)
        text += word.text + " "
    found = set()
    for one in signs_of(language).vocabulary.phrases["correction"]:
        for match in re.finditer(rf"(?<!\w){re.escape(one)}(?!\w)", text):
            found.add(at[match.start()])
    return frozenset(found)


def _sentence_at(starts: Sequence[float], start_s: float) -> int:
    return max((k for k, start in enumerate(starts) if start <= start_s + 0.01), default=0)


def _sentence_steps(made: Sequence[MadeStep], k: int) -> tuple[PatternStep, ...]:
    """Return what a step adds: its moves, or the repeat whose first round stood in those before."""
    one = made[k]
    if not one.block:
        return one.moves
    block = tuple(move for before in made[k - one.block : k] for move in before.moves)
    return _repeat(one, block, len(block))


def _repeat(one: MadeStep, steps: Sequence[PatternStep], count: int) -> tuple[PatternStep, ...]:
    """Return steps repeated as far as pegs can be counted on; the rounds that close a ring stand alone."""
    rounds = one.times - one.wrapped
    repeat = Repeat(times=rounds, steps=tuple(steps), rows=one.rows, pegs=one.pegs)
    return (repeat, *one.moves[len(one.moves) - one.wrapped * count :])


def _fold(made: Sequence[MadeStep]) -> tuple[PatternStep, ...]:
    """Return the steps of the pattern; what is done again stands in a repeat with its first round."""
    items: list[tuple[int, PatternStep]] = []
    for k, one in enumerate(made):
        if not one.block:
            items += [(k, move) for move in one.moves]
            continue
        first = k - one.block
        inside = [item for at, item in items if at >= first]
        whole = [move for before in made[first:k] for move in before.moves]
        if _count(inside) == len(whole):
            items = [item for item in items if item[0] < first]
            items += [(first, step) for step in _repeat(one, inside, len(whole))]
        else:
            items += [(k, move) for move in one.moves]
    return tuple(item for _, item in items)


def _count(items: Sequence[PatternStep]) -> int:
    return sum(int(item.times) * _count(item.steps) if isinstance(item, Repeat) else 1 for item in items)


def _likely_loom(moves: Sequence[Move]) -> tuple[Layout, Blank]:
    """Return a loom that has all pegs of the moves, and the question for it."""
    addresses = [parse_address(name) for move in moves for name in named_pegs(move)]
    rows = max((one.row for one in addresses), default=0) + 1
    pegs = max((one.number for one in addresses), default=13)
    loom: Layout = Rows(rows=min(rows, 700), pegs=min(max(pegs, 2), 10_000))
    ring = [named_pegs(move) for move in moves if f"A{pegs}" in named_pegs(move)]
    if rows == 1 and pegs > 2 and any(names == (f"A{pegs}", "A1") for names in ring):
        loom = Round(pegs=pegs, diameter_mm=round(16 * pegs / 3.14159, 1))
    question = phrase("ask-loom", rows=rows, pegs=pegs)
    return loom, Blank("loom", question, 1, (f"{rows} x {pegs}",), (-1,))


def _join_sentences(cues: Sequence[Cue]) -> list[tuple[float, str]]:
    """Return sentences with the times at which they begin: up to a full stop or a silence."""
    found: list[tuple[float, str]] = []
    open_sentence = False
    end_s = 0.0
    for cue in cues:
        if cue.text.startswith(("[", "(", "♪")):
            open_sentence = False
            continue
        rest = cue.text
        while rest:
            stop = min((rest.find(sign) + 1 for sign in (". ", "! ", "? ") if sign in rest), default=0)
            part, rest = (rest[:stop], rest[stop:].strip()) if stop else (rest, "")
            at = 1 - (len(part) + len(rest)) / max(1, len(cue.text))
            start = cue.start_s + at * (cue.end_s - cue.start_s)
            if open_sentence and start - end_s < PAUSE_S:
                found[-1] = (found[-1][0], f"{found[-1][1]} {part}")
            else:
                found.append((start, part))
            open_sentence = part[-1] not in ".!?"
        end_s = cue.end_s
    return found
