"""What a maker measures on a band with a ruler, a calliper, scales and a few known weights.

Lengths are read outside, from end to end: `flat_mm` of a band laid flat and pressed so that its strands
touch, and each hung length from the band's top, over the upper hook, to its bottom, under the lower one.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator

import msgspec
import numpy as np
import numpy.typing as npt

from pegwright.finding import Finding, Place, finding
from pegwright.pattern.document import Material

__all__ = ["G_N_PER_G", "Hung", "Measurements", "bore_mm", "check_measurements", "hung_mm", "rest_mm"]

Floats = npt.NDArray[np.float64]

G_N_PER_G = 9.80665e-3
"""Standard gravity, 9.80665 m/s² (CGPM 1901), as the weight in N of one gram."""
MOST_STRETCH = 8.0  # past all of Treloar's data; no band for craft goes so far

_FLAT_MM = (5.0, 500.0)
_THICKNESS_MM = (0.3, 10.0)
_WEIGHT_100_G = (0.2, 20_000.0)


class Hung(msgspec.Struct, frozen=True):
    """A band hung up with a mass in g below, its hook included, and how long the band then is in mm."""

    mass_g: float
    length_mm: float


class Measurements(msgspec.Struct, frozen=True, kw_only=True):
    """One kind of band as measured; the errors are standard errors of one reading.

    `weight_100_g` is the mass of a hundred bands. `hook_mm` is the thickness of the wire the band hangs on.
    """

    flat_mm: float
    thickness_mm: float
    weight_100_g: float | None = None
    hung: tuple[Hung, ...] = ()
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


def check_measurements(measured: Measurements) -> tuple[Finding, ...]:
    """Return a finding for every measurement that cannot be right, naming it."""
    return tuple(_nonsense(measured))


def _nonsense(m: Measurements) -> Iterator[Finding]:
    sound = True
    for path, what, value, (low, high), unit, cure in (
        (
            "flat_mm",
            "a flat length",
            m.flat_mm,
            _FLAT_MM,
            "mm",
            "lay the band flat, press, and read mm end to end",
        ),
        (
            "thickness_mm",
            "a thickness",
            m.thickness_mm,
            _THICKNESS_MM,
            "mm",
            "lay ten bands side by side, read mm across, and take a tenth",
        ),
        (
            "weight_100_g",
            "a weight of a hundred",
            m.weight_100_g,
            _WEIGHT_100_G,
            "g",
            "count a hundred bands on to the scales and read grams",
        ),
    ):
        if value is not None and not low <= value <= high:
            sound = False
            yield _wrong(path, what, value, unit, f"it should be between {low:g} and {high:g}", cure)
    if sound and m.flat_mm <= 4 * m.thickness_mm:
        sound = False
        reason = f"at a flat length of {m.flat_mm:g} mm nothing would be left of the hole"
        yield _wrong("thickness_mm", "a thickness", m.thickness_mm, "mm", reason, "measure both once more")
    if not 0 <= m.hook_mm <= 10:
        sound = False
        yield _wrong(
            "hook_mm", "a hook", m.hook_mm, "mm", "it should be a thin wire", "give its thickness in mm"
        )
    for name in ("flat_error_mm", "thickness_error_mm", "weight_error_g", "length_error_mm"):
        error = getattr(m, name)
        if not 0 < error <= 100:
            sound = False
            unit = name.rpartition("_")[2]
            reason = "no reading is without error, and none so far out is of use"
            yield _wrong(name, "a reading error", error, unit, reason, "give about half of the finest mark")
    yield from _hung(m, sound)


def _hung(m: Measurements, sound: bool) -> Iterator[Finding]:
    for i, one in enumerate(m.hung):
        path = f"hung/{i}"
        if not 0 < one.mass_g <= 100_000:
            cure = "weigh what hangs below in grams, its hook included"
            yield _wrong(f"{path}/mass_g", "a weight", one.mass_g, "g", "it should be above 0", cure)
        elif not math.isfinite(one.length_mm) or one.length_mm <= 0:
            cure = "read mm, outside, end to end"
            yield _wrong(f"{path}/length_mm", "a length", one.length_mm, "mm", "it should be above 0", cure)
        elif sound:
            short, long = hung_mm(np.array([1.0, MOST_STRETCH]), m.flat_mm, m.thickness_mm, m.hook_mm)
            what = f"under {one.mass_g:g} g, a length"
            if one.length_mm < short - 3 * m.length_error_mm:
                reason = f"laid flat the band is {m.flat_mm:g} mm long already"
                cure = "measure flat length and hung length alike, outside, end to end"
                yield _wrong(f"{path}/length_mm", what, one.length_mm, "mm", reason, cure)
            elif one.length_mm > long:
                reason = f"that is more than {MOST_STRETCH:g} times, where every band has snapped"
                yield _wrong(f"{path}/length_mm", what, one.length_mm, "mm", reason, "look at the unit: mm")
    order = sorted((h for h in m.hung if h.mass_g > 0), key=lambda h: (h.mass_g, h.length_mm))
    for less, more in itertools.pairwise(order):
        if more.mass_g > less.mass_g and more.length_mm < less.length_mm - 3 * m.length_error_mm:
            what = f"under {more.mass_g:g} g, a length"
            reason = f"under {less.mass_g:g} g it was {less.length_mm:g} mm already"
            path = f"hung/{m.hung.index(more)}/length_mm"
            yield _wrong(path, what, more.length_mm, "mm", reason, "measure both weights once more")


def _wrong(path: str, what: str, value: float, unit: str, *why: str) -> Finding:
    reason, cure = why
    return finding(
        "measure-nonsense",
        Place(path=f"/{path}"),
        what=what,
        value=value,
        unit=unit,
        reason=reason,
        cure=cure,
    )
