"""Plan and heights: where ribbons run between columns, and which of two things lies above the other."""

from __future__ import annotations

import heapq
import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

import numpy as np
import numpy.typing as npt

Spot = npt.NDArray[np.float64]
Lane = tuple[
    object, frozenset[object]
]  # which way it goes (None: like no other), and the squares it runs over


class Heights:
    """The top and bottom height in use at every column and every small square of the plan between them.

    Whatever comes later takes, at each end of its lanes, the lowest height above all that it overlaps there
    (longest path), or, laid beneath, the highest below.
    """

    def __init__(self, cell_mm: float) -> None:
        self._cell = cell_mm
        self._top: dict[object, int] = {}
        self._bottom: dict[object, int] = {}
        self._ways: dict[object, dict[object, tuple[int, int]]] = {}  # square → way → bottom and top

    def cells(self, line: Sequence[Spot], width_mm: float = 0.0) -> frozenset[object]:
        """Return the squares within `width_mm` of a line through the spots."""
        reach = math.ceil(width_mm / self._cell)
        found: set[object] = set()
        for a, b in pairwise(line):
            steps = max(1, math.ceil(float(np.hypot(*(b - a))) / (0.5 * self._cell)))
            for k in range(steps + 1):
                at = a + (b - a) * (k / steps)
                x, y = math.floor(at[0] / self._cell), math.floor(at[1] / self._cell)
                found.update(
                    (i, j)
                    for i in range(x - 1 - reach, x + 2 + reach)
                    for j in range(y - 1 - reach, y + 2 + reach)
                )
        return frozenset(found)

    def above(self, columns: Sequence[tuple[object, int]], lanes: Sequence[Lane] = ()) -> list[int]:
        """Take, at each column, so many heights above everything there and on the squares between them.

        Returns the lowest of each. A lane may slope from one column to the other: all its heights are above
        all that its squares held before, but for lanes on the very same way, which slope alike: of two of
        those the one that is higher at both ends is higher all along.
        """
        between = max((top for lane in lanes for _, top in self._others(lane)), default=-1)
        levels = [1 + max(between, self._top.get(name, -1)) for name, _ in columns]
        self._mark(columns, levels, lanes)
        return levels

    def below(self, columns: Sequence[tuple[object, int]], lanes: Sequence[Lane] = ()) -> list[int]:
        """Take, at each column, so many heights below everything; returns the lowest of each."""
        between = min((bottom for lane in lanes for bottom, _ in self._others(lane)), default=0)
        levels = [min(between, self._bottom.get(name, 0)) - span for name, span in columns]
        self._mark(columns, levels, lanes)
        return levels

    def reserve(self, columns: Sequence[object], lanes: Sequence[Lane], low: int, high: int) -> None:
        """Enter that all these places are used from one height to another."""
        for name in columns:
            self._enter(name, low, high)
        for way, squares in lanes:
            for square in squares:
                old = self._ways.setdefault(square, {}).get(way, (low, high))
                self._ways[square][way] = min(old[0], low), max(old[1], high)

    def _others(self, lane: Lane) -> Iterator[tuple[int, int]]:
        way, squares = lane
        for square in squares:
            for other, span in self._ways.get(square, {}).items():
                if other != way or way is None:
                    yield span

    def _mark(self, columns: Sequence[tuple[object, int]], levels: list[int], lanes: Sequence[Lane]) -> None:
        for (name, span), level in zip(columns, levels, strict=True):
            self._enter(name, level, level + span - 1)
        self.reserve([], lanes, min(levels), max(levels))

    def _enter(self, place: object, low: int, high: int) -> None:
        self._top[place] = max(self._top.get(place, high), high)
        self._bottom[place] = min(self._bottom.get(place, low), low)


