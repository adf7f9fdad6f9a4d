"""The board: the pegs of one loom, and what can be asked of their places."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import product
from typing import NamedTuple

from pegwright.pattern import MAX_PEGS, Layout, Peg, peg_count, pegs

_CELL_MM = 32.0


class Board(NamedTuple):
    """The pegs by address. Lengths in mm; `twice` lists addresses that the layout gives more than once.

    `cells` sorts the pegs into squares of the plan, so that a band is compared with its neighbourhood only.
    """

    pegs: Mapping[str, Peg]
    peg_mm: float
    height_mm: float
    cells: Mapping[tuple[int, int], tuple[Peg, ...]]
    twice: tuple[str, ...] = ()

    def distance_mm(self, a: str, b: str) -> float:
        """Return the distance between the centres of two pegs."""
        p, q = self.pegs[a], self.pegs[b]
        return math.hypot(p.x_mm - q.x_mm, p.y_mm - q.y_mm)

    @property
    def spots(self) -> dict[str, tuple[float, float]]:
        """Where each peg's centre stands in plan, in mm."""
        return {at: (peg.x_mm, peg.y_mm) for at, peg in self.pegs.items()}

    def within(self, low: tuple[float, float], high: tuple[float, float]) -> Iterator[Peg]:
        """Yield the pegs whose centres lie in a rectangle of the plan (corners in mm)."""
        columns = range(math.floor(low[0] / _CELL_MM), math.floor(high[0] / _CELL_MM) + 1)
        rows = range(math.floor(low[1] / _CELL_MM), math.floor(high[1] / _CELL_MM) + 1)
        squares: Iterable[tuple[int, int]] = product(columns, rows)
        if len(columns) * len(rows) > len(self.cells):  # a wide rectangle costs no more than all the pegs
            squares = sorted(cell for cell in self.cells if cell[0] in columns and cell[1] in rows)
        for square in squares:
            for peg in self.cells.get(square, ()):
                if low[0] <= peg.x_mm <= high[0] and low[1] <= peg.y_mm <= high[1]:
                    yield peg


def board_of(layout: Layout) -> Board:
    """Set up the board of a layout; of pegs with the same address the first one stands.

    A loom of more than `MAX_PEGS` is left without pegs: `expand` has said so and gives no moves for it.
    """
    if peg_count(layout) > MAX_PEGS:
        return Board({}, layout.peg_mm, layout.height_mm, {})
    found: dict[str, Peg] = {}
    twice = []
    for peg in pegs(layout):
        if peg.at in found:
            twice.append(peg.at)
        else:
            found[peg.at] = peg
    cells: dict[tuple[int, int], list[Peg]] = {}
    for peg in found.values():
        cells.setdefault((math.floor(peg.x_mm / _CELL_MM), math.floor(peg.y_mm / _CELL_MM)), []).append(peg)
    grid = {cell: tuple(members) for cell, members in cells.items()}
    return Board(found, layout.peg_mm, layout.height_mm, grid, tuple(twice))


def hull(points: Sequence[tuple[float, float]]) -> list[int]:
    """Return the indices of the convex hull, anticlockwise, points on its edges included.

    Andrew's monotone chain (1979), with collinear points kept.
    """
    order = sorted(range(len(points)), key=lambda i: points[i])
    if len(order) < 3 or all(_turn(points[order[0]], points[order[-1]], points[i]) == 0 for i in order):
        return order
    lower: list[int] = []
    upper: list[int] = []
    for chain, indices in ((lower, order), (upper, order[::-1])):
        for i in indices:
            while len(chain) > 1 and _turn(points[chain[-2]], points[chain[-1]], points[i]) < 0:
                chain.pop()
            chain.append(i)
    # A collinear point of the upper side is met by both chains only if it is an end of both.
    seen = set(lower)
    return lower + [i for i in upper[1:-1] if i not in seen]


def is_inside(points: Sequence[tuple[float, float]], spot: tuple[float, float], slack_mm: float) -> bool:
    """Say whether a spot lies in the convex hull of the points, or within `slack_mm` of a thin one."""
    ring = hull(points)
    if len(ring) < 3 or all(_turn(points[ring[0]], points[ring[-1]], points[i]) == 0 for i in ring):
        a, b = points[ring[0]], points[ring[-1]]
        return _distance_to_segment_mm(a, b, spot) < slack_mm
    return all(_turn(points[i], points[j], spot) > 0 for i, j in zip(ring, ring[1:] + ring[:1], strict=True))


def _turn(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
    """Return twice the signed area of abc, with rounding noise set to zero."""
    area = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
    return 0.0 if abs(area) < 1e-6 else area


def _distance_to_segment_mm(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
    dx, dy = b[0] - a[0], b[1] - a[1]
    along = ((c[0] - a[0]) * dx + (c[1] - a[1]) * dy) / (dx * dx + dy * dy or 1.0)
    along = min(1.0, max(0.0, along))
    return math.hypot(a[0] + along * dx - c[0], a[1] + along * dy - c[1])
