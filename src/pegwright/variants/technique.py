"""What every technique of the atlas has, and how its swatch is begun."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from pegwright.finding import Phrase
from pegwright.pattern import Pattern, PatternBuilder, Round, Rows

__all__ = ["RING_MM", "Technique", "begin_swatch", "colour_of"]

RING_MM = 16.0
"""From peg to peg of a small round loom."""


class Technique(NamedTuple):
    """A technique: a name for its files, its group, its title, and how it is made of so many repeats.

    `repeats` are those of a shorter and a longer swatch: enough that both lie the same way round. One that is
    `closed` grows round about, so it has no length of its own.
    """

    name: str
    group: str
    title: Phrase
    make: Callable[[int], Pattern]
    repeats: tuple[int, int] = (3, 5)
    closed: bool = False


def begin_swatch(loom: Rows | Round) -> PatternBuilder:
    """Return a pattern without steps, in two colours, A and F."""
    return (
        PatternBuilder("Swatch", loom)
        .colour("A", "slate blue", "#34506b")
        .colour("F", "foam white", "#f2efe6")
    )


def colour_of(number: int) -> str:
    """Return the letters of the two colours in turn."""
    return "AF"[number % 2]
