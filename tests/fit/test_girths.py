"""Ankles, necks, fingers, keys and bottles: what is read, what is warned of, what it passes over."""

from __future__ import annotations

import pytest

from pegwright.fit import read_girth, read_wrist
from pegwright.fit.girths import PARTS
from pegwright.fit.sizing import assess_fit


def test_without_a_part_it_is_a_wrist() -> None:
    for text in ("16 cm", "M", "age 8", "165", "3 m"):
        assert read_girth(text) == read_wrist(text)


@pytest.mark.parametrize(
    ("text", "part", "girth_mm"),
    [
        ("ankle 22 cm", "ankle", 220.0),
        ("Knöchel: 22,5 cm", "ankle", 225.0),
        ("neck 14 in", "neck", 355.6),
        ("ring 54", "finger", 54.0),  # ISO 8653, from memory: a size is the inner circumference in mm
        ("ring size 54.5", "finger", 54.5),
        ("dedo 5,4 cm", "finger", 54.0),
        ("key 6 cm", "key", 60.0),
        ("botella 9 cm", "bottle", 90.0),
    ],
)
def test_a_girth_of_another_part_is_read(text: str, part: str, girth_mm: float) -> None:
    wrist = read_girth(text).wrist
    assert wrist is not None
    assert (wrist.part, wrist.girth_mm) == (part, pytest.approx(girth_mm))


@pytest.mark.parametrize(
    ("text", "codes"),
    [
        ("ankle 22 cm", []),
        ("ankle 22", ["girth-unreadable"]),
        ("key", ["girth-unreadable"]),
        ("finger 12 cm", ["girth-nonsense"]),
        ("ankle 40 cm", ["girth-unusual"]),
        ("neck 36 cm", ["girth-neck"]),
        ("ring 80", ["girth-finger", "girth-unusual"]),
    ],
)
def test_what_is_said_of_a_girth(text: str, codes: list[str]) -> None:
    wrist, findings = read_girth(text)
    assert [one.code for one in findings] == codes
    assert (wrist is None) == (codes in (["girth-unreadable"], ["girth-nonsense"]))


def test_surveys_agree_with_the_other_survey() -> None:
    """Heinz et al. 2003 (bdims) found ankles of 212.1 ± 14.4 mm in women and 231.6 ± 17.3 mm in men."""
    ankle = PARTS[0]
    for survey, mean_mm, sd_mm in zip(ankle.adults, (212.1, 231.6), (14.4, 17.3), strict=True):
        assert survey.mean_mm == pytest.approx(mean_mm, rel=0.02)
        assert survey.sd_mm == pytest.approx(sd_mm, rel=0.2)
        for percent, girth_mm in survey.percentiles.items():
            normal = (
                survey.mean_mm + {1: -2.33, 5: -1.64, 50: 0.0, 95: 1.64, 99: 2.33}[percent] * survey.sd_mm
            )
            assert girth_mm == pytest.approx(normal, rel=0.03)


def test_an_ankle_piece_has_to_open_over_the_heel() -> None:
    wrist = read_girth("ankle 22 cm").wrist
    assert wrist is not None
    made = {"wrist_mm": wrist.girth_mm, "part": wrist.part, "passes": wrist.passes}
    fit = assess_fit(205.0, lambda mm: max(0.0, (mm - 205.0) / 10), width_mm=10, **made)
    assert fit.worn is not None
    assert fit.worn.hand_mm == pytest.approx(365.2)
    assert [(one.code, one.facts["part"]) for one in fit.findings][-1] == ("fit-hand", "ankle")
    with_wrist = assess_fit(205.0, lambda mm: max(0.0, (mm - 205.0) / 10), width_mm=10, wrist_mm=220.0)
    assert "fit-hand" not in [one.code for one in with_wrist.findings]


@pytest.mark.parametrize(
    ("english", "others"),
    [("ankle 22 cm", ("Fußgelenk 22 cm", "tobillo 22 cm")), ("neck woman", ("Hals Frau", "cuello mujer"))],
)
def test_parts_are_read_in_german_and_spanish_too(english: str, others: tuple[str, ...]) -> None:
    meant = read_girth(english).wrist
    assert meant is not None
    for said in others:
        found = read_girth(said).wrist
        assert found is not None, said
        assert (found.part, found.girth_mm) == (meant.part, meant.girth_mm)
