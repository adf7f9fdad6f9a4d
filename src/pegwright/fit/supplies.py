"""What a piece takes: bands by colour and kind, clips, tools, and the weight of each heap."""

from __future__ import annotations

import math
from collections import Counter
from fractions import Fraction
from typing import Literal

import msgspec

from pegwright.finding import RefusedError, phrase
from pegwright.fit.weights import band_mass_g
from pegwright.loom import Fastened, History, Laid
from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Hang,
    JoinedLooms,
    Knot,
    Layout,
    Move,
    Pattern,
    Pegs,
    Place,
    Round,
    Rows,
    Turn,
    Wind,
    band_types_by_letter,
    colours_by_letter,
)

__all__ = ["Heap", "Job", "LoomNeed", "Supplies", "count_supplies", "supplies_for_class"]

Job = Literal["placed", "caps", "hung", "finishing", "extension"]
LoomKind = Literal["straight", "round", "pegs"]


class Heap(msgspec.Struct, frozen=True, kw_only=True):
    """The bands of one colour letter, told apart by what they are for.

    `name` and `hex` are empty if the letter is not listed; `band` is the kind of band. `band_g` is the mass
    of one band in g, None if its kind is not listed; `weighed` means that it was measured.
    """

    letter: str
    name: str = ""
    hex: str = ""
    band: str = ""
    placed: int = 0
    caps: int = 0
    hung: int = 0
    finishing: int = 0
    extension: int = 0
    spares: int = 0
    band_g: float | None = None
    weighed: bool = False

    @property
    def worked(self) -> int:
        """Bands that go into the work."""
        return self.placed + self.caps + self.hung + self.finishing + self.extension

    @property
    def total(self) -> int:
        """Bands to get ready, spares included."""
        return self.worked + self.spares

    @property
    def mass_g(self) -> float | None:
        """Mass of the heap in g, spares included; None if the kind of band is unknown."""
        return None if self.band_g is None else self.total * self.band_g


class LoomNeed(msgspec.Struct, frozen=True, kw_only=True):
    """Looms of one sort: straight ones of rows × pegs, round ones of rings × pegs, or a board of single pegs.

    `pitch_mm` is the distance from peg to peg along a row or round the ring; None on a board of single pegs.
    """

    kind: LoomKind
    rows: int
    pegs: int
    count: int = 1
    pitch_mm: float | None = None


class Supplies(msgspec.Struct, frozen=True, kw_only=True):
    """Everything needed for `pieces` pieces. Heaps are in the order of the pattern's colours."""

    pieces: int = 1
    heaps: tuple[Heap, ...] = ()
    clips: int = 0
    spare_clips: int = 0
    knots: int = 0
    looms: tuple[LoomNeed, ...] = ()
    hooks: int = 0
    scissors: int = 0

    @property
    def bands(self) -> int:
        """All bands, spares included."""
        return sum(heap.total for heap in self.heaps)

    @property
    def mass_g(self) -> float | None:
        """Mass of all bands in g; None if a kind of band is unknown."""
        masses = [heap.mass_g for heap in self.heaps]
        return None if None in masses else sum(mass for mass in masses if mass is not None)


def count_supplies(pattern: Pattern, history: History) -> Supplies:
    """Count what the moves of a history use. Refused moves use nothing."""
    jobs: dict[str, Counter[Job]] = {}
    fasteners: Counter[str] = Counter()
    hook = False
    letters = iter(history.colours)
    for done in history.moves:
        hook = hook or not isinstance(done.move, Place | Wind | Turn | Knot | Clip)
        for event in done.events:
            if isinstance(event, Laid):
                jobs.setdefault(next(letters), Counter())[_job_of(done.move)] += 1
            elif isinstance(event, Fastened):
                fasteners[event.kind] += 1
    listed = [colour.letter for colour in pattern.colours]
    order = sorted(jobs, key=lambda letter: listed.index(letter) if letter in listed else len(listed))
    return Supplies(
        heaps=tuple(_build_heap(pattern, letter, jobs[letter]) for letter in order),
        clips=fasteners["clip"],
        knots=fasteners["knot"],
        looms=_loom_needs(pattern.loom),
        hooks=int(hook),
        scissors=int(fasteners["knot"] > 0),  # only a cord needs cutting
    )


def supplies_for_class(one: Supplies, learners: int, spare_share: float = 0.1) -> Supplies:
    """Return the supplies for a class, each learner with a loom, a hook and scissors of their own.

    Spares are `spare_share` of each heap of bands, and of the clips, rounded up to whole ones.

    Raises:
        ValueError: there is no learner, or the share is outside 0 to 10.
    """
    if learners < 1 or not 0 <= spare_share <= 10:
        raise RefusedError(phrase("class-size", learners=learners, spare_share=spare_share))
    share = Fraction(str(spare_share))  # exact: a tenth of 30 is 3, not 3.0000000000000001
    heaps = []
    for heap in one.heaps:
        counts = {
            job: getattr(heap, job) * learners for job in ("placed", "caps", "hung", "finishing", "extension")
        }
        heaps.append(
            msgspec.structs.replace(heap, **counts, spares=math.ceil(heap.worked * learners * share))
        )
    return msgspec.structs.replace(
        one,
        pieces=one.pieces * learners,
        heaps=tuple(heaps),
        clips=one.clips * learners,
        spare_clips=math.ceil(one.clips * learners * share),
        knots=one.knots * learners,
        looms=tuple(msgspec.structs.replace(loom, count=loom.count * learners) for loom in one.looms),
        hooks=one.hooks * learners,
        scissors=one.scissors * learners,
    )


def _job_of(move: Move) -> Job:
    match move:
        case Wind():
            return "caps"
        case Hang():
            return "hung"
        case Bind():
            return "finishing"
        case Extend():
            return "extension"
        case _:
            return "placed"


def _build_heap(pattern: Pattern, letter: str, jobs: Counter[Job]) -> Heap:
    colour = colours_by_letter(pattern).get(letter)
    band = band_types_by_letter(pattern).get(letter)
    return Heap(
        letter=letter,
        name=colour.name if colour else "",
        hex=colour.hex if colour else "",
        band=colour.band if colour else "",
        placed=jobs["placed"],
        caps=jobs["caps"],
        hung=jobs["hung"],
        finishing=jobs["finishing"],
        extension=jobs["extension"],
        band_g=band_mass_g(band) if band else None,
        weighed=band is not None and band.weight_100_g is not None,
    )


def _loom_needs(layout: Layout) -> tuple[LoomNeed, ...]:
    match layout:
        case Rows():
            return (LoomNeed(kind="straight", rows=layout.rows, pegs=layout.pegs, pitch_mm=layout.pitch_mm),)
        case JoinedLooms():
            sorts = Counter((loom.rows, loom.pegs, loom.pitch_mm) for loom in layout.looms)
            return tuple(
                LoomNeed(kind="straight", rows=rows, pegs=pegs, pitch_mm=pitch, count=count)
                for (rows, pegs, pitch), count in sorts.items()
            )
        case Round():
            pitch = layout.diameter_mm * math.sin(math.pi / layout.pegs)
            return (LoomNeed(kind="round", rows=layout.rings, pegs=layout.pegs, pitch_mm=pitch),)
        case Pegs():
            return (LoomNeed(kind="pegs", rows=1, pegs=len(layout.pegs)),)
