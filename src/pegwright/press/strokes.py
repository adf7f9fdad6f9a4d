"""Translate a picture's marks into strokes and letters, which every kind of painter then puts down.

The pen only: what is drawn, where and how strong was decided in the lesson. All lengths in mm of the loom,
y towards the reader, the origin in the window's far left corner.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from pegwright.lesson.palette import luminance
from pegwright.lesson.picture import (
    Arc,
    ArrowMark,
    BadgeMark,
    BandMark,
    BarMark,
    FastenerMark,
    HookMark,
    LabelMark,
    Mark,
    Outline,
    PegMark,
    Picture,
    PostMark,
    Window,
)

Point = tuple[float, float]
_DASHES: tuple[tuple[float, ...] | None, ...] = (
    (), (2.4, 1.5), (0.01, 1.7), None, (3, 1.2, 0.01, 1.2), (0.45, 1.9), (5, 1.5), (0.01, 1.1, 0.01, 2.6),
)  # fmt: skip
"""The pattern along a band by its hatch; None is an unbroken line, an empty one no line."""
_BARS = 5
"""The hatch whose dashes go right across the band."""
_FADED = 0.42


class Inks(NamedTuple):
    """The colours of all that is no band. `bands` says whether the bands keep their tints or turn grey."""

    ground: str = "#faf7f0"
    graphite: str = "#2e3338"
    soft: str = "#a3a5a6"
    name: str = "#5c6166"
    accent: str = "#a83f2a"
    steel: str = "#c9d3d9"
    bands: bool = True

    def tint(self, tint: str) -> str:
        """Return what a tint is printed as: itself, or white, light or dark grey by its luminance."""
        if self.bands:
            return tint
        light = luminance(tint)
        return "#ffffff" if light > 0.5 else "#c4c4c4" if light > 0.12 else "#3c3c3c"


COLOUR = Inks()
GREY = Inks("#ffffff", "#000000", "#8a8a8a", "#4a4a4a", "#000000", "#ffffff", bands=False)


class Line(NamedTuple):
    """Straight on to a point; the first one of a path is where it begins."""

    x: float
    y: float


class Curve(NamedTuple):
    """A quadratic Bézier curve past a bend to a point."""

    bend_x: float
    bend_y: float
    x: float
    y: float


class Turn(NamedTuple):
    """Part of a circle of radius `r` about a centre; angles in degrees, anticlockwise as one sees it."""

    x: float
    y: float
    r: float
    start_deg: float
    sweep_deg: float


Piece = Line | Curve | Turn


class Path(NamedTuple):
    """A line through its pieces, closed or not."""

    pieces: tuple[Piece, ...]
    closed: bool = False


class Stroke(NamedTuple):
    """Paths that are filled, or drawn with a width, or both. Colours are #rrggbb, empty for none."""

    paths: tuple[Path, ...]
    fill: str = ""
    ink: str = ""
    width: float = 0.0
    round_cap: bool = False
    dash: tuple[float, ...] = ()


class Letters(NamedTuple):
    """A text set round the middle (x, y), its type so high; `halo` is the colour of an edge about it."""

    x: float
    y: float
    text: str
    size: float
    ink: str
    bold: bool = False
    halo: str = ""


Paint = Stroke | Letters


def painted(picture: Picture, inks: Inks) -> list[Paint]:
    """Return a picture's marks in order, then the pegs' names, then what lies over all."""
    return marks_painted(picture.marks, picture.window, inks)


def marks_painted(marks: tuple[Mark, ...], window: Window, inks: Inks) -> list[Paint]:
    """Return marks seen through a window, in order, then the pegs' names, then what lies over all."""
    pen = _Pen(window, inks)
    over = ArrowMark | BadgeMark | FastenerMark
    found: list[Paint] = []
    for mark in marks:
        if not isinstance(mark, over):
            found += pen.mark(mark)
    found += [pen.name(mark) for mark in marks if isinstance(mark, PegMark)]
    for mark in marks:
        if isinstance(mark, over):
            found += pen.mark(mark)
    return found


def torn(window: Window, inks: Inks) -> list[Paint]:
    """Return a torn edge on each side on which the loom goes on, with the ground beyond it."""
    found: list[Paint] = []
    for side in window.goes_on:
        long = window.height_mm if side in ("left", "right") else window.width_mm
        rim = [_inward(window, side, long + 1, -1.0), _inward(window, side, -1.0, -1.0)]
        found.append(Stroke((_polygon([*_teeth(window, side), *rim]),), fill=inks.ground))
    return [*found, *tears(window, inks)]


def tears(window: Window, inks: Inks) -> list[Paint]:
    """Return the lines of the torn edges alone."""
    lines = (Path(tuple(Line(x, y) for x, y in _teeth(window, side))) for side in window.goes_on)
    return [Stroke((line,), ink=inks.soft, width=0.3) for line in lines]


