"""The lists of steps that a document holds, and single changes to them as patches."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, NamedTuple

import msgspec

from pegwright.finding import Phrase
from pegwright.pattern import Move, Pattern, PatternStep, Repeat, Use

__all__ = ["StepEdit", "StepList", "change_step", "put_in", "step_lists", "swap_steps", "take_out"]


class StepEdit(NamedTuple):
    """One change to the steps: what it does, and a JSON Patch (RFC 6902) on the document.

    `doubt` orders the changes: the likeliest cause has the least.
    """

    label: Phrase
    patch: tuple[dict[str, Any], ...]
    doubt: float


class StepList(NamedTuple):
    """A list of steps of a document, and its path (JSON Pointer)."""

    path: str
    steps: tuple[PatternStep, ...]

    def moves(self) -> Iterator[tuple[int, Move]]:
        """Yield the plain moves, each with its index in the list."""
        for at, step in enumerate(self.steps):
            if not isinstance(step, Repeat | Use):
                yield at, step


def step_lists(pattern: Pattern) -> Iterator[StepList]:
    """Yield the pattern's own steps, those of its motifs, and those of every repeat in them."""
    waiting = [StepList("/steps", pattern.steps)]
    waiting += [StepList(f"/motifs/{i}/steps", motif.steps) for i, motif in enumerate(pattern.motifs)]
    while waiting:
        one = waiting.pop(0)
        yield one
        for at, step in enumerate(one.steps):
            if isinstance(step, Repeat):
                waiting.append(StepList(f"{one.path}/{at}/steps", step.steps))


def _raw(step: PatternStep) -> Any:
    return msgspec.json.decode(msgspec.json.encode(step))


def change_step(path: str, at: int, step: PatternStep) -> tuple[dict[str, Any], ...]:
    """Return the patch that replaces a step."""
    return ({"op": "replace", "path": f"{path}/{at}", "value": _raw(step)},)


def put_in(path: str, at: int, *steps: PatternStep) -> tuple[dict[str, Any], ...]:
    """Return the patch that inserts steps before the one at an index."""
    return tuple(
        {"op": "add", "path": f"{path}/{at + k}", "value": _raw(step)} for k, step in enumerate(steps)
    )


def take_out(path: str, at: int) -> tuple[dict[str, Any], ...]:
    """Return the patch that removes a step."""
    return ({"op": "remove", "path": f"{path}/{at}"},)


def swap_steps(path: str, at: int, steps: tuple[PatternStep, ...]) -> tuple[dict[str, Any], ...]:
    """Return the patch that swaps a step and the next."""
    return (*change_step(path, at, steps[at + 1]), *change_step(path, at + 1, steps[at]))
