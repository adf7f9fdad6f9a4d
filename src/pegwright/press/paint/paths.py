"""Strokes and letters, which every painter can draw. Lengths in mm or px, y down the page."""

from __future__ import annotations

import math
from typing import NamedTuple

Point = tuple[float, float]


class LineTo(NamedTuple):
    """A straight line to a point; the first of a path is its start."""

    x: float
    y: float


class QuadTo(NamedTuple):
    """A quadratic Bézier curve to a point, with one control point."""

    bend_x: float
    bend_y: float
    x: float
    y: float


class ArcTo(NamedTuple):
    """Part of a circle of radius `r` about a centre; angles in degrees, anticlockwise on the page."""

    x: float
    y: float
    r: float
    start_deg: float
    sweep_deg: float


Segment = LineTo | QuadTo | ArcTo


class VectorPath(NamedTuple):
    """A line made of segments, closed or open."""

    segments: tuple[Segment, ...]
    closed: bool = False


class Stroke(NamedTuple):
    """Paths that are filled, stroked with a width, or both. Colours are #rrggbb, empty for none."""

    paths: tuple[VectorPath, ...]
    fill: str = ""
    ink: str = ""
    width: float = 0.0
    round_cap: bool = False
    dash: tuple[float, ...] = ()


class Letters(NamedTuple):
    """A text centred on (x, y) in type of height `size`; `halo` is the colour of an edge round it."""

    x: float
    y: float
    text: str
    size: float
    ink: str
    bold: bool = False
    halo: str = ""


Paint = Stroke | Letters


def point_on_arc(turn: ArcTo, share: float) -> Point:
    """Return the point of an arc after a share (0 to 1) of its sweep."""
    angle = math.radians(turn.start_deg + share * turn.sweep_deg)
    return turn.x + turn.r * math.cos(angle), turn.y - turn.r * math.sin(angle)


def circle(x: float, y: float, r: float) -> VectorPath:
    """Return a whole circle."""
    return VectorPath((ArcTo(x, y, r, 0.0, 360.0),), closed=True)


def polygon(points: list[Point]) -> VectorPath:
    """Return a closed path of straight lines."""
    return VectorPath(tuple(LineTo(x, y) for x, y in points), closed=True)
