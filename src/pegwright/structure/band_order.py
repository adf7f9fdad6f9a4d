"""In what order a band calls at its pegs, so that its lanes do not cross."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from pegwright.loom import Bight, Laid
from pegwright.structure.plane_geometry import PlanVector, trim_ends

Group = tuple[str, list[Bight], int]
"""A holder, the loops of one band wound on it, and their sign."""


def group_seats(e: Laid) -> list[Group]:
    """Group a band's loops by holder, in their order along the band."""
    found: list[Group] = []
    for seat in e.seats:
        if found and found[-1][0] == seat.holder:
            found[-1][1].append(seat.bight)
        else:
            found.append((seat.holder, [seat.bight], seat.sign))
    return found


def order_stops(
    found: list[Group], twists: Sequence[int], where: dict[str, PlanVector]
) -> tuple[list[Group], list[int]]:
    """Order the pegs of every untwisted part so that its lanes do not cross: the shortest path through them.

    A part keeps the peg that joins it to the next part, so the twists stay where they are. Returns the
    groups in order and the half-twists between them.
    """
    parts: list[list[Group]] = [[found[0]]]
    between: list[int] = []
    for group, twist in zip(found[1:], twists, strict=True):
        if twist:
            between.append(twist)
            parts.append([])
        parts[-1].append(group)
    order: list[Group] = []
    counts: list[int] = []
    for k, part in enumerate(parts):
        order += _shortest_path(part, k > 0, k < len(parts) - 1, where)
        counts += [0] * (len(part) - 1) + between[k : k + 1]
    return order, counts


def _shortest_path(
    part: list[Group], fix_first: bool, fix_last: bool, where: dict[str, PlanVector]
) -> list[Group]:
    """Order the pegs of a part by 2-opt until no exchange shortens the path; fixed ends stay."""

    def length(path: list[Group]) -> float:
        return sum(float(np.hypot(*(where[a[0]] - where[b[0]]))) for a, b in pairwise(path))

    path, best = list(part), length(part)
    improved = len(part) > 2
    while improved:
        improved = False
        for i in range(1 if fix_first else 0, len(path) - 1):
            for j in range(i + 1, len(path) - (1 if fix_last else 0)):
                trial = path[:i] + path[i : j + 1][::-1] + path[j + 1 :]
                if length(trial) < best - 1e-9:
                    path, best, improved = trial, length(trial), True
    return path


def lanes_meet(lines: Sequence[Sequence[PlanVector]], radius_mm: float, gap_mm: float) -> bool:
    """Say whether lanes of one band come within `gap_mm` of each other outside the columns at their ends."""
    dense = []
    for line in lines:
        ends = trim_ends(line, radius_mm)
        points = [a + (b - a) * u for a, b in pairwise(ends) for u in np.linspace(0, 1, 40)]
        dense.append(np.array(points))
    return any(
        float(np.hypot(*(dense[i][:, None, :] - dense[j][None, :, :]).reshape(-1, 2).T).min()) < gap_mm
        for i in range(len(dense))
        for j in range(i)
    )
