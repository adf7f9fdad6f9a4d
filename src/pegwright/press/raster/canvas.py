"""Paint strokes and letters on a canvas of pixels, for transparent pictures and film frames.

Uses Anti-Grain Geometry through celiagg, which needs no graphics library of the machine. A canvas holds RGBA
with premultiplied alpha.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

import celiagg
import numpy as np

from pegwright.press.paint.paths import ArcTo, Letters, LineTo, Paint, QuadTo, Stroke, VectorPath
from pegwright.press.raster.png import Pixels

_FONTS = Path(__file__).parents[1] / "fonts"
_STEP_PX = 3.0
_HALO = 0.6
_MEASURE = 64


class Placement(NamedTuple):
    """Where the origin of a painting lies on the canvas, in px, and how many px a unit takes."""

    x_px: float = 0.0
    y_px: float = 0.0
    scale: float = 1.0


UNMOVED = Placement()


def blank_canvas(width_px: int, height_px: int, ground: str = "") -> Pixels:
    """Return a canvas of one colour, or a transparent one."""
    pixels = np.zeros((height_px, width_px, 4), np.uint8)
    if ground:
        pixels[:] = (*(int(ground[i : i + 2], 16) for i in (1, 3, 5)), 255)
    return pixels


def paint_on(pixels: Pixels, paints: Iterable[Paint], spot: Placement = UNMOVED) -> None:
    """Paint on a canvas in order, later paints on top."""
    canvas = celiagg.CanvasRGBA32(pixels)
    for paint in paints:
        if isinstance(paint, Letters):
            _paint_letters(canvas, paint, spot)
        else:
            _paint_stroke(canvas, paint, spot)


def clear_outside(pixels: Pixels, path: VectorPath, spot: Placement) -> None:
    """Clear everything outside a closed path of straight lines."""
    corners = [_to_pixels(segment.x, segment.y, spot) for segment in path.segments]
    left, top = (max(0, math.floor(min(c[i] for c in corners))) for i in (0, 1))
    right, bottom = (math.ceil(max(c[i] for c in corners)) for i in (0, 1))
    for outside in (pixels[:top], pixels[bottom:], pixels[:, :left], pixels[:, right:]):
        outside[:] = 0
    part = pixels[top:bottom, left:right]
    mask = np.zeros(part.shape[:2], np.uint8)
    state = celiagg.GraphicsState(drawing_mode=celiagg.DrawingMode.DrawFill)
    moved = spot._replace(x_px=spot.x_px - left, y_px=spot.y_px - top)
    white = celiagg.SolidPaint(1, 1, 1, 1)
    celiagg.CanvasG8(mask).draw_shape(_canvas_path((path,), moved), celiagg.Transform(), state, fill=white)
    where = np.nonzero(mask < 255)
    part[where] = (part[where] * mask[where].astype(np.uint16)[:, None] + 127) // 255


def _paint_stroke(canvas: object, stroke: Stroke, spot: Placement) -> None:
    traced = _canvas_path(stroke.paths, spot)
    if stroke.fill:
        state = celiagg.GraphicsState(drawing_mode=celiagg.DrawingMode.DrawFill)
        canvas.draw_shape(traced, celiagg.Transform(), state, fill=_solid_paint(stroke.fill))  # type: ignore[attr-defined]
    if not stroke.ink:
        return
    state = celiagg.GraphicsState(
        drawing_mode=celiagg.DrawingMode.DrawStroke,
        line_width=stroke.width * spot.scale,
        line_join=celiagg.LineJoin.JoinRound,
        line_cap=celiagg.LineCap.CapRound if stroke.round_cap else celiagg.LineCap.CapButt,
    )
    if stroke.dash:
        lengths = [length * spot.scale for length in stroke.dash]
        state.line_dash_pattern = list(zip(lengths[::2], lengths[1::2], strict=True))
    canvas.draw_shape(traced, celiagg.Transform(), state, stroke=_solid_paint(stroke.ink))  # type: ignore[attr-defined]


def _canvas_path(paths: Iterable[VectorPath], spot: Placement) -> object:
    """Return paths as the canvas library's own, in px, with arcs as short straight lines."""
    found = celiagg.Path()
    for path in paths:
        begun = False
        for segment in path.segments:
            match segment:
                case QuadTo(bend_x, bend_y, x, y):
                    found.quadric_to(*_to_pixels(bend_x, bend_y, spot), *_to_pixels(x, y, spot))
                    continue
                case LineTo(x, y):
                    points = [_to_pixels(x, y, spot)]
                case ArcTo():
                    points = _arc_points(segment, spot)
            if not begun:
                found.move_to(*points.pop(0))
                begun = True
            for point in points:
                found.line_to(*point)
        if path.closed:
            found.close()
    return found


