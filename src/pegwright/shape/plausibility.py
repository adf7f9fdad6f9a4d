"""Does a piece rest as it was made? What cannot be right is found, so that nobody takes a heap for a piece.

Two questions, asked of the curves at rest and of the machine's record, and of nothing that the solver says of
itself. Is the piece longer than its bands can span? And do bands that are many links apart lie far apart?
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Sequence

import numpy as np

from pegwright.loom import Drawn, Event, Fastened, Lifted
from pegwright.shape.initial_shape import is_worked_upward
from pegwright.shape.rods import Floats

__all__ = ["agreement_with_links", "agreement_with_rows", "is_longer_than_bands", "rests_otherwise"]

_LEAST_LINKS = 0.25
_LEAST_ROWS = 0.3
"""Of 50 techniques and the built-in pieces none that grows upward agrees less with its rows than 0.5, and
none of the others less with its links than 0.88; a mat tugged along its rows agrees with them to 0.12."""

_FEWEST = 8  # a piece of fewer bands is too small to lie in an order
_SHALLOWEST = 4  # and so is one of fewer links from its rim to the band furthest away


def is_longer_than_bands(curves: Sequence[Floats], length_mm: float) -> bool:
    """Say whether a length is more than all curves (n, 3) could span, laid end to end.

    A closed curve spans at most half of its own length, and curves that are linked lie within each other's
    span. So a piece that hangs together is never longer than half of what its curves measure together.
    """
    round_mm = (np.linalg.norm(np.roll(x, -1, axis=0) - x, axis=1).sum() for x in curves)
    return length_mm > 0.5 * float(sum(round_mm)) + 1e-6


def rests_otherwise(events: Sequence[Event], curves: Sequence[Floats]) -> bool:
    """Say whether a piece at rest lies otherwise than its record says: in a heap, or along the wrong way.

    `curves` are those of the bands in order, (n, 3) in mm, with x along the piece.
    """
    if is_worked_upward(events):
        rows = agreement_with_rows(events, curves)
        return rows is not None and rows < _LEAST_ROWS
    links = agreement_with_links(events, curves)
    return links is not None and links < _LEAST_LINKS


def agreement_with_rows(events: Iterable[Event], curves: Sequence[Floats]) -> float | None:
    """Return how well the bands of a piece that grows upward lie, along x, in the order they were laid.

    From 0 to 1 (Spearman's rank correlation, its sign left out). None for other pieces, and small ones.
    """
    if len(curves) < _FEWEST or not is_worked_upward(tuple(events)):
        return None
    along = [float(x[:, 0].mean()) for x in curves]
    return abs(_rank_correlation(range(len(along)), along))


def agreement_with_links(events: Iterable[Event], curves: Sequence[Floats]) -> float | None:
    """Return how well distances at rest agree with distances in links: 1 in the same order, 0 in none.

    Distances are taken from a band at the rim, one that is as many links away from another as any. `curves`
    are those of the bands in order, (n, 3) in mm; the measure is Spearman's rank correlation, of the bands
    that are linked to the first or to those next to it. None where these are few, or lie few links apart.
    """
    count = len(curves)
    links: list[set[int]] = [set() for _ in range(count)]
    for event in events:
        if isinstance(event, Drawn | Lifted):
            one = event.bight.band - 1
            for other in event.through if isinstance(event, Drawn) else event.over:
                links[one].add(other.band - 1)
                links[other.band - 1].add(one)
        elif isinstance(event, Fastened) and event.kind == "knot":  # a cord draws its loops together
            caught = {bight.band - 1 for bight in event.caught}
            for band in caught:
                links[band] |= caught - {band}
    if count < _FEWEST:
        return None
    rim = int(np.argmax(_steps_from(0, links)))
    steps = _steps_from(rim, links)
    linked = [band for band in range(count) if steps[band] >= 0]
    if len(linked) < _FEWEST or max(steps) < _SHALLOWEST:
        return None
    middles = np.array([curves[band].mean(axis=0) for band in linked])
    away_mm = np.linalg.norm(middles - middles[linked.index(rim)], axis=1)
    return _rank_correlation([steps[band] for band in linked], away_mm)


def _rank_correlation(one: Sequence[float], other: Sequence[float] | Floats) -> float:
    """Return Spearman's rank correlation, equal values sharing their ranks.

    A statistics library has it too, but loading that takes as long as bringing a short piece to rest.
    """
    return float(np.corrcoef(_ranks(one), _ranks(other))[0, 1])


def _ranks(values: Sequence[float] | Floats) -> Floats:
    _, place, counts = np.unique(np.asarray(values, float), return_inverse=True, return_counts=True)
    shared: Floats = (np.cumsum(counts) - (counts - 1) / 2)[place]
    return shared


def _steps_from(start: int, links: Sequence[set[int]]) -> list[int]:
    """Return how many links each band is away from one; −1 where no way leads."""
    steps = [-1] * len(links)
    steps[start] = 0
    queue = deque([start])
    while queue:
        here = queue.popleft()
        for there in links[here]:
            if steps[there] < 0:
                steps[there] = steps[here] + 1
                queue.append(there)
    return steps
