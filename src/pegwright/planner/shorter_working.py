"""A working that holds, made shorter to say: fewer hooks, in another order, or the other way.

A loop through which something passes, or that the finish catches, needs no hook of its own. For pieces of so
few bands all such changes can be tried, one at a time, and again on what is better.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from pegwright.loom import Bight, Drawn
from pegwright.planner.description import describe
from pegwright.planner.draft import PlanDraft
from pegwright.planner.ranked_working import RankedWorking, work_loops

__all__ = ["SHORTENED_BANDS", "shorten"]

SHORTENED_BANDS = 12
"""Bands up to which workings are shortened."""

_Loops = tuple[tuple[Bight, str], ...]


def shorten(draft: PlanDraft, working: RankedWorking) -> Iterator[RankedWorking]:
    """Yield workings with fewer phrases, the shortest first; none of them is proved."""
    loops = tuple(
        (event.bight, event.target)
        for one in working.applied
        for event in one.events
        if isinstance(event, Drawn)
    )
    most = describe(working.moves).phrases
    found: dict[_Loops, tuple[int, RankedWorking]] = {}
    for changed in _changes(draft, loops):
        if changed not in found:
            made = work_loops(draft, changed)
            dragged = any(getattr(event, "dragged", ()) for one in made.applied for event in one.events)
            if len(made.applied) == len(changed) and not dragged:
                found[changed] = (describe(made.moves).phrases, made)
    for phrases, made in sorted(found.values(), key=lambda one: one[0]):
        if phrases < most:
            yield made


def _changes(draft: PlanDraft, loops: _Loops) -> Iterator[_Loops]:
    """Yield the hooks without one or two of them, with one made elsewhere in the order, or the other way."""
    for gone in (1, 2):
        for out in combinations(range(len(loops)), gone):
            yield tuple(one for at, one in enumerate(loops) if at not in out)
    for at, one in enumerate(loops):
        rest = (*loops[:at], *loops[at + 1 :])
        for to in range(len(loops)):
            if to != at:
                yield (*rest[:to], one, *rest[to:])
    seats = {bight: peg for peg, bight in draft.resting()}
    for at, (bight, _) in enumerate(loops):
        other = Bight(bight.band, 1 - bight.index)
        if other in seats and seats[bight] in draft.homes[other]:
            yield (*loops[:at], (other, seats[bight]), *loops[at + 1 :])
