"""Slips replayed the slow way: every move from the empty loom, every structure proved afresh."""

from __future__ import annotations

from typing import NamedTuple

from msgspec.structs import replace

from pegwright.loom import (
    Bight,
    Board,
    Effect,
    Event,
    History,
    Laid,
    Stack,
    State,
    apply_move,
    board_of,
    parse_move,
    replay,
)
from pegwright.pattern import LocatedMove, Move, PegAt, Pegs
from pegwright.proof import prove
from pegwright.rehearsal import Slip
from pegwright.structure import structure_of
from testing.programs import program


class SlowRun(NamedTuple):
    events: tuple[Event, ...]
    refused: tuple[int, ...]
    states: tuple[State, ...]  # after every step; the steps of a slip have the state after it


def random_history(seed: int, kind: str) -> History:
    made = program(seed, kind)
    pegs = Pegs(pegs=tuple(PegAt(at, x, y) for at, (x, y) in made.spots.items()))
    moves = [parse_move(move) if isinstance(move, str) else move for move in made.moves]
    doings = tuple(LocatedMove(move, f"/steps/{i}") for i, move in enumerate(moves))
    history = replay(board_of(pegs), doings)
    assert not history.findings
    return history


def slow_run(history: History, *slips: Slip) -> SlowRun:
    """Make every move in turn; bands keep the numbers they have in the intended history."""
    moves = [done.move for done in history.moves]
    first = [history.before(i).bands for i in range(len(moves))]
    extra = history.final.bands
    state = State()
    events: list[Event] = []
    refused: list[int] = []
    states: list[State] = []
    about = False

    def do(move: Move, bands: int) -> tuple[bool, int]:
        nonlocal state
        given = opposite(history.board, move) if about else move
        outcome = apply_move(history.board, state._replace(bands=bands), given)
        if not isinstance(outcome, Effect):
            return False, 0
        state = outcome.state
        events.extend(outcome.events)
        return True, sum(isinstance(event, Laid) for event in outcome.events)

    at = 0
    while at < len(moves):
        slip = next((s for s in slips if s.at == at), None)
        if slip is None:
            if not do(moves[at], first[at])[0]:
                refused.append(at)
            states.append(state)
            at += 1
            continue
        numbers = {i: first[i] for i in range(at, at + slip.replaces)}
        for move in slip.moves:
            own = next((i for i in numbers if moves[i] == move), at if at in numbers else None)
            bands = extra if own is None else numbers[own]
            done, laid = do(move, bands)
            if not done:
                refused.append(at)
            elif laid and own is None:
                extra += laid
            elif laid:
                del numbers[own]
        states += [state] * slip.replaces
        about = about or slip.about
        at += slip.replaces
    return SlowRun(tuple(events), tuple(refused), tuple(states))


def opposite(given: Board, move: Move) -> Move:
    """Point every peg of a move through the middle of the loom."""
    xs = [p.x_mm for p in given.pegs.values()]
    ys = [p.y_mm for p in given.pegs.values()]

    def across(at: str) -> str:
        if at not in given.pegs:
            return at
        x = min(xs) + max(xs) - given.pegs[at].x_mm
        y = min(ys) + max(ys) - given.pegs[at].y_mm
        return next((p.at for p in given.pegs.values() if abs(p.x_mm - x) <= 1 and abs(p.y_mm - y) <= 1), at)

    changes = {}
    for name in ("over", "on", "source", "target", "at"):
        value = getattr(move, name, None)
        if value is not None:
            changes[name] = tuple(map(across, value)) if isinstance(value, tuple) else across(value)
    return replace(move, **changes)


def slow_verdict(events: tuple[Event, ...]) -> tuple[set[int], set[int]]:
    """Return the bands proved free and those not proved, by the words alone."""
    proof = prove(structure_of(events))
    return set(proof.free), set(proof.unproved)


def loom_of(state: State) -> tuple[dict[str, Stack], dict[Bight, Stack]]:
    """Return the stacks and what runs through the loops, as plain dicts."""
    return dict(state.stacks), {loop: ribbons for loop, ribbons in state.inside.items() if ribbons}
