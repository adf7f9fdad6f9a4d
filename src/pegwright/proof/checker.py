"""The checker: accepts or rejects a proof from the machine's record and the pegs' places alone.

A band accepted as held is held, no isotopy takes it off: by the arguments of `holding_paths` and `closing`,
or by peak reduction (`least`). One accepted as free is out of the words after all cancellations, or out of
the least words, and what it lies in a circle with is free; that these are motions too rests on the rules of
`word_reduction`.
"""

from __future__ import annotations

from bisect import bisect_left, insort
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from itertools import chain, groupby, takewhile
from typing import Any

from pegwright.loom import Bight, Drawn, Event, Fastened, Laid, Lifted, Moved
from pegwright.proof.least_checker import check_least
from pegwright.proof.values import Cancellation, Free, Held, HeldInLeast, NotProved, PathStep, Proof
from pegwright.structure import PlanPoint, find_bands_across

Product = tuple[int, ...]  # a product's factors: numbers of cores, negative for the inverse
Word = list[int]  # a word's letters: bands, negative for the inverse
Bands = frozenset[int]


def check(events: Sequence[Event], proof: Proof, spots: Mapping[str, PlanPoint] | None = None) -> str | None:
    """Return why the proof is not accepted, or None; `spots` (the pegs', mm) tell what lies across what."""
    try:
        link = _Link(events)
        _need(list(proof.verdicts) == sorted(link.bands), "the verdicts are not those of the bands")
        known = all(type(v) in (Held, HeldInLeast, Free, NotProved) for v in proof.verdicts.values())
        _need(known, "a verdict is of no known kind")
        _Paths(link, proof.steps).check(proof)
        words = _check_least(link, proof)
        _check_free(link, proof, words, find_bands_across(events, spots) if spots and proof.free else {})
    except (ValueError, LookupError, TypeError, AttributeError, RecursionError) as reason:
        return f"not accepted: {reason}"
    return None


def _need(condition: object, otherwise: str) -> None:
    if not condition:
        raise ValueError(otherwise)


def _turns(factors: Iterable[int]) -> int:
    return sum(1 if factor > 0 else -1 for factor in factors)


def _reduce_word(letters: Iterable[int], *, closed: bool = False) -> Word:
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


class _Numbering:
    """Gives every value that is shown to it a number, the same one each time; the first is 0."""

    def __init__(self, first: Any) -> None:
        self.numbers: dict[Any, int] = {first: 0}

    def intern(self, value: Any) -> int:
        """Return the value's number."""
        return self.numbers.setdefault(value, len(self.numbers))


