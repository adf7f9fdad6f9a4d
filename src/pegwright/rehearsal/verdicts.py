"""Which bands fall after a slip. What is cheap to show is shown first, and every answer is given once only.

A band is held where a root turns round it, or where a small part of the piece that held it before still does
(see `parts`). Only for the bands left is the structure read: it is free where no fastener uses it after all
slips of its loops, held where a path of carriers leads to it. Where bands are open even then, a piece of few
bands goes to `prove`; so does a larger one when the answer is to be thorough, which takes a hundred times as
long. Otherwise such a band is said to be not proved.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from pegwright.loom import Laid
from pegwright.proof import check, prove
from pegwright.proof.carriers import carry
from pegwright.proof.reader import Reader
from pegwright.proof.slips import first_passed, in_use, reduced
from pegwright.rehearsal.course import Course
from pegwright.rehearsal.lanes import Flags, Lanes, Matrices
from pegwright.rehearsal.parts import find_parts, members, turning
from pegwright.rehearsal.run import NO_SLIP, Run, events_of
from pegwright.structure import structure_of

__all__ = ["Judge", "Verdict"]

FEW_BANDS = 14
"""Pieces up to this size are proved in full where quick means leave a band open."""
MOST_SNAPPED = 400
"""Above this many bands it is not asked what a single snapped band would bring down."""


class Verdict(NamedTuple):
    """The bands that fall, those about which nothing is proved, and those whose loss empties the fasteners.

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
        self.laid = frozenset(range(1, course.history.final.bands + 1))
        roots = [root for reading in course.readings for root in reading.roots]
        self.spots = course.history.board.spots
        self.proof = prove(structure_of(course.history.events))
        self.parts = find_parts(course.words, roots, self.proof)
        snapped = sorted(self.laid) if len(self.laid) <= MOST_SNAPPED else []
        lanes = {keep: at for at, keep in enumerate(dict.fromkeys(keep for _, keep in self.parts))}
        for band, keep in self.parts:
            lanes.setdefault(keep - {band}, len(lanes))
        self.whole = np.array([lanes[keep] for _, keep in self.parts], np.intp)
        self.without = np.array([lanes[keep - {band}] for band, keep in self.parts], np.intp)
        self.lanes = Lanes(course.words, list(lanes), [frozenset({band}) for band in snapped])
        self.lasting = (len(course.words.cores), len(course.words.words))
        self.values = [self._values(root) for root in roots]
        self.members = members(course.words, roots, [keep for _, keep in self.parts])
        self.intended = self.of(NO_SLIP)

    def of(self, run: Run, thorough: bool = False) -> Verdict:
        """Return the verdict on a run's piece."""
        key = self._key(run)
        known = self.known.get(key)
        if known is None:
            known = self.known[key] = self._judge(run, key)
        if thorough and known.unproved and len(key.laid) > FEW_BANDS:
            settled = self.settled.get(key)
            if settled is None:
                proof = prove(structure_of(events_of(self.course, run)))
                settled = self.settled[key] = known._replace(
                    falls=known.falls | known.unproved.intersection(proof.free),
                    unproved=known.unproved.intersection(proof.unproved),
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

    def _judge(self, run: Run, key: _Key) -> Verdict:
        idle = [self.lanes.idle(root) for root in dict.fromkeys(key.roots)]
        held = turning(self.course.words, key.roots) | self._held_by_parts(idle) | self._intact(key)
        self.lanes.forget(*self.lasting)
        keystones = self._keystones(idle)
        left = key.laid - held
        if not left:
            return Verdict(frozenset(), frozenset(), keystones)
        structure = structure_of(events_of(self.course, run))
        words = reduced(structure)
        used = in_use(words, first_passed(structure))
        left &= used
        falls = key.laid - used
        if left:
            left -= carry(Reader(words), left, (0,))[0].keys()
        if left and len(key.laid) <= FEW_BANDS:
            proof = prove(structure)
            falls |= left.intersection(proof.free)
            left &= frozenset(proof.unproved)
        return Verdict(frozenset(falls), frozenset(left), keystones)

    def _held_by_parts(self, idle: list[Flags]) -> set[int]:
        held = set()
        for flags in idle:
            holds = ~flags[self.whole] & flags[self.without]
            held |= {self.parts[i][0] for i in np.flatnonzero(holds)}
        return held

    def _values(self, root: int) -> Matrices:
        return self.lanes.product(root)[:, :, self.whole]

    def _intact(self, key: _Key) -> set[int]:
        """Return the bands of parts in which no fastener's word has changed: all that they held they hold."""
        if len(key.roots) != len(self.values):
            return set()
        same = np.ones(len(self.parts), np.bool_)
        for root, value in zip(key.roots, self.values, strict=True):
            same &= (self._values(root) == value).all(axis=(0, 1))
        return set().union(*(self.members[i] for i in np.flatnonzero(same)))

    def _keystones(self, idle: list[Flags]) -> frozenset[int]:
        if not idle:
            return frozenset()
        empty = np.logical_and.reduce(idle)[len(self.lanes.parts) :]
        return frozenset(next(iter(self.lanes.without[i])) for i in np.flatnonzero(empty))
