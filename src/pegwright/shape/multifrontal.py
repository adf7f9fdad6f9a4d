"""Factor and solve the Newton matrix front by front (I. S. Duff and J. K. Reid, ACM Trans. Math. Softw. 9
(1983) 302).

The stiffness never exists as one sparse matrix: each band's blocks and each contact's are added straight
into the front that eliminates their first vertex. A front holds its pivots' columns (kept as the factor)
and the update it leaves to its parent, both row by row in flat arrays. The dense kernel works in tiles of
three rows by three columns, the natural block of points in space, whose nine sums stay in registers. Two
threads take the two halves below the root. `docs/shape.md` holds the measurements against other ways.
"""

from __future__ import annotations

import math
from concurrent.futures import ThreadPoolExecutor
from typing import NamedTuple

import numpy as np

from pegwright.shape.elements import Elements
from pegwright.shape.jit import dense_kernel, kernel
from pegwright.shape.nested_dissection import DEPTH, LEFT, PANEL, PIVOT, RIGHT, RIM, UPDATE, EliminationTree
from pegwright.shape.rods import Flags, Floats, Ints, Rods

__all__ = ["DONE", "INDEFINITE", "UNFIT", "CholeskyFactor", "factorise", "solve_factored"]

DONE, UNFIT, INDEFINITE = range(3)
_WORTH_THREADS = 2e6  # multiplications
_BLOCK, _DEEP = 48, 192  # rows and columns of a panel that stay in the nearest cache


class FrontMemory(NamedTuple):
    """The memory of a factorisation, row by row; `EliminationTree.fronts` holds the offsets.

    A front's panel holds its pivots' columns of the factor. Its update, what it leaves to its parent, lives
    in `even` or `odd` by the front's depth, so that parent and child never share a stack.
    """

    panels: Floats
    even: Floats
    odd: Floats


