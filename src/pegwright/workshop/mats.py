"""A picture becomes a mat: read, brought to cells of true proportions, matched, written down and proved."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import NamedTuple

import msgspec
import numpy as np

from pegwright.finding import Finding, RefusedError, finding, phrase
from pegwright.lesson import plan_row_chart
from pegwright.pattern import Pattern
from pegwright.press import row_chart_html
from pegwright.variants import (
    MAT_CELL,
    BandColour,
    CellSize,
    choose_colours,
    clean_lone_cells,
    grid_size,
    linear_of_tints,
    mat_pattern,
    match_cells,
    read_picture,
    scale_to_cells,
)
from pegwright.workshop.at_rest import bring_to_rest
from pegwright.workshop.line import Work, work
from pegwright.workshop.progress import ReportProgress, report_nothing

__all__ = ["Mat", "MatOrder", "chart_mat", "make_mat", "measure_mat_cell"]

_STAGES = 4


class MatOrder(msgspec.Struct, frozen=True, kw_only=True):
    """How a mat is made of a picture.

    `across` and `down` count its bands; without `down` it follows from the picture. `crop` is left, top,
    right and bottom as shares of the picture. `clean` takes lone cells out; None does so unless `diffuse`
    is on, which needs them. `pegs` is how many pegs a row of the maker's looms has.
    """

    title: str
    across: int = 25
    down: int | None = None
    crop: tuple[float, float, float, float] = (0.0, 0.0, 1.0, 1.0)
    most_colours: int = 8
    diffuse: bool = False
    clean: bool | None = None
    pegs: int = 13
    band: str = "standard"


class Mat(NamedTuple):
    """A mat: its pattern, worked and proved, and the letter of each band, the picture's top row first.

    `width_mm` and `height_mm` are those at rest, by the size of one cell. All are None if the picture
    cannot be read.
    """

    work: Work | None
    letters: tuple[tuple[str, ...], ...]
    width_mm: float
    height_mm: float
    findings: tuple[Finding, ...]


def make_mat(
    data: bytes,
    colours: Sequence[BandColour],
    order: MatOrder,
    progress: ReportProgress = report_nothing,
) -> Mat:
    """Make a mat of the bytes of a picture, in the colours given.

    Raises:
        RefusedError: there are no colours, or no mat of that size, crop or loom can be made.
    """
    if not colours:
        raise RefusedError(phrase("no-colours-told"))
    if not 1 <= order.most_colours <= 40:
        raise RefusedError(phrase("most-colours", most=order.most_colours))
    if not 3 <= order.pegs <= 1000:
        raise RefusedError(phrase("mat-pegs", pegs=order.pegs))
    progress("reading the picture", 0, _STAGES)
    picture, found = read_picture(data)
    if picture is None:
        return Mat(None, (), 0.0, 0.0, found)
    progress("matching the colours", 1, _STAGES)
    high, wide = picture.linear.shape[:2]
    left, top, right, bottom = order.crop
    across, down = grid_size(
        max((right - left) * wide, 1.0), max((bottom - top) * high, 1.0), order.across, order.down
    )
    cells = scale_to_cells(picture.linear, across, down, order.crop)
    palette = linear_of_tints(colour.tint for colour in colours)
    chosen = choose_colours(cells, palette, order.most_colours)
    numbers = match_cells(cells, palette[list(chosen)], diffuse=order.diffuse)
    if not order.diffuse if order.clean is None else order.clean:
        numbers = clean_lone_cells(numbers)
    letters = tuple(tuple(colours[chosen[number]].letter for number in row) for row in numbers.tolist())
    progress("working and proving the mat", 2, _STAGES)
    made = work(mat_pattern(order.title, letters, colours, pegs=order.pegs, band=order.band))
    findings = (*found, *_about_colours(letters, colours), *made.findings)
    return Mat(made, letters, across * MAT_CELL.across_mm, down * MAT_CELL.down_mm, findings)


def chart_mat(mat: Mat, language: str = "en") -> bytes:
    """Return the chart of a mat: one HTML file with the picture cell by cell and every row in numbers.

    Raises:
        ValueError: the language is unknown, or there is no mat.
    """
    if mat.work is None:
        raise ValueError("there is no mat to chart")
    pattern = mat.work.pattern
    colours = {colour.letter: (colour.name, colour.hex) for colour in pattern.colours}
    return row_chart_html(plan_row_chart(pattern.title, mat.letters, colours, MAT_CELL, language)).encode()


def _about_colours(letters: Sequence[Sequence[str]], colours: Sequence[BandColour]) -> list[Finding]:
    needed = Counter(letter for row in letters for letter in row)
    found = [
        finding("colour-runs-short", name=colour.name, needed=needed[colour.letter], have=colour.have)
        for colour in colours
        if colour.have is not None and needed[colour.letter] > colour.have
    ]
    if len(needed) == 1:
        name = next(colour.name for colour in colours if colour.letter in needed)
        found.append(finding("picture-one-colour", name=name))
    return found


def measure_mat_cell(across: int = 9, down: int = 12, progress: ReportProgress = report_nothing) -> CellSize:
    """Bring a mat of the usual bands to rest and measure one cell in its middle, two cells from every edge.

    It is the median distance between the middles of neighbouring bands, along the pegs and from row to row.
    """
    plain = BandColour("A", "plain", "#808080")
    made = work(_plain_mat(across, down, plain))
    lie = bring_to_rest(made, progress).relaxed.positions_mm
    middles = np.array([np.asarray(lie[band]).mean(axis=0) for band in range(across * down)])
    inner = middles.reshape(down, across, 3)[2:-2, 2:-2]
    return CellSize(
        float(np.median(np.linalg.norm(np.diff(inner, axis=1), axis=2))),
        float(np.median(np.linalg.norm(np.diff(inner, axis=0), axis=2))),
    )


def _plain_mat(across: int, down: int, colour: BandColour) -> Pattern:
    return mat_pattern("Plain mat", [[colour.letter] * across] * down, [colour], pegs=across + 1)
