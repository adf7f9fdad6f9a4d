"""From events to a plan of the drawing: visits of bands to columns, lanes between them, rising pairs.

Nothing that lies already is ever moved, except that a loop's wrap shrinks (when it is pulled up inside the
loops above) or grows (when it is lifted over them); so every step is an isotopy of what was there before.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

import numpy as np

from pegwright.loom.events import Bight, Drawn, Event, Fastened, Laid, Lifted, Moved
from pegwright.structure.columns import HALF, WRAP, Column, Slot, Station
from pegwright.structure.layers import Heights, Plan, Spot

HOOK, START = "hook", "start"
CAP_SEAM = 0.3  # azimuth of the seam of a band wound on one peg
TAU = 2 * math.pi


@dataclass(frozen=True)
class Arm:
    """Where a strand meets a wrap: azimuth, side of it (−1, 0, +1: anticlockwise positive), seam or lane."""

    azimuth: float
    side: int
    seam: bool = False
    beyond: float | None = None  # past the last turn's seam: the azimuth of the lane, met at the column's edge


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


@dataclass
class Leaving:
    """How a loop left its column: up by `stations` at `radius_mm`; then along a lane, or round as a curtain."""

    stations: list[Station]
    top: int
    radius_mm: float = 0.0
    over: bool = True  # turned over: across the middle, and out on the other side
    lane: Lane | None = None
    to: Visit | None = None


@dataclass
class Lane:
    """A ribbon in plan, from column to column (or to a point far away), at one height but for steps."""

    line: list[Spot]
    level: int
    half_twists: int = 0
    step: tuple[int, Spot, int] | None = None  # segment, where, new level: up through slid bands
    room_mm: float = 0.0  # how far before that spot it rises
    arrival: int | None = None  # height at which it enters the target, if it must step there


class Stage(NamedTuple):
    """One step of a band's tour: a visit, then the lane to the next one (None: straight up a seam).

    `left` names the lane's strand by the side it has where the lane starts; `forward` the way it is gone along.
    """

    visit: Visit
    lane: Lane | None = None
    left: bool = False
    forward: bool = True


@dataclass
class Ring:
    """A band wound on nothing but a column of its own, `levels` and sign."""

    band: int
    centre: Spot
    radius_mm: float
    first: int
    order: tuple[Bight, ...]
    sign: int
    seam: float


@dataclass
class Cord:
    """A fastener: down each column in turn by stations (kept bottom first), out along a lane, and back."""

    number: int
    falls: list[Fall] = field(default_factory=list)


@dataclass
class Fall:
    """One way down of a cord. Without a column it passes between the two strands of a lane (`start`)."""

    column: Column | None
    line: list[Spot]
    top: float
    bottom: float
    stations: list[Station] = field(default_factory=list)
    radius_mm: float = 0.0
    through: tuple[Spot, Spot] | None = None


@dataclass
class Drawing:
    """The whole plan. `tours[b]` is band b's way round as it was laid."""

    unit_mm: float
    half_mm: float
    tours: dict[int, list[Stage]]
    rings: dict[int, Ring]
    cords: list[Cord]
    columns: dict[str, Column]
    arbitrary: dict[int, int]  # ribbons of a band that had to take a half-turn, either way


Group = tuple[str, list[Bight], int]  # a peg, the loops wound on it, its sign


