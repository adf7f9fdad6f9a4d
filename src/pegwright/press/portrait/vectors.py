"""A portrait as SVG 1.1: every band a smooth stroke with a dark edge, painted from the back to the front.

The file is compact: coordinates are whole hundredths of a mm, and straight stretches take few points.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from html import escape
from typing import NamedTuple

import numpy as np

from pegwright.lesson import Camera, Portrait, ViewName
from pegwright.press.paint.bands import pattern_stroke
from pegwright.press.paint.inks import COLOUR, Inks, pattern_tint
from pegwright.press.paint.paths import Letters, LineTo, Paint, Stroke
from pegwright.press.portrait.legend import draw_legend
from pegwright.press.portrait.painting_order import StrandPieces, order_runs
from pegwright.press.portrait.tubes import Floats, Ints, point_tints, project, smooth
from pegwright.press.svg.pictures import FONT

_UNIT = 100  # units to the millimetre
_TURN = 0.36  # rad, the most that a line turns between two points that are kept
_SKIP = 4
_EDGE = 0.3  # mm: how much wider the dark edge is than the band
_LAP_MM = 0.2
_FINER_HATCH = 0.6  # patterns are drawn for step pictures, whose bands are thicker


class _StrandCurves(NamedTuple):
    """All strands cut into pieces: points and slopes (n, 3) at both ends, as the camera sees them, in mm."""

    pieces: StrandPieces
    slope: Floats  # (n, 3) of the start, scaled to the piece's own length
    end_slope: Floats
    tint: list[str]


def portrait_svg(
    portrait: Portrait,
    view: ViewName,
    *,
    tension: bool = False,
    bare: bool = False,
    width_mm: float | None = None,
    text: str = "",
    inks: Inks = COLOUR,
) -> str:
    """Return one view as SVG text: life size, or `width_mm` wide on paper.

    `text` describes the picture for readers who cannot see it; the default is English. `bare` leaves out the
    scale bar and key, `tension` colours by the tension map.

    Raises:
        KeyError: the portrait has no such view.
    """
    camera = portrait.camera(view)
    wide, tall = camera.size_mm
    curves, runs = _ordered_curves(portrait, view, tension)
    strip = None if bare else draw_legend(portrait, wide, tension=tension)
    full = tall + (strip.height_mm if strip else 0.0)
    scale = (width_mm or wide) / wide
    tones = sorted(set(curves.tint))
    widths = np.unique(np.round(curves.pieces.radius, 2))
    hatched = {} if inks.bands else _pattern_strokes(portrait)
    body, defs = [], []
    for number, run in enumerate(runs):
        defs.append(f'<path id="r{number}" d="{_path(curves, run)}"/>')
        tone = tones.index(curves.tint[run[0]])
        thick = int(np.searchsorted(widths, round(float(curves.pieces.radius[run].mean()), 2)))
        thick = min(thick, len(widths) - 1)
        use = f'<use href="#r{number}" class='
        body.append(f'{use}"e w{thick}"{_edge_dash(curves, run)}/>{use}"c{tone} b{thick}"/>')
        if inks.bands:
            body.append(f'{use}"h{tone} g{thick}"/>')
        elif (hatch := portrait.tubes[curves.pieces.strand[run[0]]].hatch) in hatched:
            body.append(f'{use}"p{hatch} q{tone}"/>')
    style = [f".e{{stroke:{inks.graphite}}}"]
    for i, tint in enumerate(tones):
        shown = inks.tint(tint)
        style.append(f".c{i}{{stroke:{shown}}}.h{i}{{stroke:{_lighten(shown)}}}")
    for i, radius in enumerate(widths):
        w = 2 * radius * _UNIT
        style.append(
            f".w{i}{{stroke-width:{w + _EDGE * _UNIT:.0f}}}.b{i}{{stroke-width:{w:.0f}}}"
            f".g{i}{{stroke-width:{0.3 * w:.0f}}}"
        )
    for hatch, along in hatched.items():
        cap = "round" if along.round_cap else "butt"
        dash = " ".join(f"{length * _FINER_HATCH * _UNIT:.0f}" for length in along.dash) or "none"
        line = f"stroke-width:{along.width * _UNIT:.0f};stroke-linecap:{cap};stroke-dasharray:{dash}"
        style.append(f".p{hatch}{{{line}}}")
    if hatched:
        style += [f".q{i}{{stroke:{pattern_tint(inks.tint(tint), inks)}}}" for i, tint in enumerate(tones)]
    key = ", ".join(f"{tube.letter} {tube.name}".strip() for tube in portrait.key)
    return "".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" role="img" font-family="{FONT}" '
            f'viewBox="0 0 {wide * _UNIT:.0f} {full * _UNIT:.0f}" '
            f'width="{wide * scale:.2f}mm" height="{full * scale:.2f}mm">',
            f"<title>{escape(portrait.title)}</title><desc>{escape(text or f'{camera.text}; {key}')}</desc>",
            f"<style>{''.join(style)}</style>",
            f'<rect width="{wide * _UNIT:.0f}" height="{full * _UNIT:.0f}" fill="{inks.ground}"/>',
            f"<defs>{''.join(defs)}</defs>",
            _wrist_svg(portrait, camera),
            f'<g fill="none" stroke-linejoin="round">{"".join(body)}</g>',
            _write_legend(strip.paints, tall) if strip else "",
            "</svg>",
        )
    )


def _pattern_strokes(portrait: Portrait) -> dict[int, Stroke]:
    """Return the patterns of the bands that have one, for a picture in grey."""
    bands = {tube.hatch: 2 * tube.radius_mm[0] for tube in portrait.tubes if tube.kind == "band"}
    made = {hatch: pattern_stroke(hatch, thick) for hatch, thick in bands.items()}
    return {hatch: along for hatch, along in made.items() if along is not None}


@lru_cache(maxsize=4)
def _ordered_curves(
    portrait: Portrait, view: ViewName, tension: bool
) -> tuple[_StrandCurves, list[list[int]]]:
    """Return the curves and the order of painting them; a lesson paints one view for cover and file."""
    curves = _strand_curves(portrait, portrait.camera(view), tension=tension)
    return curves, order_runs(curves.pieces)


def _strand_curves(portrait: Portrait, camera: Camera, *, tension: bool) -> _StrandCurves:
    starts, ends, radii, strands, afters, slopes, end_slopes = [], [], [], [], [], [], []
    tone: list[str] = []
    count = 0
    for number, tube in enumerate(portrait.tubes):
        if tube.kind == "wrist":
            continue
        line = smooth(tube, 1)
        points = project(line, camera)
        colours = point_tints(portrait, tube, line, tension=tension)
        keep = _kept_points(points, line.closed, colours)
        after = np.roll(keep, -1)
        size = len(keep) if line.closed else len(keep) - 1
        slope = _slopes(points, line.closed)
        arc = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.roll(points, -1, axis=0) - points, axis=1))])
        long = (arc[after] - arc[keep]) % arc[len(points)]
        here = keep[:size]
        starts.append(points[here])
        ends.append(points[after[:size]])
        radii.append(line.radius[here])
        strands.append(np.full(size, number))
        follow = count + (np.arange(size) + 1) % size
        if not line.closed:
            follow[-1] = -1
        afters.append(follow)
        slopes.append(slope[here] * long[:size, None])
        end_slopes.append(slope[after[:size]] * long[:size, None])
        tone += [colours[i] for i in here]
        count += size
    sort = np.unique(np.array(tone), return_inverse=True)[1]
    pieces = StrandPieces(
        np.concatenate(starts),
        np.concatenate(ends),
        np.concatenate(radii),
        np.concatenate(strands),
        np.concatenate(afters),
        np.asarray(sort, dtype=np.int64),
    )
    found = _StrandCurves(pieces, np.concatenate(slopes), np.concatenate(end_slopes), tone)
    return found if portrait.girth_mm is None else _hide_behind_wrist(found, portrait, camera)


def _kept_points(points: Floats, closed: bool, colours: list[str]) -> Ints:
    """Return the points to keep: where the line has turned enough, or its colour changes."""
    n = len(points)
    ahead = np.roll(points, -1, axis=0) - points
    behind = np.roll(ahead, 1, axis=0)
    turn = np.arctan2(np.linalg.norm(np.cross(behind, ahead), axis=1), (behind * ahead).sum(axis=1))
    keep, turned = [0], 0.0
    for i in range(1, n):
        turned += float(turn[i])
        if (
            turned > _TURN
            or i - keep[-1] >= _SKIP
            or colours[i] != colours[i - 1]
            or (not closed and i == n - 1)
        ):
            keep.append(i)
            turned = 0.0
    return np.array(keep, dtype=np.int64)


def _slopes(points: Floats, closed: bool) -> Floats:
    """Return unit tangents (n, 3)."""
    ahead = np.roll(points, -1, axis=0) - points
    behind = np.roll(ahead, 1, axis=0)
    if not closed:
        behind[0], ahead[-1] = ahead[0], behind[-1]
    sum_ = ahead / np.linalg.norm(ahead, axis=1)[:, None] + behind / np.linalg.norm(behind, axis=1)[:, None]
    return np.asarray(sum_ / np.maximum(np.linalg.norm(sum_, axis=1), 1e-9)[:, None], dtype=np.float64)


def _hide_behind_wrist(curves: _StrandCurves, portrait: Portrait, camera: Camera) -> _StrandCurves:
    """Drop the pieces hidden by the wrist."""
    wrist = next(tube for tube in portrait.tubes if tube.kind == "wrist")
    ends = project(smooth(wrist, 1), camera)
    axis = (ends[1] - ends[0]) / np.linalg.norm(ends[1] - ends[0])
    middle = 0.5 * (curves.pieces.start + curves.pieces.end) - ends[0]
    along = middle @ axis
    off = middle - along[:, None] * axis
    # The wrist hides what lies behind its axis and within its outline.
    flat = np.array([axis[1], -axis[0]]) / np.hypot(axis[0], axis[1])
    hidden = (off[:, 2] < 0) & (abs(middle[:, :2] @ flat) < wrist.radius_mm[0])
    shown = np.flatnonzero(~hidden)
    number = np.full(len(hidden) + 1, -1)
    number[shown] = np.arange(len(shown))
    p = curves.pieces
    pieces = StrandPieces(
        p.start[shown], p.end[shown], p.radius[shown], p.strand[shown], number[p.after[shown]], p.sort[shown]
    )
    return _StrandCurves(
        pieces, curves.slope[shown], curves.end_slope[shown], [curves.tint[i] for i in shown]
    )


def _path(curves: _StrandCurves, run: list[int]) -> str:
    """Return a run as cubic curves, a little longer at both ends so that no seam shows."""
    p = curves.pieces
    first, last = run[0], run[-1]
    ring = len(run) > 1 and p.after[last] == first
    start, end = p.start[first, :2], p.end[last, :2]
    if not ring:
        start = start - _LAP_MM * curves.slope[first, :2] / max(
            float(np.linalg.norm(curves.slope[first])), 1e-9
        )
        end = end + _LAP_MM * curves.end_slope[last, :2] / max(
            float(np.linalg.norm(curves.end_slope[last])), 1e-9
        )
    at = np.rint(start * _UNIT).astype(int)
    parts = [f"M{at[0]} {at[1]}c"]
    numbers: list[str] = []
    for k in run:
        goal = end if k == last else p.end[k, :2]
        a = p.start[k, :2] + curves.slope[k, :2] / 3
        b = p.end[k, :2] - curves.end_slope[k, :2] / 3
        corners = np.rint(np.array([a, b, goal]) * _UNIT).astype(int)
        numbers += [str(int(v)) for corner in corners for v in corner - at]
        at = corners[2]
    text = numbers[0]
    for number in numbers[1:]:
        text += number if number[0] == "-" else f" {number}"
    return parts[0] + text + ("z" if ring else "")


def _edge_dash(curves: _StrandCurves, run: list[int]) -> str:
    """Return a dash that keeps the dark edge shorter than the fill, or a hair of it would show at every seam.

    The dash runs from one true end of the run to the other, measured along the curves.
    """
    p = curves.pieces
    if len(run) > 1 and p.after[run[-1]] == run[0]:
        return ""
    t = np.linspace(0.0, 1.0, 9)[None, :, None]
    a, d = p.start[run, None, :2], p.end[run, None, :2]
    b, c = a + curves.slope[run, None, :2] / 3, d - curves.end_slope[run, None, :2] / 3
    x = (1 - t) ** 3 * a + 3 * t * (1 - t) ** 2 * b + 3 * t**2 * (1 - t) * c + t**3 * d
    long = float(np.linalg.norm(np.diff(x, axis=1), axis=2).sum())
    lap = _LAP_MM / 2  # the edges of two runs overlap by as much
    return f' stroke-dasharray="0 {lap * _UNIT:.0f} {(long + 2 * lap) * _UNIT:.0f} 99"'


def _wrist_svg(portrait: Portrait, camera: Camera) -> str:
    """Return the wrist, its sides a little darker."""
    wrist = next((tube for tube in portrait.tubes if tube.kind == "wrist"), None)
    if wrist is None:
        return ""
    a, b = project(smooth(wrist, 1), camera)[:, :2]
    along = (b - a) / np.linalg.norm(b - a)
    side = np.array([along[1], -along[0]])
    r = wrist.radius_mm[0]
    found = []
    for share, tint in ((1.0, _darken(wrist.tint)), (0.82, wrist.tint), (0.4, _lighten(wrist.tint, 0.25))):
        corners = [
            a - 200 * along + share * r * side,
            b + 200 * along + share * r * side,
            b + 200 * along - share * r * side,
            a - 200 * along - share * r * side,
        ]
        d = "L".join(f"{x * _UNIT:.0f} {y * _UNIT:.0f}" for x, y in corners)
        found.append(f'<path d="M{d}z" fill="{tint}"/>')
    return "".join(found)


def _write_legend(paints: Iterable[Paint], down_mm: float) -> str:
    """Return the legend's strokes and letters as SVG, `down_mm` below the picture's top."""
    found = []
    for one in paints:
        if isinstance(one, Letters):
            weight = ' font-weight="700"' if one.bold else ""
            y = (one.y + 0.35 * one.size + down_mm) * _UNIT
            found.append(
                f'<text x="{one.x * _UNIT:.0f}" y="{y:.0f}" font-size="{one.size * _UNIT:.0f}" '
                f'text-anchor="middle" fill="{one.ink}"{weight}>{escape(one.text)}</text>'
            )
            continue
        for path in one.paths:
            corners = "L".join(
                f"{p.x * _UNIT:.0f} {(p.y + down_mm) * _UNIT:.0f}"
                for p in path.segments
                if isinstance(p, LineTo)
            )
            found.append(
                f'<path d="M{corners}{"z" if path.closed else ""}" fill="{one.fill or "none"}" '
                f'stroke="{one.ink}" stroke-width="{one.width * _UNIT:.0f}"/>'
            )
    return "".join(found)


def _lighten(tint: str, share: float = 0.35) -> str:
    return "#" + "".join(
        f"{round(v + (255 - v) * share):02x}" for v in (int(tint[i : i + 2], 16) for i in (1, 3, 5))
    )


def _darken(tint: str) -> str:
    return "#" + "".join(f"{round(int(tint[i : i + 2], 16) * 0.8):02x}" for i in (1, 3, 5))
