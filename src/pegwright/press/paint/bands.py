"""A band as strokes: halo, edge, tint, and the pattern that tells it apart without colour."""

from __future__ import annotations

from pegwright.press.paint.inks import COLOUR, Inks, mix_tints, pattern_tint
from pegwright.press.paint.paths import LineTo, Paint, Stroke, VectorPath

_DASHES: tuple[tuple[float, ...] | None, ...] = (
    (), (2.4, 1.5), (0.01, 1.7), None, (3, 1.2, 0.01, 1.2), (0.45, 1.9), (5, 1.5), (0.01, 1.1, 0.01, 2.6),
)  # fmt: skip
"""The pattern along a band by its hatch; None is an unbroken line, an empty one no line."""


_BARS = 5
"""The hatch whose dashes go right across the band."""


_FADED = 0.42


def paint_swatch(tint: str, hatch: int, inks: Inks = COLOUR) -> list[Paint]:
    """Return a piece of band in its tint and pattern, 12 mm long, in a field of 16 × 5 mm."""
    return paint_band(
        (VectorPath((LineTo(2.0, 2.5), LineTo(14.0, 2.5))),), 2.2, tint, hatch, highlighted=True, inks=inks
    )


def paint_band(
    paths: tuple[VectorPath, ...], thick: float, tint: str, hatch: int, *, highlighted: bool, inks: Inks
) -> list[Paint]:
    """Return a band `thick` wide along paths: halo, edge, tint, pattern."""
    tint = inks.tint(tint)
    edge = inks.graphite if highlighted else mix_tints(inks.graphite, inks.ground, _FADED)
    fill = tint if highlighted else mix_tints(tint, inks.ground, _FADED)
    pattern = pattern_tint(tint, inks)
    pattern = pattern if highlighted else mix_tints(pattern, fill, 0.7)
    layers: list[Paint] = [
        Stroke(paths, ink=inks.ground, width=thick + 1.0),
        Stroke(paths, ink=edge, width=thick + (0.55 if highlighted else 0.4), round_cap=True),
        Stroke(paths, ink=fill, width=thick, round_cap=True),
    ]
    along = pattern_stroke(hatch, thick)
    if along is not None:
        layers.append(along._replace(paths=paths, ink=pattern))
    return layers


def pattern_stroke(hatch: int, thick: float) -> Stroke | None:
    """Return the pattern's stroke for a band `thick` wide, without paths or ink; None for a plain one."""
    hatch %= len(_DASHES)
    dash = _DASHES[hatch]
    if dash == ():
        return None
    across = hatch == _BARS
    return Stroke((), width=thick if across else thick * 0.36, round_cap=not across, dash=dash or ())
