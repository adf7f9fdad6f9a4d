"""The checker: accepts or rejects a proof from the machine's record alone. It trusts nothing else.

Nothing here is merely likely. A band accepted as held is held, no isotopy takes it off: by the argument at
the head of `carriers`, or by peak reduction of a word written out (Collins 1989, McCool 1986). A band
accepted as free has a word without it after slips and slides; that these are motions in space too, not of
the word only, rests on the rule of `slips` that two loops of a twisted band never undo each other.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections import Counter, defaultdict
from collections.abc import Callable, Collection, Iterable, Sequence
from itertools import combinations, compress, count, takewhile
from typing import Any

from pegwright.loom.events import Bight, Drawn, Event, Fastened, Laid, Lifted, Moved
from pegwright.proof.values import Free, Held, HeldByPart, Proof, Slide, Slip, Step

__all__ = ["check"]

Product = tuple[int, ...]  # factors: 2 · core, + 1 for the inverse
Letter = tuple[int, int, int]  # band, loop (−1: all its loops alike), sign
_MOST_BANDS, _MOST_LETTERS = 10, 6000  # of words written out


def check(events: Sequence[Event], proof: Proof) -> str | None:
    """Return None if every verdict of the proof is certified, else the first reason why not."""
    try:
        link = _Link(events)
        _need(list(proof.verdicts) == sorted(link.bands), "the verdicts are not those of the bands")
        _Paths(link, proof.steps).check(proof)
        _check_parts(link, proof)
        _check_free(link, proof)
    except ValueError as reason:
        return str(reason)
    except (LookupError, TypeError, AttributeError):
        return "a certificate points nowhere"
    return None


def _need(condition: object, otherwise: str) -> None:
    if not condition:
        raise ValueError(otherwise)


class _Link:
    """The words of the link, read from the events; loops of one band that undo each other are left out."""

    def __init__(self, events: Sequence[Event]) -> None:
        homes = {e.band: {seat.holder for seat in e.seats} for e in events if isinstance(e, Laid)}
        twisted = {event.bight.band for event in events if isinstance(event, Moved)}
        for event in events:
            if isinstance(event, Laid) and (any(event.twists) or len(homes[event.band]) < len(event.seats)):
                twisted.add(event.band)
            if isinstance(event, Drawn) and not {event.source, event.target} <= homes[event.bight.band]:
                twisted.add(event.bight.band)
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
            if words[tuple(factor for factor, _ in kept)] == len(self.made):
                self.made.append(when)
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
        return int(self.cores[factor >> 1][0])

    def loops(self, product: Product, band: int) -> list[int]:
        return [factor for factor in product if self.band(factor) == band]

    def along(self, factor: int) -> list[int]:
        """Return the words that a factor's loop went through, outermost first."""
        found, trail = list[int](), self.cores[factor >> 1][2]
        while trail:
            word, trail = self.trails[trail]
            found.append(word)
        return found


# --- held: paths of carriers -------------------------------------------------------------------------------


