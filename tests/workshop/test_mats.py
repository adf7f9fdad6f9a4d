"""A picture goes all the way to a proved mat, and comes back out of its pattern."""

from __future__ import annotations

import io
import json
import re
from collections import Counter
from pathlib import Path

import html5lib
import msgspec
import numpy as np
import pytest
from hypothesis import given, strategies as st
from PIL import Image

from pegwright.cli import main
from pegwright.finding import RefusedError
from pegwright.lesson import portrait_of
from pegwright.pattern import BandType, localise, untranslated_texts
from pegwright.proof import check
from pegwright.variants import TECHNIQUES, BandColour, mat_pattern, read_band_colours, read_mat
from pegwright.workshop import (
    MatOrder,
    bring_to_rest,
    chart_mat,
    make_mat,
    measure_mat_cell,
    open_pattern,
    work,
)

COLOURS = (
    BandColour("F", "foam white", "#f2efe6", 300),
    BandColour("S", "slate", "#34506b", 20),
    BandColour("R", "buoy red", "#c23b2a"),
)


def picture_of(rows: list[str], dots: int = 12) -> bytes:
    """Return a picture of cells in the colours above, each as wide and tall as a band lies."""
    tints = {c.letter: [int(c.tint[at : at + 2], 16) for at in (1, 3, 5)] for c in COLOURS}
    small = np.array([[tints[letter] for letter in row] for row in rows], dtype=np.uint8)
    into = io.BytesIO()
    Image.fromarray(small.repeat(dots, axis=1).repeat(5, axis=0)).save(into, "PNG")
    return into.getvalue()


SVG = "{http://www.w3.org/2000/svg}"
ROWS = ["FFFFFF", "FSSSSF", "FSFFFF", "FSFFFF", "FSSSFF", "FSFFRR", "FSFFRR", "FFFFFF"]


def test_a_picture_of_cells_becomes_those_cells() -> None:
    """12 × 5 dots a cell are the proportions of a band at rest (7.2 × 3.0 mm)."""
    mat = make_mat(picture_of(ROWS), COLOURS, MatOrder(title="Flag", across=6, down=8))
    assert ["".join(row) for row in mat.letters] == ROWS
    assert mat.work is not None
    assert mat.work.holds
    assert (mat.width_mm, mat.height_mm) == pytest.approx((43.2, 24.0))


def test_the_pattern_lays_the_picture_row_by_row() -> None:
    """Read back from the machine's own record: band k over pegs p and p + 1 is the cell of that column."""
    made = work(mat_pattern("Flag", ROWS, COLOURS))
    letters = iter(made.history.colours)
    told: dict[int, list[str]] = {}
    for done in made.history.moves:
        if type(done.move).__name__ == "Place":
            first, second = (int(peg[1:]) for peg in done.move.over)
            assert second == first + 1
            told.setdefault(first, []).append(next(letters))
    assert ["".join(told[p + 1][y] for p in range(6)) for y in range(8)] == ROWS
    assert {heap.letter: heap.total for heap in made.supplies.heaps} == Counter("".join(ROWS))
    assert check(made.history.events, made.proof, made.history.board.spots) is None


@pytest.mark.parametrize("size", [(2, 2), (2, 9), (9, 2), (14, 5), (27, 3)])
def test_mats_of_every_size_hold(size: tuple[int, int]) -> None:
    across, down = size
    letters = np.random.default_rng(across).choice(list("FSR"), (down, across)).tolist()
    made = work(mat_pattern("Noise", letters, COLOURS))
    assert made.holds
    assert made.findings == ()
    assert sum(loom.count * loom.pegs for loom in made.supplies.looms) >= across + 1


def test_rows_that_come_again_are_told_once() -> None:
    plain = mat_pattern("Plain", ["FFSS", "FFSS", "FFSS", "FFSS", "RRRR"], COLOURS)
    assert len(plain.steps) < 14
    note = "Rows 2 to 4 of the mat."
    assert note in str(plain.steps)
    for language, said in (("de", "Reihen 2 bis 4 der Matte."), ("es", "Hileras 2 a 4 del tapete.")):
        assert said in str(localise(plain, language).steps)
        lacking = [text.path for text in untranslated_texts(plain, language) if not text.is_name]
        assert [path for path in lacking if not path.startswith("/colours/")] == []  # the maker's own names


def test_seen_from_the_front_it_is_the_picture_not_its_mirror_image() -> None:
    """In the portrait's own frame, columns go right and rows go down."""
    made = work(mat_pattern("Six by six", ["FFFFFF"] * 6, COLOURS[:1], pegs=7))
    rest = bring_to_rest(made)
    front = next(
        c for c in portrait_of(rest, made.pattern, made.history.colours).cameras if c.name == "front"
    )
    middles = np.array([np.asarray(line).mean(axis=0) for line in rest.relaxed.positions_mm[:36]])
    seen = (middles @ np.array([front.right, front.up]).T).reshape(6, 6, 2)
    right, down = (seen[:, 4] - seen[:, 1]).mean(axis=0), (seen[4] - seen[1]).mean(axis=0)
    assert right[0] * down[1] - right[1] * down[0] < 0


def test_the_size_of_a_cell_is_measured_again() -> None:
    """A small mat, beside the figures kept for its size (see `MAT_CELL`)."""
    cell = measure_mat_cell(6, 6)
    assert (cell.across_mm, cell.down_mm) == pytest.approx((7.48, 3.58), rel=0.05)


