"""A second check that no strands passed through each other: replay every step and look for crossings.

Shares nothing with the bound of `near_pairs`. Between two iterates every point moves straight; edges (a, b)
and (c, d) can cross only when the four ends lie in a plane, a cubic in time (X. Provot, Graphics Interface
1997, §3). Each root in [0, 1] is found by bisection between the cubic's turning points, and there the edges
are tested for a common point. All pairs of edges without a common vertex whose boxes, swept over the step,
overlap are tested. Subtracting the mean motion of a pair of bands from both changes nothing and keeps the
boxes small.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

import numpy as np

from pegwright.shape.jit import kernel
from pegwright.shape.rods import Band, Floats, Ints, build_rods
from pegwright.shape.tightening import CornerMoves

__all__ = ["count_corner_crossings", "count_pass_throughs"]


def count_pass_throughs(iterates_mm: Sequence[Floats], bands: Sequence[Band]) -> int:
    """Count the crossings of strands on the straight paths between consecutive iterates, each (n, 3) in mm.

    Raises:
        ValueError: an iterate does not have one row for each point of `bands`.
    """
    _, rods = build_rods(bands)
    total = 0
    for x, y in itertools.pairwise(iterates_mm):
        if x.shape != (len(rods.next), 3) or y.shape != x.shape:
            raise ValueError(f"an iterate has shape {x.shape}, not ({len(rods.next)}, 3)")
        total += _count_pass_throughs(np.ascontiguousarray(x), np.ascontiguousarray(y), rods.start, rods.next)
    return total


def count_corner_crossings(curves: Sequence[Floats], moves: CornerMoves) -> int:
    """Count the crossings of strands while the corners of closed curves, each (n, 3) in mm, are moved."""
    start = np.concatenate([[0], np.cumsum([len(c) for c in curves])]).astype(np.int64)
    x = np.ascontiguousarray(np.concatenate([np.asarray(c, dtype=np.float64) for c in curves]))
    return int(_count_corner_crossings(x, start, moves.corner, moves.to_mm))


@kernel
def _count_corner_crossings(x: Floats, start: Ints, corner: Ints, to: Floats) -> int:
    n = x.shape[0]
    after, before = np.arange(n) + 1, np.arange(n) - 1
    for band in range(start.shape[0] - 1):
        after[start[band + 1] - 1], before[start[band]] = start[band], start[band + 1] - 1
    ends = np.zeros((2, 4, 3))
    swept, other = np.zeros(6), np.zeros(6)
    total = 0
    for k in range(corner.shape[0]):
        v = corner[k] if corner[k] >= 0 else -1 - corner[k]
        a, c = before[v], after[v]
        for i in range(3):
            swept[i] = min(x[a, i], x[v, i], x[c, i], to[k, i])
            swept[3 + i] = max(x[a, i], x[v, i], x[c, i], to[k, i])
        for p in range(n):
            q = after[p]
            if q < 0 or p in (a, v):
                continue
            for i in range(3):
                other[i], other[3 + i] = min(x[p, i], x[q, i]), max(x[p, i], x[q, i])
            if _boxes_apart(swept, other):
                continue
            for side in range(2):
                fixed = a if side == 0 else c
                if fixed in (p, q):
                    continue
                for i in range(3):
                    ends[0, 0, i], ends[1, 0, i] = x[v, i], to[k, i] - x[v, i]
                    ends[0, 1, i], ends[1, 1, i] = x[fixed, i], 0.0
                    ends[0, 2, i], ends[0, 3, i] = x[p, i], x[q, i]
                    ends[1, 2, i] = ends[1, 3, i] = 0.0
                total += _count_crossings(ends)
        if corner[k] < 0:
            after[a], before[c] = c, a
            after[v] = -1
        for i in range(3):
            x[v, i] = to[k, i]
    return total


@kernel
def _cubic(k0: float, k1: float, k2: float, k3: float, t: float) -> float:
    return k0 + t * (k1 + t * (k2 + t * k3))


@kernel
def _root_between(k0: float, k1: float, k2: float, k3: float, low: float, high: float) -> float:
    """Return a root between `low` and `high` if the signs differ there, else −1."""
    first = _cubic(k0, k1, k2, k3, low)
    if first * _cubic(k0, k1, k2, k3, high) > 0.0 or first == 0.0:
        return -1.0
    for _ in range(60):
        middle = 0.5 * (low + high)
        if first * _cubic(k0, k1, k2, k3, middle) > 0.0:
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)


@kernel
def _edges_meet(p: Floats, t: float) -> bool:
    """Return whether edges 0–1 and 2–3 meet at time t; p (2, 4, 3) holds the ends before and after."""
    uu = uv = vv = uw = vw = 0.0
    for i in range(3):
        a, b = p[0, 0, i] + t * p[1, 0, i], p[0, 1, i] + t * p[1, 1, i]
        c, d = p[0, 2, i] + t * p[1, 2, i], p[0, 3, i] + t * p[1, 3, i]
        u, v, w = b - a, d - c, c - a
        uu += u * u
        uv += u * v
        vv += v * v
        uw += u * w
        vw += v * w
    det = uu * vv - uv * uv
    if det <= 1e-14 * uu * vv:
        return False
    s, q = (uw * vv - vw * uv) / det, (uw * uv - vw * uu) / det
    return 0.0 <= s <= 1.0 and 0.0 <= q <= 1.0


@kernel
def _count_crossings(p: Floats) -> int:
    """Count how often in [0, 1] two edges cross; p (2, 4, 3) holds their ends and the ends' moves."""
    # det(e1, e2, e3) with e = base + t·move, as a cubic k0 + k1 t + k2 t² + k3 t³.
    k = np.zeros(4)
    for order in range(8):
        m1, m2, m3 = order & 1, (order >> 1) & 1, (order >> 2) & 1
        det = 0.0
        for i in range(3):
            j, h = (i + 1) % 3, (i + 2) % 3
            a = p[m1, 1, i] - p[m1, 0, i]
            det += a * (
                (p[m2, 3, j] - p[m2, 2, j]) * (p[m3, 2, h] - p[m3, 0, h])
                - (p[m2, 3, h] - p[m2, 2, h]) * (p[m3, 2, j] - p[m3, 0, j])
            )
        k[m1 + m2 + m3] += det
    turns = np.zeros(4)
    count = 1
    disc = k[2] * k[2] - 3.0 * k[3] * k[1]
    if disc > 0.0:
        # Both turning points without cancellation (one may be infinite if the cubic term vanishes).
        big = -(k[2] + math.copysign(math.sqrt(disc), k[2]))
        one = big / (3.0 * k[3]) if k[3] != 0.0 else -1.0
        two = k[1] / big if big != 0.0 else -1.0
        for turn in (min(one, two), max(one, two)):
            if 0.0 < turn < 1.0:
                turns[count] = turn
                count += 1
    turns[count] = 1.0
    found = 0
    for piece in range(count):
        t = _root_between(k[0], k[1], k[2], k[3], turns[piece], turns[piece + 1])
        if t >= 0.0 and _edges_meet(p, t):
            found += 1
    return found


