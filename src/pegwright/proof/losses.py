"""What falls if: a band snaps, or the fastener misses a loop."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import islice
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from pegwright.loom.events import Bight
from pegwright.proof.carriers import carry
from pegwright.proof.parts import Near, Search
from pegwright.proof.prove import kept_across, prove
from pegwright.proof.reader import Reader
from pegwright.proof.slips import Reduction, first_passed, in_use
from pegwright.proof.values import Held, HeldByPart, Proof, Step, Verdict
from pegwright.structure import Structure

__all__ = ["Loss", "needed_loops", "passengers", "snaps"]

_TREES = 24  # sets of paths drawn at random before single snaps are looked at
_SMALL = 16  # bands of a piece that is proved afresh for every snap that stays open
_PROOFS = 4  # how often a larger piece is
_PAIRS = 400  # pairs of a snapped and another band for which small parts are looked for, each at
_PLACES = 3  # so many places
Table = npt.NDArray[np.bool_]


class Loss(NamedTuple):
    """What a loss does to the bands held before: those that fall, and those no longer proved either way."""

    falls: tuple[int, ...]
    unproved: tuple[int, ...] = ()


def snaps(
    structure: Structure, proof: Proof, told: Callable[[int, int], None] = lambda _done, _of: None
) -> dict[int, Loss]:
    """Return for every band proved held what else falls if that band alone snaps.

    A band whose path of carriers does without the snapped one stays. A few sets of paths drawn at random
    answer for most snaps; for what stays open, bands that fall and small parts that hold are looked for, and
    at last the piece is proved without the snapped band. In a large piece both have a limit, and what is
    beyond it is said to be unproved. `told` hears how many bands are done, and of how many.
    """
    held = proof.held
    place = {band: at for at, band in enumerate(held)}
    stays = np.eye(len(held), dtype=np.bool_)  # [snapped, staying]
    note_paths(stays, place, proof.verdicts, proof.steps)
    for band, verdict in proof.verdicts.items():
        if isinstance(verdict, HeldByPart) and proof.parts[verdict.part].step < 0:
            keep = proof.parts[verdict.part].keep
            stays[[at for other, at in place.items() if other not in keep], place[band]] = True
    base = Reduction(structure)
    reader = Reader(base.run())
    for seed in range(1, _TREES + 1):
        known = np.count_nonzero(stays)
        if known < stays.size:
            note_paths(stays, place, *carry(reader, set(held), (seed,)))
        if np.count_nonzero(stays) == known:
            break
    near = None if stays.all() else Near(reader)
    passed = first_passed(structure)
    pairs, proofs = _PAIRS, _PROOFS
    losses: dict[int, Loss] = {}
    for at, band in enumerate(held):
        told(at, len(held))
        left = [other for other, stay in zip(held, stays[at].tolist(), strict=True) if not stay]
        falls: list[int] = []
        if left:
            used = in_use(base.without(band), passed)
            falls = [other for other in left if other not in used]
            left = [other for other in left if other in used]
        if left and near and len(held) > _SMALL:
            search = Search(reader.s, left)
            for other in left[:pairs]:
                places = islice(near.places(other, band), _PLACES)
                any(search.find(other, [near.products[step]], pool, step) for step, pool in places)
            pairs = max(pairs - len(left), 0)
            left = [other for other in left if other not in search.held]
        if left and proofs:
            proofs -= len(held) > _SMALL
            after = prove(_without(structure, band))
            note_paths(stays, place, after.verdicts, after.steps)
            falls += set(left).intersection(after.free)
            left = sorted(set(left).intersection(after.unproved))
        kept = kept_across(structure, {*falls, *proof.free, band})
        falls = [other for other in falls if other not in kept]
        losses[band] = Loss(tuple(sorted(falls)), tuple(sorted({*left, *kept} - {*proof.free, band})))
    return losses


def note_paths(
    stays: Table, place: dict[int, int], verdicts: Mapping[int, Verdict], steps: tuple[Step, ...]
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
    """Return the held bands whose loss frees no other, given what `snaps` found."""
    return tuple(band for band, loss in losses.items() if loss == Loss(()))


def needed_loops(structure: Structure, proof: Proof) -> dict[Bight, Loss]:
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


def _without(structure: Structure, missing: int) -> Structure:
    """Return the structure with a band taken out: it is in no word and has no verdict."""
    gone = [structure.owner[loop] == missing for loop, _ in structure.cores]
    return structure._replace(
        bands=tuple(band for band in structure.bands if band != missing),
        words=tuple(tuple(f for f in word if not gone[f >> 1]) for word in structure.words),
    )
