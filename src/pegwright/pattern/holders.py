"""Where a step names pegs, free ends and other holders of loops."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar

import msgspec

from pegwright.pattern.address import Address, is_address, parse_address, peg_name
from pegwright.pattern.moves import StepFields

__all__ = ["HOLDER_FIELDS", "named_holders", "named_pegs", "with_holders", "with_pegs"]

HOLDER_FIELDS = ("source", "on", "at", "target", "over")
"""The fields of a step that name holders."""

AStep = TypeVar("AStep", bound=StepFields)


def named_holders(step: StepFields) -> list[str]:
    """Return every holder that a step names itself, in order, as often as it does."""
    values = [getattr(step, name, None) or () for name in HOLDER_FIELDS]
    return [one for value in values for one in ((value,) if isinstance(value, str) else value)]


def named_pegs(step: StepFields) -> tuple[str, ...]:
    """Return the pegs that a step names itself, in order, each once."""
    return tuple(dict.fromkeys(filter(is_address, named_holders(step))))


def with_pegs(step: AStep, change: Callable[[Address], Address]) -> AStep | None:
    """Return the step with each of its pegs changed, or None where one would have no address."""
    there = {peg: peg_name(*change(parse_address(peg))) for peg in named_pegs(step)}
    if None in there.values():
        return None
    return with_holders(step, lambda holder: there.get(holder) or holder)


def with_holders(step: AStep, change: Callable[[str], str], **more: Any) -> AStep:
    """Return the step with each of its holders changed, and with other fields set to new values."""
    for name in HOLDER_FIELDS:
        value = getattr(step, name, None)
        if value is not None:
            more[name] = change(value) if isinstance(value, str) else tuple(map(change, value))
    return msgspec.structs.replace(step, **more) if more else step
