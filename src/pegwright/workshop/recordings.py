"""A recording of a lesson laid beside the lesson of its pattern."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from pegwright.lesson import Caption, Chapter
from pegwright.listening import Cue, RecordingComparison, compare_recording
from pegwright.press import captions_srt, captions_vtt, chapters_text, chapters_vtt
from pegwright.workshop.lesson_plan import lesson_of
from pegwright.workshop.line import Work


def listen_to_lesson(made: Work, cues: Sequence[Cue], language: str) -> RecordingComparison:
    """Return when each chapter of a piece's lesson begins in its recording, and what that says otherwise.

    Raises:
        ValueError: there are no words for the language.
    """
    return compare_recording(lesson_of(made, language), cues)


def recording_files(told: RecordingComparison, language: str) -> dict[str, bytes]:
    """Return the files that go with a recording, by name: mended captions, chapters, steps, cuts."""
    captions = [Caption(one.start_s, one.end_s, (one.text,)) for one in told.captions]
    chapters = [Chapter(start_s=one.start_s, end_s=one.end_s, title=one.title) for one in told.chapters]
    texts = {
        "captions.vtt": captions_vtt(captions, language),
        "captions.srt": captions_srt(captions),
        "chapters.vtt": chapters_vtt(chapters),
        "chapters.txt": chapters_text(chapters),
    }
    lists = {
        "corrections.json": [one._asdict() for one in told.corrections],
        "steps.json": [one._asdict() for one in told.steps],
        "trims.json": [one._asdict() for one in told.trims],
    }
    files = {name: text.encode() for name, text in texts.items()}
    return files | {
        name: msgspec.json.format(msgspec.json.encode(one)) + b"\n" for name, one in lists.items()
    }
