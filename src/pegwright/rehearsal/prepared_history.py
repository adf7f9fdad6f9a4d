"""A history prepared for rehearsal: what every step touches, and the words of the link after every step."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from immutables import Map

from pegwright.loom import Bight, Drawn, Event, Fastened, History, Laid, Lifted, Moved, is_put_on
from pegwright.rehearsal.peg_neighbours import PegNeighbours, find_peg_neighbours
from pegwright.rehearsal.shared_words import SharedWords

__all__ = [
    "PreparedHistory",
    "WordChanges",
    "holders_of",
    "plain_holder",
    "prepare_history",
    "read_word_changes",
]

Homes = Map[int, frozenset[str]]


class WordChanges(NamedTuple):
    """What some events did to the words: new factors, homes of bands laid, bands twisted, roots fastened.

    `crossed` are those of the twisted bands that were laid with a half-twist. `passes` are the words that
    something was put through, in order, those of the fasteners too.
    """

    factors: dict[Bight, int]
    homes: dict[int, frozenset[str]]
    twisted: frozenset[int]
    crossed: frozenset[int]
    roots: tuple[int, ...]
    passes: tuple[int, ...]


class PreparedHistory(NamedTuple):
    """The intended history, step by step.

    `holders[i]` (free ends by name only) and `loops[i]` are what step i works with; `factors[i]` and
    `homes[i]` hold, before step i, the factor of every loop and the holders each band was laid on.
    """

    history: History
    neighbours: PegNeighbours
    words: SharedWords
    holders: tuple[frozenset[str], ...]
    loops: tuple[frozenset[Bight], ...]
    factors: tuple[Map[Bight, int], ...]
    homes: tuple[Homes, ...]
    word_changes: tuple[WordChanges, ...]


def prepare_history(history: History) -> PreparedHistory:
    """Prepare a history. Time and memory grow with its events."""
    words = SharedWords()
    factors: list[Map[Bight, int]] = [Map()]
    homes: list[Homes] = [Map()]
    word_changes = []
    for done in history.moves:
        changes = read_word_changes(words, done.events, factors[-1].__getitem__, homes[-1].__getitem__)
        word_changes.append(changes)
        factors.append(factors[-1].update(changes.factors))
        homes.append(homes[-1].update(changes.homes))
    return PreparedHistory(
        history,
        find_peg_neighbours(history.board),
        words,
        tuple(frozenset(map(plain_holder, holders_in(done.events))) for done in history.moves),
        tuple(frozenset(loop for event in done.events for loop in loops_of(event)) for done in history.moves),
        tuple(factors),
        tuple(homes),
        tuple(word_changes),
    )


def read_word_changes(
    words: SharedWords,
    events: Sequence[Event],
    factor_of: Callable[[Bight], int],
    home_of: Callable[[int], frozenset[str]],
) -> WordChanges:
    """Read what the events do to the words of the link, as `structure_of` does."""
    now: dict[Bight, int] = {}
    laid: dict[int, frozenset[str]] = {}
    twisted: set[int] = set()
    crossed: set[int] = set()
    roots: list[int] = []
    passes: list[int] = []

    def at(loop: Bight) -> int:
        found = now.get(loop)
        return factor_of(loop) if found is None else found

    for event in events:
        match event:
            case Laid():
                laid[event.band] = frozenset(seat.holder for seat in event.seats)
                if any(event.twists):
                    crossed.add(event.band)
                if any(event.twists) or len(laid[event.band]) < len(event.seats):
                    twisted.add(event.band)
                for bight, _, sign in event.seats:
                    now[bight] = words.laid_factor(bight, sign)
            case Drawn():
                band = event.bight.band
                if is_put_on(event):
                    crossed.add(band)
                    twisted.add(band)
                home = laid[band] if band in laid else home_of(band)
                if len(home) > 2 or event.source not in home or event.target not in home:
                    twisted.add(band)
                factor = at(event.bight)
                if event.through:
                    word = words.word([at(loop) for loop in event.through])
                    passes.append(word)
                    factor = words.conjugate(word, factor)
                now[event.bight] = factor ^ 1
            case Lifted():
                if event.over:
                    word = words.word([at(event.bight) ^ 1])
                    passes.append(word)
                    for loop in event.over:
                        now[loop] = words.conjugate(word, at(loop))
            case Moved():
                twisted.add(event.bight.band)
                if is_put_on(event):
                    crossed.add(event.bight.band)
            case Fastened():
                roots.append(words.word([at(loop) for loop in event.caught]))
                passes.append(roots[-1])
            case _:
                pass
    return WordChanges(now, laid, frozenset(twisted), frozenset(crossed), tuple(roots), tuple(passes))


def holders_of(event: Event) -> tuple[str, ...]:
    """Return the holders whose stacks the event reads or changes."""
    match event:
        case Laid():
            return tuple(seat.holder for seat in event.seats)
        case Drawn():
            return (event.source, event.target, "hook") if event.slid else (event.source, event.target)
        case Moved():
            return (event.source, event.target)
        case Lifted():
            return (event.holder,)
        case Fastened():
            return event.holders
        case _:
            return ()


def loops_of(event: Event) -> tuple[Bight, ...]:
    """Return the loops whose factors the event reads or changes."""
    match event:
        case Drawn():
            return (event.bight, *event.through)
        case Moved():
            return (event.bight,)
        case Lifted():
            return (event.bight, *event.over)
        case Fastened():
            return event.caught
        case _:
            return ()


def plain_holder(holder: str) -> str:
    """Name a free end whatever its count: `end.3` → `end`."""
    return holder.partition(".")[0] if "." in holder else holder


def holders_in(events: Sequence[Event]) -> set[str]:
    """Return all holders that the events work with."""
    return {holder for event in events for holder in holders_of(event)}
