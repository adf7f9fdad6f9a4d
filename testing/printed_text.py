"""A lesson's numbered steps as plain text, as one copies them from the page."""

from __future__ import annotations

from pegwright.lesson import Lesson


def print_steps(lesson: Lesson) -> str:
    """Return title, tools and steps, a line each."""
    lines = [lesson.title, *lesson.tools.lines]
    for phase in lesson.phases:
        lines += [phase.heading, phase.intro]
        for step in phase.steps:
            lines += [f"{step.number} {step.instruction}", *step.detail, step.note, step.warning, *step.ticks]
    return "\n".join(lines)
