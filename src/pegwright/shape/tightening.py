"""Pull drawn strands taut: cut corners wherever no other strand is in the way.

A drawing has many more corners than its threading needs. The elementary move of knot theory removes a corner
b between a and c: if no strand meets the triangle abc, the strand can be pulled across it without passing
another (K. Reidemeister, Knotentheorie, 1932, §1: the Δ-move). Or the corner slides to another place, across
two triangles. Every move keeps the strand some distance from all others, so that the bands have room to
thicken afterwards.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from pegwright.shape.jit import kernel
from pegwright.shape.rods import Floats, Ints

__all__ = ["CornerMoves", "subdivide_curve", "tighten_curves"]

Vector = tuple[float, float, float]
_LEAST_POINTS = 4
_SHARPEST = -0.99  # cosine of the sharpest turn that a move may leave


class CornerMoves(NamedTuple):
    """The moves in order: which corner (numbered through all curves), and where it went (m, 3).

    A corner that was cut goes halfway between its neighbours, where it is no longer a corner: its number is
    given as −1 − corner.
    """

    corner: Ints
    to_mm: Floats


def tighten_curves(
    curves: Sequence[Floats], margin_mm: float, slack: int | None = None, passes: int = 80
) -> tuple[list[Floats], CornerMoves]:
    """Remove corners from closed curves, each (n, 3) in mm, as long as any can go.

    In curves from number `slack` on, cords laid in wide bows, corners that cannot go are pulled in. No strand
    comes nearer than `margin_mm` to another where it is moved. The result is isotopic to the input by the
    moves returned with it.
    """
    start = np.concatenate([[0], np.cumsum([len(c) for c in curves])]).astype(np.int64)
    x = np.ascontiguousarray(np.concatenate([np.asarray(c, dtype=np.float64) for c in curves]))
    after, before = np.arange(len(x)) + 1, np.arange(len(x)) - 1
    after[start[1:] - 1], before[start[:-1]] = start[:-1], start[1:] - 1
    first = len(curves) if slack is None else slack
    corner, to = np.zeros(passes * len(x), np.int64), np.zeros((passes * len(x), 3))
    count = 0
    for _ in range(passes):
        before_pass = count
        count, far = _cut_corners(x, start, after, before, margin_mm, first, corner, to, count)
        if count == before_pass or not far:
            break
    left = [x[a:b][after[a:b] >= 0] for a, b in itertools.pairwise(start)]
    return left, CornerMoves(corner[:count], to[:count])


def subdivide_curve(curve: Floats, points: int) -> Floats:
    """Split the longest edges of a closed curve (n, 3) until it has `points` points, keeping its shape."""
    edges = np.roll(curve, -1, axis=0) - curve
    length = np.sqrt((edges**2).sum(axis=1))
    parts = np.ones(len(curve), dtype=np.int64)
    for _ in range(points - len(curve)):
        parts[int(np.argmax(length / parts))] += 1
    return np.concatenate(
        [a + np.arange(k)[:, None] / k * e for a, e, k in zip(curve, edges, parts, strict=True)]
    )


@kernel
def _cut_corners(
    x: Floats,
    start: Ints,
    after: Ints,
    before: Ints,
    margin: float,
    slack: int,
    corner: Ints,
    places: Floats,
    count: int,
) -> tuple[int, bool]:
    """Try to cut or pull in every corner once; a removed point has after = −1.

    Returns the number of moves written so far, and whether any move of this pass was large.
    """
    bands = start.shape[0] - 1
    boxes = np.zeros((bands, 6))
    left = np.zeros(bands, np.int64)
    for band in range(bands):
        _fill_box(x, after, start[band], start[band + 1], boxes[band])
        for v in range(start[band], start[band + 1]):
            left[band] += after[v] >= 0
    to = np.zeros(3)
    far = False
    for band in range(bands):
        for v in range(start[band], start[band + 1]):
            if after[v] < 0:
                continue
            a, c = before[v], after[v]
            if (
                left[band] > _LEAST_POINTS
                and not _turns_back(x, before[a], a, c)
                and not _turns_back(x, a, c, after[c])
                and _sweep_is_clear(x, start, after, boxes, a, v, c, x[a], x[v], x[c], margin)
            ):
                after[a], before[c] = c, a
                after[v] = before[v] = -1
                left[band] -= 1
                corner[count] = -1 - v
                for i in range(3):
                    places[count, i] = 0.5 * (x[a, i] + x[c, i])
                count += 1
                far = True
            elif band >= slack:
                for part in (0.8, 0.4, 0.1):
                    for i in range(3):
                        to[i] = x[v, i] + part * (0.5 * (x[a, i] + x[c, i]) - x[v, i])
                    if _sweep_is_clear(
                        x, start, after, boxes, a, v, c, x[v], x[a], to, margin
                    ) and _sweep_is_clear(x, start, after, boxes, a, v, c, x[v], x[c], to, margin):
                        gain = 0.0
                        for i in range(3):
                            gain += (to[i] - x[v, i]) ** 2
                            x[v, i] = to[i]
                            places[count, i] = to[i]
                        corner[count] = v
                        count += 1
                        far = far or gain > 0.04
                        break
    return count, far


@kernel
def _fill_box(x: Floats, after: Ints, first: int, last: int, box: Floats) -> None:
    for i in range(3):
        box[i], box[3 + i] = np.inf, -np.inf
    for v in range(first, last):
        if after[v] >= 0:
            for i in range(3):
                box[i] = min(box[i], x[v, i])
                box[3 + i] = max(box[3 + i], x[v, i])


@kernel
def _turns_back(x: Floats, a: int, b: int, c: int) -> bool:
    """Return whether the path a → b → c turns back on itself."""
    uu = vv = uv = 0.0
    for i in range(3):
        u, v = x[b, i] - x[a, i], x[c, i] - x[b, i]
        uu += u * u
        vv += v * v
        uv += u * v
    return uv < _SHARPEST * math.sqrt(uu * vv)


@kernel
def _sweep_is_clear(
    x: Floats,
    start: Ints,
    after: Ints,
    boxes: Floats,
    a: int,
    b: int,
    c: int,
    one: Floats,
    mid: Floats,
    two: Floats,
    margin: float,
) -> bool:
    """Return whether no strand meets the triangle one–mid–two or is within `margin` of a new side.

    The edges a → b → c are being moved and do not count. The new sides are one–two and, if `mid` is not b,
    mid–two.
    """
    low, high = np.zeros(3), np.zeros(3)
    for i in range(3):
        low[i] = min(one[i], mid[i], two[i]) - margin
        high[i] = max(one[i], mid[i], two[i]) + margin
    cut = _same_point(mid, x[b])
    for band in range(start.shape[0] - 1):
        out = False
        for i in range(3):
            out = out or boxes[band, i] > high[i] or boxes[band, 3 + i] < low[i]
        if out:
            continue
        for p in range(start[band], start[band + 1]):
            q = after[p]
            if q < 0 or p in (a, b):
                continue
            out = False
            for i in range(3):
                out = (
                    out
                    or (x[p, i] > high[i] and x[q, i] > high[i])
                    or (x[p, i] < low[i] and x[q, i] < low[i])
                )
            if out:
                continue
            # An edge that ends in a corner can only lie in the triangle's plane: its other end must be clear.
            if q == a and (_same_point(x[a], one) or _same_point(x[a], mid)):
                if _triangle_distance(x[p], one, mid, two) < margin:
                    return False
            elif p == c and (_same_point(x[c], two) or _same_point(x[c], mid)):
                if _triangle_distance(x[q], one, mid, two) < margin:
                    return False
            elif (
                _pierces(x[p], x[q], one, mid, two)
                or min(_triangle_distance(x[p], one, mid, two), _triangle_distance(x[q], one, mid, two))
                < 0.1 * margin
                or _segment_distance(x[p], x[q], one if cut else mid, two) < margin
            ):
                return False
    return True


@kernel
def _same_point(p: Floats, q: Floats) -> bool:
    return bool(p[0] == q[0] and p[1] == q[1] and p[2] == q[2])


@kernel
def _minus(p: Floats, q: Floats) -> Vector:
    return float(p[0] - q[0]), float(p[1] - q[1]), float(p[2] - q[2])


@kernel
def _dot(u: Vector, v: Vector) -> float:
    return u[0] * v[0] + u[1] * v[1] + u[2] * v[2]


@kernel
def _cross(u: Vector, v: Vector) -> Vector:
    return u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]


@kernel
def _distance_off(w: Vector, s: float, u: Vector, t: float, v: Vector) -> float:
    """Return the length of w − s u − t v."""
    x, y, z = w[0] - s * u[0] - t * v[0], w[1] - s * u[1] - t * v[1], w[2] - s * u[2] - t * v[2]
    return math.sqrt(x * x + y * y + z * z)


@kernel
def _pierces(p: Floats, q: Floats, a: Floats, b: Floats, c: Floats) -> bool:
    """Return whether segment pq meets triangle abc (Möller and Trumbore, J. Graph. Tools 2 (1997) 21)."""
    d, e1, e2 = _minus(q, p), _minus(b, a), _minus(c, a)
    h = _cross(d, e2)
    det = _dot(e1, h)
    if abs(det) < 1e-14:
        return False
    s = _minus(p, a)
    u = _dot(s, h) / det
    if u < -1e-9 or u > 1 + 1e-9:
        return False
    k = _cross(s, e1)
    v = _dot(d, k) / det
    if v < -1e-9 or u + v > 1 + 1e-9:
        return False
    t = _dot(e2, k) / det
    return bool(-1e-9 <= t <= 1 + 1e-9)


@kernel
def _triangle_distance(p: Floats, a: Floats, b: Floats, c: Floats) -> float:
    """Return a point's distance from a triangle (C. Ericson, Real-Time Collision Detection, 2005, §5.1.5)."""
    ab, ac = _minus(b, a), _minus(c, a)
    ap, bp, cp = _minus(p, a), _minus(p, b), _minus(p, c)
    d1, d2 = _dot(ab, ap), _dot(ac, ap)
    d3, d4 = _dot(ab, bp), _dot(ac, bp)
    d5, d6 = _dot(ab, cp), _dot(ac, cp)
    s = t = 0.0  # the nearest point is a + s ab + t ac; at first, a
    if d1 <= 0 and d2 <= 0:
        pass
    elif d3 >= 0 and d4 <= d3:
        s = 1.0
    elif d6 >= 0 and d5 <= d6:
        t = 1.0
    elif d1 * d4 - d3 * d2 <= 0 and d1 >= 0 and d3 <= 0:
        s = d1 / (d1 - d3) if d1 > d3 else 0.0
    elif d5 * d2 - d1 * d6 <= 0 and d2 >= 0 and d6 <= 0:
        t = d2 / (d2 - d6) if d2 > d6 else 0.0
    elif d3 * d6 - d5 * d4 <= 0 and d4 - d3 >= 0 and d5 - d6 >= 0:
        whole = (d4 - d3) + (d5 - d6)
        t = (d4 - d3) / whole if whole > 0 else 0.0
        s = 1.0 - t
    else:
        va, vb, vc = d3 * d6 - d5 * d4, d5 * d2 - d1 * d6, d1 * d4 - d3 * d2
        s, t = vb / (va + vb + vc), vc / (va + vb + vc)
    return _distance_off(ap, s, ab, t, ac)


@kernel
def _segment_distance(p: Floats, q: Floats, a: Floats, b: Floats) -> float:
    """Return the distance between the segments pq and ab (Ericson 2005, §5.1.9)."""
    u, v, w = _minus(q, p), _minus(b, a), _minus(a, p)
    uu, vv, uv, uw, vw = _dot(u, u), _dot(v, v), _dot(u, v), _dot(u, w), _dot(v, w)
    s = 0.0
    if uu > 0:
        det = uu * vv - uv * uv
        s = min(max((uw * vv - uv * vw) / det, 0.0), 1.0) if det > 1e-12 * uu * vv else 0.0
    t = (uv * s - vw) / vv if vv > 0 else 0.0
    if t < 0.0 or t > 1.0:
        t = 0.0 if t < 0.0 else 1.0
        s = min(max((t * uv + uw) / uu, 0.0), 1.0) if uu > 0 else 0.0
    return _distance_off(w, s, u, -t, v)
