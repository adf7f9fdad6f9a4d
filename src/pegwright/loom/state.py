"""What the loom holds at one moment. States are frozen and share what they have in common."""

from __future__ import annotations

from typing import NamedTuple

from immutables import Map

from pegwright.loom.events import Bight

HOOK = "hook"
START = "start"
Stack = tuple[Bight, ...]


class Fastener(NamedTuple):
    """A fastener in place: its kind and the loops it caught, as in `Fastened`."""

    kind: str
    caught: tuple[Bight, ...]


class State(NamedTuple):
    """One moment at the loom.

    `stacks` maps a holder (peg, `hook`, free end such as `end.0`) to its loops from the bottom up; empty
    holders are left out. `inside` maps a loop to the loops whose ribbons run through it. `bands` counts the
    bands taken up so far. `turned` says whether the loom stands turned round.
    """

    stacks: Map[str, Stack] = Map()
    inside: Map[Bight, Stack] = Map()
    bands: int = 0
    fasteners: tuple[Fastener, ...] = ()
    turned: bool = False

    def stack(self, holder: str) -> Stack:
        """Return the loops on a holder, bottom first."""
        return self.stacks.get(holder, ())


def with_stack(stacks: Map[str, Stack], holder: str, loops: Stack) -> Map[str, Stack]:
    """Return the stacks with one of them replaced; an empty one disappears."""
    if loops:
        return stacks.set(holder, loops)
    return stacks.delete(holder) if holder in stacks else stacks


def first_loop_is_off(state: State) -> bool:
    """Say whether the first band's first loop has been lifted off, so that a clip can catch it (`start`)."""
    first = Bight(1, 0)
    return first in state.inside and not any(first in loops for loops in state.stacks.values())


def end_holder(state: State, end: str) -> str | None:
    """Return the holder of the free end of that name as it stands now (`end` → `end.3`), if there is one."""
    prefix = end + "."
    return next((h for h in state.stacks if h.startswith(prefix)), None)