class Plan:
    """The columns seen from above, and ways between them that touch no other column."""

    def __init__(self, spots: Mapping[str, Spot], radius_mm: float, gap_mm: float) -> None:
        self.radius_mm = radius_mm
        self._gap = gap_mm
        self._names = list(spots)
        self.spots = spots
        self._all = np.array([spots[n] for n in self._names]).reshape(-1, 2)
        self._ways: dict[tuple[str, str], list[Spot]] = {}

    def way(self, source: str, target: str) -> list[Spot]:
        """Return a line of spots from the centre of one column to that of another, clear of all others."""
        if (source, target) not in self._ways:
            way = self.way_to(self.spots[source], self.spots[target], (source, target))
            self._ways[source, target] = way
            self._ways[target, source] = way[::-1]
        return self._ways[source, target]

    def way_to(self, start: Spot, goal: Spot, free: Sequence[str]) -> list[Spot]:
        """Return a line from spot to spot, clear of all columns but those it may start and end in.

        Raises:
            ValueError: the columns leave no way.
        """
        return [start, goal] if self.straight(start, goal, free) else self._around(start, goal, free)

    def straight(self, a: Spot, b: Spot, free: Sequence[str]) -> bool:
        """Say whether the straight line keeps out of every column but those named."""
        return not any(self._names[i] not in free for i in np.flatnonzero(self._met(a, b[None, :])[0]))

    def _met(self, a: Spot, b: Spot) -> npt.NDArray[np.bool_]:
        """Say which columns the straight lines from a to the spots b (m, 2) run into: (m, columns)."""
        along = b - a
        length2 = np.maximum((along**2).sum(axis=1), 1e-12)
        ahead = self._all - a
        u = np.clip(along @ ahead.T / length2[:, None], 0.0, 1.0)
        gap = (u[:, :, None] * along[:, None, :] - ahead[None, :, :]) ** 2
        return np.asarray(gap.sum(axis=2) < (self.radius_mm + 0.35 * self._gap) ** 2)

    def _around(self, start: Spot, goal: Spot, free: Sequence[str]) -> list[Spot]:
        """Dijkstra through points about the columns in the way, widening the search until there is a way."""
        ring = (self.radius_mm + 0.5 * self._gap) / math.cos(math.pi / 12)
        turns = [2 * math.pi * (k + 0.5) / 12 for k in range(12)]
        length = float(np.hypot(*(goal - start)))
        for reach in (3.0, 8.0, 30.0, math.inf):
            along = (goal - start) / length
            near = []
            for centre in self._all:
                u = float(np.clip((centre - start) @ along, 0.0, length))
                if np.hypot(*(start + u * along - centre)) < reach * self.radius_mm:
                    near.append(centre)
            nodes = [start, goal] + [
                c + ring * np.array([math.cos(t), math.sin(t)]) for c in near for t in turns
            ]
            gaps = np.hypot(*(np.array(nodes)[:, None, :] - self._all[None, :, :]).reshape(-1, 2).T).reshape(
                len(nodes), -1
            )
            keep = [0, 1] + [
                i for i in range(2, len(nodes)) if gaps[i].min() > self.radius_mm + 0.4 * self._gap
            ]
            way = self._dijkstra([nodes[i] for i in keep], free)
            if way:
                return way
        raise ValueError("the pegs leave no way between them")

    def _dijkstra(self, nodes: list[Spot], free: Sequence[str]) -> list[Spot]:
        best = {0: 0.0}
        back: dict[int, int] = {}
        heap = [(0.0, 0)]
        done: set[int] = set()
        points = np.array(nodes)
        ends = (
            [(np.array([self.spots[n] for n in free]) == at).all(axis=1) for at in points[:2]] if free else []
        )
        open_ = [
            [self._names.index(n) for n, yes in zip(free, here, strict=True) if yes] for here in ends
        ] or [[], []]
        while heap:
            cost, i = heapq.heappop(heap)
            if i in done:
                continue
            done.add(i)
            if i == 1:
                way = [1]
                while way[-1]:
                    way.append(back[way[-1]])
                return [nodes[k] for k in reversed(way)]
            met = self._met(points[i], points)
            if i == 0:
                met[:, open_[0]] = False
            met[1, open_[1]] = False
            # A bend costs a little, so that nearly straight ways win.
            total = cost + np.hypot(*(points - points[i]).T) + 0.01 * self.radius_mm
            for j in np.flatnonzero(~met.any(axis=1)):
                if j not in done and total[j] < best.get(int(j), math.inf):
                    best[int(j)], back[int(j)] = float(total[j]), i
                    heapq.heappush(heap, (float(total[j]), int(j)))
        return []


def offset(line: Sequence[Spot], aside_mm: float) -> list[Spot]:
    """Shift a line to its left, cutting corners along the bisector so that two shifts never cross."""
    shifted = []
    for i, at in enumerate(line):
        normals = []
        for a, b in ((i - 1, i), (i, i + 1)):
            if a >= 0 and b < len(line):
                d = line[b] - line[a]
                normals.append(np.array([-d[1], d[0]]) / float(np.hypot(*d)))
        n = (
            normals[0]
            if len(normals) == 1
            else (normals[0] + normals[1]) / (1 + float(normals[0] @ normals[1]))
        )
        shifted.append(at + aside_mm * n)
    return shifted
