"""Turns the planned drawing into points: each band and each fastener as one closed polyline.

Heights are counted in layers until the end. A strand changes height straight up, and changes its azimuth or
its distance from a column's middle on the level, so that crossings are easy to rule out.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

import numpy as np
import numpy.typing as npt

from pegwright.loom import Bight
from pegwright.structure.columns import STEP, WRAP, Column, Station
from pegwright.structure.drawing import Arm, Coil, Departure, Descent, Drawing, Lane, Stage, Visit
from pegwright.structure.plane_geometry import PlanVector, azimuth, offset_line
from pegwright.structure.strand_layout import CAP_SEAM

Points = npt.NDArray[np.float64]
Span = tuple[int, int]
_ARC = math.radians(20.0)
TWIST_LIFT = 0.25  # half the height between the strands of a twisted ribbon where they cross, in layers
TWISTED_PART = 0.08  # how much of a ribbon, in its middle, is twisted


class Pen:
    """Draws one closed curve and records where loops sit on it: (the loop's visit, spans of points)."""

    def __init__(self, half_mm: float) -> None:
        self.half = half_mm
        self.points: list[tuple[float, float, float]] = []
        self.wraps: list[tuple[Visit, list[Span]]] = []

    def to_polyline(self, thickness_mm: float) -> Points:
        """Return the points in mm, without the closing one."""
        last = len(self.points)
        while last > 3 and math.dist(self.points[0], self.points[last - 1]) <= 1e-6:
            last -= 1
        return np.array(self.points[:last]) * [1.0, 1.0, thickness_mm]

    def add(self, x: float, y: float, z: float) -> None:
        """Draw straight to a point."""
        point = (float(x), float(y), float(z))
        if not self.points or math.dist(point, self.points[-1]) > 1e-6:
            self.points.append(point)

    def add_polar(self, c: Column, radius_mm: float, azimuth: float, side: int, z: float) -> None:
        """Draw to a point at a distance from a column's middle, half a ribbon's width aside."""
        angle = azimuth + self.lean_angle(side, radius_mm)
        self.add(c.centre[0] + radius_mm * math.cos(angle), c.centre[1] + radius_mm * math.sin(angle), z)

    def lean_angle(self, side: int, radius_mm: float) -> float:
        """Return the angle between a ribbon's azimuth and its strand half a ribbon's width to one side."""
        return math.asin(side * self.half / radius_mm) if side else 0.0

    def add_arc(self, c: Column, radius_mm: float, z: float, ends: tuple[float, float], sign: int) -> None:
        """Draw round a column on the level, from one azimuth to another, anticlockwise for sign +1."""
        a, b = ends
        sweep = (sign * (b - a)) % (2 * math.pi)
        steps = max(1, math.ceil(sweep / _ARC))
        for k in range(steps + 1):
            self.add_polar(c, radius_mm, a + sign * sweep * k / steps, 0, z)

    def draw_tour(self, tour: Sequence[Stage]) -> None:
        """Draw a band all the way round, from the column where it starts."""
        first, last = tour[0].visit, tour[-1].visit
        cap = all(stage.lane is None for stage in tour)
        edge = STEP * first.column.radius_mm
        if cap:
            self.add_polar(first.column, edge, CAP_SEAM, 0, first.level)
        for stage, after in zip(tour, [*tour[1:], tour[0]], strict=True):
            self.draw_visit(stage.visit)
            if stage.lane is None:
                continue
            strand = _lane_strand(stage.lane, self.half, stage.left, stage.visit.column.radius_mm)
            if not stage.forward:
                strand.reverse()
            self.draw_level_step(stage.visit, stage.visit.out, strand[0][2])
            for point in strand:
                self.add(*point)
            self.draw_level_step(after.visit, after.visit.into, strand[-1][2], coming=True)
        if cap:
            self.add_polar(last.column, edge, last.out.azimuth, 0, last.level)
            self.add_arc(last.column, edge, first.level, (last.out.azimuth, CAP_SEAM), last.sign)

    def draw_level_step(self, v: Visit, arm: Arm, z: float, coming: bool = False) -> None:
        """Draw up or down at a column's edge, between a visit's height and a lane's."""
        if z == v.level and arm.beyond is None:
            return
        edge = STEP * v.column.radius_mm
        azimuth = arm.azimuth if arm.beyond is None else arm.beyond
        side = arm.side if arm.beyond is None else -v.sign
        if arm.beyond is not None:
            self.add_arc(
                v.column, edge, v.level, (arm.azimuth, azimuth + self.lean_angle(side, edge)), v.sign
            )
        for height in (z, v.level) if coming else (v.level, z):
            self.add_polar(v.column, edge, azimuth, side, height)

    def draw_visit(self, v: Visit) -> None:
        """Draw a visit, and wherever its loop has gone since."""
        c, s, left = v.column, v.sign, v.departure
        # The side of a band that only passes by keeps clear of the turns that the band may make here.
        wrap = (STEP if v.bight is None else WRAP) * c.radius_mm
        radius = wrap if left is None else left.stations[0].radius_mm
        into = v.into.azimuth + self.lean_angle(v.into.side, radius)
        out = v.out.azimuth + self.lean_angle(v.out.side, radius)
        if v.into.seam:
            self.add_polar(c, wrap, v.into.azimuth, 0, v.level)
        start = len(self.points)
        if left is None:
            self.add_arc(c, radius, v.level, (into, out), s)
            spans = [(start, len(self.points))]
        else:
            azimuth, gap = left.stations[0].azimuth, self.lean_angle(1, radius)
            self.add_arc(c, radius, v.level, (into, azimuth - s * gap), s)
            middle = len(self.points)
            self.draw_departure(v, left)
            again = len(self.points) - 1
            self.add_arc(c, radius, v.level, (azimuth + s * gap, out), s)
            spans = [(start, middle), (again, len(self.points))]
        if v.bight is not None:
            self.wraps.append((v, spans))
        if v.out.seam:
            self.add_polar(c, wrap, v.out.azimuth, 0, v.level)

    def draw_departure(self, v: Visit, left: Departure) -> None:
        """Draw up one strand of the rising pair, on to wherever the loop went, and down the other."""
        c, s, up = v.column, v.sign, left.stations
        self.draw_rise(c, v.level, up, -s)
        if left.to is not None and left.lane is not None:
            flip = (s > 0) == left.over
            if left.lifted:
                self.draw_round_peg(c, up[-1], left.lane, s)
            for point in _lane_strand(left.lane, self.half, flip, c.radius_mm):
                self.add(*point)
            self.draw_visit(left.to)
            for point in reversed(_lane_strand(left.lane, self.half, not flip, c.radius_mm)):
                self.add(*point)
            if left.lifted:
                self.draw_round_peg(c, up[-1], left.lane, s, back=True)
        else:
            top, radius = up[-1], up[-1].radius_mm
            gap = self.lean_angle(1, radius)
            self.add_arc(c, radius, top.level, (top.azimuth - s * gap, top.azimuth + s * gap), -s)
        self.draw_rise(c, v.level, up, s, down=True)

    def draw_round_peg(self, c: Column, top: Station, lane: Lane, sign: int, back: bool = False) -> None:
        """Draw a lifted pair's strand on its way from where it rose round the column to its lane, or back."""
        gap = self.lean_angle(1, top.radius_mm)
        away = azimuth(lane.line[1] - lane.line[0])
        if back:
            self.add_arc(c, top.radius_mm, top.level, (away - sign * gap, top.azimuth + sign * gap), -sign)
        else:
            self.add_arc(c, top.radius_mm, top.level, (top.azimuth - sign * gap, away + sign * gap), -sign)

    def draw_rise(
        self, c: Column, level: float, up: Sequence[Station], side: int, down: bool = False
    ) -> None:
        """Draw one strand of a rising pair, on its `side`, from `level` to the top, or down again."""
        pen = Pen(self.half)
        pen.add_polar(c, up[0].radius_mm, up[0].azimuth, side, level)
        for i, (here, there) in enumerate(pairwise(up)):
            a, b = here.azimuth, there.azimuth
            if here.radius_mm != there.radius_mm:
                steps = 0.33 + 0.26 * here.shift if here.post is there.post else 0.25 if i else 0.0
                pen.add_polar(c, here.radius_mm, a, side, here.level + steps)
                pen.add_polar(c, there.radius_mm, a, side, here.level + steps)
            if abs(b - a) > 1e-9:
                # The strand that leads turns lower down, so that the two never cross.
                z = there.level - (0.275 if side == 0 else 0.35 if side * (b - a) > 0 else 0.2)
                lean = self.lean_angle(side, there.radius_mm)
                pen.add_arc(c, there.radius_mm, z, (a + lean, b + lean), 1 if b > a else -1)
        pen.add_polar(c, up[-1].radius_mm, up[-1].azimuth, side, up[-1].level)
        for point in reversed(pen.points) if down else pen.points:
            self.add(*point)


def _lane_strand(
    lane: Lane, half_mm: float, left: bool, radius_mm: float
) -> list[tuple[float, float, float]]:
    """Return one strand of a lane from column edge to column edge; `left` is the side it starts on."""
    line = lane.line
    side = half_mm if left else -half_mm
    lengths = [float(np.hypot(*(b - a))) for a, b in pairwise(line)]
    longest = lengths.index(max(lengths))
    starts, ends = offset_line(line, side), offset_line(line, side * (-1) ** abs(lane.half_twists))
    reach = math.sqrt(radius_mm**2 - half_mm**2)
    starts[0] = starts[0] + (line[1] - line[0]) * (reach / lengths[0])
    ends[-1] = ends[-1] + (line[-2] - line[-1]) * (reach / lengths[-1])
    plan: list[tuple[PlanVector, float | None, float]] = []  # point, its height if fixed, and an offset to it
    for i, at in enumerate(line):
        plan.append((starts[i] if i <= longest else ends[i], None, 0.0))
        if lane.step is not None and lane.step.segment == i:
            d = (line[i + 1] - at) / lengths[i]
            spot, room = lane.step.spot + side * np.array([-d[1], d[0]]), lane.step.room_mm
            low, high = float(lane.step.low), float(lane.step.high)
            # Level while it is under or over the bands that it rises through.
            rise = -lane.step.before
            plan += [
                (spot + x * room * d, z, 0.0) for x, z in ((-1, low), (rise, low), (rise, high), (1, high))
            ]
        if i == longest and lane.half_twists:
            plan += _half_twists(at, line[i + 1], side, lane.half_twists)
    return _slope_heights(plan, float(lane.start), float(lane.end))


def _half_twists(
    a: PlanVector, b: PlanVector, aside_mm: float, count: int
) -> list[tuple[PlanVector, float | None, float]]:
    """Return half-twists in the middle of a straight ribbon.

    The strand from left to right is on top, of those counted below nothing the one from right to left.
    """
    over, count = math.copysign(TWIST_LIFT, count), abs(count)
    d = (b - a) / float(np.hypot(*(b - a)))
    normal = np.array([-d[1], d[0]])
    found: list[tuple[PlanVector, float | None, float]] = []
    for k in range(count + 1):
        found.append(
            (a + (b - a) * (0.5 - TWISTED_PART / 2 + TWISTED_PART * k / count) + aside_mm * normal, None, 0.0)
        )
        if k < count:
            middle = a + (b - a) * (0.5 - TWISTED_PART / 2 + TWISTED_PART * (k + 0.5) / count)
            found.append((middle, None, over * math.copysign(1.0, aside_mm)))
        aside_mm = -aside_mm
    return found


def _slope_heights(
    plan: Sequence[tuple[PlanVector, float | None, float]], start: float, end: float
) -> list[tuple[float, float, float]]:
    """Interpolate a strand's height evenly between the points where it is fixed."""
    spots = np.array([spot for spot, _, _ in plan])
    along = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(spots, axis=0).T))])
    fixed = [(0.0, start)] + [(float(along[i]), z) for i, (_, z, _) in enumerate(plan) if z is not None]
    fixed.append((float(along[-1]), end))
    found = []
    passed = 0
    for i, (spot, z, lift) in enumerate(plan):
        if z is not None:
            passed += 1
            height = z
        else:
            (x0, z0), (x1, z1) = fixed[passed], fixed[passed + 1]
            height = z0 + (z1 - z0) * (float(along[i]) - x0) / (x1 - x0) if x1 > x0 else z1
        found.append((float(spot[0]), float(spot[1]), height + lift))
    return found


