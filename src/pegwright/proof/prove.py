"""Is every band held? The way from a structure to its proof, cheapest certificates first."""

from __future__ import annotations

import random
from collections.abc import Iterable

from pegwright.proof.carriers import carry
from pegwright.proof.matrices import trivial
from pegwright.proof.shortest import shortened, support, written
from pegwright.proof.slips import first_passed, in_use, reduced
from pegwright.proof.values import Free, HeldByPart, NotProved, Part, Proof, Slide, Verdict
from pegwright.structure import Structure

__all__ = ["MOST_IN_PART", "prove"]

MOST_IN_PART = 10
"""A part that holds by a short word has at most this many bands, so that a checker can try every set."""
_TRIES = 4  # orders in which bands are taken away while looking for a part that holds one band
_SEARCHES = 16  # bands for which such a part is looked for in a piece with long words


def prove(structure: Structure) -> Proof:
    """Decide for every band whether it is held, with a certificate that `check` accepts.

    In this order: paths of carriers (held, any size); what no fastener uses after all slips (free, any
    size); the words written out and made as short as can be, if they are short enough or a part of the
    piece has short ones (either). What is left is not proved, with the reason.
    """
    words = reduced(structure)
    held, steps = carry(words)
    verdicts: dict[int, Verdict] = dict(held)
    if len(held) == len(structure.bands):
        return Proof(dict(sorted(verdicts.items())), steps)
    passed = first_passed(structure)
    used = in_use(words, passed)
    verdicts |= {band: Free() for band in structure.bands if band not in used}
    parts: list[Part] = []
    slides: tuple[Slide, ...] = ()
    left = [band for band in structure.bands if band not in verdicts]
    if left:
        idle = set(structure.bands) - used
        found, slides = _slide_off(structure, idle, left)
        verdicts |= found
        left = [band for band in left if band not in found]
        parts = _parts(structure, idle, left, verdicts)
        flat_use = in_use(reduced(structure, flat=True), passed)
        for band in left:
            if band not in verdicts:
                verdicts[band] = _why_not(structure, idle, band, flat_use)
    some_free = any(isinstance(verdict, Free) for verdict in verdicts.values())
    slips = words.slips if some_free else ()
    return Proof(dict(sorted(verdicts.items())), steps, tuple(parts), slips, slides)


def _slide_off(
    structure: Structure, idle: set[int], left: list[int]
) -> tuple[dict[int, Verdict], tuple[Slide, ...]]:
    """Return which bands come off by slides, and the slides, if the words are short enough to see."""
    words = reduced(structure, idle)
    letters = written(words)
    if letters is None:
        return {}, ()
    short, slides = shortened(letters, words.letters)
    loose = support(short, words.letters)
    free: dict[int, Verdict] = {band: Free(slid=True) for band in left if band not in loose}
    return free, tuple(slides) if free else ()


def _parts(
    structure: Structure, idle: set[int], left: Iterable[int], verdicts: dict[int, Verdict]
) -> list[Part]:
    """Find parts of few bands with short words that hold the bands left; note their verdicts."""
    parts: list[Part] = []
    wanted = [band for band in left if band not in idle]
    searches = _SEARCHES
    for band in wanted:
        if band in verdicts or not searches:
            continue
        pool = set(structure.bands) - idle
        if written(reduced(structure, idle, flat=True)) is None:
            searches -= 1
            pool = _pool(structure, band)
        keep = _thinned(structure, band, pool) if pool else None
        if keep:
            words = reduced(structure, set(structure.bands) - keep, flat=True)
            least, slides = shortened(written(words) or [], words.letters)
            for other in support(least, words.letters).intersection(wanted):
                verdicts.setdefault(other, HeldByPart(len(parts)))
            parts.append(Part(tuple(sorted(keep)), tuple(slides)))
    return parts


def _holds(structure: Structure, keep: set[int], band: int) -> bool:
    words = reduced(structure, set(structure.bands) - keep, flat=True)
    letters = written(words)
    return letters is not None and band in support(shortened(letters, words.letters)[0], words.letters)


def _thinned(structure: Structure, band: int, pool: set[int]) -> set[int] | None:
    """Return few bands of the pool that hold the band, by leaving out one after the other."""
    keep = set(pool)
    if not _holds(structure, keep, band):
        return None
    for out in sorted(pool - {band}):
        if len(keep) <= MOST_IN_PART:
            break
        if _holds(structure, keep - {out}, band):
            keep.discard(out)
    return keep if len(keep) <= MOST_IN_PART else None


def _pool(structure: Structure, band: int) -> set[int]:
    """Return a few bands without any of which some fastener comes off the rest of them, `band` among them.

    Bands are left out as long as the fastener's word stays non-trivial, `band` last.
    """
    for number in range(len(structure.fastenings)):
        for seed in range(_TRIES):
            others = [b for b in structure.bands if b != band]
            random.Random(seed).shuffle(others)
            missing: set[int] = set()
            for out in [*others, band]:
                if not trivial(reduced(structure, missing | {out}, flat=True))[number]:
                    missing.add(out)
            if band not in missing and len(structure.bands) - len(missing) <= MOST_IN_PART:
                return set(structure.bands) - missing
    return set()


def _why_not(structure: Structure, idle: set[int], band: int, flat_use: set[int]) -> NotProved:
    words = reduced(structure, idle, flat=True)
    letters = written(words)
    twisted = tuple(sorted(structure.twists.keys() - idle))
    if band not in flat_use:
        return NotProved("twist", twisted)
    if letters is not None and band not in support(shortened(letters, words.letters)[0], words.letters):
        return NotProved("twist", twisted)
    return NotProved("too-long")
