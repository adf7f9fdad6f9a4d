"""Every way back ends in the intended loom, and no move of it can be spared."""

from __future__ import annotations

from itertools import combinations

import pytest

from examples.pieces import PIECES
from pegwright.loom import History, board_of, replay
from pegwright.pattern import expand
from pegwright.rehearsal import Outcome, find_slips, find_way_back, prepare_history
from pegwright.rehearsal.judge import Judge
from pegwright.rehearsal.outcome import outcome_of
from pegwright.rehearsal.slip_run import replay_slips
from pegwright.rehearsal.way_back import _intended_move, _moves_made, _WayBackSearch
from testing.slow_rehearsal import loom_of, random_history, slow_run


def outcomes(history: History, every: int = 1) -> list[Outcome]:
    made = prepare_history(history)
    judge = Judge(made)
    found = (outcome_of(made, judge, replay_slips(made, slip)) for slip in find_slips(history)[::every])
    return [outcome for outcome in found if outcome is not None and not outcome.slip.about]


@pytest.mark.parametrize("kind", ["hooks", "shallow", "lifts", "winds", "ends", "mixed", "slides"])
@pytest.mark.parametrize("seed", range(3))
def test_every_way_back_of_random_programs(seed: int, kind: str) -> None:
    history = random_history(seed, kind)
    for outcome in outcomes(history):
        way = find_way_back(history, outcome)
        check_way(history, outcome, way)


@pytest.mark.parametrize("name", ["ebb-line", "riding-lights", "buoy-line", "herring-tail"])
def test_ways_back_of_the_pieces(name: str) -> None:
    pattern = PIECES[name]()
    history = replay(board_of(pattern.loom), expand(pattern).moves)
    for outcome in outcomes(history, every=17):
        check_way(history, outcome, find_way_back(history, outcome))


def check_way(history, outcome, way) -> None:  # type: ignore[no-untyped-def]
    """Undo by taking the moves out of the slow twin's list, do by making them at the end."""
    undone = {act.at for act in way.acts if act.do == "undo"}
    again = [act for act in way.acts if act.do == "do"]
    assert [act.do for act in way.acts] == sorted((act.do for act in way.acts), reverse=True)
    assert [act.at for act in again] == sorted(act.at for act in again)
    assert {act.at for act in again} >= set(range(outcome.slip.at, outcome.slip.at + outcome.slip.replaces))
    made = prepare_history(history)
    wrong, later = _moves_made(made, outcome, replay_slips(made, outcome.slip), way.after)
    right = [
        _intended_move(history, at) for at in range(outcome.slip.at, outcome.slip.at + outcome.slip.replaces)
    ]
    back = _WayBackSearch(made, wrong, later, right, way.after)
    kept = [act for act in later if act.at not in undone]
    clear = back.play(back.before, kept)
    assert clear is not None
    end = back.play(clear[0], [*right, *(_intended_move(history, a.at) for a in again[len(right) :])])
    assert end is not None
    assert loom_of(end[0].state)[0] == loom_of(history.moves[way.after].after)[0]


@pytest.mark.parametrize("seed", range(5))
def test_no_smaller_set_of_moves_leads_back(seed: int) -> None:
    history = random_history(seed, "shallow")
    for outcome in outcomes(history, every=3):
        if outcome.slip.about:  # all that was done at the wrong pegs goes back, whether it need or not
            continue
        way = find_way_back(history, outcome, after=len(history.moves) - 1)
        made = prepare_history(history)
        wrong, later = _moves_made(made, outcome, replay_slips(made, outcome.slip), way.after)
        right = [
            _intended_move(history, at)
            for at in range(outcome.slip.at, outcome.slip.at + outcome.slip.replaces)
        ]
        back = _WayBackSearch(made, wrong, later, right, way.after)
        undone = sum(act.do == "undo" for act in way.acts) - len(wrong)
        for size in range(undone):
            for some in combinations([act.at for act in later], size):
                assert back.leads(set(some)) is None


def test_the_state_undone_is_the_one_that_stands() -> None:
    history = random_history(1, "hooks")
    for outcome in outcomes(history):
        made = prepare_history(history)
        wrong, later = _moves_made(made, outcome, replay_slips(made, outcome.slip), len(history.moves) - 1)
        right = [_intended_move(history, outcome.slip.at)]
        back = _WayBackSearch(made, wrong, later, right, len(history.moves) - 1)
        assert back.stands is not None
        assert loom_of(back.stands[0].state)[0] == loom_of(slow_run(history, outcome.slip).states[-1])[0]
