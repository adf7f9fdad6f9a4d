"""What passes through what, read twice: from the events, and from the curves.

The two must agree. They share nothing but the loops' names: `passages_from_events` reads events,
`passages_from_curves` counts where strands cross the flat discs inside the wraps.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from pegwright.loom import Bight, Drawn, Event, Fastened, Laid, Moved
from pegwright.structure.curves import Curves, Points, Wrap


class LoopStay(NamedTuple):
    """A loop's stay on a holder, ended or not; `stay` counts, from 1, its stays there."""

    bight: Bight
    holder: str
    stay: int


Strand = tuple[str, int]  # ("band", number) or ("fastener", number)
Passages = dict[LoopStay, Counter[Strand]]


def passages_from_events(events: Iterable[Event]) -> Passages:
    """Count from the events, for each stay of each loop, the strands that pass through it there.

    A loop drawn through takes two strands with it, a fastener one. Loops that were lifted over no longer
    have a flat disc; `passages_from_curves` leaves them out, and so should a comparison.
    """
    at: dict[Bight, LoopStay] = {}
    found: Passages = {}
    stays: Counter[tuple[Bight, str]] = Counter()

    def start_stay(bight: Bight, holder: str) -> None:
        stays[bight, holder] += 1
        at[bight] = LoopStay(bight, holder, stays[bight, holder])
        found[at[bight]] = Counter()

    for e in events:
        match e:
            case Laid():
                for seat in e.seats:
                    start_stay(seat.bight, seat.holder)
            case Drawn():
                for loop in e.through:
                    found[at[loop]]["band", e.bight.band] += 2
                start_stay(e.bight, e.target)
            case Moved():
                start_stay(e.bight, e.target)
            case Fastened():
                for loop in e.caught:
                    found[at[loop]]["fastener", e.fastener] += 1
    return found


def passages_from_curves(curves: Curves) -> Passages:
    """Count, for each wrap except those of lifted loops, the strands of each curve that cross its disc."""
    found: Passages = {}
    strands: list[tuple[Strand, Points]] = [(("band", b), c) for b, c in curves.bands.items()]
    strands += [(("fastener", f), c) for f, c in curves.fasteners.items()]
    for wrap in curves.wraps:
        if not wrap.lifted:
            ring = wrap_outline(curves, wrap)
            counts = {name: _count_crossings(ring, curve) for name, curve in strands}
            found[LoopStay(wrap.bight, wrap.holder, wrap.stay)] = +Counter(counts)
    return found


def wrap_outline(curves: Curves, wrap: Wrap) -> Points:
    """Return the outline of the disc inside a wrap (n, 3), closed round its centre where the arms leave."""
    curve = curves.bands[wrap.bight.band]
    part = np.vstack([curve[i:j] for i, j in wrap.spans])
    (x, y), (p, q) = wrap.centre_mm, part[[0, -1], :2]
    radius = float(np.hypot(p[0] - x, p[1] - y))
    a, b = (float(np.arctan2(at[1] - y, at[0] - x)) for at in (q, p))
    turn = wrap.sign * ((wrap.sign * (b - a)) % (2 * np.pi))
    angles = a + turn * np.arange(1, 24) / 24
    rest = np.column_stack(
        [x + radius * np.cos(angles), y + radius * np.sin(angles), np.full(23, part[0, 2])]
    )
    return np.vstack([part, rest])


def _count_crossings(ring: Points, curve: Points) -> int:
    """Count the segments of a closed curve that go through a flat, level ring."""
    z = ring[0, 2]
    a, b = curve, np.roll(curve, -1, axis=0)
    hit = ((a[:, 2] < z) & (b[:, 2] > z)) | ((a[:, 2] > z) & (b[:, 2] < z))
    if not hit.any():
        return 0
    p, q = a[hit], b[hit]
    u = (z - p[:, 2]) / (q[:, 2] - p[:, 2])
    spots = p[:, :2] + u[:, None] * (q - p)[:, :2]
    return int(_which_inside(ring[:, :2], spots).sum())


def _which_inside(ring: npt.NDArray[np.float64], spots: npt.NDArray[np.float64]) -> npt.NDArray[np.bool_]:
    """Say which spots lie inside a polygon (crossing number, Shimrat 1962)."""
    a, b = ring, np.roll(ring, -1, axis=0)
    x, y = spots[:, :1], spots[:, 1:]
    spans = (a[:, 1] > y) != (b[:, 1] > y)
    with np.errstate(divide="ignore", invalid="ignore"):
        cut = a[:, 0] + (y - a[:, 1]) * (b[:, 0] - a[:, 0]) / (b[:, 1] - a[:, 1])
    return np.asarray((spans & (x < cut)).sum(axis=1) % 2 == 1)
