"""Where bands lie over and under each other in a circle, which the words of the link cannot see.

Words say through which loops a strand goes. They do not say that a band was folded round a ribbon of another
band that lies across it, nor that a ring on a ribbon is kept there by a band across that ribbon. Both need
crossings between pegs. What is laid or hooked later lies above; so bands that cross can be lifted off one
after the other, topmost or lowest first, unless each of some lies over the next all the way round: a band
folded over another lies over it and under it. Only in such a circle does the word perhaps not tell the truth.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from pegwright.loom import Drawn, Event, Laid, Lifted, Moved

PlanPoint = tuple[float, float]
_Bands = defaultdict[int, set[int]]
_CELL_MM = 40.0
_NEAR_MM = 1e-6


class _Leg(NamedTuple):
    band: int
    ends: frozenset[str]
    a: PlanPoint
    b: PlanPoint
    lowest: int = 0  # of all times that the band came to lie here: event numbers, negative ones beneath all
    highest: int = 0


def find_bands_across(events: Sequence[Event], spots: Mapping[str, PlanPoint]) -> dict[int, frozenset[int]]:
    """Return for each band those across it, or across a band that it is looped with, in some circle.

    In a circle each band lies over the next, the last over the first; two are enough. `spots` gives the plan
    places of the pegs in mm; legs to free ends and to the hook's shaft are left out. Bands with none are left
    out.
    """
    under, over = _layers(events, spots)
    circling = _bands_in_circles(under, over)
    if not circling:
        return {}
    crossing = {band: (under[band] | over[band]) & circling for band in circling}
    looped = _looped_bands(events)
    found: dict[int, frozenset[int]] = {}
    for band in circling | {b for c in circling for b in looped[c]}:
        there = set(crossing.get(band, ()))
        for beside in looped[band]:
            there |= crossing.get(beside, set())
        if there - {band}:
            found[band] = frozenset(there - {band})
    return found


def _layers(events: Sequence[Event], spots: Mapping[str, PlanPoint]) -> tuple[_Bands, _Bands]:
    """Return which bands lie somewhere under each band, and which over it.

    A leg that passes over a peg on another's line counts as crossing it; two legs over the same two pegs do
    not, for there the stacks tell which lies between.
    """
    under, over = _Bands(set), _Bands(set)
    for one, other in _nearby_pairs(_legs(events, spots)):
        if one.band != other.band and one.ends != other.ends and _legs_cross(one, other):
            for high, low in ((one, other), (other, one)):
                if high.highest > low.lowest:
                    under[high.band].add(low.band)
                    over[low.band].add(high.band)
    return under, over


def _bands_in_circles(under: Mapping[int, set[int]], over: Mapping[int, set[int]]) -> set[int]:
    """Return what is left when whatever has nothing over it, or nothing under it, is lifted off in turn.

    These are the bands in circles, and those over one circle and under another (Kahn 1962, from both ends).
    """
    left = under.keys() | over.keys()
    for above, below in ((over, under), (under, over)):
        count = {band: len(above.get(band, set()) & left) for band in left}
        waiting = [band for band, many in count.items() if not many]
        while waiting:
            band = waiting.pop()
            left.discard(band)
            for other in below.get(band, set()) & left:
                count[other] -= 1
                if not count[other]:
                    waiting.append(other)
    return left


def _legs(events: Sequence[Event], spots: Mapping[str, PlanPoint]) -> list[_Leg]:
    legs: dict[tuple[int, frozenset[str]], _Leg] = {}

    def leg(band: int, one: str, other: str, height: int) -> None:
        ends = frozenset((one, other))
        if len(ends) == 2 and one in spots and other in spots:
            known = legs.setdefault((band, ends), _Leg(band, ends, spots[one], spots[other], height, height))
            if not known.lowest <= height <= known.highest:
                wider = min(height, known.lowest), max(height, known.highest)
                legs[band, ends] = known._replace(lowest=wider[0], highest=wider[1])

    for when, event in enumerate(events, start=1):
        match event:
            case Laid():
                holders = [seat.holder for seat in event.seats]
                for one, other in zip(holders, holders[1:] + holders[:1], strict=True):
                    leg(event.band, one, other, -when if event.beneath else when)
            case Drawn() | Moved():
                leg(event.bight.band, event.source, event.target, when)
            case _:
                pass
    return list(legs.values())


def _nearby_pairs(legs: Sequence[_Leg]) -> Iterator[tuple[_Leg, _Leg]]:
    """Yield the pairs of legs that share a square of the plan, once for each such square.

    Squares come in sizes, each twice the last; a leg is entered in squares of about its own size and looked
    up in the larger ones. So a leg lies in few squares, however long it is (hierarchical grid: Ericson,
    Real-Time Collision Detection, 7.2.2).
    """
    squares: dict[tuple[int, int, int], list[_Leg]] = {}
    sized = sorted(((_size_of(leg), n) for n, leg in enumerate(legs)), reverse=True)
    sizes: list[int] = []
    for size, n in sized:  # the largest first, so that all squares a leg is looked up in are filled
        if size not in sizes:
            sizes.append(size)
        for larger in sizes:
            for square in _squares_under(legs[n], larger):
                for other in squares.get(square, ()):
                    yield other, legs[n]
        for square in _squares_under(legs[n], size):
            squares.setdefault(square, []).append(legs[n])


def _size_of(leg: _Leg) -> int:
    """Return how often `_CELL_MM` must be doubled until a square is as wide as the leg."""
    width = max(abs(leg.a[0] - leg.b[0]), abs(leg.a[1] - leg.b[1]))
    return max(0, math.ceil(math.log2(width / _CELL_MM))) if width else 0


def _squares_under(leg: _Leg, size: int) -> Iterator[tuple[int, int, int]]:
    """Yield the squares of a size that the leg's bounding box touches: at most four of its own size."""
    side_mm = _CELL_MM * 2**size
    columns = sorted(math.floor(point[0] / side_mm) for point in (leg.a, leg.b))
    rows = sorted(math.floor(point[1] / side_mm) for point in (leg.a, leg.b))
    for column in range(columns[0], columns[1] + 1):
        for row in range(rows[0], rows[1] + 1):
            yield size, column, row


