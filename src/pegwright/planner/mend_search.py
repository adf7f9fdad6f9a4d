"""The search for changes that mend a piece: single ones, and two together where no single one helps."""

from __future__ import annotations

import math
import time
from collections import Counter
from collections.abc import Callable, Iterator
from typing import NamedTuple

from pegwright.finding import Fix, phrase
from pegwright.loom import History, check_loom
from pegwright.pattern import Pattern
from pegwright.planner.description import SpokenMove, describe
from pegwright.planner.proposals import ReportTries
from pegwright.planner.step_edits import step_edits
from pegwright.planner.step_lists import StepEdit
from pegwright.planner.trials import TriedPiece, change_piece, count_faults, prove_piece

__all__ = ["Mend", "MendSearch"]

_MOST_FOUND = 12
_FURTHER = 0.75
"""Once a mend is found, changes that are so much more doubtful are not tried any more ..."""
_MORE_TRIES = 80
"""... but so many are, where there are fewer mends than asked for."""
_FIRST_OF_TWO = 12
"""Changes that lessen the faults without mending the piece: of so many a second change is sought."""
_SECOND_OF_TWO = (40, 400)
"""Second changes tried for each: first the likeliest for all of them, then more."""


class Mend(NamedTuple):
    """What makes every band hold: what it does as a fix, and the mended pattern.

    `changes` counts the changes, one or two; `changed` the passages of loops through loops that differ,
    `more_bands` the bands added (negative: taken out), `phrases` the number of phrases that the whole working
    then takes.
    """

    fix: Fix
    pattern: Pattern
    changes: int
    changed: int
    more_bands: int
    phrases: int
    cautions: int

    @property
    def rank(self) -> tuple[float, ...]:
        """The sort key of mends: few changes, same number of bands, few warnings, regular, little changed."""
        return (self.changes, abs(self.more_bands), self.cautions, self.phrases + self.changed)


class _Half(NamedTuple):
    """A change that lessens the faults and leaves some, and the changed piece."""

    faults: tuple[int, int]
    edit: StepEdit
    piece: TriedPiece


class MendSearch:
    """The mends `found` of a piece that falls, and how many changes were `tried`."""

    def __init__(
        self,
        piece: TriedPiece,
        find_roots: Callable[[TriedPiece], frozenset[int]],
        most: int,
        ends: float,
        progress: ReportTries,
    ) -> None:
        self.piece = piece
        self.find_roots = find_roots
        self.most = most
        self.ends = ends
        self.progress = progress
        self.found: list[Mend] = []
        self.tried = 0
        self.halves: list[_Half] = []

    def run(self) -> None:
        """Try single changes; where none helps, those that need a long proof, then two together."""
        edits = self._edits(self.piece)
        postponed = self._try_single(edits)
        if not self.found:
            self._try_thoroughly(postponed)
        if not self.found:
            self._try_two()

    def _edits(self, piece: TriedPiece) -> list[StepEdit]:
        return step_edits(piece.pattern, piece.expansion, piece.history, self.find_roots(piece))

    @property
    def _out_of_time(self) -> bool:
        return time.monotonic() > self.ends

    def _try_single(self, edits: list[StepEdit]) -> list[StepEdit]:
        """Return the changes that only a long proof can judge."""
        postponed: list[StepEdit] = []
        faults = count_faults(self.piece)
        enough, last = math.inf, math.inf
        for edit in edits:
            self.progress("trying changes", self.tried, len(edits))
            enough_found = len(self.found) >= self.most or self.tried > last
            if self._out_of_time or len(self.found) >= _MOST_FOUND or (edit.doubt > enough and enough_found):
                break
            self.tried += 1
            changed = change_piece(self.piece, edit)
            if changed is None:
                continue
            proof = prove_piece(changed, self.piece.drags, thorough=False)
            if proof is None:
                postponed.append(edit)
            elif proof:
                self.found.append(self._mend(changed, edit))
                enough, last = min(enough, edit.doubt + _FURTHER), min(last, self.tried + _MORE_TRIES)
            elif not self.found and (left := count_faults(changed)) < faults:
                self.halves.append(_Half(left, edit, changed))
        return postponed

    def _try_thoroughly(self, edits: list[StepEdit]) -> None:
        for edit in edits:
            self.progress("trying changes", self.tried, self.tried)
            if self._out_of_time or len(self.found) >= self.most:
                break
            changed = change_piece(self.piece, edit)
            if changed is not None and prove_piece(changed, self.piece.drags, thorough=True):
                self.found.append(self._mend(changed, edit))

    def _try_two(self) -> None:
        """Go on from the changes that lessen the faults most: another of each, the likeliest first."""
        best = sorted(self.halves, key=lambda half: (half.faults, half.edit.doubt))[:_FIRST_OF_TWO]
        seconds: dict[int, Iterator[StepEdit]] = {}
        for count in _SECOND_OF_TWO:
            for number, half in enumerate(best):
                if number not in seconds:
                    seconds[number] = iter(self._edits(half.piece))
                for _, second in zip(range(count), seconds[number], strict=False):
                    self.progress("trying two changes", self.tried, self.tried + count)
                    if self._out_of_time:
                        return
                    self.tried += 1
                    changed = change_piece(half.piece, second)
                    if changed is not None and prove_piece(changed, self.piece.drags, thorough=False):
                        self.found.append(self._mend(changed, _both(half.edit, second)))
                        break
                if len(self.found) >= self.most:
                    return
            if self.found:
                return

    def _mend(self, piece: TriedPiece, edit: StepEdit) -> Mend:
        before, history = self.piece.history, piece.history
        said = describe([SpokenMove(done.move) for done in history.moves])
        cautions = sum(f.severity != "note" for f in check_loom(piece.pattern, piece.expansion, history))
        return Mend(
            Fix(edit.label, edit.patch),
            piece.pattern,
            2 if edit.label.phrase == "mend-both" else 1,
            _difference(before, history),
            history.final.bands - before.final.bands,
            said.phrases,
            cautions,
        )


def _both(first: StepEdit, second: StepEdit) -> StepEdit:
    """Return two changes as one; the second is said of the document that the first leaves."""
    label = phrase("mend-both", first=first.label, second=second.label)
    return StepEdit(label, (*first.patch, *second.patch), first.doubt + second.doubt)


def _difference(one: History, other: History) -> int:
    """Count the passages of loop through loop, by pegs, that only one of two pieces has."""
    return (_passages(one) - _passages(other)).total() + (_passages(other) - _passages(one)).total()


def _passages(history: History) -> Counter[tuple[object, ...]]:
    seats: dict[object, str] = {}
    for event in history.events:
        for seat in getattr(event, "seats", ()):
            seats[seat.bight] = seat.holder
    return Counter(
        (seats.get(loop), seats.get(ribbon))
        for loop, ribbons in history.final.inside.items()
        for ribbon in ribbons
    )
