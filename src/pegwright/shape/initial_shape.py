"""The solver's starting shape: the drawn strands, taut, at the bands' size, each with its material.

Drawn strands are twice as long as the bands and a tenth of their thickness apart. Corners are cut, each cut
proved clear of other strands (`tightening`) and checked independently (`crossing_count`). Then the whole
drawing is scaled so that bands are half as long again as at rest, which leaves all of them room to thicken.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from pegwright.finding import RefusedError, phrase
from pegwright.loom import HOOK, Drawn, Event, Fastened, Laid, Lifted
from pegwright.shape.band_on_pegs import rest_length_mm
from pegwright.shape.crossing_count import count_corner_crossings
from pegwright.shape.rods import Band, Floats
from pegwright.shape.rubber import RubberLaw, neo_hookean
from pegwright.shape.tightening import subdivide_curve, tighten_curves
from pegwright.structure import Curves, Positions, strand_curves

__all__ = ["BandProperties", "InitialShape", "closed_length_mm", "draw_initial_shape", "is_worked_upward"]

_LOOSE = 1.5  # length over rest length while the bands thicken
_CLIP_MM, _CLIP_THICK_MM, _CLIP_POINTS = 5.0, 1.5, 24
_CLIP = neo_hookean(4.0)  # a clip hardly gives under the pull of bands
_CORD_THICK_MM, _CORD_EDGE_MM = 1.0, 1.5
_CORD = neo_hookean(3.0)
_SHUT = 0.5  # how far the cord of a tube is pulled shut


class BandProperties(NamedTuple):
    """What a band is: inner diameter and thickness at rest, and its rubber."""

    bore_mm: float
    thickness_mm: float
    rubber: RubberLaw = RubberLaw()


class InitialShape(NamedTuple):
    """The bands in order, then the fasteners' strands, each with its number in `fasteners`.

    The piece lies along x. `tube` means that it surrounds its own axis. `rows` is the width in links of a
    piece worked flat, or the number of links round a tube (1 for all others). `crossings` counts the corner
    cuts that let a strand pass (0).
    """

    bands: list[Band]
    fasteners: tuple[int, ...]
    tube: bool
    rows: float
    crossings: int


def draw_initial_shape(
    events: Sequence[Event], spots: Positions, kinds: Sequence[BandProperties], points: int
) -> InitialShape:
    """Draw the events of a history and prepare the curves; every band gets at least `points` points.

    A clip that joins two ends becomes a ring at each end; a cord stays whole.

    Raises:
        KeyError: a peg has no position.
        ValueError: there are no bands, or `kinds` has not one entry a band.
    """
    if not kinds:
        raise RefusedError(phrase("no-bands"))
    drawn = strand_curves(events, spots, float(np.mean([k.thickness_mm for k in kinds])))
    if len(kinds) != len(drawn.bands):
        raise ValueError(f"{len(kinds)} kinds for {len(drawn.bands)} bands")
    numbers, cords, held = _fasteners(drawn, events)
    count = len(kinds)
    strands = [drawn.bands[b] for b in sorted(drawn.bands)] + held
    margin = 0.5 * drawn.clear_mm
    taut, moves = tighten_curves(strands, margin, count)
    crossings = count_corner_crossings(strands, moves)
    rest = [rest_length_mm(k.bore_mm, k.thickness_mm) for k in kinds]
    scale = _LOOSE * float(np.median([r / closed_length_mm(x) for r, x in zip(rest, taut, strict=False)]))
    upward = is_worked_upward(events)
    taut, tube, flat = _lay_lengthwise([scale * x for x in taut], count, upward=upward)
    bands = [
        Band(subdivide_curve(x, points), r, k.thickness_mm, k.rubber)
        for x, r, k in zip(taut, rest, kinds, strict=False)
    ]
    for x, cord in zip(taut[count:], cords, strict=True):
        clip = rest_length_mm(_CLIP_MM, _CLIP_THICK_MM)
        if cord:
            long = max(clip, closed_length_mm(x) / _LOOSE * (_SHUT if tube else 1.0))
            edges = max(_CLIP_POINTS, int(long / _CORD_EDGE_MM))
            bands.append(Band(subdivide_curve(x, edges), long, _CORD_THICK_MM, _CORD))
        else:
            bands.append(Band(subdivide_curve(x, _CLIP_POINTS), clip, _CLIP_THICK_MM, _CLIP))
    rows = _links_across(events, spots, tube) if flat or tube else 1.0
    if upward and not tube:  # its width is the longer side of its plan
        rows = max(1.0, _links_across(events, spots, tube, longest=True) - 1.0)
    return InitialShape(bands, numbers, tube, rows, crossings)


def is_worked_upward(events: Sequence[Event]) -> bool:
    """Return whether a piece grows upward off its pegs.

    Most of its bands are laid where loops have already been worked, or as many loops are lifted over as there
    are bands. Tails and anything knitted by lifting over grow this way; a chain is laid out whole and then
    worked.
    """
    worked: set[str] = set()
    bands = later = lifts = 0
    for event in events:
        match event:
            case Laid(beneath=False):
                bands += 1
                later += any(seat.holder in worked for seat in event.seats)
            case Drawn():
                worked.add(event.source)
            case Lifted():
                worked.add(event.holder)
                lifts += 1
            case _:
                pass
    return later > bands / 2 or lifts >= bands > 0


def _links_across(events: Sequence[Event], spots: Positions, tube: bool, *, longest: bool = False) -> float:
    """Return the width of a piece in links, or the number of links round a tube.

    A link is the median reach of its bands. The width is the shorter side of the plan, or its `longest`.

    The drawing cannot give this: the more bands are stacked, the smaller its plan.
    """
    place = spots if callable(spots) else spots.__getitem__
    laid = [[s.holder for s in e.seats] for e in events if isinstance(e, Laid)]
    # Free ends and the hook's shaft are on no peg.
    bands = [
        np.array([place(h) for h in band]) for band in laid if not any("." in h or h == HOOK for h in band)
    ]
    links = [reach for x in bands if (reach := float(np.linalg.norm(x - x[0], axis=1).max())) > 0.0]
    if not links:
        return 1.0
    pegs = np.concatenate(bands)
    _, axes = np.linalg.eigh(np.cov(pegs.T))
    wide = float(np.ptp(pegs @ axes[:, -1 if longest else 0]) / np.median(links))
    return math.pi * wide if tube else 1.0 + wide


def closed_length_mm(x: Floats) -> float:
    """Return the length of a closed curve (n, 3)."""
    return float(np.sqrt(((np.roll(x, -1, axis=0) - x) ** 2).sum(axis=1)).sum())


def _fasteners(
    drawn: Curves, events: Sequence[Event]
) -> tuple[tuple[int, ...], tuple[bool, ...], list[Floats]]:
    """Return the strands of the fasteners: the number of each, whether it is a cord, and its curve."""
    knots = {e.fastener for e in events if isinstance(e, Fastened) and e.kind == "knot"}
    found: list[tuple[int, bool, Floats]] = []
    for number, rings in drawn.rings.items():
        cord = number in knots and len(rings) > 1
        found += [(number, cord, x) for x in ([drawn.fasteners[number]] if cord else rings)]
    numbers, cords, curves_ = zip(*found, strict=True) if found else ((), (), ())
    return tuple(numbers), tuple(cords), list(curves_)


def _lay_lengthwise(
    curves: Sequence[Floats], count: int, *, upward: bool = False
) -> tuple[list[Floats], bool, bool]:
    """Return a drawing turned to lie along x and centred on the origin, and whether it is a tube, and flat.

    The longer side of the bands' plan goes along x. A piece that grows `upward`, is taller than wide, or
    surrounds its own middle stands upright in the drawing and is laid down.
    """
    every = np.concatenate(list(curves[:count]))
    middle = 0.5 * (every.min(axis=0) + every.max(axis=0))
    _, axes = np.linalg.eigh(np.cov((every - every.mean(axis=0))[:, :2].T))
    x, y = axes[:, -1] * np.sign(axes[np.argmax(np.abs(axes[:, -1])), -1])
    turn = np.array([[x, y, 0.0], [-y, x, 0.0], [0.0, 0.0, 1.0]])
    size = np.ptp((every - middle) @ turn.T, axis=0)
    out = np.hypot(*(every - middle)[:, :2].T)
    tube = bool(out.min() > 0.4 * out.max())
    flat = not tube and not upward and bool(size[2] <= size[0])
    if not flat:
        turn = np.array([turn[2], turn[0], turn[1]])
    return [(c - middle) @ turn.T for c in curves], tube, flat
