"""The piece as it comes out after a slip, at rest beside the right one, or the slip on the loom."""

from __future__ import annotations

from typing import NamedTuple

from pegwright.finding import RefusedError
from pegwright.lesson import (
    MistakeWriter,
    Phrasebook,
    Speaker,
    draw_mistake,
    look_of,
    portrait_of,
    view_text,
)
from pegwright.loom import History, replay, step_numbers
from pegwright.pattern import localise
from pegwright.press import HeadedPicture, comparison_svg, portrait_svg, step_svg
from pegwright.rehearsal import Outcome, Rehearsal, Slip, move_at_opposite_pegs, prepare_history
from pegwright.shape import RestingPiece
from pegwright.workshop.at_rest import bring_to_rest
from pegwright.workshop.line import Work
from pegwright.workshop.progress import ReportProgress, report_nothing

__all__ = ["WrongPiecePicture", "picture_wrong_piece", "replay_with_slip"]


class WrongPiecePicture(NamedTuple):
    """The two pictures as one SVG, and whether they show the pieces at rest or the slip on the loom."""

    svg: str
    at_rest: bool


def replay_with_slip(history: History, slip: Slip) -> History:
    """Replay every move with the slip in its place; a move that has become impossible is skipped."""
    doings = [done.located for done in history.moves]
    after = slip.at + slip.replaces
    wrong = [doings[slip.at]._replace(move=move) for move in slip.moves]
    later = doings[after:]
    if slip.about:
        made = prepare_history(history)
        later = [doing._replace(move=move_at_opposite_pegs(made, doing.move)) for doing in later]
    return replay(history.board, (*doings[: slip.at], *wrong, *later))


def picture_wrong_piece(
    made: Work,
    rehearsal: Rehearsal,
    outcome: Outcome,
    language: str = "en",
    progress: ReportProgress = report_nothing,
) -> WrongPiecePicture | None:
    """Picture the right piece and the wrong one; None if neither pieces nor loom show a difference.

    A piece that loses bands, or may, cannot be brought to rest as one; it is shown on the loom where the slip
    is made, and so is one that the solver does not bring to rest.

    Raises:
        ValueError: the language is unknown.
    """
    phrasebook = Phrasebook(language)
    numbers = step_numbers(rehearsal.history)
    writer = MistakeWriter(phrasebook, rehearsal.history, numbers.__getitem__)
    lines = [
        phrasebook.say("picture-step", n=numbers[outcome.slip.at]) + ": " + writer.slip(outcome),
        f"{writer.end(outcome)} {writer.sign(outcome)}",
    ]
    headings = phrasebook.say("label-right"), phrasebook.say("label-wrong")
    pieces = _both(made, outcome, progress)
    if pieces is not None:
        works = (made, made._replace(history=replay_with_slip(made.history, outcome.slip)))
        portraits = [
            portrait_of(piece, made.pattern, work.history.colours)
            for piece, work in zip(pieces, works, strict=True)
        ]
        svgs = [portrait_svg(one, "front", text=view_text(phrasebook, one)) for one in portraits]
    else:
        look = look_of(localise(made.pattern, language), made.history)
        pair = draw_mistake(Speaker(phrasebook, look), rehearsal, outcome, numbers)
        if pair is None:
            return None
        svgs = [step_svg(pair[1]), step_svg(pair[0])]
    pictures = [HeadedPicture(heading, svg) for heading, svg in zip(headings, svgs, strict=True)]
    return WrongPiecePicture(comparison_svg(pictures, lines), pieces is not None)


def _both(made: Work, outcome: Outcome, progress: ReportProgress) -> tuple[RestingPiece, RestingPiece] | None:
    """Return the right and the wrong piece if both come to rest without strands crossing, else None."""
    if outcome.result in ("falls", "not-proved"):
        return None
    wrong = made._replace(history=replay_with_slip(made.history, outcome.slip))
    try:
        pieces = bring_to_rest(wrong, progress), bring_to_rest(made, progress)
    except RefusedError:
        return None
    lie_well = all(piece.relaxed.converged and not piece.crossing_check.crossings for piece in pieces)
    return (pieces[1], pieces[0]) if lie_well else None
