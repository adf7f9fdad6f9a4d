"""The laws of rubber against Treloar's data and against themselves."""

from __future__ import annotations

import numpy as np
import pytest

from pegwright.shape import mooney_rivlin, neo_hookean, nominal_stress, yeoh
from pegwright.shape.rubber import _energy_and_stress

# L. R. G. Treloar, Trans. Faraday Soc. 40 (1944) 59, uniaxial; nominal stress in kgf/cm², as digitised in the
# felupe repository (examples/ex14_hyperelasticity.py).
TRELOAR = np.array(
    [
        (1.000, 0.00), (1.020, 0.26), (1.125, 1.37), (1.240, 2.30), (1.390, 3.23),
        (1.585, 4.16), (1.900, 5.10), (2.180, 6.00), (2.420, 6.90), (3.020, 8.80),
        (3.570, 10.7), (4.030, 12.5), (4.760, 16.2), (5.360, 19.9), (5.750, 23.6),
        (6.150, 27.4), (6.400, 31.0), (6.600, 34.8), (6.850, 38.5), (7.050, 42.1),
        (7.150, 45.8), (7.250, 49.6), (7.400, 53.3), (7.500, 57.0), (7.600, 64.4),
    ]
)  # fmt: skip
STRETCH, STRESS = TRELOAR[:, 0], TRELOAR[:, 1] * 0.0980665
LAWS = [mooney_rivlin(), neo_hookean(0.39), yeoh()]


def test_mooney_rivlin_fits_treloar_where_bands_live() -> None:
    """Up to λ ≈ 3 the default law is within 5 % of every datum from λ = 1.1 on."""
    part = (STRETCH > 1.1) & (STRETCH < 3.1)
    error = nominal_stress(mooney_rivlin(), STRETCH[part]) / STRESS[part] - 1
    assert np.abs(error).max() < 0.05


def test_stiffening_follows_treloar_to_the_end() -> None:
    """With the chains' limit the default law is within 6 % of every datum from λ = 1.1 to 7.6."""
    part = STRETCH > 1.1
    error = nominal_stress(mooney_rivlin(), STRETCH[part]) / STRESS[part] - 1
    assert np.abs(error).max() < 0.06


def test_constants_are_the_least_squares_fit() -> None:
    """Fitting Mooney–Rivlin afresh to the data up to λ = 2.42 gives the default constants to 1 %."""
    part = STRETCH < 3.0
    shape = 2 * (STRETCH - STRETCH**-2)[part]
    fitted = np.linalg.lstsq(np.column_stack([shape, shape / STRETCH[part]]), STRESS[part], rcond=None)[0]
    assert fitted == pytest.approx(mooney_rivlin().constants_mpa[:2], rel=0.01)


def test_neo_hookean_overshoots() -> None:
    """With Treloar's own modulus (0.39 MPa, from memory) neo-Hookean is a quarter too stiff at λ = 2 to 3."""
    part = (STRETCH > 2) & (STRETCH < 3.1)
    error = nominal_stress(neo_hookean(0.39), STRETCH[part]) / STRESS[part] - 1
    assert np.all((error > 0.15) & (error < 0.35))


def test_yeoh_fits_the_whole_range() -> None:
    """Yeoh's default constants leave a root mean square error of 0.103 MPa over all 25 data."""
    error = nominal_stress(yeoh(), STRETCH) - STRESS
    assert np.sqrt(np.mean(error**2)) == pytest.approx(0.103, abs=0.003)


@pytest.mark.parametrize("rubber", LAWS, ids=lambda r: r.law)
def test_stress_is_the_slope_of_energy(rubber) -> None:
    """P = dW/dλ and the stiffness is its slope, on both sides of every join."""
    h = 1e-5
    for lam in (0.6, 0.9, 1.0, 1.7, 2.45, 2.55, 4.0, 7.0, 7.95, 8.05, 12.0):
        low, at, high = (
            _energy_and_stress(rubber.law_number, *rubber.constants_mpa, lam + d) for d in (-h, 0.0, h)
        )
        assert (high[0] - low[0]) / (2 * h) == pytest.approx(at[1], rel=1e-6, abs=1e-8)
        assert (high[1] - low[1]) / (2 * h) == pytest.approx(at[2], rel=1e-4)


@pytest.mark.parametrize("rubber", LAWS, ids=lambda r: r.law)
def test_small_stretch_follows_hooke(rubber) -> None:
    """For small strain P = E ε, E the modulus that bending uses."""
    assert float(nominal_stress(rubber, 1 + 1e-6)) == pytest.approx(1e-6 * rubber.youngs_mpa, rel=1e-4)


def test_nonsense_is_refused() -> None:
    """No negative moduli, no negative stretch."""
    with pytest.raises(ValueError, match="negative"):
        mooney_rivlin(-1, 0)
    with pytest.raises(ValueError, match="positive"):
        neo_hookean(0)
    with pytest.raises(ValueError, match="positive"):
        yeoh(0)
    with pytest.raises(ValueError, match="positive"):
        nominal_stress(mooney_rivlin(), [1.0, 0.0])
