"""Where each strand runs: closed curves in space for all bands and fasteners, from the machine's record.

The curves do not meet, and nothing passes through anything that it does not pass through in the hand: the
drawing repeats the history move by move, each an isotopy of what lay there before (see `drawing`).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from pegwright.loom.events import Bight, Event
from pegwright.structure.columns import OUTER, STEP, WRAP, Column, Station
from pegwright.structure.drawing import CAP_SEAM, Cord, Draughtsman, Drawing, Fall, Lane, Ring, Stage, Visit
from pegwright.structure.layers import Spot, offset

Points = npt.NDArray[np.float64]
Positions = Callable[[str], tuple[float, float]] | Mapping[str, tuple[float, float]]
_ARC = math.radians(20.0)
_TWIST = 0.25  # how far the strands of a twisted ribbon part, in heights


@dataclass(frozen=True)
class Wrap:
    """A loop where it lies, or once lay, round a holder's column.

    `spans` are half-open ranges of indices into its band's curve, along the band. `now` is false for the
    place a loop has left (it may still hold the ribbons that it took along). A loop lifted off its peg has
    `lifted` true: its wrap surrounds what it was lifted over.
    """

    bight: Bight
    holder: str
    spans: tuple[tuple[int, int], ...]
    sign: int
    now: bool = True
    lifted: bool = False


@dataclass(frozen=True)
class Curves:
    """Closed polylines (n, 3) in mm, last point joined to the first; no two strands nearer than `clear_mm`.

    `bands[b]` and `fasteners[f]` are numbered as in the events. `wraps` says where the loops sit.
    `half_turns[b]` counts the ribbons of band b that had to take a half-turn one way or the other; the record does
    not say which, so the band's own twist is a guess by a whole turn for each.
    """

    bands: Mapping[int, Points]
    fasteners: Mapping[int, Points]
    wraps: tuple[Wrap, ...]
    half_turns: Mapping[int, int]
    clear_mm: float


def curves(events: Iterable[Event], position: Positions, thickness_mm: float) -> Curves:
    """Draw the made thing.

    Args:
        events: the machine's record, from the empty loom on.
        position: centre in mm of every peg that the record names. Free ends and the hook's shaft need none.
        thickness_mm: height of one layer.

    Raises:
        KeyError: a peg has no position.
        ValueError: two pegs stand in one place, or a band was slid only in part.
    """
    where = position if callable(position) else position.__getitem__
    drawing = Draughtsman(list(events), where).out
    bands: dict[int, Points] = {}
    wraps: list[Wrap] = []
    for band, tour in drawing.tours.items():
        pen = _Pen(drawing.half_mm)
        pen.tour(tour)
        bands[band] = pen.curve(thickness_mm)
        wraps += pen.wraps
    for band, ring in drawing.rings.items():
        bands[band], found = _ring(ring, thickness_mm)
        wraps += found
    cords = _cords(drawing, thickness_mm)
    fullest = max((max(c.risers, len(c.posts)) for c in drawing.columns.values()), default=0)
    radius = 0.38 * drawing.unit_mm
    clear = min(
        0.9 * drawing.half_mm,
        0.8 * radius * (OUTER[1] - OUTER[0]) / (fullest + 1),
        0.05 * thickness_mm,
    )
    return Curves(dict(sorted(bands.items())), cords, tuple(wraps), drawing.arbitrary, clear)


class _Pen:
    """Draws one band; heights are counted in layers until the end."""

    def __init__(self, half_mm: float) -> None:
        self.half = half_mm
        self.points: list[tuple[float, float, float]] = []
        self.wraps: list[Wrap] = []

    def curve(self, thickness_mm: float) -> Points:
        return np.array(self.points) * [1.0, 1.0, thickness_mm]

    def add(self, at: Spot, z: float) -> None:
        point = (float(at[0]), float(at[1]), float(z))
        if not self.points or point != self.points[-1]:
            self.points.append(point)

    def tour(self, tour: Sequence[Stage]) -> None:
        first = tour[0].visit
        cap = all(stage.lane is None for stage in tour)
        if cap:
            self.add(self.spot(first.column, STEP * first.column.radius_mm, CAP_SEAM, 0), first.level)
        for stage in tour:
            visit, lane = stage.visit, stage.lane
            self.visit(visit)
            if lane is None:
                continue
            strand = _strand(lane, self.half, stage.left, visit.column.radius_mm)
            for x, y, z in strand if stage.forward else reversed(strand):
                if (x, y, z) == (strand[0] if stage.forward else strand[-1]) and z != visit.level:
                    edge = STEP * visit.column.radius_mm
                    azimuth = visit.out.azimuth if visit.out.beyond is None else visit.out.beyond
                    inner = self.spot(visit.column, edge, azimuth, -visit.sign)
                    self.add(inner, visit.level)
                    self.add(inner, z)
                self.add(np.array([x, y]), z)
        if cap:
            last = tour[-1].visit
            edge = STEP * last.column.radius_mm
            self.add(self.spot(last.column, edge, last.out.azimuth, 0), last.level)
            self.arc(last.column, edge, first.level, last.out.azimuth, CAP_SEAM, last.sign)
            self.points.pop()  # the curve closes there

    def visit(self, v: Visit) -> None:
        c, s, z = v.column, v.sign, float(v.level)
        wrap = WRAP * c.radius_mm
        left = v.leaving
        post = left.stations[0].post if left and left.to is None else None
        radius = wrap if left is None else left.radius_mm if post is None else post.radius_mm
        if v.into.seam:
            self.add(self.spot(c, wrap, v.into.azimuth, 0), z)
        start = len(self.points)
        into = v.into.azimuth + self.lean(v.into.side, radius)
        out = v.out.azimuth + self.lean(v.out.side, radius)
        if left is None:
            self.arc(c, radius, z, into, out, s)
            spans = [(start, len(self.points))]
        else:
            up = left.stations
            turn = self.lean(1, radius)
            self.arc(c, radius, z, into, up[0].azimuth - s * turn, s)
            middle = len(self.points)
            self.rise(c, up, left.radius_mm, -s, left.top)
            if left.to is not None and left.lane is not None:
                flip = s > 0 if left.over else s < 0
                self.ribbon(left.lane, flip, c.radius_mm)
                self.visit(left.to)
                self.ribbon(left.lane, not flip, c.radius_mm, back=True)
            else:
                at = up[-1].azimuth
                self.arc(c, radius, left.top, at - s * turn, at + s * turn, -s)
            self.rise(c, up, left.radius_mm, s, left.top, down=True)
            again = len(self.points) - 1
            self.arc(c, radius, z, up[0].azimuth + s * turn, out, s)
            spans = [(start, middle), (again, len(self.points))]
        if v.bight is not None:
            off = left is not None
            lifted = left is not None and left.to is None
            self.wraps.append(Wrap(v.bight, c.name, tuple(spans), s, not off, lifted))
        if v.out.seam and radius != wrap:
            self.add(self.spot(c, wrap, v.out.azimuth, 0), z)
        if v.out.beyond is not None and v.into.side == 0 and v.out.beyond != CAP_SEAM:
            edge = STEP * c.radius_mm
            self.arc(c, edge, z, v.out.azimuth, v.out.beyond + self.lean(-s, edge), s)

    def ribbon(self, lane: Lane, left: bool, radius_mm: float, back: bool = False) -> None:
        strand = _strand(lane, self.half, left, radius_mm)
        for x, y, z in reversed(strand) if back else strand:
            self.add(np.array([x, y]), z)

    def rise(
        self, c: Column, up: Sequence[Station], radius_mm: float, side: int, top: int, down: bool = False
    ) -> None:
        """One strand of a rising pair, on its `side` of it, from its own height to the top."""
        pen = _Pen(self.half)
        levels = [s.level for s in up[:-1]] + [float(top)]
        radii = [radius_mm if s.post is None else s.post.radius_mm for s in up]
        pen.at(c, radii[0], up[0].azimuth, side, levels[0])
        for i in range(len(up) - 1):
            a, b = up[i].azimuth, up[i + 1].azimuth
            if radii[i] != radii[i + 1]:
                z = levels[i] + (0.25 if i else 0.0)
                pen.at(c, radii[i], a, side, z)
                pen.at(c, radii[i + 1], a, side, z)
            if abs(b - a) > 1e-9:
                # The strand that leads turns lower down, so that the two never cross.
                z = levels[i + 1] - (0.275 if side == 0 else 0.35 if side * (b - a) > 0 else 0.2)
                lean = self.lean(side, radii[i + 1])
                pen.arc(c, radii[i + 1], z, a + lean, b + lean, 1 if b > a else -1)
        pen.at(c, radii[-1], up[-1].azimuth, side, levels[-1])
        for x, y, z in reversed(pen.points) if down else pen.points:
            self.add(np.array([x, y]), z)

    def at(self, c: Column, radius_mm: float, azimuth: float, side: int, z: float) -> None:
        self.add(self.spot(c, radius_mm, azimuth, side), z)

    def lean(self, side: int, radius_mm: float) -> float:
        """The angle by which a strand half a ribbon's width aside is off the ribbon's azimuth."""
        return math.asin(side * self.half / radius_mm) if side else 0.0

    def spot(self, c: Column, radius_mm: float, azimuth: float, side: int) -> Spot:
        angle = azimuth + self.lean(side, radius_mm)
        return c.centre + radius_mm * np.array([math.cos(angle), math.sin(angle)])

    def arc(self, c: Column, radius_mm: float, z: float, a: float, b: float, sign: int) -> None:
        """Go round a column at one height, from azimuth a to b, anticlockwise for sign +."""
        sweep = (sign * (b - a)) % (2 * math.pi)
        steps = max(1, math.ceil(sweep / _ARC))
        for k in range(steps + 1):
            self.at(c, radius_mm, a + sign * sweep * k / steps, 0, z)


def _strand(lane: Lane, half_mm: float, left: bool, radius_mm: float) -> list[tuple[float, float, float]]:
    """One strand of a lane from column edge to column edge, named by the side it starts on."""
    line = lane.line
    side = 1.0 if left else -1.0
    longest = max(range(len(line) - 1), key=lambda i: float(np.hypot(*(line[i + 1] - line[i]))))
    final = side * (-1) ** lane.half_twists
    starts, ends = offset(line, side * half_mm), offset(line, final * half_mm)
    reach = math.sqrt(radius_mm**2 - half_mm**2)
    first = (line[1] - line[0]) / float(np.hypot(*(line[1] - line[0])))
    last = (line[-2] - line[-1]) / float(np.hypot(*(line[-2] - line[-1])))
    starts[0] = starts[0] + first * reach
    ends[-1] = ends[-1] + last * reach
    z = float(lane.level)
    points: list[tuple[float, float, float]] = []
    for i, at in enumerate(line):
        spot = starts[i] if i <= longest else ends[i]
        points.append((float(spot[0]), float(spot[1]), z))
        if lane.step is not None and lane.step[0] == i:
            _, where, top, ahead = (*lane.step, line[i + 1] - at)
            d = ahead / float(np.hypot(*ahead))
            turn = where - d * lane.room_mm + side * half_mm * np.array([-d[1], d[0]])
            points.append((float(turn[0]), float(turn[1]), z))
            z = float(top)
            points.append((float(turn[0]), float(turn[1]), z))
        if i == longest and lane.half_twists:
            points += _twisted(line[i], line[i + 1], side * half_mm, lane.half_twists, z)
    if lane.arrival is not None and lane.arrival != lane.level:
        inner = line[-1] + last * STEP * radius_mm + (ends[-1] - line[-1] - last * reach)
        points.append((float(inner[0]), float(inner[1]), z))
        points.append((float(inner[0]), float(inner[1]), float(lane.arrival)))
    return points


def _twisted(a: Spot, b: Spot, aside_mm: float, count: int, z: float) -> list[tuple[float, float, float]]:
    """Half-twists in the middle of a straight ribbon; the strand that goes from left to right goes over."""
    d = (b - a) / float(np.hypot(*(b - a)))
    normal = np.array([-d[1], d[0]])
    points = []
    for k in range(count + 1):
        at = a + (b - a) * (0.46 + 0.08 * k / count) + aside_mm * normal
        points.append((float(at[0]), float(at[1]), z))
        if k < count:
            at = a + (b - a) * (0.46 + 0.08 * (k + 0.5) / count)
            points.append((float(at[0]), float(at[1]), z + math.copysign(_TWIST, aside_mm)))
        aside_mm = -aside_mm
    return points


def _ring(ring: Ring, thickness_mm: float) -> tuple[Points, list[Wrap]]:
    """A band wound on the hook's shaft, slid on to a ribbon or left by itself."""
    rising = ring.order[0].index <= ring.order[-1].index
    sign = ring.sign if rising else -ring.sign
    column = Column("hook", ring.centre, ring.radius_mm, 0)
    pen = _Pen(0.0)
    wrap, edge, gap = 0.7 * ring.radius_mm, 0.92 * ring.radius_mm, 0.15
    spans: list[tuple[Bight, int, int]] = []
    azimuth = ring.seam
    pen.at(column, edge, azimuth, 0, ring.first)
    for k, bight in enumerate(ring.order):
        start = len(pen.points)
        pen.arc(column, wrap, ring.first + k, azimuth, azimuth - sign * gap, sign)
        spans.append((bight, start, len(pen.points)))
        azimuth -= sign * gap
    pen.at(column, edge, azimuth, 0, ring.first + len(ring.order) - 1)
    pen.arc(column, edge, ring.first, azimuth, ring.seam, sign)
    pen.points.pop()
    n = len(pen.points)
    if not rising:
        pen.points.reverse()
        spans = [(b, n - stop, n - start) for b, start, stop in spans]
    return pen.curve(thickness_mm), [Wrap(b, "hook", ((i, j),), ring.sign) for b, i, j in spans]


