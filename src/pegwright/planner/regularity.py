"""Find what breaks the regularity of a run of moves, and the single changes that restore it.

Most of a piece is the same round, shifted along. A move that differs from the round before or after is the
first place to look for a mistake.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from pegwright.pattern import Address, Move, is_address, named_holders, with_pegs
from pegwright.planner.description import Anchor, move_token

__all__ = ["Irregularity", "find_irregularities"]

_LONGEST_ROUND = 24


class Irregularity(NamedTuple):
    """A change that makes the moves more regular: `gain` more moves are like those a round before.

    `kind` is `change`, `put-in`, `take-out` or `swap`; `move` replaces the move `at`, or goes before it.
    """

    gain: int
    kind: str
    at: int
    move: Move | None


def find_irregularities(moves: Sequence[Move]) -> list[Irregularity]:
    """Return the changes that make the moves more regular, greatest gain first."""
    found: dict[tuple[str, int, Move | None], int] = {}
    course = _Course(moves)
    for length in range(1, min(_LONGEST_ROUND, len(moves) // 2) + 1):
        before = course.alike(course.items, length)
        total = sum(before)
        if 2 * total < length:  # next to nothing of that round is ever repeated
            continue
        for kind, at, move, items in course.changes(length):
            low, high = max(0, at - length), min(len(items), at + 2 * length + 2)
            gain = sum(course.alike(items[low : high + length], length)) - sum(
                before[low : min(len(before), high + (len(course.items) - len(items)))]
            )
            key = (kind, at, move)
            if gain > found.get(key, 0):
                found[key] = gain
    ordered = [Irregularity(gain, *key) for key, gain in found.items()]
    return sorted(ordered, key=lambda one: (-one.gain, one.at, one.kind))


Item = tuple[object, Anchor]


class _Course:
    """The moves, each split into what it is and where it is done."""

    def __init__(self, moves: Sequence[Move]) -> None:
        self.moves = list(moves)
        self.items: list[Item] = []
        here: Anchor = (0, 1)
        for move in moves:
            token, anchor = move_token(move)
            here = anchor or here
            self.items.append((token, here))

    def alike(self, items: Sequence[Item], length: int) -> list[bool]:
        """Return for each move whether it is like the one a round later, shifted like its predecessor."""
        same = [
            items[at][0] == items[at + length][0]
            and (
                at == 0
                or _shift_between(items[at], items[at + length])
                == _shift_between(items[at - 1], items[at + length - 1])
            )
            for at in range(len(items) - length)
        ]
        return same + [False] * min(length, len(items))

    def changes(self, length: int) -> Iterator[tuple[str, int, Move | None, list[Item]]]:
        """Yield changes where a round is broken, each with the resulting moves."""
        items, count = self.items, len(self.items)
        alike = self.alike(items, length)
        broken = {
            at + add for at, same in enumerate(alike) if not same for add in (0, length) if at + add <= count
        }
        for at in sorted(broken):
            for move in self._expected_moves(at, length):
                item = (move_token(move)[0], move_token(move)[1] or (0, 1))
                if at < count and item != items[at]:
                    yield "change", at, move, [*items[:at], item, *items[at + 1 :]]
                yield "put-in", at, move, [*items[:at], item, *items[at:]]
            if at < count:
                yield "take-out", at, None, [*items[:at], *items[at + 1 :]]
            if at + 1 < count:
                yield "swap", at, None, [*items[:at], items[at + 1], items[at], *items[at + 2 :]]

    def _expected_moves(self, at: int, length: int) -> Iterator[Move]:
        """Yield the moves expected there from the round before and the round after."""
        items, count = self.items, len(self.items)
        for sign in (-1, 1):
            for nearest in (at + sign * length, at + sign * length - (sign > 0)):
                near, far = nearest, nearest + sign * length
                if not (0 <= near < count and 0 <= far < count):
                    continue
                if items[near][0] == items[far][0]:
                    on = _shift_between(items[far], items[near])
                    moved = _move_on(self.moves[near], on)
                    if moved is not None:
                        yield moved
        for near, far in ((at - length, at + length), (at - length, at + length - 1)):  # one between two
            if near >= 0 and far < count and items[near][0] == items[far][0]:
                row, peg = _shift_between(items[near], items[far])
                moved = None if row % 2 or peg % 2 else _move_on(self.moves[near], (row // 2, peg // 2))
                if moved is not None:
                    yield moved


def _shift_between(one: Item, other: Item) -> Anchor:
    return other[1][0] - one[1][0], other[1][1] - one[1][1]


def _move_on(move: Move, by: Anchor) -> Move | None:
    moved = with_pegs(move, lambda peg: Address(peg.row + by[0], peg.number + by[1]))
    return moved if moved is not None and all(map(_may_stand, named_holders(moved))) else None


def _may_stand(holder: str) -> bool:
    return is_address(holder) or not holder[:1].isupper()
