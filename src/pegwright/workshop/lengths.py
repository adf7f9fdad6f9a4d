"""Other lengths of a design: which numbers of repeats are proved to hold, and what a repeat adds."""

from __future__ import annotations

import math

from pegwright.fit import RepeatOptions
from pegwright.pattern import Pattern, repeats_of, with_repeats
from pegwright.workshop.at_rest import bring_to_rest
from pegwright.workshop.line import Work, work
from pegwright.workshop.progress import ReportProgress, report_nothing

__all__ = ["measure_lengths"]

_LONGEST_MM = 200.0  # the largest wrist in the surveys, rounded up
_COUNTS = frozenset({"text-count-wrong"})  # stated counts describe the piece as it is


def measure_lengths(made: Work, progress: ReportProgress = report_nothing) -> RepeatOptions | None:
    """Return the lengths that the piece can have; None if its repeats cannot be changed.

    Every number of repeats in the result is worked and proved like the piece itself, and gives no finding
    that the piece does not. One of them is brought to rest, to see what a repeat adds.
    """
    of = repeats_of(made.pattern)
    if of is None or not made.holds:
        return None
    known = {found.code for found in made.findings} | _COUNTS
    least = of.now
    while least > 1 and _sound(with_repeats(made.pattern, least - 1), known):
        least -= 1
    other = max(least, of.now - max(1, of.now // 4))
    if other == of.now:
        other += 1
        full = of.most is not None and other > of.most
        if full or not _sound(with_repeats(made.pattern, other), known):
            return None
    changed = work(with_repeats(made.pattern, other))
    length_mm = bring_to_rest(made).length_mm
    one_mm = (bring_to_rest(changed, progress).length_mm - length_mm) / (other - of.now)
    if not one_mm > 0:
        return None
    most, useful = of.now, of.now + max(0, math.ceil((_LONGEST_MM - length_mm) / one_mm))
    while most < min(useful, of.most or useful) and _sound(with_repeats(made.pattern, most + 1), known):
        most += 1
    bands = (len(made.proof.verdicts) - len(changed.proof.verdicts)) // (of.now - other)
    return RepeatOptions(now=of.now, least=least, most=most, one_mm=one_mm, bands=bands)


def _sound(pattern: Pattern, known: set[str]) -> bool:
    """Return whether a piece holds and gives only known findings."""
    made = work(pattern)
    return made.holds and {found.code for found in made.findings} <= known
