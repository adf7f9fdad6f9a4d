"""A recording of a lesson laid beside the lesson of its pattern."""

from __future__ import annotations

from collections.abc import Sequence

from pegwright.finding import Finding
from pegwright.lesson import write_script
from pegwright.listening import Cue, HeardChapter, find_chapters
from pegwright.workshop.lesson_plan import lesson_of
from pegwright.workshop.line import Work


def find_recorded_chapters(
    made: Work, cues: Sequence[Cue], language: str
) -> tuple[tuple[HeardChapter, ...], tuple[Finding, ...]]:
    """Return when each chapter of a piece's lesson begins in its recording, and a finding for those unheard.

    Raises:
        ValueError: there are no words for the language.
    """
    return find_chapters(write_script(lesson_of(made, language)), cues)
