"""Step pictures as PNG, for cutting into a film: 16:9, transparent, our own fonts and no others."""

from __future__ import annotations

from pegwright.lesson.frame import FRAME, Still
from pegwright.press.canvas import Spot, blank, cut, png, put
from pegwright.press.strokes import COLOUR, Inks, kept, painted, tears

HEIGHTS = (1080, 2160)


def still_png(still: Still, tall_px: int = FRAME[1], inks: Inks = COLOUR) -> bytes:
    """Return a still as PNG (8-bit RGBA), so many pixels high and 16/9 as wide."""
    larger = tall_px / FRAME[1]
    spot = Spot(still.left_px * larger, still.top_px * larger, still.px_a_mm * larger)
    pixels = blank(tall_px * FRAME[0] // FRAME[1], tall_px)
    put(pixels, painted(still.picture, inks), spot)
    cut(pixels, kept(still.picture.window), spot)
    put(pixels, tears(still.picture.window, inks), spot)
    return png(pixels)
