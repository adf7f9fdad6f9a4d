"""The commands about the document itself: a first pattern to change, and the schema."""

from __future__ import annotations

from pathlib import Path

from pegwright.cli.shared import Json, answer, cannot, load_pattern, reason
from pegwright.cli.terminal import FINE, say, say_json
from pegwright.finding import RefusedError
from pegwright.pattern import pattern_schema
from pegwright.text import encode_pattern
from pegwright.workshop import replace_file, starter_pattern


def new(
    file: Path, *, title: str = "", rows: int = 1, pegs: int = 13, force: bool = False, json: Json = False
) -> int:
    """Write a first pattern to change: a plain chain that holds.

    Parameters
    ----------
    file
        where to write it: as plain text where the name ends with .pegwright, else as JSON.
    title
        the name of the piece; without it, the file's name.
    rows
        rows of the loom.
    pegs
        pegs in a row.
    force
        replace the file if there is one.
    """
    if file.exists() and not force:
        return cannot(f"{file} is there already; give another name, or --force to replace it", json)
    try:
        pattern = starter_pattern(title or file.stem.replace("-", " "), rows=rows, pegs=pegs)
        replace_file(file, encode_pattern(pattern, file.name))
    except (RefusedError, OSError) as error:
        return cannot(reason(error), json)
    if json:
        return answer({"file": str(file), "title": pattern.title})
    say(f"{file}: {pattern.title}, a plain chain of {pegs} bands to begin with, the last of them its end")
    return FINE


def convert_(file: Path, out: Path, *, force: bool = False, json: Json = False) -> int:
    """Write a pattern as plain text or as JSON, whichever the new name asks for.

    Parameters
    ----------
    file
        the pattern, as either.
    out
        where to write it: as plain text where the name ends with .pegwright, else as JSON.
    force
        replace the file if there is one.
    """
    pattern = load_pattern(file, json)
    if out.exists() and not force:
        return cannot(f"{out} is there already; give another name, or --force to replace it", json)
    try:
        replace_file(out, encode_pattern(pattern, out.name))
    except OSError as error:
        return cannot(reason(error), json)
    if json:
        return answer({"file": str(out), "title": pattern.title})
    say(f"{out}: {pattern.title}")
    return FINE


def schema_(*, json: Json = True) -> int:
    """Print the JSON Schema of the pattern document (always JSON)."""
    del json
    say_json(pattern_schema())
    return FINE
