"""Bands that lie across each other in plan, against trying every pair of points."""

from __future__ import annotations

import random

import pytest

from pegwright.loom import Applied, State, apply, board, parse_move
from pegwright.pattern import Rows
from pegwright.structure.plan import across

BOARD = board(Rows(rows=3, pegs=4))


def lying(*lines):
    state, events = State(), []
    for line in lines:
        outcome = apply(BOARD, state, parse_move(line))
        assert isinstance(outcome, Applied), line
        state = outcome.state
        events += outcome.events
    return across(events, BOARD.spots)


@pytest.mark.parametrize(
    ("lines", "found"),
    [
        (("place A over A1 B2", "place A over A2 B1"), {1: {2}, 2: {1}}),
        (("place A over A1 B2", "place A over B2 C1"), {}),
        (("place A over A1 A2", "place A over A1 A2"), {}),
        (("place A over A1 A2 A3", "place A over A2 A3 A4"), {1: {2}, 2: {1}}),
        (("place A over A1 B1", "place A over C1 C2"), {}),
    ],
    ids=["crossed", "end to end", "twins", "along each other", "apart"],
)
def test_who_lies_across_whom(lines, found):
    assert lying(*lines) == found


def test_what_lies_across_a_band_lies_across_those_it_is_looped_with():
    """Band 2 passes through band 3, and band 4 lies across band 2."""
    found = lying(
        "place A over A1 A2",
        "place A over A2 B3",
        "place A over A2 B2",
        "place A over A3 B2",
        "hook A2 loop 2 to B3",
    )
    assert found[2] == {4}
    assert found[3] == {4}
    assert found[4] == {2}
    assert 1 not in found


@pytest.mark.parametrize("seed", range(30))
def test_crossing_as_points_on_both_sides_tell(seed):
    """A slow twin: legs cross where points of the one lie on both sides of the other, and the reverse."""
    rng = random.Random(seed)
    pegs = list(BOARD.pegs)
    pairs = [rng.sample(pegs, 2) for _ in range(4)]
    lines, kept = [], []
    for pair in pairs:
        if isinstance(apply(BOARD, State(), parse_move(f"place A over {pair[0]} {pair[1]}")), Applied):
            lines.append(f"place A over {pair[0]} {pair[1]}")
            kept.append(pair)
    found = lying(*lines)
    for i, one in enumerate(kept, start=1):
        for j, other in enumerate(kept, start=1):
            if i != j and not set(one) & set(other):
                assert (j in found.get(i, ())) == touching(one, other), (one, other)


def touching(one, other):
    (ax, ay), (bx, by) = (BOARD.spots[at] for at in one)
    (cx, cy), (dx, dy) = (BOARD.spots[at] for at in other)
    steps = 400
    points = [(ax + (bx - ax) * k / steps, ay + (by - ay) * k / steps) for k in range(steps + 1)]
    nearest = min(distance(p, (cx, cy), (dx, dy)) for p in points)
    return nearest < 0.05


def distance(p, c, d):
    length2 = (d[0] - c[0]) ** 2 + (d[1] - c[1]) ** 2
    t = max(0.0, min(1.0, ((p[0] - c[0]) * (d[0] - c[0]) + (p[1] - c[1]) * (d[1] - c[1])) / length2))
    return ((p[0] - c[0] - t * (d[0] - c[0])) ** 2 + (p[1] - c[1] - t * (d[1] - c[1])) ** 2) ** 0.5
