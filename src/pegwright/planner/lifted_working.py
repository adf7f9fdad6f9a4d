"""Workings by lifting over: bands that are laid round on round over the same pegs.

A round is the shortest run of bands that comes again and again over the same pegs: one band for a tail on two
pegs, as many as there are pegs for a tube. After each round the lowest one is lifted over those above, so
that only so many rounds stay on the pegs; at the end it goes on until fewer are left. The bands are laid in
the given order; what is new are the lifts between them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import groupby, pairwise
from typing import NamedTuple

from pegwright.loom import AppliedMove, State, first_loop_is_off
from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Knot,
    Lift,
    Move,
    PatternStep,
    Place,
    Transfer,
)
from pegwright.planner.description import SpokenMove, describe
from pegwright.planner.draft import PlanDraft
from pegwright.planner.finishes import apply_all

__all__ = ["LiftedWorking", "work_by_lifting"]

_LEAST_ROUNDS = 3
_MOST_KEPT = 3
_FEW_PEGS = 3
"""Pegs whose loops may be gathered on one of them before the piece is closed."""


class LiftedWorking(NamedTuple):
    """A whole working, its finish with it: the steps as they are written, and the moves made on the loom."""

    steps: tuple[PatternStep, ...]
    moves: tuple[Move, ...]
    applied: tuple[AppliedMove, ...]

    @property
    def dragged(self) -> bool:
        """Whether a loop was dragged along."""
        return any(getattr(event, "dragged", ()) for one in self.applied for event in one.events)


def work_by_lifting(draft: PlanDraft) -> Iterator[LiftedWorking]:
    """Yield workings that lift each round over the next; none where the bands are not laid in such rounds."""
    rounds = _rounds(draft)
    for kept in range(1, _MOST_KEPT + 1):
        if len(rounds) <= kept:
            return
        for left in range(kept, 0, -1):
            yield from _work(draft, rounds, kept, left)


class _Step(NamedTuple):
    """A laying move with the place of its step among the pattern's own."""

    move: Move
    at: int


def _rounds(draft: PlanDraft) -> list[list[_Step]]:
    """Split the laying moves into rounds over the same pegs; none if there are not at least three."""
    moves = [one.move for one in draft.history.moves]
    over = [move.over for move in moves if isinstance(move, Place)]
    if len(over) < len(moves):
        return []
    for length in range(1, len(over) // _LEAST_ROUNDS + 1):
        if len(over) % length == 0 and over[length:] == over[:-length]:
            counts = draft.first_moves()
            places = [at for at, (one, after) in enumerate(pairwise(counts)) for _ in range(one, after)]
            steps = [_Step(move, at) for move, at in zip(moves, places, strict=True)]
            return [steps[at : at + length] for at in range(0, len(steps), length)]
    return []


def _work(draft: PlanDraft, rounds: list[list[_Step]], kept: int, left: int) -> Iterator[LiftedWorking]:
    """Lift as soon as more than `kept` rounds lie on the pegs, and at the end until `left` do."""
    held = Counter(peg for one in rounds[0] for peg in getattr(one.move, "over", ()))
    pegs = [peg for peg in draft.history.board.pegs if peg in held]
    lifts = [Lift(at=peg, together=held[peg]) for peg in pegs]
    parts: list[tuple[list[_Step], list[Move]]] = []
    for number, laid in enumerate(rounds, start=1):
        more = 0 if number <= kept else 1
        more += kept - left if number == len(rounds) else 0
        parts.append((laid, [*lifts] * more))
    moves: tuple[Move, ...] = tuple(
        m for laid, lifted in parts for m in (*(one.move for one in laid), *lifted)
    )
    made = apply_all(draft.history.board, State(), moves)
    if made is None:
        return
    for closing in _closings(draft, made[-1].after):
        finish = apply_all(draft.history.board, made[-1].after, closing)
        if finish is not None:
            steps = (*_write(draft, parts), *(draft.finish or closing))
            yield LiftedWorking(
                steps, (*(m for _, lifted in parts for m in lifted), *closing), (*made, *finish)
            )


def _closings(draft: PlanDraft, state: State) -> Iterator[tuple[Move, ...]]:
    """Yield ways to close a piece that hangs below its pegs: a cord, or the loops gathered and clipped."""
    if draft.finish:
        yield tuple(step for step in draft.finish if isinstance(step, Bind | Extend | Clip | Knot))
        return
    pegs = tuple(peg for peg in draft.history.board.pegs if state.stack(peg))
    if 1 < len(pegs) <= _FEW_PEGS:
        gathered = tuple(
            Transfer(source=peg, target=pegs[0], together=len(state.stack(peg))) for peg in pegs[1:]
        )
        if first_loop_is_off(state):
            yield *gathered, Clip(at=("start", pegs[0]))
        yield *gathered, Clip(at=(pegs[0],))
    if len(pegs) > 1:
        yield (Knot(at=pegs),)


def _write(draft: PlanDraft, parts: list[tuple[list[_Step], list[Move]]]) -> tuple[PatternStep, ...]:
    """Write the laying with the lifts between: as the pattern's own steps where no lift comes inside one."""
    ends = [laid[-1].at for laid, _ in parts]
    starts = [laid[0].at for laid, _ in parts]
    own = all(
        not lifted or after is None or end < after
        for end, after, (_, lifted) in zip(ends, [*starts[1:], None], parts, strict=True)
    )
    if not own:
        spoken = [SpokenMove(m) for laid, lifted in parts for m in (*(one.move for one in laid), *lifted)]
        return describe(spoken).steps
    written: list[PatternStep] = []
    done = 0
    for end, group in groupby(parts, key=lambda part: part[0][-1].at):
        written += draft.opening[done : end + 1]
        done = end + 1
        written += describe([SpokenMove(move) for _, lifted in group for move in lifted]).steps
    return tuple(written)
