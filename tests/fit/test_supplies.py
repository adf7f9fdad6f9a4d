from __future__ import annotations

import math
from collections import Counter

import pytest
from hypothesis import given, strategies as st

from pegwright.finding import RefusedError
from pegwright.fit import Heap, Supplies, count_supplies, grade_sizes, supplies_for_class
from pegwright.fit.grading import Gauge
from pegwright.fit.sizing import EASE
from pegwright.fit.supplies import LoomNeed
from pegwright.fit.weights import band_mass_g, band_volume_mm3
from pegwright.fit.wrist import SIZES, wrist_of_size
from pegwright.loom import replay_pattern
from pegwright.pattern import BandType, JoinedLooms, Pattern, PatternBuilder, PegAt, Pegs, Round, Rows
from pegwright.proof import check, prove
from pegwright.structure import structure_of
from testing.rosettes import rosettes


def count(pattern: Pattern) -> Supplies:
    return count_supplies(pattern, replay_pattern(pattern))


def test_rosette_strip_takes_what_the_trade_says() -> None:
    """Common practice, no source: 38 outline bands, 21 and 21 fill bands, one clip, one loom of 3 × 13."""
    needs = count(rosettes(6))
    assert [(h.letter, h.total) for h in needs.heaps] == [("A", 38), ("B", 21), ("C", 21)]
    assert (needs.clips, needs.knots, needs.scissors, needs.hooks) == (1, 0, 0, 1)
    assert needs.looms == (LoomNeed(kind="straight", rows=3, pegs=13, pitch_mm=16.0),)
    a, b, _ = needs.heaps
    assert (a.placed, a.caps, a.finishing) == (36, 1, 1)
    assert (b.placed, b.caps) == (18, 3)
    assert not replay_pattern(rosettes(6)).findings


@pytest.mark.parametrize(("size", "bands"), [(2, {3, 4}), (4, {6, 7, 8, 9, 10})])
def test_the_extension_that_a_wrist_asks_for_is_told_apart_and_summed(size: int, bands: set[int]) -> None:
    """Common practice, no source: three or four bands for a small wrist, six or more for a large one.

    The length of a rosette (19.0 mm) and of a chain's band (5.8 mm) are figures of a prototype.
    """
    strip = Gauge(base_mm=0.0, repeat_mm=19.0, extension_mm=5.8)
    wrist = wrist_of_size(SIZES[size])
    (one,) = grade_sizes(rosettes(6), strip, [wrist], repeats=6)
    assert one.pattern is not None
    heaps = count(one.pattern).heaps
    assert sum(heap.extension for heap in heaps) in bands
    assert heaps[0].extension in bands, "of the colour that binds the end"
    assert sum(heap.total for heap in heaps) == 80 + heaps[0].extension
    assert EASE[0] * wrist.girth_mm <= 6 * 19.0 + heaps[0].extension * 5.8 <= EASE[1] * wrist.girth_mm


def test_every_band_of_the_strip_is_held() -> None:
    """Common practice, no source: such strips are worn. 80 bands, 80 held, with or without an extension."""
    for bands in (0, 4):
        history = replay_pattern(rosettes(6, extend=bands))
        proof = prove(structure_of(history.events, history.board.spots))
        assert proof.held == tuple(range(1, 81 + bands))
        assert check(history.events, proof, history.board.spots) is None


@pytest.mark.parametrize(("material", "grams"), [("silicone", 0.097), ("rubber", 0.081), ("tpe", 0.078)])
def test_mass_of_a_band(material: str, grams: float) -> None:
    """A torus of 18 mm bore and 1.5 mm section is 108.3 mm³ (Pappus), four fifths of it filled."""
    band = BandType(bore_mm=18, thickness_mm=1.5, material=material)  # type: ignore[arg-type]
    assert band_volume_mm3(band) == pytest.approx(108.3, abs=0.05)
    assert band_mass_g(band) == pytest.approx(grams, abs=0.0006)


def test_a_usual_band_weighs_what_bands_weigh() -> None:
    """60 to 90 mg (common practice, no source)."""
    assert 0.060 <= band_mass_g(BandType()) <= 0.090


