"""What to add if no order holds: a cap on a peg, or a band between two pegs."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from pegwright.pattern import Place, Wind
from pegwright.planner.draft import PlanDraft

__all__ = ["additions"]

_FARTHEST = 2.1  # times the least gap between pegs


def additions(draft: PlanDraft) -> Iterator[Place | Wind]:
    """Yield caps on the pegs that hold loops, then bands between those and their neighbours."""
    board, stacks = draft.history.board, draft.history.final.stacks
    used = [peg for peg in board.pegs if stacks.get(peg)]
    if not used:
        return
    colour = draft.history.colours[0]
    for peg in used:
        yield Wind(colour=colour, on=peg)
    pairs = [pair for pair in combinations(board.pegs, 2) if stacks.get(pair[0]) or stacks.get(pair[1])]
    least = min(board.distance_mm(*pair) for pair in pairs) if pairs else 0.0
    for pair in sorted(pairs, key=lambda pair: board.distance_mm(*pair)):
        if board.distance_mm(*pair) <= _FARTHEST * least:
            yield Place(colour=colour, over=pair)
