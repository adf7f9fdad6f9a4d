"""The way back from a slip: which moves to undo, last first, and which to do again, proved by replay.

Everything wrong is undone, and of what was done since only what lies in the way: a move that can be put
after all the others without a change to the loom stays. Then the moves are done as they were meant. The way
is accepted only if, replayed, every move undone was the last one on its loops, and the loom afterwards is
the intended one in every stack and every word.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import combinations
from typing import Literal, NamedTuple

from immutables import Map
from msgspec.structs import replace

from pegwright.loom import (
    Bight,
    Drawn,
    Effect,
    Event,
    Fastened,
    History,
    Laid,
    Lifted,
    Moved,
    State,
    apply_move,
)
from pegwright.pattern import Hook, Lift, Move, Slide
from pegwright.rehearsal.outcome import Outcome
from pegwright.rehearsal.prepared_history import (
    PreparedHistory,
    holders_in,
    plain_holder,
    prepare_history,
    read_word_changes,
)
from pegwright.rehearsal.slip_run import SlipRun, move_at_opposite_pegs, replay_slips

__all__ = ["Act", "WayBack", "find_way_back"]

_FEW, _MOST_SPARED = 10, 3
"""Of at most so many moves to undo, up to three are spared together as well: 165 sets are tried at most."""


class Act(NamedTuple):
    """Undo a move, or do one. `at` is the index of its step, `move` as it is said at that moment."""

    do: Literal["undo", "do"]
    at: int
    move: Move


class WayBack(NamedTuple):
    """From the loom as it stands after step `after` (index) to the intended one at that point."""

    after: int
    acts: tuple[Act, ...]


class _MadeMove(NamedTuple):
    at: int
    move: Move
    events: tuple[Event, ...]


class _LoomState(NamedTuple):
    state: State
    factors: Map[Bight, int]
    homes: Map[int, frozenset[str]]


def find_way_back(
    history: History,
    outcome: Outcome,
    after: int | None = None,
    made: PreparedHistory | None = None,
    run: SlipRun | None = None,
) -> WayBack:
    """Return the way back from a slip noticed after the step of that index: by default, at its first sign.

    No move of it can be spared; whether another list of moves is shorter is not searched for.
    `made` is the history's prepared, and `run` the slip's replay, if they are at hand.
    """
    made = made or prepare_history(history)
    slip = outcome.slip
    block = slip.at + slip.replaces - 1
    sign = outcome.first or outcome.close
    noticed = len(history.moves) - 1 if sign is None else sign.at
    after = max(block, noticed if after is None else after)
    wrong, later = _moves_made(made, outcome, run or replay_slips(made, slip), after)
    if slip.about:  # everything since was done at the wrong pegs: it all goes back
        undo_all = [Act("undo", act.at, move_at_opposite_pegs(made, act.move)) for act in reversed(later)]
        undo_all += [Act("undo", act.at, act.move) for act in reversed(wrong)]
        again = [Act("do", at, history.moves[at].move) for at in range(slip.at, after + 1)]
        return WayBack(after, (*undo_all, *again))
    right = [_intended_move(history, at) for at in range(slip.at, block + 1)]
    undo = _steps_in_the_way(history, block, after, wrong, later)
    back = _WayBackSearch(made, wrong, later, right, after)
    if not back.leads(undo):
        undo = {act.at for act in later}
    for at in sorted(undo):
        if back.leads(undo - {at}):
            undo = undo - {at}
    if len(undo) <= _FEW:  # a very short way back, which sparing one move after another may miss
        few = (set(some) for size in range(3) for some in combinations(sorted(undo), size))
        undo = next((some for some in few if len(some) < len(undo) and back.leads(some)), undo)
    while len(undo) <= _FEW and (spared := _moves_to_spare(back, undo)):
        undo = undo - spared
    acts = back.leads(undo)
    assert acts is not None
    return WayBack(after, acts)


def _moves_to_spare(back: _WayBackSearch, undo: set[int]) -> set[int]:
    """Return moves that need not be undone: one, or some that hang together, as what is drawn over others."""
    for size in range(1, _MOST_SPARED + 1):
        for some in combinations(sorted(undo), size):
            if back.leads(undo.difference(some)):
                return set(some)
    return set()


def _moves_made(
    made: PreparedHistory, outcome: Outcome, run: SlipRun, after: int
) -> tuple[list[_MadeMove], list[_MadeMove]]:
    """Return what was done in place of the slip's steps, and what was done since."""
    history, slip = made.history, outcome.slip
    wrong = [_MadeMove(slip.at, move, events) for move, events in run.wrong]
    later = []
    for at in range(slip.at + slip.replaces, after + 1):
        done = history.moves[at]
        if at not in run.refused:
            later.append(_MadeMove(at, done.move, run.made.get(at, done.events)))
    return wrong, later


def _intended_move(history: History, at: int) -> _MadeMove:
    done = history.moves[at]
    return _MadeMove(at, done.move, done.events)


