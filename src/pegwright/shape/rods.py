"""The solver's input: bands as closed (or open) elastic rods."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from pegwright.finding import RefusedError, phrase
from pegwright.shape.rubber import RubberLaw

__all__ = ["Band", "Rods", "build_rods", "rest_at_current_lengths"]

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int64]
Flags = npt.NDArray[np.bool_]


class Band(NamedTuple):
    """One band. `points_mm` is (n, 3); a closed band's last point joins its first and is not repeated.

    `rest_length_mm` is the length of the unstretched centreline, shared among the edges in proportion to
    their drawn lengths. `natural_curvature_per_mm` is the curvature it was moulded with (1/radius), free to
    turn about its own axis, since a round band has no preferred side.
    """

    points_mm: Floats
    rest_length_mm: float
    thickness_mm: float
    rubber: RubberLaw = RubberLaw()
    natural_curvature_per_mm: float = 0.0
    closed: bool = True


class Rods(NamedTuple):
    """All bands as flat arrays, one entry per vertex unless said otherwise. Edge v runs from v to next[v]."""

    start: Ints  # (bands + 1,) first vertex of each band
    band: Ints
    next: Ints  # −1 at the end of an open band
    prev: Ints
    rest_mm: Floats  # rest length of edge v; 0 if there is none
    radius_mm: Floats  # unstretched radius of the band
    area_mm2: Floats
    plane_mpa: Floats  # E/(1 − ν²), the contact modulus
    law: Ints
    constants_mpa: Floats  # (n, 3)
    bending_n_mm: Floats  # EI over the rest length that belongs to the vertex; 0 at an open end
    natural_turn: Floats  # natural turning angle at the vertex, rad
    turn_limit: Floats  # the turning angle at which the band is bent to its own radius, rad
    reach: Ints  # how many edges onward from edge v count as its neighbours
    fixed: Flags


def build_rods(bands: Sequence[Band], fixed: Sequence[tuple[int, int]] = ()) -> tuple[Floats, Rods]:
    """Put all bands end to end in arrays; `fixed` names held vertices as (band, point), both from 0.

    Returns:
        Positions (n, 3) in mm and the rods.

    Raises:
        ValueError: there are no bands; a band has too few or repeated points, a non-finite number, or a
        length
            or thickness that is not positive; or a fixed vertex does not exist.
    """
    if not bands:
        raise RefusedError(phrase("no-bands"))
    counts = []
    for i, band in enumerate(bands):
        points = np.asarray(band.points_mm)
        if points.ndim != 2 or points.shape[1] != 3 or len(points) < 3:
            raise ValueError(f"band {i}: points must be (n, 3) with n of 3 or more, found {points.shape}")
        if not np.all(np.isfinite(points)):
            raise ValueError(f"band {i}: a coordinate is not a finite number")
        if not (band.rest_length_mm > 0 and band.thickness_mm > 0 and math.isfinite(band.rest_length_mm)):
            raise ValueError(f"band {i}: rest length and thickness must be positive")
        counts.append(len(points))
    start = np.concatenate([[0], np.cumsum(counts)]).astype(np.int64)
    n = int(start[-1])
    x = np.concatenate([np.asarray(b.points_mm, dtype=np.float64) for b in bands])
    parts = [_one_band(b, int(start[i]), i) for i, b in enumerate(bands)]
    columns = [np.concatenate(column) for column in zip(*parts, strict=True)]
    held = np.zeros(n, dtype=np.bool_)
    for which, point in fixed:
        if not (0 <= which < len(bands) and 0 <= point < counts[which]):
            raise ValueError(f"there is no point {point} on band {which} to hold")
        held[start[which] + point] = True
    return np.ascontiguousarray(x), Rods._make((start, *columns, held))


def rest_at_current_lengths(x: Floats, rods: Rods) -> Rods:
    """Return the rods with every band unstretched at its current length; `x` (n, 3) in mm.

    Its edges share the length in the same proportions as before.
    """
    edge = rods.next >= 0
    long = np.zeros(len(x))
    long[edge] = np.linalg.norm(x[rods.next[edge]] - x[edge], axis=1)
    at = rods.start[:-1]
    scale = np.add.reduceat(long, at) / np.add.reduceat(rods.rest_mm, at)
    return rods._replace(rest_mm=rods.rest_mm * scale[rods.band])


def _one_band(band: Band, first: int, index: int) -> tuple[npt.NDArray[np.generic], ...]:
    points = np.asarray(band.points_mm, dtype=np.float64)
    n = len(points)
    ids = np.arange(n, dtype=np.int64)
    after, before = (ids + 1) % n + first, (ids - 1) % n + first
    drawn = np.linalg.norm(np.roll(points, -1, axis=0) - points, axis=1)
    if not band.closed:
        after[-1] = before[0] = -1
        drawn[-1] = 0.0
    if np.any(drawn[: n if band.closed else n - 1] <= 0):
        raise ValueError(f"band {index}: two neighbouring points coincide")
    rest = drawn * (band.rest_length_mm / drawn.sum())
    radius = band.thickness_mm / 2
    own = 0.5 * (rest + np.roll(rest, 1))  # the Voronoi length of each vertex
    stiff = band.rubber.youngs_mpa * math.pi * radius**4 / 4 / own
    if not band.closed:
        stiff[0] = stiff[-1] = 0.0
    reach = _reach(rest, math.pi * radius, band.closed)
    # Bent to the radius of its own section, a band turns own/radius at a vertex. Edges much shorter than that
    # stand for a corner of the drawing, which may turn as far as a longer one, and may start tighter.
    tight = np.maximum(own, radius) / radius
    limit = np.minimum(np.maximum(tight, 1.15 * _turning(points) + 0.05), 0.985 * math.pi)

    def full(value: float) -> Floats:
        return np.full(n, value, dtype=np.float64)

    return (
        np.full(n, index, dtype=np.int64),
        after,
        before,
        rest,
        full(radius),
        full(math.pi * radius**2),
        full(band.rubber.youngs_mpa / 0.75),
        np.full(n, band.rubber.law_number, dtype=np.int64),
        np.tile(np.array(band.rubber.constants_mpa, dtype=np.float64), (n, 1)),
        stiff,
        own * band.natural_curvature_per_mm,
        limit,
        reach,
    )


def _turning(points: Floats) -> Floats:
    """Return the turning angle (rad) at every vertex of a closed polyline (n, 3)."""
    ahead = np.roll(points, -1, axis=0) - points
    behind = np.roll(ahead, 1, axis=0)
    cross = np.linalg.norm(np.cross(behind, ahead), axis=1)
    turning: Floats = np.arctan2(cross, np.sum(behind * ahead, axis=1))
    return turning


def _reach(rest: Floats, arc_mm: float, closed: bool) -> Ints:
    """Return for each edge how many edges onward are less than `arc_mm` away along the band.

    A strand thicker than its edges always lies within its own thickness of its neighbours, so those pairs
    take no part in contact (A. Gomez-Nogales et al., arXiv 2510.10256, on stencil neighbours).
    """
    n = len(rest)
    out = np.ones(n, dtype=np.int64)
    for i in range(n):
        gap, k = 0.0, 1
        while k < n and gap < arc_mm:
            if not closed and i + k >= n:
                break
            gap += rest[(i + k) % n]
            k += 1
        out[i] = k - 1
    return out
