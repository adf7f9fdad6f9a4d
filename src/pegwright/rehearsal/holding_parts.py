"""Small parts of a piece that hold a band by themselves, read off its proof or found by leaving bands out."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import cycle, islice

import numpy as np

from pegwright.proof import Held, Proof, Reader, find_holding_paths, reduce_words
from pegwright.rehearsal.batched_words import BatchedWords
from pegwright.rehearsal.shared_words import SharedWords
from pegwright.structure import Structure

__all__ = ["HoldingPart", "bands_with_net_turns", "find_holding_parts", "intended_holding_parts"]

MOST_THINNED = 150
"""In a larger pool, bands are not left out one by one: the time grows with the square of their number."""

WAYS = 4
"""How many ways are drawn from the fasteners to each band: a slip that cuts one may leave another."""
_NOBODY = frozenset((0,))  # no band has this number, so that every way is walked to its end

HoldingPart = tuple[int, frozenset[int]]  # the band held, and the bands of the part


def bands_with_net_turns(words: SharedWords, roots: Sequence[int]) -> set[int]:
    """Return the bands round which some root turns a number of times other than 0: these are held.

    The sum of a letter's signs in a word does not change under partial conjugations.
    """
    found = set()
    for root in roots:
        turns: Counter[int] = Counter()
        for factor in words.words[root]:
            turns[words.cores[factor >> 1][0].band] += -1 if factor & 1 else 1
        found |= {band for band, n in turns.items() if n}
    return found


def find_holding_parts(
    words: SharedWords, roots: Sequence[int], proof: Proof, tries: int = 2
) -> list[HoldingPart]:
    """Return, for as many bands as possible, a part that holds something, but nothing without that band.

    The paths of the proof are tried first, then what remains when one band after another is left out.
    """
    turned = bands_with_net_turns(words, roots)
    wanted = [band for band in proof.held if band not in turned]
    following = _first_steps_below(proof)
    found = _certify(words, roots, [(band, _bands_on_path(proof, following, band)) for band in wanted])
    # Of the bands that the roots turn round, at most one stays in a part: first none, then each in turn.
    for number, stays in enumerate(islice(cycle([None, *sorted(turned)[::-1]]), tries)):
        missed = set(wanted) - {band for band, _ in found}
        pool = frozenset(proof.verdicts.keys() - turned) | ({stays} if stays is not None else frozenset())
        if missed and len(pool) <= MOST_THINNED:
            found += _thin_out(words, roots, sorted(missed), pool, number)
    return found


def intended_holding_parts(
    words: SharedWords, roots: Sequence[int], structure: Structure, parts: Sequence[HoldingPart]
) -> Iterator[tuple[frozenset[int], frozenset[int]]]:
    """Yield parts of the intended piece, each with bands it holds: all of them where it is a holding path.

    A band that can be reached in several ways has several paths.
    """
    reader = Reader(reduce_words(structure))
    on_paths: dict[frozenset[int], None] = {}
    for seed in range(WAYS):
        held, steps = find_holding_paths(reader, _NOBODY, (seed,))
        found = Proof(dict(held), steps)
        following = _first_steps_below(found)
        on_paths |= dict.fromkeys(_bands_on_path(found, following, band) for band in held)
    yield from ((keep, keep) for keep in on_paths)
    others = list(dict.fromkeys(keep for _, keep in parts if keep not in on_paths))
    yield from zip(others, essential_bands(words, roots, others), strict=True)


def _first_steps_below(proof: Proof) -> dict[int, int]:
    """Return for every step the first below it."""
    following: dict[int, int] = {}
    for number, step in enumerate(proof.steps):
        following.setdefault(step.parent, number)
    return following


def _bands_on_path(proof: Proof, following: dict[int, int], band: int) -> frozenset[int]:
    """Return the bands of the holding path that holds a band, from the fastener to the last witness."""
    given = proof.verdicts[band]
    if not isinstance(given, Held):
        return frozenset()
    steps, bands, at = proof.steps, {band}, given.step
    if not given.witness:
        below = steps[at].loan if steps[at].loan >= 0 else at
        while not steps[below].witness:
            below = following[below]
            bands.update(steps[below].carriers[:1])
            if steps[below].loan >= 0:
                below = steps[below].loan
        bands.add(steps[below].witness)
        at = steps[at].parent
    while at >= 0:
        bands.update(steps[at].carriers[:1])
        bands.add(steps[at].without)
        at = steps[at].parent
    return frozenset(bands - {0})


def _thin_out(
    words: SharedWords, roots: Sequence[int], bands: Sequence[int], pool: frozenset[int], seed: int
) -> list[HoldingPart]:
    """Leave out band after band as long as the one wanted still makes a difference."""
    order = sorted(pool)
    random.Random(seed).shuffle(order)
    keeps = [pool] * len(bands)
    for out in order:
        trial = [keep - {out} if band != out else keep for band, keep in zip(bands, keeps, strict=True)]
        batch = BatchedWords(
            words, [*trial, *(part - {band} for band, part in zip(bands, trial, strict=True))]
        )
        matters = np.zeros(len(bands), np.bool_)
        for root in roots:
            value = batch.product(root)
            matters |= (value[:, :, : len(bands)] != value[:, :, len(bands) :]).any(axis=(0, 1))
        keeps = [small if m else keep for small, keep, m in zip(trial, keeps, matters, strict=True)]
    return _certify(words, roots, list(zip(bands, keeps, strict=True)))


def _certify(words: SharedWords, roots: Sequence[int], parts: Sequence[HoldingPart]) -> list[HoldingPart]:
    """Return the parts in which some root holds something, and nothing without the part's band."""
    keeps = [keep for _, keep in parts]
    batch = BatchedWords(words, [*keeps, *(keep - {band} for band, keep in parts)])
    holds = np.zeros(len(parts), np.bool_)
    for root in roots:
        idle = batch.holds_nothing(root)
        holds |= ~idle[: len(parts)] & idle[len(parts) :]
    return [part for part, held in zip(parts, holds, strict=True) if held]


def essential_bands(
    words: SharedWords, roots: Sequence[int], keeps: Sequence[frozenset[int]]
) -> list[frozenset[int]]:
    """Return for every part those of its bands without which it holds nothing."""
    found: dict[frozenset[int], frozenset[int]] = {}
    for keep in keeps:
        if keep not in found:
            parts = [(band, keep) for band in sorted(keep)]
            found[keep] = frozenset(band for band, _ in _certify(words, roots, parts))
    return [found[keep] for keep in keeps]
