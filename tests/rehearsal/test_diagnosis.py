"""Guided diagnosis: what a maker answers by looking leads to the slip."""

from __future__ import annotations

import pytest

from pegwright.rehearsal import Diagnostician, Question, answer_as_maker, answer_from_appearance
from testing.slow_rehearsal import slow_run
from tests.rehearsal.pieces import outcome, rehearsed


def test_the_answers_are_those_of_the_loom() -> None:
    """Every answer is read off the slow twin's stacks, peg by peg."""
    told = rehearsed("jetty")
    after = 8
    opened = Diagnostician(told).diagnose(after)
    assert opened.cases
    for case in opened.cases:
        slow = slow_run(told.history, case.outcome.slip).states[after]
        for peg in told.history.board.pegs:
            stack = slow.stack(peg)
            assert answer_from_appearance(case.appearance, opened.intended, Question("loops", peg)) == len(
                stack
            )
            if stack:
                inside = " ".join(str(len(slow.inside.get(loop, ()))) for loop in stack)
                assert (
                    answer_from_appearance(case.appearance, opened.intended, Question("strands", peg))
                    == inside
                )


@pytest.mark.parametrize("name", ["jetty", "caps"])
def test_what_is_answered_never_rules_out_the_truth(name: str) -> None:
    told = rehearsed(name)
    diagnostician = Diagnostician(told)
    for after in range(len(told.history.moves)):
        for case in diagnostician.diagnose(after).cases:
            ended = answer_as_maker(diagnostician.diagnose(after), case)
            assert case in ended.cases
            assert len(ended.asked) <= 5
            assert sum(candidate.likelihood for candidate in ended.likely) == pytest.approx(1)


def test_every_question_tells_something() -> None:
    opened = Diagnostician(rehearsed("jetty")).diagnose(8)
    question = opened.question()
    assert question is not None
    answers = {answer_from_appearance(case.appearance, opened.intended, question) for case in opened.cases}
    assert len(answers) > 1
    split = [len(opened.answer(question, answer).cases) for answer in answers]
    assert sum(split) == len(opened.cases)
    assert max(split) < len(opened.cases)


def test_a_shallow_hook_is_found_by_looking_into_one_loop() -> None:
    told = rehearsed("jetty")
    slip = outcome(told, "too-shallow", 8)
    opened = Diagnostician(told).diagnose(7, fine_after=6)
    case = next(case for case in opened.cases if case.outcome == slip)
    ended = answer_as_maker(opened, case)
    assert ended.likely[0].outcome == slip


def test_a_maker_who_is_stuck_is_asked_about_what_made_her_so() -> None:
    told = rehearsed("jetty")
    opened = Diagnostician(told).diagnose(11, stuck=True)
    assert {case.outcome.stuck for case in opened.cases} == {11}
    assert outcome(told, "step-skipped", 11) in {case.outcome for case in opened.cases}
