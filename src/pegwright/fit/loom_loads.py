"""Stretch and tension of every band on its pegs at every step, and the load on each peg.

A band runs taut and without friction round its pegs, so its tension is the same all along. A loop that was
hooked through other loops has turned its band back: the band folds where the first of those loops sits, and a
ribbon of two strands runs from there through the rest to the loop's own peg. The loops that hold a fold are
taken to stay at their pegs; in truth they give way a little, so the hooked band is stretched a little less,
and the one that holds it a little more.

Bands with a loop off its peg (lifted over, caught by a fastener, or a free end), and bands that run through
such a loop, are left out: the loom does not determine how far they are stretched.
"""

from __future__ import annotations

import functools
import itertools
import math
from collections import defaultdict
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from pegwright.finding import Finding, Location, finding, sum_up
from pegwright.fit.stretch import BREAK_STRETCH, rest_mm
from pegwright.loom import (
    Bight,
    Board,
    Drawn,
    Event,
    Fastened,
    History,
    Laid,
    Lifted,
    Moved,
    hull,
    step_numbers,
)
from pegwright.pattern import BandType, Pattern, band_types_by_letter, colours_by_letter

__all__ = [
    "NEAR_BREAK",
    "BandOnLoom",
    "LoomLoads",
    "PegLoad",
    "bands_on_pegs_at",
    "check_hooked_bands",
    "find_loom_loads",
    "peg_loads_at",
]

NEAR_BREAK = 4.0  # four fifths of where bands break; common practice, no source
_LEAST_N = 1e-9

PointOrPull = tuple[float, float]


class BandOnLoom(NamedTuple):
    """How one band lies from move `at` of the history (from 0) on: the pegs it pulls at, and its folds.

    `on` is False from the move on at which one of its loops comes off; lengths and forces are then 0.
    """

    band: int
    at: int
    on: bool
    pegs: tuple[str, ...] = ()
    folds: tuple[str, ...] = ()
    taut_mm: float = 0.0
    rest_mm: float = 0.0
    tension_n: float = 0.0
    pulls_n: tuple[tuple[str, PointOrPull], ...] = ()

    @property
    def stretch(self) -> float:
        """The ratio of taut to rest length: at most 1 for a slack band, 0 off the loom."""
        return self.taut_mm / self.rest_mm if self.rest_mm else 0.0

    @property
    def slack(self) -> bool:
        """Whether the band hangs slack on its pegs."""
        return self.on and self.taut_mm <= self.rest_mm * (1 + 1e-9)


class PegLoad(NamedTuple):
    """The pull in N on one peg from move `at` on: to the right and away from the maker, and its size."""

    peg: str
    at: int
    x_n: float
    y_n: float

    @property
    def load_n(self) -> float:
        """The size of the pull in N."""
        return math.hypot(self.x_n, self.y_n)


class LoomLoads(NamedTuple):
    """Every change in how a band lies and in the load on a peg, in order of moves."""

    bands: tuple[BandOnLoom, ...]
    loads: tuple[PegLoad, ...]


def find_loom_loads(pattern: Pattern, history: History) -> LoomLoads:
    """Work out every band on its pegs, move by move, with the rubber of its kind.

    Bands of a kind that is not listed are left out.
    """
    lying = []
    loads: list[PegLoad] = []
    last: dict[int, BandOnLoom] = {}
    bearing: dict[str, PointOrPull] = defaultdict(lambda: (0.0, 0.0))
    for at, changes in itertools.groupby(_changes_of_lie(pattern, history), key=lambda change: change[0].at):
        pegs: dict[str, None] = {}
        for bare, kind in changes:
            now = _with_tension(bare, kind)
            before = last.get(now.band)
            for sign, pulls in ((-1, before.pulls_n if before else ()), (1, now.pulls_n)):
                for peg, (x, y) in pulls:
                    bearing[peg] = bearing[peg][0] + sign * x, bearing[peg][1] + sign * y
                    pegs[peg] = None
            last[now.band] = now
            lying.append(now)
        loads += [PegLoad(peg, at, *_drop_noise(bearing[peg])) for peg in pegs]
    return LoomLoads(tuple(lying), tuple(loads))


