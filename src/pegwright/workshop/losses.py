"""What a piece that holds would lose: if one band snaps, or if the fastener misses one loop."""

from __future__ import annotations

from typing import NamedTuple

from pegwright.loom import Bight
from pegwright.proof import Loss, needed_loops, passengers, snaps
from pegwright.workshop.line import Work


class Losses(NamedTuple):
    """`snaps` maps each held band to what falls with it; `passengers` are those that take none along.

    `caught` maps each loop that the last fastener caught to what falls where that loop is missed.
    """

    snaps: dict[int, Loss]
    passengers: tuple[int, ...]
    caught: dict[Bight, Loss]


def losses(made: Work) -> Losses:
    """Work out every single loss of a piece."""
    found = snaps(made.structure, made.proof)
    return Losses(found, passengers(found), needed_loops(made.structure, made.proof))
