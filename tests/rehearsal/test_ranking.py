"""What a slip costs: less the sooner it is seen, against makers sent through it one by one."""

from __future__ import annotations

import random

import pytest

from pegwright.rehearsal import Outcome, Slip
from pegwright.rehearsal.ranking import NOTICED, REDO, harm_of

LOST = 20


def outcome(*shows: tuple[int, int], at: int = 3, stuck: int | None = None) -> Outcome:
    slip = Slip(at, "wrong-peg", ())
    return Outcome(slip, at + 1, "falls", tuple(range(LOST)), shows=shows, stuck=stuck)


def send_makers(one: Outcome, rng: random.Random, makers: int = 40_000) -> float:
    """Return what the slip costs on average where each maker looks at every move and may notice."""
    total = 0.0
    for _ in range(makers):
        cost = float(LOST)
        if one.stuck is not None:
            cost = min(cost, one.stuck - one.slip.at)
        for first, last in one.shows:
            seen = [at for at in range(first, last) if one.stuck is None or at < one.stuck]
            noticed = next((at for at in seen if rng.random() < NOTICED), None)
            if noticed is not None:
                cost = min(cost, REDO * (noticed - one.slip.at + 1))
                break
        total += cost
    return total / makers


@pytest.mark.parametrize(
    "one",
    [
        outcome(),
        outcome((3, 80)),
        outcome((3, 4)),
        outcome((30, 31)),
        outcome((3, 4), (9, 11)),
        outcome((60, 80)),
        outcome((5, 9), stuck=8),
    ],
)
def test_harm_is_what_makers_lose_on_average(one: Outcome) -> None:
    assert harm_of(one, 30) == pytest.approx(send_makers(one, random.Random(7)), rel=0.03)


def test_what_is_seen_at_once_costs_little_and_what_never_shows_costs_all() -> None:
    at_once, late, never = (harm_of(outcome(*shows), 30) for shows in ([(3, 80)], [(20, 80)], []))
    assert at_once == pytest.approx(1.0, abs=0.01)
    assert at_once < late < never == LOST
