"""Small geometry of the plan, the piece seen from above: directions, angles, lines of points."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

PlanVector = npt.NDArray[np.float64]
"""A point or a direction in plan: (2,), mm."""

TAU = 2 * math.pi


def azimuth(v: PlanVector) -> float:
    """Return the direction of a vector in plan (radians)."""
    return math.atan2(float(v[1]), float(v[0]))


def wrap_angle(angle: float) -> float:
    """Return the angle brought into −π … π."""
    return (angle + math.pi) % TAU - math.pi


def sweep_angle(a: float, b: float, sign: int) -> float:
    """Return the angle from azimuth a round to azimuth b, anticlockwise for sign +1, clockwise for −1."""
    return (sign * (b - a)) % TAU


def segments_cross(a: PlanVector, b: PlanVector, c: PlanVector, d: PlanVector) -> bool:
    """Say whether the segments ab and cd cross."""

    def side(p: PlanVector, q: PlanVector, r: PlanVector) -> float:
        return float((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]))

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0


def trim_ends(line: Sequence[PlanVector], radius_mm: float) -> list[PlanVector]:
    """Cut a line back at both ends, to the edges of the columns of that radius where it starts and ends."""
    ends = []
    for a, b in ((line[0], line[1]), (line[-1], line[-2])):
        ends.append(a + (b - a) * min(0.5, radius_mm / float(np.hypot(*(b - a)))))
    return [ends[0], *line[1:-1], ends[1]]


def offset_line(line: Sequence[PlanVector], aside_mm: float) -> list[PlanVector]:
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
