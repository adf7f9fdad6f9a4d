"""A rehearsal as the page is told of it: where makers slip, what comes of it, and the way back."""

from __future__ import annotations

import msgspec

from pegwright.lesson import Teller, Words
from pegwright.lesson.say import Speaker
from pegwright.lesson.scene import look_of
from pegwright.lesson.trouble import pictured
from pegwright.loom.steps import step_numbers
from pegwright.press import step_svg
from pegwright.rehearsal import Trouble, way_back
from pegwright.workshop import Progress, Work, rehearsed

__all__ = ["Pictured", "Rehearsed", "Slipped", "rehearsed_piece"]

_SPOTS = 5


class Pictured(msgspec.Struct, frozen=True, kw_only=True):
    """A picture as SVG, and what it shows in words."""

    svg: str
    text: str


class Slipped(msgspec.Struct, frozen=True, kw_only=True):
    """The costliest slip of a trouble spot: `moment` counts the moves before it, `falls` names bands.

    `steps` are the numbers of all steps that go wrong in this way; `lost` is what one maker loses so on
    average, in bands. `proved` says whether the proof, and not only quick means, stands behind `falls`.
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
    wrong: Pictured | None
    right: Pictured | None


class Rehearsed(msgspec.Struct, frozen=True, kw_only=True):
    """How many slips were rehearsed; what each move costs one maker on average, in bands; where to look.

    `look_after` are the numbers of the steps after which a stop to look catches most.
    """

    tried: int
    heat: tuple[float, ...]
    look_after: tuple[int, ...]
    spots: tuple[Slipped, ...]


def rehearsed_piece(made: Work, language: str, progress: Progress) -> Rehearsed:
    """Rehearse a worked piece and tell of its worst trouble spots in a language.

    Raises:
        ValueError: there are no words for the language.
    """
    told = rehearsed(made, progress=progress)
    numbers = step_numbers(told.history)
    words = Words(language)
    teller = Teller(words, told.history, numbers.__getitem__)
    speaker = Speaker(words, look_of(made.pattern, made.history))

    def slipped(trouble: Trouble) -> Slipped:
        worst = trouble.ways[0].worst
        pair = pictured(speaker, told, worst, numbers)
        wrong, right = (
            (None, None) if pair is None else (Pictured(svg=step_svg(one), text=one.text) for one in pair)
        )
        return Slipped(
            moment=worst.slip.at,
            step=numbers[worst.slip.at],
            steps=tuple(sorted({numbers[spot.at] for spot in trouble.spots})),
            lost=round(trouble.expected, 3),
            slip=teller.slip(worst),
            end=teller.end(worst),
            sign=teller.sign(worst),
            warning=teller.warning(worst),
            back=teller.back(way_back(told.history, worst).acts),
            falls=worst.falls,
            proved=worst.slip in told.proved,
            wrong=wrong,
            right=right,
        )

    return Rehearsed(
        tried=told.tried,
        heat=tuple(round(lost, 4) for lost in told.heat),
        look_after=tuple(numbers[at] for at in told.checks.after),
        spots=tuple(map(slipped, told.troubles[:_SPOTS])),
    )
