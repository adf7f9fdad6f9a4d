"""Held, at any size: holding paths from a fastener down to a band that its product turns round.

Ignore every band but a set M. Let h be a product in which, of M, only band a has loops, and let v be what a
passes through between its loops there. Then h is, up to conjugation, a word W(x_a, v), for a hooked band the
commutator [x_a, v]. Where v stays and a does not occur in v, x_a and v generate freely, so W is trivial
only if v is. A band held in v is held in W(x_a, v): the Whitehead graph of W, in which both ends of each
generator are one vertex, is that of v with x_a put into edges, so no cut becomes smaller, and by peak
reduction the least length is not less (Collins 1989, McCool 1986). So a path of such steps that ends in a
product with a non-zero exponent of a band holds every band on it. One tree of steps serves a whole piece.
"""

from __future__ import annotations

import random
from collections import deque
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence, Set
from heapq import heappop, heappush
from operator import itemgetter
from typing import NamedTuple

from pegwright.proof.closing import Closing, closing_word, ties
from pegwright.proof.reader import List, Passage, Reader
from pegwright.proof.values import Held, PathStep

Steps = tuple[PathStep, ...]
_SPREAD = 4  # how much longer than 1 a way may be drawn


class _Edge(NamedTuple):
    carriers: tuple[int, ...]
    passage: Passage


class _Net(NamedTuple):
    """The ways down from every product: those that reach theirs first or reach a witness, and the others."""

    edges: dict[List, list[_Edge]]
    shared: dict[List, list[_Edge]]


def find_holding_paths(
    reader: Reader, wanted: Set[int], seeds: Sequence[int] = (0, 1)
) -> tuple[dict[int, Held], Steps]:
    """Return what holding paths certify as held, and the tree of steps.

    One tree serves most pieces: of the fasteners' words less their far ends (`closing`). Where bands of
    `wanted` stay open, the whole words are tried, and other ways to each product; each tree stands for
    itself. Seed 0 goes the shortest way to each product, any other draws the lengths of the ways at random.
    """
    roots = dict(enumerate(reader.s.roots))
    ends = {number: found for number, root in roots.items() if (found := closing_word(reader, root))}
    rings = roots | {number: end.rest for number, end in ends.items()}
    held = {end.band: Held(2 * at + 1, witness=True) for at, end in enumerate(ends.values())}
    steps: Steps = ()
    for number, end in ends.items():
        steps = (*steps, PathStep(-1, root=number), PathStep(len(steps), witness=end.band))
    for seed in seeds:
        for start, closed in ((rings, ends), (roots, {})) if ends else ((roots, {}),):
            if wanted <= held.keys():
                break
            more, further = _carry(reader, start, closed, seed)
            if more.keys() - held.keys():
                by = len(steps)
                steps = (*steps, *shift_steps(further, by))
                held = {b: h._replace(step=h.step + by) for b, h in more.items()} | held
    return held, steps


def bands_on_paths(reader: Reader, wanted: Set[int], seed: int = 0) -> set[int]:
    """Return which bands of `wanted` such paths certify, without the steps."""
    roots = dict(enumerate(reader.s.roots))
    ends = {number: found for number, root in roots.items() if (found := closing_word(reader, root))}
    rings = roots | {number: end.rest for number, end in ends.items()}
    held = {end.band for end in ends.values()}
    for start, closed in ((rings, ends), (roots, {})) if ends else ((roots, {}),):
        if not wanted <= held:
            held |= _walk(reader, start, closed, seed, wanted - held).held.keys()
    return held & wanted


def shift_steps(steps: Steps, by: int) -> Steps:
    """Return the steps numbered on from `by`."""
    return tuple(
        s._replace(parent=s.parent + by * (s.parent >= 0), loan=s.loan + by * (s.loan >= 0)) for s in steps
    )


def _carry(
    reader: Reader, roots: dict[int, List], closings: dict[int, Closing], seed: int
) -> tuple[dict[int, Held], Steps]:
    walk = _walk(reader, roots, closings, seed)
    return walk.held, tuple(walk.steps)


