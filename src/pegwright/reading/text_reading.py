"""The result of reading a text: the pattern, the reading of every sentence, and the blanks."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal, NamedTuple

from pegwright.finding import Finding, Phrase
from pegwright.pattern import Pattern, PatternStep, Repeat, Use

SentenceUse = Literal["head", "steps", "aside", "unread"]
"""What a sentence was taken for: about the piece, steps, nothing that is made, or not understood."""


class SentenceReading(NamedTuple):
    """A sentence with its line (from 1), what it was taken for, and its steps.

    `likelihood` (0 to 1) is that of the chosen reading among all readings of the sentence.
    """

    text: str
    line: int
    use: SentenceUse
    steps: tuple[PatternStep, ...] = ()
    likelihood: float = 1.0


class Blank(NamedTuple):
    """What the words leave out: a question in a maker's words, its line, and the likely answers.

    An answer is given for its `key` and each of its `sentences` (from 0; −1 where it is about the piece).
    Of the choices the first is the likeliest; until there is an answer, the pattern takes it.
    """

    key: str
    question: Phrase
    line: int
    choices: tuple[str, ...] = ()
    sentences: tuple[int, ...] = ()


Answers = Mapping[tuple[str, int], str]
"""What a maker answers: for a key and a sentence an answer, like one of the choices."""


class TextReading(NamedTuple):
    """The pattern as far as the words go, or None; every sentence with its reading; the blanks."""

    pattern: Pattern | None
    sentences: tuple[SentenceReading, ...] = ()
    blanks: tuple[Blank, ...] = ()
    findings: tuple[Finding, ...] = ()
    language: str = "en"


def count_new_moves(step: PatternStep) -> int:
    """Return how many moves a step of a sentence adds; the first round of a repeat stood in those before."""
    if isinstance(step, Repeat):
        return (_times(step) - 1) * sum(map(_count_all_moves, step.steps))
    return 0 if isinstance(step, Use) else 1


def _count_all_moves(step: PatternStep) -> int:
    if isinstance(step, Repeat):
        return _times(step) * sum(map(_count_all_moves, step.steps))
    return 0 if isinstance(step, Use) else 1


def _times(repeat: Repeat) -> int:
    return repeat.times if isinstance(repeat.times, int) else 1
