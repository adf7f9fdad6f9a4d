"""The proof as a value: for every band a verdict with its certificate."""

from __future__ import annotations

from typing import NamedTuple

from pegwright.loom import Bight

__all__ = [
    "Cancellation",
    "Free",
    "Held",
    "HeldInLeast",
    "LeastWords",
    "NotProved",
    "PathStep",
    "Proof",
    "Verdict",
]


class PathStep(NamedTuple):
    """One step down a holding path, from a fastener towards the bands that it holds indirectly.

    A step stands for a product of loops. The first (`parent` −1) is the word of fastening `root`. Any other
    is what its `carriers` pass through on the way from their first loop to their second in the parent's
    product; of several carriers each does alone (twin bands). A path ends at a `witness`: a band that the
    parent's product turns round a number of times other than 0. Every step is followed by the steps below
    it; so a chain, from a step to the first witness below, is a run of neighbours. A step with a `loan`
    passes through the same product as that other step, and goes on as the chain from there does. A root with
    a band `without` is the fastening's word less that band's loops: the far end of a piece that the fastener
    closes into a ring.
    """

    parent: int
    carriers: tuple[int, ...] = ()
    witness: int = 0
    root: int = -1
    loan: int = -1
    without: int = 0


class Held(NamedTuple):
    """Held: the band is a carrier of `step`, or (`witness`) the step is the band's own end of a path."""

    step: int
    witness: bool


class LeastWords(NamedTuple):
    """The fasteners' words made least by partial conjugations, with what shows that they are.

    Only the `letters` are kept, each (band, loop), loop −1 where all of a band's loops share it; bands that
    have none are ignored. A symbol is a word: s from 1 on is the letter `letters[s − 1]`, then follow the
    products `joins` of two symbols each; −s is the inverse of s and 0 the empty word. Each step (w, bands) is
    x → w x w⁻¹ for all letters x of the bands. `outers[k]` says of each fastener's word what is cut off after
    k steps: o, where o · w · o⁻¹ becomes w. What is left after all of them are `words`, cyclically reduced.
    `flows` gives for a band m what flows from band to band (from, to, amount) so that all that comes from the
    letter x_m leaves for x_m⁻¹; a band that needs none is left out.
    """

    letters: tuple[tuple[int, int], ...]
    joins: tuple[tuple[int, int], ...]
    steps: tuple[tuple[int, tuple[int, ...]], ...]
    outers: tuple[tuple[int, ...], ...]
    words: tuple[int, ...]
    flows: dict[int, tuple[tuple[int, int, int], ...]]


class HeldInLeast(NamedTuple):
    """Held: the band occurs in the least word of that fastening (counted from 0)."""

    fastening: int


class Cancellation(NamedTuple):
    """Two neighbouring loops of one band that undo each other: what went through both slips out.

    `event` is the event whose loops (`through`, `over` or `caught`) they are.
    """

    event: int
    upper: Bight
    lower: Bight


class Free(NamedTuple):
    """Free: after all cancellations no fastener uses the band, or (`least`) it is in none of the least words.

    Where a band in use carries a twist of its own, these are the words `apart`.
    """

    least: bool = False


class NotProved(NamedTuple):
    """Neither could be shown. `reason`: `twist` (`because` lists the bands with it), `across` (those that
    lie across), or `too-long`.
    """

    reason: str
    because: tuple[int, ...] = ()


Verdict = Held | HeldInLeast | Free | NotProved


class Proof(NamedTuple):
    """A verdict for every band, and the certificates they point into.

    `steps` and `least` certify what is held; `cancellations`, `least` and `apart` what is free. In `apart`
    each loop of a band that carries a twist of its own has its letter, so that nothing rests on one of them
    undoing another: its steps are moves of hands, and need not lead to the least words. They free flat bands
    only, and none that a twisted band went through, or that went through a folded one.
    """

    verdicts: dict[int, Verdict]
    steps: tuple[PathStep, ...] = ()
    cancellations: tuple[Cancellation, ...] = ()
    least: LeastWords | None = None
    apart: LeastWords | None = None

    @property
    def held(self) -> tuple[int, ...]:
        """The bands proved held, in order."""
        return tuple(b for b, v in self.verdicts.items() if isinstance(v, Held | HeldInLeast))

    @property
    def free(self) -> tuple[int, ...]:
        """The bands proved free, in order."""
        return tuple(b for b, v in self.verdicts.items() if isinstance(v, Free))

    @property
    def unproved(self) -> tuple[int, ...]:
        """The bands about which nothing is proved, in order."""
        return tuple(b for b, v in self.verdicts.items() if isinstance(v, NotProved))
