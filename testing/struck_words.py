"""Strike one word of a maker's text and see whether the reading notices."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from pegwright.finding import Finding, Phrase
from pegwright.pattern import Move
from pegwright.reading import read_free
from testing.maker_text import MakerText, read_moves

_WORD = re.compile(r"[^\W_]+(?:[-’'][^\W_]+)*")


class Strike(NamedTuple):
    """A word struck out of a text, and what was read without it: the moves that are new, and those gone.

    `flagged` means that the reading has a finding that the whole text has not.
    """

    text: str
    word: str
    before: str
    after: str
    new: tuple[str, ...]
    gone: tuple[str, ...]
    flagged: bool

    @property
    def silent(self) -> bool:
        """Whether the pattern changed without a word about it."""
        return bool(self.new or self.gone) and not self.flagged


def strike_words(one: MakerText, every: int = 1, first: int = 0) -> Iterator[Strike]:
    """Yield a strike for every word of a text, or for each of `every` from the `first` on."""
    whole = read_free(one.text, one.language)
    meant = _plain(read_moves(whole))
    known = Counter(_says(found) for found in whole.findings)
    for word in list(_WORD.finditer(one.text))[first::every]:
        told = read_free(one.text[: word.start()] + one.text[word.end() :], one.language)
        read = _plain(read_moves(told))
        new, gone = list(read), list(meant)
        for move in meant:
            if move in new:
                new.remove(move)
        for move in read:
            if move in gone:
                gone.remove(move)
        yield Strike(
            one.name,
            word[0],
            one.text[max(0, word.start() - 60) : word.start()],
            one.text[word.end() : word.end() + 60],
            tuple(new),
            tuple(gone),
            bool(Counter(_says(found) for found in told.findings) - known),
        )


def _says(found: Finding) -> str:
    """Return what a finding is about; the words of a sentence may be fewer by the one that was struck."""
    question = found.facts.get("question")
    return (
        f"{found.code} {question.phrase} {found.place.line}" if isinstance(question, Phrase) else found.code
    )


def _plain(read: tuple[tuple[Move, ...], dict[str, str]]) -> tuple[str, ...]:
    """Return the moves as text, each colour by its name."""
    moves, names = read
    found = []
    for move in moves:
        letter = getattr(move, "colour", "")
        found.append(repr(move).replace(f"colour='{letter}'", f"colour={names.get(letter, letter)!r}"))
    return tuple(found)
