"""How a piece comes off the loom, for its lesson: at rest, pictured and measured; cached by content."""

from __future__ import annotations

import msgspec

from pegwright import __version__
from pegwright.fit import PieceMeasurements, RepeatOptions
from pegwright.lesson import (
    SMALLEST_MM,
    FinishedPiece,
    MissingReason,
    Portrait,
    is_worn,
    mirror_portrait,
    portrait_of,
)
from pegwright.pattern import write_pattern
from pegwright.workshop.cache import fetch_result, key_of, source_of, store_result
from pegwright.workshop.line import Work
from pegwright.workshop.progress import ReportProgress, report_nothing

__all__ = ["cached_finish", "finish", "mirrored_finish"]

_ROOMS = ("pattern", "loom", "structure", "proof", "shape", "fit", "judging", "lesson", "workshop")

_HARDEST_PULL_N = 4.0
"""The hardest pull of a lesson: it opens a light piece over the hand; harder pulls do not matter."""


def finish(made: Work, progress: ReportProgress = report_nothing, *, fit: bool = True) -> FinishedPiece:
    """Bring a piece to rest and picture it; with `fit`, also measure the stretch and lengths of a worn one.

    A piece that does not come to rest gives a value that says so. The result is cached.
    """
    known = cached_finish(made, fit=fit)
    if known is not None:
        return known
    found = _work_out(made, progress, fit)
    store_result(_key(made, fit), msgspec.msgpack.encode(found))
    return found


def cached_finish(made: Work, *, fit: bool = True) -> FinishedPiece | None:
    """Return how a piece comes out if that is in the cache, else None."""
    data = fetch_result(_key(made, fit))
    try:
        kept = None if data is None else msgspec.msgpack.decode(data, type=_CachedFinish)
    except (msgspec.DecodeError, ValueError):
        return None
    if kept is None:
        return None
    return FinishedPiece(
        portrait=kept.portrait, measured=kept.measured, lengths=kept.lengths, missing=kept.missing
    )


class _CachedFinish(msgspec.Struct, frozen=True, kw_only=True):
    """A `FinishedPiece` as it is decoded, with the types of its fields spelled out."""

    portrait: Portrait | None
    measured: PieceMeasurements | None
    lengths: RepeatOptions | None
    missing: MissingReason


def _key(made: Work, fit: bool) -> str:
    return key_of("finish", __version__, source_of(*_ROOMS), write_pattern(made.pattern), fit)


def _work_out(made: Work, progress: ReportProgress, fit: bool) -> FinishedPiece:
    from pegwright.workshop.at_rest import bring_to_rest  # noqa: PLC0415 - the solver is slow to load
    from pegwright.workshop.lengths import measure_lengths  # noqa: PLC0415
    from pegwright.workshop.stretch_measures import measure_piece  # noqa: PLC0415

    if not made.history.final.bands:
        return FinishedPiece(missing="nothing")
    piece = bring_to_rest(made, progress)
    if not piece.relaxed.converged:
        return FinishedPiece(missing="restless")
    found = FinishedPiece(portrait=portrait_of(piece, made.pattern, made.history.colours))
    if not fit or not is_worn(made.history):
        return found
    measured = measure_piece(made, progress, pulls_n=(_HARDEST_PULL_N,)).measured
    bare_mm = measured.length_mm - measured.extension * (measured.extension_mm or 0.0)
    # A piece without a free end changes its length only by its repeats.
    changes = measured.extension_mm is None or bare_mm > SMALLEST_MM
    longer = measure_lengths(made, progress) if changes else None
    return FinishedPiece(portrait=found.portrait, measured=measured, lengths=longer)


def mirrored_finish(found: FinishedPiece) -> FinishedPiece:
    """Return how the mirrored piece comes out: the same, mirrored."""
    if found.portrait is None:
        return found
    return msgspec.structs.replace(found, portrait=mirror_portrait(found.portrait))
