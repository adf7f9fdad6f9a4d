"""Replaying only what a slip changes gives what replaying everything gives."""

from __future__ import annotations

import random

import pytest

from pegwright.rehearsal import Slip, find_slips, prepare_history
from pegwright.rehearsal.judge import Judge
from pegwright.rehearsal.slip_run import events_of_run, replay_slips
from testing.programs import KINDS
from testing.slow_rehearsal import loom_of, random_history, slow_run, slow_verdict


def _pairs(slips: tuple[Slip, ...], rng: random.Random) -> list[tuple[Slip, ...]]:
    some = (
        [tuple(sorted(rng.sample(slips, 2), key=lambda s: s.at)) for _ in range(12)] if len(slips) > 1 else []
    )
    return [(one, two) for one, two in some if one.at + one.replaces <= two.at]


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("seed", range(4))
def test_a_run_is_what_making_every_move_gives(seed: int, kind: str) -> None:
    history = random_history(seed, kind)
    made = prepare_history(history)
    slips = find_slips(history)
    for given in [*((slip,) for slip in slips), *_pairs(slips, random.Random(seed))]:
        run, slow = replay_slips(made, *given), slow_run(history, *given)
        assert run.refused == slow.refused
        stacks, inside = dict(history.final.stacks), dict(history.final.inside)
        stacks |= run.stacks
        inside |= run.inside
        assert {h: s for h, s in stacks.items() if s} == loom_of(slow.states[-1])[0]
        assert {b: s for b, s in inside.items() if s} == loom_of(slow.states[-1])[1]
        # A move that only drags other ribbons along may be kept as intended: the words do not read that.
        bare = [[_bare(e) for e in events] for events in (events_of_run(made, run), slow.events)]
        assert bare[0] == bare[1]


def _bare(event: object) -> object:
    if hasattr(event, "dragged"):
        return type(event).__name__, event.bight, getattr(event, "through", ()), getattr(event, "over", ())
    if hasattr(event, "caught"):
        return "Fastened", event.caught
    return event


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("seed", range(4, 7))
def test_verdicts_are_those_of_the_whole_proof(seed: int, kind: str) -> None:
    history = random_history(seed, kind)
    made = prepare_history(history)
    judge = Judge(made)
    for slip in find_slips(history):
        run = replay_slips(made, slip)
        free, unproved = slow_verdict(slow_run(history, slip).events)
        verdict = judge.judge_run(run)
        assert verdict.falls == free
        assert verdict.unproved <= unproved
