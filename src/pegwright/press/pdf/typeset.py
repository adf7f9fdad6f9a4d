"""Typeset a lesson as tagged PDF (PDF/UA-1: ISO 14289-1) with its fonts inside.

The template is fixed and the lesson goes in as JSON, so that nothing a user wrote is read as markup.
"""

from __future__ import annotations

from datetime import UTC, datetime
from functools import lru_cache
from itertools import pairwise
from pathlib import Path
from typing import Any, Literal

import msgspec
import typst

from pegwright.lesson import Leaf, Lesson, LessonStep, PegMark, Picture, Portrait, Swatch
from pegwright.press.paint.inks import COLOUR, GREY, Inks
from pegwright.press.pdf.labels import handout_labels
from pegwright.press.portrait.vectors import portrait_svg
from pegwright.press.svg.pictures import step_svg, swatch_svg

Paper = Literal["a4", "letter"]
Edition = Literal["standard", "large", "giant", "grey"]

_HERE = Path(__file__).parent
_LETTERS_PT: dict[Edition, float] = {"standard": 10.5, "large": 18.0, "giant": 24.0, "grey": 10.5}
_MM_A_PT = 25.4 / 72
_WIDEST_MM = 182.0
_TALLEST_MM_PT = 3000.0
"""The least height of a picture times the size of the letters: larger words leave it less of the page."""
_LETTER_WIDE = 0.6
"""The width of a letter of a peg's name as a multiple of its size."""
_ONE_PLACE_MM = 0.01
"""Pegs no further apart on paper stand in one place: no size parts their names."""
_PLAN_TIMES, _SIDE_TIMES = 1.25, 2.4
"""How many times larger pictures are at least in large print: the loom from above, and what has no pegs."""
_NAMES = {"a4": "a4", "letter": "us-letter"}


def handout_pdf(
    lesson: Lesson, paper: Paper = "a4", *, edition: Edition = "standard", date: datetime | None = None
) -> bytes:
    """Return the handout as PDF. The same lesson, paper, edition and date give the same bytes.

    The large edition is set in 18 points, the giant one in 24, and nothing in them under 16; the letters in
    their pictures are as large, and the pictures fill the page. The grey one is for black ink on white paper:
    its bands differ by pattern and letter.

    An accessible PDF may not hold a character that no font can show. So the fonts of this machine are tried
    as well; if they lack it too, the claim of accessibility is dropped rather than the character. Without a
    date the document carries none.

    Raises:
        KeyError: there is no such paper.
        ValueError: the date has no time zone.
    """
    inks = GREY if edition == "grey" else COLOUR
    letters = _LETTERS_PT[edition]
    data = {"lesson": _template_data(lesson, inks, letters), "edition": edition, "letters": letters}
    return _typeset("handout.typ", data, paper, date)


def leaf_pdf(leaf: Leaf, paper: Paper = "a4", *, date: datetime | None = None) -> bytes:
    """Return a leaf (kit sheet, filming plan, script) as PDF, with the same guarantees as the handout.

    Raises:
        KeyError: there is no such paper.
        ValueError: the date has no time zone.
    """
    return _typeset("leaf.typ", {"leaf": msgspec.to_builtins(leaf)}, paper, date)


def _typeset(template: str, data: dict[str, Any], paper: Paper, date: datetime | None) -> bytes:
    inputs = {name: msgspec.json.encode(value).decode() for name, value in data.items()}
    inputs |= {"paper": _NAMES[paper], "dated": str(bool(date))}
    options: dict[str, Any] = {
        "sys_inputs": inputs,
        "format": "pdf",
        "timestamp": date or datetime(2000, 1, 1, tzinfo=UTC),
    }
    source = (_HERE / template).read_bytes()
    for fonts, standards in ((False, ["ua-1"]), (True, ["ua-1"]), (True, [])):
        try:
            pdf = _compiler(fonts).compile(source, pdf_standards=standards, **options)
        except typst.TypstError as error:
            if not standards or "could not be displayed" not in error.message:
                raise
            continue
        break
    assert isinstance(pdf, bytes)
    return pdf


@lru_cache
def _compiler(system_fonts: bool) -> Any:
    return typst.Compiler(
        root=_HERE, font_paths=[_HERE.parent / "fonts"], ignore_system_fonts=not system_fonts
    )