def test_the_chart_says_the_rows_that_the_pattern_lays() -> None:
    """Read back from the page: cells with their letters, and numbers that add up to every row."""
    mat = make_mat(picture_of(ROWS), COLOURS, MatOrder(title="<Flag>", across=6, down=8))
    page = chart_mat(mat, "de")
    tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    cells = [each.text for each in tree.findall(f".//figure//{SVG}text") if each.get("class") is None]
    assert "".join(cells) == "".join(ROWS)
    told = [each.text for each in tree.findall(".//ol//span")]
    assert told[0] == "Reihe 1: 6 F"
    assert "Reihen 3 bis 4, alle gleich: 1 F, 1 S, 4 F" in told
    laid = []
    for text in told:
        head, _, runs = text.partition(": ")
        first, last = (int(number) for number in (re.findall(r"[0-9]+", head) * 2)[:2])
        row = "".join(int(run.split()[0]) * run.split()[1] for run in runs.split(", "))
        laid += [row] * (last - first + 1)
    assert laid == ROWS
    rect = tree.find(f".//figure//{SVG}rect")
    assert float(rect.get("width")) / float(rect.get("height")) == pytest.approx(7.2 / 3.0, rel=0.01)
    for language in ("en", "es"):
        assert chart_mat(mat, language)


def test_what_runs_short_and_one_colour_are_said() -> None:
    mat = make_mat(picture_of(["SSSSSS"] * 6), COLOURS, MatOrder(title="Fog", across=6, down=6))
    assert [found.code for found in mat.findings if found.place.step is None] == [
        "colour-runs-short",
        "picture-one-colour",
    ]
    short = mat.findings[0]
    assert (short.facts["needed"], short.facts["have"]) == (36, 20)


def test_orders_that_cannot_be_are_refused() -> None:
    good = picture_of(ROWS)
    for colours, order in (
        ((), MatOrder(title="x")),
        (COLOURS, MatOrder(title="x", most_colours=0)),
        (COLOURS, MatOrder(title="x", pegs=2)),
        (COLOURS, MatOrder(title="x", across=1)),
        (COLOURS, MatOrder(title="x", crop=(0.5, 0, 0.5, 1))),
    ):
        with pytest.raises(RefusedError):
            make_mat(good, colours, order)
    for text in ("slate", "slate=#12345", "=#123456", "a=#123456,a=#654321"):
        with pytest.raises(RefusedError):
            read_band_colours(text)


def test_the_command_from_picture_to_pattern(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    picture, stash, out = tmp_path / "flag.png", tmp_path / "stash.json", tmp_path / "flag.pegwright"
    picture.write_bytes(picture_of(ROWS))
    bands = [{"colour": c.name, "tint": c.tint, "have": 500} for c in COLOURS]
    stash.write_text(json.dumps({"stash": 1, "bands": bands}))
    asked = [str(picture), "--stash", str(stash), "--across", "6", "--down", "8", "--out", str(out)]
    with pytest.raises(SystemExit) as ended:
        main(["mat", *asked, "--json"])
    told = json.loads(capsys.readouterr().out)
    assert ended.value.code == 0
    assert told["holds"]
    assert told["rows"][1] == "F S S S S F"
    written = open_pattern(out).pattern
    assert written is not None
    assert work(written).holds
    for bad in (
        ["mat", *asked],  # there already
        ["mat", str(picture)],
        ["mat", str(picture), "--colours", "slate"],
        ["mat", str(stash), "--colours", "slate=#34506b"],
        ["mat", str(picture), "--colours", "slate=#34506b", "--crop", "1,2"],
        ["mat", str(tmp_path / "none.png"), "--colours", "slate=#34506b"],
    ):
        with pytest.raises(SystemExit) as ended:
            main([*bad, "--json"])
        assert ended.value.code == 2
        assert json.loads(capsys.readouterr().out)["ok"] is False


def test_other_bands_make_a_grid_of_their_own_proportions() -> None:
    """A thicker band of the same bore lies wider and taller, so the same picture takes fewer rows or more."""
    thin, usual, thick = (
        make_mat(
            picture_of(ROWS),
            COLOURS,
            MatOrder(title="Flag", across=6, band=BandType(name="own", thickness_mm=thickness)),
        )
        for thickness in (1.0, 1.5, 2.2)
    )
    assert thin.cell < usual.cell < thick.cell
    assert thin.cell.down_mm < usual.cell.down_mm < thick.cell.down_mm
    for one in (thin, usual, thick):
        assert one.work is not None
        assert one.work.holds
        assert one.work.pattern.bands[0].name == "own"
        assert {colour.band for colour in one.work.pattern.colours} == {"own"}
        assert one.width_mm / one.height_mm == pytest.approx(6 * 12 / (8 * 5), rel=0.15)
    assert len(thin.letters) > len(usual.letters) >= len(thick.letters)


@given(
    st.integers(2, 7).flatmap(
        lambda n: st.lists(st.text("FSR", min_size=n, max_size=n), min_size=2, max_size=8)
    )
)
def test_a_mat_is_read_back_from_its_pattern(rows: list[str]) -> None:
    assert read_mat(mat_pattern("Any", rows, COLOURS)) == tuple(tuple(row) for row in rows)


def test_what_is_no_mat_is_not_read_as_one() -> None:
    assert [name for name, one in TECHNIQUES.items() if read_mat(one.make(3))] == [
        "mat-2",
        "mat-3",
        "mat-4",
        "mat-6",
    ]
    mat = mat_pattern("Any", ROWS, COLOURS)
    assert read_mat(msgspec.structs.replace(mat, steps=mat.steps[1:])) is None
