"""Which edges are near, and how far a step may go before any strand could pass another.

The bound is the certificate. Along x + α·dx a point of edge a moves, against any common translation c, by
at most α·max|dx_i − c| over the edge's two ends. So for a listed pair

    α ≤ γ (d − d_min) / (max_{i∈a}|dx_i − c| + max_{j∈b}|dx_j − c|),   c the mean of the four moves,

keeps d above d_min on the whole path, and for unlisted pairs the same holds band by band, with the reach of
the list (or the gap of the bands' boxes, if wider) for d. Neighbours along a band take part in the bound,
though not in contact; only edges that share a vertex do not, and they can meet only by folding flat. The
motion is then an isotopy and nothing has to be tested afterwards (it still is, see `replay`). Only relative
motion counts, so a long chain may move far in one step: the difference from per-vertex bounds such as A.
Chen et al., Offset geometric contact, ACM Trans. Graph. 44 (2025).
"""

from __future__ import annotations

import math
from concurrent.futures import ThreadPoolExecutor
from typing import NamedTuple

import numpy as np

from pegwright.shape.contact import _closest
from pegwright.shape.kernel import kernel
from pegwright.shape.rods import Flags, Floats, Ints, Rods

__all__ = [
    "Near",
    "close_pairs",
    "far_bound",
    "find_pairs",
    "is_neighbour",
    "least_gap",
    "live_pairs",
    "near_bound",
]

_GAMMA = 0.8
_RING = 2  # half-width cells searched each way
_LOOKS = 24
_BARELY_MM = 1e-3  # distances below about 1e-6 drown in what smooths them


@kernel
def _is_neighbour(start: Ints, band: Ints, after: Ints, reach: Ints, a: int, b: int) -> bool:
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


class Near(NamedTuple):
    """Pairs of edges that a step could bring into touch."""

    pairs: Ints  # (m, 2), a < b
    gap_mm: Floats  # (m,) distance now
    move_mm: Floats  # (m,) relative motion over the whole step
    touchable: Flags  # (m,) false for neighbours along a band


