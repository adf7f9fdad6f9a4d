"""What may stand in a field of the document, as its schema says: the text is written and read by that."""

from __future__ import annotations

import types
import typing
from functools import cache
from typing import Any, NamedTuple

import msgspec

from pegwright.pattern import PatternStep

LONG = 60
"""A text that may be longer than so many characters has a line of its own."""


class Kind(NamedTuple):
    """The choices there are for a value: records, a list or a table of another kind, a text, other words."""

    structs: tuple[type[msgspec.Struct], ...] = ()
    items: Any = None
    values: Any = None
    steps: bool = False
    text: bool = False
    long: bool = False
    others: bool = False


class FieldKind(NamedTuple):
    """A field as it is written, and the type of its value."""

    name: str
    type: Any


@cache
def kind_of(annotation: Any) -> Kind:
    """Return the choices that a type leaves."""
    found = Kind()
    for option in _options(annotation):
        bare, long = _bare(option)
        origin = typing.get_origin(bare)
        if isinstance(bare, type) and issubclass(bare, msgspec.Struct):
            found = found._replace(structs=(*found.structs, bare))
        elif origin is tuple:
            item = typing.get_args(bare)[0]
            found = found._replace(items=item, steps=item == PatternStep)
        elif origin is dict:
            found = found._replace(values=typing.get_args(bare)[1])
        elif bare is str or origin is typing.Literal:
            found = found._replace(text=True, long=found.long or long)
        else:
            found = found._replace(others=True)
    return found


@cache
def fields_of(struct: type[msgspec.Struct]) -> dict[str, FieldKind]:
    """Return the fields of a record as they are written."""
    return {f.encode_name: FieldKind(f.encode_name, f.type) for f in msgspec.structs.fields(struct)}


def tag_of(struct: type[msgspec.Struct]) -> tuple[str, str]:
    """Return the field that says which of several records it is, and what it says; empty where none does."""
    config = struct.__struct_config__
    return (str(config.tag_field), str(config.tag)) if config.tag_field else ("", "")


def struct_of(raw: Any, structs: tuple[type[msgspec.Struct], ...]) -> type[msgspec.Struct] | None:
    """Return the record that a value means to be."""
    for struct in structs:
        field, tag = tag_of(struct)
        if not field or (isinstance(raw, dict) and raw.get(field) == tag):
            return struct
    return None


def _options(annotation: Any) -> tuple[Any, ...]:
    while typing.get_origin(annotation) is typing.Annotated and _is_union(typing.get_args(annotation)[0]):
        annotation = typing.get_args(annotation)[0]
    if not _is_union(annotation):
        return (annotation,)
    inner = (_options(one) for one in typing.get_args(annotation) if one is not types.NoneType)
    return tuple(option for options in inner for option in options)


def _is_union(annotation: Any) -> bool:
    return typing.get_origin(annotation) in (types.UnionType, typing.Union)


def _bare(option: Any) -> tuple[Any, bool]:
    """Strip what is said about a type; and say whether a text of it may be long."""
    most = 0
    while typing.get_origin(option) is typing.Annotated:
        option, *metas = typing.get_args(option)
        most = max([most, *(meta.max_length or 0 for meta in metas if isinstance(meta, msgspec.Meta))])
    return option, most > LONG
