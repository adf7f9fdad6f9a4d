"""The machine against its naive twin, its inverse and its notation."""

from __future__ import annotations

import pytest
from hypothesis import given

from pegwright import loom
from pegwright.loom import Bight, Effect, RefusedMove, State
from pegwright.pattern import Rows
from pegwright.pattern.moves import StepFields
from testing.strategies import SMALL, moves, programs
from tests import naive


def worked(*lines: str, board: loom.Board = SMALL) -> State:
    state = State()
    for line in lines:
        outcome = loom.apply_move(board, state, loom.parse_move(line))
        assert isinstance(outcome, Effect), (line, outcome)
        state = outcome.state
    return state


@given(programs())
def test_the_machine_agrees_with_lists_of_lists(program):
    state, twin = State(), naive.ListLoom()
    for move in program:
        outcome = loom.apply_move(SMALL, state, move)
        assert isinstance(outcome, Effect)
        state = outcome.state
        for event in outcome.events:
            twin.do(event)
    assert {h: [tuple(b) for b in s] for h, s in state.stacks.items()} == {
        h: s for h, s in twin.stacks.items() if s
    }
    assert {tuple(b): [tuple(r) for r in rs] for b, rs in state.inside.items()} == twin.inside
    assert state.turned == twin.turned


@given(programs())
def test_every_move_can_be_taken_back(program):
    states = [State()]
    record = []
    for move in program:
        outcome = loom.apply_move(SMALL, states[-1], move)
        assert isinstance(outcome, Effect)
        states.append(outcome.state)
        record.append(outcome.events)
    state = states.pop()
    for events in reversed(record):
        for event in reversed(events):
            state = loom.revert_event(state, event)
        assert state == states.pop()


@given(programs())
def test_a_state_reads_back_from_its_line(program):
    state = State()
    for move in program:
        outcome = loom.apply_move(SMALL, state, move)
        assert isinstance(outcome, Effect)
        state = outcome.state
    assert loom.parse_state(loom.print_state(state)) == state


@given(moves)
def test_a_move_reads_back_from_its_line(move):
    bare = type(move)(
        **{f: getattr(move, f) for f in move.__struct_fields__ if f not in StepFields.__struct_fields__}
    )
    assert loom.parse_move(loom.print_move(move)) == bare


@given(moves)
def test_any_move_is_applied_or_refused_with_a_known_code(move):
    outcome = loom.apply_move(SMALL, worked("place A over A1 A2", "place B over A2 A3"), move)
    if isinstance(outcome, RefusedMove):
        from pegwright.finding import finding

        assert finding(outcome.code, move="", **outcome.facts).message


def test_a_loop_hooked_in_the_right_order_drags_nothing():
    state = worked("place A over A1 A2", "place A over A2 A3", "hook A2 loop 1 to A1")
    assert loom.print_state(state) == "near | 2 bands | A1 1a 1b | A2 2a | A3 2b | 2a<1b"


def test_a_loop_moved_while_another_passes_through_it_drags_it_along():
    """Band 2's loop at A2 has band 1's ribbon in it; hooking it takes the ribbon along."""
    state = worked(
        "place A over A1 A2", "place A over A2 A3", "place A over A2 B2", "hook A2 loop 1 to A1 through 2"
    )
    outcome = loom.apply_move(SMALL, state, loom.parse_move("hook A2 loop 1 to A3"))
    assert isinstance(outcome, Effect)
    assert outcome.events[0].dragged == (Bight(1, 1),)


def test_a_shallow_hook_skips_the_lower_loops():
    state = worked("place A over A1 A2", "place B over A2 A3", "place C over A2 B2")
    outcome = loom.apply_move(SMALL, state, loom.parse_move("hook A2 loop 1 to A1 through 1"))
    assert isinstance(outcome, Effect)
    assert outcome.events[0].through == (Bight(3, 0),)
    assert outcome.events[0].skipped == (Bight(2, 0),)


def test_loops_moved_together_equal_loops_moved_one_by_one_from_the_top():
    start = worked("place A over A1 A2", "place B over A1 A2", "place C over A2 A3")
    both = loom.apply_move(SMALL, start, loom.parse_move("hook A2 loop 1 to A1 together 2"))
    one = loom.apply_move(SMALL, start, loom.parse_move("hook A2 loop 2 to A1"))
    assert isinstance(both, Effect)
    assert isinstance(one, Effect)
    two = loom.apply_move(SMALL, one.state, loom.parse_move("hook A2 loop 1 to A1"))
    assert isinstance(two, Effect)
    assert both.state == two.state


def test_a_half_twist_turns_the_second_loop_over():
    outcome = loom.apply_move(SMALL, State(), loom.parse_move("place A over A1 ~ A2 A3"))
    assert isinstance(outcome, Effect)
    assert [seat.sign for seat in outcome.events[0].seats] == [1, -1, -1]


def test_hung_bands_slide_on_to_the_loop():
    state = worked("place A over A1 A2", "place A over A2 A3", "hang B 2 turns", "slide A2 loop 1 to A1")
    assert "hook" not in state.stacks
    assert state.inside[Bight(3, 0)] == (Bight(1, 1),)
    assert state.inside[Bight(2, 0)] == (Bight(1, 1),)


