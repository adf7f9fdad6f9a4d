"""Real pieces: from the record to rest, with nothing passed through anything."""

from __future__ import annotations

import os

import numpy as np
import pytest

from bench.pieces import chain
from pegwright.shape import Kind, piece_at_rest

pytestmark = pytest.mark.skipif(os.environ.get("NUMBA_DISABLE_JIT") == "1", reason="needs compiled kernels")
STANDARD = Kind(13.5, 1.5)


def row(peg: str) -> tuple[float, float]:
    return 0.0, 16.0 * int(peg[1:])


def test_a_plain_chain_lies_straight_and_its_links_are_alike() -> None:
    """Links in the middle of a chain have one length, and no strand has passed another on the way."""
    rest = piece_at_rest(chain(9), row, [STANDARD] * 9)
    assert rest.relaxed.converged
    assert rest.certified.same_threading
    assert rest.certified.smallest_gap_mm > 0.7
    assert (rest.bands, rest.fasteners) == (9, (1,))
    assert rest.length_mm > 3 * rest.width_mm
    assert max(map(max, map(abs, rest.relaxed.tension_n))) < 2
    middles = np.array([x[:, 0].mean() for x in rest.relaxed.positions_mm[:9]])
    links = np.abs(np.diff(middles))[2:-2]
    assert links == pytest.approx(np.full(len(links), links.mean()), rel=0.1)


def test_progress_may_stop_a_piece() -> None:
    told = []

    def hear(progress) -> bool:
        told.append(progress.stage)
        return len(told) < 5

    rest = piece_at_rest(chain(4), row, [STANDARD] * 4, progress=hear)
    assert [f.code for f in rest.relaxed.findings] == ["rest-interrupted"]
    assert told[0] == "getting ready"
    assert told[-1] == "growing"


def test_kinds_must_match_the_bands() -> None:
    with pytest.raises(ValueError, match="kinds"):
        piece_at_rest(chain(3), row, [STANDARD] * 2)
