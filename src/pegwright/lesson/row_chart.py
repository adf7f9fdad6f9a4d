"""The chart of a mat: the whole picture cell by cell, and every row in numbers, to be ticked off.

A mat of thousands of bands would fill a handout of a hundred pages with pictures of one and the same step;
whoever has understood one row needs the chart.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import groupby

import msgspec

from pegwright.lesson.handout.front import cautions_block
from pegwright.lesson.handout.sheet import Block
from pegwright.lesson.say.phrasebook import Phrasebook, single_line
from pegwright.lesson.scene.palette import luminance

__all__ = ["ChartColour", "RowChart", "plan_row_chart"]


_EVEN = 0.18
"""The relative luminance on which black and white have like contrast: WCAG 2.2, (L + 0.05)² = 0.0525."""


class ChartColour(msgspec.Struct, frozen=True):
    """A colour of a chart: its letter, name and tint, whether letters on it are dark, and how many bands."""

    letter: str
    name: str
    tint: str
    dark_ink: bool
    count: str


class RowChart(msgspec.Struct, frozen=True, kw_only=True):
    """A chart, ready for a painter. `letters` has a letter for each cell, the top row first.

    `cell_mm` is how wide and high a cell lies. `rows` are the sentences of the rows; rows that are alike
    and follow each other are one.
    """

    language: str
    title: str
    about: str
    colours_heading: str
    colours: tuple[ChartColour, ...]
    working: Block
    chart_heading: str
    letters: tuple[tuple[str, ...], ...]
    cell_mm: tuple[float, float]
    rows_heading: str
    rows: tuple[str, ...]
    cautions: Block


def plan_row_chart(
    title: str,
    letters: Sequence[Sequence[str]],
    colours: Mapping[str, tuple[str, str]],
    cell_mm: tuple[float, float],
    language: str = "en",
) -> RowChart:
    """Plan the chart of a mat; `colours` has name and tint (#rrggbb) by letter.

    Raises:
        ValueError: the language is unknown.
    """
    book = Phrasebook(language)
    across, down = len(letters[0]), len(letters)
    needed = Counter(letter for row in letters for letter in row)
    return RowChart(
        language=language,
        title=single_line(title),
        about=book.say(
            "chart-about",
            across=across,
            down=down,
            bands=across * down,
            width=book.length(across * cell_mm[0]),
            height=book.length(down * cell_mm[1]),
        ),
        colours_heading=book.say("chart-colours"),
        colours=tuple(
            ChartColour(letter, single_line(name), tint, luminance(tint) > _EVEN, str(needed[letter]))
            for letter, (name, tint) in colours.items()
            if needed[letter]
        ),
        working=Block(
            heading=book.say("chart-working"),
            lines=(
                book.say("chart-loom", pegs=across + 1),
                book.say("chart-lay", last=f"A{across + 1}"),
                book.say("chart-lift"),
                book.say("chart-front"),
                book.say("chart-end"),
            ),
        ),
        chart_heading=book.say("chart-heading"),
        letters=tuple(tuple(row) for row in letters),
        cell_mm=cell_mm,
        rows_heading=book.say("chart-rows"),
        rows=tuple(_row_sentences(book, letters)),
        cautions=cautions_block(book, False),
    )


def _row_sentences(book: Phrasebook, letters: Sequence[Sequence[str]]) -> list[str]:
    told = []
    number = 1
    for row, alike in groupby(tuple(row) for row in letters):
        last = number + len(list(alike)) - 1
        runs = ", ".join(f"{len(list(run))} {letter}" for letter, run in groupby(row))
        name = "chart-row" if last == number else "chart-row-span"
        told.append(book.say(name, first=number, last=last, runs=runs))
        number = last + 1
    return told