def _steps_in_the_way(
    history: History, block: int, after: int, wrong: Iterable[_MadeMove], later: Sequence[_MadeMove]
) -> set[int]:
    """Return the later steps that share a holder with what is to be undone or done before them."""
    touched = {plain_holder(h) for act in wrong for h in holders_in(act.events)}
    first = next((act.at for act in wrong), block)
    for at in range(min(first, block), block + 1):
        touched |= {plain_holder(h) for h in holders_in(history.moves[at].events)}
    found = set()
    made = {act.at: act for act in later}
    for at in range(block + 1, after + 1):
        holders = {plain_holder(h) for h in holders_in(history.moves[at].events)}
        if at in made:
            holders |= {plain_holder(h) for h in holders_in(made[at].events)}
        if at not in made or not touched.isdisjoint(holders):
            touched |= holders
            found.add(at)
    return found


class _WayBackSearch:
    def __init__(
        self,
        made: PreparedHistory,
        wrong: list[_MadeMove],
        later: list[_MadeMove],
        right: list[_MadeMove],
        after: int,
    ) -> None:
        self.prepared = made
        self.wrong, self.later, self.right, self.after = wrong, later, right, after
        first = right[0].at
        self.before = _LoomState(made.history.before(first), made.factors[first], made.homes[first])
        self.stands = self.play(self.before, [*wrong, *later])

    def leads(self, undo: set[int]) -> tuple[Act, ...] | None:
        """Return the acts if undoing these later steps leads back, else None."""
        kept = [act for act in self.later if act.at not in undo]
        taken = [act for act in self.later if act.at in undo]
        clear = self.play(self.before, kept)
        if clear is None or self.stands is None:
            return None
        again = self.play(clear[0], [*self.wrong, *taken])
        if again is None or not _same_loom(again[0], self.stands[0]):
            return None
        done = {act.at for act in kept}
        history = self.prepared.history
        missing = [
            _intended_move(history, at)
            for at in range(self.right[-1].at + 1, self.after + 1)
            if at not in done
        ]
        end = self.play(clear[0], [*self.right, *missing])
        intended = _LoomState(
            history.moves[self.after].after,
            self.prepared.factors[self.after + 1],
            self.prepared.homes[self.after + 1],
        )
        if end is None or not _same_loom(end[0], intended):
            return None
        back = [Act("undo", act.at, act.move) for act in [*self.wrong, *taken][::-1]]
        return (
            *back,
            *(Act("do", act.at, move) for act, move in zip([*self.right, *missing], end[1], strict=True)),
        )

    def play(self, loom: _LoomState, acts: Iterable[_MadeMove]) -> tuple[_LoomState, list[Move]] | None:
        """Make moves that do exactly what the acts did, or return None where that cannot be."""
        state, factors, homes = loom
        moves = []
        for act in acts:
            laid = [event.band for event in act.events if isinstance(event, Laid)]
            state = state._replace(bands=min(laid) - 1 if laid else state.bands)
            made = self._like(state, act)
            if made is None:
                return None
            move, outcome = made
            changes = read_word_changes(
                self.prepared.words, outcome.events, factors.__getitem__, homes.__getitem__
            )
            state, factors = outcome.state, factors.update(changes.factors)
            homes = homes.update(changes.homes)
            moves.append(move)
        return _LoomState(state, factors, homes), moves

    def _like(self, state: State, act: _MadeMove) -> tuple[Move, Effect] | None:
        for move in _phrasings(state, act):
            outcome = apply_move(self.prepared.history.board, state, move)
            if isinstance(outcome, Effect) and _essential_events(outcome.events) == _essential_events(
                act.events
            ):
                return move, outcome
        return None


def _phrasings(state: State, act: _MadeMove) -> Iterator[Move]:
    yield act.move
    if isinstance(act.move, Hook | Slide | Lift):
        first = act.events[-1]
        assert isinstance(first, Drawn | Lifted)
        holder = first.source if isinstance(first, Drawn) else first.holder
        stack = state.stack(holder)
        if first.bight in stack:
            loop = stack.index(first.bight) + 1
            if isinstance(first, Lifted) or isinstance(act.move, Lift):
                yield replace(act.move, loop=loop)
            elif first.lifted:
                yield replace(act.move, loop=loop, through=0)
            else:
                assert isinstance(act.move, Hook | Slide)
                yield replace(act.move, loop=loop, through=len(first.through) - len(first.slid))


def _same_loom(one: _LoomState, other: _LoomState) -> bool:
    return (
        one.state.stacks == other.state.stacks
        and one.factors == other.factors
        and [held.caught for held in one.state.fasteners] == [held.caught for held in other.state.fasteners]
    )


def _essential_events(events: Sequence[Event]) -> list[Event]:
    """Leave out what a move merely drags along or skips, and the numbers of fasteners."""
    found: list[Event] = []
    for event in events:
        match event:
            case Drawn():
                found.append(replace(event, dragged=(), skipped=()))
            case Lifted() | Moved():
                found.append(replace(event, dragged=()))
            case Fastened():
                found.append(replace(event, fastener=0))
            case _:
                found.append(event)
    return found
