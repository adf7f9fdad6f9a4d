"""Convert between the rubber in a document and that of the shape room."""

from __future__ import annotations

from pegwright.pattern import BandType, Law, MooneyRivlin, NeoHookean, Yeoh
from pegwright.shape import RubberLaw, mooney_rivlin, neo_hookean, yeoh

__all__ = ["law_from_rubber", "rubber_of"]


def rubber_of(kind: BandType) -> RubberLaw:
    """Return the rubber of a kind of band; the default (Treloar 1944) if the document gives none."""
    match kind.rubber:
        case MooneyRivlin(c10_mpa=c10, c01_mpa=c01):
            return mooney_rivlin(c10, c01)
        case NeoHookean(shear_mpa=shear):
            return neo_hookean(shear)
        case Yeoh(c1_mpa=c1, c2_mpa=c2, c3_mpa=c3):
            return yeoh(c1, c2, c3)
        case None:
            return RubberLaw()


def law_from_rubber(rubber: RubberLaw) -> Law:
    """Return a rubber as a document holds it, rounded to 1 Pa."""
    a, b, c = (round(constant, 6) for constant in rubber.constants_mpa)
    match rubber.law:
        case "mooney-rivlin":
            return MooneyRivlin(c10_mpa=a, c01_mpa=b)
        case "neo-hookean":
            return NeoHookean(shear_mpa=a)
        case "yeoh":
            return Yeoh(c1_mpa=a, c2_mpa=b, c3_mpa=c)
