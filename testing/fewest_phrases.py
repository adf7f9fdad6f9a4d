"""The fewest phrases in which a small piece can be worked, by going through all workings: for comparison.

What is gone through: every state that the loom can be brought to by phrases, those of fewest phrases first
(Dijkstra 1959). A phrase is one hook, of one loop or of several neighbours together, through all that lies
above; or a repeat, which costs one phrase besides those of its round: any round of hooks and further repeats,
moved on by any number of rows and pegs, any number of times, the loop of each hook counted from below or from
the top. Bands are hooked once or never, along the band, and no loop through which something passes. States
with the same record of passings are gone on from once. So it is complete for workings of that kind; it knows
no lifts, transfers or second hooks of a band, and neither does the planner for such pieces.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from heapq import heappop, heappush
from itertools import count, product
from typing import NamedTuple

from pegwright.loom import Bight, Drawn, Effect, Event, Laid, State, apply_event, apply_move, board_of
from pegwright.pattern import Pattern, Place, expand
from pegwright.proof import prove
from pegwright.structure import structure_of


class Fewest(NamedTuple):
    """`phrases` is the fewest below the limit, None if there is none; `settled` false if it was given up.

    `states` counts the states of the loom that were reached.
    """

    phrases: int | None
    settled: bool
    states: int


class _TooManyError(Exception):
    """More hooks were made than are worth while."""


class _Hook(NamedTuple):
    source: str
    target: str
    below: int
    above: int
    together: int


class _Node(NamedTuple):
    state: State
    events: tuple[Event, ...]
    moved: frozenset[int]


Shift = tuple[int, int]


def fewest_phrases(pattern: Pattern, limit: int, most_hooks: int = 1_000_000) -> Fewest:
    """Return the fewest phrases of hooks, below `limit`, after which the finish holds every band."""
    search = _Search(pattern, limit, most_hooks)
    try:
        return search.run()
    except _TooManyError:
        return Fewest(None, settled=False, states=len(search.cheapest))


class _Search:
    def __init__(self, pattern: Pattern, limit: int, most_hooks: int) -> None:
        self.board = board_of(pattern.loom)
        self.limit = limit
        self.most = most_hooks
        self.made = 0
        self.cheapest: dict[object, int] = {}
        moves = [located.move for located in expand(pattern).moves]
        self.finish = [move for move in moves if not isinstance(move, Place)]
        node = _Node(State(), (), frozenset())
        for move in moves:
            if isinstance(move, Place):
                outcome = apply_move(self.board, node.state, move)
                assert isinstance(outcome, Effect)
                node = _Node(outcome.state, (*node.events, *outcome.events), frozenset())
        self.start = node
        self.homes: dict[Bight, str] = {}
        for event in node.events:
            if isinstance(event, Laid):
                one, other = event.seats
                self.homes[one.bight], self.homes[other.bight] = other.holder, one.holder
        self.bands = node.state.bands
        self.shifts: dict[tuple[str, str], frozenset[Shift]] = {}

    def run(self) -> Fewest:
        numbers = count()
        heap = [(0, next(numbers), self.start)]
        cheapest = self.cheapest = {_key(self.start.state): 0}
        while heap:
            cost, _, node = heappop(heap)
            if cost > cheapest[_key(node.state)]:
                continue
            if self._holds(node):
                return Fewest(cost, settled=True, states=len(cheapest))
            for more, after, _ in self._phrases(node, self.limit - 1 - cost, self.bands):
                key = _key(after.state)
                if cost + more < cheapest.get(key, self.limit):
                    cheapest[key] = cost + more
                    heappush(heap, (cost + more, next(numbers), after))
        return Fewest(None, settled=True, states=len(cheapest))

    def _phrases(self, node: _Node, most: int, hooks: int) -> Iterator[tuple[int, _Node, tuple[_Hook, ...]]]:
        """Yield what one phrase can do: its cost, at most `most`, the loom after, and the hooks made."""
        if most < 1 or hooks < 1:
            return
        for hook in self._hooks(node):
            after = self._make(node, hook)
            if after is not None:
                yield 1, after, (hook,)
        if most >= 2 and hooks >= 2:
            for cost, after, said, shifts in self._rounds(node, most - 1, hooks // 2, None):
                yield from self._repeats(cost + 1, after, said, hooks, shifts)

    def _rounds(
        self, node: _Node, most: int, hooks: int, shifts: frozenset[Shift] | None
    ) -> Iterator[tuple[int, _Node, tuple[_Hook, ...], frozenset[Shift]]]:
        """Yield every run of phrases of at most that cost, and that many hooks, that some shift moves on."""
        for cost, after, said in self._phrases(node, most, hooks):
            common = frozenset.intersection(*(self._shifts(hook) for hook in said))
            common = common if shifts is None else common & shifts
            if not common:
                continue
            yield cost, after, said, common
            for more, last, rest, left in self._rounds(after, most - cost, hooks - len(said), common):
                yield cost + more, last, said + rest, left

    def _repeats(
        self, cost: int, node: _Node, said: tuple[_Hook, ...], hooks: int, shifts: frozenset[Shift]
    ) -> Iterator[tuple[int, _Node, tuple[_Hook, ...]]]:
        for by in sorted(shifts):
            for ways in product((True, False), repeat=len(said)):
                after: _Node | None = node
                done = said
                for round_ in range(1, hooks):
                    on = (by[0] * round_, by[1] * round_)
                    for hook, below in zip(said, ways, strict=True):
                        after = after and self._make_shifted(after, hook, on, below=below)
                    if after is None:
                        break
                    done += said
                    yield cost, after, done

    def _shifts(self, hook: _Hook) -> frozenset[Shift]:
        """Return by how much a hook can be moved on to lie along a band."""
        return self.shifts.setdefault(
            (hook.source, hook.target),
            frozenset(
                _between(hook.source, self.homes[Bight(bight.band, 1 - bight.index)])
                for bight, other in self.homes.items()
                if _between(hook.source, self.homes[Bight(bight.band, 1 - bight.index)])
                == _between(hook.target, other)
            ),
        )

    def _hooks(self, node: _Node) -> Iterator[_Hook]:
        for peg, loops in node.state.stacks.items():
            for low in range(len(loops)):
                target = self.homes.get(loops[low], "")
                for together in range(1, len(loops) - low + 1):
                    taken = loops[low : low + together]
                    if any(self._stays(node, bight, target) for bight in taken):
                        break
                    yield _Hook(peg, target, low, low - len(loops), together)

    def _stays(self, node: _Node, bight: Bight, target: str) -> bool:
        passed = bool(node.state.inside.get(bight))
        return passed or bight.band in node.moved or self.homes.get(bight) != target

    def _make_shifted(self, node: _Node, hook: _Hook, by: Shift, *, below: bool) -> _Node | None:
        source, target = _shifted(hook.source, by), _shifted(hook.target, by)
        loops = node.state.stack(source)
        low = hook.below if below else len(loops) + hook.above
        if not 0 <= low <= len(loops) - hook.together:
            return None
        taken = loops[low : low + hook.together]
        if len({bight.band for bight in taken}) < len(taken):
            return None
        if any(self._stays(node, bight, target) for bight in taken):
            return None
        return self._make(node, _Hook(source, target, low, low - len(loops), hook.together))

    def _make(self, node: _Node, hook: _Hook) -> _Node | None:
        loops = node.state.stack(hook.source)
        taken = loops[hook.below : hook.below + hook.together]
        through = loops[hook.below + hook.together :][::-1]
        if len({bight.band for bight in taken}) < len(taken):
            return None
        self.made += 1
        if self.made > self.most:
            raise _TooManyError
        state, events = node.state, list(node.events)
        for bight in reversed(taken):
            drawn = Drawn(bight, hook.source, hook.target, through)
            state = apply_event(state, drawn)
            events.append(drawn)
        return _Node(state, tuple(events), node.moved | {bight.band for bight in taken})

    def _holds(self, node: _Node) -> bool:
        """Say whether the finish catches what nothing passes through, and the proof holds every band."""
        state, events = node.state, list(node.events)
        for move in self.finish:
            outcome = apply_move(self.board, state, move)
            if not isinstance(outcome, Effect):
                return False
            state, events = outcome.state, [*events, *outcome.events]
        caught = {bight.band for fastener in state.fasteners for bight in fastener.caught}
        passed = {bight.band for bight, ribbons in state.inside.items() if ribbons}
        if len(caught | passed) < state.bands:
            return False
        proof = prove(structure_of(tuple(events), self.board.spots))
        return not (proof.free or proof.unproved)


def _key(state: State) -> object:
    return state.stacks, state.inside


def _address(peg: str) -> tuple[int, int]:
    row, number = re.fullmatch("([A-Z])([0-9]+)", peg).groups()  # type: ignore[union-attr]
    return ord(row), int(number)


def _between(one: str, other: str) -> Shift:
    (row, peg), (row_on, peg_on) = _address(one), _address(other)
    return row_on - row, peg_on - peg


def _shifted(peg: str, by: Shift) -> str:
    row, number = _address(peg)
    return f"{chr(row + by[0])}{number + by[1]}"
