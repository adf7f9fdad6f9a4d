"""The same chain by other means: the best that can be put together from packages, and a general-purpose
simulator.

Only benches import this; the packages are in the `bench` extra (CHOLMOD, in cvxopt, is GPL).
"""

from __future__ import annotations

import time
from typing import NamedTuple

import numpy as np
import scipy.sparse as sp

from pegwright.shape import Band, Floats, add_elastic_derivatives, build_rods, elastic_energy
from testing.curve_pieces import Piece


class Run(NamedTuple):
    """How another way fared: seconds, steps, whether it met the stopping rule, finished length, all
    iterates."""

    seconds: float
    steps: int
    rested: bool
    length_mm: float
    iterates_mm: list[Floats]


def incremental_potential(piece: Piece, limit_s: float = 120.0) -> Run:
    """Our rods' energy, contact and step bound by the IPC Toolkit (additive CCD), Newton by CHOLMOD.

    Same stopping rule and damping as ours: residual 1e-3 of the first, length still to 0.1 % over five steps.
    """
    import cvxopt
    import ipctk
    from cvxopt import cholmod

    ipctk.set_logger_level(ipctk.LoggerLevel.off)
    x, rods = build_rods(piece.bands, piece.fixed)
    n = len(x)
    load = np.zeros_like(x)
    for band, index, force in piece.pulls:
        load[rods.start[band] + index] += force
    edges = np.column_stack([np.arange(n), rods.next]).astype(np.int32)
    mesh = ipctk.CollisionMesh(np.asfortranarray(x), edges)
    apart = {}
    for k in range(1, 4):  # neighbours along a band always overlap and cannot be in contact
        for v in range(n):
            w = v
            for _ in range(k):
                w = int(rods.next[w])
            apart[min(v, w), max(v, w)] = False
    mesh.can_collide = ipctk.make_sparse_filter(apart, True)
    least, hat = 1.2, 0.3
    barrier = ipctk.BarrierPotential(hat, 2.0)
    ccd = ipctk.AdditiveCCD()
    begin = time.perf_counter()
    free = np.repeat(~rods.fixed, 3)
    damping, scale = 0.05, 0.05
    lengths: list[float] = []
    first = 0.0
    iterates = [x]
    rested = False
    steps = 0

    def contacts(y: Floats) -> ipctk.NormalCollisions:
        found = ipctk.NormalCollisions()
        found.build(mesh, np.asfortranarray(y), hat, least)
        return found

    def energy(y: Floats) -> float:
        soft = elastic_energy(y, rods) - float((load * y).sum())
        return soft + barrier(contacts(y), mesh, np.asfortranarray(y))

    for steps in range(400):  # noqa: B007  (told in the result)
        gradient, blocks = np.zeros((n, 3)), np.zeros((3, n, 3, 3))
        soft = add_elastic_derivatives(x, rods, 0.0, gradient, blocks) - float((load * x).sum())
        now = contacts(x)
        at = np.asfortranarray(x)
        total = soft + barrier(now, mesh, at)
        slope = (gradient - load).ravel() + barrier.gradient(now, mesh, at)
        slope[~free] = 0.0
        residual = float(np.sqrt((slope**2).sum()))
        first = first or residual
        lengths.append(float(np.ptp(x[:, 0])))
        still = len(lengths) > 5 and abs(lengths[-1] - lengths[-6]) < 1e-3 * lengths[-1]
        if residual <= 1e-3 * first and still:
            rested = True
            break
        if time.perf_counter() - begin > limit_s:
            break
        matrix = rod_matrix(blocks, rods.next) + barrier.hessian(
            now, mesh, at, ipctk.PSDProjectionMethod.CLAMP
        )
        accepted = False
        while not accepted and damping < 1e4:
            held = sp.diags(np.where(free, damping, 1e8))
            lower = sp.tril(matrix + held, format="coo")
            packed = cvxopt.spmatrix(lower.data, lower.row.astype(int), lower.col.astype(int), lower.shape)
            right = cvxopt.matrix(-slope)
            factor = cholmod.symbolic(packed)
            cholmod.numeric(packed, factor)
            cholmod.solve(factor, right)
            step = np.array(right).reshape(n, 3)
            step[rods.fixed] = 0.0
            alpha = ipctk.compute_collision_free_stepsize(
                mesh, at, np.asfortranarray(x + step), least, None, ccd
            )
            alpha = min(1.0, 0.9 * alpha if alpha < 1 else 1.0)
            fall = float(slope @ step.ravel())
            for _ in range(25):
                if energy(x + alpha * step) <= total + 1e-4 * alpha * fall:
                    accepted = True
                    break
                alpha *= 0.5
            if not accepted:
                damping *= 100.0
        if not accepted:
            break
        x = x + alpha * step
        iterates.append(x)
        damping = (
            max(damping * 0.1, 1e-8 * scale) if alpha > 0.45 else damping * 8 if alpha < 0.1 else damping
        )
    return Run(time.perf_counter() - begin, steps, rested, lengths[-1], iterates)


