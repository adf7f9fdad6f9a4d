"""Which bands fall after a slip. What is cheap to show is shown first, and every answer is given once only.

A band is held where a root turns round it, or in a part of the piece that the slip does not reach
(`intact`). Only for the bands left are the words read: a band is free where no fastener uses it after all
slips of its loops, held where a path of carriers leads to it, or where a small part that held it before
still does (`parts`). Where bands are open even then, a piece of few bands goes to `prove`; so does a larger
one when the answer is to be thorough, which takes ten times as long and more. Otherwise such a band is said
to be not proved.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

import numpy as np

from pegwright.loom import Laid
from pegwright.proof import check, prove
from pegwright.proof.carriers import carried
from pegwright.proof.prove import decide
from pegwright.proof.reader import Reader
from pegwright.proof.slips import in_use, reduced
from pegwright.rehearsal.course import Course
from pegwright.rehearsal.intact import Intact, Untouched
from pegwright.rehearsal.lanes import Lanes, Matrices
from pegwright.rehearsal.parts import find_parts, known_parts, turning
from pegwright.rehearsal.reducing import Passes, Reducing
from pegwright.rehearsal.run import NO_SLIP, Run, events_of
from pegwright.structure import structure_of

__all__ = ["Judge", "Verdict"]

FEW_BANDS = 14
"""Pieces up to this size are proved in full where quick means leave a band open."""
MOST_SNAPPED = 400
"""Above this many bands it is not asked what a single snapped band would bring down."""


class Verdict(NamedTuple):
    """The bands that fall, those about which nothing is proved, and those whose loss empties the fasteners.

    Of the last, those are told only that did not do so in the intended piece.

    Bands are numbered as in the intended piece; those past its last are bands too many.
    """

    falls: frozenset[int]
    unproved: frozenset[int]
    keystones: frozenset[int]


class _Key(NamedTuple):
    roots: tuple[int, ...]
    twisted: frozenset[int]
    laid: frozenset[int]


class Judge:
    """Judges the runs of a course.

    Whether a band is held depends on the fasteners' words and on which bands carry a twist of their own;
    words are numbered alike in all runs, so runs that agree in these share a verdict. They speak of the
    words alone: what lies across what in plan is looked at by `proved`.
    """

    def __init__(self, course: Course) -> None:
        self.course = course
        self.known: dict[_Key, Verdict] = {}
        self.settled: dict[_Key, Verdict] = {}
        self.reducing = Reducing(course.words)
        self.laid = frozenset(range(1, course.history.final.bands + 1))
        roots = [root for reading in course.readings for root in reading.roots]
        self.spots = course.history.board.spots
        structure = structure_of(course.history.events)
        self.proof = prove(structure)
        self.parts = find_parts(course.words, roots, self.proof)
        self.snapped = frozenset(self.laid) if len(self.laid) <= MOST_SNAPPED else frozenset[int]()
        lanes = {keep: at for at, keep in enumerate(dict.fromkeys(keep for _, keep in self.parts))}
        for band, keep in self.parts:
            lanes.setdefault(keep - {band}, len(lanes))
        self.whole = np.array([lanes[keep] for _, keep in self.parts], np.intp)
        self.without = np.array([lanes[keep - {band}] for band, keep in self.parts], np.intp)
        self.lanes = Lanes(course.words, list(lanes))
        self.snaps = Lanes(course.words, [], [frozenset({band}) for band in sorted(self.snapped)])
        self.lasting = (len(course.words.cores), len(course.words.words))
        known = dict(known_parts(course.words, roots, structure, self.parts))
        self.intact = Intact(course, known.items())
        self.members = [known[keep] for _, keep in self.parts]
        self.values = [self._values(root) for root in roots]
        self.keystones = self._keystones(roots)
        self.hard = self.laid - carried(Reader(reduced(structure)), self.laid)
        nothing = Untouched(frozenset(), frozenset())
        self.intended = self._judge(NO_SLIP, self._key(NO_SLIP), nothing)

    def of(self, run: Run, thorough: bool = False) -> Verdict:
        """Return the verdict on a run's piece."""
        key = self._key(run)
        known = self.known.get(key)
        if known is None:
            known = self.known[key] = self._judge(run, key, self.intact.of(run))
        if thorough and known.unproved and len(key.laid) > FEW_BANDS:
            settled = self.settled.get(key)
            if settled is None:
                free, left = decide(structure_of(events_of(self.course, run)), known.unproved)
                settled = self.settled[key] = known._replace(
                    falls=known.falls | free, unproved=frozenset(left)
                )
            return settled
        return known

    def proved(self, run: Run) -> Verdict:
        """Return the verdict that the whole proof gives, its certificates checked.

        Raises:
            AssertionError: the checker rejects the proof.
        """
        events = events_of(self.course, run)
        proof = prove(structure_of(events, self.spots))
        rejected = check(events, proof, self.spots)
        if rejected is not None:
            raise AssertionError(f"the checker rejects the proof of a slip: {rejected}")
        quick = self.of(run)
        return quick._replace(falls=frozenset(proof.free), unproved=frozenset(proof.unproved))

    def _key(self, run: Run) -> _Key:
        done = self.course.history.done
        roots: list[int] = []
        twisted: set[int] = set()
        for at, intended in enumerate(self.course.readings):
            reading = run.readings.get(at, intended)
            roots += reading.roots
            twisted |= reading.twisted
        meant = {e.band for at in run.made for e in done[at].events if isinstance(e, Laid)}
        made = {e.band for events in run.made.values() for e in events if isinstance(e, Laid)}
        laid = (self.laid - meant) | made
        return _Key(tuple(roots), frozenset(twisted), frozenset(laid))

    def _judge(self, run: Run, key: _Key, known: Untouched) -> Verdict:
        keystones = frozenset[int]()
        if not known.common & self.snapped <= self.keystones:
            keystones = self._keystones(key.roots) - self.keystones
            self.snaps.forget(*self.lasting)
        left = key.laid - known.held - turning(self.course.words, key.roots)
        if not left:
            return Verdict(frozenset(), frozenset(), keystones)
        words, first = self.reducing.reduced(self._passes(run, key), key.twisted)
        used = in_use(words, first)
        left &= used
        falls = key.laid - used
        for seed in (0, 1) if left & self.hard else (0,):
            left -= carried(self.reducing.read(words), left, seed) if left else left
        if left:
            left -= self._held_by_parts(key.roots)
            left -= self._unchanged(key.roots)
            self.lanes.forget(*self.lasting)
        if left and len(key.laid) <= FEW_BANDS:
            proof = prove(structure_of(events_of(self.course, run)))
            falls |= left.intersection(proof.free)
            left &= frozenset(proof.unproved)
        return Verdict(frozenset(falls), frozenset(left), keystones)

    def _passes(self, run: Run, key: _Key) -> Passes:
        readings = (run.readings.get(at, intended) for at, intended in enumerate(self.course.readings))
        return Passes(tuple(word for reading in readings for word in reading.passes), key.roots)

    def _held_by_parts(self, roots: Iterable[int]) -> set[int]:
        held = set()
        for root in dict.fromkeys(roots):
            idle = self.lanes.idle(root)
            holds = ~idle[self.whole] & idle[self.without]
            held |= {self.parts[i][0] for i in np.flatnonzero(holds)}
        return held

    def _values(self, root: int) -> Matrices:
        return self.lanes.product(root)[:, :, self.whole]

    def _unchanged(self, roots: Sequence[int]) -> set[int]:
        """Return the bands of parts in which the fasteners' words are what they were, if by other events."""
        if len(roots) != len(self.values):
            return set()
        same = np.ones(len(self.parts), np.bool_)
        for root, value in zip(roots, self.values, strict=True):
            same &= (self._values(root) == value).all(axis=(0, 1))
        return set().union(*(self.members[i] for i in np.flatnonzero(same)))

    def _keystones(self, roots: Iterable[int]) -> frozenset[int]:
        """Return the bands without which no fastener holds anything."""
        idle = [self.snaps.idle(root) for root in dict.fromkeys(roots)]
        if not idle:
            return frozenset()
        empty = np.flatnonzero(np.logical_and.reduce(idle))
        return frozenset(next(iter(self.snaps.without[i])) for i in empty)
