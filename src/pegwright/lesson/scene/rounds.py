"""What is taught in full and what is only counted: the document's repeats, and other runs that repeat."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import NamedTuple

from pegwright.loom import AppliedMove
from pegwright.pattern import Address, Move, is_address, parse_address

LONGEST_ROUND = 48
FEWEST_ROUNDS = {1: 4, 2: 3, 3: 3, 4: 3}
"""How often a run must come to be counted, by the moves in it; longer ones count from twice on."""
LONGEST_RUN = 12
"""So many chunks at most make up a run that repeats as a whole."""


class CountedRounds(NamedTuple):
    """Rounds after the first, as indices into the history; `model` are the indices of the first round."""

    model: tuple[int, ...]
    rounds: tuple[tuple[int, ...], ...]


Teachable = int | CountedRounds


class Shift(NamedTuple):
    """How far a round lies from the one before, in rows and peg numbers."""

    rows: int
    pegs: int


Chunk = list[Teachable]
"""What belongs together: one move, or moves and the rounds of them that are counted."""


def group_rounds(moves: Sequence[AppliedMove], ring: int = 0) -> list[Teachable]:
    """Return what to teach in order: a move by its index, or rounds to be counted.

    On a round loom `ring` is the number of its pegs: after the last one comes the first.
    """
    return _flatten(_group_repeats(moves, tuple(range(len(moves))), 0, ring))


def _flatten(chunks: Sequence[Chunk]) -> list[Teachable]:
    return [taught for chunk in chunks for taught in chunk]


def _group_repeats(
    moves: Sequence[AppliedMove], indices: tuple[int, ...], depth: int, ring: int
) -> list[Chunk]:
    out: list[Chunk] = []
    plain: list[int] = []
    i = 0
    while i < len(indices):
        rounds = moves[indices[i]].located.rounds
        if len(rounds) <= depth:
            plain.append(indices[i])
            i += 1
            continue
        out += _count_runs(moves, plain, ring)
        plain = []
        path, last, _ = rounds[depth]
        groups: list[list[int]] = [[]]
        while i < len(indices):
            here = moves[indices[i]].located.rounds
            if len(here) <= depth or here[depth][0] != path or here[depth][1] < last:
                break
            if here[depth][1] > last:
                groups.append([])
                last = here[depth][1]
            groups[-1].append(indices[i])
            i += 1
        for _, alike in groupby(groups, lambda group: [moves[k].located.path for k in group]):
            model, *more = map(tuple, alike)  # a round in which a move was refused is another round
            first = _group_repeats(moves, model, depth + 1, ring)
            out += [[*_flatten(first), CountedRounds(model, tuple(more))]] if more else first
    out += _count_runs(moves, plain, ring)
    return _fold_runs(moves, _close_ring(moves, out, ring), ring)


def _count_runs(moves: Sequence[AppliedMove], indices: list[int], ring: int) -> list[Chunk]:
    """Find the runs in a plain row of moves that repeat, shifted evenly or changing colours only."""
    out: list[Chunk] = []
    chunks: list[Chunk] = [[index] for index in indices]
    i = 0
    while i < len(indices):
        best = (0, 0)
        for size in range(1, min(LONGEST_ROUND, (len(indices) - i) // 2) + 1):
            times = _count_repeats(moves, chunks, i, size, ring)
            if times >= FEWEST_ROUNDS.get(size, 2) and times * size > best[0] * best[1]:
                best = (times, size)
        times, size = best
        if not times:
            out.append([indices[i]])
            i += 1
            continue
        groups = [tuple(indices[i + k * size : i + (k + 1) * size]) for k in range(times)]
        out.append([*groups[0], CountedRounds(groups[0], tuple(groups[1:]))])
        i += times * size
    return out


def _close_ring(moves: Sequence[AppliedMove], chunks: list[Chunk], ring: int) -> list[Chunk]:
    """Add to counted rounds the one that closes the ring, where it is written by itself."""
    out: list[Chunk] = []
    for chunk in chunks if ring else ():
        out.append(chunk)
        for before in range(len(out) - 1, max(len(out) - LONGEST_ROUND, 0) - 1, -1):
            last, single = out[before][-1], out[before + 1 :]
            if isinstance(last, CountedRounds):
                more = _move_indices(_flatten(single))
                if len(more) == len(last.model) and all(len(each) == 1 for each in single):
                    step = _shift_of_rounds(moves, last.model, last.rounds[0], ring)
                    if (
                        step not in (None, (0, 0))
                        and _shift_of_rounds(moves, last.rounds[-1], more, ring) == step
                    ):
                        out[before:] = [[*out[before][:-1], CountedRounds(last.model, (*last.rounds, more))]]
                break
    return out if ring else chunks


def _fold_runs(moves: Sequence[AppliedMove], chunks: list[Chunk], ring: int) -> list[Chunk]:
    """Count runs that repeat as a whole and have counted rounds in them."""
    out: list[Chunk] = []
    i = 0
    while i < len(chunks):
        best = (0, 0)
        for size in range(1, min(LONGEST_RUN, (len(chunks) - i) // 2) + 1):
            if any(len(chunk) > 1 for chunk in chunks[i : i + size]):
                times = _count_repeats(moves, chunks, i, size, ring)
                if times > 1 and times * size > best[0] * best[1]:
                    best = (times, size)
        times, size = best
        if not times:
            out.append(chunks[i])
            i += 1
            continue
        groups = [_move_indices(_flatten(chunks[i + k * size : i + (k + 1) * size])) for k in range(times)]
        out.append([*_flatten(chunks[i : i + size]), CountedRounds(groups[0], tuple(groups[1:]))])
        i += times * size
    return out


def _count_repeats(
    moves: Sequence[AppliedMove], chunks: list[Chunk], start: int, size: int, ring: int
) -> int:
    """Count how often the run of that size comes, each time shifted by the same amount."""
    times = 1
    shift: Shift | None = None
    while start + (times + 1) * size <= len(chunks):
        a = chunks[start + (times - 1) * size : start + times * size]
        b = chunks[start + times * size : start + (times + 1) * size]
        if [_chunk_form(chunk) for chunk in a] != [_chunk_form(chunk) for chunk in b]:
            break
        found = _shift_of_rounds(moves, _move_indices(_flatten(a)), _move_indices(_flatten(b)), ring)
        if found is None or (shift is not None and found != shift):
            break
        shift = found
        times += 1
    return times


def _chunk_form(chunk: Chunk) -> tuple[int, ...]:
    """Tell chunks apart that are taught in another way: 0 is a move, else the number of rounds."""
    return tuple(len(taught.rounds) if isinstance(taught, CountedRounds) else 0 for taught in chunk)


def _move_indices(taught: Sequence[Teachable]) -> tuple[int, ...]:
    found: list[int] = []
    for each in taught:
        found += (
            [index for one in each.rounds for index in one] if isinstance(each, CountedRounds) else [each]
        )
    return tuple(found)


def _shift_of_rounds(
    moves: Sequence[AppliedMove], a: Sequence[int], b: Sequence[int], ring: int
) -> Shift | None:
    return shift_between([moves[k].move for k in a], [moves[k].move for k in b], ring)


def shift_between(a: Sequence[Move], b: Sequence[Move], ring: int = 0) -> Shift | None:
    """Return the one shift that takes every address of the moves `a` to that of `b`; None if there is none.

    Colours may be exchanged for others, the same for the same; everything else must agree. On a round loom
    of `ring` pegs it is the shorter way round.
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
            if name == "taught_s":  # a move is taught once; its rounds are the same moves all the same
                continue
            if name == "colour":
                if colours.setdefault(mine, theirs) != theirs:
                    return None
                continue
            pairs = _pair_addresses(mine, theirs)
            if pairs is None:
                if mine != theirs:
                    return None
                continue
            for p, q in pairs:
                on = q.number - p.number
                step = Shift(q.row - p.row, (on + ring // 2) % ring - ring // 2 if ring else on)
                shift = step if shift is None else shift
                if step != shift:
                    return None
    return shift or Shift(0, 0)


def _pair_addresses(mine: object, theirs: object) -> list[tuple[Address, Address]] | None:
    """Pair the addresses of two fields; None where the fields do not hold addresses only."""
    a = mine if isinstance(mine, tuple) else (mine,)
    b = theirs if isinstance(theirs, tuple) else (theirs,)
    if not a or len(a) != len(b):
        return None
    if not all(isinstance(x, str) and is_address(x) for x in (*a, *b)):
        return None
    return [(parse_address(str(x)), parse_address(str(y))) for x, y in zip(a, b, strict=True)]
