"""The far end of a piece that its fastener closes into a ring.

Let a fastener's word, all bands but M ignored, be U · x_c^k: all loops of c side by side, fresh from where
they were laid, k ≠ 0; and U = Π v^e x_a^±1 v^−e as in `holding_paths`, v made of the rest of M, c included.
Ignore also one band of a holding path that leads from a down to the witness c: what is left is x_a^s · x_c^k,
s the sum of a's exponents, up to conjugation. Pure symmetric automorphisms commute with ignoring a band and
keep the normal closure of x_a^s; modulo that (s = 0: nothing at all), what is left is x_c^k, whose orbit is
its conjugacy class. The word itself is, in the free product of Z/s (or Z) and the rest, a cyclic product of
at least two powers of x_a with v^±1 between them and v^±1 x_c^k in the last gap, none of them trivial: not a
conjugate of x_c^k. So every band of the path is held. That v ≠ x_c^±k is seen from exponents: a v that is
again such a product of a further carrier has exponent 0 in c.
"""

from __future__ import annotations

from typing import NamedTuple

from pegwright.proof.reader import List, Reader, blocks, exponent


class Closing(NamedTuple):
    """A fastener's word less the loops of `band`, which it turns round `turns` times; begins behind them."""

    band: int
    turns: int
    rest: List


def closing_word(reader: Reader, root: List) -> Closing | None:
    """Return the last band in a fastener's word whose loops lie side by side, fresh, with exponent ≠ 0."""
    for band in reversed(list(reader.loops(root))):
        factors = reader.loops(root)[band]
        if not exponent(factors) or any(reader.trail_of[f >> 1] for f in factors):
            continue
        inside = [reader.band_of[f >> 1] == band for f in root]
        starts = [i for i in range(len(root)) if not inside[i - 1] and inside[i]]
        if len(starts) == 1:
            rest = [*root[starts[0] :], *root[: starts[0]]][len(factors) :]
            return Closing(band, exponent(factors), tuple(rest))
    return None


def ties(reader: Reader, factors: List, end: Closing) -> bool:
    """Say whether a band with these factors in `end.rest` can lead on from there."""
    found = reader.places(factors)
    turns = abs(exponent(factors))
    if found is None or turns == 1:
        return False
    again = reader.loops(found[0].product).get(end.band, ())
    runs = blocks(factors, found[1])
    apart = len(runs) > 1 and abs(exponent(again)) != abs(end.turns)
    return apart and all(power % turns if turns else power for _, power in runs)
