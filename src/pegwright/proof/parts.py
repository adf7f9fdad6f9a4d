"""Held in a small part of the piece: a few bands whose word is short enough to be made as short as can be.

What is held in a part is held in the piece, so bands may be ignored at will. At a step of a path of carriers
the word is the step's product, and a band held there is held (see `carriers`); so short words reach any place
of a piece of any size.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence, Set

from pegwright.proof.carriers import Steps, plain, shifted
from pegwright.proof.reader import List, Reader
from pegwright.proof.shortest import Letters, shortened, support, written
from pegwright.proof.slips import Reduced
from pegwright.proof.values import Part, Slide

__all__ = ["MOST_IN_PART", "hold_by_parts"]

MOST_IN_PART = 10
"""A part has at most this many bands, so that a checker can try every set of them."""
_MOST_TRIED = 16  # bands of the neighbourhood that is thinned out to a part
_MOST_LETTERS = 400  # of a part's word
_PLACES = 12  # steps near a band at which a part is looked for
_FRUITLESS = 40  # bands for which nothing is found before the search is given up


def hold_by_parts(
    reader: Reader, left: Sequence[int], used: Set[int], steps: Steps
) -> tuple[dict[int, int], list[Part], Steps]:
    """Return which of the bands left are held by which part, the parts, and the steps they stand at.

    The steps returned begin with those given.
    """
    words = reader.s
    search = Search(words, left)
    if len(used) <= _MOST_TRIED:
        for band in left:
            if band not in search.held:
                search.find(band, words.roots, used, -1)
        return search.held, search.parts, steps
    near = Near(reader)
    fruitless = 0
    for band in left:
        if band not in search.held and fruitless < _FRUITLESS:
            places = near.places(band)
            found = any(search.find(band, [near.products[at]], pool, len(steps) + at) for at, pool in places)
            fruitless += not found
    return search.held, search.parts, (*steps, *shifted(near.steps, len(steps))) if search.parts else steps


class Search:
    """Parts found so far, and which of the bands left they hold."""

    def __init__(self, words: Reduced, left: Sequence[int]) -> None:
        self.words = words
        self.left = left
        self.held: dict[int, int] = {}
        self.parts: list[Part] = []

    def find(self, band: int, roots: Sequence[List], pool: Set[int], step: int) -> bool:
        """Look for a part within the pool that holds the band; note all that it holds."""
        letters = self.words.letters
        found = self._least(roots, pool)
        if found is None or band not in support(found[0], letters):
            return False
        keep = set(pool)
        for out in sorted(pool - {band}):
            fewer = self._least(roots, keep - {out})
            if fewer is not None and band in support(fewer[0], letters):
                keep.discard(out)
                found = fewer
        if len(keep) > MOST_IN_PART:
            return False
        for other in support(found[0], letters).intersection(self.left):
            self.held.setdefault(other, len(self.parts))
        self.parts.append(Part(tuple(sorted(keep)), tuple(found[1]), step))
        return True

    def _least(self, roots: Sequence[List], keep: Set[int]) -> tuple[list[Letters], list[Slide]] | None:
        letters = written(self.words, roots, keep, flat=True, most=_MOST_LETTERS)
        if letters is None:
            return None
        return shortened(letters, [(band, -1) for band, _ in self.words.letters])


class Near:
    """Steps near a band, and the bands around it that are free to be used there."""

    def __init__(self, reader: Reader) -> None:
        self.reader = reader
        self.steps, self.products, self.aside = plain(reader)
        self.at: dict[int, list[int]] = {}  # steps whose product has loops of a band
        for number, product in enumerate(self.products):
            for band in reader.loops(product):
                self.at.setdefault(band, []).append(number)
        self.inside: dict[int, set[int]] = {}  # bands that pass through a band
        for core, band in enumerate(reader.band_of):
            for inner in reader.trail_bands((2 * core,)):
                self.inside.setdefault(inner, set()).add(band)

    def places(self, band: int, missing: int = 0) -> Iterator[tuple[int, set[int]]]:
        """Give steps near the band, the nearest first, each with the bands that may be used there.

        The band `missing` is neither among them nor on the path to the step.
        """
        ring, seen, tried = {band}, {band}, 0
        for _ in range(4):
            for step in sorted({step for near in ring for step in self.at.get(near, ())}, reverse=True):
                tried += 1
                pool = self._pool(step, band, missing) if tried <= _PLACES else None
                if pool:
                    yield step, pool
            ring = {outer for near in ring for outer in self.inside.get(near, ())} - seen
            seen |= ring

    def _pool(self, step: int, band: int, missing: int) -> set[int]:
        """Return the bands nearest below the step that its path neither uses nor bars, `band` among them."""
        reader = self.reader
        taken = set(self.aside[step])
        carrying: set[int] = set()
        above = step
        while self.steps[above].parent >= 0:
            carrying.update(self.steps[above].carriers)
            above = self.steps[above].parent
            taken.update(self.aside[above], reader.loops(self.products[above]))
        if missing in carrying:
            return set()
        taken |= carrying | {missing}
        pool: dict[int, None] = {}
        level: Iterable[int] = self.products[step]
        seen: set[int] = set()
        while level and len(pool) < _MOST_TRIED:
            deeper: list[int] = []
            for factor in level:
                near = reader.band_of[factor >> 1]
                if near in taken or factor >> 1 in seen:
                    continue
                seen.add(factor >> 1)
                inner = reader.words(reader.trail_of[factor >> 1])
                if carrying.isdisjoint(reader.bands_of(inner)) and len(pool) < _MOST_TRIED:
                    pool[near] = None
                    deeper += [f for word in inner for f in reader.s.words[word]]
                else:
                    taken.add(near)
            level = deeper
        for lost in taken.intersection(pool):
            del pool[lost]
        return set(pool) if band in pool else set()
