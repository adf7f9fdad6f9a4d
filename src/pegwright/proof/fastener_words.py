"""The fasteners' words as ropes, written from the shared tables of `word_reduction.ReducedWords`."""

from __future__ import annotations

from collections.abc import Sequence

from pegwright.proof.ropes import EMPTY, Node, Ropes
from pegwright.proof.word_reduction import ReducedWords

__all__ = ["FastenerWords"]


class FastenerWords:
    """Writes products as ropes; all loops of a band have the same letter.

    With `apart`, each loop of a band that carries a twist of its own has its own.
    """

    def __init__(self, ropes: Ropes, *, apart: bool = False) -> None:
        self.ropes, self._apart = ropes, apart
        self._words: dict[int, Node] = {0: EMPTY}
        self._between: dict[tuple[int, int], Node] = {}

    def write(self, tables: ReducedWords) -> list[Node]:
        """Return the words of the fasteners."""
        needed: set[int] = set()
        waiting = [factor for root in tables.roots for factor in root]
        while waiting:
            trail = tables.cores[waiting.pop() >> 1][1]
            while trail:
                word, trail = tables.trails[trail]
                if word not in needed and word not in self._words:
                    needed.add(word)
                    waiting += tables.words[word]
        for word in sorted(needed):
            self._words[word] = self._product(tables, tables.words[word])
        return [self._product(tables, root) for root in tables.roots]

    def _product(self, tables: ReducedWords, factors: Sequence[int]) -> Node:
        ropes, out, here = self.ropes, EMPTY, 0
        for factor in factors:
            letter, trail = tables.cores[factor >> 1]
            if trail != here:
                out = ropes.product(out, self._way(tables, here, trail))
                here = trail
            band, loop = tables.letters[letter]
            out = ropes.product(out, ropes.letter(band, loop if self._apart else -1) ^ (factor & 1))
        return ropes.product(out, self._way(tables, here, 0)) if here else out

    def _way(self, tables: ReducedWords, one: int, other: int) -> Node:
        """Return (the words of one trail)⁻¹ · the words of the other, without the words common to both."""
        known = self._between.get((one, other))
        if known is None:
            here, there = one, other
            while here and there and tables.trails[here][0] == tables.trails[there][0]:
                here, there = tables.trails[here][1], tables.trails[there][1]
            known = self.ropes.product(self._along(tables, here) ^ 1, self._along(tables, there))
            self._between[one, other], self._between[other, one] = known, known ^ 1
        return known

    def _along(self, tables: ReducedWords, trail: int) -> Node:
        words = []
        while trail:
            word, trail = tables.trails[trail]
            words.append(self._words[word])
        out = EMPTY
        for word in reversed(words):
            out = self.ropes.product(word, out)
        return out
