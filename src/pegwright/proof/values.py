"""The proof as a value: for every band a verdict with its certificate."""

from __future__ import annotations

from typing import NamedTuple

from pegwright.loom.events import Bight

__all__ = ["Free", "Held", "HeldByPart", "NotProved", "Part", "Proof", "Slide", "Slip", "Step", "Verdict"]


class Step(NamedTuple):
    """One step down a path of carriers, from a fastener towards the bands that it holds indirectly.

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


class Slide(NamedTuple):
    """Bands ride together along another: x_i → y x_i y⁻¹ for the bands i, y = x_by (by < 0: its inverse)."""

    by: int
    bands: tuple[int, ...]


class Part(NamedTuple):
    """A few bands, `keep`, that by themselves hold some of their number: every other band is ignored.

    After the slides the fasteners' words, written out with these bands only, are of least length under
    partial conjugations; the held bands still occur in them. With a `step`, the word is that step's product:
    a band held in it is held, as it is on a path of carriers.
    """

    keep: tuple[int, ...]
    slides: tuple[Slide, ...] = ()
    step: int = -1


class HeldByPart(NamedTuple):
    """Held: the part of that index holds the band."""

    part: int


class Slip(NamedTuple):
    """Two neighbouring loops of one band that undo each other: what went through both slips out.

    `event` is the event whose loops (`through`, `over` or `caught`) they are.
    """

    event: int
    upper: Bight
    lower: Bight


class Free(NamedTuple):
    """Free: after all slips no fastener uses the band, or (`slid`) after the proof's slides no longer."""

    slid: bool = False


class NotProved(NamedTuple):
    """Neither could be shown. `reason`: `twist` (`because` lists the bands with it), `across` (those that
    lie across), or `too-long`.
    """

    reason: str
    because: tuple[int, ...] = ()


Verdict = Held | HeldByPart | Free | NotProved


class Proof(NamedTuple):
    """A verdict for every band, and the certificates they point into.

    `steps`, `parts` certify what is held; `slips`, then `slides`, take off what is free.
    """

    verdicts: dict[int, Verdict]
    steps: tuple[Step, ...] = ()
    parts: tuple[Part, ...] = ()
    slips: tuple[Slip, ...] = ()
    slides: tuple[Slide, ...] = ()

    @property
    def held(self) -> tuple[int, ...]:
        """The bands proved held, in order."""
        return tuple(b for b, v in self.verdicts.items() if isinstance(v, Held | HeldByPart))

    @property
    def free(self) -> tuple[int, ...]:
        """The bands proved free, in order."""
        return tuple(b for b, v in self.verdicts.items() if isinstance(v, Free))

    @property
    def unproved(self) -> tuple[int, ...]:
        """The bands about which nothing is proved, in order."""
        return tuple(b for b, v in self.verdicts.items() if isinstance(v, NotProved))
