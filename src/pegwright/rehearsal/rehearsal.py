"""Rehearse a piece: every slip at every step, what comes of it, and what a teacher should know of it."""

from __future__ import annotations

import multiprocessing
import os
import random
from collections.abc import Callable, Iterator, Set
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager, nullcontext, suppress
from itertools import accumulate
from typing import Any, NamedTuple

import msgspec

from pegwright.loom import History, pause_collector
from pegwright.pattern import Pattern
from pegwright.rehearsal.inspection import InspectionPoints, choose_inspection_points
from pegwright.rehearsal.judge import Judge
from pegwright.rehearsal.likelihood import DEFAULT_WEIGHTS, SlipWeights, slip_chances
from pegwright.rehearsal.outcome import Outcome, outcome_of, with_loose_band
from pegwright.rehearsal.prepared_history import prepare_history
from pegwright.rehearsal.ranking import (
    Comparison,
    FailureMode,
    Risk,
    RiskyStep,
    Trouble,
    group_into_troubles,
    heat_by_step,
    rank_steps,
)
from pegwright.rehearsal.slip_run import replay_slips
from pegwright.rehearsal.slips import Slip, find_slips
from pegwright.rehearsal.worker_process import follow_parent, hold_interrupts

__all__ = [
    "PartialRehearsal",
    "Progress",
    "Rehearsal",
    "ShareWork",
    "SlipOutcomes",
    "SlipPairs",
    "assemble_rehearsal",
    "compare_orders",
    "rehearse",
    "rehearse_pairs",
    "worker_pool",
]

Progress = Callable[[str, int, int], None]
ShareWork = Callable[..., Iterator[Any]]
"""A `map` that may work in several processes at once."""
_CHUNK, _FEW = 64, 4
_AT_ONCE = 6
SHOWN, WAYS = 8, 2
"""So many troubles, and so many ways of each to go wrong, are shown: these are proved in full."""


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
    risky_steps: tuple[RiskyStep, ...]
    heat: tuple[float, ...]
    checks: InspectionPoints
    judged: int
    open: int
    proved: frozenset[Slip] = frozenset()

    @property
    def troubles(self) -> tuple[Trouble, ...]:
        """What to warn of: steps that go wrong in the same way together, the costliest first."""
        return group_into_troubles(self.risky_steps, self.history.moves)

    @property
    def risks(self) -> tuple[Risk, ...]:
        """Every outcome that costs anything, with its chance and its harm."""
        return tuple(risk for spot in self.risky_steps for risk in spot.risks)

    @property
    def failures(self) -> float:
        """How many slips that bring bands down one maker makes on average."""
        return sum(risk.chance for risk in self.risks if risk.outcome.result == "falls")


class SlipPairs(NamedTuple):
    """A sample of pairs of slips: how many came to each result, and the pairs that do more than either alone.

    `worse` holds (first slip, second slip, outcome) where bands fall that fall with neither slip alone.
    """

    sampled: int
    results: dict[str, int]
    worse: tuple[tuple[Slip, Slip, Outcome], ...]


class SlipOutcomes(msgspec.Struct, frozen=True, kw_only=True):
    """What the slips came to: the costly part of a rehearsal, from which `draw_up` makes the rest."""

    tried: int
    judged: int
    open: int
    outcomes: tuple[Outcome, ...]
    proved: tuple[Slip, ...]


class PartialRehearsal(msgspec.Struct, kw_only=True):
    """What is finished of a rehearsal: filled as it goes on, so that one broken off can be taken up again.

    By the number of a chunk of slips what these came to and how many structures were judged, by that of a
    handful of open outcomes what their proofs gave, and the outcomes proved because they are shown.
    """

    worked: dict[int, tuple[list[Outcome | None], int]] = {}
    settled: dict[int, list[Outcome]] = {}
    proved: list[tuple[Slip, Outcome | None]] = []


def assemble_rehearsal(
    title: str, history: History, found: SlipOutcomes, likely: dict[Slip, float], checks: int
) -> Rehearsal:
    """Rank what was found by the chances given, and choose so many checks."""
    spots = rank_steps(found.outcomes, likely, history.final.bands)
    steps = len(history.moves)
    risks = [risk for spot in spots for risk in spot.risks]
    return Rehearsal(
        title,
        history,
        found.tried,
        found.outcomes,
        likely,
        spots,
        heat_by_step(spots, steps),
        choose_inspection_points(risks, steps, checks),
        found.judged,
        found.open,
        frozenset(found.proved),
    )


