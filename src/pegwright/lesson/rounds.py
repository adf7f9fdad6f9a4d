"""What is taught in full and what is only counted: the document's repeats, and other runs that repeat."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from pegwright.loom import Done
from pegwright.pattern import Move
from pegwright.pattern.address import Address, is_address, parse_address

LONGEST_ROUND = 48
FEWEST_ROUNDS = {1: 4, 2: 3, 3: 3, 4: 3}
"""How often a run must come to be counted, by the moves in it; longer ones count from twice on."""


class Again(NamedTuple):
    """Rounds after the first, as indices into the history; `model` are the indices of the first round."""

    model: tuple[int, ...]
    rounds: tuple[tuple[int, ...], ...]


Taught = int | Again


class Shift(NamedTuple):
    """How far a round lies from the one before, in rows and peg numbers."""

    rows: int
    pegs: int


def teach(done: Sequence[Done]) -> list[Taught]:
    """Return what to teach in order: a move by its index, or rounds to be counted."""
    return _lay(done, tuple(range(len(done))), 0)


def _lay(done: Sequence[Done], indices: tuple[int, ...], depth: int) -> list[Taught]:
    out: list[Taught] = []
    plain: list[int] = []
    i = 0
    while i < len(indices):
        rounds = done[indices[i]].doing.rounds
        if len(rounds) <= depth:
            plain.append(indices[i])
            i += 1
            continue
        out += _counted(done, plain)
        plain = []
        path, last, _ = rounds[depth]
        groups: list[list[int]] = [[]]
        while i < len(indices):
            here = done[indices[i]].doing.rounds
            if len(here) <= depth or here[depth][0] != path or here[depth][1] < last:
                break
            if here[depth][1] > last:
                groups.append([])
                last = here[depth][1]
            groups[-1].append(indices[i])
            i += 1
        out += _lay(done, tuple(groups[0]), depth + 1)
        if len(groups) > 1:
            out.append(Again(tuple(groups[0]), tuple(map(tuple, groups[1:]))))
    return out + _counted(done, plain)


def _counted(done: Sequence[Done], indices: list[int]) -> list[Taught]:
    """Find the runs in a plain row of moves that repeat, shifted evenly or changing colours only."""
    out: list[Taught] = []
    i = 0
    while i < len(indices):
        best = (0, 0)
        for size in range(1, min(LONGEST_ROUND, (len(indices) - i) // 2) + 1):
            times = _times(done, indices, i, size)
            if times >= FEWEST_ROUNDS.get(size, 2) and times * size > best[0] * best[1]:
                best = (times, size)
        times, size = best
        if not times:
            out.append(indices[i])
            i += 1
            continue
        groups = [tuple(indices[i + k * size : i + (k + 1) * size]) for k in range(times)]
        out += groups[0]
        out.append(Again(groups[0], tuple(groups[1:])))
        i += times * size
    return out


def _times(done: Sequence[Done], indices: list[int], start: int, size: int) -> int:
    """Count how often the run of that size comes, each time shifted by the same amount."""
    times = 1
    shift: Shift | None = None
    while start + (times + 1) * size <= len(indices):
        a = indices[start + (times - 1) * size : start + times * size]
        b = indices[start + times * size : start + (times + 1) * size]
        found = shift_between([done[k].doing.move for k in a], [done[k].doing.move for k in b])
        if found is None or (shift is not None and found != shift):
            break
        shift = found
        times += 1
    return times


def shift_between(a: Sequence[Move], b: Sequence[Move]) -> Shift | None:
    """Return the one shift that takes every address of the moves `a` to that of `b`; None if there is none.

    Colours may be exchanged for others, the same for the same; everything else must agree.
    """
    shift: Shift | None = None
    colours: dict[str, str] = {}
    if len(a) != len(b):
        return None
    for one, other in zip(a, b, strict=True):
        if type(one) is not type(other):
            return None
        for name in one.__struct_fields__:
            mine, theirs = getattr(one, name), getattr(other, name)
            if name == "colour":
                if colours.setdefault(mine, theirs) != theirs:
                    return None
                continue
            pairs = _addresses(mine, theirs)
            if pairs is None:
                if mine != theirs:
                    return None
                continue
            for p, q in pairs:
                step = Shift(q.row - p.row, q.number - p.number)
                shift = step if shift is None else shift
                if step != shift:
                    return None
    return shift or Shift(0, 0)


def _addresses(mine: object, theirs: object) -> list[tuple[Address, Address]] | None:
    """Pair the addresses of two fields; None where the fields do not hold addresses only."""
    a = mine if isinstance(mine, tuple) else (mine,)
    b = theirs if isinstance(theirs, tuple) else (theirs,)
    if not a or len(a) != len(b):
        return None
    if not all(isinstance(x, str) and is_address(x) for x in (*a, *b)):
        return None
    return [(parse_address(str(x)), parse_address(str(y))) for x, y in zip(a, b, strict=True)]


def pegs_of(move: Move) -> tuple[str, ...]:
    """Return the pegs that a move names, in its order."""
    found: list[str] = []
    for name in ("over", "on", "source", "at", "target"):
        value = getattr(move, name, ())
        found += [v for v in ((value,) if isinstance(value, str) else value) if is_address(v)]
    return tuple(dict.fromkeys(found))
