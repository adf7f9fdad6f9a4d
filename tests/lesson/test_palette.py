"""Colours are told apart by published measures; the check finds look-alikes and its cure cures them."""

from __future__ import annotations

from itertools import combinations
from typing import Any

import jsonpatch
import msgspec
import pytest
import wcag_contrast_ratio
from coloraide import Color

from examples.pieces import PIECES
from pegwright.lesson import check_palette
from pegwright.lesson.scene.palette import ALIKE, APART, SIGHTS, colour_distance, contrast_ratio, suggest_tint
from pegwright.pattern import Pattern, PatternBuilder, Rows, read_pattern, write_pattern
from pegwright.press.paint.inks import COLOUR, GREY

OKABE_ITO = ["#000000", "#E69F00", "#56B4E9", "#009E73", "#F0E442", "#0072B2", "#D55E00", "#CC79A7"]


@pytest.mark.parametrize(
    ("a", "b", "wanted"),
    [
        ((50, 2.6772, -79.7751), (50, 0, -82.7485), 2.0425),
        ((50, 3.1571, -77.2803), (50, 0, -82.7485), 2.8615),
        ((50, 2.8361, -74.0200), (50, 0, -82.7485), 3.4412),
        ((50, 2.5, 0), (73, 25, -18), 27.1492),
        ((50, 2.5, 0), (61, -5, 29), 22.8977),
        ((50, 2.5, 0), (56, -27, -3), 31.9030),
        ((50, 2.5, 0), (58, 24, 15), 19.4535),
    ],
)
def test_the_distance_is_ciede2000(a: Any, b: Any, wanted: float) -> None:
    """Pairs of Sharma, Wu and Dalal (2005), Table 1 (inputs from memory, results as printed)."""
    first, second = Color("lab-d65", a), Color("lab-d65", b)
    assert first.delta_e(second, method="2000", space="lab-d65") == pytest.approx(wanted, abs=5e-5)


@pytest.mark.parametrize(
    ("sight", "rows"),
    [
        ("protan", (".152286 1.052583 -.204868", ".114503 .786281 .099216", "-.003882 -.048116 1.051998")),
        ("deutan", (".367322 .860646 -.227968", ".280085 .672501 .047413", "-.011820 .042940 .968881")),
        ("tritan", ("1.255528 -.076749 -.178779", "-.078411 .930809 .147602", ".004733 .691367 .303900")),
    ],
)  # fmt: skip
def test_the_simulation_is_machados(sight: str, rows: tuple[str, ...]) -> None:
    """Machado, Oliveira and Fernandes (2009), severity 1.0, in linear RGB: all three columns."""
    for i in range(3):
        one = Color("srgb-linear", [float(k == i) for k in range(3)])
        seen = one.filter(sight, 1.0, method="machado", space="srgb-linear", out_space="srgb-linear")
        assert list(seen.coords()) == pytest.approx([float(row.split()[i]) for row in rows], abs=1e-6)


@pytest.mark.parametrize(
    ("sight", "least"), [("", 21.7), ("protan", 12.2), ("deutan", 11.6), ("tritan", 10.9)]
)
def test_the_smallest_distances_of_a_palette_made_for_everybody(sight: str, least: float) -> None:
    """The eight colours of Okabe and Ito (2008), computed beforehand by another library."""
    found = min(colour_distance(a, b, sight) for a, b in combinations(OKABE_ITO, 2))
    assert found == pytest.approx(least, abs=0.15)


@pytest.mark.parametrize(
    ("a", "b", "wanted"),
    [
        ("#000000", "#ffffff", 21.0), ("#767676", "#ffffff", 4.5422), ("#777777", "#ffffff", 4.4781),
        ("#949494", "#ffffff", 3.0335), ("#595959", "#ffffff", 7.0047), ("#ff0000", "#ffffff", 3.9985),
        ("#0000ff", "#ffffff", 8.5925), ("#00ff00", "#ffffff", 1.3722), ("#ffff00", "#000000", 19.556),
        ("#ff0000", "#0000ff", 2.1489),
    ],
)  # fmt: skip
def test_contrast_is_wcags(a: str, b: str, wanted: float) -> None:
    """WCAG 2.2, relative luminance: values computed from the formula, and another library's."""
    assert contrast_ratio(a, b) == pytest.approx(wanted, abs=5e-4)
    rgb = [tuple(int(t[i : i + 2], 16) / 255 for i in (1, 3, 5)) for t in (a, b)]
    assert contrast_ratio(a, b) == pytest.approx(wcag_contrast_ratio.rgb(*rgb), abs=2e-3)


@pytest.mark.parametrize("inks", [COLOUR, GREY], ids=["colour", "grey"])
def test_what_is_drawn_has_contrast_enough(inks: Any) -> None:
    """WCAG 2.2: names of pegs, letters and numbers 4.5 : 1, arrows and edges of bands 3 : 1."""
    for ground in (inks.ground, "#ffffff"):
        assert contrast_ratio(inks.graphite, ground) >= 4.5
        assert contrast_ratio(inks.name, ground) >= 4.5
        assert contrast_ratio(inks.accent, ground) >= 4.5


def _pattern(*tints: str) -> Pattern:
    m = PatternBuilder("Ebb", Rows(rows=1, pegs=9))
    for i, tint in enumerate(tints):
        m.colour(chr(65 + i), f"colour {i}", tint)
    return m.pattern()


@pytest.mark.parametrize("name", PIECES)
def test_the_workshops_pieces_can_be_told_apart(name: str) -> None:
    """Nothing to say about the pieces that come with the program."""
    assert check_palette(PIECES[name]()) == ()


def test_a_palette_made_for_everybody_is_left_alone() -> None:
    """Okabe and Ito's."""
    assert check_palette(_pattern(*OKABE_ITO)) == ()


@pytest.mark.parametrize(
    ("a", "b", "who"),
    [
        ("#777777", "#7a7a7a", "everybody"),
        ("#7d7a1c", "#b3661a", "little green"),
    ],
)
def test_colours_that_look_alike_are_found_and_the_cure_cures(a: str, b: str, who: str) -> None:
    """The finding says to whom; its patch, carried out by another library, leaves nothing to say."""
    pattern = _pattern(a, b, "#f0f0f0")
    (found,) = check_palette(pattern)
    assert found.code == "colours-alike"
    assert who in found.message
    assert found.place.path == "/colours/1/hex"
    assert found.fix is not None
    mended = read_pattern(
        msgspec.json.encode(
            jsonpatch.apply_patch(msgspec.json.decode(write_pattern(pattern)), list(found.fix.patch))
        )
    )
    assert mended.pattern is not None
    assert check_palette(mended.pattern) == ()


def test_a_suggestion_keeps_its_distance_for_all_eyes_or_is_not_made() -> None:
    """Among two colours there is room; among very many there is none."""
    better = suggest_tint("#777777", ["#7a7a7a"])
    assert all(colour_distance(better, "#7a7a7a", sight) >= APART > ALIKE for sight in SIGHTS.values())
    greys = [f"#{k:02x}{k:02x}{k:02x}" for k in range(0, 256, 8)]
    assert suggest_tint("#777777", greys) == ""
