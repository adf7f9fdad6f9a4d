"""A fix is offered only where it does good: the mended piece is worked and proved before it is promised."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import jsonpatch
import msgspec

from pegwright.finding import Finding
from pegwright.loom import board, replay
from pegwright.pattern import Pattern, expand, write
from pegwright.proof import Proof, prove
from pegwright.structure import structure_of

__all__ = ["sound_fixes"]

_REORDERS = frozenset({"loop-dragged"})  # findings whose fix changes what passes through what
_TRIED = 3


def sound_fixes(pattern: Pattern, findings: Sequence[Finding], proof: Proof) -> Iterator[Finding]:
    """Give the findings back; of the fixes that reorder the work only one that lets no band fall.

    The first that does good is offered, of the first few: the others speak of the piece as it is before.
    """
    left = _TRIED
    for found in findings:
        if found.fix is None or found.code not in _REORDERS:
            yield found
        elif left and _does_good(pattern, found, proof):
            left = 0
            yield found
        else:
            left = max(left - 1, 0)
            yield msgspec.structs.replace(found, fix=None)


def _does_good(pattern: Pattern, found: Finding, proof: Proof) -> bool:
    assert found.fix is not None
    raw = jsonpatch.apply_patch(msgspec.json.decode(write(pattern)), list(found.fix.patch))
    mended = msgspec.convert(raw, Pattern)
    expansion = expand(mended)
    history = replay(board(mended.loom), expansion.doings)
    after = prove(structure_of(history.events, history.board.spots))
    held = set(after.held).issuperset(proof.held)
    return held and not expansion.findings and not any(f.severity == "error" for f in history.findings)
