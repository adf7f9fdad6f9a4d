"""Where the columns stand, and in what order a band calls at them."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from itertools import pairwise

import numpy as np
from scipy.spatial import cKDTree

from pegwright.loom.events import Bight, Drawn, Event, Laid, Moved
from pegwright.structure.layers import Spot

HOOK, START = "hook", "start"
TAU = 2 * math.pi
ALONE_MM = 16.0  # the unit of length where there is only one holder

Group = tuple[str, list[Bight], int]  # a holder, the loops wound on it, their sign


def spots(events: Iterable[Event], position: Callable[[str], tuple[float, float]]) -> dict[str, Spot]:
    """Place every holder: pegs where they stand, free ends beyond the piece, unused hung bands far away.

    Raises:
        KeyError: a peg has no position.
    """
    names: list[str] = []
    origin: dict[str, str] = {}
    hung: list[int] = []
    for e in events:
        match e:
            case Laid():
                if e.seats[0].holder == HOOK:
                    hung.append(e.band)
                else:
                    names += [s.holder for s in e.seats]
            case Drawn() | Moved():
                names += [e.source, e.target]
                origin.setdefault(e.target, e.source)
                if isinstance(e, Drawn):
                    hung = [b for b in hung if b not in {s.band for s in e.slid}]
    found = {n: np.array(position(n), float) for n in dict.fromkeys(names) if "." not in n}
    middle = np.mean(list(found.values()), axis=0) if found else np.zeros(2)
    far = max((float(np.hypot(*(p - middle))) for p in found.values()), default=0.0)
    unit = least_gap(list(found.values()))
    angles: dict[str, float] = {}
    for name in dict.fromkeys(n for n in names if "." in n):
        end, _, number = name.rpartition(".")
        if end not in angles:
            lean = found.get(origin.get(name, ""), middle) - middle
            angle = azimuth(lean) if float(np.hypot(*lean)) > 1e-9 else 0.0
            while any(abs(turn(angle - a)) < 0.45 for a in angles.values()) and len(angles) < 12:
                angle += 0.5
            angles[end] = angle
        out = far + unit * (1.5 + int(number))
        found[name] = middle + out * np.array([math.cos(angles[end]), math.sin(angles[end])])
    for k, band in enumerate(hung):
        found[f"{HOOK}:{band}"] = middle + np.array([(k - len(hung) / 2) * unit, -far - 4 * unit])
    return found


def least_gap(found: Sequence[Spot]) -> float:
    """Return the least distance between two spots (mm).

    Raises:
        ValueError: two of them are one.
    """
    if len(found) < 2:
        return ALONE_MM
    gap = float(cKDTree(np.array(found)).query(np.array(found), k=2)[0][:, 1].min())
    if gap < 1e-3:
        raise ValueError("two pegs stand in one place")
    return gap


def groups(e: Laid) -> list[Group]:
    """Gather a band's loops by holder, as they run along it."""
    found: list[Group] = []
    for seat in e.seats:
        if found and found[-1][0] == seat.holder:
            found[-1][1].append(seat.bight)
        else:
            found.append((seat.holder, [seat.bight], seat.sign))
    return found


def ordered(
    found: list[Group], twists: Sequence[int], where: dict[str, Spot]
) -> tuple[list[Group], list[int]]:
    """Put the pegs of every untwisted part in an order whose lanes do not cross: the shortest way through.

    A part keeps the peg at which it is joined to the next, so the twists stay where they are.
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
        order += _shortest_way(part, k > 0, k < len(parts) - 1, where)
        counts += [0] * (len(part) - 1) + between[k : k + 1]
    return order, counts


def _shortest_way(part: list[Group], fix_first: bool, fix_last: bool, where: dict[str, Spot]) -> list[Group]:
    """Order the pegs of a part by two-exchange until no exchange shortens the way, ends kept where told."""

    def length(way: list[Group]) -> float:
        return sum(float(np.hypot(*(where[a[0]] - where[b[0]]))) for a, b in pairwise(way))

    way, best = list(part), length(part)
    improved = len(part) > 2
    while improved:
        improved = False
        for i in range(1 if fix_first else 0, len(way) - 1):
            for j in range(i + 1, len(way) - (1 if fix_last else 0)):
                trial = way[:i] + way[i : j + 1][::-1] + way[j + 1 :]
                if length(trial) < best - 1e-9:
                    way, best, improved = trial, length(trial), True
    return way


def lanes_meet(lines: Sequence[Sequence[Spot]], radius_mm: float, gap_mm: float) -> bool:
    """Say whether lanes of one band come too near each other outside the columns at their ends."""
    dense = []
    for line in lines:
        ends = trimmed(line, radius_mm)
        points = [a + (b - a) * u for a, b in pairwise(ends) for u in np.linspace(0, 1, 40)]
        dense.append(np.array(points))
    return any(
        float(np.hypot(*(dense[i][:, None, :] - dense[j][None, :, :]).reshape(-1, 2).T).min()) < gap_mm
        for i in range(len(dense))
        for j in range(i)
    )


def trimmed(line: Sequence[Spot], radius_mm: float) -> list[Spot]:
    """Cut a line back at both ends to the edges of the columns there."""
    ends = []
    for a, b in ((line[0], line[1]), (line[-1], line[-2])):
        ends.append(a + (b - a) * min(0.5, radius_mm / float(np.hypot(*(b - a)))))
    return [ends[0], *line[1:-1], ends[1]]


def azimuth(v: Spot) -> float:
    """Return the direction of a vector in plan (radians)."""
    return math.atan2(float(v[1]), float(v[0]))


def turn(angle: float) -> float:
    """Return the angle brought into −π … π."""
    return (angle + math.pi) % TAU - math.pi


def sweep(a: float, b: float, sign: int) -> float:
    """Return how far it is round from azimuth a to azimuth b, anticlockwise for sign +."""
    return (sign * (b - a)) % TAU


def segments_cross(a: Spot, b: Spot, c: Spot, d: Spot) -> bool:
    """Say whether the segments ab and cd cross."""

    def side(p: Spot, q: Spot, r: Spot) -> float:
        return float((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]))

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0
