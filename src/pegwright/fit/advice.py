"""What was measured of a whole piece at rest, and what it says about wrists and extension bands."""

from __future__ import annotations

from typing import Literal, NamedTuple

import msgspec

from pegwright.finding import Finding, finding
from pegwright.fit.girths import read_girth
from pegwright.fit.grading import Gauge, SizePlan, plan_size
from pegwright.fit.sizing import Fit, assess_fit, read_stretch_curve
from pegwright.fit.wrist import PASSES_99, Wrist

__all__ = ["FitAdvice", "PieceMeasurements", "RepeatOptions", "advise_fit", "gauge_from_measurements"]


class PieceMeasurements(msgspec.Struct, frozen=True, kw_only=True):
    """What was measured of a piece at rest: flat and closed, then pulled at its ends.

    `pulls` are forces in N and the lengths in mm that they stretch the piece to. One extension band adds
    `extension_mm`; None if there is no free end to add one at. The piece already has `extension` of them.

    Only a piece `closed` round a wrist is pulled: not an `open` one, whose ends no clip joins, nor one that
    has fallen `apart`, whose length and width are those of its largest part.
    """

    length_mm: float
    width_mm: float
    pulls: tuple[tuple[float, float], ...]
    extension_mm: float | None
    extension: int
    state: Literal["closed", "open", "apart"] = "closed"


class RepeatOptions(msgspec.Struct, frozen=True, kw_only=True):
    """How many repeats the piece has and can have, and what one adds: mm of length, and bands."""

    now: int
    least: int
    most: int
    one_mm: float
    bands: int


def gauge_from_measurements(
    measured: PieceMeasurements, lengths: RepeatOptions | None = None
) -> Gauge | None:
    """Return a piece's gauge, without repeats if there are no `lengths`; None if nothing can be changed."""
    extension_mm = max(measured.extension_mm or 0.0, 0.0)
    if not extension_mm and lengths is None:
        return None
    repeats, repeat_mm = (lengths.now, lengths.one_mm) if lengths else (0, 1.0)
    base_mm = measured.length_mm - measured.extension * extension_mm - repeats * repeat_mm
    return Gauge(base_mm=base_mm, repeat_mm=repeat_mm, extension_mm=extension_mm)


class FitAdvice(NamedTuple):
    """How a piece suits a wrist, as far as is known, and what would suit it better.

    `fit` is None if the piece is not closed or its pulls make no curve, `wrist` if none is asked for or it
    cannot be read, `plan` if there is no wrist or nothing of the piece can be changed.
    """

    fit: Fit | None
    wrist: Wrist | None
    gauge: Gauge | None
    plan: SizePlan | None
    findings: tuple[Finding, ...]


def advise_fit(
    measured: PieceMeasurements, wrist: str | None = None, lengths: RepeatOptions | None = None
) -> FitAdvice:
    """Say whom a piece fits, and how many repeats and extension bands suit a wrist (`16 cm`, `M`, `age 8`)
    or another part (`ankle 22 cm`).

    Without `lengths` its repeats stay as they are and count as none.
    """
    reading = None if wrist is None else read_girth(wrist)
    asked = reading.wrist if reading else None
    if measured.state != "closed":
        code = "fit-falls-apart" if measured.state == "apart" else "fit-not-closed"
        return FitAdvice(None, asked, None, None, (*(reading.findings if reading else ()), finding(code)))
    gauge = gauge_from_measurements(measured, lengths)
    curve, findings = read_stretch_curve(measured.pulls)
    findings = (*(reading.findings if reading else ()), *findings)
    if curve is None:
        return FitAdvice(None, asked, gauge, None, findings)
    girth_mm = asked.girth_mm if asked else None
    fit = assess_fit(
        measured.length_mm,
        curve,
        width_mm=measured.width_mm,
        wrist_mm=girth_mm,
        part=asked.part if asked else "wrist",
        passes=asked.passes if asked else PASSES_99,
    )
    least, most = (lengths.least, lengths.most) if lengths else (0, 0)
    plan = plan_size(asked, gauge, least_repeats=least, most_repeats=most) if asked and gauge else None
    return FitAdvice(fit, asked, gauge, plan, (*findings, *fit.findings))
