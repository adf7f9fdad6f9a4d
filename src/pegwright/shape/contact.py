"""Bands pressing on bands: a soft barrier between thinning round strands that no step can cross.

Two edges a, b whose distance d is less than D = r_a λ_a^(−½) + r_b λ_b^(−½) (rubber keeps its volume, so a stretched
strand is thinner) repel with

    b = ½ k g² / (1 − g²/G²),   g = D − d,  G = D − d_min:

soft as rubber is soft, and without bound before the centrelines could meet, in the spirit of the incremental
potential contact of M. Li et al., ACM Trans. Graph. 39 (2020) 49. D moves with the stretch inside the energy, so
the forces are exact derivatives; the squeeze that thins a strand also pulls it longer, as it does in rubber.

Parallel strands are the normal case here, and their closest points jump. So d² is the least value over (s, t) of
|p(s) − q(t)|² + μ[(s − ½)²|u|² + (t − ½)²|v|²]: strictly convex, hence one minimiser, and by the envelope theorem a
continuous derivative. It exceeds the true distance by less than 1 % at contact.
"""

from __future__ import annotations

import math

import numpy as np
from numba import njit

from pegwright.shape.rods import Floats, Ints, Rods

__all__ = ["contact", "contact_energy", "distance"]

SMOOTHING = 0.05  # μ


@njit(cache=True)
def _closest(x: Floats, a: int, a1: int, b: int, b1: int, mu: float) -> tuple[float, float, float]:
    """Minimiser (s, t) on edges a→a1, b→b1 and the least squared distance, smoothed by `mu`."""
    ux, uy, uz = x[a1, 0] - x[a, 0], x[a1, 1] - x[a, 1], x[a1, 2] - x[a, 2]
    vx, vy, vz = x[b1, 0] - x[b, 0], x[b1, 1] - x[b, 1], x[b1, 2] - x[b, 2]
    wx, wy, wz = x[a, 0] - x[b, 0], x[a, 1] - x[b, 1], x[a, 2] - x[b, 2]
    uu = ux * ux + uy * uy + uz * uz
    vv = vx * vx + vy * vy + vz * vz
    uv = ux * vx + uy * vy + uz * vz
    uw = ux * wx + uy * wy + uz * wz
    vw = vx * wx + vy * wy + vz * wz
    # Q(s, t) = A s² + C t² − 2 uv s t + 2 D s − 2 E t + const, on the unit square.
    big_a, big_c = uu * (1.0 + mu), vv * (1.0 + mu)
    big_d, big_e = uw - 0.5 * mu * uu, vw + 0.5 * mu * vv
    det = big_a * big_c - uv * uv
    s = 0.5
    if det > 1e-14 * big_a * big_c:
        s = min(max((uv * big_e - big_d * big_c) / det, 0.0), 1.0)
    # The least over the strip 0 ≤ s ≤ 1 is found; where its t leaves the square, the least lies on that side.
    t = (uv * s + big_e) / big_c
    if t < 0.0 or t > 1.0:
        t = 0.0 if t < 0.0 else 1.0
        s = min(max((uv * t - big_d) / big_a, 0.0), 1.0)
    dx, dy, dz = wx + s * ux - t * vx, wy + s * uy - t * vy, wz + s * uz - t * vz
    squared = dx * dx + dy * dy + dz * dz + mu * ((s - 0.5) ** 2 * uu + (t - 0.5) ** 2 * vv)
    return s, t, squared


@njit(cache=True)
def distance(x: Floats, rods: Rods, a: int, b: int) -> float:
    """Return the true distance in mm between edges a and b."""
    return math.sqrt(_closest(x, a, rods.next[a], b, rods.next[b], 1e-12)[2])


@njit(cache=True)
def _edge_length(x: Floats, a: int, b: int) -> float:
    return math.sqrt((x[b, 0] - x[a, 0]) ** 2 + (x[b, 1] - x[a, 1]) ** 2 + (x[b, 2] - x[a, 2]) ** 2)