@kernel
def _fill_swept_box(x: Floats, y: Floats, shift: Floats, first: int, last: int, box: Floats) -> None:
    """Fill the box (6,) that points first..last sweep, with their second place moved back by `shift`."""
    for i in range(3):
        box[i], box[3 + i] = math.inf, -math.inf
    for v in range(first, last):
        _widen_box(x, y, shift, v, box)


@kernel
def _widen_box(x: Floats, y: Floats, shift: Floats, v: int, box: Floats) -> None:
    for i in range(3):
        after = y[v, i] - shift[i]
        box[i] = min(box[i], x[v, i], after)
        box[3 + i] = max(box[3 + i], x[v, i], after)


@kernel
def _boxes_apart(one: Floats, two: Floats) -> bool:
    apart = False
    for i in range(3):
        apart = apart or one[i] > two[3 + i] or two[i] > one[3 + i]
    return apart


@kernel
def _count_pass_throughs(x: Floats, y: Floats, start: Ints, after: Ints) -> int:
    bands = start.shape[0] - 1
    mean = np.zeros((bands, 3))
    widest = 0
    for b in range(bands):
        widest = max(widest, start[b + 1] - start[b])
        for v in range(start[b], start[b + 1]):
            for i in range(3):
                mean[b, i] += (y[v, i] - x[v, i]) / (start[b + 1] - start[b])
    boxes = np.zeros((2, widest, 6))
    whole = np.zeros((2, 6))
    shift = np.zeros(3)
    ends = np.zeros((2, 4, 3))
    total = 0
    for one in range(bands):
        for two in range(one, bands):
            for i in range(3):
                shift[i] = 0.5 * (mean[one, i] + mean[two, i])
            _fill_swept_box(x, y, shift, start[one], start[one + 1], whole[0])
            _fill_swept_box(x, y, shift, start[two], start[two + 1], whole[1])
            if _boxes_apart(whole[0], whole[1]):
                continue
            for side in range(2):
                b = one if side == 0 else two
                for v in range(start[b], start[b + 1]):
                    _fill_swept_box(x, y, shift, v, v + 1, boxes[side, v - start[b]])
                    if after[v] >= 0:
                        _widen_box(x, y, shift, after[v], boxes[side, v - start[b]])
            for v in range(start[one], start[one + 1]):
                if after[v] < 0 or _boxes_apart(boxes[0, v - start[one]], whole[1]):
                    continue
                for w in range(max(start[two], v + 1), start[two + 1]):
                    if after[w] < 0 or after[v] == w or after[w] == v:
                        continue
                    if _boxes_apart(boxes[0, v - start[one]], boxes[1, w - start[two]]):
                        continue
                    for c in range(4):
                        u = v if c == 0 else after[v] if c == 1 else w if c == 2 else after[w]
                        for i in range(3):
                            ends[0, c, i] = x[u, i]
                            ends[1, c, i] = y[u, i] - x[u, i] - shift[i]
                    total += _count_crossings(ends)
    return total
