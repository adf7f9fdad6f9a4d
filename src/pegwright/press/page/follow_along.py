"""The follow-along page: one HTML file for a phone that works offline, one step at a time."""

from __future__ import annotations

import base64
import functools
import math
from collections.abc import Iterable
from itertools import chain

from pegwright.lesson import (
    BandMark,
    BarMark,
    Block,
    Checkpoint,
    CommonMistake,
    FinishedSection,
    Lesson,
    LessonStep,
    Phase,
    Picture,
    Swatch,
)
from pegwright.press.page.html import html_document, tag
from pegwright.press.page.labels import page_labels
from pegwright.press.page.questions import QuestionTable
from pegwright.press.portrait.pixels import portrait_png
from pegwright.press.svg.pictures import step_svg, swatch_svg

_COVER_PX = 680
_COVER_AREA_PX = 60_000
"""The finished piece is seen on a phone; it must not weigh more than the steps, nor hold the page up."""


def page_html(lesson: Lesson, other: Lesson | None = None) -> str:
    """Return the page of a lesson. With the lesson for the `other` hand, it has a switch between the two.

    Raises:
        ValueError: the two lessons are in different languages.
    """
    if other is not None and other.language != lesson.language:
        raise ValueError(f"one page, one language; not {lesson.language} and {other.language}")
    label = page_labels(lesson.phrasebook)
    swap = label.left if lesson.hand == "right" else label.right
    asked = QuestionTable()
    editions = [_edition(each, asked) for each in (lesson, *([other] if other else []))]
    body = (
        f"<header>{tag('h1', lesson.title)}"
        f'<details class="desk" hidden>{tag("summary", label.tools)}<div class="tools">'
        f"{tag('button', label.first, id='first', type='button')}"
        f'<label>{tag("span", label.goto)} <select id="goto"></select></label>'
        f"{tag('button', swap, id='left', type='button', aria_pressed='false')}"
        f"{tag('button', label.large, id='large', type='button', aria_pressed='false')}"
        + tag(
            "button",
            label.read,
            id="read",
            type="button",
            aria_pressed="false",
            data_read=label.read,
            data_stop=label.stop,
        )
        + "</div></details></header>"
        f'<main data-mark="{_escape(lesson.mark)}">{"".join(editions)}'
        + tag("p", label.keys, class_="keys", hidden="hidden")
        + "</main>"
        + tag("div", asked.written, id="asked", hidden="hidden")
        + f'<nav class="bar" aria-label="{_escape(label.moving)}" hidden>'
        f"{tag('button', label.back, id='back', type='button')}"
        f"{tag('output', '', id='progress', data_words=label.progress)}"
        f"{tag('button', label.next, id='next', type='button', class_='go')}</nav>"
    )
    return html_document(language=lesson.language, title=lesson.title, name="page", body=body)


def _edition(lesson: Lesson, asked: QuestionTable) -> str:
    key = {swatch.letter: swatch for swatch in lesson.key}
    leaves = [_front_section(lesson)]
    for phase in lesson.phases:
        for step in phase.steps:
            leaves.append(_step(lesson, phase, step, key, asked))
            if step.checkpoint:
                leaves.append(_check(lesson, phase, step.checkpoint))
        if phase.check:
            leaves.append(_check(lesson, phase, phase.check))
    leaves.append(_back_section(lesson))
    return f'<div class="edition" data-hand="{lesson.hand}">{"".join(leaves)}</div>'


def _section(name: str, content: str) -> str:
    return f'<section class="leaf" data-name="{_escape(name)}">{content}</section>'


def _heading(text: str, *, before: str = "") -> str:
    return f'<h2 tabindex="-1">{before}{tag("span", text)}</h2>'


