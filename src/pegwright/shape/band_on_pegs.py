"""Stretch and force of a band on its pegs: a taut loop round cylindrical pegs, without friction.

A band over pegs of equal diameter d lies along the convex hull of their centres, its centreline (d + t)/2
away from them, with t its thickness: the centreline is the hull's perimeter + π(d + t) long. Off the loom it
is π(bore + t). So a band over two pegs s apart is slack until s > π(bore − d)/2 (design arithmetic; no
source).
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from pegwright.shape.rubber import RubberLaw, nominal_stress

__all__ = ["BandOnPegs", "rest_length_mm", "slack_until_mm", "stretch_over_pegs", "taut_length_mm"]

Floats = npt.NDArray[np.float64]


class BandOnPegs(NamedTuple):
    """A band on its pegs. `load_n` (pegs, 2) is the pull on each peg, towards the others."""

    taut_mm: float
    rest_mm: float
    stretch: float  # 1 if it is slack
    slack: bool
    tension_n: float  # in every strand
    load_n: Floats


def rest_length_mm(bore_mm: float, thickness_mm: float) -> float:
    """Return the length of an unstretched band's centreline, π(bore + thickness).

    Raises:
        ValueError: a length is not positive.
    """
    if bore_mm <= 0 or thickness_mm <= 0:
        raise ValueError(f"a band has a positive bore and thickness: {bore_mm}, {thickness_mm}")
    return math.pi * (bore_mm + thickness_mm)


def slack_until_mm(bore_mm: float, peg_mm: float) -> float:
    """Return the distance between two pegs' centres up to which a band over them is slack."""
    return max(0.0, math.pi * (bore_mm - peg_mm) / 2)


def taut_length_mm(pegs_mm: npt.ArrayLike, peg_mm: float, thickness_mm: float) -> float:
    """Return the length of a taut centreline round pegs at `pegs_mm` (n, 2) of diameter `peg_mm`.

    Raises:
        ValueError: there are no pegs, or a length is negative.
    """
    middles = _middles(pegs_mm)
    if peg_mm < 0 or thickness_mm < 0:
        raise ValueError("a peg's diameter and a thickness must not be negative")
    corners = middles[_hull_corners(middles)]
    sides = np.roll(corners, -1, axis=0) - corners
    return float(np.hypot(sides[:, 0], sides[:, 1]).sum()) + math.pi * (peg_mm + thickness_mm)


def stretch_over_pegs(
    pegs_mm: npt.ArrayLike,
    peg_mm: float,
    bore_mm: float,
    thickness_mm: float,
    rubber: RubberLaw | None = None,
    turns: int = 1,
) -> BandOnPegs:
    """Lay a band round pegs at `pegs_mm` (n, 2), `turns` times, and return its stretch, tension and loads.

    Raises:
        ValueError: no pegs, a length that is not positive, or no turn.
    """
    if turns < 1:
        raise ValueError(f"a band goes round at least once: {turns}")
    middles = _middles(pegs_mm)
    rest = rest_length_mm(bore_mm, thickness_mm)
    taut = turns * taut_length_mm(middles, peg_mm, thickness_mm)
    slack = taut <= rest
    stretch = max(1.0, taut / rest)
    section = math.pi * thickness_mm**2 / 4
    tension = 0.0 if slack else section * float(nominal_stress(rubber or RubberLaw(), stretch))
    load = np.zeros_like(middles)
    corners = _hull_corners(middles)
    if len(corners) > 1:
        for before, here, after in zip(np.roll(corners, 1), corners, np.roll(corners, -1), strict=True):
            for other in (before, after):
                away = middles[other] - middles[here]
                load[here] += turns * tension * away / np.hypot(*away)
    return BandOnPegs(taut, rest, stretch, slack, tension, load)


def _middles(pegs_mm: npt.ArrayLike) -> Floats:
    middles = np.asarray(pegs_mm, dtype=np.float64)
    if middles.ndim != 2 or middles.shape[1] != 2 or not len(middles):
        raise ValueError(f"pegs must be (n, 2) with n of 1 or more, found {middles.shape}")
    return middles


def _hull_corners(points: Floats) -> list[int]:
    """Return the convex hull's corners, anticlockwise (A. M. Andrew, Inf. Process. Lett. 9 (1979) 216)."""
    order = [int(i) for i in np.lexsort((points[:, 1], points[:, 0]))]
    order = [i for k, i in enumerate(order) if k == 0 or np.any(points[i] != points[order[k - 1]])]
    if len(order) < 3:
        return order

    def half(indices: list[int]) -> list[int]:
        out: list[int] = []
        for i in indices:
            while len(out) > 1:
                u, v = points[out[-1]] - points[out[-2]], points[i] - points[out[-2]]
                if u[0] * v[1] - u[1] * v[0] > 0:
                    break
                out.pop()
            out.append(i)
        return out[:-1]

    return half(order) + half(order[::-1])
