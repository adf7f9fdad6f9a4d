"""Words of a free group too long to write: freely reduced, kept as shared trees, compared by hashes.

A word of 2⁸⁰ letters takes a few hundred nodes. Nodes come in pairs, a word and its inverse (`node ^ 1`), and
equal words are the same node as far as their hashes tell: a polynomial over the field of 2⁶¹ − 1 elements. An
equal hash is evidence, not proof; so nothing that `check` accepts rests on one.
"""

from __future__ import annotations

import random
from collections.abc import Container, Iterable, Sequence

__all__ = ["EMPTY", "Node", "Ropes"]

Node = int
EMPTY: Node = 0
_PRIME = (1 << 61) - 1


class Ropes:
    """Reduced words over the letters of some bands. The node of `letter(b)` is that of x_b.

    A band may have several letters, one for each of its loops; `names` gives of each its band and loop.

    `left[n]`, `right[n]` are the halves of a node, 0 for a letter; `first[n]` its first letter, so that
    `first[n ^ 1] ^ 1` is its last. `length[n >> 1]` is its number of letters, `bits[n >> 1]` has a bit for
    every band that occurs.
    """

    def __init__(self) -> None:
        self.left: list[Node] = [0, 0]
        self.right: list[Node] = [0, 0]
        self.first: list[Node] = [0, 0]
        self.length: list[int] = [0]
        self.bits: list[int] = [0]
        self.names: dict[Node, tuple[int, int]] = {}
        self._letter: dict[tuple[int, int], Node] = {}
        self._bit: dict[int, int] = {}
        self._hash: list[int] = [0, 0]
        self._power: list[int] = [1]
        self._known: dict[tuple[int, int], Node] = {}
        self._random = random.Random(61)
        self._base = self._random.randrange(1 << 32, _PRIME)

    def letter(self, band: int, loop: int = -1) -> Node:
        """Return the word of one letter, x_band, or that of one of the band's loops."""
        known = self._letter.get((band, loop))
        if known is None:
            known = self._letter[band, loop] = len(self.left)
            self.left += (0, 0)
            self.right += (0, 0)
            self.first += (known, known ^ 1)
            self.length.append(1)
            self.bits.append(self._bit.setdefault(band, 1 << len(self._bit)))
            self.names[known] = (band, loop)
            self._hash += (self._random.randrange(_PRIME), self._random.randrange(_PRIME))
            self._power.append(self._base)
        return known

    def product(self, one: Node, other: Node) -> Node:
        """Return the product of two words, freely reduced."""
        if one < 2:
            return other if other > 1 else EMPTY
        if other < 2:
            return one
        if self.first[one ^ 1] == self.first[other]:
            common = self.common_prefix(one ^ 1, other)
            one, other = self.drop(one ^ 1, common) ^ 1, self.drop(other, common)
            if one < 2 or other < 2:
                return one if one > 1 else other if other > 1 else EMPTY
        return self._join(one, other)

    def bits_of(self, bands: Iterable[int]) -> int:
        """Return the bits of some bands together."""
        found = 0
        for band in bands:
            found |= self._bit.get(band, 0)
        return found

    def bands_in(self, word: Node) -> set[int]:
        """Return the bands that occur in a word."""
        bits = self.bits[word >> 1]
        return {band for band, bit in self._bit.items() if bits & bit}

    def take(self, word: Node, letters: int) -> Node:
        """Return the first letters of a word."""
        if not letters:
            return EMPTY
        left, right, length = self.left, self.right, self.length
        before = []
        while letters < length[word >> 1]:
            half = left[word]
            if letters >= length[half >> 1]:
                letters -= length[half >> 1]
                before.append(half)
                if not letters:
                    word = before.pop()
                    break
                word = right[word]
            else:
                word = half
        for half in reversed(before):
            word = self._join(half, word)
        return word

    def letter_at(self, word: Node, place: int) -> Node:
        """Return the letter of a word at a place, counted from 0."""
        left, right, length = self.left, self.right, self.length
        while length[word >> 1] > 1:
            half = left[word]
            if place < length[half >> 1]:
                word = half
            else:
                place -= length[half >> 1]
                word = right[word]
        return word

    def drop(self, word: Node, letters: int) -> Node:
        """Return a word without its first letters."""
        return self.take(word ^ 1, self.length[word >> 1] - letters) ^ 1 if letters else word

    def core(self, word: Node) -> tuple[Node, Node]:
        """Return (c, w), w cyclically reduced, with word = c · w · c⁻¹."""
        if word < 2 or self.first[word] != self.first[word ^ 1]:
            return EMPTY, word
        outer = self.common_prefix(word, word ^ 1)
        return self.take(word, outer), self.drop(self.drop(word, outer) ^ 1, outer) ^ 1

    def common_prefix(self, one: Node, other: Node) -> int:
        """Return the number of letters that two words have in common at their beginnings."""
        left, right, length = self.left, self.right, self.length
        ones, others = [one], [other]
        same = 0
        tries = 8 * (length[one >> 1].bit_length() + length[other >> 1].bit_length())
        while ones and others and tries:
            tries -= 1
            one, other = ones.pop(), others.pop()
            if one == other:
                same += length[one >> 1]
                continue
            many, much = length[one >> 1], length[other >> 1]
            if many == 1 == much:
                return same
            if many >= much:
                ones += (right[one], left[one])
            else:
                ones.append(one)
            if much >= many:
                others += (right[other], left[other])
            else:
                others.append(other)
        if not ones or not others:
            return same
        return same + self._common_by_hash(ones, others)

    def reachable(self, roots: list[Node]) -> list[Node]:
        """Return the even nodes of all that the words are made of, halves before wholes."""
        left, right = self.left, self.right
        found: set[Node] = {0}
        waiting = [root & -2 for root in roots]
        while waiting:
            node = waiting.pop()
            if node not in found:
                found.add(node)
                if left[node]:
                    waiting += (left[node] & -2, right[node] & -2)
        found.discard(0)
        return sorted(found)

    def find_mixed(self, roots: Iterable[Node], bits: int) -> list[Node]:
        """Return the even nodes in which bands of `bits` and others occur; halves before wholes."""
        left, right, mask = self.left, self.right, self.bits
        found: set[Node] = set()
        waiting = [root & -2 for root in roots]
        while waiting:
            node = waiting.pop()
            here = mask[node >> 1]
            if here & bits and here & ~bits and node not in found:
                found.add(node)
                waiting += (left[node] & -2, right[node] & -2)
        return sorted(found)

    def conjugate_bands(self, roots: Sequence[Node], by: Node, bits: int) -> list[tuple[Node, Node]]:
        """Put by · x · by⁻¹ in the place of each letter x of some bands, none of which is in `by`.

        Return (c, w) for each word, c · w · c⁻¹ being what it has become. Between two such letters by⁻¹ and
        by cancel, so that only where their runs begin and end is anything to be worked out.
        """
        left, right, first, mask, product = self.left, self.right, self.first, self.bits, self.product
        back = by ^ 1
        led: dict[Node, Node] = {}
        new: dict[
            Node, Node
        ] = {}  # without the `by` before a first letter of the bands, or behind a last one

        def before(word: Node) -> Node:
            """Return by⁻¹ · word."""
            if word not in led:
                led[word] = product(back, word)
            return led[word]

        for node in self.find_mixed(roots, bits):
            one, other = left[node], right[node]
            ends, starts = mask[first[one ^ 1] >> 1] & bits, mask[first[other] >> 1] & bits
            even, odd = new.get(one & -2), new.get(other & -2)
            one = one if even is None else even ^ (one & 1)
            other = other if odd is None else odd ^ (other & 1)
            if ends and not starts:
                other = before(other)
            elif starts and not ends:
                one = before(one ^ 1) ^ 1
            new[node] = product(one, other)
        found = []
        for root in roots:
            inner = new.get(root & -2)
            word = root if inner is None else inner ^ (root & 1)
            starts, ends = mask[first[root] >> 1] & bits, mask[first[root ^ 1] >> 1] & bits
            if starts and not ends:
                word = product(word, by)
            elif ends and not starts:
                word = product(back, word)
            found.append((by if starts or ends else EMPTY, word))
        return found

    def ignore_bands(self, roots: Sequence[Node], keep: Container[int]) -> list[Node]:
        """Return the words with the letters of the bands in `keep` only."""
        left, right, mask = self.left, self.right, self.bits
        bits = self.bits_of(band for band in self._bit if band not in keep)
        new: dict[Node, Node] = {}

        def part(node: Node) -> Node:
            here = mask[node >> 1]
            if not here & bits:
                return node
            return new[node & -2] ^ (node & 1) if here & ~bits else EMPTY

        for node in self.find_mixed(roots, bits):
            new[node] = self.product(part(left[node]), part(right[node]))
        return [found if (found := part(root)) > 1 else EMPTY for root in roots]

    def _join(self, one: Node, other: Node) -> Node:
        """Return the product of two words of which nothing cancels."""
        hashes, power = self._hash, self._power
        mine, yours = power[one >> 1], power[other >> 1]
        key = ((hashes[one] * yours + hashes[other]) % _PRIME, mine * yours % _PRIME)
        known = self._known.get(key)
        if known is None:
            back = ((hashes[other ^ 1] * mine + hashes[one ^ 1]) % _PRIME, key[1])
            inverse = self._known.get(back)
            if inverse is not None:
                return inverse ^ 1
            known = self._known[key] = len(self.left)
            hashes += (key[0], back[0])
            power.append(key[1])
            self.left += (one, other ^ 1)
            self.right += (other, one ^ 1)
            self.first += (self.first[one], self.first[other ^ 1])
            self.length.append(self.length[one >> 1] + self.length[other >> 1])
            self.bits.append(self.bits[one >> 1] | self.bits[other >> 1])
        return known

    def _common_by_hash(self, ones: list[Node], others: list[Node]) -> int:
        """Do the same for what is left of two words, given as stacks: piece by piece of the first."""
        left, right, length = self.left, self.right, self.length
        same = 0
        while ones and others:
            one = ones.pop()
            found = self._remove(others, length[one >> 1])
            if found is not None and found[0] == self._hash[one]:
                same += length[one >> 1]
                others = found[1]
            elif left[one]:
                ones += (right[one], left[one])
            else:
                break
        return same

    def _remove(self, stack: list[Node], letters: int) -> tuple[int, list[Node]] | None:
        """Return the hash of the first letters of a stack of words, and the stack without them."""
        left, right, length = self.left, self.right, self.length
        rest, found = stack[:], 0
        while letters:
            if not rest:
                return None
            node = rest.pop()
            if length[node >> 1] > letters:
                rest += (right[node], left[node])
            else:
                letters -= length[node >> 1]
                found = (found * self._power[node >> 1] + self._hash[node]) % _PRIME
        return found, rest
