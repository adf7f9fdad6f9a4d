"""The commands about the document itself: a first pattern to change, and the schema."""

from __future__ import annotations

from pathlib import Path

from pegwright.cli.shared import Json, answer, cannot, reason
from pegwright.cli.terminal import FINE, say, say_json
from pegwright.pattern import schema, write
from pegwright.workshop import starter, write_whole


def new(
    file: Path, *, title: str = "", rows: int = 1, pegs: int = 13, force: bool = False, json: Json = False
) -> int:
    """Write a first pattern to change: a plain chain that holds.

    Parameters
    ----------
    file
        where to write it.
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
        pattern = starter(title or file.stem.replace("-", " "), rows=rows, pegs=pegs)
        write_whole(file, write(pattern))
    except (ValueError, OSError) as error:
        return cannot(reason(error), json)
    if json:
        return answer({"file": str(file), "title": pattern.title})
    say(f"{file}: {pattern.title}, a plain chain of {pegs - 1} bands to begin with")
    return FINE


def schema_(*, json: Json = True) -> int:
    """Print the JSON Schema of the pattern document (always JSON)."""
    del json
    say_json(schema())
    return FINE
