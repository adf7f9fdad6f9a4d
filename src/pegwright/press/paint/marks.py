"""Translate a picture's marks into strokes and letters, which every painter can draw.

Nothing is decided here: the lesson has settled what is drawn, where, and what is highlighted. All lengths are
in mm on the loom, y towards the reader, the origin in the window's far left corner.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from pegwright.lesson import (
    Arc,
    ArrowMark,
    BadgeMark,
    BandMark,
    BarMark,
    FastenerMark,
    FingerMark,
    HookMark,
    LabelMark,
    Mark,
    Outline,
    PegMark,
    Picture,
    PostMark,
    Window,
)
from pegwright.press.paint.badges import badge_shape, badge_size_mm, name_size_mm, place_badges
from pegwright.press.paint.bands import paint_band
from pegwright.press.paint.inks import Inks
from pegwright.press.paint.paths import (
    ArcTo,
    Letters,
    LineTo,
    Paint,
    Point,
    QuadTo,
    Stroke,
    VectorPath,
    circle,
    polygon,
)

_TORN_MM = 3.3
"""How far into a picture its edge is torn at most, on a side where the loom goes on."""


def paint_picture(
    picture: Picture, inks: Inks, least_mm: float = 0.0, edges: Sequence[Paint] = ()
) -> list[Paint]:
    """Return a picture's strokes: its marks in order, then the pegs' names, then what lies on top.

    No letter is less than `least_mm` high, in mm of the loom. `edges` lie under what is on top, and so cut
    no number of a round.
    """
    return paint_marks(picture.marks, picture.window, inks, least_mm, edges)


def paint_marks(
    marks: tuple[Mark, ...],
    window: Window,
    inks: Inks,
    least_mm: float = 0.0,
    edges: Sequence[Paint] = (),
) -> list[Paint]:
    """Return the strokes of marks in a window: what lies flat, arrows, the pegs' names, and the rest on top.

    Names lie over arrows and have a white edge, so that they can be read where an arrow passes.
    """
    pen = _Pen(window, inks, least_mm)
    named = [mark for mark in marks if isinstance(mark, PegMark) and _shows_name(mark, window)]
    marks = place_badges(marks, named, window, least_mm)
    over = ArrowMark | BadgeMark | FastenerMark
    found: list[Paint] = []
    for mark in marks:
        if not isinstance(mark, over):
            found += pen.mark(mark)
    for mark in marks:
        if isinstance(mark, ArrowMark):
            found += pen.mark(mark)
    found += [*(pen.name(mark) for mark in named), *edges]
    for mark in marks:
        if isinstance(mark, BadgeMark | FastenerMark):
            found += pen.mark(mark)
    return found


def _shows_name(mark: PegMark, window: Window) -> bool:
    """Say whether a peg has a name that no torn edge cuts; its letters are about as wide as the peg."""
    far = {
        "left": mark.x_mm - window.left_mm,
        "right": window.right_mm - mark.x_mm,
        "near": mark.y_mm - window.near_mm,
        "far": window.far_mm - mark.y_mm,
    }
    return bool(mark.at) and all(far[side] > _TORN_MM + 0.7 * mark.r_mm for side in window.goes_on)


class _Pen:
    """Maps the maker's plan (y away from the maker) to the page (y down)."""

    def __init__(self, window: Window, inks: Inks, least_mm: float) -> None:
        self.inks = inks
        self.least = least_mm
        self.left = window.left_mm
        self.far = window.far_mm

    def xy(self, x_mm: float, y_mm: float) -> Point:
        return x_mm - self.left, self.far - y_mm

    def mark(self, mark: Mark) -> list[Paint]:
        match mark:
            case PegMark():
                return self.peg(mark)
            case BandMark():
                paths = tuple(map(self.outline, mark.outlines))
                # Wound turns lie on top of each other; other parts of a band merge.
                turns = all(len(path.segments) == 1 for path in paths)
                laid = [(path,) for path in paths] if turns else [paths]
                look = {"highlighted": mark.highlighted, "inks": self.inks}
                return [
                    paint
                    for each in laid
                    for paint in paint_band(each, mark.thick_mm, mark.tint, mark.hatch, **look)  # type: ignore[arg-type]
                ]
            case ArrowMark():
                return self.arrow(mark)
            case LabelMark():
                x, y = self.xy(mark.x_mm, mark.y_mm)
                return [
                    Letters(x, y, mark.text, max(mark.size_mm, self.least), self.inks.graphite, mark.bold)
                ]
            case BadgeMark():
                return self.badge(mark)
            case FastenerMark():
                return self.fastener(mark)
            case PostMark():
                return self.post(mark)
            case BarMark():
                x, y = self.xy(mark.x_mm, mark.y_mm)
                half = (mark.w_mm - mark.h_mm) / 2
                path = VectorPath((LineTo(x - half, y), LineTo(x + half, y)))
                return paint_band(
                    (path,),
                    mark.h_mm - 0.5,
                    mark.tint,
                    mark.hatch,
                    highlighted=mark.highlighted,
                    inks=self.inks,
                )
            case FingerMark():
                return self.finger(mark)
            case HookMark():
                path = VectorPath(tuple(LineTo(*self.xy(*spot)) for spot in mark.spots))
                return [
                    Stroke((path,), ink=self.inks.graphite, width=mark.thick_mm + 0.6, round_cap=True),
                    Stroke((path,), ink=self.inks.steel, width=mark.thick_mm, round_cap=True),
                ]

    def finger(self, mark: FingerMark) -> list[Paint]:
        """Draw a finger as a rounded stroke, with its nail at the tip."""
        spots = [self.xy(*spot) for spot in mark.spots]
        (x0, y0), (x, y) = spots[-2:]
        far = math.hypot(x - x0, y - y0) or 1.0
        ux, uy = (x - x0) / far, (y - y0) / far
        r = mark.thick_mm / 2
        (first_x, first_y), *others = spots
        bends = [
            QuadTo(*spot, (spot[0] + after[0]) / 2, (spot[1] + after[1]) / 2)
            for spot, after in pairwise(others)
        ]
        path = (VectorPath((LineTo(first_x, first_y), *bends, LineTo(x, y))),)
        nail = (
            VectorPath(
                (LineTo(x + 0.35 * r * ux, y + 0.35 * r * uy), LineTo(x - 0.3 * r * ux, y - 0.3 * r * uy))
            ),
        )
        return [
            Stroke(path, ink=self.inks.graphite, width=mark.thick_mm + 0.7, round_cap=True),
            Stroke(path, ink="#ffffff", width=mark.thick_mm, round_cap=True),
            Stroke(nail, ink=self.inks.soft, width=0.95 * r, round_cap=True),
            Stroke(nail, ink="#ffffff", width=0.95 * r - 0.7, round_cap=True),
        ]

    def outline(self, outline: Outline) -> VectorPath:
        return VectorPath(tuple(self.turn(arc) for arc in outline), closed=True)

    def turn(self, arc: Arc) -> ArcTo:
        x, y = self.xy(arc.x_mm, arc.y_mm)
        return ArcTo(x, y, arc.r_mm, arc.start_deg, arc.sweep_deg)

    def peg(self, mark: PegMark) -> list[Paint]:
        x, y = self.xy(mark.x_mm, mark.y_mm)
        line, width = (self.inks.graphite, 0.55) if mark.busy else (self.inks.soft, 0.35)
        angle = math.radians(mark.channel_deg)
        notch = (x + mark.r_mm * math.cos(angle), y - mark.r_mm * math.sin(angle))
        return [
            Stroke((circle(x, y, mark.r_mm),), fill="#ffffff", ink=line, width=width),
            Stroke((circle(*notch, 0.3 * mark.r_mm),), fill=line),
        ]

    def name(self, mark: PegMark) -> Letters:
        x, y = self.xy(mark.x_mm, mark.y_mm)
        size = name_size_mm(mark, self.least)
        ink = self.inks.graphite if mark.busy else self.inks.name
        return Letters(x, y, mark.at, size, ink, mark.busy, "#ffffff")

    def arrow(self, mark: ArrowMark) -> list[Paint]:
        (x0, y0), (x1, y1), (x2, y2) = (self.xy(*s) for s in (mark.start, mark.bend, mark.end))
        length = math.hypot(x2 - x1, y2 - y1) or 1.0
        ux, uy = (x2 - x1) / length, (y2 - y1) / length
        size = 2.4
        bx, by = x2 - ux * size, y2 - uy * size
        wing = size * 0.5
        head = (polygon([(x2, y2), (bx - uy * wing, by + ux * wing), (bx + uy * wing, by - ux * wing)]),)
        line = (VectorPath((LineTo(x0, y0), QuadTo(x1, y1, bx, by))),)
        ground, accent = self.inks.ground, self.inks.accent
        return [
            Stroke(line, ink=ground, width=2.2),
            Stroke(head, fill=accent, ink=ground, width=1.1),
            Stroke(line, ink=accent, width=1.0),
            Stroke(head, fill=accent),
        ]

    def badge(self, mark: BadgeMark) -> list[Paint]:
        x, y = self.xy(mark.x_mm, mark.y_mm)
        number = mark.role == "number"
        fill, ink = (self.inks.accent, "#ffffff") if number else ("#ffffff", self.inks.graphite)
        r, straight = badge_shape(mark, self.least)
        ends = (ArcTo(x + straight, y, r, -90, 180), ArcTo(x - straight, y, r, 90, 180))
        outline = VectorPath(ends, closed=True) if straight else circle(x, y, r)
        disc = Stroke((outline,), fill=fill, ink=self.inks.graphite, width=0.3)
        return [disc, Letters(x, y, mark.text, badge_size_mm(mark, self.least), ink, True)]

    def fastener(self, mark: FastenerMark) -> list[Paint]:
        x, y = self.xy(mark.x_mm, mark.y_mm)
        r = mark.r_mm
        if mark.kind == "knot":
            return self.bow(x, y, r)
        paths = (VectorPath((ArcTo(x, y, r, 35, 290),)),)  # an open ring
        return [
            Stroke(paths, ink=self.inks.ground, width=3.0, round_cap=True),
            Stroke(paths, ink=self.inks.accent, width=1.7, round_cap=True),
        ]

    def bow(self, x: float, y: float, r: float) -> list[Paint]:
        """Draw a tied bow: two loops, two ends and the knot between them."""
        loops = tuple(circle(x + side * 0.62 * r, y - 0.12 * r, 0.5 * r) for side in (-1, 1))
        ends = tuple(
            VectorPath((LineTo(x, y), QuadTo(x + side * 0.2 * r, y + 0.7 * r, x + side * 0.75 * r, y + r)))
            for side in (-1, 1)
        )
        both = (*loops, *ends)
        return [
            Stroke(both, ink=self.inks.ground, width=2.6, round_cap=True),
            Stroke(both, ink=self.inks.accent, width=1.3, round_cap=True),
            Stroke((circle(x, y, 0.24 * r),), fill=self.inks.accent, ink=self.inks.ground, width=0.4),
        ]

    def post(self, mark: PostMark) -> list[Paint]:
        x, y = self.xy(mark.x_mm, mark.y_mm)
        w, h, r = mark.w_mm / 2, mark.h_mm, 1.6
        shaft = VectorPath(
            (
                ArcTo(x + w - r, y - h + r, r, 0, 90),
                ArcTo(x - w + r, y - h + r, r, 90, 90),
                ArcTo(x - w + r, y - r, r, 180, 90),
                ArcTo(x + w - r, y - r, r, 270, 90),
            ),
            closed=True,
        )
        foot = VectorPath((LineTo(x - 2 * w, y), LineTo(x + 2 * w, y)))
        ink = self.inks.graphite
        drawn: list[Paint] = [
            Stroke((shaft,), fill="#ffffff", ink=ink, width=0.4),
            Stroke((foot,), ink=ink, width=0.6),
        ]
        if mark.open_side:  # the groove down which the hook goes
            sides = tuple(
                VectorPath((LineTo(x + side * 1.15, y - h + 0.4), LineTo(x + side * 1.15, y - 0.6)))
                for side in (-1, 1)
            )
            drawn.append(Stroke(sides, ink=self.inks.soft, width=0.35))
        return drawn
