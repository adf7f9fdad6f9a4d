"""The column over a peg: which heights are in use, and where a pair of strands can rise through them.

Seen from above, everything that happens at a peg happens inside a disc of radius `R`, in rings: rising pairs
nearest the middle (each hook's a little further out than the last), then the wraps of the loops, then pairs
that rise outside the wraps (loops lifted over, loops that skip others), then steps between heights. Each
height is used by one thing only, so two strands can meet only where one crosses a height that another
strand runs along: the azimuths to keep clear of are all that has to be remembered.
"""

from __future__ import annotations

import math
from bisect import insort
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

import numpy as np
import numpy.typing as npt

from pegwright.finding import RefusedError, phrase
from pegwright.loom import Bight

# Radii as parts of the column's radius.
INNER = (0.20, 0.54)
WRAP = 0.60
OUTER = (0.66, 0.92)
STEP = 0.96
HALF = 0.03  # half the distance between the two strands of a ribbon

_GRID = 90


@dataclass(order=True)
class Slot:
    """One height in use on a column.

    `arms` are the azimuths (start, width; radians, anticlockwise) taken between the wrap and the column's
    edge. A `bight` on the peg is wrapped round it; one that is `gone` has shrunk round its own rising pair
    and one that is `lifted` has grown. `jogs` are azimuths at which a pair changes between inside and outside
    just above this height, `posts` azimuths at which a strand rises through it outside the innermost ring.
    """

    level: int
    arms: list[tuple[float, float]] = field(compare=False, default_factory=list)
    bight: Bight | None = field(compare=False, default=None)
    gone: bool = field(compare=False, default=False)
    lifted: bool = field(compare=False, default=False)
    jogs: list[float] = field(compare=False, default_factory=list)
    posts: list[float] = field(compare=False, default_factory=list)


@dataclass
class Station:
    """A rising pair where it passes a height: azimuth (unwrapped, radians), and how far from the middle.

    `post` is its stretch outside the wraps, if it is outside. `shift` says how soon above this height
    (0 to 1) it goes to the distance of its next station.
    """

    level: float
    azimuth: float
    post: Track | None = None
    radius_mm: float = 0.0
    shift: float = 0.5


@dataclass
class Track:
    """A stretch of a rising pair, inside the wraps or outside them, from `bottom` to `top`."""

    bottom: float
    top: float
    stations: list[Station] = field(default_factory=list)

    def shares_height_with(self, other: Track) -> bool:
        """Say whether the two stretches share a height."""
        return self.bottom <= other.top and other.bottom <= self.top


@dataclass
class Column:
    """A peg, or any other holder, as a vertical column."""

    name: str
    centre: npt.NDArray[np.float64]
    radius_mm: float
    slots: list[Slot] = field(default_factory=list)
    inner: list[Track] = field(default_factory=list)
    outer: list[Track] = field(default_factory=list)
    inner_rings: int = 0
    outer_rings: int = 0

    def add_slot(self, slot: Slot) -> Slot:
        """Mark a height as in use."""
        insort(self.slots, slot)
        return slot

    def assign_radii(self) -> None:
        """Set every station's distance from the middle.

        Of two pairs inside the wraps that share a height, the later is outside the earlier; pairs that share
        none may share a ring. Outside the wraps, at any height, the pair that started lower is further out;
        pairs make room as others start and end.
        """
        ranks: list[int] = []
        for i, track in enumerate(self.inner):
            ranks.append(
                1 + max((ranks[j] for j in range(i) if self.inner[j].shares_height_with(track)), default=0)
            )
        self.inner_rings = max(ranks, default=0)
        for rank, track in zip(ranks, self.inner, strict=True):
            for station in track.stations:
                station.radius_mm = self._ring(INNER, rank, self.inner_rings)
        order = sorted(self.outer, key=lambda t: -t.bottom)  # stable, and of two equals the later is outside
        heights = {s.level for t in order for s in t.stations}
        at = {h: [t for t in order if t.bottom <= h <= t.top] for h in heights}
        self.outer_rings = max((len(found) for found in at.values()), default=0)
        for h, found in at.items():
            for rank, track in enumerate(found, start=1):
                for station in (s for s in track.stations if s.level == h):
                    station.radius_mm = self._ring(OUTER, rank, self.outer_rings)
        for track in order:
            for here, there in pairwise(track.stations):
                # Those that go outwards go outermost first, those that go inwards innermost first.
                part = (here.radius_mm / self.radius_mm - OUTER[0]) / (OUTER[1] - OUTER[0])
                here.shift = 1 - part if there.radius_mm > here.radius_mm else part

    def _ring(self, bounds: tuple[float, float], rank: int, rings: int) -> float:
        return self.radius_mm * (bounds[0] + (bounds[1] - bounds[0]) * rank / (rings + 1))

    def route_inside(
        self,
        above: float,
        top: float,
        inside: Callable[[Bight], bool],
        first: tuple[float, float] | None,
        final: float,
    ) -> list[Station]:
        """Choose the azimuths at which a pair rises from height `above` to `top`, past what is there.

        It passes inside the wraps for which `inside` is true and outside all others, keeps clear of every
        arm and turns as little as it can. `first` is the range of azimuths (start, width) at which it may
        set out (None: only at `final`); it always ends at `final`.

        Raises:
            ValueError: some height leaves no azimuth free.
        """
        slots = [slot for slot in self.slots if slot.level > above]
        outside = _choose_sides([None if s.gone else _passes_outside(s, inside) for s in slots])
        track = Track(above, top)
        self.inner.append(track)
        return self._route(above, slots, [False, *outside, False], track, first=first, final=final)

    def route_outside(
        self, above: float, top: float, first: tuple[float, float], final: float
    ) -> list[Station]:
        """Choose the azimuths for a pair that rises outside every wrap: a loop that is lifted over."""
        slots = [slot for slot in self.slots if slot.level > above]
        track = Track(above, top)
        self.outer.append(track)
        return self._route(above, slots, [True] * (len(slots) + 2), track, first=first, final=final)

    def _route(
        self,
        above: float,
        slots: Sequence[Slot],
        outside: Sequence[bool],
        track: Track,
        *,
        first: tuple[float, float] | None,
        final: float,
    ) -> list[Station]:
        """Route a pair past the slots; `outside` has one more entry at each end."""
        angles = np.asarray(final + np.arange(_GRID) * (2 * math.pi / _GRID), np.float64)
        inner, outer = _clearance(INNER[0]), _clearance(OUTER[0])
        own = next((s for s in self.slots if s.level == above), None)
        if first is None:
            start = np.arange(_GRID) == 0
        else:
            start = _in_range(angles, first[0] + inner, first[1] - 2 * inner)
        passed = [Slot(int(above)) if own is None else own, *slots]
        allowed = []
        for i, slot in enumerate(passed):
            blocks = [(j, 0.0) for j in slot.jogs]  # others may have stepped across just above this height
            if i and (outside[i] or slot.gone or slot.bight is None):
                blocks += slot.arms
            free = _clear_of(angles, blocks, outer if outside[i] else inner)
            if outside[i] != outside[i + 1]:
                free &= _clear_of(angles, [(j, 0.0) for j in slot.jogs], inner)
                free &= _clear_of(angles, [(p, 0.0) for p in slot.posts], outer)
            allowed.append(free if i else free & start)
        path = _least_turning_path(angles, allowed)
        stations: list[Station] = []
        post = track if outside[0] else None
        for i, slot in enumerate(passed):
            if not outside[0]:
                if outside[i] and not outside[i - 1]:
                    # Set out exactly at its own height, or half-way above the height last passed.
                    post = Track(above if i == 1 else passed[i - 1].level + 0.5, math.inf)
                    self.outer.append(post)
                elif not outside[i]:
                    post = None
            stations.append(Station(above if i == 0 else slot.level, path[i], post))
            (post or track).stations.append(stations[-1])
            if outside[i]:
                slot.posts.append(path[i])
            if post is not None and post is not track:
                post.top = slot.level + 0.5
            if outside[i] != outside[i + 1]:
                slot.jogs.append(path[i])
        end = (
            path[-1] if outside[0] else path[-1] + _shortest_turn(final - path[-1])
        )  # a curtain closes where it is
        stations.append(Station(track.top, end, track if outside[0] else None))
        track.stations.append(stations[-1])
        return stations


