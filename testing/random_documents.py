"""Random documents made from the schema itself, so that a new field is tried from its first day."""

from __future__ import annotations

import random
import types
import typing
from typing import Any

import msgspec

from pegwright.pattern import Pattern, PatternStep, read_document
from pegwright.pattern.document import SEEN_IF_ANY, TINT
from pegwright.pattern.moves import ADDRESS, END, HOLDER, LETTER, MIRROR, VISIBLE

WORDS = (
    "ebb",
    "slack water",
    "three",
    "3",
    "-1",
    "none",
    "true",
    "1e5",
    "rows",
    "pegs 2",
    "a, b",
    "a: b",
    "A=B",
    "",
)
SIGNS = "aZé ß9 .,:;=|#\"'\\-{}[]\n\t\r\u2028\u00a0\u202e\x00\x1b字🐟"
BY_FORM = {
    ADDRESS: ("A1", "B13", "ZZ99999", "C2"),
    END: ("end", "tail-2"),
    HOLDER: ("end", "start", "A1", "D40"),
    LETTER: ("A", "Tide", "x9", "none"),
    MIRROR: ("rows", "pegs"),
    TINT: ("#34506b", "#ABCDEF"),
}


def random_pattern(rng: random.Random) -> Pattern:
    """Return a pattern that has a little of everything the schema allows."""
    while True:
        raw = _struct(Pattern, rng, 0)
        found = read_document(raw).pattern
        if found is not None:
            return found


def _struct(struct: type[msgspec.Struct], rng: random.Random, depth: int) -> dict[str, Any]:
    config = struct.__struct_config__
    raw: dict[str, Any] = {config.tag_field: config.tag} if config.tag_field else {}
    for field in msgspec.structs.fields(struct):
        if field.required or rng.random() < 0.5:
            raw[field.encode_name] = _value(field.type, rng, depth + 1)
    return raw


def _value(kind: Any, rng: random.Random, depth: int, metas: tuple[Any, ...] = ()) -> Any:
    origin = typing.get_origin(kind)
    if origin is typing.Annotated:
        inner, *more = typing.get_args(kind)
        return _value(inner, rng, depth, (*metas, *more))
    if origin in (types.UnionType, typing.Union):
        return _option(kind, rng, depth, metas)
    if origin is typing.Literal:
        return rng.choice(typing.get_args(kind))
    if origin is tuple:
        return _list(typing.get_args(kind)[0], rng, depth, metas)
    if origin is dict:
        key, value = typing.get_args(kind)
        return {_value(key, rng, depth): _value(value, rng, depth) for _ in range(rng.randint(0, 3))}
    if isinstance(kind, type) and issubclass(kind, msgspec.Struct):
        return _struct(kind, rng, depth)
    if kind is bool:
        return rng.random() < 0.5
    return _text(rng, metas) if kind is str else _number(kind, rng, metas)


def _option(kind: Any, rng: random.Random, depth: int, metas: tuple[Any, ...]) -> Any:
    options = list(typing.get_args(kind))
    if kind == PatternStep and depth > 6:
        nested = [
            one
            for one in options
            if any(f.type == tuple[PatternStep, ...] for f in msgspec.structs.fields(one))
        ]
        options = [one for one in options if one not in nested]
    chosen = rng.choice(options)
    return None if chosen is types.NoneType else _value(chosen, rng, depth, metas)


def _list(item: Any, rng: random.Random, depth: int, metas: tuple[Any, ...]) -> list[Any]:
    least = max([0, *(meta.min_length or 0 for meta in metas)])
    return [_value(item, rng, depth) for _ in range(least + rng.randint(0, 3))]


def _text(rng: random.Random, metas: tuple[Any, ...]) -> str:
    forms = [meta.pattern for meta in metas if meta.pattern]
    if forms and forms[0] in BY_FORM:
        return rng.choice(BY_FORM[forms[0]])
    most = min([200, *(meta.max_length for meta in metas if meta.max_length)])
    said = rng.choice(WORDS) if rng.random() < 0.5 else "".join(rng.choices(SIGNS, k=rng.randint(0, 12)))
    visible = any(form in (VISIBLE, SEEN_IF_ANY) for form in forms) or any(meta.min_length for meta in metas)
    return (said + "e" if visible else said)[-most:]


def _number(kind: Any, rng: random.Random, metas: tuple[Any, ...]) -> Any:
    low = max([-50, *(meta.ge for meta in metas if meta.ge is not None)])
    high = min([50, *(meta.le for meta in metas if meta.le is not None)])
    above = max([low, *(meta.gt for meta in metas if meta.gt is not None)])
    if kind is int:
        return rng.randint(int(low), int(max(low, high)))
    return rng.choice((rng.uniform(above, high) or high, float(int(high)), high))
