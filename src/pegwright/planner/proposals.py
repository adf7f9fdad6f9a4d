"""Working orders for a piece with laid bands: proved, distinct, measured and written as patterns."""

from __future__ import annotations

import math
import time
from collections.abc import Callable, Iterable, Iterator
from typing import NamedTuple

import msgspec

from pegwright.finding import Finding, Fix, Location, finding, phrase
from pegwright.loom import History, check_loom, pause_collector, replay_pattern
from pegwright.pattern import Hook, Move, Pattern, PatternStep, Turn, Wind, expand
from pegwright.planner.addition_candidates import additions
from pegwright.planner.description import SpokenMove, describe
from pegwright.planner.draft import FEW_BANDS, PlanDraft, read_draft
from pegwright.planner.exhaustive import find_every_order
from pegwright.planner.finishes import apply_all, closings
from pegwright.planner.hold_test import every_band_is_held
from pegwright.planner.measures import Measures, measure_working
from pegwright.planner.peg_ranks import rank_pegs
from pegwright.planner.ranked_working import RankedPegs, RankedWorking, work_by_rank
from pegwright.planner.step_lists import put_in
from pegwright.proof import check, prove
from pegwright.structure import structure_of

__all__ = ["CountFailures", "Proposal", "Proposals", "ReportTries", "propose"]

ReportTries = Callable[[str, int, int], None]
"""Called with what is being done, how many orders are tried, and of how many; it may raise to break off."""

CountFailures = Callable[[Pattern, History], float]
"""Rehearses a working: how many slips that bring bands down a maker makes on average."""

MOST_TRIED = 2000
"""Orders tried before the search ends by itself."""


class Proposal(NamedTuple):
    """A complete working of the piece: the pattern with it written out, its history, and its measures.

    Every band is proved held, the checker agrees, and no loop is dragged along.
    """

    pattern: Pattern
    history: History
    measures: Measures


class Proposals(NamedTuple):
    """The orders found, the easiest to teach first.

    `tried` counts the orders that were proved or rejected. `cut_short` means that time ran out before all
    were tried. `findings` say what kept the piece from being planned.
    """

    found: tuple[Proposal, ...]
    tried: int
    cut_short: bool
    findings: tuple[Finding, ...] = ()


def report_no_tries(_what: str, _done: int, _total: int) -> None:
    """Report to nobody."""


def propose(
    pattern: Pattern,
    *,
    most: int = 5,
    seconds: float = 10.0,
    tries: int = MOST_TRIED,
    with_fix: bool = True,
    count_failures: CountFailures | None = None,
    progress: ReportTries = report_no_tries,
    found_more: Callable[[Proposals], None] | None = None,
) -> Proposals:
    """Propose up to `most` different workings of a pattern whose bands are laid.

    What the pattern already works stays, and so does a finish that it gives. After `seconds`, or so many
    tries, the best so far are returned. Of a few bands every order is tried; where none holds, the finding
    says so; `with_fix` looks for a band or a cap that would help. `count_failures` rehearses the proposals
    that are returned. `progress` may raise to break off; `found_more` hears the best so far whenever that
    changes.
    """
    draft = read_draft(pattern)
    if not isinstance(draft, PlanDraft):
        return Proposals((), 0, cut_short=False, findings=draft)
    whole = replay_pattern(pattern)
    if whole.final.fasteners and every_band_is_held(whole.events, whole.board.spots, thorough=True):
        bands = whole.final.bands
        return Proposals((), 0, cut_short=False, findings=(finding("holds-already", bands=bands),))
    ends = time.monotonic() + seconds
    found: dict[object, Proposal] = {}
    tried = 0
    cut_short = False
    with pause_collector():
        for working, ranked in _workings(draft):
            progress("trying orders", tried, tries)
            if tried >= tries or (found and time.monotonic() > ends):
                cut_short = True
                break
            tried += 1
            proposal = _prove_working(draft, working, ranked)
            if proposal is not None:
                made = _made_object(proposal)
                known = found.get(made)
                if known is None or proposal.measures.rank < known.measures.rank:
                    found[made] = proposal
                    if found_more is not None and proposal in (best := _best(found.values(), most)):
                        found_more(Proposals(best, tried, cut_short=True))
            if time.monotonic() > ends:
                cut_short = True
                break
        small = draft.history.final.bands <= FEW_BANDS and bool(draft.homes)
        every = find_every_order(draft, ends) if small and not found else None
        for working, last in every.workings if every else ():
            progress("trying every order", tried, tries)
            if time.monotonic() > ends or len(found) >= most:
                cut_short = not found
                break
            tried += 1
            proposal = _prove_at(draft, working, last)
            if proposal is not None:
                found.setdefault(_made_object(proposal), proposal)
    if not found:
        bands = draft.history.final.bands
        if every is not None and every.complete and not cut_short:
            never = every.never
            fix = _find_addition(draft, ends) if with_fix else None
            told = finding(
                "order-none", Location("/steps"), fix=fix, laid=bands, bands=never, count=len(never)
            )
            return Proposals((), tried, cut_short, (told,))
        code = "order-not-found" if draft.links else "nothing-to-work"
        return Proposals((), tried, cut_short, (finding(code, Location("/steps"), bands=bands, tried=tried),))
    shown = _best(found.values(), most)
    if count_failures is not None:
        shown = tuple(_with_failures(one, count_failures) for one in shown)
    return Proposals(shown, tried, cut_short)


