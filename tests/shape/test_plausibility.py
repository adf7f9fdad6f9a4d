"""What cannot be right at rest is found: a length beyond the bands, a heap, the wrong way drawn out."""

from __future__ import annotations

import math

import msgspec
import numpy as np
import pytest
from scipy.stats import spearmanr

from pegwright.loom import replay_pattern
from pegwright.shape import piece
from pegwright.shape.falling_apart import circle
from pegwright.shape.newton import Goal
from pegwright.shape.plausibility import (
    _rank_correlation,
    agreement_with_links,
    agreement_with_rows,
    is_longer_than_bands,
    rests_otherwise,
)
from pegwright.variants import TECHNIQUES

RING_MM = 40.0


def rings(middles):
    return [circle(RING_MM, 24) + np.array([*at, 0.0]) for at in middles]


def test_rings_in_a_row_can_be_as_long_as_half_of_their_lengths_together():
    """Five closed curves of 40 mm, each drawn out flat to 20 mm, reach 100 mm."""
    curves = rings([(k, 0) for k in range(5)])
    exact = (
        5 * 24 * RING_MM / math.pi * math.sin(math.pi / 24) / 2
    )  # a circle of 24 chords is a little shorter
    assert not is_longer_than_bands(curves, 0.999 * exact)
    assert is_longer_than_bands(curves, 1.001 * exact)
    assert is_longer_than_bands(curves, 2_108_613_082.0)


def test_a_chain_laid_in_a_row_agrees_and_one_in_a_heap_does_not():
    history = replay_pattern(TECHNIQUES["chain-1"].make(6))
    events, bands = history.events, history.final.bands
    row = rings(
        [*((6.0 * k, 0.0) for k in range(bands - 1)), (-6.0, 0.0)]
    )  # the last band binds the first peg
    assert agreement_with_links(events, row) > 0.9
    assert not rests_otherwise(events, row)
    heap = rings(np.random.default_rng(1).normal(size=(bands, 2)))
    assert rests_otherwise(events, heap)


@pytest.mark.parametrize("name", ["mat-4", "tail-2-over-1"])
def test_rows_lie_in_the_order_they_were_laid(name):
    """A piece that grows upward, laid out along its growth, and turned by a quarter."""
    history = replay_pattern(TECHNIQUES[name].make(8))
    bands = history.final.bands
    across = 4 if name == "mat-4" else 1
    along = [(7.0 * (k // across), 9.0 * (k % across)) for k in range(bands)]
    assert agreement_with_rows(history.events, rings(along)) > 0.9
    turned = rings([(y + 0.01 * (k % 2), x) for k, (x, y) in enumerate(along)])
    assert agreement_with_rows(history.events, turned) < 0.3


def test_a_length_that_cannot_be_is_left_out():
    curves = rings([(0, 0), (1, 0)])
    rest = piece.RestingPiece(
        relaxed=piece._NOTHING, bands=2, fasteners=(), radius_mm=(0.75,) * 2, closed=(True,) * 2,
        length_mm=500.0, width_mm=10.0, height_mm=5.0, girth_mm=None,
        crossing_check=piece.CrossingCheck(1.5, 0),
    )  # fmt: skip
    doubted = piece._doubt_length(rest, curves)
    assert not doubted.hangs_together
    assert [one.code for one in doubted.relaxed.findings] == ["length-impossible"]
    short = msgspec.structs.replace(rest, length_mm=30.0)
    assert piece._doubt_length(short, curves) == short


def test_a_mat_tugged_along_its_rows_is_told_of(monkeypatch):
    """As every mat wider than tall was, before the way it grows was read from its record."""
    history = replay_pattern(TECHNIQUES["mat-4"].make(4))
    kinds = [piece.BandProperties(13.5, 1.5)] * history.final.bands
    monkeypatch.setattr(piece, "rests_otherwise", lambda events, curves: True)
    few = Goal(iterations=60)
    told = piece.relax_piece(history.events, history.board.spots, kinds, points=16, goal=few)
    assert "rests-otherwise" in [one.code for one in told.relaxed.findings]


def test_ranks_are_correlated_as_a_statistics_library_does():
    """Against `scipy.stats.spearmanr`, equal values included."""
    draw = np.random.default_rng(3)
    for _ in range(20):
        one, other = draw.integers(0, 9, 30), draw.normal(size=30).round(1)
        assert _rank_correlation(one, other) == pytest.approx(spearmanr(one, other).statistic)
