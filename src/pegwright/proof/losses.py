"""What falls if: a band snaps, or the fastener misses a loop."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from pegwright.loom.events import Bight
from pegwright.proof.carriers import carry
from pegwright.proof.parts import Near, Search
from pegwright.proof.prove import prove
from pegwright.proof.reader import Reader
from pegwright.proof.slips import Reduction, first_passed, in_use
from pegwright.proof.values import Held, HeldByPart, Proof, Step, Verdict
from pegwright.structure import Structure

__all__ = ["Loss", "needed_loops", "passengers", "snaps"]

_TREES = 24  # sets of paths drawn at random before single snaps are looked at
_SMALL = 16  # bands of a piece that is proved afresh for every snap that stays open
_PROOFS = 12  # how often a larger piece is
Table = npt.NDArray[np.bool_]


class Loss(NamedTuple):
    """What a loss does to the bands held before: those that fall, and those no longer proved either way."""

    falls: tuple[int, ...]
    unproved: tuple[int, ...] = ()


def snaps(structure: Structure, proof: Proof) -> dict[int, Loss]:
    """Return for every band proved held what else falls if that band alone snaps.

    A band whose path of carriers does without the snapped one stays. A few sets of paths drawn at random
    answer for most snaps; for what stays open, bands that fall and small parts that hold are looked for, and
    at last the piece is proved without the snapped band, in a large piece only so many times.
    """
    held = proof.held
    place = {band: at for at, band in enumerate(held)}
    stays = np.eye(len(held), dtype=np.bool_)  # [snapped, staying]
    _note_paths(stays, place, proof.verdicts, proof.steps)
    for band, verdict in proof.verdicts.items():
        if isinstance(verdict, HeldByPart) and proof.parts[verdict.part].step < 0:
            keep = proof.parts[verdict.part].keep
            stays[[at for other, at in place.items() if other not in keep], place[band]] = True
    base = Reduction(structure)
    reader = Reader(base.run())
    for seed in range(1, _TREES + 1):
        known = np.count_nonzero(stays)
        if known < stays.size:
            _note_paths(stays, place, *carry(reader, set(held), (seed,)))
        if np.count_nonzero(stays) == known:
            break
    near = None if stays.all() else Near(reader)
    passed = first_passed(structure)
    proofs = _PROOFS
    losses: dict[int, Loss] = {}
    for at, band in enumerate(held):
        left = [other for other, stay in zip(held, stays[at].tolist(), strict=True) if not stay]
        falls: list[int] = []
        if left:
            used = in_use(base.without(band), passed)
            falls = [other for other in left if other not in used]
            left = [other for other in left if other in used]
        if left and near and len(held) > _SMALL:
            search = Search(reader.s, left)
            for other in left:
                places = near.places(other, band)
                any(search.find(other, [near.products[step]], pool, step) for step, pool in places)
            left = [other for other in left if other not in search.held]
        if left and proofs:
            proofs -= len(held) > _SMALL
            after = prove(_without(structure, band))
            _note_paths(stays, place, after.verdicts, after.steps)
            falls += set(left).intersection(after.free)
            left = sorted(set(left).intersection(after.unproved))
        losses[band] = Loss(tuple(sorted(falls)), tuple(left))
    return losses


def _note_paths(
    stays: Table, place: dict[int, int], verdicts: Mapping[int, Verdict], proof_steps: tuple[Step, ...]
) -> None:
    """Note that a band stays whatever snaps that is neither on the path to it nor on the way on from it.

    Of several carriers of one step none is missed, except on a borrowed chain, which was cleared for the
    first of them only.
    """
    count, steps = len(place), proof_steps
    shape = (len(steps), count)
    path, on, lent = np.zeros(shape, np.bool_), np.zeros(shape, np.bool_), np.zeros(shape, np.bool_)

    def mark(row: npt.NDArray[np.bool_], bands: Iterable[int]) -> None:
        for band in bands:
            if band in place:
                row[place[band]] = True

    following: dict[int, int] = {}
    for number, step in enumerate(steps):
        if step.parent >= 0:
            path[number] = path[step.parent]
            following.setdefault(step.parent, number)
        if len(step.carriers) == 1:
            mark(path[number], step.carriers)
    for number in reversed(range(len(steps))):
        step = steps[number]
        if step.witness:
            mark(on[number], (step.witness,))
            lent[number] = on[number]
        elif step.loan < 0:
            after = following[number]
            on[number], lent[number] = on[after], lent[after]
            mark(lent[number], steps[after].carriers[:1])
            if len(steps[after].carriers) == 1:
                mark(on[number], steps[after].carriers)
            if steps[after].loan >= 0:
                on[number] |= lent[steps[after].loan]
    for band, verdict in verdicts.items():
        if isinstance(verdict, Held) and band in place:
            step = steps[verdict.step]
            row = path[verdict.step].copy()
            if not verdict.witness:
                row |= lent[step.loan] if step.loan >= 0 else on[verdict.step]
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
