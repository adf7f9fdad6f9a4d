"""A longer or shorter piece of the same design: more repeats or fewer, the ends left as they are.

The unit is what the piece's repeated steps have in common: along the loom, the least common multiple of how
far each of them moves on; in a piece that grows away from the loom, one time of the step that is repeated
most. Only the piece's own steps are looked at, not those within motifs. Whether the other piece is worked
without fault and holds is for the line to say: nothing here looks at the loom but for its room.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import msgspec

from pegwright.finding import RefusedError, phrase
from pegwright.pattern.address import Address, is_address, parse_address
from pegwright.pattern.document import Pattern
from pegwright.pattern.holders import named_pegs, with_holders
from pegwright.pattern.layout import pegs
from pegwright.pattern.moves import PatternStep, Repeat, Use

__all__ = ["Repeats", "repeats_of", "with_repeats"]


class Repeats(NamedTuple):
    """How many units the piece has, how many the loom has room for (None: any), and the pegs of one."""

    now: int
    most: int | None
    pegs: int


def repeats_of(pattern: Pattern) -> Repeats | None:
    """Return the repeats of a piece, or None where its steps have none in common."""
    whole = _repeated_steps(pattern)
    if not whole:
        return None
    if not any(along for _, _, along in whole):
        return Repeats(whole[0][1], None, 0)
    unit = math.lcm(*(along for _, _, along in whole))
    now = min(times * along // unit for _, times, along in whole)
    room = max(parse_address(peg.at).number for peg in pegs(pattern.loom)) - _farthest_peg(pattern)
    return Repeats(now, now + max(room, 0) // unit, unit) if now else None


def with_repeats(pattern: Pattern, repeats: int) -> Pattern:
    """Return the piece with so many repeats; what its far half names moves on, or back, with its end.

    Counts that were stated for the piece are left out: they are of another length.

    Raises:
        ValueError: the piece has no repeats, or fewer than 1 are asked for.
    """
    of = repeats_of(pattern)
    if of is None or repeats < 1:
        raise RefusedError(phrase("repeats-impossible", repeats=repeats))
    more, far = (repeats - of.now) * of.pegs, _farthest_peg(pattern) / 2
    steps = [_shift_step(step, more, far) for step in pattern.steps]
    for at, times, along in _repeated_steps(pattern):
        units = of.pegs // along if along else 1
        steps[at] = msgspec.structs.replace(steps[at], times=times + (repeats - of.now) * units)
    return msgspec.structs.replace(pattern, steps=tuple(steps), stated=None)


def _repeated_steps(pattern: Pattern) -> list[tuple[int, int, int]]:
    """Return the repeated steps that run all along the piece: which, how often, how many pegs each time.

    Where there is none, it is the step that makes the piece grow in its place: the one repeated most.
    """
    plain = [
        (at, step.times, abs(step.pegs))
        for at, step in enumerate(pattern.steps)
        if isinstance(step, Repeat) and isinstance(step.times, int) and step.times and not step.rows
    ]
    reach = _farthest_peg(pattern)
    along = [one for one in plain if 2 * one[1] * one[2] > reach]
    growing = [one for one in plain if not one[2]]
    return along or sorted(growing, key=lambda one: one[1])[-1:]


def _farthest_peg(pattern: Pattern) -> int:
    """Return the number of the farthest peg that the piece's own steps name or come to."""
    return max(map(_farthest_peg_of_step, pattern.steps), default=0)


def _farthest_peg_of_step(step: PatternStep) -> int:
    match step:
        case Repeat():
            inner = max(map(_farthest_peg_of_step, step.steps), default=0)
            times = step.times if isinstance(step.times, int) else 0
            return inner + max(times - 1, 0) * max(step.pegs, 0) if inner else 0
        case Use():
            return step.pegs + 1
        case _:
            return max((parse_address(peg).number for peg in named_pegs(step)), default=0)


def _shift_step(step: PatternStep, more: int, far: float) -> PatternStep:
    """Move what a step names beyond `far` by `more` pegs."""

    def shift_holder(holder: str) -> str:
        if not is_address(holder) or parse_address(holder).number <= far:
            return holder
        row, number = parse_address(holder)
        return str(Address(row, max(number + more, 1)))

    match step:
        case Repeat():
            inner = tuple(_shift_step(one, more, far) for one in step.steps)
            return msgspec.structs.replace(step, steps=inner)
        case Use():
            return msgspec.structs.replace(step, pegs=step.pegs + more) if step.pegs + 1 > far else step
        case _:
            return with_holders(step, shift_holder)
