"""Reduces the words of a structure: neighbouring loops that undo each other cancel, at any size.

No word is written out: the tables share them. A band that no fastener uses after all cancellations is free.
Words only see homotopy: a clasp like the Whitehead link has a trivial word and is not split. So loops are
cancelled only where that is a hand move. Two neighbouring loops of one band that undo each other slip out
when they are two ends of a flat or folded band; a band that carries a twist of its own has its loops kept
apart (each with a generator of its own), so that nothing rests on one of them undoing another. A band whose
loops in use all went through the same words rides back out of them with whatever passes through it: this
needs no flatness, because the rest of the band is a bare ribbon and can be drawn in along itself.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Mapping, Sequence, Set
from copy import copy
from itertools import chain
from typing import Generic, NamedTuple, TypeVar

from pegwright.loom import Bight
from pegwright.proof.values import Cancellation
from pegwright.structure import Structure

__all__ = [
    "Numbering",
    "ReducedWords",
    "Reduction",
    "bands_in_use",
    "bands_that_may_cling",
    "first_passing_events",
    "reduce_words",
]


T = TypeVar("T")


class ReducedWords(NamedTuple):
    """A structure's words after all cancellations, numbered afresh and shared.

    `words[w]` are factors, `2 k` for core k and `2 k + 1` for its inverse; `cores[k]` is (letter, trail);
    `trails[t]` is (word, inner trail), 0 the empty one. `letters[i]` is (band, index of its loop), index −1
    where all the band's loops share the letter. `roots` are the fasteners' words, cyclically reduced;
    `made[w]` is the earliest event that made a word that became w. `cancellations` are in the order of their
    events.
    """

    letters: Sequence[tuple[int, int]]
    cores: Sequence[tuple[int, int]]
    trails: Sequence[tuple[int, int]]
    words: Sequence[tuple[int, ...]]
    made: Sequence[int] | Mapping[int, int]
    roots: tuple[tuple[int, ...], ...]
    cancellations: tuple[Cancellation, ...]


def reduce_words(structure: Structure, missing: Iterable[int] = (), *, flat: bool = False) -> ReducedWords:
    """Cancel all loops that undo each other, from the earliest word to the last; `missing` bands are left
    out.

    With `flat`, twists are ignored and all loops of a band share its letter: right for the words as
    elements of the free group, too bold for what a hand can do.
    """
    return Reduction(structure, frozenset(missing), flat=flat).run()


class Numbering(Generic[T]):
    """Things in the order in which they were first met; `number` finds or adds one."""

    def __init__(self, *first: T) -> None:
        self.all = list(first)
        self.numbers = {thing: number for number, thing in enumerate(first)}

    def number(self, thing: T) -> int:
        """Return the number of a thing, that of the next where it is new."""
        known = self.numbers.setdefault(thing, len(self.all))
        if known == len(self.all):
            self.all.append(thing)
        return known


class Reduction:
    """Words being reduced; what does not change when one band is taken out is worked out once."""

    def __init__(
        self, structure: Structure, missing: frozenset[int] = frozenset(), *, flat: bool = False
    ) -> None:
        self.s = structure
        self.missing = missing
        self.letter_of = [
            (loop.band, loop.index if not flat and loop.band in structure.twists else -1)
            for loop in structure.loops
        ]
        self.letters = Numbering[tuple[int, int]]()
        self.cores = Numbering[tuple[int, int]]()
        self.trails = Numbering((-1, -1))
        self.words = Numbering[tuple[int, ...]](())
        self.made = [-1]
        self.new_trail = [0] + [-1] * (len(structure.trails) - 1)
        self.new_core = [-2] * len(structure.cores)
        self.new_word: list[int] = []
        self.cancelled: list[list[tuple[int, int]]] = []
        self.before: list[tuple[int, int]] = []  # before each word: how many cores and trails were done
        self.cores_done: list[int] = []
        self.trails_done: list[int] = []
        self.first: dict[int, int] = {}  # the first word in which a band has a loop

    def without(self, band: int) -> ReducedWords:
        """Return what is left when the band is taken out, given that `run` was called before."""
        start = self.first.get(band, len(self.new_word))
        cores, trails = self.before[start] if start < len(self.before) else (None, None)
        other = copy(self)
        other.missing = self.missing | {band}
        other.new_word, other.cancelled, other.before = self.new_word[:start], self.cancelled[:start], []
        other.new_core, other.new_trail = self.new_core[:], self.new_trail[:]
        for core in self.cores_done[cores:] if cores is not None else ():
            other.new_core[core] = -2
        for trail in self.trails_done[trails:] if trails is not None else ():
            other.new_trail[trail] = -1
        other.cores_done, other.trails_done = [], []
        return other.run()

    def run(self) -> ReducedWords:
        """Reduce the words that are not reduced yet."""
        for word in range(len(self.new_word), len(self.s.words)):
            self.before.append((len(self.cores_done), len(self.trails_done)))
            cancelled: list[tuple[int, int]] = []
            kept = tuple([new for _, new in self._cancel(self.s.words[word], cancelled)])
            self.cancelled.append(cancelled)
            number = self.words.number(kept)
            if number == len(self.made):
                self.made.append(self.s.made[word])
            self.new_word.append(number)
        taken = (
            [] if self.missing else [(e, *pair) for e, word in self.s.passes for pair in self.cancelled[word]]
        )
        roots = []
        for fastening in self.s.fastenings:
            ends = self._cancel(self.s.words[fastening.word], [])
            while len(ends) > 1 and ends[0][1] == ends[-1][1] ^ 1:
                taken.append((fastening.event, ends.pop()[0], ends.pop(0)[0]))
            roots.append(tuple(new for _, new in ends))
        named = [
            Cancellation(event, self._loop(upper), self._loop(lower))
            for event, upper, lower in sorted(taken, key=lambda pair: pair[0])
        ]
        return ReducedWords(
            self.letters.all,
            self.cores.all,
            self.trails.all,
            self.words.all,
            self.made,
            tuple(roots),
            tuple(named),
        )

    def _cancel(self, factors: Iterable[int], cancelled: list[tuple[int, int]]) -> list[tuple[int, int]]:
        """Return (old, new) factors without neighbours that undo each other; these are added to
        `cancelled`."""
        kept: list[tuple[int, int]] = []
        for factor in factors:
            core = self.new_core[factor >> 1]
            if core == -2:
                core = self.new_core[factor >> 1] = self._core(factor >> 1, len(self.new_word))
            if core == -1:
                continue
            new = 2 * core + (factor & 1)
            if kept and kept[-1][1] == new ^ 1:
                cancelled.append((kept.pop()[0], factor))
            else:
                kept.append((factor, new))
        return kept

    def _loop(self, factor: int) -> Bight:
        return self.s.loops[self.s.cores[factor >> 1][0]]

    def _core(self, core: int, word: int) -> int:
        loop, trail = self.s.cores[core]
        self.cores_done.append(core)
        band = self.s.owner[loop]
        self.first.setdefault(band, word)
        if band in self.missing:
            return -1
        return self.cores.number((self.letters.number(self.letter_of[loop]), self._trail(trail)))

    def _trail(self, trail: int) -> int:
        waiting = []
        while self.new_trail[trail] < 0:
            waiting.append(trail)
            trail = self.s.trails[trail][1]
        inner = self.new_trail[trail]
        for trail in reversed(waiting):
            word = self.new_word[self.s.trails[trail][0]]
            if word:
                inner = self.trails.number((word, inner))
            self.new_trail[trail] = inner
            self.trails_done.append(trail)
        return inner


def bands_in_use(words: ReducedWords, first_passed: dict[int, int], crossed: Container[int] = ()) -> set[int]:
    """Return the bands that a fastener still uses, directly or through what it uses; the others are free.

    A band used by loops that all went through the very same words does not use them: it rides back out of
    them, a partial conjugation of its generator by their product, which is one as long as the band does
    not occur in that product. It cannot where nothing was put through the band before (`first_passed`:
    the first event that put something through a loop of the band). Nor can a band that was laid with a
    half-twist (`crossed`): a flat band laid under it and lifted over both its ends clings to the crossing, as
    the Jones polynomial shows.
    """
    used: dict[int, int] = {}
    seen_words: set[int] = set()
    seen_cores: set[int] = set()
    waiting = [factor >> 1 for root in words.roots for factor in root]
    while waiting:
        core = waiting.pop()
        if core in seen_cores:
            continue
        seen_cores.add(core)
        letter, trail = words.cores[core]
        band = words.letters[letter][0]
        if band not in used:
            used[band] = trail
            rides = band not in crossed
            if not trail or (rides and words.made[words.trails[trail][0]] < first_passed[band]):
                continue
            passed = _along(words, trail)
        else:
            passed = [] if trail == used[band] else _along(words, used[band]) + _along(words, trail)
        for word in passed:
            if word not in seen_words:
                seen_words.add(word)
                waiting.extend(factor >> 1 for factor in words.words[word])
    return set(used)


def bands_that_may_cling(
    words: ReducedWords, used: Set[int], twisted: Iterable[int], crossed: Set[int]
) -> set[int]:
    """Return the bands that may cling although they are off the words with loops apart.

    They are those that carry a twist of their own, those that a loop of such a band in use went through, and
    where it was not laid crossed but folded so between three pegs, those of which a loop went through one of
    its loops: they may cling to where its strands cross. Where tables are shared by many pieces, only the
    cores of the words that were made in this one count.
    """
    found = set(twisted)
    twists = found & used
    folded = twists - crossed
    cores: Iterable[tuple[int, int]] = words.cores
    if isinstance(words.made, Mapping):
        here = chain.from_iterable((*words.roots, *(words.words[word] for word in words.made)))
        cores = [words.cores[core] for core in {factor >> 1 for factor in here}]
    for letter, trail in cores:
        band = words.letters[letter][0]
        for word in _along(words, trail):
            passed = {words.letters[words.cores[factor >> 1][0]][0] for factor in words.words[word]}
            if band in twists:
                found |= passed
            elif not passed.isdisjoint(folded):
                found.add(band)
    return found


def _along(words: ReducedWords, trail: int) -> list[int]:
    found = []
    while trail:
        word, trail = words.trails[trail]
        found.append(word)
    return found


def first_passing_events(structure: Structure) -> dict[int, int]:
    """Return for every band the first event that put something through one of its loops."""
    first: dict[int, int] = {}
    for band, through in zip(structure.owner, structure.passing, strict=True):
        if through:
            first[band] = min(first.get(band, through[0]), through[0])
    return first
