"""What comes off on the loom: found by halving as after every move in turn, and never caught again."""

from __future__ import annotations

from hypothesis import given, strategies as st

from examples.pieces import PIECES
from pegwright.loom import Effect, Event, Fastened, State, apply_move, board_of, parse_move, replay_pattern
from pegwright.proof import find_first_loose, prove
from pegwright.structure import structure_of
from testing.programs import KINDS, layout, program

SEEDS = st.tuples(st.integers(0, 10**6), st.sampled_from(KINDS))


def by_move(
    seed: int, kind: str
) -> tuple[list[tuple[Event, ...]], list[State], dict[str, tuple[float, float]]]:
    """Return, of a random program up to its fastening, each move's events and state, and the spots."""
    made = program(seed, kind)
    board, state = board_of(layout(made.layout)), State()
    moves: list[tuple[Event, ...]] = []
    states: list[State] = []
    for line in made.moves:
        outcome = apply_move(board, state, parse_move(line))
        assert isinstance(outcome, Effect)
        if any(isinstance(event, Fastened) for event in outcome.events):
            break
        state = outcome.state
        moves.append(outcome.events)
        states.append(state)
    return moves, states, made.spots


@given(SEEDS)
def test_halving_finds_a_move_after_which_and_not_before_a_band_comes_off(drawn):
    """Looked for after each move, one after the other."""
    moves, _, spots = by_move(*drawn)
    every = frozenset(range(1, 20))
    found = find_first_loose(moves, spots, every)
    scanned = [
        n
        for n in range(len(moves))
        if (one := find_first_loose(moves[: n + 1], spots, every)) and one.at == n
    ]
    assert (found.at if found else None) in (scanned or [None])


@given(SEEDS, st.randoms(use_true_random=False))
def test_no_clip_through_any_loops_keeps_a_loose_band(drawn, rng):
    moves, states, spots = by_move(*drawn)
    found = find_first_loose(moves, spots, frozenset(range(1, 20)))
    if found is None:
        return
    events = [event for made in moves[: found.at + 1] for event in made]
    stacks = [tuple(reversed(loops)) for loops in states[found.at].stacks.values()]
    caught = tuple(loop for loops in stacks for loop in loops if rng.random() < 0.7)
    clip = Fastened(1, "clip", (), caught, ())
    assert found.band not in prove(structure_of([*events, clip], spots)).held


def test_the_first_band_of_a_flat_tail_is_off_after_two_lifts():
    """Common practice, no source: a fish-tail begins crossed, or its first band drops off."""
    for name, at in (("broken/flat-tail", 4), ("herring-tail", None)):
        history = replay_pattern(PIECES[name]())
        moves = [done.events for done in history.moves]
        found = find_first_loose(moves, history.board.spots, frozenset(range(1, history.final.bands + 1)))
        assert (found and (found.at, found.band)) == (at and (at, 1))
