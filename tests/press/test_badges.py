"""Letters and numbers on pictures lie clear of pegs' names and of each other, in large print too.

What is painted is looked at: discs and letters, the latter as wide as another measure of the font says.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise
from typing import NamedTuple

import pytest

from examples.pieces import PIECES
from pegwright.lesson import BadgeMark, PegMark, Picture
from pegwright.press.paint.inks import COLOUR
from pegwright.press.paint.marks import paint_picture
from pegwright.press.paint.paths import ArcTo, Letters, Paint, Stroke
from pegwright.press.paint.torn_edges import paint_torn_edges
from pegwright.press.pdf.typeset import _picture_data
from pegwright.press.raster.canvas import text_width
from tests.lesson.pieces import lesson, pictures_of

DEMOS = [name for name in PIECES if not name.startswith("broken/")]


class Badge(NamedTuple):
    """A badge as painted: its middle, the radius of its ends and how far they are off it, its letters."""

    x: float
    y: float
    r: float
    straight: float
    letters: Letters

    def reaches_into(self, x: float, y: float, half_width: float, half_height: float) -> float:
        """Return how far it reaches into a box."""
        dx = max(0.0, abs(self.x - x) - self.straight - half_width)
        return self.r - math.hypot(dx, max(0.0, abs(self.y - y) - half_height))


def _least_mm(picture: Picture, points: float) -> float:
    """Return the size of letters in mm of the loom, from the size that the handout prints it in."""
    data = _picture_data(picture, COLOUR, points)
    return points * 25.4 / 72 / (data["width"] / picture.window.width_mm)


def _badges(paints: list[Paint]) -> Iterator[Badge]:
    """Yield each badge, a filled outline with its letters, which follow it."""
    for disc, letters in pairwise(paints):
        if isinstance(disc, Stroke) and disc.fill and isinstance(letters, Letters) and not letters.halo:
            arcs = [each for each in disc.paths[0].segments if isinstance(each, ArcTo)]
            if arcs and math.isclose(sum(each.x for each in arcs) / len(arcs), letters.x):
                yield Badge(letters.x, letters.y, arcs[0].r, abs(arcs[0].x - letters.x), letters)


@pytest.mark.parametrize("name", DEMOS)
@pytest.mark.parametrize("points", [10.5, 18.0, 24.0])
def test_no_letter_or_number_lies_on_a_name_or_on_another_badge(name: str, points: float) -> None:
    """Over all pictures of a demo none touches a name, and all lie within their picture."""
    found = 0
    touching = []
    for picture in pictures_of(lesson(PIECES[name]())):
        if not any(isinstance(mark, PegMark) for mark in picture.marks):
            continue
        least = _least_mm(picture, points) if points > 10.5 else 0.0
        paints = paint_picture(picture, COLOUR, least)
        names = [p for p in paints if isinstance(p, Letters) and p.halo]
        for peg, other in pairwise(sorted(names, key=lambda name: (round(name.y, 1), name.x))):
            wide = (
                text_width(peg.text, peg.bold) * peg.size + text_width(other.text, other.bold) * other.size
            ) / 2
            if abs(peg.y - other.y) < 0.5 and other.x - peg.x < wide:
                touching.append((picture.title, peg.text, other.text))
        badges = list(_badges(paints))
        for i, badge in enumerate(badges):
            found += 1
            half = 0.5 * text_width(badge.letters.text, True) * badge.letters.size
            assert badge.straight + 0.95 * badge.r > half, (badge.letters.text, "its letters stand out")
            wide, high = badge.straight + badge.r - 0.01, badge.r - 0.01
            if not (
                wide <= badge.x <= picture.window.width_mm - wide
                and high <= badge.y <= picture.window.height_mm - high
            ):
                touching.append((picture.title, badge.letters.text, "edge"))
            for peg in names:
                half = text_width(peg.text, peg.bold) * peg.size / 2
                if badge.reaches_into(peg.x, peg.y, half, 0.35 * peg.size) > 0.0:
                    touching.append((picture.title, badge.letters.text, peg.text))
            for other in badges[:i]:
                if badge.reaches_into(other.x, other.y, other.straight + 0.6 * other.r, 0.6 * other.r) > 0.0:
                    touching.append((picture.title, badge.letters.text, other.letters.text))
    assert found
    assert touching == []


def test_a_letter_that_lies_free_stays_where_it_is() -> None:
    """Nothing is moved without need: at the usual size nearly every badge is where it was decided."""
    stay = moved = 0
    for picture in pictures_of(lesson(PIECES["twin-hulls"]())):
        window = picture.window
        spots = [(m.x_mm, m.y_mm) for m in picture.marks if isinstance(m, BadgeMark)]
        for badge in _badges(paint_picture(picture, COLOUR)):
            at = (badge.x + window.left_mm, window.far_mm - badge.y)
            near = min((math.dist(at, spot) for spot in spots), default=0.0)
            stay, moved = stay + (near < 1e-6), moved + (near >= 1e-6)
    assert stay > 10 * moved


def test_a_torn_edge_cuts_no_number() -> None:
    """What the edge of a part of the loom covers is painted before it, and the numbers after."""
    found = 0
    for picture in pictures_of(lesson(PIECES["ebb-line"]())):
        edges = list(paint_torn_edges(picture.window, COLOUR))
        paints = paint_picture(picture, COLOUR, _least_mm(picture, 24.0), edges)
        numbers = [badge.letters for badge in _badges(paints) if badge.letters.text.isdigit()]
        if edges and numbers:
            found += 1
            assert paints.index(edges[-1]) < min(paints.index(number) for number in numbers)
    assert found
