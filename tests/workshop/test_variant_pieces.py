"""Variants of a piece: each is worked and proved anew, and says what is new about it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from pegwright.cli import main
from pegwright.finding import RefusedError
from pegwright.pattern import mirror
from pegwright.proof import check
from pegwright.variants import read_band_colours, read_band_size, read_loom_size
from pegwright.workshop import (
    VariantOrder,
    Work,
    example_files,
    make_variants,
    open_pattern,
    starter_pattern,
    work,
)

COLOURS = read_band_colours("slate=#34506b, foam white=#f2efe6, buoy red=#c23b2a, tar=#2a2320, sun=#f2c93a")


@pytest.fixture(scope="module")
def ebb() -> Work:
    pattern = open_pattern(example_files()["ebb-line"]).pattern
    assert pattern is not None
    return work(pattern)


def test_every_combination_is_made_and_proved(ebb: Work) -> None:
    order = VariantOrder(
        colourways=2, hands=("right", "left"), bands=((13.5, 1.5), (15, 1.8)), looms=((1, 40),)
    )
    variants, findings = make_variants(ebb, order, COLOURS)
    assert findings == ()
    assert len({one.name for one in variants}) == len(variants) == 8
    for one in variants:
        made = one.work
        assert made.holds
        assert check(made.history.events, made.proof, made.history.board.spots) is None
        assert made.supplies.bands == ebb.supplies.bands
        names = {colour.name for colour in made.pattern.colours}
        assert names <= {colour.name for colour in COLOURS}
    left = next(one for one in variants if one.hand == "left")
    right = next(one for one in variants if one.name == left.name.removesuffix("-left"))
    assert mirror(left.work.pattern).steps == right.work.pattern.steps


def test_without_an_order_it_is_the_piece_itself(ebb: Work) -> None:
    ((one,), findings) = make_variants(ebb, VariantOrder())
    assert findings == ()
    assert one.name == "same"
    assert one.work.pattern == ebb.pattern
    assert one.findings == ()


def test_strain_is_checked_again(ebb: Work) -> None:
    """Tiny bands are stretched too far over the same pegs; very wide ones lie slack."""
    (small, wide), _ = make_variants(ebb, VariantOrder(bands=((1.6, 1.5), (40.0, 1.5))))
    assert "band-overstretched" in {found.code for found in small.findings}
    assert "band-slack" in {found.code for found in wide.findings}
    assert "band-overstretched" not in {found.code for found in ebb.findings}


def test_a_loom_that_is_too_short_is_left_out(ebb: Work) -> None:
    variants, findings = make_variants(ebb, VariantOrder(looms=((1, 5), (1, 60))))
    assert [one.name for one in variants] == ["loom-1x60"]
    [found] = findings
    assert found.code == "variant-left-out"
    assert found.message.startswith("the variant on a loom of 1 × 5 pegs is left out")


def test_colourways_that_are_alike_or_short_are_said(ebb: Work) -> None:
    alike = read_band_colours("slate=#34506b, blue slate=#35516c")
    _, findings = make_variants(ebb, VariantOrder(colourways=1), alike)
    assert [found.code for found in findings] == ["colourway-alike"]
    few = [colour._replace(have=3) for colour in COLOURS]
    _, findings = make_variants(ebb, VariantOrder(colourways=1), few)
    assert [found.code for found in findings] == ["colourway-runs-short"]


def test_other_sizes_are_longer_and_hold() -> None:
    made = work(starter_pattern("Ebb chain", pegs=6))
    variants, _ = make_variants(made, VariantOrder(sizes=("S", "L")))
    small, large = variants
    assert (small.size, large.size) == ("S", "L")
    assert small.length_mm is not None
    assert large.length_mm is not None
    assert small.length_mm < large.length_mm
    assert small.work.supplies.bands < large.work.supplies.bands
    assert small.work.holds
    assert large.work.holds


def test_orders_that_cannot_be_are_refused(ebb: Work) -> None:
    pot = open_pattern(example_files()["lobster-pot"]).pattern
    assert pot is not None
    for made, order in ((work(pot), VariantOrder(looms=((2, 20),))), (ebb, VariantOrder(colourways=1))):
        with pytest.raises(RefusedError):
            make_variants(made, order)
    for text in ("", "15", "15x", "0x1", "2x3", "15x1.8x2"):
        with pytest.raises(RefusedError):
            read_band_size(text)
    for text in ("", "3", "0x5", "3x0", "700x10000"):
        with pytest.raises(RefusedError):
            read_loom_size(text)


def test_the_command_writes_the_patterns(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    piece = str(example_files()["ebb-line"])
    colours = ["--colours", "a=#000000,b=#ffffff,c=#c23b2a"]
    asked = ["variants", piece, "--hand", "both", "--colourways", "2", *colours]
    with pytest.raises(SystemExit) as ended:
        main([*asked, "--out", str(tmp_path / "made"), "--json"])
    told = json.loads(capsys.readouterr().out)
    assert ended.value.code == 0
    assert len(told["variants"]) == 4
    for one in told["variants"]:
        pattern = open_pattern(Path(one["file"])).pattern
        assert pattern is not None
        assert work(pattern).holds
        assert pattern.title.startswith("Ebb line, colours ")
    for bad in (["--colourways", "2"], ["--looms", "3"], ["--bands", "x"], ["--colourways", "101"]):
        with pytest.raises(SystemExit) as ended:
            main(["variants", piece, *bad, "--json"])
        assert ended.value.code == 2
        assert json.loads(capsys.readouterr().out)["ok"] is False
