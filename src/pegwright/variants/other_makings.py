"""The same piece of other bands, or on another loom; whether that goes well is for the line to say."""

from __future__ import annotations

import re

import msgspec

from pegwright.finding import RefusedError, phrase
from pegwright.pattern import JoinedLooms, Layout, Pattern, Rows

__all__ = ["read_band_size", "read_loom_size", "with_band_size", "with_loom"]

_SIZES = re.compile(r"([0-9]{1,3}(?:\.[0-9]{1,2})?)\s*[x×]\s*([0-9]{1,2}(?:\.[0-9]{1,2})?)")
_LOOM = re.compile(r"([0-9]{1,3})\s*[x×]\s*([0-9]{1,4})")


def read_band_size(text: str) -> tuple[float, float]:
    """Return bore and thickness in mm, told as `15x1.8`.

    Raises:
        RefusedError: the text is none, or no band has that size.
    """
    found = _SIZES.fullmatch(text.strip())
    bore, thickness = (float(found[1]), float(found[2])) if found else (0.0, 0.0)
    if not (bore >= 1 and 0.1 <= thickness <= bore):
        raise RefusedError(phrase("band-size-unreadable", text=text))
    return bore, thickness


def read_loom_size(text: str) -> tuple[int, int]:
    """Return rows and pegs of a loom, told as `3x13`.

    Raises:
        RefusedError: the text is none, or no loom has that size.
    """
    found = _LOOM.fullmatch(text.strip())
    rows, pegs = (int(found[1]), int(found[2])) if found else (0, 0)
    if not (1 <= rows <= 700 and 1 <= pegs <= 10_000 and rows * pegs <= 10_000):
        raise RefusedError(phrase("loom-size-unreadable", text=text))
    return rows, pegs


def with_band_size(pattern: Pattern, bore_mm: float, thickness_mm: float) -> Pattern:
    """Return the piece made of bands of another size. Their weight is no longer known, their rubber is."""
    return msgspec.structs.replace(
        pattern,
        bands=tuple(
            msgspec.structs.replace(band, bore_mm=bore_mm, thickness_mm=thickness_mm, weight_100_g=None)
            for band in pattern.bands
        ),
    )


def with_loom(pattern: Pattern, rows: int, pegs: int) -> Pattern:
    """Return the piece on a straight loom of so many rows and pegs, spaced and shifted like its own.

    Raises:
        RefusedError: the piece is worked on no straight loom.
    """
    own = _first_rows(pattern.loom)
    if own is None:
        raise RefusedError(phrase("loom-not-straight"))
    return msgspec.structs.replace(pattern, loom=msgspec.structs.replace(own, rows=rows, pegs=pegs))


def _first_rows(layout: Layout) -> Rows | None:
    if isinstance(layout, JoinedLooms):
        return layout.looms[0]
    return layout if isinstance(layout, Rows) else None
