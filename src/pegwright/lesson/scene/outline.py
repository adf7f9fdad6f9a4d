"""The line a stretched band takes round pegs, seen from above: arcs joined by tangents."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

from pegwright.lesson.scene.picture import Arc, Outline

_SAMPLES = 24


class Disc(NamedTuple):
    """What a band goes round: centre and radius in mm; `sense` 1 is anticlockwise, −1 clockwise."""

    x_mm: float
    y_mm: float
    r_mm: float
    sense: int = 1


class FlatStrand(NamedTuple):
    """A closed line round discs: round all of them, or, if it runs `along` them, from each to the next."""

    discs: tuple[Disc, ...]
    along: bool = False

    @property
    def outline(self) -> Outline:
        """The line itself."""
        return belt_line(self.discs) if self.along else hull_line(self.discs)


@lru_cache(maxsize=20_000)
def hull_line(discs: tuple[Disc, ...]) -> Outline:
    """Return the shortest closed line round all the discs: the edge of their convex hull."""
    discs = tuple(dict.fromkeys(discs))
    points = [
        (disc.x_mm + disc.r_mm * math.cos(a), disc.y_mm + disc.r_mm * math.sin(a))
        for disc in discs
        for a in (2 * math.pi * k / _SAMPLES for k in range(_SAMPLES))
    ]
    order: list[int] = []
    for index in _hull_corners(points):
        if not order or order[-1] != index // _SAMPLES:
            order.append(index // _SAMPLES)
    if len(order) > 1 and order[0] == order[-1]:
        order.pop()
    return belt_line(tuple(discs[i] for i in order))


def _hull_corners(points: list[tuple[float, float]]) -> list[int]:
    """Return the corners of the convex hull, anticlockwise (Andrew's monotone chain, 1979).

    Unlike the board's hull it drops points on the edges, which here differ from the line by rounding only.
    """
    order = sorted(range(len(points)), key=lambda i: (round(points[i][0], 7), round(points[i][1], 7)))
    found: list[int] = []
    for indices in (order, order[::-1]):
        chain: list[int] = []
        for i in indices:
            while len(chain) > 1 and _area(points[chain[-2]], points[chain[-1]], points[i]) < 1e-6:
                chain.pop()
            chain.append(i)
        found += chain[:-1]
    return found


def _area(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


@lru_cache(maxsize=20_000)
def belt_line(discs: tuple[Disc, ...]) -> Outline:
    """Return the closed line that runs round the discs in their order, crossing where the sense changes."""
    if len(discs) == 1:
        disc = discs[0]
        return (Arc(disc.x_mm, disc.y_mm, disc.r_mm, 0.0, 360.0),)
    leaving = [_tangent_deg(a, b) for a, b in zip(discs, discs[1:] + discs[:1], strict=True)]
    arcs = []
    for i, disc in enumerate(discs):
        flip = 0.0 if disc.sense > 0 else 180.0
        start, end = leaving[i - 1] + flip, leaving[i] + flip
        sweep = (end - start) % 360 if disc.sense > 0 else -((start - end) % 360)
        if abs(sweep) > 359.9:
            sweep = 0.0
        arcs.append(Arc(disc.x_mm, disc.y_mm, disc.r_mm, start % 360, sweep))
    return tuple(arcs)


def _tangent_deg(a: Disc, b: Disc) -> float:
    """Return the angle of the normal of the tangent from a to b, the discs' centres to the left of it.

    The tangent touches each disc at centre + sense · r · n; so (b − a) · n = sense_a r_a − sense_b r_b.
    """
    dx, dy = b.x_mm - a.x_mm, b.y_mm - a.y_mm
    apart = math.hypot(dx, dy) or 1e-9
    cosine = (a.sense * a.r_mm - b.sense * b.r_mm) / apart
    return math.degrees(math.atan2(dy, dx) - math.acos(max(-1.0, min(1.0, cosine))))


def middle_of(outline: Outline) -> tuple[float, float]:
    """Return the middle of the longest straight piece of an outline, or a point of a lone circle, in mm."""
    if len(outline) == 1:
        arc = outline[0]
        return arc_point(arc, 0.125)
    best, spot = -1.0, (0.0, 0.0)
    for a, b in zip(outline, outline[1:] + outline[:1], strict=True):
        p, q = arc_point(a), arc_point(b, 0.0)
        length = math.hypot(p[0] - q[0], p[1] - q[1])
        if length > best + 1e-6:
            best, spot = length, ((p[0] + q[0]) / 2, (p[1] + q[1]) / 2)
    return spot


def arc_point(arc: Arc, share: float = 1.0) -> tuple[float, float]:
    """Return the point of an arc after a share of its sweep, in mm."""
    angle = math.radians(arc.start_deg + share * arc.sweep_deg)
    return arc.x_mm + arc.r_mm * math.cos(angle), arc.y_mm + arc.r_mm * math.sin(angle)
