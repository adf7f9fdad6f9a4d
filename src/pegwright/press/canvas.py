"""Put strokes and letters on a canvas of pixels: for pictures without a ground, and for film frames.

Anti-grain geometry through celiagg, which needs nothing from the machine it runs on. A canvas holds RGBA,
its colours already weighed by their cover (premultiplied).
"""

from __future__ import annotations

import math
import struct
import zlib
from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path as File
from typing import NamedTuple

import celiagg
import numpy as np
from numpy.typing import NDArray

from pegwright.press.strokes import Curve, Letters, Line, Paint, Path, Stroke, Turn

Pixels = NDArray[np.uint8]
_FONTS = File(__file__).parent / "fonts"
_STEP_PX = 3.0
_HALO = 0.6
_MEASURE = 64


class Spot(NamedTuple):
    """Where the origin of what is painted lies on the canvas, in pixels, and how many pixels a unit takes."""

    x_px: float = 0.0
    y_px: float = 0.0
    scale: float = 1.0


WHOLE = Spot()


def blank(width_px: int, height_px: int, ground: str = "") -> Pixels:
    """Return a canvas of one colour, or a clear one."""
    pixels = np.zeros((height_px, width_px, 4), np.uint8)
    if ground:
        pixels[:] = (*(int(ground[i : i + 2], 16) for i in (1, 3, 5)), 255)
    return pixels


def put(pixels: Pixels, paints: Iterable[Paint], spot: Spot = WHOLE) -> None:
    """Paint on a canvas, one thing over the other."""
    canvas = celiagg.CanvasRGBA32(pixels)
    for paint in paints:
        if isinstance(paint, Letters):
            _letter(canvas, paint, spot)
        else:
            _stroke(canvas, paint, spot)


def cut(pixels: Pixels, path: Path, spot: Spot) -> None:
    """Clear all that lies outside a closed path of straight lines."""
    corners = [_px(piece.x, piece.y, spot) for piece in path.pieces]
    left, top = (max(0, math.floor(min(c[i] for c in corners))) for i in (0, 1))
    right, bottom = (math.ceil(max(c[i] for c in corners)) for i in (0, 1))
    for outside in (pixels[:top], pixels[bottom:], pixels[:, :left], pixels[:, right:]):
        outside[:] = 0
    part = pixels[top:bottom, left:right]
    mask = np.zeros(part.shape[:2], np.uint8)
    state = celiagg.GraphicsState(drawing_mode=celiagg.DrawingMode.DrawFill)
    moved = spot._replace(x_px=spot.x_px - left, y_px=spot.y_px - top)
    white = celiagg.SolidPaint(1, 1, 1, 1)
    celiagg.CanvasG8(mask).draw_shape(_traced((path,), moved), celiagg.Transform(), state, fill=white)
    where = np.nonzero(mask < 255)
    part[where] = (part[where] * mask[where].astype(np.uint16)[:, None] + 127) // 255


