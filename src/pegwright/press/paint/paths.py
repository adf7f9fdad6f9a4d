"""Strokes and letters: what every kind of painter can put down. Lengths in mm or px, y down the page."""

from __future__ import annotations

import math
from typing import NamedTuple

Point = tuple[float, float]


class LineTo(NamedTuple):
    """Straight on to a point; the first one of a path is where it begins."""

    x: float
    y: float


class QuadTo(NamedTuple):
    """A quadratic Bézier curve past a bend to a point."""

    bend_x: float
    bend_y: float
    x: float
    y: float


class ArcTo(NamedTuple):
    """Part of a circle of radius `r` about a centre; angles in degrees, anticlockwise as one sees it."""

    x: float
    y: float
    r: float
    start_deg: float
    sweep_deg: float


Segment = LineTo | QuadTo | ArcTo


class VectorPath(NamedTuple):
    """A line through its segments, closed or not."""

    segments: tuple[Segment, ...]
    closed: bool = False


class Stroke(NamedTuple):
    """Paths that are filled, or drawn with a width, or both. Colours are #rrggbb, empty for none."""

    paths: tuple[VectorPath, ...]
    fill: str = ""
    ink: str = ""
    width: float = 0.0
    round_cap: bool = False
    dash: tuple[float, ...] = ()


class Letters(NamedTuple):
    """A text set round the middle (x, y), its type so high; `halo` is the colour of an edge about it."""

    x: float
    y: float
    text: str
    size: float
    ink: str
    bold: bool = False
    halo: str = ""


Paint = Stroke | Letters


def point_on_arc(turn: ArcTo, share: float) -> Point:
    """Return the point of a turn after a share of its sweep."""
    angle = math.radians(turn.start_deg + share * turn.sweep_deg)
    return turn.x + turn.r * math.cos(angle), turn.y - turn.r * math.sin(angle)


def circle(x: float, y: float, r: float) -> VectorPath:
    """Return a whole circle."""
    return VectorPath((ArcTo(x, y, r, 0.0, 360.0),), closed=True)


def polygon(points: list[Point]) -> VectorPath:
    """Return a closed path of straight lines."""
    return VectorPath(tuple(LineTo(x, y) for x, y in points), closed=True)
