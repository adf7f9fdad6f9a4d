"""Which bands fall after a slip. Cheap arguments come first, and no question is answered twice.

A band is held where a root turns round it, or in a part of the piece that the slip does not reach
(`unaffected_parts`). The words are read for the other bands only: a band is free where no fastener uses it
once all loops that cancel are gone, held where a holding path leads to it, or where a small part that held it
before still does (`holding_parts`). What is open even then the least words decide; in a large piece only when
the answer is to be thorough. Where a band in use carries a twist, those off the words are free if they are
off those with its loops apart too; what is open after that counts as not proved.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence, Set
from typing import NamedTuple

import numpy as np

from pegwright.loom import Laid
from pegwright.proof import (
    LeastFinder,
    Reader,
    ReducedWords,
    bands_in_use,
    bands_on_paths,
    bands_that_may_cling,
    check,
    prove,
    reduce_words,
)
from pegwright.rehearsal.batched_words import BatchedWords, Matrices
from pegwright.rehearsal.holding_parts import bands_with_net_turns, find_holding_parts, intended_holding_parts
from pegwright.rehearsal.incremental_reduction import IncrementalReduction, WordPasses
from pegwright.rehearsal.prepared_history import PreparedHistory
from pegwright.rehearsal.slip_run import NO_SLIP, SlipRun, events_of_run
from pegwright.rehearsal.unaffected_parts import UnaffectedBands, UnaffectedParts
from pegwright.structure import structure_of

__all__ = ["Judge", "SlipVerdict"]

MOST_DECIDED = 160
"""In pieces of more bands the least words are only asked for where an answer is to be thorough."""
MOST_VISITED = 400_000
"""Bands looked at in the search for one slip's least words before it is given up: seconds."""
MOST_SNAPPED = 400
"""Above this many bands it is not asked what a single snapped band would bring down."""


class SlipVerdict(NamedTuple):
    """The bands that fall, those about which nothing is proved, and those whose loss empties the fasteners.

    The last are only those whose loss did not do so in the intended piece. Bands are numbered as in the
    intended piece; any number past its last is an extra band.
    """

    falls: frozenset[int]
    unproved: frozenset[int]
    keystones: frozenset[int]


class _VerdictKey(NamedTuple):
    """What a verdict rests on; `passes` are the words that something went through if a band is twisted."""

    roots: tuple[int, ...]
    twisted: frozenset[int]
    crossed: frozenset[int]
    laid: frozenset[int]
    passes: tuple[int, ...]


