"""How fast and how true the relaxed shape is; every run is replayed and its pass-throughs counted.

Each figure goes to standard error as soon as it is measured. `python -m bench real` measures the real pieces
alone, `python -m bench factors` the factorisation.
"""

from __future__ import annotations

import math
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Generator, Iterator

import numpy as np

from bench.real import real, told
from bench.report import Figure
from bench.rivals import incremental_potential, multibody, thinned
from pegwright.shape import Band, Goal, Pull, RelaxedBands, Supports, count_pass_throughs, relax_bands
from testing.curve_pieces import Piece, chain, tied_chains

_FIRST_USE = """
import time
begin = time.perf_counter()
from testing.curve_pieces import chain
from pegwright.shape import relax
relax(chain(4).bands)
print(time.perf_counter() - begin)
"""


def run(quick: bool) -> list[Figure]:
    """Measure first use, pieces against their time limits, growth, the rivals and the closed forms."""
    return told(_all(quick))


def _all(quick: bool) -> Iterator[Figure]:
    yield from _first_use()
    timed(chain(4))
    seconds = yield from _pieces(quick)
    yield from _truth()
    yield from _rivals(seconds, quick)
    yield from real(quick)


def _pieces(quick: bool) -> Generator[Figure, None, dict[int, float]]:
    """Chains and sheets; returns the seconds of each chain by its number of bands."""
    passes = 0
    seconds: dict[int, float] = {}
    longest = 160 if quick else 2000
    for bands in [20, 80, 160] if quick else [20, 80, 500, 2000]:
        took, rest, crossed = timed(chain(bands), best_of=3 if bands <= 80 else 1)
        seconds[bands] = took
        passes += crossed
        limit = {80: 1.5, 500: 10.0}.get(bands)
        name = f"chain of {bands} ({rest.iterations} steps, {rest.length_mm / bands:.2f} mm a band)"
        yield _under(name, took, limit) if limit else Figure(name, took, "s")
        yield _rested(bands, rest)
    exponent = math.log(seconds[longest] / seconds[20]) / math.log(longest / 20)
    yield _under(f"growth exponent, 20 to {longest} bands", exponent, 1.25, "")
    sheets = [("strip", tied_chains(3, 17), 3.0), ("mat", tied_chains(18, 19, every=2), 20.0)]
    for name, piece, limit in [("strip", tied_chains(3, 6), None)] if quick else sheets:
        took, rest, crossed = timed(piece)
        passes += crossed
        named = f"{name} of {len(piece.bands)} ({rest.iterations} steps)"
        yield _under(named, took, limit) if limit else Figure(named, took, "s")
        yield _rested(len(piece.bands), rest)
    yield Figure("pass-throughs in all these runs", passes, "", "0", passes == 0)
    return seconds


def timed(piece: Piece, best_of: int = 1) -> tuple[float, RelaxedBands, int]:
    """Relax a piece; seconds (least of several), the result and the crossings its replay counts."""
    hold = Supports(tuple(piece.fixed), tuple(Pull((band, i), force) for band, i, force in piece.pulls))
    took = math.inf
    for _ in range(best_of):
        begin = time.perf_counter()
        rest = relax_bands(piece.bands, hold, keep_iterates=True)
        took = min(took, time.perf_counter() - begin)
    return took, rest, count_pass_throughs(rest.iterates_mm, piece.bands)


def _under(name: str, value: float, limit: float, unit: str = "s") -> Figure:
    return Figure(name, value, unit, f"< {limit:g}", value < limit)


def _rested(bands: int, rest: RelaxedBands) -> Figure:
    return Figure(f"  residual left, {bands} bands", rest.residual_drop, "of first", "≤ 1e-3", rest.converged)


def _first_use() -> Iterator[Figure]:
    """Seconds until a small piece is relaxed, with an empty cache and with the cache that leaves."""
    with tempfile.TemporaryDirectory() as cache:
        space = {**os.environ, "NUMBA_CACHE_DIR": cache}
        for name, limit in (("first use, compiling (s)", 15.0), ("next use, from the cache (s)", None)):
            before = os.times()
            said = subprocess.run(
                [sys.executable, "-c", _FIRST_USE], env=space, capture_output=True, text=True, check=True
            ).stdout
            after = os.times()
            yield _under(name, float(said), limit) if limit else Figure(name, float(said), "s")
            used = after.children_user + after.children_system - before.children_user - before.children_system
            yield Figure("  processor time of that", used, "s")


