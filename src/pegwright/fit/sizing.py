"""Whom a finished, closed piece fits: the wrists it suits, how it lies on one, how it passes over the hand.

A piece of length L at rest suits wrists from L to L/0.85 (common practice, no source). Stretched to a girth G
it pulls with a tension T(G), the stretch curve. To pass over the hand it must open to 1.31 wrists
(`fit.wrist`, ANSUR II), pulled apart with 2T. On the wrist it presses with T/(width × radius) (Laplace),
which serves only to rank how close it lies.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Iterator, Sequence
from typing import Any, Literal, NamedTuple

import msgspec
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

from pegwright.finding import Finding, finding, phrase
from pegwright.fit.wrist import PASSES_99

__all__ = [
    "EASE",
    "HAND_PULL_N",
    "Fit",
    "StretchCurve",
    "StretchCurveReading",
    "WornFit",
    "assess_fit",
    "read_stretch_curve",
]

EASE = (0.85, 1.0)
"""Length at rest over wrist, where an elastic piece lies well; common practice, no source."""
HAND_PULL_N = 20.0
"""Pull that opens a piece without trouble; our own choice, no source."""
FIRM_KPA, TIGHT_KPA = 1.9, 2.8
"""Light compression garments begin at about 14 to 21 mmHg, from memory; used to rank, not as a limit."""
_WIDEST = 4.0  # the longest length considered, in lengths at rest, if the curve has no known end

Feel = Literal["loose", "easy", "snug", "tight"]
Limit = Literal["ease", "hand", "known"]


class StretchCurve(msgspec.Struct, frozen=True):
    """A stretch curve: rising lengths in mm and the tension in N that holds the closed piece at each.

    Calling it with a length gives the tension, 0 up to the first length; a monotone cubic runs between the
    points (F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300).
    """

    lengths_mm: tuple[float, ...]
    tensions_n: tuple[float, ...]

    @property
    def known_mm(self) -> float:
        """The longest length on the curve, in mm."""
        return self.lengths_mm[-1]

    def __call__(self, length_mm: float) -> float:
        """Return the tension in N at a length.

        Raises:
            ValueError: the length lies beyond the curve.
        """
        if length_mm > self.known_mm:
            raise ValueError(f"the curve is known up to {self.known_mm:g} mm, not {length_mm:g}")
        if length_mm <= self.lengths_mm[0]:
            return 0.0
        return float(PchipInterpolator(self.lengths_mm, self.tensions_n)(length_mm))


class StretchCurveReading(NamedTuple):
    """The curve, or None, and the findings."""

    curve: StretchCurve | None
    findings: tuple[Finding, ...]


class WornFit(msgspec.Struct, frozen=True, kw_only=True):
    """The piece on one wrist. `ease` is length at rest over wrist; forces are None beyond the curve.

    `tension_n` runs round the piece, `pressure_kpa` ranks how close it lies, `pull_n` opens it for the hand.
    """

    wrist_mm: float
    ease: float
    feel: Feel
    tension_n: float | None
    pressure_kpa: float | None
    hand_mm: float
    pull_n: float | None
    part: str = "wrist"


class Fit(msgspec.Struct, frozen=True, kw_only=True):
    """The wrists in mm that the piece suits, or None, and what sets the upper end.

    `ease`: larger wrists find it tight. `hand`: it does not open over larger hands. `known`: the curve ends.
    """

    length_mm: float
    wrists_mm: tuple[float, float] | None
    limited_by: Limit
    worn: WornFit | None = None
    findings: tuple[Finding, ...] = ()


def read_stretch_curve(points: Sequence[tuple[float, float]]) -> StretchCurveReading:
    """Read a stretch curve from pairs of force in N and length in mm, in any order."""
    ordered = sorted(points, key=lambda pair: pair[1])
    reason = None
    if len(ordered) < 2:
        reason = phrase("curve-few")
    elif not all(math.isfinite(f) and math.isfinite(mm) and f >= 0 and mm > 0 for f, mm in ordered):
        reason = phrase("curve-negative")
    elif any(b[0] <= a[0] or b[1] <= a[1] for a, b in itertools.pairwise(ordered)):
        less, more = next((a, b) for a, b in itertools.pairwise(ordered) if b[0] <= a[0] or b[1] <= a[1])
        reason = phrase("curve-falls", less_n=less[0], less_mm=less[1], more_n=more[0], more_mm=more[1])
    if reason is not None:
        return StretchCurveReading(None, (finding("stretch-curve-nonsense", reason=reason),))
    return StretchCurveReading(StretchCurve(tuple(mm for _, mm in ordered), tuple(f for f, _ in ordered)), ())


def assess_fit(
    length_mm: float,
    stretch: StretchCurve | Callable[[float], float],
    *,
    width_mm: float,
    wrist_mm: float | None = None,
    hand_pull_n: float = HAND_PULL_N,
    part: str = "wrist",
    passes: float = PASSES_99,
) -> Fit:
    """Say which wrists a closed piece suits, and with `wrist_mm` how it lies on that one.

    Args:
        length_mm: length of the closed piece at rest, measured flat. stretch: tension in N at a length in mm;
        rising, and defined for every length unless it is a `StretchCurve`. width_mm: how wide the piece lies
        on the skin. wrist_mm: a wrist to assess, or another `part`. hand_pull_n: the greatest pull that is
        reasonable for opening the piece. passes: the girth of what it has to pass over, in wrists.

    Raises:
        ValueError: a length, width, wrist or pull is not a positive number.
    """
    for value in (length_mm, width_mm, hand_pull_n, 1.0 if wrist_mm is None else wrist_mm):
        if not (math.isfinite(value) and value > 0):
            raise ValueError(f"lengths and pulls must be positive numbers, not {value}")
    known_mm = _known_mm(stretch)
    opens_mm = _opening_length_mm(length_mm, stretch, hand_pull_n, min(known_mm, _WIDEST * length_mm))
    ends: list[tuple[float, Limit]] = [
        (length_mm / EASE[0], "ease"),
        (opens_mm / passes if opens_mm < known_mm else math.inf, "hand"),
        (known_mm / passes, "known"),
    ]
    high, limit = min(ends)
    low = length_mm / EASE[1]
    worn = None
    if wrist_mm is not None:
        worn = _wear(length_mm, stretch, width_mm, wrist_mm, passes * wrist_mm)
        worn = msgspec.structs.replace(worn, part=part)
    return Fit(
        length_mm=length_mm,
        wrists_mm=(low, high) if low <= high else None,
        limited_by=limit,
        worn=worn,
        findings=() if worn is None else tuple(_find_misfits(length_mm, worn, known_mm, hand_pull_n)),
    )


def _opening_length_mm(
    length_mm: float, stretch: Callable[[float], float], pull_n: float, end_mm: float
) -> float:
    """Return the length in mm to which a pull opens the piece, at most `end_mm`."""
    if end_mm <= length_mm or 2 * stretch(end_mm) <= pull_n:
        return end_mm
    return float(brentq(lambda mm: 2 * stretch(mm) - pull_n, length_mm, end_mm))


def _known_mm(stretch: StretchCurve | Callable[[float], float]) -> float:
    return stretch.known_mm if isinstance(stretch, StretchCurve) else math.inf


def _wear(
    length_mm: float,
    stretch: StretchCurve | Callable[[float], float],
    width_mm: float,
    wrist_mm: float,
    hand: float,
) -> WornFit:
    ease, known_mm = length_mm / wrist_mm, _known_mm(stretch)
    tension = (0.0 if ease >= 1 else stretch(wrist_mm)) if wrist_mm <= known_mm else None
    # T/(width × radius): N/mm² are MPa
    pressure = None if tension is None else 1000 * tension / (width_mm * wrist_mm / (2 * math.pi))
    feel: Feel = "easy"
    if ease > EASE[1]:
        feel = "loose"
    elif ease < EASE[0] or (pressure is not None and pressure > TIGHT_KPA):
        feel = "tight"
    elif pressure is not None and pressure > FIRM_KPA:
        feel = "snug"
    return WornFit(
        wrist_mm=wrist_mm,
        ease=ease,
        feel=feel,
        tension_n=tension,
        pressure_kpa=pressure,
        hand_mm=hand,
        pull_n=(0.0 if hand <= length_mm else 2 * stretch(hand)) if hand <= known_mm else None,
    )


def _find_misfits(length_mm: float, worn: WornFit, known_mm: float, hand_pull_n: float) -> Iterator[Finding]:
    facts: dict[str, Any] = {
        "length_mm": length_mm,
        "wrist_mm": worn.wrist_mm,
        "part": worn.part,
        "low_mm": EASE[0] * worn.wrist_mm,
        "high_mm": EASE[1] * worn.wrist_mm,
    }
    if worn.feel == "loose":
        yield finding("fit-loose", **facts)
    elif worn.feel == "tight":
        force_n = worn.tension_n
        pulls = phrase("pulls-unknown") if force_n is None else phrase("pulls-with", force_n=force_n)
        yield finding("fit-tight", **facts, pulls=pulls)
    if worn.pull_n is None:
        yield finding("fit-unmeasured", known_mm=known_mm, needed_mm=worn.hand_mm, part=worn.part)
    elif worn.pull_n > hand_pull_n:
        yield finding("fit-hand", hand_mm=worn.hand_mm, pull_n=worn.pull_n, part=worn.part)
