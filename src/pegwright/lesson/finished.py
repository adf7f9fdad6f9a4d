"""The finished piece in the lesson: its picture, its size, the wrists it suits."""

from __future__ import annotations

from pegwright.lesson.portrait import Portrait
from pegwright.lesson.scene import Look
from pegwright.lesson.sheet import Finished
from pegwright.lesson.verdict import Finish
from pegwright.lesson.words import Words, line

WIDEST_MM = 181.0
"""As wide as a picture may be on both papers."""
TALLEST_MM = 100.0
_SMALL_MM = 72.0
"""A piece shorter than that is shown twice as large as it is."""


def finished(words: Words, title: str, look: Look, finish: Finish) -> Finished:
    """Say how large the piece comes out and whom it suits, or why nothing is known of that."""
    heading, shown = words.say("heading-finished"), finish.portrait
    if shown is None:
        return Finished(heading=heading, size=words.say(f"finished-{finish.missing}"))
    camera = shown.camera("front")
    wide, tall = camera.size_mm
    scale = 2.0 if wide < _SMALL_MM else 1.0
    least = min(WIDEST_MM / wide, TALLEST_MM / tall)
    caption = "shown-true" if scale == 1 else "shown-twice"
    if least < scale:
        scale, caption = least, "shown-smaller" if least < 1 else "shown-larger"
    used = [look.colours.get(tube.letter, (tube.name, "", 0))[0] for tube in shown.key]
    named = words.both([line(name) or tube.letter for name, tube in zip(used, shown.key, strict=True)])
    return Finished(
        heading=heading,
        size=size(words, shown),
        wrists=_wrists(words, finish),
        portrait=shown,
        shown_mm=round(wide * scale, 2),
        caption=words.say(caption),
        text=words.say("picture-finished", title=title, colours=named),
    )


def size(words: Words, shown: Portrait) -> str:
    """Say length, width and thickness, to the millimetre or the sixteenth of an inch."""
    name = "finished-size-high" if shown.height_mm > 0.8 * shown.width_mm else "finished-size"
    long, wide, thick = (
        words.length(round(mm) if words.units == "metric" else mm)
        for mm in (shown.length_mm, shown.width_mm, shown.height_mm)
    )
    return words.say(name, length=long, width=wide, height=thick)


def _wrists(words: Words, finish: Finish) -> str:
    from pegwright.fit.measured import suit  # noqa: PLC0415 - slow to load, and seldom asked

    fit = suit(finish.measured).fit if finish.measured else None
    if fit is None:
        return ""
    if fit.wrists_mm is None:
        return words.say("finished-no-wrist")
    low, high = (words.length(round(mm) if words.units == "metric" else mm) for mm in fit.wrists_mm)
    return words.say("finished-wrists", low=low, high=high)
