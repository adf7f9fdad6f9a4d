"""Small pieces of our own whose slips can be followed by hand."""

from __future__ import annotations

from functools import cache

from examples.pieces import PIECES, SWATCHES
from pegwright.fit import count_supplies
from pegwright.lesson import HoldResult, Lesson, SnapResult, plan_lesson
from pegwright.loom import History, replay_pattern
from pegwright.pattern import Pattern, PatternBuilder, Rows, expand
from pegwright.rehearsal import Outcome, Rehearsal, rehearse


def history_of(pattern: Pattern) -> History:
    expansion = expand(pattern)
    history = replay_pattern(pattern, expansion)
    assert not expansion.findings
    assert not history.findings
    return history


def jetty() -> Pattern:
    """A plain chain of five bands over six pegs, bound and clipped at its end only."""
    m = (
        PatternBuilder("Jetty", Rows(rows=1, pegs=6))
        .colour("A", "slate", "#34506b")
        .colour("F", "foam", "#f2efe6")
    )
    for k in range(1, 6):
        m.place("AF"[k % 2], f"A{k}", f"A{k + 1}")
    m.turn()
    for k in range(5, 1, -1):
        m.hook(f"A{k}", f"A{k - 1}")
    m.bind("A", "A1")
    m.clip("end")
    return m.pattern()


def caps() -> Pattern:
    """A wound cap on which a chain of two begins."""
    m = PatternBuilder("Caps", Rows(rows=1, pegs=4)).colour("A", "slate", "#34506b")
    m.place("A", "A1", "A2")
    m.place("A", "A2", "A3")
    m.wind("A", "A3", 3)
    m.hook("A3", "A2")
    m.hook("A2", "A1")
    m.clip("A1")
    return m.pattern()


SMALL = {"jetty": jetty, "caps": caps}


@cache
def rehearsed(name: str) -> Rehearsal:
    pattern = SMALL.get(name, (PIECES | SWATCHES).get(name))
    assert pattern is not None
    made = pattern()
    return rehearse(made, history_of(made), settle=0)


def outcome(told: Rehearsal, kind: str, step: int) -> Outcome:
    return next(o for o in told.outcomes if o.slip.kind == kind and o.step == step)


@cache
def lesson_of(name: str, language: str = "en", carried: bool = True) -> Lesson:
    """The lesson of a small piece, with what its rehearsal found or without."""
    told, pattern = rehearsed(name), SMALL[name]()
    verdict = HoldResult(held=True, bands=told.history.final.bands, snap=SnapResult(worst_loses=1))
    return plan_lesson(
        pattern,
        told.history,
        count_supplies(pattern, told.history),
        verdict,
        language=language,
        rehearsal=told if carried else None,
    )
