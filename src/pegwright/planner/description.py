"""The shortest way to say a run of moves, using repeats that shift from round to round.

Two moves are alike if one is the other shifted by some rows and pegs. A description is a list of moves and
repeats, each repeat with a constant shift; its length is the number of moves and repeats together, which is
how many phrases a teacher says. The shortest is found exactly by dynamic programming over intervals, equal
stretches only once (compare grammar-based compression: Charikar et al., IEEE Trans. Inf. Theory 51, 2005;
here with repeats in a row only, where the shortest can be found).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import msgspec

from pegwright.pattern import (
    HOLDER_FIELDS,
    Hook,
    Lift,
    Move,
    PatternStep,
    Repeat,
    is_address,
    named_holders,
    parse_address,
)

__all__ = ["Description", "SpokenMove", "describe", "move_token"]

_LONGEST_ROUND = 150
"""Moves in one round of a repeat; longer rounds are not looked for."""
_FEW = 250
"""Up to so many moves every number of rounds is tried; above, only the most and a few less."""


class SpokenMove(NamedTuple):
    """A move, and the number of the loop that it takes, if any, counted from the top (negative)."""

    move: Move
    from_top: int | None = None


class Description(NamedTuple):
    """Steps that say a run of moves, and their number of phrases: moves and repeats."""

    steps: tuple[PatternStep, ...]
    phrases: int


def describe(moves: Sequence[SpokenMove]) -> Description:
    """Return the shortest description of the moves; loops are counted from below or from the top."""
    return min((_Describer(said).run() for said in _numberings(moves)), key=lambda way: way.phrases)


def _numberings(moves: Sequence[SpokenMove]) -> list[list[Move]]:
    """Return the moves with loops counted consistently if possible: all from below, all from the top."""
    below = [spoken.move for spoken in moves]
    top = [_count_from_top(spoken) for spoken in moves]
    groups: dict[object, list[int]] = {}
    for at, move in enumerate(below):
        if isinstance(move, Hook | Lift):
            groups.setdefault(move_token(msgspec.structs.replace(move, loop=1))[0], []).append(at)
    mixed = list(below)
    for members in groups.values():
        if len({_loop(below[at]) for at in members}) > len({_loop(top[at]) for at in members}):
            for at in members:
                mixed[at] = top[at]
    return [mixed, below, top]


def _loop(move: Move) -> int:
    return move.loop if isinstance(move, Hook | Lift) else 0


def _count_from_top(spoken: SpokenMove) -> Move:
    move = spoken.move
    if spoken.from_top is None or not isinstance(move, Hook | Lift):
        return move
    return msgspec.structs.replace(move, loop=spoken.from_top)


Anchor = tuple[int, int]


def move_token(move: Move) -> tuple[object, Anchor | None]:
    """Return a move without its place, and the row and peg of that place."""
    pegs = [parse_address(name) for name in named_holders(move) if is_address(name)]
    anchor = (pegs[0].row, pegs[0].number) if pegs else None
    relative = tuple((peg.row - pegs[0].row, peg.number - pegs[0].number) for peg in pegs)
    other = tuple(name for name in named_holders(move) if not is_address(name))
    fields = {
        name: value for name, value in msgspec.structs.asdict(move).items() if name not in HOLDER_FIELDS
    }
    return (type(move).__name__, relative, other, tuple(sorted(fields.items(), key=str))), anchor


class _Stretch(NamedTuple):
    """A stretch of a description: one move (`rounds` 1), or a round of `length` moves said `rounds` times."""

    at: int
    length: int
    rounds: int


class _Describer:
    """The moves as numbers (`kinds`) at places (`anchors`), and what is known about their stretches."""

    def __init__(self, moves: Sequence[Move]) -> None:
        self.moves = list(moves)
        numbers: dict[object, int] = {}
        tokens = [move_token(move) for move in self.moves]
        self.kinds = [numbers.setdefault(token, len(numbers)) for token, _ in tokens]
        here = next((anchor for _, anchor in tokens if anchor), (0, 1))
        self.anchors: list[Anchor] = []
        for _, anchor in tokens:
            here = anchor or here
            self.anchors.append(here)
        self.runs: list[list[int]] = [[]]
        count = len(self.moves)
        for length in range(1, min(count // 2, _LONGEST_ROUND) + 1):
            self.runs.append(self._runs_of(length))
        self.known: dict[tuple[tuple[int, int, int], ...], tuple[int, tuple[_Stretch, ...]]] = {}

    def run(self) -> Description:
        """Return the shortest description."""
        phrases, parts = self._shortest(0, len(self.moves))
        return Description(self._say(0, parts), phrases)

    def _runs_of(self, length: int) -> list[int]:
        """Return for each move how many moves from it on are like the one `length` later."""
        kinds, anchors = self.kinds, self.anchors
        last = len(kinds) - length
        runs = [0] * (last + 1)
        shift: Anchor = (0, 0)
        for at in range(last - 1, -1, -1):
            if kinds[at] == kinds[at + length]:
                (row, peg), (row_on, peg_on) = anchors[at], anchors[at + length]
                moved = (row_on - row, peg_on - peg)
                runs[at] = runs[at + 1] + 1 if runs[at + 1] and moved == shift else 1
                shift = moved
        return runs

    def _shortest(self, begin: int, end: int) -> tuple[int, tuple[_Stretch, ...]]:
        row, peg = self.anchors[begin] if begin < end else (0, 0)
        key = tuple(
            (self.kinds[at], self.anchors[at][0] - row, self.anchors[at][1] - peg) for at in range(begin, end)
        )
        if key in self.known:
            return self.known[key]
        count = end - begin
        cost: list[int] = [0] + [count + 1] * count
        last: list[_Stretch | None] = [None] * (count + 1)
        for at in range(count):
            if cost[at] + 1 < cost[at + 1]:
                cost[at + 1], last[at + 1] = cost[at] + 1, _Stretch(at, 1, 1)
            for length in range(1, min((count - at) // 2, len(self.runs) - 1) + 1):
                most = min(1 + self.runs[length][begin + at] // length, (count - at) // length)
                if most < 2 or not self._is_primitive(begin + at, length):
                    continue
                once = cost[at] + 1 + self._shortest(begin + at, begin + at + length)[0]
                for rounds in range(most, 1, -1) if count <= _FEW else {most, most - 1, 2} - {1}:
                    to = at + rounds * length
                    if once < cost[to]:
                        cost[to], last[to] = once, _Stretch(at, length, rounds)
        parts: list[_Stretch] = []
        to = count
        while to:
            part = last[to]
            assert part is not None
            parts.append(part)
            to = part.at
        self.known[key] = (cost[count], tuple(parts[::-1]))
        return self.known[key]

    def _is_primitive(self, at: int, length: int) -> bool:
        """Return whether a round is not itself a repeat of a shorter one."""
        return not any(
            length % shorter == 0 and self.runs[shorter][at] >= 2 * length - shorter
            for shorter in range(1, length // 2 + 1)
        )

    def _say(self, begin: int, parts: Sequence[_Stretch]) -> tuple[PatternStep, ...]:
        steps: list[PatternStep] = []
        for part in parts:
            at = begin + part.at
            if part.rounds == 1:
                steps.append(self.moves[at])
                continue
            (row, peg), (row_on, peg_on) = self.anchors[at], self.anchors[at + part.length]
            inner = self._say(at, self._shortest(at, at + part.length)[1])
            steps.append(Repeat(times=part.rounds, steps=inner, rows=row_on - row, pegs=peg_on - peg))
        return tuple(steps)
