"""Paint a picture as SVG 1.1 text: to scale in mm, with its title and description inside."""

from __future__ import annotations

import functools
from collections.abc import Iterable
from html import escape

from pegwright.lesson.frame import FRAME, Still
from pegwright.lesson.picture import Picture
from pegwright.lesson.sheet import Swatch
from pegwright.press.strokes import (
    COLOUR,
    GREY,
    Curve,
    Inks,
    Letters,
    Line,
    Paint,
    Path,
    Stroke,
    Turn,
    kept,
    painted,
    point_at,
    swatch,
    tears,
    torn,
)

__all__ = ["COLOUR", "FONT", "GREY", "Inks", "step_svg", "still_svg", "swatch_svg"]

FONT = "Atkinson Hyperlegible"


@functools.lru_cache(maxsize=256)  # handout, page and prompter show the same pictures
def step_svg(picture: Picture, inks: Inks = COLOUR) -> str:
    """Paint a picture; its size on paper is that of its window times its scale, in mm."""
    w, h = picture.window.width_mm, picture.window.height_mm
    return "".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {_n(w)} {_n(h)}" '
            f'width="{_n(w * picture.scale)}mm" height="{_n(h * picture.scale)}mm" font-family="{FONT}">',
            f"<title>{escape(picture.title)}</title><desc>{escape(picture.text)}</desc>",
            f'<rect width="{_n(w)}" height="{_n(h)}" fill="{inks.ground}"/>',
            _written(painted(picture, inks)),
            _written(torn(picture.window, inks)),
            "</svg>",
        )
    )


def still_svg(still: Still, tall_px: int = FRAME[1], inks: Inks = COLOUR) -> str:
    """Paint a still for film: 16:9, so many pixels high, nothing behind it; torn edges are cut off."""
    picture = still.picture
    return "".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {FRAME[0]} {FRAME[1]}" '
            f'width="{tall_px * FRAME[0] // FRAME[1]}" height="{tall_px}" font-family="{FONT}">',
            f"<title>{escape(picture.title)}</title><desc>{escape(picture.text)}</desc>",
            f'<defs><clipPath id="cut"><path d="{_d(kept(picture.window))}"/></clipPath></defs>',
            f'<g transform="translate({_n(still.left_px)} {_n(still.top_px)}) scale({still.px_a_mm:.4f})">',
            f'<g clip-path="url(#cut)">{_written(painted(picture, inks))}</g>',
            f"{_written(tears(picture.window, inks))}</g></svg>",
        )
    )


def swatch_svg(shown: Swatch, inks: Inks = COLOUR) -> str:
    """Paint a colour of the key: a piece of band in its tint and pattern, 16 × 5 mm."""
    name = escape(f"{shown.letter}: {shown.name}")
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 16 5" width="16mm" height="5mm">'
        f"<title>{name}</title><desc>{name}</desc>{_written(swatch(shown.tint, shown.hatch, inks))}</svg>"
    )


def _written(paints: Iterable[Paint]) -> str:
    return "".join(_letters(p) if isinstance(p, Letters) else _stroke(p) for p in paints)


def _stroke(stroke: Stroke) -> str:
    look = f'fill="{stroke.fill or "none"}"'
    if stroke.ink:
        look += f' stroke="{stroke.ink}" stroke-width="{_n(stroke.width)}" stroke-linejoin="round"'
        look += ' stroke-linecap="round"' if stroke.round_cap else ""
        look += f' stroke-dasharray="{" ".join(map(_n, stroke.dash))}"' if stroke.dash else ""
    match stroke.paths:
        case (Path((Turn(x, y, r, _, 360.0),)),):
            return f'<circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(r)}" {look}/>'
        case paths:
            return f'<path d="{" ".join(map(_d, paths))}" {look}/>'


def _d(path: Path) -> str:
    """Write a path: an arc command for each half turn, straight lines between turns."""
    parts: list[str] = []
    for piece in path.pieces:
        joint = "L" if parts else "M"
        match piece:
            case Line(x, y):
                parts.append(f"{joint}{_n(x)} {_n(y)}")
            case Curve(bend_x, bend_y, x, y):
                parts.append(f"Q{_n(bend_x)} {_n(bend_y)} {_n(x)} {_n(y)}")
            case Turn():
                x, y = point_at(piece, 0.0)
                parts.append(f"{joint}{_n(x)} {_n(y)}")
                flag = 0 if piece.sweep_deg > 0 else 1
                for share in (0.5, 1.0) if abs(piece.sweep_deg) > 180 else (1.0,):
                    x, y = point_at(piece, share)
                    if piece.sweep_deg:
                        parts.append(f"A{_n(piece.r)} {_n(piece.r)} 0 0 {flag} {_n(x)} {_n(y)}")
    return "".join(parts) + ("Z" if path.closed else "")


def _letters(letters: Letters) -> str:
    weight = ' font-weight="700"' if letters.bold else ""
    edge = (
        f' stroke="{letters.halo}" stroke-width="0.6" paint-order="stroke" stroke-linejoin="round"'
        if letters.halo
        else ""
    )
    return (
        f'<text x="{_n(letters.x)}" y="{_n(letters.y + 0.35 * letters.size)}" '
        f'font-size="{_n(letters.size)}" text-anchor="middle" fill="{letters.ink}"{weight}{edge}>'
        f"{escape(letters.text)}</text>"
    )


def _n(value: float) -> str:
    """Write a number with two decimals and no more than needed; the same everywhere."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
