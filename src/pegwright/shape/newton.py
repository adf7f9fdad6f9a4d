"""Newton's method: every step goes downhill, and none lets strands pass through each other.

Each iteration: forces and stiffness, one sparse factorisation, the bound of `step_bound`, then halving until
the energy falls (Armijo). Three things set the pace (`_Pace`):

- As much of the Hessian's negative part is kept as leaves it positive definite: strands that slide round each
other
  are held back by tension and pushed on by contact, and without the second the steps are far too short (170
  steps against 56 on a tied strip of 88 bands).
- The damping starts high, while links hang loose, and fades as steps succeed (K. Levenberg, Quart. Appl.
  Math. 2 (1944) 164).
- Strands creep along each other long after the length stands still, and each such step leaves its error in
  the stiff contacts; so once it stands still over several free steps, growing damping holds the creep and
  lets the contacts find their balance.

The loop itself is plain Python; what it calls on arrays is compiled.
"""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from typing import NamedTuple

import numpy as np

from pegwright.shape.friction import StickingContacts
from pegwright.shape.loads import LoadArrays
from pegwright.shape.near_pairs import smallest_gap
from pegwright.shape.rod_system import RodSystem
from pegwright.shape.rods import Floats, Rods

__all__ = ["Goal", "Iterate", "SettledRods", "settle_rods"]

_STRIDE, _LONGEST = 1.5, 4.0  # how steps lengthen if the stiffness proves too high
_SHY = 3  # steps without the Hessian's negative part after none of it could be kept
_WINDOW = 5  # iterations over which the length must stand still
_CALM, _CALMER = 1e-2, 4.0  # damping (of the bands' own stiffness) that calms contacts, and its growth
_CALM_STEPS, _FREE_STEPS = 8, 12  # how long to calm, and how many free steps must come first
_FREE = 1e-4  # damping below which a step counts as free
_HOPELESS = 1e4  # damping above which no step is tried


class Goal(NamedTuple):
    """When a stage has come to rest."""

    residual_drop: float = 1e-3
    length_change: float = 1e-3
    iterations: int = 400


class Iterate(NamedTuple):
    """One accepted state, as passed to `watch`."""

    x: Floats
    energy_n_mm: float
    residual_n: float
    length_mm: float
    touching: int


class SettledRods(NamedTuple):
    """How a stage ended: `reason` is `rest`, `stalled`, `limit` or `stopped`."""

    x: Floats
    reason: str
    energy_n_mm: float
    residual_n: float
    iterations: int


def settle_rods(
    x: Floats,
    rods: Rods,
    load: LoadArrays,
    least_mm: float,
    goal: Goal,
    reference_n: float,
    watch: Callable[[Iterate], bool],
    *,
    grown: float = 1.0,
    sticking: StickingContacts | None = None,
    room_mm: float = 0.0,
    workers: ThreadPoolExecutor | None = None,
) -> SettledRods:
    """Bring the rods from `x` (n, 3) to rest under `load`.

    `reference_n` is the force that the residual is measured against (0: that of the first iterate). `grown`
    is the share of the true thickness to start with; it grows as steps allow, and the stage counts as started
    once it is full. With `room_mm` the bands only make room for each other: after every step they are at rest
    at their current length, and the stage ends when strands that may touch are `room_mm` apart. `watch` sees
    each accepted iterate and stops the stage by returning False.
    """
    system = RodSystem(x, rods, load, least_mm, grown, sticking, workers)
    pace = _Pace(system.stiffness_scale())
    lengths = _Lengths(x)
    for number in range(goal.iterations + 1):
        system.assemble(pace.true)
        residual = system.residual_n()
        pace.judge_step(system.energy_n_mm)
        reference_n = reference_n or residual
        length = lengths.measure(system.x)
        if not watch(Iterate(system.x, system.energy_n_mm, residual, length, system.touching)):
            return _result_of(system, "stopped", number)
        still = lengths.stand_still(goal.length_change)
        if system.grown == 1.0:
            balanced = residual <= goal.residual_drop * reference_n and (still or residual == 0.0)
            if smallest_gap(system.x, system.rods, system.pairs) >= room_mm if room_mm else balanced:
                return _result_of(system, "rest", number)
        if number == goal.iterations:
            return _result_of(system, "limit", number)
        creeps = still and not room_mm and residual < 100 * goal.residual_drop * reference_n
        pace.choose_damping(residual, creeps, system.grown == 1.0)
        if not _take_step(system, pace):
            return _result_of(system, "stalled", number)
        if room_mm:
            system.rest_here()
        pace.adapt_damping()
        if system.grown < 1.0 and pace.alpha > 0.1:
            system.thicken(min(1.0, 1.25 * system.grown))
    raise AssertionError(f"a stage has no iterations: {goal.iterations}")


