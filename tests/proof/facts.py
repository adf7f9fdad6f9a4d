"""Small helpers shared by the tests of the proof."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from pegwright.loom import Bight, Drawn, Event, Fastened, Laid, Lifted, Moved
from pegwright.proof import Free, Held, HeldInLeast, NotProved, Proof, prove
from pegwright.structure import structure_of


def proved(events: Sequence[Event]) -> Proof:
    return prove(structure_of(events))


def sides(proof: Proof) -> dict[int, str]:
    """Held, free or neither, by band."""
    names = {Held: "held", HeldInLeast: "held", Free: "free", NotProved: "open"}
    return {band: names[type(verdict)] for band, verdict in proof.verdicts.items()}


def renamed(events: Sequence[Event], names: dict[int, int]) -> list[Event]:
    """The same history with other numbers for its bands."""

    def new(bight: Bight) -> Bight:
        return Bight(names[bight.band], bight.index)

    out: list[Event] = []
    for event in events:
        match event:
            case Laid():
                seats = tuple(seat._replace(bight=new(seat.bight)) for seat in event.seats)
                out.append(msgspec.structs.replace(event, band=names[event.band], seats=seats))
            case Drawn():
                through = tuple(map(new, event.through))
                out.append(msgspec.structs.replace(event, bight=new(event.bight), through=through))
            case Lifted():
                over = tuple(map(new, event.over))
                out.append(msgspec.structs.replace(event, bight=new(event.bight), over=over))
            case Moved():
                out.append(msgspec.structs.replace(event, bight=new(event.bight)))
            case Fastened():
                out.append(msgspec.structs.replace(event, caught=tuple(map(new, event.caught))))
            case _:
                out.append(event)
    return out


def bands_of(events: Sequence[Event]) -> list[int]:
    return [event.band for event in events if isinstance(event, Laid)]
