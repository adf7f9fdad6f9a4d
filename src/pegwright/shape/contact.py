"""Contact of bands: soft as rubber, with a barrier that no step can cross.

Two edges a, b whose distance d is less than D = r_a λ_a^(−½) + r_b λ_b^(−½) (rubber keeps its volume, so a
stretched strand is thinner) repel with the energy

    b = (8/15) E* √R g^(5/2) / (1 − g²/G²),   g = D − d,  G = D − d_min,

the contact of crossed round bodies by H. Hertz (J. reine angew. Math. 92 (1882) 156; K. L. Johnson, Contact
Mechanics, 1985, §4.2; both from memory) with 1/E* = Σ(1 − ν²)/E, ν = ½, times a barrier that is infinite
before the centrelines meet, after M. Li et al., Incremental potential contact, ACM Trans.
Graph. 39 (2020) 49. The power 5/2 makes the stiffness continuous where strands first touch, which halved
the number of Newton steps against g². D moves with the stretch inside the energy, so the forces are exact
derivatives; the squeeze that thins a strand also pulls it longer, as it does in rubber.

Parallel strands are the normal case here, and their closest points jump. So d² is the least value over (s,
t) of |p(s) − q(t)|² + κ[(s − ½)² + (t − ½)²]: strictly convex, hence one minimiser, and by the envelope
theorem a continuous derivative. κ = 0.03 (r_a + r_b)² exceeds the true distance by less than 1 % at
contact, and d_min stands so much higher that the true distance keeps to its floor.
"""

from __future__ import annotations

import math

import numpy as np

from pegwright.shape.elements import Elements
from pegwright.shape.jit import kernel
from pegwright.shape.rods import Floats, Ints, Rods

__all__ = ["add_contact_derivatives", "contact_energy", "distance"]


@kernel
def closest_points(x: Floats, a: int, a1: int, b: int, b1: int, soft: float) -> tuple[float, float, float]:
    """Return the minimiser (s, t) on edges a→a1, b→b1 and the least squared distance.

    The distance is smoothed by κ = `soft` (mm²)."""
    ux, uy, uz = x[a1, 0] - x[a, 0], x[a1, 1] - x[a, 1], x[a1, 2] - x[a, 2]
    vx, vy, vz = x[b1, 0] - x[b, 0], x[b1, 1] - x[b, 1], x[b1, 2] - x[b, 2]
    wx, wy, wz = x[a, 0] - x[b, 0], x[a, 1] - x[b, 1], x[a, 2] - x[b, 2]
    uv = ux * vx + uy * vy + uz * vz
    # Q(s, t) = A s² + C t² − 2 uv s t + 2 D s − 2 E t + const, on the unit square.
    big_a = ux * ux + uy * uy + uz * uz + soft
    big_c = vx * vx + vy * vy + vz * vz + soft
    big_d = ux * wx + uy * wy + uz * wz - 0.5 * soft
    big_e = vx * wx + vy * wy + vz * wz + 0.5 * soft
    det = big_a * big_c - uv * uv
    s = 0.5
    if det > 1e-14 * big_a * big_c:
        s = min(max((uv * big_e - big_d * big_c) / det, 0.0), 1.0)
    # Minimise over the strip 0 ≤ s ≤ 1; if its t leaves the square, the minimum is on that side.
    t = (uv * s + big_e) / big_c
    if t < 0.0 or t > 1.0:
        t = 0.0 if t < 0.0 else 1.0
        s = min(max((uv * t - big_d) / big_a, 0.0), 1.0)
    dx, dy, dz = wx + s * ux - t * vx, wy + s * uy - t * vy, wz + s * uz - t * vz
    squared = dx * dx + dy * dy + dz * dz + soft * ((s - 0.5) ** 2 + (t - 0.5) ** 2)
    return s, t, squared