def png(pixels: Pixels) -> bytes:
    """Return a canvas as PNG (8-bit RGBA, colours no longer weighed; ISO/IEC 15948)."""
    plain = pixels.copy()
    edge = (pixels[:, :, 3] > 0) & (pixels[:, :, 3] < 255)
    seen = pixels[edge][:, 3:].astype(np.uint16)
    plain[edge, :3] = np.minimum(255, (pixels[edge][:, :3].astype(np.uint16) * 255 + seen // 2) // seen)
    height, width = plain.shape[:2]
    # Every row by the filter “up”: rows that are alike become zeros.
    rows = np.zeros((height, 1 + 4 * width), np.uint8)
    rows[:, 0] = 2
    flat = plain.reshape(height, 4 * width)
    rows[0, 1:] = flat[0]
    rows[1:, 1:] = flat[1:] - flat[:-1]
    header = struct.pack(">IIBBBBB", width, height, 8, 6, 0, 0, 0)
    chunks = ((b"IHDR", header), (b"IDAT", zlib.compress(rows.tobytes(), 4)), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
        for name, data in chunks
    )


def _stroke(canvas: object, stroke: Stroke, spot: Spot) -> None:
    traced = _traced(stroke.paths, spot)
    if stroke.fill:
        state = celiagg.GraphicsState(drawing_mode=celiagg.DrawingMode.DrawFill)
        canvas.draw_shape(traced, celiagg.Transform(), state, fill=_ink(stroke.fill))  # type: ignore[attr-defined]
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
    canvas.draw_shape(traced, celiagg.Transform(), state, stroke=_ink(stroke.ink))  # type: ignore[attr-defined]


def _traced(paths: Iterable[Path], spot: Spot) -> object:
    """Return paths as the canvas's own, in pixels; turns become short straight lines."""
    found = celiagg.Path()
    for path in paths:
        begun = False
        for piece in path.pieces:
            match piece:
                case Curve(bend_x, bend_y, x, y):
                    found.quadric_to(*_px(bend_x, bend_y, spot), *_px(x, y, spot))
                    continue
                case Line(x, y):
                    points = [_px(x, y, spot)]
                case Turn():
                    points = _turned(piece, spot)
            if not begun:
                found.move_to(*points.pop(0))
                begun = True
            for point in points:
                found.line_to(*point)
        if path.closed:
            found.close()
    return found


def _turned(turn: Turn, spot: Spot) -> list[tuple[float, float]]:
    long = abs(math.radians(turn.sweep_deg)) * turn.r * spot.scale
    count = max(2, min(90, math.ceil(long / _STEP_PX)))
    start, sweep = math.radians(turn.start_deg), math.radians(turn.sweep_deg)
    full = abs(turn.sweep_deg) >= 360
    angles = [start + sweep * k / count for k in range(count + (0 if full else 1))]
    r = turn.r * spot.scale
    x, y = _px(turn.x, turn.y, spot)
    return [(x + r * math.cos(a), y - r * math.sin(a)) for a in angles]


def _px(x: float, y: float, spot: Spot) -> tuple[float, float]:
    return spot.x_px + x * spot.scale, spot.y_px + y * spot.scale


def _letter(canvas: object, letters: Letters, spot: Spot) -> None:
    size = letters.size * spot.scale
    if size < 1 or not letters.text.strip():
        return
    x, y = _px(letters.x, letters.y + 0.35 * letters.size, spot)
    at = celiagg.Transform()
    at.translate(x - wide(letters.text, letters.bold) * size / 2, y)
    font = _type(letters.bold, size)
    if letters.halo:
        state = celiagg.GraphicsState(
            drawing_mode=celiagg.DrawingMode.DrawStroke,
            text_drawing_mode=celiagg.TextDrawingMode.TextDrawStroke,
            line_join=celiagg.LineJoin.JoinRound,
            line_width=_HALO * spot.scale,
        )
        canvas.draw_text(letters.text, font, at, state, stroke=_ink(letters.halo))  # type: ignore[attr-defined]
    state = celiagg.GraphicsState(
        drawing_mode=celiagg.DrawingMode.DrawFill,
        # As outlines, letters without a counter would come out bolder than the others.
        text_drawing_mode=celiagg.TextDrawingMode.TextDrawRaster,
    )
    canvas.draw_text(letters.text, font, at, state, fill=_ink(letters.ink))  # type: ignore[attr-defined]


@lru_cache(maxsize=4096)
def wide(text: str, bold: bool = False) -> float:
    """Return how wide a text is set, in sizes of its type, from the ink it leaves."""
    pad = _MEASURE
    pixels = np.zeros((2 * pad, pad * (len(text) + 2)), np.uint8)
    at = celiagg.Transform()
    at.translate(pad, 1.4 * pad)
    state = celiagg.GraphicsState(drawing_mode=celiagg.DrawingMode.DrawFill)
    font = _type(bold, pad)
    celiagg.CanvasG8(pixels).draw_text(text, font, at, state, fill=celiagg.SolidPaint(1, 1, 1, 1))
    inked = np.flatnonzero(pixels.any(axis=0))
    return (2 * (inked[-1] + inked[0] - 2 * pad) / 2 / pad) if inked.size else 0.0


@lru_cache(maxsize=256)
def _type(bold: bool, size: float) -> object:
    weight = "Bold" if bold else "Regular"
    return celiagg.FreeTypeFont(str(_FONTS / f"AtkinsonHyperlegible-{weight}.ttf"), size)


@lru_cache(maxsize=512)
def _ink(tint: str) -> object:
    return celiagg.SolidPaint(*(int(tint[i : i + 2], 16) / 255 for i in (1, 3, 5)), 1.0)
