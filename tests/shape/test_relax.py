"""Whole pieces at rest: nothing passes, energy falls, and the answer depends on the piece alone."""

from __future__ import annotations

import os

import numpy as np
import pytest

from pegwright.finding import RefusedError
from pegwright.shape import (
    Band,
    Dressing,
    Goal,
    Pull,
    Supports,
    Tie,
    count_pass_throughs,
    relax_bands,
    wrap_round_wrist,
)
from testing.curve_pieces import Piece, chain, tied_chains
from tests.shape import naive

compiled = pytest.mark.skipif(os.environ.get("NUMBA_DISABLE_JIT") == "1", reason="needs the compiled kernels")
FINE = Goal(residual_drop=1e-6, length_change=1e-5, iterations=600)


def held(piece: Piece) -> Supports:
    return Supports(tuple(piece.fixed), tuple(Pull((band, i), force) for band, i, force in piece.pulls))


def settled(piece: Piece, **options):
    return relax_bands(piece.bands, held(piece), **options)


@compiled
@pytest.mark.parametrize("piece", [chain(6), tied_chains(2, 4)], ids=["chain", "mat"])
def test_nothing_passes_and_energy_falls(piece: Piece) -> None:
    """The replay counts no crossing, the gap keeps to its floor, and no accepted step raises the energy."""
    rest = settled(piece, keep_iterates=True)
    assert rest.converged
    assert not rest.findings
    assert count_pass_throughs(rest.iterates_mm, piece.bands) == 0
    assert rest.smallest_gap_mm > rest.smallest_allowed_mm > 0
    energies = np.array(rest.energies_n_mm[-1])
    assert np.all(np.diff(energies) <= 1e-12 * energies[0])
    assert rest.residual_drop <= 1e-3


def test_two_hooked_bands_stay_hooked() -> None:
    """Two rings through each other, pulled apart hard, end in contact and still linked (runs uncompiled
    too)."""
    turn = np.linspace(0, 2 * np.pi, 12, endpoint=False)
    one = np.column_stack([6 * np.cos(turn), 6 * np.sin(turn), 0 * turn])
    two = np.column_stack([9 + 6 * np.cos(turn), 0 * turn, 6 * np.sin(turn)])
    bands = [Band(one, 30.0, 1.5), Band(two, 30.0, 1.5)]
    hold = Supports(fixed=((0, 6),), pulls=(Pull((1, 0), (2.0, 0.0, 0.0)),))
    rest = relax_bands(bands, hold, goal=Goal(iterations=60), keep_iterates=True)
    assert rest.converged
    assert abs(naive.linking_number(*rest.positions_mm)) == 1
    assert count_pass_throughs(rest.iterates_mm, bands) == 0
    assert 0.3 < rest.smallest_gap_mm < 1.5


@compiled
def test_tension_balances_the_pull() -> None:
    """In a pulled chain's middle band, the strands that cross a plane carry the whole pull."""
    piece = chain(5)
    rest = settled(piece, goal=FINE)
    x, tension = rest.positions_mm[2], rest.tension_n[2]
    middle = 0.5 * (x[:, 0].min() + x[:, 0].max())
    ahead = np.roll(x, -1, axis=0)
    cut = (x[:, 0] - middle) * (ahead[:, 0] - middle) < 0
    along = np.abs(ahead - x)[:, 0] / np.linalg.norm(ahead - x, axis=1)
    assert cut.sum() >= 4
    assert (tension * along)[cut].sum() == pytest.approx(0.1, rel=0.35)


@compiled
def test_rigid_motion_changes_nothing() -> None:
    """Turned and moved, the piece comes to the same length, energy and distances between bands."""
    turn, _ = np.linalg.qr(np.random.default_rng(5).normal(size=(3, 3)))
    turn *= np.sign(np.linalg.det(turn))
    piece = chain(4)
    moved = [b._replace(points_mm=b.points_mm @ turn.T + [30.0, -7.0, 2.0]) for b in piece.bands]
    pulls = [(band, i, tuple(turn @ np.array(force))) for band, i, force in piece.pulls]
    one, two = settled(piece, goal=FINE), settled(Piece(moved, piece.fixed, pulls), goal=FINE)
    assert two.length_mm == pytest.approx(one.length_mm, rel=1e-3)
    given = sum(np.array(force) @ [30.0, -7.0, 2.0] for _, _, force in pulls)  # dead pulls have energy −f·x
    assert two.energy_n_mm + given == pytest.approx(one.energy_n_mm, rel=1e-3)
    for a, b in zip(one.positions_mm, two.positions_mm, strict=True):
        assert b.mean(axis=0) == pytest.approx(turn @ a.mean(axis=0) + [30.0, -7.0, 2.0], abs=0.1)


