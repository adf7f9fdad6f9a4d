"""What reading a text gives: the pattern, what was made of every sentence, and what the words do not say."""

from __future__ import annotations

from typing import Literal, NamedTuple

from pegwright.finding import Finding, Phrase
from pegwright.pattern import Pattern, PatternStep

Use = Literal["head", "steps", "aside", "unread"]
"""What a sentence was taken for: about the piece, steps, nothing that is made, or not understood."""


class SentenceReading(NamedTuple):
    """A sentence with its line (from 1), what it was taken for, and the steps it came to.

    `likelihood` is from 0 to 1, of the reading that was chosen among those the sentence has.
    """

    text: str
    line: int
    use: Use
    steps: tuple[PatternStep, ...] = ()
    likelihood: float = 1.0


class Blank(NamedTuple):
    """What the words do not say: a question in a maker's words, the line it is about, the likely answers.

    `key` names it where it is answered; of the choices the first is the likeliest.
    """

    key: str
    question: Phrase
    line: int
    choices: tuple[str, ...] = ()


class TextReading(NamedTuple):
    """The pattern as far as the words say it, or None; every sentence with its reading; the blanks."""

    pattern: Pattern | None
    sentences: tuple[SentenceReading, ...] = ()
    blanks: tuple[Blank, ...] = ()
    findings: tuple[Finding, ...] = ()
    language: str = "en"