def draw_coil(ring: Coil, thickness_mm: float) -> tuple[Points, list[tuple[Bight, Span]]]:
    """Return curve and turns of a band wound on the hook's shaft, slid on to a ribbon or not."""
    rising = ring.order[0].index <= ring.order[-1].index
    sign = ring.sign if rising else -ring.sign
    column = Column("hook", ring.centre, ring.radius_mm)
    pen = Pen(0.0)
    wrap, edge = 0.7 * ring.radius_mm, 0.92 * ring.radius_mm
    gap = max(0.15, 0.16 / wrap)
    spans: list[tuple[Bight, Span]] = []
    azimuth = ring.seam
    pen.add_polar(column, edge, azimuth, 0, ring.bottom)
    for k, bight in enumerate(ring.order):
        start = len(pen.points)
        pen.add_arc(column, wrap, ring.bottom + k, (azimuth, azimuth - sign * gap), sign)
        spans.append((bight, (start, len(pen.points))))
        azimuth -= sign * gap
    pen.add_polar(column, edge, azimuth, 0, ring.bottom + len(ring.order) - 1)
    pen.add_arc(column, edge, ring.bottom, (azimuth, ring.seam), sign)
    curve = pen.to_polyline(thickness_mm)
    if rising:
        return curve, spans
    n = len(curve)
    return curve[::-1].copy(), [(b, (n - j, n - i)) for b, (i, j) in spans]