def _clearance(part: float) -> float:
    """Return the least angle between the middles of two ribbons, at a part of the column's radius."""
    return 3.2 * HALF / part


def _passes_outside(slot: Slot, inside: Callable[[Bight], bool]) -> bool | None:
    """Say whether a pair passes outside a slot's wrap; None where the slot has no wrap."""
    if slot.bight is None:
        return None
    if slot.lifted:
        return False
    return not inside(slot.bight)


def _choose_sides(wanted: list[bool | None]) -> list[bool]:
    """Stay outside between two wraps passed outside; stay inside wherever else there is a choice."""
    sides = [bool(w) for w in wanted]
    known = [(i, w) for i, w in enumerate(wanted) if w is not None]
    for (i, a), (j, b) in pairwise(known):
        if a and b:
            sides[i:j] = [True] * (j - i)
    return sides


def _shortest_turn(angle: float) -> float:
    return (angle + math.pi) % (2 * math.pi) - math.pi


def _in_range(angles: npt.NDArray[np.float64], start: float, width: float) -> npt.NDArray[np.bool_]:
    return np.asarray((angles - start) % (2 * math.pi) <= max(width, 0.0))


def _clear_of(
    angles: npt.NDArray[np.float64], blocks: Sequence[tuple[float, float]], clear: float
) -> npt.NDArray[np.bool_]:
    free = np.ones(len(angles), bool)
    for start, width in blocks:
        free &= ~_in_range(angles, start - clear, width + 2 * clear)
    return free


def _least_turning_path(
    angles: npt.NDArray[np.float64], allowed: Sequence[npt.NDArray[np.bool_]]
) -> list[float]:
    """Return the path through the heights that turns least and ends at `angles[0]` (dynamic programming).

    Raises:
        ValueError: some height leaves no azimuth free.
    """
    if all(free[0] for free in allowed):
        return [float(angles[0])] * len(allowed)
    if not all(free.any() for free in allowed):
        raise RefusedError(phrase("no-way-through-column"))
    n = len(angles)
    step = 2 * math.pi / n
    offset = (np.arange(n)[None, :] - np.arange(n)[:, None] + n // 2) % n - n // 2
    cost = np.abs(offset) * step + 1e-6 * (offset < 0)
    away = 1e-3 * np.abs((np.arange(n) + n // 2) % n - n // 2) * step
    best = np.where(allowed[-1], cost[:, 0] + away, np.inf)
    nexts = []
    for free in reversed(allowed[:-1]):
        total = cost + best[None, :]
        nexts.append(total.argmin(axis=1))
        best = np.where(free, total.min(axis=1) + away, np.inf)
    at = int(best.argmin())
    path = [float(angles[at])]
    for choice in reversed(nexts):
        to = int(choice[at])
        path.append(path[-1] + float(offset[at, to]) * step)
        at = to
    return path
