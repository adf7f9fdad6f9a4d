"""The stiffness of contacts, ties and sticking contacts, as dense blocks between four vertices."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from pegwright.shape.rods import Floats, Ints

__all__ = ["Elements", "empty_elements"]


class Elements(NamedTuple):
    """Stiffness between up to four vertices each; arrays longer than the number in use are allowed."""

    corners: Ints  # (m, 4) vertices
    stiffness: Floats  # (m, 4, 4, 3, 3) N/mm, block [c, d] between corners c and d


def empty_elements(count: int) -> Elements:
    """Return room for `count` elements, all zero."""
    return Elements(np.zeros((count, 4), np.int64), np.zeros((count, 4, 4, 3, 3)))
