"""The rubber of a kind of band, as a document holds it: a law of elasticity with its constants in MPa.

Mooney (1940), Rivlin (1948), Yeoh (1990); what each law says is worked out in the shape room.
"""

from __future__ import annotations

from typing import Annotated

import msgspec

from pegwright.finding import phrase

__all__ = ["Law", "MooneyRivlin", "NeoHookean", "Yeoh"]

Positive = Annotated[float, msgspec.Meta(gt=0, le=100)]
NotNegative = Annotated[float, msgspec.Meta(ge=0, le=100)]
EitherSign = Annotated[float, msgspec.Meta(ge=-100, le=100)]


class _Law(
    msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True, forbid_unknown_fields=True, tag_field="law"
):
    """A law refuses constants that it does not know."""


class MooneyRivlin(_Law, frozen=True, kw_only=True, tag="mooney-rivlin"):
    """C10 and C01 in MPa; half the shear modulus at rest is their sum."""

    c10_mpa: NotNegative
    c01_mpa: NotNegative

    def __post_init__(self) -> None:
        """Refuse a rubber that does not pull back at all."""
        if self.c10_mpa + self.c01_mpa <= 0:
            raise ValueError(phrase("rubber-never-pulls"))


class NeoHookean(_Law, frozen=True, kw_only=True, tag="neo-hookean"):
    """The shear modulus μ in MPa."""

    shear_mpa: Positive


class Yeoh(_Law, frozen=True, kw_only=True, tag="yeoh"):
    """C1, C2 and C3 in MPa; C2 may be negative, as long as the band pulls back at every stretch."""

    c1_mpa: Positive
    c2_mpa: EitherSign
    c3_mpa: NotNegative

    def __post_init__(self) -> None:
        """Refuse a rubber that pushes somewhere: dW/dI₁ = C1 + 2 C2 x + 3 C3 x² is to stay above 0."""
        if self.c2_mpa < 0 and self.c2_mpa**2 >= 3 * self.c1_mpa * self.c3_mpa:
            raise ValueError(phrase("rubber-pushes"))


Law = MooneyRivlin | NeoHookean | Yeoh
