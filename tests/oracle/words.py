"""The hold calculus written out letter by letter: the naive twin of the proof.

A word is a tuple of non-zero integers, ±b for band b and its inverse.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import combinations

import numpy as np

from pegwright.loom import Bight, Drawn, Event, Fastened, Laid, Lifted

Word = tuple[int, ...]


class TooLongError(Exception):
    """The word outgrew what a naive twin can handle."""


def times(*words: Word, limit: int = 60_000) -> Word:
    """Multiply in the free group."""
    out: list[int] = []
    for word in words:
        for x in word:
            if out and out[-1] == -x:
                out.pop()
            else:
                out.append(x)
    if len(out) > limit:
        raise TooLongError
    return tuple(out)


def inverse(word: Word) -> Word:
    return tuple(-x for x in reversed(word))


def fastener_words(events: Iterable[Event]) -> list[Word]:
    """Read the fasteners' words from the record."""
    phi: dict[Bight, Word] = {}
    found: list[Word] = []
    for e in events:
        match e:
            case Laid():
                for seat in e.seats:
                    phi[seat.bight] = (seat.sign * e.band,)
            case Drawn():
                g = times(*(phi[c] for c in e.through))
                phi[e.bight] = times(g, inverse(phi[e.bight]), inverse(g))
            case Lifted():
                mine = phi[e.bight]
                for c in e.over:
                    phi[c] = times(inverse(mine), phi[c], mine)
            case Fastened():
                found.append(times(*(phi[c] for c in e.caught)))
    return found


def cyclic(word: Word) -> Word:
    w = list(word)
    while len(w) > 1 and w[0] == -w[-1]:
        w = w[1:-1]
    return tuple(w)


def shortest(words: list[Word]) -> list[Word]:
    """Minimise the words' total cyclic length under partial conjugations (peak reduction: Collins 1989).

    Each pass tries every multiplier and every set of the other bands, by cuts in the graph of
    neighbouring letters (Whitehead 1936).
    """
    words = [cyclic(w) for w in words]
    while True:
        step = _better(words)
        if step is None:
            return words
        a, group = step
        words = [cyclic(_conjugated(w, a, group)) for w in words]


def _better(words: list[Word]) -> tuple[int, frozenset[int]] | None:
    bands = sorted({abs(x) for w in words for x in w})
    place = {b: k for k, b in enumerate(bands)}
    n = len(bands)
    # Edge between the end of one letter and the start of the next: vertices x and -y for a pair xy.
    count = np.zeros((2 * n, 2 * n), int)

    def vertex(x: int) -> int:
        return 2 * place[abs(x)] + (x < 0)

    for w in words:
        for x, y in zip(w, w[1:] + w[:1], strict=True):
            i, j = vertex(x), vertex(-y)
            count[i, j] += 1
            count[j, i] += 1
    best: tuple[int, int, frozenset[int]] | None = None
    for b in bands:
        others = [c for c in bands if c != b]
        for a in (b, -b):
            va = vertex(a)
            degree = count[va].sum()
            for size in range(1, len(others) + 1):
                for group in combinations(others, size):
                    inside = np.zeros(2 * n, bool)
                    inside[va] = True
                    for c in group:
                        inside[2 * place[c]] = inside[2 * place[c] + 1] = True
                    change = int(count[inside][:, ~inside].sum() - degree)
                    if change < 0 and (best is None or change < best[0]):
                        best = (change, a, frozenset(group))
    return best[1:] if best else None


def _conjugated(word: Word, a: int, group: frozenset[int]) -> Word:
    """Apply x → a⁻¹ x a for the bands in the group (the vertex a lies in the cut's set with them)."""
    out: list[int] = []
    for x in word:
        for y in (-a, x, a) if abs(x) in group else (x,):
            if out and out[-1] == -y:
                out.pop()
            else:
                out.append(y)
    return tuple(out)


def held(events: Iterable[Event]) -> frozenset[int]:
    """Return the bands that the calculus says are held."""
    return frozenset(abs(x) for w in shortest(fastener_words(events)) for x in w)
