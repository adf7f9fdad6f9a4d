"""Strand curves: closed, apart, and threaded as the record says."""

from __future__ import annotations

import tracemalloc

import numpy as np
import pytest
from hypothesis import example, given, strategies as st

from examples.pieces import PIECES
from pegwright import loom
from pegwright.finding import RefusedError
from pegwright.loom import Bight, Drawn, Laid, Seat
from pegwright.pattern import expand
from pegwright.structure import Curves, strand_curves
from pegwright.structure.passages import passages_from_curves, passages_from_events
from testing.oracle.verdict import linked_bands
from testing.programs import KINDS, program
from tests.structure.distance import smallest

LAYS_NOTHING = (113, "hooks")
"""A program whose every move is refused: nothing is laid, so nothing is drawn."""


def strands(drawn: Curves) -> list[np.ndarray]:
    return [*drawn.bands.values(), *drawn.fasteners.values()]


def history(name: str) -> tuple[loom.Board, loom.History]:
    piece = PIECES[name]()
    board = loom.board_of(piece.loom)
    return board, loom.replay(board, expand(piece).moves)


@given(seed=st.integers(0, 10**9), kind=st.sampled_from(KINDS))
@example(seed=LAYS_NOTHING[0], kind=LAYS_NOTHING[1])
@example(seed=97, kind="mixed")  # a fastener at the start catches a band wound on one peg
@example(seed=841, kind="twists")  # a half-twist on a lane as steep as a ladder
@example(seed=3843, kind="mixed")  # the last of three turns comes round almost to where it left its column
@example(seed=3862, kind="mixed")  # the last of three turns leaves just past its own seam
def test_no_two_strands_meet(seed: int, kind: str) -> None:
    made = program(seed, kind)
    drawn = strand_curves(made.events, made.spots, 1.5)
    assert drawn.clear_mm > 0.02
    assert smallest(strands(drawn)) >= drawn.clear_mm


@given(seed=st.integers(0, 10**9), kind=st.sampled_from(KINDS))
@example(seed=LAYS_NOTHING[0], kind=LAYS_NOTHING[1])
def test_threading_is_that_of_the_record(seed: int, kind: str) -> None:
    made = program(seed, kind)
    drawn = strand_curves(made.events, made.spots, 1.5)
    record, picture = passages_from_events(made.events), passages_from_curves(drawn)
    assert picture.keys() <= record.keys()
    assert {p: record[p] for p in picture} == picture
    assert not linked_bands(drawn)


@pytest.mark.parametrize("name", PIECES)
def test_pieces_are_drawn_apart_and_threaded_right(name: str) -> None:
    board, done = history(name)
    drawn = strand_curves(done.events, lambda peg: (board.pegs[peg].x_mm, board.pegs[peg].y_mm), 1.5)
    assert len(drawn.bands) == done.final.bands
    assert smallest(strands(drawn)) >= drawn.clear_mm > 0.02
    record, picture = passages_from_events(done.events), passages_from_curves(drawn)
    assert {p: record[p] for p in picture} == picture
    assert not linked_bands(drawn)


@pytest.mark.parametrize("name", PIECES)
def test_every_loop_lies_somewhere_now_and_its_spans_are_on_its_band(name: str) -> None:
    board, done = history(name)
    drawn = strand_curves(done.events, lambda peg: (board.pegs[peg].x_mm, board.pegs[peg].y_mm), 1.5)
    loops = {seat.bight for e in done.events if isinstance(e, Laid) for seat in e.seats}
    lying = [w.bight for w in drawn.wraps if w.now or w.lifted]
    assert sorted(lying) == sorted(loops)
    for wrap in drawn.wraps:
        curve = drawn.bands[wrap.bight.band]
        heights = np.concatenate([curve[i:j, 2] for i, j in wrap.spans])
        assert len(heights)
        assert np.allclose(heights, heights[0])


def test_nothing_laid_is_nothing_drawn() -> None:
    made = program(*LAYS_NOTHING)
    drawn = strand_curves(made.events, made.spots, 1.5)
    assert not made.events
    assert strands(drawn) == []
    assert drawn.wraps == ()
    assert passages_from_events(made.events) == passages_from_curves(drawn) == {}


def test_a_long_lane_takes_no_more_memory_than_a_short_one() -> None:
    """A loop carried a hundred metres on a loom with pegs 16 mm apart: the squares are coarser, no more."""

    def peak(far_mm: float) -> int:
        pegs = {"A1": (0.0, 0.0), "A2": (0.0, 16.0), "A3": (far_mm, 0.0)}
        over = {1: "A2", 2: "A3"}
        events = [
            Laid(b, (Seat(Bight(b, 0), "A1", 1), Seat(Bight(b, 1), to, 1)), (0,)) for b, to in over.items()
        ]
        tracemalloc.start()
        strand_curves([*events, Drawn(Bight(1, 1), "A2", "A3", ())], pegs, 1.5)
        memory = tracemalloc.get_traced_memory()[1]
        tracemalloc.stop()
        return memory

    peak(32.0)  # what is loaded and cached once is not counted
    assert peak(100_000.0) < 4 * peak(1_000.0)


def test_a_misdrawn_passage_is_noticed() -> None:
    """The reader of threadings can fail: take the passing band away from the loop and it says so."""
    seats = [[Seat(Bight(b, 0), "A1", 1), Seat(Bight(b, 1), "A2", 1)] for b in (1, 2)]
    events = [Laid(b, tuple(s), (0,)) for b, s in enumerate(seats, start=1)]
    record = [*events, Drawn(Bight(1, 1), "A2", "A1", (Bight(2, 1),))]
    drawn = strand_curves(record, {"A1": (0.0, 0.0), "A2": (0.0, 16.0)}, 1.5)
    assert {p: passages_from_events(record)[p] for p in passages_from_curves(drawn)} == passages_from_curves(
        drawn
    )
    passed = next(p for p, counts in passages_from_curves(drawn).items() if counts)
    assert (passed.bight, passages_from_curves(drawn)[passed]) == (Bight(2, 1), {("band", 1): 2})
    moved = {1: drawn.bands[1] + [500.0, 0.0, 0.0], 2: drawn.bands[2]}
    wrong = Curves(moved, drawn.fasteners, drawn.rings, drawn.wraps, drawn.half_twists, drawn.clear_mm)
    assert not passages_from_curves(wrong)[passed]


def test_a_peg_without_a_place_is_an_error() -> None:
    seats = (Seat(Bight(1, 0), "A1", 1), Seat(Bight(1, 1), "A2", 1))
    with pytest.raises(KeyError):
        strand_curves([Laid(1, seats, (0,))], {"A1": (0.0, 0.0)}, 1.5)
    with pytest.raises(RefusedError, match="one place"):
        strand_curves([Laid(1, seats, (0,))], {"A1": (0.0, 0.0), "A2": (0.0, 0.0)}, 1.5)


def test_a_loop_carried_on_forwards_has_a_half_twist_of_its_own() -> None:
    seats = (Seat(Bight(1, 0), "A1", 1), Seat(Bight(1, 1), "A2", 1))
    pegs = {f"A{k}": (0.0, 16.0 * k) for k in (1, 2, 3)}
    back = strand_curves([Laid(1, seats, (0,)), Drawn(Bight(1, 1), "A2", "A1", ())], pegs, 1.5)
    forth = strand_curves([Laid(1, seats, (0,)), Drawn(Bight(1, 1), "A2", "A3", ())], pegs, 1.5)
    assert not back.half_twists
    assert forth.half_twists == {1: 1}