class _Paths:
    def __init__(self, link: _Link, steps: Sequence[Step]) -> None:
        self.link, self.steps = link, steps
        self.bands_in = [frozenset(map(link.band, word)) for word in link.words]
        self.products: list[Product] = []
        self.aside: list[frozenset[int]] = []  # bands of the words that must vanish beside the product
        self.barring: dict[int, list[int]] = {}  # the steps at which a band must not be used by another
        self.users: dict[int, list[int]] = {}  # the steps whose chain goes on by a band
        self.bars: list[int] = []  # in order: where the path's carriers are barred
        self.uses: list[int] = []  # in order: where bands barred on the path are used
        self.path: dict[int, None] = {}
        self.carrying: set[int] = set()

    def check(self, proof: Proof) -> None:
        steps, count = self.steps, len(self.steps)
        last = [-1] * count  # where the chain from a step on ends
        below: dict[int, list[int]] = {number: [] for number in range(-1, count)}
        claims = [{step.witness} - {0} for step in steps]
        for number in reversed(range(count)):
            step, after = steps[number], steps[min(number + 1, count - 1)]
            _need(-1 <= step.parent < number and -1 <= step.loan < number, "a step has no parent")
            below[step.parent].append(number)
            goes_on = after.parent == number and after.loan < 0
            last[number] = number if step.witness else last[number + 1] if goes_on else -1
            _need(step.witness or step.loan >= 0 or below[number], "a step leads nowhere")
            _need(step.loan < 0 or not (step.witness or below[number]), "a loan leads on by itself")
            if last[number] >= 0:
                self.users.setdefault(step.witness or after.carriers[0], []).append(number)
        for band, verdict in proof.verdicts.items():
            if isinstance(verdict, Held):
                step = steps[verdict.step if verdict.step >= 0 else count]
                _need(verdict.witness or band in step.carriers, f"band {band} carries nothing")
                claims[verdict.step] |= {band} if verdict.witness else set()
        for number, step in enumerate(steps):
            self._read(step)
            for band in self._barred(number) if step.loan < 0 else ():
                self.barring.setdefault(band, []).append(number)
        for number, step in enumerate(steps):
            if step.loan >= 0:
                _need(not claims[number], "a loan has no witness of its own")
                continue
            while self.path and next(reversed(self.path)) != step.parent:
                self._mark(self.path.popitem()[0], -1)
            _need((step.parent >= 0) == bool(self.path), "a step is out of order")
            self._clear(step, number, number)
            self._mark(number, 1)
            self.path[number] = None
            for band in claims[number]:
                self._apart(number, band)
                _need(self.path.keys().isdisjoint(set(self.barring[band]) - {number}), "a witness is barred")
                self._vanish(self._trails(number, band) | self.aside[number], {band})
            for loan in (loan for loan in below[number] if steps[loan].loan >= 0):
                low, high = steps[loan].loan, last[steps[loan].loan]
                _need(high >= 0 and self.products[low] == self.products[loan], "a false loan")
                if low == high:
                    self._apart(loan, steps[high].witness)
                self._clear(steps[loan], low, high)
                met = [user for band in self.aside[loan] for user in self.users.get(band, ())]
                met += self.uses[bisect_left(self.uses, low) : bisect_left(self.uses, high + 1)]
                _need(not any(low <= user <= high for user in met), "a loan clashes with its path")
                self._vanish(self.aside[loan] | self._trails(high, steps[high].witness), steps[loan].carriers)

    def _mark(self, number: int, by: int) -> None:
        step = self.steps[number]
        (self.carrying.update if by > 0 else self.carrying.difference_update)(step.carriers)
        bars = [bar for band in step.carriers for bar in self.barring[band] if bar != step.parent]
        uses = [user for band in self._barred(number) for user in self.users.get(band, ())]
        for marks, ordered in ((bars, self.bars), (uses, self.uses)):
            for mark in marks:
                at = bisect_left(ordered, mark)
                ordered[at : at + (by < 0)] = [mark] * (by > 0)

    def _clear(self, step: Step, low: int, high: int) -> None:
        """No carrier on the path is barred from `low` to `high`, nor the new ones there or on the path."""
        barred = bisect_left(self.bars, low) < bisect_left(self.bars, high + 1)
        _need(not barred and self.aside[step.parent].isdisjoint(step.carriers), "a carrier is barred")
        for bar in (bar for band in step.carriers for bar in self.barring[band] if bar != step.parent):
            _need(bar not in self.path and not low <= bar <= high, "a carrier has loops elsewhere")

    def _vanish(self, bands: frozenset[int], new: Collection[int]) -> None:
        _need(self.carrying.isdisjoint(bands) and bands.isdisjoint(new), "what should vanish does not")

    def _barred(self, number: int) -> frozenset[int]:
        return self.aside[number].union(map(self.link.band, self.products[number]))

    def _trails(self, number: int, band: int) -> frozenset[int]:
        """Return the bands in the words that the loops of a witness went through."""
        factors = self.link.loops(self.products[number], band)
        _need(_turns(factors), f"band {band} is not turned round")
        return frozenset().union(*(self.bands_in[word] for f in factors for word in self.link.along(f)))

    def _read(self, step: Step) -> None:
        """Note the step's product, the same for each of its carriers, and what lies beside it."""
        if step.parent < 0:
            _need(step.root >= 0 and not step.carriers and step.loan < 0, "a root is not one")
            root = self.link.roots[step.root]
            found = {(self._less(root, step.without) if step.without else root, frozenset[int]())}
        else:
            above, ring = self.products[step.parent], self.steps[step.parent].without > 0
            found = {self._passage(self.link.loops(above, band), ring) for band in step.carriers}
        _need(len(found) == 1, "carriers of one step pass through different things")
        product, outer = found.pop()
        self.products.append(product)
        self.aside.append(frozenset().union(*(self.bands_in[word] for word in outer)))

    def _less(self, root: Product, band: int) -> Product:
        """Return what follows a band's loops in a root: fresh loops side by side that do not cancel."""
        own = [self.link.band(f) == band for f in root]
        starts = [i for i in range(len(root)) if own[i] and not own[i - 1]]
        fresh = not any(self.link.along(f) for f, mine in zip(root, own, strict=True) if mine)
        _need(len(starts) == 1 and fresh and _turns(compress(root, own)), "a far end is not one")
        return (root[starts[0] :] + root[: starts[0]])[sum(own) :]

    def _apart(self, number: int, witness: int) -> None:
        """Right below a root less its far end, the far end must not be turned round as often as there."""
        root = self.steps[max(self.steps[number].parent, 0)]
        if self.steps[number].parent >= 0 and witness == root.without:
            here, there = self.products[number], self.link.roots[root.root]
            once, again = (_turns(self.link.loops(p, witness)) for p in (here, there))
            _need(abs(once) != abs(again), "a far end is all that a carrier passes")

    def _passage(self, factors: list[int], ring: bool) -> tuple[Product, frozenset[int]]:
        product, outer = (), set[int]()  # type: tuple[Product, set[int]]
        around: list[str] = []  # the product in x (the band) and v (what it passes), freely reduced
        for factor in factors:
            between: list[int] = []
            if factor >> 1 != factors[0] >> 1:
                back, there = self.link.along(factors[0]), self.link.along(factor)
                common = len(list(takewhile(lambda pair: pair[0] == pair[1], zip(back, there, strict=False))))
                outer.update(back[:common])
                home = [f ^ 1 for word in reversed(back[common:]) for f in reversed(self.link.words[word])]
                for f in home + [f for word in there[common:] for f in self.link.words[word]]:
                    _push(between, f, f ^ 1)
            _need(not between or product in ((), tuple(between)), "a carrier passes through different things")
            product = product or tuple(between)
            for letter in ("v{}V" if between else "{}").format("X" if factor & 1 else "x"):
                _push(around, letter, letter.swapcase())
        if ring:  # the far end keeps the ends apart, and so many turns of the carrier may count as none
            turns = abs(_turns(factors))
            runs = re.findall("[xX]+", "".join(around))
            tied = turns != 1 and len(runs) > 1 and all(len(run) % turns if turns else run for run in runs)
        else:
            tied = bool({"v", "V"} & set(_cyclic(around, str.swapcase)))
        _need(tied, "a carrier lets go of what it passes through")
        return product, frozenset(outer)


