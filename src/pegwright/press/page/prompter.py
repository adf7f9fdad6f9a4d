"""The prompter: the script in large letters, scrolling at the pace of speech."""

from __future__ import annotations

from pegwright.lesson import Lesson, LessonStep, Script
from pegwright.press.page.follow_along import cover_image
from pegwright.press.page.html import html_document, tag
from pegwright.press.page.labels import prompter_labels
from pegwright.press.svg.pictures import step_svg

_BUTTONS = ("again", "slower", "faster", "smaller", "larger")
_PICTURES = 3
"""So many pictures of a step are shown; of a long loom the other parts look alike."""


def prompter_html(lesson: Lesson, script: Script) -> str:
    """Return the prompter as one HTML file; every sentence carries its time in seconds."""
    label = prompter_labels(lesson.phrasebook)
    start, stop = label.start, label.stop
    buttons = tag("button", start, id="start", type="button", data_start=start, data_stop=stop)
    buttons += "".join(tag("button", getattr(label, name), id=name, type="button") for name in _BUTTONS)
    buttons += tag("button", label.mirror, id="mirror", type="button", aria_pressed="false")
    pace = tag("output", "", id="pace", data_words=label.pace)
    keys = tag("p", label.keys, class_="keys")
    body = (
        f'<header class="desk">{tag("h1", lesson.title)}{buttons}{pace}{keys}</header>'
        f'<main data-wpm="{script.wpm}">{_text(lesson, script, label.pause)}</main>'
    )
    return html_document(language=script.language, title=lesson.title, name="prompter", body=body)


def _text(lesson: Lesson, script: Script, pause: str) -> str:
    parts: list[str] = []
    number = 0
    steps = {step.number: step for step in lesson.steps}
    chapters = {chapter.start_s: chapter.title for chapter in script.chapters}
    pauses = {shot.end_s for shot in script.shots if shot.pause}
    shots = iter(script.shots)
    shot = next(shots)
    for line in script.lines:
        while line.start_s >= shot.end_s:
            if shot.end_s in pauses:
                parts.append(tag("div", pause, class_="pause"))
            shot = next(shots)
        if line.start_s in chapters:
            parts.append(tag("h2", chapters[line.start_s]))
        if line.step != number and line.step in steps:
            parts.append(_step_pictures(lesson, steps[line.step]))
        number = line.step or number
        start, end = f"{line.start_s:.3f}", f"{line.end_s:.3f}"
        parts.append(tag("p", line.text, data_start=start, data_end=end))
        if line is script.lines[0]:
            parts.append(cover_image(lesson.finished))
    return "".join(parts)


def _step_pictures(lesson: Lesson, step: LessonStep) -> str:
    """Return a step's number and small pictures, shown before its sentences."""
    name = tag("b", lesson.step_label.replace("{n}", str(step.number)))
    pictures = (*step.pictures[:_PICTURES], *([step.closeup] if step.closeup else []))
    return f'<div class="see">{name}{"".join(step_svg(picture) for picture in pictures)}</div>'
