"""The finished piece in the lesson: its picture, its size, the wrists it suits."""

from __future__ import annotations

from pegwright.lesson.handout.results import FinishedPiece
from pegwright.lesson.handout.sheet import FinishedSection
from pegwright.lesson.say.phrasebook import Phrasebook, single_line
from pegwright.lesson.scene.portrait import Portrait, ViewName
from pegwright.lesson.scene.scene import Look

WIDEST_MM = 181.0
"""As wide as a picture may be on both papers."""
TALLEST_MM = 100.0
_SMALL_MM = 72.0
"""A piece shorter than that is shown twice as large as it is."""


def finished_section(
    phrasebook: Phrasebook, title: str, look: Look, finish: FinishedPiece
) -> FinishedSection:
    """Say how large the piece comes out and whom it suits, or why nothing is known of that."""
    heading, portrait = phrasebook.say("heading-finished"), finish.portrait
    if portrait is None:
        return FinishedSection(heading=heading, size=phrasebook.say(f"finished-{finish.missing}"))
    camera = portrait.camera("front")
    wide, tall = camera.size_mm
    scale = 2.0 if wide < _SMALL_MM else 1.0
    least = min(WIDEST_MM / wide, TALLEST_MM / tall)
    caption = "shown-true" if scale == 1 else "shown-twice"
    if least < scale:
        scale, caption = least, "shown-smaller" if least < 1 else "shown-larger"
    used = [look.colours.get(tube.letter, (tube.name, "", 0))[0] for tube in portrait.key]
    named = phrasebook.both(
        [single_line(name) or tube.letter for name, tube in zip(used, portrait.key, strict=True)]
    )
    return FinishedSection(
        heading=heading,
        size=size_text(phrasebook, portrait),
        wrists=_wrists_text(phrasebook, finish),
        portrait=portrait,
        shown_mm=round(wide * scale, 2),
        caption=phrasebook.say(caption),
        text=phrasebook.say("picture-finished", title=title, colours=named),
    )


def size_text(phrasebook: Phrasebook, portrait: Portrait) -> str:
    """Say length, width and thickness, to the millimetre or the sixteenth of an inch."""
    name = "finished-size-high" if portrait.height_mm > 0.8 * portrait.width_mm else "finished-size"
    long, wide, thick = (
        phrasebook.length(round(mm) if phrasebook.units == "metric" else mm)
        for mm in (portrait.length_mm, portrait.width_mm, portrait.height_mm)
    )
    return phrasebook.say(name, length=long, width=wide, height=thick)


def view_text(phrasebook: Phrasebook, portrait: Portrait, view: ViewName = "front") -> str:
    """Say what is seen of a finished piece in a view, its size, and its colours by letter and name."""
    key = ", ".join(f"{tube.letter} {single_line(tube.name)}".strip() for tube in portrait.key)
    long, wide = f"{portrait.length_mm:.0f}", f"{portrait.width_mm:.0f}"
    title = single_line(portrait.title)
    if view == "worn":
        return phrasebook.say("picture-worn", title=title, girth=f"{portrait.girth_mm or 0:.0f}", key=key)
    return phrasebook.say(f"picture-{view}", title=title, length=long, width=wide, key=key)


def _wrists_text(phrasebook: Phrasebook, finish: FinishedPiece) -> str:
    from pegwright.fit import advise_fit  # noqa: PLC0415 - slow to load, and seldom asked

    fit = advise_fit(finish.measured).fit if finish.measured else None
    if fit is None:
        return ""
    if fit.wrists_mm is None:
        return phrasebook.say("finished-no-wrist")
    low, high = (phrasebook.length(round(mm) if phrasebook.units == "metric" else mm) for mm in fit.wrists_mm)
    return phrasebook.say("finished-wrists", low=low, high=high)
