"""The checker: accepts or rejects a proof from the machine's record and the pegs' places alone.

A band accepted as held is held, no isotopy takes it off: by the arguments of `carriers` and `closing`, or by
peak reduction (Collins 1989, McCool 1986). One accepted as free is out of the words after slips and slides
and all that lies across it in plan is free; that these are motions too rests on the rules of `slips`.
"""

from __future__ import annotations

from bisect import bisect_left, insort
from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from itertools import chain, combinations, count, groupby, takewhile
from typing import Any

from pegwright.loom.events import Bight, Drawn, Event, Fastened, Laid, Lifted, Moved
from pegwright.proof.values import Free, Held, HeldByPart, Part, Proof, Slide, Slip, Step
from pegwright.structure.plan import Spot, across

Product = tuple[int, ...]  # a product's factors: numbers of cores, negative for the inverse
Word = list[int]  # a word's letters: bands, negative for the inverse
Bands = frozenset[int]
_MOST_BANDS, _MOST_LETTERS = 10, 6000  # of words written out


def check(events: Sequence[Event], proof: Proof, spots: Mapping[str, Spot] | None = None) -> str | None:
    """Return why the proof is not accepted, or None; `spots` (the pegs', mm) tell what lies across what."""
    try:
        link = _Link(events)
        _need(list(proof.verdicts) == sorted(link.bands), "the verdicts are not those of the bands")
        _Paths(link, proof.steps).check(proof)
        _check_free(link, proof, across(events, spots) if spots and proof.free else {})
    except (ValueError, LookupError, TypeError, AttributeError, RecursionError) as reason:
        return f"not accepted: {reason}"
    return None


def _need(condition: object, otherwise: str) -> None:
    if not condition:
        raise ValueError(otherwise)


def _turns(factors: Iterable[int]) -> int:
    return sum(1 if factor > 0 else -1 for factor in factors)


def _reduced(letters: Iterable[int], *, closed: bool = False) -> Word:
    """Return a word without neighbours that undo each other; closed, its ends are neighbours too."""
    out: Word = []
    for letter in letters:
        if out and out[-1] == -letter:
            out.pop()
        else:
            out.append(letter)
    while closed and len(out) > 1 and out[0] == -out[-1]:
        del out[0], out[-1]
    return out


class _Link:
    """The words of the link, read from the events; loops of one band that undo each other are left out."""

    def __init__(self, events: Sequence[Event]) -> None:
        laid = [event for event in events if isinstance(event, Laid)]
        drawn = [event for event in events if isinstance(event, Drawn)]
        homes = {e.band: {seat.holder for seat in e.seats} for e in laid}
        twisted = {e.band for e in laid if any(e.twists) or len(homes[e.band]) < len(e.seats)}
        twisted |= {e.bight.band for e in drawn if {e.source, e.target} != homes[e.bight.band]}
        twisted |= {event.bight.band for event in events if isinstance(event, Moved)}
        number = defaultdict[Any, int]  # a table that numbers whatever is looked up in it
        cores, trails, words = (number(count(1).__next__, {t: 0}) for t in ((0, 0, 0), (0, 0), ()))
        self.bands, self.roots, self.made = homes.keys(), list[Product](), [-1]
        self.twisted, self.slips = twisted, list[Slip]()
        self.passed: dict[int, int] = {}  # the first event that put something through a band
        now: dict[Bight, tuple[int, int, int, int]] = {}  # band, loop, trail, sign

        def product(when: int, through: Sequence[Bight], turn: int = 1, closed: bool = False) -> Product:
            kept: list[tuple[int, Bight]] = []
            for bight in through:
                self.passed.setdefault(bight.band, when)
                factor = cores[now[bight][:3]] * now[bight][3] * turn
                if kept and kept[-1][0] == -factor:
                    self.slips.append(Slip(when, kept.pop()[1], bight))
                else:
                    kept.append((factor, bight))
            self.made += [when] * (words[tuple(factor for factor, _ in kept)] == len(self.made))
            while closed and len(kept) > 1 and kept[0][0] == -kept[-1][0]:
                self.slips.append(Slip(when, kept.pop()[1], kept.pop(0)[1]))
            return tuple(factor for factor, _ in kept)

        def around(loops: Sequence[Bight], word: Product, turn: int = 1) -> None:
            for bight in loops:
                band, loop, trail, sign = now[bight]
                now[bight] = (band, loop, trails[words[word], trail] if word else trail, sign * turn)

        for when, event in enumerate(events):
            if isinstance(event, Laid):
                for bight, _, sign in event.seats:
                    now[bight] = (event.band, bight.index if event.band in twisted else -1, 0, sign)
            elif isinstance(event, Drawn):
                around([event.bight], product(when, event.through), -1)
            elif isinstance(event, Lifted) and event.over:
                around(event.over, product(when, [event.bight], -1))
            elif isinstance(event, Fastened):
                self.roots.append(product(when, event.caught, closed=True))
        self.words, self.cores, self.trails = list(words), list(cores), list(trails)

    def band(self, factor: int) -> int:
        return int(self.cores[abs(factor)][0])

    def loops(self, product: Product, band: int) -> Product:
        return tuple(factor for factor in product if self.band(factor) == band)

    def along(self, factor: int) -> list[int]:
        """Return the words that a factor's loop went through, outermost first."""
        found, trail = list[int](), self.cores[abs(factor)][2]
        while trail:
            word, trail = self.trails[trail]
            found.append(word)
        return found


