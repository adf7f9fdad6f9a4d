"""The way back from a slip: which moves to undo, last first, and which to do again, proved by replay.

Everything wrong is undone, and of what was done since only what lies in the way: a move that can be put
after all the others without a change to the loom stays. Then the moves are done as they were meant. The way
is accepted only if, replayed, every move undone was the last one on its loops, and the loom afterwards is
the intended one in every stack and every word.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Literal, NamedTuple

from immutables import Map
from msgspec.structs import replace

from pegwright.loom import Applied, Bight, Drawn, Event, Fastened, History, Laid, Lifted, Moved, State, apply
from pegwright.pattern import Hook, Lift, Move, Slide
from pegwright.rehearsal.consequence import Outcome
from pegwright.rehearsal.course import Course, course, holders_in, plain_holder, read_events
from pegwright.rehearsal.run import at_opposite, rehearse_slips

__all__ = ["Act", "WayBack", "way_back"]


class Act(NamedTuple):
    """Undo a move, or do one. `at` is the index of its step, `move` as it is said at that moment."""

    do: Literal["undo", "do"]
    at: int
    move: Move


class WayBack(NamedTuple):
    """From the loom as it stands after step `after` (index) to the intended one at that point."""

    after: int
    acts: tuple[Act, ...]


class _Made(NamedTuple):
    at: int
    move: Move
    events: tuple[Event, ...]


class _Loom(NamedTuple):
    state: State
    factors: Map[Bight, int]
    homes: Map[int, frozenset[str]]


def way_back(
    history: History, outcome: Outcome, after: int | None = None, made: Course | None = None
) -> WayBack:
    """Return the way back from a slip noticed after the step of that index: by default, at its first sign.

    No move of it can be spared; whether another list of moves is shorter is not searched for.
    `made` is the history's course, if it is at hand.
    """
    made = made or course(history)
    slip = outcome.slip
    block = slip.at + slip.replaces - 1
    sign = outcome.first or outcome.close
    noticed = len(history.done) - 1 if sign is None else sign.at
    after = max(block, noticed if after is None else after)
    wrong, later = _done(made, outcome, after)
    if slip.about:  # everything since was done at the wrong pegs: it all goes back
        undo_all = [Act("undo", act.at, at_opposite(made, act.move)) for act in reversed(later)]
        again = [Act("do", at, history.done[at].doing.move) for at in range(slip.at, after + 1)]
        return WayBack(after, (*undo_all, *again))
    right = [_meant(history, at) for at in range(slip.at, block + 1)]
    undo = _in_the_way(history, block, after, wrong, later)
    back = _Back(made, wrong, later, right, after)
    if not back.leads(undo):
        undo = {act.at for act in later}
    for at in sorted(undo):
        if back.leads(undo - {at}):
            undo = undo - {at}
    acts = back.leads(undo)
    assert acts is not None
    return WayBack(after, acts)


def _done(made: Course, outcome: Outcome, after: int) -> tuple[list[_Made], list[_Made]]:
    """Return what was done in place of the slip's steps, and what was done since."""
    history, slip = made.history, outcome.slip
    run = rehearse_slips(made, slip)
    wrong = [_Made(slip.at, move, events) for move, events in run.wrong]
    later = []
    for at in range(slip.at + slip.replaces, after + 1):
        done = history.done[at]
        if at not in run.refused:
            later.append(_Made(at, done.doing.move, run.made.get(at, done.events)))
    return wrong, later


def _meant(history: History, at: int) -> _Made:
    done = history.done[at]
    return _Made(at, done.doing.move, done.events)


def _in_the_way(
    history: History, block: int, after: int, wrong: Iterable[_Made], later: Sequence[_Made]
) -> set[int]:
    """Return the later steps that share a holder with what is to be undone or done before them."""
    touched = {plain_holder(h) for act in wrong for h in holders_in(act.events)}
    first = next((act.at for act in wrong), block)
    for at in range(min(first, block), block + 1):
        touched |= {plain_holder(h) for h in holders_in(history.done[at].events)}
    found = set()
    made = {act.at: act for act in later}
    for at in range(block + 1, after + 1):
        holders = {plain_holder(h) for h in holders_in(history.done[at].events)}
        if at in made:
            holders |= {plain_holder(h) for h in holders_in(made[at].events)}
        if at not in made or not touched.isdisjoint(holders):
            touched |= holders
            found.add(at)
    return found


class _Back:
    def __init__(
        self, made: Course, wrong: list[_Made], later: list[_Made], right: list[_Made], after: int
    ) -> None:
        self.course = made
        self.wrong, self.later, self.right, self.after = wrong, later, right, after
        first = right[0].at
        self.before = _Loom(made.history.before(first), made.factors[first], made.homes[first])
        self.stands = self.play(self.before, [*wrong, *later])

    def leads(self, undo: set[int]) -> tuple[Act, ...] | None:
        """Return the acts if undoing these later steps leads back, else None."""
        kept = [act for act in self.later if act.at not in undo]
        taken = [act for act in self.later if act.at in undo]
        clear = self.play(self.before, kept)
        if clear is None or self.stands is None:
            return None
        again = self.play(clear[0], [*self.wrong, *taken])
        if again is None or not _same(again[0], self.stands[0]):
            return None
        done = {act.at for act in kept}
        history = self.course.history
        missing = [
            _meant(history, at) for at in range(self.right[-1].at + 1, self.after + 1) if at not in done
        ]
        end = self.play(clear[0], [*self.right, *missing])
        intended = _Loom(
            history.done[self.after].after,
            self.course.factors[self.after + 1],
            self.course.homes[self.after + 1],
        )
        if end is None or not _same(end[0], intended):
            return None
        back = [Act("undo", act.at, act.move) for act in [*self.wrong, *taken][::-1]]
        return (
            *back,
            *(Act("do", act.at, move) for act, move in zip([*self.right, *missing], end[1], strict=True)),
        )

    def play(self, loom: _Loom, acts: Iterable[_Made]) -> tuple[_Loom, list[Move]] | None:
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
            reading = read_events(self.course.words, outcome.events, factors.__getitem__, homes.__getitem__)
            state, factors = outcome.state, factors.update(reading.factors)
            homes = homes.update(reading.homes)
            moves.append(move)
        return _Loom(state, factors, homes), moves

    def _like(self, state: State, act: _Made) -> tuple[Move, Applied] | None:
        for move in _ways_to_say(state, act):
            outcome = apply(self.course.history.board, state, move)
            if isinstance(outcome, Applied) and _bare(outcome.events) == _bare(act.events):
                return move, outcome
        return None


def _ways_to_say(state: State, act: _Made) -> Iterator[Move]:
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
            else:
                assert isinstance(act.move, Hook | Slide)
                yield replace(act.move, loop=loop, through=len(first.through) - len(first.slid))


def _same(one: _Loom, other: _Loom) -> bool:
    return (
        one.state.stacks == other.state.stacks
        and one.factors == other.factors
        and [held.caught for held in one.state.fasteners] == [held.caught for held in other.state.fasteners]
    )


def _bare(events: Sequence[Event]) -> list[Event]:
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