def check_hooked_bands(pattern: Pattern, history: History) -> tuple[Finding, ...]:
    """Return one finding for each sort of hooked band that comes near to breaking at some step.

    `fit.stretch.check_stretch` covers bands that only lie on their pegs.
    """
    numbers, names = step_numbers(history), colours_by_letter(pattern)
    same: dict[tuple[str, float], list[tuple[BandOnLoom, BandType]]] = defaultdict(list)
    for one, kind in _changes_of_lie(pattern, history, least=NEAR_BREAK):
        if one.on:
            same[history.colours[one.band - 1], round(one.taut_mm, 1)].append((one, kind))
    found = []
    for (letter, _), cases in same.items():
        one = _with_tension(*cases[0])
        place = Location(
            path=history.moves[one.at].path, step=numbers[one.at], peg=one.pegs[0], band=one.band
        )
        found.append(
            finding(
                "band-near-breaking",
                place,
                name=names[letter].name,
                pegs=one.pegs,
                stretch=one.stretch,
                force_n=one.tension_n,
                breaks=BREAK_STRETCH,
                more=len(cases) - 1,
            )
        )
    return sum_up(found)


def bands_on_pegs_at(loom: LoomLoads, at: int) -> tuple[BandOnLoom, ...]:
    """Return how each band on the loom lies after move `at` of the history (from 0)."""
    now = {one.band: one for one in loom.bands if one.at <= at}
    return tuple(one for _, one in sorted(now.items()) if one.on)


def peg_loads_at(loom: LoomLoads, at: int) -> dict[str, PegLoad]:
    """Return the load on each peg after move `at` (from 0); pegs without a load are left out."""
    now = {one.peg: one for one in loom.loads if one.at <= at}
    return {peg: one for peg, one in now.items() if one.load_n > _LEAST_N}


def _changes_of_lie(
    pattern: Pattern, history: History, *, least: float = 0.0
) -> Iterator[tuple[BandOnLoom, BandType]]:
    """Yield every change in how a band lies, as if under a tension of 1 N, with the band's kind.

    With `least`, only folded bands stretched at least that much.
    """
    kinds = band_types_by_letter(pattern)
    loom = _LoopTracker(history.board)
    last: dict[int, BandOnLoom] = {}
    for at, done in enumerate(history.moves):
        for band in sorted({band for event in done.events for band in loom.apply_event(event)}):
            kind = kinds.get(history.colours[band - 1])
            if kind is None or (least and not loom.is_folded(band)):
                continue
            now = loom.lay_out_band(band, at, kind, least)
            before = last.get(band)
            if now is None and before is None:
                continue
            now = now or BandOnLoom(band, at, on=False)
            if before is None or before._replace(at=at) != now:
                last[band] = now
                yield now, kind


def _with_tension(one: BandOnLoom, kind: BandType) -> BandOnLoom:
    """Return how a band lies under the tension that its rubber has at this stretch."""
    # The rubber laws are compiled and slow to load; a check that finds nothing does not need them.
    from pegwright.fit.rubber import rubber_of  # noqa: PLC0415
    from pegwright.shape import nominal_stress  # noqa: PLC0415

    tension = 0.0
    if one.stretch > 1:
        section_mm2 = math.pi * kind.thickness_mm**2 / 4
        tension = section_mm2 * float(nominal_stress(rubber_of(kind), one.stretch))
    pulls = tuple((peg, (tension * x, tension * y)) for peg, (x, y) in one.pulls_n)
    return one._replace(tension_n=tension, pulls_n=pulls)


