"""The least words: partial conjugations that shorten, found as cuts, until there is none.

Words that no single partial conjugation shortens are least among all that partial conjugations make of them.
For put n copies of each cyclic word x_1, …, x_n beside the fasteners' words, n being huge: peak reduction for
tuples of cyclic words (Whitehead 1936; Higgins & Lyndon 1974; Lyndon & Schupp, *Combinatorial Group Theory*,
I.4) says that a tuple that is not least is shortened by a single Whitehead automorphism, and with those
copies only a partial conjugation can be it (McCool 1986, Collins 1989). A conjugation by x_b changes the
number of letters of b alone; so one that keeps the length keeps every number, and a band occurs in all least
words or in none.
"""

from __future__ import annotations

from collections.abc import Sequence, Set
from itertools import chain
from typing import NamedTuple

from pegwright.proof.ropes import EMPTY, Node, Ropes
from pegwright.proof.values import LeastWords
from pegwright.proof.whitehead import Flow, Graph, GraphCut, LetterName, count_pairs

__all__ = ["MOST_VISITED", "Conjugated", "Least", "certify", "make_least"]


class Conjugated(NamedTuple):
    """A step: x_i → w x_i w⁻¹ for the bands i, none of which occurs in the word w (`by`)."""

    by: Node
    bands: frozenset[int]


class Least(NamedTuple):
    """Words made least.

    `outers[k]` are what was cut off each word, front and back, after the first k steps: o · w · o⁻¹ became w.
    `flows` show of every letter that no cut in the `graph` saves anything; None where it was given up.
    """

    words: tuple[Node, ...]
    outers: tuple[tuple[Node, ...], ...]
    steps: tuple[Conjugated, ...]
    flows: dict[LetterName, Flow] | None
    visited: int
    graph: Graph


MOST_VISITED = 3_000_000
"""Bands looked at in all searches before it is given up, and eight times the nodes made: seconds, 150 MB."""

_LOOK_ON = 8
"""Bands without a cut that are looked at after the first step before the cuts found are taken."""


def make_least(
    ropes: Ropes,
    words: Sequence[Node],
    most_visited: int = MOST_VISITED,
    known: Least | None = None,
) -> Least:
    """Shorten cyclic words by partial conjugations as long as one does.

    Of the cuts found in a graph the one that saves most comes first: taken last, it would find the words in
    many times the pieces. The others are tried as well, although the words have changed, and taken where they
    still shorten them. The next cut is often that of the next band, so the search goes on behind it.
    That none is left is seen in a graph of its own. Where a band has several letters, a cut may be none: the
    edges between them are left out. `known` are words much like these made least: of the flows found there,
    or in an earlier graph, those are looked at again that went by a band with other edges now.
    """
    outers, least = _cores(ropes, words)
    stages = [outers]
    steps: list[Conjugated] = []
    flows = dict(known.flows or {}) if known else {}
    passed = {m: _bands_passed(m, flow) for m, flow in flows.items()}
    before = known.graph if known else Graph({}, {})
    visited, most_nodes = 0, len(ropes.left) + most_visited // 8
    last, gained = (0, 0), False
    while True:
        graph = count_pairs(ropes, least)
        changed = graph.changed_bands(before)
        doubted = [m for m in graph.ends if m not in passed or not passed[m].isdisjoint(changed)]
        for m in doubted:
            passed.pop(m, None)
        before = graph
        cuts: list[GraphCut] = []
        sure = 0
        for m in sorted(doubted, key=lambda m: (m <= last, m)):
            if visited + graph.visited > most_visited:
                return Least(least, tuple(stages), tuple(steps), None, visited + graph.visited, graph)
            found = graph.flow(m, flows.get(m))
            if isinstance(found, GraphCut):
                cuts.append(found)
            else:
                flows[m], passed[m] = found, _bands_passed(m, found)
                sure += 1
            if gained and cuts and sure > _LOOK_ON:
                break
        visited += graph.visited
        taken, looked_at_all = len(steps), len(cuts) + sure == len(doubted)
        for cut in sorted(cuts, key=lambda cut: -cut.saved):
            if len(ropes.left) > most_nodes:
                return Least(least, tuple(stages), tuple(steps), None, visited, graph)
            better = _gallop(ropes, least, cut)
            if better is not None:
                step, outers, least = better
                steps.append(step)
                stages.append(outers)
                last = cut.m
        gained = len(steps) > taken
        if looked_at_all and not gained:
            done = {m: flows[m] for m in graph.ends if m in flows}
            return Least(least, tuple(stages), tuple(steps), done, visited, graph)


def _bands_passed(m: LetterName, flow: Flow) -> frozenset[int]:
    return frozenset({m[0], *chain.from_iterable(flow)})


Words = tuple[Node, ...]


def _cores(ropes: Ropes, words: Sequence[Node]) -> tuple[Words, Words]:
    """Return what is cut off of each word, and what is left of it, cyclically reduced."""
    cores = [ropes.core(word) for word in words]
    return tuple(outer for outer, _ in cores), tuple(core for _, core in cores)


