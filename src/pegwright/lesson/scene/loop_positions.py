"""Where every loop lies after each move: the holders it has been on, in order.

A loop that was pulled through others leaves a narrow neck at each holder it came from; a loop that was
lifted off lies beside its peg. Only names here; `scene` puts them in the plan.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from immutables import Map

from pegwright.loom import AppliedMove, Bight, Drawn, Laid, Lifted, Moved

OFF = "~"
"""Goes before the name of the peg that a loop was lifted off."""
BETWEEN = ">"
"""Stands between the two pegs between which a band hangs that was slid from the hook."""


class LoopPositions(NamedTuple):
    """One moment. `trails` maps a loop to its holders, the present one last.

    `laid` maps a band to how it was laid; `when` maps a band or loop to the move (from 0) that put it there;
    `ends` maps a free end's name to the peg at which it was bound.
    """

    trails: Map[Bight, tuple[str, ...]] = Map()
    laid: Map[int, Laid] = Map()
    when: Map[int | Bight, int] = Map()
    ends: Map[str, str] = Map()


def positions_by_move(moves: tuple[AppliedMove, ...]) -> Iterator[LoopPositions]:
    """Yield where everything lies after each move, in order."""
    positions = LoopPositions()
    for number, each in enumerate(moves):
        for event in each.events:
            match event:
                case Laid():
                    positions = _lay_band(positions, event, number)
                case Drawn():
                    trail = positions.trails[event.bight]
                    kept = trail[:-1] if "." in event.source and "." not in event.target else trail
                    trail = (*kept, event.target)
                    positions = _move_loop(positions, event.bight, trail, number)
                    for hung in event.slid:
                        positions = _move_loop(
                            positions, hung, (f"{event.source}{BETWEEN}{event.target}",), number
                        )
                case Moved():
                    trail = (*positions.trails[event.bight][:-1], event.target)
                    positions = _move_loop(positions, event.bight, trail, number)
                case Lifted():
                    trail = (*positions.trails[event.bight][:-1], OFF + event.holder)
                    positions = _move_loop(positions, event.bight, trail, number)
                case _:
                    pass
        yield positions


def _lay_band(positions: LoopPositions, event: Laid, number: int) -> LoopPositions:
    trails = positions.trails
    ends = positions.ends
    for seat in event.seats:
        trails = trails.set(seat.bight, (seat.holder,))
        end, dot, link = seat.holder.partition(".")
        if dot and seat is event.seats[0] and link == "0":
            ends = ends.set(end, event.seats[-1].holder)
    return LoopPositions(
        trails, positions.laid.set(event.band, event), positions.when.set(event.band, number), ends
    )


def _move_loop(positions: LoopPositions, bight: Bight, trail: tuple[str, ...], number: int) -> LoopPositions:
    return positions._replace(
        trails=positions.trails.set(bight, trail), when=positions.when.set(bight, number)
    )
