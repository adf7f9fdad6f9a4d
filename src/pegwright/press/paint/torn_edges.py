"""The torn edges of a picture, where the loom goes on beyond it."""

from __future__ import annotations

from pegwright.lesson import Window
from pegwright.press.paint.inks import Inks
from pegwright.press.paint.paths import LineTo, Paint, Point, Stroke, VectorPath, polygon


def paint_torn_edges(window: Window, inks: Inks) -> list[Paint]:
    """Return a torn edge on each side where the loom goes on, with the background beyond it."""
    found: list[Paint] = []
    for side in window.goes_on:
        long = window.height_mm if side in ("left", "right") else window.width_mm
        rim = [_inward(window, side, long + 1, -1.0), _inward(window, side, -1.0, -1.0)]
        found.append(Stroke((polygon([*_tear_points(window, side), *rim]),), fill=inks.ground))
    return [*found, *torn_edge_lines(window, inks)]


def torn_edge_lines(window: Window, inks: Inks) -> list[Paint]:
    """Return the lines of the torn edges alone."""
    lines = (
        VectorPath(tuple(LineTo(x, y) for x, y in _tear_points(window, side))) for side in window.goes_on
    )
    return [Stroke((line,), ink=inks.soft, width=0.3) for line in lines]


def untorn_outline(window: Window) -> VectorPath:
    """Return the outline of a window inside its torn edges."""
    w, h = window.width_mm, window.height_mm
    corners = {
        "far": [(0.0, 0.0), (w, 0.0)],
        "right": [(w, 0.0), (w, h)],
        "near": [(w, h), (0.0, h)],
        "left": [(0.0, h), (0.0, 0.0)],
    }
    points: list[Point] = []
    for side, plain in corners.items():
        teeth = _tear_points(window, side)
        round_ = teeth[::-1] if side in ("near", "left") else teeth
        points += round_ if side in window.goes_on else plain
    return polygon(points)


def _tear_points(window: Window, side: str) -> list[Point]:
    """Return the corners of a torn edge, from left to right or far to near."""
    long = window.height_mm if side in ("left", "right") else window.width_mm
    count = max(2, round(long / 2.5))
    return [_inward(window, side, k * long / count, 3.3 if k % 2 else 2.2) for k in range(count + 1)]


def _inward(window: Window, side: str, along: float, deep: float) -> Point:
    x = {"left": deep, "right": window.width_mm - deep}.get(side, along)
    y = {"far": deep, "near": window.height_mm - deep}.get(side, along)
    return x, y
