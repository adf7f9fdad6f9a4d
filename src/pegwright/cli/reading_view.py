"""What was read, side by side on a terminal: the words, the steps, and the loom after them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from rich.table import Table
from rich.text import Text

from pegwright.finding import Finding, Language, phrase, word_finding, word_phrase
from pegwright.loom import AppliedMove, History, print_move
from pegwright.pattern import Pattern, Repeat, Use, is_address, named_pegs, parse_address, row_letter
from pegwright.reading import SentenceReading, TextReading, count_new_moves

MOST_STEPS = 6
MOST_ACROSS, MOST_DOWN = 7, 6
"""Pegs along a row, and rows, in the picture of one sentence."""
MOST_PICTURES = 200
"""Sentences whose loom is pictured; a text of more is read for its words."""

_USES = {"head": "read-head", "aside": "read-aside", "unread": "read-unread"}
"""What stands for a sentence that makes nothing."""


def side_by_side(reading: TextReading, history: History, language: Language) -> Table:
    """Return a table with a row a sentence: its line, its words with what was found in them, steps, loom."""
    table = Table(box=None, pad_edge=False, expand=True, show_edge=False)
    names = [_say(name, language) for name in ("read-line", "read-words", "read-steps", "read-loom")]
    table.add_column(names[0], justify="right")
    table.add_column(names[1], ratio=5)
    table.add_column(names[2], ratio=4)
    table.add_column(names[3], no_wrap=True)
    found: dict[int, list[Finding]] = {}
    for one in reading.findings:
        found.setdefault(one.place.line or 0, []).append(one)
    done = 0
    for number, sentence in enumerate(reading.sentences):
        count = sum(map(count_new_moves, sentence.steps))
        moves = history.moves[done : done + count]
        done += count
        words = Text(sentence.text)
        last = number + 1 == len(reading.sentences) or reading.sentences[number + 1].line != sentence.line
        for one in found.pop(sentence.line, ()) if last else ():
            words.append(f"\n{word_finding(one, language).message}", style="yellow")
        picture = loom_picture(reading.pattern, history, moves) if number < MOST_PICTURES else Text()
        table.add_row(str(sentence.line), words, Text(_steps_or_use(sentence, language)), picture)
    return table


def step_lines(steps: Sequence[Any], language: Language = "en") -> list[str]:
    """Return steps in one line each; a repeat by what is repeated."""
    found: list[str] = []
    for step in steps:
        match step:
            case Repeat():
                again = _say("read-times", language, n=str(step.times))
                found += [f"{again} {line}" for line in step_lines(step.steps, language)]
            case Use():
                found.append(f"use {step.name}")
            case _:
                found.append(print_move(step))
    return found


def _steps_or_use(one: SentenceReading, language: Language) -> str:
    lines = step_lines(one.steps, language)
    if len(lines) > MOST_STEPS:
        more = _say("read-more", language, n=len(lines) - MOST_STEPS + 1)
        lines = [*lines[: MOST_STEPS - 1], more]
    return "\n".join(lines) or _say(_USES.get(one.use, "read-aside"), language)


def loom_picture(pattern: Pattern | None, history: History, moves: Sequence[AppliedMove]) -> Text:
    """Return the pegs round some moves with the number of loops on each after them, those touched in bold.

    A peg without loops is a dot. The colour is that of the top loop's band.
    """
    touched = {peg for one in moves for peg in named_pegs(one.move) if is_address(peg)}
    if not touched or pattern is None:
        return Text()
    after = moves[-1].after
    tints = {colour.letter: colour.hex for colour in pattern.colours}
    places = [parse_address(peg) for peg in touched]
    rows = range(min(one.row for one in places), max(one.row for one in places) + 1)[:MOST_DOWN]
    first = min(one.number for one in places)
    last = max(one.number for one in places)
    shown = range(first, min(last, first + MOST_ACROSS - 1) + 1)
    more = " …" if last > shown[-1] else ""
    picture = Text()
    picture.append("  " + "".join(f"{number:>3}" for number in shown) + more, style="dim")
    for row in rows:
        picture.append(f"\n{row_letter(row):<2}", style="dim")
        for number in shown:
            peg = f"{row_letter(row)}{number}"
            loops = after.stack(peg)
            style = "bold" if peg in touched else ""
            if loops:
                tint = tints.get(history.colours[loops[-1].band - 1], "")
                style = f"{style} {tint}".strip()
            picture.append(f"{len(loops) or '·':>3}", style=style)
    return picture


def _say(name: str, language: Language, **facts: Any) -> str:
    return word_phrase(phrase(name, **facts), language)
