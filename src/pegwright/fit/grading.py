"""The same design for other wrists: repeats, extension bands, and the supplies of each size.

The model of length at rest: base + repeats × repeat length + extension bands × their length. Two relaxed
lengths that differ in one count give that coefficient (`fit_gauge`). The base is what ends and fastener add.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from typing import Any, NamedTuple

import msgspec
import numpy as np

from pegwright.finding import Finding, finding, phrase
from pegwright.fit.girths import read_girth
from pegwright.fit.sizing import EASE
from pegwright.fit.supplies import Supplies, count_supplies
from pegwright.fit.wrist import Wrist
from pegwright.loom import replay_pattern
from pegwright.pattern import Bind, Extend, Pattern, expand

__all__ = [
    "Gauge",
    "GaugeReading",
    "GradedSize",
    "LengthSample",
    "SizePlan",
    "fit_gauge",
    "grade_sizes",
    "plan_size",
    "with_extension",
]

MAX_COUNT = 500  # repeats or extension bands; no wrist needs more


class LengthSample(NamedTuple):
    """A piece at rest: repeats, extension bands, and its length in mm, closed and flat."""

    repeats: int
    extension: int
    length_mm: float


class Gauge(msgspec.Struct, frozen=True, kw_only=True):
    """What ends and fastener, one repeat, and one extension band add to the length at rest, in mm."""

    base_mm: float
    repeat_mm: float
    extension_mm: float

    def length_mm(self, repeats: int, extension: int) -> float:
        """Return the length of a piece at rest in mm."""
        return self.base_mm + repeats * self.repeat_mm + extension * self.extension_mm


class GaugeReading(NamedTuple):
    """The gauge, or None, and the findings."""

    gauge: Gauge | None
    findings: tuple[Finding, ...]


class SizePlan(msgspec.Struct, frozen=True, kw_only=True):
    """How the design is made for a wrist."""

    wrist: Wrist
    repeats: int
    extension: int
    length_mm: float
    findings: tuple[Finding, ...] = ()

    @property
    def ease(self) -> float:
        """The length at rest over the wrist's girth."""
        return self.length_mm / self.wrist.girth_mm


class GradedSize(msgspec.Struct, frozen=True, kw_only=True):
    """One size of the design: as asked for, its plan, pattern and supplies; None if it cannot be made."""

    asked: str
    plan: SizePlan | None = None
    pattern: Pattern | None = None
    supplies: Supplies | None = None
    findings: tuple[Finding, ...] = ()


def fit_gauge(
    pieces: Sequence[LengthSample], *, repeat_mm: float | None = None, extension_mm: float | None = None
) -> GaugeReading:
    """Work out the gauge from relaxed lengths, by least squares if there are more than needed.

    Known lengths can be given; for an unknown one the pieces must differ in that count.

    Raises:
        ValueError: the pieces do not determine all three lengths.
    """
    known = {1: repeat_mm, 2: extension_mm}
    columns = [0, *(k for k, value in known.items() if value is None)]
    counts = np.array([[1.0, piece.repeats, piece.extension] for piece in pieces]).reshape(-1, 3)
    rest = np.array([piece.length_mm for piece in pieces], dtype=np.float64)
    for k, value in known.items():
        rest = rest - counts[:, k] * (value or 0.0)
    if np.linalg.matrix_rank(counts[:, columns]) < len(columns):
        raise ValueError("these pieces do not tell repeats and extension bands apart; measure one more")
    found = dict(zip(columns, np.linalg.lstsq(counts[:, columns], rest, rcond=None)[0].tolist(), strict=True))
    one = Gauge(
        base_mm=found[0],
        repeat_mm=found.get(1, repeat_mm or 0.0),
        extension_mm=found.get(2, extension_mm or 0.0),
    )
    named = (("gauge-repeat", one.repeat_mm), ("gauge-extension", one.extension_mm))
    wrong = tuple(
        finding("gauge-nonsense", what=phrase(what), value_mm=mm) for what, mm in named if not mm > 0
    )
    return GaugeReading(None if wrong else one, wrong)


