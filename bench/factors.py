"""The Newton matrix of a tied strip, factored by several libraries and by our own fronts."""

from __future__ import annotations

import time
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor

import numpy as np
import scipy.sparse as sp

from bench.chains import mat
from bench.report import Figure
from bench.rivals import rod_matrix
from pegwright.shape import Hold, Pull, relax
from pegwright.shape.contact import contact
from pegwright.shape.dissect import dissect, neighbours
from pegwright.shape.elastic import elastic
from pegwright.shape.multifrontal import Factor, factor, solve
from pegwright.shape.near import close_pairs, find_pairs, live_pairs
from pegwright.shape.rods import build_rods

_TOUCH_MM = 1.7


def run(quick: bool) -> list[Figure]:
    """Milliseconds to order and to factor, unknowns, touching pairs, numbers in the factor."""
    piece = mat(3, 6 if quick else 17)
    hold = Hold(tuple(piece.fixed), tuple(Pull((band, i), force) for band, i, force in piece.pulls))
    x = np.concatenate(relax(piece.bands, hold).positions_mm)
    _, rods = build_rods(piece.bands)
    n = len(x)
    near = find_pairs(x, np.zeros_like(x), rods, _TOUCH_MM, _TOUCH_MM)
    pairs = live_pairs(near, 0.0, _TOUCH_MM)
    gradient, blocks, radius = np.zeros((n, 3)), np.zeros((3, n, 3, 3)), np.zeros(n)
    corners, stiffness = np.zeros((len(pairs), 4), np.int64), np.zeros((len(pairs), 4, 4, 3, 3))
    elastic(x, rods, 0.0, gradient, blocks)
    _, count = contact(x, rods, pairs, 1.0, 0.2, 0.0, radius, gradient, corners, stiffness, 0)
    blocks[0] += 1e-6 * np.eye(3)
    matrix = rod_matrix(blocks, rods.next) + _element_matrix(corners[:count], stiffness[:count], n)
    joined = close_pairs(x, rods, pairs, radius, 0.0)
    tree = dissect(x, *neighbours(rods, joined), 8)
    ours = Factor(tree)
    parts = (rods, blocks, corners, stiffness, count)
    out = [
        Figure("unknowns", 3 * n),
        Figure("touching pairs", count),
        Figure("numbers in our factor", float(len(ours.panels))),
        Figure("ours, order", _milliseconds(lambda: dissect(x, *neighbours(rods, joined), 8)), "ms"),
        Figure("ours, factor, one thread", _milliseconds(lambda: factor(ours, *parts)), "ms"),
    ]
    with ThreadPoolExecutor(1) as pool:
        out.append(
            Figure("ours, factor, two threads", _milliseconds(lambda: factor(ours, *parts, pool)), "ms")
        )
    right = np.random.default_rng(1).normal(size=(n, 3))
    error = float(np.abs(matrix @ solve(ours, right).ravel() - right.ravel()).max())
    out.append(Figure("ours, residual of a solve", error, "", "< 1e-6", error < 1e-6))
    return out + _others(sp.csc_matrix(matrix))


def _others(matrix: sp.csc_matrix) -> list[Figure]:
    import cvxopt
    import qdldl
    import scipy.sparse.linalg
    from cvxopt import cholmod

    lower = sp.tril(matrix, format="coo")
    packed = cvxopt.spmatrix(lower.data, lower.row.astype(int), lower.col.astype(int), lower.shape)
    cholmod.options["supernodal"] = 2
    pattern = cholmod.symbolic(packed)
    upper = sp.triu(matrix, format="csc")
    ready = qdldl.Solver(upper, upper=True)
    natural = {"permc_spec": "MMD_AT_PLUS_A", "diag_pivot_thresh": 0.0, "options": {"SymmetricMode": True}}
    return [
        Figure("CHOLMOD, order", _milliseconds(lambda: cholmod.symbolic(packed)), "ms"),
        Figure("CHOLMOD, factor", _milliseconds(lambda: cholmod.numeric(packed, pattern)), "ms"),
        Figure("qdldl, factor again", _milliseconds(lambda: ready.update(upper, upper=True)), "ms"),
        Figure(
            "splu, order and factor", _milliseconds(lambda: scipy.sparse.linalg.splu(matrix, **natural)), "ms"
        ),
    ]


def _element_matrix(corners: np.ndarray, stiffness: np.ndarray, n: int) -> sp.csc_matrix:
    places = (3 * corners[:, :, None] + np.arange(3)).reshape(len(corners), 12)
    values = stiffness.transpose(0, 1, 3, 2, 4).reshape(len(corners), 12, 12)
    rows = np.repeat(places, 12, axis=1).ravel()
    columns = np.tile(places, 12).ravel()
    return sp.csc_matrix((values.ravel(), (rows, columns)), shape=(3 * n, 3 * n))


def _milliseconds(work: Callable[[], object], times: int = 7) -> float:
    """Least of several runs."""
    best = np.inf
    for _ in range(times):
        begin = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - begin)
    return 1e3 * float(best)