def test_volume_by_slices() -> None:
    """A second way: the torus cut into thin rings, summed."""
    band = BandType(bore_mm=13.5, thickness_mm=1.5)
    middle, r, n = (13.5 + 1.5) / 2, 0.75, 20_000
    total = 0.0
    for i in range(n):
        x = -r + (i + 0.5) * 2 * r / n
        total += 2 * math.pi * (middle + x) * 2 * math.sqrt(r * r - x * x) * 2 * r / n
    assert band_volume_mm3(band) == pytest.approx(total, rel=1e-5)


def test_weighed_hundred_beats_the_reckoned_volume() -> None:
    m = (
        PatternBuilder("Ebb", Rows(rows=1, pegs=4))
        .band("thin", weight_100_g=8.5)
        .colour("A", "slate", "#4A5A6A", "thin")
    )
    for peg in (1, 2, 3):
        m.place("A", f"A{peg}", f"A{peg + 1}")
    (heap,) = count(m.pattern()).heaps
    assert heap.weighed
    assert heap.mass_g == pytest.approx(3 * 0.085)


def test_hung_knotted_and_unlisted() -> None:
    """A knot needs scissors; an unlisted letter still has its heap, without a weight."""
    m = PatternBuilder("Cork", Rows(rows=1, pegs=3)).colour("A", "slate", "#4A5A6A")
    m.place("A", "A1", "A2")
    m.hang("Z")
    m.slide("A2", "A1")
    m.knot("A1")
    needs = count(m.pattern())
    assert [(h.letter, h.hung, h.mass_g is None) for h in needs.heaps] == [("A", 0, False), ("Z", 1, True)]
    assert (needs.knots, needs.scissors, needs.hooks, needs.mass_g) == (1, 1, 1, None)


def test_looms_of_every_layout() -> None:
    two = JoinedLooms(looms=(Rows(rows=3, pegs=13), Rows(rows=3, pegs=13), Rows(rows=2, pegs=5)))
    looms = count(PatternBuilder("Quay", two).pattern()).looms
    assert [(loom.rows, loom.pegs, loom.count) for loom in looms] == [(3, 13, 2), (2, 5, 1)]
    (ring,) = count(PatternBuilder("Buoy", Round(pegs=6, diameter_mm=80)).pattern()).looms
    assert (ring.kind, ring.pegs) == ("round", 6)
    assert ring.pitch_mm == pytest.approx(40)  # a regular hexagon's side is its radius
    (loose,) = count(PatternBuilder("Jetty", Pegs(pegs=(PegAt(at="A1", x_mm=0, y_mm=0),))).pattern()).looms
    assert (loose.kind, loose.pegs, loose.pitch_mm) == ("pegs", 1, None)


@given(st.integers(1, 60), st.integers(0, 100), st.integers(0, 400), st.integers(0, 5))
def test_class_counts_and_spares(learners: int, percent: int, bands: int, clips: int) -> None:
    """Spares are rounded up from the exact share, by whole-number arithmetic."""
    one = Supplies(heaps=(Heap(letter="A", placed=bands, caps=1, band_g=0.1),), clips=clips, hooks=1)
    many = supplies_for_class(one, learners, percent / 100)
    (heap,) = many.heaps
    assert heap.worked == learners * (bands + 1)
    assert heap.spares == -(-heap.worked * percent // 100)
    assert many.spare_clips == -(-clips * learners * percent // 100)
    assert (many.pieces, many.hooks) == (learners, learners)
    assert heap.mass_g == pytest.approx(0.1 * (heap.worked + heap.spares))


@pytest.mark.parametrize(("learners", "share"), [(0, 0.1), (3, -0.1), (3, 11), (3, math.nan)])
def test_class_refuses_nonsense(learners: int, share: float) -> None:
    with pytest.raises(RefusedError, match="1 learner or more"):
        supplies_for_class(Supplies(), learners, share)


@given(st.lists(st.sampled_from("ABC"), max_size=12))
def test_counts_by_a_second_way(letters: list[str]) -> None:
    m = PatternBuilder("Swell", Rows(rows=1, pegs=2))
    for letter in letters:
        m.place(letter, "A1", "A2")
    assert {h.letter: h.total for h in count(m.pattern()).heaps} == Counter(letters)
