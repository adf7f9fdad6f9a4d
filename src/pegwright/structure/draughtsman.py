"""From the record to the plan of the drawing, one event after the other.

Nothing that lies already is ever moved, except that a loop's wrap shrinks (when it is pulled up inside the
loops above) or grows (when it is lifted over them); so every step is an isotopy of what was there before.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

import numpy as np

from pegwright.loom.events import Bight, Drawn, Event, Fastened, Laid, Lifted, Moved
from pegwright.structure.columns import HALF, OUTER, STEP, WRAP, Column, Slot
from pegwright.structure.drawing import Arm, Coil, Drawing, Fall, Lane, Leaving, Stage, Step, Visit
from pegwright.structure.layers import Heights, Plan, Spot
from pegwright.structure.layers import Lane as Way
from pegwright.structure.spots import (
    HOOK,
    START,
    TAU,
    Group,
    azimuth,
    groups,
    lanes_meet,
    least_gap,
    ordered,
    segments_cross,
    spots,
    sweep,
    trimmed,
    turn,
)

RADIUS, GAP = 0.38, 0.24  # a column's radius and the free way between two, in units of the least distance
CAP_SEAM = 0.3  # azimuth of the seam of a band wound on one peg
_SEAM = 3.5 * HALF / WRAP  # angle from one seam of a wound band to the next


def draw(events: Sequence[Event], position: Callable[[str], tuple[float, float]]) -> Drawing:
    """Plan the drawing of a record.

    Raises:
        KeyError: a peg has no position.
        ValueError: two pegs stand in one place, or a band was slid only in part.
    """
    return _Draughtsman(events, position).out


class _Draughtsman:
    def __init__(self, events: Sequence[Event], position: Callable[[str], tuple[float, float]]) -> None:
        self.spots = spots(events, position)
        self.unit = least_gap(list(self.spots.values()))
        self.radius = RADIUS * self.unit
        self.plan = Plan(self.spots, self.radius, GAP * self.unit)
        self.heights = Heights(self.unit / 8)
        self.columns = {n: Column(n, p, self.radius) for n, p in self.spots.items()}
        self.out = Drawing(self.unit, HALF * self.radius, self.columns)
        self.at: dict[Bight, Visit] = {}  # where each loop is now
        self.hung: dict[int, Laid] = {}
        self.outs: list[list[Spot]] = []  # the ways by which fasteners leave the piece
        starts = sum(isinstance(e, Fastened) and START in e.holders for e in events)
        self.starts: Iterator[Fall] = iter(())
        for e in events:
            match e:
                case Laid():
                    early = self._starts_beneath(e, starts) if e.band == 1 and starts else []
                    self._lay(e)
                    if early:
                        self.starts = iter(self._starts_above(early))
                case Drawn() | Moved():
                    self._carry(e)
                case Lifted():
                    self._lift(e)
                case Fastened():
                    self._fasten(e)
        for number, laid in self.hung.items():
            order = tuple(s.bight for s in laid.seats)
            spot, sign = self.spots[f"{HOOK}:{number}"], laid.seats[0].sign
            self.out.coils[number] = Coil(spot, self.radius, 0, order, sign, CAP_SEAM)
        for column in self.columns.values():
            column.settle()

    # --- bands laid -----------------------------------------------------------------------------------

    def _lay(self, e: Laid) -> None:
        if e.seats[0].holder == HOOK:
            self.hung[e.band] = e
            return
        stops, twists = ordered(groups(e), e.twists, self.spots)
        lines = self._lines([name for name, _, _ in stops])
        levels, lanes = self._heights_of(e, stops, lines, twists)
        last = len(stops) - 1
        if last == 0:
            self._cap(e.band, self.columns[stops[0][0]], levels[0], stops[0][1], stops[0][2])
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
                out.append(self._wind(column, level, bights, sign, a=only, b=only, wedge=(only, 0.0)))
                back.append([])
                continue
            # A band calls twice at a peg between two others; its loop is the longer way round.
            ways = ((behind, ahead), (ahead, behind))
            main = 0 if sweep(behind, ahead, sign) >= sweep(ahead, behind, sign) - 1e-9 else 1
            (a, b), (c, d) = ways[main], ways[1 - main]
            wedge = (b, (a - b) % TAU) if sign > 0 else (a, (b - a) % TAU)
            loops = self._wind(column, level, bights, sign, a=a, b=b, wedge=wedge)
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

    def _lines(self, names: Sequence[str]) -> list[list[Spot]]:
        """Ways from peg to peg; where two would leave a peg side by side, the second is turned aside."""
        lines: list[list[Spot]] = []
        for a, b in pairwise(names):
            line = self.plan.way(a, b)
            if lines:
                behind = azimuth(lines[-1][-2] - lines[-1][-1])
                apart = turn(azimuth(line[1] - line[0]) - behind)
                if abs(apart) < 0.25:
                    angle = behind + math.copysign(0.35, apart)
                    first = line[0] + 1.35 * self.radius * np.array([math.cos(angle), math.sin(angle)])
                    line = [line[0], *self.plan.way_to(first, line[-1], (a, b))]
            lines.append(line)
        return lines

    def _heights_of(
        self, e: Laid, stops: Sequence[Group], lines: Sequence[list[Spot]], twists: Sequence[int]
    ) -> tuple[list[int], list[Lane]]:
        """Choose a height at each peg; lanes of one band that cross lie above each other, flat."""
        names = [name for name, _, _ in stops]
        ways = [
            self._way(line, *((a, b) if line is self.plan.way(a, b) else ()))
            for line, (a, b) in zip(lines, pairwise(names), strict=True)
        ]
        take = self.heights.below if e.beneath else self.heights.above
        if not lanes_meet(lines, self.radius, 0.06 * self.unit):
            levels = take([(name, len(bights)) for name, bights, _ in stops], ways)
            ends = zip(lines, levels, levels[1:], twists, strict=False)
            return levels, [Lane(line, a, b, count) for line, a, b, count in ends]
        span = len(lines) + max(len(bights) for _, bights, _ in stops)
        taken = take([(name, span) for name in names], ways)
        base = max(taken) if not e.beneath else min(taken)
        self.heights.reserve(names, ways, base, base + span)
        lanes = [
            Lane(line, base + i, base + i, n) for i, (line, n) in enumerate(zip(lines, twists, strict=True))
        ]
        return [base + min(i, len(lines) - 1) for i in range(len(stops))], lanes

    def _wind(
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
        """Visits for the turns of a band round one column, lowest first, in at azimuth a and out at b."""
        visits = []
        into = Arm(a, sign)
        for k, bight in enumerate(bights):
            final = k == len(bights) - 1
            mark = a + sign * (HALF / WRAP) - sign * _SEAM * (k + 1)
            out = Arm(mark, 0, seam=True)
            if final:
                room = TAU - sweep(into.azimuth, b, sign)
                tight = k > 0 and (sweep(a, b, sign) < 1e-9 or room < 2 * _SEAM)
                out = Arm(mark, 0, beyond=b) if tight else Arm(b, -sign)
            visit = Visit(column, level + k, sign, into, out, bight)
            slot = column.take(Slot(level + k, [wedge], bight))
            if len(bights) > 1:
                width = _SEAM * len(bights)
                slot.arms.append((a - width, width) if sign > 0 else (a, width))
            if not final:
                slot.posts.append(mark)
            self.at[bight] = visit
            visits.append(visit)
            into = Arm(mark, 0, seam=True)
        return visits

    def _cap(self, band: int, column: Column, level: int, bights: Sequence[Bight], sign: int) -> None:
        """A band wound on one column only: it comes back down outside its own turns."""
        visits = self._wind(column, level, bights, sign, a=CAP_SEAM, b=CAP_SEAM, wedge=(CAP_SEAM, 0.0))
        mark = CAP_SEAM + sign * (HALF / WRAP) - sign * _SEAM * len(bights)
        visits[0].into = Arm(CAP_SEAM, 0)
        visits[-1].out = Arm(mark, 0)
        self.out.tours[band] = [Stage(v) for v in visits]

    # --- loops worked ---------------------------------------------------------------------------------

    def _carry(self, e: Drawn | Moved) -> None:
        visit = self.at[e.bight]
        source, target = self.columns[e.source], self.columns[e.target]
        over = isinstance(e, Drawn)
        slid = e.slid[::-1] if isinstance(e, Drawn) else ()
        through = set(e.through) if isinstance(e, Drawn) else set()
        line = self.plan.way(e.source, e.target)
        shaft = self._shaft(line) if slid else None
        if shaft is None:
            start, end = self.heights.above(
                [(e.source, 1), (e.target, 1)], [self._way(line, e.source, e.target)]
            )
            lane = Lane(line, start, end)
        else:
            spot, segment, room = shaft
            ways = [self._way(line), (None, self.heights.cells([spot, spot], room))]
            taken = [(e.source, 1), (e.target, 1), (("shaft", len(self.out.coils)), len(slid) + 2)]
            start, end, low = self.heights.above(taken, ways)
            high = low + len(slid) + 1
            self.heights.reserve([], ways, min(start, end, low), max(start, end, high))
            lane = Lane(line, start, end, step=Step(segment, spot, room, low, high))
            self._slide(slid, spot, room, low + 1, azimuth(line[segment + 1] - line[segment]))
        away = azimuth(line[1] - line[0])
        final = away + math.pi if over else away
        stations = source.rise(visit.level, start, through.__contains__, visit.wrap(), final)
        if abs(turn(final - visit.middle())) > math.pi - 0.05:
            band = e.bight.band
            self.out.half_turns[band] = self.out.half_turns.get(band, 0) + 1
        self._slot(visit).gone = True
        source.take(Slot(start, [(away, 0.0)]))
        sign = -visit.sign if over else visit.sign
        back = azimuth(line[-2] - line[-1])
        new = Visit(target, end, sign, Arm(back, sign), Arm(back, -sign), e.bight)
        target.take(Slot(end, [(back, 0.0)], e.bight))
        visit.leaving = Leaving(stations, over, lane, new)
        self.at[e.bight] = new

    def _slot(self, visit: Visit) -> Slot:
        return next(s for s in visit.column.slots if s.level == visit.level)

    def _shaft(self, line: Sequence[Spot]) -> tuple[Spot, int, float]:
        """Find the roomiest spot of a lane for bands slid on to it: where, on which segment, how wide."""
        found: list[tuple[float, int, int, Spot]] = []
        centres = np.array(list(self.spots.values()))
        for i, (a, b) in enumerate(pairwise(line)):
            for k in range(37):
                at = a + (k + 1) / 38 * (b - a)
                room = float(np.hypot(*(centres - at).T).min()) - self.radius
                corner = min(float(np.hypot(*(at - c))) for c in (a, b))
                found.append((round(min(room, corner, 0.3 * self.unit), 9), -abs(k - 18), i, at))
        room, _, segment, spot = max(found, key=lambda f: f[:2])
        return spot, segment, 0.9 * room

    def _slide(self, slid: Sequence[Bight], spot: Spot, room: float, level: int, along: float) -> None:
        for band in dict.fromkeys(b.band for b in slid):
            order = tuple(b for b in slid if b.band == band)
            laid = self.hung.pop(band)
            if len(order) != len(laid.seats):
                raise ValueError(f"only some loops of band {band} were slid")
            self.out.coils[band] = Coil(spot, room, level, order, laid.seats[0].sign, along + math.pi / 2)
            level += len(order)

    def _lift(self, e: Lifted) -> None:
        visit = self.at[e.bight]
        column = visit.column
        (level,) = self.heights.above([(column.name, 1)])
        stations = column.rise_outside(visit.level, level, visit.wrap(), visit.middle())
        self._slot(visit).lifted = True
        column.take(Slot(level))
        visit.leaving = Leaving(stations)

    # --- finishing ------------------------------------------------------------------------------------

    def _fasten(self, e: Fastened) -> None:
        caught = list(e.caught)
        falls = []
        for holder, count in zip(e.holders, e.counts, strict=True):
            mine, caught = set(caught[:count]), caught[count:]
            falls.append(next(self.starts) if holder == START else self._fall(holder, mine))
        self.out.cords[e.fastener] = falls

    def _fall(self, holder: str, mine: set[Bight]) -> Fall:
        column = self.columns[holder]
        line = self._outwards([self.spots[holder]], holder)
        self.outs.append(line)
        ways = [self._way(line)]
        (top,), (bottom,) = self.heights.above([(holder, 1)], ways), self.heights.below([(holder, 2)], ways)
        column.take(Slot(bottom + 1))  # room to step outwards if the lowest loop is not to be caught
        away = azimuth(line[1] - line[0])
        stations = column.rise(bottom, top, mine.__contains__, None, away)
        column.take(Slot(bottom, [(away, 0.0)]))
        column.take(Slot(top, [(away, 0.0)]))
        return Fall(line, top, bottom, column, stations)

    def _starts_beneath(self, e: Laid, count: int) -> list[Fall]:
        """Keep ways free for fasteners that will catch the first band where it lay first: so far, beneath it.

        They pass between its two strands beside its first peg.
        """
        stops, _ = ordered(groups(e), e.twists, self.spots)
        at = next(i for i, (name, _, _) in enumerate(stops) if name == e.seats[0].holder)
        centre = self.spots[stops[at][0]]
        if len(stops) == 1:  # a band wound on one peg: round its strand at the column's edge
            angle = CAP_SEAM - 0.04 * stops[0][2]
            towards = np.array([math.cos(angle), math.sin(angle)])
            spot = centre + towards * (0.5 * (OUTER[1] + STEP) * self.radius)
            legs = [[centre + towards * (1.3 * self.radius)]]
        else:
            line = self.plan.way(stops[at][0], stops[at + 1 if at + 1 < len(stops) else at - 1][0])
            towards = (line[1] - line[0]) / float(np.hypot(*(line[1] - line[0])))
            spot = centre + towards * (1.05 * self.radius)
            legs = [[spot + x * self.radius * np.array([-towards[1], towards[0]])] for x in (0.75, -0.75)]
        found = []
        for k in range(count):
            apart = (k - (count - 1) / 2) * self.out.half_mm / count * np.array([-towards[1], towards[0]])
            way = min((self._outwards([spot + apart, *leg]) for leg in legs), key=self._crossed)
            self.outs.append(way)
            (bottom,) = self.heights.above([(stops[at][0], 1)], [(None, self.heights.cells(way))])
            found.append(Fall(way, bottom, bottom))
        return found

    def _starts_above(self, early: Sequence[Fall]) -> list[Fall]:
        for fall in early:
            beside = min(self.spots, key=lambda n: float(np.hypot(*(self.spots[n] - fall.line[0]))))
            (fall.top,) = self.heights.above([(beside, 1)], [(None, self.heights.cells(fall.line))])
        return list(early)

    def _outwards(self, start: list[Spot], *free: str) -> list[Spot]:
        """Carry a way on to far outside the whole piece, straight if it can be, and clear of other such ways.

        Fasteners whose ways cross would run through each other's rings, which no hand would have them do.
        """
        middle = np.mean(list(self.spots.values()), axis=0)
        here = start[-1]
        far = max(float(np.hypot(*(p - middle))) for p in self.spots.values()) + 3 * self.unit
        lean = here - middle
        first = azimuth(lean) if float(np.hypot(*lean)) > 1e-9 else -math.pi / 2
        taken = [azimuth(way[-1] - middle) for way in self.outs]
        best: tuple[tuple[int, bool], list[Spot]] | None = None
        for k in range(72):
            angle = first + (k // 2 + k % 2) * (1 if k % 2 else -1) * TAU / 72.3
            goal = middle + far * np.array([math.cos(angle), math.sin(angle)])
            if any(abs(turn(angle - a)) < 0.04 for a in taken):
                continue
            straight = self.plan.straight(here, goal, free)
            if not straight and (k % 6 or (best and best[0][0] == 0)):
                continue
            way = [*start[:-1], *self.plan.way_to(here, goal, free)]
            cost = self._crossed(way), not straight
            if best is None or cost < best[0]:
                best = cost, way
            if best[0] == (0, False):
                break
        assert best is not None
        return best[1]

    def _crossed(self, way: Sequence[Spot]) -> int:
        """Count where a way crosses those of other fasteners."""
        return sum(
            segments_cross(a, b, c, d)
            for other in self.outs
            for a, b in pairwise(way)
            for c, d in pairwise(other)
        )

    def _way(self, line: Sequence[Spot], *ends: str) -> Way:
        """A lane as the heights see it: between which columns, and the squares outside them."""
        return frozenset(ends) or None, self.heights.cells(trimmed(line, self.radius))
