"""Newton's method to rest: downhill at every step, and no step lets strands pass.

Each iterate: forces and stiffness, one sparse factorisation, the bound of `near`, then halving until the
energy falls (Armijo). As much of the Hessian's negative part is kept as leaves it positive: strands that
slide round each other are held back by tension and pushed on by contact, and without the second the steps
are far too short (170 steps against 56 on a tied strip of 88 bands). The damping starts high, while links
hang loose, and fades as steps succeed (Levenberg). Strands creep along each other long after the length
stands still, and each such step leaves its error in the stiff contacts; so once it stands still over several
free steps, growing damping holds the creep and lets the contacts find their balance. The loop itself is plain
Python; what it calls on arrays is compiled.
"""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from typing import NamedTuple

import numpy as np

from pegwright.shape.contact import contact, contact_energy
from pegwright.shape.dissect import dissect, mend, neighbours
from pegwright.shape.elastic import elastic, energy_only
from pegwright.shape.friction import Grip, grip, grip_energy, no_grip
from pegwright.shape.hold import Load, outside, outside_energy
from pegwright.shape.multifrontal import DONE, UNFIT, Factor, factor, solve
from pegwright.shape.near import (
    Near,
    close_pairs,
    far_bound,
    find_pairs,
    least_gap,
    live_pairs,
    near_bound,
)
from pegwright.shape.rods import Floats, Ints, Rods, at_rest_as_drawn

__all__ = ["Goal", "Iterate", "Settled", "settle"]

_MARGIN_MM = 0.03  # pairs this near to touch have a place in the tree, so that few steps need it mended
_STRIDE, _LONGEST = 1.5, 4.0  # how steps lengthen where the stiffness proves too high
_LEAF = 8
_OVERGROWN = 1.2  # a mended tree is cut anew where its work has grown by this
_FARTHEST_MM = 6.0  # the widest look-ahead beyond touch
_SHY = 3  # steps for which the Hessian's negative part stays away once none of it could be kept
_WINDOW = 5  # iterations over which the length must stand still
_CALM, _CALMER = 1e-2, 4.0  # damping (of the bands' own stiffness) that calms contacts, and its growth
_CALM_STEPS, _FREE_STEPS = 8, 12  # how long to calm, and how many free steps must come before
_FREE = 1e-4  # damping below which a step counts as free


class Goal(NamedTuple):
    """When a stage has come to rest."""

    residual_drop: float = 1e-3
    length_change: float = 1e-3
    iterations: int = 400


class Iterate(NamedTuple):
    """One accepted state, as told to the watcher."""

    x: Floats
    energy_n_mm: float
    residual_n: float
    length_mm: float
    touching: int


class Settled(NamedTuple):
    """How a stage ended: `reason` is `rest`, `stalled`, `limit` or `stopped`."""

    x: Floats
    reason: str
    energy_n_mm: float
    residual_n: float
    iterations: int


class _Work:
    """Arrays kept from iterate to iterate so that nothing large is allocated twice."""

    def __init__(self, n: int, held: Grip) -> None:
        self.held = held
        self.pruned = 0.0  # multiplications with the last tree that was cut, not mended
        self.gradient = np.zeros((n, 3))
        self.blocks = np.zeros((3, n, 3, 3))
        self.radius = np.zeros(n)
        self.step = np.zeros((n, 3))
        self.grow(0)

    def grow(self, pairs: int) -> None:
        self.corners = np.zeros((pairs, 4), np.int64)
        self.stiffness = np.zeros((pairs, 4, 4, 3, 3))


