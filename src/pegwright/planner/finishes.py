"""How to close a piece that is worked to its last peg: by the given finish, or by one of ours."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import pairwise

from pegwright.loom import AppliedMove, Board, Effect, State, apply_move
from pegwright.pattern import Bind, Clip, Extend, Knot, LocatedMove, Move
from pegwright.planner.draft import FEW_BANDS, PlanDraft

__all__ = ["apply_all", "closings", "given_last_pegs"]

_END = "end"
_LONG = 3  # times as long as wide: a piece that goes round a wrist
_FEW = 2  # loops that a clip takes without a last band


def given_last_pegs(draft: PlanDraft) -> tuple[str, ...]:
    """Return the pegs whose loops the given finish catches; none if there is no finish."""
    for step in draft.finish:
        if isinstance(step, Bind):
            return (step.at,)
        if isinstance(step, Clip | Knot):
            pegs = tuple(at for at in step.at if at in draft.history.board.pegs)
            if pegs:
                return pegs
    return ()


def closings(
    draft: PlanDraft, state: State, last: tuple[str, ...], first: str | None
) -> Iterator[tuple[Move, ...]]:
    """Yield the ways to close the piece at its last pegs, the likeliest first.

    `first` is the peg at the far end, where the piece starts. A long piece is closed into a ring there.
    """
    if draft.finish:
        yield tuple(step for step in draft.finish if isinstance(step, Bind | Extend | Clip | Knot))
        return
    last = tuple(peg for peg in last if state.stack(peg))
    if len(last) > 1 and draft.history.final.bands > FEW_BANDS and _lie_in_a_row(draft.history.board, last):
        yield (Knot(at=last),)
    if len(last) != 1:
        return
    colour = _colour_at(draft, state, last[0])
    bound = Bind(colour=colour, at=last[0], end=_END)
    ring = (first,) if first is not None and first != last[0] and state.stack(first) else ()
    if ring:
        yield bound, Clip(at=(_END, *ring))
    yield bound, Clip(at=(_END,))
    if len(state.stack(last[0])) <= _FEW:
        yield (Clip(at=(*last, *ring)),)


def _lie_in_a_row(board: Board, last: tuple[str, ...]) -> bool:
    """Return whether one cord can run through the loops: every peg is about as near the next as any other."""
    gap = min(board.distance_mm(last[0], peg) for peg in board.pegs if peg != last[0])
    return all(board.distance_mm(one, other) < 1.5 * gap for one, other in pairwise(last))


def _colour_at(draft: PlanDraft, state: State, peg: str) -> str:
    """Return the colour of most bands on the peg; on a tie, the lowest band's."""
    colours = draft.history.colours
    bands = dict.fromkeys(bight.band for bight in state.stack(peg))
    return Counter(colours[band - 1] for band in bands).most_common(1)[0][0]


def apply_all(board: Board, state: State, moves: tuple[Move, ...]) -> tuple[AppliedMove, ...] | None:
    """Make the moves one after the other; None if one is refused."""
    applied = []
    for move in moves:
        outcome = apply_move(board, state, move)
        if not isinstance(outcome, Effect):
            return None
        state = outcome.state
        applied.append(AppliedMove(LocatedMove(move, ""), outcome.events, state))
    return tuple(applied)
