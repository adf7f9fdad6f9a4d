"""From drawn curves to the piece at rest: thickened, tugged and pressed, then let go."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from typing import NamedTuple

import msgspec
import numpy as np

from pegwright.finding import Finding, Location, finding
from pegwright.shape.contact import fill_thinned_radii
from pegwright.shape.elastic import fill_stretches
from pegwright.shape.friction import StickingContacts, find_sticking_contacts
from pegwright.shape.kernel_compilation import compile_kernels
from pegwright.shape.loads import Dressing, Supports, gather_loads
from pegwright.shape.near_pairs import NearPairs, find_near_pairs
from pegwright.shape.newton import Goal, Iterate, SettledRods, settle_rods
from pegwright.shape.rods import Band, Floats, Rods, build_rods

__all__ = ["RelaxationProgress", "RelaxedBands", "relax_bands"]

_LEAST_MM = 0.3  # centrelines never come nearer than this, if the drawing allows
_FLOORS = (0.5, 0.25, 0.1)  # shares of the smallest gap that bands keep, tried in turn where a stage stalls
_CROSSED_MM = 1e-6


class RelaxationProgress(NamedTuple):
    """What a relaxation reports after every step.

    `stage` is `getting ready` (the kernels are compiled the first time), `growing`, `dressing` or `resting`.
    """

    stage: str
    iteration: int
    residual_drop: float
    length_mm: float
    energy_n_mm: float


class RelaxedBands(msgspec.Struct, frozen=True):
    """A piece at rest, or as near as it came (`converged` tells which, `findings` why).

    Per band: `positions_mm` (n, 3), and for the edge that leaves each point `tension_n` (n,) and `stretch`
    (n,), zero after the end of an open band. `smallest_gap_mm` is the least distance between centrelines
    that may touch, over the whole way, `gap_mm` that at the end; it never fell below `smallest_allowed_mm`.
    `energies_n_mm` lists each stage's energies, and `iterates_mm` every accepted state (points of all bands,
    (n, 3)) if asked for.
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


def relax_bands(
    bands: Sequence[Band],
    hold: Supports | None = None,
    dressing: Dressing | None = None,
    *,
    goal: Goal | None = None,
    progress: Callable[[RelaxationProgress], object] | None = None,
    keep_iterates: bool = False,
    stop_when: Callable[[tuple[Floats, ...]], bool] | None = None,
    reference_n: float = 0.0,
    room_mm: float = 0.0,
    threads: int = 2,
) -> RelaxedBands:
    """Bring `bands` to rest without letting any strand pass another.

    Thickness grows from what the drawing has room for to the true one; with a `dressing` the piece is first
    tugged and pressed, then let go. Forces are measured against `reference_n` or, if it is 0, against those
    at the start. With `room_mm` bands never contract: they thicken, keep the length that this takes, and are
    done when strands that may touch are `room_mm` apart. `progress` is called after every step and stops the
    relaxation by returning False, as `stop_when` does, called with the curves of every step, by returning
    True; the result is then the piece so far.

    A stage can stall where thin strands are pressed down to the distance that they keep: it is then begun
    anew with less of it. Whatever it is, no strand passes another.

    Raises:
        ValueError: the bands or supports are invalid (see `build_rods`, `gather_loads`).
    """
    goal = goal or Goal()
    for floor_share in _FLOORS:
        relaxed = _relax_once(
            bands,
            hold or Supports(),
            dressing,
            goal=goal,
            progress=progress,
            keep_iterates=keep_iterates,
            stop_when=stop_when,
            reference_n=reference_n,
            room_mm=room_mm,
            threads=threads,
            floor_share=floor_share,
        )
        if not any(found.code == "rest-not-reached" for found in relaxed.findings):
            break
        if relaxed.iterations >= goal.iterations:
            break
    return relaxed


def _relax_once(
    bands: Sequence[Band],
    hold: Supports,
    dressing: Dressing | None,
    *,
    goal: Goal,
    progress: Callable[[RelaxationProgress], object] | None,
    keep_iterates: bool,
    stop_when: Callable[[tuple[Floats, ...]], bool] | None,
    reference_n: float,
    room_mm: float,
    threads: int,
    floor_share: float,
) -> RelaxedBands:
    """Bring bands to rest as `relax_bands` does, keeping a share of the smallest gap between strands."""
    x, rods = build_rods(bands, hold.fixed)
    load = gather_loads(rods, hold, dressing)
    hear = progress or (lambda _: True)
    if hear(RelaxationProgress("getting ready", 0, 1.0, 0.0, 0.0)) is False or not compile_kernels(
        lambda step: hear(RelaxationProgress("getting ready", step + 1, 1.0, 0.0, 0.0)) is not False
    ):
        return _result(rods, _unmoved_rods(x, "stopped"), _StageLog(), 0.0, 0.0, goal)
    gap, crossed = _smallest_gap(x, rods)
    if gap < _CROSSED_MM:
        return _result(rods, _unmoved_rods(x, "crossed"), _StageLog(gap), gap, 0.0, goal, crossed)
    least = floor = min(_LEAST_MM, floor_share * gap)
    full = 2 * float(np.max(rods.radius_mm))
    grown = 1.0 if gap > 0.25 * full else max(gap / full, 0.05)
    log = _StageLog(gap)
    log.reference = reference_n
    stages = [("resting", gather_loads(rods, hold, None))]
    if dressing is not None:
        stages.insert(0, ("dressing", load))
    sticking: StickingContacts | None = None
    with ThreadPoolExecutor(1) as pool:
        workers = pool if threads > 1 and (os.cpu_count() or 1) > 1 else None
        for name, stage_load in stages:
            watch = log.begin(name, hear, keep_iterates, stop_when and _ask_of_curves(stop_when, rods))
            enough = goal if name == "resting" else _rough_goal(goal)
            left = enough._replace(iterations=max(goal.iterations - log.count, 0))
            settled = settle_rods(
                x,
                rods,
                stage_load,
                floor,
                left,
                log.reference,
                watch,
                grown=grown,
                sticking=sticking,
                room_mm=room_mm,
                workers=workers,
            )
            x, grown = settled.x, 1.0
            log.count += settled.iterations
            gap = _smallest_gap(x, rods)[0]
            log.gap, log.last = min(log.gap, gap), gap
            floor = max(floor, min(_LEAST_MM, floor_share * gap))
            if settled.reason in ("stopped", "limit"):
                break
            if dressing is not None and dressing.friction:
                sticking = _sticking_contacts(x, rods, floor, dressing.friction)
    return _result(rods, settled, log, log.gap, least, goal)