def _front_section(lesson: Lesson) -> str:
    rows = "".join(
        f"<tr><td>{swatch_svg(_row_swatch(row))}{tag('b', row.letter)} {tag('span', row.name)}</td>"
        f"{tag('td', row.purpose)}{tag('td', str(row.count))}</tr>"
        for row in lesson.supplies.bands
    ).replace(' role="img"', ' aria-hidden="true"')
    head = "".join(tag("th", text, scope="col") for text in lesson.supplies.columns[:3])
    total = (
        f'<tr class="sum">{tag("td", lesson.supplies.total)}<td></td>'
        f"{tag('td', str(lesson.supplies.total_count))}</tr>"
    )
    return _section(
        lesson.supplies.heading,
        tag("p", lesson.byline, class_="byline")
        + "".join(tag("p", text) for text in lesson.notes.split("\n") if text.strip())
        + _finished_piece(lesson.finished)
        + _heading(lesson.supplies.heading)
        + f"<table><thead><tr>{head}</tr></thead><tbody>{rows}{total}</tbody></table>"
        + _list(lesson.supplies.things)
        + _block(lesson.tools)
        + tag("p", lesson.edition, data_say="")
        + _block(Block(heading=lesson.hold.heading, lines=lesson.hold.lines))
        + _block(lesson.level)
        + _block(lesson.cautions),
    )


def _finished_piece(section: FinishedSection) -> str:
    """Show the finished piece and its size."""
    said = tag("p", section.heading, class_="phase") + "".join(
        tag("p", text, data_say="") for text in section.sentences
    )
    return f"{cover_image(section)}{said}"


@functools.lru_cache(maxsize=4)  # the page and the prompter show the same image
def cover_image(section: FinishedSection) -> str:
    """Return the finished piece as an `<img>`, small enough to send to a phone."""
    if section.portrait is None:
        return ""
    wide, tall = section.portrait.camera("front").size_mm
    width_px = int(min(_COVER_PX, math.sqrt(_COVER_AREA_PX * wide / tall)))
    png = portrait_png(section.portrait, "front", width_px, bare=True, samples=2)
    image = (
        f'<img src="data:image/png;base64,{base64.b64encode(png).decode()}" alt="{_escape(section.text)}" '
        f'width="{width_px}" height="{round(width_px * tall / wide)}">'
    )
    return f'<div class="cover">{image}</div>'


def _step(
    lesson: Lesson, phase: Phase, step: LessonStep, key: dict[str, Swatch], asked: QuestionTable
) -> str:
    label = page_labels(lesson.phrasebook)
    name = lesson.step_label.replace("{n}", str(step.number))
    intro = (
        tag("p", phase.intro, class_="detail", data_say="") if step is phase.steps[0] and phase.intro else ""
    )
    parts = [
        tag("p", phase.heading, class_="phase"),
        _heading(name),
        intro,
        tag("p", step.instruction, class_="words", data_say=""),
        *(tag("p", text, class_="detail", data_say="") for text in step.detail),
        *(tag("p", text, class_="detail") for text in step.legend),
    ]
    for text, title, kind in (
        (step.warning, label.warning, "aside"),
        (step.note, label.note, "aside note"),
    ):
        if text:
            parts.append(f'<p class="{kind}">{tag("b", title + ":")} {tag("span", text, data_say="")}</p>')
    parts += [tag("p", t.warning, class_="aside", data_say="") for t in step.mistakes]
    parts.append(_chips(step, key))
    shown = [_figure(lesson, picture) for picture in step.pictures]
    if step is phase.steps[0] and phase.holding:
        shown.append(_figure(lesson, phase.holding))
    if step.closeup:
        shown.append(_figure(lesson, step.closeup))
    if step.ticks:  # above the pictures, so that a maker who counts sees text and boxes together
        boxes = "".join(
            f'<li><label><input type="checkbox" name="{step.number}-{i}">{tag("span", text)}</label></li>'
            for i, text in enumerate(step.ticks)
        )
        parts.append(f'{tag("h3", label.tick)}<ul class="ticks">{boxes}</ul>')
    if shown:
        parts.append(f'<div class="pictures">{"".join(shown)}</div>')
    parts += [_trouble(lesson, trouble) for trouble in step.mistakes]
    if step.troubleshooting:
        parts.append(_question_section(lesson, asked.fork(step.troubleshooting)))
    return _section(f"{name}: {phase.heading}", "".join(parts))


