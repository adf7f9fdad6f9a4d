"""The words of the link, read from the events."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Sequence
from itertools import count
from typing import Any

from pegwright.loom.events import Bight, Drawn, Event, Fastened, Laid, Lifted, Moved
from pegwright.proof.values import Slip

Product = tuple[int, ...]  # factors: 2 · core, + 1 for the inverse


def need(condition: object, otherwise: str) -> None:
    """Raise a ValueError where the condition fails."""
    if not condition:
        raise ValueError(otherwise)


def turns(factors: Iterable[int]) -> int:
    """Return how often factors turn round their band in all."""
    return sum(1 - 2 * (factor & 1) for factor in factors)


def push(out: list[Any], item: object, undoing: object) -> None:
    """Append to a word unless its last item is undone."""
    if out and out[-1] == undoing:
        out.pop()
    else:
        out.append(item)


def cyclic(word: list[Any], inverse: Callable[[Any], Any]) -> list[Any]:
    """Return a word reduced at its ends too."""
    while len(word) > 1 and word[0] == inverse(word[-1]):
        word = word[1:-1]
    return word


class Link:
    """The words of the link, read from the events; loops of one band that undo each other are left out."""

    def __init__(self, events: Sequence[Event]) -> None:
        laid = [event for event in events if isinstance(event, Laid)]
        drawn = [event for event in events if isinstance(event, Drawn)]
        homes = {e.band: {seat.holder for seat in e.seats} for e in laid}
        twisted = {e.band for e in laid if any(e.twists) or len(homes[e.band]) < len(e.seats)}
        twisted |= {e.bight.band for e in drawn if {e.source, e.target} != homes[e.bight.band]}
        twisted |= {event.bight.band for event in events if isinstance(event, Moved)}
        self.twisted = twisted
        starts: list[Any] = [(0, 0, 0), (0, 0), ()]  # tables that number whatever is looked up in them
        cores, trails, words = (defaultdict(count(1).__next__, {start: 0}) for start in starts)
        self.bands, self.roots, self.made = homes.keys(), list[Product](), [-1]
        self.slips: list[Slip] = []
        self.passed: dict[int, int] = {}  # the first event that put something through a band
        now: dict[Bight, tuple[int, int, int, int]] = {}  # band, loop, trail, whether inverse

        def product(when: int, through: Sequence[Bight], turn: int = 0, closed: bool = False) -> Product:
            kept: list[tuple[int, Bight]] = []
            for bight in through:
                self.passed.setdefault(bight.band, when)
                factor = 2 * cores[now[bight][:3]] + (now[bight][3] ^ turn)
                if kept and kept[-1][0] == factor ^ 1:
                    self.slips.append(Slip(when, kept.pop()[1], bight))
                else:
                    kept.append((factor, bight))
            self.made += [when] * (words[tuple(factor for factor, _ in kept)] == len(self.made))
            while closed and len(kept) > 1 and kept[0][0] == kept[-1][0] ^ 1:
                self.slips.append(Slip(when, kept.pop()[1], kept.pop(0)[1]))
            return tuple(factor for factor, _ in kept)

        def around(loops: Sequence[Bight], word: Product, turned: int) -> None:
            for bight in loops:
                band, loop, trail, inverse = now[bight]
                now[bight] = (band, loop, trails[words[word], trail] if word else trail, inverse ^ turned)

        for when, event in enumerate(events):
            if isinstance(event, Laid):
                for bight, _, sign in event.seats:
                    now[bight] = (event.band, bight.index if event.band in twisted else -1, 0, int(sign < 0))
            elif isinstance(event, Drawn):
                around([event.bight], product(when, event.through), 1)
            elif isinstance(event, Lifted) and event.over:
                around(event.over, product(when, [event.bight], turn=1), 0)
            elif isinstance(event, Fastened):
                self.roots.append(product(when, event.caught, closed=True))
        self.words, self.cores, self.trails = list(words), list(cores), list(trails)

    def band(self, factor: int) -> int:
        """Return a factor's band."""
        return int(self.cores[factor >> 1][0])

    def loops(self, product: Product, band: int) -> list[int]:
        """Return a band's factors in a product."""
        return [factor for factor in product if self.band(factor) == band]

    def along(self, factor: int) -> list[int]:
        """Return the words that a factor's loop went through, outermost first."""
        found, trail = list[int](), self.cores[factor >> 1][2]
        while trail:
            word, trail = self.trails[trail]
            found.append(word)
        return found
