"""Calls the planner: working orders for a pattern, and mends for one that falls."""

from __future__ import annotations

import time
from collections.abc import Callable

from pegwright.loom import History
from pegwright.pattern import Pattern
from pegwright.planner import Mends, Proposals, Simpler, find_mends, find_simpler, propose, without_working
from pegwright.rehearsal import rehearse
from pegwright.workshop.progress import ReportProgress, report_nothing

__all__ = ["mend_piece", "plan_piece", "simplify_piece"]


def plan_piece(
    pattern: Pattern,
    *,
    most: int = 5,
    seconds: float = 10.0,
    afresh: bool = False,
    rehearsed: bool = False,
    progress: ReportProgress = report_nothing,
    found_more: Callable[[Proposals], None] | None = None,
) -> Proposals:
    """Propose up to `most` workings of the placed bands; `afresh` disregards the pattern's own.

    `found_more` is called with the best so far whenever a better one is found.
    """
    draft = without_working(pattern) if afresh else pattern
    count = _count_failures if rehearsed else None
    return propose(
        draft, most=most, seconds=seconds, count_failures=count, progress=progress, found_more=found_more
    )


class _OutOfTimeError(Exception):
    """The time for rehearsing is over."""


def _count_failures(pattern: Pattern, history: History, ends: float) -> float | None:
    def look_at_clock(_what: str, _done: int, _total: int) -> None:
        if time.monotonic() > ends:
            raise _OutOfTimeError

    try:
        return rehearse(pattern, history, settle=0, progress=look_at_clock).failures
    except _OutOfTimeError:
        return None


def mend_piece(
    pattern: Pattern, *, most: int = 3, seconds: float = 10.0, progress: ReportProgress = report_nothing
) -> Mends:
    """Find up to `most` changes that make a falling piece hold, by proof: single ones, or two together."""
    return find_mends(pattern, most=most, seconds=seconds, progress=progress)


def simplify_piece(
    pattern: Pattern, *, seconds: float = 5.0, progress: ReportProgress = report_nothing
) -> Simpler:
    """Look for a simpler order of a finished pattern's own moves, which makes the same piece."""
    return find_simpler(pattern, seconds=seconds, progress=progress)
