"""A piece off the loom: where every strand lies, and how taut it is."""

from __future__ import annotations

import numpy as np

from pegwright.finding import Language
from pegwright.finding.wording import worded
from pegwright.server.solid import AtRest, Strand
from pegwright.shape import Piece
from pegwright.workshop import Progress, Work
from pegwright.workshop.at_rest import at_rest as settle


def at_rest(
    work: Work, progress: Progress, *, girth_mm: float | None = None, language: Language = "en"
) -> AtRest:
    """Bring a worked piece to rest: flat, or closed round a wrist of that girth in mm.

    Raises:
        ValueError: there are no bands, or they make no sense; no clip closes a piece that is to be worn.
    """
    return _told(settle(work, progress, girth_mm=girth_mm), language)


def _told(piece: Piece, language: Language) -> AtRest:
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
        findings=tuple(worded(each, language) for each in rest.findings),
    )
