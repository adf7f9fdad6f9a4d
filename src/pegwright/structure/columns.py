"""The column over a peg: which heights are taken, and where a pair of strands can rise through them.

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

import numpy as np
import numpy.typing as npt

from pegwright.loom.events import Bight

# Radii as parts of the column's radius.
INNER = (0.20, 0.54)
WRAP = 0.60
OUTER = (0.66, 0.92)
STEP = 0.96
HALF = 0.03  # half the distance between the two strands of a ribbon

_GRID = 90


@dataclass(order=True)
class Slot:
    """One height of a column in use.

    `arms` are the azimuths (start, width; radians, anticlockwise) taken between the wrap and the column's
    edge. A `bight` on the peg is wrapped round it; one that is `gone` has shrunk round its own rising pair
    and one that is `lifted` has grown. `jogs` are azimuths at which a pair changes between inside and outside just
    above this height, `posts` azimuths at which a strand rises through it outside the innermost ring.
    """

    level: int
    arms: list[tuple[float, float]] = field(compare=False, default_factory=list)
    bight: Bight | None = field(compare=False, default=None)
    gone: bool = field(compare=False, default=False)
    lifted: bool = field(compare=False, default=False)
    jogs: list[float] = field(compare=False, default_factory=list)
    posts: list[float] = field(compare=False, default_factory=list)


@dataclass
class Post:
    """A stretch outside the wraps, from `bottom` up: the lower it starts, the further out it stands."""

    bottom: float
    radius_mm: float = 0.0


@dataclass
class Station:
    """A rising pair where it passes a height: azimuth (unwrapped, radians) and, outside the wraps, its post."""

    level: float
    azimuth: float
    post: Post | None = None


@dataclass
class Column:
    """A peg, or any other holder, as a vertical column."""

    name: str
    centre: npt.NDArray[np.float64]
    radius_mm: float
    risers: int  # how many pairs will rise nearest the middle, all told
    slots: list[Slot] = field(default_factory=list)
    posts: list[Post] = field(default_factory=list)
    risen: int = 0

    def take(self, slot: Slot) -> Slot:
        """Enter a height as used."""
        insort(self.slots, slot)
        return slot

    def next_riser_mm(self) -> float:
        """Return the radius for the next pair that rises inside the wraps: outside all earlier ones."""
        self.risen += 1
        low, high = INNER
        return self.radius_mm * (low + (high - low) * self.risen / (self.risers + 1))

    def new_post(self, bottom: float) -> Post:
        """Start a stretch outside the wraps."""
        post = Post(bottom)
        self.posts.append(post)
        return post

    def settle_posts(self) -> None:
        """Give every outer stretch its radius, the lowest start furthest out, the later outside the earlier."""
        low, high = OUTER
        order = sorted(range(len(self.posts)), key=lambda i: (-self.posts[i].bottom, i))
        for rank, i in enumerate(order, start=1):
            self.posts[i].radius_mm = self.radius_mm * (low + (high - low) * rank / (len(order) + 1))

    def rise(
        self,
        above: float,
        inside: Callable[[Bight], bool],
        radius_mm: float,
        first: tuple[float, float] | None,
        final: float,
    ) -> list[Station]:
        """Choose the azimuths at which a pair rises from height `above` to the top of the column.

        It passes inside the wraps for which `inside` is true and outside all others, keeps clear of every
        arm and turns as little as it can. `first` is the range of azimuths (start, width) at which it may
        set out (None: only at `final`); it always ends at `final`.
        """
        slots = [slot for slot in self.slots if slot.level > above]
        outside = _sides([None if s.gone else _side(s, inside) for s in slots])
        return self._route(above, slots, outside, radius_mm, first, final, curtain=None)

    def rise_outside(self, above: float, first: tuple[float, float], final: float) -> list[Station]:
        """Choose the azimuths for a pair that rises outside every wrap, as a loop does that is lifted over."""
        slots = [slot for slot in self.slots if slot.level > above]
        post = self.new_post(above)
        radius = self.radius_mm * OUTER[0]
        return self._route(above, slots, [True] * len(slots), radius, first, final, curtain=post)

    def _route(
        self,
        above: float,
        slots: Sequence[Slot],
        outside: Sequence[bool],
        radius_mm: float,
        first: tuple[float, float] | None,
        final: float,
        curtain: Post | None,
    ) -> list[Station]:
        angles = final + np.arange(_GRID) * (2 * math.pi / _GRID)
        inner = self.clear(radius_mm)
        outer = self.clear(self.radius_mm * OUTER[0])
        own = next((s for s in self.slots if s.level == above), None)
        start = np.zeros(_GRID, bool)
        if first is None:
            start[0] = True
        else:
            start = _within(angles, first[0] + inner, first[1] - 2 * inner)
        leaves = bool(slots) and outside[0] and curtain is None
        if own is not None:  # others may have stepped across just above this height
            start &= _apart(angles, [(j, 0.0) for j in own.jogs], inner)
        if leaves and own is not None:
            start &= _apart(angles, [(p, 0.0) for p in own.posts], outer)
        allowed = [start]
        for i, slot in enumerate(slots):
            blocks = [(j, 0.0) for j in slot.jogs]
            if outside[i] or slot.gone or slot.bight is None:
                blocks += slot.arms
            free = _apart(angles, blocks, outer if outside[i] else inner)
            after = outside[i + 1] if i + 1 < len(slots) else curtain is not None
            if outside[i] != after:
                free &= _apart(angles, [(p, 0.0) for p in slot.posts], outer)
            allowed.append(free)
        path = _least_turning(angles, allowed)
        levels = [above] + [float(s.level) for s in slots]
        side = [curtain is not None, *outside]
        stations: list[Station] = []
        post = curtain
        for i, level in enumerate(levels):
            if curtain is None:
                if side[i] and not side[i - 1]:
                    # Set out exactly at its own height, or half-way above the height last passed.
                    post = self.new_post(above if i == 1 else levels[i - 1] + 0.5)
                elif not side[i]:
                    post = None
            stations.append(Station(level, path[i], post))
        for i, slot in enumerate([own, *slots]):
            if slot is None:
                continue
            if side[i]:
                slot.posts.append(path[i])
            after = side[i + 1] if i + 1 < len(side) else curtain is not None
            if side[i] != after:
                slot.jogs.append(path[i])
        stations.append(Station(math.inf, path[-1] + _shortest(final - path[-1]), curtain))
        return stations

    def clear(self, radius_mm: float) -> float:
        """Return the least angle between the middles of two ribbons at a radius."""
        return 3.2 * HALF * self.radius_mm / radius_mm


def _side(slot: Slot, inside: Callable[[Bight], bool]) -> bool | None:
    """Say whether a pair passes outside a slot's wrap; None where there is no wrap to mind."""
    if slot.bight is None:
        return None
    if slot.lifted:
        return False
    return not inside(slot.bight)


