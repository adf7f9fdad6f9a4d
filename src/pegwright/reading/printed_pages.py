"""The numbered steps of a printed lesson, however its words were copied: typed, from a page, from a script.

A PDF gives its words in its own order: a number may stand alone in a line, the labels of pictures and the
running heads of the pages come between. So a step is a number right before one of the phrasebook's sentences.
The numbers must follow one another: what is missing between them is known to be missing.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator
from typing import NamedTuple

from pegwright.reading.phrase_reader import PhraseReader, spread_contractions
from pegwright.reading.printed_moves import MOVES
from pegwright.reading.printed_rounds import ROUNDS

ASIDES = ("step-prepare", "step-prepare-bands", "step-release", "wear-fit", "use-safe")
OPENINGS = (*MOVES, *ROUNDS, *ASIDES)
"""The messages that a printed step can begin with."""
LONGEST_OPENING = 2_000
"""Characters of a step that are searched for its first message."""
MOST_LOOKED_AT = 400
"""Steps that are looked at to find out the language."""
_LINE = re.compile(r"(?m)^\s*(?:[^\w\s]\s*)?([1-9]\d{0,4})[.):]?[^\S\n]+\S")
_ROW = re.compile(r"(?m)^\s*\d{1,3}:\d\d\s+(\d{1,5}|[–-])\s+")
"""A row of the script: the time, the step or a dash, what is said."""

_BROKEN = re.compile(r"(?<=\w)-[^\S\n]*\n\s*(?=\w)|(?<=\d)-\s+(?=[^\W\d_])")
"""A line broken at a hyphen; some readers of PDF give the break as a space."""


class PrintedStep(NamedTuple):
    """A numbered step of the text: its line, its number, and its whole text."""

    line: int
    number: int
    text: str


class PrintedSteps(NamedTuple):
    """The steps of a text; `known` of them begin as printed. `missing` are the numbers left out, in runs.

    A run is its first and last number, and the line of the step after it.
    """

    steps: tuple[PrintedStep, ...]
    known: int
    missing: tuple[tuple[int, int, int], ...] = ()


class _Start(NamedTuple):
    """Where a step may start: its number, where that stands, and where its words begin."""

    number: int
    at: int
    begin: int


def printed_steps(text: str, words: PhraseReader) -> PrintedSteps:
    """Return the numbered steps of a text, each with its words up to the next."""
    text = _without_page_marks(text, words)
    rows = list(_ROW.finditer(text))
    said = [row for row in rows if row[1].isdecimal()]
    if len(said) > 2 and len({row[1] for row in said}) > 1:
        steps = _rows_by_step(text, rows)
        begins = (_begins(one.text, words) for one in steps[:MOST_LOOKED_AT])
        return PrintedSteps(tuple(steps), sum(begins), _missing(steps))
    known = _rising(
        [
            start
            for start in _starts(text, words)
            if _begins(text[start.begin : start.begin + LONGEST_OPENING], words)
        ]
    )
    starts = _fill_gaps(text, known)
    ends = [*(start.at for start in starts), len(text)][1:]
    steps = [
        PrintedStep(_line_of(text, start.at), start.number, _flow(text[start.begin : end]))
        for start, end in zip(starts, ends, strict=True)
    ]
    return PrintedSteps(tuple(steps), len(known), _missing(steps))


def running_text(text: str, words: PhraseReader) -> str:
    """Return the words of a lesson alone: no heads of pages, no times of a script, no broken lines."""
    return spread_contractions(_flow(_ROW.sub("", _without_page_marks(text, words))), words.language)


def _without_page_marks(text: str, words: PhraseReader) -> str:
    """Return a text without the running heads and feet of pages; its lines stay where they are."""
    marks = ("label-page", "heading-key")
    columns = " ".join(words.plain(f"column-{name}") for name in ("at", "step", "said"))
    lines = text.splitlines()
    for at, line in enumerate(lines):
        bare = " ".join(line.split())
        if bare == columns or (len(bare) < 300 and any(_is_page_mark(bare, name, words) for name in marks)):
            lines[at] = ""
    return "\n".join(lines)


def _is_page_mark(line: str, name: str, words: PhraseReader) -> bool:
    """Say whether a line ends with the number of its page or begins with the key to the bands."""
    found = next(words.all(line, name), None)
    return found is not None and (found.end == len(line) if name == "label-page" else found.start == 0)


def _rows_by_step(text: str, rows: list[re.Match[str]]) -> list[PrintedStep]:
    """Return the steps of a script: the rows of one number, one after another."""
    steps: list[PrintedStep] = []
    ends = [row.start() for row in rows[1:]] + [len(text)]
    before = ""
    for row, end in zip(rows, ends, strict=True):
        words = _flow(text[row.end() : end])
        if row[1].isdecimal():
            if row[1] == before and steps:
                steps[-1] = steps[-1]._replace(text=f"{steps[-1].text} {words}")
            else:
                steps.append(PrintedStep(_line_of(text, row.start(1)), int(row[1]), words))
        before = row[1]
    return steps


def _starts(text: str, words: PhraseReader) -> Iterator[_Start]:
    """Yield every number that a first word of the phrasebook's steps follows."""
    form = rf"(?<![\w.,:/–-])([1-9]\d{{0,4}})[.):]?\s+(?={words.first_words(OPENINGS)})"
    for match in re.finditer(form, text, re.IGNORECASE):
        yield _Start(int(match[1]), match.start(), match.end())


def _begins(text: str, words: PhraseReader) -> bool:
    """Say whether a text begins as a printed step does."""
    opening = spread_contractions(_flow(text[:LONGEST_OPENING]), words.language)
    return words.begins(opening, OPENINGS) is not None


def _rising(starts: list[_Start]) -> list[_Start]:
    """Return the longest run of starts whose numbers rise; others are numbers of something else."""
    tails: list[int] = []
    last: list[int] = []
    before: list[int] = []
    for at, start in enumerate(starts):
        place = bisect_left(tails, start.number)
        tails[place : place + 1] = [start.number]
        last[place : place + 1] = [at]
        before.append(last[place - 1] if place else -1)
    found: list[_Start] = []
    at = last[-1] if last else -1
    while at >= 0:
        found.append(starts[at])
        at = before[at]
    return found[::-1]


def _fill_gaps(text: str, known: list[_Start]) -> list[_Start]:
    """Return the starts with numbered lines between and after them whose words are not the phrasebook's."""
    found: list[_Start] = []
    bounds = [*known, _Start(10**6, len(text), len(text))]
    number, at = 0, 0
    for start in bounds:
        if start.number > number + 1:
            for line in _LINE.finditer(text, at, start.at):
                if int(line[1]) == number + 1 < start.number:
                    number += 1
                    found.append(_Start(number, line.start(1), line.end() - 1))
        if start.at < len(text):
            found.append(start)
        number, at = start.number, start.begin
    return found


def _missing(steps: list[PrintedStep]) -> tuple[tuple[int, int, int], ...]:
    found = []
    number = 0
    for step in steps:
        if step.number > number + 1:
            found.append((number + 1, step.number - 1, step.line))
        number = step.number
    return tuple(found)


def _line_of(text: str, at: int) -> int:
    return text.count("\n", 0, at) + 1


def _flow(text: str) -> str:
    """Return a text in one line; a word broken at its hyphen is whole again."""
    return " ".join(_BROKEN.sub("-", text).split())
