"""Lays out the drawing from the machine's events, one after the other.

Nothing already laid out is ever moved, except that a loop's wrap shrinks (when the loop is pulled up inside
the loops above it) or grows (when it is lifted over them). So every step is an isotopy of what was there.
"""

from __future__ import annotations

import itertools
import math
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import pairwise

import numpy as np

from pegwright.finding import RefusedError, phrase
from pegwright.loom import HOOK, START, Bight, Drawn, Event, Fastened, Laid, Lifted, Moved
from pegwright.structure.band_order import Group, group_seats, lanes_meet, order_stops
from pegwright.structure.columns import HALF, OUTER, STEP, WRAP, Column, Slot, Station
from pegwright.structure.drawing import Arm, Coil, Departure, Descent, Drawing, Lane, RibbonRise, Stage, Visit
from pegwright.structure.floor_plan import FloorPlan
from pegwright.structure.heights import Footprint, Heights
from pegwright.structure.holder_positions import least_gap, place_holders
from pegwright.structure.plane_geometry import (
    TAU,
    PlanVector,
    azimuth,
    segments_cross,
    sweep_angle,
    trim_ends,
    wrap_angle,
)

RADIUS, GAP = 0.38, 0.24  # a column's radius, and the gap left between two, in units of the least distance
CAP_SEAM = 0.3  # azimuth of the seam of a band wound on one peg
MAX_SQUARES = 500
"""A lane is cut into at most this many squares, however long it is beside the least gap between two pegs."""
_BESIDE = 0.4  # angle between where a lifted pair rises and where it leaves, at least
_SEAM = 3.5 * HALF / WRAP  # angle from one seam of a wound band to the next
_BEFORE = 0.005  # angle, of no account: a sweep of nothing would be a whole turn


def lay_out_strands(events: Sequence[Event], position: Callable[[str], tuple[float, float]]) -> Drawing:
    """Lay out the drawing of a list of events: which column, height and lane every strand takes.

    Raises:
        KeyError: a peg has no position.
        ValueError: two pegs stand in one place, or only some loops of a band were slid.
    """
    return _StrandLayout(events, position).out


def _edge_azimuth(mark: float, end: float, sign: int) -> float:
    """Return where a band's last turn goes out to the column's edge, to follow that to `end`: at `mark`.

    Where it would come round almost to there, it goes out just before the end.
    """
    return end - sign * _BEFORE if TAU - sweep_angle(mark, end, sign) < _SEAM else mark


def _longest_lane_mm(events: Sequence[Event], spots: Mapping[str, PlanVector]) -> float:
    """Return the distance between the two holders furthest apart that one band joins."""
    pairs = set()
    for event in events:
        match event:
            case Laid():
                pairs |= {(a.holder, b.holder) for a, b in pairwise(event.seats)}
            case Drawn() | Moved():
                pairs.add((event.source, event.target))
    known = [(spots[a], spots[b]) for a, b in pairs if a in spots and b in spots]
    return max((float(np.hypot(*(a - b))) for a, b in known), default=0.0)


