"""A recording of a lesson laid beside the lesson of its pattern."""

from __future__ import annotations

from collections.abc import Sequence

from pegwright.listening import Cue, RecordingComparison, compare_recording
from pegwright.workshop.lesson_plan import lesson_of
from pegwright.workshop.line import Work


def listen_to_lesson(made: Work, cues: Sequence[Cue], language: str) -> RecordingComparison:
    """Return when each chapter of a piece's lesson begins in its recording, and what that says otherwise.

    Raises:
        ValueError: there are no words for the language.
    """
    return compare_recording(lesson_of(made, language), cues)
