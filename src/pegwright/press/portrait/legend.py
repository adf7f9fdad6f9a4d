"""The strip below a portrait: a scale bar, and colours with their letters or their tensions."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from pegwright.lesson import Portrait
from pegwright.press.paint.paths import Letters, LineTo, Paint, Stroke, VectorPath
from pegwright.press.raster.canvas import text_width

INK = "#2e3338"
_EDGE = "#2e3338"


class Legend(NamedTuple):
    """The strip: what is painted, in mm from its upper left corner, and its height."""

    paints: tuple[Paint, ...]
    height_mm: float


def draw_legend(portrait: Portrait, width_mm: float, *, tension: bool) -> Legend:
    """Lay out the strip for a picture `width_mm` wide; entries wrap to further lines."""
    size = min(max(width_mm / 52, 1.6), 6.0)
    gap, row = 1.2 * size, 2.0 * size
    bar = [*_scale_bar(portrait.bar_mm, size)]
    right = gap + portrait.bar_mm + size + _text_width_mm(_millimetres(portrait.bar_mm), size)
    placed: list[Paint] = [*_shift(bar, gap, 0.5 * row)]
    x, line = right + 2 * gap, 0
    entries = (
        [_tension_scale(portrait, size)]
        if tension
        else [_entry(t.letter, t.name, t.tint, size) for t in portrait.key]
    )
    for paints, long in entries:
        if x + long > width_mm - gap and x > gap:
            x, line = gap, line + 1
        placed += _shift(paints, x, (line + 0.5) * row)
        x += long + 1.5 * gap
    return Legend(tuple(placed), (line + 1.25) * row)


def _scale_bar(long_mm: float, size: float) -> Iterator[Paint]:
    tick = 0.35 * size
    ends = (
        VectorPath((LineTo(0, -tick), LineTo(0, tick))),
        VectorPath((LineTo(long_mm, -tick), LineTo(long_mm, tick))),
    )
    yield Stroke((*ends, VectorPath((LineTo(0, 0), LineTo(long_mm, 0)))), ink=INK, width=0.12 * size)
    text = _millimetres(long_mm)
    yield Letters(long_mm + 0.6 * size + _text_width_mm(text, size) / 2, 0, text, size, INK)


def _entry(letter: str, name: str, tint: str, size: float) -> tuple[list[Paint], float]:
    """Return a swatch with its letter and name, and their width in mm."""
    text = name[:40] if name and name != letter else ""
    side, bold = 1.1 * size, _text_width_mm(letter, size, bold=True)
    paints: list[Paint] = [_box(0, side, tint, size)]
    paints.append(Letters(side + 0.5 * size + bold / 2, 0, letter, size, INK, bold=True))
    long = side + 0.5 * size + bold
    if text:
        width = _text_width_mm(text, size)
        paints.append(Letters(long + 0.4 * size + width / 2, 0, text, size, INK))
        long += 0.4 * size + width
    return paints, long


def _tension_scale(portrait: Portrait, size: float) -> tuple[list[Paint], float]:
    """Return a box for each step, with the tension (N) at its edges, and their width in mm."""
    side = max(2.4 * size, 1.2 * max(_text_width_mm(_newton(s.from_n), size) for s in portrait.steps))
    paints: list[Paint] = []
    for i, step in enumerate(portrait.steps):
        paints.append(_box(i * side, side, step.tint, size))
    edges = [*(step.from_n for step in portrait.steps), portrait.most_n]
    for i, edge in enumerate(edges):
        text = _newton(edge) + (" N" if i == len(edges) - 1 else "")
        paints.append(Letters(i * side, 1.25 * size, text, 0.8 * size, INK))
    return [*_shift(paints, _text_width_mm("0", size), -0.35 * size)], len(portrait.steps) * side + 2 * size


def _box(x: float, wide_mm: float, tint: str, size: float) -> Stroke:
    y = 0.55 * size
    corners = (LineTo(x, -y), LineTo(x + wide_mm, -y), LineTo(x + wide_mm, y), LineTo(x, y))
    return Stroke((VectorPath(corners, closed=True),), fill=tint, ink=_EDGE, width=0.1 * size)


def _shift(paints: list[Paint], dx: float, dy: float) -> Iterator[Paint]:
    for one in paints:
        if isinstance(one, Letters):
            yield one._replace(x=one.x + dx, y=one.y + dy)
        else:
            moved = tuple(
                path._replace(
                    segments=tuple(LineTo(p.x + dx, p.y + dy) for p in path.segments if isinstance(p, LineTo))
                )
                for path in one.paths
            )
            yield one._replace(paths=moved)


def _text_width_mm(text: str, size: float, *, bold: bool = False) -> float:
    return text_width(text, bold) * size


def _millimetres(value: float) -> str:
    return f"{value:g} mm"


def _newton(value: float) -> str:
    return f"{value:g}"