class _StrandLayout:
    def __init__(self, events: Sequence[Event], position: Callable[[str], tuple[float, float]]) -> None:
        self.spots = place_holders(events, position)
        self.unit = least_gap(list(self.spots.values()))
        self.radius = RADIUS * self.unit
        self.plan = FloorPlan(self.spots, self.radius, GAP * self.unit)
        self.heights = Heights(max(self.unit / 8, _longest_lane_mm(events, self.spots) / MAX_SQUARES))
        self.columns = {n: Column(n, p, self.radius) for n, p in self.spots.items()}
        self.out = Drawing(self.unit, HALF * self.radius, self.columns)
        self.visits: dict[Bight, Visit] = {}  # where each loop is now
        self.hung: dict[int, Laid] = {}
        self.ribbons = Counter(e.slid[::-1] for e in events if isinstance(e, Drawn) and e.slid)
        self.lows: dict[tuple[Bight, ...], Iterator[int]] = {}  # the lowest layer of each further ribbon
        self.exits: list[list[PlanVector]] = []  # the paths by which fasteners leave the piece
        starts = sum(isinstance(e, Fastened) and START in e.holders for e in events)
        self.starts: Iterator[Descent] = iter(())
        for e in events:
            match e:
                case Laid():
                    early = self._reserve_descents(e, starts) if e.band == 1 and starts else []
                    self._lay_band(e)
                    if early:
                        self.starts = iter(self._close_descents(early))
                case Drawn() | Moved():
                    self._carry_loop(e)
                case Lifted():
                    self._lift_loop(e)
                case Fastened():
                    self._fasten(e)
        for number, laid in self.hung.items():
            order = tuple(s.bight for s in laid.seats)
            spot, sign = self.spots[f"{HOOK}:{number}"], laid.seats[0].sign
            self.out.coils[number] = Coil(spot, self.radius, 0, order, sign, CAP_SEAM)
        for column in self.columns.values():
            column.assign_radii()

    # --- bands laid -----------------------------------------------------------------------------------

    def _lay_band(self, e: Laid) -> None:
        if e.seats[0].holder == HOOK:
            self.hung[e.band] = e
            return
        stops, twists = order_stops(group_seats(e), e.twists, self.spots)
        lines = self._peg_paths([name for name, _, _ in stops])
        levels, lanes = self._choose_heights(e, stops, lines, twists)
        last = len(stops) - 1
        if last == 0:
            self._lay_cap(e.band, self.columns[stops[0][0]], levels[0], stops[0][1], stops[0][2])
            return
        out: list[list[Visit]] = []
        back: list[list[Visit]] = []
        for i, (name, bights, sign) in enumerate(stops):
            column, level = self.columns[name], levels[i]
            behind = azimuth(lines[i - 1][-2] - lines[i - 1][-1]) if i else None
            ahead = azimuth(lines[i][1] - lines[i][0]) if i < last else None
            if behind is None or ahead is None:
                only = behind if ahead is None else ahead
                assert only is not None
                out.append(self._wind_turns(column, level, bights, sign, a=only, b=only, wedge=(only, 0.0)))
                back.append([])
                continue
            # A band calls twice at a peg between two others; its loop is the longer way round.
            both_ways = ((behind, ahead), (ahead, behind))
            main = 0 if sweep_angle(behind, ahead, sign) >= sweep_angle(ahead, behind, sign) - 1e-9 else 1
            (a, b), (c, d) = both_ways[main], both_ways[1 - main]
            wedge = (b, (a - b) % TAU) if sign > 0 else (a, (b - a) % TAU)
            loops = self._wind_turns(column, level, bights, sign, a=a, b=b, wedge=wedge)
            passing = [Visit(column, level, sign, Arm(c, sign), Arm(d, -sign))]
            out.append(passing if main else loops)
            back.append(loops if main else passing)
        tour: list[Stage] = []
        for i in range(last):
            tour += [Stage(v) for v in out[i][:-1]]
            # With sign + the strand that goes out keeps to the right of its lane.
            tour.append(Stage(out[i][-1], lanes[i], stops[i][2] < 0))
        for i in range(last, 0, -1):
            visits = out[last] if i == last else back[i]
            tour += [Stage(v) for v in visits[:-1]]
            tour.append(Stage(visits[-1], lanes[i - 1], stops[i - 1][2] > 0, forward=False))
        self.out.tours[e.band] = tour

    def _peg_paths(self, names: Sequence[str]) -> list[list[PlanVector]]:
        """Return the paths from peg to peg; where two would leave a peg together, bend the second aside."""
        lines: list[list[PlanVector]] = []
        for a, b in pairwise(names):
            line = self.plan.path(a, b)
            if lines:
                behind = azimuth(lines[-1][-2] - lines[-1][-1])
                apart = wrap_angle(azimuth(line[1] - line[0]) - behind)
                if abs(apart) < 0.25:
                    angle = behind + math.copysign(0.35, apart)
                    first = line[0] + 1.35 * self.radius * np.array([math.cos(angle), math.sin(angle)])
                    line = [line[0], *self.plan.path_to(first, line[-1], (a, b))]
            lines.append(line)
        return lines

    def _choose_heights(
        self, e: Laid, stops: Sequence[Group], lines: Sequence[list[PlanVector]], twists: Sequence[int]
    ) -> tuple[list[int], list[Lane]]:
        """Choose a height at each peg; where lanes of one band cross, lay each flat above the last."""
        names = [name for name, _, _ in stops]
        footprints = [
            self._footprint(line, *((a, b) if line is self.plan.path(a, b) else ()))
            for line, (a, b) in zip(lines, pairwise(names), strict=True)
        ]
        take = self.heights.take_below if e.beneath else self.heights.take_above
        if not lanes_meet(lines, self.radius, 0.06 * self.unit):
            levels = take([(name, len(bights)) for name, bights, _ in stops], footprints)
            ends = zip(lines, levels, levels[1:], twists, strict=False)
            return levels, [Lane(line, a, b, count) for line, a, b, count in ends]
        span = len(lines) + max(len(bights) for _, bights, _ in stops)
        taken = take([(name, span) for name in names], footprints)
        base = max(taken) if not e.beneath else min(taken)
        self.heights.reserve(names, footprints, base, base + span)
        lanes = [
            Lane(line, base + i, base + i, n) for i, (line, n) in enumerate(zip(lines, twists, strict=True))
        ]
        return [base + min(i, len(lines) - 1) for i in range(len(stops))], lanes

    def _wind_turns(
        self,
        column: Column,
        level: int,
        bights: Sequence[Bight],
        sign: int,
        *,
        a: float,
        b: float,
        wedge: tuple[float, float],
    ) -> list[Visit]:
        """Return the visits of a band's turns round one column, lowest first, from azimuth a to azimuth b."""
        visits = []
        into = Arm(a, sign)
        for k, bight in enumerate(bights):
            final = k == len(bights) - 1
            mark = a + sign * (HALF / WRAP) - sign * _SEAM * (k + 1)
            out = Arm(mark, 0, seam=True)
            if final:
                # The strand leaves half a ribbon short of b: just past its own seam, that is a turn more.
                room = TAU - sweep_angle(into.azimuth, b - sign * HALF / WRAP, sign)
                tight = k > 0 and (sweep_angle(a, b, sign) < 1e-9 or room < 2 * _SEAM + HALF / WRAP)
                edge = _edge_azimuth(mark, b - sign * HALF / STEP, sign)
                out = Arm(edge, 0, beyond=b) if tight else Arm(b, -sign)
            visit = Visit(column, level + k, sign, into, out, bight)
            slot = column.add_slot(Slot(level + k, [wedge], bight))
            if len(bights) > 1:
                width = _SEAM * len(bights)
                slot.arms.append((a - width, width) if sign > 0 else (a, width))
            if not final:
                slot.posts.append(mark)
            self.visits[bight] = visit
            visits.append(visit)
            into = Arm(mark, 0, seam=True)
        return visits

    def _lay_cap(self, band: int, column: Column, level: int, bights: Sequence[Bight], sign: int) -> None:
        """Lay a band wound on one column only: it comes back down outside its own turns."""
        visits = self._wind_turns(column, level, bights, sign, a=CAP_SEAM, b=CAP_SEAM, wedge=(CAP_SEAM, 0.0))
        mark = CAP_SEAM + sign * (HALF / WRAP) - sign * _SEAM * len(bights)
        visits[0].into = Arm(CAP_SEAM, 0)
        visits[-1].out = Arm(mark, 0)
        self.out.tours[band] = [Stage(v) for v in visits]

    # --- loops worked ---------------------------------------------------------------------------------

    def _carry_loop(self, e: Drawn | Moved) -> None:
        visit = self.visits[e.bight]
        source, target = self.columns[e.source], self.columns[e.target]
        over = isinstance(e, Drawn)
        slid = e.slid[::-1] if isinstance(e, Drawn) else ()
        through = set(e.through) if isinstance(e, Drawn) else set()
        line = self.plan.path(e.source, e.target)
        if slid:
            lane = self._slide_on(e.source, e.target, line, slid)
        else:
            ends = [(e.source, 1), (e.target, 1)]
            start, end = self.heights.take_above(ends, [self._footprint(line, e.source, e.target)])
            lane = Lane(line, start, end)
        start, end = lane.start, lane.end
        away = azimuth(line[1] - line[0])
        final = away + math.pi if over else away
        if visit.departure is not None:
            stations = self._carry_over_top(visit, start, away)
        else:
            stations = source.route_inside(
                visit.level, start, through.__contains__, visit.wrap_range(), final
            )
            self._slot_of(visit).gone = True
            if abs(wrap_angle(final - visit.wrap_middle())) > math.pi - 0.05:
                band = e.bight.band
                self.out.half_twists[band] = self.out.half_twists.get(band, 0) + 1
        source.add_slot(Slot(start, [(away, 0.0)]))
        sign = -visit.sign if over else visit.sign
        back = azimuth(line[-2] - line[-1])
        new = Visit(target, end, sign, Arm(back, sign), Arm(back, -sign), e.bight)
        target.add_slot(Slot(end, [(back, 0.0)], e.bight))
        visit.departure = Departure(stations, over, lane, new, lifted=visit.departure is not None)
        self.visits[e.bight] = new

    def _carry_over_top(self, visit: Visit, top: int, away: float) -> list[Station]:
        """Return the stations of a loop that was lifted, led on to above everything.

        There its pair opens and goes round the peg on both sides, to leave at the azimuth `away`; a pair that
        would have risen just there turns aside first.
        """
        left = visit.departure
        assert left is not None
        track = left.stations[-1].post
        assert track is not None
        here = left.stations[-1].azimuth
        aside = wrap_angle(here - away)
        if abs(aside) < _BESIDE:
            here += math.copysign(_BESIDE, aside) - aside
        station = Station(top, here, track)
        track.top = top
        track.stations.append(station)
        return [*left.stations, station]

    def _slot_of(self, visit: Visit) -> Slot:
        return next(s for s in visit.column.slots if s.level == visit.level)

    def _slide_on(
        self, source: str, target: str, line: Sequence[PlanVector], slid: tuple[Bight, ...]
    ) -> Lane:
        """Return the lane of a ribbon that rises through bands slid on to it.

        Of several ribbons through the same bands, each lies above the one before, under the bands and over
        them, and rises sooner.
        """
        spot, segment, room = self._shaft_position(line)
        ribbons = self.ribbons[slid]
        room /= min(ribbons, 2)  # several come down beneath the bands clear of each other
        footprints = [self._footprint(line), (None, self.heights.cells([spot, spot], room))]
        high = len(slid) + ribbons
        if slid[0].band in self.hung:
            taken = [(source, 1), (target, 1), (("shaft", len(self.out.coils)), high + ribbons)]
            start, end, low = self.heights.take_above(taken, footprints)
            if ribbons > 1:
                start = low = max(start, end, low)
                self.heights.reserve([source], footprints, low, low)
                self.heights.reserve([target], footprints, low, low + high + ribbons - 1)
                end = low + high
            self._slide_bands(slid, spot, room, low + ribbons, azimuth(line[segment + 1] - line[segment]))
            self.lows[slid] = itertools.count(low + 1)
        else:
            low = next(self.lows[slid])
            end = low + high
            (start,) = self.heights.take_above([(source, 1)])
        self.heights.reserve([], footprints, min(start, end, low), max(start, end, low + high))
        later = self.out.coils[slid[0].band].bottom - 1 - low
        rise = RibbonRise(segment, spot, room, low, low + high, 0.35 - 0.7 * later / ribbons)
        return Lane(line, start, end, step=rise)

    def _shaft_position(self, line: Sequence[PlanVector]) -> tuple[PlanVector, int, float]:
        """Find the roomiest point of a lane for bands slid on to it: where, on which segment, how wide."""
        found: list[tuple[float, int, int, PlanVector]] = []
        centres = np.array(list(self.spots.values()))
        for i, (a, b) in enumerate(pairwise(line)):
            for k in range(37):
                at = a + (k + 1) / 38 * (b - a)
                room = float(np.hypot(*(centres - at).T).min()) - self.radius
                corner = min(float(np.hypot(*(at - c))) for c in (a, b))
                found.append((round(min(room, corner, 0.3 * self.unit), 9), -abs(k - 18), i, at))
        room, _, segment, spot = max(found, key=lambda f: f[:2])
        return spot, segment, 0.9 * room

    def _slide_bands(
        self, slid: Sequence[Bight], spot: PlanVector, room: float, level: int, along: float
    ) -> None:
        for band in dict.fromkeys(b.band for b in slid):
            order = tuple(b for b in slid if b.band == band)
            laid = self.hung.pop(band)
            if len(order) != len(laid.seats):
                raise RefusedError(phrase("slid-in-part", band=band))
            self.out.coils[band] = Coil(spot, room, level, order, laid.seats[0].sign, along + math.pi / 2)
            level += len(order)

    def _lift_loop(self, e: Lifted) -> None:
        visit = self.visits[e.bight]
        column = visit.column
        (level,) = self.heights.take_above([(column.name, 1)])
        stations = column.route_outside(visit.level, level, visit.wrap_range(), visit.wrap_middle())
        self._slot_of(visit).lifted = True
        column.add_slot(Slot(level))
        visit.departure = Departure(stations, lifted=True)

    # --- finishing ------------------------------------------------------------------------------------

    def _fasten(self, e: Fastened) -> None:
        caught = list(e.caught)
        descents = []
        for holder, count in zip(e.holders, e.counts, strict=True):
            mine, caught = set(caught[:count]), caught[count:]
            descents.append(next(self.starts) if holder == START else self._plan_descent(holder, mine))
        self.out.cords[e.fastener] = descents

    def _plan_descent(self, holder: str, mine: set[Bight]) -> Descent:
        column = self.columns[holder]
        line = self._path_outwards([self.spots[holder]], holder)
        self.exits.append(line)
        footprints = [self._footprint(line)]
        (top,), (bottom,) = (
            self.heights.take_above([(holder, 1)], footprints),
            self.heights.take_below([(holder, 2)], footprints),
        )
        column.add_slot(Slot(bottom + 1))  # room to step outwards if the lowest loop is not to be caught
        away = azimuth(line[1] - line[0])
        stations = column.route_inside(bottom, top, mine.__contains__, None, away)
        column.add_slot(Slot(bottom, [(away, 0.0)]))
        column.add_slot(Slot(top, [(away, 0.0)]))
        return Descent(line, top, bottom, column, stations)

    def _reserve_descents(self, e: Laid, count: int) -> list[Descent]:
        """Reserve paths beneath the first band for fasteners that will later catch it at its first peg.

        They pass between its two strands beside that peg.
        """
        stops, _ = order_stops(group_seats(e), e.twists, self.spots)
        at = next(i for i, (name, _, _) in enumerate(stops) if name == e.seats[0].holder)
        centre = self.spots[stops[at][0]]
        if len(stops) == 1:  # a band wound on one peg: round its strand at the column's edge
            angle = CAP_SEAM - 0.04 * stops[0][2]
            towards = np.array([math.cos(angle), math.sin(angle)])
            # Nearer the rings than the edge, for the edge is drawn in chords, which come further in.
            spot = centre + towards * ((0.75 * OUTER[1] + 0.25 * STEP) * self.radius)
            legs = [[centre + towards * (1.3 * self.radius)]]
        else:
            line = self.plan.path(stops[at][0], stops[at + 1 if at + 1 < len(stops) else at - 1][0])
            towards = (line[1] - line[0]) / float(np.hypot(*(line[1] - line[0])))
            spot = centre + towards * (1.05 * self.radius)
            legs = [[spot + x * self.radius * np.array([-towards[1], towards[0]])] for x in (0.75, -0.75)]
        found = []
        for k in range(count):
            apart = (k - (count - 1) / 2) * self.out.half_mm / count * np.array([-towards[1], towards[0]])
            path = min((self._path_outwards([spot + apart, *leg]) for leg in legs), key=self._count_crossings)
            self.exits.append(path)
            (bottom,) = self.heights.take_above([(stops[at][0], 1)], [(None, self.heights.cells(path))])
            found.append(Descent(path, bottom, bottom))
        return found

    def _close_descents(self, early: Sequence[Descent]) -> list[Descent]:
        for descent in early:
            beside = min(self.spots, key=lambda n: float(np.hypot(*(self.spots[n] - descent.line[0]))))
            (descent.top,) = self.heights.take_above(
                [(beside, 1)], [(None, self.heights.cells(descent.line))]
            )
        return list(early)

    def _path_outwards(self, start: list[PlanVector], *free: str) -> list[PlanVector]:
        """Continue a path to far outside the piece, straight where possible and clear of the other exits.

        Fasteners whose exits cross would run through each other's rings, which no maker would do.
        """
        middle = np.mean(list(self.spots.values()), axis=0)
        here = start[-1]
        far = max(float(np.hypot(*(p - middle))) for p in self.spots.values()) + 3 * self.unit
        lean = here - middle
        first = azimuth(lean) if float(np.hypot(*lean)) > 1e-9 else -math.pi / 2
        taken = [azimuth(path[-1] - middle) for path in self.exits]
        best: tuple[tuple[int, bool], list[PlanVector]] | None = None
        for k in range(72):
            angle = first + (k // 2 + k % 2) * (1 if k % 2 else -1) * TAU / 72.3
            goal = middle + far * np.array([math.cos(angle), math.sin(angle)])
            if any(abs(wrap_angle(angle - a)) < 0.04 for a in taken):
                continue
            straight = self.plan.is_clear(here, goal, free)
            if not straight and (k % 6 or (best and best[0][0] == 0)):
                continue
            path = [*start[:-1], *self.plan.path_to(here, goal, free)]
            cost = self._count_crossings(path), not straight
            if best is None or cost < best[0]:
                best = cost, path
            if best[0] == (0, False):
                break
        assert best is not None
        return best[1]

    def _count_crossings(self, path: Sequence[PlanVector]) -> int:
        """Count the crossings of a path with the exits of other fasteners."""
        return sum(
            segments_cross(a, b, c, d)
            for other in self.exits
            for a, b in pairwise(path)
            for c, d in pairwise(other)
        )

    def _footprint(self, line: Sequence[PlanVector], *ends: str) -> Footprint:
        """Return what a lane covers: the columns it joins, and its squares outside them."""
        return frozenset(ends) or None, self.heights.cells(trim_ends(line, self.radius))
