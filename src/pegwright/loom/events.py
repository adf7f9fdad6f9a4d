"""What really happened to the bands: the machine's record, read by structure and every room after it.

A history is a sequence of these events. They name loops (`Bight`) and holders only; no geometry, no
colours, no words. The calculus of `docs/line.md` reads the words of the link straight from them.
"""

from __future__ import annotations

from typing import NamedTuple

import msgspec


class Bight(NamedTuple):
    """A loop of a band. `band` counts from 1 in the order in which bands were taken up; `index` from 0."""

    band: int
    index: int  # type: ignore[assignment]  # a loop's index along its band; tuple.index is not wanted here

    def __str__(self) -> str:
        return f"{self.band}{_letters(self.index)}"


def _letters(index: int) -> str:
    text = ""
    index += 1
    while index:
        index, digit = divmod(index - 1, 26)
        text = chr(ord("a") + digit) + text
    return text


class Seat(NamedTuple):
    """Where a loop of a freshly laid band sits: on which holder, and facing up (+1) or turned over (−1)."""

    bight: Bight
    holder: str
    sign: int


class Laid(msgspec.Struct, frozen=True, tag="laid"):
    """A band is laid flat round its holders, on top of every stack, or beneath them all.

    `seats` run along the band; equal holders in a row are the turns wound round that holder, lowest first.
    `twists[i]` counts the half-twists between the i-th holder and the next (one entry per change of holder),
    below nothing those in which the strand on the right crosses over.
    """

    band: int
    seats: tuple[Seat, ...]
    twists: tuple[int, ...]
    beneath: bool = False


class Drawn(msgspec.Struct, frozen=True, tag="drawn"):
    """A loop is pulled up through loops and put, turned over, on top of another holder's stack.

    `through` are the loops it went through, the last one passed first: bands slid from the hook's shaft
    (`slid`, also the head of `through`; the same for all loops that they are slid on to at once), then the
    loops of the source's stack from the top down.
    `skipped` are the loops that lay above it and that it did not go through, top first.
    `dragged` are the loops whose ribbons lie inside it and are taken along. `lifted` says that it was lifted
    off the source just before (a `Lifted` event) and goes through nothing more: over the peg's top, so that
    it is turned over too.
    """

    bight: Bight
    source: str
    target: str
    through: tuple[Bight, ...]
    skipped: tuple[Bight, ...] = ()
    dragged: tuple[Bight, ...] = ()
    slid: tuple[Bight, ...] = ()
    lifted: bool = False


class Moved(msgspec.Struct, frozen=True, tag="moved"):
    """The top loop of a stack is put on top of another stack, not turned over."""

    bight: Bight
    source: str
    target: str
    dragged: tuple[Bight, ...] = ()


def is_put_on(event: Drawn | Moved) -> bool:
    """Say whether a loop of a free end is put on a peg."""
    return "." in event.source and "." not in event.target


class Lifted(msgspec.Struct, frozen=True, tag="lifted"):
    """A loop is carried over all the loops above it (`over`, top first) and off the holder."""

    bight: Bight
    holder: str
    over: tuple[Bight, ...]
    dragged: tuple[Bight, ...] = ()


class Fastened(msgspec.Struct, frozen=True, tag="fastened"):
    """A fastener, taken as a closed ring, goes down through the caught loops.

    `caught` lists them holder by holder, each from the top down; `counts` says how many of them each holder
    gave. `kind` is `clip` or `knot`. The holder `start` stands for the first band where it lay first, its
    first loop having been lifted off its peg since.
    """

    fastener: int
    kind: str
    holders: tuple[str, ...]
    caught: tuple[Bight, ...]
    counts: tuple[int, ...]


class Turned(msgspec.Struct, frozen=True, tag="turned"):
    """The loom is turned round, end for end."""


Event = Laid | Drawn | Moved | Lifted | Fastened | Turned
