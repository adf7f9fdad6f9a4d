"""Bands that lie across each other in plan, against trying every pair of points."""

from __future__ import annotations

import random
from itertools import combinations

import pytest

from pegwright.loom import Effect, State, apply_move, board_of, parse_move
from pegwright.pattern import Rows
from pegwright.structure import find_bands_across
from pegwright.structure.crossings import (
    _bands_in_circles,
    _layers,
    _Leg,
    _legs_cross,
    _nearby_pairs,
    _size_of,
    _squares_under,
)

BOARD = board_of(Rows(rows=3, pegs=4))


def lying(*lines):
    """Return which bands cross each band, over it or under it."""
    under, over = _layers(_worked(lines), BOARD.spots)
    return {band: under[band] | over[band] for band in under.keys() | over.keys()}


def across(*lines):
    return find_bands_across(_worked(lines), BOARD.spots)


def _worked(lines):
    state, events = State(), []
    for line in lines:
        outcome = apply_move(BOARD, state, parse_move(line))
        assert isinstance(outcome, Effect), line
        state = outcome.state
        events += outcome.events
    return events


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
    """Band 2 passes through band 3, and is folded over band 4."""
    found = across(
        "place A over A1 A2",
        "place A over A2 B3",
        "place A over A2 B2",
        "place A over A3 B2",
        "hook A2 loop 2 to B3",
    )
    assert found == {2: {4}, 3: {4}, 4: {2}}


def test_layers_can_be_lifted_off_until_a_band_is_folded_over_another():
    flat = ("place A over A1 B2", "place A over A2 B1")
    assert across(*flat) == {}
    assert across(*flat, "hook B2 to A1") == {1: {2}, 2: {1}}
    assert across(*flat, "hook B1 to A2") == {}, "the upper band, folded over itself"


@pytest.mark.parametrize("seed", range(30))
def test_in_circles_are_those_with_a_circle_above_and_one_below(seed):
    rng = random.Random(seed)
    under = {band: {rng.randrange(9) for _ in range(rng.randrange(3))} - {band} for band in range(9)}
    over = {band: {other for other in range(9) if band in under[other]} for band in range(9)}

    def reaches(step, start):
        seen, waiting = set(), list(step[start])
        while waiting:
            if (band := waiting.pop()) not in seen:
                seen.add(band)
                waiting += step[band]
        return seen

    circles = {band for band in range(9) if band in reaches(under, band)}
    slow = {
        band
        for band in range(9)
        if (reaches(under, band) | {band}) & circles and (reaches(over, band) | {band}) & circles
    }
    assert _bands_in_circles(under, over) == slow


@pytest.mark.parametrize("seed", range(30))
def test_crossing_as_points_on_both_sides_tell(seed):
    """A slow twin: legs cross where points of the one lie on both sides of the other, and the reverse."""
    rng = random.Random(seed)
    pegs = list(BOARD.pegs)
    pairs = [rng.sample(pegs, 2) for _ in range(4)]
    lines, kept = [], []
    for pair in pairs:
        if isinstance(apply_move(BOARD, State(), parse_move(f"place A over {pair[0]} {pair[1]}")), Effect):
            lines.append(f"place A over {pair[0]} {pair[1]}")
            kept.append(pair)
    found = lying(*lines)
    for i, one in enumerate(kept, start=1):
        for j, other in enumerate(kept, start=1):
            if i != j and not set(one) & set(other):
                assert (j in found.get(i, ())) == touching(one, other), (one, other)


@pytest.mark.parametrize("seed", range(20))
def test_legs_of_all_lengths_are_compared_and_none_costs_by_its_length(seed):
    """Every pair of legs that touch is found, and a leg of a hundred metres lies in a handful of squares."""
    rng = random.Random(seed)
    legs = []
    for band in range(40):
        reach_mm = 10.0 ** rng.uniform(0, 5)
        a = (rng.uniform(-500, 500), rng.uniform(-500, 500))
        b = (a[0] + rng.uniform(-reach_mm, reach_mm), a[1] + rng.uniform(-reach_mm, reach_mm))
        legs.append(_Leg(band, frozenset((f"a{band}", f"b{band}")), a, b))
    nearby = {frozenset((one.band, other.band)) for one, other in _nearby_pairs(legs)}
    crossing = {
        frozenset((one.band, other.band)) for one, other in combinations(legs, 2) if _legs_cross(one, other)
    }
    assert len(crossing) > 5
    assert crossing <= nearby
    assert max(len(list(_squares_under(leg, _size_of(leg)))) for leg in legs) <= 4


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
