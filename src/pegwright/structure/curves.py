"""Where each strand runs: closed curves in space for all bands and fasteners, from the machine's events.

The curves do not meet, and they pass through exactly what the real strands pass through: the drawing repeats
the history move by move, each an isotopy of what was there before (see `strand_layout`).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from pegwright.loom import Bight, Event
from pegwright.structure.columns import INNER, OUTER
from pegwright.structure.drawing import Drawing, Lane
from pegwright.structure.strand_layout import RADIUS, lay_out_strands
from pegwright.structure.strands import (
    TWIST_LIFT,
    TWISTED_PART,
    Pen,
    Points,
    Span,
    draw_coil,
    fastener_cords,
    fastener_rings,
)

Positions = Callable[[str], tuple[float, float]] | Mapping[str, tuple[float, float]]

__all__ = ["Curves", "Points", "Positions", "Wrap", "strand_curves"]


@dataclass(frozen=True)
class Wrap:
    """A loop where it lies, or once lay, round a holder's column.

    `spans` are half-open ranges of indices into its band's curve, in order along the band. `stay` counts,
    from 1, the loop's stays on that holder. `now` is false for a place that the loop has left (it may still
    hold the ribbons that it took along). For a loop lifted off its peg `lifted` is true, and its wrap
    surrounds what it was lifted over.
    """

    bight: Bight
    holder: str
    centre_mm: tuple[float, float]
    spans: tuple[Span, ...]
    sign: int
    stay: int = 1
    now: bool = True
    lifted: bool = False


@dataclass(frozen=True)
class Curves:
    """Closed polylines (n, 3) in mm, last point joined to the first; no two strands nearer than `clear_mm`.

    Parts of one strand count only where they are more than 1 mm apart along it. `bands[b]` and
    `fasteners[f]` are numbered as in the events. `rings[f]` are what remains of fastener f when the piece
    lies open: one small ring for each place where it catches loops. `wraps` says where the loops sit.
    `half_twists[b]` counts the ribbons of band b that had to take a half-twist one way or the other; the
    events do not say which, so for each of them the band's own twist is uncertain by a whole turn.
    """

    bands: Mapping[int, Points]
    fasteners: Mapping[int, Points]
    rings: Mapping[int, tuple[Points, ...]]
    wraps: tuple[Wrap, ...]
    half_twists: Mapping[int, int]
    clear_mm: float


def strand_curves(events: Iterable[Event], position: Positions, thickness_mm: float) -> Curves:
    """Draw the made thing.

    Args:
        events: the machine's events, from the empty loom on.
        position: centre in mm of every peg that the events name. Free ends and the hook's shaft need none.
        thickness_mm: height of one layer.

    Raises:
        KeyError: a peg has no position.
        ValueError: two pegs stand in one place, or a band was slid only in part.
    """
    drawing = lay_out_strands(list(events), position if callable(position) else position.__getitem__)
    bands: dict[int, Points] = {}
    wraps: list[Wrap] = []
    for band, tour in drawing.tours.items():
        pen = Pen(drawing.half_mm)
        pen.draw_tour(tour)
        bands[band] = pen.to_polyline(thickness_mm)
        stays: dict[tuple[Bight, str], int] = {}
        # Of a loop's stays on one holder the lower was there first.
        for visit, spans in sorted(pen.wraps, key=lambda w: w[0].level):
            assert visit.bight is not None
            key = visit.bight, visit.column.name
            stays[key] = stays.get(key, 0) + 1
            left = visit.departure
            lifted = left is not None and left.lifted
            centre = visit.column.centre
            wraps.append(
                Wrap(
                    *key,
                    (float(centre[0]), float(centre[1])),
                    tuple(spans),
                    visit.sign,
                    stays[key],
                    left is None,
                    lifted,
                )
            )
    for band, ring in drawing.coils.items():
        bands[band], turns = draw_coil(ring, thickness_mm)
        wraps += [
            Wrap(bight, "hook", (float(ring.centre[0]), float(ring.centre[1])), (span,), ring.sign)
            for bight, span in turns
        ]
    made = fastener_cords(drawing, thickness_mm)
    return Curves(
        dict(sorted(bands.items())),
        made,
        fastener_rings(drawing, thickness_mm),
        tuple(wraps),
        drawing.half_twists,
        _clearance_mm(drawing, thickness_mm),
    )


def _clearance_mm(drawing: Drawing, thickness_mm: float) -> float:
    """Return a lower bound from the drawing's own spacings: within a ribbon, between rings and heights."""
    radius = RADIUS * drawing.unit_mm
    inner = max((c.inner_rings for c in drawing.columns.values()), default=0)
    outer = max((c.outer_rings for c in drawing.columns.values()), default=0)
    # Arcs are polygons: a ring's chords come nearer the middle by 1 − cos 10° of its radius.
    sag = 0.016
    rings = min(
        (INNER[1] - INNER[0]) / (inner + 1) - INNER[1] * sag,
        (OUTER[1] - OUTER[0]) / (outer + 1) - OUTER[1] * sag,
    )
    # Fasteners may go down between the two strands of a ribbon, where they turn away from each other.
    between = sum(descent.column is None for cord in drawing.cords.values() for descent in cord)
    twisted = [
        _twisted_gap_mm(stage.lane, drawing.half_mm, radius, thickness_mm)
        for tour in drawing.tours.values()
        for stage in tour
        if stage.lane is not None and stage.lane.half_twists
    ]
    return float(
        min(
            *twisted,
            (min(0.5, 0.9 / between) if between else 0.9) * drawing.half_mm,
            radius * rings,
            0.1 * thickness_mm,
            0.2 * thickness_mm / (outer + 1),
        )
    )


def _twisted_gap_mm(lane: Lane, half_mm: float, radius_mm: float, thickness_mm: float) -> float:
    """Return the least distance between the two strands of a ribbon where it is twisted.

    They cross `2 · lift` apart in height, on a ribbon that rises by `slope`. Of two points at the same place
    along it one is at least `2 h l / √(h² + l²)` from the other, l being the lift as seen across the slope;
    of two points on either side of a crossing, at least `2 lift / √(1 + (slope + lift / reach)²)`.
    """
    lengths = [float(np.hypot(*(b - a))) for a, b in pairwise(lane.line)]
    reach = (
        TWISTED_PART * max(lengths) / (2 * abs(lane.half_twists))
    )  # from where they are apart to a crossing
    run = max(sum(lengths) - 2 * radius_mm, 1e-9)
    slope = abs(lane.end - lane.start) * thickness_mm / run * math.hypot(1.0, half_mm / reach)
    lift = TWIST_LIFT * thickness_mm
    across = lift / math.hypot(1.0, slope)
    return min(
        2 * half_mm * across / math.hypot(half_mm, across),
        2 * lift / math.hypot(1.0, slope + lift / reach),
    )
