"""What the lesson says of the finished piece: its size, whom it suits, the extension for each wrist."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import Any

import numpy as np
import pytest

from pegwright.fit import PieceMeasurements
from pegwright.lesson import FinishedPiece, MissingReason, Portrait, languages, mirror_portrait
from pegwright.lesson.handout.finished import WIDEST_MM
from pegwright.lesson.scene.portrait import PortraitStrand, make_portrait
from tests.lesson.pieces import ebb, lesson


def ring(x: float, y: float, r: float) -> Any:
    turn = np.linspace(0, 2 * np.pi, 48, endpoint=False)
    return np.column_stack([x + r * np.cos(turn), y + r * np.sin(turn), 0.5 * np.sin(turn)])


def row(rings: int, size_mm: tuple[float, float, float] | None = None) -> Portrait:
    """Rings side by side, 12 mm each, the last one a little to one side."""
    strands = [
        PortraitStrand("band", k + 1, "AB"[k % 2], ring(12.0 * k, 2.0 * (k == rings - 1), 6.0), 0.75)
        for k in range(rings)
    ]
    return make_portrait("Ebb line", strands, ebb(), size_mm=size_mm)


def measured(length_mm: float, adds_mm: float | None, now: int = 0) -> PieceMeasurements:
    pulls = ((0.0, length_mm), (4.0, 2.0 * length_mm))
    return PieceMeasurements(
        length_mm=length_mm, width_mm=12.0, pulls=pulls, extension_mm=adds_mm, extension=now
    )  # fmt: skip


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("missing", ["unasked", "nothing", "restless"])
def test_a_missing_picture_is_told_with_its_reason(language: str, missing: MissingReason) -> None:
    """No portrait: a sentence that says so, another one for every reason, and nothing of it is spoken."""
    made = lesson(ebb(), language=language, finish=FinishedPiece(missing=missing)).finished
    others = {
        lesson(ebb(), language=language, finish=FinishedPiece(missing=m)).finished.size
        for m in ("unasked", "nothing", "restless")
    }
    assert made.portrait is None
    assert made.sentences == (made.size,)
    assert len(others) == 3


def test_the_size_is_the_solvers_in_the_readers_unit() -> None:
    """Whole millimetres, or the nearest sixteenth of an inch (1 in = 25.4 mm)."""
    finish = FinishedPiece(portrait=row(8, (123.4, 15.6, 8.49)))
    assert "123 mm long, 16 mm wide and 8 mm thick" in lesson(ebb(), finish=finish).finished.size
    inches = lesson(ebb(), finish=finish, units="inches").finished.size
    for mm in (123.4, 15.6, 8.49):
        whole, rest = divmod(Fraction(round(mm / 25.4 * 16), 16), 1)
        told = f"{whole or ''} {rest or ''}".strip()
        assert f"{told} in" in inches


def test_a_tube_is_high_where_a_strip_is_thick() -> None:
    assert (
        "40 mm high" in lesson(ebb(), finish=FinishedPiece(portrait=row(3, (23.0, 40.0, 40.0)))).finished.size
    )


@pytest.mark.parametrize(("rings", "words"), [(9, "Actual size."), (2, "Twice actual size.")])
def test_the_caption_says_how_large_it_is_printed(rings: int, words: str) -> None:
    made = lesson(ebb(), finish=FinishedPiece(portrait=row(rings))).finished
    assert made.portrait is not None
    wide = made.portrait.camera("front").size_mm[0]
    assert made.caption == words
    assert made.shown_mm == pytest.approx(wide * (2 if rings == 2 else 1), abs=0.01)


def test_a_long_piece_is_printed_as_wide_as_the_paper_allows() -> None:
    made = lesson(ebb(), finish=FinishedPiece(portrait=row(20))).finished
    assert (made.shown_mm, made.caption) == (WIDEST_MM, "Smaller than actual size.")


def test_no_table_where_nothing_can_be_added_and_no_wrists_where_nobody_pulled() -> None:
    assert lesson(ebb()).sizes is None
    shown = FinishedPiece(portrait=row(9))
    assert lesson(ebb(), finish=shown).sizes is None
    assert lesson(ebb(), finish=shown).finished.wrists == ""
    fixed = FinishedPiece(portrait=row(9), measured=measured(118.0, None))
    assert lesson(ebb(), finish=fixed).sizes is None
    high = math.floor(118 / 0.85 + 0.5)
    assert (
        lesson(ebb(), finish=fixed).finished.wrists
        == f"Closed, it can be worn on wrists from 118 mm to {high} mm."
    )


def test_the_other_hands_portrait_is_the_mirror_image() -> None:
    """Every point across its long axis, nearer points still nearer; the same size; twice gives the first."""
    shown = row(5)
    other = mirror_portrait(shown)
    for tube, back in zip(shown.tubes, other.tubes, strict=True):
        points = np.array(tube.points_mm)
        assert np.array(back.points_mm) == pytest.approx(points * np.array([1.0, -1.0, 1.0]))
    assert other.camera("front").size_mm == shown.camera("front").size_mm
    assert mirror_portrait(other) == shown
    left, low, right, high = other.camera("front").window_mm
    points = np.concatenate([np.array(tube.points_mm) for tube in other.tubes])
    assert left < points[:, 0].min() < points[:, 0].max() < right
    assert low < points[:, 1].min() < points[:, 1].max() < high


def test_the_script_says_the_size_once_at_the_opening() -> None:
    from pegwright.lesson import write_script

    made = lesson(ebb(), finish=FinishedPiece(portrait=row(9), measured=measured(118.0, None)))
    said = [line.text for line in write_script(made).lines]
    for sentence in made.finished.sentences:
        assert said[:6].count(sentence) == said.count(sentence) == 1
    assert lesson(ebb()).finished.size not in [line.text for line in write_script(lesson(ebb())).lines]
