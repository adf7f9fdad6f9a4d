"""What falls if one thing fails: a band snaps, or the fastener misses a loop."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence, Set
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from pegwright.loom import Bight
from pegwright.proof.fastener_words import FastenerWords
from pegwright.proof.holding_paths import find_holding_paths
from pegwright.proof.least import Least, make_least
from pegwright.proof.prover import kept_across, prove
from pegwright.proof.reader import Reader
from pegwright.proof.ropes import Ropes
from pegwright.proof.values import Held, PathStep, Proof, Verdict
from pegwright.proof.word_reduction import (
    ReducedWords,
    Reduction,
    bands_in_use,
    bands_that_may_cling,
    first_passing_events,
)
from pegwright.structure import Structure

__all__ = ["Loss", "missed_loop_losses", "passengers", "snap_losses"]

_TREES = 24  # sets of paths drawn at random before single snaps are looked at
_VISITED = 2_000_000  # bands looked at in searches of least words, for all snaps together
Flags = npt.NDArray[np.bool_]


class Loss(NamedTuple):
    """What a loss does to the bands held before: those that fall, and those no longer proved either way."""

    falls: tuple[int, ...]
    unproved: tuple[int, ...] = ()


def snap_losses(
    structure: Structure, proof: Proof, progress: Callable[[int, int], None] = lambda _done, _of: None
) -> dict[int, Loss]:
    """Return for every band proved held what else falls if that band alone snaps.

    A band whose holding path does without the snapped one stays. A few sets of paths drawn at random answer
    for most snaps; what they leave open is looked for in the least words without the snapped band. For a
    large piece this has a limit, and what is beyond it is said to be unproved. `progress` is called with how
    many bands are done, and of how many.
    """
    held = proof.held
    place = {band: at for at, band in enumerate(held)}
    stays = np.eye(len(held), dtype=np.bool_)  # [snapped, staying]
    note_paths(stays, place, proof.verdicts, proof.steps)
    base = Reduction(structure)
    whole = base.run()
    reader = Reader(whole)
    for seed in range(1, _TREES + 1):
        known = np.count_nonzero(stays)
        if known < stays.size:
            note_paths(stays, place, *find_holding_paths(reader, set(held), (seed,)))
        if np.count_nonzero(stays) == known:
            break
    passed = first_passing_events(structure)
    crossed = structure.crossed_bands()
    in_use = bands_in_use(whole, passed, crossed)
    least, apart = _LeastWithout(whole, in_use), _LeastWithout(whole, in_use, apart=True)
    losses: dict[int, Loss] = {}
    for at, band in enumerate(held):
        progress(at, len(held))
        left = [other for other, stay in zip(held, stays[at].tolist(), strict=True) if not stay]
        falls: list[int] = []
        if left:
            words = base.without(band)
            used = bands_in_use(words, passed, crossed)
            falls = [other for other in left if other not in used]
            left = [other for other in left if other in used]
            if left and (still := least.find(used)) is not None:
                left = [other for other in left if other not in still]
                clinging = set[int]()
                if left and not used.isdisjoint(structure.twists):
                    found = apart.find(used)
                    clinging = bands_that_may_cling(words, used, structure.twists, crossed)
                    clinging |= set(left) if found is None else found
                falls += [other for other in left if other not in clinging]
                left = [other for other in left if other in clinging]
        kept = kept_across(structure, {*falls, *proof.free, band})
        falls = [other for other in falls if other not in kept]
        losses[band] = Loss(tuple(sorted(falls)), tuple(sorted({*left, *kept} - {*proof.free, band})))
    return losses


class _LeastWithout:
    """Finds the bands in the least words of a piece without one band after the other.

    The words of the whole are made least once. Without the letter of a band they are words of what is left of
    the piece: partial conjugations of all bands, with that letter 1, are partial conjugations of the others.
    So they are nearly least already. With `apart`, each loop of a band that carries a twist of its own has
    its own letter.
    """

    def __init__(self, whole: ReducedWords, used: Set[int], *, apart: bool = False) -> None:
        self._tables, self._used = whole, used
        self._ropes = Ropes()
        self._writer = FastenerWords(self._ropes, apart=apart)
        self._whole: Least | None = None
        self._budget = _VISITED

    def find(self, used: Set[int]) -> frozenset[int] | None:
        """Return the bands that occur if only those in use are left; None if that is too much work."""
        ropes = self._ropes
        if self._whole is None:
            words = ropes.ignore_bands(self._writer.write(self._tables), self._used)
            self._whole = make_least(ropes, words, self._budget)
            self._budget -= self._whole.visited
        if self._whole.flows is None or self._budget <= 0:
            return None
        roots = ropes.ignore_bands(self._whole.words, used)
        least = make_least(ropes, roots, self._budget, self._whole)
        self._budget -= least.visited
        return None if least.flows is None else frozenset().union(*map(ropes.bands_in, least.words))


def note_paths(
    stays: Flags, place: dict[int, int], verdicts: Mapping[int, Verdict], steps: tuple[PathStep, ...]
) -> None:
    """Note that a band stays whatever snaps that is neither on the path to it nor on the way on from it.

    Of several carriers of one step none is missed.
    """
    shape = (len(steps), len(place))
    path, on, ends = np.zeros(shape, np.bool_), np.zeros(shape, np.bool_), [False] * len(steps)

    def mark(row: npt.NDArray[np.bool_], bands: Sequence[int]) -> None:
        if len(bands) == 1 and bands[0] in place:
            row[place[bands[0]]] = True

    for number, step in enumerate(steps):
        if step.parent >= 0:
            path[number] = path[step.parent]
        mark(path[number], step.carriers)

    def go_on(number: int) -> None:
        on[number] = on[number + 1]
        mark(on[number], steps[number + 1].carriers)

    for number in reversed(range(len(steps))):
        if steps[number].witness:
            ends[number] = True
            mark(on[number], (steps[number].witness,))
        elif number + 1 < len(steps) and steps[number + 1].parent == number and ends[number + 1]:
            ends[number] = True
            go_on(number)
    for number in reversed(range(len(steps))):
        if steps[number].loan >= 0:
            on[number] = on[steps[number].loan]
        elif not ends[number]:
            go_on(number)
    for band, verdict in verdicts.items():
        if isinstance(verdict, Held) and band in place:
            row = path[verdict.step].copy()
            if not verdict.witness:
                row |= on[verdict.step]
            mark(row, (band,))
            stays[:, place[band]] |= ~row


def passengers(losses: Mapping[int, Loss]) -> tuple[int, ...]:
    """Return the held bands whose loss frees no other, given what `snap_losses` found."""
    return tuple(band for band, loss in losses.items() if loss == Loss(()))


def missed_loop_losses(structure: Structure, proof: Proof) -> dict[Bight, Loss]:
    """Return for every loop that the last fastener caught what falls if it had missed that loop alone."""
    if not structure.fastenings:
        return {}
    *others, last = structure.fastenings
    caught = structure.words[last.word]
    found = {}
    for index, factor in enumerate(caught):
        missed = structure._replace(
            words=(*structure.words, caught[:index] + caught[index + 1 :]),
            made=(*structure.made, last.event),
            fastenings=(*others, last._replace(word=len(structure.words))),
        )
        after = prove(missed)
        free, unproved = set(after.free), set(after.unproved)
        found[structure.loops[structure.cores[factor >> 1][0]]] = Loss(
            tuple(band for band in proof.held if band in free),
            tuple(band for band in proof.held if band in unproved),
        )
    return found
