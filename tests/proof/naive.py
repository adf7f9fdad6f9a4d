"""The proof's slow, obvious twin: words as lists of letters, every set of bands tried."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

from pegwright.loom import Bight, Drawn, Event, Fastened, Laid, Lifted

Word = list[int]  # band b is the letter b, its inverse −b


def reduced(word: Sequence[int]) -> Word:
    out: Word = []
    for letter in word:
        if out and out[-1] == -letter:
            out.pop()
        else:
            out.append(letter)
    return out


def cyclic(word: Sequence[int]) -> Word:
    out = reduced(word)
    while len(out) > 1 and out[0] == -out[-1]:
        out = out[1:-1]
    return out


def inverse(word: Sequence[int]) -> Word:
    return [-letter for letter in reversed(word)]


def fastener_words(events: Sequence[Event], missing: frozenset[int] = frozenset()) -> list[Word]:
    """The calculus letter by letter; the letters of missing bands are left out at the end."""
    phi: dict[Bight, Word] = {}
    words = []
    for event in events:
        if isinstance(event, Laid):
            for bight, _, sign in event.seats:
                phi[bight] = [sign * event.band]
        elif isinstance(event, Drawn):
            g = [letter for bight in event.through for letter in phi[bight]]
            phi[event.bight] = reduced(g + inverse(phi[event.bight]) + inverse(g))
        elif isinstance(event, Lifted):
            for bight in event.over:
                phi[bight] = reduced(inverse(phi[event.bight]) + phi[bight] + phi[event.bight])
        elif isinstance(event, Fastened):
            words.append([letter for bight in event.caught for letter in phi[bight]])
    return [cyclic([letter for letter in word if abs(letter) not in missing]) for word in words]


def shortest(words: Sequence[Word]) -> list[Word]:
    """Least words under partial conjugations, by trying every set of bands again and again."""
    now = [cyclic(word) for word in words]
    while True:
        bands = sorted({abs(letter) for word in now for letter in word})
        shorter = next(
            (
                tried
                for y in bands + [-b for b in bands]
                for size in range(1, len(bands))
                for moving in combinations([b for b in bands if b != abs(y)], size)
                if total(tried := [slid(word, y, frozenset(moving)) for word in now]) < total(now)
            ),
            None,
        )
        if shorter is None:
            return now
        now = shorter


def slid(word: Word, y: int, moving: frozenset[int]) -> Word:
    return cyclic([k for letter in word for k in ((y, letter, -y) if abs(letter) in moving else (letter,))])


def total(words: Sequence[Word]) -> int:
    return sum(map(len, words))


def held(events: Sequence[Event]) -> set[int]:
    """The bands still in the least words: held, by homotopy at least."""
    return {abs(letter) for word in shortest(fastener_words(events)) for letter in word}
