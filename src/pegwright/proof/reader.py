"""Reads products of a structure's words: which bands have loops there, and what each passes through."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from pegwright.proof.word_reduction import ReducedWords

List = tuple[int, ...]  # signed factors: a product


class Passage(NamedTuple):
    """What a band passes through between its loops of a product, and what it passed outside of that."""

    product: List
    outer: tuple[int, ...]  # words common to all its loops: these must vanish


class Reader:
    """Reads products: which bands have loops in them, and what each passes through."""

    def __init__(self, words: ReducedWords) -> None:
        self.s = words
        self.band_of: list[int] = []
        self.trail_of: list[int] = []
        self.word_bands: list[frozenset[int]] = []
        self.turn_to(words)
        self.between: dict[tuple[int, int], Passage] = {}
        self.by_band: dict[List, dict[int, List]] = {}
        self.turns: dict[List, tuple[int, ...]] = {}
        self.ways: dict[tuple[List, tuple[int, int]], list[tuple[tuple[int, ...], Passage]]] = {}

    def turn_to(self, words: ReducedWords) -> None:
        """Go on with other roots over the same tables, which may have grown since."""
        self.s = words
        more = words.cores[len(self.band_of) :]
        self.band_of += [words.letters[letter][0] for letter, _ in more]
        self.trail_of += [trail for _, trail in more]
        self.word_bands += [frozenset(self.bands(word)) for word in words.words[len(self.word_bands) :]]

    def bands(self, product: List) -> set[int]:
        """Return the bands with loops in the product."""
        return {self.band_of[f >> 1] for f in product}

    def loops(self, product: List) -> dict[int, List]:
        """Return the product's factors by band."""
        known = self.by_band.get(product)
        if known is None:
            by_band: dict[int, list[int]] = {}
            for f in product:
                by_band.setdefault(self.band_of[f >> 1], []).append(f)
            known = self.by_band[product] = {band: tuple(found) for band, found in by_band.items()}
        return known

    def turning_bands(self, product: List) -> tuple[int, ...]:
        """Return the bands that the product turns round a number of times other than 0."""
        known = self.turns.get(product)
        if known is None:
            found = self.loops(product).items()
            known = self.turns[product] = tuple(band for band, factors in found if exponent(factors))
        return known

    def bands_of(self, words: Iterable[int]) -> frozenset[int]:
        """Return the bands with loops in any of the words."""
        return frozenset().union(*(self.word_bands[word] for word in words))

    def trail_bands(self, factors: List) -> frozenset[int]:
        """Return the bands with loops in any word that one of the factors' loops went through."""
        return self.bands_of(word for f in factors for word in self.words(self.trail_of[f >> 1]))

    def words(self, trail: int) -> list[int]:
        """Return the words of a trail, outermost first."""
        found = []
        while trail:
            word, trail = self.s.trails[trail]
            found.append(word)
        return found

    def passage(self, factors: List) -> Passage | None:
        """Return what a band passes through, given its factors in a product; None where nothing is sure."""
        found = self.places(factors)
        if found is None:
            return None
        passage, places = found
        runs = blocks(factors, places)
        while len(runs) > 1 and runs[0][0] == runs[-1][0]:
            runs[0][1] += runs.pop()[1]
            if not runs[0][1]:
                runs.pop(0)
        return passage if len(runs) > 1 else None

    def places(self, factors: List) -> tuple[Passage, list[bool]] | None:
        """Return what a band passes through, and which of its factors are beyond it; None where unsure."""
        first = factors[0] >> 1
        product: List = ()
        outer: set[int] = set()
        places = []
        for f in factors:
            if f >> 1 == first:
                places.append(False)
                continue
            found = self._between(first, f >> 1)
            outer.update(found.outer)
            if found.product and product and found.product != product:
                return None
            product = product or found.product
            places.append(bool(found.product))
        return (Passage(product, tuple(sorted(outer))), places) if product else None

    def _between(self, first: int, other: int) -> Passage:
        known = self.between.get((first, other))
        if known is None:
            known = self.between[first, other] = self._find_between(first, other)
        return known

    def _find_between(self, first: int, other: int) -> Passage:
        trails = self.s.trails
        one, two = self.trail_of[first], self.trail_of[other]
        outer = []
        while one and two and trails[one][0] == trails[two][0]:
            outer.append(trails[one][0])
            one, two = trails[one][1], trails[two][1]
        product: list[int] = []
        back = [f for word in self.words(one) for f in self.s.words[word]]
        there = [f for word in self.words(two) for f in self.s.words[word]]
        for f in [f ^ 1 for f in reversed(back)] + there:
            if product and product[-1] == f ^ 1:
                product.pop()
            else:
                product.append(f)
        return Passage(tuple(product), tuple(outer))


def exponent(factors: List) -> int:
    """Return the sum of the signs of the factors."""
    return sum(-1 if f & 1 else 1 for f in factors)


def blocks(factors: List, places: list[bool]) -> list[list[int]]:
    """Return Π v^e x^±1 v^−e (e = places), freely reduced, as runs of [place, power of x]."""
    runs: list[list[int]] = []
    for f, place in zip(factors, places, strict=True):
        if not runs or runs[-1][0] != place:
            runs.append([place, 0])
        runs[-1][1] += -1 if f & 1 else 1
        if not runs[-1][1]:
            runs.pop()
    return runs
