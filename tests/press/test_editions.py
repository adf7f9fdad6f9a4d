"""Large print and black ink: the same words, larger or without any colour."""

from __future__ import annotations

import io
import re
from typing import Any

import pytest
from pypdf import PdfReader

from pegwright.press import Edition, Paper, handout_pdf, step_svg, swatch_svg
from pegwright.press.paint.inks import GREY
from tests.lesson.pieces import dinghy, ebb, lesson, pictures_of, smack
from tests.press.test_handout import _bare, _present, _text

PIECES = {"ebb": ebb(), "dinghy": dinghy(), "smack": smack()}


def _read(name: str, edition: Edition, paper: Paper = "a4") -> PdfReader:
    return PdfReader(io.BytesIO(handout_pdf(lesson(PIECES[name]), paper, edition=edition)))


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("edition", ["large", "giant", "grey"])
@pytest.mark.parametrize("name", PIECES)
def test_an_edition_says_everything(name: str, edition: Edition, paper: Paper) -> None:
    """Words, ticks, checks, hold, glossary and cautions: all of them, as real text."""
    made = lesson(PIECES[name])
    text = _text(_read(name, edition, paper))
    said = [
        made.title,
        made.byline,
        made.edition,
        *made.hold.lines,
        *made.cautions.lines,
        *made.glossary.lines,
    ]
    said += [row.name for row in made.supplies.bands] + [str(row.count) for row in made.supplies.bands]
    for step in made.steps:
        ticks = step.ticks if edition == "grey" else step.ticks_in_words
        said += [step.instruction, *step.detail, *ticks, step.note, step.warning]
    for phase in made.phases:
        said += [phase.heading, *(phase.check.lines if phase.check else ())]
    assert [words for words in said if not _present(words, text)] == []


@pytest.mark.parametrize(("edition", "points"), [("large", 18), ("giant", 24)])
@pytest.mark.parametrize("name", PIECES)
def test_nothing_in_large_print_is_small(name: str, edition: Edition, points: float) -> None:
    """Steps in 18 points (large in WCAG 2.2 is 18) or 24, nothing else under 16, pictures apart."""
    made = lesson(PIECES[name])
    sizes: list[tuple[float, str]] = []

    def visit(text: str, cm: list[float], tm: list[float], _: Any, size: float) -> None:
        if text.strip() and abs(cm[3]) == 1.0:  # pictures are scaled, the page is not
            sizes.append((size * abs(tm[3]), text.strip()))

    for page in _read(name, edition).pages:
        page.extract_text(visitor_text=visit)
    assert min(size for size, _ in sizes) >= 15.99
    starts = [_bare(step.instruction)[:12] for step in made.steps]
    first = [size for size, text in sizes if any(_bare(text).startswith(start) for start in starts)]
    assert len(first) >= len(starts)
    assert min(first) >= points - 0.01


@pytest.mark.parametrize(("edition", "points"), [("large", 18), ("giant", 24)])
@pytest.mark.parametrize("name", PIECES)
def test_the_letters_of_pictures_are_as_large_as_the_words(
    name: str, edition: Edition, points: float
) -> None:
    """Every letter that a picture holds, as scaled on the page: pegs, colours, numbers of rounds."""
    small: list[tuple[float, str]] = []
    seen = 0

    def visit(text: str, cm: list[float], tm: list[float], _: Any, size: float) -> None:
        nonlocal seen
        # A picture's letters stand in the picture's own units, scaled on to the page.
        if text.strip() and abs(cm[3]) != 1.0:
            seen += 1
            if size * abs(tm[3]) * abs(cm[3]) < points - 0.1:
                small.append((size * abs(tm[3]) * abs(cm[3]), text.strip()))

    for page in _read(name, edition).pages:
        page.extract_text(visitor_text=visit)
    assert seen > 20
    assert small == []


def test_rounds_in_large_print_are_in_words() -> None:
    """No arrow and no dash between pegs, which are hard to see; elsewhere they are short."""
    made = lesson(PIECES["ebb"])
    ticks = [tick for step in made.steps for tick in step.ticks_in_words]
    assert ticks[0] == "Round 2: A2 to A3"
    assert not any(sign in tick for tick in ticks for sign in "–→")
    assert len(ticks) == sum(len(step.ticks) for step in made.steps)


def _streams(node: Any) -> list[str]:
    found = [node.get_contents().get_data().decode("latin-1")] if hasattr(node, "get_contents") else []
    for item in node.get("/Resources", {}).get("/XObject", {}).values():
        inner = item.get_object()
        if inner.get("/Subtype") == "/Form":
            found += [inner.get_data().decode("latin-1"), *_streams(inner)]
    return found


def _colours(name: str, edition: Edition) -> set[tuple[float, ...]]:
    found = set()
    for page in _read(name, edition).pages:
        for data in _streams(page):
            for a, b, c in re.findall(r"([\d.]+) ([\d.]+) ([\d.]+) (?:scn|SCN|rg|RG)\b", data):
                found.add((float(a), float(b), float(c)))
    return found


@pytest.mark.parametrize("name", PIECES)
def test_the_grey_edition_needs_black_ink_only(name: str) -> None:
    """Every colour of every page and picture is a grey; in the standard edition some are not."""
    assert any(max(c) - min(c) > 0.05 for c in _colours(name, "standard"))
    # the hairlines keep a faint tint, which a black-and-white printer prints as grey
    assert all(max(c) - min(c) < 0.05 for c in _colours(name, "grey"))


def test_bands_without_colour_are_told_apart_by_pattern_and_letter() -> None:
    """Swatches of different colours differ in grey too; every highlighted band carries its letter."""
    made = lesson(smack())
    drawn = [re.sub(r"<title>.*</desc>", "", swatch_svg(s, GREY)) for s in made.key]
    assert len(set(drawn)) == len(drawn)
    for picture in pictures_of(made):
        tints = re.findall(r"#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})", step_svg(picture, GREY))
        assert all(r == g == b for r, g, b in tints)
