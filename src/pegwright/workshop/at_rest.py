"""Bring a worked piece to rest, each band with its own properties; results are cached by content."""

from __future__ import annotations

import math
from typing import Any

import msgspec
import numpy as np

from pegwright import __version__
from pegwright.fit import rubber_of
from pegwright.pattern import BandType, band_types_by_letter
from pegwright.shape import (
    USUAL_HANDLING,
    BandProperties,
    GrownPiece,
    Handling,
    RelaxationProgress as Moment,
    RestingPiece,
    grow_piece,
    relax_piece,
)
from pegwright.workshop.cache import fetch_result, key_of, source_of, store_result
from pegwright.workshop.line import Work
from pegwright.workshop.progress import ReportProgress, report_nothing

# The share of the total time at which a stage starts and ends, as measured on chains and strips.
_FLAT = {
    "getting ready": (0.0, 0.05),
    "growing": (0.05, 0.4),
    "dressing": (0.4, 0.75),
    "resting": (0.75, 1.0),
}
_WORN = {
    "getting ready": (0.0, 0.05),
    "growing": (0.05, 0.3),
    "dressing": (0.3, 0.55),
    "resting": (0.55, 0.7),
    "closing": (0.7, 1.0),
}
_grown: dict[str, GrownPiece] = {}
"""The piece grown last, by what it is made of."""
_AT_REST = -3.0  # log10 of the drop in forces at which a stage counts as at rest


def bring_to_rest(
    work: Work,
    progress: ReportProgress = report_nothing,
    *,
    girth_mm: float | None = None,
    handling: Handling = USUAL_HANDLING,
    kept: bool = True,
) -> RestingPiece:
    """Bring a worked piece to rest: flat, or closed round a wrist `girth_mm` round.

    With `kept`, the result is read from the cache and stored in it.

    Raises:
        RefusedError: there are no bands, they cannot be drawn, or no clip closes the piece round the wrist.
    """
    history = work.history
    kinds = kinds_of(work)
    spots = sorted(history.board.spots.items())
    key = key_of(
        __version__, source_of("shape", "structure"), history.events, spots, kinds, handling, girth_mm
    )
    known = _decode(fetch_result(key)) if kept else None
    if known is not None:
        return known
    hear = _SolverProgress(progress, _FLAT if girth_mm is None else _WORN)
    made_of = key_of(history.events, spots, kinds)
    grown = _grown.get(made_of)
    if grown is None:
        _grown.clear()  # one is enough: a piece is laid flat, and then pulled
        grown = grow_piece(history.events, history.board.spots, kinds, progress=hear)
        if grown.bands.converged:
            _grown[made_of] = grown
    piece = relax_piece(
        history.events,
        history.board.spots,
        kinds,
        dressing=handling,
        girth_mm=girth_mm,
        progress=hear,
        grown=grown,
    )
    if kept:
        store_result(key, msgspec.msgpack.encode(piece, enc_hook=_encode))
    return piece


def kinds_of(work: Work) -> tuple[BandProperties, ...]:
    """Return the properties of every band in order of placing; of types with one name the first counts."""
    kinds, plain = band_types_by_letter(work.pattern), BandType()
    bands = [kinds.get(letter) or plain for letter in work.history.colours]
    return tuple(BandProperties(band.bore_mm, band.thickness_mm, rubber_of(band)) for band in bands)


class _SolverProgress:
    """Turns the solver's reports into progress in hundredths that never goes back."""

    def __init__(self, progress: ReportProgress, stages: dict[str, tuple[float, float]]) -> None:
        self.progress, self.stages, self.reached = progress, stages, 0.0

    def __call__(self, moment: Moment) -> None:
        begin, end = self.stages.get(moment.stage, (self.reached, 1.0))
        down = math.log10(max(moment.residual_drop, 1e-12)) / _AT_REST
        self.reached = max(self.reached, begin + (end - begin) * min(max(down, 0.0), 1.0))
        self.progress(moment.stage, round(100 * self.reached), 100)


def _encode(value: Any) -> Any:
    if isinstance(value, np.ndarray):
        return (value.shape, value.astype("<f8").tobytes())
    if isinstance(value, np.generic):
        return value.item()
    raise NotImplementedError(type(value))


def _array(_: type, value: Any) -> Any:
    size, data = value
    return np.frombuffer(data, "<f8").reshape(size)


def _decode(data: bytes | None) -> RestingPiece | None:
    try:
        return None if data is None else msgspec.msgpack.decode(data, type=RestingPiece, dec_hook=_array)
    except (msgspec.DecodeError, ValueError, TypeError):
        return None