def _turns(factors: Iterable[int]) -> int:
    return sum(1 - 2 * (factor & 1) for factor in factors)


# --- short words, and free ---------------------------------------------------------------------------------


def _inverse(letter: Letter) -> Letter:
    return letter[0], letter[1], -letter[2]


def _push(out: list[Any], item: object, undoing: object) -> None:
    if out and out[-1] == undoing:
        out.pop()
    else:
        out.append(item)


def _cyclic(word: list[Any], inverse: Callable[[Any], Any]) -> list[Any]:
    while len(word) > 1 and word[0] == inverse(word[-1]):
        word = word[1:-1]
    return word


def _written(link: _Link, keep: Collection[int], slides: Sequence[Slide], apart: bool) -> list[list[Letter]]:
    """Return the fasteners' words after the slides, cyclically reduced, with the bands of `keep` only."""
    known: list[list[Letter] | None] = []
    for word in [*link.words, *link.roots]:
        out: list[Letter] | None = []
        for factor in word:
            parts = [known[inner] for inner in link.along(factor)]
            band, loop, _ = link.cores[factor >> 1]
            if out is None or band not in keep:
                continue
            if None in parts or len(out) > _MOST_LETTERS:
                out = None
                continue
            before = [letter for part in parts for letter in part or ()]
            middle = (band, loop if apart else -1, 1 - 2 * (factor & 1))
            for letter in [*before, middle, *map(_inverse, reversed(before))]:
                _push(out, letter, _inverse(letter))
        known.append(out)
    roots = known[len(link.words) :]
    _need(None not in roots, "a word is too long to write out")
    words = [_cyclic(word or [], _inverse) for word in roots]
    for by, loop, sign, moving in slides:
        _need(abs(sign) == 1 and by not in moving, "a band cannot slide along itself")
        y: Letter = (by, loop, sign)
        for number, letters in enumerate(words):
            out = []
            for new in (n for x in letters for n in ((y, x, _inverse(y)) if x[0] in moving else (x,))):
                _push(out, new, _inverse(new))
            words[number] = _cyclic(out, _inverse)
    return words


