"""Why a value does not fit its place in a document, in a designer's words and with the choices there are."""

from __future__ import annotations

import difflib
import types
import typing
from typing import Any, NamedTuple

import msgspec

from pegwright.pattern.document import SEEN_IF_ANY, TINT
from pegwright.pattern.moves import ADDRESS, END, HOLDER, LETTER, MIRROR, VISIBLE

SCHEMA_HINT = "see the schema: pegwright schema"


class Reason(NamedTuple):
    """What is wrong with a value, and what to do about it."""

    reason: str
    hint: str = SCHEMA_HINT


_FORMS = {
    ADDRESS: ("is not a peg address", "give the row in capitals, then the number from the maker, as in B3"),
    END: ("is not the name of an end", "small letters, digits and hyphens, as in end or tail-1"),
    HOLDER: ("is neither a peg nor an end", "name a peg, as in B3, or an end, as in start or end"),
    LETTER: ("is not a colour letter", "one to six letters or digits, beginning with a letter, as in A"),
    MIRROR: ("is not a way to mirror", "choose rows or pegs"),
    TINT: ("is not a tint", "a # and six of 0-9 and a-f: red, green, blue, as in #34506b"),
    VISIBLE: ("shows nothing", "give at least one character that can be seen"),
    SEEN_IF_ANY: ("shows nothing", "leave it out, or give a character that can be seen"),
}
_TYPES: tuple[tuple[Any, str, str], ...] = (
    (str, "a text", "put it in double quotes"),
    (bool, "true or false", "write true or false, without quotes"),
    (int, "a whole number", "write it in digits, without quotes"),
    (float, "a number", "write it in digits, without quotes"),
    (dict, "an object in braces", 'write it as {"…": …}'),
    (tuple, "a list in brackets", "write it as […], also where it holds one thing only"),
)


def why(raw: Any, kind: Any, error: Exception) -> Reason:
    """Say why `raw` does not fit the type `kind`; msgspec's own words where there are none better."""
    kind, metas = _taken_apart(kind)
    if typing.get_origin(kind) in (types.UnionType, typing.Union):
        options = [option for option in typing.get_args(kind) if option is not types.NoneType]
        structs = [o for o in options if isinstance(o, type) and issubclass(o, msgspec.Struct)]
        if structs:
            return _no_choice(raw, structs)
        fitting = [option for option in options if _is(raw, _bare(option))]
        if len(fitting or options) == 1:
            return why(raw, (fitting or options)[0], error)
        return Reason(f"{_said(raw)} is not {' or '.join(_named(_bare(o))[0] for o in options)}")
    if typing.get_origin(kind) is typing.Literal:
        return _not_among(raw, [str(choice) for choice in typing.get_args(kind)])
    if not _is(raw, kind):
        name, hint = _named(kind)
        return Reason(f"{_said(raw)} is not {name}", hint)
    for meta in metas:
        found = _outside(raw, meta)
        if found:
            return found
    reason = str(error).partition(" - at `")[0]
    return Reason(reason[:1].lower() + reason[1:])


def _outside(raw: Any, meta: msgspec.Meta) -> Reason | None:
    if isinstance(raw, int | float):
        low, high = meta.ge if meta.ge is not None else meta.gt, meta.le
        if (
            (meta.ge is not None and raw < meta.ge)
            or (meta.gt is not None and raw <= meta.gt)
            or (high is not None and raw > high)
        ):
            least = f"more than {low:,}" if meta.gt is not None else f"at least {low:,}"
            return Reason(f"{_said(raw)} is out of bounds", f"take {least} and at most {high:,}")
        return None
    size, what = len(raw), "characters" if isinstance(raw, str) else "entries"
    if meta.max_length is not None and size > meta.max_length:
        return Reason(f"{size:,} {what} are too many", f"at most {meta.max_length:,} fit here")
    if meta.min_length is not None and size < meta.min_length:
        return Reason(f"{size:,} {what} are too few", f"at least {meta.min_length:,} are needed here")
    if isinstance(raw, str) and meta.pattern in _FORMS:
        form, hint = _FORMS[meta.pattern]
        return Reason(f"{_said(raw)} {form}", hint)
    return None


def _no_choice(raw: Any, structs: list[Any]) -> Reason:
    tag = structs[0].__struct_config__.tag_field
    choices = [str(struct.__struct_config__.tag) for struct in structs]
    if not isinstance(raw, dict):
        return Reason(
            f"{_said(raw)} is not an object in braces", f'write it as {{"{tag}": "{choices[0]}", …}}'
        )
    if tag not in raw:
        return Reason(f"the field {tag} is missing", f"it is one of {', '.join(choices)}")
    return _not_among(raw[tag], choices, f" for {tag}")


def _not_among(raw: Any, choices: list[str], what: str = "") -> Reason:
    near = difflib.get_close_matches(raw[:40], choices, 1) if isinstance(raw, str) else []
    perhaps = f"perhaps {near[0]}; " if near else ""
    return Reason(f"{_said(raw)} is not a choice{what}", f"{perhaps}there are {', '.join(choices)}")


def _taken_apart(kind: Any) -> tuple[Any, list[Any]]:
    metas: list[Any] = []
    while typing.get_origin(kind) is typing.Annotated:
        kind, *more = typing.get_args(kind)
        metas += more
    return kind, metas


def _bare(kind: Any) -> Any:
    kind = _taken_apart(kind)[0]
    return typing.get_origin(kind) or kind


def _is(raw: Any, kind: Any) -> bool:
    kind = typing.get_origin(kind) or kind
    if isinstance(raw, bool):
        return kind is bool
    if isinstance(kind, type) and issubclass(kind, msgspec.Struct):
        return isinstance(raw, dict | list)
    if kind is tuple:
        return isinstance(raw, list)
    return isinstance(raw, (int, float) if kind is float else kind)


def _named(kind: Any) -> tuple[str, str]:
    kind = typing.get_origin(kind) or kind
    if isinstance(kind, type) and issubclass(kind, msgspec.Struct):
        kind = dict
    return next(((name, hint) for each, name, hint in _TYPES if each is kind), (str(kind), SCHEMA_HINT))


def _said(raw: Any) -> str:
    if isinstance(raw, dict | list):
        return "an object in braces" if isinstance(raw, dict) else "a list in brackets"
    if raw is None or isinstance(raw, bool):
        return {None: "null", True: "true", False: "false"}[raw]
    if isinstance(raw, int) and abs(raw) >= 10**40:
        return "so great a number"
    text = repr(raw)
    return text if len(text) <= 60 else text[:57] + "…"
