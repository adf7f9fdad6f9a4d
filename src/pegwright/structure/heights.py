"""Heights, counted in layers: of two things that overlap in plan, the later lies above the earlier."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

import numpy as np

from pegwright.structure.plane_geometry import PlanVector

Footprint = tuple[object, frozenset[object]]
"""The two columns that a lane joins (None: a lane on its own), and the squares of the plan that it covers."""


class Heights:
    """The highest and lowest layer in use at every column and in every small square of the plan.

    Whatever comes next takes the lowest layer above all that it overlaps (longest path), or, if it is laid
    beneath, the highest layer below.
    """

    def __init__(self, cell_mm: float) -> None:
        self._cell = cell_mm
        self._top: dict[object, int] = {}
        self._bottom: dict[object, int] = {}
        self._lanes: dict[
            object, dict[object, tuple[int, int]]
        ] = {}  # square → the columns its lane joins → bottom and top

    def cells(self, line: Sequence[PlanVector], width_mm: float = 0.0) -> frozenset[object]:
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

    def take_above(self, columns: Sequence[tuple[object, int]], lanes: Sequence[Footprint] = ()) -> list[int]:
        """Take, at each column, a number of layers above everything there and in the squares between.

        Returns the lowest layer of each. A lane may slope from one column to the other. All its layers lie
        above whatever its squares held before, except lanes that join the same two columns: those slope
        alike, so the one that is higher at both ends is higher all along.
        """
        between = max((top for lane in lanes for _, top in self._others(lane)), default=-1)
        levels = [1 + max(between, self._top.get(name, -1)) for name, _ in columns]
        self._mark(columns, levels, lanes)
        return levels

    def take_below(self, columns: Sequence[tuple[object, int]], lanes: Sequence[Footprint] = ()) -> list[int]:
        """Take, at each column, a number of layers below everything; return the lowest of each."""
        between = min((bottom for lane in lanes for bottom, _ in self._others(lane)), default=0)
        levels = [min(between, self._bottom.get(name, 0)) - span for name, span in columns]
        self._mark(columns, levels, lanes)
        return levels

    def reserve(self, columns: Sequence[object], lanes: Sequence[Footprint], low: int, high: int) -> None:
        """Mark these columns and lanes as used from one layer to another."""
        for name in columns:
            self._enter(name, low, high)
        for joins, squares in lanes:
            for square in squares:
                old = self._lanes.setdefault(square, {}).get(joins, (low, high))
                self._lanes[square][joins] = min(old[0], low), max(old[1], high)

    def _others(self, lane: Footprint) -> Iterator[tuple[int, int]]:
        joins, squares = lane
        for square in squares:
            for other, span in self._lanes.get(square, {}).items():
                if other != joins or joins is None:
                    yield span

    def _mark(
        self, columns: Sequence[tuple[object, int]], levels: list[int], lanes: Sequence[Footprint]
    ) -> None:
        for (name, span), level in zip(columns, levels, strict=True):
            self._enter(name, level, level + span - 1)
        self.reserve([], lanes, min(levels), max(levels))

    def _enter(self, place: object, low: int, high: int) -> None:
        self._top[place] = max(self._top.get(place, high), high)
        self._bottom[place] = min(self._bottom.get(place, low), low)