def _arc_points(turn: ArcTo, spot: Placement) -> list[tuple[float, float]]:
    long = abs(math.radians(turn.sweep_deg)) * turn.r * spot.scale
    count = max(2, min(90, math.ceil(long / _STEP_PX)))
    start, sweep = math.radians(turn.start_deg), math.radians(turn.sweep_deg)
    full = abs(turn.sweep_deg) >= 360
    angles = [start + sweep * k / count for k in range(count + (0 if full else 1))]
    r = turn.r * spot.scale
    x, y = _to_pixels(turn.x, turn.y, spot)
    return [(x + r * math.cos(a), y - r * math.sin(a)) for a in angles]


def _to_pixels(x: float, y: float, spot: Placement) -> tuple[float, float]:
    return spot.x_px + x * spot.scale, spot.y_px + y * spot.scale


def _paint_letters(canvas: object, letters: Letters, spot: Placement) -> None:
    size = letters.size * spot.scale
    if size < 1 or not letters.text.strip():
        return
    x, y = _to_pixels(letters.x, letters.y + 0.35 * letters.size, spot)
    at = celiagg.Transform()
    at.translate(x - text_width(letters.text, letters.bold) * size / 2, y)
    font = _font(letters.bold, size)
    if letters.halo:
        state = celiagg.GraphicsState(
            drawing_mode=celiagg.DrawingMode.DrawStroke,
            text_drawing_mode=celiagg.TextDrawingMode.TextDrawStroke,
            line_join=celiagg.LineJoin.JoinRound,
            line_width=_HALO * spot.scale,
        )
        canvas.draw_text(letters.text, font, at, state, stroke=_solid_paint(letters.halo))  # type: ignore[attr-defined]
    state = celiagg.GraphicsState(
        drawing_mode=celiagg.DrawingMode.DrawFill,
        # Painted as outlines, letters without a counter would look bolder than the others.
        text_drawing_mode=celiagg.TextDrawingMode.TextDrawRaster,
    )
    canvas.draw_text(letters.text, font, at, state, fill=_solid_paint(letters.ink))  # type: ignore[attr-defined]


@lru_cache(maxsize=4096)
def text_width(text: str, bold: bool = False) -> float:
    """Return the width of a text as a multiple of its size, measured from the ink it leaves."""
    pad = _MEASURE
    pixels = np.zeros((2 * pad, pad * (len(text) + 2)), np.uint8)
    at = celiagg.Transform()
    at.translate(pad, 1.4 * pad)
    state = celiagg.GraphicsState(drawing_mode=celiagg.DrawingMode.DrawFill)
    font = _font(bold, pad)
    celiagg.CanvasG8(pixels).draw_text(text, font, at, state, fill=celiagg.SolidPaint(1, 1, 1, 1))
    inked = np.flatnonzero(pixels.any(axis=0))
    return (2 * (inked[-1] + inked[0] - 2 * pad) / 2 / pad) if inked.size else 0.0


@lru_cache(maxsize=256)
def _font(bold: bool, size: float) -> object:
    weight = "Bold" if bold else "Regular"
    return celiagg.FreeTypeFont(str(_FONTS / f"AtkinsonHyperlegible-{weight}.ttf"), size)


@lru_cache(maxsize=512)
def _solid_paint(tint: str) -> object:
    return celiagg.SolidPaint(*(int(tint[i : i + 2], 16) / 255 for i in (1, 3, 5)), 1.0)
