"""Test hundreds of workings for held bands: one that quickly proves to fall gets no long proof."""

from __future__ import annotations

from collections.abc import Sequence

from pegwright.loom import Event
from pegwright.proof import (
    Reader,
    bands_in_use,
    decide,
    find_holding_paths,
    first_passing_events,
    prove,
    reduce_words,
)
from pegwright.structure import PlanPoint, Structure, structure_of

__all__ = ["count_falling", "every_band_is_held", "quickly_held"]

_SMALL = 14
"""Bands up to which the full proof is as quick as anything."""


def quickly_held(structure: Structure) -> bool | None:
    """Return whether every band is held; None if only the full proof can tell."""
    words = reduce_words(structure)
    used = bands_in_use(words, first_passing_events(structure), structure.crossed_bands())
    if len(used) < len(structure.bands):
        return False
    held, _ = find_holding_paths(Reader(words), used)
    return True if len(held) == len(used) else None


def count_falling(structure: Structure) -> int:
    """Return how many bands no fastener uses, or where all are used, how many are not quickly proved held."""
    words = reduce_words(structure)
    used = bands_in_use(words, first_passing_events(structure), structure.crossed_bands())
    unused = len(structure.bands) - len(used)
    return unused or len(used) - len(find_holding_paths(Reader(words), used)[0])


def every_band_is_held(
    events: Sequence[Event], spots: dict[str, PlanPoint], *, thorough: bool = False
) -> bool | None:
    """Return whether every band is proved held; None if not settled quickly, unless `thorough`."""
    bare = structure_of(events)
    known = quickly_held(bare)
    if known is not None or not (thorough or len(bare.bands) <= _SMALL):
        return known
    free, unsettled = decide(bare, set(bare.bands))
    if free or unsettled:  # a working that is slow to settle counts as falling
        return False
    proof = prove(structure_of(events, spots))
    return not (proof.free or proof.unproved)
