"""The command that reads a maker's words."""

from __future__ import annotations

import re
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Annotated, Any, cast

from cyclopts import Parameter

from pegwright.cli.reading_view import side_by_side, step_lines
from pegwright.cli.shared import Json, answer as say_answer, cannot, reason, refuse
from pegwright.cli.terminal import exit_code, out as screen, progress, say, say_findings
from pegwright.finding import Finding, Language, phrase, word_phrase
from pegwright.pattern import Layout, PatternReading, Rows, decode_text
from pegwright.reading import Answers, Blank, TextReading, read_maker_text
from pegwright.text import encode_pattern
from pegwright.workshop import Work, read_bytes, replace_file, work

MOST_QUESTIONS = 60
_GIVEN = re.compile(r"\s*([a-z-]+)(?:@(\d{1,6}))?\s*=\s*(\S.*?)\s*")
_LEAVE = "-"


def read_(
    file: Path,
    out: Path | None = None,
    *,
    language: Language | None = None,
    loom: str = "",
    answer: Annotated[list[str] | None, Parameter(negative="")] = None,
    ask: bool | None = None,
    force: bool = False,
    json: Json = False,
) -> int:
    """Read what a maker wrote, or a printed lesson, and make the pattern of it.

    Every sentence is shown beside its steps and the loom after them. At a terminal, what the words leave open
    is asked, and the likely answer offered.

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
    answer
        an answer to what the text leaves open, as colour=red; colour@4=red answers for line 4 alone. May be
        given several times.
    ask
        ask what is left open, and read the answers line by line; done by itself at a terminal.
    force
        replace the file if there is one.
    """
    layout = _loom(loom)
    if loom and layout is None:
        return cannot(f"{loom!r} is no loom: rows x pegs in a row, as in 3x13", json)
    told = [_GIVEN.fullmatch(one) for one in answer or ()]
    if None in told:
        return cannot("an answer is written as what=answer, as in colour=red or turns@4=3", json)
    if out is not None and out.exists() and not force:
        return cannot(f"{out} is there already; give another name, or --force to replace it", json)
    data = read_bytes(file)
    if isinstance(data, PatternReading):
        return refuse(data.findings, json)
    text = decode_text(data)
    if isinstance(text, Finding):
        return refuse((text,), json)

    def read(answers: Answers) -> TextReading:
        return read_maker_text(text, language, loom=layout, answers=answers)

    answers: dict[tuple[str, int], str] = {}
    reading = read(answers)
    spoken = cast(Language, reading.language)
    if reading.pattern is None:
        return refuse(reading.findings, json, spoken)
    wanted = [(one[1], int(one[2] or 0), one[3]) for one in told if one]
    reading, unused = _give(read, reading, answers, wanted)
    if unused:
        asked = ", ".join(sorted({f"{one.key}@{one.line}" for one in reading.blanks})) or "nothing"
        return cannot(f"the text does not ask for {', '.join(unused)}; it leaves open: {asked}", json)
    if ask or (ask is None and not json and sys.stdin.isatty() and screen.is_terminal):
        reading = _ask(read, reading, answers, spoken, quiet=json)
    if reading.pattern is None:
        return refuse(reading.findings, json, spoken)
    with progress(json) as report:
        made = work(reading.pattern, report)
    findings = (*reading.findings, *made.findings)
    if out is not None:
        try:
            replace_file(out, encode_pattern(reading.pattern, out.name))
        except OSError as error:
            return cannot(reason(error, spoken), json)
    facts = {"title": reading.pattern.title, "language": reading.language, "holds": made.holds}
    if json:
        value = {**facts, "file": str(out) if out else None, **_values(reading)}
        return say_answer(value, findings, language=spoken)
    return _show(reading, made, out)


