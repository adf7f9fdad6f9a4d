"""Letters and numbers on pictures lie clear of pegs' names and of each other, in large print too.

What is painted is looked at: discs and letters, the latter as wide as another measure of the font says.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

import pytest

from examples.pieces import PIECES
from pegwright.lesson import BadgeMark, PegMark, Picture
from pegwright.press.paint.inks import COLOUR
from pegwright.press.paint.marks import paint_picture
from pegwright.press.paint.paths import ArcTo, Letters, Paint, Stroke
from pegwright.press.pdf.typeset import _picture_data
from pegwright.press.raster.canvas import text_width
from tests.lesson.pieces import lesson, pictures_of

DEMOS = [name for name in PIECES if not name.startswith("broken/")]
_TOUCH_MM = 0.3


def _least_mm(picture: Picture, points: float) -> float:
    """Return the size of letters in mm of the loom, from the size that the handout prints it in."""
    data = _picture_data(picture, COLOUR, points)
    return points * 25.4 / 72 / (data["width"] / picture.window.width_mm)


def _discs(paints: list[Paint]) -> Iterator[tuple[float, float, float, Letters]]:
    """Yield each badge: its middle, radius and letters, which follow it."""
    for disc, letters in pairwise(paints):
        if isinstance(disc, Stroke) and isinstance(letters, Letters) and not letters.halo:
            arc = disc.paths[0].segments[0]
            if isinstance(arc, ArcTo) and arc.sweep_deg >= 360 and (arc.x, arc.y) == (letters.x, letters.y):
                yield arc.x, arc.y, arc.r, letters


@pytest.mark.parametrize("name", DEMOS)
@pytest.mark.parametrize("points", [10.5, 18.0, 24.0])
def test_no_colour_letter_lies_on_a_name_or_on_another_letter(name: str, points: float) -> None:
    found = 0
    for picture in pictures_of(lesson(PIECES[name]())):
        if not any(isinstance(mark, PegMark) for mark in picture.marks):
            continue
        least = _least_mm(picture, points) if points > 10.5 else 0.0
        paints = paint_picture(picture, COLOUR, least)
        names = [p for p in paints if isinstance(p, Letters) and p.halo]
        letters = [d for d in _discs(paints) if d[3].text.isalpha()]
        for i, (x, y, r, each) in enumerate(letters):
            found += 1
            for peg in names:
                dx = max(0.0, abs(x - peg.x) - text_width(peg.text, peg.bold) * peg.size / 2)
                dy = max(0.0, abs(y - peg.y) - 0.35 * peg.size)
                assert math.hypot(dx, dy) > r - _TOUCH_MM, (picture.title, each.text, peg.text)
            for other_x, other_y, other_r, other in letters[:i]:
                apart = math.hypot(x - other_x, y - other_y)
                assert apart > 0.8 * (r + other_r), (picture.title, each.text, other.text)
    assert found


def test_a_letter_that_lies_free_stays_where_it_is() -> None:
    """Nothing is moved without need: at the usual size nearly every badge is where it was decided."""
    stay = moved = 0
    for picture in pictures_of(lesson(PIECES["twin-hulls"]())):
        window = picture.window
        spots = [(m.x_mm, m.y_mm) for m in picture.marks if isinstance(m, BadgeMark)]
        for x, y, _, _ in _discs(paint_picture(picture, COLOUR)):
            at = (x + window.left_mm, window.far_mm - y)
            near = min((math.dist(at, spot) for spot in spots), default=0.0)
            stay, moved = stay + (near < 1e-6), moved + (near >= 1e-6)
    assert stay > 10 * moved
