"""The plan of a drawing: visits of bands to columns, lanes between them, rising pairs, ways of fasteners."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from pegwright.loom.events import Bight
from pegwright.structure.columns import Column, Station
from pegwright.structure.layers import Spot
from pegwright.structure.spots import TAU, sweep


@dataclass(frozen=True)
class Arm:
    """Where a strand meets a wrap: azimuth, and which side of it (−1, 0, +1: anticlockwise positive).

    A `seam` is a step from one turn of a wound band to the next. After a band's last turn, `beyond` is the
    azimuth of its lane, reached along the column's edge.
    """

    azimuth: float
    side: int
    seam: bool = False
    beyond: float | None = None


@dataclass
class Visit:
    """A strand's way through a column: in by one arm, round in direction `sign`, out by the other."""

    column: Column
    level: int
    sign: int
    into: Arm
    out: Arm
    bight: Bight | None = None
    leaving: Leaving | None = None

    def wrap(self) -> tuple[float, float]:
        """Return the azimuths (start, width) that the wrap covers."""
        width = sweep(self.into.azimuth, self.out.azimuth, self.sign) or TAU
        start = self.into.azimuth if self.sign > 0 else self.out.azimuth
        return start, width

    def middle(self) -> float:
        """Return the azimuth of the wrap's middle, opposite its arms."""
        start, width = self.wrap()
        return start + width / 2


@dataclass
class Leaving:
    """How a loop left its column: up by `stations`; then along a lane, or round as a curtain (no lane).

    `over` says that it was turned over: it crosses the middle and goes out on the other side.
    """

    stations: list[Station]
    over: bool = True
    lane: Lane | None = None
    to: Visit | None = None


class Step(NamedTuple):
    """Where a ribbon rises through bands slid on to it: segment, middle, their outer radius, from and to."""

    segment: int
    spot: Spot
    room_mm: float
    low: int
    high: int


@dataclass
class Lane:
    """A ribbon in plan from column to column, sloping evenly from the height `start` to the height `end`."""

    line: Sequence[Spot]
    start: int
    end: int
    half_twists: int = 0
    step: Step | None = None


class Stage(NamedTuple):
    """One step of a band's tour: a visit, then the lane to the next one (None: straight up a seam).

    `left` names the lane's strand by the side it has where the lane starts; `forward` is the way along it.
    """

    visit: Visit
    lane: Lane | None = None
    left: bool = False
    forward: bool = True


@dataclass(frozen=True)
class Coil:
    """A band wound on the hook's shaft: slid on to a ribbon, or left by itself. `order` is bottom first."""

    centre: Spot
    radius_mm: float
    bottom: int
    order: tuple[Bight, ...]
    sign: int
    seam: float


@dataclass
class Fall:
    """One way down of a fastener, in from far away along `line` at `top`, out again along it at `bottom`.

    Without a column it passes between two strands at `spot`.
    """

    line: Sequence[Spot]
    top: int
    bottom: int
    column: Column | None = None
    stations: list[Station] = field(default_factory=list)


@dataclass
class Drawing:
    """The whole plan. `tours[b]` is band b's way round as it was laid, `cords[f]` fastener f's ways down.

    `half_turns[b]` counts band b's ribbons that had to take a half-turn, either way.
    """

    unit_mm: float
    half_mm: float
    columns: dict[str, Column]
    tours: dict[int, list[Stage]] = field(default_factory=dict)
    coils: dict[int, Coil] = field(default_factory=dict)
    cords: dict[int, list[Fall]] = field(default_factory=dict)
    half_turns: dict[int, int] = field(default_factory=dict)