def _walk(
    reader: Reader,
    roots: dict[int, List],
    closings: dict[int, Closing],
    seed: int,
    wanted: Set[int] | None = None,
) -> _Walk:
    """Walk the tree of steps; where only some bands are `wanted`, no further than these ask for."""
    walk = _Walk(reader, _find_nearest_ways(reader, list(roots.values()), closings, seed), wanted)
    seen: set[List] = set()
    for number, root in roots.items():
        if root not in seen:
            seen.add(root)
            walk.down(number, root, closings.get(number))
    if wanted is not None and not walk.open:
        return walk
    walk.sort(range(len(walk.steps)))
    _lend(walk)
    if wanted is None:
        walk.sort(walk.alive)  # what is left leads to a witness
    return walk


def _find_nearest_ways(
    reader: Reader, roots: Sequence[List], closings: Mapping[int, Closing], seed: int
) -> _Net:
    """Reach every product the nearest way (Dijkstra 1959); put first the ways that soon reach a witness."""
    rng = random.Random(seed)
    ways: dict[List, list[_Edge]] = {}
    above: dict[List, list[List]] = {}
    far: dict[List, int] = {}
    first: dict[List, _Edge] = {}
    length = dict.fromkeys(roots, 0.0)
    heap = [(0.0, number, root) for number, root in enumerate(length)]
    ends = {found.rest: found for found in closings.values()}
    while heap:
        here, _, product = heappop(heap)
        if product in ways:
            continue
        if reader.turning_bands(product):
            far[product] = 0
        ways[product] = _ways(reader, product, ends.get(product))
        for edge in ways[product]:
            deeper = edge.passage.product
            above.setdefault(deeper, []).append(product)
            there = here + 1 + (rng.random() * _SPREAD if seed else 0)
            if there < length.get(deeper, there + 1):
                length[deeper] = there
                first[deeper] = edge
                heappush(heap, (there, len(length), deeper))
    queue = deque(far)
    while queue:
        product = queue.popleft()
        for parent in above.get(product, ()):
            if parent not in far:
                far[parent] = far[product] + 1
                queue.append(parent)
    edges: dict[List, list[_Edge]] = {}
    shared: dict[List, list[_Edge]] = {}
    for product, leading in ways.items():
        nearest = [
            far.get(edge.passage.product, len(far)) + (rng.random() * _SPREAD if seed else 0)
            for edge in leading
        ]
        for _, edge in sorted(zip(nearest, leading, strict=True), key=itemgetter(0)):
            deeper = edge.passage.product
            own = first.get(deeper) is edge or far.get(deeper) == 0
            (edges if own else shared).setdefault(product, []).append(edge)
    return _Net(edges, shared)


def _ways(reader: Reader, product: List, end: Closing | None) -> list[_Edge]:
    """Return the ways down from a product, by all carriers that pass through the same together."""
    ring = (end.band, end.turns) if end else (0, 0)
    known = reader.ways.get((product, ring))
    if known is None:
        together: dict[Passage, list[int]] = {}
        for band, factors in reader.loops(product).items():
            if len(factors) > 1 and (not end or ties(reader, factors, end)):
                found = reader.places(factors) if end else None
                passage = found[0] if found else reader.passage(factors)
                if passage is not None:
                    together.setdefault(passage, []).append(band)
        known = reader.ways[product, ring] = [(tuple(bands), passage) for passage, bands in together.items()]
    return [_Edge(*way) for way in known]


class PathPlace(NamedTuple):
    """Where a step stands. The bands with loops in `product` or in `aside` must not be used by another step.

    `aside` are the bands of what the step's carriers pass outside of the product, or of what the loops of its
    witness passed: all of that must vanish.
    """

    product: List
    aside: frozenset[int]


class _Frame(NamedTuple):
    step: int
    children: Iterator[_Edge]


