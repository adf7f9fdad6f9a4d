"""Small placements drawn at random, and the slow twin of the planner: every order, one after the other."""

from __future__ import annotations

import random
from collections.abc import Iterator
from itertools import combinations

from pegwright.loom import Bight, Drawn, Effect, Fastened, Laid, State, apply_event, apply_move, board_of
from pegwright.pattern import Clip, Pattern, PatternBuilder, Place, Rows, expand
from pegwright.proof import prove
from pegwright.structure import structure_of

LOOM = Rows(rows=2, pegs=3)


def random_placement(rng: random.Random, bands: int, *, closed: bool = False) -> Pattern:
    """Lay so many bands over neighbouring pegs of a small loom; `closed` clips a peg of the last one."""
    pegs = [f"{row}{peg}" for row in "AB" for peg in (1, 2, 3)]
    board = board_of(LOOM)
    pairs = [pair for pair in combinations(pegs, 2) if board.distance_mm(*pair) < 25]
    m = PatternBuilder("Drawn at random", LOOM).colour("A", "slate", "#4A5A6A")
    over: list[str] = []
    for _ in range(bands):
        over = rng.sample(rng.choice(pairs), 2)
        m.place("A", *over)
    if closed:
        m.clip(over[0])
    return m.pattern()


def some_order_holds(pattern: Pattern) -> bool:
    """Say whether any order of hooking, each band once or never, holds every band, closed at one peg or two.

    Nothing is skipped but what leads to the very same record of passings as before.
    """
    board = board_of(pattern.loom)
    state, events = State(), []
    given: tuple[str, ...] = ()
    for located in expand(pattern).moves:
        if isinstance(located.move, Clip):
            given = located.move.at
            continue
        assert isinstance(located.move, Place)
        outcome = apply_move(board, state, located.move)
        assert isinstance(outcome, Effect)
        state, events = outcome.state, [*events, *outcome.events]
    homes = {seat.bight: seat.holder for event in events if isinstance(event, Laid) for seat in event.seats}
    seen: set[object] = set()
    return any(
        _closes(end, done, given) for end, done in _orders(state, tuple(events), homes, frozenset(), seen)
    )


def _orders(
    state: State, events: tuple, homes: dict[Bight, str], moved: frozenset[int], seen: set[object]
) -> Iterator[tuple[State, tuple]]:
    key = (tuple(sorted((h, s) for h, s in state.stacks.items())), tuple(sorted(state.inside.items())))
    if key in seen:
        return
    seen.add(key)
    yield state, events
    for peg, loops in sorted(state.stacks.items()):
        for at, bight in enumerate(loops):
            other = homes[Bight(bight.band, 1 - bight.index)]
            if bight.band in moved or state.inside.get(bight):
                continue
            drawn = Drawn(bight, peg, other, loops[at + 1 :][::-1])
            yield from _orders(apply_event(state, drawn), (*events, drawn), homes, moved | {bight.band}, seen)


def _closes(state: State, events: tuple, given: tuple[str, ...]) -> bool:
    for count in (len(given),) if given else (1, 2):
        for pegs in combinations(given or sorted(state.stacks), count):
            if not all(peg in state.stacks for peg in pegs):
                continue
            caught = tuple(bight for peg in pegs for bight in state.stacks[peg][::-1])
            counts = tuple(len(state.stacks[peg]) for peg in pegs)
            proof = prove(structure_of((*events, Fastened(1, "clip", pegs, caught, counts)), SPOTS))
            if not (proof.free or proof.unproved):
                return True
    return False


SPOTS = board_of(LOOM).spots
