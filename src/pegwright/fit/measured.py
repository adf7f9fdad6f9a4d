"""What was measured of a whole piece at rest, and what that tells of extension bands."""

from __future__ import annotations

import msgspec

from pegwright.fit.grading import Gauge

__all__ = ["Measured", "gauge_of"]


class Measured(msgspec.Struct, frozen=True, kw_only=True):
    """What was measured of a piece at rest: flat and closed, then pulled at its ends.

    `pulls` are forces in N and the lengths in mm that they draw the piece to. One extension band adds
    `extension_mm`; None where the piece has no free end to put one in. `extension` are there already.
    """

    length_mm: float
    width_mm: float
    pulls: tuple[tuple[float, float], ...]
    extension_mm: float | None
    extension: int


def gauge_of(measured: Measured) -> Gauge | None:
    """Return the gauge for the piece as one whole without repeats; None where extension adds nothing."""
    adds_mm = measured.extension_mm
    if adds_mm is None or adds_mm <= 0:
        return None
    base_mm = measured.length_mm - measured.extension * adds_mm
    return Gauge(base_mm=base_mm, repeat_mm=1.0, extension_mm=adds_mm)
