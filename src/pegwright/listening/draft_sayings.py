"""Cut a garbled recording into things said of a move, each known by its signs, and leave the rest.

The likeliest cut into stretches, by dynamic programming (a semi-Markov model, as in Sarawagi and Cohen 2004):
a stretch is worth the signs in it, each once, less what a stretch costs; a cut is dearer inside a sentence.
The weights have no source; they were chosen on the recordings that may be looked at.
"""

from __future__ import annotations

import tomllib
from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from pegwright.listening.draft_words import DraftWord

LONGEST = 26
"""Words that say one thing of a move, at most."""
COST, INSIDE, ACROSS = 2.6, 0.8, 1.6
"""What a stretch costs; a cut inside a sentence; a sentence's beginning inside a stretch."""


class Saying(NamedTuple):
    """Something said of a move: what kind of thing, its words, and what speaks for it."""

    kind: str
    words: tuple[DraftWord, ...]
    first: int
    gain: float
    lead: tuple[DraftWord, ...] = ()
    tail: tuple[DraftWord, ...] = ()
    """The words of its sentence before and after it that are in no other saying."""

    @property
    def start_s(self) -> float:
        """When it begins in s."""
        return self.words[0].start_s


class _Worth(NamedTuple):
    """What each sign, by its row, is worth for each kind, by its column; and the rows of pegs."""

    kinds: tuple[str, ...]
    row: dict[str, int]
    table: NDArray[np.float64]
    pegs: tuple[int, ...]


@lru_cache(maxsize=1)
def _worth() -> _Worth:
    weights = tomllib.loads((Path(__file__).parent / "said_of_moves.toml").read_text(encoding="utf-8"))
    kinds = tuple(weights)
    signs = sorted({sign for one in weights.values() for sign in one} | {"peg1", "peg2", "peg3"})
    row = {sign: k for k, sign in enumerate(signs)}
    table = np.zeros((len(signs), len(kinds)), np.float64)
    for k, kind in enumerate(kinds):
        for sign, weight in weights[kind].items():
            table[row[sign], k] = weight
    return _Worth(kinds, row, table, tuple(row[f"peg{k}"] for k in (1, 2, 3)))


def find_sayings(words: Sequence[DraftWord], corrections: frozenset[int]) -> list[Saying]:
    """Return what is said of moves in order; with the words `corrections` something is taken back."""
    worth = _worth()
    gains, which = _stretches(words, corrections, worth)
    starts = [COST + (0.0 if word.begins else INSIDE) for word in words]
    count = len(words)
    best = [0.0] * (count + 1)
    came: list[tuple[int, int, float]] = [(0, -1, 0.0)] * (count + 1)
    for end in range(1, count + 1):
        best[end], came[end] = best[end - 1], (end - 1, -1, 0.0)
        for length in range(1, min(LONGEST, end) + 1):
            first = end - length
            gain = float(gains[first, length]) - starts[first]
            if gain > 0 and best[first] + gain > best[end]:
                best[end], came[end] = best[first] + gain, (first, int(which[first, length]), gain)
    found = []
    end = count
    while end:
        first, kind, gain = came[end]
        if kind >= 0:
            found.append(Saying(worth.kinds[kind], tuple(words[first:end]), first, gain))
        end = first
    return found[::-1]


def _stretches(
    words: Sequence[DraftWord], corrections: frozenset[int], worth: _Worth
) -> tuple[NDArray[np.float64], NDArray[np.int16]]:
    """Return for each first word and length what a stretch is worth at most, and as what kind."""
    shown = [
        [(worth.row[sign], weight) for sign, weight in _signs(word, t in corrections) if sign in worth.row]
        for t, word in enumerate(words)
    ]
    count = len(words)
    gains = np.full((count + 1, LONGEST + 1), -np.inf)
    which = np.zeros((count + 1, LONGEST + 1), dtype=np.int16)
    for first in range(count):
        total = np.zeros(len(worth.kinds))
        had: dict[int, float] = {}
        named, crossed = 0, 0.0
        for length in range(1, min(LONGEST, count - first) + 1):
            word = words[first + length - 1]
            if length > 1 and word.begins:
                crossed += ACROSS
            for row, weight in shown[first + length - 1]:
                more = weight - had.get(row, 0.0)
                if more > 0:
                    had[row] = weight
                    total += worth.table[row] * more
            if word.peg is not None and named < len(worth.pegs):
                total += worth.table[worth.pegs[named]]
                named += 1
            k = int(total.argmax())
            gains[first, length] = total[k] - crossed
            which[first, length] = k
    return gains, which


def _signs(word: DraftWord, takes_back: bool) -> list[tuple[str, float]]:
    found = list(word.signs)
    if takes_back:
        found.append(("correction", 1.0))
    if word.peg is not None:
        return [one for one in found if one[0] == "correction"]
    if word.number is not None:
        found.append(("number", 1.0))
    values = (("colour", word.colour), ("way", word.way), ("lowest", word.loop))
    found += [(sign, 1.0) for sign, value in values if value is not None]
    if word.loop == "top":
        found.append(("top-loop", 1.0))
    return found