def _result_of(system: RodSystem, reason: str, number: int) -> SettledRods:
    return SettledRods(system.x, reason, system.energy_n_mm, system.residual_n(), number)


class _Pace:
    """How bold the next step is, judged by the last ones.

    `damping` (N/mm) is added to the stiffness; `true` is the share of the Hessian's negative part that is
    kept; a step is lengthened by `stride`. `slope` (N mm) is the energy's slope along the last step, of which
    the share `alpha` was taken.
    """

    def __init__(self, scale: float) -> None:
        self.scale = scale
        self.damping, self.fade = 0.1 * scale, 0.1
        self.stride, self.slope, self.alpha, self.energy = 1.0, 0.0, 0.0, 0.0
        self.true, self.shy = 1.0, 0  # steps left without the negative part
        self.calm = self.free = 0  # steps calmed, or free, so far
        self.left_n = 0.0  # the residual before a calmed step

    def judge_step(self, energy: float) -> None:
        """Lengthen steps if the energy fell further than the stiffness predicted."""
        if self.slope < 0.0:
            # A quadratic falls by half the slope; if it fell much further, the stiffness was too high.
            bold = self.alpha == 1.0 and self.energy - energy > -0.7 * self.slope
            self.stride = min(_STRIDE * self.stride, _LONGEST) if bold else 1.0
        self.energy = energy

    def choose_damping(self, residual: float, creeps: bool, grown: bool) -> None:
        """Start, continue or end the calming of contacts; count free steps of `grown` rods."""
        if self.calm and (self.calm == _CALM_STEPS or residual > 0.7 * self.left_n):
            self.calm, self.damping = 0, _FREE * self.scale
        if self.calm or (creeps and self.free >= _FREE_STEPS):
            self.damping = max(self.damping, _CALM * self.scale * _CALMER**self.calm)
            self.calm, self.stride, self.left_n = self.calm + 1, 1.0, residual
        self.free = self.free + 1 if grown and self.damping <= _FREE * self.scale else 0

    def give_up_negative_part(self) -> None:
        """Keep half of the Hessian's negative part, or none for some steps, since it was indefinite."""
        self.true, self.shy = (0.5 * self.true, 0) if self.true > 0.05 else (0.0, _SHY)

    def accept(self, alpha: float) -> None:
        """Record the share of the step that was taken, and allow more of the Hessian's negative part."""
        self.alpha = alpha
        self.shy = max(self.shy - 1, 0)
        self.true = 0.0 if self.shy else min(1.0, 1.05 * self.true + 0.01)

    def adapt_damping(self) -> None:
        """Lower the damping after a long step; raise it, and lower it more slowly, after a short one."""
        if self.alpha > 0.45:
            self.damping = max(self.fade * self.damping, 1e-10 * self.scale)
            self.fade = max(0.1, 0.8 * self.fade)
        elif self.alpha < 0.1:
            self.damping *= 8.0
            self.fade = min(0.8, 2.0 * self.fade)


class _Lengths:
    """The extent of the piece along its longest axis at the start, iterate by iterate."""

    def __init__(self, x: Floats) -> None:
        _, axes = np.linalg.eigh(np.cov(x.T))
        self.axis = np.asarray(axes[:, -1], dtype=np.float64)
        self.lengths_mm: list[float] = []

    def measure(self, x: Floats) -> float:
        self.lengths_mm.append(float(np.ptp((x * self.axis).sum(axis=1))))
        return self.lengths_mm[-1]

    def stand_still(self, change: float) -> bool:
        """Return whether the length changed by at most a share `change` over the last few iterates."""
        known = self.lengths_mm
        return len(known) > _WINDOW and abs(known[-1] - known[-1 - _WINDOW]) <= change * known[-1]


def _take_step(system: RodSystem, pace: _Pace) -> bool:
    """Move one step downhill, damped as much as needed; False if no step goes down."""
    while pace.damping < _HOPELESS * pace.scale:
        positive = system.factorise(pace.damping)
        if not positive and pace.true > 0.0:
            pace.give_up_negative_part()
            system.assemble(pace.true)
            continue
        if positive:
            step = system.newton_step()
            step *= pace.stride
            pace.slope = float(np.sum(system.gradient * step))
            safe, pairs = system.look_ahead(step)
            alpha = system.descend(step, safe, pairs)
            if alpha > 0.0:
                pace.accept(alpha)
                system.move(system.x + alpha * step, pairs)
                return True
        pace.damping *= 100.0
    return False
