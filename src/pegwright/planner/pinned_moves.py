"""Moves that the maker has worked stay; where no order keeps them all, those in the way are named.

A step of the pattern that works loops is one pinned move, a repeat with all its rounds. First every pinned
move is let go; if an order is then found, they are put back one by one, as long as one is found still. Each
that cannot be put back is in conflict with some of the others, found by leaving out what makes no difference
(deletion, as for minimal unsatisfiable sets), or with the bands as they lie.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

import msgspec

from pegwright.finding import Finding, Fix, Location, Phrase, finding, phrase
from pegwright.loom import print_move
from pegwright.pattern import Pattern
from pegwright.planner.draft import PlanDraft, laying_steps
from pegwright.planner.step_lists import take_out

__all__ = ["find_conflicts"]


def find_conflicts(draft: PlanDraft, has_order: Callable[[Pattern], bool]) -> tuple[Finding, ...]:
    """Return a finding for each pinned move that no order keeps; none if letting them go does not help.

    `has_order` says whether an order is found for a pattern; it may say no for lack of time, and then more
    is named than need be, never less.
    """
    pinned = [at for at, step in enumerate(draft.opening) if laying_steps((step,)) != (step,)]
    if not pinned or not has_order(_keep(draft, ())):
        return ()
    kept: list[int] = []
    gone: list[int] = []
    for at in pinned:
        (kept if has_order(_keep(draft, (*kept, at))) else gone).append(at)
    return tuple(_tell(draft, at, _against(draft, at, kept, has_order), alone=len(gone) == 1) for at in gone)


def _keep(draft: PlanDraft, pinned: Iterable[int]) -> Pattern:
    """Return the pattern with only so many of its pinned moves."""
    stay = set(pinned)
    opening = tuple(
        one
        for at, step in enumerate(draft.opening)
        for one in ((step,) if at in stay else laying_steps((step,)))
    )
    return msgspec.structs.replace(draft.pattern, steps=(*opening, *draft.finish), stated=None)


def _against(
    draft: PlanDraft, at: int, kept: list[int], has_order: Callable[[Pattern], bool]
) -> tuple[int, ...]:
    """Return which of the kept moves a move is in conflict with; none if with the bands as they lie."""
    against = [other for other in kept if other < at]
    for other in tuple(against):
        fewer = [one for one in against if one != other]
        if not has_order(_keep(draft, (*fewer, at))):
            against = fewer
    return tuple(against)


def _tell(draft: PlanDraft, at: int, against: tuple[int, ...], *, alone: bool) -> Finding:
    numbers = draft.first_moves()
    step = draft.opening[at]
    fix = None
    if alone and not laying_steps((step,)):
        fix = Fix(phrase("let-go", pinned=_name(draft, at, numbers)), take_out("/steps", at))
    return finding(
        "order-pinned",
        Location(f"/steps/{at}", step=numbers[at] + 1),
        fix=fix,
        pinned=_name(draft, at, numbers),
        others=tuple(_name(draft, one, numbers) for one in against),
        count=len(against),
    )


def _name(draft: PlanDraft, at: int, numbers: list[int]) -> Phrase:
    """Name a pinned move by its number and what it does; a repeat by its first and last."""
    first, after = numbers[at], numbers[at + 1]
    if after - first > 1:
        return phrase("pinned-moves", first=first + 1, last=after)
    return phrase("pinned-move", step=first + 1, move=print_move(draft.history.moves[first].move))
