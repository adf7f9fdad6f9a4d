from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
from hypothesis import assume, given, strategies as st

from examples.pieces import PIECES
from pegwright.fit import LoomLoads, check_hooked_bands, find_loom_loads
from pegwright.fit.loom_loads import bands_on_pegs_at, peg_loads_at
from pegwright.fit.stretch import tautness
from pegwright.loom import History, replay_pattern
from pegwright.pattern import Law, MooneyRivlin, NeoHookean, Pattern, PatternBuilder, PegAt, Pegs, Rows
from pegwright.shape import RubberLaw, nominal_stress
from pegwright.shape.band_on_pegs import stretch_over_pegs

SECTION_MM2 = math.pi * 1.5**2 / 4


def worked(pattern: Pattern) -> tuple[History, LoomLoads]:
    history = replay_pattern(pattern)
    return history, find_loom_loads(pattern, history)


def over(spots: list[tuple[float, float]], bore_mm: float = 13.5, rubber: Law | None = None) -> Pattern:
    loom = Pegs(pegs=tuple(PegAt(at=f"A{i + 1}", x_mm=x, y_mm=y) for i, (x, y) in enumerate(spots)))
    m = (
        PatternBuilder("Spar", loom)
        .band("ring", bore_mm=bore_mm, rubber=rubber)
        .colour("A", "slate", "#4A5A6A", "ring")
    )
    m.place("A", *(f"A{i + 1}" for i in range(len(spots))))
    return m.pattern()


def chain(links: int, pitch_mm: float = 16.0) -> Pattern:
    m = PatternBuilder("Ebb", Rows(rows=1, pegs=links + 1, pitch_mm=pitch_mm)).colour("A", "slate", "#4A5A6A")
    for k in range(1, links + 1):
        m.place("A", f"A{k}", f"A{k + 1}")
    for k in range(links, 1, -1):
        m.hook(f"A{k}", f"A{k - 1}")
    return m.pattern()


@given(st.floats(10, 100), st.floats(0, 2 * math.pi), st.integers(3, 7), st.floats(8, 30))
def test_bands_on_pegs_against_the_shape_room(radius: float, turn: float, pegs: int, bore: float) -> None:
    """Stretch, tension and loads of a band over pegs on a circle, by other code (of the shape room)."""
    spots = [
        (radius * math.cos(turn + 2 * math.pi * k / pegs), radius * math.sin(turn + 2 * math.pi * k / pegs))
        for k in range(pegs)
    ]
    _, loom = worked(over(spots, bore))
    (one,) = bands_on_pegs_at(loom, 0)
    other = stretch_over_pegs(spots, 5.0, bore, 1.5)
    assert one.taut_mm == pytest.approx(other.taut_mm)
    assert one.tension_n == pytest.approx(other.tension_n, rel=1e-9, abs=1e-9)
    assert one.slack == other.slack
    bearing = peg_loads_at(loom, 0)
    for k, load in enumerate(other.load_n):
        got = bearing.get(f"A{k + 1}")
        assert np.allclose((got.x_n, got.y_n) if got else (0.0, 0.0), load, atol=1e-8)


@pytest.mark.parametrize(("apart", "tension"), [(25, 0.28), (30, 0.52), (40, 0.90)])
def test_tension_of_an_18_mm_band(apart: float, tension: float) -> None:
    """Neo-Hookean rubber of 0.4 MPa, reckoned by hand: T = πt²/4 · 0.4 (λ − λ⁻²)."""
    _, loom = worked(over([(0, 0), (apart, 0)], 18, NeoHookean(shear_mpa=0.4)))
    (one,) = bands_on_pegs_at(loom, 0)
    assert one.tension_n == pytest.approx(tension, abs=0.012)
    assert peg_loads_at(loom, 0)["A1"].x_n == pytest.approx(2 * one.tension_n)
    assert peg_loads_at(loom, 0)["A2"].x_n == pytest.approx(-2 * one.tension_n)


def test_a_hooked_chain_by_hand() -> None:
    """Four strands from peg to fold, two half turns on the peg, two bends over the band that holds the fold.

    Pitch 16, peg 5, band 13.5 × 1.5 mm: 4 (16 − 3.25) + 2 · 3.25π + 2 (π − 2) 1.5 = 74.8 mm, at rest 15π.
    """
    history, loom = worked(chain(3))
    hooked = bands_on_pegs_at(loom, 4)
    assert len(history.moves) == 5
    assert [one.band for one in hooked] == [1, 2, 3]
    for one in hooked[:2]:
        assert one.taut_mm == pytest.approx(4 * 12.75 + 6.5 * math.pi + 3 * (math.pi - 2))
        assert one.tension_n == pytest.approx(SECTION_MM2 * float(nominal_stress(RubberLaw(), one.stretch)))
    assert [one.folds for one in hooked] == [("A2",), ("A3",), ()]
    first = bands_on_pegs_at(loom, 2)
    assert [one.stretch for one in first] == pytest.approx([(32 + 6.5 * math.pi) / (15 * math.pi)] * 3)
    # A1 bears all four strands of band 1; A2 band 2's four against the fold's four.
    bearing = peg_loads_at(loom, 4)
    assert bearing["A1"].y_n == pytest.approx(4 * hooked[0].tension_n)
    assert "A2" not in bearing


