"""No page is more than two fifths empty but the last of a phase, as another painter shows the pages."""

from __future__ import annotations

import re

import numpy as np
import pypdfium2
import pytest

from examples.pieces import PIECES
from pegwright.press import Edition, handout_pdf
from tests.lesson.pieces import lesson
from tests.rehearsal.pieces import partly_rehearsed

MOST = 0.40
NEAR_MM = 7.0
_DPI = 36
_TOP_MM: dict[Edition, float] = {"standard": 17, "grey": 17, "large": 30, "giant": 30}
_LANGUAGES = ("en", "de", "es")
DEMOS = [name for name in PIECES if not name.startswith("broken/")]


def empty_share(page: pypdfium2.PdfPage, top_mm: float) -> float:
    """Return the share of the height between the margins with no ink nearer than 7 mm above or below."""
    seen = np.asarray(page.render(scale=_DPI / 72).to_pil().convert("RGB")).astype(int)
    mm = _DPI / 25.4
    ink = np.abs(seen - seen[2, 2]).max(axis=2) > 24
    rows = ink[round(top_mm * mm) : -round(17 * mm), round(13 * mm) : -round(13 * mm)].any(axis=1)
    near = np.convolve(rows, np.ones(2 * round(NEAR_MM * mm) + 1), "same") > 0
    return 1 - float(near.mean())


@pytest.mark.parametrize("edition", ["standard", "large", "giant"])
@pytest.mark.parametrize("name", DEMOS)
def test_no_page_is_half_empty(name: str, edition: Edition) -> None:
    """Every page of every demo, each in one of the languages, but those after which a new phase begins.

    With what goes wrong, as a lesson is pressed: its words and pairs of pictures are what leaves gaps.
    """
    language = _LANGUAGES[(DEMOS.index(name) + len(edition)) % 3]
    made = lesson(PIECES[name](), language=language, rehearsal=partly_rehearsed(name))
    assert any(step.mistakes for step in made.steps)
    document = pypdfium2.PdfDocument(handout_pdf(made, edition=edition))
    heads = {phase.heading for phase in made.phases} | {made.cautions.heading, made.glossary.heading}
    heads |= {made.sizes.heading} if made.sizes else set()
    for number in range(len(document) - 1):
        share = empty_share(document[number], _TOP_MM[edition])
        after = re.split(r"[\r\n]+", document[number + 1].get_textpage().get_text_range())
        begins = any(line.strip() in heads for line in after[:3])
        assert share <= MOST or begins, (number + 1, round(share, 2), after[:3])


def test_an_empty_page_is_seen_as_one() -> None:
    """The measure itself: a page with one line at its head is nearly all empty."""
    document = pypdfium2.PdfDocument.new()
    document.new_page(595, 842)
    assert empty_share(document[0], 17) > 0.99
