"""How the commands speak: findings, tables and progress on a terminal, or one JSON value."""

from __future__ import annotations

import sys
import time
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

import msgspec
from rich.console import Console
from rich.text import Text

from pegwright.finding import Finding, Language, phrase, worst_severity
from pegwright.workshop import ReportProgress as Report

if TYPE_CHECKING:
    from rich.progress import Progress

FINE, FOUND, FAILED = 0, 1, 2
_STYLE = {"error": "bold red", "warning": "yellow", "note": "cyan"}
_SILENCE_S = 1.0


class _Output(Console):
    def on_broken_pipe(self) -> None:
        """Leave it to the command line, which ends with 2; rich would end with 1."""
        raise  # noqa: PLE0704 - called while it is handled


out = _Output(highlight=False, soft_wrap=True)
err = Console(stderr=True, highlight=False, soft_wrap=True)


def exit_code(findings: Iterable[Finding]) -> int:
    """Return 1 where there is an error or a warning, else 0: a note is no fault."""
    return FOUND if worst_severity(list(findings)) in ("error", "warning") else FINE


def say(text: str = "", style: str = "") -> None:
    """Print a line; user text in it stays literal."""
    out.print(Text(_harmless(text), style=style))


def say_findings(findings: Iterable[Finding], language: Language = "en") -> None:
    """Print every finding with its place and cure, in a language."""
    findings = tuple(findings)
    if not findings:
        return
    from pegwright.finding import word_finding, word_location, word_phrase  # noqa: PLC0415 - slow to load

    for found in (word_finding(each, language) for each in findings):
        head = Text(f"{found.severity}", style=_STYLE[found.severity])
        head.append(f"[{found.code}] ", style="dim")
        head.append(_harmless(found.message), style="")
        out.print(head)
        lines = [(phrase("place-at", place=word_location(found.place, language)), "dim")]
        lines.append((phrase("hint-is", hint=found.hint), ""))
        if found.fix:
            lines.append((phrase("fix-is", label=found.fix.label), "green"))
        for line, style in lines:
            out.print(Text(_harmless(f"  {word_phrase(line, language)}"), style=style))


def say_json(value: Any) -> None:
    """Print one JSON value, two spaces deep."""
    sys.stdout.write(msgspec.json.format(msgspec.json.encode(value), indent=2).decode() + "\n")


def _harmless(text: str) -> str:
    """Make control and direction characters visible, so that a title cannot command the terminal."""
    if text.isprintable():  # which no direction character is
        return text
    return "".join(
        c if c == "\n" or (c.isprintable() and c not in _DIRECTIONS) else f"\\u{ord(c):04x}" for c in text
    )


_DIRECTIONS = frozenset("\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")


@contextmanager
def progress(quiet: bool) -> Iterator[Report]:
    """Show a bar with what is being done once the work has taken a second, on a terminal only."""
    began = time.monotonic()
    bar: Progress | None = None

    def report(what: str, done: int, total: int) -> None:
        nonlocal bar
        if quiet or not err.is_terminal or (bar is None and time.monotonic() - began <= _SILENCE_S):
            return
        bar = bar or _start_bar()
        bar.update(bar.task_ids[0], description=what, completed=done, total=max(total, 1))

    try:
        yield report
    finally:
        if bar is not None:
            bar.stop()


def _start_bar() -> Progress:
    from rich.progress import BarColumn, Progress, TextColumn, TimeElapsedColumn  # noqa: PLC0415 - slow to load

    bar = Progress(
        TextColumn("{task.description}"), BarColumn(), TimeElapsedColumn(), console=err, transient=True
    )
    bar.add_task("", total=1)
    bar.start()
    return bar
