from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from pegwright.finding import Finding
from pegwright.fit import check_stretch
from pegwright.fit.stretch import rest_mm, taut_mm, tautness
from pegwright.loom import board_of, replay_pattern
from pegwright.pattern import BandType, Pattern, PatternBuilder, PegAt, Pegs, Rows


def check(pattern: Pattern) -> tuple[Finding, ...]:
    return check_stretch(pattern, replay_pattern(pattern))


def pair(apart_mm: float, bore_mm: float, peg_mm: float = 5.0) -> Pattern:
    loom = Rows(rows=1, pegs=2, pitch_mm=apart_mm, peg_mm=peg_mm)
    m = PatternBuilder("Fender", loom).band("ring", bore_mm=bore_mm).colour("A", "slate", "#4A5A6A", "ring")
    m.place("A", "A1", "A2")
    return m.pattern()


@pytest.mark.parametrize(("bore", "apart"), [(15, 15.7), (17, 18.8), (18, 20.4), (20, 23.6)])
def test_slack_until_the_pegs_are_far_enough(bore: float, apart: float) -> None:
    """From the lengths of an open belt: a band over pegs of 5 mm is slack until s > π(bore − 5)/2."""
    assert [f.code for f in check(pair(apart - 0.1, bore))] == ["band-slack"]
    assert check(pair(apart + 0.1, bore)) == ()


@given(st.floats(6, 40), st.floats(6, 300), st.floats(2, 8))
def test_the_slack_rule_in_closed_form(bore: float, apart: float, peg: float) -> None:
    """Common practice calls it slack when a finger can still lift it off; here, exactly s ≤ π(bore − Ø)/2."""
    codes = [f.code for f in check(pair(apart, bore, peg))]
    limit = math.pi * (bore - peg) / 2
    if abs(apart - limit) > 1e-6:
        assert ("band-slack" in codes) == (apart < limit)


@pytest.mark.parametrize(("apart", "stretch"), [(25, 1.15), (30, 1.31), (40, 1.64)])
def test_stretch_of_an_18_mm_band(apart: float, stretch: float) -> None:
    """Open belt over two pegs of 5 mm: (2s + π(d + t)) / π(bore + t), reckoned by hand."""
    pattern = pair(apart, 18)
    (one,) = tautness(pattern, replay_pattern(pattern))
    assert one.stretch == pytest.approx(stretch, abs=0.005)


@pytest.mark.parametrize(
    ("apart", "codes"),
    [(60, []), (61, ["band-taut"]), (106, ["band-taut"]), (108, ["band-overstretched"])],
)
def test_three_and_five_times(apart: float, codes: list[str]) -> None:
    """Worked up to about 3×, breaking from about 5×: common practice, no source."""
    assert [f.code for f in check(pair(apart, 13.5))] == codes


@given(
    st.lists(st.tuples(st.integers(-50, 50), st.integers(-50, 50)), min_size=2, max_size=6, unique=True),
    st.integers(0, 3),
)
def test_taut_length_by_a_rubber_ring_of_points(spots: list[tuple[int, int]], turns: int) -> None:
    """A second way: the length round a convex set is π times its mean width (Cauchy's theorem)."""
    layout = Pegs(pegs=tuple(PegAt(at=f"A{i + 1}", x_mm=x, y_mm=y) for i, (x, y) in enumerate(spots)))
    names = [f"A{i + 1}" for i in range(len(spots))]
    n, total = 20_000, 0.0
    for k in range(n):
        c, s = math.cos(math.pi * k / n), math.sin(math.pi * k / n)
        along = [c * x + s * y for x, y in spots]
        total += max(along) - min(along)
    got = taut_mm(board_of(layout), names + ["A1"] * turns, 1.5)
    assert got == pytest.approx(math.pi * total / n + (1 + turns) * math.pi * 6.5, rel=1e-4)


def test_caps_are_wound_tight_enough_and_hooks_may_pull_too_far() -> None:
    """Three turns of 6.5 mm against a rest length of 15π mm: 1.3 times."""
    m = PatternBuilder("Pennant", Rows(rows=1, pegs=9, pitch_mm=16)).colour("A", "slate", "#4A5A6A")
    m.wind("A", "A1")
    m.place("A", "A1", "A2")
    m.place("A", "A1", "A2")
    m.hook("A2", "A9")
    history = replay_pattern(m.pattern())
    cap, *_, pulled = tautness(m.pattern(), history)
    assert cap.stretch == pytest.approx(1.3)
    assert pulled.taut_mm == pytest.approx(2 * 8 * 16 + math.pi * 6.5)
    assert [(f.code, f.place.step, f.place.band) for f in check(m.pattern())] == [
        ("band-overstretched", 4, 2)
    ]


def test_many_of_a_sort_are_one_finding() -> None:
    m = PatternBuilder("Hawser", Rows(rows=1, pegs=30, pitch_mm=12)).colour("A", "slate", "#4A5A6A")
    for k in range(1, 30):
        m.place("A", f"A{k}", f"A{k + 1}")
    (one,) = check(m.pattern())
    assert (one.code, one.facts["count"]) == ("band-slack", 29)
    assert "28 more like it" in one.message


def test_rest_length() -> None:
    assert rest_mm(BandType(bore_mm=18, thickness_mm=1.5)) == pytest.approx(61.26, abs=0.005)