class _StageLog:
    """What happened, stage by stage."""

    def __init__(self, gap: float = np.inf) -> None:
        self.gap = self.last = gap
        self.count = 0
        self.reference = 0.0
        self.energies: list[list[float]] = []
        self.iterates: list[Floats] = []
        self.length = 0.0

    def begin(
        self,
        stage: str,
        hear: Callable[[RelaxationProgress], object],
        keep: bool,
        stop: Callable[[Floats], bool] | None,
    ) -> Callable[[Iterate], bool]:
        self.energies.append([])

        def watch(state: Iterate) -> bool:
            self.reference = self.reference or state.residual_n
            self.energies[-1].append(state.energy_n_mm)
            self.length = state.length_mm
            if keep:
                self.iterates.append(state.x)
            drop = state.residual_n / self.reference if self.reference else 0.0
            number = self.count + len(self.energies[-1]) - 1
            said = hear(RelaxationProgress(stage, number, drop, state.length_mm, state.energy_n_mm))
            return said is not False and not (stop is not None and stop(state.x))

        return watch


def _ask_of_curves(stop_when: Callable[[tuple[Floats, ...]], bool], rods: Rods) -> Callable[[Floats], bool]:
    return lambda x: stop_when(tuple(np.split(x, rods.start[1:-1])))


def _rough_goal(goal: Goal) -> Goal:
    """Return the goal of the dressing: a hand does not wait until slack loops have crept to rest.

    The rest happens after the piece is let go.
    """
    return goal._replace(residual_drop=100 * goal.residual_drop, length_change=10 * goal.length_change)


def _sticking_contacts(x: Floats, rods: Rods, least_mm: float, friction: float) -> StickingContacts:
    """Return the contacts at x that friction holds."""
    wide = 2.5 * float(np.max(rods.radius_mm))
    near = find_near_pairs(x, np.zeros_like(x), rods, wide, wide)
    radius = np.zeros(len(x))
    fill_thinned_radii(x, rods, 1.0, radius)
    return find_sticking_contacts(x, rods, near.pairs[near.touchable], radius, least_mm, friction)


def _unmoved_rods(x: Floats, reason: str) -> SettledRods:
    return SettledRods(x, reason, 0.0, 0.0, 0)


def _smallest_gap(x: Floats, rods: Rods) -> tuple[float, int]:
    """Return the least distance (mm) between edges that may touch, at most two thicknesses, and its band.

    Neighbours along a band count only where they cross.
    """
    wide = 4 * float(np.max(rods.radius_mm))
    near: NearPairs = find_near_pairs(x, np.zeros_like(x), rods, wide, wide)
    gaps = np.where(near.touchable | (near.gap_mm < _CROSSED_MM), near.gap_mm, np.inf)
    if not len(gaps) or not np.isfinite(gaps.min()):
        return wide, 0
    k = int(np.argmin(gaps))
    return float(gaps[k]), int(rods.band[near.pairs[k, 0]])


def _result(
    rods: Rods,
    settled: SettledRods,
    log: _StageLog,
    gap: float,
    least: float,
    goal: Goal,
    crossed: int = 0,
) -> RelaxedBands:
    drop = settled.residual_n / log.reference if log.reference else 0.0
    converged = settled.reason == "rest" or (settled.reason == "stalled" and drop <= goal.residual_drop)
    stretch, tension = np.zeros(len(settled.x)), np.zeros(len(settled.x))
    fill_stretches(settled.x, rods, stretch, tension)
    findings = []
    if settled.reason == "crossed":
        findings.append(finding("bands-drawn-crossing", Location(band=crossed + 1), gap_mm=gap))
    elif settled.reason == "stopped":
        findings.append(finding("rest-interrupted", iterations=log.count))
    elif not converged:
        findings.append(finding("rest-not-reached", iterations=log.count, drop=drop))
    return RelaxedBands(
        positions_mm=_split_by_band(settled.x, rods),
        tension_n=_split_by_band(tension, rods),
        stretch=_split_by_band(stretch, rods),
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


def _split_by_band(values: Floats, rods: Rods) -> tuple[Floats, ...]:
    out = tuple(part.copy() for part in np.split(values, rods.start[1:-1]))
    for part in out:
        part.flags.writeable = False
    return out