def test_the_last_band_and_the_extension_make_a_free_end():
    state = worked("place A over A1 A2", "bind B through A1 as end", "extend end by 2 C", "clip end A2")
    assert loom.print_state(state) == "near | 4 bands | 1a<2b | 2a<3b | 2b<3b | 3a<4b | 3b<4b | clip 4b 4a 1b"


@pytest.mark.parametrize(
    ("setup", "line", "code"),
    [
        ((), "place A over A1 A9", "peg-unknown"),
        ((), "place A over A1 A1", "peg-twice"),
        ((), "place A over A1 A3", "peg-enclosed"),
        ((), "hook A1 loop 1 to A2", "peg-bare"),
        (("place A over A1 A2",), "hook A1 loop 2 to A2", "loop-missing"),
        (("place A over A1 A2",), "hook A1 loop 0 to A2", "loop-missing"),
        (("place A over A1 A2",), "hook A1 loop 1 to A1", "same-peg"),
        (("place A over A1 A2",), "hook A1 loop 1 to A2 through 1", "not-so-many-above"),
        (("place A over A1 A2",), "lift A1 loop 1", "nothing-to-lift-over"),
        (("place A over A1 A2",) * 2, "lift A1 loop 1 to A1", "same-peg"),
        (("place A over A1 A2",) * 2, "lift A1 loop 1 to F9", "peg-unknown"),
        (("place A over A1 A2",), "slide A1 loop 1 to A2", "hook-empty"),
        (("place A over A1 A2",), "extend end by 1 A", "end-unknown"),
        (("place A over A1 A2", "bind A through A1 as end"), "bind A through A2 as end", "end-taken"),
        (("place A over A1 A2",), "clip start A1", "end-unknown"),
        (("place A over A1 A2",), "clip A1 A1", "peg-twice"),
    ],
)
def test_what_cannot_be_done_is_refused_with_the_reason(setup, line, code):
    outcome = loom.apply_move(SMALL, worked(*setup), loom.parse_move(line))
    assert isinstance(outcome, RefusedMove)
    assert outcome.code == code


def test_a_band_over_a_ring_of_pegs_may_not_name_the_peg_in_the_middle():
    board = loom.board_of(Rows(rows=3, pegs=3))
    ring = "A1 A2 A3 B3 C3 C2 C1 B1"
    for line, code in (
        (f"place A over {ring} B2", "peg-inside-band"),
        (f"place A over {ring}", "peg-enclosed"),
    ):
        outcome = loom.apply_move(board, State(), loom.parse_move(line))
        assert isinstance(outcome, RefusedMove)
        assert outcome.code == code


def test_the_first_band_of_a_fish_tail_can_be_caught_once_it_is_off_its_peg():
    state = worked(
        "place A over A1 ~ A2", "place A over A1 A2", "lift A1 loop 1", "lift A2 loop 1", "clip start A1 A2"
    )
    assert state.fasteners[0].caught == (Bight(1, 0), Bight(2, 0), Bight(2, 1))


def test_a_new_band_goes_through_some_of_the_loops_and_on_to_a_peg():
    """The two loops caught come off; the one left stays on the peg, outside the new band."""
    laid = ("place A over A1 A2", "place A over A1 A2", "place A over A1 A2")
    state = worked(*laid, "bind A through A1 catch 2 as arm")
    assert state.stack("A1") == (Bight(1, 0),)
    assert state.stack("arm.0") == (Bight(4, 0), Bight(4, 1))
    assert dict(state.inside) == {Bight(2, 0): (Bight(4, 1),), Bight(3, 0): (Bight(4, 1),)}
    on = worked(*laid, "bind A through A1 catch 2 as arm", "put arm on B1")
    assert on.stack("B1") == (Bight(4, 1), Bight(4, 0)), "nested"
    assert "arm.0" not in on.stacks
    apart = worked(*laid, "bind A through A1 catch 2 as arm", "put arm on B1 B2")
    assert (apart.stack("B1"), apart.stack("B2")) == ((Bight(4, 0),), (Bight(4, 1),))
    again = worked(*laid, "bind A through A1 as arm", "put arm on B1", "bind A through B1 as arm")
    assert again.stack("arm.0") == (Bight(5, 0), Bight(5, 1)), "its name is free again"


def test_two_at_once_go_through_as_one():
    """A hung band goes on to both loops; two bands of a chain lie nested, the next go through all four."""
    laid = ("place A over A1 A2", "place A over A1 A2")
    slid = worked(*laid, "hang B 1 turns", "slide A2 loop 1 to B2 together 2")
    assert slid.inside[Bight(3, 0)] == (Bight(2, 1), Bight(1, 1)), "the upper loop first"
    assert (slid.stack("B2"), slid.stack("hook")) == ((Bight(2, 1), Bight(1, 1)), ())
    ends = ("bind B through A1 together 2 as end", "extend end by 3 B together 2")
    chain = worked(*laid, *ends)
    assert chain.stack("end.2") == (Bight(7, 0), Bight(7, 1)), "the last link takes the one band that is left"
    assert {loop: chain.inside[loop] for loop in (Bight(4, 0), Bight(3, 0), Bight(3, 1), Bight(4, 1))} == {
        Bight(band, end): (Bight(5, 1), Bight(6, 1)) for band in (3, 4) for end in (0, 1)
    }
    assert "A1" not in chain.stacks
