"""Counting tests: one number per position and depth holds the machine, the generator and undo together.

The numbers in `positions.txt` were counted twice: by making and unmaking every move, and by arithmetic on
the heights of the stacks alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from pegwright import loom
from pegwright.loom import Board, Effect, State
from pegwright.pattern import Rows

POSITIONS = [
    [part.strip() for part in line.split(" | ")]
    for line in (Path(__file__).parent / "positions.txt").read_text().splitlines()
    if line and not line.startswith("#")
]


def count(board: Board, state: State, depth: int) -> int:
    """Make every move and take it back again."""
    if depth == 0:
        return 1
    total = 0
    for move in loom.legal_moves(board, state):
        outcome = loom.apply_move(board, state, move)
        assert isinstance(outcome, Effect)
        total += count(board, outcome.state, depth - 1)
        after = outcome.state
        for event in reversed(outcome.events):
            after = loom.revert_event(after, event)
        assert after == state
    return total


Heights = tuple[tuple[int, ...], int, int]  # loops on each peg, on the hook, at the free end


def tally(position: Heights, depth: int) -> int:
    """Count by the heights of the stacks alone, on one row of pegs."""
    if depth == 0:
        return 1
    return sum(times * tally(after, depth - 1) for times, after in _after(position))


def _after(position: Heights) -> Iterator[tuple[int, Heights]]:
    pegs, hung, end = position
    yield 1, position  # turn
    yield 1, (pegs, hung + 2, end)
    if end:
        yield 1, (pegs, hung, 2)  # one band more of extension
        yield 1, (pegs, hung, 4)  # or two at once
        for caught in range(1, end + 1):
            yield 2, (pegs, hung, end - caught)
        for i in range(len(pegs)):  # put on one peg, or shared between two
            yield 1, (_plus(pegs, {i: end}), hung, 0)
            for j in range(i):
                yield (1 - end % 2), (_plus(pegs, {i: end // 2, j: end // 2}), hung, 0)
    for i in range(len(pegs) - 1):
        yield 3, (_plus(pegs, {i: 1, i + 1: 1}), hung, end)  # flat, or twisted either way
    for i, h in enumerate(pegs):
        yield 1, (_plus(pegs, {i: 2}), hung, end)
        for caught in range(1, 1 if end else h + 1):
            yield 1, (_plus(pegs, {i: -caught}), hung, 2)  # one band through so many loops
            yield 1, (_plus(pegs, {i: -caught}), hung, 4)  # or two
        for some in range(
            1, h + 1
        ):  # so many caught, lifted (off, or on to a peg), carried or hooked at once
            fewer = _plus(pegs, {i: -some})
            yield 2, (fewer, hung, end)
            yield h - some, (fewer, hung, end)
            ways = (h - some + 1) * (h - some + 2) // 2
            for j in range(len(pegs)):
                if j != i:
                    moved = _plus(fewer, {j: some})
                    yield ways + 1 + (h - some), (moved, hung, end)
                    yield (ways if hung else 0), (moved, 0, end)


def _plus(pegs: tuple[int, ...], change: dict[int, int]) -> tuple[int, ...]:
    return tuple(h + change.get(i, 0) for i, h in enumerate(pegs))


@pytest.mark.parametrize("position", POSITIONS, ids=[p[0] for p in POSITIONS])
def test_the_number_of_move_sequences(position):
    _, size, *parts, counts = position
    pegs = int(size.partition("x")[2])
    board = loom.board_of(Rows(rows=1, pegs=pegs))
    state = loom.parse_state(" | ".join(parts))
    expected = [int(n) for n in counts.split()]
    heights = tuple(len(state.stack(f"A{k + 1}")) for k in range(pegs))
    end = next((len(loops) for holder, loops in state.stacks.items() if holder.startswith("end.")), 0)
    start: Heights = (heights, len(state.stack("hook")), end)
    depths = range(1, len(expected) + 1)
    assert [tally(start, d) for d in depths] == expected
    assert [count(board, state, d) for d in depths] == expected
