"""A piece off the loom: where every strand lies, and how taut it is."""

from __future__ import annotations

import numpy as np

from pegwright.finding import Language, word_finding
from pegwright.server.resting import AtRest, RestingStrand
from pegwright.shape import RestingPiece
from pegwright.workshop import ReportProgress, Work, bring_to_rest as settle


def rest_piece(
    work: Work, progress: ReportProgress, *, girth_mm: float | None = None, language: Language = "en"
) -> AtRest:
    """Bring a worked piece to rest: flat, or closed round a wrist `girth_mm` round.

    Raises:
        RefusedError: there are no bands, they cannot be drawn, or no clip closes the piece round the wrist.
    """
    return _rest_response(settle(work, progress, girth_mm=girth_mm), language)


def _rest_response(piece: RestingPiece, language: Language) -> AtRest:
    rest = piece.relaxed
    strands = tuple(
        RestingStrand(
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
        crossings=piece.crossing_check.crossings,
        strands=strands,
        findings=tuple(word_finding(each, language) for each in rest.findings),
    )
