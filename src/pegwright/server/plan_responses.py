"""Working orders and mends as the page is told of them: whole documents, each proved, with its measures."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import msgspec

from pegwright.finding import Language, WordedFinding, word_finding, word_phrase
from pegwright.pattern import Pattern, write_pattern
from pegwright.planner import Measures, Mend, Proposal, Proposals, measure_given_working
from pegwright.workshop import ReportProgress, mend_piece, plan_piece

__all__ = [
    "MeasuresResponse",
    "MendResponse",
    "MendsResponse",
    "OrderResponse",
    "OrdersResponse",
    "find_mends",
    "find_orders",
]

ORDERS = 5
MENDS = 3


class MeasuresResponse(msgspec.Struct, frozen=True, kw_only=True):
    """What tells one working order from another (see `Measures`)."""

    phrases: int
    loops_above: int
    travel_mm: float
    symmetry: float | None
    loose_loops: int
    cautions: int


class OrderResponse(MeasuresResponse, frozen=True, kw_only=True):
    """The piece with a working order written out, and its measures."""

    document: dict[str, Any]


class OrdersResponse(msgspec.Struct, frozen=True, kw_only=True):
    """The orders found, the easiest to teach first; with `cut_short` not all were tried.

    `given` are the measures of the working that the piece has already, if it is whole.
    """

    orders: tuple[OrderResponse, ...]
    given: MeasuresResponse | None
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

    given = measure_given_working(pattern)

    def respond(plans: Proposals) -> OrdersResponse:
        return OrdersResponse(
            orders=tuple(map(_order, plans.found)),
            given=None if given is None else MeasuresResponse(**_measures(given)),
            tried=plans.tried,
            cut_short=plans.cut_short,
            findings=tuple(word_finding(each, language) for each in plans.findings),
        )

    return respond(
        plan_piece(
            pattern,
            most=ORDERS,
            seconds=seconds,
            afresh=afresh,
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


def _order(one: Proposal) -> OrderResponse:
    return OrderResponse(document=_document(one.pattern), **_measures(one.measures))


def _measures(measures: Measures) -> dict[str, Any]:
    return {
        "phrases": measures.phrases,
        "loops_above": measures.loops_above,
        "travel_mm": round(measures.travel_mm, 1),
        "symmetry": measures.symmetry,
        "loose_loops": measures.loose_loops,
        "cautions": measures.cautions,
    }


def _mend(one: Mend, language: Language) -> MendResponse:
    return MendResponse(label=word_phrase(one.fix.label, language), document=_document(one.pattern))


def _document(pattern: Pattern) -> dict[str, Any]:
    return dict(msgspec.json.decode(write_pattern(pattern)))