class _LoopTracker:
    """Tracks where every loop is and which loops its ribbon runs through, in order."""

    def __init__(self, board: Board) -> None:
        self.board = board
        self.holder: dict[Bight, str] = {}
        self.loops: dict[int, tuple[Bight, ...]] = {}
        self.ribbon: dict[Bight, tuple[Bight, ...]] = {}
        self.held: dict[Bight, set[int]] = defaultdict(set)  # loop: the bands whose ribbons run through it

    def apply_event(self, event: Event) -> set[int]:
        """Apply an event and return the bands that may lie differently after it."""
        match event:
            case Laid():
                self.loops[event.band] = tuple(seat.bight for seat in event.seats)
                self.holder |= {seat.bight: seat.holder for seat in event.seats}
                return {event.band}
            case Drawn():
                passed = event.through[::-1]
                self.ribbon[event.bight] = (*self.ribbon.get(event.bight, ()), *passed)
                for loop in passed:
                    self.held[loop].add(event.bight.band)
                return self._move_loop(event.bight, event.target)
            case Moved():
                return self._move_loop(event.bight, event.target)
            case Lifted():
                return self._move_loop(event.bight, "")
            case Fastened():
                return set().union(*(self._move_loop(bight, "") for bight in event.caught))
            case _:
                return set()

    def is_folded(self, band: int) -> bool:
        """Return whether a loop of the band has been pulled through another."""
        return any(loop in self.ribbon for loop in self.loops[band])

    def lay_out_band(self, band: int, at: int, kind: BandType, least: float = 0.0) -> BandOnLoom | None:
        """Return how the band lies; None if one of its loops, or a loop that holds it, is on no peg.

        Also None if the band is stretched less than `least`.
        """
        ways = []
        for loop in self.loops[band]:
            way = [self.holder[through] for through in self.ribbon.get(loop, ())] + [self.holder[loop]]
            if any(holder not in self.board.pegs for holder in way):
                return None
            ways.append([peg for peg, _ in itertools.groupby(way)])
        pegs = list(dict.fromkeys(itertools.chain(*ways)))
        spots = [(self.board.pegs[peg].x_mm, self.board.pegs[peg].y_mm) for peg in pegs]
        path = _band_path(
            tuple((round(x - spots[0][0], 9), round(y - spots[0][1], 9)) for x, y in spots),
            tuple(tuple(map(pegs.index, way)) for way in ways),
            tuple(bool(self.ribbon.get(loop)) for loop in self.loops[band]),
            self.board.peg_mm,
            kind.thickness_mm,
        )
        if path.length_mm < least * rest_mm(kind):
            return None
        pulls = tuple(zip(pegs, path.pulls, strict=True))
        folds = tuple(pegs[i] for i in path.folds)
        return BandOnLoom(band, at, True, tuple(pegs), folds, path.length_mm, rest_mm(kind), 1.0, pulls)

    def _move_loop(self, bight: Bight, holder: str) -> set[int]:
        self.holder[bight] = holder
        return {bight.band} | self.held[bight]


class _Path(NamedTuple):
    length_mm: float
    pulls: tuple[PointOrPull, ...]  # on each peg, per unit of tension
    folds: tuple[int, ...]


