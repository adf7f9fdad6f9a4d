"""Synthetic pieces for the benches and tests of shape: chains, tied strips and mats, drawn without a loom."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from pegwright.shape import Band

Floats = npt.NDArray[np.float64]

_FOLD, _WIDE = 1.0, 2.6  # half widths of a band at its fold and at its bights, mm
_HIGH, _LOW = 3.4, 1.2  # half heights there
_PAST = 2.5  # how far a bight reaches past the next band's fold


class Piece(NamedTuple):
    """Bands, the points held, and the pulls (band, point, force in N)."""

    bands: list[Band]
    fixed: list[tuple[int, int]]
    pulls: list[tuple[int, int, tuple[float, float, float]]]


def resample(corners: Floats, points: int) -> Floats:
    """Spread `points` evenly along a closed polyline (m, 3)."""
    closed = np.vstack([corners, corners[:1]])
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(closed, axis=0), axis=1))])
    at = np.arange(points) * along[-1] / points
    return np.column_stack([np.interp(at, along, closed[:, i]) for i in range(3)])


def folded(pitch_mm: float = 9.0) -> Floats:
    """One folded band as a fine closed polyline: its fold at x = 0, its two bights past x = pitch."""
    reach = pitch_mm + _PAST
    bend = np.linspace(0, np.pi, 24)
    u = np.linspace(0, 1, 40)
    arm = np.column_stack([u * (reach - _WIDE), _FOLD + (_WIDE - _FOLD) * u**1.0, _HIGH + (_LOW - _HIGH) * u])
    tip = np.column_stack([reach - _WIDE + _WIDE * np.sin(bend), _WIDE * np.cos(bend), np.full(24, _LOW)])
    back = arm[::-1] * [1, -1, 1]
    upper = np.vstack([arm, tip[1:-1], back])
    lower = upper[::-1] * [1, 1, -1]
    return np.vstack([upper, lower])


def chain(bands: int, points: int = 48, pitch_mm: float = 9.0, rest_mm: float = 48.0) -> Piece:
    """Each band's fold passes through both bights of the band before; held at one end, pulled at the
    other."""
    one = resample(folded(pitch_mm), points)
    made = [Band(one + np.array([k * pitch_mm, 0.0, 0.0]), rest_mm, 1.5) for k in range(bands)]
    return Piece(made, _folds(one, 0), _tips(one, bands - 1))


def _folds(one: Floats, band: int) -> list[tuple[int, int]]:
    return [(band, int(i)) for i in np.flatnonzero(one[:, 0] < 0.3)]


def _tips(one: Floats, band: int) -> list[tuple[int, int, tuple[float, float, float]]]:
    upper = int(np.argmax(np.where(one[:, 2] > 0, one[:, 0], -1)))
    lower = int(np.argmax(np.where(one[:, 2] < 0, one[:, 0], -1)))
    return [(band, upper, (0.05, 0.0, 0.0)), (band, lower, (0.05, 0.0, 0.0))]


def tied_chains(rows: int, length: int, points: int = 48, every: int = 1) -> Piece:
    """`rows` chains of `length` bands side by side, neighbours held together by ties at every `every`
    pitch."""
    pitch, apart = 9.0, 7.5
    one = resample(folded(pitch), points)
    turn = np.linspace(0, 2 * np.pi, 96, endpoint=False)
    tie = resample(
        np.column_stack([np.zeros(96), (apart / 2 + 4.6) * np.cos(turn), 5.2 * np.sin(turn)]), points
    )
    bands: list[Band] = []
    fixed: list[tuple[int, int]] = []
    pulls: list[tuple[int, int, tuple[float, float, float]]] = []
    for row in range(rows):
        for k in range(length):
            if k == 0:
                fixed += _folds(one, len(bands))
            if k == length - 1:
                pulls += _tips(one, len(bands))
            bands.append(Band(one + np.array([k * pitch, row * apart, 0.0]), 48.0, 1.5))
    for row in range(rows - 1):
        for k in range(0, length - 1, every):
            x = k * pitch + (3.4, 6.0, 8.6)[row % 3]
            bands.append(Band(tie + np.array([x, (row + 0.5) * apart, 0.0]), 27.0, 1.5))
    return Piece(bands, fixed, pulls)
