"""Plan and heights: where ribbons run between columns, and which of two things lies above the other."""

from __future__ import annotations

import heapq
import math
from collections.abc import Iterable, Mapping, Sequence

import numpy as np
import numpy.typing as npt

Spot = npt.NDArray[np.float64]


class Heights:
    """The top and bottom height in use at every column and every small square of the plan between them.

    Whatever comes later takes the lowest height above all that it overlaps (longest path), or, laid
    beneath, the highest below.
    """

    def __init__(self, cell_mm: float) -> None:
        self._cell = cell_mm
        self._top: dict[object, int] = {}
        self._bottom: dict[object, int] = {}

    def cells(self, line: Sequence[Spot], width_mm: float = 0.0) -> set[object]:
        """Return the squares within `width_mm` of a line through the spots."""
        reach = math.ceil(width_mm / self._cell)
        found: set[object] = set()
        for a, b in zip(line, line[1:], strict=False):
            steps = max(1, math.ceil(float(np.hypot(*(b - a))) / (0.5 * self._cell)))
            for k in range(steps + 1):
                at = a + (b - a) * (k / steps)
                x, y = math.floor(at[0] / self._cell), math.floor(at[1] / self._cell)
                found.update(
                    (i, j)
                    for i in range(x - 1 - reach, x + 2 + reach)
                    for j in range(y - 1 - reach, y + 2 + reach)
                )
        return found

    def above(self, places: Iterable[object], span: int = 1) -> int:
        """Take `span` heights above everything at these places; return the lowest of them."""
        places = list(places)
        level = 1 + max((self._top.get(p, -1) for p in places), default=-1)
        self._mark(places, level, span)
        return level

    def below(self, places: Iterable[object], span: int = 1) -> int:
        """Take `span` heights below everything at these places; return the lowest of them."""
        places = list(places)
        level = min((self._bottom.get(p, 0) for p in places), default=0) - span
        self._mark(places, level, span)
        return level

    def _mark(self, places: list[object], level: int, span: int) -> None:
        for p in places:
            self._top[p] = max(self._top.get(p, level), level + span - 1)
            self._bottom[p] = min(self._bottom.get(p, level), level)


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
            way = self.way_to(source, self.spots[target], target)
            self._ways[source, target] = way
            self._ways[target, source] = way[::-1]
        return self._ways[source, target]

    def way_to(self, source: str, spot: Spot, target: str | None = None) -> list[Spot]:
        """Return a line from a column's centre to any spot (that of the column `target`, if named)."""
        start = self.spots[source]
        free = [n for n in (source, target) if n is not None]
        if self._clear(start, spot, free):
            return [start, spot]
        return self._around(start, spot, source, target)

    def straight(self, source: str, spot: Spot) -> bool:
        """Say whether the straight line from a column's centre to a spot touches no other column."""
        return self._clear(self.spots[source], spot, [source])

    def _clear(self, a: Spot, b: Spot, free: Sequence[str]) -> bool:
        """Say whether the straight line keeps out of every column but those named."""
        along = b - a
        length2 = float(along @ along)
        u = np.clip(((self._all - a) @ along) / length2, 0.0, 1.0) if length2 else np.zeros(len(self._all))
        gap = np.hypot(*(a + u[:, None] * along - self._all).T)
        for i in np.flatnonzero(gap < self.radius_mm + 0.35 * self._gap):
            if self._names[i] not in free:
                return False
        return True

    def _around(self, start: Spot, goal: Spot, source: str, target: str | None) -> list[Spot]:
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
            gaps = np.hypot(
                *(np.array(nodes)[:, None, :] - self._all[None, :, :]).reshape(-1, 2).T
            ).reshape(len(nodes), -1)
            keep = [0, 1] + [
                i for i in range(2, len(nodes)) if gaps[i].min() > self.radius_mm + 0.4 * self._gap
            ]
            way = self._dijkstra([nodes[i] for i in keep], source, target)
            if way:
                return way
        raise ValueError(f"no way in plan from {source}")

    def _dijkstra(self, nodes: list[Spot], source: str, target: str | None) -> list[Spot]:
        best = {0: 0.0}
        back: dict[int, int] = {}
        heap = [(0.0, 0)]
        done: set[int] = set()
        points = np.array(nodes)
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
            far = np.hypot(*(points - points[i]).T)
            for j in np.argsort(far):
                j = int(j)
                # A bend costs a little, so that nearly straight ways win.
                total = cost + float(far[j]) + 0.01 * self.radius_mm
                if j in done or total >= best.get(j, math.inf):
                    continue
                ends = [source] * (i == 0) + [target] * (j == 1 and target is not None)
                if self._clear(nodes[i], nodes[j], [e for e in ends if e]):
                    best[j], back[j] = total, i
                    heapq.heappush(heap, (total, j))
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
        n = normals[0] if len(normals) == 1 else (normals[0] + normals[1]) / (1 + float(normals[0] @ normals[1]))
        shifted.append(at + aside_mm * n)
    return shifted
