"""Where a step names pegs, ends and other holders of loops."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar

import msgspec

from pegwright.pattern.moves import Step

__all__ = ["holders", "with_holders"]

_FIELDS = ("source", "target", "on", "at", "over")

AStep = TypeVar("AStep", bound=Step)


def holders(step: Step) -> list[str]:
    """Return every holder that a step names itself, in order, as often as it does."""
    values = [getattr(step, name, None) or () for name in _FIELDS]
    return [one for value in values for one in ((value,) if isinstance(value, str) else value)]


def with_holders(step: AStep, put: Callable[[str], str], **more: Any) -> AStep:
    """Return the step with each of its holders put elsewhere, and with other fields changed."""
    for name in _FIELDS:
        value = getattr(step, name, None)
        if value is not None:
            more[name] = put(value) if isinstance(value, str) else tuple(map(put, value))
    return msgspec.structs.replace(step, **more) if more else step
