"""What a maker measures on a band with a ruler, a calliper, scales and a few known weights.

Lengths are read outside, from end to end: `flat_mm` of a band laid flat and pressed so that its strands
touch, and each hung length from the band's top, over the upper hook, to its bottom, under the lower one.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator
from typing import Any

import msgspec
import numpy as np
import numpy.typing as npt

from pegwright.finding import Finding, Location, Phrase, finding, phrase
from pegwright.pattern import Material

__all__ = [
    "G_N_PER_G",
    "BandMeasurements",
    "HungReading",
    "bore_mm",
    "check_measurements",
    "hung_mm",
    "rest_mm",
]

Floats = npt.NDArray[np.float64]

G_N_PER_G = 9.80665e-3
"""Standard gravity, 9.80665 m/s² (CGPM 1901), as the weight in N of one gram."""
MOST_STRETCH = 8.0  # beyond all of Treloar's data; no craft band stretches so far

_FLAT_MM = (5.0, 500.0)
_THICKNESS_MM = (0.3, 10.0)
_WEIGHT_100_G = (0.2, 20_000.0)


class HungReading(msgspec.Struct, frozen=True):
    """A mass in g hung on a band, its hook included, and the band's length in mm under it."""

    mass_g: float
    length_mm: float


class BandMeasurements(msgspec.Struct, frozen=True, kw_only=True):
    """One kind of band as measured; the errors are standard errors of one reading.

    `weight_100_g` is the mass of a hundred bands. `hook_mm` is the thickness of the wire the band hangs on.
    """

    flat_mm: float
    thickness_mm: float
    weight_100_g: float | None = None
    hung: tuple[HungReading, ...] = ()
    name: str = "standard"
    material: Material = "silicone"
    hook_mm: float = 1.0
    flat_error_mm: float = 0.3
    thickness_error_mm: float = 0.05
    weight_error_g: float = 0.3
    length_error_mm: float = 0.5


def bore_mm(flat_mm: float, thickness_mm: float) -> float:
    """Return the inner diameter of the ring: its inner edge, folded flat, is 2(flat − 2t) long."""
    return 2 * (flat_mm - 2 * thickness_mm) / math.pi


def rest_mm(flat_mm: float, thickness_mm: float) -> float:
    """Return the length of the middle line at rest: two straights and two half circles of diameter t."""
    return 2 * (flat_mm - 2 * thickness_mm) + math.pi * thickness_mm


def hung_mm(stretch: Floats, flat_mm: float, thickness_mm: float, hook_mm: float) -> Floats:
    """Return the outside length in mm of the hung band at each stretch of its middle line (same shape).

    The stretched section is t/√λ thick, since rubber keeps its volume; the band turns round two hooks.
    """
    thin = thickness_mm / np.sqrt(stretch)
    middle = rest_mm(flat_mm, thickness_mm) * stretch
    return np.asarray((middle - math.pi * (hook_mm + thin)) / 2 + 2 * thin + hook_mm, dtype=np.float64)


def check_measurements(measured: BandMeasurements) -> tuple[Finding, ...]:
    """Return a finding for every measurement that cannot be right, naming it."""
    return tuple(_find_nonsense(measured))


def _find_nonsense(m: BandMeasurements) -> Iterator[Finding]:
    sound = True
    for path, what, value, (low, high), unit in (
        ("flat_mm", "flat", m.flat_mm, _FLAT_MM, "mm"),
        ("thickness_mm", "thickness", m.thickness_mm, _THICKNESS_MM, "mm"),
        ("weight_100_g", "weight-100", m.weight_100_g, _WEIGHT_100_G, "g"),
    ):
        if value is not None and not low <= value <= high:
            sound = False
            yield _nonsense_finding(
                path, _measured_phrase(what), value, unit, phrase("between", low=low, high=high), what
            )
    if sound and m.flat_mm <= 4 * m.thickness_mm:
        sound = False
        reason = phrase("no-hole", flat_mm=m.flat_mm)
        yield _nonsense_finding(
            "thickness_mm", _measured_phrase("thickness"), m.thickness_mm, "mm", reason, "both"
        )
    if not 0 <= m.hook_mm <= 10:
        sound = False
        yield _nonsense_finding(
            "hook_mm", _measured_phrase("hook"), m.hook_mm, "mm", phrase("thin-wire"), "hook"
        )
    for name in ("flat_error_mm", "thickness_error_mm", "weight_error_g", "length_error_mm"):
        error = getattr(m, name)
        if not 0 < error <= 100:
            sound = False
            unit = name.rpartition("_")[2]
            yield _nonsense_finding(
                name, _measured_phrase("error"), error, unit, phrase("error-useless"), "error"
            )
    yield from _check_hung(m, sound)


def _check_hung(m: BandMeasurements, sound: bool) -> Iterator[Finding]:
    for i, one in enumerate(m.hung):
        path = f"hung/{i}/length_mm"
        if not 0 < one.mass_g <= 100_000:
            at = f"hung/{i}/mass_g"
            yield _nonsense_finding(
                at, _measured_phrase("weight"), one.mass_g, "g", phrase("above-nought"), "weight"
            )
        elif not math.isfinite(one.length_mm) or one.length_mm <= 0:
            yield _nonsense_finding(
                path, _measured_phrase("length"), one.length_mm, "mm", phrase("above-nought"), "length"
            )
        elif sound:
            short, long = hung_mm(np.array([1.0, MOST_STRETCH]), m.flat_mm, m.thickness_mm, m.hook_mm)
            what = phrase("measured-under", mass_g=one.mass_g)
            if one.length_mm < short - 3 * m.length_error_mm:
                reason = phrase("flat-already", flat_mm=m.flat_mm)
                yield _nonsense_finding(path, what, one.length_mm, "mm", reason, "alike")
            elif one.length_mm > long:
                reason = phrase("all-snapped", times=MOST_STRETCH)
                yield _nonsense_finding(path, what, one.length_mm, "mm", reason, "unit")
    order = sorted((h for h in m.hung if h.mass_g > 0), key=lambda h: (h.mass_g, h.length_mm))
    for less, more in itertools.pairwise(order):
        if more.mass_g > less.mass_g and more.length_mm < less.length_mm - 3 * m.length_error_mm:
            what = phrase("measured-under", mass_g=more.mass_g)
            reason = phrase("longer-before", mass_g=less.mass_g, length_mm=less.length_mm)
            path = f"hung/{m.hung.index(more)}/length_mm"
            yield _nonsense_finding(path, what, more.length_mm, "mm", reason, "weights")


def _measured_phrase(what: str) -> Phrase:
    return phrase("measured", what=what)


def _nonsense_finding(path: str, what: Phrase, value: float, unit: str, *why: Any) -> Finding:
    reason, cure = why
    return finding(
        "measure-nonsense",
        Location(path=f"/{path}"),
        what=what,
        value=value,
        unit=unit,
        reason=reason,
        cure=phrase("cure", how=cure),
    )
