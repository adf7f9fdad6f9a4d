"""Times are built from published motions, scaled by the teacher's watch, and fall over the rounds."""

from __future__ import annotations

import pytest

from pegwright.finding import RefusedError
from pegwright.lesson import Pace, motif_moves, pace_from_timing
from pegwright.lesson.scene import times
from pegwright.lesson.scene.times import rounds_s, trained_s
from pegwright.loom import History
from pegwright.pattern import Hook, PatternBuilder, Place, Rows
from tests.lesson.pieces import dinghy, ebb, lesson, smack, work


def test_motions_are_those_of_the_card() -> None:
    """MTM-1 data card 2019: grasp of a jumbled small thing, turns, eye focus; 1 TMU = 0.036 s."""
    assert times.TMU_S == 3600 / 100_000
    assert (times.G1A, times.G4B, times.T30S, times.T180S, times.EF) == (2.0, 9.1, 2.8, 9.4, 7.3)


def _first(history: History, kind: type) -> float:
    return trained_s(next(d for d in history.moves if isinstance(d.move, kind)), history.board)


def test_a_band_placed_and_a_loop_hooked_take_what_they_add_up_to_by_hand() -> None:
    """Added up by hand from the card: over two pegs 16 mm apart, and hooked over to the next peg.

    16 mm is 0.63 in, so both moves from peg to peg take the shortest row, 2.0. The totals agree with a rough
    build of 103 and 64 TMU made beforehand (ours, no source).
    """
    history = work(ebb())
    place = 7.3 + 12.9 + 9.1 + 13.5 + 5.6 + 16.2 + (2.0 + 21.8) + 10.6 + 2.0
    hook = 5.2 + 16.2 + 7.3 + 2.8 + 2.9 + 4.0 + 2.0 + 16.2 + 4.0 + 2.0
    assert _first(history, Place) == pytest.approx(0.036 * place)
    assert _first(history, Hook) == pytest.approx(0.036 * hook)
    assert place == pytest.approx(103, rel=0.05)
    assert hook == pytest.approx(64, rel=0.05)


def test_a_longer_reach_and_more_to_do_take_longer() -> None:
    """Wider pegs, one more peg, one more turn: more time each."""

    def seconds(*moves: str, pitch: float = 16.0) -> list[float]:
        m = PatternBuilder("Tide", Rows(rows=1, pegs=4, pitch_mm=pitch)).colour("A", "slate", "#445566")
        m.place("A", "A1", "A2")
        m.wind("A", "A1", 2)
        m.wind("A", "A1", 3)
        history = work(m.pattern())
        return [trained_s(d, history.board) for d in history.moves]

    near, two, three = seconds()
    assert seconds(pitch=50.8)[0] - near == pytest.approx(0.036 * (5.2 - 2.0))
    assert three - two == pytest.approx(0.036 * (9.4 + 3.4 + 21.8))


@pytest.mark.parametrize(
    ("rate", "last", "mean"), [(0.80, 0.3548, 0.4923), (0.85, 0.4701, 0.5920), (0.90, 0.6131, 0.7085)]
)
def test_the_learning_curve_is_crawfords(rate: float, last: float, mean: float) -> None:
    """n-th unit n^(log2 r): the 25th, and the mean of the first 25, at three rates (computed beforehand)."""
    pace = Pace(learner=1000.0, rate=rate)
    assert pace.share(25) / 1000 == pytest.approx(last, abs=5e-5)
    assert rounds_s([1.0] * 25, pace) / 25_000 == pytest.approx(mean, abs=5e-5)


def test_nobody_gets_faster_than_the_teacher() -> None:
    """The curve ends on a plateau."""
    pace = Pace(teacher=2.0, learner=3.0)
    assert pace.share(1) == 3.0
    assert pace.share(100_000) == 1.0
    assert rounds_s([5.0], pace, start=100_000) == 10.0


def test_the_teachers_own_timing_of_a_motif_scales_all_steps() -> None:
    """A motif made in twice the trained time doubles every step on the pegs."""
    history = work(dinghy())
    first, last = motif_moves(history, "sail")
    assert (first, last) == (1, len(history.moves))
    floor = sum(trained_s(d, history.board) for d in history.moves)
    pace = pace_from_timing(history, first, last, 2 * floor)
    assert pace.teacher == pytest.approx(2.0)
    slow, plain = lesson(dinghy(), pace=pace), lesson(dinghy(), pace=Pace())
    for a, b in zip(slow.steps, plain.steps, strict=True):
        if a.first:
            assert a.learner_s == pytest.approx(2 * b.learner_s)
            assert a.teacher_s == pytest.approx(2 * b.teacher_s)


def test_a_motif_worked_again_and_again_is_found_once() -> None:
    """Only its first time counts, be it repeated or used twice."""
    m = PatternBuilder("Wave", Rows(rows=1, pegs=9)).colour("A", "slate", "#445566")
    with m.motif("crest"):
        with m.repeat(2, pegs=1):
            m.place("A", "A1", "A2")
        m.wind("A", "A3")
    with m.repeat(2, pegs=3):
        m.use("crest")
    m.use("crest")
    history = work(m.pattern())
    assert motif_moves(history, "crest") == (1, 3)
    with pytest.raises(RefusedError, match="never worked"):
        motif_moves(history, "trough")


@pytest.mark.parametrize("seconds", [0.0, -1.0, float("inf"), float("nan")])
def test_a_time_that_cannot_be_is_refused(seconds: float) -> None:
    """No time, less than none, for ever, and no number."""
    with pytest.raises(RefusedError, match="timing is impossible"):
        pace_from_timing(work(ebb()), 1, 2, seconds)


def test_the_steps_times_add_up_to_the_whole() -> None:
    """The teacher's seconds of the steps on the pegs are those of all moves; a learner needs more."""
    for pattern in (ebb(), dinghy(), smack()):
        history = work(pattern)
        made = lesson(pattern)
        steps = [step for step in made.steps if step.first]
        floor = sum(trained_s(d, history.board) for d in history.moves)
        assert sum(step.teacher_s for step in steps) == pytest.approx(floor)
        assert all(step.learner_s >= step.teacher_s > 0 for step in steps)


def test_the_work_can_be_put_down_where_no_loop_is_in_the_hand() -> None:
    """After placing and hooking yes; with the last band's ends on the hook no."""
    rest = {step.number: step.can_pause for step in lesson(ebb()).steps}
    assert [number for number, may in rest.items() if not may] == [8, 10]


def test_a_beginner_is_slower_with_the_hook_than_in_placing_a_band() -> None:
    """Common practice, no source: a trained hand hooks faster than it places, a beginner more slowly."""
    made = lesson(ebb())
    history = work(ebb())

    def learner_s(kind: type) -> float:
        first = next(i for i, done in enumerate(history.moves, start=1) if isinstance(done.move, kind))
        return next(step.learner_s for step in made.steps if step.first == first)

    assert _first(history, Hook) < _first(history, Place)
    assert learner_s(Hook) > learner_s(Place)
    assert Pace().share(100_000, hooked=True) == 1.0
