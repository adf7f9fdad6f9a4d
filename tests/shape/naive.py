"""Slow, obvious twins of the kernels of shape."""

from __future__ import annotations

import itertools
import math

import numpy as np
import numpy.typing as npt

from pegwright.shape import Band

Floats = npt.NDArray[np.float64]


def elastic_energy(bands: list[Band], positions: list[Floats]) -> float:
    """Stretch by integrating the stress, bend by ½ EI θ²/l̄; no turn limit, no natural curvature."""
    from scipy.integrate import quad

    from pegwright.shape import nominal_stress

    total = 0.0
    for band, points in zip(bands, positions, strict=True):
        drawn = np.linalg.norm(np.roll(band.points_mm, -1, axis=0) - band.points_mm, axis=1)
        rest = drawn / drawn.sum() * band.rest_length_mm
        edges = np.roll(points, -1, axis=0) - points
        radius = band.thickness_mm / 2
        for edge, length in zip(edges, rest, strict=True):
            work = quad(lambda s, b=band: nominal_stress(b.rubber, s), 1.0, np.linalg.norm(edge) / length)[0]
            total += math.pi * radius**2 * length * work
        for i in range(len(points)):
            u, v = edges[i - 1] / np.linalg.norm(edges[i - 1]), edges[i] / np.linalg.norm(edges[i])
            theta = math.acos(max(-1.0, min(1.0, float(u @ v))))
            stiff = band.rubber.youngs_mpa * math.pi * radius**4 / 4
            total += 0.5 * stiff * theta**2 / (0.5 * (rest[i - 1] + rest[i]))
    return total


def segment_distance(a: Floats, b: Floats, c: Floats, d: Floats) -> float:
    """Least over the four end-to-segment distances and, where it falls inside, the common perpendicular."""
    best = min(point_to_segment(p, *s) for p, s in ((a, (c, d)), (b, (c, d)), (c, (a, b)), (d, (a, b))))
    matrix = np.array([[(b - a) @ (b - a), -(b - a) @ (d - c)], [-(b - a) @ (d - c), (d - c) @ (d - c)]])
    if abs(np.linalg.det(matrix)) > 1e-12:
        s, t = np.linalg.solve(matrix, [-(b - a) @ (a - c), (d - c) @ (a - c)])
        if 0 <= s <= 1 and 0 <= t <= 1:
            best = min(best, float(np.linalg.norm(a + s * (b - a) - c - t * (d - c))))
    return best


def point_to_segment(p: Floats, a: Floats, b: Floats) -> float:
    t = min(1.0, max(0.0, float((p - a) @ (b - a) / ((b - a) @ (b - a)))))
    return float(np.linalg.norm(p - a - t * (b - a)))


def near_pairs(positions: list[Floats], reach_mm: float) -> dict[tuple[int, int], float]:
    """All pairs of edges of closed polylines without a common vertex and nearer than `reach_mm`."""
    edges = []
    first = 0
    for points in positions:
        n = len(points)
        edges += [(first + i, first + (i + 1) % n) for i in range(n)]
        first += n
    x = np.concatenate(positions)
    out = {}
    for (a, a1), (b, b1) in itertools.combinations(edges, 2):
        if {a, a1} & {b, b1}:
            continue
        gap = segment_distance(x[a], x[a1], x[b], x[b1])
        if gap < reach_mm:
            out[a, b] = gap
    return out


def linking_number(one: Floats, two: Floats) -> int:
    """Gauss linking number of two closed polylines by the solid angle of every pair of edges."""
    total = 0.0
    for i in range(len(one)):
        for j in range(len(two)):
            a, b = one[i], one[(i + 1) % len(one)]
            c, d = two[j], two[(j + 1) % len(two)]
            n = [
                np.cross(c - a, d - a),
                np.cross(d - a, d - b),
                np.cross(d - b, c - b),
                np.cross(c - b, c - a),
            ]
            n = [v / max(float(np.linalg.norm(v)), 1e-300) for v in n]
            angle = sum(math.asin(max(-1.0, min(1.0, float(n[k] @ n[(k + 1) % 4])))) for k in range(4))
            total += angle * np.sign(np.cross(d - c, b - a) @ (c - a))
    return round(total / (4 * math.pi))
