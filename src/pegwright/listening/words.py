"""What is said and what is heard, cut into words that can be compared: A25 is a row letter and a number."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import NamedTuple

from pegwright.lesson import ScriptLine
from pegwright.listening.captions import Cue
from pegwright.reading import figures

_WORD = re.compile(r"[^\W\d_]+(?:[’'][^\W\d_]+)*|\d+")
_LETTER_IN_BRACKETS = re.compile(r"\((?:([^()]*), )?[A-Z]\)")
_LONGEST_NUMBER = 4
"""Words of the longest number that is looked for: one hundred and four."""


class SaidWord(NamedTuple):
    """A word of the script: its text, its line, and whether it stands in figures."""

    text: str
    line: int
    figure: bool = False


class HeardWord(NamedTuple):
    """A word of the captions: its text, when it begins and ends in s, its cue, and where it stands there."""

    text: str
    start_s: float
    end_s: float
    cue: int
    span: tuple[int, int]


def script_words(lines: Iterable[ScriptLine], language: str) -> list[SaidWord]:
    """Return the words of a script's lines; letters in brackets are for the eye and left out."""
    found = []
    for i, line in enumerate(lines):
        text = _LETTER_IN_BRACKETS.sub(lambda m: m[1] or "", line.text)
        for word, span in split_words(text, language):
            found.append(SaidWord(word, i, text[slice(*span)].isdecimal()))
    return found


def caption_words(cues: Sequence[Cue], language: str) -> list[HeardWord]:
    """Return the words of captions, each with its time: the letters of a cue are spread evenly over it."""
    found = []
    for n, cue in enumerate(cues):
        length = max(len(cue.text), 1)
        for word, (start, end) in split_words(cue.text, language):
            begin_s, end_s = (cue.start_s + (cue.end_s - cue.start_s) * at / length for at in (start, end))
            found.append(HeardWord(word, begin_s, end_s, n, (start, end)))
    return found


def split_words(text: str, language: str) -> list[tuple[str, tuple[int, int]]]:
    """Return the words of a text, in small letters and figures, each with its place in the text."""
    pieces = [(m[0].casefold(), m.span()) for m in _WORD.finditer(text)]
    found = []
    at = 0
    while at < len(pieces):
        length = next(
            (
                n
                for n in range(min(_LONGEST_NUMBER, len(pieces) - at), 1, -1)
                if _are_number_words(pieces[at : at + n], language)
            ),
            1,
        )
        said = " ".join(word for word, _ in pieces[at : at + length])
        span = (pieces[at][1][0], pieces[at + length - 1][1][1])
        found.append((_as_figures(said, language) if length > 1 else _one_word(said, language), span))
        at += length
    return found


def _are_number_words(pieces: Sequence[tuple[str, tuple[int, int]]], language: str) -> bool:
    words = [word for word, _ in pieces]
    if not all(word.isalpha() for word in words):
        return False
    if _one_word(words[0], language) == words[0] or _one_word(words[-1], language) == words[-1]:
        return False
    return _as_figures(" ".join(words), language).isdecimal()


def _one_word(word: str, language: str) -> str:
    if word.isdecimal():
        return str(int(word[:6]))
    value = _as_figures(word, language)
    return value if value.isdecimal() else word


@lru_cache(maxsize=20_000)
def _as_figures(words: str, language: str) -> str:
    return figures(words, language)
