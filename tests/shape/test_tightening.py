"""The distances by which corners may be cut, against fine sampling."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, strategies as st

from pegwright.shape.tightening import _pierces, _segment_distance, _triangle_distance

STEPS = np.linspace(0, 1, 41)


@given(st.integers(0, 2**32 - 1), st.booleans())
def test_distance_to_a_triangle(seed: int, thin: bool) -> None:
    """No sampled point of the triangle is nearer than told, and one is about as near."""
    p, a, b, c = np.random.default_rng(seed).normal(size=(4, 3))
    if thin:
        c = a + 0.3 * (b - a) + 1e-3 * c
    s, t = np.meshgrid(STEPS, STEPS)
    inside = s + t <= 1 + 1e-12
    points = a + s[inside][:, None] * (b - a) + t[inside][:, None] * (c - a)
    nearest = float(np.linalg.norm(points - p, axis=1).min())
    step = max(np.linalg.norm(b - a), np.linalg.norm(c - a)) / 40
    assert nearest - step <= _triangle_distance(p, a, b, c) <= nearest + 1e-9


@given(st.integers(0, 2**32 - 1), st.booleans())
def test_distance_of_segments(seed: int, parallel: bool) -> None:
    p, q, a, b = np.random.default_rng(seed).normal(size=(4, 3))
    if parallel:
        b = a + 0.7 * (q - p)
    one, two = p + STEPS[:, None] * (q - p), a + STEPS[:, None] * (b - a)
    nearest = float(np.linalg.norm(one[:, None] - two[None], axis=2).min())
    step = float(np.linalg.norm(q - p) + np.linalg.norm(b - a)) / 40
    assert nearest - step <= _segment_distance(p, q, a, b) <= nearest + 1e-9


@pytest.mark.parametrize("outside", [False, True])
@given(st.integers(0, 2**32 - 1))
def test_what_pierces_a_triangle(outside: bool, seed: int) -> None:
    """A segment through a point of the triangle pierces it; through a point of its plane outside, not."""
    rng = np.random.default_rng(seed)
    a, b, c, along = rng.normal(size=(4, 3))
    normal = np.cross(b - a, c - a)
    along = along + normal * (1 + abs(along @ normal)) / (normal @ normal)  # never in the triangle's plane
    weights = rng.dirichlet([2, 2, 2])
    if outside:
        weights = np.array([1 + weights[0], -weights[0] * weights[1], -weights[0] * (1 - weights[1])])
    place = weights @ np.array([a, b, c])
    assert _pierces(place - along, place + 0.5 * along, a, b, c) is not outside