@njit(cache=True)
def thin_radii(x: Floats, rods: Rods, grown: float, radius: Floats) -> None:
    """Fill the radius (mm) of every edge as stretched now; `grown` scales all (1 = true thickness)."""
    for v in range(x.shape[0]):
        w = rods.next[v]
        if w >= 0:
            radius[v] = grown * rods.radius_mm[v] * math.sqrt(rods.rest_mm[v] / _edge_length(x, v, w))


@njit(cache=True)
def contact_energy(
    x: Floats, rods: Rods, pairs: Ints, grown: float, least_mm: float, stiffness: float, radius: Floats
) -> float:
    """Energy (N mm) of the listed edge pairs (m, 2); infinite where a pair is nearer than `least_mm`."""
    thin_radii(x, rods, grown, radius)
    total = 0.0
    for k in range(pairs.shape[0]):
        a, b = pairs[k, 0], pairs[k, 1]
        full = radius[a] + radius[b]
        squared = _closest(x, a, rods.next[a], b, rods.next[b], SMOOTHING)[2]
        if squared >= full * full:
            continue
        d = math.sqrt(squared)
        if d <= least_mm:
            return np.inf
        g, room = full - d, full - least_mm
        q = (g / room) ** 2
        total += 0.5 * stiffness * g * g / (1.0 - q)
    return total


@njit(cache=True)
def contact(
    x: Floats,
    rods: Rods,
    pairs: Ints,
    grown: float,
    least_mm: float,
    stiffness: float,
    radius: Floats,
    gradient: Floats,
    corners: Ints,
    pull: Floats,
    coefficient: Floats,
) -> tuple[float, int]:
    """Return the contact energy (N mm) and how many pairs touch; add their forces to `gradient` (N).

    The k-th touching pair's stiffness is coefficient[k] · p pᵀ with p = pull[k] (4, 3) on the vertices
    corners[k] (4,): the rank-one part b″∇g∇gᵀ; the rest, which pushes strands apart sideways, is left out.
    """
    thin_radii(x, rods, grown, radius)
    total = 0.0
    count = 0
    for k in range(pairs.shape[0]):
        a, b = pairs[k, 0], pairs[k, 1]
        a1, b1 = rods.next[a], rods.next[b]
        full = radius[a] + radius[b]
        s, t, squared = _closest(x, a, a1, b, b1, SMOOTHING)
        if squared >= full * full:
            continue
        d = math.sqrt(squared)
        g, room = full - d, full - least_mm
        q = (g / room) ** 2
        total += 0.5 * stiffness * g * g / (1.0 - q)
        force = stiffness * g / (1.0 - q) ** 2
        thicker = force * (1.0 - q * g / room)  # db/dD, with G = D − d_min moving too
        length_a, length_b = _edge_length(x, a, a1), _edge_length(x, b, b1)
        # dD/dlength of each edge: r λ^(−½) changes by −½ radius/length.
        thin_a, thin_b = -0.5 * radius[a] / (length_a * length_a), -0.5 * radius[b] / (length_b * length_b)
        weight_a, weight_b = SMOOTHING * (s - 0.5) ** 2 / d, SMOOTHING * (t - 0.5) ** 2 / d
        corners[count, 0], corners[count, 1], corners[count, 2], corners[count, 3] = a, a1, b, b1
        for i in range(3):
            u, v = x[a1, i] - x[a, i], x[b1, i] - x[b, i]
            normal = (x[a, i] + s * u - x[b, i] - t * v) / d
            # ∇d by the envelope theorem, then ∇g = ∇D − ∇d.
            d0, d1 = (1.0 - s) * normal - weight_a * u, s * normal + weight_a * u
            d2, d3 = -(1.0 - t) * normal - weight_b * v, -t * normal + weight_b * v
            big_a, big_b = thin_a * u, thin_b * v
            gradient[a, i] += -force * d0 - thicker * big_a
            gradient[a1, i] += -force * d1 + thicker * big_a
            gradient[b, i] += -force * d2 - thicker * big_b
            gradient[b1, i] += -force * d3 + thicker * big_b
            pull[count, 0, i], pull[count, 1, i] = -d0 - big_a, -d1 + big_a
            pull[count, 2, i], pull[count, 3, i] = -d2 - big_b, -d3 + big_b
        coefficient[count] = stiffness * (1.0 + 3.0 * q) / (1.0 - q) ** 3
        count += 1
    return total, count
