"""The columns seen from above, and paths between them that touch no other column."""

from __future__ import annotations

import heapq
import math
from collections.abc import Mapping, Sequence

import numpy as np
import numpy.typing as npt

from pegwright.finding import RefusedError, phrase
from pegwright.structure.plane_geometry import PlanVector


class FloorPlan:
    """The columns seen from above, and paths between them that touch no other column."""

    def __init__(self, spots: Mapping[str, PlanVector], radius_mm: float, gap_mm: float) -> None:
        self.radius_mm = radius_mm
        self._gap = gap_mm
        self._names = list(spots)
        self.spots = spots
        self._all = np.array([spots[n] for n in self._names]).reshape(-1, 2)
        self._paths: dict[tuple[str, str], list[PlanVector]] = {}

    def path(self, source: str, target: str) -> list[PlanVector]:
        """Return a polyline from the centre of one column to that of another, clear of all others."""
        if (source, target) not in self._paths:
            path = self.path_to(self.spots[source], self.spots[target], (source, target))
            self._paths[source, target] = path
            self._paths[target, source] = path[::-1]
        return self._paths[source, target]

    def path_to(self, start: PlanVector, goal: PlanVector, free: Sequence[str]) -> list[PlanVector]:
        """Return a polyline from point to point, clear of all columns but those in `free`.

        Raises:
            ValueError: the columns leave no path.
        """
        return [start, goal] if self.is_clear(start, goal, free) else self._path_around(start, goal, free)

    def is_clear(self, a: PlanVector, b: PlanVector, free: Sequence[str]) -> bool:
        """Say whether the straight line keeps out of every column but those named in `free`."""
        return not any(
            self._names[i] not in free for i in np.flatnonzero(self._columns_hit(a, b[None, :])[0])
        )

    def _columns_hit(self, a: PlanVector, b: PlanVector) -> npt.NDArray[np.bool_]:
        """Say which columns the straight lines from a to the points b (m, 2) run into: (m, columns)."""
        along = b - a
        length2 = np.maximum((along**2).sum(axis=1), 1e-12)
        ahead = self._all - a
        u = np.clip(along @ ahead.T / length2[:, None], 0.0, 1.0)
        gap = (u[:, :, None] * along[:, None, :] - ahead[None, :, :]) ** 2
        return np.asarray(gap.sum(axis=2) < (self.radius_mm + 0.35 * self._gap) ** 2)

    def _path_around(self, start: PlanVector, goal: PlanVector, free: Sequence[str]) -> list[PlanVector]:
        """Find a path (Dijkstra) through points around nearby columns, widening the search as needed."""
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
            path = self._dijkstra([nodes[i] for i in keep], free)
            if path:
                return path
        raise RefusedError(phrase("no-way-between-pegs"))

    def _dijkstra(self, nodes: list[PlanVector], free: Sequence[str]) -> list[PlanVector]:
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
                path = [1]
                while path[-1]:
                    path.append(back[path[-1]])
                return [nodes[k] for k in reversed(path)]
            met = self._columns_hit(points[i], points)
            if i == 0:
                met[:, open_[0]] = False
            met[1, open_[1]] = False
            # A bend costs a little, so that nearly straight paths win.
            total = cost + np.hypot(*(points - points[i]).T) + 0.01 * self.radius_mm
            for j in np.flatnonzero(~met.any(axis=1)):
                if j not in done and total[j] < best.get(int(j), math.inf):
                    best[int(j)], back[int(j)] = float(total[j]), i
                    heapq.heappush(heap, (float(total[j]), int(j)))
        return []