@compiled
def test_finer_points_change_the_length_little() -> None:
    """From 48 to 96 points a band the finished length changes by less than 2 %."""
    coarse, fine = settled(chain(8, 48)), settled(chain(8, 96))
    assert coarse.converged
    assert fine.converged
    assert coarse.length_mm == pytest.approx(fine.length_mm, rel=0.02)


@compiled
def test_dressing_is_let_go() -> None:
    """Tugged, pressed, then released, the piece ends without the tug: lower than it was while dressed."""
    piece = chain(4)
    tug = tuple(Pull((band, i), (0.3, 0.0, 0.0)) for band, i, _ in piece.pulls)
    hold = Supports(fixed=tuple(piece.fixed))
    lengths: dict[str, float] = {}
    dressed = relax_bands(
        piece.bands,
        hold,
        Dressing(tug, press_n_per_mm=0.01),
        progress=lambda p: lengths.__setitem__(p.stage, p.length_mm),
    )
    assert dressed.converged
    assert len(dressed.energies_n_mm) == 2
    assert lengths["resting"] < lengths["dressing"]
    assert max(t.max() for t in dressed.tension_n) < 2


@compiled
def test_closed_round_a_wrist() -> None:
    """Wrapped and tied end to end, a chain lies on the wrist and holds together."""
    girth = 150.0
    piece = chain(22)
    curves = wrap_round_wrist([b.points_mm for b in piece.bands], girth)
    bands = [b._replace(points_mm=c) for b, c in zip(piece.bands, curves, strict=True)]
    ends = [p for _, p, _ in piece.pulls]
    starts = [piece.fixed[0][1], piece.fixed[-1][1]]
    ties = tuple(Tie((21, end), (0, start), 3.0) for end in ends for start in starts)
    rest = relax_bands(bands, Supports(ties=ties, girth_mm=girth), keep_iterates=True)
    assert rest.converged
    assert count_pass_throughs(rest.iterates_mm, bands) == 0
    radius = min(float(np.hypot(x[:, 0], x[:, 2]).min()) for x in rest.positions_mm)
    assert radius > girth / (2 * np.pi) + 0.6
    for tie in ties:
        gap = rest.positions_mm[21][tie.first[1]] - rest.positions_mm[0][tie.second[1]]
        assert np.linalg.norm(gap) < 4.0


def test_crossing_strands_are_a_finding() -> None:
    """A drawing whose strands run through each other is refused as data, unmoved."""
    square = np.array([[0.0, 0, 0], [10, 0, 0], [10, 10, 0], [0, 10, 0]])
    other = np.array([[5.0, 0, -5], [5, 0, 5], [5, -9, 5], [5, -9, -5]])
    rest = relax_bands([Band(square, 30, 1.5), Band(other, 30, 1.5)])
    assert not rest.converged
    assert [f.code for f in rest.findings] == ["bands-drawn-crossing"]
    assert np.array_equal(rest.positions_mm[0], square)


def test_too_few_steps_are_a_finding() -> None:
    """At its ceiling the solver returns what it has, and says so."""
    rest = settled(chain(2, 24), goal=Goal(iterations=2))
    assert not rest.converged
    assert [f.code for f in rest.findings] == ["rest-not-reached"]
    assert rest.iterations == 2


def test_progress_may_stop_the_work() -> None:
    """Answering False stops at once and keeps the shape so far."""
    told = []

    def hear(progress) -> bool:
        told.append(progress)
        return len(told) < 4

    rest = settled(chain(2, 24), progress=hear)
    assert [f.code for f in rest.findings] == ["rest-interrupted"]
    assert len(told) == 4
    assert told[0].stage == "getting ready"
    with pytest.raises(ValueError, match="read-only"):
        rest.positions_mm[0][0, 0] = 1.0


@pytest.mark.parametrize(
    ("change", "word"),
    [
        ({"points_mm": np.zeros((2, 3))}, "points"),
        ({"points_mm": np.full((5, 3), np.nan)}, "finite"),
        ({"points_mm": np.zeros((5, 3))}, "coincide"),
        ({"rest_length_mm": 0.0}, "positive"),
        ({"thickness_mm": -1.0}, "positive"),
    ],
)
def test_nonsense_is_refused(change, word: str) -> None:
    """A band that is none is a programmer's mistake."""
    with pytest.raises(ValueError, match=word):
        relax_bands([chain(1, 24).bands[0]._replace(**change)])
    with pytest.raises(RefusedError, match="no bands"):
        relax_bands([])
    with pytest.raises(ValueError, match="no point"):
        relax_bands(chain(1, 24).bands, Supports(fixed=((0, 99),)))
