"""A picture becomes a mat: read, brought to cells of true proportions, matched, written down and proved."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import NamedTuple

import msgspec
import numpy as np

from pegwright.finding import Finding, Language, RefusedError, finding, phrase
from pegwright.lesson import plan_row_chart
from pegwright.pattern import BandType, Pattern, band_types_by_letter, localise
from pegwright.press import row_chart_html
from pegwright.variants import (
    BandColour,
    CellSize,
    SourcePicture,
    choose_colours,
    clean_lone_cells,
    grid_size,
    linear_of_tints,
    mat_cell_of,
    mat_pattern,
    match_cells,
    read_mat,
    read_picture,
    scale_to_cells,
)
from pegwright.workshop.at_rest import bring_to_rest
from pegwright.workshop.line import Work, work
from pegwright.workshop.progress import ReportProgress, report_nothing

__all__ = [
    "Mat",
    "MatCells",
    "MatOrder",
    "chart_mat",
    "chart_of",
    "lay_out_mat",
    "make_mat",
    "measure_mat_cell",
]

_STAGES = 4


class MatOrder(msgspec.Struct, frozen=True, kw_only=True):
    """How a mat is made of a picture.

    `across` and `down` count its bands; without `down` it follows from the picture. `crop` is left, top,
    right and bottom as shares of the picture. `clean` takes lone cells out; None does so unless `diffuse`
    is on, which needs them. `pegs` is how many pegs a row of the maker's looms has; `band` the kind
    of bands. `language` is that of the pattern's own texts.
    """

    title: str
    across: int = 25
    down: int | None = None
    crop: tuple[float, float, float, float] = (0.0, 0.0, 1.0, 1.0)
    most_colours: int = 8
    diffuse: bool = False
    clean: bool | None = None
    pegs: int = 13
    band: BandType = BandType()
    language: Language = "en"


class MatCells(NamedTuple):
    """The letter of each band of a mat, the picture's top row first, and how large one cell lies, in mm."""

    letters: tuple[tuple[str, ...], ...]
    cell: CellSize
    findings: tuple[Finding, ...]

    @property
    def size_mm(self) -> tuple[float, float]:
        """How wide and high the mat lies at rest."""
        return len(self.letters[0]) * self.cell.across_mm, len(self.letters) * self.cell.down_mm


class Mat(NamedTuple):
    """A mat: its pattern, worked and proved, and the letter of each band, the picture's top row first.

    `width_mm` and `height_mm` are those at rest, by the size of one cell. All are None if the picture
    cannot be read.
    """

    work: Work | None
    letters: tuple[tuple[str, ...], ...]
    cell: CellSize
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
    progress("reading the picture", 0, _STAGES)
    picture, found = read_picture(data)
    if picture is None:
        _require_possible(colours, order)
        return Mat(None, (), mat_cell_of(order.band), 0.0, 0.0, found)
    progress("matching the colours", 1, _STAGES)
    cells = lay_out_mat(picture, colours, order)
    progress("working and proving the mat", 2, _STAGES)
    pattern = mat_pattern(
        order.title, cells.letters, colours, pegs=order.pegs, band=order.band, language=order.language
    )
    made = work(pattern)
    findings = (*found, *cells.findings, *made.findings)
    return Mat(made, cells.letters, cells.cell, *cells.size_mm, findings)


def lay_out_mat(picture: SourcePicture, colours: Sequence[BandColour], order: MatOrder) -> MatCells:
    """Bring a picture to cells of true proportions and match them to the colours; nothing is worked yet.

    Raises:
        RefusedError: there are no colours, or no mat of that size, crop or loom can be made.
    """
    _require_possible(colours, order)
    cell = mat_cell_of(order.band)
    high, wide = picture.linear.shape[:2]
    left, top, right, bottom = order.crop
    across, down = grid_size(
        max((right - left) * wide, 1.0), max((bottom - top) * high, 1.0), order.across, order.down, cell
    )
    cells = scale_to_cells(picture.linear, across, down, order.crop, cell)
    palette = linear_of_tints(colour.tint for colour in colours)
    chosen = choose_colours(cells, palette, order.most_colours, mixed=order.diffuse)
    numbers = match_cells(cells, palette[list(chosen)], diffuse=order.diffuse)
    if not order.diffuse if order.clean is None else order.clean:
        numbers = clean_lone_cells(numbers)
    letters = tuple(tuple(colours[chosen[number]].letter for number in row) for row in numbers.tolist())
    return MatCells(letters, cell, tuple(_about_colours(letters, colours)))


def _require_possible(colours: Sequence[BandColour], order: MatOrder) -> None:
    if not colours:
        raise RefusedError(phrase("no-colours-told"))
    if not 1 <= order.most_colours <= 40:
        raise RefusedError(phrase("most-colours", most=order.most_colours))
    if not 3 <= order.pegs <= 1000:
        raise RefusedError(phrase("mat-pegs", pegs=order.pegs))


def chart_mat(mat: Mat, language: str = "en") -> bytes:
    """Return the chart of a mat: one HTML file with the picture cell by cell and every row in numbers.

    Raises:
        ValueError: the language is unknown, or there is no mat.
    """
    chart = None if mat.work is None else chart_of(mat.work.pattern, language)
    if chart is None:
        raise ValueError("there is no mat to chart")
    return chart


def chart_of(pattern: Pattern, language: str = "en") -> bytes | None:
    """Return the chart of a pattern that is a mat, as `chart_mat` does; None if it is none.

    Raises:
        ValueError: the language is unknown.
    """
    letters = read_mat(pattern)
    if letters is None:
        return None
    said = localise(pattern, language)
    colours = {colour.letter: (colour.name, colour.hex) for colour in said.colours}
    kinds = band_types_by_letter(pattern)
    cell = mat_cell_of(kinds.get(letters[0][0]) or BandType())
    return row_chart_html(plan_row_chart(said.title, letters, colours, cell, language)).encode()


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


def measure_mat_cell(
    across: int = 9,
    down: int = 12,
    progress: ReportProgress = report_nothing,
    *,
    band: BandType | None = None,
) -> CellSize:
    """Bring a mat to rest and measure one cell in its middle, two cells from every edge.

    It is the median distance between the middles of neighbouring bands, along the pegs and from row to row.
    """
    plain = BandColour("A", "plain", "#808080")
    made = work(mat_pattern("Plain mat", [["A"] * across] * down, [plain], pegs=across + 1, band=band))
    lie = bring_to_rest(made, progress).relaxed.positions_mm
    middles = np.array([np.asarray(lie[band]).mean(axis=0) for band in range(across * down)])
    inner = middles.reshape(down, across, 3)[2:-2, 2:-2]
    return CellSize(
        float(np.median(np.linalg.norm(np.diff(inner, axis=1), axis=2))),
        float(np.median(np.linalg.norm(np.diff(inner, axis=0), axis=2))),
    )
