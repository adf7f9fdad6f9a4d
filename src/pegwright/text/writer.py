"""Write a pattern as the maker's text: the head, then one line a move.

What the text says follows the schema of the document, so that a new field has its line from the first day. A
move is a line of the loom's notation; what that leaves out of it stands indented below, field by field.
"""

from __future__ import annotations

import json
from itertools import chain
from pathlib import PurePath
from typing import Any

import msgspec

from pegwright.loom import print_move
from pegwright.pattern import Move, Pattern, PatternStep, write_pattern
from pegwright.text.kinds import Kind, fields_of, kind_of, struct_of, tag_of
from pegwright.text.moves import fields_of_line
from pegwright.text.words import NONE, quote, write_word

SUFFIX = ".pegwright"
"""What the name of such a text ends with."""
INDENT = "  "
ENTRIES = {
    "band": ("bands", "name", ()),
    "colour": ("colours", "letter", ("name", "hex")),
    "motif": ("motifs", "name", ()),
}
"""Lists of the document whose entries have a word of their own: the list, the label, what follows it."""
LABELS = {"repeat": ("repeat", "times"), "motif": ("use", "name")}
"""Steps that are no moves: their word in the text, and the field that follows it."""


def write_pattern_text(pattern: Pattern) -> str:
    """Return the text of a pattern; reading it gives the same pattern again."""
    raw = msgspec.json.decode(msgspec.json.encode(pattern))
    words = {listed: (word, label, more) for word, (listed, label, more) in ENTRIES.items()}
    head, entries, steps = [f"pegwright {raw.pop('pegwright')}"], [], []
    for field in fields_of(Pattern).values():
        if field.name not in raw:
            continue
        value, kind = raw[field.name], kind_of(field.type)
        if field.name in words and value:
            struct = kind_of(kind.items).structs[0]
            blocks = [_entry(struct, one, *words[field.name]) for one in value]
            entries += (
                [line for one in blocks for line in ("", *one)]
                if field.name == "motifs"
                else ["", *chain.from_iterable(blocks)]
            )
        elif field.name == "steps":
            steps = ["", *_field(field.name, value, kind)]
        else:
            head += _field(field.name, value, kind)
    return "\n".join([*head, *entries, *steps]) + "\n"


def encode_pattern(pattern: Pattern, name: str) -> bytes:
    """Return what a file of that name holds: the text if it ends with `.pegwright`, else the document."""
    if PurePath(name).suffix.lower() == SUFFIX:
        return write_pattern_text(pattern).encode()
    return write_pattern(pattern)


def _entry(
    struct: type[msgspec.Struct], raw: dict[str, Any], word: str, label: str, more: tuple[str, ...]
) -> list[str]:
    """Write `word LABEL: value, value, field value` and what belongs below it."""
    fields = fields_of(struct)
    left = dict(raw)
    head = word
    if label in left:
        head += " " + write_word(left.pop(label), kind_of(fields[label].type))
    parts = []
    for name in more:
        if name not in left:
            break
        said = write_word(left.pop(name), kind_of(fields[name].type))
        parts.append(quote(raw[name]) if said.split(" ")[0] in fields else said)
    inline, below = _record(struct, left)
    line = ", ".join([*parts, *inline])
    return [f"{head}: {line}" if line else f"{head}:", *below]


def _record(struct: type[msgspec.Struct], raw: dict[str, Any]) -> tuple[list[str], list[str]]:
    """Return the fields of a record that stand on its line, and the lines below it."""
    inline: list[str] = []
    below: list[str] = []
    steps: list[str] = []
    tag, _ = tag_of(struct)
    if tag in raw:
        inline.append(f"{tag} {raw[tag]}")
    for field in fields_of(struct).values():
        if field.name not in raw:
            continue
        value, kind = raw[field.name], kind_of(field.type)
        short = None if kind.steps or (kind.long and isinstance(value, str)) else _short(value, kind)
        if short is not None:
            inline.append(f"{field.name} {short}")
        elif kind.steps and field.name == "steps":
            steps = [INDENT + line for line in _steps(value)]
        else:
            below += [INDENT + line for line in _field(field.name, value, kind)]
    return inline, below + steps


