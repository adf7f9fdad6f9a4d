"""Small parts of a piece that hold a band by themselves, read off its proof or found by leaving bands out."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import cycle, islice

import numpy as np

from pegwright.proof import Held, HeldByPart, Proof
from pegwright.proof.carriers import carry
from pegwright.proof.reader import Reader
from pegwright.proof.slips import reduced
from pegwright.rehearsal.lanes import Lanes
from pegwright.rehearsal.words import Words
from pegwright.structure import Structure

__all__ = ["Part", "find_parts", "known_parts", "turning"]

MOST_THINNED = 150
"""In a pool of more bands none are left out one by one: time grows with the square."""

WAYS = 4
"""So many ways are drawn from the fasteners to each band: a slip that cuts one may leave another."""
_NOBODY = frozenset((0,))  # no band has this number, so that every way is walked to its end

Part = tuple[int, frozenset[int]]  # the band held, and the bands of the part


def turning(words: Words, roots: Sequence[int]) -> set[int]:
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


def find_parts(words: Words, roots: Sequence[int], proof: Proof, tries: int = 2) -> list[Part]:
    """Return, for as many bands as can be, a part that holds something, and nothing without that band.

    The paths of the proof are tried first, then whatever is left when band after band is left out.
    """
    turned = turning(words, roots)
    wanted = [band for band in proof.held if band not in turned]
    following = _following(proof)
    found = _certified(words, roots, [(band, _path(proof, following, band)) for band in wanted])
    # Of the bands that the roots turn round, at most one stays in a part: first none, then each in turn.
    for number, stays in enumerate(islice(cycle([None, *sorted(turned)[::-1]]), tries)):
        missed = set(wanted) - {band for band, _ in found}
        pool = frozenset(proof.verdicts.keys() - turned) | ({stays} if stays is not None else frozenset())
        if missed and len(pool) <= MOST_THINNED:
            found += _thinned(words, roots, sorted(missed), pool, number)
    return found


def known_parts(
    words: Words, roots: Sequence[int], structure: Structure, parts: Sequence[Part]
) -> Iterator[tuple[frozenset[int], frozenset[int]]]:
    """Give parts of the intended piece, each with bands it holds: all of them where it is a path of carriers.

    To every band there are several paths, as far as there are several ways to it.
    """
    reader = Reader(reduced(structure))
    on_paths: dict[frozenset[int], None] = {}
    for seed in range(WAYS):
        held, steps = carry(reader, _NOBODY, (seed,))
        found = Proof(dict(held), steps)
        following = _following(found)
        on_paths |= dict.fromkeys(_path(found, following, band) for band in held)
    yield from ((keep, keep) for keep in on_paths)
    others = list(dict.fromkeys(keep for _, keep in parts if keep not in on_paths))
    yield from zip(others, members(words, roots, others), strict=True)


def _following(proof: Proof) -> dict[int, int]:
    """Return for every step the first below it."""
    following: dict[int, int] = {}
    for number, step in enumerate(proof.steps):
        following.setdefault(step.parent, number)
    return following


def _path(proof: Proof, following: dict[int, int], band: int) -> frozenset[int]:
    """Return the bands of the path of carriers that holds a band, from the fastener to the last witness."""
    given = proof.verdicts[band]
    if not isinstance(given, Held):
        return frozenset(proof.parts[given.part].keep) if isinstance(given, HeldByPart) else frozenset()
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


def _thinned(
    words: Words, roots: Sequence[int], bands: Sequence[int], pool: frozenset[int], seed: int
) -> list[Part]:
    """Leave out band after band as long as the one wanted still makes a difference."""
    order = sorted(pool)
    random.Random(seed).shuffle(order)
    keeps = [pool] * len(bands)
    for out in order:
        trial = [keep - {out} if band != out else keep for band, keep in zip(bands, keeps, strict=True)]
        lanes = Lanes(words, [*trial, *(part - {band} for band, part in zip(bands, trial, strict=True))])
        matters = np.zeros(len(bands), np.bool_)
        for root in roots:
            value = lanes.product(root)
            matters |= (value[:, :, : len(bands)] != value[:, :, len(bands) :]).any(axis=(0, 1))
        keeps = [small if m else keep for small, keep, m in zip(trial, keeps, matters, strict=True)]
    return _certified(words, roots, list(zip(bands, keeps, strict=True)))


def _certified(words: Words, roots: Sequence[int], parts: Sequence[Part]) -> list[Part]:
    """Return the parts in which some root holds something, and nothing without the part's band."""
    keeps = [keep for _, keep in parts]
    lanes = Lanes(words, [*keeps, *(keep - {band} for band, keep in parts)])
    holds = np.zeros(len(parts), np.bool_)
    for root in roots:
        idle = lanes.idle(root)
        holds |= ~idle[: len(parts)] & idle[len(parts) :]
    return [part for part, held in zip(parts, holds, strict=True) if held]


def members(words: Words, roots: Sequence[int], keeps: Sequence[frozenset[int]]) -> list[frozenset[int]]:
    """Return for every part those of its bands without which it holds nothing."""
    found: dict[frozenset[int], frozenset[int]] = {}
    for keep in keeps:
        if keep not in found:
            parts = [(band, keep) for band in sorted(keep)]
            found[keep] = frozenset(band for band, _ in _certified(words, roots, parts))
    return [found[keep] for keep in keeps]