def kept(window: Window) -> Path:
    """Return the outline of what is left of a window when its torn edges are torn off."""
    w, h = window.width_mm, window.height_mm
    corners = {
        "far": [(0.0, 0.0), (w, 0.0)],
        "right": [(w, 0.0), (w, h)],
        "near": [(w, h), (0.0, h)],
        "left": [(0.0, h), (0.0, 0.0)],
    }
    points: list[Point] = []
    for side, plain in corners.items():
        teeth = _teeth(window, side)
        round_ = teeth[::-1] if side in ("near", "left") else teeth
        points += round_ if side in window.goes_on else plain
    return _polygon(points)


def swatch(tint: str, hatch: int, inks: Inks = COLOUR) -> list[Paint]:
    """Return a piece of band in its tint and pattern, 12 mm long, in a field of 16 × 5 mm."""
    return band((Path((Line(2.0, 2.5), Line(14.0, 2.5))),), 2.2, tint, hatch, strong=True, inks=inks)


def band(
    paths: tuple[Path, ...], thick: float, tint: str, hatch: int, *, strong: bool, inks: Inks
) -> list[Paint]:
    """Return a band along paths: halo, edge, tint, pattern."""
    tint = inks.tint(tint)
    edge = inks.graphite if strong else mix(inks.graphite, inks.ground, _FADED)
    fill = tint if strong else mix(tint, inks.ground, _FADED)
    pattern = over_tint(tint, inks)
    pattern = pattern if strong else mix(pattern, fill, 0.7)
    layers: list[Paint] = [
        Stroke(paths, ink=inks.ground, width=thick + 1.0),
        Stroke(paths, ink=edge, width=thick + (0.55 if strong else 0.4), round_cap=True),
        Stroke(paths, ink=fill, width=thick, round_cap=True),
    ]
    along = hatching(hatch, thick)
    if along is not None:
        layers.append(along._replace(paths=paths, ink=pattern))
    return layers


def over_tint(tint: str, inks: Inks) -> str:
    """Return the tint in which a pattern shows over that of a band."""
    return "#ffffff" if luminance(tint) < 0.18 else "#1c1f22" if inks.bands else "#000000"


def hatching(hatch: int, thick: float) -> Stroke | None:
    """Return the stroke of a pattern along a band so thick, still without paths and ink; None for no line."""
    hatch %= len(_DASHES)
    dash = _DASHES[hatch]
    if dash == ():
        return None
    across = hatch == _BARS
    return Stroke((), width=thick if across else thick * 0.36, round_cap=not across, dash=dash or ())


def mix(a: str, b: str, share: float) -> str:
    """Mix two tints: so much of the first."""
    pairs = [(int(a[i : i + 2], 16), int(b[i : i + 2], 16)) for i in (1, 3, 5)]
    return "#" + "".join(f"{round(share * p + (1 - share) * q):02x}" for p, q in pairs)


def point_at(turn: Turn, share: float) -> Point:
    """Return the point of a turn after a share of its sweep."""
    angle = math.radians(turn.start_deg + share * turn.sweep_deg)
    return turn.x + turn.r * math.cos(angle), turn.y - turn.r * math.sin(angle)