def fastener_rings(drawing: Drawing, thickness_mm: float) -> dict[int, tuple[Points, ...]]:
    """Draw fasteners as one closed ring for each descent, as if each end had a clip of its own."""
    made: dict[int, tuple[Points, ...]] = {}
    for number, cord in drawing.cords.items():
        pens = []
        for descent in cord:
            pens.append(Pen(drawing.half_mm))
            _draw_descent(pens[-1], descent)
        made[number] = tuple(pen.to_polyline(thickness_mm) for pen in pens)
    return made


def fastener_cords(drawing: Drawing, thickness_mm: float) -> dict[int, Points]:
    """Draw fasteners as closed rings, each returning far outside the whole piece."""
    descents = [descent for cord in drawing.cords.values() for descent in cord]
    if not descents:
        return {}
    heights = [s.level for c in drawing.columns.values() for s in c.slots]
    heights += [h for f in descents for h in (f.top, f.bottom)]
    low, high = min(heights) - 2.0, max(heights) + 2.0
    middle = np.mean([c.centre for c in drawing.columns.values()], axis=0)
    far = max(float(np.hypot(*(f.line[-1] - middle))) for f in descents)
    made: dict[int, Points] = {}
    serial = 0
    for number, cord in drawing.cords.items():
        pen = Pen(drawing.half_mm)
        for descent, after in zip(cord, [*cord[1:], cord[0]], strict=True):
            _draw_descent(pen, descent)
            if len(cord) > 1:
                serial += 1
                world = Column("far", middle, far + 0.3 * drawing.unit_mm * serial)
                _draw_return_path(pen, descent, after, world, (low - serial, high + serial))
        made[number] = pen.to_polyline(thickness_mm)
    return made


