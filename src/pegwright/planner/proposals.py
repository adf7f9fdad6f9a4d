"""Working orders for a piece with laid bands: proved, distinct, measured and written as patterns."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from functools import partial
from typing import NamedTuple

import msgspec

from pegwright.finding import Finding, Fix, Location, finding, phrase
from pegwright.loom import History, pause_collector, replay_pattern
from pegwright.pattern import Move, Pattern, Place, Wind
from pegwright.planner.addition_candidates import additions
from pegwright.planner.description import describe
from pegwright.planner.draft import FEW_BANDS, PlanDraft, read_draft
from pegwright.planner.exhaustive import EveryOrder, find_every_order
from pegwright.planner.hold_test import every_band_is_held
from pegwright.planner.lifted_working import work_by_lifting
from pegwright.planner.peg_ranks import rank_pegs
from pegwright.planner.pinned_moves import find_conflicts
from pegwright.planner.ranked_working import RankedPegs, RankedWorking, work_by_rank
from pegwright.planner.shorter_working import SHORTENED_BANDS, shorten
from pegwright.planner.step_lists import change_step, put_in
from pegwright.planner.written_proposal import Proposal, made_object, prove_at, prove_lifted, prove_working

__all__ = ["CountFailures", "Proposals", "ReportTries", "propose"]

ReportTries = Callable[[str, int, int], None]
"""Called with what is being done, how many orders are tried, and of how many; it may raise to break off."""

CountFailures = Callable[[Pattern, History, float], float | None]
"""Rehearses a working: how many slips that bring bands down a maker makes on average.

