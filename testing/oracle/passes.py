"""Pass moves: lift a strand that runs over (or under) everything and lay it down where it crosses least.

regina's `simplify` knows the Reidemeister moves; this is the one long move it lacks. Every component keeps
its number, also when it has no crossing left.
"""

from __future__ import annotations

import heapq
import random

import regina

Faces = dict[tuple[int, int, int], int]
Run = tuple[int, int, int]  # component, first entry, length
Code = tuple[list[int], list[list[int]]]  # signs by crossing from 1 on, and each component's ±crossings


def reduced(link: regina.Link, rounds: int = 4) -> regina.Link:
    """Return a smaller diagram of the same link: Reidemeister and pass moves till neither helps.

    When stuck it relays strands along other ways as short, at random but the same each time, and tries again,
    `rounds` times.
    """
    rng = random.Random(rounds)
    best = link = regina.Link(link)
    idle = 0
    while idle < rounds and best.size():
        link.simplify()
        better = _passed(link)
        if better is not None:
            link = better
            continue
        idle += 1
        if link.size() < best.size():
            best, idle = link, 0
        for _ in range(3):
            link = _passed(link, rng) or link
    return best if best.size() <= link.size() else link


def code_of(link: regina.Link) -> Code:
    """Return the link's signed Gauss code, crossings numbered from 1."""
    signs = [c.sign() for c in link.crossings()]
    strings = []
    for k in range(link.countComponents()):
        string = []
        start = at = link.component(k)
        while at:
            string.append((at.crossing().index() + 1) * (1 if at.strand() else -1))
            at = at.next()
            if at == start:
                break
        strings.append(string)
    return signs, strings


def _passed(link: regina.Link, rng: random.Random | None = None) -> regina.Link | None:
    """Relay a strand so that it crosses less; with `rng`, any strand along any way no longer than its own."""
    signs, strings = code_of(link)
    left = _faces(signs, strings)
    runs = []
    for k, string in enumerate(strings):
        n = len(string)
        if n and (all(x > 0 for x in string) or all(x < 0 for x in string)):
            return _without(signs, strings, {abs(x) for x in string})
        for i in range(n):
            if (string[i - 1] > 0) == (string[i] > 0):
                continue
            length = 1
            while (string[(i + length) % n] > 0) == (string[i] > 0):
                length += 1
            runs.append((length, k, i))
    runs.sort(reverse=True)
    if rng is not None:
        runs = [(rng.randint(1, length), k, i) for length, k, i in runs]
        rng.shuffle(runs)
    for length, k, i in runs:
        better = _relaid(signs, strings, left, (k, i, length), rng)
        if better is not None:
            return better
    return None


def _without(signs: list[int], strings: list[list[int]], gone: set[int]) -> regina.Link:
    return _link(signs, [[x for x in s if abs(x) not in gone] for s in strings])


def _link(signs: list[int], strings: list[list[int]]) -> regina.Link:
    kept = sorted({abs(x) for s in strings for x in s})
    number = {c: i + 1 for i, c in enumerate(kept)}
    return regina.Link.fromData(
        [signs[c - 1] for c in kept],
        [[number[abs(x)] * (1 if x > 0 else -1) for x in s] for s in strings],
    )


def _faces(signs: list[int], strings: list[list[int]]) -> Faces:
    """Number the faces: (component, position, ±1) → face to the left of that edge gone along that way.

    Edge (k, i) runs from entry i of component k to the next one.
    """
    incoming: dict[int, tuple[int, int]] = {}
    outgoing: dict[int, tuple[int, int]] = {}
    for k, string in enumerate(strings):
        for i, x in enumerate(string):
            incoming[x] = (k, (i - 1) % len(string))
            outgoing[x] = (k, i)
    around: dict[tuple[int, int, int], tuple[int, int, int]] = {}
    for c, sign in enumerate(signs, start=1):
        # Anticlockwise round a positive crossing: under in, over out, under out, over in.
        ring = [(*incoming[-c], -1), (*outgoing[c], 1), (*outgoing[-c], 1), (*incoming[c], -1)]
        if sign < 0:
            ring = [ring[0], ring[3], ring[2], ring[1]]
        for j, (k, i, way) in enumerate(ring):
            around[k, i, -way] = ring[j - 1]
    face: dict[tuple[int, int, int], int] = {}
    for start in around:
        if start in face:
            continue
        number = len(face)
        at = start
        while at not in face:
            face[at] = number
            at = around[at]
    return face


def _relaid(
    signs: list[int], strings: list[list[int]], left: Faces, run: Run, rng: random.Random | None
) -> regina.Link | None:
    """Take up a run of crossings all over (or all under) and lay it where it crosses fewer strands."""
    k, i, length = run
    string = strings[k]
    n = len(string)
    gone = {abs(string[(i + j) % n]) for j in range(length)}
    if n == length or abs(string[i - 1]) in gone or abs(string[(i + length) % n]) in gone:
        # An end that dives under its own strand: give up the crossing concerned.
        if length < 3:
            return None
        start = (i + 1) % n if abs(string[i - 1]) in gone else i
        return _relaid(signs, strings, left, (k, start, length - 1), rng)
    crossed = _way(left, n, run, rng)
    if crossed is None:
        return None
    over = 1 if string[i] > 0 else -1
    new_signs = signs + [way * over for _, way in crossed]
    number = {edge: len(signs) + 1 + c for c, (edge, _) in enumerate(crossed)}
    made = []
    for a, old in enumerate(strings):
        new: list[int] = []
        for b, x in enumerate(old):
            if (a, b) == (k, i):
                new += [over * c for c in number.values()]
            if abs(x) not in gone:
                new.append(x)
            if (a, b) in number:
                new.append(-over * number[a, b])
        made.append(new)
    return _link(new_signs, made)


def _way(
    left: Faces, n: int, run: Run, rng: random.Random | None
) -> list[tuple[tuple[int, int], int]] | None:
    """Find the strands that a run has to cross from end to end: (edge, ±1 from its left or its right).

    Shortest path through the faces; the run's own edges cost nothing, for it is taken up. None if there is
    no shorter way, or with `rng` none as short.
    """
    k, i, length = run
    free = {(k, (i - 1 + j) % n) for j in range(length + 1)}
    steps: dict[int, list[tuple[int, int, tuple[int, int], int]]] = {}
    for (a, b, way), f in left.items():
        steps.setdefault(f, []).append((left[a, b, -way], int((a, b) not in free), (a, b), way))
    source, goal = left[k, (i - 1) % n, 1], left[k, (i + length - 1) % n, 1]
    cost: dict[int, tuple[int, float]] = {source: (0, 0.0)}
    back: dict[int, tuple[int, int, tuple[int, int], int]] = {}
    heap: list[tuple[int, float, int]] = [(0, 0.0, source)]
    most = length - (rng is None)
    while heap:
        crossings, noise, f = heapq.heappop(heap)
        if (crossings, noise) > cost[f]:
            continue
        for to, price, edge, way in steps[f]:
            total = crossings + price, noise + (rng.random() if rng else 0.0)
            if total[0] <= most and total < cost.get(to, (most + 1, 0.0)):
                cost[to] = total
                back[to] = (f, price, edge, way)
                heapq.heappush(heap, (*total, to))
    if goal not in cost:
        return None
    crossed = []
    at = goal
    while at != source:
        at, price, edge, way = back[at]
        if price:
            crossed.append((edge, way))
    return crossed[::-1]
