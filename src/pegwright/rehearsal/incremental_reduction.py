"""The words of all runs with every slip of a loop taken, in one set of tables: what runs share is done once.

The rules and the result are those of `proof.reduce_words`; there the tables are those of one structure, here
they grow with the runs, and so does the reader of their products.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from pegwright.proof import Numbering, Reader, ReducedWords
from pegwright.rehearsal.shared_words import SharedWords

__all__ = ["IncrementalReduction", "WordPasses"]

MOST_WORDS = 200_000
"""When more are known, all are forgotten: so long a piece shares little between slips far apart."""


class WordPasses(NamedTuple):
    """The words (numbers in `Words`) that something was put through, in order, and those of the fasteners."""

    through: tuple[int, ...]
    roots: tuple[int, ...]


class _ReducedNumbers(NamedTuple):
    """What the cores, trails and words have become, given the bands that are twisted."""

    cores: dict[int, int]
    trails: dict[int, int]
    words: dict[int, int]


class IncrementalReduction:
    """Reduces the words of one run after another."""

    def __init__(self, words: SharedWords) -> None:
        self.raw = words
        self._begin()

    def _begin(self) -> None:
        self.letters = Numbering[tuple[int, int]]()
        self.cores = Numbering[tuple[int, int]]()
        self.trails = Numbering((-1, -1))
        self.words = Numbering[tuple[int, ...]](())
        self.known: dict[frozenset[int], _ReducedNumbers] = {}
        self.reader = Reader(self._tables((), {}))

    def reduce(self, passes: WordPasses, twisted: frozenset[int]) -> tuple[ReducedWords, dict[int, int]]:
        """Return a run's words, and for every band the first pass that put something through it.

        `made` and the passes are numbered by their place among `passes.through`.
        """
        if len(self.words.all) > MOST_WORDS:
            self._begin()
        known = self.known.setdefault(twisted, _ReducedNumbers({}, {0: 0}, {}))
        made = {0: -1}
        first: dict[int, int] = {}
        for when, word in enumerate(passes.through):
            made.setdefault(self._word(word, known, twisted), when)
            for factor in self.raw.words[word]:
                first.setdefault(self.raw.cores[factor >> 1][0].band, when)
        roots = []
        for root in passes.roots:
            ends = list(self.words.all[self._word(root, known, twisted)])
            while len(ends) > 1 and ends[0] == ends[-1] ^ 1:
                del ends[0], ends[-1]
            roots.append(tuple(ends))
        return self._tables(tuple(roots), made), first

    def reader_of(self, words: ReducedWords) -> Reader:
        """Return the reader of all runs, set to these words."""
        self.reader.turn_to(words)
        return self.reader

    def _tables(self, roots: tuple[tuple[int, ...], ...], made: dict[int, int]) -> ReducedWords:
        return ReducedWords(
            self.letters.all, self.cores.all, self.trails.all, self.words.all, made, roots, ()
        )

    def _word(self, word: int, known: _ReducedNumbers, twisted: frozenset[int]) -> int:
        found = known.words.get(word)
        waiting = [word] if found is None else []
        while waiting:
            word = waiting[-1]
            inner = [deeper for deeper in self._inside(word, known) if deeper not in known.words]
            if inner:
                waiting += inner
                continue
            kept: list[int] = []
            for factor in self.raw.words[word]:
                new = 2 * self._core(factor >> 1, known, twisted) + (factor & 1)
                if kept and kept[-1] == new ^ 1:
                    kept.pop()
                else:
                    kept.append(new)
            found = known.words[word] = self.words.number(tuple(kept))
            waiting.pop()
        assert found is not None
        return found

    def _inside(self, word: int, known: _ReducedNumbers) -> Iterable[int]:
        """Return the words met along the trails of a word's loops, as far as these are not known."""
        for factor in self.raw.words[word]:
            if factor >> 1 not in known.cores:
                trail = self.raw.cores[factor >> 1][1]
                while trail not in known.trails:
                    yield self.raw.trails[trail][0]
                    trail = self.raw.trails[trail][1]

    def _core(self, core: int, known: _ReducedNumbers, twisted: frozenset[int]) -> int:
        new = known.cores.get(core)
        if new is None:
            loop, trail = self.raw.cores[core]
            letter = self.letters.number((loop.band, loop.index if loop.band in twisted else -1))
            new = known.cores[core] = self.cores.number((letter, self._trail(trail, known)))
        return new

    def _trail(self, trail: int, known: _ReducedNumbers) -> int:
        waiting = []
        while trail not in known.trails:
            waiting.append(trail)
            trail = self.raw.trails[trail][1]
        inner = known.trails[trail]
        for trail in reversed(waiting):
            word = known.words[self.raw.trails[trail][0]]
            inner = known.trails[trail] = self.trails.number((word, inner)) if word else inner
        return inner
