"""The command that reads a maker's words."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any, cast

from rich.table import Table
from rich.text import Text

from pegwright.cli.shared import Json, answer, cannot, reason, refuse
from pegwright.cli.terminal import exit_code, out as screen, progress, say, say_findings
from pegwright.finding import Finding, Language, word_phrase
from pegwright.loom import print_move
from pegwright.pattern import Layout, PatternReading, Repeat, Rows, Use, decode_text
from pegwright.reading import TextReading, read_maker_text
from pegwright.text import encode_pattern
from pegwright.workshop import read_bytes, replace_file, work

_SHOWN_STEPS = 6


def read_(
    file: Path,
    out: Path | None = None,
    *,
    language: Language | None = None,
    loom: str = "",
    force: bool = False,
    json: Json = False,
) -> int:
    """Read what a maker wrote, or a printed lesson, and make the pattern of it.

    Every sentence is shown beside the steps it came to; what the words leave open is asked.

    Parameters
    ----------
    file
        the text to be read, in plain letters.
    out
        where to write the pattern: as plain text where the name ends with .pegwright, else as JSON.
    language
        the language of the text; without it, found out.
    loom
        the loom, where the text does not name it: rows x pegs in a row, as in 3x13.
    force
        replace the file if there is one.
    """
    given = _loom(loom)
    if loom and given is None:
        return cannot(f"{loom!r} is no loom: rows x pegs in a row, as in 3x13", json)
    if out is not None and out.exists() and not force:
        return cannot(f"{out} is there already; give another name, or --force to replace it", json)
    data = read_bytes(file)
    if isinstance(data, PatternReading):
        return refuse(data.findings, json)
    text = decode_text(data)
    if isinstance(text, Finding):
        return refuse((text,), json)
    reading = read_maker_text(text, language, loom=given)
    if reading.pattern is None:
        return refuse(reading.findings, json, cast(Language, reading.language))
    with progress(json) as report:
        made = work(reading.pattern, report)
    findings = (*reading.findings, *made.findings)
    if out is not None:
        try:
            replace_file(out, encode_pattern(reading.pattern, out.name))
        except OSError as error:
            return cannot(reason(error), json)
    facts = {"title": reading.pattern.title, "language": reading.language, "holds": made.holds}
    if json:
        return answer({**facts, "file": str(out) if out else None, **_values(reading)}, findings)
    return _show(reading, findings, made.holds, out)


def _loom(text: str) -> Layout | None:
    said = re.fullmatch(r"\s*(\d{1,3})\s*[x×]\s*(\d{1,4})\s*", text)
    rows, pegs = (int(said[1]), int(said[2])) if said else (0, 0)
    return Rows(rows=rows, pegs=pegs) if 1 <= rows <= 700 and pegs else None


def _values(reading: TextReading) -> dict[str, Any]:
    return {
        "sentences": [
            {"line": one.line, "text": one.text, "use": one.use, "steps": _lines(one.steps)}
            for one in reading.sentences
        ],
        "blanks": [
            {"key": one.key, "question": word_phrase(one.question), "line": one.line, "choices": one.choices}
            for one in reading.blanks
        ],
    }


def _lines(steps: tuple[Any, ...]) -> list[str]:
    """Return steps in one line each; a repeat by what is repeated."""
    found: list[str] = []
    for step in steps:
        match step:
            case Repeat():
                found += [f"{step.times} times: {line}" for line in _lines(step.steps)]
            case Use():
                found.append(f"use {step.name}")
            case _:
                found.append(print_move(step))
    return found


def _show(reading: TextReading, findings: tuple[Finding, ...], holds: bool, out: Path | None) -> int:
    """Show text and steps side by side."""
    say(reading.pattern.title if reading.pattern else "", style="bold")
    table = Table(box=None, pad_edge=False)
    for name, ratio in (("line", None), ("text", 1), ("steps", 1)):
        table.add_column(name, justify="right" if ratio is None else "left", ratio=ratio)
    for one in reading.sentences:
        lines = _lines(one.steps)
        if len(lines) > _SHOWN_STEPS:
            lines = [*lines[: _SHOWN_STEPS - 1], f"… {len(lines) - _SHOWN_STEPS + 1} more"]
        shown = "\n".join(lines) or {"head": "about the piece", "aside": "–", "unread": "?"}.get(one.use, "")
        table.add_row(str(one.line), Text(one.text), Text(shown))
    screen.print(table)
    say("it holds" if holds else "it does not hold")
    if out is not None:
        say(f"{out}: {reading.pattern.title if reading.pattern else ''}")
    say_findings(findings)
    return exit_code(findings)
