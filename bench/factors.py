"""The Newton matrix of a tied strip, factored by several libraries and by our own fronts."""

from __future__ import annotations

import time
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor

import numpy as np
import scipy.sparse as sp

from bench.report import Figure
from bench.rivals import rod_matrix
from pegwright.shape import (
    CholeskyFactor,
    Pull,
    Supports,
    add_contact_derivatives,
    add_elastic_derivatives,
    build_elimination_tree,
    build_rods,
    empty_elements,
    factorise,
    find_near_pairs,
    pairs_within,
    relax_bands,
    solve_factored,
    touchable_pairs,
    vertex_adjacency,
)
from testing.curve_pieces import tied_chains

_TOUCH_MM = 1.7


def run(quick: bool) -> list[Figure]:
    """Milliseconds to order and to factor, unknowns, touching pairs, numbers in the factor."""
    piece = tied_chains(3, 6 if quick else 17)
    hold = Supports(tuple(piece.fixed), tuple(Pull((band, i), force) for band, i, force in piece.pulls))
    x = np.concatenate(relax_bands(piece.bands, hold).positions_mm)
    _, rods = build_rods(piece.bands)
    n = len(x)
    near = find_near_pairs(x, np.zeros_like(x), rods, _TOUCH_MM, _TOUCH_MM)
    pairs = touchable_pairs(near, 0.0, _TOUCH_MM)
    gradient, blocks, radius = np.zeros((n, 3)), np.zeros((3, n, 3, 3)), np.zeros(n)
    elements = empty_elements(len(pairs))
    add_elastic_derivatives(x, rods, 0.0, gradient, blocks)
    _, count = add_contact_derivatives(x, rods, pairs, 1.0, 0.2, 0.0, radius, gradient, elements, 0)
    blocks[0] += 1e-6 * np.eye(3)
    matrix = rod_matrix(blocks, rods.next) + _element_matrix(
        elements.corners[:count], elements.stiffness[:count], n
    )
    joined = pairs_within(x, rods, pairs, radius, 0.0)
    tree = build_elimination_tree(x, *vertex_adjacency(rods, joined), 8)
    ours = CholeskyFactor(tree)
    parts = (rods, blocks, elements, count)
    out = [
        Figure("unknowns", 3 * n),
        Figure("touching pairs", count),
        Figure("numbers in our factor", float(len(ours.memory.panels))),
        Figure(
            "ours, order",
            _milliseconds(lambda: build_elimination_tree(x, *vertex_adjacency(rods, joined), 8)),
            "ms",
        ),
        Figure("ours, factor, one thread", _milliseconds(lambda: factorise(ours, *parts)), "ms"),
    ]
    with ThreadPoolExecutor(1) as pool:
        out.append(
            Figure("ours, factor, two threads", _milliseconds(lambda: factorise(ours, *parts, pool)), "ms")
        )
    right = np.random.default_rng(1).normal(size=(n, 3))
    error = float(np.abs(matrix @ solve_factored(ours, right).ravel() - right.ravel()).max())
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
