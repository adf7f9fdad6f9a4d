"""What sticks when a piece is let go."""

from __future__ import annotations

import os

import numpy as np
import pytest

from pegwright.shape import Band, Dressing, Goal, Pull, Supports, Tie, build_rods, neo_hookean, relax_bands
from pegwright.shape.elements import empty_elements
from pegwright.shape.friction import add_friction_derivatives, find_sticking_contacts, friction_energy

compiled = pytest.mark.skipif(os.environ.get("NUMBA_DISABLE_JIT") == "1", reason="needs the compiled kernels")


def crossed() -> tuple[np.ndarray, object, object]:
    """Two straight strands across each other, pressed 0.1 mm together."""
    one = np.column_stack([np.linspace(-9, 9, 4), np.zeros(4), np.zeros(4)])
    two = np.column_stack([np.zeros(4) + 0.5, np.linspace(-8, 9, 4), np.full(4, 1.4)])
    x, rods = build_rods([Band(one, 18.0, 1.5, closed=False), Band(two, 17.0, 1.5, closed=False)])
    held = find_sticking_contacts(x, rods, np.array([[1, 5]]), np.full(8, 0.75), 0.3, 0.8)
    return x, rods, held


@pytest.mark.parametrize("size", [1e-3, 0.02, 1.0])
def test_forces_and_stiffness_are_derivatives(size: float) -> None:
    x, rods, held = crossed()
    assert len(held.limit_n) == 1
    x = x + size * np.random.default_rng(1).normal(size=x.shape)

    def forces(at: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        g, elements = np.zeros_like(at), empty_elements(1)
        assert add_friction_derivatives(at, rods.next, held, g, elements, 0) == pytest.approx(
            friction_energy(at, rods.next, held)
        )
        return g, *elements

    g, corners, k = forces(x)
    h = 1e-6 * max(size, 0.01)
    for c, v in enumerate(corners[0]):
        for i in range(3):
            up, down = x.copy(), x.copy()
            up[v, i] += h
            down[v, i] -= h
            slope = (friction_energy(up, rods.next, held) - friction_energy(down, rods.next, held)) / (2 * h)
            assert g[v, i] == pytest.approx(slope, rel=1e-4, abs=1e-7)
            column = (forces(up)[0] - forces(down)[0])[corners[0]] / (2 * h)
            assert k[0, :, c, :, i] == pytest.approx(column, rel=1e-3, abs=1e-4)


def test_a_slipping_pair_is_held_back_by_the_limit() -> None:
    """Beyond the first shear the force is μN, along the slip, and equal and opposite on the two strands."""
    x, rods, held = crossed()
    x[4:, 0] += 0.4
    g = np.zeros_like(x)
    add_friction_derivatives(x, rods.next, held, g, empty_elements(1), 0)
    assert np.linalg.norm(g[:4].sum(axis=0)) == pytest.approx(held.limit_n[0])
    assert g.sum(axis=0) == pytest.approx(np.zeros(3), abs=1e-12)
    assert g[4:, 0].sum() == pytest.approx(held.limit_n[0])


def test_friction_keeps_what_the_tug_has_drawn() -> None:
    """Two hooked rings: let go without friction they spring back, with it they stay longer."""
    turn = np.linspace(0, 2 * np.pi, 12, endpoint=False)
    one = np.column_stack([6 * np.cos(turn), 6 * np.sin(turn), 0 * turn])
    two = np.column_stack([9 + 6 * np.cos(turn), 0 * turn, 6 * np.sin(turn)])
    bands = [Band(one, 30.0, 1.5), Band(two, 30.0, 1.5)]
    tug = (Pull((0, 6), (-0.3, 0, 0)), Pull((1, 0), (0.3, 0, 0)))
    goal = Goal(residual_drop=1e-5, iterations=60)
    free = relax_bands(bands, Supports(), Dressing(tug), goal=goal)
    kept = relax_bands(bands, Supports(), Dressing(tug, friction=0.8), goal=goal)
    assert kept.converged
    assert kept.length_mm > free.length_mm + 0.1
    with pytest.raises(ValueError, match="negative"):
        relax_bands(bands, Supports(), Dressing(friction=-1.0))


@compiled
@pytest.mark.parametrize("share", [0.5, 0.9, 1.15])
def test_laid_strand_holds_within_the_cone_and_slips_beyond(share: float) -> None:
    """A strand laid over two bars drawn along by `share` of μN shears by e(1 − √(1 − share)), or slides.

    Coulomb's cone; within it the shear at which Li et al.'s slope f₁ = 1 − (1 − u/e)² reaches the share. The
    sliding strand is caught by a slack thread. It is stiff, so that it hardly bends.
    """
    mu, weight = 0.6, 0.02
    x = np.linspace(-10, 10, 11)
    bars = [np.column_stack([x, np.full(11, y), np.zeros(11)]) for y in (-4.0, 4.0)]
    laid = np.column_stack([np.full(8, 1.1), np.linspace(-7, 7, 8), np.full(8, 1.48)])
    bands = [Band(bar, 20.0, 1.5, closed=False) for bar in bars] + [
        Band(laid, 14.0, 1.5, neo_hookean(100.0), closed=False)
    ]
    along = share * mu * weight
    hold = Supports(
        fixed=tuple((bar, i) for bar in (0, 1) for i in range(11)),
        pulls=tuple(Pull((2, i), (along / 2, 0.0, -weight / 2)) for i in (3, 4)),
        ties=(Tie((2, 0), (0, 5), 4.5),),
    )
    held_back = tuple(Pull((2, i), (-along / 2, 0.0, 0.0)) for i in (3, 4))
    goal = Goal(residual_drop=1e-6, length_change=1e-9)
    rest = relax_bands(bands, hold, Dressing(held_back, friction=mu), goal=goal, keep_iterates=True)
    before = rest.iterates_mm[len(rest.energies_n_mm[0])][22:]
    moved = (rest.positions_mm[2] - before)[:, 0]
    if share < 1:
        assert moved.mean() == pytest.approx(0.05 * (1 - np.sqrt(1 - share)), rel=0.1)
    else:
        assert moved.mean() > 1.0


@compiled
def test_no_friction_changes_no_bit() -> None:
    """A coefficient of zero gives the very numbers that leaving it out gives."""
    turn = np.linspace(0, 2 * np.pi, 12, endpoint=False)
    one = np.column_stack([6 * np.cos(turn), 6 * np.sin(turn), 0 * turn])
    two = np.column_stack([9 + 6 * np.cos(turn), 0 * turn, 6 * np.sin(turn)])
    bands = [Band(one, 30.0, 1.5), Band(two, 30.0, 1.5)]
    tug = (Pull((0, 6), (-0.3, 0, 0)), Pull((1, 0), (0.3, 0, 0)))
    plain, zero = (
        relax_bands(bands, None, Dressing(tug)),
        relax_bands(bands, None, Dressing(tug, friction=0.0)),
    )
    assert plain.iterations == zero.iterations
    for a, b in zip(plain.positions_mm, zero.positions_mm, strict=True):
        assert np.array_equal(a, b)
