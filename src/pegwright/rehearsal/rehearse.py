"""Rehearse a piece: every slip at every step, what comes of it, and what a teacher should know of it."""

from __future__ import annotations

import gc
import multiprocessing
import random
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager
from itertools import accumulate
from typing import NamedTuple

from pegwright.loom import History
from pegwright.pattern import Pattern
from pegwright.rehearsal.checks import Checks, choose_checks
from pegwright.rehearsal.consequence import Outcome, outcome_of
from pegwright.rehearsal.course import course
from pegwright.rehearsal.likelihood import DEFAULT, Weights, chances
from pegwright.rehearsal.ranking import Comparison, Risk, Spot, heat, rank
from pegwright.rehearsal.run import rehearse_slips
from pegwright.rehearsal.slips import Slip, find_slips
from pegwright.rehearsal.verdicts import Judge

__all__ = ["Pairs", "Progress", "Rehearsal", "compare", "rehearse", "rehearse_pairs"]

Progress = Callable[[str, int, int], None]
_CHUNK = 64


class Rehearsal(NamedTuple):
    """All single slips of a piece.

    `outcomes` are those that make a difference, in the order of the steps; `tried` counts all. `spots` are
    the steps by harm × likelihood, worst first; `heat[i]` is what slips at move i (index) cost one maker on
    average, in bands; `checks` is where to stop and look. `judged` counts the different structures judged.
    """

    title: str
    history: History
    tried: int
    outcomes: tuple[Outcome, ...]
    chances: dict[Slip, float]
    spots: tuple[Spot, ...]
    heat: tuple[float, ...]
    checks: Checks
    judged: int

    @property
    def risks(self) -> tuple[Risk, ...]:
        """Every outcome that costs anything, with its chance and its harm."""
        return tuple(risk for spot in self.spots for risk in spot.risks)

    @property
    def failures(self) -> float:
        """How many slips that bring bands down one maker makes on average."""
        return sum(risk.chance for risk in self.risks if risk.outcome.result == "falls")


class Pairs(NamedTuple):
    """A sample of pairs of slips: how many came to each result, and the pairs that do more than either alone.

    `worse` holds (first slip, second slip, outcome) where bands fall that fall with neither slip alone.
    """

    sampled: int
    results: dict[str, int]
    worse: tuple[tuple[Slip, Slip, Outcome], ...]


def _silent(_what: str, _done: int, _total: int) -> None:
    """Tell nobody."""


def rehearse(
    pattern: Pattern,
    history: History,
    *,
    weights: Weights = DEFAULT,
    progress: Progress = _silent,
    checks: int = 3,
    processes: int = 1,
) -> Rehearsal:
    """Rehearse every single slip of a history.

    `progress` is told what is being done, how many slips are done, and of how many. With more than one
    process the slips are shared out; the result is the same.
    """
    with _collector_at_rest():
        slips = find_slips(history)
        likely = chances(weights, slips)
        outcomes: list[Outcome | None] = []
        judged = 0
        chunks = [slips[i : i + _CHUNK] for i in range(0, len(slips), _CHUNK)]
        progress("rehearsing slips", 0, len(slips))
        for done, number in _outcomes(history, chunks, processes):
            outcomes += done
            judged += number
            progress("rehearsing slips", len(outcomes), len(slips))
    told = tuple(outcome for outcome in outcomes if outcome is not None)
    spots = rank(told, likely, history.final.bands)
    steps = len(history.done)
    risks = [risk for spot in spots for risk in spot.risks]
    return Rehearsal(
        pattern.title,
        history,
        len(slips),
        told,
        likely,
        spots,
        heat(spots, steps),
        choose_checks(risks, steps, checks),
        judged,
    )


def rehearse_pairs(rehearsal: Rehearsal, *, count: int, seed: int = 0, progress: Progress = _silent) -> Pairs:
    """Rehearse a sample of pairs of slips, drawn by their chances; a seed gives the same sample always."""
    rng = random.Random(seed)
    slips = [slip for slip in rehearsal.chances if not slip.about]
    bounds = list(accumulate(rehearsal.chances[slip] for slip in slips))
    alone = {outcome.slip: set(outcome.falls) for outcome in rehearsal.outcomes}
    made = course(rehearsal.history)
    judge = Judge(made)
    results: dict[str, int] = {}
    worse = []
    sampled = 0
    for number in range(count if len({slip.at for slip in slips}) > 1 else 0):
        one, two = sorted(rng.choices(slips, cum_weights=bounds, k=2), key=lambda slip: slip.at)
        progress("rehearsing pairs of slips", number + 1, count)
        if one.at + one.replaces > two.at:
            continue
        sampled += 1
        outcome = outcome_of(made, judge, rehearse_slips(made, one, two))
        result = outcome.result if outcome else "as intended"
        results[result] = results.get(result, 0) + 1
        if outcome and set(outcome.falls) - alone.get(one, set()) - alone.get(two, set()):
            worse.append((one, two, outcome))
    return Pairs(sampled, results, tuple(worse))


def compare(first: Rehearsal, second: Rehearsal) -> Comparison:
    """Compare two working orders of one piece by what goes wrong on average."""
    return Comparison(
        (first.failures, second.failures),
        (sum(first.heat), sum(second.heat)),
    )


def _outcomes(
    history: History, chunks: Sequence[tuple[Slip, ...]], processes: int
) -> Iterator[tuple[list[Outcome | None], int]]:
    if processes < 2 or len(chunks) < 2:
        _prepare(history)
        yield from map(_work, chunks)
        return
    fork = multiprocessing.get_context("fork" if "fork" in multiprocessing.get_all_start_methods() else None)
    with ProcessPoolExecutor(processes, fork, initializer=_prepare, initargs=(history,)) as pool:
        yield from pool.map(_work, chunks)


_bench: list[Judge] = []


def _prepare(history: History) -> None:
    """Set up this process's judge."""
    _bench[:] = [Judge(course(history))]


def _work(slips: tuple[Slip, ...]) -> tuple[list[Outcome | None], int]:
    judge = _bench[0]
    before = len(judge.known)
    with _collector_at_rest():
        found = [outcome_of(judge.course, judge, rehearse_slips(judge.course, slip)) for slip in slips]
    return found, len(judge.known) - before


@contextmanager
def _collector_at_rest() -> Iterator[None]:
    """Pause the cycle collector: what is made here has no cycles, and there is much of it."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
