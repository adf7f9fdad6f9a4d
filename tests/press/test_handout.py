"""The printed handout, read back by an independent reader (pypdf)."""

from __future__ import annotations

import io
import re
from datetime import UTC, datetime
from itertools import pairwise
from typing import Any

import pytest
from pypdf import PdfReader

from pegwright.lesson import Lesson
from pegwright.press import Edition, Paper, handout_pdf
from tests.lesson.pieces import dinghy, ebb, lesson, pictures_of, smack
from tests.press.test_svg import HOSTILE

PIECES = {"ebb": ebb(), "dinghy": dinghy(), "smack": smack()}
SIZES_MM: dict[Paper, tuple[float, float]] = {
    "a4": (210.0, 297.0),  # ISO 216
    "letter": (215.9, 279.4),  # 8.5 × 11 in, ANSI/ASME Y14.1 size A
}


def _read(pdf: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(pdf))


def _bare(text: str) -> str:
    return re.sub(r"\s+", "", text.replace("\u00ad", ""))


def _text(reader: PdfReader) -> str:
    return _bare("".join(page.extract_text() for page in reader.pages))


def _present(words: str, text: str) -> bool:
    """Say whether words are there, be they broken over lines with a hyphen or not."""
    return _bare(words) in text or _bare(words).replace("-", "") in text.replace("-", "").replace("‐", "")


@pytest.mark.parametrize("paper", SIZES_MM)
def test_pages_have_the_standard_size(paper: Paper) -> None:
    """Every page, to a hundredth of a millimetre (1 pt = 25.4/72 mm)."""
    for page in _read(handout_pdf(lesson(ebb()), paper)).pages:
        size = (float(page.mediabox.width) * 25.4 / 72, float(page.mediabox.height) * 25.4 / 72)
        assert size == pytest.approx(SIZES_MM[paper], abs=0.01)


@pytest.mark.parametrize("paper", SIZES_MM)
@pytest.mark.parametrize("piece", PIECES)
def test_everything_the_lesson_says_is_in_the_text(piece: str, paper: Paper) -> None:
    """Each step's words, details and ticks, supplies, hold, checks, cautions: as real text."""
    made = lesson(PIECES[piece])
    text = _text(_read(handout_pdf(made, paper)))
    said = [made.title, made.byline, made.edition, *made.hold.lines, *made.cautions.lines, *made.colophon]
    said += [made.level.heading, *made.level.lines, *made.tools.lines, *made.supplies.things]
    said += [made.safety.heading, *made.safety.lines, *made.bands]
    said += [row.name for row in made.supplies.bands] + [row.purpose for row in made.supplies.bands]
    for step in made.steps:
        said += [step.instruction, *step.detail, *step.legend, *step.ticks, step.note, step.warning]
    for phase in made.phases:
        said.append(phase.heading)
        if phase.check:
            said += [*phase.check.lines, phase.check.remedy]
    assert [words for words in said if not _present(words, text)] == []


def test_the_numbers_of_the_steps_are_printed_in_order() -> None:
    """Number, then its words, for every step."""
    made = lesson(dinghy())
    text = _text(_read(handout_pdf(made)))
    places = [text.index(_bare(f"{step.number}{step.instruction}")) for step in made.steps]
    assert places == sorted(places)


def test_fonts_are_embedded() -> None:
    """Every font of every page brings its font file (ISO 32000-1, 9.9)."""
    seen = set()
    for page in _read(handout_pdf(lesson(ebb()))).pages:
        for font in _fonts(page["/Resources"]):
            for inner in font.get("/DescendantFonts", [font]):
                descriptor = inner.get_object()["/FontDescriptor"].get_object()
                assert {"/FontFile", "/FontFile2", "/FontFile3"} & set(descriptor)
                seen.add(str(descriptor["/FontName"]))
    assert any("AtkinsonHyperlegible" in name for name in seen)


def _fonts(resources: Any) -> list[Any]:
    found = [font.get_object() for font in resources.get_object().get("/Font", {}).values()]
    for item in resources.get_object().get("/XObject", {}).values():
        inner = item.get_object()
        if "/Resources" in inner:
            found += _fonts(inner["/Resources"])
    return found


def test_title_author_language_and_tags_are_set() -> None:
    """What a screen reader asks first; and the claim of PDF/UA-1 (ISO 14289-1) in the metadata."""
    reader = _read(handout_pdf(lesson(ebb())))
    assert reader.metadata is not None
    assert reader.metadata.title == "Ebb line"
    assert reader.metadata.author == "the Saturday workshop"
    root: Any = reader.trailer["/Root"]
    assert root["/Lang"] == "en"
    assert root["/MarkInfo"]["/Marked"]
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert b"<pdfuaid:part>1</pdfuaid:part>" in root["/Metadata"].get_data()