def plan_size(
    wrist: Wrist,
    gauge: Gauge,
    *,
    repeats: int | None = None,
    least_extension: int = 0,
    least_repeats: int = 0,
    most_repeats: int = MAX_COUNT,
) -> SizePlan:
    """Choose repeats and extension bands for a wrist.

    If one length can, it serves the whole size: at least 0.85 of its largest wrist, at most its smallest.
    Take as many repeats as that allows, then the extension nearest to the middle. With `repeats` given, only
    the extension is chosen. If nothing suits, take the nearest, with a finding that says how it lies.

    Raises:
        ValueError: a number of repeats or extension bands is negative.
    """
    if min(least_extension, least_repeats, most_repeats, 0 if repeats is None else repeats) < 0:
        raise ValueError("repeats and extension bands are counted from 0")
    low, high = EASE[0] * wrist.high_mm, EASE[1] * wrist.low_mm
    if low > high:
        low, high = EASE[0] * wrist.girth_mm, EASE[1] * wrist.girth_mm
    aim = (low + high) / 2
    choices = [
        (tried, extension, gauge.length_mm(tried, extension))
        for tried in (
            range(least_repeats, min(most_repeats, MAX_COUNT) + 1) if repeats is None else (repeats,)
        )
        for extension in _nearby_extensions(aim, gauge, tried, least_extension)
    ]
    suiting = [choice for choice in choices if low - 1e-9 <= choice[2] <= high + 1e-9]
    if suiting:
        best = min(suiting, key=lambda choice: (-choice[0], abs(choice[2] - aim), choice[1]))
    else:
        best = min(choices, key=lambda choice: (abs(choice[2] - aim), -choice[0], choice[1]))
    facts: dict[str, Any] = {
        "length_mm": best[2],
        "wrist_mm": wrist.girth_mm,
        "part": wrist.part,
        "low_mm": low,
        "high_mm": high,
    }
    found: tuple[Finding, ...] = ()
    if not suiting:
        unknown = phrase("pulls-unknown")
        tight = finding("fit-tight", **facts, pulls=unknown)
        found = (finding("fit-loose", **facts) if best[2] > high else tight,)
    return SizePlan(wrist=wrist, repeats=best[0], extension=best[1], length_mm=best[2], findings=found)


def grade_sizes(
    design: Pattern | Callable[[int, int], Pattern | None],
    gauge: Gauge,
    sizes: Sequence[str | Wrist],
    *,
    repeats: int | None = None,
    least_extension: int = 0,
    least_repeats: int = 0,
    most_repeats: int = MAX_COUNT,
) -> tuple[GradedSize, ...]:
    """Make the design for each size in turn: wrists, or texts for `read_girth`.

    Args:
        design: a pattern whose extension alone changes, or a function from numbers of repeats and extension
            bands to a pattern, or to None if it has no place for extension bands.
        gauge: what a repeat and an extension band add.
        sizes: the list of sizes.
        repeats: the number of repeats, if it is fixed; a pattern needs it.
        least_extension: the fewest extension bands.
        least_repeats: the fewest repeats.
        most_repeats: the most repeats that the loom has room for.

    Raises:
        ValueError: a pattern comes without `repeats`, or a number is negative.
    """
    if isinstance(design, Pattern) and repeats is None:
        raise ValueError("say how many repeats the pattern has")
    graded = []
    for size in sizes:
        wrist, findings = (size, ()) if isinstance(size, Wrist) else read_girth(size)
        asked = size.said if isinstance(size, Wrist) else size
        if wrist is None:
            graded.append(GradedSize(asked=asked, findings=findings))
            continue
        plan = plan_size(
            wrist,
            gauge,
            repeats=repeats,
            least_extension=least_extension,
            least_repeats=least_repeats,
            most_repeats=most_repeats,
        )
        made = (
            with_extension(design, plan.extension)
            if isinstance(design, Pattern)
            else design(plan.repeats, plan.extension)
        )
        graded.append(_build_size(asked, plan, made, findings))
    return tuple(graded)


def with_extension(pattern: Pattern, bands: int) -> Pattern | None:
    """Return the pattern with `bands` extension bands at its first free end; None if it has no free end.

    Only the pattern's own steps count, not those in motifs and repeats.
    """
    steps = list(pattern.steps)
    at = next((i for i, step in enumerate(steps) if isinstance(step, Extend)), None)
    if at is not None:
        old = steps[at]
        steps[at : at + 1] = [msgspec.structs.replace(old, bands=bands)] if bands else []
        return msgspec.structs.replace(pattern, steps=tuple(steps))
    bound = next((step for step in steps if isinstance(step, Bind)), None)
    if not bands:
        return pattern
    if bound is None:
        return None
    chain = Extend(colour=bound.colour, bands=bands, end=bound.end, together=bound.together)
    steps.insert(steps.index(bound) + 1, chain)
    return msgspec.structs.replace(pattern, steps=tuple(steps))


def _build_size(
    asked: str, plan: SizePlan, made: Pattern | None, findings: tuple[Finding, ...]
) -> GradedSize:
    findings = (*findings, *plan.findings)
    if made is None:
        nowhere = finding("extension-nowhere", bands=plan.extension)
        return GradedSize(asked=asked, plan=plan, findings=(*findings, nowhere))
    expansion = expand(made)
    history = replay_pattern(made, expansion)
    return GradedSize(
        asked=asked,
        plan=plan,
        pattern=made,
        supplies=count_supplies(made, history),
        findings=(*findings, *expansion.findings, *history.findings),
    )


def _nearby_extensions(aim_mm: float, gauge: Gauge, repeats: int, least: int) -> Iterator[int]:
    """Yield the numbers of extension bands just below and above the aim; the least if they add nothing."""
    if gauge.extension_mm <= 0:
        yield least
        return
    wanted = (aim_mm - gauge.length_mm(repeats, 0)) / gauge.extension_mm
    yield from sorted(
        {min(max(least, n), MAX_COUNT + least) for n in (math.floor(wanted), math.ceil(wanted))}
    )
