"""Energies, forces, stiffness, distances, neighbours and the factor, each against a slow twin."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings, strategies as st

from pegwright.shape import (
    Band,
    CholeskyFactor,
    Pull,
    Supports,
    Tie,
    add_contact_derivatives,
    add_elastic_derivatives,
    build_elimination_tree,
    build_rods,
    count_pass_throughs,
    elastic_energy,
    factorise,
    find_near_pairs,
    solve_factored,
    vertex_adjacency,
    yeoh,
)
from pegwright.shape.contact import closest_points, contact_energy
from pegwright.shape.elements import empty_elements
from pegwright.shape.loads import add_load_derivatives, gather_loads, load_energy
from pegwright.shape.multifrontal import DONE, INDEFINITE, UNFIT
from pegwright.shape.near_pairs import is_neighbour
from pegwright.shape.nested_dissection import mend_elimination_tree
from pegwright.shape.step_bound import bound_listed_pairs, bound_unlisted_pairs
from tests.shape import naive

TURN = np.linspace(0, 2 * np.pi, 14, endpoint=False)


def two_rings(seed: int, thick: float = 2.4):
    """Two ragged rings hooked through each other and pressed together."""
    rng = np.random.default_rng(seed)
    one = np.column_stack([6 * np.cos(TURN), 6 * np.sin(TURN), 0 * TURN]) + rng.normal(size=(14, 3)) * 0.3
    two = np.column_stack([9.6 + 5 * np.cos(TURN), 0 * TURN, 5 * np.sin(TURN)]) + np.array([0.3, 0.2, 0.1])
    two += rng.normal(size=(14, 3)) * 0.2
    return [Band(one, 30.0, thick), Band(two, 26.0, thick, yeoh())]


def all_energy(x, rods, pairs, load) -> float:
    radius = np.zeros(len(x))
    return (
        elastic_energy(x, rods)
        + contact_energy(x, rods, pairs, 1.0, 0.05, radius)
        + load_energy(x, rods, load)
    )


def all_forces(x, rods, pairs, load, true):
    n = len(x)
    gradient, blocks = np.zeros((n, 3)), np.zeros((3, n, 3, 3))
    elements = empty_elements(len(pairs) + 9)
    add_elastic_derivatives(x, rods, true, gradient, blocks)
    first = add_load_derivatives(x, rods, load, gradient, blocks[0], elements)
    _, touching = add_contact_derivatives(
        x, rods, pairs, 1.0, 0.05, true, np.zeros(n), gradient, elements, first
    )
    return gradient, blocks, elements, first + touching, touching


def dense(rods, blocks, elements, count):
    corners, stiffness = elements
    n = len(rods.next)
    full = np.zeros((n, 3, n, 3))
    for v in range(n):
        w = rods.next[v]
        full[v, :, v] += blocks[0, v]
        for hop, other in ((1, w), (2, rods.next[w])):
            full[v, :, other] += blocks[hop, v]
            full[other, :, v] += blocks[hop, v].T
    for k in range(count):
        for c in range(4):
            for d in range(4):
                full[corners[k, c], :, corners[k, d]] += stiffness[k, c, d]
    return full.reshape(3 * n, 3 * n)


def scene(seed: int):
    bands = two_rings(seed)
    x, rods = build_rods(bands)
    hold = Supports(pulls=(Pull((0, 3), (0.1, 0.2, -0.1)),), ties=(Tie((0, 7), (1, 1), 1.0),), girth_mm=9.0)
    pairs = np.array([(a, b) for a in range(14) for b in range(14, 28)])
    return bands, x, rods, gather_loads(rods, hold, None), pairs


def test_elastic_energy_equals_its_twin() -> None:
    """Stretch and bend energies agree with integration of the stress and the angles by arccos."""
    bands = two_rings(1, 0.8)
    x, rods = build_rods(bands)
    assert elastic_energy(x, rods) == pytest.approx(naive.elastic_energy(bands, [x[:14], x[14:]]), rel=1e-7)


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_forces_are_the_slope_of_energy(seed: int) -> None:
    """Every force equals the central difference of the energy, contact, wrist and tie included."""
    _, x, rods, load, pairs = scene(seed)
    gradient, *_, touching = all_forces(x, rods, pairs, load, 1.0)
    assert touching > 0
    for v in range(0, len(x), 3):
        for i in range(3):
            step = np.zeros_like(x)
            step[v, i] = 1e-6
            slope = (all_energy(x + step, rods, pairs, load) - all_energy(x - step, rods, pairs, load)) / 2e-6
            assert gradient[v, i] == pytest.approx(slope, abs=2e-6 * np.abs(gradient).max())


def test_stiffness_is_the_slope_of_forces() -> None:
    """Without contact the full stiffness is the exact Hessian."""
    _, x, rods, load, _ = scene(4)
    load = load._replace(wrist_mm=0.0)
    none = np.zeros((0, 2), np.int64)
    _, *parts, _ = all_forces(x, rods, none, load, 1.0)
    full = dense(rods, *parts)
    for k in (0, 10, 25, 50, 71):
        step = np.zeros(x.size)
        step[k] = 1e-6
        move = step.reshape(x.shape)
        ahead = all_forces(x + move, rods, none, load, 1.0)[0]
        behind = all_forces(x - move, rods, none, load, 1.0)[0]
        assert full[k] == pytest.approx(((ahead - behind) / 2e-6).ravel(), abs=1e-5 * np.abs(full).max())


@pytest.mark.parametrize("seed", [1, 5])
def test_convex_part_is_never_negative(seed: int) -> None:
    """With `true` = 0 no direction of the stiffness is negative."""
    _, x, rods, load, pairs = scene(seed)
    _, *parts, _ = all_forces(x, rods, pairs, load, 0.0)
    values = np.linalg.eigvalsh(dense(rods, *parts))
    assert values.min() > -1e-9 * values.max()


point = st.tuples(*[st.floats(-3, 3)] * 3).map(np.array)


@settings(max_examples=60, deadline=None)
@given(st.tuples(point, point, point, point))
def test_distance_of_edges(ends) -> None:
    """The closed form agrees with trying ends and the common perpendicular."""
    x = np.array(ends)
    if np.linalg.norm(x[1] - x[0]) < 1e-3 or np.linalg.norm(x[3] - x[2]) < 1e-3:
        return
    _, _, squared = closest_points(x, 0, 1, 2, 3, 1e-12)
    assert np.sqrt(squared) == pytest.approx(naive.segment_distance(*x), abs=1e-5)


@settings(max_examples=15, deadline=None)
@given(st.integers(0, 10_000), st.floats(0.5, 4.0))
def test_neighbours_in_space_are_all_found(seed: int, reach: float) -> None:
    """The grid finds the pairs that trying all pairs finds, with the same distances."""
    x, rods = build_rods(two_rings(seed))
    near = find_near_pairs(x, np.zeros_like(x), rods, reach, reach)
    found = {(int(a), int(b)): g for (a, b), g in zip(near.pairs, near.gap_mm, strict=True)}
    expected = naive.near_pairs([x[:14], x[14:]], reach)
    assert found.keys() == expected.keys()
    assert all(found[k] == pytest.approx(expected[k], abs=1e-5) for k in found)


def test_neighbours_along_a_band_are_symmetric() -> None:
    """Whether two edges count as neighbours does not depend on where the band's first point is."""
    x, rods = build_rods([Band(two_rings(0)[0].points_mm, 30.0, 3.0)])
    onward = [k for k in range(1, 14) if is_neighbour(rods, 0, k)]
    assert onward[0] == 1
    assert onward[-1] == 13
    assert 7 not in onward
    del x


