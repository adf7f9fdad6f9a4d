"""Find the pairs of edges that a step could bring into contact.

Uses a uniform grid of the edges' midpoints, sorted by counting; each edge looks into the cells around its
own. `step_bound` bounds the step by the pairs found.
"""

from __future__ import annotations

import math
from concurrent.futures import ThreadPoolExecutor
from typing import NamedTuple

import numpy as np

from pegwright.shape.contact import closest_points
from pegwright.shape.jit import kernel
from pegwright.shape.rods import Flags, Floats, Ints, Rods

__all__ = [
    "SAFETY",
    "NearPairs",
    "find_near_pairs",
    "is_neighbour",
    "pairs_within",
    "smallest_gap",
    "touchable_pairs",
]

SAFETY = 0.8  # γ: the share of a pair's gap that a step may use
_RING = 2  # half-width cells searched each way
# Columns of `_Grid.facts` by edge: its midpoint (three), half its length, its mean move (three), and half
# the difference of the moves of its two ends.
MIDPOINT, HALF_LENGTH, MOVE, HALF_SPREAD = 0, 3, 4, 7


@kernel
def _is_neighbour(start: Ints, band: Ints, after: Ints, reach: Ints, a: int, b: int) -> bool:
    """Twin of `is_neighbour` on four columns of `Rods`."""
    mine = band[a]
    if mine != band[b]:
        return False
    onward = b - a
    if onward <= reach[a]:
        return True
    last = start[mine + 1]
    return bool(after[last - 1] >= 0 and last - start[mine] - onward <= reach[b])


def is_neighbour(rods: Rods, a: int, b: int) -> bool:
    """Return whether edges a < b lie so close along one band that they always overlap."""
    return bool(_is_neighbour(rods.start, rods.band, rods.next, rods.reach, a, b))


class NearPairs(NamedTuple):
    """Pairs of edges that a step could bring into contact."""

    pairs: Ints  # (m, 2), a < b
    gap_mm: Floats  # (m,) distance now
    move_mm: Floats  # (m,) relative motion over the whole step
    touchable: Flags  # (m,) false for neighbours along a band


class _Grid(NamedTuple):
    """Edges sorted by the cell that their midpoint lies in, cells row by row (the last axis fastest)."""

    facts: Floats  # (edges, 8), columns as named above
    cell: Ints  # (edges, 3)
    edge: Ints  # (edges,) the vertex that each edge starts from
    ends: Ints  # (cells + 1,) where each cell begins
    shape: Ints  # (3,) cells along each axis