def _sides(wanted: list[bool | None]) -> list[bool]:
    """Stay outside between two wraps passed outside; otherwise inside wherever there is a choice."""
    sides = [bool(w) for w in wanted]
    known = [(i, w) for i, w in enumerate(wanted) if w is not None]
    for (i, a), (j, b) in zip(known, known[1:], strict=False):
        if a and b:
            sides[i:j] = [True] * (j - i)
    return sides


def _shortest(angle: float) -> float:
    return (angle + math.pi) % (2 * math.pi) - math.pi


def _within(angles: npt.NDArray[np.float64], start: float, width: float) -> npt.NDArray[np.bool_]:
    return np.asarray((angles - start) % (2 * math.pi) <= max(width, 0.0))


def _apart(
    angles: npt.NDArray[np.float64], blocks: Sequence[tuple[float, float]], clear: float
) -> npt.NDArray[np.bool_]:
    free = np.ones(len(angles), bool)
    for start, width in blocks:
        free &= ~_within(angles, start - clear, width + 2 * clear)
    return free


def _least_turning(
    angles: npt.NDArray[np.float64], allowed: Sequence[npt.NDArray[np.bool_]]
) -> list[float]:
    """Shortest path through the heights, back from the final azimuth `angles[0]` (dynamic programming).

    Raises:
        ValueError: some height leaves no azimuth free.
    """
    if all(free[0] for free in allowed):
        return [float(angles[0])] * len(allowed)
    if not all(free.any() for free in allowed):
        raise ValueError("a height of the column leaves no way through")
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
