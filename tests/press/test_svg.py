"""Pictures are well-formed, to scale, readable as text, and the same however a pattern was written."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import pytest

from pegwright.lesson import BandMark, FastenerMark, PegMark, Picture, Window, luminance
from pegwright.pattern import Pattern
from pegwright.press import step_svg, swatch_svg
from pegwright.press.paint.inks import COLOUR, GREY
from pegwright.press.paint.marks import paint_marks, paint_picture
from pegwright.press.paint.paths import Letters, LineTo, Stroke
from tests.lesson.pieces import dinghy, ebb, lesson, pictures_of, smack

SVG = "{http://www.w3.org/2000/svg}"
HOSTILE = '#eval("1+1") <script>alert(1)</script> $x$ ]]> & \u202e 🙂'


def whole_names(picture: Picture) -> set[str]:
    """Return the names of the pegs that lie in the picture with all of their rim, and 3 mm to spare."""
    frame = picture.window
    pegs = [mark for mark in picture.marks if isinstance(mark, PegMark) and mark.at]
    return {
        peg.at
        for peg in pegs
        if frame.left_mm + peg.r_mm + 3.0 <= peg.x_mm <= frame.right_mm - peg.r_mm - 3.0
        and frame.near_mm + peg.r_mm + 3.0 <= peg.y_mm <= frame.far_mm - peg.r_mm - 3.0
    }


@pytest.mark.parametrize("pattern", [ebb(), dinghy(), smack()], ids=["ebb", "dinghy", "smack"])
def test_every_picture_is_well_formed_and_says_what_it_shows(pattern: object) -> None:
    """An independent XML parser reads it; title and description are there; every peg's name is a text."""
    for picture in pictures_of(lesson(pattern)):  # type: ignore[arg-type]
        root = ET.fromstring(step_svg(picture))
        assert root.tag == f"{SVG}svg"
        assert root.findtext(f"{SVG}title") == picture.title
        assert root.findtext(f"{SVG}desc") == picture.text
        texts = [node.text for node in root.iter(f"{SVG}text")]
        assert whole_names(picture) <= set(texts)


def test_the_size_on_paper_is_the_looms_times_the_scale() -> None:
    """Width and height in mm, the view box in mm of the loom."""
    picture = pictures_of(lesson(ebb()))[0]
    root = ET.fromstring(step_svg(picture))
    _, _, w, h = map(float, root.attrib["viewBox"].split())
    assert w == pytest.approx(picture.window.width_mm, abs=0.01)
    assert float(root.attrib["width"].removesuffix("mm")) == pytest.approx(w * picture.scale, abs=0.02)
    assert float(root.attrib["height"].removesuffix("mm")) == pytest.approx(h * picture.scale, abs=0.02)


def test_pegs_stand_as_far_apart_as_on_the_loom() -> None:
    """Two neighbours of a loom with 16 mm pitch are 16 units apart, the farther one higher on the page."""
    picture = lesson(ebb()).steps[2].pictures[0]
    root = ET.fromstring(step_svg(picture))
    at = {t.text: (float(t.attrib["x"]), float(t.attrib["y"])) for t in root.iter(f"{SVG}text")}
    assert at["A1"][1] - at["A2"][1] == pytest.approx(16.0, abs=0.02)
    assert at["A1"][0] == at["A2"][0]


def test_a_repeat_and_its_moves_spelled_out_look_and_read_the_same() -> None:
    """Two ways of writing one piece give the same words and the same pictures, byte for byte."""
    one, other = lesson(ebb()), lesson(ebb(spelled_out=True))
    assert [s.instruction for s in one.steps] == [s.instruction for s in other.steps]
    assert list(map(step_svg, pictures_of(one))) == list(map(step_svg, pictures_of(other)))


def test_colour_is_never_alone() -> None:
    """A highlighted band carries its letter; bands of two colours carry different patterns."""
    made = lesson(ebb())
    picture = made.steps[2].pictures[0]
    assert ">A</text>" in step_svg(picture)
    hatches = {swatch.letter: swatch.hatch for swatch in made.key}
    assert len(set(hatches.values())) == len(hatches)
    strip = [re.sub(r"#[0-9a-f]{6}", "", swatch_svg(s)).partition("</desc>")[2] for s in made.key]
    assert len(set(strip)) == len(strip)


