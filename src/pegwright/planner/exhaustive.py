"""Every possible order for pieces of a few bands: each band moves one loop to another of its pegs, or none.

Orders that lead to the same loops in the same places, threaded the same way, are merged and continued once
(compare the collapse of equal states in machine knitting: Lin and McCann 2021).
"""

from __future__ import annotations

import time
from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple

from pegwright.loom import AppliedMove, Effect, State, apply_move
from pegwright.pattern import Hook, LocatedMove
from pegwright.planner.draft import PlanDraft
from pegwright.planner.finishes import given_last_pegs
from pegwright.planner.ranked_working import RankedWorking, say_hook

__all__ = ["EveryOrder", "find_every_order"]


class EveryOrder(NamedTuple):
    """The possible ends at which every band might be held, and a working for each.

    `workings` holds workings with the one or two pegs where they finish, single pegs first: in each, every
    band has something through it or lies on one of those pegs. `never` holds the bands for which that is
    never true. `complete` means that none was left out for lack of time.
    """

    workings: tuple[tuple[RankedWorking, tuple[str, ...]], ...]
    never: tuple[int, ...]
    complete: bool


def find_every_order(draft: PlanDraft, ends: float) -> EveryOrder:
    """Work the bands in every order until `time.monotonic()` reaches `ends`; nothing is dragged."""
    bands = set(range(1, draft.history.final.bands + 1))
    given = given_last_pegs(draft)
    start = RankedWorking((), (), draft.history.final)
    seen = {_key(start.after)}
    waiting = [start]
    found: list[tuple[RankedWorking, tuple[str, ...]]] = []
    lonely: set[int] | None = None
    complete = True
    while waiting:
        if time.monotonic() > ends:
            complete = False
            break
        working = waiting.pop()
        state = working.after
        passed = {loop.band for loop, ribbons in state.inside.items() if ribbons}
        for last in _last_pegs(state, given):
            alone = bands - passed - {bight.band for peg in last for bight in state.stack(peg)}
            lonely = alone if lonely is None else lonely & alone
            if not alone:
                found.append((working, last))
        for after in _next(draft, working):
            key = _key(after.after)
            if key not in seen:
                seen.add(key)
                waiting.append(after)
    found.sort(key=lambda one: (len(one[1]), len(one[0].moves)))
    return EveryOrder(tuple(found), tuple(sorted(lonely or ())) if complete else (), complete)


def _last_pegs(state: State, given: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """Yield the pegs where the piece may finish: those of the given finish, or any one or two."""
    if given:
        yield given
        return
    for count in (1, 2):
        yield from combinations(sorted(state.stacks), count)


def _key(state: State) -> object:
    return state.stacks, state.inside


def _next(draft: PlanDraft, working: RankedWorking) -> Iterator[RankedWorking]:
    """Yield the workings with one more loop hooked."""
    board, state = draft.history.board, working.after
    moved = {event.bight.band for one in working.applied for event in one.events if hasattr(event, "bight")}
    for peg, loops in state.stacks.items():
        for at, bight in enumerate(loops):
            if bight.band in moved or state.inside.get(bight) or bight not in draft.homes:
                continue
            for other in draft.homes[bight]:
                move = Hook(source=peg, target=other, loop=at + 1)
                outcome = apply_move(board, state, move)
                if isinstance(outcome, Effect):
                    done = AppliedMove(LocatedMove(move, ""), outcome.events, outcome.state)
                    said = say_hook(working.moves, move, at - len(loops))
                    yield RankedWorking(said, (*working.applied, done), outcome.state)
