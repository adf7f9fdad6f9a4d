"""The working that a pattern gives, measured as proposals are, so that both can be compared."""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from pegwright.loom import History, check_loom, replay_pattern
from pegwright.pattern import Hook, Lift, Pattern, Place, Wind, expand
from pegwright.planner.description import SpokenMove, describe
from pegwright.planner.draft import PlanDraft, read_draft, without_working
from pegwright.planner.measures import Measures, measure_working

__all__ = ["measure_given_working", "spoken_moves"]


def measure_given_working(pattern: Pattern) -> Measures | None:
    """Measure the working that a pattern gives; None where it closes nothing, or a move is refused."""
    draft = read_draft(without_working(pattern))
    expansion = expand(pattern)
    history = replay_pattern(pattern, expansion)
    refused = any(f.severity == "error" for f in (*expansion.findings, *history.findings))
    if refused or not isinstance(draft, PlanDraft) or not history.final.fasteners:
        return None
    cautions = sum(f.severity != "note" for f in check_loom(pattern, expansion, history))
    phrases = describe(list(spoken_moves(history))).phrases
    return measure_working(history.board, draft.links, history.moves, phrases, cautions)


def spoken_moves(history: History, *, laying: bool = False) -> Iterator[SpokenMove]:
    """Yield the moves, their loops counted from below and from the top; those that place bands only where
    `laying` asks for them."""
    for at, done in enumerate(history.moves):
        move = done.move
        if isinstance(move, Hook | Lift):
            height = len(history.before(at).stack(move.source if isinstance(move, Hook) else move.at))
            from_top = move.loop if move.loop < 0 else move.loop - 1 - height
            yield SpokenMove(msgspec.structs.replace(move, loop=height + 1 + from_top), from_top)
        elif laying or not isinstance(move, Place | Wind):
            yield SpokenMove(move)