@settings(max_examples=15, deadline=None)
@given(st.integers(0, 10_000), st.floats(0.1, 30.0))
def test_bounded_step_keeps_strands_apart(seed: int, size: float) -> None:
    """However wild the step, up to the bound no pair comes within the floor, and nothing passes through."""
    bands = two_rings(seed, 0.6)
    x, rods = build_rods(bands)
    step = np.random.default_rng(seed).normal(size=x.shape) * size
    least = 0.05
    reach, alpha = bound_unlisted_pairs(x, step, rods, 0.6, 3.0)
    near = find_near_pairs(x, step, rods, reach, 0.6)
    start = min((g for g, t in zip(near.gap_mm, near.touchable, strict=True) if t), default=1.0)
    if start <= least:
        return
    alpha = min(alpha, bound_listed_pairs(x, step, rods, near, least))
    assert alpha > 0
    assert count_pass_throughs([x, x + alpha * step], bands) == 0
    for part in np.linspace(0, 1, 5):
        y = x + part * alpha * step
        gaps = naive.near_pairs([y[:14], y[14:]], 2 * least)
        assert all(g >= least - 1e-9 for (a, b), g in gaps.items() if not is_neighbour(rods, a, b))


@pytest.mark.parametrize("leaf", [1, 4, 40])
def test_factor_solves_the_dense_system(leaf: int) -> None:
    """Fronts of any size give the solution that a dense solver gives."""
    _, x, rods, load, pairs = scene(3)
    gradient, blocks, elements, count, _ = all_forces(x, rods, pairs, load, 0.0)
    blocks[0] += 0.01 * np.eye(3)
    joined = np.concatenate([pairs, load.ties])
    into = CholeskyFactor(build_elimination_tree(x, *vertex_adjacency(rods, joined), leaf))
    assert factorise(into, rods, blocks, elements, count) == DONE
    expected = np.linalg.solve(dense(rods, blocks, elements, count), gradient.ravel())
    assert solve_factored(into, gradient).ravel() == pytest.approx(expected, rel=1e-7, abs=1e-9)