def settle(
    x: Floats,
    rods: Rods,
    load: Load,
    least_mm: float,
    goal: Goal,
    reference_n: float,
    watch: Callable[[Iterate], bool],
    *,
    grown: float = 1.0,
    held: Grip | None = None,
    room_mm: float = 0.0,
    workers: ThreadPoolExecutor | None = None,
) -> Settled:
    """Bring the rods from `x` (n, 3) to rest under `load`.

    `reference_n` is the force that the residual is measured against (0: that of the first iterate). `grown`
    is the share of the true thickness to start with; it grows as steps allow, and only then does the stage
    count as begun. `held` are contacts that stick. With `room_mm` the bands only make room for each other:
    after every step they are at rest at the length they have, and the stage ends when strands that may touch
    are so far apart. `watch` sees each accepted iterate and stops the stage by returning False.
    """
    work = _Work(len(x), held or no_grip())
    scale = float(np.mean(rods.area_mm2[rods.rest_mm > 0] * 0.4 / rods.rest_mm[rods.rest_mm > 0]))
    damping, fade = 0.1 * scale, 0.1
    stride, slope, alpha, before = 1.0, 0.0, 0.0, 0.0
    true, shy = 1.0, 0  # how much of the Hessian's negative part is kept, and for how long none
    kept: Factor | None = None
    calm = free = 0  # steps calmed, or free, so far
    touch = _touch(x, rods, grown)
    pairs = live_pairs(find_pairs(x, work.step, rods, touch, touch), 0.0, touch)
    lengths: list[float] = []
    left_n = 0.0  # the residual before a calmed step
    energy, residual, number = np.inf, np.inf, 0
    axis = _long_axis(x)
    for number in range(goal.iterations + 1):
        energy, count = _assemble(x, rods, load, pairs, grown, least_mm, true, work)
        residual = float(np.sqrt((work.gradient**2).sum()))
        if slope < 0.0:
            # A quadratic would have fallen by half the slope; much more: the stiffness was too high.
            bold = alpha == 1.0 and before - energy > -0.7 * slope
            stride = min(_STRIDE * stride, _LONGEST) if bold else 1.0
        before = energy
        reference_n = reference_n or residual
        lengths.append(float(np.ptp((x * axis).sum(axis=1))))
        if not watch(Iterate(x, energy, residual, lengths[-1], count)):
            return Settled(x, "stopped", energy, residual, number)
        still = len(lengths) > _WINDOW and (
            abs(lengths[-1] - lengths[-1 - _WINDOW]) <= goal.length_change * lengths[-1]
        )
        balanced = residual <= goal.residual_drop * reference_n and (still or residual == 0.0)
        if grown == 1.0 and (least_gap(x, rods, pairs) >= room_mm if room_mm else balanced):
            return Settled(x, "rest", energy, residual, number)
        if number == goal.iterations:
            break
        if calm and (calm == _CALM_STEPS or residual > 0.7 * left_n):
            calm, damping = 0, _FREE * scale
        within = residual < 100 * goal.residual_drop * reference_n
        if calm or (still and not room_mm and free >= _FREE_STEPS and within):
            damping = max(damping, _CALM * scale * _CALMER**calm)
            calm, stride, left_n = calm + 1, 1.0, residual
        free = free + 1 if grown == 1.0 and damping <= _FREE * scale else 0
        accepted = False
        while damping < 1e4 * scale:
            kept, positive = _factorise(x, rods, load, pairs, count, damping, work, kept, workers)
            if not positive and true > 0.0:
                true, shy = (0.5 * true, 0) if true > 0.05 else (0.0, _SHY)
                _assemble(x, rods, load, pairs, grown, least_mm, true, work)
                continue
            if positive:
                work.step = solve(kept, -work.gradient)
                work.step[rods.fixed] = 0.0
                work.step *= stride
                slope = float(np.sum(work.gradient * work.step))
                near, alpha, touch = _look_ahead(x, rods, work.step, grown, least_mm, workers)
                tried = live_pairs(near, alpha, touch)
                alpha = _descend(x, rods, load, tried, grown, least_mm, energy, alpha, work)
                if alpha > 0.0:
                    accepted = True
                    break
            damping *= 100.0
        if not accepted:
            return Settled(x, "stalled", energy, residual, number)
        shy = max(shy - 1, 0)
        true = 0.0 if shy else min(1.0, 1.05 * true + 0.01)
        x = x + alpha * work.step
        pairs = tried
        if room_mm:
            rods = at_rest_as_drawn(x, rods)
        if alpha > 0.45:
            damping = max(fade * damping, 1e-10 * scale)
            fade = max(0.1, 0.8 * fade)
        elif alpha < 0.1:  # too bold: be slower to fade next time
            damping *= 8.0
            fade = min(0.8, 2.0 * fade)
        if grown < 1.0 and alpha > 0.1:
            grown = min(1.0, 1.25 * grown)
            touch = _touch(x, rods, grown)
            pairs = live_pairs(find_pairs(x, 0.0 * work.step, rods, touch, touch), 0.0, touch)
    return Settled(x, "limit", energy, residual, number)