def find_pairs(
    x: Floats,
    step: Floats,
    rods: Rods,
    reach_mm: float,
    apart_mm: float,
    workers: ThreadPoolExecutor | None = None,
) -> Near:
    """Find every pair of edges nearer than `reach_mm` that `step` could bring within `apart_mm`.

    Pairs with a common vertex are left out. Uniform grid on the edges' midpoints, sorted by counting.
    """
    edge = np.flatnonzero(rods.next >= 0)
    there = rods.next[edge]
    low, high = x[edge], x[there]
    facts = np.empty((len(edge), 8))  # midpoint, half length, mean move, half the difference of the two moves
    facts[:, :3] = 0.5 * (low + high)
    facts[:, 3] = 0.5 * np.sqrt(((high - low) ** 2).sum(axis=1))
    facts[:, 4:7] = 0.5 * (step[edge] + step[there])
    facts[:, 7] = 0.5 * np.sqrt(((step[there] - step[edge]) ** 2).sum(axis=1))
    corner = facts[:, :3].min(axis=0)
    extent = facts[:, :3].max(axis=0) - corner
    cell = (reach_mm + 2 * float(facts[:, 3].max())) / _RING
    while np.prod(np.floor(extent / cell) + 1) > 8 * len(edge) + 4096:
        cell *= 1.3
    shape = (extent / cell).astype(np.int64) + 1
    cells = ((facts[:, :3] - corner) / cell).astype(np.int64)
    code = (cells[:, 0] * shape[1] + cells[:, 1]) * shape[2] + cells[:, 2]
    by_cell = np.argsort(code, kind="stable")
    ends = np.zeros(int(shape.prod()) + 1, np.int64)
    np.cumsum(np.bincount(code, minlength=len(ends) - 1), out=ends[1:])
    facts, cells, inside = facts[by_cell], cells[by_cell], edge[by_cell]

    def part(first: int, last: int) -> Near:
        capacity = 10 * (last - first) + 1024
        while True:
            pairs, numbers = np.empty((capacity, 2), np.int64), np.empty((capacity, 2))
            touchable = np.empty(capacity, np.bool_)
            found = _find_pairs(
                x, rods.next, rods.start, rods.band, rods.reach, facts, cells, inside, ends, shape,
                reach_mm, apart_mm, first, last, pairs, numbers, touchable,
            )  # fmt: skip
            if found <= capacity:
                return Near(pairs[:found], numbers[:found, 0], numbers[:found, 1], touchable[:found])
            capacity = found

    m = len(edge)
    if workers is None or m < 2000:
        return part(0, m)
    other = workers.submit(part, 0, m // 2)
    halves = part(m // 2, m), other.result()
    return Near(*(np.concatenate(column) for column in zip(*halves, strict=True)))


@kernel
def _find_pairs(
    x: Floats,
    after: Ints,
    start: Ints,
    band: Ints,
    reach: Ints,
    facts: Floats,
    cells: Ints,
    inside: Ints,
    ends: Ints,
    shape: Ints,
    reach_mm: float,
    apart_mm: float,
    first: int,
    last: int,
    pairs: Ints,
    numbers: Floats,
    touchable: Flags,
) -> int:
    """Pairs whose earlier edge (in cell order) lies in first..last; counts on where there is no more room."""
    found = 0
    for place in range(first, last):
        ci, cj, ck = cells[place, 0], cells[place, 1], cells[place, 2]
        k0, k1 = max(ck - _RING, 0), min(ck + _RING + 1, shape[2])
        for i in range(ci, min(ci + _RING + 1, shape[0])):
            for j in range(max(cj - _RING, 0), min(cj + _RING + 1, shape[1])):
                row = (i * shape[1] + j) * shape[2]
                for slot in range(max(ends[row + k0], place + 1), ends[row + k1]):
                    square = push = 0.0
                    for c in range(3):
                        square += (facts[place, c] - facts[slot, c]) ** 2
                        push += (facts[place, 4 + c] - facts[slot, 4 + c]) ** 2
                    halves = facts[place, 3] + facts[slot, 3]
                    if square >= (reach_mm + halves) ** 2:
                        continue
                    move = facts[place, 7] + facts[slot, 7] + math.sqrt(push)
                    # A pair that stays beyond `apart_mm` for the whole step needs no bound; the 1.3 covers γ.
                    far = min(reach_mm, apart_mm + 1.3 * move)
                    if square >= (far + halves) ** 2:
                        continue
                    a, b = inside[place], inside[slot]
                    if a > b:
                        a, b = b, a
                    if after[a] == b or after[b] == a:
                        continue
                    squared = _closest(x, a, after[a], b, after[b], 1e-12)[2]
                    if squared >= far * far:
                        continue
                    if found < pairs.shape[0]:
                        pairs[found, 0], pairs[found, 1] = a, b
                        numbers[found, 0], numbers[found, 1] = math.sqrt(squared), move
                        touchable[found] = not _is_neighbour(start, band, after, reach, a, b)
                    found += 1
    return found


def near_bound(x: Floats, step: Floats, rods: Rods, near: Near, least_mm: float) -> float:
    """Return the largest safe α ≤ 1 for the listed pairs, as far as it can be seen in a few looks.

    A neighbour along the band may start nearer than d_min where edges are short: it keeps half its gap, and
    always more than can be told from a crossing.
    """
    half = np.maximum(0.5 * near.gap_mm, np.minimum(_BARELY_MM, 0.99 * near.gap_mm))
    floor = np.where(near.touchable, least_mm, np.minimum(least_mm, half))
    short = np.flatnonzero(near.move_mm > _GAMMA * (near.gap_mm - floor))
    return float(
        _advance(x, step, rods.next, near.pairs[short], near.gap_mm[short], near.move_mm[short], floor[short])
    )


@kernel
def _advance(
    x: Floats, step: Floats, after: Ints, pairs: Ints, gaps: Floats, moves: Floats, floors: Floats
) -> float:
    """Largest α ≤ 1 that keeps each pair above its floor, by going on from where the bound has led.

    Strands that slide along each other keep their distance, however far they move; so each pair is looked at
    again and again (conservative advancement, B. Mirtich, 1996), until it is past the least α of the others.
    """
    alpha = 1.0
    y, at = np.zeros((4, 3)), np.arange(4)  # numba compiles afresh for indices written as numbers
    for k in range(pairs.shape[0]):
        a, b = pairs[k, 0], pairs[k, 1]
        t, gap = 0.0, gaps[k]
        for look in range(_LOOKS):
            onward = _GAMMA * (gap - floors[k]) / moves[k]
            t += onward
            if t >= alpha or onward < 0.02 * t or look == _LOOKS - 1:
                break
            for i in range(3):
                y[0, i] = x[a, i] + t * step[a, i]
                y[1, i] = x[after[a], i] + t * step[after[a], i]
                y[2, i] = x[b, i] + t * step[b, i]
                y[3, i] = x[after[b], i] + t * step[after[b], i]
            gap = math.sqrt(_closest(y, at[0], at[1], at[2], at[3], 1e-12)[2])
        alpha = min(alpha, t)
    return alpha


def live_pairs(near: Near, alpha: float, apart_mm: float) -> Ints:
    """Return the pairs (m, 2) that may touch somewhere on the way to `alpha`."""
    return near.pairs[near.touchable & (near.gap_mm - alpha * near.move_mm < apart_mm)]


def close_pairs(x: Floats, rods: Rods, pairs: Ints, radius: Floats, margin_mm: float) -> Ints:
    """Return those pairs (m, 2) that touch (radii (n,) in mm) or are within `margin_mm` of it."""
    keep = np.empty(len(pairs), np.bool_)
    _close_pairs(x, rods.next, pairs, radius, margin_mm, keep)
    return pairs[keep]


@kernel
def _close_pairs(x: Floats, after: Ints, pairs: Ints, radius: Floats, margin_mm: float, keep: Flags) -> None:
    for k in range(pairs.shape[0]):
        a, b = pairs[k, 0], pairs[k, 1]
        far = radius[a] + radius[b] + margin_mm
        keep[k] = _closest(x, a, after[a], b, after[b], 1e-12)[2] < far * far


def least_gap(x: Floats, rods: Rods, pairs: Ints) -> float:
    """Return the least distance in mm between the edges of listed pairs (m, 2); infinite where none is."""
    return float(_least_gap(x, rods.next, pairs))


@kernel
def _least_gap(x: Floats, after: Ints, pairs: Ints) -> float:
    least = np.inf
    for k in range(pairs.shape[0]):
        a, b = pairs[k, 0], pairs[k, 1]
        least = min(least, _closest(x, a, after[a], b, after[b], 1e-12)[2])
    return math.sqrt(least)


def far_bound(
    x: Floats, step: Floats, rods: Rods, apart_mm: float, farthest_mm: float
) -> tuple[float, float]:
    """Choose the reach of the list for this step, and bound the pairs beyond it.

    Returns the reach in mm, `apart_mm` to `farthest_mm`, and the largest α ≤ 1 that keeps every pair not
    within that reach farther apart than `apart_mm`.
    """
    at = rods.start[:-1]
    low, high = np.minimum.reduceat(x, at), np.maximum.reduceat(x, at)
    middle = 0.5 * (np.minimum.reduceat(step, at) + np.maximum.reduceat(step, at))
    spread = np.maximum.reduceat(np.sqrt(((step - middle[rods.band]) ** 2).sum(axis=1)), at)
    reach = min(_far_bound(low, high, middle, spread, apart_mm, np.inf), farthest_mm)
    if reach < farthest_mm:
        return reach, 1.0
    return reach, _far_bound(low, high, middle, spread, apart_mm, reach)


@kernel
def _far_bound(
    low: Floats, high: Floats, middle: Floats, spread: Floats, apart_mm: float, reach_mm: float
) -> float:
    """Least reach that lets α be 1 (where `reach_mm` is infinite), or largest α at this reach.

    `low`, `high`: corners of each band's box; `middle`, `spread`: the middle of its moves and the greatest
    departure from it.
    """
    alpha, wanted = 1.0, apart_mm
    endless = reach_mm > 1e300
    for a in range(low.shape[0]):
        for b in range(a, low.shape[0]):
            gap = drift = 0.0
            for i in range(3):
                drift += (middle[a, i] - middle[b, i]) ** 2
                between = max(low[b, i] - high[a, i], low[a, i] - high[b, i])
                gap += max(between, 0.0) ** 2
            move = spread[a] + spread[b] + math.sqrt(drift)
            gap = math.sqrt(gap)
            if endless:
                if gap < apart_mm + move / 0.9:
                    wanted = max(wanted, apart_mm + move / 0.9)
            else:
                allowed = 0.9 * (max(gap, reach_mm) - apart_mm)
                if move * alpha > allowed:
                    alpha = allowed / move
    return wanted if endless else alpha
