"""Put hooks from one peg in the right order: the upper loop first, so that no band is dragged along."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import msgspec

from pegwright.finding import Fix, phrase
from pegwright.loom.events import Bight, Drawn, Event
from pegwright.loom.history import AppliedMove, History
from pegwright.loom.machine import Effect, apply_move
from pegwright.pattern import Hook, Move, Pattern

_WIDEST = 60
_FORESIGHT = 2000


def reorder_top_first(pattern: Pattern, history: History, first: int, last: int) -> Fix | None:
    """Return the fix that works the hooks from one peg from the top, or None.

    `first` and `last` are places in the history: of the hook that went through a loop, and of the hook that
    then drags it along. The new order is tried: every move between them must take the same loop and drag
    nothing, and the moves after them (up to `_FORESIGHT`) must still take the loops they took before.
    """
    window = history.moves[first : last + 1]
    paths = _paths_in_a_row(window)
    source = getattr(window[-1].move, "source", None)
    if paths is None or source is None:
        return None
    hooks = [d for d in window if getattr(d.move, "source", None) == source]
    if not all(isinstance(m := d.move, Hook) and m.through is None and m.together == 1 for d in hooks):
        return None
    stack = history.before(first).stack(source)
    if any(_hooked_loop(d) not in stack for d in hooks):
        return None
    hooks.sort(key=lambda d: -stack.index(_hooked_loop(d)))
    order = hooks + [d for d in window if d not in hooks]
    state = history.before(first)
    steps: list[Any] = []
    for done in order:
        move: Move = done.move
        step = _step_at(pattern, done.path)
        if done in hooks:
            loop = state.stack(source).index(_hooked_loop(done)) + 1
            move, step = (msgspec.structs.replace(m, loop=loop) for m in (move, step))
        outcome = apply_move(history.board, state, move)
        if not isinstance(outcome, Effect) or not _same_loops(outcome.events, done.events):
            return None
        if any(getattr(event, "dragged", ()) for event in outcome.events):
            return None
        state = outcome.state
        steps.append(step)
    for done in history.moves[last + 1 : last + 1 + _FORESIGHT]:
        outcome = apply_move(history.board, state, done.move)
        if not isinstance(outcome, Effect) or not _same_loops(outcome.events, done.events):
            return None
        state = outcome.state
    patch = tuple(
        {"op": "replace", "path": path, "value": msgspec.json.decode(msgspec.json.encode(step))}
        for path, step in zip(paths, steps, strict=True)
        if step != _step_at(pattern, path)
    )
    return Fix(phrase("fix-upper-first", peg=source), patch)


def _paths_in_a_row(window: Sequence[AppliedMove]) -> list[str] | None:
    """Return the paths of the window's steps, if they stand one after the other in one list of one round."""
    if not 2 <= len(window) <= _WIDEST:
        return None
    paths = [d.path for d in window]
    parent, _, first = paths[0].rpartition("/")
    if len({d.located.rounds for d in window}) > 1:
        return None
    return paths if paths == [f"{parent}/{int(first) + k}" for k in range(len(paths))] else None


def _hooked_loop(done: AppliedMove) -> Bight:
    event = done.events[0]
    assert isinstance(event, Drawn)
    return event.bight


def _same_loops(new: Sequence[Event], old: Sequence[Event]) -> bool:
    return [getattr(e, "bight", None) for e in new] == [getattr(e, "bight", None) for e in old]


def _step_at(pattern: Pattern, path: str) -> Any:
    at: Any = pattern
    for part in path.split("/")[1:]:
        at = at[int(part)] if part.isdigit() else getattr(at, part)
    return at
