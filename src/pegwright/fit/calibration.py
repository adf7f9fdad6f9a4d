"""From a maker's measurements to the band type: bore, density and rubber, each with its uncertainty.

The hung mass m pulls on two strands: T = mg/2, nominal stress P = T/A with A = πt²/4. The laws of
`shape.rubber` are linear in their constants, so stress against stretch is a linear fit (`fit_stress`). It
starts the fit proper, which puts the error where it is, into the lengths: constants c ≥ 0 minimise
Σ (length(λ(P; c)) − read)².

Uncertainty comes in two ways. `error` is the standard error by linear propagation: the fit's covariance
(JᵀJ)⁻¹σ², plus what the errors of flat length, thickness and weight do to the result. `again` is the spread
over fits to measurements redrawn with the stated errors (parametric bootstrap, B. Efron, Ann. Statist. 7
(1979) 1).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import Literal, NamedTuple

import msgspec
import numpy as np
import numpy.typing as npt
from scipy.optimize import least_squares, nnls

from pegwright.finding import Finding, Location, finding, phrase
from pegwright.fit.measurements import (
    G_N_PER_G,
    MOST_STRETCH,
    BandMeasurements,
    bore_mm,
    check_measurements,
    hung_mm,
)
from pegwright.fit.rubber import law_from_rubber
from pegwright.fit.weights import band_volume_mm3
from pegwright.pattern import BandType
from pegwright.shape import RubberLaw, mooney_rivlin, neo_hookean, nominal_stress

__all__ = ["Calibration", "Estimate", "FittedLaw", "calibrate", "fit_stress"]

Floats = npt.NDArray[np.float64]
LawForm = Literal["mooney-rivlin", "neo-hookean", "proportional"]

DENSITY_RANGE = (0.85, 1.30)  # SEBS 0.88 to filled silicone 1.25 g/cm³, from memory
SHEAR_RANGE = (0.05, 1.5)  # small bands have about 0.1 to 0.8 MPa, from memory; wider here
DRAWS = 100

_GRID = np.linspace(1.0, MOST_STRETCH, 2801)
_TRELOAR = RubberLaw()  # the default rubber, for its ratio of C10 to C01


class Estimate(NamedTuple):
    """A value, its standard error by propagation, and the same by redrawing the measurements."""

    value: float
    error: float
    again: float


class FittedLaw(msgspec.Struct, frozen=True, kw_only=True):
    """A law fitted to the hung lengths. Constants in MPa: (C10, C01) or (μ,).

    `form` says what was free: both constants, μ, or only the scale of C10 : C01 as in the default rubber.
    `shear_mpa` is the shear modulus at rest, 2(C10 + C01) or μ. `correlation` is that of C10 and C01.
    `rms_mm` is the root mean square of fitted less read length.
    """

    form: LawForm
    rubber: RubberLaw
    constants_mpa: tuple[Estimate, ...]
    shear_mpa: Estimate
    correlation: float
    rms_mm: float


class Calibration(msgspec.Struct, frozen=True, kw_only=True):
    """The band type as measured; None or empty where the measurements do not determine a value.

    `stretch` and `stress_mpa` are the hung points. `best` is the law to use: Mooney–Rivlin if the weights
    determine both constants, else the default rubber scaled.
    """

    band: BandType | None = None
    bore_mm: Estimate | None = None
    density_g_cm3: Estimate | None = None
    stretch: tuple[float, ...] = ()
    stress_mpa: tuple[float, ...] = ()
    laws: tuple[FittedLaw, ...] = ()
    best: FittedLaw | None = None
    findings: tuple[Finding, ...] = ()


def calibrate(measured: BandMeasurements, *, draws: int = DRAWS, seed: int = 0) -> Calibration:
    """Fit the band type to measurements. Impossible ones give findings that name them, and no band.

    `draws` is the number of redrawn measurements behind every `again`; the same `seed` gives the same result.

    Raises:
        ValueError: `draws` is less than 2.
    """
    if draws < 2:
        raise ValueError(f"a spread takes at least 2 draws, not {draws}")
    nonsense = check_measurements(measured)
    if nonsense:
        return Calibration(findings=nonsense)
    redrawn = [_redraw(measured, rng) for rng in np.random.default_rng(seed).spawn(draws)]
    bore = _estimate(lambda m: bore_mm(m.flat_mm, m.thickness_mm), measured, redrawn)
    density = None if measured.weight_100_g is None else _estimate(_density_g_cm3, measured, redrawn)
    laws = tuple(_fit_laws(measured, redrawn))
    best = next((law for law in laws if law.form == "mooney-rivlin" and not _is_tangled(law)), None)
    best = best or next((law for law in laws if law.form == "proportional"), None)
    points = _hung_points(measured)
    return Calibration(
        band=BandType(
            name=measured.name,
            bore_mm=round(bore.value, 3),
            thickness_mm=measured.thickness_mm,
            material=measured.material,
            weight_100_g=measured.weight_100_g,
            rubber=None if best is None else law_from_rubber(best.rubber),
        ),
        bore_mm=bore,
        density_g_cm3=density,
        stretch=tuple(points.stretch.tolist()),
        stress_mpa=tuple(points.stress_mpa.tolist()),
        laws=laws,
        best=best,
        findings=tuple(_find_oddities(measured, density, laws, best)),
    )


def fit_stress(
    form: LawForm, stretch: npt.ArrayLike, stress_mpa: npt.ArrayLike, *, plain: bool = False
) -> Floats:
    """Fit constants ≥ 0 in MPa to points of nominal stress by least squares in stress.

    Args:
        form: which constants are free; `proportional` returns the one scale of the default rubber.
        stretch: stretches λ, (n,).
        stress_mpa: nominal stress in MPa, (n,).
        plain: leave out the chain limit that `shape.rubber` adds to Mooney–Rivlin beyond λ = 2.5.

    Raises:
        ValueError: the arrays differ in length or are empty, or a stretch is not positive.
    """
    lam, p = np.asarray(stretch, dtype=np.float64), np.asarray(stress_mpa, dtype=np.float64)
    if lam.ndim != 1 or lam.shape != p.shape or not lam.size:
        raise ValueError(f"stretch and stress must be (n,) alike, not {lam.shape} and {p.shape}")
    return np.asarray(nnls(_stress_basis(form, lam, plain=plain), p)[0], dtype=np.float64)


class _Points(NamedTuple):
    stretch: Floats
    stress_mpa: Floats
    lengths_mm: Floats


def _hung_points(m: BandMeasurements) -> _Points:
    masses = np.array([h.mass_g for h in m.hung], dtype=np.float64)
    lengths = np.array([h.length_mm for h in m.hung], dtype=np.float64)
    area_mm2 = math.pi * m.thickness_mm**2 / 4
    stretch = np.interp(lengths, hung_mm(_GRID, m.flat_mm, m.thickness_mm, m.hook_mm), _GRID)
    return _Points(stretch, masses * G_N_PER_G / 2 / area_mm2, lengths)


def _stress_basis(form: LawForm, stretch: Floats, *, plain: bool = False) -> Floats:
    """Return the stress (n, k) in MPa for each constant at 1 MPa (for `proportional`: at scale 1)."""
    units: tuple[RubberLaw, ...]
    if form == "neo-hookean":
        units = (neo_hookean(1.0),)
    elif form == "proportional":
        units = (_TRELOAR,)
    else:
        units = (mooney_rivlin(1.0, 0.0), mooney_rivlin(0.0, 1.0))
    if plain:
        units = tuple(
            RubberLaw(u.law, (*u.constants_mpa[:2], 0.0)) if u.law == "mooney-rivlin" else u for u in units
        )
    return np.column_stack([nominal_stress(unit, stretch) for unit in units])


_FORMS: tuple[LawForm, ...] = ("mooney-rivlin", "neo-hookean", "proportional")
_GRID_BASIS = {form: _stress_basis(form, _GRID) for form in _FORMS}


class _Fit(NamedTuple):
    constants: Floats
    jacobian: Floats
    residual_mm: Floats


def _fit_constants(
    form: LawForm, m: BandMeasurements, *, loss: Literal["linear", "cauchy"] = "linear"
) -> _Fit:
    """Fit the constants to the hung lengths; `cauchy` gives outliers little weight."""
    points = _hung_points(m)
    grid_mm = hung_mm(_GRID, m.flat_mm, m.thickness_mm, m.hook_mm)

    def residual(c: Floats) -> Floats:
        return np.interp(points.stress_mpa, _GRID_BASIS[form] @ c, grid_mm) - points.lengths_mm

    first = np.maximum(fit_stress(form, points.stretch, points.stress_mpa), 1e-3)
    found = least_squares(
        residual,
        first,
        bounds=(0.0, np.inf),
        x_scale=np.maximum(first, 0.02),
        diff_step=1e-4,
        loss=loss,
        f_scale=m.length_error_mm,
    )
    return _Fit(found.x, found.jac, residual(found.x))


def _fit_laws(m: BandMeasurements, redrawn: list[BandMeasurements]) -> Iterator[FittedLaw]:
    weights = len({h.mass_g for h in m.hung})
    for form in _FORMS:
        if weights >= (3 if form == "mooney-rivlin" else 1):
            yield _build_law(form, m, redrawn)


def _build_law(form: LawForm, m: BandMeasurements, redrawn: list[BandMeasurements]) -> FittedLaw:
    found = _fit_constants(form, m)
    free = len(m.hung) - len(found.constants)
    # The larger of the stated error and the scatter.
    scatter = math.sqrt(float(found.residual_mm @ found.residual_mm) / free) if free > 0 else 0.0
    sigma = max(m.length_error_mm, scatter)
    covariance = np.linalg.pinv(found.jacobian.T @ found.jacobian) * sigma**2
    for change in _perturbations(m):
        covariance = covariance + np.outer(*[_fit_constants(form, change).constants - found.constants] * 2)
    again = np.array(
        [_fit_constants(form, _widen(m, r, sigma / m.length_error_mm)).constants for r in redrawn]
    )
    to_constants, to_shear = _constant_matrices(form)
    c, constants, spread = found.constants, to_constants @ found.constants, again @ to_constants.T
    errors = np.sqrt(np.diag(to_constants @ covariance @ to_constants.T))
    deviation = np.sqrt(np.diag(covariance))
    tied = len(c) == 2 and bool(np.all(deviation > 0))
    shear = Estimate(
        float(to_shear @ c),
        float(np.sqrt(to_shear @ covariance @ to_shear)),
        float(np.std(again @ to_shear, ddof=1)),
    )
    return FittedLaw(
        form=form,
        rubber=neo_hookean(float(constants[0]))
        if form == "neo-hookean"
        else mooney_rivlin(*map(float, constants)),
        constants_mpa=tuple(
            Estimate(float(v), float(e), float(s))
            for v, e, s in zip(constants, errors, np.std(spread, axis=0, ddof=1), strict=True)
        ),
        shear_mpa=shear,
        correlation=float(covariance[0, 1] / (deviation[0] * deviation[1])) if tied else 0.0,
        rms_mm=float(np.sqrt(np.mean(found.residual_mm**2))),
    )


def _constant_matrices(form: LawForm) -> tuple[Floats, Floats]:
    """Return the matrices from fitted parameters to the constants (k, p) and the shear modulus (p,)."""
    if form == "neo-hookean":
        return np.eye(1), np.ones(1)
    if form == "proportional":
        c10, c01, _ = _TRELOAR.constants_mpa
        return np.array([[c10], [c01]]), np.array([2 * (c10 + c01)])
    return np.eye(2), np.full(2, 2.0)


def _density_g_cm3(m: BandMeasurements) -> float:
    band = BandType(bore_mm=bore_mm(m.flat_mm, m.thickness_mm), thickness_mm=m.thickness_mm)
    return (m.weight_100_g or 0.0) * 10 / band_volume_mm3(band)


def _estimate(
    value: Callable[[BandMeasurements], float], m: BandMeasurements, redrawn: list[BandMeasurements]
) -> Estimate:
    here = value(m)
    squares = sum((value(change) - here) ** 2 for change in _perturbations(m))
    return Estimate(here, math.sqrt(squares), float(np.std([value(r) for r in redrawn], ddof=1)))


def _perturbations(m: BandMeasurements) -> Iterator[BandMeasurements]:
    """Yield the measurements, each time with one of them off by its standard error."""
    yield msgspec.structs.replace(m, flat_mm=m.flat_mm + m.flat_error_mm)
    yield msgspec.structs.replace(m, thickness_mm=m.thickness_mm + m.thickness_error_mm)
    if m.weight_100_g is not None:
        yield msgspec.structs.replace(m, weight_100_g=m.weight_100_g + m.weight_error_g)


def _redraw(m: BandMeasurements, rng: np.random.Generator) -> BandMeasurements:
    def draw(value: float, error: float) -> float:
        return max(value + error * float(rng.standard_normal()), 0.2 * value)

    return msgspec.structs.replace(
        m,
        flat_mm=max(draw(m.flat_mm, m.flat_error_mm), 3 * m.thickness_mm),
        thickness_mm=draw(m.thickness_mm, m.thickness_error_mm),
        weight_100_g=None if m.weight_100_g is None else draw(m.weight_100_g, m.weight_error_g),
        hung=tuple(
            msgspec.structs.replace(h, length_mm=draw(h.length_mm, m.length_error_mm)) for h in m.hung
        ),
    )


def _widen(m: BandMeasurements, redrawn: BandMeasurements, by: float) -> BandMeasurements:
    """Return the redrawn lengths moved `by` times as far from the read ones."""
    hung = tuple(
        msgspec.structs.replace(r, length_mm=h.length_mm + by * (r.length_mm - h.length_mm))
        for h, r in zip(m.hung, redrawn.hung, strict=True)
    )
    return msgspec.structs.replace(redrawn, hung=hung)


def _is_tangled(law: FittedLaw) -> bool:
    """Return whether the error of a constant exceeds half its value."""
    return any(2 * max(c.error, c.again) > c.value for c in law.constants_mpa)


def _find_oddities(
    m: BandMeasurements, density: Estimate | None, laws: tuple[FittedLaw, ...], best: FittedLaw | None
) -> Iterator[Finding]:
    low, high = DENSITY_RANGE
    if density is not None and not low <= density.value <= high:
        yield finding(
            "density-odd", Location(path="/weight_100_g"), density_g_cm3=density.value, low=low, high=high
        )
    weights = len({h.mass_g for h in m.hung})
    if weights < 3:
        what, needed = ("few-for-rubber", 1) if weights == 0 else ("few-for-both", 3)
        yield finding("measure-few", Location(path="/hung"), count=weights, what=phrase(what), needed=needed)
    if best is None:
        return
    low, high = SHEAR_RANGE
    if not low <= best.shear_mpa.value <= high:
        yield finding(
            "modulus-odd", Location(path="/hung"), shear_mpa=best.shear_mpa.value, low=low, high=high
        )
    found = _fit_constants(laws[0].form, m, loss="cauchy")
    misfits = [i for i, off in enumerate(found.residual_mm) if abs(off) > 3 * m.length_error_mm]
    for i in misfits:
        one, off = m.hung[i], float(found.residual_mm[i])
        yield finding(
            "stretch-misfit",
            Location(path=f"/hung/{i}/length_mm"),
            mass_g=one.mass_g,
            length_mm=one.length_mm,
            fitted_mm=one.length_mm + off,
            reading_mm=m.length_error_mm,
        )
    if not misfits and any(law.form == "mooney-rivlin" and _is_tangled(law) for law in laws):
        stretch = _hung_points(m).stretch
        yield finding(
            "moduli-tangled", Location(path="/hung"), low=float(stretch.min()), high=float(stretch.max())
        )
