"""What the rehearsal finds reaches the finished files: read back from handout, captions and page."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator

import pytest
import webvtt
from pypdf import PdfReader

from examples.pieces import PIECES
from pegwright.lesson import Fork, Lesson, Phrasebook, caption_script, languages, write_script
from pegwright.lesson.review.readability import script_readability
from pegwright.press import Paper, captions_vtt, handout_pdf, page_html
from tests.lesson.pieces import lesson
from tests.rehearsal.pieces import RISKY, lesson_of, partly_rehearsed, rehearsed


def _flat(text: str) -> str:
    return re.sub(r"\s+|\u00ad|-\n", "", text)


@pytest.mark.parametrize("language", languages())
def test_the_warning_is_in_handout_captions_and_page(language: str) -> None:
    made = lesson_of("jetty", language)
    troubles = [trouble for step in made.steps for trouble in step.mistakes]
    assert "too-shallow" in {trouble.kind for trouble in troubles}
    pages = PdfReader(io.BytesIO(handout_pdf(made))).pages
    handout = _flat(" ".join(page.extract_text() for page in pages))
    cues = webvtt.from_string(captions_vtt(caption_script(write_script(made)), language))
    spoken = _flat(" ".join(cue.text for cue in cues))
    page = page_html(made)
    for trouble in troubles:
        assert _flat(trouble.warning) in spoken
        assert trouble.warning in page
        assert all(line in page for line in trouble.way_back)
        assert _flat(trouble.warning) in handout
    assert script_readability(write_script(made)).ease >= 60


def test_the_wrong_picture_differs_from_the_right_one() -> None:
    pairs = [
        (t.wrong_picture, t.right_picture)
        for step in lesson_of("jetty").steps
        for t in step.mistakes
        if t.wrong_picture
    ]
    assert pairs
    assert all(right is not None and wrong.marks != right.marks for wrong, right in pairs)


def test_the_checks_stand_in_the_working_and_a_lesson_without_has_none() -> None:
    looks = [step.checkpoint for step in lesson_of("jetty").steps if step.checkpoint]
    assert 0 < len(looks) <= len(rehearsed("jetty").checks.after)
    bare = lesson_of("jetty", carried=False)
    assert not any(step.checkpoint or step.mistakes for step in bare.steps)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_what_goes_wrong_names_its_step_and_stands_on_its_page(paper: Paper) -> None:
    """Nobody has to leaf back to see which step a mistake belongs to."""
    made, found = lesson_of("jetty"), 0
    pages = [_flat(page.extract_text()) for page in PdfReader(io.BytesIO(handout_pdf(made, paper))).pages]
    for step in made.steps:
        for mistake in step.mistakes:
            assert mistake.heading == f"Step {step.number}: what can go wrong"
            here = [page for page in pages if _flat(mistake.slip) in page]
            assert here
            assert all(_flat(step.instruction) in page and _flat(mistake.heading) in page for page in here)
            found += 1
    assert found > 1


def choices(fork: Fork) -> Iterator[tuple[str, ...]]:
    """Yield the answers of a question and of all questions below it."""
    yield tuple(reply.text for reply in fork.replies)
    for reply in fork.replies:
        if isinstance(reply.then, Fork):
            yield from choices(reply.then)


def _asked(made: Lesson) -> list[tuple[str, ...]]:
    return [each for step in made.steps if step.troubleshooting for each in choices(step.troubleshooting)]


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("name", ["jetty", *RISKY])
def test_no_answer_is_a_row_of_bare_names_or_said_twice(name: str, language: str) -> None:
    """Never `3 3 4` or `A A` to choose, nothing twice, never both that there is none and none of these."""
    if name == "jetty":
        made = lesson_of(name, language)
    else:
        made = lesson(PIECES[name](), language=language, rehearsal=partly_rehearsed(name))
    asked = _asked(made)
    phrasebook = Phrasebook(language)
    none, other = phrasebook.say("answer-none"), phrasebook.say("wrong-other")
    none_of_these = {"en": "none of these", "de": "nichts davon", "es": "nada de esto"}[language]
    assert any(other in answers for answers in asked)
    assert none.casefold() not in other.casefold().split()
    for answers in asked:
        assert len({text.casefold() for text in answers}) == len(answers)
        for text in answers:
            assert not re.search(r"(^|; )([0-9]+|[A-Z]+[0-9]*)( ([0-9]+|[A-Z]+[0-9]*))+($|;)", text), text
            assert text.casefold() != none_of_these
