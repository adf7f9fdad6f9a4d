"""What the rehearsal finds reaches the finished files: read back from handout, captions and page."""

from __future__ import annotations

import io
import re

import pytest
import webvtt
from pypdf import PdfReader

from pegwright.lesson import captions, languages, script
from pegwright.lesson.readability import reading_of
from pegwright.press import captions_vtt, handout_pdf, page_html
from tests.rehearsal.pieces import lesson_of, rehearsed


def _flat(text: str) -> str:
    return re.sub(r"\s+|\u00ad|-\n", "", text)


@pytest.mark.parametrize("language", languages())
def test_the_warning_is_in_handout_captions_and_page(language: str) -> None:
    made = lesson_of("jetty", language)
    troubles = [trouble for step in made.steps for trouble in step.troubles]
    assert "too-shallow" in {trouble.kind for trouble in troubles}
    pages = PdfReader(io.BytesIO(handout_pdf(made))).pages
    handout = _flat(" ".join(page.extract_text() for page in pages))
    cues = webvtt.from_string(captions_vtt(captions(script(made)), language))
    spoken = _flat(" ".join(cue.text for cue in cues))
    page = page_html(made)
    for trouble in troubles:
        assert _flat(trouble.warning) in spoken
        assert trouble.warning in page
        assert all(line in page for line in trouble.back)
        assert _flat(trouble.warning) in handout
    assert reading_of(script(made)).ease >= 60


def test_the_wrong_picture_differs_from_the_right_one() -> None:
    pairs = [(t.wrong, t.right) for step in lesson_of("jetty").steps for t in step.troubles if t.wrong]
    assert pairs
    assert all(right is not None and wrong.marks != right.marks for wrong, right in pairs)


def test_the_checks_stand_in_the_working_and_a_lesson_without_has_none() -> None:
    looks = [step.look for step in lesson_of("jetty").steps if step.look]
    assert 0 < len(looks) <= len(rehearsed("jetty").checks.after)
    bare = lesson_of("jetty", carried=False)
    assert not any(step.look or step.troubles for step in bare.steps)
