"""Scaling, matching and cleaning, each beside a plain second way."""

from __future__ import annotations

import numpy as np
import pytest
from coloraide import Color
from hypothesis import given, settings, strategies as st

from pegwright.finding import RefusedError
from pegwright.variants import (
    MAT_CELL,
    CellSize,
    choose_colours,
    clean_lone_cells,
    grid_size,
    linear_of_tints,
    match_cells,
    scale_to_cells,
)
from pegwright.variants.colour_distance import colour_distances, encode_srgb, lab_of_linear
from pegwright.variants.row_by_row import find_runs

TINTS = ["#f2efe6", "#34506b", "#c23b2a", "#d9b98a", "#3a2a1e", "#8fc0de"]
SQUARE = CellSize(1.0, 1.0)


def test_the_nearest_colour_is_that_of_a_general_library() -> None:
    cells = np.random.default_rng(3).random((6, 5, 3))
    ours = match_cells(cells, linear_of_tints(TINTS), diffuse=False)
    for y, x in np.ndindex(6, 5):
        seen = Color("srgb-linear", cells[y, x].tolist())
        far = [seen.delta_e(tint, method="2000") for tint in TINTS]
        assert far[ours[y, x]] == pytest.approx(min(far), abs=1e-4)


def plainly_diffused(cells: np.ndarray, palette: np.ndarray) -> np.ndarray:
    """Floyd and Steinberg 1976, cell by cell in reading order."""
    light, lab = cells.copy(), lab_of_linear(palette)
    down, across = cells.shape[:2]
    numbers = np.zeros((down, across), dtype=int)
    for y in range(down):
        for x in range(across):
            wanted = np.clip(light[y, x], -1, 2)
            numbers[y, x] = colour_distances(lab_of_linear(np.clip(wanted, 0, 1)), lab).argmin()
            lack = wanted - palette[numbers[y, x]]
            for dy, dx, share in ((0, 1, 7), (1, -1, 3), (1, 0, 5), (1, 1, 1)):
                if y + dy < down and 0 <= x + dx < across:
                    light[y + dy, x + dx] += lack * share / 16
    return numbers


@pytest.mark.parametrize("size", [(1, 1), (1, 7), (7, 1), (2, 2), (9, 14), (14, 5)])
def test_diffusion_by_fronts_is_diffusion_cell_by_cell(size: tuple[int, int]) -> None:
    cells, palette = np.random.default_rng(7).random((*size, 3)), linear_of_tints(TINTS)
    assert (match_cells(cells, palette, diffuse=True) == plainly_diffused(cells, palette)).all()


def test_diffusion_keeps_the_shade_and_plain_matching_does_not() -> None:
    """A trap: matching the cells as they were, not as the errors left them, silently leaves diffusion out."""
    palette = linear_of_tints(["#000000", "#ffffff"])
    grey = np.full((40, 40, 3), 0.3)
    assert match_cells(grey, palette, diffuse=True).mean() == pytest.approx(0.3, abs=0.02)
    assert match_cells(grey, palette, diffuse=False).mean() in (0.0, 1.0)


@given(st.integers(1, 40), st.integers(1, 40), st.integers(2, 12), st.integers(2, 12))
@settings(max_examples=40, deadline=None)
def test_one_even_colour_stays_what_it_is(high: int, wide: int, across: int, down: int) -> None:
    """However few the dots of the picture are."""
    cells = scale_to_cells(np.full((high, wide, 3), 0.4), across, down)
    assert cells.shape == (down, across, 3)
    assert cells == pytest.approx(0.4)


def test_a_cell_is_the_mean_of_its_dots() -> None:
    picture = np.random.default_rng(5).random((12, 18, 3))
    cells = scale_to_cells(picture, 6, 4, cell=SQUARE)
    assert cells == pytest.approx(picture.reshape(4, 3, 6, 3, 3).mean(axis=(1, 3)))
    part = scale_to_cells(picture, 3, 2, crop=(0.5, 0.5, 1, 1), cell=SQUARE)
    assert part == pytest.approx(cells[2:, 3:])


