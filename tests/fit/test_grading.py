from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from examples.pieces import PIECES
from pegwright.finding import Finding
from pegwright.fit import Wrist, grade_sizes, plan_size, read_wrist, with_extension
from pegwright.fit.grading import Gauge, LengthSample, fit_gauge
from pegwright.fit.wrist import SIZES, wrist_of_size
from pegwright.loom import replay_pattern
from pegwright.pattern import Extend, Pattern, PatternBuilder, Rows
from testing.rosettes import rosettes

# Figures of a prototype: motifs of a three-row strip about 19 mm apart, a chain 5.8 mm a band.
STRIP = Gauge(base_mm=0.0, repeat_mm=19.0, extension_mm=5.8)


def codes(findings: tuple[Finding, ...]) -> list[str]:
    return [f.code for f in findings]


def wrist(girth: float) -> Wrist:
    return Wrist(girth_mm=girth, low_mm=girth, high_mm=girth, said=f"{girth} mm")


def test_a_one_loom_strip_is_short_by_a_few_bands() -> None:
    """Six motifs want three or four more bands for a small wrist, six or more for a large one.

    Common practice, no source.
    """
    small = plan_size(wrist_of_size(SIZES[2]), STRIP, repeats=6)
    large = plan_size(wrist_of_size(SIZES[4]), STRIP, repeats=6)
    assert small.extension in (3, 4)
    assert large.extension >= 6
    assert small.findings == large.findings == ()


@given(st.floats(2, 40), st.floats(8, 30), st.floats(3, 9), st.floats(100, 230))
def test_plans_against_trying_everything(base: float, repeat: float, extension: float, girth: float) -> None:
    one = Gauge(base_mm=base, repeat_mm=repeat, extension_mm=extension)
    plan = plan_size(wrist(girth), one)
    low, high = 0.85 * girth, girth
    tried = {(r, e): base + r * repeat + e * extension for r in range(31) for e in range(80)}
    suiting = [pair for pair, mm in tried.items() if low <= mm <= high]
    assert plan.length_mm == pytest.approx(base + plan.repeats * repeat + plan.extension * extension)
    if suiting:
        most = max(r for r, _ in suiting)
        least_off = min(abs(tried[pair] - (low + high) / 2) for pair in suiting if pair[0] == most)
        assert plan.repeats == most
        assert abs(plan.length_mm - (low + high) / 2) == pytest.approx(least_off, abs=1e-6)
        assert plan.findings == ()
        assert low - 1e-6 <= plan.length_mm <= high + 1e-6
    else:
        assert codes(plan.findings) in (["fit-loose"], ["fit-tight"])


def test_what_suits_nobody_is_said() -> None:
    long = plan_size(wrist(120), STRIP, repeats=8)
    assert (long.extension, codes(long.findings)) == (0, ["fit-loose"])
    coarse = Gauge(base_mm=100, repeat_mm=100, extension_mm=100)
    assert codes(plan_size(wrist(140), coarse).findings) == ["fit-tight"]


def test_most_and_least() -> None:
    plan = plan_size(wrist(165), STRIP, most_repeats=5, least_extension=4)
    assert plan.repeats == 5
    assert plan.extension >= 4
    with pytest.raises(ValueError, match="counted from 0"):
        plan_size(wrist(165), STRIP, repeats=-1)


@given(st.floats(0, 50), st.floats(5, 40), st.floats(2, 10))
def test_the_gauge_comes_back(base: float, repeat: float, extension: float) -> None:
    truth = Gauge(base_mm=base, repeat_mm=repeat, extension_mm=extension)
    counts = [(4, 0), (6, 0), (6, 5)]
    pieces = [LengthSample(r, e, truth.length_mm(r, e)) for r, e in counts]
    found, findings = fit_gauge(pieces)
    assert found is not None
    assert findings == ()
    for r, e in ((3, 3), (10, 20)):
        assert found.length_mm(r, e) == pytest.approx(truth.length_mm(r, e), rel=1e-6)
    two, _ = fit_gauge(pieces[:2], extension_mm=extension)
    assert two is not None
    assert two.repeat_mm == pytest.approx(repeat)