@kernel
def contact_smoothing(one_mm: float, two_mm: float, least_mm: float) -> tuple[float, float]:
    """Return κ for two radii, and d_min such that the true distance stays above `least_mm`."""
    soft = min(0.03 * (one_mm + two_mm) ** 2, least_mm * least_mm)
    return soft, math.sqrt(least_mm * least_mm + 0.5 * soft)


@kernel
def distance(x: Floats, rods: Rods, a: int, b: int) -> float:
    """Return the true distance in mm between edges a and b."""
    return math.sqrt(closest_points(x, a, rods.next[a], b, rods.next[b], 1e-12)[2])


@kernel
def _edge_length(x: Floats, a: int, b: int) -> float:
    return math.sqrt((x[b, 0] - x[a, 0]) ** 2 + (x[b, 1] - x[a, 1]) ** 2 + (x[b, 2] - x[a, 2]) ** 2)


@kernel
def press_energy(
    gap: float, full: float, least_mm: float, stiffness: float
) -> tuple[float, float, float, float]:
    """Return the energy b, ∂b/∂g, ∂b/∂D and ∂²b/∂g² at distance `gap` under the touching distance `full`."""
    g, room = full - gap, full - least_mm
    q = (g / room) ** 2
    one = 1.0 / (1.0 - q)
    root = math.sqrt(g)
    energy = 0.4 * stiffness * g * g * root  # Hertz
    force, curve = stiffness * g * root, 1.5 * stiffness * root
    wall, steep = 2.0 * g / room**2 * one * one, 2.0 / room**2 * (1.0 + 3.0 * q) * one**3
    by_gap = force * one + energy * wall
    by_full = by_gap - energy * 2.0 * q / room * one * one  # the barrier moves with D too
    return energy * one, by_gap, by_full, curve * one + 2.0 * force * wall + energy * steep


@kernel
def hertz_stiffness(one_mpa: float, two_mpa: float, one_mm: float, two_mm: float) -> float:
    return 4.0 / 3.0 * one_mpa * two_mpa / (one_mpa + two_mpa) * math.sqrt(0.5 * (one_mm + two_mm))


@kernel
def fill_thinned_radii(x: Floats, rods: Rods, grown: float, radius: Floats) -> None:
    """Fill the radius (mm) of every edge as stretched now; `grown` scales all (1 = true thickness)."""
    for v in range(x.shape[0]):
        w = rods.next[v]
        if w >= 0:
            radius[v] = grown * rods.radius_mm[v] * math.sqrt(rods.rest_mm[v] / _edge_length(x, v, w))


@kernel
def contact_energy(
    x: Floats, rods: Rods, pairs: Ints, grown: float, least_mm: float, radius: Floats
) -> float:
    """Return the energy (N mm) of edge pairs (m, 2); infinite if a pair is nearer than `least_mm`."""
    fill_thinned_radii(x, rods, grown, radius)
    firm = rods.plane_mpa
    total = 0.0
    for k in range(pairs.shape[0]):
        a, b = pairs[k, 0], pairs[k, 1]
        full = radius[a] + radius[b]
        soft, wall = contact_smoothing(rods.radius_mm[a], rods.radius_mm[b], least_mm)
        squared = closest_points(x, a, rods.next[a], b, rods.next[b], soft)[2]
        if squared >= full * full:
            continue
        d = math.sqrt(squared)
        if d <= wall:
            return np.inf
        total += press_energy(
            d, full, wall, hertz_stiffness(firm[a], firm[b], rods.radius_mm[a], rods.radius_mm[b])
        )[0]
    return total


