"""Checks least words, trusting nothing: that they are the fasteners', that they are reduced, and least.

Words are compared as 2 × 2 matrices over the field of 2⁶¹ − 1 elements, drawn afresh for every check: words
that differ give equal matrices with a likelihood of about their length / 2⁶¹ for words of up to 2⁴⁰ letters
(Schwartz 1980, Zippel 1979), and for longer ones as far as chance is fair. Reducedness, counts and flows are
exact.
"""

from __future__ import annotations

import random
from collections.abc import Iterable, Mapping, Sequence
from itertools import chain

from pegwright.proof.values import LeastWords

__all__ = ["check_least"]

Matrix = tuple[int, int, int, int]
_PRIME = (1 << 61) - 1
_ONE: Matrix = (1, 0, 0, 1)


def check_least(
    least: LeastWords,
    roots: Sequence[Sequence[int]],
    words: Sequence[Sequence[int]],
    cores: Sequence[tuple[int, int, int]],
    trails: Sequence[tuple[int, int]],
    *,
    apart: bool = False,
) -> list[set[int]]:
    """Return the bands that occur in each fastener's least word; raise ValueError where anything is amiss.

    `roots` and `words` are products of factors ±c, core `cores[c]` being (band, loop, trail) and `trails[t]`
    (word, inner trail), 0 the empty ones. With `apart` loops have letters of their own where cores tell them
    from each other, and the words need not be least: what matters is that the steps lead there.
    """
    program = _Program(least)
    letters = {name: _random_matrix() for name in least.letters}
    kept = {band for band, _ in letters}
    _need(apart or all(loop == -1 for _, loop in letters), "a loop has a letter of its own")
    _need(len(roots) == len(least.words), "there is not one word for every fastener")
    _need(len(least.outers) == len(least.steps) + 1, "there is not one cut for every step")
    made = program.values(least.words, letters)
    for stage in range(len(least.steps), -1, -1):  # backwards: from the least words to the fasteners'
        _need(len(least.outers[stage]) == len(roots), "there is not one cut for every word")
        cut = program.values(least.outers[stage], letters)
        made = [_times(_times(c, w), _inverse(c)) for c, w in zip(cut, made, strict=True)]
        if stage:  # the letters before the step, in terms of those after it
            by, bands = least.steps[stage - 1]
            _need(set(bands) <= kept, "a step moves an unknown band")
            _need(program.bands(by).isdisjoint(bands), "a band cannot be conjugated by itself")
            (around,) = program.values([by], letters)
            letters = {
                name: _times(_times(around, x), _inverse(around)) if name[0] in bands else x
                for name, x in letters.items()
            }
    named = [(band, loop if apart else -1) if band in kept else None for band, loop, _ in cores]
    same = made == _evaluate(roots, words, cores, trails, [name and letters[name] for name in named])
    _need(same, "a least word is not that of its fastener")
    if not apart:
        program.check_flows(least)
    return [program.bands(word) for word in least.words]


def _need(condition: object, otherwise: str) -> None:
    if not condition:
        raise ValueError(otherwise)


