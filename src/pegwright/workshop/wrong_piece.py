"""The piece as it comes out after a slip, at rest beside the right one; or the slip on the loom."""

from __future__ import annotations

from typing import NamedTuple

from pegwright.lesson import Teller, Words
from pegwright.lesson.portrait import portrait_of
from pegwright.lesson.say import Speaker
from pegwright.lesson.scene import look_of
from pegwright.lesson.trouble import pictured
from pegwright.loom import History, replay
from pegwright.loom.steps import step_numbers
from pegwright.press import step_svg
from pegwright.press.beside import Shown, side_by_side
from pegwright.press.portrait_svg import portrait_svg
from pegwright.rehearsal import Outcome, Rehearsal, Slip
from pegwright.rehearsal.course import course
from pegwright.rehearsal.run import at_opposite
from pegwright.shape import Piece
from pegwright.workshop.at_rest import at_rest
from pegwright.workshop.line import Work
from pegwright.workshop.progress import Progress, silent

__all__ = ["Beside", "beside", "worked_wrong"]


class Beside(NamedTuple):
    """The two pictures as one SVG; whether they show the pieces at rest, or else the slip on the loom."""

    svg: str
    at_rest: bool


def worked_wrong(history: History, slip: Slip) -> History:
    """Make every move afresh with the slip in its place; what cannot be made is left out, as makers do."""
    doings = [done.doing for done in history.done]
    after = slip.at + slip.replaces
    wrong = [doings[slip.at]._replace(move=move) for move in slip.moves]
    later = doings[after:]
    if slip.about:
        made = course(history)
        later = [doing._replace(move=at_opposite(made, doing.move)) for doing in later]
    return replay(history.board, (*doings[: slip.at], *wrong, *later))


def beside(
    made: Work, told: Rehearsal, outcome: Outcome, language: str = "en", progress: Progress = silent
) -> Beside | None:
    """Picture the right piece and the wrong one, or None where neither pieces nor loom show a difference.

    A piece of which bands fall, or may, comes to no rest as one; it is shown on the loom where the slip is
    made, and so is one that the solver does not bring to rest.

    Raises:
        ValueError: there are no words for the language.
    """
    words = Words(language)
    numbers = step_numbers(told.history)
    teller = Teller(words, told.history, numbers.__getitem__)
    lines = [
        words.say("picture-step", n=numbers[outcome.slip.at]) + ": " + teller.slip(outcome),
        f"{teller.end(outcome)} {teller.sign(outcome)}",
    ]
    headings = words.say("label-right"), words.say("label-wrong")
    pieces = _both(made, outcome, progress)
    if pieces is not None:
        works = (made, made._replace(history=worked_wrong(made.history, outcome.slip)))
        svgs = [
            portrait_svg(portrait_of(piece, made.pattern, work.history.colours), "front")
            for piece, work in zip(pieces, works, strict=True)
        ]
    else:
        pair = pictured(Speaker(words, look_of(made.pattern, made.history)), told, outcome, numbers)
        if pair is None:
            return None
        svgs = [step_svg(pair[1]), step_svg(pair[0])]
    shown = [Shown(heading, svg) for heading, svg in zip(headings, svgs, strict=True)]
    return Beside(side_by_side(shown, lines), pieces is not None)


def _both(made: Work, outcome: Outcome, progress: Progress) -> tuple[Piece, Piece] | None:
    """Return the right piece and the wrong one if both lie at rest, and none of their strands crossed."""
    if outcome.result in ("falls", "not-proved"):
        return None
    wrong = made._replace(history=worked_wrong(made.history, outcome.slip))
    try:
        pieces = at_rest(wrong, progress), at_rest(made, progress)
    except ValueError:
        return None
    lie_well = all(piece.relaxed.converged and not piece.certified.crossings for piece in pieces)
    return (pieces[1], pieces[0]) if lie_well else None