class Draughtsman:
    """Draws one event after the other."""

    def __init__(self, events: Sequence[Event], position: Callable[[str], tuple[float, float]]) -> None:
        self.spots = _spots(events, position)
        unit = _least_gap(list(self.spots.values()))
        self.unit = unit
        self.plan = Plan(self.spots, 0.38 * unit, 0.24 * unit)
        self.heights = Heights(unit / 8)
        risers = {name: 0 for name in self.spots}
        for e in events:
            names = (
                e.holders if isinstance(e, Fastened) else [e.source] if isinstance(e, Drawn | Moved) else []
            )
            for name in names:
                if name in risers:
                    risers[name] += 1
        self.columns = {n: Column(n, p, 0.38 * unit, risers[n]) for n, p in self.spots.items()}
        self.at: dict[Bight, Visit] = {}  # where each loop is now
        self.hung: dict[int, Laid] = {}
        self.outs: list[float] = []  # azimuths at which fasteners leave the piece
        half = HALF * 0.38 * unit
        self.out = Drawing(unit, half, {}, {}, [], self.columns, {})
        for e in events:
            match e:
                case Laid():
                    self._lay(e)
                case Drawn() | Moved():
                    self._carry(e)
                case Lifted():
                    self._lift(e)
                case Fastened():
                    self._fasten(e)
        for number, laid in self.hung.items():
            self._ring(laid, self.spots[f"{HOOK}:{number}"], 0.38 * unit, 0, tuple(s.bight for s in laid.seats))
        for column in self.columns.values():
            column.settle_posts()

    # --- bands laid -----------------------------------------------------------------------------------

    def _lay(self, e: Laid) -> None:
        if e.seats[0].holder == HOOK:
            self.hung[e.band] = e
            return
        groups, twists = _ordered(_groups(e), e.twists, self.spots)
        span = max(len(bights) for _, bights, _ in groups)
        names = [name for name, _, _ in groups]
        lines = [self.plan.way(a, b) for a, b in zip(names, names[1:], strict=False)]
        crossing = _any_cross(lines, self.unit)
        if crossing:
            span += len(lines) - 1
        places: set[object] = set(names)
        for line in lines:
            places |= self._cells(line)
        level = self.heights.below(places, span) if e.beneath else self.heights.above(places, span)
        lanes = [Lane(line, level + i * crossing, twists) for i, (line, twists) in enumerate(zip(lines, twists, strict=True))]
        for before, lane in zip(lanes, lanes[1:], strict=False):
            before.arrival = lane.level
        last = len(groups) - 1
        out: list[list[Visit]] = []
        back: list[list[Visit]] = []
        for i, (name, bights, sign) in enumerate(groups):
            column = self.columns[name]
            base = lanes[min(i, last - 1)].level if lanes else level
            if last == 0:
                self._cap(e, column, level, bights, sign)
                return
            behind = _azimuth(lines[i - 1][-2] - lines[i - 1][-1]) if i else None
            ahead = _azimuth(lines[i][1] - lines[i][0]) if i < last else None
            if behind is None or ahead is None:
                azimuth = ahead if behind is None else behind
                assert azimuth is not None
                # The width of the loop's own wedge: none, its two arms lie side by side.
                out.append(self._wind(column, base, bights, sign, azimuth, azimuth, (azimuth, 0.0)))
                back.append([])
                continue
            there, return_ = _sweep(behind, ahead, sign), _sweep(ahead, behind, sign)
            ways = ((behind, ahead), (ahead, behind))
            main = 0 if there >= return_ - 1e-9 else 1
            (a, b), (c, d) = ways[main], ways[1 - main]
            wedge = (b, (a - b) % TAU) if sign > 0 else (a, (b - a) % TAU)
            loops = self._wind(column, base, bights, sign, a, b, wedge)
            passing = [Visit(column, base, sign, Arm(c, sign), Arm(d, -sign))]
            out.append(passing if main else loops)
            back.append(loops if main else passing)
        tour: list[Stage] = []
        for i in range(last):
            tour += [Stage(v) for v in out[i][:-1]]
            # With sign + the strand that goes out keeps to the right of its lane.
            tour.append(Stage(out[i][-1], lanes[i], groups[i][2] < 0))
        for i in range(last, 0, -1):
            visits = out[last] if i == last else back[i]
            tour += [Stage(v) for v in visits[:-1]]
            tour.append(Stage(visits[-1], lanes[i - 1], groups[i - 1][2] > 0, forward=False))
        self.out.tours[e.band] = tour

    def _wind(
        self,
        column: Column,
        level: int,
        bights: Sequence[Bight],
        sign: int,
        a: float,
        b: float,
        wedge: tuple[float, float],
    ) -> list[Visit]:
        """Visits for the turns of a band round one column, lowest first; the last one leaves at azimuth b."""
        seam = 3.5 * HALF / WRAP
        visits = []
        into = Arm(a, sign)
        for k, bight in enumerate(bights):
            final = k == len(bights) - 1
            mark = a + sign * (HALF / WRAP) - sign * seam * (k + 1)
            out = Arm(mark, 0, seam=True)
            if final:
                room = TAU - _sweep(into.azimuth, b, sign) if k else 0.0
                tight = k > 0 and (_sweep(a, b, sign) < 1e-9 or room < 2 * seam)
                out = Arm(mark, 0, beyond=b) if tight else Arm(b, -sign)
            visit = Visit(column, level + k, sign, into, out, bight)
            slot = column.take(Slot(level + k, [wedge], bight))
            if len(bights) > 1:
                span = seam * len(bights)
                slot.arms.append((a - span, span) if sign > 0 else (a, span))
            if not final:
                slot.posts.append(mark)
            self.at[bight] = visit
            visits.append(visit)
            into = Arm(mark, 0, seam=True)
        return visits

    def _cap(self, e: Laid, column: Column, level: int, bights: Sequence[Bight], sign: int) -> None:
        """Draw a band wound on one column only: it comes back down outside its own turns."""
        visits = self._wind(column, level, bights, sign, CAP_SEAM, CAP_SEAM, (CAP_SEAM, 0.0))
        last = visits[-1].out
        seam = 3.5 * HALF / WRAP
        mark = CAP_SEAM + sign * (HALF / WRAP) - sign * seam * len(bights)
        visits[0].into = Arm(CAP_SEAM, 0)
        visits[-1].out = Arm(mark, 0, beyond=last.beyond)
        self.out.tours[e.band] = [Stage(v) for v in visits]

    def _ring(self, e: Laid, centre: Spot, radius: float, first: int, order: tuple[Bight, ...], seam: float = 0.3) -> None:
        self.out.rings[e.band] = Ring(e.band, centre, radius, first, order, e.seats[0].sign, seam)

    # --- loops worked ---------------------------------------------------------------------------------

    def _carry(self, e: Drawn | Moved) -> None:
        visit = self.at[e.bight]
        source, target = self.columns[e.source], self.columns[e.target]
        line = self.plan.way(e.source, e.target)
        slid = e.slid[::-1] if isinstance(e, Drawn) else ()
        places: set[object] = {e.source, e.target, *self._cells(line)}
        spot, segment, room = self._shaft(line) if slid else (line[0], 0, 0.0)
        if slid:
            places |= self.heights.cells([spot, spot], room)
        level = self.heights.above(places, 1 + (len(slid) + 1 if slid else 0))
        over = isinstance(e, Drawn)
        away = _azimuth(line[1] - line[0])
        final = away + math.pi if over else away
        radius = source.next_riser_mm()
        through = set(e.through) if isinstance(e, Drawn) else set()
        stations = source.rise(visit.level, through.__contains__, radius, _wrap(visit), final)
        turned = final - _middle(visit)
        turned = (turned + math.pi) % TAU - math.pi
        if abs(turned) > math.pi - 0.05:
            self.out.arbitrary[e.bight.band] = self.out.arbitrary.get(e.bight.band, 0) + 1
        own = next(s for s in source.slots if s.level == visit.level)
        own.gone = True
        source.take(Slot(level, [(away, 0.0)]))
        lane = Lane(line, level)
        top = level
        if slid:
            top = level + len(slid) + 1
            lane.step = (segment, spot, top)
            lane.room_mm = 0.35 * room
            self._slide(slid, spot, room, level + 1, _azimuth(line[segment + 1] - line[segment]))
        sign = -visit.sign if over else visit.sign
        back = _azimuth(line[-2] - line[-1])
        new = Visit(target, top, sign, Arm(back, sign), Arm(back, -sign), e.bight)
        target.take(Slot(top, [(back, 0.0)], e.bight))
        visit.leaving = Leaving(stations, level, radius, over, lane, new)
        self.at[e.bight] = new

    def _shaft(self, line: Sequence[Spot]) -> tuple[Spot, int, float]:
        """Find the roomiest spot of a lane for bands slid on to it: where, on which segment, how wide."""
        best: tuple[float, Spot, int] | None = None
        centres = np.array(list(self.spots.values()))
        for i, (a, b) in enumerate(zip(line, line[1:], strict=False)):
            for u in np.linspace(0.05, 0.95, 37):
                at = a + u * (b - a)
                room = float(np.hypot(*(centres - at).T).min()) - 0.38 * self.unit
                corner = min(float(np.hypot(*(at - c))) for c in (a, b))
                room = min(room, corner, 0.3 * self.unit)
                if best is None or room > best[0] + 1e-9:
                    best = (room, at, i)
        assert best is not None
        return best[1], best[2], 0.9 * best[0]

    def _slide(self, slid: Sequence[Bight], spot: Spot, room: float, level: int, along: float) -> None:
        bands: list[int] = []
        for b in slid:
            if b.band not in bands:
                bands.append(b.band)
        for band in bands:
            order = tuple(b for b in slid if b.band == band)
            laid = self.hung.pop(band)
            if len(order) != len(laid.seats):
                raise ValueError(f"only some loops of band {band} were slid")
            self._ring(laid, spot, room, level, order, along + math.pi / 2)
            level += len(order)

    def _lift(self, e: Lifted) -> None:
        visit = self.at[e.bight]
        column = visit.column
        level = self.heights.above([column.name])
        middle = _middle(visit)
        stations = column.rise_outside(visit.level, _wrap(visit), middle)
        stations[-1].azimuth = stations[-2].azimuth  # the curtain closes round whatever azimuth it rose at
        next(s for s in column.slots if s.level == visit.level).lifted = True
        column.take(Slot(level))
        visit.leaving = Leaving(stations, level)

    # --- finishing ------------------------------------------------------------------------------------

    def _fasten(self, e: Fastened) -> None:
        cord = Cord(e.fastener)
        caught = list(e.caught)
        for holder, count in zip(e.holders, e.counts, strict=True):
            mine, caught = caught[:count], caught[count:]
            cord.falls.append(self._fall(e, holder, set(mine)))
        self.out.cords.append(cord)

    def _fall(self, e: Fastened, holder: str, mine: set[Bight]) -> Fall:
        if holder == START:
            return self._start(e)
        column = self.columns[holder]
        line = self._outwards(holder)
        places = {holder, *self._cells(line)}
        top, bottom = self.heights.above(places), self.heights.below(places, 2)
        column.take(Slot(bottom + 1))
        radius = column.next_riser_mm()
        away = _azimuth(line[1] - line[0])
        stations = column.rise(bottom, mine.__contains__, radius, None, away)
        column.take(Slot(bottom, [(away, 0.0)]))
        column.take(Slot(top, [(away, 0.0)]))
        return Fall(column, line, top, bottom, stations, radius)

    def _start(self, e: Fastened) -> Fall:
        """Go between the two strands of the first band, beside its first column, under all that lies on it."""
        tour = self.out.tours[1]
        visit = tour[0].visit
        at = next((s for s in tour if s.lane is not None), None)
        centre = visit.column.centre
        if at is None or at.lane is None:  # a band wound on one peg: round its strand at the column's edge
            azimuth = CAP_SEAM - 0.04 * visit.sign
            towards = np.array([math.cos(azimuth), math.sin(azimuth)])
            spot, level = centre + towards * (0.945 * visit.column.radius_mm), visit.level
        else:
            line, level = at.lane.line, at.lane.level
            towards = (line[1] - line[0]) / float(np.hypot(*(line[1] - line[0])))
            spot = centre + towards * (0.40 * self.unit)
        around = self._outwards(visit.column.name)
        aside = np.array([-towards[1], towards[0]])
        if float((around[1] - centre) @ aside) < 0:
            aside = -aside
        edge = 0.44 * self.unit
        a0, a1 = _azimuth(towards), _azimuth(around[1] - around[0])
        turn = (a1 - a0 + math.pi) % TAU - math.pi
        ring = [centre + edge * np.array([math.cos(a0 + turn * k / 8), math.sin(a0 + turn * k / 8)]) for k in range(9)]
        line = [*ring, *around[1:]]
        lift = 0.36 + 0.06 / (1 + e.fastener)
        return Fall(None, line, level + lift, level - lift, through=(spot, ring[0]))

    def _outwards(self, holder: str) -> list[Spot]:
        """A lane from a holder to far outside the whole piece."""
        middle = np.mean(list(self.spots.values()), axis=0)
        here = self.spots[holder]
        far = max(float(np.hypot(*(p - middle))) for p in self.spots.values()) + 3 * self.unit
        lean = here - middle
        start = _azimuth(lean) if float(np.hypot(*lean)) > 1e-9 else -math.pi / 2
        for k in range(48):
            angle = start + (k // 2 + k % 2) * (1 if k % 2 else -1) * TAU / 48
            goal = middle + far * np.array([math.cos(angle), math.sin(angle)])
            apart = all(abs((angle - a + math.pi) % TAU - math.pi) > 0.04 for a in self.outs)
            if apart and self.plan.straight(holder, goal):
                self.outs.append(angle)
                return [here, goal]
        while any(abs((start - a + math.pi) % TAU - math.pi) <= 0.04 for a in self.outs):
            start += 0.05
        self.outs.append(start)
        goal = middle + far * np.array([math.cos(start), math.sin(start)])
        return self.plan.way_to(holder, goal)

    def _cells(self, line: Sequence[Spot]) -> set[object]:
        """The squares a lane runs over outside the columns at its ends."""
        return self.heights.cells(_trim(line, 0.38 * self.unit))


def _trim(line: Sequence[Spot], radius: float) -> list[Spot]:
    ends = []
    for a, b in ((line[0], line[1]), (line[-1], line[-2])):
        ends.append(a + (b - a) * min(0.5, radius / float(np.hypot(*(b - a)))))
    return [ends[0], *line[1:-1], ends[1]]


def _groups(e: Laid) -> list[Group]:
    groups: list[Group] = []
    for seat in e.seats:
        if groups and groups[-1][0] == seat.holder:
            groups[-1][1].append(seat.bight)
        else:
            groups.append((seat.holder, [seat.bight], seat.sign))
    return groups


def _ordered(
    groups: list[Group], twists: Sequence[int], spots: dict[str, Spot]
) -> tuple[list[Group], list[int]]:
    """Put the pegs of every untwisted part in an order whose lanes do not cross: the shortest way through.

    A part keeps the peg at which it is joined to the next, so the twists stay where they are.
    """
    parts: list[list[Group]] = [[groups[0]]]
    between: list[int] = []
    for group, twist in zip(groups[1:], twists, strict=True):
        if twist:
            between.append(twist)
            parts.append([])
        parts[-1].append(group)
    order: list[Group] = []
    counts: list[int] = []
    for k, part in enumerate(parts):
        order += _shortest_way(part, k > 0, k < len(parts) - 1, spots)
        counts += [0] * (len(part) - 1) + between[k : k + 1]
    return order, counts


def _shortest_way(part: list[Group], fix_first: bool, fix_last: bool, spots: dict[str, Spot]) -> list[Group]:
    """Order the pegs of a part by two-exchange until no exchange shortens the way, ends kept where told."""
    if len(part) < 3:
        return part

    def length(way: list[Group]) -> float:
        return sum(float(np.hypot(*(spots[a[0]] - spots[b[0]]))) for a, b in zip(way, way[1:], strict=False))

    way, best = list(part), length(part)
    improved = True
    while improved:
        improved = False
        for i in range(1 if fix_first else 0, len(way) - 1):
            for j in range(i + 1, len(way) - (1 if fix_last else 0)):
                trial = way[:i] + way[i : j + 1][::-1] + way[j + 1 :]
                if length(trial) < best - 1e-9:
                    way, best, improved = trial, length(trial), True
    return way


def _azimuth(v: Spot) -> float:
    return math.atan2(float(v[1]), float(v[0]))


def _sweep(a: float, b: float, sign: int) -> float:
    return (sign * (b - a)) % TAU


def _wrap(visit: Visit) -> tuple[float, float]:
    """The azimuths (start, width) that a visit's wrap covers."""
    width = _sweep(visit.into.azimuth, visit.out.azimuth, visit.sign) or TAU
    start = visit.into.azimuth if visit.sign > 0 else visit.out.azimuth
    return start, width


def _middle(visit: Visit) -> float:
    start, width = _wrap(visit)
    return start + width / 2


def _any_cross(lines: Sequence[Sequence[Spot]], unit: float) -> bool:
    """Say whether lanes of one band cross or come too near each other outside the columns they share."""
    dense = []
    for line in lines:
        trimmed = _trim(line, 0.38 * unit)
        points = [a + (b - a) * u for a, b in zip(trimmed, trimmed[1:], strict=False) for u in np.linspace(0, 1, 40)]
        dense.append(np.array(points))
    for i in range(len(dense)):
        for j in range(i):
            gap = np.hypot(*(dense[i][:, None, :] - dense[j][None, :, :]).reshape(-1, 2).T).min()
            if gap < 0.06 * unit:
                return True
    return False


def _least_gap(spots: Sequence[Spot]) -> float:
    if len(spots) < 2:
        return 16.0
    points = np.array(spots)
    best = math.inf
    for i in range(len(points) - 1):
        best = min(best, float(np.hypot(*(points[i + 1 :] - points[i]).T).min()))
    return best


def _spots(
    events: Iterable[Event], position: Callable[[str], tuple[float, float]]
) -> dict[str, Spot]:
    """Place every holder: pegs where they stand, free ends beyond the piece, unused hung bands far away."""
    names: list[str] = []
    origin: dict[str, str] = {}
    hung: list[int] = []
    for e in events:
        match e:
            case Laid():
                names += [s.holder for s in e.seats if s.holder != HOOK]
                if e.seats[0].holder == HOOK:
                    hung.append(e.band)
            case Drawn() | Moved():
                names += [e.source, e.target]
                origin.setdefault(e.target, e.source)
                if isinstance(e, Drawn):
                    hung = [b for b in hung if b not in {s.band for s in e.slid}]
    spots = {n: np.array(position(n), float) for n in dict.fromkeys(names) if "." not in n}
    middle = np.mean(list(spots.values()), axis=0) if spots else np.zeros(2)
    far = max((float(np.hypot(*(p - middle))) for p in spots.values()), default=0.0)
    unit = _least_gap(list(spots.values()))
    angles: dict[str, float] = {}
    for name in dict.fromkeys(n for n in names if "." in n):
        end, _, number = name.rpartition(".")
        if end not in angles:
            lean = spots.get(origin.get(name, ""), middle) - middle
            angle = _azimuth(lean) if float(np.hypot(*lean)) > 1e-9 else 0.0
            while any(abs((angle - a + math.pi) % TAU - math.pi) < 0.45 for a in angles.values()):
                angle += 0.5
            angles[end] = angle
        out = far + unit * (1.5 + int(number))
        spots[name] = middle + out * np.array([math.cos(angles[end]), math.sin(angles[end])])
    for k, band in enumerate(hung):
        spots[f"{HOOK}:{band}"] = middle + np.array([(k - len(hung) / 2) * unit, -far - 4 * unit])
    return spots

