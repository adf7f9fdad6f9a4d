"""Every move that could be made from a state: for counting tests, rehearsals and tools."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from pegwright.loom.apply import Applied, apply
from pegwright.loom.board import Board
from pegwright.loom.state import HOOK, State
from pegwright.pattern import Bind, Clip, Hang, Hook, Knot, Lift, Move, Place, Slide, Transfer, Turn, Wind


def legal_moves(board: Board, state: State, colour: str = "A") -> Iterator[Move]:
    """Yield every single-loop move on the board that is not refused, with one colour of band.

    Bands are placed over pairs of pegs, plain or with one half-twist; caps and hung bands are wound twice.
    """
    for move in _candidates(board, state, colour):
        if isinstance(apply(board, state, move), Applied):
            yield move


def _candidates(board: Board, state: State, colour: str) -> Iterator[Move]:
    yield Turn()
    yield Hang(colour=colour, turns=2)
    for a, b in combinations(board.pegs, 2):
        yield Place(colour=colour, over=(a, b))
        yield Place(colour=colour, over=(a, b), twists=(1,))
    for peg in board.pegs:
        yield Wind(colour=colour, on=peg, turns=2)
        stack = state.stack(peg)
        if not stack:
            continue
        yield Bind(colour=colour, at=peg)
        yield Knot(at=(peg,))
        yield Clip(at=(peg,))
        for loop in range(1, len(stack) + 1):
            yield Lift(at=peg, loop=loop)
            for target in board.pegs:
                for through in range(len(stack) - loop + 1):
                    yield Hook(source=peg, target=target, loop=loop, through=through)
                    if state.stack(HOOK):
                        yield Slide(source=peg, target=target, loop=loop, through=through)
        for target in board.pegs:
            yield Transfer(source=peg, target=target)
