"""Which bands come off while the piece is still on the loom, and after which move the first of them does."""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set
from functools import reduce
from itertools import chain, pairwise
from typing import NamedTuple

from pegwright.loom import Event, Fastened, Laid, State, apply_event
from pegwright.proof.prover import prove
from pegwright.structure import PlanPoint, structure_of

__all__ = ["FirstLoose", "find_first_loose"]

_MOST_VISITED = 800_000
"""Bands looked at in searches after each move that is tried: tenths of a second, for this only adds to what
is said of a fall."""


class FirstLoose(NamedTuple):
    """After the move of index `at` the band comes off, whatever is done with the loops on the pegs."""

    at: int
    band: int


def find_first_loose(
    moves: Sequence[Sequence[Event]], spots: Mapping[str, PlanPoint], wanted: Set[int]
) -> FirstLoose | None:
    """Return the first of some bands to come off before the piece is fastened; None where none does.

    `moves` are the events of each move, `spots` the pegs' places in plan. Every holder's loops are taken to
    be caught by a fastener of their own, and those of each two holders by one more: that keeps more than
    pegs do. So a band that comes off even then is off the work, and stays off: hence the halving.
    """
    closed = next((at for at, made in enumerate(moves) if _has_fastened(made)), len(moves))
    last = closed - 1
    if last < 0 or not (loose := _loose_after(moves[:closed], spots, wanted)):
        return None
    first = 0
    while first < last:
        middle = (first + last) // 2
        some = _loose_after(moves[: middle + 1], spots, loose)
        if some:
            last, loose = middle, some
        else:
            first = middle + 1
    return FirstLoose(last, min(loose))


def _has_fastened(made: Sequence[Event]) -> bool:
    return any(isinstance(event, Fastened) for event in made)


def _loose_after(
    moves: Sequence[Sequence[Event]], spots: Mapping[str, PlanPoint], wanted: Set[int]
) -> frozenset[int]:
    events = [event for made in moves for event in made]
    stacks = reduce(apply_event, events, State()).stacks
    on_holders = {loop.band for loops in stacks.values() for loop in loops}
    laid = {event.band for event in events if isinstance(event, Laid)}
    if not (off := wanted & laid - on_holders):
        return frozenset()
    caught = [(holder, tuple(reversed(loops))) for holder, loops in stacks.items()]
    rings = [[one] for one in caught] + [list(pair) for pair in pairwise(caught)]
    closing = [
        Fastened(
            number,
            "clip",
            tuple(holder for holder, _ in ring),
            tuple(chain.from_iterable(loops for _, loops in ring)),
            tuple(len(loops) for _, loops in ring),
        )
        for number, ring in enumerate(rings)
    ]
    return frozenset(off & set(prove(structure_of([*events, *closing], spots), _MOST_VISITED).free))