def test_what_is_drawn_as_a_circle_stays_one_at_rest() -> None:
    """A disc in the picture has the same extent in mm both ways, whatever the grid."""
    y, x = np.mgrid[:300, :400]
    disc = ((x - 200) ** 2 + (y - 150) ** 2 < 100**2)[..., None] * np.ones(3)
    for across, down in ((40, 72), (30, 90), (60, 110)):
        seen = scale_to_cells(disc, across, down)[..., 0] > 0.5
        wide = seen.any(axis=0).sum() * MAT_CELL.across_mm
        high = seen.any(axis=1).sum() * MAT_CELL.down_mm
        assert wide == pytest.approx(high, abs=MAT_CELL.across_mm + MAT_CELL.down_mm)


def test_the_grid_has_the_proportions_of_the_picture() -> None:
    across, down = grid_size(400, 300, 25)
    assert across * MAT_CELL.across_mm / (down * MAT_CELL.down_mm) == pytest.approx(4 / 3, rel=0.02)


@pytest.mark.parametrize("size", [(1, 10), (200, 10), (40, 1), (150, 200)])
def test_mats_that_cannot_be_are_refused(size: tuple[int, int]) -> None:
    with pytest.raises(RefusedError):
        grid_size(1, 1, *size)


@pytest.mark.parametrize("crop", [(0, 0, 0, 1), (0.5, 0, 0.4, 1), (0, -0.1, 1, 1), (0, 0, 1, 1.1)])
def test_crops_that_cannot_be_are_refused(crop: tuple[float, float, float, float]) -> None:
    with pytest.raises(RefusedError):
        scale_to_cells(np.zeros((5, 5, 3)), 2, 2, crop)


def test_no_cell_stands_alone_after_cleaning() -> None:
    grid = np.random.default_rng(2).integers(0, 9, (20, 20))
    cleaned = clean_lone_cells(grid)
    for y, x in np.ndindex(20, 20):
        around = cleaned[max(0, y - 1) : y + 2, max(0, x - 1) : x + 2]
        assert (around == cleaned[y, x]).sum() > 1


def test_cleaning_leaves_what_is_no_lone_cell() -> None:
    grid = np.zeros((6, 6), dtype=np.int64)
    grid[1, 1] = 1  # alone
    grid[4, 3] = grid[3, 4] = 2  # two that touch at a corner
    cleaned = clean_lone_cells(grid)
    assert cleaned[1, 1] == 0
    assert (cleaned == 2).sum() == 2


def test_the_best_few_colours_are_those_of_every_choice() -> None:
    """Two of six, against all pairs: the greedy choice is at most a little worse."""
    cells, palette = np.random.default_rng(11).random((8, 8, 3)), linear_of_tints(TINTS)
    far = colour_distances(lab_of_linear(cells.reshape(-1, 3))[:, None], lab_of_linear(palette))
    best = min(far[:, [a, b]].min(axis=1).mean() for a in range(6) for b in range(a))
    chosen = list(choose_colours(cells, palette, 2))
    assert len(chosen) == 2
    assert far[:, chosen].min(axis=1).mean() <= 1.15 * best


def test_no_colour_is_chosen_that_helps_nothing() -> None:
    cells = np.zeros((4, 4, 3))
    assert choose_colours(cells, linear_of_tints(["#ffffff", "#000000", "#ff0000"]), 3) == (1,)


@given(st.lists(st.sampled_from("AB"), max_size=30))
def test_runs_written_out_are_the_sequence(letters: list[str]) -> None:
    told = [
        letter
        for run in find_runs(letters)
        for letter in letters[run.start : run.start + run.length] * run.times
    ]
    assert told == letters


def test_runs_find_what_comes_again() -> None:
    assert [tuple(run) for run in find_runs("AAAXBCBCD")] == [(0, 1, 3), (3, 1, 1), (4, 2, 2), (8, 1, 1)]


def test_srgb_middle_is_not_linear_middle() -> None:
    """Cells mix in linear light: a chequer of black and white is sRGB 188, not 128 (IEC 61966-2-1)."""
    chequer = np.indices((8, 8)).sum(axis=0)[..., None] % 2 * np.ones(3)
    cells = scale_to_cells(chequer.astype(float), 2, 2, cell=SQUARE)
    assert np.round(encode_srgb(cells) * 255) == pytest.approx(188)