class _Pen:
    """Turns the maker's plan (y away) into the page (y down)."""

    def __init__(self, window: Window, inks: Inks) -> None:
        self.inks = inks
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
                # Turns wound round a peg lie over each other; other parts of a band run into each other.
                turns = all(len(path.pieces) == 1 for path in paths)
                laid = [(path,) for path in paths] if turns else [paths]
                look = {"strong": mark.strong, "inks": self.inks}
                return [
                    paint
                    for each in laid
                    for paint in band(each, mark.thick_mm, mark.tint, mark.hatch, **look)  # type: ignore[arg-type]
                ]
            case ArrowMark():
                return self.arrow(mark)
            case LabelMark():
                x, y = self.xy(mark.x_mm, mark.y_mm)
                return [Letters(x, y, mark.text, mark.size_mm, self.inks.graphite, mark.bold)]
            case BadgeMark():
                return self.badge(mark)
            case FastenerMark():
                return self.fastener(mark)
            case PostMark():
                return self.post(mark)
            case BarMark():
                x, y = self.xy(mark.x_mm, mark.y_mm)
                half = (mark.w_mm - mark.h_mm) / 2
                path = Path((Line(x - half, y), Line(x + half, y)))
                return band(
                    (path,), mark.h_mm - 0.5, mark.tint, mark.hatch, strong=mark.strong, inks=self.inks
                )
            case HookMark():
                path = Path(tuple(Line(*self.xy(*spot)) for spot in mark.spots))
                return [
                    Stroke((path,), ink=self.inks.graphite, width=mark.thick_mm + 0.6, round_cap=True),
                    Stroke((path,), ink=self.inks.steel, width=mark.thick_mm, round_cap=True),
                ]

    def outline(self, outline: Outline) -> Path:
        return Path(tuple(self.turn(arc) for arc in outline), closed=True)

    def turn(self, arc: Arc) -> Turn:
        x, y = self.xy(arc.x_mm, arc.y_mm)
        return Turn(x, y, arc.r_mm, arc.start_deg, arc.sweep_deg)

    def peg(self, mark: PegMark) -> list[Paint]:
        x, y = self.xy(mark.x_mm, mark.y_mm)
        line, width = (self.inks.graphite, 0.55) if mark.busy else (self.inks.soft, 0.35)
        angle = math.radians(mark.channel_deg)
        notch = (x + mark.r_mm * math.cos(angle), y - mark.r_mm * math.sin(angle))
        return [
            Stroke((_circle(x, y, mark.r_mm),), fill="#ffffff", ink=line, width=width),
            Stroke((_circle(*notch, 0.3 * mark.r_mm),), fill=line),
        ]

    def name(self, mark: PegMark) -> Letters:
        x, y = self.xy(mark.x_mm, mark.y_mm)
        size = mark.r_mm * {1: 1.1, 2: 1.1, 3: 0.92}.get(len(mark.at), 0.7)
        ink = self.inks.graphite if mark.busy else self.inks.name
        return Letters(x, y, mark.at, size, ink, mark.busy, "#ffffff")

    def arrow(self, mark: ArrowMark) -> list[Paint]:
        (x0, y0), (x1, y1), (x2, y2) = (self.xy(*s) for s in (mark.start, mark.bend, mark.end))
        length = math.hypot(x2 - x1, y2 - y1) or 1.0
        ux, uy = (x2 - x1) / length, (y2 - y1) / length
        size = 2.4
        bx, by = x2 - ux * size, y2 - uy * size
        wing = size * 0.5
        head = (_polygon([(x2, y2), (bx - uy * wing, by + ux * wing), (bx + uy * wing, by - ux * wing)]),)
        line = (Path((Line(x0, y0), Curve(x1, y1, bx, by))),)
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
        size = mark.r_mm * (1.25 if len(mark.text) < 2 else 1.05 if len(mark.text) < 3 else 0.8)
        disc = Stroke((_circle(x, y, mark.r_mm),), fill=fill, ink=self.inks.graphite, width=0.3)
        return [disc, Letters(x, y, mark.text, size, ink, True)]

    def fastener(self, mark: FastenerMark) -> list[Paint]:
        x, y = self.xy(mark.x_mm, mark.y_mm)
        r = mark.r_mm
        paths = (
            (Path((Turn(x, y, r, 35, 290),)),)  # an open ring
            if mark.kind == "clip"
            else (
                Path((Line(x - r, y + r), Line(x + r, y - r))),
                Path((Line(x - r, y - r), Line(x + r, y + r))),
            )
        )
        return [
            Stroke(paths, ink=self.inks.ground, width=3.0, round_cap=True),
            Stroke(paths, ink=self.inks.accent, width=1.7, round_cap=True),
        ]

    def post(self, mark: PostMark) -> list[Paint]:
        x, y = self.xy(mark.x_mm, mark.y_mm)
        w, h, r = mark.w_mm / 2, mark.h_mm, 1.6
        shaft = Path(
            (
                Turn(x + w - r, y - h + r, r, 0, 90),
                Turn(x - w + r, y - h + r, r, 90, 90),
                Turn(x - w + r, y - r, r, 180, 90),
                Turn(x + w - r, y - r, r, 270, 90),
            ),
            closed=True,
        )
        foot = Path((Line(x - 2 * w, y), Line(x + 2 * w, y)))
        ink = self.inks.graphite
        return [Stroke((shaft,), fill="#ffffff", ink=ink, width=0.4), Stroke((foot,), ink=ink, width=0.6)]


def _circle(x: float, y: float, r: float) -> Path:
    return Path((Turn(x, y, r, 0.0, 360.0),), closed=True)


def _polygon(points: list[Point]) -> Path:
    return Path(tuple(Line(x, y) for x, y in points), closed=True)


def _teeth(window: Window, side: str) -> list[Point]:
    """Return the corners of a torn edge, from left to right or from far to near."""
    long = window.height_mm if side in ("left", "right") else window.width_mm
    count = max(2, round(long / 2.5))
    return [_inward(window, side, k * long / count, 3.3 if k % 2 else 2.2) for k in range(count + 1)]


def _inward(window: Window, side: str, along: float, deep: float) -> Point:
    x = {"left": deep, "right": window.width_mm - deep}.get(side, along)
    y = {"far": deep, "near": window.height_mm - deep}.get(side, along)
    return x, y
