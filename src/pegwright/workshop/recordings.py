"""A recording of a lesson laid beside the lesson of its pattern."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Any

import msgspec

from pegwright.lesson import Caption, Chapter, Lesson, named_pictures
from pegwright.listening import Cue, RecordingComparison, compare_recording, correct_cues
from pegwright.pattern import Pattern, read_pattern, write_pattern
from pegwright.press import (
    captions_srt,
    captions_vtt,
    chapters_text,
    chapters_vtt,
    picture_file,
    still_file,
)
from pegwright.workshop.lesson_plan import lesson_of
from pegwright.workshop.line import Work
from pegwright.workshop.progress import ReportProgress, report_nothing

LONGEST_STEP_S = 3600.0


def listen_to_lesson(
    made: Work, cues: Sequence[Cue], language: str, progress: ReportProgress = report_nothing
) -> tuple[Lesson, RecordingComparison]:
    """Return a piece's lesson, when its chapters begin in a recording, and what that says otherwise.

    Raises:
        ValueError: there are no words for the language.
    """
    progress("lesson", 0, 2)
    lesson = lesson_of(made, language)
    progress("listen", 1, 2)
    return lesson, compare_recording(lesson, cues)


def refuse_mends(
    told: RecordingComparison, cues: Sequence[Cue], refused: Collection[int]
) -> RecordingComparison:
    """Return the comparison with captions in which the mends of those places (from 0) are not made."""
    if not refused:
        return told
    kept = [one for i, one in enumerate(told.corrections) if i not in refused]
    return told._replace(captions=correct_cues(cues, kept))


def recording_files(lesson: Lesson, told: RecordingComparison) -> dict[str, bytes]:
    """Return the files that go with a recording, by name: mended captions, chapters, steps, cuts."""
    captions = [Caption(one.start_s, one.end_s, (one.text,)) for one in told.captions]
    chapters = [Chapter(start_s=one.start_s, end_s=one.end_s, title=one.title) for one in told.chapters]
    texts = {
        "captions.vtt": captions_vtt(captions, lesson.language),
        "captions.srt": captions_srt(captions),
        "chapters.vtt": chapters_vtt(chapters),
        "chapters.txt": chapters_text(chapters),
    }
    named = step_files(lesson)
    lists = {
        "corrections.json": [one._asdict() for one in told.corrections],
        "steps.json": [{**one._asdict(), **named[one.number]} for one in told.steps],
        "trims.json": [one._asdict() for one in told.trims],
    }
    files = {name: text.encode() for name, text in texts.items()}
    return files | {
        name: msgspec.json.format(msgspec.json.encode(one)) + b"\n" for name, one in lists.items()
    }


def pace_patch(made: Work, lesson: Lesson, told: RecordingComparison) -> tuple[dict[str, Any], ...]:
    """Return a JSON Patch (RFC 6902) that keeps with each step how long the teacher was heard to show it.

    Asides, and lines that are begun and then said anew, are not counted. A step that counts rounds is left
    out: a film cuts them.
    """
    steps = {step.number: step for step in lesson.steps}
    taught: dict[str, float] = {}
    for one in told.steps:
        step = steps[one.number]
        end_s = one.start_s + one.spoken_s
        lost_s = sum(
            max(0.0, min(end_s, trim.end_s) - max(one.start_s, trim.start_s))
            for trim in told.trims
            if trim.why != "silence"
        )
        seconds = round(min(LONGEST_STEP_S, one.spoken_s - lost_s), 1)
        if step.first and not step.ticks and seconds > 0:
            taught.setdefault(made.history.moves[step.first - 1].located.path, seconds)
    return tuple({"op": "add", "path": f"{path}/taught_s", "value": s} for path, s in taught.items())


def keep_pace(made: Work, lesson: Lesson, told: RecordingComparison) -> Pattern:
    """Return the pattern with how long the teacher was heard to show each step."""
    raw = msgspec.json.decode(write_pattern(made.pattern))
    for op in pace_patch(made, lesson, told):
        here = raw
        *way, field = op["path"].split("/")[1:]
        for part in way:
            here = here[int(part) if isinstance(here, list) else part]
        here[field] = op["value"]
    kept = read_pattern(msgspec.json.encode(raw)).pattern
    assert kept is not None
    return kept


def step_files(lesson: Lesson) -> dict[int, dict[str, list[str]]]:
    """Return for each step the files of a lesson that show it: `pictures`, and `stills` for a film."""
    return {
        step.number: {
            "pictures": [picture_file(name) for name, _ in named_pictures(step)],
            "stills": [still_file(name) for name, _ in named_pictures(step)],
        }
        for step in lesson.steps
    }