def test_measurements_that_contradict() -> None:
    found, findings = fit_gauge([LengthSample(6, 0, 140), LengthSample(7, 0, 139)], extension_mm=5.8)
    assert found is None
    assert codes(findings) == ["gauge-nonsense"]
    with pytest.raises(ValueError, match="measure one more"):
        fit_gauge([LengthSample(6, 0, 140), LengthSample(7, 0, 159)])
    with pytest.raises(ValueError, match="measure one more"):
        fit_gauge([])


def test_grading_a_strip_counts_the_supplies_of_each_size() -> None:
    """Counted by hand: 6 + 6 bands and a cap a rosette, an end cap, a last band, the extension; one clip."""
    sizes = ["XS", "M", "6 1/2 in", "man"]
    graded = grade_sizes(lambda r, e: rosettes(r, extend=e), STRIP, sizes)
    assert [g.asked for g in graded] == sizes
    for one in graded:
        assert one.plan is not None
        assert one.supplies is not None
        assert one.findings == ()
        assert one.supplies.bands == 13 * one.plan.repeats + 2 + one.plan.extension
        assert one.supplies.clips == 1
    girths = [g.plan.wrist.girth_mm for g in graded if g.plan]
    lengths = [g.plan.length_mm for g in graded if g.plan]
    assert girths == sorted(girths)
    assert lengths == sorted(lengths)


def test_grading_a_pattern_changes_its_extension_only() -> None:
    graded = grade_sizes(rosettes(6, extend=6), STRIP, ["S", "L", "a foot", "3 m"], repeats=6)
    small, large, unread, nonsense = graded
    assert small.supplies is not None
    assert large.supplies is not None
    assert small.plan is not None
    assert large.plan is not None
    more = large.plan.extension - small.plan.extension
    assert large.supplies.bands - small.supplies.bands == more > 0
    assert codes(unread.findings) == ["wrist-unreadable"]
    assert codes(nonsense.findings) == ["wrist-nonsense"]
    assert unread.plan is None
    with pytest.raises(ValueError, match="how many repeats"):
        grade_sizes(rosettes(6), STRIP, ["S"])


def test_a_piece_without_a_free_end_cannot_grow() -> None:
    m = PatternBuilder("Mooring", Rows(rows=1, pegs=4)).colour("A", "slate", "#4A5A6A")
    for k in (1, 2, 3):
        m.place("A", f"A{k}", f"A{k + 1}")
    m.hook("A3", "A2")
    m.hook("A2", "A1")
    m.knot("A1")
    (one,) = grade_sizes(m.pattern(), STRIP, ["M"], repeats=2)
    assert codes(one.findings) == ["extension-nowhere"]
    assert one.supplies is None


@pytest.mark.parametrize("name", sorted(PIECES))
@pytest.mark.parametrize("bands", [0, 1, 7])
def test_every_workshop_piece_takes_or_refuses_an_extension(name: str, bands: int) -> None:
    pattern: Pattern = PIECES[name]()
    made = with_extension(pattern, bands)
    if made is None:
        return
    assert sum(step.bands for step in made.steps if isinstance(step, Extend)) in (bands, 0)
    history = replay_pattern(made)
    before = replay_pattern(pattern)
    old = sum(step.bands for step in pattern.steps if isinstance(step, Extend))
    assert history.findings == before.findings
    assert len(history.colours) - len(before.colours) == bands - old


def test_an_age_too_wide_for_one_length_is_served_at_its_mean() -> None:
    child = read_wrist("age 8").wrist
    assert child is not None
    plan = plan_size(child, STRIP)
    assert 0.85 * child.girth_mm <= plan.length_mm <= child.girth_mm
