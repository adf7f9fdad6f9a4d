"""What the page is told of a recording: laid beside its lesson, or as a draft where it has no pattern yet."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from itertools import groupby
from typing import Any, Literal

import msgspec

from pegwright.finding import Finding, Language, WordedFinding, word_finding
from pegwright.listening import CaptionReading, contradiction_findings, draft_recording, read_captions
from pegwright.reading import Answers
from pegwright.server.read_responses import ReadResponse, ReadSentence, WordAnswer, reading_response
from pegwright.workshop import (
    ReportProgress,
    Work,
    listen_to_lesson,
    pace_patch,
    recording_files,
    refuse_mends,
    step_files,
)


class _Value(msgspec.Struct, frozen=True, kw_only=True):
    """Parts of an answer are values. All times are in s from the start of the recording."""


class CueResponse(_Value, frozen=True, kw_only=True):
    """What the captions say between two times, as it was heard."""

    start_s: float
    end_s: float
    text: str


class HeardChapterResponse(_Value, frozen=True, kw_only=True):
    """A chapter of the lesson, and the share of its words that was heard (0 to 1)."""

    start_s: float
    end_s: float
    title: str
    share: float


class HeardStepResponse(_Value, frozen=True, kw_only=True):
    """A step of the lesson: its first move (0 where it has none), its words, the files of its pictures."""

    number: int
    move: int
    start_s: float
    end_s: float
    spoken_s: float
    text: str
    pictures: tuple[str, ...]


class TrimResponse(_Value, frozen=True, kw_only=True):
    """A stretch that could be cut."""

    start_s: float
    end_s: float
    why: Literal["silence", "aside", "again"]


class CaptionMendResponse(_Value, frozen=True, kw_only=True):
    """A word of a caption put right: the cue (from 0), where in its text, how sure (0 to 1)."""

    cue: int
    start_s: float
    span: tuple[int, int]
    before: str
    after: str
    confidence: float


class ContradictionResponse(_Value, frozen=True, kw_only=True):
    """What the recording says otherwise: a warning, or where it is not sure a note, which is a question."""

    kind: str
    step: int
    start_s: float
    confidence: float
    finding: WordedFinding


class ListenResponse(_Value, frozen=True, kw_only=True):
    """A recording laid beside its lesson. `findings` are those about the captions and the chapters.

    `pace` is a JSON Patch on the document that keeps how long each step was shown.
    """

    length_s: float
    noise: float
    cues: tuple[CueResponse, ...]
    chapters: tuple[HeardChapterResponse, ...]
    steps: tuple[HeardStepResponse, ...]
    trims: tuple[TrimResponse, ...]
    mends: tuple[CaptionMendResponse, ...]
    contradictions: tuple[ContradictionResponse, ...]
    pace: tuple[dict[str, Any], ...]
    findings: tuple[WordedFinding, ...]


class DraftLineResponse(_Value, frozen=True, kw_only=True):
    """A sentence of a recording; `moves` are those read from it, `done` how many are made after it."""

    start_s: float
    text: str
    moves: int
    done: int


class DraftResponse(_Value, frozen=True, kw_only=True):
    """A recording without a pattern: every sentence with its time, and what the clear ones come to."""

    length_s: float
    lines: tuple[DraftLineResponse, ...]
    read: ReadResponse


def listen_files(
    made: Work,
    captions: bytes,
    spoken: Language,
    *,
    refused: Collection[int],
    language: Language,
    progress: ReportProgress,
) -> Iterator[tuple[str, bytes]]:
    """Yield what a recording comes to: `heard.json`, a `ListenResponse`, and the files to take along.

    `refused` are the mends (from 0) that the teacher does not want.

    Raises:
        NothingHeardError: nothing can be read in the captions.
    """
    heard = _read(captions)
    lesson, told = listen_to_lesson(made, heard.cues, spoken, progress)
    told = refuse_mends(told, heard.cues, refused)
    worded = contradiction_findings(lesson, told)
    moves = {step.number: step for step in lesson.steps}
    pictures = step_files(lesson)
    others = (f for f in told.findings if f.code not in ("recording-contradicts", "recording-unclear"))
    yield (
        "heard.json",
        msgspec.json.encode(
            ListenResponse(
                length_s=max(cue.end_s for cue in heard.cues),
                noise=told.noise,
                cues=tuple(CueResponse(**one._asdict()) for one in heard.cues),
                chapters=tuple(HeardChapterResponse(**one._asdict()) for one in told.chapters),
                steps=tuple(
                    HeardStepResponse(
                        **one._asdict(),
                        move=moves[one.number].first,
                        text=moves[one.number].instruction,
                        pictures=tuple(pictures[one.number]["pictures"]),
                    )
                    for one in told.steps
                ),
                trims=tuple(TrimResponse(**one._asdict()) for one in told.trims),
                mends=tuple(CaptionMendResponse(**one._asdict()) for one in told.corrections),
                contradictions=tuple(
                    ContradictionResponse(
                        kind=one.kind,
                        step=one.step,
                        start_s=one.start_s,
                        confidence=one.confidence,
                        finding=word_finding(words, language),
                    )
                    for one, words in sorted(
                        zip(told.contradictions, worded, strict=True), key=lambda pair: pair[0].start_s
                    )
                ),
                pace=pace_patch(made, lesson, told),
                findings=tuple(word_finding(one, language) for one in (*heard.findings, *others)),
            )
        ),
    )
    yield from recording_files(lesson, told).items()


def draft_response(
    captions: bytes,
    spoken: Language,
    answers: tuple[WordAnswer, ...],
    language: Language,
    progress: ReportProgress,
) -> DraftResponse:
    """Make a draft of a recording that has no pattern, with what was answered so far.

    Raises:
        NothingHeardError: nothing can be read in the captions.
    """
    heard = _read(captions)
    given: Answers = {(one.key, one.sentence): one.answer for one in answers}
    progress("read", 0, 2)
    told = draft_recording(heard.cues, spoken, answers=given)
    progress("work", 1, 2)
    read = reading_response(told.reading, language, progress, before=heard.findings)
    groups = (list(each) for _, each in groupby(_steps(read.sentences), key=lambda one: one.line))
    lines, done = [], 0
    for line in told.lines:
        made = next(groups, []) if line.is_read else []
        done = made[-1].done if made else done
        moves = sum(one.moves for one in made)
        lines.append(DraftLineResponse(start_s=line.start_s, text=line.text, moves=moves, done=done))
    return DraftResponse(length_s=max(cue.end_s for cue in heard.cues), lines=tuple(lines), read=read)


def _steps(sentences: tuple[ReadSentence, ...]) -> Iterator[ReadSentence]:
    return (one for one in sentences if one.use == "steps")


class NothingHeardError(Exception):
    """No caption can be read; `findings` say why."""

    def __init__(self, findings: tuple[Finding, ...]) -> None:
        super().__init__()
        self.findings = findings


def _read(captions: bytes) -> CaptionReading:
    heard = read_captions(captions)
    if not heard.cues:
        raise NothingHeardError(heard.findings)
    return heard