class Judge:
    """Judges the runs of a prepared history.

    Whether a band is held depends on the fasteners' words, on which bands carry a twist of their own, and if
    any does, on all that went through loops, in order: another band may cling there. Words are numbered alike
    in all runs, so runs that agree in these share a verdict. Verdicts go by the
    words alone; only `prove_run` looks at what lies across what in plan.
    """

    def __init__(self, prepared: PreparedHistory) -> None:
        self.prepared = prepared
        self.known: dict[_VerdictKey, SlipVerdict] = {}
        self.settled: dict[_VerdictKey, SlipVerdict] = {}
        self.reduction = IncrementalReduction(prepared.words)
        self.least, self.apart = LeastFinder(), LeastFinder(apart=True)
        self.laid = frozenset(range(1, prepared.history.final.bands + 1))
        roots = [root for changes in prepared.word_changes for root in changes.roots]
        self.spots = prepared.history.board.spots
        structure = structure_of(prepared.history.events)
        self.proof = prove(structure)
        self.parts = find_holding_parts(prepared.words, roots, self.proof)
        self.snapped = frozenset(self.laid) if len(self.laid) <= MOST_SNAPPED else frozenset[int]()
        columns = {keep: at for at, keep in enumerate(dict.fromkeys(keep for _, keep in self.parts))}
        for band, keep in self.parts:
            columns.setdefault(keep - {band}, len(columns))
        self.whole = np.array([columns[keep] for _, keep in self.parts], np.intp)
        self.without = np.array([columns[keep - {band}] for band, keep in self.parts], np.intp)
        self.part_words = BatchedWords(prepared.words, list(columns))
        without = [frozenset({band}) for band in sorted(self.snapped)]
        self.snap_words = BatchedWords(prepared.words, [], without)
        self.lasting = (len(prepared.words.cores), len(prepared.words.words))
        known = dict(intended_holding_parts(prepared.words, roots, structure, self.parts))
        self.unaffected = UnaffectedParts(prepared, known.items())
        self.members = [known[keep] for _, keep in self.parts]
        self.values = [self._values(root) for root in roots]
        self.keystones = self._keystones(roots)
        self.hard = self.laid - bands_on_paths(Reader(reduce_words(structure)), self.laid)
        nothing = UnaffectedBands(frozenset(), frozenset())
        self.intended = self._judge(NO_SLIP, self._key(NO_SLIP), nothing)

    def judge_run(self, run: SlipRun, thorough: bool = False) -> SlipVerdict:
        """Return the verdict on a run's piece."""
        key = self._key(run)
        known = self.known.get(key)
        if known is None:
            known = self.known[key] = self._judge(run, key, self.unaffected.after(run))
        if thorough and known.unproved and len(key.laid) > MOST_DECIDED:
            settled = self.settled.get(key)
            if settled is None:
                words, first = self.reduction.reduce(self._word_passes(run, key), key.twisted)
                off, left = self._off_least_words(
                    words, bands_in_use(words, first, key.crossed), known.unproved, key
                )
                settled = self.settled[key] = known._replace(falls=known.falls | off, unproved=left)
            return settled
        return known

    def prove_run(self, run: SlipRun) -> SlipVerdict:
        """Return the verdict that the whole proof gives, its certificates checked.

        Raises:
            AssertionError: the checker rejects the proof.
        """
        events = events_of_run(self.prepared, run)
        proof = prove(structure_of(events, self.spots))
        rejected = check(events, proof, self.spots)
        if rejected is not None:
            raise AssertionError(f"the checker rejects the proof of a slip: {rejected}")
        quick = self.judge_run(run)
        return quick._replace(falls=frozenset(proof.free), unproved=frozenset(proof.unproved))

    def _key(self, run: SlipRun) -> _VerdictKey:
        done = self.prepared.history.moves
        roots: list[int] = []
        passes: list[int] = []
        twisted: set[int] = set()
        crossed: set[int] = set()
        for at, intended in enumerate(self.prepared.word_changes):
            changes = run.word_changes.get(at, intended)
            roots += changes.roots
            passes += changes.passes
            twisted |= changes.twisted
            crossed |= changes.crossed
        meant = {e.band for at in run.made for e in done[at].events if isinstance(e, Laid)}
        made = {e.band for events in run.made.values() for e in events if isinstance(e, Laid)}
        laid = (self.laid - meant) | made
        through = tuple(passes) if twisted else ()
        return _VerdictKey(tuple(roots), frozenset(twisted), frozenset(crossed), frozenset(laid), through)

    def _judge(self, run: SlipRun, key: _VerdictKey, known: UnaffectedBands) -> SlipVerdict:
        keystones = frozenset[int]()
        if not known.common & self.snapped <= self.keystones:
            keystones = self._keystones(key.roots) - self.keystones
            self.snap_words.forget(*self.lasting)
        left = key.laid - known.held - bands_with_net_turns(self.prepared.words, key.roots)
        if not left:
            return SlipVerdict(frozenset(), frozenset(), keystones)
        words, first = self.reduction.reduce(self._word_passes(run, key), key.twisted)
        used = bands_in_use(words, first, key.crossed)
        left &= used
        falls = key.laid - used
        for seed in (0, 1) if left & self.hard else (0,):
            left -= bands_on_paths(self.reduction.reader_of(words), left, seed) if left else left
        if left:
            left -= self._held_by_parts(key.roots)
            left -= self._unchanged_bands(key.roots)
            self.part_words.forget(*self.lasting)
        if left and len(key.laid) <= MOST_DECIDED:
            off, left = self._off_least_words(words, used, left, key)
            falls |= off
        return SlipVerdict(frozenset(falls), frozenset(left), keystones)

    def _off_least_words(
        self, words: ReducedWords, used: set[int], wanted: Set[int], key: _VerdictKey
    ) -> tuple[frozenset[int], frozenset[int]]:
        """Return which of some bands are free as they are in no least word, and which stay open.

        Those may be kept by a twist, or are too much to work out.
        """
        occurring = self.least.find(words, used, MOST_VISITED)
        if occurring is None:
            return frozenset(), frozenset(wanted)
        open_ = frozenset(wanted - occurring)
        if not open_ or not key.twisted & used:
            return open_, frozenset()
        occurring = self.apart.find(words, used, MOST_VISITED)
        clinging = bands_that_may_cling(words, used, key.twisted, key.crossed)
        off = frozenset() if occurring is None else open_ - occurring - clinging
        return off, open_ - off

    def _word_passes(self, run: SlipRun, key: _VerdictKey) -> WordPasses:
        word_changes = (
            run.word_changes.get(at, intended) for at, intended in enumerate(self.prepared.word_changes)
        )
        return WordPasses(tuple(word for changes in word_changes for word in changes.passes), key.roots)

    def _held_by_parts(self, roots: Iterable[int]) -> set[int]:
        held = set()
        for root in dict.fromkeys(roots):
            idle = self.part_words.holds_nothing(root)
            holds = ~idle[self.whole] & idle[self.without]
            held |= {self.parts[i][0] for i in np.flatnonzero(holds)}
        return held

    def _values(self, root: int) -> Matrices:
        return self.part_words.product(root)[:, :, self.whole]

    def _unchanged_bands(self, roots: Sequence[int]) -> set[int]:
        """Return the bands of parts in which the fasteners' words are what they were, if by other events."""
        if len(roots) != len(self.values):
            return set()
        same = np.ones(len(self.parts), np.bool_)
        for root, value in zip(roots, self.values, strict=True):
            same &= (self._values(root) == value).all(axis=(0, 1))
        return set().union(*(self.members[i] for i in np.flatnonzero(same)))

    def _keystones(self, roots: Iterable[int]) -> frozenset[int]:
        """Return the bands without which no fastener holds anything."""
        idle = [self.snap_words.holds_nothing(root) for root in dict.fromkeys(roots)]
        if not idle:
            return frozenset()
        empty = np.flatnonzero(np.logical_and.reduce(idle))
        return frozenset(next(iter(self.snap_words.without[i])) for i in empty)
