"""Why a value does not fit its place in a document, in a designer's words and with the choices there are."""

from __future__ import annotations

import difflib
import types
import typing
from typing import Any, NamedTuple

import msgspec

from pegwright.finding import Phrase, phrase
from pegwright.pattern.document import LANGUAGE_TAG, SEEN_IF_ANY, TINT
from pegwright.pattern.moves import ADDRESS, END, HOLDER, LETTER, MIRROR, VISIBLE

SCHEMA_HINT = phrase("see-schema")


class Reason(NamedTuple):
    """What is wrong with a value, and what to do about it."""

    reason: Phrase
    hint: Phrase = SCHEMA_HINT


_FORMS = {
    ADDRESS: ("is-no-address", "write-address"),
    END: ("is-no-end", "write-end"),
    HOLDER: ("is-no-holder", "write-holder"),
    LANGUAGE_TAG: ("is-no-language", "write-language"),
    LETTER: ("is-no-letter", "write-letter"),
    MIRROR: ("is-no-mirror", "write-mirror"),
    TINT: ("is-no-tint", "write-tint"),
    VISIBLE: ("shows-nothing", "write-visible"),
    SEEN_IF_ANY: ("shows-nothing", "write-visible-or-none"),
}
_TYPES: tuple[tuple[Any, str, str], ...] = (
    (str, "a-text", "quote-it"),
    (bool, "true-or-false", "write-true"),
    (int, "a-whole-number", "write-digits"),
    (float, "a-number", "write-digits"),
    (dict, "an-object", "write-braces"),
    (tuple, "a-list", "write-brackets"),
)


def explain_mismatch(raw: Any, kind: Any, error: Exception) -> Reason:
    """Say why `raw` does not fit the type `kind`; msgspec's own words where there are none better."""
    kind, metas = _split_annotations(kind)
    if typing.get_origin(kind) in (types.UnionType, typing.Union):
        options = [option for option in typing.get_args(kind) if option is not types.NoneType]
        structs = [o for o in options if isinstance(o, type) and issubclass(o, msgspec.Struct)]
        if structs:
            return _no_such_struct(raw, structs)
        fitting = [option for option in options if _fits_type(raw, _bare_type(option))]
        if len(fitting or options) == 1:
            return explain_mismatch(raw, (fitting or options)[0], error)
        return Reason(
            phrase(
                "is-not",
                said=_quote_value(raw),
                types=tuple(_type_phrases(_bare_type(o))[0] for o in options),
            )
        )
    if typing.get_origin(kind) is typing.Literal:
        return _not_a_choice(raw, [str(choice) for choice in typing.get_args(kind)])
    if not _fits_type(raw, kind):
        name, hint = _type_phrases(kind)
        return Reason(phrase("is-not", said=_quote_value(raw), types=(name,)), hint)
    for meta in metas:
        found = _bound_violation(raw, meta)
        if found:
            return found
    told = error.__cause__.args[:1] if isinstance(error.__cause__, ValueError) else ()
    if told and isinstance(told[0], Phrase):  # said by the document's own rules
        return Reason(told[0])
    reason = str(error).partition(" - at `")[0]
    return Reason(phrase("as-told", text=reason[:1].lower() + reason[1:]))


def _bound_violation(raw: Any, meta: msgspec.Meta) -> Reason | None:
    if isinstance(raw, int | float):
        low: Any = meta.ge if meta.ge is not None else meta.gt
        high: Any = meta.le  # every bound in a document has two ends
        if (
            (meta.ge is not None and raw < meta.ge)
            or (meta.gt is not None and raw <= meta.gt)
            or (high is not None and raw > high)
        ):
            hint = "take-more-than" if meta.gt is not None else "take-at-least"
            return Reason(phrase("out-of-bounds", said=_quote_value(raw)), phrase(hint, least=low, most=high))
        return None
    size, what = len(raw), "characters" if isinstance(raw, str) else "entries"
    if meta.max_length is not None and size > meta.max_length:
        return Reason(phrase("too-many", size=size, what=what), phrase("at-most", most=meta.max_length))
    if meta.min_length is not None and size < meta.min_length:
        return Reason(phrase("too-few", size=size, what=what), phrase("at-least", least=meta.min_length))
    if isinstance(raw, str) and meta.pattern in _FORMS:
        form, hint = _FORMS[meta.pattern]
        return Reason(phrase(form, said=_quote_value(raw)), phrase(hint))
    return None


def _no_such_struct(raw: Any, structs: list[Any]) -> Reason:
    tag = structs[0].__struct_config__.tag_field
    choices = [str(struct.__struct_config__.tag) for struct in structs]
    if not isinstance(raw, dict):
        wrong = phrase("is-not", said=_quote_value(raw), types=(phrase("an-object"),))
        return Reason(wrong, phrase("write-tag", tag=str(tag), choice=choices[0]))
    if tag not in raw:
        return Reason(phrase("field-missing", field=str(tag)), phrase("one-of", choices=tuple(choices)))
    return _not_a_choice(raw[tag], choices, str(tag))


def _not_a_choice(raw: Any, choices: list[str], field: str = "") -> Reason:
    near = difflib.get_close_matches(raw[:40], choices, 1) if isinstance(raw, str) else []
    said, all_of_them = _quote_value(raw), tuple(choices)
    return Reason(
        phrase("no-choice-for", said=said, field=field) if field else phrase("no-choice", said=said),
        phrase("choices-near", near=near[0], choices=all_of_them)
        if near
        else phrase("choices", choices=all_of_them),
    )


def _split_annotations(kind: Any) -> tuple[Any, list[Any]]:
    metas: list[Any] = []
    while typing.get_origin(kind) is typing.Annotated:
        kind, *more = typing.get_args(kind)
        metas += more
    return kind, metas


def _bare_type(kind: Any) -> Any:
    kind = _split_annotations(kind)[0]
    return typing.get_origin(kind) or kind


def _fits_type(raw: Any, kind: Any) -> bool:
    kind = typing.get_origin(kind) or kind
    if isinstance(raw, bool):
        return kind is bool
    if isinstance(kind, type) and issubclass(kind, msgspec.Struct):
        return isinstance(raw, dict | list)
    if kind is tuple:
        return isinstance(raw, list)
    return isinstance(raw, (int, float) if kind is float else kind)


def _type_phrases(kind: Any) -> tuple[Phrase, Phrase]:
    kind = typing.get_origin(kind) or kind
    if isinstance(kind, type) and issubclass(kind, msgspec.Struct):
        kind = dict
    known = ((phrase(name), phrase(hint)) for each, name, hint in _TYPES if each is kind)
    return next(known, (phrase("as-told", text=str(kind)), SCHEMA_HINT))


def _quote_value(raw: Any) -> Phrase | str:
    if isinstance(raw, dict | list):
        return phrase("an-object" if isinstance(raw, dict) else "a-list")
    if raw is None or isinstance(raw, bool):
        return {None: "null", True: "true", False: "false"}[raw]
    if isinstance(raw, int) and abs(raw) >= 10**40:
        return phrase("great-number")
    text = repr(raw)
    return text if len(text) <= 60 else text[:57] + "…"
