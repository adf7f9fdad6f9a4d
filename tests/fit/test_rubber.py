"""The rubber of a document against the shape room's, and pieces of stiffer rubber at rest."""

from __future__ import annotations

import msgspec
import numpy as np
import pytest
from hypothesis import given, strategies as st

from pegwright.fit import rubber_of
from pegwright.fit.rubber import law_from_rubber
from pegwright.pattern import BandType, Law, MooneyRivlin, NeoHookean, Yeoh, read_pattern, write_pattern
from pegwright.shape import RubberLaw, nominal_stress
from tests.lesson.pieces import ebb

small = st.floats(0.001, 10)
LAWS = st.one_of(
    st.builds(MooneyRivlin, c10_mpa=small, c01_mpa=small),
    st.builds(NeoHookean, shear_mpa=small),
    st.builds(Yeoh, c1_mpa=small, c2_mpa=small, c3_mpa=small),
)


@given(LAWS)
def test_there_and_back_again(law: Law) -> None:
    """A law goes into a document and comes out of it; and into the shape room and back, to the pascal."""
    pattern = msgspec.structs.replace(ebb(), bands=(BandType(rubber=law),))
    again = read_pattern(write_pattern(pattern)).pattern
    assert again == pattern
    back = law_from_rubber(rubber_of(BandType(rubber=law)))
    assert type(back) is type(law)
    assert list(msgspec.structs.asdict(back).values()) == pytest.approx(
        list(msgspec.structs.asdict(law).values()), abs=1e-6
    )


def test_without_a_law_it_is_treloars_rubber() -> None:
    assert rubber_of(BandType()) == RubberLaw()


def test_neo_hookean_by_hand() -> None:
    """σ = μ(λ − λ⁻²), nominal: at twice its length 0.4 · 1.75 = 0.7 MPa."""
    assert nominal_stress(rubber_of(BandType(rubber=NeoHookean(shear_mpa=0.4))), 2.0) == pytest.approx(0.7)


@given(st.floats(0.01, 1), st.floats(-0.1, 0), st.floats(0, 0.1))
def test_a_yeoh_rubber_that_is_taken_pulls_at_every_stretch(c1: float, c2: float, c3: float) -> None:
    """The rule of the document, a discriminant, against the stress itself at many stretches."""
    stretches = np.linspace(1.01, 7.9, 400)
    excess = stretches**2 + 2 / stretches - 3
    pulls = bool(np.all(c1 + 2 * c2 * excess + 3 * c3 * excess**2 > 0))
    try:
        law = Yeoh(c1_mpa=c1, c2_mpa=c2, c3_mpa=c3)
    except ValueError:
        return
    assert pulls
    assert np.all(nominal_stress(rubber_of(BandType(rubber=law)), stretches) > 0)


@pytest.mark.parametrize(
    ("given_", "where", "said"),
    [
        ({"law": "hooke", "k": 1}, "/bands/0/rubber", "neo-hookean"),
        ({"law": "neo-hookean", "shear_mpa": 0}, "/bands/0/rubber/shear_mpa", "out of bounds"),
        ({"law": "mooney-rivlin", "c10_mpa": 0, "c01_mpa": 0}, "/bands/0/rubber", "would not pull"),
        ({"law": "mooney-rivlin", "c10_mpa": 0.1}, "/bands/0/rubber", "c01_mpa is missing"),
        ({"law": "yeoh", "c1_mpa": 0.1, "c2_mpa": -1, "c3_mpa": 0.1}, "/bands/0/rubber", "would push"),
    ],
)
def test_nonsense_is_a_finding_with_its_place(given_: object, where: str, said: str) -> None:
    raw = msgspec.json.decode(write_pattern(ebb()))
    raw["bands"] = [{"rubber": given_}]
    (found,) = read_pattern(msgspec.json.encode(raw)).findings
    assert found.place.path == where
    assert said in f"{found.message} {found.hint}"
