"""Looms of any layout, and where their pegs stand.

Plan coordinates in mm as the maker sees the loom at the start: x to the right, y away from the maker.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import Annotated, Literal, NamedTuple

import msgspec

from pegwright.pattern.address import Address

Length = Annotated[float, msgspec.Meta(gt=0, le=1000)]
MAX_REACH_MM = 2000.0
"""As far apart as a maker holds two loops of one band: about a tall adult's arm span (from memory)."""

MIN_GAP_MM = 1.0
"""Pegs whose centres are nearer than this stand in one place."""

Count = Annotated[int, msgspec.Meta(ge=1, le=10_000)]
Channel = Literal["near", "far", "left", "right"]

CHANNEL_DEG: dict[str, float] = {"near": 270.0, "far": 90.0, "left": 180.0, "right": 0.0}


class _Loom(
    msgspec.Struct,
    frozen=True,
    kw_only=True,
    omit_defaults=True,
    forbid_unknown_fields=True,
    tag_field="kind",
):
    """What every loom has: the pegs' diameter and height."""

    peg_mm: Length = 5.0
    height_mm: Length = 16.0


class Rows(_Loom, frozen=True, kw_only=True, tag="rows"):
    """Straight rows of pegs. `shift` moves each row away from the maker, in parts of the pitch."""

    rows: Annotated[int, msgspec.Meta(ge=1, le=700)]
    pegs: Count
    pitch_mm: Length = 16.0
    row_gap_mm: Length = 14.0
    shift: tuple[Annotated[float, msgspec.Meta(ge=-1, le=1)], ...] = ()
    channel: Channel = "far"


class JoinedLooms(_Loom, frozen=True, kw_only=True, tag="joined"):
    """Several straight looms joined: `beside` letters the rows on, `beyond` numbers the pegs on."""

    looms: Annotated[tuple[Rows, ...], msgspec.Meta(min_length=2, max_length=50)]
    side: Literal["beside", "beyond"] = "beside"
    gap_mm: Length = 14.0


class Round(_Loom, frozen=True, kw_only=True, tag="round"):
    """Pegs on rings, numbered anticlockwise from the maker's end; row A is the outermost ring."""

    pegs: Annotated[int, msgspec.Meta(ge=3, le=2000)]
    diameter_mm: Annotated[float, msgspec.Meta(gt=0, le=5000)]
    rings: Annotated[int, msgspec.Meta(ge=1, le=50)] = 1
    ring_gap_mm: Length = 16.0
    channel: Literal["out", "in"] = "out"


class PegAt(msgspec.Struct, frozen=True, omit_defaults=True, forbid_unknown_fields=True):
    """One peg standing where you say."""

    at: Annotated[str, msgspec.Meta(pattern=r"^[A-Z]{1,2}[1-9][0-9]{0,4}$(?!\n)")]
    x_mm: Annotated[float, msgspec.Meta(ge=-100_000, le=100_000)]
    y_mm: Annotated[float, msgspec.Meta(ge=-100_000, le=100_000)]
    channel: Channel = "far"


class Pegs(_Loom, frozen=True, kw_only=True, tag="pegs"):
    """Any pegs at all, each with its place."""

    pegs: Annotated[tuple[PegAt, ...], msgspec.Meta(min_length=1, max_length=20_000)]


Layout = Rows | JoinedLooms | Round | Pegs


class Peg(NamedTuple):
    """A peg: address, centre in mm, and the way its channel opens (degrees anticlockwise from the right)."""

    at: str
    x_mm: float
    y_mm: float
    channel_deg: float


def pegs(layout: Layout) -> tuple[Peg, ...]:
    """Return every peg of the loom. An address given twice comes out twice; the loom room reports it."""
    match layout:
        case Rows():
            return tuple(_row_pegs(layout, 0, 0, 0.0, 0.0))
        case JoinedLooms():
            return tuple(_joined_pegs(layout))
        case Round():
            return tuple(_round_pegs(layout))
        case Pegs():
            return tuple(Peg(p.at, p.x_mm, p.y_mm, CHANNEL_DEG[p.channel]) for p in layout.pegs)


def peg_count(layout: Layout) -> int:
    """Count the pegs without making them."""
    match layout:
        case Rows():
            return layout.rows * layout.pegs
        case JoinedLooms():
            return sum(loom.rows * loom.pegs for loom in layout.looms)
        case Round():
            return layout.rings * layout.pegs
        case Pegs():
            return len(layout.pegs)


class PegGap(NamedTuple):
    """Two pegs and the distance in mm between them, along the loom or between their centres."""

    peg: str
    other: str
    gap_mm: float


def find_empty_stretch(placed: Sequence[Peg]) -> PegGap | None:
    """Return the pegs at the two sides of a stretch of the loom that is empty for more than `MAX_REACH_MM`.

    So the extent of a loom without one grows with its pegs only. Time grows as sorting them does.
    """
    for axis in (1, 2):
        ordered = sorted(placed, key=lambda peg: peg[axis])
        for one, other in pairwise(ordered):
            gap = float(other[axis]) - float(one[axis])
            if gap > MAX_REACH_MM:
                return PegGap(one.at, other.at, gap)
    return None


def find_coincident_pegs(placed: Sequence[Peg]) -> PegGap | None:
    """Return two pegs of different addresses that are nearer to each other than `MIN_GAP_MM`, or None."""
    squares: dict[tuple[int, int], list[Peg]] = {}
    for peg in placed:
        x, y = math.floor(peg.x_mm / MIN_GAP_MM), math.floor(peg.y_mm / MIN_GAP_MM)
        for square in ((x + i, y + j) for i in (-1, 0, 1) for j in (-1, 0, 1)):
            for other in squares.get(square, ()):
                gap = math.hypot(peg.x_mm - other.x_mm, peg.y_mm - other.y_mm)
                if gap < MIN_GAP_MM and peg.at != other.at:
                    return PegGap(other.at, peg.at, gap)
        squares.setdefault((x, y), []).append(peg)
    return None


def _row_pegs(loom: Rows, row0: int, number0: int, x0: float, y0: float) -> list[Peg]:
    made = []
    for row in range(loom.rows):
        shift = loom.shift[row] if row < len(loom.shift) else 0.0
        for peg in range(loom.pegs):
            made.append(
                Peg(
                    str(Address(row0 + row, number0 + peg + 1)),
                    x0 + row * loom.row_gap_mm,
                    y0 + (peg + shift) * loom.pitch_mm,
                    CHANNEL_DEG[loom.channel],
                )
            )
    return made


def _joined_pegs(joined: JoinedLooms) -> list[Peg]:
    made: list[Peg] = []
    row0 = number0 = 0
    x0 = y0 = 0.0
    for loom in joined.looms:
        made += _row_pegs(loom, row0, number0, x0, y0)
        if joined.side == "beside":
            row0 += loom.rows
            x0 += (loom.rows - 1) * loom.row_gap_mm + joined.gap_mm
        else:
            number0 += loom.pegs
            y0 += (loom.pegs - 1) * loom.pitch_mm + joined.gap_mm
    return made


def _round_pegs(loom: Round) -> list[Peg]:
    made = []
    for ring in range(loom.rings):
        radius = loom.diameter_mm / 2 - ring * loom.ring_gap_mm
        for k in range(loom.pegs):
            turn = -math.pi / 2 + 2 * math.pi * k / loom.pegs
            outward = math.degrees(turn) % 360
            made.append(
                Peg(
                    str(Address(ring, k + 1)),
                    radius * math.cos(turn),
                    radius * math.sin(turn),
                    outward if loom.channel == "out" else (outward + 180) % 360,
                )
            )
    return made
