"""From a worked piece to the plan of its lesson."""

from __future__ import annotations

from collections.abc import Mapping

from pegwright.judging import FALL_CODES, find_worst_snap
from pegwright.lesson import (
    UNKNOWN_FINISH,
    FinishedPiece,
    Hand,
    HoldResult,
    Lesson,
    SnapResult,
    plan_lesson,
)
from pegwright.workshop.line import Work


def lesson_of(
    work: Work,
    language: str = "en",
    *,
    hand: Hand = "right",
    phrases: Mapping[str, str] | None = None,
    finish: FinishedPiece = UNKNOWN_FINISH,
) -> Lesson:
    """Plan the lesson of a worked piece. Options as in `lesson.plan_lesson`, which has more.

    What one snapped band costs is worked out too, which is the slowest part.

    Raises:
        ValueError: the language is unknown.
    """
    return plan_lesson(
        work.pattern,
        work.history,
        work.supplies,
        hold_result(work),
        language=language,
        hand=hand,
        phrases=phrases,
        finish=finish,
    )


def hold_result(work: Work, *, snaps: bool = True) -> HoldResult:
    """Return whether all bands hold and which fall; with `snaps`, also what one snapped band costs."""
    proof = work.proof
    worst = find_worst_snap(work.structure, proof) if work.holds and snaps else None
    return HoldResult(
        held=work.holds,
        bands=len(proof.verdicts),
        falling=proof.free,
        unproved=proof.unproved,
        left_out=work.left_out,
        causes=tuple(found for found in work.findings if found.code in FALL_CODES),
        snap=worst and SnapResult(worst_loses=worst.loses, harmless=worst.harmless, worst_band=worst.band),
    )
