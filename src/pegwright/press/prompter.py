"""The prompter: the script in large letters, scrolling at the pace at which it is to be spoken."""

from __future__ import annotations

from pegwright.lesson import Lesson
from pegwright.lesson.script import Script
from pegwright.lesson.sheet import Step
from pegwright.press.html import tag, whole
from pegwright.press.page import cover
from pegwright.press.svg import step_svg

_PICTURES = 3
"""So many pictures of a step are shown; of a long loom the other parts look alike."""
_BUTTONS = ("again", "slower", "faster", "smaller", "larger")


def prompter_html(lesson: Lesson, script: Script) -> str:
    """Return the prompter as one HTML file; every sentence carries the second at which it is said."""
    label = lesson.labels
    start, stop = label["prompter-start"], label["prompter-stop"]
    buttons = tag("button", start, id="start", type="button", data_start=start, data_stop=stop)
    buttons += "".join(tag("button", label[f"prompter-{b}"], id=b, type="button") for b in _BUTTONS)
    buttons += tag("button", label["prompter-mirror"], id="mirror", type="button", aria_pressed="false")
    pace = tag("output", "", id="pace", data_words=label["prompter-pace"])
    keys = tag("p", label["prompter-keys"], class_="keys")
    body = (
        f'<header class="desk">{tag("h1", lesson.title)}{buttons}{pace}{keys}</header>'
        f'<main data-wpm="{script.wpm}">{_text(lesson, script)}</main>'
    )
    return whole(language=script.language, title=lesson.title, name="prompter", body=body)


def _text(lesson: Lesson, script: Script) -> str:
    parts: list[str] = []
    seen = 0
    steps = {step.number: step for step in lesson.steps}
    chapters = {chapter.start_s: chapter.title for chapter in script.chapters}
    pauses = {shot.end_s for shot in script.shots if shot.pause}
    shots = iter(script.shots)
    shot = next(shots)
    for line in script.lines:
        while line.start_s >= shot.end_s:
            if shot.end_s in pauses:
                parts.append(tag("div", lesson.labels["prompter-pause"], class_="pause"))
            shot = next(shots)
        if line.start_s in chapters:
            parts.append(tag("h2", chapters[line.start_s]))
        if line.step != seen and line.step in steps:
            parts.append(_seen(lesson, steps[line.step]))
        seen = line.step or seen
        start, end = f"{line.start_s:.3f}", f"{line.end_s:.3f}"
        parts.append(tag("p", line.text, data_start=start, data_end=end))
        if line is script.lines[0]:
            parts.append(cover(lesson.finished))
    return "".join(parts)


def _seen(lesson: Lesson, step: Step) -> str:
    """Show the number of a step and what is in view, small, before it is said."""
    name = tag("b", lesson.labels["shot-step"].replace("{n}", str(step.number)))
    pictures = (*step.pictures[:_PICTURES], *([step.closeup] if step.closeup else []))
    return f'<div class="see">{name}{"".join(step_svg(picture) for picture in pictures)}</div>'
