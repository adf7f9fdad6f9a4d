"""A piece off the loom: where every strand lies, how taut it is, and how the whole stretches."""

from __future__ import annotations

import numpy as np

from pegwright.fit.grading import with_extension
from pegwright.pattern import Extend
from pegwright.server.solid import AtRest, Measured, Strand
from pegwright.shape import Piece
from pegwright.shape.piece import USUAL
from pegwright.workshop import Progress, Work
from pegwright.workshop import work as run
from pegwright.workshop.at_rest import at_rest as settle

_PULLS_N = (0.5, 1.0, 2.0, 4.0)  # as far as a hand opens a bracelet
_MORE = 8  # extension bands put in to see what one of them adds


def at_rest(work: Work, progress: Progress) -> AtRest:
    """Bring a worked piece to rest.

    Raises:
        ValueError: there are no bands, or they make no sense.
    """
    return _told(settle(work, progress))


def measure(work: Work, progress: Progress) -> Measured:
    """Lay a piece flat and pull at its ends, harder each time; and see what extension bands add.

    Raises:
        ValueError: there are no bands, or they make no sense.
    """
    parts = len(_PULLS_N) + 2
    progress("laying it flat", 0, parts)
    flat = settle(work)
    pulls = [(0.0, flat.length_mm)]
    for done, pull in enumerate(_PULLS_N, start=1):
        progress("pulling at its ends", done, parts)
        pulls.append((pull, settle(work, handling=USUAL._replace(straight_n=pull)).length_mm))
    progress("lengthening it", parts - 1, parts)
    now = sum(step.bands for step in work.pattern.steps if isinstance(step, Extend))
    longer = with_extension(work.pattern, now + _MORE)
    adds = None if longer is None else (settle(run(longer)).length_mm - flat.length_mm) / _MORE
    return Measured(
        length_mm=flat.length_mm,
        width_mm=flat.width_mm,
        pulls=tuple(pulls),
        extension_mm=adds,
        extension=now,
    )


def _told(piece: Piece) -> AtRest:
    rest = piece.relaxed
    strands = tuple(
        Strand(
            band=i + 1 if i < piece.bands else 0,
            radius_mm=piece.radius_mm[i],
            closed=piece.closed[i],
            points_mm=tuple(np.round(points.ravel(), 3).tolist()),
            tension_n=tuple(np.round(rest.tension_n[i], 4).tolist()),
        )
        for i, points in enumerate(rest.positions_mm)
    )
    return AtRest(
        length_mm=piece.length_mm,
        width_mm=piece.width_mm,
        height_mm=piece.height_mm,
        settled=rest.converged,
        crossings=piece.certified.crossings,
        strands=strands,
        findings=rest.findings,
    )
