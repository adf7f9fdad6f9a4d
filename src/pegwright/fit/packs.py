"""Which packs to buy, and what they cost at the user's own prices."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from decimal import Decimal
from functools import reduce
from typing import Literal

import msgspec

from pegwright.finding import Finding, Phrase, finding, phrase
from pegwright.fit.stash import BandGoods, Goods, LoomGoods, Pack, Stash
from pegwright.fit.supplies import Supplies

__all__ = ["ShoppingItem", "ShoppingList", "cheapest_packs", "choose_packs"]

_LONGEST = 200_000  # rows of the table; beyond it the last packs may cost a little more than the least


class ShoppingItem(msgspec.Struct, frozen=True, kw_only=True):
    """One thing on the list: how many are needed and at hand, and the packs to buy (how many of each).

    `cost` is None if a price is unknown, or if something must be bought and there is no pack for it.
    """

    kind: Literal["bands", "clips", "loom", "hooks", "scissors"]
    what: Phrase
    needed: int
    have: int = 0
    packs: tuple[tuple[int, Pack], ...] = ()
    cost: Decimal | None = None

    @property
    def missing(self) -> int:
        """How many must be bought."""
        return max(0, self.needed - self.have)

    @property
    def bought(self) -> int:
        """How many the packs hold together."""
        return sum(number * pack.size for number, pack in self.packs)

    @property
    def left_over(self) -> int:
        """How many remain when all is made."""
        return max(0, self.have + self.bought - self.needed)


class ShoppingList(msgspec.Struct, frozen=True, kw_only=True):
    """The whole list."""

    lines: tuple[ShoppingItem, ...] = ()
    currency: str = ""
    findings: tuple[Finding, ...] = ()

    @property
    def cost(self) -> Decimal:
        """The total cost of the lines whose cost is known."""
        return sum((line.cost for line in self.lines if line.cost is not None), Decimal(0))

    @property
    def complete(self) -> bool:
        """Whether every line's cost is known."""
        return all(line.cost is not None for line in self.lines)


def choose_packs(needs: Supplies, stash: Stash) -> ShoppingList:
    """Work out the packs to buy. What is at hand is used up in order of the heaps.

    An entry for a heap's colour comes before one for any colour, one for its kind before one for any kind.
    """
    at_hand: Counter[int] = Counter()
    lines: list[ShoppingItem] = []
    for heap in needs.heaps:
        suited = [g for g in stash.bands if g.suits(heap)]
        suited.sort(key=lambda goods: (not goods.colour, not goods.band))
        named = phrase("goods-bands", name=heap.name, letter=heap.letter, band=heap.band)
        what = named if heap.name else phrase("goods-unlisted", letter=heap.letter)
        lines.append(_shopping_item("bands", what, heap.total, suited, at_hand))
    lines.append(
        _shopping_item(
            "clips", phrase("goods", kind="clips"), needs.clips + needs.spare_clips, [stash.clips], at_hand
        )
    )
    for loom in needs.looms:
        fitting = sorted(
            (g for g in stash.looms if g.suits(loom)), key=lambda g: (not g.kind, not g.rows, not g.pegs)
        )
        what = phrase("goods-loom", kind=loom.kind, rows=loom.rows, pegs=loom.pegs)
        lines.append(_shopping_item("loom", what, loom.count, fitting, at_hand))
    lines.append(_shopping_item("hooks", phrase("goods", kind="hooks"), needs.hooks, [stash.hooks], at_hand))
    scissors = phrase("goods", kind="scissors")
    lines.append(_shopping_item("scissors", scissors, needs.scissors, [stash.scissors], at_hand))
    lines = [line for line in lines if line.needed]
    findings = [
        finding("stash-lacks", what=line.what, missing=line.missing)
        for line in lines
        if line.missing and not line.packs
    ]
    if not stash.currency and any(pack.price for line in lines for _, pack in line.packs):
        findings.append(finding("currency-missing"))
    return ShoppingList(lines=tuple(lines), currency=stash.currency, findings=tuple(findings))


def _shopping_item(
    kind: Literal["bands", "clips", "loom", "hooks", "scissors"],
    what: Phrase,
    needed: int,
    goods: Sequence[Goods | BandGoods | LoomGoods],
    at_hand: Counter[int],
) -> ShoppingItem:
    """Use what is at hand, counting in `at_hand` what each entry gives, and choose packs for the rest."""
    have = 0
    for one in goods:
        taken = min(needed - have, one.have - at_hand[id(one)])
        at_hand[id(one)] += taken
        have += taken
    offers = next((one.packs for one in goods if one.packs), ())
    chosen = cheapest_packs(needed - have, offers)
    costs = [number * pack.cost for number, pack in chosen if pack.cost is not None]
    known = len(costs) == len(chosen) and (bool(chosen) or have >= needed)
    return ShoppingItem(
        kind=kind,
        what=what,
        needed=needed,
        have=have,
        packs=chosen,
        cost=sum(costs, Decimal(0)) if known else None,
    )


def cheapest_packs(needed: int, offers: Sequence[Pack]) -> tuple[tuple[int, Pack], ...]:
    """Choose packs that hold at least `needed`: least cost, then least left over, then fewest packs.

    Packs without a price are used only if no pack has one. Returns (number, pack), largest first.
    The table is exact: with best packs of size b, fewer than b others are ever needed, since among any b of
    them some hold together a multiple of b (pigeonhole), and that many best ones cost no more.
    """
    priced = [pack for pack in offers if pack.price is not None]
    choice = sorted(priced or offers, key=lambda pack: -pack.size)
    if needed <= 0 or not choice:
        return ()
    unit = reduce(math.gcd, (pack.size for pack in choice))
    sizes = [pack.size // unit for pack in choice]
    costs = [pack.cost or Decimal(0) for pack in choice]
    rest = -(-needed // unit)
    best = min(range(len(choice)), key=lambda i: (costs[i] / sizes[i], -sizes[i]))
    number: Counter[int] = Counter()
    most = min(sizes[best] * sizes[0], _LONGEST)
    if rest > most:
        number[best] = -(-(rest - most) // sizes[best])
        rest -= number[best] * sizes[best]
    table: list[tuple[Decimal, int, int]] = [(Decimal(0), 0, 0)]
    last: list[int] = [-1]
    for n in range(1, rest + 1):
        ways = []
        for i, size in enumerate(sizes):
            cost, bought, count = table[max(0, n - size)]
            ways.append(((cost + costs[i], bought + size, count + 1), i))
        way, taken = min(ways)
        table.append(way)
        last.append(taken)
    while rest > 0:
        number[last[rest]] += 1
        rest -= sizes[last[rest]]
    return tuple((number[i], pack) for i, pack in enumerate(choice) if number[i])