def _short(value: Any, kind: Kind) -> str | None:
    """Return a value as it stands among others on a line, or None where it needs lines of its own."""
    if isinstance(value, dict | list) and not value:
        return None if isinstance(value, dict) and kind.structs else NONE
    if isinstance(value, list):
        inner = kind_of(kind.items)
        if any(isinstance(one, dict | list) for one in value):
            return None
        return " ".join(write_word(one, inner, spaces=False) for one in value)
    if isinstance(value, dict):
        if kind.structs or any(isinstance(one, dict | list) for one in value.values()):
            return None
        inner = kind_of(kind.values)
        if inner.long:
            return None
        key = Kind(text=True)
        return " ".join(
            f"{write_word(k, key, spaces=False)}={write_word(v, inner, spaces=False)}"
            for k, v in value.items()
        )
    return write_word(value, kind)


def _line_head(name: Any, kind: Kind) -> str:
    """Return a word that a line may begin with: bare, a # would make a remark of the line."""
    word = write_word(name, kind)
    return quote(word) if word.startswith("#") else word


def _field(name: str, value: Any, kind: Kind) -> list[str]:
    """Write `name: value`, with as many lines below it as it takes."""
    if isinstance(value, str):
        return _text(name, value, kind)
    if kind.steps:
        return [f"{name}:", *(INDENT + line for line in _steps(value))]
    short = _short(value, kind)
    if short is not None:
        return [f"{name}: {short}"]
    struct = struct_of(value, kind.structs) if isinstance(value, dict) else None
    if struct is not None and value:
        inline, below = _record(struct, value)
        return [f"{name}: {', '.join(inline)}".rstrip(), *below]
    if isinstance(value, list) and all(isinstance(one, dict) for one in value):
        lines = [f"{name}:"]
        inner = kind_of(kind.items)
        for one in value:
            struct = struct_of(one, inner.structs)
            if struct is None or not one:
                lines.append(f"{INDENT}- {json.dumps(one)}")
                continue
            inline, below = _record(struct, one)
            lines.append(f"{INDENT}- {', '.join(inline)}".rstrip())
            lines += [INDENT + line for line in below]
        return lines
    if isinstance(value, dict) and not kind.structs:
        inner = kind_of(kind.values)
        key = Kind(text=True)
        below = [line for k, v in value.items() for line in _field(_line_head(k, key), v, inner)]
        return [f"{name}:", *(INDENT + line for line in below)]
    return [f"{name}: {json.dumps(value)}"]


def _text(name: str, value: str, kind: Kind) -> list[str]:
    """Write a text as it stands, line below line, or quoted where something in it does not show."""
    lines = value.split("\n")
    if any(not line.isprintable() or line != line.rstrip() for line in lines):
        return [f"{name}: {quote(value)}"]
    if len(lines) > 1:
        return [f"{name}:", *(f"{INDENT}| {line}".rstrip() for line in lines)]
    plain = value and value[0] not in ' "[{|' and value != NONE and not kind.others
    return [f"{name}: {value if plain else quote(value)}"]


def _steps(steps: list[dict[str, Any]]) -> list[str]:
    return [line for step in steps for line in _step(step)]


def _step(raw: dict[str, Any]) -> list[str]:
    structs = kind_of(PatternStep).structs
    struct = next(one for one in structs if tag_of(one)[1] == raw["do"])
    left = {name: value for name, value in raw.items() if name != "do"}
    if raw["do"] in LABELS:
        word, label = LABELS[raw["do"]]
        return _entry(struct, left, word, label, ())
    line, said = _move_line(raw, struct)
    if line is None:
        return _entry(struct, left, f"do {raw['do']}", "", ())
    kinds = fields_of(struct)
    rest = [name for name in left if said.get(name, _Missing) != left[name]]
    below = [
        line for name in kinds if name in rest for line in _field(name, left[name], kind_of(kinds[name].type))
    ]
    return [line, *(INDENT + one for one in below)]


_Missing = object()


def _move_line(raw: dict[str, Any], struct: type[msgspec.Struct]) -> tuple[str | None, dict[str, Any]]:
    """Return the line of a move and what reading it gives; no line where it would say too much."""
    move: Move = msgspec.convert(raw, struct)  # type: ignore[assignment]
    try:
        line = print_move(move)
        said = fields_of_line(line)
    except ValueError:
        return None, {}
    return (line, said) if said["do"] == raw["do"] and said.keys() <= raw.keys() else (None, {})
