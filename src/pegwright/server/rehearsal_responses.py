"""A rehearsal as the page shows it: where makers slip, the outcome, and the way back."""

from __future__ import annotations

import msgspec

from pegwright.lesson import MistakeWriter, Phrasebook, Speaker, draw_mistake, look_of
from pegwright.loom import step_numbers
from pegwright.pattern import localise
from pegwright.press import step_svg
from pegwright.rehearsal import Trouble, find_way_back
from pegwright.workshop import ReportProgress, Work, rehearse_piece

__all__ = ["CaptionedPicture", "RehearsalResponse", "TroubleResponse", "rehearsal_response"]

_SPOTS = 5


class CaptionedPicture(msgspec.Struct, frozen=True, kw_only=True):
    """A picture as SVG, and its description in words."""

    svg: str
    text: str


class TroubleResponse(msgspec.Struct, frozen=True, kw_only=True):
    """The costliest slip of a trouble spot: `moment` counts the moves before it, `falls` names bands.

    `steps` are the numbers of all steps that go wrong this way; `lost` is the number of bands that one maker
    loses this way on average. `proved` tells whether `falls` comes from the full proof rather than quick
    means.
    """

    moment: int
    step: int
    steps: tuple[int, ...]
    lost: float
    slip: str
    end: str
    sign: str
    warning: str
    back: tuple[str, ...]
    falls: tuple[int, ...]
    proved: bool
    wrong: CaptionedPicture | None
    right: CaptionedPicture | None


class RehearsalResponse(msgspec.Struct, frozen=True, kw_only=True):
    """How many slips were rehearsed, what each move costs one maker on average in bands, and where to look.

    `look_after` are the numbers of the steps after which it pays most to stop and look.
    """

    tried: int
    heat: tuple[float, ...]
    look_after: tuple[int, ...]
    spots: tuple[TroubleResponse, ...]


def rehearsal_response(made: Work, language: str, progress: ReportProgress) -> RehearsalResponse:
    """Rehearse a worked piece and word its worst trouble spots.

    Raises:
        ValueError: the language is unknown.
    """
    rehearsal = rehearse_piece(made, progress=progress)
    numbers = step_numbers(rehearsal.history)
    phrasebook = Phrasebook(language)
    writer = MistakeWriter(phrasebook, rehearsal.history, numbers.__getitem__)
    speaker = Speaker(phrasebook, look_of(localise(made.pattern, language), made.history))

    def trouble_response(trouble: Trouble) -> TroubleResponse:
        worst = trouble.failure_modes[0].worst
        pair = draw_mistake(speaker, rehearsal, worst, numbers)
        wrong, right = (
            (None, None)
            if pair is None
            else (CaptionedPicture(svg=step_svg(one), text=one.text) for one in pair)
        )
        return TroubleResponse(
            moment=worst.slip.at,
            step=numbers[worst.slip.at],
            steps=tuple(sorted({numbers[spot.at] for spot in trouble.risky_steps})),
            lost=round(trouble.expected, 3),
            slip=writer.slip(worst),
            end=writer.end(worst),
            sign=writer.sign(worst),
            warning=writer.warning(worst),
            back=writer.back(find_way_back(rehearsal.history, worst).acts),
            falls=worst.falls,
            proved=worst.slip in rehearsal.proved,
            wrong=wrong,
            right=right,
        )

    return RehearsalResponse(
        tried=rehearsal.tried,
        heat=tuple(round(lost, 4) for lost in rehearsal.heat),
        look_after=tuple(numbers[at] for at in rehearsal.checks.after),
        spots=tuple(map(trouble_response, rehearsal.troubles[:_SPOTS])),
    )
