"""Read a pattern from its text: a pattern, or everything that is wrong with the text."""

from __future__ import annotations

import json
import re
import types
import typing
from collections.abc import Iterator
from typing import Any, NamedTuple

import msgspec

from pegwright.finding import Finding, Location, Phrase, finding, phrase
from pegwright.pattern.document import VERSION, Pattern
from pegwright.pattern.migrations import migrate
from pegwright.pattern.reasons import SCHEMA_HINT, Reason, explain_mismatch

MAX_BYTES = 8_000_000
MAX_FINDINGS = 200


class PatternReading(NamedTuple):
    """The pattern, or None, and the findings."""

    pattern: Pattern | None
    findings: tuple[Finding, ...]


def decode_text(data: bytes) -> str | Finding:
    """Return the text that bytes hold in UTF-8, or the finding that they are too many or no text."""
    if len(data) > MAX_BYTES:
        return finding("too-large", limit_mb=MAX_BYTES // 1_000_000)
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        return finding("not-text", _locate_byte(data, error.start))


def read_pattern(data: bytes) -> PatternReading:
    """Read a pattern from UTF-8 JSON, migrating older versions. Never raises on bad input."""
    text = decode_text(data)
    if isinstance(text, Finding):
        return PatternReading(None, (text,))
    try:
        raw = msgspec.json.decode(text)
    except (msgspec.DecodeError, RecursionError) as error:
        return PatternReading(None, (not_json_finding(text, error),))
    if not isinstance(raw, dict):
        return PatternReading(
            None, (finding("not-a-pattern", reason=phrase("pattern-braces"), hint=SCHEMA_HINT),)
        )
    twice = _find_duplicate_fields(text)
    return PatternReading(None, twice) if twice else read_document(raw)


def read_document(raw: dict[str, Any]) -> PatternReading:
    """Read a pattern from the document's value, of any known version. Never raises on bad input."""
    newest = migrate(raw)
    if newest is None:
        version = _shorten(raw["pegwright"]) if "pegwright" in raw else "missing"
        return PatternReading(
            None, (finding("unknown-version", Location(path="/pegwright"), version=version, newest=VERSION),)
        )
    try:
        return PatternReading(msgspec.convert(newest, Pattern), ())
    except (msgspec.ValidationError, RecursionError):
        found = [
            finding("not-a-pattern", Location(path=path), reason=reason, hint=hint)
            for path, (reason, hint) in _list_faults(newest, Pattern, "")[:MAX_FINDINGS]
        ]
        return PatternReading(None, tuple(found))


def _find_duplicate_fields(text: str) -> tuple[Finding, ...]:
    """Return a finding for each object of a text that gives a field twice: one of the two would be lost."""
    twice: list[tuple[dict[str, Any], str]] = []

    def build_object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        made = dict(pairs)
        if len(made) < len(pairs):
            seen: set[str] = set()
            for key, _ in pairs:
                if key in seen:
                    twice.append((made, key))
                    break
                seen.add(key)
        return made

    try:
        whole = json.loads(text, object_pairs_hook=build_object)
    except (ValueError, RecursionError):  # read once already; Python's own reader has narrower bounds
        return ()
    wanted = {id(made): key for made, key in twice[:MAX_FINDINGS]}
    return tuple(
        finding(
            "not-a-pattern",
            Location(path=f"{path}/{_escape(key)}"),
            reason=phrase("given-twice", field=_shorten(key)),
            hint=phrase("take-one-out"),
        )
        for path, key in _paths(whole, wanted)
    )


def _paths(whole: Any, wanted: dict[int, str]) -> Iterator[tuple[str, str]]:
    """Yield the path of each wanted object with its key, without recursion: a text may nest deeply."""
    waiting = [("", whole)] if wanted else []
    while waiting:
        path, value = waiting.pop()
        if id(value) in wanted:
            yield path, wanted[id(value)]
        if isinstance(value, dict):
            waiting += [(f"{path}/{_escape(k)}", v) for k, v in value.items() if isinstance(v, dict | list)]
        elif isinstance(value, list):
            waiting += [(f"{path}/{i}", v) for i, v in enumerate(value) if isinstance(v, dict | list)]


def not_json_finding(text: str, error: Exception) -> Finding:
    """Return the finding that says where and why a text is no JSON."""
    if isinstance(error, RecursionError):
        return finding("not-json", Location(), reason=phrase("nested-deeply"))
    reason, _, tail = str(error).partition(" (byte ")
    data = text.encode()
    position = int(tail.rstrip(")")) if tail.rstrip(")").isdigit() else len(data)
    return finding("not-json", _locate_byte(data, position), reason=_fault_phrase(reason))


def _fault_phrase(reason: str) -> Phrase:
    """Name the fault that the reader found by its sort; `signs` are those that it expected."""
    told = reason.removeprefix("JSON is malformed: ").removeprefix("Input data was ")
    signs = tuple(re.findall(r"'(.)'", told))
    sort = re.sub(r"[^a-z]+", "-", told.casefold()).strip("-")
    if signs:
        sort = "expected"
    elif "escape" in sort or "surrogate" in sort:
        sort = "invalid-escape"
    return phrase("json-reason", kind=sort, signs=signs, text=reason)


def _locate_byte(data: bytes, position: int) -> Location:
    """Return the line and column of a byte of a text."""
    before = data[:position]
    line = before.count(b"\n") + 1
    column = len(before.rsplit(b"\n", 1)[-1].decode("utf-8", "replace")) + 1
    return Location(line=line, column=column)


def _shorten(value: object) -> str:
    text = repr(value)
    return text if len(text) <= 60 else text[:57] + "…"


# --- all problems, not the first ---------------------------------------------------------------------


def list_problems(raw: Any, kind: Any, path: str) -> list[tuple[str, Phrase]]:
    """List (JSON Pointer, reason) for each smallest part of `raw` that does not fit the type `kind`."""
    return [(where, found.reason) for where, found in _list_faults(raw, kind, path)]


def _list_faults(raw: Any, kind: Any, path: str) -> list[tuple[str, Reason]]:
    """msgspec stops at the first fault; a part whose children are all sound carries its own fault itself."""
    try:
        msgspec.convert(raw, kind)
    except RecursionError:
        return [(path, Reason(phrase("nested-deeply")))]
    except msgspec.ValidationError as error:
        if path.count("/") > 60:
            return [(path, explain_mismatch(raw, kind, error))]
        inner: list[tuple[str, Reason]] = []
        for key, value, child in _children(raw, kind):
            if len(inner) >= MAX_FINDINGS:
                break
            inner += _list_faults(value, child, f"{path}/{_escape(str(key))}")
        own = [(where, Reason(reason)) for where, reason in _unknown_or_missing(raw, kind, path)]
        return own + inner or [
            (path, explain_mismatch(raw, _struct_for(raw, _strip_annotations(kind)) or kind, error))
        ]
    return []


def _children(raw: Any, kind: Any) -> Iterator[tuple[Any, Any, Any]]:
    kind = _strip_annotations(kind)
    struct = _struct_for(raw, kind)
    if struct is not None and isinstance(raw, dict):
        for f in msgspec.structs.fields(struct):
            if f.encode_name in raw:
                yield f.encode_name, raw[f.encode_name], f.type
    elif typing.get_origin(kind) is tuple and isinstance(raw, list):
        for i, value in enumerate(raw):
            yield i, value, typing.get_args(kind)[0]
    elif typing.get_origin(kind) is dict and isinstance(raw, dict):
        for key, value in raw.items():
            yield key, value, typing.get_args(kind)[1]


def _unknown_or_missing(raw: Any, kind: Any, path: str) -> list[tuple[str, Phrase]]:
    struct = _struct_for(raw, _strip_annotations(kind))
    if struct is None or not isinstance(raw, dict):
        return []
    fields = {f.encode_name: f for f in msgspec.structs.fields(struct)}
    tag = struct.__struct_config__.tag_field
    known = tuple(fields)
    found = [
        (f"{path}/{_escape(key)}", phrase("no-such-field", field=_shorten(key), known=known))
        for key in raw
        if key not in fields and key != tag
    ]
    found += [
        (path, phrase("field-missing", field=name))
        for name, f in fields.items()
        if f.required and name not in raw
    ]
    return found[:MAX_FINDINGS]


def _strip_annotations(kind: Any) -> Any:
    while typing.get_origin(kind) is typing.Annotated:
        kind = typing.get_args(kind)[0]
    return kind


def _struct_for(raw: Any, kind: Any) -> Any:
    """Pick the struct type that `raw` means to be, by its tag where the type is a union."""
    union = typing.get_origin(kind) in (types.UnionType, typing.Union)
    options = typing.get_args(kind) if union else (kind,)
    structs = [
        o for o in map(_strip_annotations, options) if isinstance(o, type) and issubclass(o, msgspec.Struct)
    ]
    if len(structs) == 1 and structs[0].__struct_config__.tag_field is None:
        return structs[0]
    for struct in structs:
        config = struct.__struct_config__
        if isinstance(raw, dict) and raw.get(config.tag_field) == config.tag:
            return struct
    return None


def _escape(key: str) -> str:
    return key[:60].replace("~", "~0").replace("/", "~1")
