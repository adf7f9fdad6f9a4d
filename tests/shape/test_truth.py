"""The rod against closed forms of the elastica, at 96 points a band (source beside each).

Values marked (quadrature) were computed afresh from the formula named; the formulas are from memory where
no text is cited.
"""

from __future__ import annotations

import math
import os

import numpy as np
import pytest

from pegwright.shape import Band, Goal, Pull, Supports, add_elastic_derivatives, build_rods, relax_bands

compiled = pytest.mark.skipif(os.environ.get("NUMBA_DISABLE_JIT") == "1", reason="needs the compiled kernels")
THIN = 0.5  # mm: so slender that stretch does not count
FINE = Goal(residual_drop=1e-6, length_change=1e-8)
RADIUS = 20.0


def bending_n_mm2(band: Band) -> float:
    return band.rubber.youngs_mpa * math.pi * (band.thickness_mm / 2) ** 4 / 4


def ring_diameters(points: int, f: float) -> tuple[float, float]:
    """Height and width over R of a ring pulled apart by opposite forces f·EI/R²."""
    turn = 2 * np.pi * np.arange(points) / points
    length = 2 * np.pi * RADIUS
    scale = length / (2 * points * math.sin(math.pi / points))
    curve = scale * np.column_stack([np.sin(turn), np.cos(turn), 0 * turn])
    band = Band(curve, length, THIN)
    force = f * bending_n_mm2(band) / RADIUS**2
    pulls = (Pull((0, 0), (0, force, 0)), Pull((0, points // 2), (0, -force, 0)))
    piece = relax_bands([band], Supports(pulls=pulls), goal=FINE)
    assert piece.converged
    x = piece.positions_mm[0]
    return (
        float(np.linalg.norm(x[0] - x[points // 2])) / RADIUS,
        float(np.linalg.norm(x[points // 4] - x[3 * points // 4])) / RADIUS,
    )


@compiled
def test_ring_under_point_loads() -> None:
    """Small opposite loads change the two diameters by 0.1488 and 0.1366 F R³/EI.

    (π/4 − 2/π) and (2/π − 1/2) by Castigliano's theorem; W. C. Young, Roark's Formulas, table of circular
    rings, 0.149 and 0.137 (from memory). The slope at no load is taken from two loads.
    """
    small, double = ring_diameters(96, 0.02), ring_diameters(96, 0.04)
    free = 2 * (math.pi / 96) / math.sin(math.pi / 96)  # a polygon of the circle's length stands out a little
    for side, expected in ((0, math.pi / 4 - 2 / math.pi), (1, 1 / 2 - 2 / math.pi)):
        slopes = (small[side] - free) / 0.02, (double[side] - free) / 0.04
        assert 2 * slopes[0] - slopes[1] == pytest.approx(expected, rel=0.01)


@compiled
@pytest.mark.parametrize(
    ("f", "height", "width"), [(1, 2.13288, 1.86936), (5, 2.44855, 1.47311), (20, 2.77148, 0.87996)]
)
def test_pulled_elastica_ring(f: float, height: float, width: float) -> None:
    """An inextensible ring pulled far takes the elastica's shape (quadrature of κ² = a + b cos θ)."""
    assert ring_diameters(96, f) == pytest.approx((height, width), rel=0.01)


@compiled
@pytest.mark.parametrize(
    ("f", "height", "width"), [(1, 1.83306, 2.14122), (3, 1.37974, 2.42439), (5, 0.80817, 2.62320)]
)
def test_pinched_elastica_ring(f: float, height: float, width: float) -> None:
    """Held pinched to the elastica's height, a ring is as wide, and pushes back as hard, as it should.

    Held, not loaded: a ring under pinching dead loads would turn over until they pull.
    """
    points = 96
    turn = 2 * np.pi * np.arange(points) / points
    curve = RADIUS * np.column_stack([width / 2 * np.sin(turn), height / 2 * np.cos(turn), 0 * turn])
    band = Band(curve, 2 * np.pi * RADIUS, THIN)
    piece = relax_bands([band], Supports(fixed=((0, 0), (0, points // 2))), goal=FINE)
    assert piece.converged
    x = piece.positions_mm[0]
    across = float(np.linalg.norm(x[points // 4] - x[3 * points // 4])) / RADIUS
    _, rods = build_rods([band])
    gradient = np.zeros_like(x)
    add_elastic_derivatives(x.copy(), rods, 0.0, gradient, np.zeros((3, points, 3, 3)))
    push = np.linalg.norm(gradient[0]) * RADIUS**2 / bending_n_mm2(band)
    assert (across, push) == pytest.approx((width, f), rel=0.01)


def test_ring_pulled_a_little() -> None:
    """At 24 points the pulled ring is already within 2 % (runs without compiling too)."""
    assert ring_diameters(24, 5) == pytest.approx((2.44855, 1.47311), rel=0.02)


def cantilever(points: int, load: float) -> tuple[float, float]:
    """Drop and shortening over L of a cantilever under a dead end load P L²/EI = `load`.

    The first edge is held, so the rod is clamped in its middle: half an edge belongs to the wall.
    """
    edge = 1.0
    length = (points - 1.5) * edge
    line = np.column_stack([np.arange(points) * edge, np.zeros(points), np.zeros(points)])
    band = Band(line, (points - 1) * edge, THIN, closed=False)
    force = load * bending_n_mm2(band) / length**2
    hold = Supports(fixed=((0, 0), (0, 1)), pulls=(Pull((0, points - 1), (0, -force, 0)),))
    piece = relax_bands([band], hold, goal=FINE)
    assert piece.converged
    tip = piece.positions_mm[0][-1]
    return -float(tip[1]) / length, (length + 0.5 * edge - float(tip[0])) / length


@compiled
@pytest.mark.parametrize(
    ("load", "drop", "shortening"),
    [(0.25, 0.08275, 0.00412), (1, 0.30172, 0.05643), (3, 0.60325, 0.25442), (10, 0.81061, 0.55500)],
)
def test_cantilever(load: float, drop: float, shortening: float) -> None:
    """K. E. Bisshopp and D. C. Drucker, Quart. Appl. Math. 3 (1945) 272 (values by quadrature of their
    equations)."""
    assert cantilever(96, load) == pytest.approx((drop, shortening), rel=0.01, abs=2e-5)


@compiled
def test_figure_eight() -> None:
    """Half a figure-eight, a lobe on two hinges in one place: L∫κ²ds of the whole is 112.44.

    The closed elastica with 2E(m) = K(m), m = 0.8261148 (L. Euler 1744; quadrature). Its crossing is an
    inflection, so a hinge carries each half. The hinges stand a thickness apart, 0.2 mm.
    """
    from scipy.special import ellipe, ellipk

    m = 0.8261148
    assert 2 * ellipe(m) == pytest.approx(ellipk(m), rel=1e-6)
    points, length = 96, 100.0
    turn = np.linspace(0, 2 * np.pi, points)
    apart = np.linspace(0.1, -0.1, points)
    lobe = np.column_stack([np.sin(turn / 2) * 30, np.sin(turn) * 12 + apart, 0 * turn])
    band = Band(lobe, length, 0.2, closed=False)
    piece = relax_bands([band], Supports(fixed=((0, 0), (0, points - 1))), goal=FINE)
    assert piece.converged
    x = piece.positions_mm[0]
    assert 4 * length * bend_squared(x) == pytest.approx(112.4396, rel=0.01)
    # The tangents at the crossing: each half turns through twice 130.710° (2 asin k, quadrature).
    first, last = x[1] - x[0], x[-1] - x[-2]
    cosine = first @ last / np.linalg.norm(first) / np.linalg.norm(last)
    assert 360 - math.degrees(math.acos(cosine)) == pytest.approx(2 * 130.710, rel=0.01)


def bend_squared(x) -> float:
    """∫κ² ds of an open polyline with nearly even edges."""
    edges = np.diff(x, axis=0)
    length = np.linalg.norm(edges, axis=1)
    unit = edges / length[:, None]
    turn = np.arccos(np.clip((unit[1:] * unit[:-1]).sum(axis=1), -1, 1))
    return float((turn**2 / (0.5 * (length[1:] + length[:-1]))).sum())


@compiled
def test_order_of_convergence() -> None:
    """Halving the edges quarters the error, in the cantilever and in the ring."""
    for solve, exact in (
        (lambda n: cantilever(n, 3)[0], 0.60325),
        (lambda n: ring_diameters(n, 5)[1], 1.47311),
    ):
        coarse, fine = (abs(solve(n) - exact) for n in (16, 32))
        assert 1.6 < math.log2(coarse / fine) < 2.6


@compiled
def test_hung_weight_stretches_by_the_law() -> None:
    """A straight open band under a weight stretches to where area × stress equals it."""
    from pegwright.shape import nominal_stress

    line = np.column_stack([np.linspace(0, 20, 24), np.zeros(24), np.zeros(24)])
    band = Band(line, 20.0, 1.5, closed=False)
    for stretch in (1.3, 2.0, 3.5):
        weight = math.pi * 0.75**2 * float(nominal_stress(band.rubber, stretch))
        piece = relax_bands(
            [band], Supports(fixed=((0, 0),), pulls=(Pull((0, 23), (weight, 0, 0)),)), goal=FINE
        )
        assert piece.stretch[0][:-1] == pytest.approx(stretch, rel=1e-6)
        assert piece.tension_n[0][:-1] == pytest.approx(weight, rel=1e-6)
