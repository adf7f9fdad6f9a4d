"""The order in which to paint strands so that the upper covers the lower, in few strokes.

Each band is cut into short pieces. Where two pieces overlap on paper, the deeper must come first (the
painter's algorithm); pieces of a band that can be painted together make one run. Where three or more overlap
in a cycle no order is right, and the deepest goes first.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import numpy.typing as npt
from scipy.spatial import cKDTree

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int64]

_SIDE_BY_SIDE = 0.12  # strands that overlap by less than this share of their radii only touch


class StrandPieces(NamedTuple):
    """Short pieces from `start` (n, 3) to `end` (n, 3), z towards the reader, each with a `radius` (n,).

    `strand` is the number of each piece's strand, `after` the next piece of the same strand or −1. Pieces of
    a run share the same `sort` (their colour).
    """

    start: Floats
    end: Floats
    radius: Floats
    strand: Ints
    after: Ints
    sort: Ints


def order_runs(pieces: StrandPieces) -> list[list[int]]:
    """Return runs of pieces in painting order; within a run the pieces follow each other."""
    n = len(pieces.start)
    above: list[list[int]] = [[] for _ in range(n)]
    waits = np.zeros(n, dtype=np.int64)
    for low, high in _overlaps(pieces):
        above[low].append(high)
        waits[high] += 1
    left = np.ones(n, dtype=np.bool_)
    depth = pieces.start[:, 2] + pieces.end[:, 2]
    painted: list[list[int]] = []
    while left.any():
        ready = left & (waits == 0)
        if not ready.any():
            candidates = np.flatnonzero(left)
            ready[candidates[np.argmin(depth[candidates])]] = True
        found = _longest_runs(ready, pieces)
        longest = max(map(len, found))
        for run in (run for run in found if 2 * len(run) >= longest):
            painted.append(run)
            left[run] = False
            for low in run:
                for high in above[low]:
                    waits[high] -= 1
    return painted


def _longest_runs(ready: npt.NDArray[np.bool_], pieces: StrandPieces) -> list[list[int]]:
    """Return the longest runs of pieces that are ready, each once."""
    follows = np.where(pieces.after >= 0, pieces.after, 0)
    joined = ready & (pieces.after >= 0) & ready[follows] & (pieces.sort == pieces.sort[follows])
    continued = np.zeros(len(ready), dtype=np.bool_)
    continued[pieces.after[joined]] = True
    found, seen = [], np.zeros(len(ready), dtype=np.bool_)
    heads = np.flatnonzero(ready & ~continued).tolist()
    for head in [*heads, *np.flatnonzero(ready & continued).tolist()]:  # a closed ring has no head
        if seen[head]:
            continue
        run, at = [], int(head)
        while not seen[at]:
            seen[at] = True
            run.append(at)
            if not joined[at]:
                break
            at = int(pieces.after[at])
        found.append(run)
    return found


def _overlaps(pieces: StrandPieces) -> list[tuple[int, int]]:
    """Return pairs (lower, upper) of pieces that overlap on paper and are not neighbours along a strand."""
    middle = 0.5 * (pieces.start + pieces.end)[:, :2]
    reach = float(np.linalg.norm((pieces.end - pieces.start)[:, :2], axis=1).max() + 2 * pieces.radius.max())
    pairs = cKDTree(middle).query_pairs(reach, output_type="ndarray").astype(np.int64)
    if not len(pairs):
        return []
    i, j = pairs[:, 0], pairs[:, 1]
    near = (pieces.after[i] == j) | (pieces.after[j] == i)
    i, j = i[~near], j[~near]
    gap, height = _closest(pieces.start[i], pieces.end[i], pieces.start[j], pieces.end[j])
    touching = gap < (1 - _SIDE_BY_SIDE) * (pieces.radius[i] + pieces.radius[j])
    # Pieces close together on a strand overlap in every bend; their order matters only where one lies on top.
    bend = (pieces.strand[i] == pieces.strand[j]) & (
        abs(height) < 0.7 * (pieces.radius[i] + pieces.radius[j])
    )
    keep = touching & ~bend & (abs(height) > 1e-9)
    low, high = np.where(height > 0, j, i)[keep], np.where(height > 0, i, j)[keep]
    return list(zip(low.tolist(), high.tolist(), strict=True))


def _closest(a: Floats, b: Floats, c: Floats, d: Floats) -> tuple[Floats, Floats]:
    """Return the least distance on paper between edges ab and cd, and how much higher ab is there.

    Either the edges cross on paper, or one of the four ends is nearest to the other edge.
    """
    u, v, w = (b - a)[:, :2], (d - c)[:, :2], (c - a)[:, :2]
    cross = u[:, 0] * v[:, 1] - u[:, 1] * v[:, 0]
    safe = np.where(abs(cross) < 1e-12, 1.0, cross)
    s, t = (w[:, 0] * v[:, 1] - w[:, 1] * v[:, 0]) / safe, (w[:, 0] * u[:, 1] - w[:, 1] * u[:, 0]) / safe
    meets = (abs(cross) >= 1e-12) & (s >= 0) & (s <= 1) & (t >= 0) & (t <= 1)
    options = [(np.where(meets, s, 0.0), np.where(meets, t, 0.0), np.where(meets, 0.0, np.inf))]
    zero, one = np.zeros(len(a)), np.ones(len(a))
    for fixed, point in ((zero, a), (one, b)):
        at = _nearest_on_edge(point, c, d)
        options.append((fixed, at, _paper_distance(point, c + at[:, None] * (d - c))))
    for fixed, point in ((zero, c), (one, d)):
        at = _nearest_on_edge(point, a, b)
        options.append((at, fixed, _paper_distance(point, a + at[:, None] * (b - a))))
    gaps = np.stack([option[2] for option in options])
    best = np.argmin(gaps, axis=0)
    index = np.arange(len(a))
    s = np.stack([option[0] for option in options])[best, index]
    t = np.stack([option[1] for option in options])[best, index]
    height = a[:, 2] + s * (b - a)[:, 2] - c[:, 2] - t * (d - c)[:, 2]
    return gaps[best, index], height


def _nearest_on_edge(point: Floats, a: Floats, b: Floats) -> Floats:
    """Return where on edge ab (0 to 1) it is nearest to a point on paper."""
    along = (b - a)[:, :2]
    square = (along * along).sum(axis=1)
    t = ((point - a)[:, :2] * along).sum(axis=1) / np.maximum(square, 1e-18)
    return np.asarray(np.clip(t, 0.0, 1.0), dtype=np.float64)


def _paper_distance(p: Floats, q: Floats) -> Floats:
    return np.asarray(np.hypot(p[:, 0] - q[:, 0], p[:, 1] - q[:, 1]), dtype=np.float64)
