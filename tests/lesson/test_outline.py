"""Bands round pegs: lengths against the belt formulas of machine handbooks."""

from __future__ import annotations

import math

from hypothesis import given, strategies as st

from pegwright.lesson import Arc, Outline
from pegwright.lesson.scene.outline import Disc, arc_point, belt_line, hull_line


def _length(outline: Outline) -> float:
    arcs = sum(math.radians(abs(a.sweep_deg)) * a.r_mm for a in outline)
    if len(outline) == 1:
        return arcs
    pairs = zip(outline, outline[1:] + outline[:1], strict=True)
    return arcs + sum(math.dist(arc_point(a), arc_point(b, 0.0)) for a, b in pairs)


radii = st.floats(0.5, 6.0)
apart = st.floats(13.0, 60.0)


@given(radii, radii, apart, st.floats(0, 2 * math.pi))
def test_an_open_band_is_as_long_as_an_open_belt(big: float, small: float, c: float, turn: float) -> None:
    """Open belt: L = 2·√(C² − (R − r)²) + π(R + r) + 2(R − r)·asin((R − r)/C).

    The exact form of the open-belt formula in Machinery's Handbook, "Flat belting" (from memory).
    """
    other = Disc(c * math.cos(turn), c * math.sin(turn), small)
    d = big - small
    expected = 2 * math.sqrt(c * c - d * d) + math.pi * (big + small) + 2 * d * math.asin(d / c)
    assert math.isclose(_length(belt_line((Disc(0, 0, big), other))), expected, rel_tol=1e-9)
    assert math.isclose(_length(hull_line((Disc(0, 0, big), other))), expected, rel_tol=1e-9)


@given(radii, radii, apart)
def test_a_half_turned_band_is_as_long_as_a_crossed_belt(big: float, small: float, c: float) -> None:
    """Crossed belt: L = 2·√(C² − (R + r)²) + (R + r)(π + 2·asin((R + r)/C)) (same source, from memory)."""
    s = big + small
    expected = 2 * math.sqrt(c * c - s * s) + s * (math.pi + 2 * math.asin(s / c))
    outline = belt_line((Disc(0, 0, big), Disc(0, c, small, -1)))
    assert math.isclose(_length(outline), expected, rel_tol=1e-9)


def test_a_band_round_equal_pegs_is_the_polygon_and_one_circle() -> None:
    """Round pegs at the corners of a convex figure: its girth and one whole turn."""
    corners = [(0.0, 0.0), (16.0, 0.0), (16.0, 16.0), (0.0, 16.0)]
    outline = hull_line(tuple(Disc(x, y, 3.0) for x, y in corners))
    assert math.isclose(_length(outline), 64 + 2 * math.pi * 3.0, rel_tol=1e-9)


def test_a_peg_inside_does_not_touch_the_band() -> None:
    """A disc in the middle of a wide square leaves the outline as it was."""
    square = tuple(Disc(x, y, 3.0) for x, y in ((0, 0), (32, 0), (32, 32), (0, 32)))
    assert hull_line((*square, Disc(16, 16, 3.0))) == hull_line(square)


def test_discs_on_one_spot_are_one() -> None:
    """A line round the same disc twice is the line round it once."""
    disc = Disc(3.0, 4.0, 5.0)
    assert hull_line((disc, disc)) == hull_line((disc,)) == (Arc(3.0, 4.0, 5.0, 0.0, 360.0),)
