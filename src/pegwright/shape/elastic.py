"""Stretching and bending of the bands: energy, forces and a stiffness that is never negative.

Stretch: W(λ) per volume (`rubber`). Bend: ½Bθ² at each vertex, θ the angle between its two edges and B =
EI/l̄ (cf. M. Bergou et al., Discrete elastic rods, ACM Trans. Graph. 27 (2008); their 2 tan(θ/2) is too
stiff where a bight turns by a radian a vertex, so θ itself is used). Near the angle where the band is bent
to its own radius, where the rod model fails, a term grows without bound.

The stiffness is the Hessian with its indefinite part left out: exact along an edge and in the plane of the
bend, tension across an edge only where it pulls, (θ/2)cot(θ/2) out of the plane. So every Newton step goes
downhill.
"""

from __future__ import annotations

import math

import numpy as np

from pegwright.shape.jit import kernel
from pegwright.shape.rods import Floats, Rods
from pegwright.shape.rubber import _energy_and_stress

__all__ = ["add_elastic_derivatives", "elastic_energy", "fill_stretches"]

_SOFT = 0.75  # of the turn limit: where the growing term sets in


@kernel
def _bending(stiff: float, natural: float, limit: float, turn: float) -> tuple[float, float, float]:
    """Return the energy of turning by `turn`, its slope, and a stiffness ≥ 0 (N mm, N mm/rad, N mm/rad²)."""
    energy = 0.5 * stiff * turn * turn
    slope = stiff * turn
    curve = stiff
    if natural > 0.0:
        # The moulded curvature keeps its size and turns freely; rounded off at θ = 0, least at θ = natural.
        soft = 0.5 * natural
        pull = math.sqrt(natural * natural + soft * soft)
        root = math.sqrt(turn * turn + soft * soft)
        energy += stiff * pull * (pull - root) - 0.5 * stiff * natural * natural
        slope -= stiff * pull * turn / root
        curve = stiff * max(1.0 - pull * soft * soft / root**3, 0.05)
    onset = _SOFT * limit
    if turn > onset:
        room = limit - onset
        q = (turn - onset) / room
        if q >= 1.0:
            return np.inf, slope, curve
        energy += 0.5 * stiff * room * room * q * q / (1.0 - q * q)
        slope += stiff * room * q / (1.0 - q * q) ** 2
        curve += stiff * (1.0 + 3.0 * q * q) / (1.0 - q * q) ** 3
    return energy, slope, curve


@kernel
def elastic_energy(x: Floats, rods: Rods) -> float:
    """Return the elastic energy of all bands in N mm; infinite if a vertex turns past its limit."""
    total = 0.0
    for v in range(x.shape[0]):
        w = rods.next[v]
        if w < 0:
            continue
        ex, ey, ez = x[w, 0] - x[v, 0], x[w, 1] - x[v, 1], x[w, 2] - x[v, 2]
        length = math.sqrt(ex * ex + ey * ey + ez * ez)
        if length < 1e-9:
            return np.inf
        c = rods.constants_mpa
        total += (
            rods.area_mm2[v]
            * rods.rest_mm[v]
            * _energy_and_stress(rods.law[v], c[v, 0], c[v, 1], c[v, 2], length / rods.rest_mm[v])[0]
        )
        stiff = rods.bending_n_mm[w]
        y = rods.next[w]
        if y < 0 or stiff == 0.0:
            continue
        fx, fy, fz = x[y, 0] - x[w, 0], x[y, 1] - x[w, 1], x[y, 2] - x[w, 2]
        cx, cy, cz = ey * fz - ez * fy, ez * fx - ex * fz, ex * fy - ey * fx
        turn = math.atan2(math.sqrt(cx * cx + cy * cy + cz * cz), ex * fx + ey * fy + ez * fz)
        total += _bending(stiff, rods.natural_turn[w], rods.turn_limit[w], turn)[0]
    return total


