"""Carry one event out on a state, and take it back.

`apply_event` and `revert_event` are each other's inverse. Neither checks anything; `apply_move` does.
"""

from __future__ import annotations

from immutables import Map

from pegwright.loom.events import (
    Bight,
    Drawn,
    Event,
    Fastened,
    Laid,
    Lifted,
    Moved,
    Turned,
)
from pegwright.loom.state import HOOK, START, Fastener, Stack, State, with_stack


def apply_event(state: State, event: Event) -> State:
    """Return the state after the event."""
    match event:
        case Laid():
            return _lay_band(state, event)
        case Drawn():
            stacks = _remove_loop(state.stacks, event.source, event.bight)
            if event.slid:
                stacks = with_stack(stacks, HOOK, ())
            if "." in event.target and stacks.get(event.source, ()) == _loops_passed(event):
                # What the last band was pulled through comes off, unless a band beside it is to follow.
                stacks = with_stack(stacks, event.source, event.skipped[::-1])
            stacks = stacks.set(event.target, (*stacks.get(event.target, ()), event.bight))
            return state._replace(stacks=stacks, inside=_thread(state.inside, event.through, (event.bight,)))
        case Moved():
            stacks = _remove_loop(state.stacks, event.source, event.bight)
            stacks = stacks.set(event.target, (*stacks.get(event.target, ()), event.bight))
            return state._replace(stacks=stacks)
        case Lifted():
            stacks = _remove_loop(state.stacks, event.holder, event.bight)
            return state._replace(stacks=stacks, inside=_thread(state.inside, (event.bight,), event.over))
        case Fastened():
            stacks = state.stacks
            for holder in event.holders:
                if holder == START:
                    continue
                kept = tuple(b for b in stacks[holder] if b not in event.caught)
                stacks = with_stack(stacks, holder, kept)
            held = Fastener(event.kind, event.caught)
            return state._replace(stacks=stacks, fasteners=(*state.fasteners, held))
        case Turned():
            return state._replace(turned=not state.turned)


def revert_event(state: State, event: Event) -> State:
    """Return the state before the event, which must have been the last one."""
    match event:
        case Laid():
            stacks = state.stacks
            for seat in event.seats:
                stacks = _remove_loop(stacks, seat.holder, seat.bight)
            return state._replace(stacks=stacks, bands=state.bands - 1)
        case Drawn():
            stacks = _remove_loop(state.stacks, event.target, event.bight)
            through = event.through[len(event.slid) :]
            if event.slid and state.inside[event.slid[0]] == (event.bight,):  # the first they were slid on to
                stacks = stacks.set(HOOK, event.slid)
            if "." in event.target and not set(through) & set(stacks.get(event.source, ())):
                stacks = stacks.set(event.source, (event.bight, *_loops_passed(event)))
            elif not event.lifted:
                stacks = _insert_below(stacks, event.source, event.bight, len(through) + len(event.skipped))
            return state._replace(stacks=stacks, inside=_unthread(state.inside, event.through, 1))
        case Moved():
            stacks = _remove_loop(state.stacks, event.target, event.bight)
            return state._replace(stacks=_insert_below(stacks, event.source, event.bight, 0))
        case Lifted():
            stacks = _insert_below(state.stacks, event.holder, event.bight, len(event.over))
            return state._replace(
                stacks=stacks, inside=_unthread(state.inside, (event.bight,), len(event.over))
            )
        case Fastened():
            stacks = state.stacks
            rest = list(event.caught)
            for holder, count in zip(event.holders, event.counts, strict=True):
                top_first, rest = rest[:count], rest[count:]
                if holder == START:
                    continue
                stacks = stacks.set(holder, (*stacks.get(holder, ()), *top_first[::-1]))
            return state._replace(stacks=stacks, fasteners=state.fasteners[:-1])
        case Turned():
            return state._replace(turned=not state.turned)


def _lay_band(state: State, event: Laid) -> State:
    stacks = state.stacks
    for seat in event.seats:
        loops = stacks.get(seat.holder, ())
        # A band laid beneath lies under the loops of the holder it is about to be pulled through.
        stacks = stacks.set(seat.holder, (seat.bight, *loops) if event.beneath else (*loops, seat.bight))
    return state._replace(stacks=stacks, bands=state.bands + 1)


def _loops_passed(event: Drawn) -> Stack:
    """Return the loops that a last band was pulled through or past, bottom first."""
    return (*event.skipped[::-1], *event.through[::-1])


def _remove_loop(stacks: Map[str, Stack], holder: str, bight: Bight) -> Map[str, Stack]:
    return with_stack(stacks, holder, tuple(b for b in stacks[holder] if b != bight))


def _insert_below(stacks: Map[str, Stack], holder: str, bight: Bight, above: int) -> Map[str, Stack]:
    loops = stacks.get(holder, ())
    cut = len(loops) - above
    return stacks.set(holder, (*loops[:cut], bight, *loops[cut:]))


def _thread(inside: Map[Bight, Stack], loops: Stack, ribbons: Stack) -> Map[Bight, Stack]:
    for loop in loops:
        inside = inside.set(loop, (*inside.get(loop, ()), *ribbons))
    return inside


def _unthread(inside: Map[Bight, Stack], loops: Stack, count: int) -> Map[Bight, Stack]:
    for loop in loops:
        kept = inside[loop][:-count]
        inside = inside.set(loop, kept) if kept else inside.delete(loop)
    return inside
