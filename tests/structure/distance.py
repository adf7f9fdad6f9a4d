"""Smallest distance between strands, for checks: exact segment distances, nothing clever."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from scipy.spatial import cKDTree


def smallest(curves: Sequence[np.ndarray], reach: float = 2.0) -> float:
    """Least distance (mm) between closed polylines, up to `reach`.

    Of one curve with itself, only parts count between which more than 1 mm of it lies.
    """
    if not curves:
        return reach
    a = np.vstack(curves)
    b = np.vstack([np.roll(c, -1, axis=0) for c in curves])
    # Cut long segments so that near pairs have near middles.
    owner, start, stop = [], [], []
    for k, (p, q) in enumerate(zip(a, b, strict=True)):
        n = max(1, int(np.ceil(np.linalg.norm(q - p) / reach)))
        for i in range(n):
            owner.append(k)
            start.append(p + (q - p) * i / n)
            stop.append(p + (q - p) * (i + 1) / n)
    p, q = np.array(start), np.array(stop)
    owner = np.array(owner)
    pairs = cKDTree((p + q) / 2).query_pairs(2 * reach, output_type="ndarray")
    i, j = pairs.T
    curve = np.concatenate([np.full(len(c), k) for k, c in enumerate(curves)])[owner]
    length = np.linalg.norm(q - p, axis=1)
    stop_at = np.cumsum(length)
    start_at = stop_at - length
    total = np.array([length[curve == k].sum() for k in range(len(curves))])[curve]
    between = np.maximum(start_at[j] - stop_at[i], start_at[i] - stop_at[j])
    round_ = total[i] - between - length[i] - length[j]
    near = (curve[i] == curve[j]) & (np.minimum(between, round_) < 1.0)
    i, j = i[~near], j[~near]
    return float(segment_distance(p[i], q[i], p[j], q[j]).min(initial=reach))


def segment_distance(a, b, c, d):  # type: ignore[no-untyped-def]
    """Distance between segments ab and cd, row by row (Ericson, Real-Time Collision Detection, 5.1.9)."""
    u, v, w = b - a, d - c, a - c
    uu, vv, uv = (u * u).sum(1), (v * v).sum(1), (u * v).sum(1)
    uw, vw = (u * w).sum(1), (v * w).sum(1)
    den = uu * vv - uv * uv
    with np.errstate(divide="ignore", invalid="ignore"):
        s = np.where(den > 1e-14, np.clip((uv * vw - uw * vv) / den, 0, 1), 0.0)
        t = (uv * s + vw) / vv
        t2 = np.clip(t, 0, 1)
        s = np.where(t == t2, s, np.clip((t2 * uv - uw) / uu, 0, 1))
    return np.linalg.norm((a + s[:, None] * u) - (c + t2[:, None] * v), axis=1)
