"""Replay one slip to the end, making again only what it changes.

The state after a step is the intended one with a few stacks and loops put in its place. A later step that
touches none of these gives what it was meant to give, so it is not made again. Bands keep the numbers they
have in the intended history, whatever was left out before them; a band too many gets a number past the last.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple, TypeVar

from immutables import Map

from pegwright.loom import (
    START,
    AppliedMove,
    Bight,
    Drawn,
    Effect,
    Event,
    Laid,
    Lifted,
    Stack,
    State,
    apply_move,
)
from pegwright.pattern import Move, with_holders
from pegwright.rehearsal.prepared_history import (
    PreparedHistory,
    WordChanges,
    holders_in,
    plain_holder,
    read_word_changes,
)
from pegwright.rehearsal.slips import Slip

__all__ = ["NO_SLIP", "LoomChange", "SlipRun", "events_of_run", "move_at_opposite_pegs", "replay_slips"]


_Where = TypeVar("_Where", str, Bight)


class LoomChange(NamedTuple):
    """After step `at` a stack, or what runs through a loop, is not as intended (None: as intended again)."""

    at: int
    where: str | Bight
    wrong: Stack | None


class SlipRun(NamedTuple):
    """A slip, or several, replayed to the end.

    `made` are the events of the steps that came out differently; those of a slip stand at its first step and
    its other steps are empty. `refused` are the steps that could not be made. `changes` tell, step by step,
    where the loom differed. `word_changes` are what the steps that came out differently did to the words.
    `colours` are the letters of bands that are not of the intended colour or not in the intended piece.
    `wrong` are the moves of the slips that could be made, with what came of them.
    """

    slips: tuple[Slip, ...]
    made: Mapping[int, tuple[Event, ...]]
    refused: tuple[int, ...]
    changes: tuple[LoomChange, ...]
    word_changes: Mapping[int, WordChanges]
    colours: Mapping[int, str]
    stacks: Mapping[str, Stack]
    inside: Mapping[Bight, Stack]
    factors: Mapping[Bight, int]
    wrong: tuple[tuple[Move, tuple[Event, ...]], ...]


NO_SLIP = SlipRun((), {}, (), (), {}, {}, {}, {}, {}, ())
"""The intended history as a run."""


class _Runner:
    def __init__(self, prepared: PreparedHistory, slips: tuple[Slip, ...]) -> None:
        self.prepared = prepared
        self.slips = slips
        self.made: dict[int, tuple[Event, ...]] = {}
        self.refused: list[int] = []
        self.changes: list[LoomChange] = []
        self.word_changes: dict[int, WordChanges] = {}
        self.colours: dict[int, str] = {}
        self.stacks: dict[str, Stack] = {}
        self.inside: dict[Bight, Stack] = {}
        self.factors: dict[Bight, int] = {}
        self.homes: dict[int, frozenset[str]] = {}
        self.wrong: list[tuple[Move, tuple[Event, ...]]] = []
        self.rehomed: dict[Bight, int] = {}
        self.dirty: set[str] = set()
        self.painted: set[str] = set()
        self.extra = prepared.history.final.bands
        self.about = False

    def run(self) -> SlipRun:
        waiting = list(self.slips)
        prepared, end = self.prepared, len(self.prepared.history.moves)
        at = waiting[0].at
        while at < end:
            if waiting and waiting[0].at == at:
                slip = waiting.pop(0)
                self.slip(slip)
                at += slip.replaces
                continue
            holders, loops = prepared.holders[at], prepared.loops[at]
            as_meant = not (self.about or self.dirty or self.factors or self.inside or self.rehomed)
            if (
                self.about
                or not self.dirty.isdisjoint(holders)
                or (not as_meant and START in holders)  # that reads every stack
            ):
                self.step(at)
            elif not (
                self.factors.keys().isdisjoint(loops)
                and self.inside.keys().isdisjoint(loops)
                and self.rehomed.keys().isdisjoint(loops)
            ):
                self.carry(at)
            elif as_meant:
                if not waiting:
                    break
                at = waiting[0].at
                continue
            at += 1
        return SlipRun(
            self.slips,
            self.made,
            tuple(self.refused),
            tuple(self.changes),
            self.word_changes,
            self.colours,
            self.stacks,
            self.inside,
            self.factors,
            tuple(self.wrong),
        )

    def slip(self, slip: Slip) -> None:
        """Do what the slip says in place of its steps."""
        history = self.prepared.history
        meant = {done.move: at for at, done in self._block(slip)}
        events: list[Event] = []
        state = self.state(slip.at)
        base = {at: history.before(at).bands for at, _ in self._block(slip)}
        for move in slip.moves:
            at = meant.get(move, slip.at)
            bands = base.pop(at, None)
            made = apply_move(
                history.board,
                state._replace(bands=self.extra if bands is None else bands),
                self._in_turned_view(move),
            )
            if not isinstance(made, Effect):
                self.refused.append(slip.at)
                if bands is not None:
                    base[at] = bands
                continue
            laid = sum(isinstance(event, Laid) for event in made.events)
            if bands is None:
                self.extra += laid
            elif not laid:
                base[at] = bands
            self._colour(move, made.events)
            self.wrong.append((move, made.events))
            events += made.events
            state = made.state
        self.about = self.about or slip.about
        for at, _ in self._block(slip):
            self.made[at], self.word_changes[at] = (), WordChanges({}, {}, frozenset(), frozenset(), (), ())
        self.settle(slip.at, slip.at + slip.replaces, tuple(events), state)

    def _block(self, slip: Slip) -> list[tuple[int, AppliedMove]]:
        done = self.prepared.history.moves
        return [(at, done[at]) for at in range(slip.at, min(slip.at + slip.replaces, len(done)))]

    def step(self, at: int) -> None:
        """Make a later step as it was said."""
        state = self.state(at)
        move = self.prepared.history.moves[at].move
        made = apply_move(self.prepared.history.board, state, self._in_turned_view(move))
        if isinstance(made, Effect):
            self._colour(move, made.events)
            self.settle(at, at + 1, made.events, made.state)
        else:
            self.refused.append(at)
            self.settle(at, at + 1, (), state)

    def state(self, at: int) -> State:
        """Return the loom before a step."""
        before = self.prepared.history.before(at)
        if not (self.stacks or self.inside):
            return before
        return before._replace(
            stacks=_with_changes(before.stacks, self.stacks), inside=_with_changes(before.inside, self.inside)
        )

    def carry(self, at: int) -> None:
        """Let a step happen as it was meant to; only what its loops went through before is different."""
        events = self.prepared.history.moves[at].events
        for event in events:
            for loop, ribbons in _ribbons_put_through(event):
                if loop in self.inside:
                    self.inside[loop] += ribbons
                    self.changes.append(LoomChange(at, loop, self.inside[loop]))
        self._words(at, at + 1, events)
        self.made[at] = events

    def settle(self, at: int, after: int, events: tuple[Event, ...], state: State) -> None:
        """Note what is not as intended after the steps from `at` up to `after`."""
        done = self.prepared.history.moves
        meant = done[after - 1].after
        intended = done[at].events if after == at + 1 else [e for d in done[at:after] for e in d.events]
        holders = holders_in(events)
        loops: set[Bight] = set()
        holders.update(holders_in(intended))
        for event in (*events, *intended):
            loops.update(loop for loop, _ in _ribbons_put_through(event))
        for holder in sorted(holders):
            self._note(self.stacks, at, holder, state.stack(holder), meant.stack(holder))
        for loop in sorted(loops):
            self._note(self.inside, at, loop, state.inside.get(loop, ()), meant.inside.get(loop, ()))
        self.made[at] = events
        self._words(at, after, events)
        if self.colours:
            self._paint(at, meant, sorted(holders - self.stacks.keys()))
        self.dirty = {plain_holder(holder) for holder in (*self.stacks, *self.painted)}

    def _paint(self, at: int, meant: State, holders: list[str]) -> None:
        """Note on which of these holders, right but for their colours, a band of another colour lies."""
        for holder in holders:
            if any(loop.band in self.colours for loop in meant.stack(holder)):
                self.painted.add(holder)
                self.changes.append(LoomChange(at, holder, meant.stack(holder)))
            elif holder in self.painted:
                self.changes.append(LoomChange(at, holder, None))
        self.painted -= {h for h in holders if not any(b.band in self.colours for b in meant.stack(h))}

    def _note(self, table: dict[_Where, Stack], at: int, where: _Where, wrong: Stack, right: Stack) -> None:
        if wrong != right:
            self.changes.append(LoomChange(at, where, wrong))
            table[where] = wrong
        elif where in table:
            del table[where]
            self.changes.append(LoomChange(at, where, None))

    def _words(self, at: int, after: int, events: tuple[Event, ...]) -> None:
        prepared = self.prepared
        before, intended = prepared.factors[at], prepared.factors[after]

        def factor_of(loop: Bight) -> int:
            found = self.factors.get(loop)
            return before[loop] if found is None else found

        def home_of(band: int) -> frozenset[str]:
            return self.homes.get(band) or prepared.homes[at][band]

        changes = self.word_changes[at] = read_word_changes(prepared.words, events, factor_of, home_of)
        changed = set(changes.factors)
        for step in range(at, after):
            changed.update(prepared.word_changes[step].factors)
        for loop in changed:
            now = changes.factors.get(loop)
            if now is None:
                now = self.factors.get(loop, before.get(loop))
            if now is None or now == intended.get(loop):
                self.factors.pop(loop, None)
            else:
                self.factors[loop] = now
        for band, home in changes.homes.items():
            if prepared.homes[after].get(band) != home:
                self.homes[band] = home
                # Whether a loop is carried on past its band's own pegs depends on where the band was laid.
                self.rehomed |= {loop: band for loop in prepared.factors[-1] if loop.band == band}

    def _colour(self, move: Move, events: tuple[Event, ...]) -> None:
        intended = self.prepared.history.colours
        for event in events:
            if isinstance(event, Laid):
                letter = str(getattr(move, "colour", ""))
                if event.band > len(intended) or intended[event.band - 1] != letter:
                    self.colours[event.band] = letter

    def _in_turned_view(self, move: Move) -> Move:
        return move_at_opposite_pegs(self.prepared, move) if self.about else move


def move_at_opposite_pegs(prepared: PreparedHistory, move: Move) -> Move:
    """Return a move as it is made on a loom that was not turned: at the opposite pegs."""
    opposite = prepared.neighbours.opposite
    return with_holders(move, lambda holder: opposite.get(holder, holder))


def replay_slips(prepared: PreparedHistory, *slips: Slip) -> SlipRun:
    """Replay the history with one slip, or several that do not overlap, in the order of their steps.

    A step that cannot be made is left out, as a maker does who reads on.
    """
    return _Runner(prepared, tuple(sorted(slips, key=lambda slip: slip.at))).run()


def events_of_run(prepared: PreparedHistory, run: SlipRun) -> tuple[Event, ...]:
    """Return everything that happened in a run, in order."""
    done = prepared.history.moves
    return tuple(event for at in range(len(done)) for event in run.made.get(at, done[at].events))


def _with_changes(base: Map[Any, Stack], changed: Mapping[Any, Stack]) -> Map[Any, Stack]:
    for where, loops in changed.items():
        if loops:
            base = base.set(where, loops)
        elif where in base:
            base = base.delete(where)
    return base


def _ribbons_put_through(event: Event) -> list[tuple[Bight, Stack]]:
    """Return the loops through which ribbons are put, and the ribbons."""
    match event:
        case Drawn():
            return [(loop, (event.bight,)) for loop in event.through]
        case Lifted():
            return [(event.bight, event.over)]
        case _:
            return []