class _Walk:
    """A walk over the tree that keeps, for the path walked, its carriers and the bands barred from use."""

    def __init__(self, reader: Reader, net: _Net, wanted: Set[int] | None = None) -> None:
        self.reader = reader
        self.net = net
        self.all = wanted is None
        self.open = set(wanted or ())  # bands wanted and not held yet
        self.carrying: set[int] = set()
        self.barred: dict[int, int] = {}
        self.held: dict[int, Held] = {}
        self.steps: list[PathStep] = []
        self.places: list[PathPlace] = []
        self.opened: set[List] = set()
        self.chained: set[int] = set()  # witnesses, and steps with one below them in the tree
        self.alive: set[int] = set()  # these, and the steps that lead to a loan

    def down(self, number: int, root: List, end: Closing | None) -> None:
        """Walk down from the word of a fastening, or from what is left of it without its far end."""
        step = PathStep(-1, root=number, without=end.band if end else 0)
        frames = [self._open(root, frozenset(), step)]
        while frames and (self.all or self.open):
            edge = next(frames[-1].children, None)
            if edge is None:
                self._close(frames.pop().step)
            else:
                deeper = self._enter(frames[-1].step, edge)
                if deeper is not None:
                    frames.append(deeper)

    def _enter(self, parent: int, edge: _Edge) -> _Frame | None:
        """Go one step down, unless a band on the path would then have loops in two of its products."""
        product, outer = edge.passage
        aside = self.reader.bands_of(outer)
        inside = aside.union(self.reader.loops(product))
        carriers = tuple(b for b in edge.carriers if self.barred[b] == 1 and b not in inside)
        if not carriers or not self.carrying.isdisjoint(inside):
            return None
        self.carrying.update(carriers)
        return self._open(product, aside, PathStep(parent, carriers))

    def _open(self, product: List, aside: frozenset[int], step: PathStep) -> _Frame:
        bands = self.reader.loops(product)
        self._bar(bands, 1)
        self._bar(aside, 1)
        number = self._add(step, PathPlace(product, aside))
        for band in self.reader.turning_bands(product):
            if (band in self.held and number in self.chained) or self.barred[band] != 1:
                continue
            trails = self.reader.trail_bands(bands[band])
            if band not in trails and self.carrying.isdisjoint(trails):
                witness = self._add(PathStep(number, witness=band), PathPlace((), trails))
                self.held.setdefault(band, Held(witness, witness=True))
                self.open.discard(band)
                self.chained.update((number, witness))
                self.alive.add(witness)
        fresh = product not in self.opened
        self.opened.add(product)
        return _Frame(number, iter(self.net.edges.get(product, ()) if fresh else ()))

    def _add(self, step: PathStep, place: PathPlace) -> int:
        self.steps.append(step)
        self.places.append(place)
        return len(self.steps) - 1

    def _bar(self, bands: Iterable[int], by: int) -> None:
        for band in bands:
            self.barred[band] = self.barred.get(band, 0) + by

    def _close(self, number: int) -> None:
        step, place = self.steps[number], self.places[number]
        self._bar(self.reader.loops(place.product), -1)
        self._bar(place.aside, -1)
        self.carrying.difference_update(step.carriers)
        if number in self.chained:
            self.chained.add(step.parent)
            self.hold(number)

    def hold(self, number: int) -> None:
        """Note a step as one that leads to a witness."""
        self.alive.add(number)
        for band in self.steps[number].carriers:
            self.held.setdefault(band, Held(number, witness=False))
        self.open.difference_update(self.steps[number].carriers)

    def lend(self, parent: int, edge: _Edge, carriers: Sequence[int], lender: int) -> None:
        """Add a step that goes on as the chain from the lender does."""
        aside = self.reader.bands_of(edge.passage.outer)
        step = PathStep(parent, tuple(carriers), loan=lender)
        self.hold(self._add(step, PathPlace(edge.passage.product, aside)))

    def sort(self, wanted: Collection[int]) -> None:
        """Keep these steps, each followed by what is below it, what has a witness below it first.

        A chain is then a run of neighbours: from a step to the next witness.
        """
        below: dict[int, list[int]] = {}
        for number in sorted(wanted, reverse=True):
            below.setdefault(self.steps[number].parent, []).append(number)
        waiting, kept = below.get(-1, []), []
        while waiting:
            number = waiting.pop()
            kept.append(number)
            waiting += sorted(below.get(number, ()), key=self.chained.__contains__)
        fresh = {-1: -1} | {number: at for at, number in enumerate(kept)}
        steps = [self.steps[number] for number in kept]
        self.steps = [s._replace(parent=fresh[s.parent], loan=fresh[s.loan]) for s in steps]
        self.places = [self.places[number] for number in kept]
        self.chained = {fresh[number] for number in self.chained if number in fresh}
        self.alive = {fresh[number] for number in self.alive}
        self.held = {b: h._replace(step=fresh[h.step]) for b, h in self.held.items()}