def _cords(drawing: Drawing, thickness_mm: float) -> dict[int, Points]:
    """Fasteners as closed rings; each comes back far outside the whole piece."""
    falls = [f for cord in drawing.cords for f in cord.falls]
    if not falls:
        return {}
    levels = [s.level for c in drawing.columns.values() for s in c.slots] + [f.top for f in falls] + [f.bottom for f in falls]
    low, high = min(levels) - 2.0, max(levels) + 2.0
    middle = np.mean([c.centre for c in drawing.columns.values()], axis=0)
    far = max(float(np.hypot(*(f.line[-1] - middle))) for f in falls)
    made: dict[int, Points] = {}
    serial = 0
    for cord in drawing.cords:
        pen = _Pen(drawing.half_mm)
        for fall, after in zip(cord.falls, cord.falls[1:] + cord.falls[:1], strict=True):
            _fall(pen, fall)
            if len(cord.falls) > 1:
                serial += 1
                _far_round(pen, fall, after, middle, far + 0.3 * drawing.unit_mm * serial, low - serial, high + serial)
        made[cord.number] = pen.curve(thickness_mm)
    return made


def _fall(pen: _Pen, fall: Fall) -> None:
    if fall.column is None or not fall.stations:
        assert fall.through is not None
        for spot in reversed(fall.line):
            pen.add(spot, fall.top)
        pen.add(fall.through[0], fall.top)
        pen.add(fall.through[0], fall.bottom)
        for spot in fall.line:
            pen.add(spot, fall.bottom)
        return
    for spot in reversed(fall.line[1:]):
        pen.add(spot, fall.top)
    pen.rise(fall.column, fall.stations, fall.radius_mm, 0, int(fall.top), down=True)
    for spot in fall.line[1:]:
        pen.add(spot, fall.bottom)


def _far_round(pen: _Pen, fall: Fall, after: Fall, middle: Spot, out: float, low: float, high: float) -> None:
    """From the foot of one fall to the head of the next, outside everything."""
    a = math.atan2(*(fall.line[-1] - middle)[::-1])
    b = math.atan2(*(after.line[-1] - middle)[::-1]) + 0.013
    world = Column("far", middle, out, 0)
    pen.at(world, out, a, 0, fall.bottom)
    pen.arc(world, out, low, a, b, 1)
    pen.at(world, out, b, 0, high)
    pen.at(world, float(np.hypot(*(after.line[-1] - middle))), b, 0, high)
    pen.add(after.line[-1], high)


__all__ = ["Cord", "Curves", "Positions", "Wrap", "curves"]