def _give(
    read: Callable[[Answers], TextReading],
    reading: TextReading,
    answers: dict[tuple[str, int], str],
    wanted: list[tuple[str, int, str]],
) -> tuple[TextReading, list[str]]:
    """Answer the blanks that the command line names, and what they lead to; return what fits no blank too."""
    used: set[int] = set()
    for _ in range(MOST_QUESTIONS):
        found = False
        for blank in reading.blanks:
            for at, (key, line, said) in enumerate(wanted):
                new = [one for one in blank.sentences if (blank.key, one) not in answers]
                if key == blank.key and line in (0, blank.line) and new:
                    answers.update({(key, one): said for one in new})
                    used.add(at)
                    found = True
                    break
        if not found:
            break
        reading = read(answers)
    return reading, [f"{key}={said}" for at, (key, _, said) in enumerate(wanted) if at not in used]


def _ask(
    read: Callable[[Answers], TextReading],
    reading: TextReading,
    answers: dict[tuple[str, int], str],
    language: Language,
    *,
    quiet: bool,
) -> TextReading:
    """Ask one question after another until none is left, or the maker leaves them; return the reading."""
    left: set[tuple[str, tuple[int, ...]]] = set()
    for _ in range(MOST_QUESTIONS):
        blank = next((one for one in reading.blanks if (one.key, one.sentences) not in left), None)
        if blank is None:
            break
        if not quiet:
            _say_question(reading, blank, language)
        said = sys.stdin.readline()
        if not said:  # nobody is there to answer
            break
        said = said.strip()
        if said.isdecimal() and 1 <= int(said[:4]) <= len(blank.choices) and _is_numbered(blank):
            said = blank.choices[int(said[:4]) - 1]
        said = said or (blank.choices[0] if blank.choices else _LEAVE)
        if said == _LEAVE:
            left.add((blank.key, blank.sentences))
            continue
        tried = {**answers, **{(blank.key, one): said for one in blank.sentences}}
        better = read(tried)
        if any((one.key, one.sentences) == (blank.key, blank.sentences) for one in better.blanks):
            if not quiet:
                say(word_phrase(phrase("read-no-answer", said=said), language), style="yellow")
            continue
        answers.update(tried)
        reading = better
    return reading


def _is_numbered(blank: Blank) -> bool:
    """Say whether the choices are counted: where they are numbers themselves, a number is the answer."""
    return not all(choice.isdecimal() for choice in blank.choices)


def _say_question(reading: TextReading, blank: Blank, language: Language) -> None:
    """Say the sentence, the question, and the choices."""
    say()
    for at in blank.sentences[:3]:
        if 0 <= at < len(reading.sentences):
            say(f"{reading.sentences[at].line}: {reading.sentences[at].text}", style="dim")
    say(word_phrase(blank.question, language), style="bold")
    if _is_numbered(blank):
        for number, choice in enumerate(blank.choices, start=1):
            say(f"  {number}) {choice}")
    elif blank.choices:
        say("  " + ", ".join(blank.choices))
    first = blank.choices[0] if blank.choices else ""
    name = "read-choose" if first else "read-write"
    say(word_phrase(phrase(name, **({"first": first} if first else {})), language), style="dim")


def _loom(text: str) -> Layout | None:
    said = re.fullmatch(r"\s*(\d{1,3})\s*[x×]\s*(\d{1,4})\s*", text)
    rows, pegs = (int(said[1]), int(said[2])) if said else (0, 0)
    return Rows(rows=rows, pegs=pegs) if 1 <= rows <= 700 and pegs else None


def _values(reading: TextReading) -> dict[str, Any]:
    return {
        "sentences": [
            {"line": one.line, "text": one.text, "use": one.use, "steps": step_lines(one.steps)}
            for one in reading.sentences
        ],
        "blanks": [
            {
                "key": one.key,
                "question": word_phrase(one.question, cast(Language, reading.language)),
                "line": one.line,
                "choices": one.choices,
            }
            for one in reading.blanks
        ],
    }


def _show(reading: TextReading, made: Work, out: Path | None) -> int:
    """Show words, steps and loom side by side, then whether the piece holds, and what was found."""
    language = cast(Language, reading.language)
    title = reading.pattern.title if reading.pattern else ""
    say(title, style="bold")
    screen.print(side_by_side(reading, made.history, language))
    say()
    say(word_phrase(phrase("read-holds" if made.holds else "read-falls"), language), style="bold")
    if out is not None:
        say(f"{out}: {title}")
    findings = (*reading.findings, *made.findings)
    say_findings(findings, language)
    return exit_code(findings)