def test_every_picture_has_a_text_in_its_place() -> None:
    """The figures of the structure tree carry the pictures' texts."""
    made = lesson(smack())
    reader = _read(handout_pdf(made))
    root: Any = reader.trailer["/Root"]
    found: list[str] = []
    _figures(root["/StructTreeRoot"], found)
    wanted = sorted(picture.text for picture in pictures_of(made))
    assert sorted(set(found) & set(wanted)) == sorted(set(wanted))


def _figures(node: Any, found: list[str]) -> None:
    node = node.get_object()
    if isinstance(node, list):
        for kid in node:
            _figures(kid, found)
    elif isinstance(node, dict):
        if node.get("/S") == "/Figure":
            found.append(str(node["/Alt"]))
        if "/K" in node:
            _figures(node["/K"], found)


def test_the_ruler_is_fifty_millimetres_and_two_inches_long() -> None:
    """Rectangles of 50 mm (141.73 pt) and 2 in (144 pt) width are drawn, unscaled, on the last page."""
    content = _read(handout_pdf(lesson(ebb()))).pages[-1].get_contents()
    assert content is not None
    data = content.get_data().decode("latin-1")
    numbers = {round(float(x), 1) for x in re.findall(r"-?\d+\.?\d*", data)}
    assert {141.7, 144.0} <= numbers


def test_hostile_words_are_printed_as_they_are() -> None:
    """Markup, formulas and emoji stand there letter by letter; nothing of them was carried out."""
    made = lesson(ebb(title=HOSTILE, colour=HOSTILE[:50], note="= Heading\n#panic() *bold* @ref `x` \\u{41}"))
    reader = _read(handout_pdf(made))
    text = _text(reader)
    assert _bare('#eval("1+1") <script>alert(1)</script> $x$ ]]> & ⟨U+202E⟩ 🙂') in text
    assert _bare("= Heading") in text
    assert _bare("#panic() *bold* @ref `x` \\u{41}") in text
    assert reader.metadata is not None
    assert reader.metadata.title == made.title
    assert "\u202e" not in text


def test_letters_of_any_script_do_not_stop_the_press() -> None:
    """A script for which no font is carried still prints, and its letters are still in the title."""
    made = lesson(ebb(title="潮 прилив مد 🙂"))
    reader = _read(handout_pdf(made))
    assert reader.metadata is not None
    assert reader.metadata.title == "潮 прилив مد 🙂"
    assert len(reader.pages) > 1


def test_the_same_lesson_gives_the_same_bytes_and_no_date() -> None:
    """Nothing of the hour or the machine gets in; a date is there only when given."""
    made = lesson(smack())
    assert handout_pdf(made) == handout_pdf(made)
    first = _read(handout_pdf(made)).metadata
    dated = _read(handout_pdf(made, date=datetime(2031, 5, 4, tzinfo=UTC))).metadata
    assert first is not None
    assert dated is not None
    assert first.creation_date is None
    assert dated.creation_date == datetime(2031, 5, 4, tzinfo=UTC)


@pytest.mark.parametrize("paper", SIZES_MM)
def test_nothing_hangs_over_the_edge(paper: Paper) -> None:
    """No text starts outside the page."""
    made: Lesson = lesson(dinghy())
    for page in _read(handout_pdf(made, paper)).pages:
        wide, high = float(page.mediabox.width), float(page.mediabox.height)
        outside: list[str] = []

        def visit(
            text: str,
            cm: list[float],
            tm: list[float],
            *_: Any,
            w: float = wide,
            h: float = high,
            o: list[str] = outside,
        ) -> None:
            x = tm[4] * cm[0] + tm[5] * cm[2] + cm[4]
            y = tm[4] * cm[1] + tm[5] * cm[3] + cm[5]
            if text.strip() and not (0 <= x <= w and 0 <= y <= h):
                o.append(text)

        page.extract_text(visitor_text=visit)
        assert outside == []


@pytest.mark.parametrize("edition", ["standard", "large"])
def test_every_step_is_a_heading_in_reading_order(edition: Edition) -> None:
    """One level 3 heading for each step and each stop, by which who listens goes on (ISO 32000-1, 14.8)."""
    made = lesson(ebb())
    checks = sum(phase.check is not None for phase in made.phases)
    tree = _read(handout_pdf(made, edition=edition)).trailer["/Root"]["/StructTreeRoot"]
    levels = [kind for kind in _kinds(tree) if re.fullmatch(r"/H[1-6]", kind)]
    assert levels.count("/H3") == len(made.steps) + checks
    deep = [int(level[2]) for level in levels]
    assert deep[0] == 1
    assert all(b <= a + 1 for a, b in pairwise(deep)), "no level is left out"


def _kinds(node: Any) -> list[str]:
    """The kinds of a tree of structure, in reading order."""
    node = node.get_object()
    if isinstance(node, list):
        return [kind for each in node for kind in _kinds(each)]
    if not hasattr(node, "get"):
        return []
    return [str(node.get("/S", "")), *(_kinds(node["/K"]) if "/K" in node else [])]