def _draw_descent(pen: Pen, descent: Descent) -> None:
    line = descent.line if descent.column is None else descent.line[1:]
    for spot in reversed(line):
        pen.add(spot[0], spot[1], descent.top)
    if descent.column is not None:
        pen.draw_rise(descent.column, descent.bottom, descent.stations, 0, down=True)
    for spot in line:
        pen.add(spot[0], spot[1], descent.bottom)


def _draw_return_path(
    pen: Pen, descent: Descent, after: Descent, world: Column, bounds: tuple[float, float]
) -> None:
    """Draw from the foot of one descent to the head of the next, outside the piece, below and above it."""
    foot, head = descent.line[-1] - world.centre, after.line[-1] - world.centre
    a, b = math.atan2(foot[1], foot[0]), math.atan2(head[1], head[0])
    # The shorter way round: below everything there is nothing to pass on either side.
    sign = 1 if (b - a) % (2 * math.pi) < math.pi else -1
    b -= 0.013 * sign  # a little short of the lane that leaves there
    pen.add_polar(world, world.radius_mm, a, 0, descent.bottom)
    pen.add_arc(world, world.radius_mm, bounds[0], (a, b), sign)
    pen.add_polar(world, world.radius_mm, b, 0, bounds[1])
    pen.add_polar(world, float(np.hypot(*head)), b, 0, bounds[1])
    pen.add(after.line[-1][0], after.line[-1][1], bounds[1])
