"""Measure a worked piece with the solver: length at rest, stretch curve, what extension bands add."""

from __future__ import annotations

from typing import NamedTuple

from pegwright.finding import Finding
from pegwright.fit import PieceMeasurements, with_extension
from pegwright.lesson import is_worn
from pegwright.pattern import Extend
from pegwright.shape import USUAL_HANDLING
from pegwright.workshop.at_rest import bring_to_rest
from pegwright.workshop.line import Work, work
from pegwright.workshop.progress import ReportProgress, report_nothing

__all__ = ["PieceMeasures", "measure_piece"]

_PULLS_N = (0.5, 1.0, 2.0, 4.0)  # as far as a hand opens a bracelet
_MORE = 8  # extension bands added to see what one of them adds


class PieceMeasures(NamedTuple):
    """The measurements and the solver's findings, each once."""

    measured: PieceMeasurements
    findings: tuple[Finding, ...]


def measure_piece(
    made: Work, progress: ReportProgress = report_nothing, *, pulls_n: tuple[float, ...] = _PULLS_N
) -> PieceMeasures:
    """Lay a piece flat, pull at its ends ever harder, and see what extension bands add.

    A piece that is not worn round a wrist, or falls apart, is not pulled.

    The curve is that of the open piece, end to end; closed round a wrist it bears the same tension.

    Raises:
        RefusedError: there are no bands, or they cannot be drawn.
    """
    parts = len(pulls_n) + 2
    flat = bring_to_rest(made, _part(progress, "laying it flat", 0, parts))
    settled = [flat]
    now = sum(step.bands for step in made.pattern.steps if isinstance(step, Extend))
    falls = bool(flat.loose) or not flat.hangs_together
    if falls or not is_worn(made.history):
        unpulled = PieceMeasurements(
            length_mm=flat.length_mm,
            width_mm=flat.width_mm,
            pulls=(),
            extension_mm=None,
            extension=now,
            state="apart" if falls else "open",
        )
        return PieceMeasures(unpulled, flat.relaxed.findings)
    pulls = [(0.0, flat.length_mm)]
    for done, pull in enumerate(pulls_n, start=1):
        report = _part(progress, "pulling at its ends", done, parts)
        settled.append(bring_to_rest(made, report, handling=USUAL_HANDLING._replace(straight_n=pull)))
        pulls.append((pull, settled[-1].length_mm))
    longer = with_extension(made.pattern, now + _MORE)
    adds = None
    if longer is not None:
        settled.append(bring_to_rest(work(longer), _part(progress, "lengthening it", parts - 1, parts)))
        adds = (settled[-1].length_mm - flat.length_mm) / _MORE
    measured = PieceMeasurements(
        length_mm=flat.length_mm,
        width_mm=flat.width_mm,
        pulls=tuple(pulls),
        extension_mm=adds,
        extension=now,
    )
    by_code = {found.code: found for piece in reversed(settled) for found in piece.relaxed.findings}
    return PieceMeasures(measured, tuple(by_code.values()))


def _part(progress: ReportProgress, what: str, number: int, parts: int) -> ReportProgress:
    """Return a progress report for one of several parts that take equally long."""
    return lambda _what, done, total: progress(what, 100 * number + 100 * done // total, 100 * parts)