def _no_progress(_what: str, _done: int, _total: int) -> None:
    """Tell nobody."""


def rehearse(
    pattern: Pattern,
    history: History,
    *,
    weights: SlipWeights = DEFAULT_WEIGHTS,
    progress: Progress = _no_progress,
    checks: int = 3,
    settle: int = 200,
    processes: int = 1,
    share: ShareWork | None = None,
    begun: PartialRehearsal | None = None,
) -> Rehearsal:
    """Rehearse every single slip of a history.

    Of the slips after which some band is not proved by quick means, the `settle` that matter most are proved
    in full; `open` counts the others.
    `progress` is told what is being done, how many slips are done, and of how many. With more than one
    process the slips are shared out, or `share` does that (see `worker_pool`); the result is the same. What
    is in `begun` is not done again; it is filled as the work goes on. An interrupt ends the other processes
    as soon as each has done what it is at.
    """
    begun = begun or PartialRehearsal()
    with pause_collector():
        slips = find_slips(history)
        likely = slip_chances(weights, slips)
        chunks = [slips[i : i + _CHUNK] for i in range(0, len(slips), _CHUNK)]
        fresh = [number for number in range(len(chunks)) if number not in begun.worked]
        progress("rehearsing slips", len(slips) - sum(len(chunks[number]) for number in fresh), len(slips))
        with nullcontext(share) if share else worker_pool(history, processes) as work:
            for number, done in zip(
                fresh, work(_rehearse_chunk, [chunks[number] for number in fresh]), strict=True
            ):
                begun.worked[number] = done
                tried = sum(len(outcomes) for outcomes, _ in begun.worked.values())
                progress("rehearsing slips", tried, len(slips))
            worked = [begun.worked[number] for number in range(len(chunks))]
            by_slip: dict[Slip, Outcome | None] = {
                slip: outcome
                for some, (outcomes, _) in zip(chunks, worked, strict=True)
                for slip, outcome in zip(some, outcomes, strict=True)
            }
            waiting = [o for o in by_slip.values() if o is not None and o.result == "not-proved"]
            waiting.sort(key=lambda o: -likely[o.slip] * len(o.unproved))
            few = [waiting[i : i + _FEW] for i in range(0, min(settle, len(waiting)), _FEW)]
            fresh = [number for number in range(len(few)) if number not in begun.settled]
            opened = [tuple(o.slip for o in few[number]) for number in fresh]
            for number, settled in zip(fresh, work(_decide_open, opened), strict=True):
                begun.settled[number] = settled
                progress("proving what is open", len(begun.settled), len(few))
            by_slip |= {o.slip: o for number in range(len(few)) for o in begun.settled[number]}
            proved = _prove_top(history, by_slip, likely, work, progress=progress, begun=begun)
    found = SlipOutcomes(
        tried=len(slips),
        judged=sum(number for _, number in worked),
        open=max(0, len(waiting) - settle),
        outcomes=tuple(o for o in by_slip.values() if o is not None),
        proved=tuple(sorted(proved, key=str)),
    )
    return assemble_rehearsal(pattern.title, history, found, likely, checks)


def _prove_top(
    history: History,
    by_slip: dict[Slip, Outcome | None],
    likely: dict[Slip, float],
    work: Callable[..., Iterator[Any]],
    *,
    progress: Progress,
    begun: PartialRehearsal,
) -> set[Slip]:
    """Prove the worst outcomes of the top troubles, and again where the proof has moved the ranking.

    Those left open by quick means are looked at closer first: most of them turn out to be harmless.
    """
    known = dict(begun.proved)
    proved: set[Slip] = set()
    closer: set[Slip] = set()
    while True:
        outcomes = [outcome for outcome in by_slip.values() if outcome is not None]
        top = group_into_troubles(rank_steps(outcomes, likely, history.final.bands), history.moves)[:SHOWN]
        ways = [way for trouble in top for way in trouble.failure_modes[:WAYS]]
        opened = dict.fromkeys(slip for way in ways for slip in _open_slips(way, closer))
        if opened:
            by_slip |= {o.slip: o for some in work(_decide_open, [(slip,) for slip in opened]) for o in some}
            closer.update(opened)
            continue
        waiting = [slip for slip in dict.fromkeys(way.worst.slip for way in ways) if slip not in proved]
        if not waiting:
            return proved
        fresh = [slip for slip in waiting if slip not in known]
        for number, (slip, outcome) in enumerate(work(_prove_slip, fresh)):
            known[slip] = outcome
            begun.proved.append((slip, outcome))
            progress("proving the top troubles", number + 1, len(fresh))
        for slip in waiting:
            by_slip[slip] = known[slip]
        proved.update(waiting)
        closer.update(waiting)  # nothing is closer than a proof


