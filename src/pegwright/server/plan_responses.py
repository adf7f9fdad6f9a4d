"""Working orders and mends as the page is told of them: whole documents, each proved, with its measures."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Any

import msgspec

from pegwright.finding import Language, WordedFinding, word_finding, word_phrase
from pegwright.pattern import Pattern, write_pattern
from pegwright.planner import Effort, Measures, Mend, Proposal, Proposals, measure_given_working
from pegwright.workshop import ReportProgress, mend_piece, plan_piece, simplify_piece

__all__ = [
    "EffortResponse",
    "MeasuresResponse",
    "MendResponse",
    "MendsResponse",
    "OrderResponse",
    "OrdersResponse",
    "SimplerResponse",
    "find_mends",
    "find_orders",
]

ORDERS = 5
MENDS = 3
_SIMPLIFYING = 0.3
"""The part of the time in which to look for a simpler order of the same moves."""


class MeasuresResponse(msgspec.Struct, frozen=True, kw_only=True):
    """What tells one working order from another (see `Measures`)."""

    phrases: int
    loops_above: int
    travel_mm: float
    symmetry: float | None
    failures: float | None
    loose_loops: int
    cautions: int


class OrderResponse(MeasuresResponse, frozen=True, kw_only=True):
    """The piece with a working order written out, and its measures."""

    document: dict[str, Any]


class EffortResponse(msgspec.Struct, frozen=True, kw_only=True):
    """What a whole working asks of teacher and maker (see `Effort`)."""

    phrases: int
    colour_changes: int
    travel_mm: float


class SimplerResponse(msgspec.Struct, frozen=True, kw_only=True):
    """The same piece in a simpler order of its own moves, and the effort before and after."""

    document: dict[str, Any]
    before: EffortResponse
    after: EffortResponse


class OrdersResponse(msgspec.Struct, frozen=True, kw_only=True):
    """The orders found, the easiest to teach first; with `cut_short` not all were tried.

    `given` are the measures of the working that the piece has already, if it is whole, and `simpler` is the
    same piece worked more simply, if that is found.
    """

    orders: tuple[OrderResponse, ...]
    given: MeasuresResponse | None
    simpler: SimplerResponse | None
    tried: int
    cut_short: bool
    findings: tuple[WordedFinding, ...]


class MendResponse(msgspec.Struct, frozen=True, kw_only=True):
    """The piece with one change under which every band holds, and that change in words."""

    label: str
    document: dict[str, Any]


class MendsResponse(msgspec.Struct, frozen=True, kw_only=True):
    """The mends found, the smallest change first; `findings` say what was wrong, the cause first."""

    mends: tuple[MendResponse, ...]
    tried: int
    cut_short: bool
    findings: tuple[WordedFinding, ...]


def find_orders(
    pattern: Pattern,
    language: Language,
    progress: ReportProgress,
    found_more: Callable[[OrdersResponse], None],
    *,
    afresh: bool,
    seconds: float,
) -> OrdersResponse:
    """Propose working orders. `found_more` hears the best so far each time that there is a better one."""

    began = time.monotonic()
    given = measure_given_working(pattern)
    simpler = _simplify(pattern, seconds * _SIMPLIFYING, progress) if afresh and given is not None else None

    def respond(plans: Proposals) -> OrdersResponse:
        return OrdersResponse(
            orders=tuple(map(_order, plans.found)),
            given=None if given is None else MeasuresResponse(**_measures(given)),
            simpler=simpler,
            tried=plans.tried,
            cut_short=plans.cut_short,
            findings=tuple(word_finding(each, language) for each in plans.findings),
        )

    return respond(
        plan_piece(
            pattern,
            most=ORDERS,
            seconds=max(0.0, seconds - (time.monotonic() - began)),
            afresh=afresh,
            rehearsed=True,
            progress=progress,
            found_more=lambda plans: found_more(respond(plans)),
        )
    )


def find_mends(
    pattern: Pattern, language: Language, progress: ReportProgress, *, seconds: float
) -> MendsResponse:
    """Find changes that make every band of a piece hold."""
    mends = mend_piece(pattern, most=MENDS, seconds=seconds, progress=progress)
    return MendsResponse(
        mends=tuple(_mend(one, language) for one in mends.found),
        tried=mends.tried,
        cut_short=mends.cut_short,
        findings=tuple(word_finding(each, language) for each in mends.findings),
    )


def _simplify(pattern: Pattern, seconds: float, progress: ReportProgress) -> SimplerResponse | None:
    made = simplify_piece(pattern, seconds=seconds, progress=progress)
    if made.pattern is None or made.after is None:
        return None
    return SimplerResponse(
        document=_document(made.pattern), before=_effort(made.before), after=_effort(made.after)
    )


def _effort(effort: Effort) -> EffortResponse:
    return EffortResponse(
        phrases=effort.phrases,
        colour_changes=effort.colour_changes,
        travel_mm=round(effort.travel_mm, 1),
    )


def _order(one: Proposal) -> OrderResponse:
    return OrderResponse(document=_document(one.pattern), **_measures(one.measures))


def _measures(measures: Measures) -> dict[str, Any]:
    return {
        "phrases": measures.phrases,
        "loops_above": measures.loops_above,
        "travel_mm": round(measures.travel_mm, 1),
        "symmetry": measures.symmetry,
        "failures": None if measures.failures is None else round(measures.failures, 3),
        "loose_loops": measures.loose_loops,
        "cautions": measures.cautions,
    }


def _mend(one: Mend, language: Language) -> MendResponse:
    return MendResponse(label=word_phrase(one.fix.label, language), document=_document(one.pattern))


def _document(pattern: Pattern) -> dict[str, Any]:
    return dict(msgspec.json.decode(write_pattern(pattern)))
