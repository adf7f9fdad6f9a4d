"""Free, at any size: what slips out loop by loop, without writing a word out.

Words only see homotopy: a clasp like the Whitehead link has a trivial word and is not split. So a slip is
taken only where it is a hand move. Two neighbouring loops of one band that undo each other slip out when
they are two ends of a flat or folded band; a band that carries a twist of its own has its loops kept apart
(each with a generator of its own), so that nothing rests on one of them undoing another. A band whose loops
in use all went through the same words rides back out of them with whatever passes through it: this needs no
flatness, because the rest of the band is a bare ribbon and can be drawn in along itself.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from pegwright.proof.values import Slip
from pegwright.structure import Structure

__all__ = ["Reduced", "in_use", "reduced"]


class Reduced(NamedTuple):
    """A structure's words after all slips, numbered afresh and shared.

    `words[w]` are factors, `2 k` for core k and `2 k + 1` for its inverse; `cores[k]` is (letter, trail);
    `trails[t]` is (word, inner trail), 0 the empty one. `letters[i]` is (band, loop), loop −1 where all the
    band's loops share the letter. `roots` are the fasteners' words, cyclically reduced; `made[w]` is the
    earliest event that made a word that became w. `slips` are the slips taken, in order.
    """

    letters: tuple[tuple[int, int], ...]
    cores: tuple[tuple[int, int], ...]
    trails: tuple[tuple[int, int], ...]
    words: tuple[tuple[int, ...], ...]
    made: tuple[int, ...]
    roots: tuple[tuple[int, ...], ...]
    slips: tuple[Slip, ...]


def reduced(structure: Structure, missing: Iterable[int] = (), *, flat: bool = False) -> Reduced:
    """Take every slip, from the earliest word to the last. Bands in `missing` are left out of every word.

    With `flat`, twists are ignored and all loops of a band share its letter: right for the words as
    elements of the free group, too bold for what a hand can do.
    """
    return _Reduction(structure, frozenset(missing), flat).run()


class _Reduction:
    def __init__(self, structure: Structure, missing: frozenset[int], flat: bool) -> None:
        self.s = structure
        self.missing = missing
        self.letter_of = [
            (band, loop if not flat and band in structure.twists else -1)
            for loop, band in enumerate(structure.owner)
        ]
        self.letters: dict[tuple[int, int], int] = {}
        self.cores: dict[tuple[int, int], int] = {}
        self.trails: dict[tuple[int, int], int] = {(-1, -1): 0}
        self.words: dict[tuple[int, ...], int] = {(): 0}
        self.made = [-1]
        self.new_trail = [-1] * len(structure.trails)
        self.new_trail[0] = 0
        self.new_core = [-2] * len(structure.cores)
        self.new_word: list[int] = []
        self.slips: list[Slip] = []

    def run(self) -> Reduced:
        for word, factors in enumerate(self.s.words):
            kept = [new for _, new in self._slip(factors, self.s.made[word])]
            number = self.words.setdefault(tuple(kept), len(self.words))
            if number == len(self.made):
                self.made.append(self.s.made[word])
            self.new_word.append(number)
        roots = []
        for fastening in self.s.fastenings:
            ends = self._slip(self.s.words[fastening.word], -1)
            while len(ends) > 1 and ends[0][1] == ends[-1][1] ^ 1:
                self._note(fastening.event, ends.pop()[0], ends.pop(0)[0])
            roots.append(tuple(new for _, new in ends))
        return Reduced(
            tuple(self.letters),
            tuple(self.cores),
            tuple(self.trails),
            tuple(self.words),
            tuple(self.made),
            tuple(roots),
            tuple(self.slips),
        )

    def _slip(self, factors: Iterable[int], event: int) -> list[tuple[int, int]]:
        """Return (old, new) factors without neighbours that undo each other; noted where the event is ≥ 0."""
        kept: list[tuple[int, int]] = []
        for factor in factors:
            core = self.new_core[factor >> 1]
            if core == -2:
                core = self.new_core[factor >> 1] = self._core(factor >> 1)
            if core == -1:
                continue
            new = 2 * core + (factor & 1)
            if kept and kept[-1][1] == new ^ 1:
                self._note(event, kept.pop()[0], factor)
            else:
                kept.append((factor, new))
        return kept

    def _note(self, event: int, upper: int, lower: int) -> None:
        if event >= 0:
            one, two = self.s.cores[upper >> 1][0], self.s.cores[lower >> 1][0]
            self.slips.append(Slip(event, self.s.loops[one], self.s.loops[two]))

    def _core(self, core: int) -> int:
        loop, trail = self.s.cores[core]
        if self.s.owner[loop] in self.missing:
            return -1
        letter = self.letters.setdefault(self.letter_of[loop], len(self.letters))
        return self.cores.setdefault((letter, self._trail(trail)), len(self.cores))

    def _trail(self, trail: int) -> int:
        waiting = []
        while self.new_trail[trail] < 0:
            waiting.append(trail)
            trail = self.s.trails[trail][1]
        inner = self.new_trail[trail]
        for trail in reversed(waiting):
            word = self.new_word[self.s.trails[trail][0]]
            if word:
                inner = self.trails.setdefault((word, inner), len(self.trails))
            self.new_trail[trail] = inner
        return inner


def in_use(words: Reduced, first_passed: dict[int, int]) -> set[int]:
    """Return the bands that a fastener still uses, directly or through what it uses; the others are free.

    A band used by loops that all went through the same words does not use these words: it rides back out
    of them, a partial conjugation of its generator by their product, which is one as long as the band does
    not occur in that product. It cannot where nothing was put through the band before (`first_passed`:
    the first event that put something through a loop of the band).
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
            if not trail or words.made[words.trails[trail][0]] < first_passed[band]:
                continue
            passed = _along(words, trail, 0)
        else:
            passed = _apart(words, used[band], trail)
        for word in passed:
            if word not in seen_words:
                seen_words.add(word)
                waiting.extend(factor >> 1 for factor in words.words[word])
    return set(used)


def _apart(words: Reduced, one: int, two: int) -> list[int]:
    """Return the words of two trails without the outer ones that they share."""
    while one and two and words.trails[one][0] == words.trails[two][0]:
        one, two = words.trails[one][1], words.trails[two][1]
    return _along(words, one, 0) + _along(words, two, 0)


def _along(words: Reduced, trail: int, end: int) -> list[int]:
    found = []
    while trail != end:
        word, trail = words.trails[trail]
        found.append(word)
    return found


def first_passed(structure: Structure) -> dict[int, int]:
    """Return for every band the first event that put something through one of its loops."""
    first: dict[int, int] = {}
    for band, through in zip(structure.owner, structure.passing, strict=True):
        if through:
            first[band] = min(first.get(band, through[0]), through[0])
    return first
