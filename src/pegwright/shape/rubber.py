"""The rubber of a band: nominal stress against stretch, by one of three laws.

All laws are incompressible, in simple extension, per unit of unstretched section (MPa = N/mm²):

- Mooney–Rivlin, P = 2(λ − λ⁻²)(C10 + C01/λ) (R. S. Rivlin and D. W. Saunders, Phil. Trans. R. Soc. A 243
  (1951) 251). The default constants fit the uniaxial data of L. R. G. Treloar, Trans. Faraday Soc. 40 (1944)
  59, up to λ ≈ 3. Beyond λ_s = 2.5, where the chains near their limit, a(λ − λ_s)²/(1 − λ²/λ_L²) is added
  (the limiting-chain factor of A. N. Gent, Rubber Chem. Technol. 69 (1996) 59, in uniaxial form; a and λ_L
  fitted to the same data), so the whole range lies within 6 %.
- neo-Hookean, P = μ(λ − λ⁻²).
- Yeoh, P = 2(λ − λ⁻²)[C1 + 2C2(I1 − 3) + 3C3(I1 − 3)²], I1 = λ² + 2/λ (O. H. Yeoh, Rubber Chem. Technol. 66
  (1993) 754).

Beyond the last datum (λ = 8) every law continues linearly, so that the solver can start from any drawing.
"""

from __future__ import annotations

import math
from typing import Literal

import msgspec
import numpy as np
import numpy.typing as npt

from pegwright.shape.jit import kernel

__all__ = ["LAST_STRETCH", "LawName", "RubberLaw", "mooney_rivlin", "neo_hookean", "nominal_stress", "yeoh"]

LawName = Literal["mooney-rivlin", "neo-hookean", "yeoh"]
LAW_NAMES: tuple[LawName, ...] = ("mooney-rivlin", "neo-hookean", "yeoh")
LAST_STRETCH = 8.0
_ONSET = 2.5
_LIMIT = 9.163
_STIFFENING = 0.05122 / 0.20812  # a over C10 + C01


class RubberLaw(msgspec.Struct, frozen=True):
    """A law and its constants in MPa: (C10, C01, a), (μ, 0, 0) or (C1, C2, C3)."""

    law: LawName = "mooney-rivlin"
    constants_mpa: tuple[float, float, float] = (0.1043, 0.10382, 0.05122)

    @property
    def youngs_mpa(self) -> float:
        """Young's modulus at rest, E = 3G, in MPa."""
        a, b, _ = self.constants_mpa
        if self.law == "mooney-rivlin":
            return 6 * (a + b)
        return 3 * a if self.law == "neo-hookean" else 6 * a

    @property
    def law_number(self) -> int:
        """The law's number in the kernels."""
        return LAW_NAMES.index(self.law)


def mooney_rivlin(c10_mpa: float = 0.1043, c01_mpa: float = 0.10382) -> RubberLaw:
    """Return Mooney–Rivlin rubber; its stiffening at large stretch scales with C10 + C01.

    Raises:
        ValueError: C10 or C01 is negative, or both are zero.
    """
    if c10_mpa < 0 or c01_mpa < 0 or c10_mpa + c01_mpa <= 0:
        raise ValueError(f"C10 and C01 must not be negative, nor both zero: {c10_mpa}, {c01_mpa}")
    return RubberLaw("mooney-rivlin", (c10_mpa, c01_mpa, _STIFFENING * (c10_mpa + c01_mpa)))


def neo_hookean(shear_mpa: float) -> RubberLaw:
    """Return neo-Hookean rubber of shear modulus μ in MPa.

    Raises:
        ValueError: μ is not positive.
    """
    if shear_mpa <= 0:
        raise ValueError(f"the shear modulus must be positive: {shear_mpa}")
    return RubberLaw("neo-hookean", (shear_mpa, 0.0, 0.0))


def yeoh(c1_mpa: float = 0.176222, c2_mpa: float = -1.85411e-3, c3_mpa: float = 4.63948e-5) -> RubberLaw:
    """Return Yeoh rubber; the default constants fit Treloar's whole range in absolute error.

    Raises:
        ValueError: C1 is not positive.
    """
    if c1_mpa <= 0:
        raise ValueError(f"C1 must be positive: {c1_mpa}")
    return RubberLaw("yeoh", (c1_mpa, c2_mpa, c3_mpa))


def nominal_stress(rubber: RubberLaw, stretch: npt.ArrayLike) -> npt.NDArray[np.float64]:
    """Return the nominal stress in MPa at each stretch λ (same shape as `stretch`).

    Raises:
        ValueError: a stretch is not positive.
    """
    lam = np.atleast_1d(np.asarray(stretch, dtype=np.float64))
    if not np.all(lam > 0):
        raise ValueError("a stretch is a ratio of lengths and must be positive")
    c = rubber.constants_mpa
    flat = [_energy_and_stress(rubber.law_number, c[0], c[1], c[2], value)[1] for value in lam.ravel()]
    return np.array(flat, dtype=np.float64).reshape(np.shape(stretch))


@kernel
def _limiting_chain(a: float, lam: float) -> tuple[float, float, float]:
    """Return the energy, stress and stiffness (MPa) that the chain limit adds beyond its onset."""
    s, big = _ONSET, _LIMIT
    room = big * big - lam * lam
    gone = lam - s
    energy = (
        (s - lam)
        + (big * big + s * s) / (2 * big) * math.log((big + lam) * (big - s) / ((big - lam) * (big + s)))
        + s * math.log(room / (big * big - s * s))
    )
    stiffness = 2 * gone / room + 2 * lam * gone * gone / (room * room)
    scale = a * big * big
    return scale * energy, scale * gone * gone / room, scale * stiffness


@kernel
def _energy_and_stress(
    law: int, c0: float, c1: float, c2: float, stretch: float
) -> tuple[float, float, float]:
    """Return the energy W, nominal stress P = dW/dλ and dP/dλ, per unstretched volume or section, in MPa."""
    lam = min(stretch, LAST_STRETCH)
    inv = 1.0 / lam
    strain = lam - inv * inv
    dstrain = 1.0 + 2.0 * inv**3
    i1 = lam * lam + 2.0 * inv - 3.0
    if law == 0:
        i2 = 2.0 * lam + inv * inv - 3.0
        energy = c0 * i1 + c1 * i2
        p = 2.0 * strain * (c0 + c1 * inv)
        dp = 2.0 * dstrain * (c0 + c1 * inv) - 2.0 * strain * c1 * inv * inv
        if lam > _ONSET:
            e_, p_, d_ = _limiting_chain(c2, lam)
            energy += e_
            p += p_
            dp += d_
    elif law == 1:
        energy = 0.5 * c0 * i1
        p = c0 * strain
        dp = c0 * dstrain
    else:
        slope = c0 + 2.0 * c1 * i1 + 3.0 * c2 * i1 * i1
        energy = c0 * i1 + c1 * i1 * i1 + c2 * i1**3
        p = 2.0 * strain * slope
        dp = 2.0 * dstrain * slope + 4.0 * strain * strain * (2.0 * c1 + 6.0 * c2 * i1)
    if stretch > lam:
        more = stretch - lam
        energy += more * (p + 0.5 * dp * more)
        p += dp * more
    return energy, p, dp
