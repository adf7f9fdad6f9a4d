"""Find what still hangs together when a piece falls apart under the tug.

Curves are grouped by axis-aligned boxes: groups with overlapping boxes are merged until none overlap. A group
then lies in a convex body that no other curve enters, so it is split off whatever its threading: a held band
is never taken for a loose one. (A free band that still lies among the others is not found.)
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from pegwright.shape.rods import Floats

__all__ = ["circle", "lay_beside", "split_groups"]

_AISLE_MM = 4.0  # gap between a piece and the rings beside it


def split_groups(curves: Sequence[Floats], margin_mm: float = 0.0) -> list[list[int]]:
    """Return groups of curves, each (n, 3) in mm, whose boxes are more than `margin_mm` apart.

    The largest comes first; of equal ones, the one with the earliest curve.
    """
    half = margin_mm / 2
    groups = [(x.min(axis=0) - half, x.max(axis=0) + half, [i]) for i, x in enumerate(curves)]
    count = 0
    while count != len(groups):
        count = len(groups)
        merged: list[tuple[Floats, Floats, list[int]]] = []
        for group in groups:
            together = [group, *(other for other in merged if _overlap(group, other))]
            low = np.min([each[0] for each in together], axis=0)
            high = np.max([each[1] for each in together], axis=0)
            members = [i for each in together for i in each[2]]
            merged = [*(other for other in merged if not _overlap(group, other)), (low, high, members)]
        groups = merged
    return sorted((sorted(members) for *_, members in groups), key=lambda group: (-len(group), group))


def _overlap(one: tuple[Floats, Floats, list[int]], two: tuple[Floats, Floats, list[int]]) -> bool:
    return bool(np.all(one[0] <= two[1]) and np.all(two[0] <= one[1]))


def circle(length_mm: float, points: int) -> Floats:
    """Return a flat circle (points, 3) of the given length about the origin."""
    turn = 2 * np.pi * np.arange(points) / points
    return length_mm / (2 * math.pi) * np.column_stack([np.cos(turn), np.sin(turn), 0 * turn])


def lay_beside(low: Floats, high: Floats, blocks: Sequence[Sequence[Floats]]) -> list[list[Floats]]:
    """Return blocks of curves moved to lie in rows beside a piece whose box is `low` to `high` (3,).

    Rows run along x, from the piece's left end, and are about as long as the piece, or square without one.
    """
    every = [np.concatenate(block) for block in blocks]
    wide, deep = np.max([np.ptp(x, axis=0)[:2] for x in every], axis=0) + _AISLE_MM
    row = max(float(high[0] - low[0]), wide * math.ceil(math.sqrt(len(blocks))))
    across = max(int(row / wide), 1)
    out = []
    for k, (block, x) in enumerate(zip(blocks, every, strict=True)):
        place = [
            low[0] + wide * (k % across + 0.5),
            low[1] - deep * (k // across + 0.5),
            0.5 * (low[2] + high[2]),
        ]
        shift = np.array(place) - 0.5 * (x.min(axis=0) + x.max(axis=0))
        out.append([curve + shift for curve in block])
    return out
