"""Held: paths of carriers, followed step by step (why they hold: see `carriers`, `closing`)."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Collection, Sequence
from itertools import compress, takewhile

from pegwright.proof.check.link import Link, Product, cyclic, need, push, turns
from pegwright.proof.check.short import check_part
from pegwright.proof.values import Held, HeldByPart, Part, Proof, Step


class Paths:
    """The steps, and while they are walked the path from the root: who carries on it, who is barred."""

    def __init__(self, link: Link, steps: Sequence[Step]) -> None:
        self.link, self.steps = link, steps
        self.bands_in = [frozenset(map(link.band, word)) for word in link.words]
        # Of each step its product, and the bands of the words that must vanish beside it.
        self.products, self.aside = list[Product](), list[frozenset[int]]()
        # Of each band the steps at which it must not be used by another, and those whose chain goes on by it.
        self.barring, self.users = dict[int, list[int]](), dict[int, list[int]]()
        # In order: where the path's carriers are barred, and where bands barred on the path are used.
        self.bars, self.uses = list[int](), list[int]()
        self.path, self.carrying = dict[int, None](), set[int]()

    def check(self, proof: Proof) -> None:
        """Check every band said to be held.

        Raises:
            ValueError: one of the certificates does not hold.
        """
        steps, count = self.steps, len(self.steps)
        last = [-1] * count  # where the chain from a step on ends
        below: dict[int, list[int]] = {number: [] for number in range(-1, count)}
        for number in reversed(range(count)):
            step, after = steps[number], steps[min(number + 1, count - 1)]
            need(-1 <= step.parent < number and -1 <= step.loan < number, "a step has no parent")
            below[step.parent].append(number)
            goes_on = after.parent == number and after.loan < 0
            last[number] = number if step.witness else last[number + 1] if goes_on else -1
            need(step.witness or step.loan >= 0 or below[number], "a step leads nowhere")
            need(step.loan < 0 or not (step.witness or below[number]), "a loan leads on by itself")
            if last[number] >= 0:
                self.users.setdefault(step.witness or after.carriers[0], []).append(number)
        claims, stands = self._claims(proof)
        for part, held in stands[-1]:
            check_part(self.link, part, self.link.roots, set(), held)
        for number, step in enumerate(steps):
            self._read(step)
            for band in self._barred(number) if step.loan < 0 else ():
                self.barring.setdefault(band, []).append(number)
        for number, step in enumerate(steps):
            if step.loan >= 0:
                need(not claims[number] and not stands[number], "a loan has no witness of its own")
                continue
            while self.path and next(reversed(self.path)) != step.parent:
                self._mark(self.path.popitem()[0], -1)
            need((step.parent >= 0) == bool(self.path), "a step is out of order")
            self._clear(step, number, number)
            self._mark(number, 1)
            self.path[number] = None
            for band in claims[number]:
                self._apart(number, band)
                need(self.path.keys().isdisjoint(set(self.barring[band]) - {number}), "a witness is barred")
                self._vanish(self._trails(number, band) | self.aside[number], {band})
            for part, held in stands[number]:
                self._part(number, part, held)
            for loan in (loan for loan in below[number] if steps[loan].loan >= 0):
                self._loan(loan, last)

    def _claims(self, proof: Proof) -> tuple[list[set[int]], dict[int, list[tuple[Part, set[int]]]]]:
        """Return which bands are said to be witnesses at each step, and which parts stand there."""
        claims = [{step.witness} - {0} for step in self.steps]
        parts = [(part, set[int]()) for part in proof.parts]
        for band, verdict in proof.verdicts.items():
            if isinstance(verdict, Held):
                step = self.steps[verdict.step if verdict.step >= 0 else len(self.steps)]
                need(verdict.witness or band in step.carriers, f"band {band} carries nothing")
                claims[verdict.step] |= {band} if verdict.witness else set()
            if isinstance(verdict, HeldByPart):
                parts[verdict.part][1].add(band)
        stands: dict[int, list[tuple[Part, set[int]]]] = {at: [] for at in range(-1, len(self.steps))}
        for part, held in parts:
            need(held, "a part holds nothing")
            stands[part.step].append((part, held))
        return claims, stands

    def _part(self, number: int, part: Part, held: set[int]) -> None:
        """A part's bands must have no loops elsewhere on the path; its word must do without the carriers."""
        need(not self.steps[next(iter(self.path))].without, "a part stands where a far end is left out")
        for band in part.keep:
            here = self.path.keys() & set(self.barring.get(band, ()))
            need(here <= {number} and band not in self.aside[number], "a part's band is barred")
        check_part(self.link, part, [self.products[number]], self.carrying, held)

    def _loan(self, loan: int, last: Sequence[int]) -> None:
        """Nothing on the path may be barred on the borrowed chain, nor the other way round."""
        step, low = self.steps[loan], self.steps[loan].loan
        high = last[low]
        need(high >= 0 and self.products[low] == self.products[loan], "a false loan")
        if low == high:
            self._apart(loan, self.steps[high].witness)
        self._clear(step, low, high)
        met = [user for band in self.aside[loan] for user in self.users.get(band, ())]
        met += self.uses[bisect_left(self.uses, low) : bisect_left(self.uses, high + 1)]
        need(not any(low <= user <= high for user in met), "a loan clashes with its path")
        self._vanish(self.aside[loan] | self._trails(high, self.steps[high].witness), step.carriers)

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
        need(not barred and self.aside[step.parent].isdisjoint(step.carriers), "a carrier is barred")
        for bar in (bar for band in step.carriers for bar in self.barring[band] if bar != step.parent):
            need(bar not in self.path and not low <= bar <= high, "a carrier has loops elsewhere")

    def _vanish(self, bands: frozenset[int], new: Collection[int]) -> None:
        need(self.carrying.isdisjoint(bands) and bands.isdisjoint(new), "what should vanish does not")

    def _barred(self, number: int) -> frozenset[int]:
        return self.aside[number].union(map(self.link.band, self.products[number]))

    def _trails(self, number: int, band: int) -> frozenset[int]:
        """Return the bands in the words that the loops of a witness went through."""
        factors = self.link.loops(self.products[number], band)
        need(turns(factors), f"band {band} is not turned round")
        return frozenset().union(*(self.bands_in[word] for f in factors for word in self.link.along(f)))

    def _read(self, step: Step) -> None:
        """Note the step's product, the same for each of its carriers, and what lies beside it."""
        if step.parent < 0:
            need(step.root >= 0 and not step.carriers and step.loan < 0, "a root is not one")
            root = self.link.roots[step.root]
            found = {(self._less(root, step.without) if step.without else root, frozenset[int]())}
        else:
            above, ring = self.products[step.parent], self.steps[step.parent].without > 0
            found = {self._passage(self.link.loops(above, band), ring) for band in step.carriers}
        need(len(found) == 1, "carriers of one step pass through different things")
        product, outer = found.pop()
        self.products.append(product)
        self.aside.append(frozenset().union(*(self.bands_in[word] for word in outer)))

    def _less(self, root: Product, band: int) -> Product:
        """Return what follows a band's loops in a root: fresh loops side by side that do not cancel."""
        own = [self.link.band(f) == band for f in root]
        starts = [i for i in range(len(root)) if own[i] and not own[i - 1]]
        fresh = not any(self.link.along(f) for f, mine in zip(root, own, strict=True) if mine)
        need(len(starts) == 1 and fresh and turns(compress(root, own)), "a far end is not one")
        return (root[starts[0] :] + root[: starts[0]])[sum(own) :]

    def _apart(self, number: int, witness: int) -> None:
        """Right below a root less its far end, the far end must not be turned round as often as there."""
        root = self.steps[max(self.steps[number].parent, 0)]
        if self.steps[number].parent >= 0 and witness == root.without:
            here, there = self.products[number], self.link.roots[root.root]
            once, again = (turns(self.link.loops(p, witness)) for p in (here, there))
            need(abs(once) != abs(again), "a far end is all that a carrier passes")

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
                    push(between, f, f ^ 1)
            need(not between or product in ((), tuple(between)), "a carrier passes through different things")
            product = product or tuple(between)
            for letter in ("v{}V" if between else "{}").format("X" if factor & 1 else "x"):
                push(around, letter, letter.swapcase())
        if ring:  # the far end keeps the ends apart, and so many turns of the carrier may count as none
            once = abs(turns(factors))
            runs = re.findall("[xX]+", "".join(around))
            tied = once != 1 and len(runs) > 1 and all(len(run) % once if once else run for run in runs)
        else:
            tied = bool({"v", "V"} & set(cyclic(around, str.swapcase)))
        need(tied, "a carrier lets go of what it passes through")
        return product, frozenset(outer)