def _best(found: Iterable[Proposal], most: int) -> tuple[Proposal, ...]:
    return tuple(sorted(found, key=lambda one: one.measures.rank)[:most])


def _with_failures(proposal: Proposal, count_failures: CountFailures) -> Proposal:
    failures = count_failures(proposal.pattern, proposal.history)
    return proposal._replace(measures=proposal.measures._replace(failures=failures))


def _find_addition(draft: PlanDraft, ends: float) -> Fix | None:
    """Return a fix that lays a cap or band last, so that some order holds; None if none does."""
    for addition in additions(draft):
        if time.monotonic() > ends:
            return None
        steps = (*draft.opening, addition, *draft.finish)
        more = msgspec.structs.replace(draft.pattern, steps=steps)
        if propose(more, most=1, seconds=max(0.0, ends - time.monotonic()), with_fix=False).found:
            if isinstance(addition, Wind):
                label = phrase("lay-cap", peg=addition.on)
            else:
                label = phrase("lay-band", peg=addition.over[0], other=addition.over[1])
            return Fix(label, put_in("/steps", len(draft.opening), addition))
    return None


def _made_object(proposal: Proposal) -> object:
    """Return what distinguishes pieces: what lies where, and what runs through what."""
    final = proposal.history.final
    return frozenset(final.inside.items()), final.fasteners


def _workings(draft: PlanDraft) -> Iterator[tuple[RankedWorking, RankedPegs]]:
    """Yield the workings to try, each once."""
    seen: set[tuple[Move, ...]] = set()
    for ranked in rank_pegs(draft):
        working = work_by_rank(draft, ranked)
        if working.key and working.key not in seen:
            seen.add(working.key)
            yield working, ranked


def _prove_working(draft: PlanDraft, working: RankedWorking, ranked: RankedPegs) -> Proposal | None:
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


def _prove_at(draft: PlanDraft, working: RankedWorking, last: tuple[str, ...]) -> Proposal | None:
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
    phrases = said.phrases + (0 if draft.finish else len(closing))
    done = history.moves[len(draft.history.moves) :]
    return Proposal(pattern, history, measure_working(history.board, draft.links, done, phrases, cautions))


def _turn_first(draft: PlanDraft, working: RankedWorking) -> Turn | None:
    """Return the move that turns the loom if the open sides of the pegs face away from the maker."""
    pegs = draft.history.board.pegs
    first = next((spoken.move for spoken in working.moves if isinstance(spoken.move, Hook)), None)
    if first is None:
        return None
    away = math.sin(math.radians(pegs[first.source].channel_deg))
    return Turn() if (-away if draft.history.final.turned else away) > 0.9 else None
