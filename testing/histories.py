"""Pieces of any size as bare histories, made from parameters: a small loom that writes the machine's record.

Used by the benches and by the tests of the proof, which need histories without the pattern document.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from pegwright.loom import Bight, Drawn, Event, Fastened, Laid, Lifted, Moved, Seat


class Sketch:
    """A loom without geometry: stacks by holder, and the events so far."""

    def __init__(self) -> None:
        self.stacks: dict[str, list[Bight]] = {}
        self.at: dict[Bight, str] = {}
        self.homes: dict[int, tuple[str, ...]] = {}
        self.inside: dict[Bight, list[Bight]] = {}
        self.events: list[Event] = []
        self.bands = 0
        self.fasteners = 0

    def lay(self, *holders: str, twists: Sequence[int] = ()) -> int:
        """Lay a band over the holders (equal neighbours are turns); a half-twist turns the next loop over."""
        self.bands += 1
        changes = sum(a != b for a, b in itertools.pairwise(holders))
        given = tuple(twists) or (0,) * changes
        seats, sign, change = [], 1, 0
        for index, holder in enumerate(holders):
            if index and holder != holders[index - 1]:
                sign *= -1 if given[change] % 2 else 1
                change += 1
            bight = Bight(self.bands, index)
            seats.append(Seat(bight, holder, sign))
            self._put(bight, holder)
        self.homes[self.bands] = holders
        self.events.append(Laid(self.bands, tuple(seats), given))
        return self.bands

    def draw(self, bight: Bight, target: str, deep: int | None = None) -> None:
        """Draw a loop up through the loops above it (a shallow hook: only the upper `deep` of them)."""
        source = self.at[bight]
        stack = self.stacks[source]
        place = stack.index(bight)
        above = stack[place + 1 :]
        reached = 0 if deep is None else len(above) - deep
        skipped, through = above[:reached], above[reached:]
        stack.remove(bight)
        self.events.append(
            Drawn(
                bight,
                source,
                target,
                tuple(reversed(through)),
                tuple(reversed(skipped)),
                tuple(self.inside.get(bight, ())),
            )
        )
        for loop in through:
            self.inside.setdefault(loop, []).append(bight)
        self._put(bight, target)

    def move(self, holder: str, target: str) -> None:
        """Put the top loop of a stack on top of another stack, not turned over."""
        bight = self.stacks[holder].pop()
        self.events.append(Moved(bight, holder, target, tuple(self.inside.get(bight, ()))))
        self._put(bight, target)

    def lift(self, bight: Bight) -> None:
        """Carry a loop over all the loops above it and off its holder."""
        holder = self.at.pop(bight)
        stack = self.stacks[holder]
        over = stack[stack.index(bight) + 1 :]
        stack.remove(bight)
        self.events.append(Lifted(bight, holder, tuple(reversed(over)), tuple(self.inside.get(bight, ()))))
        self.inside.setdefault(bight, []).extend(over)

    def fasten(self, *holders: str, kind: str = "clip") -> None:
        """Close a fastener through all the loops on these holders."""
        self.fasteners += 1
        stacks = [self.stacks.get(holder, [])[::-1] for holder in holders]
        caught = tuple(bight for stack in stacks for bight in stack)
        counts = tuple(map(len, stacks))
        self.events.append(Fastened(self.fasteners, kind, holders, caught, counts))

    def _put(self, bight: Bight, holder: str) -> None:
        self.stacks.setdefault(holder, []).append(bight)
        self.at[bight] = holder


def chain(bands: int, *, closed: bool = True, strands: int = 1, half_twisted: bool = False) -> list[Event]:
    """A plain chain along one row of pegs (`strands` = 2: a twin chain), its fastener at the start peg."""
    loom = Sketch()
    laid = [
        [loom.lay(f"p{i}", f"p{i + 1}", twists=(int(half_twisted),)) for _ in range(strands)]
        for i in range(bands // strands)
    ]
    for i in range(len(laid) - 2, -1, -1):
        for band in reversed(laid[i]):
            loom.draw(Bight(band, 1), f"p{i}")
    if closed:
        loom.fasten("p0")
    return loom.events


def fish_tail(bands: int, *, twisted_first: bool = True, both_ends: bool = True) -> list[Event]:
    """A fish-tail: bands stacked on two pegs, the lowest of three lifted over the others on both."""
    loom = Sketch()
    laid = []
    for i in range(bands):
        laid.append(loom.lay("p", "q", twists=(int(twisted_first and i == 0),)))
        if i >= 2:
            for index in (0, 1):
                loom.lift(Bight(laid[i - 2], index))
    loom.fasten(*(("p", "q") if both_ends else ("p",)))
    return loom.events


def strip(motifs: int) -> list[Event]:
    """A three-row strip of six-sided motifs sharing their end pegs: outline, filling, wound caps.

    The filling is worked from the top of the middle stack under its cap, before the outline; the outline
    from the far end back. One fastener on the first peg.
    """
    loom = Sketch()
    outline: list[tuple[int, str]] = []
    for m in range(motifs):
        a, z = f"b{2 * m}", f"b{2 * m + 2}"
        left, right = (f"a{2 * m}", f"a{2 * m + 1}"), (f"c{2 * m}", f"c{2 * m + 1}")
        for side in (left, right):
            path = (a, *side, z)
            for low, high in itertools.pairwise(path):
                outline.append((loom.lay(low, high), low))
    end = f"b{2 * motifs}"
    fills: list[list[tuple[int, str]]] = []
    for m in range(motifs):
        middle = f"b{2 * m + 1}"
        around = (f"b{2 * m + 2}", f"a{2 * m + 1}", f"c{2 * m + 1}", f"a{2 * m}", f"c{2 * m}", f"b{2 * m}")
        fills.append([(loom.lay(middle, rim), rim) for rim in around])
        loom.lay(middle, middle)
    loom.lay(end, end)
    for m in reversed(range(motifs)):
        for band, rim in reversed(fills[m]):
            loom.draw(Bight(band, 0), rim)
        for band, low in reversed(outline[6 * m : 6 * m + 6]):
            loom.draw(Bight(band, 1), low)
    loom.fasten("b0")
    return loom.events