def _rivals(ours: dict[int, float], quick: bool) -> Iterator[Figure]:
    """The same chains by the assembled alternative and by a simulator, side by side in this run."""
    for bands, goal in ((80, 1.5),) if quick else ((80, 1.5), (500, 2.0)):
        other = incremental_potential(chain(bands), 20.0 if quick else 300.0)
        ratio = other.seconds / ours[bands]
        rested = "" if other.rested else ", not at rest"
        yield Figure(f"ipctk + CHOLMOD, chain of {bands} ({other.steps} steps{rested})", other.seconds, "s")
        yield Figure(f"  ratio to ours at {bands}", ratio, "times", f"≥ {goal:g}", ratio >= goal)
        yield _crossings("ipctk", other.iterates_mm, chain(bands).bands)
    piece = chain(20)
    other = multibody(piece, limit_s=6.0 if quick else 60.0)
    ratio = other.seconds / ours[20]
    rested = "" if other.rested else ", stopped unrested"
    yield Figure(f"MuJoCo flex, chain of 20 ({other.steps} steps{rested})", other.seconds, "s")
    yield Figure("  ratio to ours at 20", ratio, "times", "≥ 20", ratio >= 20)
    yield _crossings("MuJoCo", other.iterates_mm, thinned(piece, 28))


def _crossings(name: str, iterates: list[np.ndarray], bands: list[Band]) -> Figure:
    return Figure(f"  pass-throughs of {name}", count_pass_throughs(iterates, bands), "")


def _truth() -> Iterator[Figure]:
    """Errors against closed forms at 96 points, orders of convergence, and the mesh's say in the length."""
    fine = Goal(residual_drop=1e-6, length_change=1e-8)
    drop = {n: _cantilever(n, 3.0, fine) for n in (24, 48, 96)}
    width = {n: _ring(n, 5.0, fine) for n in (24, 48, 96)}
    for name, found, exact in (("cantilever", drop, 0.60325), ("pulled ring", width, 1.47311)):
        error = {n: abs(value / exact - 1) for n, value in found.items()}
        yield _under(f"{name}, error at 96 points", 100 * error[96], 1.0, "%")
        yield Figure(f"  order of convergence, {name}", math.log2(error[24] / error[48]), "", "about 2")
    coarse, dense = timed(chain(20, 48))[1], timed(chain(20, 96))[1]
    change = 100 * abs(coarse.length_mm / dense.length_mm - 1)
    yield _under("finished length, 48 against 96 points", change, 2.0, "%")


def _bending(band: Band) -> float:
    return band.rubber.youngs_mpa * math.pi * (band.thickness_mm / 2) ** 4 / 4


def _cantilever(points: int, load: float, goal: Goal) -> float:
    """Drop over length under P L²/EI = `load` (Bisshopp and Drucker 1945: 0.60325 at 3)."""
    line = np.column_stack([np.arange(points), np.zeros(points), np.zeros(points)]).astype(np.float64)
    band, length = Band(line, points - 1.0, 0.5, closed=False), points - 1.5
    force = load * _bending(band) / length**2
    hold = Supports(fixed=((0, 0), (0, 1)), pulls=(Pull((0, points - 1), (0.0, -force, 0.0)),))
    return -float(relax_bands([band], hold, goal=goal).positions_mm[0][-1, 1]) / length


def _ring(points: int, f: float, goal: Goal) -> float:
    """Width over radius of a ring pulled by f·EI/R² (elastica, quadrature: 1.47311 at 5)."""
    turn = 2 * np.pi * np.arange(points) / points
    out = 20.0 * (math.pi / points) / math.sin(math.pi / points)
    band = Band(out * np.column_stack([np.sin(turn), np.cos(turn), 0 * turn]), 40 * math.pi, 0.5)
    force = f * _bending(band) / 400.0
    hold = Supports(pulls=(Pull((0, 0), (0.0, force, 0.0)), Pull((0, points // 2), (0.0, -force, 0.0))))
    x = relax_bands([band], hold, goal=goal).positions_mm[0]
    return float(np.linalg.norm(x[points // 4] - x[3 * points // 4])) / 20.0
