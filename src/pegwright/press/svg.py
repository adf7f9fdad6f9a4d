"""Paint a picture as SVG 1.1 text: to scale in mm, with its title and description inside.

The pen only: what is drawn, where and how strong was decided in the lesson.
"""

from __future__ import annotations

import math
from html import escape
from typing import NamedTuple

from pegwright.lesson.palette import luminance
from pegwright.lesson.picture import (
    Arc,
    ArrowMark,
    BadgeMark,
    BandMark,
    BarMark,
    FastenerMark,
    LabelMark,
    Mark,
    Outline,
    PegMark,
    Picture,
    PostMark,
    Window,
)
from pegwright.lesson.sheet import Swatch

FONT = "Atkinson Hyperlegible"

_DASHES = ("", "2.4 1.5", "0.01 1.7", " ", "3 1.2 0.01 1.2", "0.45 1.9", "5 1.5", "0.01 1.1 0.01 2.6")
"""The pattern along a band by its hatch; a blank one is an unbroken line, an empty one is no line."""
_FADED = 0.42


class Inks(NamedTuple):
    """The colours of all that is no band. `bands` says whether the bands keep their tints or turn grey."""

    ground: str = "#faf7f0"
    graphite: str = "#2e3338"
    soft: str = "#a3a5a6"
    name: str = "#5c6166"
    accent: str = "#a83f2a"
    bands: bool = True

    def tint(self, tint: str) -> str:
        """Return what a tint is printed as: itself, or white, light or dark grey by its luminance."""
        if self.bands:
            return tint
        light = luminance(tint)
        return "#ffffff" if light > 0.5 else "#c4c4c4" if light > 0.12 else "#3c3c3c"


COLOUR = Inks()
GREY = Inks("#ffffff", "#000000", "#8a8a8a", "#4a4a4a", "#000000", bands=False)


def step_svg(picture: Picture, inks: Inks = COLOUR) -> str:
    """Paint a picture; its size on paper is that of its window times its scale, in mm."""
    pen = _Pen(picture.window, inks)
    w, h = picture.window.width_mm, picture.window.height_mm
    body = [pen.mark(mark) for mark in picture.marks]
    names = [pen.name(mark) for mark in picture.marks if isinstance(mark, PegMark)]
    over = [
        pen.mark(mark) for mark in picture.marks if isinstance(mark, ArrowMark | BadgeMark | FastenerMark)
    ]
    under = [
        text
        for text, mark in zip(body, picture.marks, strict=True)
        if not isinstance(mark, ArrowMark | BadgeMark | FastenerMark)
    ]
    return "".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {_n(w)} {_n(h)}" '
            f'width="{_n(w * picture.scale)}mm" height="{_n(h * picture.scale)}mm" font-family="{FONT}">',
            f"<title>{escape(picture.title)}</title><desc>{escape(picture.text)}</desc>",
            f'<rect width="{_n(w)}" height="{_n(h)}" fill="{inks.ground}"/>',
            *under,
            *names,
            *over,
            *(_torn(picture.window, side, inks) for side in picture.window.goes_on),
            "</svg>",
        )
    )


def swatch_svg(swatch: Swatch, inks: Inks = COLOUR) -> str:
    """Paint a colour of the key: a piece of band in its tint and pattern, 16 × 5 mm."""
    path = "M2 2.5 H14"
    strokes = _stroke(path, 2.2, swatch.tint, swatch.hatch, strong=True, inks=inks)
    name = escape(f"{swatch.letter}: {swatch.name}")
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 16 5" width="16mm" height="5mm">'
        f"<title>{name}</title><desc>{name}</desc>{strokes}</svg>"
    )


