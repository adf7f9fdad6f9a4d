"""Small pieces of our own whose slips can be followed by hand."""

from __future__ import annotations

from functools import cache

from examples.pieces import PIECES, SWATCHES
from pegwright.fit import count_supplies
from pegwright.lesson import HoldResult, Lesson, SnapResult, plan_lesson
from pegwright.loom import History, replay_pattern
from pegwright.pattern import Pattern, PatternBuilder, Rows, expand
from pegwright.rehearsal import (
    DEFAULT_WEIGHTS,
    Outcome,
    Rehearsal,
    SlipOutcomes,
    assemble_rehearsal,
    find_slips,
    prepare_history,
    rehearse,
    slip_chances,
)
from pegwright.rehearsal.judge import Judge
from pegwright.rehearsal.outcome import outcome_of
from pegwright.rehearsal.slip_run import replay_slips


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


RISKY: dict[str, dict[str, tuple[int, ...]]] = {
    "ebb-line": {
        "step-skipped": (24, 51),
        "wrong-colour": (24,),
        "loom-not-turned": (25,),
        "outside": (48,),
        "too-shallow": (49,),
        "not-all-caught": (50,),
        "steps-swapped": (50,),
        "end-slips-off": (51,),
    },
    "twin-hulls": {
        "step-skipped": (46, 72),
        "steps-swapped": (46, 72),
        "loom-not-turned": (48,),
        "outside": (70,),
        "too-shallow": (71,),
        "end-slips-off": (73,),
        "one-loop-caught": (73,),
    },
    "riding-lights": {
        "wrong-peg": (0, 32, 54),
        "step-skipped": (4, 49),
        "cap-wound-once": (33,),
        "outside": (59, 62),
        "too-shallow": (62,),
        "loop-above": (64,),
        "end-slips-off": (106,),
        "one-loop-caught": (106,),
    },
    "herring-tail": {
        "step-skipped": (0, 1, 76, 77),
        "twist-forgotten": (0,),
        "wrong-colour": (1,),
        "loop-above": (3, 4),
        "wrong-peg": (3, 70),
        "steps-swapped": (76,),
        "end-slips-off": (77,),
    },
    "slack-water-mat": {
        "step-skipped": (11, 159),
        "wrong-peg": (11,),
        "loom-not-turned": (104,),
        "outside": (158,),
        "too-shallow": (158,),
        "one-loop-caught": (159,),
    },
    "lobster-pot": {
        "step-skipped": (0, 108),
        "wrong-peg": (0,),
        "loop-above": (24,),
        "one-of-several": (24,),
        "one-loop-caught": (108,),
    },
    "buoy-line": {
        "step-skipped": (20, 44, 48),
        "wrong-colour": (20,),
        "cap-wound-once": (44,),
        "outside": (45, 46),
        "too-shallow": (45, 46),
        "not-all-caught": (47,),
        "steps-swapped": (47,),
        "end-slips-off": (48,),
    },
}
"""The slips that a whole rehearsal of each demo puts first, by kind, with the indices of their moves."""


@cache
def partly_rehearsed(name: str) -> Rehearsal:
    """Rehearse only the slips of a demo that its lesson warns of: its handout then looks as it is pressed."""
    made = PIECES[name]()
    history = history_of(made)
    slips = find_slips(history)
    judge = Judge(prepare_history(history))
    some = [slip for slip in slips if slip.at in RISKY[name].get(slip.kind, ())]
    assert {slip.kind for slip in some} == set(RISKY[name])
    outcomes = [outcome_of(judge.prepared, judge, replay_slips(judge.prepared, slip)) for slip in some]
    found = SlipOutcomes(
        tried=len(some),
        judged=len(judge.known),
        open=0,
        outcomes=tuple(o for o in outcomes if o is not None),
        proved=(),
    )
    return assemble_rehearsal(made.title, history, found, slip_chances(DEFAULT_WEIGHTS, slips), 3)
