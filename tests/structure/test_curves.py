"""Strand curves: closed, apart, and threaded as the record says."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from examples.pieces import PIECES
from pegwright import loom
from pegwright.loom import Bight, Drawn, Laid, Seat
from pegwright.pattern import expand
from pegwright.structure.curves import Curves, curves
from pegwright.structure.threading import shown, told
from tests.oracle.verdict import linked_bands
from tests.programs import KINDS, program
from tests.structure.distance import smallest


def strands(drawn: Curves) -> list[np.ndarray]:
    return [*drawn.bands.values(), *drawn.fasteners.values()]


def history(name: str) -> tuple[loom.Board, loom.History]:
    piece = PIECES[name]()
    board = loom.board(piece.loom)
    return board, loom.replay(board, expand(piece).doings)


@given(seed=st.integers(0, 10**9), kind=st.sampled_from(KINDS))
def test_no_two_strands_meet(seed: int, kind: str) -> None:
    made = program(seed, kind)
    drawn = curves(made.events, made.spots, 1.5)
    assert drawn.clear_mm > 0.02
    lines = strands(drawn)
    assume(lines)  # of a program whose every move is refused nothing is drawn
    assert smallest(lines) >= drawn.clear_mm


@given(seed=st.integers(0, 10**9), kind=st.sampled_from(KINDS))
def test_threading_is_that_of_the_record(seed: int, kind: str) -> None:
    made = program(seed, kind)
    drawn = curves(made.events, made.spots, 1.5)
    record, picture = told(made.events), shown(drawn)
    assert picture.keys() <= record.keys()
    assert {p: record[p] for p in picture} == picture
    assert not linked_bands(drawn)


@pytest.mark.parametrize("name", PIECES)
def test_pieces_are_drawn_apart_and_threaded_right(name: str) -> None:
    board, done = history(name)
    drawn = curves(done.events, lambda peg: (board.pegs[peg].x_mm, board.pegs[peg].y_mm), 1.5)
    assert len(drawn.bands) == done.final.bands
    assert smallest(strands(drawn)) >= drawn.clear_mm > 0.02
    record, picture = told(done.events), shown(drawn)
    assert {p: record[p] for p in picture} == picture
    assert not linked_bands(drawn)


@pytest.mark.parametrize("name", PIECES)
def test_every_loop_lies_somewhere_now_and_its_spans_are_on_its_band(name: str) -> None:
    board, done = history(name)
    drawn = curves(done.events, lambda peg: (board.pegs[peg].x_mm, board.pegs[peg].y_mm), 1.5)
    loops = {seat.bight for e in done.events if isinstance(e, Laid) for seat in e.seats}
    lying = [w.bight for w in drawn.wraps if w.now or w.lifted]
    assert sorted(lying) == sorted(loops)
    for wrap in drawn.wraps:
        curve = drawn.bands[wrap.bight.band]
        heights = np.concatenate([curve[i:j, 2] for i, j in wrap.spans])
        assert len(heights)
        assert np.allclose(heights, heights[0])


def test_a_misdrawn_passage_is_noticed() -> None:
    """The reader of threadings can fail: take the passing band away from the loop and it says so."""
    seats = [[Seat(Bight(b, 0), "A1", 1), Seat(Bight(b, 1), "A2", 1)] for b in (1, 2)]
    events = [Laid(b, tuple(s), (0,)) for b, s in enumerate(seats, start=1)]
    record = [*events, Drawn(Bight(1, 1), "A2", "A1", (Bight(2, 1),))]
    drawn = curves(record, {"A1": (0.0, 0.0), "A2": (0.0, 16.0)}, 1.5)
    assert {p: told(record)[p] for p in shown(drawn)} == shown(drawn)
    passed = next(p for p, counts in shown(drawn).items() if counts)
    assert (passed.bight, shown(drawn)[passed]) == (Bight(2, 1), {("band", 1): 2})
    moved = {1: drawn.bands[1] + [500.0, 0.0, 0.0], 2: drawn.bands[2]}
    wrong = Curves(moved, drawn.fasteners, drawn.rings, drawn.wraps, drawn.half_turns, drawn.clear_mm)
    assert not shown(wrong)[passed]


def test_a_peg_without_a_place_is_an_error() -> None:
    seats = (Seat(Bight(1, 0), "A1", 1), Seat(Bight(1, 1), "A2", 1))
    with pytest.raises(KeyError):
        curves([Laid(1, seats, (0,))], {"A1": (0.0, 0.0)}, 1.5)
    with pytest.raises(ValueError, match="one place"):
        curves([Laid(1, seats, (0,))], {"A1": (0.0, 0.0), "A2": (0.0, 0.0)}, 1.5)


def test_a_loop_carried_on_forwards_has_a_half_turn_of_its_own() -> None:
    seats = (Seat(Bight(1, 0), "A1", 1), Seat(Bight(1, 1), "A2", 1))
    pegs = {f"A{k}": (0.0, 16.0 * k) for k in (1, 2, 3)}
    back = curves([Laid(1, seats, (0,)), Drawn(Bight(1, 1), "A2", "A1", ())], pegs, 1.5)
    forth = curves([Laid(1, seats, (0,)), Drawn(Bight(1, 1), "A2", "A3", ())], pegs, 1.5)
    assert not back.half_turns
    assert forth.half_turns == {1: 1}