@kernel
def add_elastic_derivatives(x: Floats, rods: Rods, true: float, gradient: Floats, blocks: Floats) -> float:
    """Return the elastic energy (N mm) and add its forces and stiffness in place.

    `gradient` (n, 3) in N. `blocks` (3, n, 3, 3) in N/mm: the stiffness of vertex v with itself, with
    next[v] and with next[next[v]] (rows v). With `true` = 0 no part of it is negative; with 1 it is the
    Hessian.
    """
    # Unpacked once: every access in the loop would cost compile time.
    after, rests, areas, laws = rods.next, rods.rest_mm, rods.area_mm2, rods.law
    c, bending, natural, limits = rods.constants_mpa, rods.bending_n_mm, rods.natural_turn, rods.turn_limit
    diag, one, two = blocks[0], blocks[1], blocks[2]
    total = 0.0
    turn_of = np.zeros((3, 3))
    aside = np.zeros(3)
    at = np.zeros(3, np.int64)
    w3 = np.zeros(3)
    both = np.zeros(3)
    e = np.zeros(3)
    f = np.zeros(3)
    turned = np.zeros((2, 3, 3))
    for v in range(x.shape[0]):
        w = after[v]
        if w < 0:
            continue
        ex, ey, ez = x[w, 0] - x[v, 0], x[w, 1] - x[v, 1], x[w, 2] - x[v, 2]
        length = math.sqrt(ex * ex + ey * ey + ez * ez)
        ex /= length
        ey /= length
        ez /= length
        e[0] = ex
        e[1] = ey
        e[2] = ez
        rest = rests[v]
        energy, p, dp = _energy_and_stress(laws[v], c[v, 0], c[v, 1], c[v, 2], length / rest)
        total += areas[v] * rest * energy
        tension = areas[v] * p
        along = areas[v] * max(dp, 0.0) / rest
        across = max(tension, true * tension) / length
        for i in range(3):
            gradient[v, i] -= tension * e[i]
            gradient[w, i] += tension * e[i]
            for j in range(3):
                k = (along - across) * e[i] * e[j]
                if i == j:
                    k += across
                diag[v, i, j] += k
                diag[w, i, j] += k
                one[v, i, j] -= k
        stiff = bending[w]
        y = after[w]
        if y < 0 or stiff == 0.0:
            continue
        fx, fy, fz = x[y, 0] - x[w, 0], x[y, 1] - x[w, 1], x[y, 2] - x[w, 2]
        onward = math.sqrt(fx * fx + fy * fy + fz * fz)
        fx /= onward
        fy /= onward
        fz /= onward
        f[0] = fx
        f[1] = fy
        f[2] = fz
        mx, my, mz = ey * fz - ez * fy, ez * fx - ex * fz, ex * fy - ey * fx
        sine = math.sqrt(mx * mx + my * my + mz * mz)
        cosine = ex * fx + ey * fy + ez * fz
        turn = math.atan2(sine, cosine)
        energy, slope, curve = _bending(stiff, natural[w], limits[w], turn)
        total += energy
        at[0] = v
        at[1] = w
        at[2] = y
        w3[0] = 1.0 / length
        w3[1] = -1.0 / length - 1.0 / onward
        w3[2] = 1.0 / onward
        if sine < 1e-7:
            # Straight: there is no plane of bending yet, so equal stiffness all round and no force.
            for i in range(3):
                for j in range(3):
                    k = -curve * e[i] * e[j]
                    if i == j:
                        k += curve
                    for a in range(3):
                        diag[at[a], i, j] += w3[a] * w3[a] * k
                    one[v, i, j] += w3[0] * w3[1] * k
                    one[w, i, j] += w3[1] * w3[2] * k
                    two[v, i, j] += w3[0] * w3[2] * k
            continue
        # ∂θ/∂e = −(f − cosθ e)/(|e| sinθ): turning the first edge towards the second lessens the angle.
        for i in range(3):
            back = (f[i] - cosine * e[i]) / (sine * length)
            fore = (e[i] - cosine * f[i]) / (sine * onward)
            turn_of[0, i] = back
            turn_of[1, i] = -back + fore
            turn_of[2, i] = -fore
        aside[0], aside[1], aside[2] = mx / sine, my / sine, mz / sine
        outward = max(slope, 0.0) * 0.5 * (1.0 + cosine) / sine
        # What may be negative: −½ slope tan(θ/2)(δ₁ + δ₂)² out of the plane, each edge's ∇²φ in it.
        inward = -0.5 * true * slope * (1.0 - cosine) / sine
        both[0], both[1], both[2] = -1.0 / length, 1.0 / length - 1.0 / onward, 1.0 / onward
        for i in range(3):
            for j in range(3):
                # ∂θ/∂x of the outer vertices is the edges' in-plane normal over their length.
                turned[0, i, j] = true * slope * (turn_of[0, i] * e[j] + e[i] * turn_of[0, j]) / length
                turned[1, i, j] = -true * slope * (turn_of[2, i] * f[j] + f[i] * turn_of[2, j]) / onward
        for a in range(3):
            for i in range(3):
                gradient[at[a], i] += slope * turn_of[a, i]
        for i in range(3):
            for j in range(3):
                side = aside[i] * aside[j]
                for a in range(3):
                    for b in range(a, 3):
                        k = (
                            curve * turn_of[a, i] * turn_of[b, j]
                            + (outward * w3[a] * w3[b] + inward * both[a] * both[b]) * side
                        )
                        if a < 2 and b < 2:
                            k += turned[0, i, j] if a == b else -turned[0, i, j]
                        if a > 0 and b > 0:
                            k += turned[1, i, j] if a == b else -turned[1, i, j]
                        if a == b:
                            diag[at[a], i, j] += k
                        elif b == a + 1:
                            one[at[a], i, j] += k
                        else:
                            two[v, i, j] += k
    return total


@kernel
def fill_stretches(x: Floats, rods: Rods, stretch: Floats, tension_n: Floats) -> None:
    """Fill the stretch λ and the tension (N) of every edge; both are (n,), zero if there is no edge."""
    after, rests, laws, c = rods.next, rods.rest_mm, rods.law, rods.constants_mpa
    for v in range(x.shape[0]):
        w = after[v]
        stretch[v] = tension_n[v] = 0.0
        if w >= 0:
            dx, dy, dz = x[w, 0] - x[v, 0], x[w, 1] - x[v, 1], x[w, 2] - x[v, 2]
            stretch[v] = math.sqrt(dx * dx + dy * dy + dz * dz) / rests[v]
            tension_n[v] = (
                rods.area_mm2[v] * _energy_and_stress(laws[v], c[v, 0], c[v, 1], c[v, 2], stretch[v])[1]
            )
