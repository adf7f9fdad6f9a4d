"""Many parts of a piece judged at once: words as 2 × 2 matrices, the last axis of every array one per part.

A part leaves some bands out: their matrix is the identity. The other bands have random matrices of
determinant 1 over the field of 2³¹ − 1 elements, the same in every run, so that runs that share a word share
its value. A word whose value is not the identity is proved not trivial; one whose value is the identity may
still be something else, with a probability of about its length / 2³¹ (Schwartz 1980, Zippel 1979).
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from pegwright.rehearsal.shared_words import SharedWords

__all__ = ["PRIME", "BatchedWords"]

PRIME = (1 << 31) - 1
Matrices = npt.NDArray[np.int64]  # (2, 2, parts)
Flags = npt.NDArray[np.bool_]
_SIGNS = np.array([[[1], [-1]], [[-1], [1]]], np.int64)


class BatchedWords:
    """Values of words in many parts of a piece.

    First come the `parts`, each given by the bands it keeps; then, for each entry of `without`, the part that
    leaves those bands out and keeps every other, even a band that is not in the intended piece.
    """

    def __init__(
        self, words: SharedWords, parts: Sequence[frozenset[int]], without: Sequence[frozenset[int]] = ()
    ) -> None:
        self.words = words
        self.parts, self.without = tuple(parts), tuple(without)
        self.count = len(self.parts) + len(self.without)
        self.one = np.zeros((2, 2, self.count), np.int64)
        self.one[0, 0] = self.one[1, 1] = 1
        self.letters: dict[int, Matrices] = {}
        self.kept: dict[int, Flags] = {}
        self.cores: dict[int, Matrices] = {}
        self.products: dict[int, Matrices] = {}

    def forget(self, cores: int, words: int) -> None:
        """Drop the values of what was numbered after a given moment: few runs share it."""
        for table, limit in ((self.cores, cores), (self.products, words)):
            for number in reversed([*table]):
                if number < limit:
                    break
                del table[number]

    def holds_nothing(self, word: int) -> Flags:
        """Say for every part whether the word holds nothing by what runs through its loops.

        So it is where it is a conjugate of the power of one band that its exponents leave, or the
        identity. Where they leave several bands, it is taken to hold.
        """
        value = self.product(word)
        turns: Counter[int] = Counter()
        for factor in self.words.words[word]:
            turns[self.words.cores[factor >> 1][0].band] += -1 if factor & 1 else 1
        left = {band: n for band, n in turns.items() if n}
        many = sum((self.keeps(band).astype(np.int64) for band in left), np.zeros(self.count, np.int64))
        rest = self.one
        for band, n in left.items():
            rest = _times(rest, _power(self.letter(band), n))
        trace = (value[0, 0] + value[1, 1]) % PRIME == (rest[0, 0] + rest[1, 1]) % PRIME
        same = (value == self.one).all(axis=(0, 1))
        idle: Flags = np.where(many == 0, same, trace & (many == 1))
        return idle

    def keeps(self, band: int) -> Flags:
        """Say in which parts the band is kept."""
        known = self.kept.get(band)
        if known is None:
            flags = [band in part for part in self.parts] + [band not in out for out in self.without]
            known = self.kept[band] = np.array(flags, np.bool_)
        return known

    def letter(self, band: int) -> Matrices:
        """Return the band's matrix in every part."""
        known = self.letters.get(band)
        if known is None:
            rng = random.Random(band)
            a, b, c = (rng.randrange(1, PRIME) for _ in range(3))
            d = (1 + b * c) * pow(a, -1, PRIME) % PRIME
            matrix = np.array([[[a], [b]], [[c], [d]]], np.int64)
            known = self.letters[band] = np.where(self.keeps(band), matrix, self.one)
        return known

    def product(self, word: int) -> Matrices:
        """Return the word's value in every part."""
        known = self.products.get(word)
        if known is None:
            known = self.one
            for i, factor in enumerate(self.words.words[word]):
                value = self.core(factor >> 1)
                value = _inverse(value) if factor & 1 else value
                known = _times(known, value) if i else value % PRIME
            self.products[word] = known
        return known

    def core(self, core: int) -> Matrices:
        """Return the value of a core in every part: its loop conjugated by each word that it went through."""
        waiting = []
        while core not in self.cores:
            loop, trail = self.words.cores[core]
            if not trail:
                self.cores[core] = self.letter(loop.band)
                break
            waiting.append((core, self.words.trails[trail][0]))
            core = self.words.inner_core(core)
        value = self.cores[core]
        for outer, word in reversed(waiting):
            by = self.product(word)
            value = self.cores[outer] = _times(_times(by, value), _inverse(by))
        return value


def _times(a: Matrices, b: Matrices) -> Matrices:
    product: Matrices = (a[:, :1] * b[:1] + a[:, 1:] * b[1:]) % PRIME
    return product


def _inverse(a: Matrices) -> Matrices:
    """Return the inverse, its entries between −PRIME and PRIME: a factor of a product, not a value."""
    inverse: Matrices = a[::-1, ::-1].swapaxes(0, 1) * _SIGNS
    return inverse


def _power(a: Matrices, exponent: int) -> Matrices:
    base = _inverse(a) % PRIME if exponent < 0 else a
    value = base
    for _ in range(abs(exponent) - 1):
        value = _times(value, base)
    return value
