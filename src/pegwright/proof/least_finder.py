"""Least words of many structures that share their tables: what they have in common is written once."""

from __future__ import annotations

from collections.abc import Set

from pegwright.proof.fastener_words import FastenerWords
from pegwright.proof.least import Least, make_least
from pegwright.proof.ropes import Node, Ropes
from pegwright.proof.word_reduction import ReducedWords

__all__ = ["LeastFinder"]

_MOST_NODES = 400_000


class LeastFinder:
    """Finds which bands occur in the least words, of one structure after another, without certificates.

    The flows of the first serve for the next: after a slip most of the graph is as it was. With `apart`, each
    loop of a band that carries a twist of its own has its own letter.
    """

    def __init__(self, *, apart: bool = False) -> None:
        self._apart = apart
        self._first: Least | None = None
        self._known: dict[tuple[Node, ...], frozenset[int] | None] = {}
        self._begin()

    def _begin(self) -> None:
        self._ropes = Ropes()
        self._writer = FastenerWords(self._ropes, apart=self._apart)
        self._tables: object = None
        self._known.clear()

    def find(self, words: ReducedWords, used: Set[int], most_visited: int) -> frozenset[int] | None:
        """Return the bands that occur in the least words; None where that is too much to work out.

        `used` are the bands in use, the others are ignored; `most_visited` is as in `make_least`.
        """
        if words.words is not self._tables or len(self._ropes.left) > _MOST_NODES:
            self._begin()
            self._tables = words.words
        ropes = self._ropes
        roots = tuple(ropes.ignore_bands(self._writer.write(words), used))
        if roots not in self._known:
            least = make_least(ropes, roots, most_visited, self._first)
            if least.flows is None:
                self._known[roots] = None
            else:
                self._first = self._first or least
                self._known[roots] = frozenset().union(*map(ropes.bands_in, least.words))
        return self._known[roots]