def _legs_cross(one: _Leg, other: _Leg) -> bool:
    """Say whether two legs meet elsewhere than at a peg that both have for an end."""
    sides = [_side(one.a, one.b, other.a), _side(one.a, one.b, other.b)]
    if sides[0] * sides[1] > 0:
        return False
    sides += [_side(other.a, other.b, one.a), _side(other.a, other.b, one.b)]
    if not any(sides):
        axis = 0 if abs(one.a[0] - one.b[0]) > abs(one.a[1] - one.b[1]) else 1
        low = max(min(one.a[axis], one.b[axis]), min(other.a[axis], other.b[axis]))
        high = min(max(one.a[axis], one.b[axis]), max(other.a[axis], other.b[axis]))
        return high - low > _NEAR_MM
    if one.ends & other.ends:
        return False
    return sides[0] * sides[1] <= 0 and sides[2] * sides[3] <= 0


def _side(a: PlanPoint, b: PlanPoint, c: PlanPoint) -> int:
    area = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
    return 0 if abs(area) < _NEAR_MM else 1 if area > 0 else -1


def _looped_bands(events: Sequence[Event]) -> dict[int, set[int]]:
    """Return for each band those that it passes through and those that pass through it."""
    found: dict[int, set[int]] = defaultdict(set)
    for event in events:
        match event:
            case Drawn():
                others = event.through
            case Lifted():
                others = event.over
            case _:
                continue
        for other in others:
            if other.band != event.bight.band:
                found[event.bight.band].add(other.band)
                found[other.band].add(event.bight.band)
    return found
