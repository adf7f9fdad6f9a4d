"""A lesson's words as plain text, as one copies them: steps of a page, rows of a script, a PDF."""

from __future__ import annotations

import io

import pypdfium2
from pypdf import PdfReader

from pegwright.lesson import Lesson, Table, script_leaf, write_script


def print_steps(lesson: Lesson) -> str:
    """Return title, tools and steps, a line each."""
    lines = [lesson.title, *lesson.tools.lines]
    for phase in lesson.phases:
        lines += [phase.heading, phase.intro]
        for step in phase.steps:
            lines += [f"{step.number} {step.instruction}", *step.detail, step.note, step.warning, *step.ticks]
    return "\n".join(lines)


def print_script(lesson: Lesson) -> str:
    """Return the rows of the script, a line each: the time, the step, what is said."""
    leaf = script_leaf(lesson, write_script(lesson))
    rows = (row for part in leaf.parts if isinstance(part, Table) for row in part.rows)
    return "\n".join([leaf.title, *(" ".join(row) for row in rows)])


def copied_texts(pdf: bytes) -> dict[str, str]:
    """Return the words of a PDF as two readers copy them out, each in its own order."""
    return {
        "pypdf": "\n".join(page.extract_text() for page in PdfReader(io.BytesIO(pdf)).pages),
        "pdfium": "\n".join(page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(pdf)),
    }
