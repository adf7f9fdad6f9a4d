"""What is refused is said in the language that was asked for; a bug is never told as a refusal."""

from __future__ import annotations

from typing import Any

import msgspec
import pytest

from pegwright.finding import RefusedError, phrase
from pegwright.pattern import PatternBuilder, Rows, expand, expansion, read_pattern, write_pattern
from pegwright.pattern.migrations import MIGRATIONS
from pegwright.server import job_requests
from pegwright.server.job_requests import EndFrame, Frame, JobMessage, PressRequest, WornRequest, run_job
from pegwright.workshop import LessonOrder, lesson_outputs, prepare_lesson, starter_pattern, work

Document = dict[str, Any]


def frames(message: JobMessage) -> list[Frame]:
    sent: list[Frame] = []
    run_job(message, sent.append)
    return sent


def flat() -> Document:
    """Two bands on a pair of pegs, clipped at one end: nothing closes it round a wrist."""
    m = PatternBuilder("Jetty", Rows(rows=1, pegs=4)).colour("A", "slate", "#4A5A6A")
    m.place("A", "A1", "A2")
    m.place("A", "A1", "A2")
    m.clip("A1")
    return msgspec.json.decode(write_pattern(m.pattern()))


def broken(*_: Any, **__: Any) -> None:
    raise ValueError("a planted bug")


@pytest.mark.parametrize(
    ("language", "words"),
    [("en", "no clip joins"), ("de", "kein Clip verbindet"), ("es", "ningún cierre une")],
)
def test_a_refusal_is_in_the_language_of_the_request(language: Any, words: str) -> None:
    """The reason was English prose on every page."""
    end = frames(JobMessage(WornRequest(girth_mm=160, language=language), flat()))[-1]
    assert isinstance(end, EndFrame)
    assert words in end.reason


def test_a_bug_in_a_job_is_loud(monkeypatch: pytest.MonkeyPatch) -> None:
    """A `ValueError` out of the line was told as a refusal of the maker's piece."""
    monkeypatch.setattr(job_requests, "work", broken)
    with pytest.raises(ValueError, match="planted"):
        frames(JobMessage(PressRequest(), flat()))


def test_a_bug_in_the_mirrored_piece_does_not_drop_the_other_hand(monkeypatch: pytest.MonkeyPatch) -> None:
    """The edition for the other hand went missing without a word."""
    made = work(starter_pattern("Spring tide", pegs=5))
    monkeypatch.setattr(lesson_outputs, "work", broken)
    with pytest.raises(ValueError, match="planted"):
        prepare_lesson(made, LessonOrder())


def test_a_bug_in_the_builder_is_no_bad_title(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever went wrong in building the first pattern was said of the title."""
    for title in ("", " ", "x" * 201, "\udcff"):
        with pytest.raises(RefusedError, match="title"):
            starter_pattern(title)
    monkeypatch.setattr(PatternBuilder, "pattern", broken)
    with pytest.raises(ValueError, match="planted"):
        starter_pattern("Spring tide")


def test_a_bug_in_moving_a_step_on_is_no_step_off_the_rows(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(expansion, "with_holders", broken)
    with pytest.raises(ValueError, match="planted"):
        expand(starter_pattern("Neap tide", pegs=5))


def test_a_bug_in_a_migration_is_no_unknown_version(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(MIGRATIONS, 2, broken)
    with pytest.raises(ValueError, match="planted"):
        read_pattern(msgspec.json.encode({**flat(), "pegwright": 2}))


def test_a_piece_that_cannot_be_mirrored_has_one_edition_and_no_left_one(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def refused(_pattern: object) -> None:
        raise RefusedError(phrase("beyond-the-loom", peg="D1"))

    made = work(starter_pattern("Neap tide", pegs=5))
    monkeypatch.setattr(lesson_outputs, "mirror", refused)
    assert prepare_lesson(made, LessonOrder()).other is None
    with pytest.raises(RefusedError, match="D1 lies beyond the loom"):
        prepare_lesson(made, LessonOrder(hand="left"))
