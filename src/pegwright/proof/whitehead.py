"""The Whitehead graph of cyclic words, and the best partial conjugation as a minimum cut in it.

The vertices are the letters x and x⁻¹; for every neighbour pair a b there is an edge a — b⁻¹ (Whitehead
1936). Conjugating the bands of a set S by y = x_m^±1 leaves all letters in number but those of m. Merge both
vertices of every other band into one: the letters of m that are left are then the edges cut when S and y⁻¹
are parted from y. So the best S is a minimum cut between the two vertices of m, and no S is better than none
exactly where a flow carries all of m's edges from one to the other (Ford & Fulkerson 1956). A band may have
several letters, a loop each: then all of them are one vertex, and those of m's own band are in no S.

What reaches a band from m and leaves it for m⁻¹ needs no search: only where a band has more of the one than
of the other must a flow be found. In regular pieces this is rare.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from pegwright.proof.ropes import Node, Ropes

__all__ = ["Flow", "Graph", "GraphCut", "LetterName", "count_pairs"]

LetterName = tuple[int, int]  # its band, and the loop where each of them has its own (else −1)
Flow = dict[tuple[int, int], int]  # between bands: how much goes from one to the other
Tally = dict[int, int]  # of each band a number


class GraphCut(NamedTuple):
    """Conjugating the bands `near` by x_m⁻¹, or all the others but m's (`far`) by x_m, saves `saved` letters.

    The two differ by a conjugation of everything.
    """

    m: LetterName
    near: frozenset[int]
    far: frozenset[int]
    saved: int


class Graph:
    """`ends[m]` counts the edges of x_m and of x_m⁻¹ by the band at their other end, without m's own.

    `between[i][j]` counts the edges between two bands.
    """

    def __init__(self, ends: dict[LetterName, tuple[Tally, Tally]], between: dict[int, Tally]) -> None:
        self.ends = ends
        self.between = between
        self.visited = 0  # bands looked at in all searches so far

    def changed_bands(self, other: Graph) -> set[int]:
        """Return the bands with other edges than in another graph."""
        both = self.ends.keys() | other.ends.keys()
        return {m[0] for m in both if self.ends.get(m) != other.ends.get(m)}

    def flow(self, m: LetterName, known: Flow | None = None) -> Flow | GraphCut:
        """Return a flow that carries all edges of x_m over to x_m⁻¹, or the best cut where there is none.

        What still fits of a flow `known` from a graph much like this one is kept. Wide ways first (scaling:
        Edmonds & Karp 1972), for the numbers of edges differ by many powers of 2.
        """
        enter, leave = self.ends[m]
        if enter == leave:
            return {}
        flow: Flow = {}
        left = dict(enter)
        for j, n in leave.items():
            left[j] = left.get(j, 0) - n
        for (one, other), amount in (known or {}).items():
            most = min(amount, self.between.get(one, {}).get(other, 0))
            if most:
                flow[one, other] = most
                left[one] = left.get(one, 0) - most
                left[other] = left.get(other, 0) + most
        surplus = {j: n for j, n in left.items() if n > 0}
        lack = {j: -n for j, n in left.items() if n < 0}
        width = 1 << max(max(surplus.values()).bit_length() - 1, 0) if surplus else 1
        while surplus:
            before, end = self._search(m[0], surplus, lack, flow, width)
            if end is None and width > 1:
                width >>= min(3, width.bit_length() - 1)
                continue
            if end is None:
                missing = sum(surplus.values())
                near = frozenset(before)
                return GraphCut(m, near, frozenset(self.between) - near - {m[0]}, missing)
            path = [end]
            while before[path[-1]] is not None:
                path.append(before[path[-1]])  # type: ignore[arg-type]
            path.reverse()
            ways = list(pairwise(path))
            most = min(surplus[path[0]], lack[end])
            for one, other in ways:
                taken = flow.get((one, other), 0) - flow.get((other, one), 0)
                most = min(most, self.between[one][other] - taken)
            for one, other in ways:
                back = min(most, flow.get((other, one), 0))
                _add(flow, (other, one), -back)
                _add(flow, (one, other), most - back)
            _subtract(surplus, path[0], most)
            _subtract(lack, end, most)
        return flow

    def _search(
        self, own: int, surplus: Tally, lack: Tally, flow: Flow, width: int
    ) -> tuple[dict[int, int | None], int | None]:
        """Walk from the bands with a surplus to the nearest that lacks something, on ways of that width."""
        before: dict[int, int | None] = dict.fromkeys(j for j, n in surplus.items() if n >= width)
        queue = deque(before)
        while queue:
            one = queue.popleft()
            for other, edges in self.between[one].items():
                if other not in before and other != own:
                    if edges - flow.get((one, other), 0) + flow.get((other, one), 0) < width:
                        continue
                    before[other] = one
                    if lack.get(other, 0) >= width:
                        self.visited += len(before)
                        return before, other
                    queue.append(other)
        self.visited += len(before)
        return before, None


def _add(flow: Flow, way: tuple[int, int], amount: int) -> None:
    if amount:
        flow[way] = flow.get(way, 0) + amount
        if not flow[way]:
            del flow[way]


def _subtract(tally: Tally, band: int, amount: int) -> None:
    tally[band] -= amount
    if not tally[band]:
        del tally[band]


def count_pairs(ropes: Ropes, words: Sequence[Node]) -> Graph:
    """Count the neighbour pairs of cyclic words from the top: how often a node occurs, then its one pair."""
    left, right, first = ropes.left, ropes.right, ropes.first
    often: dict[Node, int] = {}
    pairs: dict[tuple[Node, Node], int] = {}
    for word in words:
        if word > 1:
            often[word & -2] = often.get(word & -2, 0) + 1
            pair = (first[word ^ 1] ^ 1, first[word] ^ 1)
            pairs[pair] = pairs.get(pair, 0) + 1
    for node in reversed(ropes.reachable(list(often))):
        one = left[node]
        if one:
            other = right[node]
            many = often[node]
            often[one & -2] = often.get(one & -2, 0) + many
            often[other & -2] = often.get(other & -2, 0) + many
            pair = (first[one ^ 1] ^ 1, first[other] ^ 1)
            pairs[pair] = pairs.get(pair, 0) + many
    ends: dict[LetterName, tuple[Tally, Tally]] = {
        ropes.names[node]: ({}, {}) for node in often if not left[node]
    }
    between: dict[int, Tally] = {band: {} for band, _ in ends}
    for (end, start), many in pairs.items():
        letter, next_letter = ropes.names[end & -2], ropes.names[start & -2]
        here, there = letter[0], next_letter[0]
        if here != there:
            for tally, at in (
                (ends[letter][end & 1], there),
                (ends[next_letter][start & 1], here),
                (between[here], there),
                (between[there], here),
            ):
                tally[at] = tally.get(at, 0) + many
    return Graph(ends, between)