def _open_slips(way: FailureMode, closer: Set[Slip]) -> list[Slip]:
    """Return the slips of a way to look at closer, if its worst is one: the worst of them, some at once."""
    if way.worst.result != "not-proved" or way.worst.slip in closer:
        return []
    some = (risk.outcome for risk in way.risks)
    return [o.slip for o in some if o.result == "not-proved" and o.slip not in closer][:_AT_ONCE]


def rehearse_pairs(
    rehearsal: Rehearsal, *, count: int, seed: int = 0, progress: Progress = _no_progress
) -> SlipPairs:
    """Rehearse a sample of pairs of slips, drawn by their chances; a seed gives the same sample always."""
    rng = random.Random(seed)
    slips = [slip for slip in rehearsal.chances if not slip.about]
    bounds = list(accumulate(rehearsal.chances[slip] for slip in slips))
    alone = {outcome.slip: set(outcome.falls) for outcome in rehearsal.outcomes}
    made = prepare_history(rehearsal.history)
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
        outcome = outcome_of(made, judge, replay_slips(made, one, two))
        result = outcome.result if outcome else "as intended"
        results[result] = results.get(result, 0) + 1
        if outcome and set(outcome.falls) - alone.get(one, set()) - alone.get(two, set()):
            worse.append((one, two, outcome))
    return SlipPairs(sampled, results, tuple(worse))


def compare_orders(first: Rehearsal, second: Rehearsal) -> Comparison:
    """Compare two working orders of one piece by what goes wrong on average."""
    return Comparison(
        (first.failures, second.failures),
        (sum(first.heat), sum(second.heat)),
    )


@contextmanager
def worker_pool(history: History, processes: int, *, nice: int = 0) -> Iterator[ShareWork]:
    """Give a `map` that works in this process, or shares the work out.

    The others are forked at once, so that threads may be started afterwards. `nice` is by how much they let
    others go first.
    """
    if processes < 2:
        _set_up_judge(history)
        yield map
        return
    fork = multiprocessing.get_context("fork" if "fork" in multiprocessing.get_all_start_methods() else None)
    pool = ProcessPoolExecutor(processes, fork, initializer=_set_up_worker, initargs=(history, nice))
    try:
        with hold_interrupts():
            pool.submit(_do_nothing)  # with this all of them are forked
        yield pool.map
    finally:
        pool.shutdown(cancel_futures=True)  # what waits is dropped, what is being done is waited for


_judges: list[Judge] = []


def _set_up_judge(history: History) -> None:
    """Set up this process's judge."""
    _judges[:] = [Judge(prepare_history(history))]


def _do_nothing() -> None:
    """Do nothing, in another process."""


def _set_up_worker(history: History, nice: int) -> None:
    """Set up another process: whether to stop is for the first one to say, which is interrupted too."""
    follow_parent()
    with suppress(OSError, AttributeError):  # not on every system
        os.nice(nice)
    _set_up_judge(history)


def _rehearse_chunk(slips: tuple[Slip, ...]) -> tuple[list[Outcome | None], int]:
    judge = _judges[0]
    before = len(judge.known)
    with pause_collector():
        found = [outcome_of(judge.prepared, judge, replay_slips(judge.prepared, slip)) for slip in slips]
    return found, len(judge.known) - before


def _decide_open(slips: tuple[Slip, ...]) -> list[Outcome]:
    judge = _judges[0]
    found = (
        outcome_of(judge.prepared, judge, replay_slips(judge.prepared, slip), None, True) for slip in slips
    )
    return [outcome for outcome in found if outcome is not None]


def _prove_slip(slip: Slip) -> tuple[Slip, Outcome | None]:
    judge = _judges[0]
    run = replay_slips(judge.prepared, slip)
    outcome = outcome_of(judge.prepared, judge, run, judge.prove_run(run))
    return slip, outcome and with_loose_band(judge.prepared, run, outcome)
