"""What passes through what: the words of the link, kept shared, read from the machine's events.

Every band b has a generator x_b of a free group. A string let down through a loop and pulled back to the
moment when all bands lay flat picks up the loop's element φ = P · x_b^±1 · P⁻¹. The products P are shared
and never written out, because they double with every band of a plain chain.

    Word    a product of factors, in the order in which a string meets them (top of the stack first)
    factor  ±(loop, trail), numbered so that `factor ^ 1` is its inverse and `factor >> 1` its core
    trail   the words the loop went through, outermost first: a linked list of (word, inner trail)

Equal words, trails and factors carry equal numbers (hash-consing), so equality is a comparison of ints.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple

from pegwright.loom import Bight, Drawn, Event, Fastened, Laid, Lifted, Moved, is_put_on
from pegwright.structure.crossings import PlanPoint, find_bands_across

__all__ = ["Fastening", "Structure", "structure_of"]

NO_TRAIL = 0


class Fastening(NamedTuple):
    """A fastener: the event that made it, its kind, and the word of the loops it caught."""

    event: int
    fastener: int
    kind: str
    word: int


class Structure(NamedTuple):
    """The made thing, as far as the question "is it held?" needs it. All numbers are indices from 0.

    `bands` are the bands in the order they were taken up. `loops[i]` is a bight, `owner[i]` its band.
    `cores[k]` is (loop, trail); factor `2k` is that core, `2k + 1` its inverse. `trails[t]` is (word, inner
    trail), `trails[0]` the empty one. `words[w]` are factors; `made[w]` is the event that first made it.
    `passes` are the words in the order of the events (event, word) in which something passed through them.
    `passing[i]` lists the events in which something was put through loop i. `twists` says of each band that
    carries a twist of its own, or may, why: such a band can cling where its word alone says it falls.
    `across` gives for a band the bands that lie over and under it, or a band beside it, in a circle (see
    `crossings`), where the pegs' places are known: they too can keep a band whose word says it falls.
    """

    bands: tuple[int, ...]
    loops: tuple[Bight, ...]
    owner: tuple[int, ...]
    cores: tuple[tuple[int, int], ...]
    trails: tuple[tuple[int, int], ...]
    words: tuple[tuple[int, ...], ...]
    made: tuple[int, ...]
    passes: tuple[tuple[int, int], ...]
    fastenings: tuple[Fastening, ...]
    passing: tuple[tuple[int, ...], ...]
    twists: dict[int, str]
    across: Mapping[int, frozenset[int]] = {}

    def crossed_bands(self) -> frozenset[int]:
        """Return the bands that may be crossed: laid with a half-twist, or put on from a free end."""
        return frozenset(band for band, why in self.twists.items() if why in ("half-twist", "put-on"))

    def unused_loops(self) -> tuple[Bight, ...]:
        """Return the loops that nothing passes through."""
        return tuple(loop for loop, through in zip(self.loops, self.passing, strict=True) if not through)


class _WordTables:
    """Numbers for cores, trails and words while a history is read; equal things get equal numbers."""

    def __init__(self) -> None:
        self.cores: list[tuple[int, int]] = []
        self.core_number: dict[tuple[int, int], int] = {}
        self.trails: dict[tuple[int, int], int] = {(-1, -1): NO_TRAIL}
        self.words: dict[tuple[int, ...], int] = {}
        self.made: list[int] = []
        self.passes: list[tuple[int, int]] = []

    def factor(self, loop: int, trail: int, sign: int) -> int:
        core = self.core_number.setdefault((loop, trail), len(self.cores))
        if core == len(self.cores):
            self.cores.append((loop, trail))
        return 2 * core + (sign < 0)

    def conjugate(self, word: int, factor: int) -> int:
        loop, trail = self.cores[factor >> 1]
        outer = self.trails.setdefault((word, trail), len(self.trails))
        return self.factor(loop, outer, -1 if factor & 1 else 1)

    def word(self, factors: Iterable[int], event: int) -> int:
        key = tuple(factors)
        known = self.words.setdefault(key, len(self.words))
        if known == len(self.made):
            self.made.append(event)
        self.passes.append((event, known))
        return known


def structure_of(events: Sequence[Event], spots: Mapping[str, PlanPoint] | None = None) -> Structure:
    """Read the words of the link from a history, by the calculus of `docs/line.md`.

    A freshly laid loop has φ = x_b^sign. A loop drawn through loops of product g gets g φ⁻¹ g⁻¹. Lifting
    L over loops turns each of their φ into φ(L)⁻¹ φ φ(L). A moved loop keeps its φ. A fastener's word is
    the product over the loops it caught. `spots` are the pegs' places in plan, in mm.

    Raises:
        ValueError: an event names a loop or a band that was never laid, or lays one twice.
    """
    tables = _WordTables()
    number: dict[Bight, int] = {}
    now: list[int] = []  # the present factor of each loop
    owner: list[int] = []
    passing: list[list[int]] = []
    seats: dict[int, frozenset[str]] = {}
    twists: dict[int, str] = {}
    fastenings: list[Fastening] = []
    for when, event in enumerate(events):
        try:
            if isinstance(event, Laid):
                if event.band in seats:
                    raise ValueError(f"event {when}: band {event.band} is laid twice")
                holders = [seat.holder for seat in event.seats]
                seats[event.band] = frozenset(holders)
                reason = _twist_reason(event, holders)
                if reason:
                    twists[event.band] = reason
                for bight, _, sign in event.seats:
                    number[bight] = len(now)
                    now.append(tables.factor(len(now), NO_TRAIL, sign))
                    owner.append(event.band)
                    passing.append([])
            elif isinstance(event, Drawn):
                loop = number[event.bight]
                met = [number[bight] for bight in event.through]
                _note_passing(met, when, passing)
                home = seats[event.bight.band]
                # a fold between two of three pegs or more takes the third side along, half turned over
                if len(home) > 2 or event.source not in home or event.target not in home:
                    twists.setdefault(event.bight.band, "carried-on")
                if met:
                    word = tables.word([now[i] for i in met], when)
                    now[loop] = tables.conjugate(word, now[loop]) ^ 1
                else:
                    now[loop] ^= 1
            elif isinstance(event, Lifted):
                loop = number[event.bight]
                if event.over:
                    word = tables.word([now[loop] ^ 1], when)
                    passing[loop].append(when)
                    for bight in event.over:
                        now[number[bight]] = tables.conjugate(word, now[number[bight]])
            elif isinstance(event, Moved):
                twists.setdefault(event.bight.band, "carried-flat")
            elif isinstance(event, Fastened):
                met = [number[bight] for bight in event.caught]
                _note_passing(met, when, passing)
                word = tables.word([now[i] for i in met], when)
                fastenings.append(Fastening(when, event.fastener, event.kind, word))
        except KeyError as missing:
            raise ValueError(f"event {when} names {missing.args[0]}, which was never laid") from None
    twists |= dict.fromkeys(_put_on_bands(events), "put-on")
    return Structure(
        bands=tuple(seats),
        loops=tuple(number),
        owner=tuple(owner),
        cores=tuple(tables.cores),
        trails=tuple(tables.trails),
        words=tuple(tables.words),
        made=tuple(tables.made),
        passes=tuple(tables.passes),
        fastenings=tuple(fastenings),
        passing=tuple(map(tuple, passing)),
        twists=twists,
        across=find_bands_across(events, spots) if spots else {},
    )


def _put_on_bands(events: Sequence[Event]) -> Iterator[int]:
    """Yield the bands of which a loop is put on a peg from a free end."""
    for event in events:
        if isinstance(event, Drawn | Moved) and is_put_on(event):
            yield event.bight.band


def _note_passing(met: list[int], when: int, passing: list[list[int]]) -> None:
    for loop in met:
        passing[loop].append(when)


def _twist_reason(event: Laid, holders: list[str]) -> str:
    if any(event.twists):
        return "half-twist"
    if len(set(holders)) < len(holders):
        return "wound"
    return ""
