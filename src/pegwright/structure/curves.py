"""Where each strand runs: closed curves in space for all bands and fasteners, from the machine's record.

The curves do not meet, and nothing passes through anything that it does not pass through in the hand: the
drawing repeats the history move by move, each an isotopy of what lay there before (see `draughtsman`).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from pegwright.loom.events import Bight, Event
from pegwright.structure.columns import INNER, OUTER
from pegwright.structure.draughtsman import RADIUS, draw
from pegwright.structure.drawing import Drawing
from pegwright.structure.strands import Pen, Points, Span, coil, cords, rings

Positions = Callable[[str], tuple[float, float]] | Mapping[str, tuple[float, float]]

__all__ = ["Curves", "Points", "Positions", "Wrap", "curves"]


@dataclass(frozen=True)
class Wrap:
    """A loop where it lies, or once lay, round a holder's column.

    `spans` are half-open ranges of indices into its band's curve, along the band. `stay` counts, from 1, the
    loop's stays on that holder. `now` is false for a place that the loop has left (it may still hold the
    ribbons that it took along). A loop lifted off its peg has `lifted` true: its wrap surrounds what it was
    lifted over.
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

    Of one strand with itself only parts count that are more than 1 mm apart along it. `bands[b]` and
    `fasteners[f]` are numbered as in the events. `rings[f]` are what remains of fastener f when the piece
    lies open: one small ring for each place it catches. `wraps` says where the loops sit. `half_turns[b]`
    counts the ribbons of band b that had to take a half-turn one way or the other; the record does not say
    which, so the band's own twist is a guess by a whole turn for each.
    """

    bands: Mapping[int, Points]
    fasteners: Mapping[int, Points]
    rings: Mapping[int, tuple[Points, ...]]
    wraps: tuple[Wrap, ...]
    half_turns: Mapping[int, int]
    clear_mm: float


def curves(events: Iterable[Event], position: Positions, thickness_mm: float) -> Curves:
    """Draw the made thing.

    Args:
        events: the machine's record, from the empty loom on.
        position: centre in mm of every peg that the record names. Free ends and the hook's shaft need none.
        thickness_mm: height of one layer.

    Raises:
        KeyError: a peg has no position.
        ValueError: two pegs stand in one place, or a band was slid only in part.
    """
    drawing = draw(list(events), position if callable(position) else position.__getitem__)
    bands: dict[int, Points] = {}
    wraps: list[Wrap] = []
    for band, tour in drawing.tours.items():
        pen = Pen(drawing.half_mm)
        pen.tour(tour)
        bands[band] = pen.curve(thickness_mm)
        stays: dict[tuple[Bight, str], int] = {}
        # Of a loop's stays on one holder the lower was there first.
        for visit, spans in sorted(pen.wraps, key=lambda w: w[0].level):
            assert visit.bight is not None
            key = visit.bight, visit.column.name
            stays[key] = stays.get(key, 0) + 1
            left = visit.leaving
            lifted = left is not None and left.to is None
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
        bands[band], turns = coil(ring, thickness_mm)
        wraps += [
            Wrap(bight, "hook", (float(ring.centre[0]), float(ring.centre[1])), (span,), ring.sign)
            for bight, span in turns
        ]
    made = cords(drawing, thickness_mm)
    return Curves(
        dict(sorted(bands.items())),
        made,
        rings(drawing, thickness_mm),
        tuple(wraps),
        drawing.half_turns,
        _clear(drawing, thickness_mm),
    )


def _clear(drawing: Drawing, thickness_mm: float) -> float:
    """Return a bound that the drawing's own spacings keep: between strands of a ribbon, rings and heights."""
    radius = RADIUS * drawing.unit_mm
    inner = max((c.inner_rings for c in drawing.columns.values()), default=0)
    outer = max((c.outer_rings for c in drawing.columns.values()), default=0)
    # Arcs are polygons: a ring's chords come nearer the middle by 1 − cos 10° of its radius.
    sag = 0.016
    rings = min(
        (INNER[1] - INNER[0]) / (inner + 1) - INNER[1] * sag,
        (OUTER[1] - OUTER[0]) / (outer + 1) - OUTER[1] * sag,
    )
    # A fastener may go down between the two strands of a ribbon, where they turn away from each other.
    between = any(fall.column is None for cord in drawing.cords.values() for fall in cord)
    return float(
        min(
            (0.5 if between else 0.9) * drawing.half_mm,
            radius * rings,
            0.1 * thickness_mm,
            0.2 * thickness_mm / (outer + 1),
        )
    )