@functools.lru_cache(maxsize=4096)  # a piece has few ways of lying, repeated over and over
def _band_path(
    spots: tuple[PointOrPull, ...],
    ways: tuple[tuple[int, ...], ...],
    folded: tuple[bool, ...],
    peg_mm: float,
    thickness_mm: float,
) -> _Path:
    """Lay a band out over pegs at `spots` in mm.

    Each way lists numbers of spots: from a corner of the band's ring (a peg or a fold) along a ribbon to a
    peg.
    """
    reach = (peg_mm + thickness_mm) / 2
    pulls = [[0.0, 0.0] for _ in spots]

    def pull(peg: int, here: PointOrPull, there: PointOrPull, strands: int) -> None:
        apart = math.dist(here, there)
        if apart > 0:
            for i in (0, 1):
                pulls[peg][i] += strands * (there[i] - here[i]) / apart

    length = 0.0
    plain = {way[0] for way, fold in zip(ways, folded, strict=True) if not fold}
    length += 2 * math.pi * reach * (sum(not fold for fold in folded) - len(plain))  # further turns on a peg
    corners: dict[tuple[int, bool, PointOrPull], None] = {
        (peg, True, spots[peg]): None for peg in sorted(plain)
    }
    middle = _mean([spots[way[0]] for way in ways])
    for way, fold in zip(ways, folded, strict=True):
        if not fold:
            continue
        if len(way) == 1:  # pulled up and put back where it came from: a ribbon of no length
            corners[way[0], True, spots[way[0]]] = None
            continue
        at = _fold_point(spots[way[0]], spots[way[1]], middle, reach)
        corners[way[0], False, at] = None
        points = [at, *(spots[peg] for peg in way[1:])]
        # Two strands, half a turn on the peg, and the bend over the strand that holds the fold.
        length += (
            2 * sum(map(math.dist, points, points[1:])) + math.pi * reach + 2 * (math.pi - 2) * thickness_mm
        )
        for (near, here), (far, there) in itertools.pairwise(zip(way, points, strict=True)):
            pull(near, here, there, 2)
            pull(far, there, here, 2)
    ring = _hull_order([spot for _, _, spot in corners])
    named = [list(corners)[i] for i in ring]
    for (_, _, before), (peg, round_peg, here), (_, _, after) in zip(
        named[-1:] + named[:-1], named, named[1:] + named[:1], strict=True
    ):
        length += math.dist(here, after) + (
            reach * _turn_angle_rad(before, here, after) if round_peg else 0.0
        )
        pull(peg, here, before, 1)
        pull(peg, here, after, 1)
    folds = tuple(
        dict.fromkeys(way[0] for way, fold in zip(ways, folded, strict=True) if fold and len(way) > 1)
    )
    return _Path(length, tuple((x, y) for x, y in pulls), folds)


def _fold_point(peg: PointOrPull, onward: PointOrPull, middle: PointOrPull, reach: float) -> PointOrPull:
    """Return where a band folds: off the peg's centre, towards where its own strands pull."""
    x = y = 0.0
    for there in (onward, middle):
        apart = math.dist(peg, there)
        if apart > 0:
            x, y = x + (there[0] - peg[0]) / apart, y + (there[1] - peg[1]) / apart
    size = math.hypot(x, y)
    return (peg[0] + reach * x / size, peg[1] + reach * y / size) if size > 1e-9 else peg


def _hull_order(spots: Sequence[PointOrPull]) -> list[int]:
    """Return the corners in order round their convex hull; the two ends if all lie on a line."""
    ring = hull(spots)
    (ax, ay), (bx, by) = min(spots), max(spots)
    if len(ring) > 2 and all(abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) < 1e-6 for x, y in spots):
        return [ring[0], ring[-1]]
    return ring


def _turn_angle_rad(before: PointOrPull, here: PointOrPull, after: PointOrPull) -> float:
    """Return the angle in rad by which a taut strand turns at a corner; a full turn if it is the only one."""
    if before == here == after:
        return 2 * math.pi
    into = math.atan2(here[1] - before[1], here[0] - before[0])
    out = math.atan2(after[1] - here[1], after[0] - here[0])
    return abs(math.remainder(out - into, 2 * math.pi))


def _mean(spots: Sequence[PointOrPull]) -> PointOrPull:
    return sum(x for x, _ in spots) / len(spots), sum(y for _, y in spots) / len(spots)


def _drop_noise(load: PointOrPull) -> PointOrPull:
    """Return the load with the rounding errors of cancelled pulls set to zero."""
    x, y = (float(v) if abs(v) > _LEAST_N else 0.0 for v in load)
    return x, y
