"""From closed polylines to a link diagram, and what knot theory (regina) says about it.

regina 7.4 (B. Burton and others, GPL) is an oracle for tests only. `simplify` is a heuristic: a diagram that
falls into two parts is split for certain; one that does not may still be split.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt
import regina

Points = npt.NDArray[np.float64]


def rotation(rng: np.random.Generator) -> npt.NDArray[np.float64]:
    """Return a random rotation of space (QR of a Gaussian matrix)."""
    q, r = np.linalg.qr(rng.normal(size=(3, 3)))
    q = q * np.sign(np.diag(r))
    return q if np.linalg.det(q) > 0 else q[:, ::-1]


def diagram(curves: Sequence[Points], turn: npt.NDArray[np.float64]) -> regina.Link:
    """Project closed polylines (n, 3) along the third axis of `turn` (3, 3). Component i is curve i."""
    if not curves:
        return regina.Link()
    rotated = [c @ turn.T for c in curves]
    owner = np.concatenate([np.full(len(c), i) for i, c in enumerate(rotated)])
    first = np.concatenate([[0], np.cumsum([len(c) for c in rotated])[:-1]])
    a = np.vstack(rotated)
    b = np.vstack([np.roll(c, -1, axis=0) for c in rotated])
    i, j = _overlaps(a, b)
    p, r = a[i], (b - a)[i]
    q, s = a[j], (b - a)[j]
    det = r[:, 0] * s[:, 1] - r[:, 1] * s[:, 0]
    d = q - p
    with np.errstate(divide="ignore", invalid="ignore"):
        t = (d[:, 0] * s[:, 1] - d[:, 1] * s[:, 0]) / det
        u = (d[:, 0] * r[:, 1] - d[:, 1] * r[:, 0]) / det
    size = np.array([len(c) for c in rotated])
    same = owner[i] == owner[j]
    gap = np.abs(i - j)
    adjacent = same & ((gap == 1) | (gap == size[owner[i]] - 1))
    hit = (t > 0) & (t < 1) & (u > 0) & (u < 1) & ~adjacent
    i, j, t, u, det, p, r, q, s = (x[hit] for x in (i, j, t, u, det, p, r, q, s))
    over = p[:, 2] + t * r[:, 2] > q[:, 2] + u * s[:, 2]
    signs = np.where(over, np.sign(det), -np.sign(det)).astype(int)
    n = len(signs)
    segment = np.concatenate([i, j])
    along = np.concatenate([t, u])
    label = np.concatenate([np.where(over, 1, -1), np.where(over, -1, 1)]) * np.tile(np.arange(1, n + 1), 2)
    order = np.lexsort((along, segment))
    strings: list[list[int]] = [[] for _ in rotated]
    for k in order:
        strings[owner[segment[k]]].append(int(label[k]))
    assert len(first) == len(rotated)
    return regina.Link.fromData([int(x) for x in signs], strings)


def _overlaps(a: Points, b: Points) -> tuple[npt.NDArray[np.int64], npt.NDArray[np.int64]]:
    """Pairs i < j of segments whose shadows' boxes overlap."""
    low, high = np.minimum(a, b)[:, :2], np.maximum(a, b)[:, :2]
    order = np.argsort(low[:, 0])
    stop = np.searchsorted(low[order, 0], high[order, 0], side="right")
    count = stop - np.arange(len(order)) - 1
    left = np.repeat(np.arange(len(order)), count)
    right = np.arange(len(left)) - np.repeat(np.cumsum(count) - count, count) + left + 1
    i, j = order[left], order[right]
    near = (low[i, 1] <= high[j, 1]) & (low[j, 1] <= high[i, 1])
    i, j = i[near], j[near]
    return np.minimum(i, j), np.maximum(i, j)


def linking(link: regina.Link) -> npt.NDArray[np.int64]:
    """Return the matrix of linking numbers of the components."""
    n = link.countComponents()
    twice = np.zeros((n, n), int)
    owner = owners(link)
    for c in link.crossings():
        x, y = owner[c.index(), 1], owner[c.index(), 0]
        if x != y:
            twice[x, y] += c.sign()
            twice[y, x] += c.sign()
    return twice // 2


def owners(link: regina.Link) -> dict[tuple[int, int], int]:
    """Say to which component the (crossing, strand) belongs: strand 1 is the upper one."""
    found: dict[tuple[int, int], int] = {}
    for k in range(link.countComponents()):
        start = link.component(k)
        if not start:
            continue
        at = start
        while True:
            found[at.crossing().index(), at.strand()] = k
            at = at.next()
            if at == start:
                break
    return found


def parts(link: regina.Link) -> list[frozenset[int]]:
    """Return the components that hang together in this diagram."""
    n = link.countComponents()
    parent = list(range(n))

    def root(x: int) -> int:
        while parent[x] != x:
            parent[x] = parent[parent[x]]
            x = parent[x]
        return x

    owner = owners(link)
    for c in range(link.size()):
        parent[root(owner[c, 0])] = root(owner[c, 1])
    groups: dict[int, set[int]] = {}
    for k in range(n):
        groups.setdefault(root(k), set()).add(k)
    return [frozenset(g) for g in groups.values()]


def meet(*splits: list[frozenset[int]]) -> list[frozenset[int]]:
    """Return the finest parts that several diagrams of one link prove: a split seen once is a split."""
    found = splits[0]
    for other in splits[1:]:
        found = [a & b for a in found for b in other if a & b]
    return found
