"""What was measured of a whole piece at rest, and what that tells of wrists and of extension bands."""

from __future__ import annotations

from typing import NamedTuple

import msgspec

from pegwright.finding import Finding
from pegwright.fit.grading import Gauge, Plan, plan_for
from pegwright.fit.sizing import Fit, fit_of, stretch_curve
from pegwright.fit.wrist import Wrist, read_wrist

__all__ = ["Measured", "Suited", "gauge_of", "suit"]


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


class Suited(NamedTuple):
    """How a piece suits a wrist, as far as can be said, and what would suit it better.

    `fit` is None where the pulls make no curve; `wrist` where none is asked for or it cannot be read; `plan`
    where there is no wrist, or no extension band can be put in.
    """

    fit: Fit | None
    wrist: Wrist | None
    gauge: Gauge | None
    plan: Plan | None
    findings: tuple[Finding, ...]


def suit(measured: Measured, wrist: str | None = None) -> Suited:
    """Say whom it fits, and how many extension bands a wrist (`16 cm`, `M`, `age 8`) asks for."""
    told = None if wrist is None else read_wrist(wrist)
    asked = told.wrist if told else None
    gauge = gauge_of(measured)
    curve, findings = stretch_curve(measured.pulls)
    findings = (*(told.findings if told else ()), *findings)
    if curve is None:
        return Suited(None, asked, gauge, None, findings)
    girth_mm = asked.girth_mm if asked else None
    fit = fit_of(measured.length_mm, curve, width_mm=measured.width_mm, wrist_mm=girth_mm)
    plan = plan_for(asked, gauge, repeats=0) if asked and gauge else None
    return Suited(fit, asked, gauge, plan, (*findings, *fit.findings))