@pytest.mark.parametrize("name", sorted(PIECES))
def test_every_workshop_piece(name: str) -> None:
    """Action is reaction for every band; a peg bears the sum over bands; plain bands as in `stretch`."""
    pattern = PIECES[name]()
    history, loom = worked(pattern)
    for one in loom.bands:
        assert np.sum([pull for _, pull in one.pulls_n] or [(0, 0)], axis=0) == pytest.approx(
            (0, 0), abs=1e-9
        )
        assert (one.tension_n > 0) == (one.on and one.stretch > 1)
    placed = {(t.band, t.at): t.taut_mm for t in tautness(pattern, history) if t.placed}
    for one in loom.bands:
        if (one.band, one.at) in placed and not one.folds:
            assert one.taut_mm == pytest.approx(placed[one.band, one.at])
    for at in range(0, len(history.moves), 7):
        sums: dict[str, np.ndarray] = {}
        for one in bands_on_pegs_at(loom, at):
            for peg, pull in one.pulls_n:
                sums[peg] = sums.get(peg, np.zeros(2)) + pull
        bearing = peg_loads_at(loom, at)
        for peg, total in sums.items():
            got = bearing.get(peg)
            assert np.allclose((got.x_n, got.y_n) if got else (0.0, 0.0), total, atol=1e-7)
    assert check_hooked_bands(pattern, history) == ()


@given(
    st.lists(st.tuples(st.integers(-60, 60), st.integers(-60, 60)), min_size=3, max_size=5, unique=True),
    st.integers(0, 5),
)
def test_loads_are_the_slope_of_length(spots: list[tuple[int, int]], which: int) -> None:
    """Virtual work: moving a peg by dx does the work −T dL, so the pull per unit of tension is −dL/dx."""
    assume(_strictly_convex(spots))  # where pegs stand in line the slope has a kink
    which %= len(spots)
    h = 1e-4
    lengths = []
    for dx in (-h, h):
        moved = [(x + dx * (k == which), float(y)) for k, (x, y) in enumerate(spots)]
        _, loom = worked(over(moved, 5.0))
        assume(loom.bands)  # a peg that stands inside makes a refused move
        lengths.append(loom.bands[0].taut_mm)
    _, loom = worked(over([(float(x), float(y)) for x, y in spots], 5.0))
    assume(loom.bands and loom.bands[0].tension_n > 0)
    one = loom.bands[0]
    pull = dict(one.pulls_n)[f"A{which + 1}"][0] / one.tension_n
    slope = (lengths[1] - lengths[0]) / (2 * h)
    assert pull == pytest.approx(-slope, abs=1e-4)


def _strictly_convex(spots: list[tuple[int, int]]) -> bool:
    return all(
        abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) > 40
        for a, b, c in itertools.combinations(spots, 3)
    )


def test_bands_come_off_the_reckoning_with_their_loops() -> None:
    m = PatternBuilder("Herring", Rows(rows=2, pegs=1)).colour("A", "slate", "#4A5A6A")
    for _ in range(3):
        m.place("A", "A1", "B1")
    m.lift("A1")
    m.lift("B1")
    _, loom = worked(m.pattern())
    assert [one.band for one in bands_on_pegs_at(loom, 2)] == [1, 2, 3]
    assert [one.band for one in bands_on_pegs_at(loom, 3)] == [2, 3]


def test_near_breaking_is_said_with_its_numbers() -> None:
    """Hooked back over 45 mm: 4 · 41.75 + 6.5π + 3(π − 2) = 190.8 mm, over four times 15π mm."""
    pattern = chain(4, 45.0)
    (found,) = check_hooked_bands(pattern, worked(pattern)[0])
    assert found.code == "band-near-breaking"
    assert (found.place.step, found.place.band) == (5, 3)
    assert found.facts["stretch"] == pytest.approx(190.8 / (15 * math.pi), abs=0.01)
    assert found.facts["force_n"] == pytest.approx(
        SECTION_MM2 * float(nominal_stress(RubberLaw(), found.facts["stretch"]))
    )
    assert "2 more like it" in found.message
    assert check_hooked_bands(chain(4, 40.0), worked(chain(4, 40.0))[0]) == ()


def test_the_rubber_of_the_kind_counts() -> None:
    spots = [(0.0, 0.0), (40.0, 0.0)]
    soft, stiff = (
        worked(over(spots, rubber=MooneyRivlin(c10_mpa=c, c01_mpa=c)))[1].bands[0] for c in (0.05, 0.1)
    )
    assert stiff.tension_n == pytest.approx(2 * soft.tension_n)
    assert stiff.stretch == soft.stretch
