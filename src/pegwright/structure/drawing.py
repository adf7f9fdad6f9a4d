"""The drawing as planned: bands visit columns, lanes join these, pairs rise in them, fasteners descend."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from pegwright.loom import Bight
from pegwright.structure.columns import Column, Station
from pegwright.structure.plane_geometry import TAU, PlanVector, sweep_angle


@dataclass(frozen=True)
class Arm:
    """Where a strand meets a wrap: its azimuth (radians), and the side of it (−1, 0, +1: anticlockwise +1).

    A `seam` is the step from one turn of a wound band to the next. After a band's last turn, `beyond` is
    the azimuth of its lane, which it reaches along the column's edge.
    """

    azimuth: float
    side: int
    seam: bool = False
    beyond: float | None = None


@dataclass
class Visit:
    """A strand's passage round a column: in by one arm, round in direction `sign`, out by the other."""

    column: Column
    level: int
    sign: int
    into: Arm
    out: Arm
    bight: Bight | None = None
    departure: Departure | None = None

    def wrap_range(self) -> tuple[float, float]:
        """Return the azimuths (start, width) that the wrap covers."""
        width = sweep_angle(self.into.azimuth, self.out.azimuth, self.sign) or TAU
        start = self.into.azimuth if self.sign > 0 else self.out.azimuth
        return start, width

    def wrap_middle(self) -> float:
        """Return the azimuth of the wrap's middle, opposite its arms."""
        start, width = self.wrap_range()
        return start + width / 2


@dataclass
class Departure:
    """How a loop left its column: up by `stations`, then along a lane, or, lifted over, round as a curtain.

    `over` says that the loop was turned over: it crosses the middle and leaves on the other side. `lifted`
    says that the pair rises outside the loops above.
    """

    stations: list[Station]
    over: bool = True
    lane: Lane | None = None
    to: Visit | None = None
    lifted: bool = False


class RibbonRise(NamedTuple):
    """Where a ribbon rises through bands slid on to it: segment, middle, their outer radius (mm), heights.

    It rises `before` the middle, in parts of the radius.
    """

    segment: int
    spot: PlanVector
    room_mm: float
    low: int
    high: int
    before: float = 0.35


@dataclass
class Lane:
    """A ribbon from column to column in plan, sloping evenly from the height `start` to the height `end`."""

    line: Sequence[PlanVector]
    start: int
    end: int
    half_twists: int = 0
    step: RibbonRise | None = None


class Stage(NamedTuple):
    """One stage of a band's tour: a visit, then the lane to the next one (None: straight up a seam).

    `left` says which strand of the lane is taken, by its side where the lane starts; `forward`, in which
    direction.
    """

    visit: Visit
    lane: Lane | None = None
    left: bool = False
    forward: bool = True


@dataclass(frozen=True)
class Coil:
    """A band wound on the hook's shaft: slid on to a ribbon, or left by itself. `order` is bottom first."""

    centre: PlanVector
    radius_mm: float
    bottom: int
    order: tuple[Bight, ...]
    sign: int
    seam: float


@dataclass
class Descent:
    """One descent of a fastener: in from far away along `line` at `top`, out again along it at `bottom`.

    Without a column it passes between two strands at the line's first point.
    """

    line: Sequence[PlanVector]
    top: int
    bottom: int
    column: Column | None = None
    stations: list[Station] = field(default_factory=list)


@dataclass
class Drawing:
    """The whole drawing as planned. `tours[b]` is band b's tour as it was laid, `cords[f]` are the descents
    of fastener f.

    `half_twists[b]` counts the ribbons of band b that had to take a half-twist, one way or the other.
    """

    unit_mm: float
    half_mm: float
    columns: dict[str, Column]
    tours: dict[int, list[Stage]] = field(default_factory=dict)
    coils: dict[int, Coil] = field(default_factory=dict)
    cords: dict[int, list[Descent]] = field(default_factory=dict)
    half_twists: dict[int, int] = field(default_factory=dict)