class _Link:
    """The words of the link, read from the events; loops of one band that undo each other are left out."""

    def __init__(self, events: Sequence[Event]) -> None:
        laid = [event for event in events if isinstance(event, Laid)]
        drawn = [event for event in events if isinstance(event, Drawn)]
        homes = {e.band: {seat.holder for seat in e.seats} for e in laid}
        carried = [event for event in events if isinstance(event, Drawn | Moved)]
        self.crossed = {e.band for e in laid if any(e.twists)}
        self.crossed |= {e.bight.band for e in carried if "." in e.source and "." not in e.target}
        twisted = self.crossed | {e.band for e in laid if any(e.twists) or len(homes[e.band]) < len(e.seats)}
        twisted |= {e.bight.band for e in drawn if {e.source, e.target} != homes[e.bight.band]}
        twisted |= {event.bight.band for event in events if isinstance(event, Moved)}
        cores, trails, words = _Numbering((0, 0, 0)), _Numbering((0, 0)), _Numbering(())
        self.bands, self.roots, self.made = homes.keys(), list[Product](), [-1]
        self.twisted, self.cancellations = twisted, list[Cancellation]()
        self.passed: dict[int, int] = {}  # the first event that put something through a band
        now: dict[Bight, tuple[int, int, int, int]] = {}  # band, loop, trail, sign

        def product(when: int, through: Sequence[Bight], turn: int = 1, closed: bool = False) -> Product:
            kept: list[tuple[int, Bight]] = []
            for bight in through:
                self.passed.setdefault(bight.band, when)
                factor = cores.intern(now[bight][:3]) * now[bight][3] * turn
                if kept and kept[-1][0] == -factor:
                    self.cancellations.append(Cancellation(when, kept.pop()[1], bight))
                else:
                    kept.append((factor, bight))
            if words.intern(tuple(factor for factor, _ in kept)) == len(self.made):
                self.made.append(when)
            while closed and len(kept) > 1 and kept[0][0] == -kept[-1][0]:
                self.cancellations.append(Cancellation(when, kept.pop()[1], kept.pop(0)[1]))
            return tuple(factor for factor, _ in kept)

        def around(loops: Sequence[Bight], word: Product, turn: int = 1) -> None:
            for bight in loops:
                band, loop, trail, sign = now[bight]
                if word:
                    trail = trails.intern((words.intern(word), trail))
                now[bight] = (band, loop, trail, sign * turn)

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
        self.words, self.cores, self.trails = (list(table.numbers) for table in (words, cores, trails))

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

    def __init__(self, link: _Link, steps: Sequence[PathStep]) -> None:
        self.link, self.steps, self.last = link, steps, [-1] * len(steps)  # where a step's chain ends
        self.bands = [step.carriers or (step.witness,) * bool(step.witness) for step in steps]
        # Of each step its product, the bands of the words that must vanish beside it, and all it bars.
        self.products, self.aside, self.barred = list[Product](), list[Bands](), list[Bands]()
        # Of each band the steps that bar it, and those from which a chain goes on by it.
        self.barring, self.users = defaultdict[int, list[int]](list), defaultdict[int, list[int]](list)
        # The path, with the steps whose chains clash with each of its own; its bands; all clashes, in order.
        self.path, self.carrying, self.clashes = dict[int, list[int]](), set[int](), list[int]()

    def check(self, proof: Proof) -> None:
        for band, verdict in proof.verdicts.items():
            if isinstance(verdict, Held):
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
        for number, step in enumerate(self.steps):
            self._enter(number, step)

    def _read(self, number: int, step: PathStep) -> None:
        """Note the step's product, the same for each of its carriers, and what lies beside it."""
        above = self.steps[step.parent] if step.parent >= 0 else step
        root = self.link.roots[above.root]
        passing = [self.link.loops(self.products[step.parent], band) for band in self.bands[number]]
        if step.parent < 0:
            _need(step.root >= 0 and step == PathStep(-1, root=step.root, without=step.without), "not a root")
            found = {(self._less(root, step.without) if step.without else root, Bands())}
        elif step.witness:
            _need(_turns(passing[0]) and step == PathStep(step.parent, witness=step.witness), "not a witness")
            found = {(Product(), frozenset(chain.from_iterable(map(self.link.along, passing[0]))))}
        else:
            _need(step == PathStep(step.parent, step.carriers, loan=max(step.loan, -1)), "not a step")
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
            between = tuple(_reduce_word(home + out))
            _need(not between or product in ((), between), "a carrier passes through different things")
            product = product or between
            around += (2, _turns([factor]), -2) if between else (_turns([factor]),)
        around, once = _reduce_word(around, closed=not end), abs(_turns(factors))
        if end:  # the far end keeps the ends apart, and so many turns of the carrier may count as none
            runs = [sum(run) for letter, run in groupby(around, abs) if letter == 1]
            tied = once != 1 and len(runs) > 1 and all(run % once if once else run for run in runs)
            again = self.link.loops(product, self.link.band(end[0]))
            _need(tied and abs(_turns(again)) != abs(_turns(end)), "a far end may be all that is passed")
        _need(2 in map(abs, around), "a carrier lets go of what it passes through")
        return product, frozenset(outer)

    def _enter(self, number: int, step: PathStep) -> None:
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


def _check_least(link: _Link, proof: Proof) -> set[int]:
    """Return the bands that occur in the least words; check every band said to be held there."""
    claims = {band: v.fastening for band, v in proof.verdicts.items() if isinstance(v, HeldInLeast)}
    if proof.least is None:
        _need(not claims, "there are no least words")
        return set()
    found = check_least(proof.least, link.roots, link.words, link.cores, link.trails)
    _need(all(at >= 0 and band in found[at] for band, at in claims.items()), "a least word has no such band")
    return set().union(*found)


def _check_free(link: _Link, proof: Proof, words: set[int], lying: dict[int, Bands]) -> None:
    """Check every band said to be free: nothing uses it after all cancellations, or no least word has it."""
    free = set(proof.free)
    _need(not any(lying[band] - free for band in free & lying.keys()), "a band lies across a free one")
    _need(proof.cancellations == tuple(link.cancellations), "these are not the loops that cancel")
    used, seen, waiting = dict[int, int](), set[int](), {abs(f) for root in link.roots for f in root}
    while waiting:
        factor = waiting.pop()
        seen.add(factor)
        band, trail = link.band(factor), link.along(factor)
        if used.setdefault(band, factor) != factor:
            trail = [] if (first := link.along(used[band])) == trail else first + trail
        elif trail and band not in link.crossed and link.made[trail[0]] < link.passed[band]:
            continue  # it rides back out of all it went through
        waiting |= {abs(inner) for word in trail for inner in link.words[word]} - seen
    least = {band for band, verdict in proof.verdicts.items() if isinstance(verdict, Free) and verdict.least}
    _need(least == free & used.keys() and least.isdisjoint(words), "a band is still used")
    if least:
        apart = bool(link.twisted & used.keys())
        made = proof.apart if apart else proof.least
        if made is None:
            raise ValueError("a twist may keep a band" if apart else "there are no least words")
        _need({band for band, _ in made.letters} >= used.keys(), "a band in use was ignored")
        if apart:
            found = check_least(made, link.roots, link.words, link.cores, link.trails, apart=True)
            _need(least.isdisjoint(set().union(*found)), "a band is still used where loops are apart")
            twisted, beside = link.twisted & used.keys(), set(link.twisted)
            for core, (band, _, _) in enumerate(link.cores):
                passed = {link.band(f) for word in link.along(core) for f in link.words[word]}
                beside |= passed if band in twisted else {band} if passed & twisted - link.crossed else set()
            _need(least.isdisjoint(beside), "a band clings to a twisted one, or is one")
