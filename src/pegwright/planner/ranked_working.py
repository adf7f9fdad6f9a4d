"""A working order from a ranking of the pegs: peg by peg, the top loop first, each band to its later peg.

This way no loop is dragged: a loop leaves its peg before anything passes through it there, or never. A loop
that arrives at a peg lies above those that leave later, so each of these is pulled through it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

import msgspec

from pegwright.loom import AppliedMove, Bight, Board, Effect, State, apply_move
from pegwright.pattern import Hook, LocatedMove, Move
from pegwright.planner.description import SpokenMove
from pegwright.planner.draft import PlanDraft

__all__ = ["RankedPegs", "RankedWorking", "say_hook", "work_by_rank", "work_loops"]


class RankedPegs(NamedTuple):
    """A ranking of the pegs: lower ranks are worked earlier, equal ranks in the order of the ranking.

    A band whose pegs have equal ranks stays where it lies. The pegs of the highest rank are the last ones,
    where the piece is finished. With `leave_start`, a peg whose loops would have nothing to be pulled
    through is left alone; otherwise only the loop on top of it is.
    """

    ranks: Mapping[str, float]
    leave_start: bool = True

    @property
    def last(self) -> tuple[str, ...]:
        """The pegs of the highest rank."""
        highest = max(self.ranks.values())
        return tuple(peg for peg, rank in self.ranks.items() if rank == highest)


class RankedWorking(NamedTuple):
    """The hook moves of a ranking, and the loom after them."""

    moves: tuple[SpokenMove, ...]
    applied: tuple[AppliedMove, ...]
    after: State

    @property
    def key(self) -> tuple[Move, ...]:
        """What distinguishes workings."""
        return tuple(spoken.move for spoken in self.moves)


def work_by_rank(draft: PlanDraft, ranked: RankedPegs) -> RankedWorking:
    """Work every loop that has a later peg, and leave the others."""
    board, ranks = draft.history.board, ranked.ranks
    places = {peg: at for at, peg in enumerate(ranks)}
    course = _Course(board, draft.history.final)
    for peg in sorted(ranks, key=lambda peg: (ranks[peg], places[peg])):
        leaving = [
            (bight, target)
            for bight in reversed(course.state.stack(peg))
            if (target := _later_peg(draft, ranks, peg, bight)) is not None
        ]
        if leaving and course.state.stack(peg)[-1] == leaving[0][0]:  # nothing is above the topmost to leave
            leaving = [] if ranked.leave_start else leaving[1:]
        for bight, target in leaving:
            course.hook(bight, peg, target)
    return course.working()


def work_loops(draft: PlanDraft, loops: Iterable[tuple[Bight, str]]) -> RankedWorking:
    """Hook so many loops, one after the other, each to its peg; what cannot be hooked is left out."""
    course = _Course(draft.history.board, draft.history.final)
    seats = {bight: peg for peg, bight in draft.resting()}
    for bight, target in loops:
        course.hook(bight, seats[bight], target)
    return course.working()


class _Course:
    """Hooks made one after the other, those of neighbouring loops to one peg said together."""

    def __init__(self, board: Board, state: State) -> None:
        self.board = board
        self.state = state
        self.spoken: tuple[SpokenMove, ...] = ()
        self.applied: list[AppliedMove] = []

    def working(self) -> RankedWorking:
        """Return what was made."""
        return RankedWorking(self.spoken, tuple(self.applied), self.state)

    def hook(self, bight: Bight, peg: str, target: str) -> None:
        """Hook a loop, unless it is out of reach or the peg is full: the proof decides what that means."""
        stack = self.state.stack(peg)
        at = stack.index(bight)
        move = Hook(source=peg, target=target, loop=at + 1)
        outcome = apply_move(self.board, self.state, move)
        if not isinstance(outcome, Effect):
            return
        self.state = outcome.state
        self.applied.append(AppliedMove(LocatedMove(move, ""), outcome.events, self.state))
        self.spoken = say_hook(self.spoken, move, at - len(stack))


def _later_peg(draft: PlanDraft, ranks: Mapping[str, float], peg: str, bight: Bight) -> str | None:
    """Return the band's nearest later peg, or None."""
    later = [p for p in draft.homes.get(bight, ()) if ranks.get(p, ranks[peg]) > ranks[peg]]
    return min(later, key=lambda p: ranks[p], default=None)


def say_hook(spoken: tuple[SpokenMove, ...], move: Hook, from_top: int) -> tuple[SpokenMove, ...]:
    """Return what is said with one more hook, together with the last one if its loop is the next below."""
    together = _join(spoken[-1].move, move) if spoken else None
    if together is None:
        return (*spoken, SpokenMove(move, from_top))
    return (*spoken[:-1], SpokenMove(together, (spoken[-1].from_top or 0) - 1))


def _join(before: Move, move: Hook) -> Hook | None:
    """Return two hook moves as one that takes both loops, if the second loop is next below; else None."""
    if not isinstance(before, Hook) or (before.source, before.target) != (move.source, move.target):
        return None
    if before.loop != move.loop + 1:
        return None
    return msgspec.structs.replace(move, together=before.together + 1)
