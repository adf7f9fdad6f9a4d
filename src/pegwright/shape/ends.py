"""The two ends of a piece that lies along x: where a hand tugs it, and the clips that close it."""

from __future__ import annotations

import numpy as np

from pegwright.finding import RefusedError, phrase
from pegwright.shape.initial_shape import InitialShape
from pegwright.shape.loads import Pull, Tie

__all__ = ["Tug", "find_clips", "find_ends"]

_CLIP_MM = 3.0  # from one eye of a clip to the other


def find_ends(given: InitialShape) -> list[tuple[int, int]]:
    """Return the two rings of every clip that joins two ends: the first and the last along the piece."""
    count = len(given.bands) - len(given.fasteners)
    found = []
    for number in dict.fromkeys(given.fasteners):
        rings = [count + k for k, f in enumerate(given.fasteners) if f == number]
        rings.sort(key=lambda i: float(given.bands[i].points_mm[:, 0].mean()))
        if len(rings) > 1:
            found.append((rings[0], rings[-1]))
    return found


def find_clips(given: InitialShape) -> tuple[Tie, ...]:
    """Return the ties that close the clips when the two ends are brought together.

    Raises:
        ValueError: no fastener joins two ends.
    """
    ends = find_ends(given)
    if not ends:
        raise RefusedError(phrase("does-not-close"))
    return tuple(
        Tie(
            (i, int(given.bands[i].points_mm[:, 0].argmin())),
            (j, int(given.bands[j].points_mm[:, 0].argmax())),
            _CLIP_MM,
        )
        for i, j in ends
    )


class Tug:
    """Where a hand holds a piece that lies along x: at its clip's two rings, or else at its two ends."""

    def __init__(self, given: InitialShape) -> None:
        bands = given.bands
        self.ends: list[list[tuple[int, int]]] = []
        for side, sign in enumerate((-1.0, 1.0)):
            rings = [pair[side] for pair in find_ends(given)]
            if rings:
                self.ends.append([(i, j) for i in rings for j in range(len(bands[i].points_mm))])
                continue
            far = max(float((sign * b.points_mm[:, 0]).max()) for b in bands)
            self.ends.append(
                [
                    (i, int(j))
                    for i, b in enumerate(bands)
                    for j in np.flatnonzero(sign * b.points_mm[:, 0] > far - 2 * b.thickness_mm)
                ]
            )

    def of(self, force_n: float) -> tuple[Pull, ...]:
        """Return equal and opposite pulls at both ends, shared among their points."""
        if force_n == 0.0:
            return ()
        return tuple(
            Pull(at, (sign * force_n / len(end), 0.0, 0.0))
            for sign, end in zip((-1.0, 1.0), self.ends, strict=True)
            for at in end
        )
