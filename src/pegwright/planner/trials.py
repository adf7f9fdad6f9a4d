"""Changes to a piece that falls, tried on its document: worked, and proved where all bands may hold."""

from __future__ import annotations

from typing import Any, NamedTuple

import jsonpatch
import msgspec

from pegwright.loom import History, replay_pattern
from pegwright.pattern import Expansion, Pattern, expand, write_pattern
from pegwright.planner.hold_test import count_falling, every_band_is_held
from pegwright.planner.step_lists import StepEdit
from pegwright.proof import Proof, check, prove
from pegwright.structure import structure_of

__all__ = ["TriedPiece", "change_piece", "count_faults", "prove_piece", "work_piece"]


class TriedPiece(NamedTuple):
    """A piece that may fall: its document as written (`raw`) and as read, and what becomes of it."""

    raw: Any
    pattern: Pattern
    expansion: Expansion
    history: History

    @property
    def refused(self) -> int:
        """How many moves cannot be made."""
        return sum(f.severity == "error" for f in self.history.findings)

    @property
    def drags(self) -> int:
        """How many loops are dragged along."""
        return sum(len(getattr(event, "dragged", ())) for event in self.history.events)


def work_piece(pattern: Pattern) -> TriedPiece:
    """Work a pattern as it stands."""
    expansion = expand(pattern)
    history = replay_pattern(pattern, expansion)
    return TriedPiece(msgspec.json.decode(write_pattern(pattern)), pattern, expansion, history)


def change_piece(piece: TriedPiece, edit: StepEdit) -> TriedPiece | None:
    """Return the changed piece; None if the change leaves no document that can be read."""
    try:
        raw = jsonpatch.apply_patch(piece.raw, list(edit.patch))
        pattern = msgspec.convert(raw, Pattern)
    except (jsonpatch.JsonPatchException, msgspec.ValidationError):
        return None
    expansion = expand(pattern)
    if any(f.severity == "error" for f in expansion.findings):
        return None
    return TriedPiece(raw, pattern, expansion, replay_pattern(pattern, expansion))


def count_faults(piece: TriedPiece) -> tuple[int, int]:
    """Return how many moves are refused and how many bands fall: what a change of several must lessen."""
    bare = structure_of(piece.history.events)
    return piece.refused, count_falling(bare) if piece.history.final.fasteners else len(bare.bands)


def prove_piece(piece: TriedPiece, drags: int, *, thorough: bool) -> Proof | bool | None:
    """Return the checked proof that every band is held, with no move refused and no more loops dragged.

    False means that this is not so, None that it is not settled quickly (never with `thorough`).
    """
    history = piece.history
    if piece.refused or piece.drags > drags or not history.final.fasteners:
        return False
    held = every_band_is_held(history.events, history.board.spots, thorough=thorough)
    if not held:
        return held
    proof = prove(structure_of(history.events, history.board.spots))
    if proof.unproved or proof.free:
        return False
    if (rejected := check(history.events, proof, history.board.spots)) is not None:
        raise AssertionError(f"the checker rejects the proof of this mend: {rejected}")
    return proof
