"""The finished piece in the finished files: handout in every edition, page, film, pictures; read back."""

from __future__ import annotations

import base64
import io
import re
from typing import Any

import png
import pytest
from PIL import Image
from pypdf import PdfReader

from pegwright.lesson import PICTURE, FinishedPiece, draw_storyboard, write_script
from pegwright.press import Edition, handout_pdf, lesson_files, page_html, portrait_svg
from pegwright.press.film.frames import FramePainter
from pegwright.press.paint.inks import GREY
from tests.lesson.pieces import ebb, lesson, work
from tests.lesson.test_finished import row
from tests.press.test_handout import _bare, _figures, _present

SIZE = (107.6, 15.2, 3.0)
EDITIONS: tuple[Edition, ...] = ("standard", "large", "grey")


def made(**options: Any) -> Any:
    return lesson(ebb(), finish=FinishedPiece(portrait=row(9, SIZE)), **options)


def alts(pdf: bytes) -> list[str]:
    found: list[str] = []
    root: Any = PdfReader(io.BytesIO(pdf)).trailer["/Root"]
    _figures(root["/StructTreeRoot"], found)
    return found


@pytest.mark.parametrize("language", ["en", "es", "de"])
@pytest.mark.parametrize("edition", EDITIONS)
def test_every_edition_shows_the_piece_with_its_text_and_its_size(language: str, edition: Edition) -> None:
    """A figure more, with the text that says what is seen; the solver's numbers on the first page."""
    one, bare = made(language=language), lesson(ebb(), language=language)
    pdf = handout_pdf(one, edition=edition)
    assert alts(pdf).count(one.finished.text) == 1
    assert len(alts(pdf)) == len(alts(handout_pdf(bare, edition=edition))) + 1
    front = _text_of(pdf, 0)
    assert all(f"{round(mm)}mm" in front for mm in SIZE)
    assert _present(one.finished.caption, front)


def test_a_handout_without_the_picture_says_so() -> None:
    one = lesson(ebb(), finish=FinishedPiece(missing="restless"))
    assert _present(one.finished.size, _text_of(handout_pdf(one), 0))


def test_the_picture_is_printed_as_large_as_the_caption_says() -> None:
    """True size: it is placed as wide on the page as the piece is, 1 pt = 25.4/72 mm."""
    one = made()
    assert one.finished.caption == "Actual size."
    svg = portrait_svg(one.finished.portrait, "front", bare=True, width_mm=one.finished.shown_mm)
    wide = float(re.search(r'width="([0-9.]+)mm"', svg)[1])  # type: ignore[index]
    assert wide == pytest.approx(one.finished.portrait.camera("front").size_mm[0], abs=0.01)
    content = PdfReader(io.BytesIO(handout_pdf(one))).pages[0].get_contents()
    assert content is not None
    numbers = [float(x) for x in re.findall(r"-?\d+\.?\d*", content.get_data().decode("latin-1"))]
    assert any(abs(n - wide * 72 / 25.4) < 0.1 for n in numbers)


def test_black_ink_tells_bands_apart_by_their_patterns() -> None:
    """Two colours that would print alike: no tint is left, and each has a pattern of its own."""
    shown = row(4)
    svg = portrait_svg(shown, "front", bare=True, inks=GREY)
    tints = set(re.findall(r"#[0-9a-f]{6}", svg))
    assert tints
    assert all(t[1:3] == t[3:5] == t[5:7] for t in tints)
    patterns = set(re.findall(r'class="p(\d+) q', svg))
    assert patterns == {str(tube.hatch) for tube in shown.key if tube.hatch}
    assert patterns


def test_the_page_shows_it_with_its_text() -> None:
    """A picture inside the page, small enough for a phone, with its text; one for each hand."""
    one, other = made(), made(hand="left")
    html = page_html(one, other)
    image = r'<img src="data:image/png;base64,([^"]+)" alt="([^"]+)" width="(\d+)" height="(\d+)">'
    found = re.findall(image, html)
    assert len(found) == 2
    for data, text, wide, tall in found:
        width, height, _, _ = png.Reader(bytes=base64.b64decode(data)).read()
        assert (str(width), str(height)) == (wide, tall)
        assert text == one.finished.text
    assert "img-src data:" in html
    assert "<img" not in page_html(lesson(ebb()))


def test_the_film_opens_with_the_piece_and_its_size() -> None:
    """The opening shows the bands' own tints in the picture's box; without a portrait it does not."""
    history = work(ebb())
    one = made()
    seen = {}
    for name, each in (("with", one), ("without", lesson(ebb()))):
        board = draw_storyboard(ebb(), history, each, write_script(each))
        opening = board.cuts[0]
        assert opening.opening
        frame = FramePainter(board, 360).frame(0.5)
        part = frame[round(PICTURE.top / 3) : round(PICTURE.bottom / 3), round(PICTURE.left / 3) : 440, :3]
        seen[name] = int((part[..., 2].astype(int) - part[..., 0] > 15).sum())  # slate, bluer than our inks
        said = {line for cut in board.cuts if cut.opening for line in cut.lines}
        assert (one.finished.size in said) == (name == "with")
    assert seen["with"] > 500
    assert seen["without"] == 0


def test_the_piece_is_among_the_pictures() -> None:
    files = lesson_files(made(), write_script(made()), parts=("pictures",))
    with Image.open(io.BytesIO(files["finished.png"])) as image:
        assert image.size[0] == 1200
    assert b"<svg" in files["finished.svg"]
    assert "finished.png" not in lesson_files(lesson(ebb()), write_script(made()), parts=("pictures",))


def _text_of(pdf: bytes, number: int) -> str:
    return _bare(PdfReader(io.BytesIO(pdf)).pages[number].extract_text())


@pytest.mark.parametrize(
    ("language", "seen"), [("en", "seen from the front"), ("de", "von vorn"), ("es", "vista frontal")]
)
def test_the_finished_picture_is_described_in_the_language_of_the_lesson(language: str, seen: str) -> None:
    """Who cannot see the picture hears of it in the lesson's own language."""
    one = made(language=language)
    svg = lesson_files(one, write_script(one), parts=("pictures",))["finished.svg"].decode()
    text = svg[svg.index("<desc>") : svg.index("</desc>")]
    assert seen in text
    assert (" at rest" in text) == (language == "en")