def _question_section(lesson: Lesson, asked: int) -> str:
    """Leave room for the script's questions; without scripts the usual way back is shown."""
    label = page_labels(lesson.phrasebook)
    again, back = (_escape(text) for text in (label.wrong_again, label.wrong_back))
    return (
        f'<details class="wrong" data-asked="{asked}" data-again="{again}" data-back="{back}">'
        f"{tag('summary', label.wrong_open)}{tag('p', label.wrong_lost)}</details>"
    )


def _trouble(lesson: Lesson, trouble: CommonMistake) -> str:
    """Return a fold-out with what goes wrong, the wrong picture beside the right one, and the way back."""
    label = page_labels(lesson.phrasebook)
    shown = [
        _figure(lesson, picture) for picture in (trouble.wrong_picture, trouble.right_picture) if picture
    ]
    return (
        f'<details class="trouble">{tag("summary", trouble.heading)}'
        f"{tag('p', trouble.slip)}{tag('p', trouble.outcome)}{tag('p', trouble.sign)}"
        + (f'<div class="pictures pair">{"".join(shown)}</div>' if shown else "")
        + (tag("h3", label.way_back) + _list(trouble.way_back) if trouble.way_back else "")
        + "</details>"
    )


def _chips(step: LessonStep, key: dict[str, Swatch]) -> str:
    """Return the names of the highlighted bands."""
    marks = chain.from_iterable(picture.marks for picture in step.pictures)
    letters = dict.fromkeys(m.letter for m in marks if isinstance(m, BandMark | BarMark) and m.highlighted)
    chips = "".join(
        f"<li>{swatch_svg(key[letter])}{tag('b', letter)} {tag('span', key[letter].name)}</li>"
        for letter in letters
        if letter in key
    ).replace(' role="img"', ' aria-hidden="true"')
    return f'<ul class="chips">{chips}</ul>' if chips else ""


def _figure(lesson: Lesson, picture: Picture) -> str:
    what = tag("summary", page_labels(lesson.phrasebook).what)
    caption = f"{tag('span', picture.title)}<details>{what}{tag('p', picture.text)}</details>"
    return f"<figure>{step_svg(picture)}<figcaption>{caption}</figcaption></figure>"


def _check(lesson: Lesson, phase: Phase, check: Checkpoint) -> str:
    lines = "".join(f"<li>{tag('span', text, data_say='')}</li>" for text in check.lines)
    cure = tag("p", check.remedy, class_="detail", data_say="")
    body = f'<div class="look">{_heading(check.heading)}<ul>{lines}</ul>{cure}</div>'
    shown = "".join(_figure(lesson, picture) for picture in check.chart)
    chart = f'{tag("h3", check.chart_heading)}<div class="pictures">{shown}</div>' if shown else ""
    return _section(
        f"{check.heading}: {phase.heading}", tag("p", phase.heading, class_="phase") + body + chart
    )


def _back_section(lesson: Lesson) -> str:
    first = _heading(lesson.glossary.heading) + _list(lesson.glossary.lines)
    table = lesson.sizes
    extension = _block(Block(heading=table.heading, lines=table.lines)) if table else ""
    return _section(
        lesson.glossary.heading,
        first
        + extension
        + _block(lesson.cautions)
        + "".join(tag("p", text, class_="detail") for text in lesson.colophon),
    )


def _block(block: Block) -> str:
    return tag("h3", block.heading) + _list(block.lines)


def _list(lines: Iterable[str]) -> str:
    items = "".join(tag("li", text) for text in lines)
    return f"<ul>{items}</ul>" if items else ""


def _row_swatch(row: object) -> Swatch:
    return Swatch(letter=row.letter, name=row.name, tint=row.tint, hatch=row.hatch)  # type: ignore[attr-defined]


def _escape(text: str) -> str:
    return tag("i", text)[3:-4]