def _template_data(lesson: Lesson, inks: Inks, letters_pt: float) -> dict[str, Any]:
    """Return the lesson as plain values for the template, its pictures as SVG."""
    finished = lesson.finished
    flat: dict[str, Any] = msgspec.to_builtins(
        msgspec.structs.replace(
            lesson,
            finished=msgspec.structs.replace(finished, portrait=None),
            phases=tuple(
                msgspec.structs.replace(
                    phase,
                    steps=tuple(map(_without_pictures, phase.steps)),
                    holding=None,
                    check=phase.check and msgspec.structs.replace(phase.check, chart=()),
                )
                for phase in lesson.phases
            ),
        )
    )
    flat["labels"] = msgspec.to_builtins(handout_labels(lesson.phrasebook))
    flat["finished"]["sentences"] = finished.sentences
    flat["finished"]["svg"] = _cover(finished.portrait, finished.shown_mm, inks) if finished.portrait else ""
    for phase, plain in zip(lesson.phases, flat["phases"], strict=True):
        plain["holding"] = _picture_data(phase.holding, inks, letters_pt) if phase.holding else None
        if phase.check is not None:
            plain["check"]["chart"] = [_picture_data(p, inks, letters_pt) for p in phase.check.chart]
        for step, bare in zip(phase.steps, plain["steps"], strict=True):
            bare["pictures"] = [
                _picture_data(each, inks, letters_pt, step.pictures) for each in step.pictures
            ]
            bare["closeup"] = _picture_data(step.closeup, inks, letters_pt) if step.closeup else None
            for trouble, plain_trouble in zip(step.mistakes, bare["mistakes"], strict=True):
                for side in ("wrong_picture", "right_picture"):
                    picture = getattr(trouble, side)
                    plain_trouble[side] = _picture_data(picture, inks, letters_pt) if picture else None
    if lesson.sizes is not None:
        flat["sizes"]["cells"] = [row.cells(lesson.sizes) for row in lesson.sizes.rows]
    for row in flat["supplies"]["bands"]:
        row["swatch"] = _swatch_data(row, inks)
    for row in flat["key"]:
        row.update(_swatch_data(row, inks))
    return flat


@lru_cache(maxsize=8)
def _cover(portrait: Portrait, shown_mm: float, inks: Inks) -> str:
    return portrait_svg(portrait, "front", bare=True, width_mm=shown_mm, inks=inks)


def _without_pictures(step: LessonStep) -> LessonStep:
    """Return a step without its pictures, which are painted separately."""
    mistakes = tuple(
        msgspec.structs.replace(t, wrong_picture=None, right_picture=None) for t in step.mistakes
    )
    return msgspec.structs.replace(step, pictures=(), closeup=None, mistakes=mistakes)


def _swatch_data(row: dict[str, Any], inks: Inks) -> dict[str, Any]:
    swatch = Swatch(letter=row["letter"], name=row["name"], tint=row["tint"], hatch=row["hatch"])
    return {"svg": swatch_svg(swatch, inks), "alt": f"{swatch.letter}: {swatch.name}"}


def _times_for_names(picture: Picture, letters_pt: float) -> float:
    """Return how many times larger a picture must be for the names of pegs side by side not to touch."""
    pegs = sorted((mark.y_mm, mark.x_mm, mark.at) for mark in picture.marks if isinstance(mark, PegMark))
    least = 0.0
    for (y, x, name), (other_y, other_x, other) in pairwise(pegs):
        apart_mm = (other_x - x) * picture.scale
        if other_y - y < 0.1 and apart_mm > _ONE_PLACE_MM and name and other:
            wide_mm = _LETTER_WIDE * letters_pt * _MM_A_PT * (len(name) + len(other) + 1) / 2
            least = max(least, wide_mm / apart_mm)
    return least


def _picture_data(
    picture: Picture, inks: Inks, letters_pt: float, parts: tuple[Picture, ...] = ()
) -> dict[str, Any]:
    """Return a picture painted, with its least size on paper in mm; in large print its letters are large.

    The `parts` of one step, of which it is one, are enlarged alike.
    """
    width, height = (side * picture.scale for side in (picture.window.width_mm, picture.window.height_mm))
    times, least = 1.0, 0.0
    if letters_pt > _LETTERS_PT["standard"]:
        aside = not any(isinstance(mark, PegMark) for mark in picture.marks)
        wanted = (_SIDE_TIMES if aside else _PLAN_TIMES) * letters_pt / _LETTERS_PT["large"]
        times = min(wanted, _WIDEST_MM / width, _TALLEST_MM_PT / letters_pt / height)
        clear = max(_times_for_names(each, letters_pt) for each in (picture, *parts))
        times = max(times, min(clear, _WIDEST_MM / width))
        least = letters_pt * _MM_A_PT / (picture.scale * times)
    return {
        "svg": step_svg(picture, inks, round(least, 2)),
        "width": round(width * times, 2),
        "height": round(height * times, 2),
        "title": picture.title,
        "alt": picture.text,
    }
