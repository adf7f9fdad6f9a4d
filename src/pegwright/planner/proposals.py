"""Working orders for a piece with laid bands: proved, distinct, measured and written as patterns."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterable, Iterator
from functools import partial
from typing import NamedTuple

import msgspec

from pegwright.finding import Finding, Fix, Location, finding, phrase
from pegwright.loom import History, pause_collector, replay_pattern
from pegwright.pattern import Move, Pattern, Wind
from pegwright.planner.addition_candidates import additions
from pegwright.planner.draft import FEW_BANDS, PlanDraft, read_draft
from pegwright.planner.exhaustive import find_every_order
from pegwright.planner.hold_test import every_band_is_held
from pegwright.planner.lifted_working import work_by_lifting
from pegwright.planner.peg_ranks import rank_pegs
from pegwright.planner.ranked_working import RankedPegs, RankedWorking, work_by_rank
from pegwright.planner.step_lists import put_in
from pegwright.planner.written_proposal import Proposal, made_object, prove_at, prove_lifted, prove_working

__all__ = ["CountFailures", "Proposals", "ReportTries", "propose"]

ReportTries = Callable[[str, int, int], None]
"""Called with what is being done, how many orders are tried, and of how many; it may raise to break off."""

CountFailures = Callable[[Pattern, History], float]
"""Rehearses a working: how many slips that bring bands down a maker makes on average."""

MOST_TRIED = 2000
"""Orders tried before the search ends by itself."""


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
        for make in _candidates(draft):
            progress("trying orders", tried, tries)
            if tried >= tries or (found and time.monotonic() > ends):
                cut_short = True
                break
            tried += 1
            proposal = make()
            if proposal is not None:
                made = made_object(proposal)
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
            proposal = prove_at(draft, working, last)
            if proposal is not None:
                found.setdefault(made_object(proposal), proposal)
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


def _candidates(draft: PlanDraft) -> Iterator[Callable[[], Proposal | None]]:
    """Yield what to try, each once; bands that lie round on round are lifted over before any is hooked."""
    for lifted in work_by_lifting(draft):
        yield partial(prove_lifted, draft, lifted)
    for working, ranked in _workings(draft):
        yield partial(prove_working, draft, working, ranked)


def _workings(draft: PlanDraft) -> Iterator[tuple[RankedWorking, RankedPegs]]:
    """Yield the workings to try, each once."""
    seen: set[tuple[Move, ...]] = set()
    for ranked in rank_pegs(draft):
        working = work_by_rank(draft, ranked)
        if working.key and working.key not in seen:
            seen.add(working.key)
            yield working, ranked
