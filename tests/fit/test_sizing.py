from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, strategies as st
from scipy.interpolate import pchip_interpolate

from pegwright.finding import Finding
from pegwright.fit.sizing import EASE, HAND_PULL_N, StretchCurve, assess_fit, read_stretch_curve
from pegwright.shape import RubberLaw, nominal_stress

POINTS = [(0.0, 150.0), (0.5, 165.0), (1.5, 185.0), (4.0, 210.0), (9.0, 240.0)]


def curve() -> StretchCurve:
    found, findings = read_stretch_curve(POINTS)
    assert found is not None
    assert findings == ()
    return found


def cord(length_mm: float, section_mm2: float) -> StretchCurve:
    """A closed cord of the default rubber, up to three times its length."""
    stretches = np.linspace(1, 3, 60)
    tensions = section_mm2 * nominal_stress(RubberLaw(), stretches)
    found, _ = read_stretch_curve(list(zip(tensions.tolist(), (length_mm * stretches).tolist(), strict=True)))
    assert found is not None
    return found


def codes(findings: tuple[Finding, ...]) -> list[str]:
    return [f.code for f in findings]


def test_the_curve_goes_through_its_points_and_rises_between() -> None:
    one = curve()
    for force, length in POINTS:
        assert one(length) == pytest.approx(force)
    assert one(10) == 0
    lengths = np.linspace(150, 240, 300)
    forces = [one(float(mm)) for mm in lengths]
    assert np.all(np.diff(forces) >= 0)
    assert forces == pytest.approx(pchip_interpolate([p[1] for p in POINTS], [p[0] for p in POINTS], lengths))
    with pytest.raises(ValueError, match="known up to"):
        one(241)


@pytest.mark.parametrize(
    "points",
    [
        [],
        [(1.0, 150.0)],
        [(0.0, 150.0), (2.0, 170.0), (1.0, 180.0)],
        [(0.0, 150.0), (1.0, 150.0)],
        [(-1.0, 150.0), (1.0, 160.0)],
        [(0.0, math.nan), (1.0, 160.0)],
        [(0.0, 150.0), (math.inf, 160.0)],
    ],
)
def test_no_piece_pulls_so(points: list[tuple[float, float]]) -> None:
    found, findings = read_stretch_curve(points)
    assert found is None
    assert codes(findings) == ["stretch-curve-nonsense"]


def test_a_piece_on_a_wrist_by_hand() -> None:
    """150 mm at rest, on a wrist of 165 mm: 0.909; Laplace 0.5 N / (10 mm × 26.26 mm) = 1.904 kPa."""
    fit = assess_fit(150, curve(), width_mm=10, wrist_mm=165)
    worn = fit.worn
    assert worn is not None
    assert (worn.ease, worn.tension_n) == (pytest.approx(0.9091, abs=1e-4), pytest.approx(0.5))
    assert worn.pressure_kpa == pytest.approx(1.904, abs=1e-3)
    assert worn.feel == "snug"
    assert worn.hand_mm == pytest.approx(216.15)
    assert worn.pull_n == pytest.approx(2 * curve()(216.15))
    assert fit.findings == ()
    assert fit.wrists_mm == (150, pytest.approx(150 / 0.85))
    assert fit.limited_by == "ease"


@pytest.mark.parametrize(
    ("length", "wrist", "expected"),
    [
        (150, 149, ["fit-loose"]),
        (150, 151, []),
        (150, 176, []),
        (150, 177, ["fit-tight"]),
        (150, 190, ["fit-tight", "fit-unmeasured"]),
        (150, 260, ["fit-tight", "fit-unmeasured"]),
    ],
)
def test_loose_and_tight(length: float, wrist: float, expected: list[str]) -> None:
    """0.85 to 1.0 of the wrist: common practice, no source. 1.31 × 190 mm lies beyond the curve."""
    fit = assess_fit(length, curve(), width_mm=60, wrist_mm=wrist)
    assert codes(fit.findings) == expected


def test_a_stiff_piece_does_not_pass_the_hand() -> None:
    stiff = cord(150, 60.0)
    fit = assess_fit(150, stiff, width_mm=40, wrist_mm=160)
    assert "fit-hand" in codes(fit.findings)
    assert fit.limited_by == "hand"
    assert fit.worn is not None
    assert fit.worn.pull_n is not None
    assert fit.worn.pull_n > HAND_PULL_N


def test_close_pressing_counts_as_tight() -> None:
    """The same length and wrist, narrower on the skin: tight by rank, within 0.85 to 1.0 all the same."""
    wide = assess_fit(150, cord(150, 8.0), width_mm=20, wrist_mm=170)
    narrow = assess_fit(150, cord(150, 8.0), width_mm=4, wrist_mm=170)
    assert codes(wide.findings) == []
    assert codes(narrow.findings) == ["fit-tight"]
    assert "finger" in narrow.findings[0].hint


@given(st.floats(100, 220), st.floats(0.5, 80), st.floats(3, 40))
def test_the_range_by_trying_every_wrist(length: float, section: float, pull: float) -> None:
    """A second way: every wrist by the millimetre, judged by the three rules one by one."""
    stretch = cord(length, section)
    fit = assess_fit(length, stretch, width_mm=10, hand_pull_n=pull)
    suiting = []
    for wrist in np.arange(math.ceil(length), 400.0):
        hand = 1.31 * wrist
        opens = hand <= 3 * length and 2 * stretch(hand) <= pull
        if length >= EASE[0] * wrist and opens:
            suiting.append(float(wrist))
    if not suiting:
        assert fit.wrists_mm is None or fit.wrists_mm[1] < math.ceil(length)
    else:
        assert fit.wrists_mm is not None
        assert fit.wrists_mm[0] == length
        assert fit.wrists_mm[1] - 1 - 1e-6 < max(suiting) <= fit.wrists_mm[1] + 1e-6


def test_a_function_serves_as_well_as_a_table() -> None:
    table, section = cord(150, 10.0), 10.0
    law = assess_fit(
        150, lambda mm: section * float(nominal_stress(RubberLaw(), mm / 150)), width_mm=10, wrist_mm=165
    )
    assert law.worn is not None
    worn = assess_fit(150, table, width_mm=10, wrist_mm=165).worn
    assert worn is not None
    assert law.worn.tension_n == pytest.approx(worn.tension_n, rel=1e-3)
    assert law.worn.pull_n == pytest.approx(worn.pull_n, rel=1e-3)


@pytest.mark.parametrize("bad", [0.0, -1.0, math.nan, math.inf])
def test_sizes_are_positive(bad: float) -> None:
    with pytest.raises(ValueError, match="positive"):
        assess_fit(bad, curve(), width_mm=10)
    with pytest.raises(ValueError, match="positive"):
        assess_fit(150, curve(), width_mm=10, wrist_mm=bad)
