"""How far a step can go before any strand could pass through another.

The bound is the certificate. Along x + α·dx a point of edge a moves, against any common translation c, by
at most α·max|dx_i − c| over the edge's two ends. So for a listed pair

    α ≤ γ (d − d_min) / (max_{i∈a}|dx_i − c| + max_{j∈b}|dx_j − c|),   c the mean of the four moves,

keeps d above d_min on the whole path, and for unlisted pairs the same holds band by band, with d the reach of
the list (or the gap of the bands' boxes, if wider). Neighbours along a band take part in the bound,
though not in contact; only edges that share a vertex do not, and they can meet only by folding flat. The
motion is then an isotopy and needs no test afterwards (it gets one all the same, in `crossing_count`). Only
relative motion counts, so a long chain may move far in one step: the difference from per-vertex bounds such
as A. Chen et al., Offset geometric contact, ACM Trans. Graph. 44 (2025).
"""

from __future__ import annotations

import math

import numpy as np

from pegwright.shape.contact import closest_points
from pegwright.shape.jit import kernel
from pegwright.shape.near_pairs import SAFETY, NearPairs
from pegwright.shape.rods import Floats, Ints, Rods

__all__ = ["bound_listed_pairs", "bound_unlisted_pairs"]

_LOOKS = 24  # how often a pair is revisited
_BARELY_MM = 1e-3  # distances below about 1e-6 are lost in the smoothing


def bound_listed_pairs(x: Floats, step: Floats, rods: Rods, near: NearPairs, least_mm: float) -> float:
    """Return a safe α ≤ 1 for the listed pairs, the largest that a few passes can show.

    A neighbour along the band can start nearer than d_min if edges are short: it keeps half its gap, and
    always enough to be told from a crossing.
    """
    half = np.maximum(0.5 * near.gap_mm, np.minimum(_BARELY_MM, 0.99 * near.gap_mm))
    floor = np.where(near.touchable, least_mm, np.minimum(least_mm, half))
    short = np.flatnonzero(near.move_mm > SAFETY * (near.gap_mm - floor))
    return float(
        _advance(x, step, rods.next, near.pairs[short], near.gap_mm[short], near.move_mm[short], floor[short])
    )


@kernel
def _advance(
    x: Floats, step: Floats, after: Ints, pairs: Ints, gaps: Floats, moves: Floats, floors: Floats
) -> float:
    """Return the largest α ≤ 1 that keeps each pair above its floor, by applying the bound repeatedly.

    `pairs` (m, 2) are edges; by pair (m,): `gaps` now, `moves` relative to each other over the whole step,
    and `floors`, all in mm. `after` (n,) is `Rods.next`.

    Strands that slide along each other keep their distance however far they move, so each pair is revisited
    (conservative advancement, B. Mirtich, 1996), until it is past the least α of the others.
    """
    alpha = 1.0
    y, at = np.zeros((4, 3)), np.arange(4)  # numba would compile again for literal indices
    for k in range(pairs.shape[0]):
        a, b = pairs[k, 0], pairs[k, 1]
        t, gap = 0.0, gaps[k]
        for look in range(_LOOKS):
            onward = SAFETY * (gap - floors[k]) / moves[k]
            t += onward
            if t >= alpha or onward < 0.02 * t or look == _LOOKS - 1:
                break
            for i in range(3):
                y[0, i] = x[a, i] + t * step[a, i]
                y[1, i] = x[after[a], i] + t * step[after[a], i]
                y[2, i] = x[b, i] + t * step[b, i]
                y[3, i] = x[after[b], i] + t * step[after[b], i]
            gap = math.sqrt(closest_points(y, at[0], at[1], at[2], at[3], 1e-12)[2])
        alpha = min(alpha, t)
    return alpha


def bound_unlisted_pairs(
    x: Floats, step: Floats, rods: Rods, apart_mm: float, farthest_mm: float
) -> tuple[float, float]:
    """Choose the reach of the list for this step, and bound the pairs beyond it.

    Returns the reach in mm, `apart_mm` to `farthest_mm`, and the largest α ≤ 1 that keeps every pair not
    within that reach farther apart than `apart_mm`.
    """
    at = rods.start[:-1]
    low, high = np.minimum.reduceat(x, at), np.maximum.reduceat(x, at)
    middle = 0.5 * (np.minimum.reduceat(step, at) + np.maximum.reduceat(step, at))
    spread = np.maximum.reduceat(np.sqrt(((step - middle[rods.band]) ** 2).sum(axis=1)), at)
    reach = min(_bound_unlisted_pairs(low, high, middle, spread, apart_mm, np.inf), farthest_mm)
    if reach < farthest_mm:
        return reach, 1.0
    return reach, _bound_unlisted_pairs(low, high, middle, spread, apart_mm, reach)


@kernel
def _bound_unlisted_pairs(
    low: Floats, high: Floats, middle: Floats, spread: Floats, apart_mm: float, reach_mm: float
) -> float:
    """Return the least reach at which α can be 1 (if `reach_mm` is infinite), or the largest α there.

    By band: `low` and `high` (bands, 3), the corners of its box; `middle` (bands, 3) and `spread` (bands,),
    the mean of its vertices' moves and the greatest deviation from it.
    """
    alpha, wanted = 1.0, apart_mm
    endless = reach_mm > 1e300
    for a in range(low.shape[0]):
        for b in range(a, low.shape[0]):
            gap = drift = 0.0
            for i in range(3):
                drift += (middle[a, i] - middle[b, i]) ** 2
                between = max(low[b, i] - high[a, i], low[a, i] - high[b, i])
                gap += max(between, 0.0) ** 2
            move = spread[a] + spread[b] + math.sqrt(drift)
            gap = math.sqrt(gap)
            if endless:
                if gap < apart_mm + move / 0.9:
                    wanted = max(wanted, apart_mm + move / 0.9)
            else:
                allowed = 0.9 * (max(gap, reach_mm) - apart_mm)
                if move * alpha > allowed:
                    alpha = allowed / move
    return wanted if endless else alpha
