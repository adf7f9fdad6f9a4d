"""Where every loop lies after each move: the holders it has been on, in order.

A loop that was pulled through others leaves a narrow neck at each holder it came from; a loop that was
lifted off lies beside its peg. Only names here; `scene` puts them in the plan.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from immutables import Map

from pegwright.loom import Bight, Done, Drawn, Laid, Lifted, Moved

OFF = "~"
"""Goes before the name of the peg that a loop was lifted off."""
BETWEEN = ">"
"""Stands between the two pegs between which a band hangs that was slid from the hook."""


class Lie(NamedTuple):
    """One moment. `trails` maps a loop to its holders, the present one last.

    `laid` maps a band to how it was laid; `when` maps a band or loop to the move (from 0) that put it there;
    `ends` maps a free end's name to the peg at which it was bound.
    """

    trails: Map[Bight, tuple[str, ...]] = Map()
    laid: Map[int, Laid] = Map()
    when: Map[int | Bight, int] = Map()
    ends: Map[str, str] = Map()


def lies(done: tuple[Done, ...]) -> Iterator[Lie]:
    """Yield where everything lies after each move, in order."""
    lie = Lie()
    for number, each in enumerate(done):
        for event in each.events:
            match event:
                case Laid():
                    lie = _lay(lie, event, number)
                case Drawn():
                    trail = (*lie.trails[event.bight], event.target)
                    lie = _put(lie, event.bight, trail, number)
                    for hung in event.slid:
                        lie = _put(lie, hung, (f"{event.source}{BETWEEN}{event.target}",), number)
                case Moved():
                    trail = (*lie.trails[event.bight][:-1], event.target)
                    lie = _put(lie, event.bight, trail, number)
                case Lifted():
                    trail = (*lie.trails[event.bight][:-1], OFF + event.holder)
                    lie = _put(lie, event.bight, trail, number)
                case _:
                    pass
        yield lie


def _lay(lie: Lie, event: Laid, number: int) -> Lie:
    trails = lie.trails
    ends = lie.ends
    for seat in event.seats:
        trails = trails.set(seat.bight, (seat.holder,))
        end, dot, _ = seat.holder.partition(".")
        if dot and end not in ends:
            ends = ends.set(end, event.seats[-1].holder)
    return Lie(trails, lie.laid.set(event.band, event), lie.when.set(event.band, number), ends)


def _put(lie: Lie, bight: Bight, trail: tuple[str, ...], number: int) -> Lie:
    return lie._replace(trails=lie.trails.set(bight, trail), when=lie.when.set(bight, number))