class _Chains:
    """The chains below the steps, and how many of their members clash with the path walked."""

    def __init__(self, walk: _Walk) -> None:
        count = len(walk.steps)
        self.last = [-1] * count  # the chain from a step on runs to here
        self.users: dict[int, list[int]] = {}  # steps whose chain goes on by this band
        self.barring: dict[int, list[int]] = {}  # steps at which this band is barred
        self.counts = [0] * (count + 1)
        for number in reversed(range(count)):
            step, place = walk.steps[number], walk.places[number]
            for band in place.aside.union(walk.reader.loops(place.product)):
                self.barring.setdefault(band, []).append(number)
            if step.witness:
                self.last[number] = number
            elif number in walk.chained:
                self.last[number] = self.last[number + 1]
                for band in walk.steps[number + 1].carriers or (walk.steps[number + 1].witness,):
                    self.users.setdefault(band, []).append(number)

    def mark(self, steps: Iterable[int], by: int) -> None:
        """Count steps as clashing (a Fenwick tree: Fenwick 1994)."""
        for step in steps:
            at = step + 1
            while at < len(self.counts):
                self.counts[at] += by
                at += at & -at

    def clashes(self, step: int) -> bool:
        """Say whether a step of the chain from `step` on is counted."""
        return self._sum(self.last[step] + 1) != self._sum(step)

    def has(self, step: int, members: Iterable[int]) -> bool:
        """Say whether one of the members is in the chain from `step` on."""
        return any(step <= member <= self.last[step] for member in members)

    def _sum(self, at: int) -> int:
        total = 0
        while at:
            total += self.counts[at]
            at -= at & -at
        return total


def _lend(walk: _Walk) -> None:
    """Let carriers whose product has its place elsewhere in the tree go on by the chain from there.

    The path down to the carrier and the borrowed chain were each walked; what is left to see is that no
    band of the one is barred on the other.
    """
    reader, steps = walk.reader, walk.steps
    ways = [*walk.net.edges.values(), *walk.net.shared.values()]
    if all(band in walk.held for edges in ways for edge in edges for band in edge.carriers):
        return
    chains = _Chains(walk)
    home = {walk.places[number].product: number for number in walk.chained if number >= 0}
    path: dict[int, list[int]] = {}
    carrying: set[int] = set()
    wanting: set[int] = set()  # steps that lead nowhere yet, and a carrier on the way there is not held yet
    for number, (step, place) in enumerate(zip(steps[:], walk.places[:], strict=True)):
        if step.witness:
            continue
        while path and next(reversed(path)) != step.parent:
            left, marks = path.popitem()
            chains.mark(marks, -1)
            carrying.difference_update(steps[left].carriers)
        barred = place.aside.union(reader.loops(place.product))
        marks = [user for band in barred for user in chains.users.get(band, ())]
        for band in step.carriers:
            carrying.add(band)
            marks += [bar for bar in chains.barring[band] if bar != step.parent]
        chains.mark(marks, 1)
        path[number] = marks
        if number not in walk.alive:
            open_ = any(band not in walk.held for band in step.carriers)
            if open_ or step.parent in wanting:
                wanting.add(number)
        for edge in walk.net.shared.get(place.product, ()):
            lender = home.get(edge.passage.product)
            dead = number in wanting and number not in walk.alive
            wanted = [b for b in edge.carriers if dead or b not in walk.held]
            if lender is None or not wanted or chains.clashes(lender):
                continue
            aside = reader.bands_of(edge.passage.outer)
            if not carrying.isdisjoint(aside):
                continue
            if any(chains.has(lender, chains.users.get(band, ())) for band in aside):
                continue
            carriers = []
            for band in wanted:
                others = [bar for bar in chains.barring[band] if bar != number]
                if (
                    band not in aside | place.aside
                    and path.keys().isdisjoint(others)
                    and not chains.has(lender, others)
                ):
                    carriers.append(band)
            if carriers:
                walk.lend(number, edge, carriers, lender)
                for above in reversed(path):
                    if above in walk.alive:
                        break
                    walk.hold(above)
