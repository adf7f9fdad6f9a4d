"""What the commands share: opening and working a pattern, and how a command ends early."""

from __future__ import annotations

import math
from collections.abc import Sequence
from decimal import Decimal
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

from cyclopts import Parameter, Token
from rich.text import Text

from pegwright.cli.terminal import FAILED, FINE, err, exit_code, progress, say_findings, say_json
from pegwright.finding import Finding, Language, RefusedError
from pegwright.pattern import Pattern
from pegwright.workshop import open_pattern

if TYPE_CHECKING:
    from rich.table import Table

    from pegwright.workshop import Work


def _read_share(_: type, tokens: Sequence[Token]) -> float:
    """Read a share, as `10%` or `0.1`.

    Raises:
        ValueError: it is neither, or more than the whole.
    """
    text = tokens[0].value.strip()
    try:
        share = float(Decimal(text[:-1]) / 100) if text.endswith("%") else float(text)
    except (ArithmeticError, ValueError):
        share = math.nan
    if not 0 <= share <= 1:
        raise ValueError(f'"{text}" is no share from 0% to 100%: a tenth is 10%, or 0.1')
    return share


Share = Annotated[float, Parameter(converter=_read_share)]
Json = Annotated[bool, Parameter(name="--json", negative="", help="print one JSON value instead of text.")]


class Stop(Exception):  # noqa: N818 - not an error: it carries an exit code
    """Ends a command early with its exit code."""

    def __init__(self, code: int) -> None:
        self.code = code


def load_pattern(file: Path, json: bool, language: Language = "en") -> Pattern:
    """Return the pattern in a file, or stop with what is wrong with it."""
    reading = open_pattern(file)
    if reading.pattern is None:
        raise Stop(refuse(reading.findings, json, language))
    return reading.pattern


def load_work(file: Path, json: bool, language: Language = "en") -> Work:
    """Return the pattern in a file, worked."""
    from pegwright.workshop import work  # noqa: PLC0415 - what works nothing starts without the line

    pattern = load_pattern(file, json, language)
    with progress(json) as report:
        return work(pattern, report)


def answer(
    value: dict[str, Any],
    findings: tuple[Finding, ...] = (),
    code: int | None = None,
    language: Language = "en",
) -> int:
    """Print the one JSON value of a command and return its exit code, by the gravest finding if not given.

    `ok` is true exactly where the exit code is 0.
    """
    from pegwright.finding import word_finding  # noqa: PLC0415 - slow to load

    code = exit_code(findings) if code is None else code
    say_json({"ok": code == FINE, **value, "findings": [word_finding(each, language) for each in findings]})
    return code


def refuse(findings: tuple[Finding, ...], json: bool, language: Language = "en") -> int:
    """Say why there was nothing to work on: the document could not be read."""
    if json:
        return answer({}, findings, FAILED, language)
    say_findings(findings, language)
    return FAILED


def cannot(reason: str, json: bool, hint: str = "") -> int:
    """Say why a command could not run, where the fault is in no document."""
    if json:
        return answer({"reason": reason}, (), FAILED)
    err.print(Text(f"{reason}\n{hint}".rstrip()))
    return FAILED


def reason(error: Exception, language: Language = "en") -> str:
    """Return what a refusal or an error of the system says, in a few words."""
    if isinstance(error, RefusedError):
        from pegwright.finding import word_phrase  # noqa: PLC0415 - slow to load

        return word_phrase(error.reason, language)
    return (error.strerror if isinstance(error, OSError) else None) or str(error) or type(error).__name__


def table(rows: list[dict[str, str]]) -> Table:
    """Lay rows out in columns; numbers stand to the right."""
    from rich.table import Table  # noqa: PLC0415 - slow to load

    laid = Table(box=None, pad_edge=False)
    for name in rows[0] if rows else ():
        laid.add_column(name, justify="right" if rows[0][name].replace(".", "").isdigit() else "left")
    for row in rows:
        laid.add_row(*(Text(value) for value in row.values()))
    return laid
