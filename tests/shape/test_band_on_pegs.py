"""A band on its pegs against plain geometry and statics."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, strategies as st

from pegwright.shape import neo_hookean
from pegwright.shape.band_on_pegs import rest_length_mm, slack_until_mm, stretch_over_pegs, taut_length_mm

pegs = st.lists(
    st.tuples(st.integers(-40, 40), st.integers(-40, 40)).map(lambda p: (p[0] / 2, p[1] / 2)),
    min_size=1,
    max_size=7,
)


def test_two_pegs() -> None:
    """2 s + π(d + t), as any belt round two equal wheels (textbook geometry)."""
    assert taut_length_mm([(0, 0), (25, 0)], 5, 1.5) == pytest.approx(50 + math.pi * 6.5)


@pytest.mark.parametrize(("bore", "apart"), [(15, 15.7), (17, 18.8), (18, 20.4), (20, 23.6)])
def test_slack_limit(bore: float, apart: float) -> None:
    """s = π(bore − d)/2 for pegs of 5 mm (arithmetic): a hair less is slack, a hair more is not."""
    assert slack_until_mm(bore, 5) == pytest.approx(apart, abs=0.06)
    limit = slack_until_mm(bore, 5)
    assert stretch_over_pegs([(0, 0), (limit - 0.01, 0)], 5, bore, 1.5).slack
    assert not stretch_over_pegs([(0, 0), (limit + 0.01, 0)], 5, bore, 1.5).slack


@pytest.mark.parametrize(
    ("apart", "stretch", "tension"), [(25, 1.15, 0.28), (30, 1.31, 0.52), (40, 1.64, 0.90)]
)
def test_stretch_and_tension(apart: float, stretch: float, tension: float) -> None:
    """Bore 18, thickness 1.5, neo-Hookean 0.4 MPa, worked by hand from P = μ(λ − λ⁻²)."""
    band = stretch_over_pegs([(0, 0), (apart, 0)], 5, 18, 1.5, neo_hookean(0.4))
    assert band.stretch == pytest.approx(stretch, abs=0.006)
    assert band.tension_n == pytest.approx(tension, abs=0.012)
    assert band.load_n == pytest.approx(np.array([[2, 0], [-2, 0]]) * band.tension_n)


@given(pegs, st.integers(0, 359))
def test_loads_balance_and_turn_with_the_pegs(places, degrees: int) -> None:
    """The loads add up to nothing, have no moment, and turn as the pegs do; length does not change."""
    places = np.array(places)
    band = stretch_over_pegs(places, 5, 10, 1.5)
    assert band.load_n.sum(axis=0) == pytest.approx([0, 0], abs=1e-9)
    moment = places[:, 0] * band.load_n[:, 1] - places[:, 1] * band.load_n[:, 0]
    assert moment.sum() == pytest.approx(0, abs=1e-7)
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    turned = stretch_over_pegs(places @ [[c, s], [-s, c]], 5, 10, 1.5)
    assert turned.taut_mm == pytest.approx(band.taut_mm)


@given(pegs)
def test_length_equals_the_hulls_width_all_round(places) -> None:
    """Cauchy: a convex curve is as long as its width averaged over all directions, times π."""
    angles = (np.arange(3600) + 0.5) * np.pi / 3600
    along = np.array(places) @ [np.cos(angles), np.sin(angles)]
    width = along.max(axis=0) - along.min(axis=0) + 6.5
    assert taut_length_mm(places, 5, 1.5) == pytest.approx(np.pi * width.mean(), rel=1e-4)


def test_wound_band_is_longer_by_its_turns() -> None:
    """Wound three times round one peg, a band's stretch is three turns over its rest length."""
    cap = stretch_over_pegs([(0, 0)], 5, 18, 1.5, turns=3)
    assert cap.taut_mm == pytest.approx(3 * math.pi * 6.5)
    assert cap.stretch == pytest.approx(cap.taut_mm / rest_length_mm(18, 1.5), abs=1e-9) or cap.slack
    assert np.all(cap.load_n == 0)


def test_nonsense_is_refused() -> None:
    """No pegs, no turns, no negative sizes."""
    for call in (
        lambda: stretch_over_pegs([], 5, 18, 1.5),
        lambda: stretch_over_pegs([(0, 0)], 5, 18, 1.5, turns=0),
        lambda: stretch_over_pegs([(0, 0)], -5, 18, 1.5),
        lambda: stretch_over_pegs([(0, 0)], 5, 0, 1.5),
    ):
        with pytest.raises(ValueError, match=r"."):
            call()
