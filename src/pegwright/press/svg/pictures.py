"""Paint pictures as SVG 1.1 text: to scale in mm, with title and description."""

from __future__ import annotations

import functools
from collections.abc import Iterable
from html import escape

from pegwright.lesson import FRAME, Picture, Still, Swatch
from pegwright.press.paint.bands import paint_swatch
from pegwright.press.paint.inks import COLOUR, Inks
from pegwright.press.paint.marks import paint_picture
from pegwright.press.paint.paths import (
    ArcTo,
    Letters,
    LineTo,
    Paint,
    QuadTo,
    Stroke,
    VectorPath,
    point_on_arc,
)
from pegwright.press.paint.torn_edges import paint_torn_edges, torn_edge_lines, untorn_outline

FONT = "Atkinson Hyperlegible"


@functools.lru_cache(maxsize=256)  # handout, page and prompter show the same pictures
def step_svg(picture: Picture, inks: Inks = COLOUR, least_mm: float = 0.0) -> str:
    """Return a picture as SVG; its size on paper is its window's size times its scale, in mm.

    No letter is less than `least_mm` high, in mm of the loom.
    """
    w, h = picture.window.width_mm, picture.window.height_mm
    return "".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {_fmt(w)} {_fmt(h)}" '
            f'width="{_fmt(w * picture.scale)}mm" height="{_fmt(h * picture.scale)}mm" '
            f'font-family="{FONT}">',
            f"<title>{escape(picture.title)}</title><desc>{escape(picture.text)}</desc>",
            f'<rect width="{_fmt(w)}" height="{_fmt(h)}" fill="{inks.ground}"/>',
            _markup(paint_picture(picture, inks, least_mm, paint_torn_edges(picture.window, inks))),
            "</svg>",
        )
    )


def still_svg(still: Still, tall_px: int = FRAME[1], inks: Inks = COLOUR) -> str:
    """Return a still for film as SVG: 16:9, `tall_px` high, transparent, cut along its torn edges."""
    picture = still.picture
    outline = _path_data(untorn_outline(picture.window))
    return "".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {FRAME[0]} {FRAME[1]}" '
            f'width="{tall_px * FRAME[0] // FRAME[1]}" height="{tall_px}" font-family="{FONT}">',
            f"<title>{escape(picture.title)}</title><desc>{escape(picture.text)}</desc>",
            f'<defs><clipPath id="cut"><path d="{outline}"/></clipPath></defs>',
            f'<g transform="translate({_fmt(still.left_px)} {_fmt(still.top_px)}) '
            f'scale({still.px_a_mm:.4f})">',
            f'<g clip-path="url(#cut)">{_markup(paint_picture(picture, inks))}</g>',
            f"{_markup(torn_edge_lines(picture.window, inks))}</g></svg>",
        )
    )


def swatch_svg(swatch: Swatch, inks: Inks = COLOUR) -> str:
    """Return a colour of the key as SVG: a piece of band in its tint and pattern, 16 × 5 mm."""
    name = escape(f"{swatch.letter}: {swatch.name}")
    band = _markup(paint_swatch(swatch.tint, swatch.hatch, inks))
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 16 5" width="16mm" height="5mm">'
        f"<title>{name}</title><desc>{name}</desc>{band}</svg>"
    )


def _markup(paints: Iterable[Paint]) -> str:
    return "".join(_letters(p) if isinstance(p, Letters) else _stroke(p) for p in paints)


def _stroke(stroke: Stroke) -> str:
    look = f'fill="{stroke.fill or "none"}"'
    if stroke.ink:
        look += f' stroke="{stroke.ink}" stroke-width="{_fmt(stroke.width)}" stroke-linejoin="round"'
        look += ' stroke-linecap="round"' if stroke.round_cap else ""
        look += f' stroke-dasharray="{" ".join(map(_fmt, stroke.dash))}"' if stroke.dash else ""
    match stroke.paths:
        case (VectorPath((ArcTo(x, y, r, _, 360.0),)),):
            return f'<circle cx="{_fmt(x)}" cy="{_fmt(y)}" r="{_fmt(r)}" {look}/>'
        case paths:
            return f'<path d="{" ".join(map(_path_data, paths))}" {look}/>'


def _path_data(path: VectorPath) -> str:
    """Return the path data of a path: an arc command for each half turn, straight lines between."""
    parts: list[str] = []
    for segment in path.segments:
        joint = "L" if parts else "M"
        match segment:
            case LineTo(x, y):
                parts.append(f"{joint}{_fmt(x)} {_fmt(y)}")
            case QuadTo(bend_x, bend_y, x, y):
                parts.append(f"Q{_fmt(bend_x)} {_fmt(bend_y)} {_fmt(x)} {_fmt(y)}")
            case ArcTo():
                x, y = point_on_arc(segment, 0.0)
                parts.append(f"{joint}{_fmt(x)} {_fmt(y)}")
                flag = 0 if segment.sweep_deg > 0 else 1
                for share in (0.5, 1.0) if abs(segment.sweep_deg) > 180 else (1.0,):
                    x, y = point_on_arc(segment, share)
                    if segment.sweep_deg:
                        parts.append(f"A{_fmt(segment.r)} {_fmt(segment.r)} 0 0 {flag} {_fmt(x)} {_fmt(y)}")
    return "".join(parts) + ("Z" if path.closed else "")


def _letters(letters: Letters) -> str:
    weight = ' font-weight="700"' if letters.bold else ""
    edge = (
        f' stroke="{letters.halo}" stroke-width="0.6" paint-order="stroke" stroke-linejoin="round"'
        if letters.halo
        else ""
    )
    return (
        f'<text x="{_fmt(letters.x)}" y="{_fmt(letters.y + 0.35 * letters.size)}" '
        f'font-size="{_fmt(letters.size)}" text-anchor="middle" fill="{letters.ink}"{weight}{edge}>'
        f"{escape(letters.text)}</text>"
    )


def _fmt(value: float) -> str:
    """Format a number with at most two decimals, the same on every machine."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