class _Program:
    """The symbols of least words: letters, then joins of earlier symbols."""

    def __init__(self, least: LeastWords) -> None:
        self.letters = least.letters
        self.joins = least.joins
        numbers = (type(band) is type(loop) is int and band > 0 for band, loop in self.letters)
        _need(all(numbers), "a letter is no band's and loop's")
        _need(len(set(self.letters)) == len(self.letters), "a letter is named twice")
        ends = list(range(len(self.letters) + 1))
        self.first, self.last = ends, ends[:]  # letters at the ends of each symbol, by their numbers
        for one, other in self.joins:
            _need(0 < abs(one) < len(self.first) > abs(other) > 0, "a join of what comes later")
            _need(self._end(one) != -self._start(other), "a word is not reduced")
            self.first.append(self._start(one))
            self.last.append(self._end(other))
        used = [*least.words, *chain(*least.outers), *(by for by, _ in least.steps)]
        _need(all(abs(symbol) < len(self.first) for symbol in used), "an unknown word")
        around = all(not word or self._end(word) != -self._start(word) for word in least.words)
        _need(around, "a word is not cyclically reduced")

    def _start(self, symbol: int) -> int:
        return self.first[symbol] if symbol > 0 else -self.last[-symbol]

    def _end(self, symbol: int) -> int:
        return self.last[symbol] if symbol > 0 else -self.first[-symbol]

    def _parts_of(self, symbols: Iterable[int]) -> list[int]:
        """Return all symbols that some are made of, and these, each after its own."""
        found: set[int] = set()
        waiting = [abs(symbol) for symbol in symbols if symbol]
        while waiting:
            symbol = waiting.pop()
            if symbol not in found:
                found.add(symbol)
                if symbol > len(self.letters):
                    waiting += map(abs, self.joins[symbol - len(self.letters) - 1])
        return sorted(found)

    def bands(self, symbol: int) -> set[int]:
        """Return the bands that occur in a symbol."""
        return {self.letters[s - 1][0] for s in self._parts_of([symbol]) if s <= len(self.letters)}

    def values(self, symbols: Sequence[int], letters: Mapping[tuple[int, int], Matrix]) -> list[Matrix]:
        """Return the matrices of symbols, given those of the letters."""
        known: dict[int, Matrix] = {0: _ONE}
        for symbol in self._parts_of(symbols):
            if symbol <= len(self.letters):
                known[symbol] = letters[self.letters[symbol - 1]]
            else:
                one, other = self.joins[symbol - len(self.letters) - 1]
                known[symbol] = _times(_signed_matrix(known, one), _signed_matrix(known, other))
        return [_signed_matrix(known, symbol) for symbol in symbols]

    def check_flows(self, least: LeastWords) -> None:
        """Check that no partial conjugation makes the words shorter: of every band all flows across."""
        often = dict.fromkeys(self._parts_of(least.words), 0)
        beside: dict[int, dict[int, int]] = {}  # of a letter, ±band, its edges by the band at the other end

        def band(letter: int) -> int:
            return self.letters[abs(letter) - 1][0] * (1 if letter > 0 else -1)

        def count(end: int, start: int, many: int) -> None:
            for here, there in ((band(end), -band(start)), (-band(start), band(end))):
                edges = beside.setdefault(here, {})
                edges[abs(there)] = edges.get(abs(there), 0) + many

        for word in least.words:
            if word:
                often[abs(word)] += 1
                count(self._end(word), self._start(word), 1)
        for symbol in reversed(often):
            if symbol > len(self.letters):
                one, other = self.joins[symbol - len(self.letters) - 1]
                often[abs(one)] += often[symbol]
                often[abs(other)] += often[symbol]
                count(self._end(one), self._start(other), often[symbol])
        for m in {abs(letter) for letter in beside}:
            rest = {at: beside[m].get(at, 0) - beside[-m].get(at, 0) for at in beside[m] | beside[-m]}
            given = least.flows.get(m, ())
            _need(len({frozenset(way[:2]) for way in given}) == len(given), "a flow is given twice")
            for one, other, amount in given:
                most = sum(beside.get(letter, {}).get(other, 0) for letter in (one, -one))
                _need(m not in (one, other) and one != other, "a flow through its own band")
                _need(0 < amount <= most, "more flows than there is room for")
                rest[one] = rest.get(one, 0) - amount
                rest[other] = rest.get(other, 0) + amount
            _need(not any(rest.values()), "a cut may make the words shorter")


def _evaluate(
    roots: Sequence[Sequence[int]],
    words: Sequence[Sequence[int]],
    cores: Sequence[tuple[int, int, int]],
    trails: Sequence[tuple[int, int]],
    letters: Sequence[Matrix | None],
) -> list[Matrix]:
    """Return the matrices of the fasteners' words as they are made, `letters` being those of the cores.

    A core without a matrix is ignored.
    """
    values: list[Matrix] = []
    along: dict[int, Matrix] = {0: _ONE}

    def product(factors: Sequence[int]) -> Matrix:
        out = _ONE
        for factor in factors:
            letter, trail = letters[abs(factor)], cores[abs(factor)][2]
            if letter is None:
                continue
            waiting = []
            while trail not in along:
                waiting.append(trail)
                trail = trails[trail][1]
            for outer in reversed(waiting):
                along[outer] = _times(values[trails[outer][0]], along[trails[outer][1]])
            around = along[cores[abs(factor)][2]]
            inside = letter if factor > 0 else _inverse(letter)
            out = _times(out, _times(_times(around, inside), _inverse(around)))
        return out

    for word in words:
        values.append(product(word))
    return [product(root) for root in roots]


def _random_matrix() -> Matrix:
    a, b, c = (random.SystemRandom().randrange(1, _PRIME) for _ in range(3))
    return (a, b, c, (1 + b * c) * pow(a, -1, _PRIME) % _PRIME)


def _times(one: Matrix, other: Matrix) -> Matrix:
    a, b, c, d = one
    e, f, g, h = other
    return (
        (a * e + b * g) % _PRIME,
        (a * f + b * h) % _PRIME,
        (c * e + d * g) % _PRIME,
        (c * f + d * h) % _PRIME,
    )


def _inverse(matrix: Matrix) -> Matrix:
    a, b, c, d = matrix
    return (d, -b % _PRIME, -c % _PRIME, a)


def _signed_matrix(values: Mapping[int, Matrix], symbol: int) -> Matrix:
    return _inverse(values[-symbol]) if symbol < 0 else values[symbol]
