"""The pattern document: everything a designer writes down, frozen.

One JSON text, versioned by its first field. `pegwright schema` prints its JSON Schema.
"""

from __future__ import annotations

from typing import Annotated, Literal

import msgspec

from pegwright.pattern.layout import Layout
from pegwright.pattern.moves import VISIBLE, Letter, Name, PatternStep, Text
from pegwright.pattern.rubber import Law

VERSION = 3

LANGUAGE_TAG = r"^[a-z]{2,3}(-[A-Za-z0-9]{2,8}){0,3}$(?!\n)"
TINT = r"^#[0-9A-Fa-f]{6}$(?!\n)"
SEEN_IF_ANY = rf"^$(?!\n)|{VISIBLE}"

BandLength = Annotated[float, msgspec.Meta(ge=0.1, le=1000)]
"""Mm. Anything thinner than a hair is no band, and what is worked out by thickness would never end."""

LanguageTag = Annotated[str, msgspec.Meta(pattern=LANGUAGE_TAG)]
"""A language as BCP 47 (RFC 5646) writes it: `en`, `de`, `pt-BR`."""

Title = Annotated[str, msgspec.Meta(min_length=1, max_length=200, pattern=VISIBLE)]
"""What a piece is called: 1 to 200 characters of which one can be seen."""

Level = Literal["basic", "easy", "intermediate", "complex"]
Material = Literal["silicone", "rubber", "tpe"]


class _DocumentValue(
    msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True, forbid_unknown_fields=True
):
    """Parts of a document refuse fields they do not know, so that a slip of the pen is found."""


class BandType(_DocumentValue, frozen=True, kw_only=True):
    """A kind of band: inner diameter at rest, thickness of its round section, material.

    `weight_100_g`, when known, is the weighed mass of a hundred; otherwise it is reckoned from the volume.
    `rubber`, when known, is what `pegwright calibrate` found; otherwise a usual one is taken.
    """

    name: Name = "standard"
    bore_mm: BandLength = 13.5
    thickness_mm: BandLength = 1.5
    material: Material = "silicone"
    weight_100_g: Annotated[float, msgspec.Meta(gt=0, le=100_000)] | None = None
    rubber: Law | None = None


class Colour(_DocumentValue, frozen=True, kw_only=True):
    """A colour letter of the designer's own, with its name, its tint and its kind of band."""

    letter: Letter
    name: Name
    hex: Annotated[str, msgspec.Meta(pattern=TINT)]
    band: Name = "standard"


class Motif(_DocumentValue, frozen=True, kw_only=True):
    """A named run of steps: `colours` are letters to be filled in, `counts` numbers with their defaults."""

    name: Name
    steps: tuple[PatternStep, ...]
    colours: tuple[Letter, ...] = ()
    counts: dict[Name, Annotated[int, msgspec.Meta(ge=0, le=10_000_000_000)]] = {}
    note: Text = ""


class StatedCounts(_DocumentValue, frozen=True, kw_only=True):
    """Counts that the designer has written down; the check compares them with the pattern."""

    bands: dict[Letter, Annotated[int, msgspec.Meta(ge=0, le=1_000_000)]] = {}
    clips: Annotated[int, msgspec.Meta(ge=0, le=1_000_000)] | None = None


class Pattern(_DocumentValue, frozen=True, kw_only=True):
    """A piece, from its title to its last clip.

    `language` is that of its texts; `translations` has, for each other language, a text as it is written
    here with what it reads there.
    """

    pegwright: Annotated[int, msgspec.Meta(ge=VERSION, le=VERSION)]
    title: Title
    designer: Annotated[str, msgspec.Meta(max_length=200, pattern=SEEN_IF_ANY)] = ""
    licence: Annotated[str, msgspec.Meta(max_length=200)] = ""
    level: Level = "basic"
    notes: Text = ""
    language: LanguageTag = "en"
    translations: Annotated[dict[LanguageTag, dict[Text, Text]], msgspec.Meta(max_length=50)] = {}
    loom: Layout
    bands: Annotated[tuple[BandType, ...], msgspec.Meta(max_length=200)] = (BandType(),)
    colours: Annotated[tuple[Colour, ...], msgspec.Meta(max_length=500)] = ()
    motifs: Annotated[tuple[Motif, ...], msgspec.Meta(max_length=500)] = ()
    steps: tuple[PatternStep, ...] = ()
    stated: StatedCounts | None = None
