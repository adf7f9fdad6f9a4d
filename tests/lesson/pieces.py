"""Small pieces of our own for the lesson's and the press's tests: tides and boats, no outside data."""

from __future__ import annotations

from typing import Any

from pegwright.fit import count_supplies
from pegwright.lesson import HoldResult, Lesson, Picture, SnapResult, plan_lesson
from pegwright.loom import History, replay_pattern
from pegwright.pattern import Pattern, PatternBuilder, Rows, expand


def work(pattern: Pattern) -> History:
    expansion = expand(pattern)
    history = replay_pattern(pattern, expansion)
    assert not expansion.findings
    assert not history.findings
    return history


def lesson(pattern: Pattern, verdict: HoldResult | None = None, **options: Any) -> Lesson:
    history = work(pattern)
    bands = history.final.bands
    given = verdict or HoldResult(held=True, bands=bands, snap=SnapResult(worst_loses=bands - 1))
    return plan_lesson(pattern, history, count_supplies(pattern, history), given, **options)


def ebb(title: str = "Ebb line", colour: str = "slate", note: str = "", spelled_out: bool = False) -> Pattern:
    """A plain chain on 9 pegs, bound, lengthened and closed; with repeats, or with every move spelled out."""
    m = PatternBuilder(title, Rows(rows=1, pegs=9), designer="the Saturday workshop", notes=note)
    m.colour("A", colour, "#4a5a6a").colour("B", "foam", "#cfe8e2")
    if spelled_out:
        for k in range(8):
            m.place("A", f"A{k + 1}", f"A{k + 2}")
        m.turn()
        for k in range(7):
            m.hook(f"A{8 - k}", f"A{7 - k}")
    else:
        with m.repeat(8, pegs=1):
            m.place("A", "A1", "A2")
        m.turn()
        with m.repeat(7, pegs=-1):
            m.hook("A8", "A7")
    m.bind("B", "A1")
    m.extend("B", 3)
    m.clip("end", "A9")
    return m.pattern()


def dinghy(mirrored: bool = False) -> Pattern:
    """A sail on three rows: not its own mirror image, one band half-twisted, one wound as a cap."""
    m = PatternBuilder("Dinghy", Rows(rows=3, pegs=3))
    m.colour("H", "hull brown", "#7a4a2b").colour("S", "sail white", "#f5f2ea")
    with m.motif("sail"):
        m.place("H", "A1", "B1")
        m.place("S", "A1", "A3", "C1")
        m.place("S", "A1", "B2", twists=(1,))
        m.wind("H", "B2", turns=3)
        m.hook("B2", "A2", loop=1)
        m.knot("A2")
    m.use("sail", mirror=("rows",) if mirrored else ())
    return m.pattern()


def smack() -> Pattern:
    """Fish-tail work on two pegs: placed and lifted over, again and again in the same place."""
    m = PatternBuilder("Smack", Rows(rows=2, pegs=1))
    m.colour("A", "tar", "#202428").colour("B", "buoy", "#d8572a")
    m.place("A", "A1", "B1", twists=(1,))
    m.place("B", "A1", "B1")
    with m.repeat(5):
        m.place("A", "A1", "B1")
        m.lift("A1")
        m.lift("B1")
    m.lift("A1")
    m.lift("B1")
    m.transfer("B1", "A1")
    m.knot("A1")
    return m.pattern()


def pictures_of(lesson: Lesson) -> list[Picture]:
    """Return every picture of a lesson but those of mistakes, in reading order."""
    found: list[Picture] = []
    for phase in lesson.phases:
        for step in phase.steps:
            found += step.pictures
            found += [phase.holding] if phase.holding and step is phase.steps[0] else []
            found += [step.closeup] if step.closeup else []
        found += phase.check.chart if phase.check else ()
    return found


def everything(lesson: Lesson) -> str:
    """Return the lesson's words as plain text, in reading order."""
    lines = [lesson.title, lesson.byline, lesson.edition, lesson.level.heading, *lesson.level.lines]
    lines += [lesson.safety.heading, *lesson.safety.lines, *lesson.bands]
    lines.append(lesson.supplies.heading)
    lines += [f"{row.letter} {row.name}: {row.count} ({row.purpose})" for row in lesson.supplies.bands]
    lines += [f"{lesson.supplies.total}: {lesson.supplies.total_count}", *lesson.supplies.things]
    lines += [lesson.tools.heading, *lesson.tools.lines, lesson.hold.heading, *lesson.hold.lines]
    for phase in lesson.phases:
        lines += ["", f"== {phase.heading}", *([phase.intro] if phase.intro else [])]
        lines += [f"   picture: {phase.holding.text}"] if phase.holding else []
        for step in phase.steps:
            lines += [f"{step.number}. {step.instruction}", *(f"   {d}" for d in step.detail)]
            lines += [f"   ({text})" for text in step.legend]
            lines += [f"   [] {tick}" for tick in step.ticks]
            lines += [f"   picture: {picture.text}" for picture in step.pictures]
            if step.closeup:
                lines.append(f"   close-up: {step.closeup.text}")
        if phase.check:
            lines += [f"-- {phase.check.heading}", *phase.check.lines, phase.check.remedy]
            lines += [phase.check.chart_heading, *(picture.text for picture in phase.check.chart)]
    lines += ["", lesson.cautions.heading, *lesson.cautions.lines]
    return "\n".join(lines) + "\n"


def buoys() -> Pattern:
    """A short line with a band hung from the hook and slid on."""
    m = PatternBuilder("Buoys", Rows(rows=1, pegs=4))
    m.colour("A", "rope", "#6b5a3a").colour("R", "red", "#b03020")
    for k in (1, 2, 3):
        m.place("A", f"A{k}", f"A{k + 1}")
    m.hang("R", turns=2)
    m.slide("A3", "A2", loop=1)
    m.hook("A2", "A1", loop=1, through=1)
    m.knot("A1")
    return m.pattern()
