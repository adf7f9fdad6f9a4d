"""A piece off the loom: where every strand lies, how taut it is, and how the whole stretches."""

from __future__ import annotations

import math

import numpy as np

from pegwright.fit.grading import with_extension
from pegwright.pattern import BandType, Extend
from pegwright.server.solid import AtRest, Measured, Strand
from pegwright.shape import Kind, Piece, piece_at_rest
from pegwright.shape.piece import USUAL
from pegwright.shape.relax import Progress as Moment
from pegwright.workshop import Progress, Work, silent
from pegwright.workshop import work as run

# What share of the way a stage begins and ends at, as it came out on chains and strips.
_STAGES = {
    "getting ready": (0.0, 0.05),
    "growing": (0.05, 0.4),
    "dressing": (0.4, 0.75),
    "resting": (0.75, 1.0),
}
_AT_REST = -3.0  # the power of ten that the forces fall by until a stage counts as at rest


_PULLS_N = (0.5, 1.0, 2.0, 4.0)  # as far as a hand opens a bracelet
_MORE = 8  # extension bands put in to see what one of them adds


def at_rest(work: Work, progress: Progress) -> AtRest:
    """Bring a worked piece to rest.

    Raises:
        ValueError: there are no bands, or they make no sense.
    """
    return _told(_settle(work, progress))


def measure(work: Work, progress: Progress) -> Measured:
    """Lay a piece flat and pull at its ends, harder each time; and see what extension bands add.

    Raises:
        ValueError: there are no bands, or they make no sense.
    """
    parts = len(_PULLS_N) + 2
    progress("laying it flat", 0, parts)
    flat = _settle(work)
    pulls = [(0.0, flat.length_mm)]
    for done, pull in enumerate(_PULLS_N, start=1):
        progress("pulling at its ends", done, parts)
        pulls.append((pull, _settle(work, straight_n=pull).length_mm))
    progress("lengthening it", parts - 1, parts)
    now = sum(step.bands for step in work.pattern.steps if isinstance(step, Extend))
    longer = with_extension(work.pattern, now + _MORE)
    adds = None if longer is None else (_settle(run(longer)).length_mm - flat.length_mm) / _MORE
    return Measured(
        length_mm=flat.length_mm,
        width_mm=flat.width_mm,
        pulls=tuple(pulls),
        extension_mm=adds,
        extension=now,
    )


def _settle(work: Work, progress: Progress = silent, straight_n: float = USUAL.straight_n) -> Piece:
    reached = 0.0

    def hear(moment: Moment) -> None:
        nonlocal reached
        begin, end = _STAGES[moment.stage]
        down = math.log10(max(moment.residual_drop, 1e-12)) / _AT_REST
        reached = max(reached, begin + (end - begin) * min(max(down, 0.0), 1.0))
        progress(moment.stage, round(100 * reached), 100)

    kinds = {kind.name: kind for kind in reversed(work.pattern.bands)}
    colours = {colour.letter: kinds.get(colour.band) for colour in reversed(work.pattern.colours)}
    plain = BandType()
    return piece_at_rest(
        work.history.events,
        work.history.board.spots,
        [_kind(colours.get(letter) or plain) for letter in work.history.colours],
        progress=hear,
        dressing=USUAL._replace(straight_n=straight_n),
    )


def _kind(band: BandType) -> Kind:
    return Kind(band.bore_mm, band.thickness_mm)


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