class _Paths:
    """The steps, and while they are walked the path from the root: who carries, what clashes with it."""

    def __init__(self, link: _Link, steps: Sequence[Step]) -> None:
        self.link, self.steps, self.last = link, steps, [-1] * len(steps)  # where a step's chain ends
        self.bands = [step.carriers or (step.witness,) * bool(step.witness) for step in steps]
        # Of each step its product, the bands of the words that must vanish beside it, and all it bars.
        self.products, self.aside, self.barred = list[Product](), list[Bands](), list[Bands]()
        # Of each band the steps that bar it, and those from which a chain goes on by it.
        self.barring, self.users = defaultdict[int, list[int]](list), defaultdict[int, list[int]](list)
        # The path, with the steps whose chains clash with each of its own; its bands; all clashes, in order.
        self.path, self.carrying, self.clashes = dict[int, list[int]](), set[int](), list[int]()

    def check(self, proof: Proof) -> None:
        held = {at: set[int]() for at in range(len(proof.parts))}
        for band, verdict in proof.verdicts.items():
            if isinstance(verdict, HeldByPart):
                held[verdict.part].add(band)
            elif isinstance(verdict, Held):
                at, ends = verdict
                known = band in self.bands[at] and ends == (band == self.steps[at].witness)
                _need(at >= 0 and known, "a band carries nothing")
        start, parents = 0, {step.parent for step in self.steps}
        for number, step in enumerate(self.steps):
            _need(step.witness or step.loan >= 0 or number in parents, "a step leads nowhere")
            self._read(number, step)
            start = start if step.parent == number - 1 else number
            if step.witness:
                self.last[start : number + 1] = [number] * (number + 1 - start)
        stands: dict[int, list[tuple[Part, set[int]]]] = {at: [] for at in range(-1, len(self.steps))}
        for part, bands in zip(proof.parts, held.values(), strict=True):
            stands[part.step].append((part, bands))
        for part, bands in stands[-1]:
            _check_part(self.link, part, self.link.roots, set(), bands)
        for number, step in enumerate(self.steps):
            self._enter(number, step)
            for part, bands in stands[number]:
                bars = {bar for band in part.keep for bar in self.barring[band]} - {number}
                alone = self.path.keys().isdisjoint(bars) and self.aside[number].isdisjoint(part.keep)
                _need(alone and not self.steps[next(iter(self.path))].without, "a part does not stand alone")
                _check_part(self.link, part, [self.products[number]], self.carrying, bands)

    def _read(self, number: int, step: Step) -> None:
        """Note the step's product, the same for each of its carriers, and what lies beside it."""
        above = self.steps[step.parent] if step.parent >= 0 else step
        root = self.link.roots[above.root]
        passing = [self.link.loops(self.products[step.parent], band) for band in self.bands[number]]
        if step.parent < 0:
            _need(step.root >= 0 and step == Step(-1, root=step.root, without=step.without), "not a root")
            found = {(self._less(root, step.without) if step.without else root, Bands())}
        elif step.witness:
            _need(_turns(passing[0]) and step == Step(step.parent, witness=step.witness), "not a witness")
            found = {(Product(), frozenset(chain.from_iterable(map(self.link.along, passing[0]))))}
        else:
            _need(step == Step(step.parent, step.carriers, loan=max(step.loan, -1)), "not a step")
            end = self.link.loops(root, above.without) if above.without else ()
            found = {self._passage(factors, end) for factors in passing}
        _need(len(found) == 1, "carriers of one step pass through different things")
        product, outer = found.pop()
        self.products.append(product)
        self.aside.append(frozenset(self.link.band(f) for word in outer for f in self.link.words[word]))
        self.barred.append(self.aside[number].union(map(self.link.band, product)))
        for band in self.barred[number]:
            self.barring[band].append(number)
        for band in self.bands[number] if step.parent == number - 1 else ():
            self.users[band].append(step.parent)

    def _less(self, root: Product, band: int) -> Product:
        """Return what follows a band's loops in a root: fresh loops side by side that do not cancel."""
        starts = [i for i, f in enumerate(root) if self.link.band(f) == band != self.link.band(root[i - 1])]
        end = self.link.loops(root, band)
        _need(len(starts) == 1 and _turns(end) and not any(map(self.link.along, end)), "a far end is none")
        return (root[starts[0] :] + root[: starts[0]])[len(end) :]

    def _passage(self, factors: Product, end: Product) -> tuple[Product, Bands]:
        """Return what a band passes between its loops, and the words that they all went through before."""
        product, outer = Product(), set[int]()
        around: Word = []  # the factors in x = 1, the band, and v = 2, what it passes
        for factor in factors:
            back, there = self.link.along(factors[0]), self.link.along(factor)
            common = len(list(takewhile(lambda pair: pair[0] == pair[1], zip(back, there, strict=False))))
            outer.update(back[:common] if abs(factor) != abs(factors[0]) else ())
            home = [-f for word in reversed(back[common:]) for f in reversed(self.link.words[word])]
            out = [f for word in there[common:] for f in self.link.words[word]]
            between = tuple(_reduced(home + out))
            _need(not between or product in ((), between), "a carrier passes through different things")
            product = product or between
            around += (2, _turns([factor]), -2) if between else (_turns([factor]),)
        around, once = _reduced(around, closed=not end), abs(_turns(factors))
        if end:  # the far end keeps the ends apart, and so many turns of the carrier may count as none
            runs = [sum(run) for letter, run in groupby(around, abs) if letter == 1]
            tied = once != 1 and len(runs) > 1 and all(run % once if once else run for run in runs)
            again = self.link.loops(product, self.link.band(end[0]))
            _need(tied and abs(_turns(again)) != abs(_turns(end)), "a far end may be all that is passed")
        _need(2 in map(abs, around), "a carrier lets go of what it passes through")
        return product, frozenset(outer)

    def _enter(self, number: int, step: Step) -> None:
        """Walk on to a step: its bands, and those that it bars, must keep clear of the path."""
        while self.path and next(reversed(self.path)) != step.parent:
            left, clashes = self.path.popitem()
            self.carrying.difference_update(self.bands[left])
            for clash in clashes:
                del self.clashes[bisect_left(self.clashes, clash)]
        _need((step.parent >= 0) == bool(self.path), "a step is out of order")
        bars = [bar for band in self.bands[number] for bar in self.barring[band] if bar != step.parent]
        alone = self.path.keys().isdisjoint(bars) and self.aside[step.parent].isdisjoint(self.bands[number])
        self.carrying.update(self.bands[number])
        _need(alone and self.carrying.isdisjoint(self.barred[number]), "a band has loops elsewhere")
        if step.loan >= 0:  # it goes on as the chain from there does: that must keep clear too
            low, high = step.loan, self.last[step.loan]
            _need(high >= 0 and self.products[low] == self.products[number], "a false loan")
            at = bisect_left(self.clashes, low)
            met = [*bars, *self.clashes[at : at + 1], *(u for b in self.aside[number] for u in self.users[b])]
            _need(not any(low <= clash <= high for clash in met), "a loan clashes with the path")
        self.path[number] = bars + [user for band in self.barred[number] for user in self.users[band]]
        for clash in self.path[number]:
            insort(self.clashes, clash)


