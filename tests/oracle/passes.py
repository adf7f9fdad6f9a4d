"""Pass moves: lift a strand that runs over (or under) everything and lay it down where it crosses least.

regina's `simplify` knows the Reidemeister moves; this is the one long move it lacks. Every component keeps its
number, also when it has no crossing left.
"""

from __future__ import annotations

from collections import deque

import regina

Code = tuple[list[int], list[list[int]]]  # signs by crossing from 1 on, and each component's ±crossings


def reduced(link: regina.Link, rounds: int = 4) -> regina.Link:
    """Return a smaller diagram of the same link: Reidemeister and pass moves till neither helps."""
    link = regina.Link(link)
    idle = 0
    while idle < rounds and link.size():
        link.simplify()
        better = _passed(link)
        if better is None:
            idle += 1
        else:
            link, idle = better, 0
    return link


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


def _passed(link: regina.Link) -> regina.Link | None:
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
    for length, k, i in sorted(runs, reverse=True):
        better = _relaid(signs, strings, left, k, i, length)
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


def _faces(signs: list[int], strings: list[list[int]]) -> dict[tuple[int, int, int], int]:
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
    signs: list[int],
    strings: list[list[int]],
    left: dict[tuple[int, int, int], int],
    k: int,
    i: int,
    length: int,
) -> regina.Link | None:
    string = strings[k]
    n = len(string)
    run = [string[(i + j) % n] for j in range(length)]
    gone = {abs(x) for x in run}
    if n == length or abs(string[i - 1]) in gone or abs(string[(i + length) % n]) in gone:
        # An end that dives under its own strand: give up the crossing concerned.
        if length < 3:
            return None
        if abs(string[i - 1]) in gone:
            return _relaid(signs, strings, left, k, (i + 1) % n, length - 1)
        return _relaid(signs, strings, left, k, i, length - 1)
    free = {(k, (i - 1 + j) % n) for j in range(length + 1)}
    steps: dict[int, list[tuple[int, int, tuple[int, int], int]]] = {}
    for (a, b, way), f in left.items():
        # Going from the left of this edge to its right.
        cost = 0 if (a, b) in free else 1
        steps.setdefault(f, []).append((left[a, b, -way], cost, (a, b), way))
    source = left[k, (i - 1) % n, 1]
    goal = left[k, (i + length - 1) % n, 1]
    cost = {source: 0}
    back: dict[int, tuple[int, int, tuple[int, int], int]] = {}
    queue = deque([source])
    while queue:
        f = queue.popleft()
        for to, price, edge, way in steps[f]:
            total = cost[f] + price
            if total < cost.get(to, length):
                cost[to] = total
                back[to] = (f, price, edge, way)
                if price:
                    queue.append(to)
                else:
                    queue.appendleft(to)
    if goal not in cost:
        return None
    crossed: list[tuple[tuple[int, int], int]] = []
    at = goal
    while at != source:
        f, price, edge, way = back[at]
        if price:
            crossed.append((edge, way))
        at = f
    crossed.reverse()
    over = 1 if run[0] > 0 else -1
    new_signs = list(signs)
    insert: dict[tuple[int, int], int] = {}
    laid = []
    for edge, way in crossed:
        new_signs.append(way * over)
        c = len(new_signs)
        insert[edge] = -over * c
        laid.append(over * c)
    made = []
    for a, old in enumerate(strings):
        new: list[int] = []
        for b, x in enumerate(old):
            if a == k and b == i:
                new += laid
            if abs(x) not in gone:
                new.append(x)
            if (a, b) in insert:
                new.append(insert[a, b])
        made.append(new)
    return _link(new_signs, made)
