"""What the commands share that find several patterns and write the one the maker takes."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from pegwright.cli.shared import Stop, cannot, reason
from pegwright.finding import Language
from pegwright.pattern import Pattern
from pegwright.text import encode_pattern
from pegwright.workshop import replace_file


def check_choice(*, take: int, most: int, limit: int, seconds: float, out: Path | None, json: bool) -> None:
    """Stop a command that asks for what cannot be: before it looks for anything."""
    if not (1 <= most <= limit and 1 <= take <= most and 0 < seconds <= 86_400):
        bounds = f"most goes from 1 to {limit}, take from 1 to most, seconds from above 0 to 86,400"
        raise Stop(cannot(bounds, json))
    if out is not None and out.exists():
        raise Stop(cannot(f"{out} is there already; choose another name", json))


def write_choice(
    found: Sequence[Pattern], take: int, out: Path | None, *, what: str, json: bool, language: Language
) -> bool:
    """Write the pattern taken, counted from 1, into the new file; say whether there was one to write.

    Stops the command where there are fewer of `what` than that, or the file cannot be written.
    """
    if take > len(found) > 0:
        raise Stop(cannot(f"there are only {len(found)} {what} to take from", json))
    if out is None or not found:
        return False
    try:
        replace_file(out, encode_pattern(found[take - 1], out.name))
    except OSError as error:
        raise Stop(cannot(reason(error, language), json)) from error
    return True
