"""Step pictures as PNG for cutting into a film: 16:9, transparent, set in our own fonts."""

from __future__ import annotations

from pegwright.lesson import FRAME, Still
from pegwright.press.paint.inks import COLOUR, Inks
from pegwright.press.paint.marks import paint_picture
from pegwright.press.paint.torn_edges import torn_edge_lines, untorn_outline
from pegwright.press.raster.canvas import Placement, blank_canvas, clear_outside, paint_on
from pegwright.press.raster.png import rgba_png


def still_png(still: Still, tall_px: int = FRAME[1], inks: Inks = COLOUR) -> bytes:
    """Return a still as PNG (8-bit RGBA), `tall_px` high and 16/9 as wide."""
    larger = tall_px / FRAME[1]
    spot = Placement(still.left_px * larger, still.top_px * larger, still.px_a_mm * larger)
    pixels = blank_canvas(tall_px * FRAME[0] // FRAME[1], tall_px)
    paint_on(pixels, paint_picture(still.picture, inks), spot)
    clear_outside(pixels, untorn_outline(still.picture.window), spot)
    paint_on(pixels, torn_edge_lines(still.picture.window, inks), spot)
    return rgba_png(pixels)