class _Pen:
    """Turns the maker's plan (y away) into the page (y down)."""

    def __init__(self, window: Window, inks: Inks) -> None:
        self.inks = inks
        self.left = window.left_mm
        self.far = window.far_mm

    def xy(self, x_mm: float, y_mm: float) -> tuple[float, float]:
        return x_mm - self.left, self.far - y_mm

    def mark(self, mark: Mark) -> str:
        match mark:
            case PegMark():
                return self.peg(mark)
            case BandMark():
                path = " ".join(self.path(outline) for outline in mark.outlines)
                return _stroke(path, mark.thick_mm, mark.tint, mark.hatch, strong=mark.strong, inks=self.inks)
            case ArrowMark():
                return self.arrow(mark)
            case LabelMark():
                x, y = self.xy(mark.x_mm, mark.y_mm)
                return _text(x, y, mark.text, mark.size_mm, ink=self.inks.graphite, bold=mark.bold)
            case BadgeMark():
                return self.badge(mark)
            case FastenerMark():
                return self.fastener(mark)
            case PostMark():
                x, y = self.xy(mark.x_mm, mark.y_mm)
                w, h = mark.w_mm, mark.h_mm
                return (
                    f'<rect x="{_n(x - w / 2)}" y="{_n(y - h)}" width="{_n(w)}" height="{_n(h)}" rx="1.6" '
                    f'fill="#ffffff" stroke="{self.inks.graphite}" stroke-width="0.4"/>'
                    f'<line x1="{_n(x - w)}" x2="{_n(x + w)}" y1="{_n(y)}" y2="{_n(y)}" '
                    f'stroke="{self.inks.graphite}" stroke-width="0.6"/>'
                )
            case BarMark():
                x, y = self.xy(mark.x_mm, mark.y_mm)
                half = (mark.w_mm - mark.h_mm) / 2
                path = f"M{_n(x - half)} {_n(y)} H{_n(x + half)}"
                return _stroke(
                    path, mark.h_mm - 0.5, mark.tint, mark.hatch, strong=mark.strong, inks=self.inks
                )

    def path(self, outline: Outline) -> str:
        """Return a closed path: an arc command for each arc, straight lines between them."""
        parts = []
        for i, arc in enumerate(outline):
            x, y = self.xy(*_at(arc, 0.0))
            parts.append(f"{'L' if i else 'M'}{_n(x)} {_n(y)}")
            for share in (0.5, 1.0) if abs(arc.sweep_deg) > 180 else (1.0,):
                x, y = self.xy(*_at(arc, share))
                turn = 0 if arc.sweep_deg > 0 else 1
                if arc.sweep_deg:
                    parts.append(f"A{_n(arc.r_mm)} {_n(arc.r_mm)} 0 0 {turn} {_n(x)} {_n(y)}")
        return "".join(parts) + "Z"

    def peg(self, mark: PegMark) -> str:
        x, y = self.xy(mark.x_mm, mark.y_mm)
        line, width = (self.inks.graphite, 0.55) if mark.busy else (self.inks.soft, 0.35)
        angle = math.radians(mark.channel_deg)
        nx, ny = x + mark.r_mm * math.cos(angle), y - mark.r_mm * math.sin(angle)
        return (
            f'<circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(mark.r_mm)}" fill="#ffffff" stroke="{line}" '
            f'stroke-width="{width}"/>'
            f'<circle cx="{_n(nx)}" cy="{_n(ny)}" r="{_n(0.3 * mark.r_mm)}" fill="{line}"/>'
        )

    def name(self, mark: PegMark) -> str:
        x, y = self.xy(mark.x_mm, mark.y_mm)
        size = mark.r_mm * {1: 1.1, 2: 1.1, 3: 0.92}.get(len(mark.at), 0.7)
        ink = self.inks.graphite if mark.busy else self.inks.name
        return _text(x, y, mark.at, size, ink=ink, bold=mark.busy, halo="#ffffff")

    def arrow(self, mark: ArrowMark) -> str:
        (x0, y0), (x1, y1), (x2, y2) = (self.xy(*s) for s in (mark.start, mark.bend, mark.end))
        length = math.hypot(x2 - x1, y2 - y1) or 1.0
        ux, uy = (x2 - x1) / length, (y2 - y1) / length
        size = 2.4
        bx, by = x2 - ux * size, y2 - uy * size
        head = (
            f"M{_n(x2)} {_n(y2)}L{_n(bx - uy * size * 0.5)} {_n(by + ux * size * 0.5)}"
            f"L{_n(bx + uy * size * 0.5)} {_n(by - ux * size * 0.5)}Z"
        )
        line = f"M{_n(x0)} {_n(y0)}Q{_n(x1)} {_n(y1)} {_n(bx)} {_n(by)}"
        return (
            f'<path d="{line}" fill="none" stroke="{self.inks.ground}" stroke-width="2.2"/>'
            f'<path d="{head}" fill="{self.inks.accent}" stroke="{self.inks.ground}" stroke-width="1.1"/>'
            f'<path d="{line}" fill="none" stroke="{self.inks.accent}" stroke-width="1"/>'
            f'<path d="{head}" fill="{self.inks.accent}"/>'
        )

    def badge(self, mark: BadgeMark) -> str:
        x, y = self.xy(mark.x_mm, mark.y_mm)
        fill, ink = (
            (self.inks.accent, "#ffffff") if mark.role == "number" else ("#ffffff", self.inks.graphite)
        )
        size = mark.r_mm * (1.25 if len(mark.text) < 2 else 1.05 if len(mark.text) < 3 else 0.8)
        return (
            f'<circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(mark.r_mm)}" fill="{fill}" '
            f'stroke="{self.inks.graphite}" stroke-width="0.3"/>'
            + _text(x, y, mark.text, size, ink=ink, bold=True)
        )

    def fastener(self, mark: FastenerMark) -> str:
        x, y = self.xy(mark.x_mm, mark.y_mm)
        r = mark.r_mm
        if mark.kind == "clip":  # an open ring
            a, b = math.radians(35), math.radians(-35)
            path = (
                f"M{_n(x + r * math.cos(a))} {_n(y - r * math.sin(a))}"
                f"A{_n(r)} {_n(r)} 0 1 0 {_n(x + r * math.cos(b))} {_n(y - r * math.sin(b))}"
            )
        else:  # two crossing tails
            low, high = f"{_n(y + r)}", f"{_n(y - r)}"
            path = f"M{_n(x - r)} {low}L{_n(x + r)} {high}M{_n(x - r)} {high}L{_n(x + r)} {low}"
        line = f'<path d="{path}" fill="none" stroke-linecap="round"'
        return (
            f'{line} stroke="{self.inks.ground}" stroke-width="3"/>'
            f'{line} stroke="{self.inks.accent}" stroke-width="1.7"/>'
        )


