"""A worked piece measured by the solver: its length at rest, its stretch curve, what extension bands add."""

from __future__ import annotations

from typing import NamedTuple

from pegwright.finding import Finding
from pegwright.fit.grading import with_extension
from pegwright.fit.measured import Measured
from pegwright.pattern import Extend
from pegwright.shape.piece import USUAL
from pegwright.workshop.at_rest import at_rest
from pegwright.workshop.line import Work, work
from pegwright.workshop.progress import Progress, silent

__all__ = ["Stretched", "measure"]

_PULLS_N = (0.5, 1.0, 2.0, 4.0)  # as far as a hand opens a bracelet
_MORE = 8  # extension bands put in to see what one of them adds


class Stretched(NamedTuple):
    """The measures, and what the solver found while taking them, each finding once."""

    measured: Measured
    findings: tuple[Finding, ...]


def measure(made: Work, progress: Progress = silent, *, pulls_n: tuple[float, ...] = _PULLS_N) -> Stretched:
    """Lay a piece flat and pull at its ends, harder each time; and see what extension bands add.

    The curve is that of one strand of the piece, end to end: closed round a wrist it bears the same tension.

    Raises:
        ValueError: there are no bands, or they make no sense.
    """
    parts = len(pulls_n) + 2
    flat = at_rest(made, _part(progress, "laying it flat", 0, parts))
    settled = [flat]
    pulls = [(0.0, flat.length_mm)]
    for done, pull in enumerate(pulls_n, start=1):
        report = _part(progress, "pulling at its ends", done, parts)
        settled.append(at_rest(made, report, handling=USUAL._replace(straight_n=pull)))
        pulls.append((pull, settled[-1].length_mm))
    now = sum(step.bands for step in made.pattern.steps if isinstance(step, Extend))
    longer = with_extension(made.pattern, now + _MORE)
    adds = None
    if longer is not None:
        settled.append(at_rest(work(longer), _part(progress, "lengthening it", parts - 1, parts)))
        adds = (settled[-1].length_mm - flat.length_mm) / _MORE
    measured = Measured(
        length_mm=flat.length_mm,
        width_mm=flat.width_mm,
        pulls=tuple(pulls),
        extension_mm=adds,
        extension=now,
    )
    by_code = {found.code: found for piece in reversed(settled) for found in piece.relaxed.findings}
    return Stretched(measured, tuple(by_code.values()))


def _part(progress: Progress, what: str, number: int, parts: int) -> Progress:
    """Return the progress of one of several parts that take about as long."""
    return lambda _what, done, total: progress(what, 100 * number + 100 * done // total, 100 * parts)