def _check_parts(link: _Link, proof: Proof) -> None:
    held = [(v.part, band) for band, v in proof.verdicts.items() if isinstance(v, HeldByPart)]
    _need({part for part, _ in held} == set(range(len(proof.parts))), "a part is missing or holds nothing")
    for number, part in enumerate(proof.parts):
        _need(len(part.keep) <= _MOST_BANDS, "a part has too many bands")
        words = _written(link, part.keep, part.slides, apart=False)
        bands = {letter[0] for word in words for letter in word}
        _need(bands >= {band for at, band in held if at == number}, "a part does not hold its band")
        pairs = Counter(pair for word in words for pair in zip(word, word[1:] + word[:1], strict=True))
        for y in bands:  # does any set of bands, slid along y, leave fewer y's?
            now = sum(many for (one, _), many in pairs.items() if one[0] == y)
            others = sorted(bands - {y})
            for moving in (c for size in range(1, len(others)) for c in combinations(others, size)):
                cut = 0
                for (one, two), many in pairs.items():
                    leaves = one[2] < 0 if one[0] == y else one[0] in moving
                    enters = two[2] > 0 if two[0] == y else two[0] in moving
                    cut += many * (leaves != enters)
                _need(cut >= now, "a part's words are not of least length")


def _check_free(link: _Link, proof: Proof) -> None:
    claims = {band: verdict for band, verdict in proof.verdicts.items() if isinstance(verdict, Free)}
    _need(proof.slips == (tuple(link.slips) if claims else ()), "these are not the slips to be taken")
    used = _in_use(link) if claims else {}
    slid = {band for band, verdict in claims.items() if verdict.slid}
    _need(slid == claims.keys() & used.keys(), "a band is still used")
    _need(slid or not proof.slides, "slides that free nothing")
    words = _written(link, used, proof.slides, apart=True) if slid else []
    _need(not any(letter[0] in slid for word in words for letter in word), "a band is still held")


def _in_use(link: _Link) -> dict[int, int]:
    """Return the bands that a fastener uses, directly or through what it uses (why: see `slips.in_use`)."""
    used: dict[int, int] = {}
    seen: set[int] = set()
    waiting = [factor for root in link.roots for factor in root]
    while waiting:
        factor = waiting.pop() & ~1
        if factor in seen:
            continue
        seen.add(factor)
        band, trail = link.band(factor), link.along(factor)
        if used.setdefault(band, factor) != factor:
            first = link.along(used[band])
            trail = [] if first == trail else first + trail
        elif trail and link.made[trail[0]] < link.passed[band]:
            continue  # it rides back out of all it went through
        waiting += [inner for word in trail for inner in link.words[word]]
    return used
