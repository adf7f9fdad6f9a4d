"""From a picture to a grid of band colours: crop, scale to cells of true proportions, match, clean."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from pegwright.finding import RefusedError, phrase
from pegwright.pattern import BandType
from pegwright.variants.colour_distance import Floats, colour_distances, lab_of_linear

__all__ = [
    "MAT_CELL",
    "CellSize",
    "Numbers",
    "choose_colours",
    "clean_lone_cells",
    "grid_size",
    "mat_cell_of",
    "match_cells",
    "scale_to_cells",
]

Numbers = npt.NDArray[np.int64]
"""A number of a colour for each cell, shape (down, across)."""

MOST_ACROSS = 199  # as many pegs and one as a cord is run through at once
MOST_CELLS = 20_000
_SAMPLE = 600  # cells that are looked at to choose the colours
_ROUNDS = 10


class CellSize(NamedTuple):
    """The size of one band in a mat at rest, in mm: across the pegs, and from one row to the next."""

    across_mm: float
    down_mm: float


MAT_CELL = CellSize(7.2, 3.0)
"""One band of the usual kind in the middle of a mat at rest, as the solver has it.

Measured with `pegwright.workshop.measure_mat_cell` on a mat of 9 bands across and 12 rows: the median
distance of the middles of neighbouring bands, two bands and more from every edge (7.16 and 3.03 mm). Other
sizes: 7.48 and 3.58 (6 × 6), 7.10 and 3.40 (8 × 8), 7.14 and 3.31 (12 × 9): the fewer the rows, the taller
they lie.
"""


_CELLS = (
    (1.0 / 13.5, 0.504, 0.173),
    (1.25 / 13.5, 0.520, 0.198),
    (1.5 / 13.5, MAT_CELL.across_mm / 13.5, MAT_CELL.down_mm / 13.5),
    (1.8 / 13.5, 0.567, 0.255),
    (2.2 / 13.5, 0.634, 0.290),
)
"""Thickness of a band, its cell across and down, all by its bore: measured like `MAT_CELL`, bore 13.5 mm."""


def mat_cell_of(band: BandType) -> CellSize:
    """Return the size of one cell of a mat of such bands, interpolated between what the solver measured.

    Bands of the same proportions lie alike, whatever their size; a mat of bands of 20 and 2.2 mm, measured as
    well, comes within 5 % across and 15 % down (10.1 and 5.1 mm).
    """
    slim = band.thickness_mm / band.bore_mm
    slims, across, down = zip(*_CELLS, strict=True)
    return CellSize(
        float(np.interp(slim, slims, across)) * band.bore_mm,
        float(np.interp(slim, slims, down)) * band.bore_mm,
    )


def grid_size(
    width: float, height: float, across: int, down: int | None = None, cell: CellSize = MAT_CELL
) -> tuple[int, int]:
    """Return how many cells a picture of that width and height takes, across and down; `down` stays if given.

    Raises:
        RefusedError: that is less than 2 cells either way, or more than a mat may have.
    """
    rows = down
    if rows is None:
        rows = max(2, round(across * cell.across_mm * height / (width * cell.down_mm)))
    if not (2 <= across <= MOST_ACROSS and rows >= 2 and across * rows <= MOST_CELLS):
        raise RefusedError(phrase("mat-size", across=across, down=rows, widest=MOST_ACROSS, most=MOST_CELLS))
    return across, rows


def scale_to_cells(
    linear: Floats,
    across: int,
    down: int,
    crop: tuple[float, float, float, float] = (0.0, 0.0, 1.0, 1.0),
    cell: CellSize = MAT_CELL,
) -> Floats:
    """Return the mean light of each cell, shape (down, across, 3).

    `crop` is left, top, right and bottom as shares of the picture. What is left is cut further, evenly on
    both sides, to the proportions that the cells have at rest; so nothing is drawn out of shape.

    Raises:
        RefusedError: the crop is empty or reaches beyond the picture.
    """
    left, top, right, bottom = crop
    if not (0 <= left < right <= 1 and 0 <= top < bottom <= 1):
        raise RefusedError(phrase("crop-impossible"))
    high, wide = linear.shape[:2]
    x0, x1, y0, y1 = left * wide, right * wide, top * high, bottom * high
    shape = (across * cell.across_mm) / (down * cell.down_mm)
    if (x1 - x0) > shape * (y1 - y0):
        spare = (x1 - x0) - shape * (y1 - y0)
        x0, x1 = x0 + spare / 2, x1 - spare / 2
    else:
        spare = (y1 - y0) - (x1 - x0) / shape
        y0, y1 = y0 + spare / 2, y1 - spare / 2
    by_row = np.tensordot(_shares(high, y0, y1, down), linear, axes=1)
    return np.asarray(np.einsum("cw,rwk->rck", _shares(wide, x0, x1, across), by_row))


def _shares(dots: int, begin: float, end: float, cells: int) -> Floats:
    """Return how much each dot of a line counts for each cell, shape (cells, dots); rows add up to 1."""
    edges = np.linspace(begin, end, cells + 1)
    at = np.arange(dots, dtype=np.float64)
    low = np.maximum(at[None], edges[:-1, None])
    high = np.minimum(at[None] + 1, edges[1:, None])
    shares = np.maximum(high - low, 0.0)
    return np.asarray(shares / shares.sum(axis=1, keepdims=True))


def choose_colours(cells: Floats, palette: Floats, most: int, *, mixed: bool = False) -> tuple[int, ...]:
    """Return which colours of a palette, at most so many, come nearest to the picture; both in linear light.

    Each is the one that lowers the mean distance most, given those before it. One that lowers it no more is
    left out, unless shades are `mixed`: then it may still be needed for a shade that no band has.
    """
    flat = lab_of_linear(cells.reshape(-1, 3))
    flat = flat[:: max(1, math.ceil(len(flat) / _SAMPLE))]
    far = colour_distances(flat[:, None], lab_of_linear(palette)[None])
    chosen: list[int] = []
    nearest = np.full(len(flat), np.inf)
    while len(chosen) < min(most, len(palette)):
        means = np.minimum(nearest[:, None], far).mean(axis=0)
        means[chosen] = np.inf
        best = int(means.argmin())
        if chosen and not mixed and means[best] > nearest.mean() - 1e-9:
            break
        chosen.append(best)
        nearest = np.minimum(nearest, far[:, best])
    return tuple(sorted(chosen))


def match_cells(cells: Floats, palette: Floats, *, diffuse: bool) -> Numbers:
    """Return the nearest colour of each cell by CIEDE2000; cells (down, across, 3), palette in linear light.

    With `diffuse`, what a cell lacks is handed on to cells not yet matched (Floyd and Steinberg 1976), so
    that areas have the right colour on the whole. The errors are in linear light, since that is how
    neighbouring bands mix in the eye.
    """
    lab = lab_of_linear(palette)
    if not diffuse:
        return np.asarray(colour_distances(lab_of_linear(cells)[..., None, :], lab).argmin(axis=-1))
    down, across = cells.shape[:2]
    # A margin takes what would be handed on beyond the edge. Cells with the same x + 2y need nothing of
    # each other.
    light = np.zeros((down + 1, across + 2, 3))
    light[:down, 1:-1] = cells
    numbers = np.zeros((down, across), dtype=np.int64)
    for front in range(across + 2 * (down - 1)):
        y = np.arange(max(0, (front - across + 2) // 2), min(down - 1, front // 2) + 1)
        x = front - 2 * y
        # Debts are kept beyond black and white, or shades would drift; without any bound they would run away
        # where the palette cannot pay them.
        wanted = np.clip(light[y, x + 1], -1.0, 2.0)
        seen = lab_of_linear(np.clip(wanted, 0.0, 1.0))
        numbers[y, x] = colour_distances(seen[:, None], lab[None]).argmin(axis=1)
        lack = wanted - palette[numbers[y, x]]
        for dy, dx, share in ((0, 1, 7), (1, -1, 3), (1, 0, 5), (1, 1, 1)):
            np.add.at(light, (y + dy, x + 1 + dx), lack * share / 16)
    return numbers


def clean_lone_cells(numbers: Numbers) -> Numbers:
    """Return the grid without lone cells: those unlike all their neighbours take the most frequent one.

    A cell has up to eight neighbours. Ties go to the lowest number. It is done until none is left, or ten
    times.
    """
    grid = numbers.copy()
    down, across = grid.shape
    for _ in range(_ROUNDS):
        padded = np.full((down + 2, across + 2), -1, dtype=np.int64)
        padded[1:-1, 1:-1] = grid
        around = np.stack(
            [
                padded[1 + dy : 1 + dy + down, 1 + dx : 1 + dx + across]
                for dy in (-1, 0, 1)
                for dx in (-1, 0, 1)
                if dy or dx
            ]
        )
        lone = ~(around == grid).any(axis=0)
        if not lone.any():
            break
        for y, x in np.argwhere(lone):
            seen = around[:, y, x]
            grid[y, x] = np.bincount(seen[seen >= 0]).argmax()
    return grid
