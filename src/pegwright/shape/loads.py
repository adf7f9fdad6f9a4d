"""How a piece is held and pulled while it comes to rest, and the resulting forces."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from pegwright.shape.elements import Elements
from pegwright.shape.rods import Floats, Ints, Rods

__all__ = ["Dressing", "LoadArrays", "Pull", "Supports", "Tie", "gather_loads", "wrap_round_wrist"]

_HOLD_N_PER_MM = 5.0  # a wrist and a clip give less than a tenth of a millimetre under a band's pull
BandPoint = tuple[int, int]  # (band, point on it), both from 0


class Pull(NamedTuple):
    """A steady force on one point of a band."""

    at: BandPoint
    force_n: tuple[float, float, float]


class Tie(NamedTuple):
    """A clip or knot that keeps two points within `length_mm` of each other; it never pushes."""

    first: BandPoint
    second: BandPoint
    length_mm: float


class Supports(NamedTuple):
    """What stays in place: held points, lasting pulls, ties, and the wrist that the piece closes round.

    The wrist is a cylinder about the y axis; `wrap_round_wrist` bends a flat piece round it.
    """

    fixed: tuple[BandPoint, ...] = ()
    pulls: tuple[Pull, ...] = ()
    ties: tuple[Tie, ...] = ()
    girth_mm: float | None = None


class Dressing(NamedTuple):
    """What is let go once the piece has settled: a gentle tug, and a hand laid flat on it.

    `press_n_per_mm` draws every point towards the piece's middle plane (z constant) by that much per mm.
    `friction` is μ of rubber on rubber, which keeps strands from slipping back when they are let go.
    """

    pulls: tuple[Pull, ...] = ()
    press_n_per_mm: float = 0.0
    friction: float = 0.0


class LoadArrays(NamedTuple):
    """Supports and dressing as arrays for the kernels."""

    force_n: Floats  # (n, 3)
    press_n_per_mm: float
    wrist_mm: float  # radius of the cylinder; 0 for none
    stiffness: float  # of the wrist and of ties, N/mm
    ties: Ints  # (m, 2) vertices
    tie_mm: Floats  # (m,)


def gather_loads(rods: Rods, hold: Supports, dressing: Dressing | None) -> LoadArrays:
    """Gather the supports, and the dressing while it lasts, into arrays.

    Raises:
        ValueError: a point does not exist, or a girth, tie length, press or friction is negative.
    """
    press = dressing.press_n_per_mm if dressing else 0.0
    girth = hold.girth_mm or 0.0
    rubs = dressing.friction if dressing else 0.0
    if min(press, girth, rubs) < 0 or any(t.length_mm < 0 for t in hold.ties):
        raise ValueError("a girth, a tie's length, a press and friction must not be negative")
    force = np.zeros((len(rods.band), 3))
    for pull in (*hold.pulls, *(dressing.pulls if dressing else ())):
        force[vertex_number(rods, pull.at)] += pull.force_n
    ties = [[vertex_number(rods, t.first), vertex_number(rods, t.second)] for t in hold.ties]
    return LoadArrays(
        force,
        press,
        girth / (2 * math.pi),
        _HOLD_N_PER_MM,
        np.array(ties, dtype=np.int64).reshape(-1, 2),
        np.array([t.length_mm for t in hold.ties], dtype=np.float64),
    )


def vertex_number(rods: Rods, point: BandPoint) -> int:
    """Return the vertex number of (band, point).

    Raises:
        ValueError: there is no such point.
    """
    band, index = point
    if not (0 <= band < len(rods.start) - 1 and 0 <= index < rods.start[band + 1] - rods.start[band]):
        raise ValueError(f"there is no point {index} on band {band}")
    return int(rods.start[band]) + index


def wrap_round_wrist(curves: Sequence[Floats], girth_mm: float, seam_mm: float = 0.0) -> list[Floats]:
    """Bend flat curves, each (n, 3) in mm, round a wrist: x runs round it, y along the arm, z outward.

    The piece's mid-height keeps its x length on a circle that closes it end to end. Its lowest point lies on
    the wrist if possible; a piece that is too short is stretched round it. The ends stay `seam_mm` apart.

    Raises:
        ValueError: the girth is not positive, or there are no curves.
    """
    if not curves or girth_mm <= 0:
        raise ValueError("wrapping needs curves and a positive girth")
    every = np.concatenate([np.asarray(c, dtype=np.float64) for c in curves])
    left, length = float(every[:, 0].min()), float(np.ptp(every[:, 0])) + seam_mm
    bottom = float(every[:, 2].min())
    radius = girth_mm / (2 * math.pi)
    turn = 2 * math.pi / length if length > 0 else 0.0
    out = []
    for curve in curves:
        c = np.asarray(curve, dtype=np.float64)
        angle, rho = (c[:, 0] - left) * turn, radius + 0.75 + c[:, 2] - bottom
        out.append(np.column_stack([rho * np.sin(angle), c[:, 1], rho * np.cos(angle)]))
    return out


def load_energy(x: Floats, rods: Rods, load: LoadArrays) -> float:
    """Return the energy of pulls, press, wrist and ties in N mm (a dead pull's is −f·x)."""
    total = -float((load.force_n * x).sum())
    if load.press_n_per_mm > 0:
        total += 0.5 * load.press_n_per_mm * float(((x[:, 2] - x[:, 2].mean()) ** 2).sum())
    deep, _, _ = _vertices_in_wrist(x, rods, load)
    total += 0.5 * load.stiffness * float((deep**2).sum())
    for (a, b), slack in zip(load.ties, load.tie_mm, strict=True):
        total += 0.5 * load.stiffness * max(float(np.linalg.norm(x[a] - x[b])) - slack, 0.0) ** 2
    return total


def add_load_derivatives(
    x: Floats, rods: Rods, load: LoadArrays, gradient: Floats, diag: Floats, elements: Elements
) -> int:
    """Add the forces of `load_energy` to `gradient` (N) and their stiffness to `diag` (n, 3, 3).

    Each taut tie fills one of `elements`, from the first on. Returns their number.
    """
    gradient -= load.force_n
    if load.press_n_per_mm > 0:
        gradient[:, 2] += load.press_n_per_mm * (x[:, 2] - x[:, 2].mean())
        diag[:, 2, 2] += load.press_n_per_mm
    deep, inside, out = _vertices_in_wrist(x, rods, load)
    gradient[inside] -= load.stiffness * deep[:, None] * out
    diag[inside] += load.stiffness * out[:, :, None] * out[:, None, :]
    count = 0
    for (a, b), slack in zip(load.ties, load.tie_mm, strict=True):
        length = float(np.linalg.norm(x[a] - x[b]))
        if length <= slack or length == 0.0:
            continue
        along = (x[a] - x[b]) / length
        force = load.stiffness * (length - slack)
        gradient[a] += force * along
        gradient[b] -= force * along
        across = force / length
        block = (load.stiffness - across) * np.outer(along, along) + across * np.eye(3)
        elements.corners[count] = a, b, a, b  # a tie has two vertices: the second pair is unused
        stiffness = elements.stiffness[count]
        stiffness[:] = 0.0
        stiffness[0, 0] = stiffness[1, 1] = block
        stiffness[0, 1] = stiffness[1, 0] = -block
        count += 1
    return count


def _vertices_in_wrist(x: Floats, rods: Rods, load: LoadArrays) -> tuple[Floats, Ints, Floats]:
    """Return depth in mm (m,), vertex (m,) and outward unit normal (m, 3) where strands are in the wrist."""
    if load.wrist_mm == 0.0:
        return np.zeros(0), np.zeros(0, np.int64), np.zeros((0, 3))
    rho = np.hypot(x[:, 0], x[:, 2])
    inside = np.flatnonzero((rho > 0) & (rho < load.wrist_mm + rods.radius_mm))
    out = x[inside] * np.array([1.0, 0.0, 1.0]) / rho[inside, None]
    return (load.wrist_mm + rods.radius_mm - rho)[inside], inside, out
