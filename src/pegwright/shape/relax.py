"""From drawn curves to the piece at rest: thin to true, tugged and pressed, then let go."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from typing import NamedTuple

import msgspec
import numpy as np

from pegwright.finding import Finding, Place, finding
from pegwright.shape.contact import thin_radii
from pegwright.shape.elastic import stretches
from pegwright.shape.friction import Grip, build_grip
from pegwright.shape.hold import Dressing, Hold, build_load
from pegwright.shape.near import Near, find_pairs
from pegwright.shape.newton import Goal, Iterate, Settled, settle
from pegwright.shape.ready import get_ready
from pegwright.shape.rods import Band, Floats, Rods, build_rods

__all__ = ["Progress", "Relaxed", "relax"]

_LEAST_MM = 0.3  # centrelines never come nearer than this, where the drawing allows
_CROSSED_MM = 1e-6


class Progress(NamedTuple):
    """What a long relaxation tells its caller after every step.

    `stage` is `getting ready` (the kernels are compiled the first time), `growing`, `dressing` or `resting`.
    """

    stage: str
    iteration: int
    residual_drop: float
    length_mm: float
    energy_n_mm: float


class Relaxed(msgspec.Struct, frozen=True):
    """A piece at rest, or as near as it came (`converged` says which, and `findings` why).

    Per band: `positions_mm` (n, 3), and for the edge that leaves each point `tension_n` (n,) and `stretch`
    (n,), zero after the end of an open band. `smallest_gap_mm` is the least distance between centrelines
    that may touch, over the whole way, `gap_mm` that at the end; it never fell below `smallest_allowed_mm`.
    `energies_n_mm` lists each stage's energies, and `iterates_mm` every accepted state (points of all bands,
    (n, 3)) where they were asked for.
    """

    positions_mm: tuple[Floats, ...]
    tension_n: tuple[Floats, ...]
    stretch: tuple[Floats, ...]
    length_mm: float
    energy_n_mm: float
    iterations: int
    residual_n: float
    residual_drop: float
    gap_mm: float
    smallest_gap_mm: float
    smallest_allowed_mm: float
    converged: bool
    findings: tuple[Finding, ...]
    energies_n_mm: tuple[tuple[float, ...], ...]
    iterates_mm: tuple[Floats, ...]


def relax(
    bands: Sequence[Band],
    hold: Hold | None = None,
    dressing: Dressing | None = None,
    *,
    goal: Goal | None = None,
    progress: Callable[[Progress], object] | None = None,
    keep_iterates: bool = False,
    reference_n: float = 0.0,
    room_mm: float = 0.0,
    threads: int = 2,
) -> Relaxed:
    """Bring `bands` to rest without letting any strand pass another.

    Thickness grows from what the drawing has room for to the true one; with a `dressing` the piece is first
    tugged and pressed, then let go. Forces are measured against `reference_n`, or, where it is 0, against
    those at the start. With `room_mm` bands never pull back: they thicken, keep the length that this takes,
    and are done when strands that may touch are so far apart. `progress` hears of every step; answering False
    stops, and the result is the piece so far.

    Raises:
        ValueError: the bands or holds make no sense (see `build_rods`, `build_load`).
    """
    hold, goal = hold or Hold(), goal or Goal()
    x, rods = build_rods(bands, hold.fixed)
    load = build_load(rods, hold, dressing)
    hear = progress or (lambda _: True)
    if hear(Progress("getting ready", 0, 1.0, 0.0, 0.0)) is False or not get_ready(
        lambda step: hear(Progress("getting ready", step + 1, 1.0, 0.0, 0.0)) is not False
    ):
        return _result(rods, _unmoved(x, "stopped"), _Log(), 0.0, 0.0, goal)
    gap, crossed = _smallest_gap(x, rods)
    if gap < _CROSSED_MM:
        return _result(rods, _unmoved(x, "crossed"), _Log(gap), gap, 0.0, goal, crossed)
    least = floor = min(_LEAST_MM, 0.5 * gap)
    full = 2 * float(np.max(rods.radius_mm))
    grown = 1.0 if gap > 0.25 * full else max(gap / full, 0.05)
    log = _Log(gap)
    log.reference = reference_n
    stages = [("resting", build_load(rods, hold, None))]
    if dressing is not None:
        stages.insert(0, ("dressing", load))
    held: Grip | None = None
    with ThreadPoolExecutor(1) as pool:
        workers = pool if threads > 1 and (os.cpu_count() or 1) > 1 else None
        for name, stage_load in stages:
            watch = log.begin(name, hear, keep_iterates)
            enough = goal if name == "resting" else _roughly(goal)
            left = enough._replace(iterations=max(goal.iterations - log.count, 0))
            settled = settle(
                x,
                rods,
                stage_load,
                floor,
                left,
                log.reference,
                watch,
                grown=grown,
                held=held,
                room_mm=room_mm,
                workers=workers,
            )
            x, grown = settled.x, 1.0
            log.count += settled.iterations
            gap = _smallest_gap(x, rods)[0]
            log.gap, log.last = min(log.gap, gap), gap
            floor = max(floor, min(_LEAST_MM, 0.5 * gap))
            if settled.reason in ("stopped", "limit"):
                break
            if dressing is not None and dressing.friction:
                held = _stuck(x, rods, floor, dressing.friction)
    return _result(rods, settled, log, log.gap, least, goal)


class _Log:
    """What happened on the way, stage by stage."""

    def __init__(self, gap: float = np.inf) -> None:
        self.gap = self.last = gap
        self.count = 0
        self.reference = 0.0
        self.energies: list[list[float]] = []
        self.iterates: list[Floats] = []
        self.length = 0.0

    def begin(self, stage: str, hear: Callable[[Progress], object], keep: bool) -> Callable[[Iterate], bool]:
        self.energies.append([])

        def watch(state: Iterate) -> bool:
            self.reference = self.reference or state.residual_n
            self.energies[-1].append(state.energy_n_mm)
            self.length = state.length_mm
            if keep:
                self.iterates.append(state.x)
            drop = state.residual_n / self.reference if self.reference else 0.0
            number = self.count + len(self.energies[-1]) - 1
            said = hear(Progress(stage, number, drop, state.length_mm, state.energy_n_mm))
            return said is not False

        return watch


def _roughly(goal: Goal) -> Goal:
    """When the dressing may end: a hand does not wait until loops without tension have crept to rest.

    What it leaves undone is done after it is let go.
    """
    return goal._replace(residual_drop=100 * goal.residual_drop, length_change=10 * goal.length_change)


def _stuck(x: Floats, rods: Rods, least_mm: float, friction: float) -> Grip:
    """The contacts at x, as friction holds them."""
    wide = 2.5 * float(np.max(rods.radius_mm))
    near = find_pairs(x, np.zeros_like(x), rods, wide, wide)
    radius = np.zeros(len(x))
    thin_radii(x, rods, 1.0, radius)
    return build_grip(x, rods, near.pairs[near.touchable], radius, least_mm, friction)


def _unmoved(x: Floats, reason: str) -> Settled:
    return Settled(x, reason, 0.0, 0.0, 0)


def _smallest_gap(x: Floats, rods: Rods) -> tuple[float, int]:
    """Least distance (mm) between edges that may touch, at most two thicknesses; and a band that has it.

    Neighbours along a band count only where they cross.
    """
    wide = 4 * float(np.max(rods.radius_mm))
    near: Near = find_pairs(x, np.zeros_like(x), rods, wide, wide)
    gaps = np.where(near.touchable | (near.gap_mm < _CROSSED_MM), near.gap_mm, np.inf)
    if not len(gaps) or not np.isfinite(gaps.min()):
        return wide, 0
    k = int(np.argmin(gaps))
    return float(gaps[k]), int(rods.band[near.pairs[k, 0]])


def _result(
    rods: Rods,
    settled: Settled,
    log: _Log,
    gap: float,
    least: float,
    goal: Goal,
    crossed: int = 0,
) -> Relaxed:
    drop = settled.residual_n / log.reference if log.reference else 0.0
    converged = settled.reason == "rest" or (settled.reason == "stalled" and drop <= goal.residual_drop)
    stretch, tension = np.zeros(len(settled.x)), np.zeros(len(settled.x))
    stretches(settled.x, rods, stretch, tension)
    findings = []
    if settled.reason == "crossed":
        findings.append(finding("bands-drawn-crossing", Place(band=crossed + 1), gap_mm=gap))
    elif settled.reason == "stopped":
        findings.append(finding("rest-interrupted", iterations=log.count))
    elif not converged:
        findings.append(finding("rest-not-reached", iterations=log.count, drop=drop))
    return Relaxed(
        positions_mm=_split(settled.x, rods),
        tension_n=_split(tension, rods),
        stretch=_split(stretch, rods),
        length_mm=log.length,
        energy_n_mm=settled.energy_n_mm,
        iterations=log.count,
        residual_n=settled.residual_n,
        residual_drop=drop,
        gap_mm=log.last,
        smallest_gap_mm=gap,
        smallest_allowed_mm=least,
        converged=converged,
        findings=tuple(findings),
        energies_n_mm=tuple(tuple(stage) for stage in log.energies),
        iterates_mm=tuple(log.iterates),
    )


def _split(values: Floats, rods: Rods) -> tuple[Floats, ...]:
    out = tuple(part.copy() for part in np.split(values, rods.start[1:-1]))
    for part in out:
        part.flags.writeable = False
    return out
