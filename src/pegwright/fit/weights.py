"""The mass of bands, so that a heap can be counted on scales."""

from __future__ import annotations

import math

from pegwright.pattern import BandType

__all__ = ["DENSITY_G_CM3", "SECTION_SHARE", "band_mass_g", "band_volume_mm3"]

# Typical of small bands, from memory: unfilled silicone 1.07–1.15, gum rubber 0.92–0.96, SEBS 0.88–0.92.
DENSITY_G_CM3 = {"silicone": 1.12, "rubber": 0.93, "tpe": 0.90}


SECTION_SHARE = 0.8
"""What a band's section has of the circle about its thickness: moulded and cut bands are flatter than round.

With it a usual band of 13.5 mm bore weighs 75 mg (common practice, no source: 60 to 90 mg).
"""


def band_volume_mm3(band: BandType) -> float:
    """Return the volume of a band in mm³, a torus of round section: π(bore + t) · πt²/4 (Pappus)."""
    t = band.thickness_mm
    return math.pi * (band.bore_mm + t) * math.pi * t * t / 4


def band_mass_g(band: BandType) -> float:
    """Return the mass of one band in g: from a weighed hundred, else that of a usual section."""
    if band.weight_100_g is not None:
        return band.weight_100_g / 100
    return band_volume_mm3(band) * SECTION_SHARE / 1000 * DENSITY_G_CM3[band.material]