def test_a_users_words_cannot_leave_their_place() -> None:
    """A colour named like markup is text inside the picture and makes no element of its own."""
    plainly, nasty = lesson(ebb()), lesson(ebb(title=HOSTILE, colour=HOSTILE[:50]))
    for a, b in zip(pictures_of(plainly), pictures_of(nasty), strict=True):
        one, other = ET.fromstring(step_svg(a)), ET.fromstring(step_svg(b))
        assert [n.tag for n in one.iter()] == [n.tag for n in other.iter()]
    assert any(
        "<script>" in (ET.fromstring(step_svg(p)).findtext(f"{SVG}desc") or "") for p in pictures_of(nasty)
    )


def test_the_same_outline_is_painted_the_same_whichever_mark_it_came_from() -> None:
    """Painting depends on what a mark says, not on where it stands: moved and shown moved, it is the same."""
    picture = lesson(dinghy()).steps[2].pictures[0]
    w = picture.window
    moved = Picture(
        title=picture.title,
        text=picture.text,
        scale=picture.scale,
        window=Window(
            left_mm=w.left_mm + 5,
            right_mm=w.right_mm + 5,
            near_mm=w.near_mm - 3,
            far_mm=w.far_mm - 3,
            goes_on=w.goes_on,
        ),
        marks=tuple(_moved(m) for m in picture.marks if isinstance(m, BandMark | PegMark)),
    )
    still = Picture(
        title=picture.title,
        text=picture.text,
        scale=picture.scale,
        window=w,
        marks=tuple(m for m in picture.marks if isinstance(m, BandMark | PegMark)),
    )
    assert step_svg(moved) == step_svg(still)


def _moved(mark: BandMark | PegMark) -> BandMark | PegMark:
    import msgspec

    if isinstance(mark, PegMark):
        return msgspec.structs.replace(mark, x_mm=mark.x_mm + 5, y_mm=mark.y_mm - 3)
    outlines = tuple(
        tuple(arc._replace(x_mm=arc.x_mm + 5, y_mm=arc.y_mm - 3) for arc in outline)
        for outline in mark.outlines
    )
    return msgspec.structs.replace(mark, outlines=outlines)


def test_the_ring_of_a_peg_stands_out_from_the_ground() -> None:
    """3:1 for what must be seen to follow a picture: WCAG 2.2, 1.4.11; its contrast ratio and luminance."""
    for inks in (COLOUR, GREY):
        for ground in (inks.ground, "#ffffff"):
            light, dark = luminance(ground), luminance(inks.soft)
            assert (light + 0.05) / (dark + 0.05) >= 3.0


def test_a_knot_is_no_cross_and_one_clip_is_one_clip() -> None:
    """A cross reads as "don't"; of two ends that one clip joins, one is brought to the other."""
    knot = next(m for m in _fasteners(dinghy()) if m.kind == "knot")
    pen = paint_marks((knot,), Window(left_mm=-50, near_mm=-50, right_mm=50, far_mm=50), COLOUR)
    straight = [
        path
        for stroke in pen
        if isinstance(stroke, Stroke)
        for path in stroke.paths
        if all(isinstance(part, LineTo) for part in path.segments)
    ]
    assert straight == []
    for picture in (p for step in lesson(ebb()).steps for p in step.pictures):
        assert sum(isinstance(mark, FastenerMark) for mark in picture.marks) <= 1


def _fasteners(pattern: Pattern) -> list[FastenerMark]:
    steps = lesson(pattern).steps
    return [m for step in steps for p in step.pictures for m in p.marks if isinstance(m, FastenerMark)]


def test_arrows_pass_under_the_names_of_pegs() -> None:
    """A name is painted after every arrow, with a white edge."""
    seen = 0
    for picture in (p for step in lesson(ebb()).steps for p in step.pictures):
        pegs = {mark.at for mark in picture.marks if isinstance(mark, PegMark)}
        paints = paint_picture(picture, COLOUR)
        names = [i for i, paint in enumerate(paints) if isinstance(paint, Letters) and paint.text in pegs]
        arrows = [
            i
            for i, paint in enumerate(paints)
            if isinstance(paint, Stroke) and paint.ink == COLOUR.accent and paint.width == 1.0
        ]
        seen += bool(arrows)
        assert not arrows or max(arrows) < min(names)
    assert seen
