"""A piece that falls apart: what still hangs together is drawn and measured, the rest lies beside it."""

from __future__ import annotations

import os

import numpy as np
import pytest

from pegwright.loom import Bight
from pegwright.shape import BandProperties, Goal, RestingPiece, relax_piece
from pegwright.shape.falling_apart import circle, lay_beside, split_groups
from testing.histories import Sketch
from tests.shape import naive

compiled = pytest.mark.skipif(os.environ.get("NUMBA_DISABLE_JIT") == "1", reason="needs compiled kernels")
STANDARD = BandProperties(13.5, 1.5)
TURN = np.linspace(0, 2 * np.pi, 24, endpoint=False)
RING = np.column_stack([6 * np.cos(TURN), 6 * np.sin(TURN), 0 * TURN])


def row(peg: str) -> tuple[float, float]:
    return 0.0, 16.0 * int(peg[1:])


def relaxed(sketch: Sketch, bands: int) -> RestingPiece:
    return relax_piece(sketch.events, row, [STANDARD] * bands, goal=Goal(iterations=120))


def chain_with_strays(bands: int, strays: int) -> Sketch:
    """A chain with a clip through both ends, and bands laid over pegs beside it and hooked to nothing."""
    sketch = Sketch()
    for i in range(bands):
        sketch.lay(f"p{i}", f"p{i + 1}")
    for i in range(bands - 2, -1, -1):
        sketch.draw(Bight(i + 1, 1), f"p{i}")
    for i in range(strays):
        sketch.lay(f"p{bands + 2 + 2 * i}", f"p{bands + 3 + 2 * i}")
    sketch.fasten("p0", f"p{bands}")
    return sketch


@pytest.mark.parametrize("shift", [3.0, 9.0, 14.0])
def test_linked_rings_are_never_parted(shift: float) -> None:
    """Rings that link are one group at any distance; far apart they are two, the larger group first."""
    other = RING[:, [0, 2, 1]] + np.array([shift, 0.0, 0.0])
    groups = split_groups([RING, RING + 40.0, other])
    if naive.linking_number(RING, other):
        assert groups == [[0, 2], [1]]
    assert sorted(i for group in groups for i in group) == [0, 1, 2]
    away = np.array([40.0, 0.0, 0.0])
    assert split_groups([RING, RING + away, RING + 1.1 * away]) == [[1, 2], [0]]


def test_a_ring_of_rings_keeps_what_passes_through_it() -> None:
    """Boxes that do not meet are still one group where the box of one group holds the other."""
    around = [RING + np.array([30 * np.cos(a), 30 * np.sin(a), 0]) for a in np.linspace(0, 6.28, 24)]
    assert len(split_groups([*around, 0.2 * RING])) == 1


def test_rings_lie_beside_and_apart() -> None:
    low, high = np.array([-40.0, -8.0, -3.0]), np.array([40.0, 8.0, 3.0])
    rings = [ring for (ring,) in lay_beside(low, high, [[circle(45.0, 48)]] * 9)]
    assert all(ring[:, 1].max() < low[1] for ring in rings)
    assert len(split_groups(rings, 1.5)) == 9


@compiled
def test_what_is_loose_lies_beside_what_is_held() -> None:
    """A chain with two bands that nothing holds is as long as without them."""
    alone, with_strays = relaxed(chain_with_strays(8, 0), 8), relaxed(chain_with_strays(8, 2), 10)
    assert not alone.loose
    assert alone.hangs_together
    assert with_strays.loose == (9, 10)
    assert [f.code for f in with_strays.relaxed.findings if f.code == "bands-lie-loose"]
    assert with_strays.length_mm == pytest.approx(alone.length_mm, rel=0.1)
    held = np.concatenate(with_strays.relaxed.positions_mm[:8])
    for band in with_strays.loose:
        ring = with_strays.relaxed.positions_mm[band - 1]
        assert ring[:, 1].max() < held[:, 1].min()
        assert np.linalg.norm(np.roll(ring, -1, axis=0) - ring, axis=1).sum() == pytest.approx(47.1, rel=0.01)
    assert with_strays.crossing_check.same_threading


@compiled
def test_where_nothing_hangs_together_there_is_no_length() -> None:
    sketch = Sketch()
    for i in range(3):
        sketch.lay(f"p{3 * i}", f"p{3 * i + 1}")
    rest = relaxed(sketch, 3)
    assert rest.loose == (1, 2, 3)
    assert not rest.hangs_together
    assert [f.code for f in rest.relaxed.findings] == ["nothing-hangs-together"]
    assert (rest.length_mm, rest.width_mm, rest.height_mm) == (0, 0, 0)
    assert np.abs(np.concatenate(rest.relaxed.positions_mm)).max() < 100


@compiled
def test_parts_that_hang_together_stay_linked() -> None:
    """Two chains that nothing joins: the longer is the piece, the shorter lies beside it, in one."""
    sketch = Sketch()
    for first, bands in ((0, 6), (9, 4)):
        for i in range(bands):
            sketch.lay(f"p{first + i}", f"p{first + i + 1}")
    for first, bands in ((0, 6), (9, 4)):
        for i in range(bands - 2, -1, -1):
            sketch.draw(Bight(i + 1 + (6 if first else 0), 1), f"p{first + i}")
        sketch.fasten(f"p{first}")
    rest = relaxed(sketch, 10)
    assert rest.loose == (7, 8, 9, 10)
    groups = split_groups(rest.relaxed.positions_mm)
    assert [sorted(i for i in group if i < 10) for group in groups] == [[0, 1, 2, 3, 4, 5], [6, 7, 8, 9]]
    assert rest.crossing_check.same_threading