def rod_matrix(blocks: Floats, after: np.ndarray) -> sp.csc_matrix:
    """Return the sparse matrix (3n, 3n) of the rods' blocks (see `elastic`)."""
    n = len(after)
    ids = np.arange(n)
    rows, columns, values = [], [], []
    for hop, other in enumerate((ids, after, after[after])):
        for i in range(3):
            for j in range(3):
                rows.append(3 * ids + i)
                columns.append(3 * other + j)
                values.append(blocks[hop, :, i, j])
                if hop:
                    rows.append(3 * other + j)
                    columns.append(3 * ids + i)
                    values.append(blocks[hop, :, i, j])
    entries = (np.concatenate(values), (np.concatenate(rows), np.concatenate(columns)))
    return sp.csc_matrix(entries, shape=(3 * n, 3 * n))


def multibody(piece: Piece, points: int = 28, limit_s: float = 60.0) -> Run:
    """MuJoCo: each band a closed one-dimensional flex of `points` bodies, damped until the length stands
    still.

    It has no bending of such a flex and no exclusion of neighbours along it, so at 48 points bands would
    collide with themselves; 28 is the most that does not. Millimetres, newtons and seconds; masses are
    chosen for stability.
    """
    import mujoco

    curves = [band.points_mm for band in thinned(piece, points)]
    rest = [b.rest_length_mm / points for b in piece.bands]
    parts = []
    for k, curve in enumerate(curves):
        at = " ".join(f"{v:.6f}" for v in curve.ravel())
        links = " ".join(f"{i} {(i + 1) % points}" for i in range(points))
        parts.append(
            f'<flexcomp name="b{k}" type="direct" dim="1" point="{at}" element="{links}" radius="0.75" '
            f'mass="{points * 2e-5}"><edge equality="false" stiffness="{1.77 / rest[k]}" damping="1e-3"/>'
            '<contact selfcollide="auto" solref="0.004 1" solimp="0.95 0.99 0.01"/></flexcomp>'
        )
    text = (
        '<mujoco><size memory="400M"/><option gravity="0 0 0" timestep="0.001" integrator="implicitfast" '
        f'solver="CG" iterations="20"/><worldbody>{"".join(parts)}</worldbody></mujoco>'
    )
    model = mujoco.MjModel.from_xml_string(text)
    for k in range(len(curves)):
        first, count = model.flex_edgeadr[k], model.flex_edgenum[k]
        model.flexedge_length0[first : first + count] = rest[k]
    model.dof_damping[:] = 1e-4
    data = mujoco.MjData(model)
    folds = np.flatnonzero(curves[0][:, 0] < 0.3)
    tips = [int(np.argmax(np.where(side * curves[-1][:, 2] > 0, curves[-1][:, 0], -1e9))) for side in (1, -1)]
    for i in folds:
        model.dof_damping[3 * i : 3 * i + 3] = 1e3
    for i in tips:
        data.xfrc_applied[1 + (len(curves) - 1) * points + i, 0] = 0.05
    mujoco.mj_forward(model, data)
    begin = time.perf_counter()
    lengths, iterates = [], [np.array(data.flexvert_xpos)]
    rested, steps = False, 0
    while time.perf_counter() - begin < limit_s:
        for _ in range(50):
            mujoco.mj_step(model, data)
        steps += 50
        x = np.array(data.flexvert_xpos)
        iterates.append(x)
        lengths.append(float(np.ptp(x[:, 0])))
        if len(lengths) > 20 and abs(lengths[-1] - lengths[-11]) < 1e-3 * lengths[-1]:
            rested = True
            break
    return Run(time.perf_counter() - begin, steps, rested, lengths[-1], iterates)


def _even(curve: Floats, points: int) -> Floats:
    closed = np.vstack([curve, curve[:1]])
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(closed, axis=0), axis=1))])
    at = np.arange(points) * along[-1] / points
    return np.column_stack([np.interp(at, along, closed[:, i]) for i in range(3)])


def thinned(piece: Piece, points: int) -> list[Band]:
    """Return the bands of a piece with `points` even points each."""
    return [band._replace(points_mm=_even(band.points_mm, points)) for band in piece.bands]
