"""Where colour letters go on a picture: along their band, clear of the pegs' names and of each other.

In large print letters grow while the picture hardly does, so what lay apart would come to lie on a name.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from msgspec.structs import replace

from pegwright.lesson import BadgeMark, BandMark, Mark, Outline, PegMark, Window

_WIDE, _HIGH = 0.62, 0.74
"""The width of a letter and its height, as a multiple of the size it is set in."""
_STEPS = 8
_CLEAR_MM = 0.3


class _Box(NamedTuple):
    """Where letters lie: their middle and half their width and height, in mm."""

    x_mm: float
    y_mm: float
    half_width_mm: float
    half_height_mm: float

    def overlap_mm(self, x: float, y: float, shape: BadgeShape) -> float:
        """Return how far a badge reaches into the box, 0 or less where it is clear of it."""
        dx = max(abs(x - self.x_mm) - self.half_width_mm - shape.straight_mm, 0.0)
        dy = max(abs(y - self.y_mm) - self.half_height_mm, 0.0)
        return shape.r_mm - math.hypot(dx, dy)


class BadgeShape(NamedTuple):
    """A disc, or two half discs with a straight piece between them; it reaches so far to each side, in mm."""

    r_mm: float
    straight_mm: float = 0.0

    @property
    def half_width_mm(self) -> float:
        """Half the width, mm."""
        return self.r_mm + self.straight_mm


_SHARES = {1: 1.25, 2: 1.05}
_LONG = 0.8
"""The size of a badge's letters as a multiple of its radius, by their number."""
_TIGHT, _MORE = 0.6, 0.3
"""Where letters are enlarged: the radius of the badge tight round them as a share of their size, and how much
further it reaches to each side for each letter after the first."""


def badge_size_mm(mark: BadgeMark, least_mm: float) -> float:
    """Return the size in which a badge's letters are set, at least `least_mm`."""
    return max(mark.r_mm * _SHARES.get(len(mark.text), _LONG), least_mm)


def badge_shape(mark: BadgeMark, least_mm: float) -> BadgeShape:
    """Return the shape of a badge: a disc, or where its letters are enlarged what is tight round them."""
    if least_mm <= mark.r_mm * _SHARES.get(len(mark.text), _LONG):
        return BadgeShape(mark.r_mm)
    return BadgeShape(max(mark.r_mm, _TIGHT * least_mm), _MORE * least_mm * (len(mark.text) - 1))


def name_size_mm(mark: PegMark, least_mm: float) -> float:
    """Return the size in which a peg's name is set, at least `least_mm`."""
    return max(mark.r_mm * {1: 1.1, 2: 1.1, 3: 0.92}.get(len(mark.at), 0.7), least_mm)


def place_badges(
    marks: Sequence[Mark], named: Sequence[PegMark], window: Window, least_mm: float
) -> tuple[Mark, ...]:
    """Return the marks, every letter moved along its band and every number aside to the nearest free spot.

    `named` are the pegs whose names are shown. What has no free spot goes where it covers least.
    """
    boxes = []
    for peg in named:
        size = name_size_mm(peg, least_mm)
        boxes.append(_Box(peg.x_mm, peg.y_mm, _WIDE * size * len(peg.at) / 2, _HIGH * size / 2))
    found: list[Mark] = []
    for mark in marks:
        if isinstance(mark, BadgeMark):
            shape = badge_shape(mark, least_mm)
            along = _spots_along(marks, mark) if mark.role == "letter" else _spots_round(mark, shape.r_mm)
            spots = [(mark.x_mm, mark.y_mm), *along]
            x, y = min(spots, key=lambda spot: _cost(spot, mark, shape, boxes, window))
            boxes.append(_Box(x, y, 0.8 * shape.r_mm + shape.straight_mm, 0.8 * shape.r_mm))
            found.append(replace(mark, x_mm=x, y_mm=y))
        else:
            found.append(mark)
    return tuple(found)


def _cost(
    spot: tuple[float, float], mark: BadgeMark, shape: BadgeShape, boxes: Sequence[_Box], window: Window
) -> tuple[float, float]:
    """Return how much a badge would cover there, then how far it is from where it belongs."""
    x, y = spot
    wide, high = shape.half_width_mm, shape.r_mm
    roomy = shape._replace(r_mm=high + _CLEAR_MM)
    over = [max(0.0, box.overlap_mm(x, y, roomy)) for box in boxes]
    over.append(max(0.0, window.left_mm + wide - x, x + wide - window.right_mm))
    over.append(max(0.0, window.near_mm + high - y, y + high - window.far_mm))
    return round(sum(over), 3), math.hypot(x - mark.x_mm, y - mark.y_mm)


def _spots_along(marks: Sequence[Mark], badge: BadgeMark) -> Iterator[tuple[float, float]]:
    """Return spots on the highlighted band that the badge lies on: the nearest one of its letter."""
    bands = [m for m in marks if isinstance(m, BandMark) and m.highlighted and m.letter == badge.text]
    lines = [list(_points_of(outline)) for band in bands for outline in band.outlines]
    if lines:
        at = (badge.x_mm, badge.y_mm)
        yield from min(lines, key=lambda line: min(math.dist(at, spot) for spot in line))


def _spots_round(badge: BadgeMark, r: float) -> Iterator[tuple[float, float]]:
    """Return spots near a number, which may stand beside its band."""
    for far in (0.5 * r, r, 1.5 * r, 2 * r, 2.5 * r):
        for k in range(2 * _STEPS):
            turn = math.pi * k / _STEPS
            yield badge.x_mm + far * math.cos(turn), badge.y_mm + far * math.sin(turn)


def _points_of(outline: Outline) -> Iterator[tuple[float, float]]:
    """Return points along a closed line of arcs and the straight pieces between them."""
    arcs = []
    for arc in outline:
        turns = [math.radians(arc.start_deg + arc.sweep_deg * k / _STEPS) for k in range(_STEPS + 1)]
        arcs.append([(arc.x_mm + arc.r_mm * math.cos(a), arc.y_mm + arc.r_mm * math.sin(a)) for a in turns])
    for arc_points, after in pairwise([*arcs, *arcs[:1]]):
        yield from arc_points
        (x0, y0), (x1, y1) = arc_points[-1], after[0]
        for k in range(1, _STEPS):
            yield x0 + (x1 - x0) * k / _STEPS, y0 + (y1 - y0) * k / _STEPS
