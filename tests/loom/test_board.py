"""The board: what lies in a rectangle costs no more than the pegs, however far apart they stand."""

from __future__ import annotations

import random

import msgspec
import pytest

from pegwright.loom import Effect, RefusedMove, State, apply_move, board_of, parse_move
from pegwright.pattern import MAX_REACH_MM, PegAt, Pegs, Round, Rows, expand, read_pattern


class Counted(dict):
    """Squares of the plan that count how often they are looked up."""

    looked_up = 0

    def get(self, square, otherwise=None):
        self.looked_up += 1
        return super().get(square, otherwise)


def scattered(rng: random.Random, pegs: int, extent_mm: float) -> Pegs:
    return Pegs(
        pegs=tuple(
            PegAt(f"A{k + 1}", rng.uniform(-extent_mm, extent_mm), rng.uniform(-extent_mm, extent_mm))
            for k in range(pegs)
        )
    )


@pytest.mark.parametrize("extent_mm", [50.0, 1000.0, 100_000.0])
def test_a_rectangle_holds_the_pegs_that_lie_in_it(extent_mm: float) -> None:
    rng = random.Random(int(extent_mm))
    for _ in range(50):
        board = board_of(scattered(rng, 12, extent_mm))
        low, high = sorted((rng.uniform(-extent_mm, extent_mm), rng.uniform(-extent_mm, extent_mm)))
        found = [peg.at for peg in board.within((low, low), (high, high))]
        right = [p.at for p in board.pegs.values() if low <= p.x_mm <= high and low <= p.y_mm <= high]
        assert sorted(found) == sorted(right)


def test_a_wide_rectangle_is_no_more_work_than_the_pegs() -> None:
    board = board_of(scattered(random.Random(1), 12, 100_000.0))
    counted = board._replace(cells=Counted(board.cells))
    assert len(list(counted.within((-100_000, -100_000), (100_000, 100_000)))) == 12
    assert counted.cells.looked_up <= 12


def test_no_loop_goes_further_than_arms_reach() -> None:
    board = board_of(Rows(rows=3, pegs=4, pitch_mm=1000, row_gap_mm=800))
    near = apply_move(board, State(), parse_move("place A over A1 A2"))
    assert isinstance(near, Effect)
    for line in ("place A over A2 C4", "hook A2 loop 1 to C4", "transfer A2 to C4"):
        far = apply_move(board, near.state, parse_move(line))
        assert isinstance(far, RefusedMove), line
        assert far.code == "out-of-reach"
        assert far.facts["gap_mm"] > far.facts["limit_mm"] == MAX_REACH_MM


@pytest.mark.parametrize(
    ("layout", "code"),
    [
        (Rows(rows=2, pegs=10_000), None),  # long, but with pegs all along
        (Rows(rows=2, pegs=3, pitch_mm=0.5), "pegs-in-one-place"),
        (Round(pegs=3, diameter_mm=5000), "pegs-out-of-reach"),
        (Round(pegs=12, diameter_mm=64, rings=3, ring_gap_mm=16), "pegs-in-one-place"),  # a ring of no size
        (Pegs(pegs=(PegAt("A1", 0, 0), PegAt("A2", 0, MAX_REACH_MM))), None),
        (Pegs(pegs=(PegAt("A1", 0, 0), PegAt("A2", 0, MAX_REACH_MM + 1))), "pegs-out-of-reach"),
        (Pegs(pegs=(PegAt("A1", 0, 0), PegAt("A1", 0, 0))), None),  # one name twice is another finding
    ],
)
def test_a_loom_nobody_can_work_at_gives_no_moves(layout, code) -> None:
    pattern, _ = read_pattern(
        b'{"pegwright": 2, "title": "Ebb", "loom": {"kind": "rows", "rows": 1, "pegs": 2}, "steps": '
        b'[{"do": "turn"}]}'
    )
    expansion = expand(msgspec.structs.replace(pattern, loom=layout))
    assert [found.code for found in expansion.findings] == ([code] if code else [])
    assert len(expansion.moves) == (0 if code else 1)