@pytest.mark.parametrize("leaf", [1, 4, 40])
def test_mended_tree_holds_new_contacts(leaf: int) -> None:
    """A tree made without any contact, mended for all of them, gives the dense solver's solution."""
    _, x, rods, load, pairs = scene(3)
    gradient, blocks, elements, count, _ = all_forces(x, rods, pairs, load, 0.0)
    blocks[0] += 0.01 * np.eye(3)
    first = build_elimination_tree(x, *vertex_adjacency(rods, np.zeros((0, 2), np.int64)), leaf)
    tree = mend_elimination_tree(first, *vertex_adjacency(rods, np.concatenate([pairs, load.ties])))
    assert sorted(tree.order) == list(range(len(x)))
    into = CholeskyFactor(tree)
    assert factorise(into, rods, blocks, elements, count) == DONE
    expected = np.linalg.solve(dense(rods, blocks, elements, count), gradient.ravel())
    assert solve_factored(into, gradient).ravel() == pytest.approx(expected, rel=1e-7, abs=1e-9)


def test_factor_says_when_it_cannot() -> None:
    """An element that the tree does not join, and a matrix that is not positive, are told apart."""
    _, x, rods, load, pairs = scene(3)
    _, blocks, elements, count, _ = all_forces(x, rods, pairs, load, 0.0)
    blocks[0] += 0.01 * np.eye(3)
    lone = CholeskyFactor(build_elimination_tree(x, *vertex_adjacency(rods, np.zeros((0, 2), np.int64)), 2))
    assert factorise(lone, rods, blocks, elements, count) == UNFIT
    blocks[0, 5] -= 1e3 * np.eye(3)
    assert factorise(lone, rods, blocks, elements, 0) == INDEFINITE


def test_replay_counts_what_linking_numbers_feel() -> None:
    """A ring pushed through another's edge is counted once, pushed clean through the hole not at all."""
    ring = np.column_stack([10 * np.cos(TURN), 10 * np.sin(TURN), 0 * TURN])
    other = np.column_stack([4 * np.cos(TURN), 0 * TURN, 4 * np.sin(TURN)]) + np.array([0.1, 0.2, 0.3])
    bands = [Band(ring, 60.0, 1.0), Band(other, 25.0, 1.0)]
    places = {"beside": other + np.array([20, 0, 0]), "hooked": other + np.array([10, 0, 0]), "inside": other}
    linked = {k: naive.linking_number(ring, v) for k, v in places.items()}
    assert linked["beside"] == linked["inside"] == 0
    assert abs(linked["hooked"]) == 1

    def count(start: str, end: str) -> int:
        return count_pass_throughs([np.vstack([ring, places[start]]), np.vstack([ring, places[end]])], bands)

    assert count("beside", "hooked") == count("hooked", "inside") == 1
    assert count("beside", "inside") == 2
    assert count("beside", "beside") == 0
    with pytest.raises(ValueError, match="shape"):
        count_pass_throughs([ring, ring], bands)