def _gallop(ropes: Ropes, words: Words, cut: GraphCut) -> tuple[Conjugated, Words, Words] | None:
    """Conjugate one side of a cut by its letter, or by as much of a word that begins so as shortens most.

    Return the step, what it lets be cut off of each word and what is left; None where nothing gets shorter.
    Between the letters of a side stand words u without them, which become w⁻¹ u w. With every letter of w
    each u, at either end, becomes shorter or longer by one. The side that saves more is taken, of equal ones
    that of fewer bands: a long w for the many bands may be as much as a step a letter for the few.
    """
    x = ropes.letter(*cut.m)
    sides = [
        (*_best_word(ropes, words, y, bands), bands)
        for y, bands in ((x ^ 1, cut.near), (x, cut.far))
        if bands
    ]
    _, along, letters, bands = max(sides, key=lambda side: (side[0], -len(side[3])))
    before = _total(ropes, words)
    for length in dict.fromkeys((letters, 1)):
        by = ropes.take(along, length)
        total, outers, shorter = _conjugate(ropes, words, by, ropes.bits_of(bands))
        if total < before:
            return Conjugated(by, bands), outers, shorter
    return None


def _best_word(ropes: Ropes, words: Words, y: Node, bands: Set[int]) -> tuple[int, Node, int]:
    """Return about how many letters the best w for some bands saves, a word that begins with it, its length.

    The words u between the bands' letters and their inverses form a tree by their beginnings. The best w is
    its median (Hakimi 1964): go on as long as more than half of them do, first along one that begins with y.
    """
    between = _words_between(ropes, words, ropes.bits_of(bands))
    ways = {way: often for word, often in between.items() if word > 1 for way in (word, word ^ 1)}
    along = max((way for way in ways if ropes.first[way] == y), key=lambda way: ways[way], default=y)
    total = sum(ways.values())
    while True:
        shared = sorted(((ropes.common_prefix(along, way), way) for way in ways), reverse=True)
        passed = letters = 0
        for letters, way in shared:  # noqa: B007
            passed += 2 * ways[way]
            if passed > total:
                break
        branches: dict[Node, dict[Node, int]] = {}
        for length, way in shared:
            if length == letters < ropes.length[way >> 1]:
                branches.setdefault(ropes.letter_at(way, letters), {})[way] = ways[way]
        branch = next((b for b in branches.values() if 2 * sum(b.values()) > total), None)
        if branch is None:
            letters = max(letters, 1)
            saved = sum(ways[way] * (2 * min(length, letters) - letters) for length, way in shared)
            return saved, along, letters
        along = max(branch, key=lambda way: branch[way])


def _words_between(ropes: Ropes, words: Words, bits: int) -> dict[Node, int]:
    """Return the words that stand between letters of some bands in cyclic words, and how often each does."""
    left, right, mask = ropes.left, ropes.right, ropes.bits
    nodes = ropes.find_mixed(words, bits)
    often = dict.fromkeys(nodes, 0)
    for word in words:
        if word & -2 in often:
            often[word & -2] += 1
    heads: dict[Node, Node] = {}  # of a node with letters of the bands, what stands before the first

    def head(node: Node) -> Node:
        return heads.get(node, EMPTY) if mask[node >> 1] & bits else node

    for node in nodes:
        for here, one, other in (
            (node, left[node], right[node]),
            (node ^ 1, right[node] ^ 1, left[node] ^ 1),
        ):
            heads[here] = head(one) if mask[one >> 1] & bits else ropes.product(one, head(other))
    found: dict[Node, int] = {}

    def count(before: Node, after: Node, many: int) -> None:
        word = ropes.product(head(before ^ 1) ^ 1, head(after))
        key = min(word, word ^ 1)
        found[key] = found.get(key, 0) + many

    for node in reversed(nodes):
        many, one, other = often[node], left[node], right[node]
        for part in (one & -2, other & -2):
            if part in often:
                often[part] += many
        if mask[one >> 1] & bits and mask[other >> 1] & bits:
            count(one, other, many)
    for word in words:
        if word & -2 in often:
            count(word, word, 1)
    return found


def _total(ropes: Ropes, words: Sequence[Node]) -> int:
    return sum(ropes.length[word >> 1] for word in words)


def _conjugate(ropes: Ropes, words: Words, by: Node, bits: int) -> tuple[int, Words, Words]:
    found = ropes.conjugate_bands(words, by, bits)
    more, cores = _cores(ropes, [word for _, word in found])
    outers = tuple(ropes.product(outer, inner) for (outer, _), inner in zip(found, more, strict=True))
    return _total(ropes, cores), outers, cores


def certify(ropes: Ropes, least: Least, letters: Sequence[LetterName]) -> LeastWords:
    """Return the least words as a value for the checker; `letters` are those that were kept."""
    outers = [outer for stage in least.outers for outer in stage]
    symbols = {0: 0} | {ropes.letter(*name): number for number, name in enumerate(letters, 1)}
    joins: list[tuple[int, int]] = []

    def symbol(node: Node) -> int:
        return -symbols[node & -2] if node & 1 else symbols[node]

    for node in ropes.reachable([*least.words, *outers, *(step.by for step in least.steps)]):
        if node not in symbols:
            joins.append((symbol(ropes.left[node]), symbol(ropes.right[node])))
            symbols[node] = len(letters) + len(joins)
    flows = {
        band: tuple((one, other, amount) for (one, other), amount in flow.items())
        for (band, _), flow in (least.flows or {}).items()
        if flow
    }
    return LeastWords(
        tuple(letters),
        tuple(joins),
        tuple((symbol(step.by), tuple(sorted(step.bands))) for step in least.steps),
        tuple(tuple(map(symbol, stage)) for stage in least.outers),
        tuple(map(symbol, least.words)),
        flows,
    )
