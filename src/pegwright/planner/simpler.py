"""The same piece, worked more simply: another order of its own moves."""

from __future__ import annotations

import time
from collections.abc import Sequence
from itertools import groupby
from typing import NamedTuple

import msgspec

from pegwright.finding import Finding, finding
from pegwright.loom import Bight, History, Laid, pause_collector, replay_pattern
from pegwright.pattern import Motif, Pattern, PatternStep, Repeat, Use, expand, motifs_by_name
from pegwright.planner.commuting_moves import Course, course_of, likely_orders
from pegwright.planner.description import describe
from pegwright.planner.draft import laying_steps
from pegwright.planner.given_working import spoken_moves
from pegwright.planner.measures import measure_working
from pegwright.planner.proposals import ReportTries, report_no_tries

__all__ = ["Effort", "Simpler", "find_simpler", "measure_effort"]

_MOST_MOVES = 1200


class Effort(NamedTuple):
    """What a whole working asks of teacher and maker: phrases, changes of colour, and the hook's travel."""

    phrases: int
    colour_changes: int
    travel_mm: float

    def is_better_than(self, other: Effort) -> bool:
        """Say whether it is worse in nothing and better in something."""
        mine, its = (one._replace(travel_mm=round(one.travel_mm)) for one in (self, other))
        return mine != its and all(a <= b for a, b in zip(mine, its, strict=True))


class Simpler(NamedTuple):
    """The same piece in another order: `pattern` with `after` for its effort, where there is a simpler one.

    `before` is the effort of the pattern as it is. `tried` counts the orders compared.
    """

    before: Effort
    after: Effort | None
    pattern: Pattern | None
    tried: int
    findings: tuple[Finding, ...] = ()


def measure_effort(history: History) -> Effort:
    """Measure a whole working, the laying with it."""
    spoken = tuple(spoken_moves(history, laying=True))
    return _effort(history, describe(spoken).phrases)


def _effort(history: History, phrases: int) -> Effort:
    colours = [colour for colour, _ in groupby(history.colours)]
    travel_mm = (
        measure_working(history.board, (), history.moves, phrases, 0).travel_mm if history.moves else 0.0
    )
    return Effort(phrases, max(0, len(colours) - 1), travel_mm)


def find_simpler(
    pattern: Pattern, *, seconds: float = 5.0, progress: ReportTries = report_no_tries
) -> Simpler:
    """Look for an order of the pattern's own moves that makes the equal structure and is simpler.

    Only moves that commute change places (`commuting_moves`), and the structures are compared besides. The
    order with the fewest phrases is taken, then with the fewest changes of colour, then with the least
    travel; in none of these is it worse. After `seconds` the best so far is returned.
    """
    ends = time.monotonic() + seconds
    expansion = expand(pattern)
    history = replay_pattern(pattern, expansion)
    wrong = tuple(f for f in (*expansion.findings, *history.findings) if f.severity == "error")
    before = measure_effort(history)
    if wrong or len(history.moves) > _MOST_MOVES:
        return Simpler(before, None, None, 0, wrong)
    spoken = tuple(spoken_moves(history, laying=True))
    course = course_of(history, spoken)
    best: tuple[Effort, Pattern] | None = None
    tried = 0
    with pause_collector():
        for order in likely_orders(course):
            progress("comparing orders", tried, 0)
            if time.monotonic() > ends:
                break
            tried += 1
            made = _write(pattern, course, order)
            effort = made[1]
            if effort.is_better_than(before) and (best is None or effort < best[0]):
                same = replay_pattern(made[0])
                if _rename(same, order) == _rename(history, range(len(spoken))):
                    best = (effort, made[0])
    if best is None:
        return Simpler(before, None, None, tried, (finding("no-simpler-order", tried=tried),))
    return Simpler(before, best[0], best[1], tried)


def _write(pattern: Pattern, course: Course, order: list[int]) -> tuple[Pattern, Effort]:
    """Write the moves in another order; steps before anything changes stay as the maker wrote them."""
    same = next((at for at, one in enumerate(order) if at != one), len(order))
    kept, count = 0, 0
    for step in pattern.steps:
        alone = msgspec.structs.replace(pattern, steps=(step,), stated=None)
        moves = len(expand(alone).moves)
        if laying_steps((step,)) != (step,) and not isinstance(step, Use):
            break
        if count + moves > same:
            break
        kept, count = kept + 1, count + moves
    rest = describe([course.spoken[at] for at in order[count:]]).steps
    steps = (*pattern.steps[:kept], *rest)
    made = msgspec.structs.replace(pattern, steps=steps, motifs=_used_motifs(pattern, steps))
    phrases = describe([course.spoken[at] for at in order]).phrases
    return made, _effort(replay_pattern(made), phrases)


def _used_motifs(pattern: Pattern, steps: tuple[PatternStep, ...]) -> tuple[Motif, ...]:
    named = motifs_by_name(pattern)
    used: set[str] = set()
    waiting = list(steps)
    while waiting:
        step = waiting.pop()
        if isinstance(step, Repeat):
            waiting += step.steps
        elif isinstance(step, Use) and step.name not in used and step.name in named:
            used.add(step.name)
            waiting += named[step.name].steps
    return tuple(motif for motif in pattern.motifs if motif.name in used)


def _rename(history: History, order: Sequence[int]) -> object:
    """Return what lies where and runs through what, each band named by the move that lays it.

    `order[k]` is the number of the k-th move in the order compared with.
    """
    names: dict[int, tuple[int, int]] = {}
    for at, done in zip(order, history.moves, strict=True):
        laid = [event.band for event in done.events if isinstance(event, Laid)]
        names |= {band: (at, number) for number, band in enumerate(laid)}

    def loops(of: tuple[Bight, ...]) -> tuple[object, ...]:
        return tuple((names[bight.band], bight.index) for bight in of)

    final = history.final
    return (
        {loops((loop,)): loops(ribbons) for loop, ribbons in final.inside.items()},
        {holder: loops(stack) for holder, stack in final.stacks.items()},
        [(fastener.kind, loops(fastener.caught)) for fastener in final.fasteners],
    )
