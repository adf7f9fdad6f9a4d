"""The order of elimination: geometric nested dissection (A. George, SIAM J. Numer. Anal. 10 (1973) 345).

A piece lies in space and its contacts join only what is near, so a plane across it is a good cut. Each set of
vertices is cut across the axis and at the place where the fewest vertices have a neighbour on the other side;
those few are eliminated last. The leaves and the cuts are the fronts of `multifrontal`.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from pegwright.shape.jit import kernel
from pegwright.shape.rods import Floats, Ints, Rods

__all__ = ["EliminationTree", "build_elimination_tree", "mend_elimination_tree", "vertex_adjacency"]

# Columns of `EliminationTree.fronts`; the row after the last front closes PIVOT, RIM and PANEL.
PIVOT, PARENT, LEFT, RIGHT, RIM, PANEL, UPDATE, DEPTH = range(8)
# Columns of the table of sets while they are cut: where in `order` a set begins and ends, where the vertices
# that it keeps for itself begin, its parent (−1: none), its depth, and its two halves (−1: none).
BEGIN, END, KEPT, ABOVE, LEVEL, LOWER, UPPER = range(7)
_BINS = 192  # places at which a cut is tried along each axis


class EliminationTree(NamedTuple):
    """Fronts in postorder. A position is a place in the order of elimination.

    Each row of `fronts` (m + 1, 8) holds: the first position it eliminates, its parent and two children
    (−1: none), where its rim and its factor begin, where its update lies, and its depth. Updates of even
    and of odd depth live in two stacks, of `even` and `odd` numbers. Fronts before `split` and those from
    it to the last but one do not depend on each other (0: no such place). `work` counts the multiplications
    of a factorisation.
    """

    order: Ints  # (n,) vertex at each position
    position: Ints  # (n,) position of each vertex
    front_of: Ints  # (n,) front that eliminates each position
    fronts: Ints
    rim: Ints  # positions that each front touches beyond its pivots, ascending
    split: int
    even: int
    odd: int
    work: float


def vertex_adjacency(rods: Rods, pairs: Ints) -> tuple[Ints, Ints]:
    """Return the adjacency (offsets (n + 1,), list; with repeats): two along the band each way, and across
    pairs."""
    n = len(rods.next)
    offsets, links = np.zeros(n + 1, np.int64), np.empty(4 * n + 8 * len(pairs), np.int64)
    _fill_adjacency(rods.next, pairs, offsets, links)
    return offsets, links


def build_elimination_tree(x: Floats, offsets: Ints, links: Ints, leaf: int) -> EliminationTree:
    """Order the vertices at `x` (n, 3) with the given adjacency; sets of at most `leaf` vertices are not
    cut."""
    n = len(x)
    order, sets = np.arange(n), np.zeros((4 * n // leaf + 64, 7), np.int64)
    made = _cut_sets(x, offsets, links, leaf, order, sets)
    fronts = np.zeros((made + 1, 8), np.int64)
    _number_fronts(sets[:made], fronts)
    fronts[made, PIVOT] = n
    return _complete_tree(order, offsets, links, fronts)


def mend_elimination_tree(tree: EliminationTree, offsets: Ints, links: Ints) -> EliminationTree:
    """Fit a tree to a new adjacency without new cuts: if a link joins two branches, one of its ends moves to
    the cut between them. Far cheaper than a new tree, and as good while few links are new."""
    front_of = tree.front_of[tree.position]  # by vertex
    _raise_vertices(offsets, links, tree.fronts, front_of)
    order = tree.order[np.argsort(front_of[tree.order], kind="stable")]
    fronts = tree.fronts.copy()
    fronts[1:, PIVOT] = np.cumsum(np.bincount(front_of, minlength=len(fronts) - 1))
    return _complete_tree(order, offsets, links, fronts)


def _complete_tree(order: Ints, offsets: Ints, links: Ints, fronts: Ints) -> EliminationTree:
    """Find the rims of fronts whose pivots, parents, children and depths are known."""
    n = len(order)
    position, front_of, seen = np.empty(n, np.int64), np.empty(n, np.int64), np.full(n, -1)
    position[order] = np.arange(n)
    room = np.zeros(3, np.int64)
    rim = np.empty(16 * n + 1024, np.int64)
    while True:
        work = _fill_rims(order, position, offsets, links, fronts, front_of, rim, seen, room)
        if work >= 0:
            break
        rim = np.empty(2 * len(rim), np.int64)
        seen[:] = -1
    return EliminationTree(
        order, position, front_of, fronts, rim, int(room[2]), int(room[0]), int(room[1]), work
    )


@kernel
def _fill_adjacency(after: Ints, pairs: Ints, offsets: Ints, links: Ints) -> None:
    """Fill `offsets` (n + 1,) and `links`: two vertices each way along the band, and across `pairs`."""
    n = after.shape[0]
    offsets[:] = 0
    for sweep in range(2):  # first count, then fill
        for v in range(n):
            w = after[v]
            for _ in range(2):
                if w >= 0:
                    if sweep:
                        links[offsets[v]], links[offsets[w]] = w, v
                    offsets[v] += 1
                    offsets[w] += 1
                    w = after[w]
        for k in range(pairs.shape[0]):
            for c in range(4):
                v = pairs[k, 0] if c < 2 else after[pairs[k, 0]]
                w = pairs[k, 1] if c % 2 == 0 else after[pairs[k, 1]]
                if v >= 0 and w >= 0 and v != w:
                    if sweep:
                        links[offsets[v]], links[offsets[w]] = w, v
                    offsets[v] += 1
                    offsets[w] += 1
        # Counts become starts; after filling, each start has become the next one's and moves back.
        carried = 0
        for v in range(n + 1):
            own = offsets[v]
            offsets[v] = carried
            carried = carried + own if sweep == 0 else own


@kernel
def _best_cut(
    x: Floats, members: Ints, offsets: Ints, links: Ints, rank: Ints, counts: Ints
) -> tuple[int, int]:
    """Return the axis and bin of the cheapest cut of `members` (m,); axis −1 if all are in one place.

    The cost of a cut is the number of vertices with a neighbour across it, on the side with fewer, plus a
    penalty for uneven halves. Scratch: `rank` (n,), −1 on entry, the bin of each member on the axis tried;
    `counts` (3, _BINS + 2), how many lie in each bin and, as differences, how many have a neighbour across
    each cut from the left and from the right.
    """
    m = members.shape[0]
    best = np.inf
    axis, place = -1, 0
    widest = 0.0
    for sweep in range(2):
        for i in range(3):
            low = high = x[members[0], i]
            for v in members:
                low = min(low, x[v, i])
                high = max(high, x[v, i])
            if sweep == 0:
                widest = max(widest, high - low)
                continue
            if high - low < 0.3 * widest or high <= low:
                continue
            counts[:] = 0
            for v in members:
                rank[v] = int((x[v, i] - low) / (high - low) * (_BINS - 1))
            for v in members:
                own = far = near = rank[v]
                for slot in range(offsets[v], offsets[v + 1]):
                    other = rank[links[slot]]
                    far = max(far, other)
                    if other >= 0:
                        near = min(near, other)
                counts[0, own] += 1
                # v is left of every cut k with own < k ≤ far and has a neighbour beyond it; likewise right.
                counts[1, own + 1] += 1
                counts[1, far + 1] -= 1
                counts[2, near + 1] += 1
                counts[2, own + 1] -= 1
            below = lefts = rights = 0
            for k in range(1, _BINS):
                below += counts[0, k - 1]
                lefts += counts[1, k]
                rights += counts[2, k]
                if below in (0, m):
                    continue
                off = abs(2.0 * below / m - 1.0)
                cost = (min(lefts, rights) + 0.02 * m * off * off) * (1.0 + 2.0 * off * off)
                if off > 0.6:
                    cost += m
                if cost < best:
                    best, axis, place = cost, i, k
    return axis, place


@kernel
def _mark_separator(members: Ints, place: int, offsets: Ints, links: Ints, rank: Ints, degree: Ints) -> None:
    """Choose vertices that cover every link across the cut, most links first, and set their degree to −1.

    `rank` (n,) is the bin of each member and −1 elsewhere; the cut runs below bin `place`. `degree` (n,) is
    filled for members: the links across the cut not yet covered.
    """
    for v in members:
        degree[v] = 0
        for slot in range(offsets[v], offsets[v + 1]):
            other = rank[links[slot]]
            if other >= 0 and (other < place) != (rank[v] < place):
                degree[v] += 1
    while True:
        most, chosen = 0, -1
        for v in members:
            if degree[v] > most:
                most, chosen = degree[v], v
        if chosen < 0:
            return
        degree[chosen] = -1
        for slot in range(offsets[chosen], offsets[chosen + 1]):
            w = links[slot]
            if rank[w] >= 0 and degree[w] > 0 and (rank[w] < place) != (rank[chosen] < place):
                degree[w] -= 1


@kernel
def _cut_sets(x: Floats, offsets: Ints, links: Ints, leaf: int, order: Ints, sets: Ints) -> int:
    """Cut sets until none is larger than `leaf`; returns how many rows of `sets` were filled.

    `order` (n,) holds all vertices and is sorted so that every set is a stretch of it: its lower half, its
    upper half, and last what it keeps, the separator. Parents come before their halves in `sets`.
    """
    n = x.shape[0]
    rank, degree = np.full(n, -1), np.zeros(n, np.int64)  # scratch of `_best_cut` and `_mark_separator`
    counts = np.zeros((3, _BINS + 2), np.int64)
    spare = np.empty(n, np.int64)  # the upper half from the front, the separator from the back
    sets[0, BEGIN], sets[0, END], sets[0, ABOVE], sets[0, LEVEL] = 0, x.shape[0], -1, 0
    made, f = 1, -1
    while f + 1 < made:
        f += 1
        low, high = sets[f, BEGIN], sets[f, END]
        sets[f, KEPT], sets[f, LOWER], sets[f, UPPER] = low, -1, -1
        if high - low <= leaf or made + 2 > sets.shape[0]:
            continue
        members = order[low:high]
        axis, place = _best_cut(x, members, offsets, links, rank, counts)
        if axis >= 0:
            least = most = x[members[0], axis]
            for v in members:
                least = min(least, x[v, axis])
                most = max(most, x[v, axis])
            for v in members:
                rank[v] = int((x[v, axis] - least) / (most - least) * (_BINS - 1))
        if axis >= 0:
            _mark_separator(members, place, offsets, links, rank, degree)
        a = b = c = 0
        # a, b, c count the lower half (kept in place), the upper half and the separator (both to `spare`).
        for slot in range(low, high):
            v = order[slot]
            cut = axis >= 0 and degree[v] < 0
            if cut:
                c += 1
                spare[spare.shape[0] - c] = v
            elif axis < 0 or rank[v] < place:
                order[low + a] = v
                a += 1
            else:
                spare[b] = v
                b += 1
        for k in range(b):
            order[low + a + k] = spare[k]
        for k in range(c):
            order[low + a + b + k] = spare[spare.shape[0] - 1 - k]
        for slot in range(low, high):
            rank[order[slot]] = -1
        if a == 0 or b == 0:
            continue
        sets[f, KEPT] = low + a + b
        for side in range(2):
            sets[made, BEGIN] = low + side * a
            sets[made, END] = low + a + side * b
            sets[made, ABOVE], sets[made, LEVEL] = f, sets[f, LEVEL] + 1
            sets[f, LOWER + side] = made
            made += 1
    return made


@kernel
def _number_fronts(sets: Ints, fronts: Ints) -> None:
    """Number the rows of `sets` as fronts in postorder and fill PIVOT, PARENT, LEFT, RIGHT and DEPTH."""
    m = sets.shape[0]
    below = np.ones(m, np.int64)
    number = np.empty(m, np.int64)
    for s in range(m - 1, 0, -1):  # children come after their parents in `sets`
        below[sets[s, ABOVE]] += below[s]
    for s in range(m):
        if s == 0:
            number[s] = m - 1
        f = number[s]
        left, right = sets[s, LOWER], sets[s, UPPER]
        fronts[f, PIVOT], fronts[f, DEPTH] = sets[s, KEPT], sets[s, LEVEL]
        fronts[f, PARENT] = number[sets[s, ABOVE]] if s else -1
        fronts[f, LEFT] = fronts[f, RIGHT] = -1
        if left >= 0:
            number[right] = f - 1
            number[left] = f - 1 - below[right]
            fronts[f, LEFT], fronts[f, RIGHT] = number[left], number[right]


@kernel
def _raise_vertices(offsets: Ints, links: Ints, fronts: Ints, front_of: Ints) -> None:
    """Move vertices up until each link joins a front with itself or one above it.

    `front_of` (n,) is by vertex here, not by position, and changes in place.
    """
    for v in range(front_of.shape[0]):
        for slot in range(offsets[v], offsets[v + 1]):
            a, b = front_of[v], front_of[links[slot]]
            while a != b:  # in postorder the lower number is never the ancestor
                if a < b:
                    a = fronts[a, PARENT]
                else:
                    b = fronts[b, PARENT]
            if a != front_of[v] and a != front_of[links[slot]]:
                front_of[v] = a


@kernel
def _fill_rims(
    order: Ints,
    position: Ints,
    offsets: Ints,
    links: Ints,
    fronts: Ints,
    front_of: Ints,
    rim: Ints,
    seen: Ints,
    room: Ints,
) -> float:
    """Find what each front touches beyond its pivots; returns the work, or −1 where `rim` is too short.

    Fills `front_of` (n,), `rim`, the columns RIM, PANEL and UPDATE of `fronts`, and `room` (3,): the numbers
    that the two stacks of updates need, and `EliminationTree.split`. A front's rim is that of its children
    and its pivots' neighbours, without its own pivots (the symbolic factorisation of A. George and J. W. H.
    Liu, Computer Solution of Large Sparse Positive Definite Systems, 1981, ch. 5). Scratch: `seen` (n,), −1
    on entry, the front that last met each position.
    """
    m = fronts.shape[0] - 1
    room[:] = 0
    room[2] = fronts[m - 1, LEFT] + 1
    top = np.zeros(2, np.int64)
    work = 0.0
    for f in range(m):
        start, end, first = fronts[f, PIVOT], fronts[f + 1, PIVOT], fronts[f, RIM]
        used = first
        for side in (LEFT, RIGHT):
            child = fronts[f, side]
            if child < 0:
                continue
            size = fronts[child + 1, RIM] - fronts[child, RIM]
            top[fronts[child, DEPTH] % 2] -= 9 * size * size
            for slot in range(fronts[child, RIM], fronts[child + 1, RIM]):
                q = rim[slot]
                if q >= end and seen[q] != f:
                    if used == rim.shape[0]:
                        return -1.0
                    seen[q] = f
                    rim[used] = q
                    used += 1
        for p in range(start, end):
            front_of[p] = f
            for link in range(offsets[order[p]], offsets[order[p] + 1]):
                q = position[links[link]]
                if q >= end and seen[q] != f:
                    if used == rim.shape[0]:
                        return -1.0
                    seen[q] = f
                    rim[used] = q
                    used += 1
        for slot in range(first + 1, used):  # nearly in order already
            q, at = rim[slot], slot
            while at > first and rim[at - 1] > q:
                rim[at] = rim[at - 1]
                at -= 1
            rim[at] = q
        p, b = end - start, used - first
        fronts[f + 1, RIM] = used
        fronts[f + 1, PANEL] = fronts[f, PANEL] + 9 * (p + b) * p
        work += 27.0 * (p * p * p / 6.0 + p * p * b / 2.0 + p * b * b / 2.0)
        side = fronts[f, DEPTH] % 2
        fronts[f, UPDATE] = top[side]
        top[side] += 9 * b * b
        room[side] = max(room[side], top[side])
        if f + 1 == room[2]:  # the second half runs beside the first, so it needs room of its own
            top[0], top[1] = room[0], room[1]
    return work