def _written(link: _Link, roots: list[Product], keep: set[int], slides: tuple[Slide, ...] = ()) -> list[Word]:
    """Return products after the slides, cyclically reduced, written out with the bands of `keep` only."""

    @cache
    def write(product: Product) -> Word:
        out: Word = []
        for factor in (factor for factor in product if link.band(factor) in keep):
            before = [letter for word in link.along(factor) for letter in write(link.words[word])]
            turned = link.band(factor) * _turns([factor])
            out = _reduced([*out, *before, turned, *(-letter for letter in reversed(before))])
            _need(len(out) <= _MOST_LETTERS, "a word is too long to write out")
        return out

    words = [write(root) for root in roots]
    for y, moving in slides:
        _need(abs(y) not in moving, "a band cannot slide along itself")
        slid = [[(y, x, -y) if abs(x) in moving else (x,) for x in word] for word in words]
        words = [_reduced(chain.from_iterable(word)) for word in slid]
    return [_reduced(word, closed=True) for word in words]


def _check_part(link: _Link, part: Part, roots: list[Product], carrying: set[int], held: set[int]) -> None:
    """Check that the words of a part are of least length and have the bands said to be held."""
    words, keep = _written(link, roots, set(part.keep), part.slides), set(part.keep)
    before = {abs(letter) for word in _written(link, roots, carrying | keep) for letter in word}
    bands = {abs(letter) for word in words for letter in word}
    few = held and len(keep) <= _MOST_BANDS
    _need(few and held <= bands and before | bands <= keep, "a part does not hold its bands")
    pairs = Counter(pair for word in words for pair in zip(word, word[1:] + word[:1], strict=True))
    for y in bands:  # does any set of bands, slid along y, leave fewer y's?
        now = sum(many for (one, _), many in pairs.items() if abs(one) == y)
        for moving in (some for n in range(1, len(bands) - 1) for some in combinations(bands - {y}, n)):
            leaves, enters = {-y, *moving, *(-b for b in moving)}, {y, *moving, *(-b for b in moving)}
            cut = sum(many for (one, two), many in pairs.items() if (one in leaves) != (two in enters))
            _need(cut >= now, "a part's words are not of least length")


