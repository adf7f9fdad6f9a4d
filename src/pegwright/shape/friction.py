"""Friction after a dressed piece is let go: touching strands stick, and slip only under force.

Where strands touch at the end of the dressing, the contact points of both are remembered. A later slip u of
one over the other, in the plane of contact, costs μ N f₀(|u|), f₀ the smoothed Coulomb law of M. Li et al.,
Incremental potential contact, ACM Trans. Graph. 39 (2020) 49, §5: its slope goes from 0 to 1 over the first
`_STICK_MM` and then stays, so a pair that slips is held back by μ N. N is the contact force at the end of
the dressing. So friction acts only on the path that a real hand has made, and needs no earlier history.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from pegwright.shape.contact import closest_points, contact_smoothing, hertz_stiffness, press_energy
from pegwright.shape.elements import Elements
from pegwright.shape.jit import kernel
from pegwright.shape.rods import Floats, Ints, Rods

__all__ = [
    "StickingContacts",
    "add_friction_derivatives",
    "find_sticking_contacts",
    "friction_energy",
    "no_sticking_contacts",
]

_STICK_MM = 0.05  # how far a contact shears before it slips


class StickingContacts(NamedTuple):
    """Contacts that stick: pairs of edges, the weights of their four ends, tangents, places, μN."""

    pairs: Ints  # (m, 2)
    weight: Floats  # (m, 4)
    tangent: Floats  # (m, 2, 3)
    home_mm: Floats  # (m, 2) the slip's zero
    limit_n: Floats  # (m,)


def no_sticking_contacts() -> StickingContacts:
    """Return an empty set of contacts."""
    return StickingContacts(
        np.zeros((0, 2), np.int64), np.zeros((0, 4)), np.zeros((0, 2, 3)), np.zeros((0, 2)), np.zeros(0)
    )


def find_sticking_contacts(
    x: Floats, rods: Rods, pairs: Ints, radius: Floats, least_mm: float, friction: float
) -> StickingContacts:
    """Return where the listed pairs (m, 2) touch at x; `radius` (n,) as in `contact`, `friction` is μ."""
    m = len(pairs)
    made = StickingContacts(pairs, np.zeros((m, 4)), np.zeros((m, 2, 3)), np.zeros((m, 2)), np.zeros(m))
    _fill_sticking_contacts(x, rods, pairs, radius, least_mm, friction, made)
    keep = made.limit_n > 0
    return StickingContacts._make(column[keep] for column in made)


@kernel
def _fill_sticking_contacts(
    x: Floats,
    rods: Rods,
    pairs: Ints,
    radius: Floats,
    least_mm: float,
    friction: float,
    made: StickingContacts,
) -> None:
    for k in range(pairs.shape[0]):
        a, b = pairs[k, 0], pairs[k, 1]
        full = radius[a] + radius[b]
        soft, wall = contact_smoothing(rods.radius_mm[a], rods.radius_mm[b], least_mm)
        s, t, squared = closest_points(x, a, rods.next[a], b, rods.next[b], soft)
        if squared >= full * full:
            continue
        d = math.sqrt(squared)
        firm = hertz_stiffness(rods.plane_mpa[a], rods.plane_mpa[b], rods.radius_mm[a], rods.radius_mm[b])
        made.limit_n[k] = friction * press_energy(d, full, wall, firm)[1]
        w = made.weight[k]
        w[0], w[1], w[2], w[3] = 1.0 - s, s, t - 1.0, -t
        u, v = made.tangent[k, 0], made.tangent[k, 1]
        size = 0.0
        for i in range(3):
            v[i] = w[0] * x[a, i] + w[1] * x[rods.next[a], i] + w[2] * x[b, i] + w[3] * x[rods.next[b], i]
            size += v[i] * v[i]
            u[i] = x[rods.next[a], i] - x[a, i]
        # The first tangent lies along edge a as far as the plane allows, the second across.
        along = (u[0] * v[0] + u[1] * v[1] + u[2] * v[2]) / size
        long = 0.0
        for i in range(3):
            u[i] -= along * v[i]
            long += u[i] * u[i]
        if long < 1e-18:
            made.limit_n[k] = 0.0
            continue
        root, long = math.sqrt(size), math.sqrt(long)
        nx, ny, nz = v[0] / root, v[1] / root, v[2] / root
        for i in range(3):
            u[i] /= long
        v[0], v[1], v[2] = ny * u[2] - nz * u[1], nz * u[0] - nx * u[2], nx * u[1] - ny * u[0]
        for axis in range(2):
            made.home_mm[k, axis] = _slip_along(x, rods.next, a, b, w, made.tangent[k, axis])


@kernel
def _slip_along(x: Floats, after: Ints, a: int, b: int, w: Floats, tangent: Floats) -> float:
    total = 0.0
    for i in range(3):
        total += tangent[i] * (
            w[0] * x[a, i] + w[1] * x[after[a], i] + w[2] * x[b, i] + w[3] * x[after[b], i]
        )
    return total


@kernel
def _coulomb(slip: float) -> tuple[float, float, float]:
    """Return f₀ (0 at no slip), f₁/|u| and f₁′, in mm, 1/mm and 1/mm."""
    e = _STICK_MM
    if slip < e:
        return slip * slip / e - slip**3 / (3.0 * e * e), (2.0 - slip / e) / e, 2.0 * (1.0 - slip / e) / e
    return slip - e / 3.0, 1.0 / slip, 0.0


@kernel
def friction_energy(x: Floats, after: Ints, contacts: StickingContacts) -> float:
    """Return the work in N mm done against friction."""
    total = 0.0
    for k in range(contacts.pairs.shape[0]):
        a, b = contacts.pairs[k, 0], contacts.pairs[k, 1]
        u = _slip_along(x, after, a, b, contacts.weight[k], contacts.tangent[k, 0]) - contacts.home_mm[k, 0]
        v = _slip_along(x, after, a, b, contacts.weight[k], contacts.tangent[k, 1]) - contacts.home_mm[k, 1]
        total += contacts.limit_n[k] * _coulomb(math.sqrt(u * u + v * v))[0]
    return total


@kernel
def add_friction_derivatives(
    x: Floats,
    after: Ints,
    contacts: StickingContacts,
    gradient: Floats,
    elements: Elements,
    first: int,
) -> float:
    """Return the work (N mm), add its forces to `gradient` (n, 3) in N, and fill an element for each pair.

    `after` (n,) is `Rods.next`; elements are filled from number `first` on.
    """
    corners, stiffness = elements.corners, elements.stiffness
    total = 0.0
    pull = np.zeros(2)
    hold = np.zeros((2, 2))
    for k in range(contacts.pairs.shape[0]):
        a, b = contacts.pairs[k, 0], contacts.pairs[k, 1]
        w, tangent, limit = contacts.weight[k], contacts.tangent[k], contacts.limit_n[k]
        u = _slip_along(x, after, a, b, w, tangent[0]) - contacts.home_mm[k, 0]
        v = _slip_along(x, after, a, b, w, tangent[1]) - contacts.home_mm[k, 1]
        size = math.sqrt(u * u + v * v)
        work, across, along = _coulomb(size)
        total += limit * work
        pull[0], pull[1] = limit * across * u, limit * across * v
        one, two = (u / size, v / size) if size > 0.0 else (1.0, 0.0)
        hold[0, 0] = limit * (across + (along - across) * one * one)
        hold[0, 1] = hold[1, 0] = limit * (along - across) * one * two
        hold[1, 1] = limit * (across + (along - across) * two * two)
        element = first + k
        corners[element, 0], corners[element, 1] = a, after[a]
        corners[element, 2], corners[element, 3] = b, after[b]
        for c in range(4):
            for i in range(3):
                gradient[corners[element, c], i] += w[c] * (pull[0] * tangent[0, i] + pull[1] * tangent[1, i])
                for e in range(4):
                    for j in range(3):
                        value = 0.0
                        for p in range(2):
                            for q in range(2):
                                value += hold[p, q] * tangent[p, i] * tangent[q, j]
                        stiffness[element, c, e, i, j] = w[c] * w[e] * value
    return total