def _touch(x: Floats, rods: Rods, grown: float) -> float:
    """A distance (mm) beyond which no two strands touch, with room for the thickening of one step."""
    edge = rods.rest_mm > 0
    length = np.linalg.norm(x[rods.next[edge]] - x[edge], axis=1)
    return 2.2 * grown * float(np.max(rods.radius_mm[edge] * np.sqrt(rods.rest_mm[edge] / length)))


def _long_axis(x: Floats) -> Floats:
    """Unit vector along which the piece is longest."""
    _, axes = np.linalg.eigh(np.cov(x.T))
    return np.asarray(axes[:, -1], dtype=np.float64)


def _assemble(
    x: Floats, rods: Rods, load: Load, pairs: Ints, grown: float, least_mm: float, true: float, work: _Work
) -> tuple[float, int]:
    """Energy (N mm), gradient and stiffness at x into `work`; returns the energy and the number of
    elements."""
    elements = len(pairs) + len(load.ties) + len(work.held.pairs)
    if elements > len(work.corners):
        work.grow(2 * elements)
    work.gradient[:] = 0.0
    work.blocks[:] = 0.0
    energy = elastic(x, rods, true, work.gradient, work.blocks) + outside_energy(x, rods, load)
    ties = outside(x, rods, load, work.gradient, work.blocks[0], work.corners, work.stiffness)
    if len(work.held.pairs):  # else its kernels need not be compiled
        energy += grip(x, rods.next, work.held, work.gradient, work.corners, work.stiffness, ties)
    first = ties + len(work.held.pairs)
    pressed, count = contact(
        x, rods, pairs, grown, least_mm, true, work.radius, work.gradient, work.corners, work.stiffness, first
    )
    work.gradient[rods.fixed] = 0.0
    return energy + pressed, first + count


def _factorise(
    x: Floats,
    rods: Rods,
    load: Load,
    pairs: Ints,
    count: int,
    damping: float,
    work: _Work,
    kept: Factor | None,
    workers: ThreadPoolExecutor | None,
) -> tuple[Factor, bool]:
    """Factor the damped stiffness; the tree is kept while it still holds every contact, else made anew."""
    blocks = work.blocks.copy()
    blocks[0][:, range(3), range(3)] += damping
    blocks[0][rods.fixed] = np.eye(3)
    elements = (work.corners, work.stiffness, count)
    if kept is not None:
        code = factor(kept, rods, blocks, *elements, workers)
        if code != UNFIT:
            return kept, code == DONE
    joined = close_pairs(x, rods, pairs, work.radius, _MARGIN_MM)
    links = neighbours(rods, np.concatenate([joined, load.ties, work.held.pairs]))
    tree = None if kept is None else mend(kept.tree, *links)
    if tree is None or tree.work > _OVERGROWN * work.pruned:
        tree = dissect(x, *links, _LEAF)
        work.pruned = tree.work
    kept = Factor(tree, kept)
    return kept, factor(kept, rods, blocks, *elements, workers) == DONE


def _look_ahead(
    x: Floats,
    rods: Rods,
    step: Floats,
    grown: float,
    least_mm: float,
    workers: ThreadPoolExecutor | None,
) -> tuple[Near, float, float]:
    """Pairs that the step could bring into touch, the largest safe α ≤ 1, and the touching distance (mm)."""
    touch = _touch(x, rods, grown)
    reach, alpha = far_bound(x, step, rods, touch, touch + _FARTHEST_MM)
    near = find_pairs(x, step, rods, reach, touch, workers)
    return near, min(alpha, near_bound(x, step, rods, near, least_mm)), touch


def _descend(
    x: Floats,
    rods: Rods,
    load: Load,
    pairs: Ints,
    grown: float,
    least_mm: float,
    energy: float,
    alpha: float,
    work: _Work,
) -> float:
    """Halve α until the energy has fallen enough; 0 where it will not."""
    slope = float(np.sum(work.gradient * work.step))
    # A fall below the rounding of W(λ), itself a difference of numbers near 3C, cannot be seen.
    noise = 4e-16 * float(np.sum(rods.area_mm2 * rods.rest_mm * rods.plane_mpa))
    for _ in range(30):
        y = x + alpha * work.step
        reached = energy_only(y, rods) + outside_energy(y, rods, load)
        if len(work.held.pairs):
            reached += grip_energy(y, rods.next, work.held)
        if np.isfinite(reached):
            reached += contact_energy(y, rods, pairs, grown, least_mm, work.radius)
        if reached <= energy + 1e-4 * alpha * slope + noise:
            return alpha
        alpha *= 0.5
    return 0.0
