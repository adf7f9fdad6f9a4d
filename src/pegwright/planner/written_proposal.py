"""A working as a proposal: closed, written as a pattern, proved from scratch, checked and measured."""

from __future__ import annotations

import math
from typing import NamedTuple

import msgspec

from pegwright.loom import History, check_loom, replay_pattern
from pegwright.pattern import Hook, Move, Pattern, PatternStep, Turn, expand
from pegwright.planner.description import SpokenMove, describe
from pegwright.planner.draft import PlanDraft
from pegwright.planner.finishes import apply_all, closings
from pegwright.planner.hold_test import every_band_is_held
from pegwright.planner.lifted_working import LiftedWorking
from pegwright.planner.measures import Measures, measure_working
from pegwright.planner.ranked_working import RankedPegs, RankedWorking
from pegwright.proof import check, prove
from pegwright.structure import structure_of

__all__ = ["Proposal", "made_object", "prove_at", "prove_lifted", "prove_working"]


class Proposal(NamedTuple):
    """A complete working of the piece: the pattern with it written out, its history, and its measures.

    Every band is proved held, the checker agrees, and no loop is dragged along.
    """

    pattern: Pattern
    history: History
    measures: Measures


def made_object(proposal: Proposal) -> object:
    """Return what distinguishes pieces: what lies where, and what runs through what."""
    final = proposal.history.final
    return frozenset(final.inside.items()), final.fasteners


def prove_lifted(draft: PlanDraft, working: LiftedWorking) -> Proposal | None:
    """Return the proposal of a working by lifting if every band is held and none is dragged, else None."""
    if working.dragged:
        return None
    events = [event for one in working.applied for event in one.events]
    if not every_band_is_held(events, draft.history.board.spots, thorough=True):
        return None
    phrases = describe([SpokenMove(move) for move in working.moves]).phrases
    return _prove_written(draft, working.steps, phrases, 0)


def prove_working(draft: PlanDraft, working: RankedWorking, ranked: RankedPegs) -> Proposal | None:
    """Return a working's proposal with the first finish under which every band is held, or None."""
    if any(getattr(event, "dragged", ()) for one in working.applied for event in one.events):
        return None
    board = draft.history.board
    first = _far_end(draft, working, ranked)
    for closing in closings(draft, working.after, ranked.last, first):
        finish = apply_all(board, working.after, closing)
        if finish is None:
            continue
        applied = (*draft.history.moves, *working.applied, *finish)
        if every_band_is_held([event for one in applied for event in one.events], board.spots):
            return _write_out(draft, working, closing)
    return None


def prove_at(draft: PlanDraft, working: RankedWorking, last: tuple[str, ...]) -> Proposal | None:
    """Return a working's proposal, finished at one or two pegs, if every band is held, else None."""
    board = draft.history.board
    for closing in closings(draft, working.after, last[:1], last[1] if len(last) > 1 else None):
        finish = apply_all(board, working.after, closing)
        if finish is None:
            continue
        events = [e for one in (*draft.history.moves, *working.applied, *finish) for e in one.events]
        if every_band_is_held(events, board.spots, thorough=True):
            return _write_out(draft, working, closing)
    return None


def _far_end(draft: PlanDraft, working: RankedWorking, ranked: RankedPegs) -> str | None:
    """Return the peg at the far end of a long piece, if loops are left there for the fastener to catch."""
    pegs = draft.history.board.pegs
    used = [pegs[peg] for peg in ranked.ranks]
    spans = sorted(max(spot) - min(spot) for spot in ([p.x_mm for p in used], [p.y_mm for p in used]))
    if spans[1] < 2 * spans[0]:
        return None
    last = pegs[ranked.last[0]]
    away = {
        peg: math.hypot(pegs[peg].x_mm - last.x_mm, pegs[peg].y_mm - last.y_mm)
        for peg in ranked.ranks
        if working.after.stack(peg)
    }
    first = [peg for peg, far_mm in away.items() if far_mm >= max(away.values()) - 1e-6]
    return first[0] if len(first) == 1 else None


def _write_out(draft: PlanDraft, working: RankedWorking, closing: tuple[Move, ...]) -> Proposal | None:
    """Return the pattern with the working written out, proved again from scratch; the checker must agree."""
    turn = _turn_first(draft, working)
    spoken = [*([SpokenMove(turn)] if turn else ()), *working.moves]
    said = describe(spoken)
    steps: tuple[PatternStep, ...] = (*draft.opening, *said.steps, *(draft.finish or closing))
    phrases = said.phrases + (0 if draft.finish else len(closing))
    return _prove_written(draft, steps, phrases, len(draft.history.moves))


def _prove_written(
    draft: PlanDraft, steps: tuple[PatternStep, ...], phrases: int, given: int
) -> Proposal | None:
    """Return the proposal of a whole pattern, whose first `given` moves are not measured."""
    pattern = msgspec.structs.replace(draft.pattern, steps=steps)
    expansion = expand(pattern)
    history = replay_pattern(pattern, expansion)
    proof = prove(structure_of(history.events, history.board.spots))
    refused = [f for f in (*expansion.findings, *history.findings) if f.severity == "error"]
    if proof.unproved:  # a band held by its word that another band lies across
        return None
    if refused or proof.free:
        raise AssertionError("a working and what is written of it differ")
    if (rejected := check(history.events, proof, history.board.spots)) is not None:
        raise AssertionError(f"the checker rejects the proof of this proposal: {rejected}")
    cautions = sum(f.severity != "note" for f in check_loom(pattern, expansion, history))
    done = history.moves[given:]
    return Proposal(pattern, history, measure_working(history.board, draft.links, done, phrases, cautions))


def _turn_first(draft: PlanDraft, working: RankedWorking) -> Turn | None:
    """Return the move that turns the loom if the open sides of the pegs face away from the maker."""
    pegs = draft.history.board.pegs
    first = next((spoken.move for spoken in working.moves if isinstance(spoken.move, Hook)), None)
    if first is None:
        return None
    away = math.sin(math.radians(pegs[first.source].channel_deg))
    return Turn() if (-away if draft.history.final.turned else away) > 0.9 else None
