"""A picture as it would lie as a mat, while the maker chooses; and the mat itself, worked and proved."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Any

import msgspec

from pegwright.finding import Language, RefusedError, WordedFinding, word_finding, word_phrase
from pegwright.pattern import BandType, write_pattern
from pegwright.variants import BandColour, letter_colours, read_picture
from pegwright.workshop import MatCells, MatOrder, ReportProgress, lay_out_mat, make_mat

__all__ = [
    "MatChoice",
    "MatGrid",
    "MatLook",
    "MatMade",
    "MatPreview",
    "PictureColour",
    "look_at_mat",
    "mat_files",
]

_Share = Annotated[float, msgspec.Meta(ge=0, le=1)]


class PictureColour(msgspec.Struct, frozen=True, kw_only=True):
    """A colour of bands: its name and tint (#rrggbb), and how many are at hand, if that is told."""

    name: Annotated[str, msgspec.Meta(min_length=1, max_length=200)]
    tint: Annotated[str, msgspec.Meta(pattern="^#[0-9a-fA-F]{6}$")]
    have: Annotated[int, msgspec.Meta(ge=0)] | None = None


class MatChoice(msgspec.Struct, frozen=True, kw_only=True):
    """What the maker chose for a mat: see `MatOrder`. `bore_mm` and `thickness_mm` are those of the bands."""

    title: Annotated[str, msgspec.Meta(min_length=1, max_length=200)]
    across: Annotated[int, msgspec.Meta(ge=2, le=199)] = 25
    down: Annotated[int, msgspec.Meta(ge=2, le=10_000)] | None = None
    crop: tuple[_Share, _Share, _Share, _Share] = (0.0, 0.0, 1.0, 1.0)
    most_colours: Annotated[int, msgspec.Meta(ge=1, le=40)] = 8
    diffuse: bool = False
    pegs: Annotated[int, msgspec.Meta(ge=3, le=1000)] = 13
    band: Annotated[str, msgspec.Meta(min_length=1, max_length=200)] = "standard"
    bore_mm: Annotated[float, msgspec.Meta(ge=1, le=200)] = 13.5
    thickness_mm: Annotated[float, msgspec.Meta(ge=0.1, le=20)] = 1.5
    colours: Annotated[tuple[PictureColour, ...], msgspec.Meta(min_length=1, max_length=200)]


class MatLook(msgspec.Struct, frozen=True, kw_only=True):
    """A picture (its file's bytes) and a choice, to be looked at. Of one page the highest serial counts."""

    picture: bytes
    choice: MatChoice
    page: Annotated[str, msgspec.Meta(max_length=64)] = ""
    serial: Annotated[int, msgspec.Meta(ge=0)] = 0


class MatGrid(msgspec.Struct, frozen=True, kw_only=True):
    """The mat in one way: for each cell, the top row first, the number of its colour in the choice, from 0.

    `needed` is how many bands each colour takes.
    """

    rows: tuple[tuple[int, ...], ...]
    needed: tuple[int, ...]
    findings: tuple[WordedFinding, ...]


class MatPreview(msgspec.Struct, frozen=True, kw_only=True):
    """The mat with its colours in areas, and with shades mixed from dots; `cell_mm` is how large a cell lies.

    Without `plain` it cannot be made: `reason` and `findings` say why. `picture_px` is the picture's size as
    it was looked at.
    """

    reason: str = ""
    findings: tuple[WordedFinding, ...] = ()
    picture_px: tuple[int, int] = (0, 0)
    cell_mm: tuple[float, float] = (0.0, 0.0)
    plain: MatGrid | None = None
    mixed: MatGrid | None = None


class MatMade(msgspec.Struct, frozen=True, kw_only=True):
    """A mat that is worked: its document, whether every band is proved held, and what was found.

    Where the picture cannot be read there is no document.
    """

    document: dict[str, Any] | None
    holds: bool
    bands: int
    findings: tuple[WordedFinding, ...]


def look_at_mat(data: bytes, choice: MatChoice, language: Language, progress: ReportProgress) -> MatPreview:
    """Lay the cells of a picture out both ways, without working anything."""
    picture, found = read_picture(data)
    told = tuple(word_finding(each, language) for each in found)
    if picture is None:
        return MatPreview(reason=told[0].message, findings=told)
    colours = _colours(choice)
    grids: list[MatGrid] = []
    try:
        for diffuse in (False, True):
            progress("matching the colours", len(grids), 2)
            order = msgspec.structs.replace(_order(choice, language), diffuse=diffuse)
            cells = lay_out_mat(picture, colours, order)
            grids.append(_grid(cells, colours, language))
    except RefusedError as refused:
        return MatPreview(reason=word_phrase(refused.reason, language), findings=told)
    high, wide = picture.linear.shape[:2]
    plain, mixed = grids
    return MatPreview(findings=told, picture_px=(wide, high), cell_mm=cells.cell, plain=plain, mixed=mixed)


def mat_files(
    data: bytes, choice: MatChoice, language: Language, progress: ReportProgress
) -> Iterator[tuple[str, bytes]]:
    """Make a mat: yield `mat.json`, a `MatMade`.

    Raises:
        RefusedError: no such mat can be made.
    """
    mat = make_mat(data, _colours(choice), _order(choice, language), progress)
    made = MatMade(
        document=None if mat.work is None else msgspec.json.decode(write_pattern(mat.work.pattern)),
        holds=mat.work is not None and mat.work.holds,
        bands=0 if mat.work is None else mat.work.supplies.bands,
        findings=tuple(word_finding(each, language) for each in mat.findings),
    )
    yield "mat.json", msgspec.json.encode(made)


def _colours(choice: MatChoice) -> tuple[BandColour, ...]:
    return letter_colours((one.name, one.tint.lower(), one.have) for one in choice.colours)


def _order(choice: MatChoice, language: Language) -> MatOrder:
    return MatOrder(
        title=choice.title,
        across=choice.across,
        down=choice.down,
        crop=choice.crop,
        most_colours=choice.most_colours,
        diffuse=choice.diffuse,
        pegs=choice.pegs,
        band=BandType(name=choice.band, bore_mm=choice.bore_mm, thickness_mm=choice.thickness_mm),
        language=language,
    )


def _grid(cells: MatCells, colours: tuple[BandColour, ...], language: Language) -> MatGrid:
    number = {colour.letter: at for at, colour in enumerate(colours)}
    rows = tuple(tuple(number[letter] for letter in row) for row in cells.letters)
    needed = [0] * len(colours)
    for row in rows:
        for at in row:
            needed[at] += 1
    found = tuple(word_finding(each, language) for each in cells.findings)
    return MatGrid(rows=rows, needed=tuple(needed), findings=found)
