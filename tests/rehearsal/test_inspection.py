"""Where to look: the greedy choice against every choice there is."""

from __future__ import annotations

import random
from itertools import combinations

import pytest

from pegwright.rehearsal import Outcome, Risk, Slip, choose_inspection_points
from pegwright.rehearsal.inspection import REDO
from tests.rehearsal.pieces import rehearsed


def _risks(rng: random.Random, steps: int) -> list[Risk]:
    found = []
    for _ in range(rng.randint(1, 9)):
        at = rng.randrange(steps)
        shows = []
        start = at
        while start < steps and rng.random() < 0.8:
            first = rng.randrange(start, steps)
            last = rng.randint(first + 1, steps)
            shows.append((first, last))
            start = last + 1
        stuck = rng.choice([None, None, rng.randint(at, steps)])
        given = Outcome(Slip(at, "step-skipped", ()), at + 1, "falls", (1,), shows=tuple(shows), stuck=stuck)
        found.append(Risk(given, rng.random(), rng.uniform(0, 12)))
    return found


def _saved(risks: list[Risk], after: tuple[int, ...]) -> float:
    """Each slip is mended at the check where that costs least."""
    total = 0.0
    for chance, harm, one in ((r.chance, r.harm, r.outcome) for r in risks):
        end = one.stuck if one.stuck is not None else 10_000
        costs = [
            REDO * (c - one.slip.at + 1)
            for c in after
            if c < end and any(first <= c < last for first, last in one.shows)
        ]
        total += chance * max(0.0, harm - min(costs, default=harm))
    return total


@pytest.mark.parametrize("seed", range(40))
def test_as_near_to_the_best_as_it_says(seed: int) -> None:
    rng = random.Random(seed)
    steps, count = 9, rng.randint(1, 4)
    risks = _risks(rng, steps)
    checks = choose_inspection_points(risks, steps, count)
    best = max(_saved(risks, some) for some in combinations(range(steps), count))
    assert checks.saved == pytest.approx(_saved(risks, checks.after))
    assert checks.saved >= (1 - 1 / 2.718281828) * best - 1e-9
    assert checks.saved >= checks.at_least * best - 1e-9
    assert checks.at_least <= 1 + 1e-9


def test_a_check_of_the_pieces_saves_less_than_is_lost() -> None:
    told = rehearsed("riding-lights")
    checks = choose_inspection_points(told.risks, len(told.history.moves), 5)
    assert 0 < checks.saved < checks.lost
    assert len(checks.after) == 5
    assert checks.saved >= told.checks.saved
    assert checks.lost == pytest.approx(sum(told.heat))


def test_nothing_to_catch() -> None:
    assert choose_inspection_points([], 5).after == ()
