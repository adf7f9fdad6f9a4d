"""Variants of a piece as the page is told of them: whole documents, each proved, with a picture."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Any, Literal

import msgspec

from pegwright.finding import Language, WordedFinding, sum_up, word_finding
from pegwright.pattern import write_pattern
from pegwright.server.mat_responses import PictureColour
from pegwright.server.starters import Glance, glance
from pegwright.variants import letter_colours
from pegwright.workshop import PieceVariant, ReportProgress, VariantOrder, Work, make_variants

__all__ = ["VariantChoice", "VariantColour", "VariantResponse", "VariantsResponse", "variant_files"]

_PICTURE_PX = 320
_Millimetres = Annotated[float, msgspec.Meta(gt=0, le=200)]
_Pegs = Annotated[int, msgspec.Meta(ge=1, le=1000)]


class VariantChoice(msgspec.Struct, frozen=True, kw_only=True):
    """Which variants to make: see `VariantOrder`. `colours` are those at hand, for the colourways."""

    sizes: Annotated[tuple[Annotated[str, msgspec.Meta(max_length=60)], ...], msgspec.Meta(max_length=8)] = ()
    bands: Annotated[tuple[tuple[_Millimetres, _Millimetres], ...], msgspec.Meta(max_length=4)] = ()
    looms: Annotated[tuple[tuple[_Pegs, _Pegs], ...], msgspec.Meta(max_length=4)] = ()
    hands: Annotated[tuple[Literal["right", "left"], ...], msgspec.Meta(min_length=1, max_length=2)] = (
        "right",
    )
    colourways: Annotated[int, msgspec.Meta(ge=0, le=12)] = 0
    colours: Annotated[tuple[PictureColour, ...], msgspec.Meta(max_length=200)] = ()
    seed: Annotated[int, msgspec.Meta(ge=0, le=1_000_000)] = 1


class VariantColour(msgspec.Struct, frozen=True):
    """The bands that a letter has in a colourway."""

    letter: str
    name: str
    tint: str


class VariantResponse(msgspec.Struct, frozen=True, kw_only=True):
    """A variant that holds as the piece does: what is different, its document and pictures.

    `length_mm` is that at rest where a size was asked for. `apart` is how far its two nearest colours are
    apart for the eye that tells least (CIEDE2000), `used` the largest share of a colour at hand it takes.
    `picture` names a PNG of it at rest, which comes later.
    """

    name: str
    size: str | None
    length_mm: float | None
    hand: Literal["right", "left"]
    colours: tuple[VariantColour, ...]
    apart: float | None
    used: float | None
    bands: int
    document: dict[str, Any]
    glance: Glance
    picture: str
    findings: tuple[WordedFinding, ...]


class VariantsResponse(msgspec.Struct, frozen=True, kw_only=True):
    """The variants that hold, and why others were left out."""

    variants: tuple[VariantResponse, ...]
    findings: tuple[WordedFinding, ...]


def variant_files(
    made: Work, choice: VariantChoice, language: Language, progress: ReportProgress
) -> Iterator[tuple[str, bytes]]:
    """Make variants of a worked piece: yield `variants.json`, then a picture of each at rest.

    Raises:
        RefusedError: there are too few colours, sizes are asked for a piece that has none, or the loom is
            not straight.
    """
    colours = letter_colours((one.name, one.tint.lower(), one.have) for one in choice.colours)
    order = VariantOrder(
        sizes=choice.sizes,
        bands=choice.bands,
        looms=choice.looms,
        colourways=choice.colourways,
        hands=choice.hands,
        seed=choice.seed,
    )
    variants = make_variants(made, order, colours, progress)
    response = VariantsResponse(
        variants=tuple(_response(one, language) for one in variants.made),
        findings=tuple(word_finding(each, language) for each in sum_up(variants.findings)),
    )
    yield "variants.json", msgspec.json.encode(response)
    # The solver and the painter are slow to load, and the variants are there without pictures.
    from pegwright.lesson import portrait_of  # noqa: PLC0415
    from pegwright.press import portrait_png  # noqa: PLC0415
    from pegwright.workshop import bring_to_rest  # noqa: PLC0415

    for done, (one, told) in enumerate(zip(variants.made, response.variants, strict=True)):
        progress("picturing the variants", done, len(variants.made))
        lie = bring_to_rest(one.work)
        portrait = portrait_of(lie, one.work.pattern, one.work.history.colours)
        yield told.picture, portrait_png(portrait, "front", _PICTURE_PX)


def _response(one: PieceVariant, language: Language) -> VariantResponse:
    way = one.colourway
    return VariantResponse(
        name=one.name,
        size=one.size,
        length_mm=one.length_mm,
        hand="left" if one.hand == "left" else "right",
        colours=()
        if way is None
        else tuple(VariantColour(letter, c.name, c.tint) for letter, c in way.colours.items()),
        apart=None if way is None or len(way.colours) < 2 else round(way.apart, 1),
        used=None if way is None else round(way.used, 3),
        bands=one.work.supplies.bands,
        document=msgspec.json.decode(write_pattern(one.work.pattern)),
        glance=glance(one.work.pattern, one.work.history),
        picture=f"{one.name}.png",
        findings=tuple(word_finding(each, language) for each in one.findings),
    )
