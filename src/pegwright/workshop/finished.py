"""How a piece comes off the loom, for its lesson: at rest, seen, and, if worn, pulled at; kept by content."""

from __future__ import annotations

import msgspec

from pegwright import __version__
from pegwright.fit.measured import Lengths, Measured
from pegwright.lesson import Finish
from pegwright.lesson.front import is_worn
from pegwright.lesson.portrait import Portrait, mirrored, portrait_of
from pegwright.lesson.sizes import SMALLEST_MM
from pegwright.lesson.verdict import Missing
from pegwright.pattern import write
from pegwright.workshop.cache import fetch, keep, key_of, source_of
from pegwright.workshop.line import Work
from pegwright.workshop.progress import Progress, silent

__all__ = ["finish", "known_finish", "mirrored_finish"]

_ROOMS = ("pattern", "loom", "structure", "proof", "shape", "fit", "lesson", "workshop")

_HARDEST_PULL_N = 4.0
"""How hard a lesson pulls at a piece: a light piece then opens over the hand, and the rest of its stretch
curve does not matter."""


def finish(made: Work, progress: Progress = silent, *, fit: bool = True) -> Finish:
    """Bring a piece to rest and look at it; with `fit` pull at one that is worn, and see what a band adds.

    What does not come to rest is told in the value. What was worked out once is kept.
    """
    known = known_finish(made, fit=fit)
    if known is not None:
        return known
    found = _worked_out(made, progress, fit)
    keep(_key(made, fit), msgspec.msgpack.encode(found))
    return found


def known_finish(made: Work, *, fit: bool = True) -> Finish | None:
    """Return how a piece comes out where that was worked out before; None where it was not."""
    data = fetch(_key(made, fit))
    try:
        kept = None if data is None else msgspec.msgpack.decode(data, type=_Kept)
    except (msgspec.DecodeError, ValueError):
        return None
    if kept is None:
        return None
    return Finish(portrait=kept.portrait, measured=kept.measured, lengths=kept.lengths, missing=kept.missing)


class _Kept(msgspec.Struct, frozen=True, kw_only=True):
    """A `Finish` as it is read back, its fields' types spelled out."""

    portrait: Portrait | None
    measured: Measured | None
    lengths: Lengths | None
    missing: Missing


def _key(made: Work, fit: bool) -> str:
    return key_of("finish", __version__, source_of(*_ROOMS), write(made.pattern), fit)


def _worked_out(made: Work, progress: Progress, fit: bool) -> Finish:
    from pegwright.workshop.at_rest import at_rest  # noqa: PLC0415 - the solver is slow to load
    from pegwright.workshop.lengths import lengths  # noqa: PLC0415
    from pegwright.workshop.stretched import measure  # noqa: PLC0415

    if not made.history.final.bands:
        return Finish(missing="nothing")
    piece = at_rest(made, progress)
    if not piece.relaxed.converged:
        return Finish(missing="restless")
    found = Finish(portrait=portrait_of(piece, made.pattern, made.history.colours))
    if not fit or not is_worn(made.history):
        return found
    measured = measure(made, progress, pulls_n=(_HARDEST_PULL_N,)).measured
    bare_mm = measured.length_mm - measured.extension * (measured.extension_mm or 0.0)
    # Without a free end only repeats make it longer, and only fewer of them make it shorter.
    changes = measured.extension_mm is None or bare_mm > SMALLEST_MM
    longer = lengths(made, progress) if changes else None
    return Finish(portrait=found.portrait, measured=measured, lengths=longer)


def mirrored_finish(found: Finish) -> Finish:
    """Return how the mirrored piece comes out: just so, mirrored."""
    if found.portrait is None:
        return found
    return msgspec.structs.replace(found, portrait=mirrored(found.portrait))