class CholeskyFactor:
    """An elimination tree with memory for its factor; reuses the memory of `spare` if it is large enough.

    Fresh memory is paged in by the system, which costs a tenth of a factorisation.
    """

    def __init__(self, tree: EliminationTree, spare: CholeskyFactor | None = None) -> None:
        self.tree = tree
        needed = (int(tree.fronts[-1, PANEL]), tree.even, tree.odd)
        had: tuple[Floats, ...] = spare.memory if spare else (np.empty(0),) * 3
        self.memory: FrontMemory = FrontMemory._make(
            old if len(old) >= n else np.empty(5 * n // 4) for old, n in zip(had, needed, strict=True)
        )


def factorise(
    into: CholeskyFactor,
    rods: Rods,
    blocks: Floats,
    elements: Elements,
    count: int,
    workers: ThreadPoolExecutor | None = None,
) -> int:
    """Factor the stiffness made of `blocks` (3, n, 3, 3; see `elastic`) and the first `count` elements.

    Returns DONE; UNFIT if an element joins vertices that the tree does not; or INDEFINITE.
    """
    tree = into.tree
    fronts = len(tree.fronts) - 1
    offsets, listed = np.zeros(fronts + 1, np.int64), np.empty(count, np.int64)
    if not _sort_elements(rods.fixed, tree, elements.corners, count, offsets, listed):
        return UNFIT

    def factorise_part(first: int, last: int) -> bool:
        place = np.empty(len(tree.order), np.int64)
        return bool(
            _factorise_fronts(rods, tree, blocks, elements, offsets, listed, into.memory, first, last, place)
        )

    if workers is None or tree.split == 0 or tree.work < _WORTH_THREADS:
        return DONE if factorise_part(0, fronts) else INDEFINITE
    other = workers.submit(factorise_part, tree.split, fronts - 1)
    halves = factorise_part(0, tree.split) & other.result()
    return DONE if halves and factorise_part(fronts - 1, fronts) else INDEFINITE


def solve_factored(factored: CholeskyFactor, right: Floats) -> Floats:
    """Return the solution (n, 3) for `right` (n, 3)."""
    tree = factored.tree
    y = np.ascontiguousarray(right[tree.order]).reshape(-1)
    _substitute(tree.fronts, tree.rim, factored.memory.panels, y)
    out = np.empty_like(right)
    out[tree.order] = y.reshape(-1, 3)
    return out


@kernel
def _rim_holds(rim: Ints, low: int, end: int, position: int) -> bool:
    """Return whether an ascending stretch of `rim` contains a position."""
    high = end
    while low < high:
        middle = (low + high) // 2
        if rim[middle] < position:
            low = middle + 1
        else:
            high = middle
    return bool(low < end and rim[low] == position)


@kernel
def _sort_elements(
    fixed: Flags, tree: EliminationTree, corners: Ints, count: int, offsets: Ints, listed: Ints
) -> bool:
    """List the first `count` elements by the front that takes them: the one that eliminates a vertex first.

    Front f takes `listed` (count,) from `offsets` (fronts + 1,) [f] to [f + 1]; `offsets` must come as
    zeros. An element whose vertices are all `fixed` (n,) goes to none. Returns False where an element has a
    vertex that its front does not touch.
    """
    position, front_of, fronts, rim = tree.position, tree.front_of, tree.fronts, tree.rim
    n = position.shape[0]
    for sweep in range(2):  # first count, then fill
        for k in range(count):
            least = n
            for c in range(4):
                v = corners[k, c]
                if not fixed[v]:
                    least = min(least, position[v])
            if least == n:
                continue
            f = front_of[least]
            if sweep:
                listed[offsets[f]] = k
                offsets[f] += 1
                continue
            offsets[f] += 1
            for c in range(4):
                q = position[corners[k, c]]
                if fixed[corners[k, c]] or q < fronts[f + 1, PIVOT]:
                    continue
                if not _rim_holds(rim, fronts[f, RIM], fronts[f + 1, RIM], q):
                    return False
        carried = 0
        for front in range(offsets.shape[0]):
            mine = offsets[front]
            offsets[front] = carried
            carried = carried + mine if sweep == 0 else mine
    return True


@dense_kernel
def _subtract_products(
    rows: Floats, wide: int, first: int, last: int, j0: int, j1: int, k0: int, k1: int, out: Floats, at: int,
    out_wide: int,
) -> None:  # fmt: skip
    """Subtract the products of rows first ≤ i < last and rows j0 ≤ j < j1, j ≤ i, over columns k0 to k1, from
    `out` (row i, column j after `at`), in tiles of 3 × 3."""
    k = k1 - k0
    for i in range(first, last, 3):
        a = i * wide + k0
        # Slices, so that the compiler knows the indices below are not negative and can use wide registers.
        ra, rb, rc = rows[a : a + k], rows[a + wide : a + wide + k], rows[a + 2 * wide : a + 2 * wide + k]
        for j in range(j0, min(j1, i + 3), 3):
            s00 = s01 = s02 = s10 = s11 = s12 = s20 = s21 = s22 = 0.0
            b = j * wide + k0
            rd, re, rf = rows[b : b + k], rows[b + wide : b + wide + k], rows[b + 2 * wide : b + 2 * wide + k]
            for m in range(k):
                a0, a1, a2 = ra[m], rb[m], rc[m]
                b0, b1, b2 = rd[m], re[m], rf[m]
                s00 += a0 * b0
                s01 += a0 * b1
                s02 += a0 * b2
                s10 += a1 * b0
                s11 += a1 * b1
                s12 += a1 * b2
                s20 += a2 * b0
                s21 += a2 * b1
                s22 += a2 * b2
            tile = at + i * out_wide + j
            out[tile] -= s00
            out[tile + 1] -= s01
            out[tile + 2] -= s02
            tile += out_wide
            out[tile] -= s10
            out[tile + 1] -= s11
            out[tile + 2] -= s12
            tile += out_wide
            out[tile] -= s20
            out[tile + 1] -= s21
            out[tile + 2] -= s22


@kernel
def _factorise_panel(panels: Floats, at: int, wide: int, rows: int, update: Floats, up: int) -> bool:
    """Factor a panel (rows × wide at `at`) in place, then subtract its product from the update at `up`."""
    panel = panels[at : at + rows * wide]
    own = at - at  # numba would compile `_subtract_products` afresh for a number
    for column in range(0, wide, _BLOCK):
        end = min(column + _BLOCK, wide)
        for k in range(0, column, _DEEP):
            _subtract_products(
                panel, wide, column, rows, column, end, k, min(k + _DEEP, column), panel, own, wide
            )
        for j in range(column, end, 3):
            _subtract_products(panel, wide, j, rows, j, j + 3, column, j, panel, own, wide)
            d = j * wide + j
            p00 = panel[d]
            if not p00 > 0.0:
                return False
            l00 = math.sqrt(p00)
            l10, l20 = panel[d + wide] / l00, panel[d + 2 * wide] / l00
            p11 = panel[d + wide + 1] - l10 * l10
            if not p11 > 0.0:
                return False
            l11 = math.sqrt(p11)
            l21 = (panel[d + 2 * wide + 1] - l20 * l10) / l11
            p22 = panel[d + 2 * wide + 2] - l20 * l20 - l21 * l21
            if not p22 > 0.0:
                return False
            l22 = math.sqrt(p22)
            panel[d], panel[d + 1], panel[d + 2] = l00, 0.0, 0.0
            panel[d + wide], panel[d + wide + 1], panel[d + wide + 2] = l10, l11, 0.0
            panel[d + 2 * wide], panel[d + 2 * wide + 1], panel[d + 2 * wide + 2] = l20, l21, l22
            r00, r11, r22 = 1.0 / l00, 1.0 / l11, 1.0 / l22
            for i in range(j + 3, rows):
                e = i * wide + j
                y0 = panel[e] * r00
                y1 = (panel[e + 1] - l10 * y0) * r11
                panel[e], panel[e + 1] = y0, y1
                panel[e + 2] = (panel[e + 2] - l20 * y0 - l21 * y1) * r22
    b = rows - wide
    low = panel[wide * wide :]
    for j in range(0, b, _BLOCK):
        for k in range(0, wide, _DEEP):
            _subtract_products(low, wide, j, b, j, min(j + _BLOCK, b), k, min(k + _DEEP, wide), update, up, b)
    return True


@kernel
def _tile_place(row: int, column: int, pivots: int, at: int, up: int, border: int) -> tuple[bool, int, int]:
    """Return where the tile of local vertices row ≥ column is: panel or update, offset, row length."""
    if column < pivots:
        return True, at + 9 * row * pivots + 3 * column, 3 * pivots
    return False, up + 9 * (row - pivots) * border + 3 * (column - pivots), 3 * border


@kernel
def _factorise_fronts(
    rods: Rods,
    tree: EliminationTree,
    blocks: Floats,
    elements: Elements,
    offsets: Ints,
    listed: Ints,
    memory: FrontMemory,
    first: int,
    last: int,
    place: Ints,
) -> bool:
    """Factor fronts first ≤ f < last in postorder; False if a pivot is not positive.

    Each front is zeroed, gets the band blocks and elements of its pivots and its children's updates (Duff
    and Reid, §2), and is factored. `offsets` and `listed` are those of `_sort_elements`. Scratch: `place`
    (n,), the row of each position in the current front.
    """
    # Unpacked once: every access in the loop would cost compile time.
    fixed, after, before = rods.fixed, rods.next, rods.prev
    order, position, fronts, rim = tree.order, tree.position, tree.fronts, tree.rim
    corners, stiffness = elements.corners, elements.stiffness
    panels, even, odd = memory.panels, memory.even, memory.odd
    for f in range(first, last):
        start, end = fronts[f, PIVOT], fronts[f + 1, PIVOT]
        p, b = end - start, fronts[f + 1, RIM] - fronts[f, RIM]
        at, up = fronts[f, PANEL], fronts[f, UPDATE]
        update = even if fronts[f, DEPTH] % 2 == 0 else odd
        for i in range(at, fronts[f + 1, PANEL]):
            panels[i] = 0.0
        for r in range(b):  # the lower half, tile by tile
            for i in range(up + 9 * r * b, up + 9 * (r + 1) * b, 3 * b):
                for j in range(i, i + 3 * r + 3):
                    update[j] = 0.0
        for q in range(start, end):
            place[q] = q - start
        for slot in range(b):
            q = rim[fronts[f, RIM] + slot]
            place[q] = p + slot
        for q in range(start, end):
            v = order[q]
            spot = at + 9 * (q - start) * p + 3 * (q - start)
            for i in range(3):
                for j in range(3):
                    panels[spot + 3 * i * p + j] += blocks[0, v, i, j]
            if fixed[v]:
                continue
            # A block joins two vertices and goes to the front of the earlier: column v, row w.
            for kind in range(4):
                hop = 1 + kind % 2
                w = after[v] if kind < 2 else before[v]
                if hop == 2 and w >= 0:
                    w = after[w] if kind < 2 else before[w]
                if w < 0 or fixed[w] or position[w] <= q:
                    continue
                spot = at + 9 * place[position[w]] * p + 3 * (q - start)
                for i in range(3):
                    for j in range(3):
                        # Rows of a block belong to the vertex that comes first along the band.
                        value = blocks[hop, v, j, i] if kind < 2 else blocks[hop, w, i, j]
                        panels[spot + 3 * i * p + j] += value
        for slot in range(offsets[f], offsets[f + 1]):
            k = listed[slot]
            for c in range(4):
                for d in range(4):
                    if fixed[corners[k, c]] or fixed[corners[k, d]]:
                        continue
                    row, column = place[position[corners[k, c]]], place[position[corners[k, d]]]
                    if row < column:
                        continue
                    inside, spot, wide = _tile_place(row, column, p, at, up, b)
                    target = panels if inside else update
                    for i in range(3):
                        for j in range(3):
                            target[spot + i * wide + j] += stiffness[k, c, d, i, j]
        for side in (LEFT, RIGHT):
            child = fronts[f, side]
            if child < 0:
                continue
            given = even if fronts[child, DEPTH] % 2 == 0 else odd
            own, size = fronts[child, RIM], fronts[child + 1, RIM] - fronts[child, RIM]
            for r in range(size):
                row = place[rim[own + r]]
                for c in range(r + 1):
                    inside, spot, wide = _tile_place(row, place[rim[own + c]], p, at, up, b)
                    target = panels if inside else update
                    source = fronts[child, UPDATE] + 9 * r * size + 3 * c
                    for i in range(3):
                        for j in range(3):
                            target[spot + i * wide + j] += given[source + 3 * i * size + j]
        if not _factorise_panel(panels, at, 3 * p, 3 * (p + b), update, up):
            return False
    return True


@dense_kernel
def _substitute(fronts: Ints, rim: Ints, panels: Floats, y: Floats) -> None:
    """Substitute forward and back in place; y (3n,) is in the order of elimination."""
    for f in range(fronts.shape[0] - 1):
        start, p = 3 * fronts[f, PIVOT], 3 * (fronts[f + 1, PIVOT] - fronts[f, PIVOT])
        own = y[start : start + p]
        for i in range(p + 3 * (fronts[f + 1, RIM] - fronts[f, RIM])):
            row = panels[fronts[f, PANEL] + i * p : fronts[f, PANEL] + i * p + p]
            total = 0.0
            for j in range(min(i, p)):
                total += row[j] * own[j]
            if i < p:
                own[i] = (own[i] - total) / row[i]
            else:
                y[3 * rim[fronts[f, RIM] + (i - p) // 3] + (i - p) % 3] -= total
    for f in range(fronts.shape[0] - 2, -1, -1):
        start, p = 3 * fronts[f, PIVOT], 3 * (fronts[f + 1, PIVOT] - fronts[f, PIVOT])
        own = y[start : start + p]
        for i in range(p + 3 * (fronts[f + 1, RIM] - fronts[f, RIM]) - 1, -1, -1):
            row = panels[fronts[f, PANEL] + i * p : fronts[f, PANEL] + i * p + p]
            if i < p:
                own[i] /= row[i]
                value = own[i]
            else:
                value = y[3 * rim[fronts[f, RIM] + (i - p) // 3] + (i - p) % 3]
            for j in range(min(i, p)):
                own[j] -= row[j] * value
