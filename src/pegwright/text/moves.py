"""A move's line as the fields of the document's step."""

from __future__ import annotations

from typing import Any

import msgspec

from pegwright.loom import parse_move


def fields_of_line(line: str) -> dict[str, Any]:
    """Return what a move's line says, without what would go without saying.

    Raises:
        ValueError: the line is no move.
    """
    move = parse_move(line)
    said: dict[str, Any] = msgspec.json.decode(msgspec.json.encode(move))
    plain = {f.encode_name: f.default for f in msgspec.structs.fields(type(move))}
    return {name: value for name, value in said.items() if name == "do" or value != plain.get(name, ...)}