Returns None if that is not known when `time.monotonic()` reaches the third argument."""

REHEARSING = "rehearsing orders"
"""What is being done once all orders are tried."""
MOST_TRIED = 2000
"""Orders tried before the search ends by itself."""
_FEW_TRIES = 60
"""Orders tried to see whether a changed piece has one."""
_MOST_SHORTENED = 12
"""Workings that are shortened, those made thereby too."""
_SEARCHING = 0.7
"""The part of the time that goes into the search; in the rest its proposals are rehearsed."""


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
    if _is_finished(pattern):
        held = finding("holds-already", bands=draft.history.final.bands)
        return Proposals((), 0, cut_short=False, findings=(held,))
    began = time.monotonic()
    ends = began + seconds * (_SEARCHING if count_failures else 1)
    search = _Search(draft, most=most, tries=tries, ends=ends, progress=progress, found_more=found_more)
    with pause_collector():
        search.run()
    if not search.found:
        search.ends = began + seconds
        return Proposals((), search.tried, search.cut_short, search.explain(thorough=with_fix))
    shown = search.best()
    if count_failures is not None:
        if found_more is not None:
            found_more(Proposals(shown, search.tried, search.cut_short))
        rehearsed = []
        for number, one in enumerate(shown):
            progress(REHEARSING, number, len(shown))
            rehearsed.append(_with_failures(one, count_failures, began + seconds))
        shown = tuple(rehearsed)
    return Proposals(shown, search.tried, search.cut_short)


def _is_finished(pattern: Pattern) -> bool:
    whole = replay_pattern(pattern)
    fastened = bool(whole.final.fasteners)
    return fastened and bool(every_band_is_held(whole.events, whole.board.spots, thorough=True))


def _with_failures(proposal: Proposal, count_failures: CountFailures, ends: float) -> Proposal:
    failures = count_failures(proposal.pattern, proposal.history, ends)
    return proposal._replace(measures=proposal.measures._replace(failures=failures))


class _Search:
    """The workings `found` of a draft, one for each object they make, and how many were `tried`."""

    def __init__(
        self,
        draft: PlanDraft,
        *,
        most: int,
        tries: int,
        ends: float,
        progress: ReportTries,
        found_more: Callable[[Proposals], None] | None,
    ) -> None:
        self.draft = draft
        self.most = most
        self.tries = tries
        self.ends = ends
        self.progress = progress
        self.found_more = found_more
        self.found: dict[object, Proposal] = {}
        self.tried = 0
        self.cut_short = False
        self.every: EveryOrder | None = None
        self.held: list[tuple[RankedWorking, RankedPegs]] = []

    def best(self) -> tuple[Proposal, ...]:
        """Return the easiest to teach of those found."""
        return tuple(sorted(self.found.values(), key=lambda one: one.measures.rank)[: self.most])

    def run(self) -> None:
        """Try likely workings; of a few bands every order, if none of those holds."""
        for make, worked in _candidates(self.draft):
            self.progress("trying orders", self.tried, self.tries)
            if self.tried >= self.tries or (self.found and self._out_of_time):
                self.cut_short = True
                return
            self.tried += 1
            proposal = make()
            self._keep(proposal)
            if proposal is not None and worked is not None:
                self.held.append(worked)
            if self._out_of_time:
                self.cut_short = True
                break
        bands = self.draft.history.final.bands
        if self.draft.homes and bands <= FEW_BANDS:
            self._try_every_order()
        elif self.draft.homes and bands <= SHORTENED_BANDS:
            self._shorten()

    @property
    def _out_of_time(self) -> bool:
        return time.monotonic() > self.ends

    def _keep(self, proposal: Proposal | None) -> None:
        if proposal is None:
            return
        made = made_object(proposal)
        known = self.found.get(made)
        if known is None or proposal.measures.rank < known.measures.rank:
            self.found[made] = proposal
            if self.found_more is not None and proposal in (best := self.best()):
                self.found_more(Proposals(best, self.tried, cut_short=True))

    def _try_every_order(self) -> None:
        """Try every order until enough hold; where likely ones held, only those with fewer phrases."""
        likely = bool(self.found)
        self.every = find_every_order(self.draft, self.ends)
        workings = list(self.every.workings)
        if likely:
            workings.sort(key=lambda one: describe(one[0].moves).phrases)
        for working, last in workings:
            self.progress("trying every order", self.tried, self.tries)
            if self._out_of_time or (not likely and len(self.found) >= self.most):
                self.cut_short = not self.found
                break
            if likely and not self._is_shorter(working, self.draft):
                break
            self.tried += 1
            self._keep(prove_at(self.draft, working, last))

    def _is_shorter(self, working: RankedWorking, draft: PlanDraft) -> bool:
        """Say whether a working may take fewer phrases than any found; one phrase is the least finish."""
        finish = 0 if draft.finish else 1
        fewest = min((one.measures.phrases for one in self.found.values()), default=None)
        return fewest is None or describe(working.moves).phrases + finish < fewest

    def _shorten(self) -> None:
        """Shorten the workings that held, those of fewest phrases first, and what comes of that again."""
        waiting = sorted(self.held, key=lambda one: describe(one[0].moves).phrases)[:_MOST_SHORTENED]
        rounds = 0
        while waiting and rounds < _MOST_SHORTENED:
            working, ranked = waiting.pop(0)
            rounds += 1
            for shorter in shorten(self.draft, working):
                self.progress("shortening orders", self.tried, self.tries)
                if self._out_of_time or not self._is_shorter(shorter, self.draft):
                    break
                self.tried += 1
                proposal = prove_working(self.draft, shorter, ranked)
                if proposal is not None:
                    self._keep(proposal)
                    waiting.insert(0, (shorter, ranked))
                    break

    def explain(self, *, thorough: bool) -> tuple[Finding, ...]:
        """Say why nothing was found; `thorough` looks for what would help, and for moves in the way."""
        bands = self.draft.history.final.bands
        if thorough and (conflicts := find_conflicts(self.draft, self._has_order)):
            return conflicts
        if self.every is not None and self.every.complete and not self.cut_short:
            never = self.every.never
            fix = self._find_addition() if thorough else None
            place = Location("/steps")
            return (finding("order-none", place, fix=fix, laid=bands, bands=never, count=len(never)),)
        code = "order-not-found" if self.draft.links else "nothing-to-work"
        fix = self._find_crossing() if thorough else None
        return (finding(code, Location("/steps"), fix=fix, bands=bands, tried=self.tried),)

    def _has_order(self, pattern: Pattern) -> bool:
        left = max(0.0, self.ends - time.monotonic())
        plans = propose(pattern, most=1, seconds=left, tries=_FEW_TRIES, with_fix=False)
        return bool(plans.found) or any(f.code == "holds-already" for f in plans.findings)

    def _find_crossing(self) -> Fix | None:
        """Return a fix that lays the first band crossed, as a tail needs it, if then an order holds."""
        if next(work_by_lifting(self.draft), None) is None:
            return None
        first = self.draft.opening[0]
        if not isinstance(first, Place) or any(first.twists) or len(first.over) != 2:
            return None
        crossed = msgspec.structs.replace(first, twists=(1,))
        steps = (crossed, *self.draft.opening[1:], *self.draft.finish)
        if not self._has_order(msgspec.structs.replace(self.draft.pattern, steps=steps)):
            return None
        label = phrase("mend-twist", step=1, peg=first.over[0], other=first.over[1])
        return Fix(label, change_step("/steps", 0, crossed))

    def _find_addition(self) -> Fix | None:
        """Return a fix that lays a cap or band last, so that some order holds; None if none does."""
        draft = self.draft
        for addition in additions(draft):
            if self._out_of_time:
                return None
            steps = (*draft.opening, addition, *draft.finish)
            if self._has_order(msgspec.structs.replace(draft.pattern, steps=steps)):
                if isinstance(addition, Wind):
                    label = phrase("lay-cap", peg=addition.on)
                else:
                    label = phrase("lay-band", peg=addition.over[0], other=addition.over[1])
                return Fix(label, put_in("/steps", len(draft.opening), addition))
        return None


_Candidate = tuple[Callable[[], Proposal | None], tuple[RankedWorking, RankedPegs] | None]


def _candidates(draft: PlanDraft) -> Iterator[_Candidate]:
    """Yield what to try, each once; bands that lie round on round are lifted over before any is hooked."""
    for lifted in work_by_lifting(draft):
        yield partial(prove_lifted, draft, lifted), None
    for working, ranked in _workings(draft):
        yield partial(prove_working, draft, working, ranked), (working, ranked)


def _workings(draft: PlanDraft) -> Iterator[tuple[RankedWorking, RankedPegs]]:
    """Yield the workings to try, each once."""
    seen: set[tuple[Move, ...]] = set()
    for ranked in rank_pegs(draft):
        working = work_by_rank(draft, ranked)
        if working.key and working.key not in seen:
            seen.add(working.key)
            yield working, ranked
