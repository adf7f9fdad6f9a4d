"""Offer a fix only if it helps: the mended piece is worked and proved first."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

import jsonpatch
import msgspec

from pegwright.finding import Finding
from pegwright.loom import replay_pattern
from pegwright.pattern import Pattern, expand, write_pattern
from pegwright.proof import Proof, prove
from pegwright.structure import structure_of

__all__ = ["keep_safe_fixes"]

_TRIED = 3  # fixes of one code; the rest describe the piece before the first one is made
_MOST_MOVES = 2_000  # working a longer piece again would keep its maker waiting

# Findings whose fix changes what passes through what, or what is caught by what.
_REWORKS = frozenset({"loop-dragged", "start-not-held", "catches-one", "catches-more", "no-finish"})


def keep_safe_fixes(pattern: Pattern, findings: Sequence[Finding], proof: Proof) -> Iterator[Finding]:
    """Yield the findings, with only those fixes that are proved to help where a fix reworks the piece.

    A fix that reorders the work, caps a start or changes what a fastener catches must let no held band fall;
    a fix that closes an open piece must hold every band. The first few fixes of a code are tried, and the
    first good one is kept.
    """
    left: Counter[str] = Counter()
    for found in findings:
        if found.fix is None or found.code not in _REWORKS:
            yield found
        elif left[found.code] < _TRIED and _mends(pattern, found, proof):
            left[found.code] = _TRIED
            yield found
        else:
            left[found.code] += 1
            yield msgspec.structs.replace(found, fix=None)


def _mends(pattern: Pattern, found: Finding, proof: Proof) -> bool:
    assert found.fix is not None
    raw = jsonpatch.apply_patch(msgspec.json.decode(write_pattern(pattern)), list(found.fix.patch))
    mended = msgspec.convert(raw, Pattern)
    expansion = expand(mended)
    if len(expansion.moves) > _MOST_MOVES:
        return False
    history = replay_pattern(mended, expansion)
    if expansion.findings or any(f.severity == "error" for f in history.findings):
        return False
    after = prove(structure_of(history.events, history.board.spots))
    if found.code == "no-finish":
        return len(after.held) == len(after.verdicts)
    return set(after.held).issuperset(proof.held)
