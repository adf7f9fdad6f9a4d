"""What the page is told of a maker's words: the document, each sentence with its moves, the questions."""

from __future__ import annotations

import re
from typing import Annotated, Any, Literal

import msgspec

from pegwright.finding import Finding, Language, WordedFinding, word_finding, word_phrase
from pegwright.pattern import Pattern, read_pattern, write_pattern
from pegwright.reading import Answers, Blank, TextReading, count_new_moves, read_maker_text
from pegwright.server.work_responses import WorkResponse, work_response
from pegwright.text import read_pattern_text
from pegwright.workshop import ReportProgress, report_nothing, work

MOST_CHARACTERS = 500_000
MOST_SHOWN_SENTENCES = 2_000
BlankKey = Literal["loom", "colour", "turns", "chain-bands", "peg", "pegs", "loop", "loops", "times"]


class WordAnswer(msgspec.Struct, frozen=True):
    """What the maker answers to a question about a sentence (from 0; −1 where it is about the piece)."""

    key: BlankKey
    sentence: Annotated[int, msgspec.Meta(ge=-1)]
    answer: Annotated[str, msgspec.Meta(max_length=200)]


class ReadRequest(msgspec.Struct, frozen=True, kw_only=True):
    """A text to be read, and what was answered so far. Of one page the highest serial number counts."""

    text: Annotated[str, msgspec.Meta(max_length=MOST_CHARACTERS)]
    answers: Annotated[tuple[WordAnswer, ...], msgspec.Meta(max_length=5_000)] = ()
    page: Annotated[str, msgspec.Meta(max_length=64)] = ""
    serial: Annotated[int, msgspec.Meta(ge=0)] = 0


class ReadSentence(msgspec.Struct, frozen=True, kw_only=True):
    """A sentence, its line, what it was taken for, and how many moves are made when it is done."""

    text: str
    line: int
    use: Literal["head", "steps", "aside", "unread"]
    moves: int
    done: int


class ReadBlank(msgspec.Struct, frozen=True, kw_only=True):
    """A question, the sentences that it is answered for, and the likely answers, the likeliest first."""

    key: BlankKey
    question: str
    line: int
    choices: tuple[str, ...]
    sentences: tuple[int, ...]


class ReadResponse(msgspec.Struct, frozen=True, kw_only=True):
    """What was read. A pattern document has no sentences; where nothing was read, there is no document."""

    document: dict[str, Any] | None
    language: str
    sentences: tuple[ReadSentence, ...]
    blanks: tuple[ReadBlank, ...]
    findings: tuple[WordedFinding, ...]
    work: WorkResponse


def read_response(
    text: str,
    answers: tuple[WordAnswer, ...],
    language: Language,
    progress: ReportProgress = report_nothing,
) -> ReadResponse:
    """Read a text, a document or a maker's words, and tell what came of it."""
    given: Answers = {(one.key, one.sentence): one.answer for one in answers}
    told = _read_document(text) or read_maker_text(text, answers=given)
    return reading_response(told, language, progress)


def reading_response(
    told: TextReading,
    language: Language,
    progress: ReportProgress = report_nothing,
    *,
    before: tuple[Finding, ...] = (),
) -> ReadResponse:
    """Tell what came of a reading. Findings `before` it, about its source, come first."""
    made = None if told.pattern is None else work(told.pattern, progress)
    findings = (*before, *told.findings, *(() if made is None else made.findings))
    return ReadResponse(
        document=None if told.pattern is None else _document(told.pattern),
        language=told.language,
        sentences=_sentences(told),
        blanks=tuple(_blank(one, language) for one in told.blanks),
        findings=tuple(word_finding(one, language) for one in findings[:MOST_SHOWN_SENTENCES]),
        work=WorkResponse(readable=False) if made is None else work_response(made, language),
    )


def _read_document(text: str) -> TextReading | None:
    """Read a text that is meant as a pattern document, as JSON or as plain text; None where it is neither."""
    if text.lstrip()[:1] == "{":
        reading = read_pattern(text.encode())
    elif re.match(r"\s*pegwright \d", text):
        reading = read_pattern_text(text.encode())
    else:
        return None
    return TextReading(reading.pattern, findings=reading.findings)


def _document(pattern: Pattern) -> dict[str, Any]:
    raw: dict[str, Any] = msgspec.json.decode(write_pattern(pattern))
    return raw


def _sentences(told: TextReading) -> tuple[ReadSentence, ...]:
    made = 0
    found = []
    for one in told.sentences[:MOST_SHOWN_SENTENCES]:
        moves = sum(map(count_new_moves, one.steps))
        made += moves
        found.append(ReadSentence(text=one.text, line=one.line, use=one.use, moves=moves, done=made))
    return tuple(found)


def _blank(blank: Blank, language: Language) -> ReadBlank:
    return ReadBlank(
        key=blank.key,  # type: ignore[arg-type]
        question=word_phrase(blank.question, language),
        line=blank.line,
        choices=blank.choices[:12],
        sentences=blank.sentences,
    )