@kernel
def add_contact_derivatives(
    x: Floats,
    rods: Rods,
    pairs: Ints,
    grown: float,
    least_mm: float,
    true: float,
    radius: Floats,
    gradient: Floats,
    elements: Elements,
    first: int,
) -> tuple[float, int]:
    """Return the contact energy (N mm) and how many pairs touch; add their forces to `gradient` (N).

    `pairs` (m, 2) are edges, `grown` and `radius` as in `fill_thinned_radii`. From number `first` on, each
    touching pair fills one of `elements`. With `true` = 0 its stiffness is the part b″∇g∇gᵀ, never negative;
    with 1 it is the Hessian without the curvature of D; values between interpolate.
    """
    fill_thinned_radii(x, rods, grown, radius)
    corners, stiffness = elements.corners, elements.stiffness
    firm = rods.plane_mpa
    total = 0.0
    count = first
    away = np.zeros((4, 3))  # ∇d
    press = np.zeros((4, 3))  # ∇g
    slide = np.zeros((2, 4, 3))  # derivative of ½∂Q/∂s and ½∂Q/∂t
    weight = np.zeros(4)
    for k in range(pairs.shape[0]):
        a, b = pairs[k, 0], pairs[k, 1]
        a1, b1 = rods.next[a], rods.next[b]
        full = radius[a] + radius[b]
        soft, wall = contact_smoothing(rods.radius_mm[a], rods.radius_mm[b], least_mm)
        s, t, squared = closest_points(x, a, a1, b, b1, soft)
        if squared >= full * full:
            continue
        d = math.sqrt(squared)
        energy, force, thicker, curve = press_energy(
            d, full, wall, hertz_stiffness(firm[a], firm[b], rods.radius_mm[a], rods.radius_mm[b])
        )
        total += energy
        length_a, length_b = _edge_length(x, a, a1), _edge_length(x, b, b1)
        # dD/dlength of each edge: r λ^(−½) changes by −½ radius/length.
        thin_a, thin_b = -0.5 * radius[a] / (length_a * length_a), -0.5 * radius[b] / (length_b * length_b)
        weight[0], weight[1], weight[2], weight[3] = 1.0 - s, s, t - 1.0, -t
        corners[count, 0], corners[count, 1], corners[count, 2], corners[count, 3] = a, a1, b, b1
        uv = 0.0
        for i in range(3):
            u, v = x[a1, i] - x[a, i], x[b1, i] - x[b, i]
            p = x[a, i] + s * u - x[b, i] - t * v
            uv += u * v
            for c in range(4):
                away[c, i] = weight[c] * p / d
                slide[0, c, i] = weight[c] * u
                slide[1, c, i] = -weight[c] * v
                press[c, i] = 0.0
            slide[0, 0, i] -= p
            slide[0, 1, i] += p
            slide[1, 2, i] += p
            slide[1, 3, i] -= p
            press[0, i], press[1, i] = -thin_a * u, thin_a * u
            press[2, i], press[3, i] = -thin_b * v, thin_b * v
            for c in range(4):
                gradient[corners[count, c], i] += thicker * press[c, i] - force * away[c, i]
                press[c, i] -= away[c, i]
        # The response of s and t: the inverse of ½∂²Q/∂(s, t)², without those at an end of their edge.
        ss, tt = length_a**2 + soft, length_b**2 + soft
        m00 = m01 = m11 = 0.0
        if 0.0 < s < 1.0 and 0.0 < t < 1.0:
            det = ss * tt - uv * uv
            m00, m01, m11 = tt / det, uv / det, ss / det
        elif 0.0 < s < 1.0:
            m00 = 1.0 / ss
        elif 0.0 < t < 1.0:
            m11 = 1.0 / tt
        bent = true * force / d
        for c in range(4):
            for e in range(4):
                for i in range(3):
                    p0 = m00 * slide[0, c, i] + m01 * slide[1, c, i]
                    p1 = m01 * slide[0, c, i] + m11 * slide[1, c, i]
                    for j in range(3):
                        value = away[c, i] * away[e, j] + p0 * slide[0, e, j] + p1 * slide[1, e, j]
                        if i == j:
                            value -= weight[c] * weight[e]
                        stiffness[count, c, e, i, j] = curve * press[c, i] * press[e, j] + bent * value
        count += 1
    return total, count - first