def find_near_pairs(
    x: Floats,
    step: Floats,
    rods: Rods,
    reach_mm: float,
    apart_mm: float,
    workers: ThreadPoolExecutor | None = None,
) -> NearPairs:
    """Find every pair of edges nearer than `reach_mm` that `step` could bring within `apart_mm`.

    Pairs with a common vertex are left out. `x` and `step` are (n, 3) in mm.
    """
    grid = _sort_into_grid(x, step, rods, reach_mm)

    def search(first: int, last: int) -> NearPairs:
        capacity = 10 * (last - first) + 1024
        while True:
            out = NearPairs(
                np.empty((capacity, 2), np.int64),
                np.empty(capacity),
                np.empty(capacity),
                np.empty(capacity, np.bool_),
            )
            found = _find_near_pairs(x, rods, grid, reach_mm, apart_mm, first, last, out)
            if found <= capacity:
                return NearPairs._make(column[:found] for column in out)
            capacity = found

    m = len(grid.edge)
    if workers is None or m < 2000:
        return search(0, m)
    other = workers.submit(search, 0, m // 2)
    halves = search(m // 2, m), other.result()
    return NearPairs(*(np.concatenate(column) for column in zip(*halves, strict=True)))


def _sort_into_grid(x: Floats, step: Floats, rods: Rods, reach_mm: float) -> _Grid:
    edge = np.flatnonzero(rods.next >= 0)
    there = rods.next[edge]
    low, high = x[edge], x[there]
    facts = np.empty((len(edge), 8))
    facts[:, MIDPOINT : MIDPOINT + 3] = 0.5 * (low + high)
    facts[:, HALF_LENGTH] = 0.5 * np.sqrt(((high - low) ** 2).sum(axis=1))
    facts[:, MOVE : MOVE + 3] = 0.5 * (step[edge] + step[there])
    facts[:, HALF_SPREAD] = 0.5 * np.sqrt(((step[there] - step[edge]) ** 2).sum(axis=1))
    corner = facts[:, :3].min(axis=0)
    extent = facts[:, :3].max(axis=0) - corner
    size = (reach_mm + 2 * float(facts[:, HALF_LENGTH].max())) / _RING
    while np.prod(np.floor(extent / size) + 1) > 8 * len(edge) + 4096:
        size *= 1.3
    shape = (extent / size).astype(np.int64) + 1
    cell = ((facts[:, :3] - corner) / size).astype(np.int64)
    code = (cell[:, 0] * shape[1] + cell[:, 1]) * shape[2] + cell[:, 2]
    by_cell = np.argsort(code, kind="stable")
    ends = np.zeros(int(shape.prod()) + 1, np.int64)
    np.cumsum(np.bincount(code, minlength=len(ends) - 1), out=ends[1:])
    return _Grid(facts[by_cell], cell[by_cell], edge[by_cell], ends, shape)


@kernel
def _find_near_pairs(
    x: Floats,
    rods: Rods,
    grid: _Grid,
    reach_mm: float,
    apart_mm: float,
    first: int,
    last: int,
    out: NearPairs,
) -> int:
    """Fill `out` with the pairs whose earlier edge in grid order is in first..last.

    Returns the number of pairs, even those that `out` has no room for.
    """
    # Unpacked once: every access in the loop would cost compile time.
    after, start, band, reach = rods.next, rods.start, rods.band, rods.reach
    facts, cell, edge, ends, shape = grid.facts, grid.cell, grid.edge, grid.ends, grid.shape
    pairs, gap_mm, move_mm, touchable = out.pairs, out.gap_mm, out.move_mm, out.touchable
    found = 0
    for place in range(first, last):
        ci, cj, ck = cell[place, 0], cell[place, 1], cell[place, 2]
        k0, k1 = max(ck - _RING, 0), min(ck + _RING + 1, shape[2])
        for i in range(ci, min(ci + _RING + 1, shape[0])):
            for j in range(max(cj - _RING, 0), min(cj + _RING + 1, shape[1])):
                row = (i * shape[1] + j) * shape[2]
                for slot in range(max(ends[row + k0], place + 1), ends[row + k1]):
                    square = push = 0.0
                    for c in range(3):
                        square += (facts[place, MIDPOINT + c] - facts[slot, MIDPOINT + c]) ** 2
                        push += (facts[place, MOVE + c] - facts[slot, MOVE + c]) ** 2
                    halves = facts[place, HALF_LENGTH] + facts[slot, HALF_LENGTH]
                    if square >= (reach_mm + halves) ** 2:
                        continue
                    move = facts[place, HALF_SPREAD] + facts[slot, HALF_SPREAD] + math.sqrt(push)
                    # A pair that stays beyond `apart_mm` for the whole step needs no bound; the 1.3 covers γ.
                    far = min(reach_mm, apart_mm + 1.3 * move)
                    if square >= (far + halves) ** 2:
                        continue
                    a, b = edge[place], edge[slot]
                    if a > b:
                        a, b = b, a
                    if after[a] == b or after[b] == a:
                        continue
                    squared = closest_points(x, a, after[a], b, after[b], 1e-12)[2]
                    if squared >= far * far:
                        continue
                    if found < pairs.shape[0]:
                        pairs[found, 0], pairs[found, 1] = a, b
                        gap_mm[found], move_mm[found] = math.sqrt(squared), move
                        touchable[found] = not _is_neighbour(start, band, after, reach, a, b)
                    found += 1
    return found


def touchable_pairs(near: NearPairs, alpha: float, apart_mm: float) -> Ints:
    """Return the pairs (m, 2) that may touch somewhere on the way to `alpha`."""
    return near.pairs[near.touchable & (near.gap_mm - alpha * near.move_mm < apart_mm)]


def pairs_within(x: Floats, rods: Rods, pairs: Ints, radius: Floats, margin_mm: float) -> Ints:
    """Return those pairs (m, 2) that touch (radii (n,) in mm) or are within `margin_mm` of it."""
    keep = np.empty(len(pairs), np.bool_)
    _mark_pairs_within(x, rods.next, pairs, radius, margin_mm, keep)
    return pairs[keep]


@kernel
def _mark_pairs_within(
    x: Floats, after: Ints, pairs: Ints, radius: Floats, margin_mm: float, keep: Flags
) -> None:
    for k in range(pairs.shape[0]):
        a, b = pairs[k, 0], pairs[k, 1]
        far = radius[a] + radius[b] + margin_mm
        keep[k] = closest_points(x, a, after[a], b, after[b], 1e-12)[2] < far * far


def smallest_gap(x: Floats, rods: Rods, pairs: Ints) -> float:
    """Return the least distance in mm between the edges of pairs (m, 2); infinite if there are none."""
    return float(_smallest_gap(x, rods.next, pairs))


@kernel
def _smallest_gap(x: Floats, after: Ints, pairs: Ints) -> float:
    least = np.inf
    for k in range(pairs.shape[0]):
        a, b = pairs[k, 0], pairs[k, 1]
        least = min(least, closest_points(x, a, after[a], b, after[b], 1e-12)[2])
    return math.sqrt(least)
