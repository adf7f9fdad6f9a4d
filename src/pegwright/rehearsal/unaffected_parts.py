"""What a slip cannot reach: parts of the piece that it leaves as they were hold what they held.

Ignore all bands but those of a part. The words left depend on nothing but the events, less the loops of the
bands ignored. So where a run's events, read so, are those intended, the part's words are those intended, and
what was held in them is held: a band held in a part is held in the piece.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Literal, NamedTuple

from pegwright.loom import Bight, Drawn, Event, Fastened, Laid, Lifted
from pegwright.rehearsal.prepared_history import PreparedHistory
from pegwright.rehearsal.slip_run import SlipRun

__all__ = ["UnaffectedBands", "UnaffectedParts"]


class UnaffectedBands(NamedTuple):
    """What the parts left as they were tell: bands held, and bands that all of these parts have."""

    held: frozenset[int]
    common: frozenset[int]


class UnaffectedParts:
    """Parts of a piece, each with the bands that it holds. Sets of parts are kept as bits of a number."""

    def __init__(
        self, prepared: PreparedHistory, parts: Iterable[tuple[frozenset[int], frozenset[int]]]
    ) -> None:
        self.prepared = prepared
        self.within: dict[int, int] = {}  # the parts that a band is in
        self.holding: dict[int, int] = {}  # the parts that hold it
        self.all = 0
        for number, (keep, held) in enumerate(dict.fromkeys(parts)):
            self.all |= 1 << number
            for band in keep:
                self.within[band] = self.within.get(band, 0) | 1 << number
            for band in held:
                self.holding[band] = self.holding.get(band, 0) | 1 << number

    def after(self, run: SlipRun) -> UnaffectedBands:
        """Return what the parts tell that a run leaves as they were."""
        touched = 0
        for acting, others in _changes(self.prepared, run):
            some = 0
            for band in others:
                some |= self.within.get(band, 0)
            touched |= some if acting is None else some & self.within.get(acting, 0)
        left = self.all & ~touched
        held = frozenset(band for band, parts in self.holding.items() if parts & left)
        bands = range(1, self.prepared.history.final.bands + 1)
        return UnaffectedBands(held, frozenset(b for b in bands if not left & ~self.within.get(b, 0)))


_Change = tuple[int | None, frozenset[int]]
"""A part is touched that has the acting band (if there is one) and any of the others."""


class _Effect(NamedTuple):
    """What an event does to the words: whose loop acts (None: the fastener's), on or through which loops."""

    does: Literal["lays", "draws", "lifts", "fastens"]
    acting: Bight | None
    loops: tuple[Bight, ...]
    signs: tuple[int, ...] = ()


def _changes(prepared: PreparedHistory, run: SlipRun) -> Iterator[_Change]:
    done = prepared.history.moves
    spans = {slip.at: slip.replaces for slip in run.slips}
    for at, events in run.made.items():
        intended: Sequence[Event] = done[at].events
        if at in spans:
            intended = [event for one in done[at : at + spans[at]] for event in one.events]
        if events is intended or any(first < at < first + many for first, many in spans.items()):
            continue
        made, meant = _effects_of(events), _effects_of(intended)
        if len(made) == len(meant):
            for one, other in zip(made, meant, strict=True):
                if one != other:
                    yield from _changes_between(one, other)
        else:
            for effect in (*made, *meant):
                yield _change_by(effect)


def _effects_of(events: Iterable[Event]) -> list[_Effect]:
    found = []
    for event in events:
        match event:
            case Laid():
                signs = tuple(seat.sign for seat in event.seats)
                loops = tuple(seat.bight for seat in event.seats)
                found.append(_Effect("lays", Bight(event.band, 0), loops, signs))
            case Drawn():
                found.append(_Effect("draws", event.bight, event.through))
            case Lifted():
                found.append(_Effect("lifts", event.bight, event.over))
            case Fastened():
                found.append(_Effect("fastens", None, event.caught))
            case _:
                pass
    return found


def _changes_between(made: _Effect, meant: _Effect) -> Iterator[_Change]:
    """Tell one event from another: where the same loop does the same, only the loops that differ count."""
    if made[:2] != meant[:2] or made.does == "lays":
        yield _change_by(made)
        yield _change_by(meant)
        return
    other = set(made.loops) ^ set(meant.loops)
    if [x for x in made.loops if x not in other] != [x for x in meant.loops if x not in other]:
        other |= {*made.loops, *meant.loops}
    yield made.acting and made.acting.band, frozenset(loop.band for loop in other)


def _change_by(effect: _Effect) -> _Change:
    """Tell an event from none. A loop drawn is turned over even where it goes through nothing."""
    band = effect.acting and effect.acting.band
    if band is None or effect.does == "lifts":
        return band, frozenset(loop.band for loop in effect.loops)
    return band, frozenset((band,))
