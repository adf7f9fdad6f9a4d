"""How a piece comes off the loom, for its lesson: at rest, seen, and, if worn, pulled at."""

from __future__ import annotations

import msgspec

from pegwright.lesson import Finish, front
from pegwright.lesson.portrait import mirrored, portrait_of
from pegwright.lesson.sizes import SMALLEST_MM
from pegwright.workshop.line import Work
from pegwright.workshop.progress import Progress, silent

__all__ = ["finish", "is_worn", "mirrored_finish"]

_HARDEST_PULL_N = 4.0
"""How hard a lesson pulls at a piece: a light piece then opens over the hand, and the rest of its stretch
curve does not matter."""


def is_worn(made: Work) -> bool:
    """Say whether the piece closes round a wrist: a clip joins two of its ends."""
    return front.is_worn(made.history)


def finish(made: Work, progress: Progress = silent, *, fit: bool = True) -> Finish:
    """Bring a piece to rest and look at it; with `fit` pull at one that is worn, and see what a band adds.

    What does not come to rest is told in the value.
    """
    from pegwright.workshop.at_rest import at_rest  # noqa: PLC0415 - the solver is slow to load
    from pegwright.workshop.lengths import lengths  # noqa: PLC0415
    from pegwright.workshop.stretched import measure  # noqa: PLC0415

    if not made.history.final.bands:
        return Finish(missing="nothing")
    piece = at_rest(made, progress)
    if not piece.relaxed.converged:
        return Finish(missing="restless")
    found = Finish(portrait=portrait_of(piece, made.pattern, made.history.colours))
    if not fit or not is_worn(made):
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