def _stroke(path: str, thick: float, tint: str, hatch: int, *, strong: bool, inks: Inks) -> str:
    """Paint a band along a path: halo, edge, tint, pattern."""
    tint = inks.tint(tint)
    edge = inks.graphite if strong else _mix(inks.graphite, inks.ground, _FADED)
    fill = tint if strong else _mix(tint, inks.ground, _FADED)
    pattern = "#ffffff" if _dark(tint) else "#1c1f22" if inks.bands else "#000000"
    pattern = pattern if strong else _mix(pattern, fill, 0.7)
    common = f'd="{path}" fill="none" stroke-linejoin="round"'
    rim = thick + (0.55 if strong else 0.4)
    layers = [
        f'<path {common} stroke="{inks.ground}" stroke-width="{_n(thick + 1.0)}"/>',
        f'<path {common} stroke="{edge}" stroke-width="{_n(rim)}" stroke-linecap="round"/>',
        f'<path {common} stroke="{fill}" stroke-width="{_n(thick)}" stroke-linecap="round"/>',
    ]
    dash = _DASHES[hatch % len(_DASHES)]
    if dash:
        bars = dash.startswith("0.45")
        width = thick if bars else thick * 0.36
        array = f' stroke-dasharray="{dash}"' if dash.strip() else ""
        cap = "butt" if bars else "round"
        layers.append(
            f'<path {common} stroke="{pattern}" stroke-width="{_n(width)}" stroke-linecap="{cap}"{array}/>'
        )
    return "".join(layers)


def _torn(window: Window, side: str, inks: Inks) -> str:
    """Paint a torn edge where the loom goes on."""
    w, h = window.width_mm, window.height_mm
    long = h if side in ("left", "right") else w
    count = max(2, round(long / 2.5))
    points = [(k * long / count, 3.3 if k % 2 else 2.2) for k in range(count + 1)]

    def place(along: float, in_from_edge: float) -> tuple[float, float]:
        x = {"left": in_from_edge, "right": w - in_from_edge}.get(side, along)
        y = {"far": in_from_edge, "near": h - in_from_edge}.get(side, along)
        return x, y

    edge = [place(along, deep) for along, deep in points]
    rim = [place(long + 1, -1.0), place(-1.0, -1.0)]
    line = "".join(f"{'L' if i else 'M'}{_n(x)} {_n(y)}" for i, (x, y) in enumerate(edge))
    close = "".join(f"L{_n(x)} {_n(y)}" for x, y in rim)
    return (
        f'<path d="{line}{close}Z" fill="{inks.ground}"/>'
        f'<path d="{line}" fill="none" stroke="{inks.soft}" stroke-width="0.3"/>'
    )


def _text(x: float, y: float, text: str, size: float, *, ink: str, bold: bool = False, halo: str = "") -> str:
    weight = ' font-weight="700"' if bold else ""
    edge = f' stroke="{halo}" stroke-width="0.6" paint-order="stroke" stroke-linejoin="round"' if halo else ""
    return (
        f'<text x="{_n(x)}" y="{_n(y + 0.35 * size)}" font-size="{_n(size)}" text-anchor="middle" '
        f'fill="{ink}"{weight}{edge}>{escape(text)}</text>'
    )


def _at(arc: Arc, share: float) -> tuple[float, float]:
    angle = math.radians(arc.start_deg + share * arc.sweep_deg)
    return arc.x_mm + arc.r_mm * math.cos(angle), arc.y_mm + arc.r_mm * math.sin(angle)


def _n(value: float) -> str:
    """Write a number with two decimals and no more than needed; the same everywhere."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def _mix(a: str, b: str, share: float) -> str:
    pairs = [(int(a[i : i + 2], 16), int(b[i : i + 2], 16)) for i in (1, 3, 5)]
    return "#" + "".join(f"{round(share * p + (1 - share) * q):02x}" for p, q in pairs)


def _dark(tint: str) -> bool:
    """Say whether white shows better on a tint than black."""
    return luminance(tint) < 0.18
