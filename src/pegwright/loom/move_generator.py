"""Every move that could be made from a state: for counting tests, rehearsals and tools."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from pegwright.loom.board import Board
from pegwright.loom.machine import Effect, apply_move
from pegwright.loom.state import HOOK, State, end_holder
from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    Move,
    Place,
    Put,
    Slide,
    Transfer,
    Turn,
    Wind,
)

_END = "end"


def legal_moves(board: Board, state: State, colour: str = "A") -> Iterator[Move]:
    """Yield every move on the board that is not refused, with one colour of band.

    Bands are placed over pairs of pegs, plain or with a half-twist either way; caps and hung bands are wound
    twice. Loops are worked singly and several together; a fastener closes one peg or the free end, and takes
    all its loops or only so many, as a last band does, alone or with another; the free end is put on one peg
    or on two in order; an extension is of one band or of two pulled through as one.
    """
    for move in _candidates(board, state, colour):
        if isinstance(apply_move(board, state, move), Effect):
            yield move


def _candidates(board: Board, state: State, colour: str) -> Iterator[Move]:
    yield Turn()
    yield Hang(colour=colour, turns=2)
    for a, b in combinations(board.pegs, 2):
        yield Place(colour=colour, over=(a, b))
        yield Place(colour=colour, over=(a, b), twists=(1,))
        yield Place(colour=colour, over=(a, b), twists=(-1,))
    end = end_holder(state, _END)
    if end is not None:
        yield Extend(colour=colour, bands=1, end=_END)
        yield Extend(colour=colour, bands=2, end=_END, together=2)
        yield from _fasteners(_END, len(state.stack(end)))
        yield from (Put(on=(peg,)) for peg in board.pegs)
        yield from (Put(on=pair) for pair in combinations(board.pegs, 2))
    for peg in board.pegs:
        yield Wind(colour=colour, on=peg, turns=2)
        stack = state.stack(peg)
        if stack:
            for catch in (None, *range(1, len(stack))):
                yield from (Bind(colour=colour, at=peg, end=_END, catch=catch, together=n) for n in (1, 2))
            yield from _fasteners(peg, len(stack))
            yield from _works(board, peg, len(stack), hung=bool(state.stack(HOOK)))


def _fasteners(holder: str, loops: int) -> Iterator[Move]:
    for catch in (None, *range(1, loops)):
        yield Knot(at=(holder,), catch=catch)
        yield Clip(at=(holder,), catch=catch)


def _works(board: Board, peg: str, loops: int, *, hung: bool) -> Iterator[Move]:
    for together in range(1, loops + 1):
        for target in board.pegs:
            yield Transfer(source=peg, target=target, together=together)
        for loop in range(1, loops - together + 2):
            for to in (None, *board.pegs):
                yield Lift(at=peg, loop=loop, together=together, target=to)
            for target in board.pegs:
                for through in range(loops - loop - together + 2):
                    yield Hook(source=peg, target=target, loop=loop, through=through, together=together)
                    if hung:
                        yield Slide(source=peg, target=target, loop=loop, through=through, together=together)
