"""Rankings of the pegs to try, simplest first: along the loom, outwards from a peg, and by the motif."""

from __future__ import annotations

import itertools
import math
from collections import Counter
from collections.abc import Iterator, Mapping

from pegwright.loom import Board
from pegwright.pattern import parse_address
from pegwright.planner.draft import PlanDraft
from pegwright.planner.finishes import given_last_pegs
from pegwright.planner.measures import mirror_pegs
from pegwright.planner.ranked_working import RankedPegs

__all__ = ["rank_pegs"]

_DIRECTIONS = ((0.0, -1.0), (0.0, 1.0), (-1.0, 0.0), (1.0, 0.0))
_MOST_KINDS = 4
_MOST_PERIOD = 12


def rank_pegs(draft: PlanDraft) -> Iterator[RankedPegs]:
    """Yield rankings, each once: along straight lines, by distance, then all with the motif's period."""
    used = _used_pegs(draft)
    given = tuple(peg for peg in given_last_pegs(draft) if peg in used)
    seen: set[tuple[tuple[str, ...], tuple[float, ...], bool]] = set()
    for ranks in _all_ranks(draft.history.board, used, draft.links, given):
        for leave_start in (True, False):
            order = tuple(sorted(ranks, key=lambda peg: (ranks[peg], used.index(peg))))
            places = tuple(float(sorted(set(ranks.values())).index(ranks[peg])) for peg in order)
            key = (order, places, leave_start)
            if key not in seen:
                seen.add(key)
                yield RankedPegs(_end_at(ranks, given), leave_start)


def _used_pegs(draft: PlanDraft) -> list[str]:
    """Return the pegs that hold loops, in the loom's order, row by row."""
    stacks = draft.history.final.stacks
    return [peg for peg in draft.history.board.pegs if stacks.get(peg)]


def _end_at(ranks: Mapping[str, float], given: tuple[str, ...]) -> dict[str, float]:
    """Return the ranks with the pegs of the given finish last."""
    highest = max(ranks.values()) + 1
    return {peg: highest if peg in given else rank for peg, rank in ranks.items()}


def _all_ranks(
    board: Board, used: list[str], links: list[tuple[str, str]], given: tuple[str, ...]
) -> Iterator[dict[str, float]]:
    if not used:
        return
    spots = {peg: board.spots[peg] for peg in used}
    ends = _ends(spots, links, given)
    for end in ends[:2]:
        yield _by_distance(spots, [end])
    yield from _motif_ranks(board, spots, links)
    for x, y in _DIRECTIONS:
        yield {peg: round(x * at[0] + y * at[1], 6) for peg, at in spots.items()}
    if given:
        yield _by_distance(spots, list(given))
    for end in ends:
        yield _by_distance(spots, [end])
        yield _by_steps(used, links, end)


def _ends(
    spots: Mapping[str, tuple[float, float]], links: list[tuple[str, str]], given: tuple[str, ...]
) -> list[str]:
    """Return the pegs where a piece may end: the given ones, or else nearest to the maker first."""
    if given:
        return [given[0]]
    degree = Counter(peg for link in links for peg in link)
    return sorted(spots, key=lambda peg: (spots[peg][1], degree[peg], spots[peg][0]))


def _by_distance(spots: Mapping[str, tuple[float, float]], to: list[str]) -> dict[str, float]:
    return {
        peg: -min(round(math.dist(at, spots[end]), 6) for end in to if end in spots)
        for peg, at in spots.items()
    }


def _by_steps(used: list[str], links: list[tuple[str, str]], end: str) -> dict[str, float]:
    """Rank pegs by the least number of bands between them and the end."""
    beside: dict[str, set[str]] = {peg: set() for peg in used}
    for one, other in links:
        beside[one].add(other)
        beside[other].add(one)
    steps = {end: 0}
    waiting = [end]
    for peg in waiting:
        for other in sorted(beside.get(peg, ())):
            if other not in steps:
                steps[other] = steps[peg] + 1
                waiting.append(other)
    far = max(steps.values()) + 1
    return {peg: float(-steps.get(peg, far)) for peg in used}


def _motif_ranks(
    board: Board, spots: Mapping[str, tuple[float, float]], links: list[tuple[str, str]]
) -> Iterator[dict[str, float]]:
    """Rank by number along the rows, with each kind of peg earlier or later by part of the period."""
    period = _period(links)
    if period is None:
        return
    mirrored = mirror_pegs(board, set(spots)) or {}
    kinds: dict[str, tuple[int, int]] = {}
    for peg in spots:
        row, number = parse_address(min(peg, mirrored.get(peg, peg), key=parse_address))
        kinds[peg] = (row, number % period)
    named = sorted(set(kinds.values()))
    if not 1 < len(named) <= _MOST_KINDS:
        return
    parts = [period * part / 4 for part in (0, 3, -3, 1, -1, 2, -2, 5, -5)]
    chosen = sorted(itertools.product(range(len(parts)), repeat=len(named) - 1), key=lambda c: (sum(c), c))
    for direction in (-1, 1):
        for choice in chosen:
            offset = dict(zip(named, (0.0, *(parts[at] for at in choice)), strict=True))
            yield {peg: direction * parse_address(peg).number + offset[kinds[peg]] for peg in spots}


def _period(links: list[tuple[str, str]]) -> int | None:
    """Return the period in pegs along the rows after which the bands repeat; None if they do not."""
    laid: Counter[tuple[tuple[int, int], tuple[int, int]]] = Counter()
    for link in links:
        one, other = sorted(parse_address(peg) for peg in link)
        laid[tuple(one), tuple(other)] += 1  # type: ignore[index]
    numbers = [number for pair in laid for _, number in pair]
    if not numbers:
        return None
    length = max(numbers) - min(numbers)
    for period in range(1, min(_MOST_PERIOD, length // 2) + 1):
        again = sum(
            min(count, laid[(a[0], a[1] + period), (b[0], b[1] + period)]) for (a, b), count in laid.items()
        )
        inside = sum(count for (a, b), count in laid.items() if max(a[1], b[1]) + period <= max(numbers))
        if inside and again == inside:
            return period
    return None