def _check_free(link: _Link, proof: Proof, lying: dict[int, Bands]) -> None:
    """Check every band said to be free: after slips (see `slips.in_use`) and slides nothing uses it."""
    free = set(proof.free)
    _need(not any(lying[band] - free for band in free & lying.keys()), "a band lies across a free one")
    _need(proof.slips == tuple(link.slips), "these are not the slips to be taken")
    used, seen, waiting = dict[int, int](), set[int](), {abs(f) for root in link.roots for f in root}
    while waiting:
        factor = waiting.pop()
        seen.add(factor)
        band, trail = link.band(factor), link.along(factor)
        if used.setdefault(band, factor) != factor:
            trail = [] if (first := link.along(used[band])) == trail else first + trail
        elif trail and link.made[trail[0]] < link.passed[band]:
            continue  # it rides back out of all it went through
        waiting |= {abs(inner) for word in trail for inner in link.words[word]} - seen
    slid = {band for band, verdict in proof.verdicts.items() if isinstance(verdict, Free) and verdict.slid}
    _need(slid == free & used.keys() and not (slid and link.twisted & used.keys()), "a band is still used")
    words = _written(link, link.roots, set(used), proof.slides) if slid else []
    _need(slid.isdisjoint(abs(letter) for word in words for letter in word), "a band is still held")
