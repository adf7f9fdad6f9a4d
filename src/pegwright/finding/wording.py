"""Findings in words: one Fluent file a language. A code is a message there, and its hint an attribute.

Lower case where the language allows, no full stop, a maker's words. A list is joined with commas, or by `AND`
and `OR`; `HOLDER` names a peg, the hook or a free end; `FIXED` writes so many decimals, `SHORT` as many as it
takes, `PERCENT` a share. An entry is read when it is first needed: most never are.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any, get_args

import msgspec
from babel import Locale
from babel.numbers import format_decimal, format_percent
from fluent.runtime import FluentBundle, FluentResource
from fluent.runtime.resolver import CurrentEnvironment, ResolverEnvironment
from fluent.runtime.types import FluentFloat, FluentInt, FluentType

from pegwright.finding import Fact, Finding, Language, Phrase, Place, Severity, phrase

__all__ = ["LANGUAGES", "Worded", "WordedFix", "where", "word", "worded"]

LANGUAGES: tuple[Language, ...] = get_args(Language)

_FOLDER = Path(__file__).parent / "languages"
_ENTRY = re.compile(r"^(?=[a-z])", re.MULTILINE)
_LONGEST = 2000  # the library takes no longer text for a part of a sentence


class WordedFix(msgspec.Struct, frozen=True):
    """A cure in words: a label and a JSON Patch (RFC 6902) on the document."""

    label: str
    patch: tuple[dict[str, Any], ...]


class Worded(msgspec.Struct, frozen=True, omit_defaults=True):
    """A finding in one language. `facts` are the values that its words were made from."""

    code: str
    severity: Severity
    message: str
    place: Place
    hint: str = ""
    fix: WordedFix | None = None
    facts: dict[str, Fact] = {}


def worded(found: Finding, language: Language = "en") -> Worded:
    """Put a finding in words.

    Raises:
        KeyError: a wording lacks in that language, or a fact that it needs.
    """
    facts = _facts(found.facts, language)
    fix = found.fix
    return Worded(
        code=found.code,
        severity=found.severity,
        message=_say(found.code, facts, language),
        place=found.place,
        hint=_say(found.code, facts, language, "hint"),
        fix=None if fix is None else WordedFix(word(fix.label, language), fix.patch),
        facts=found.facts,
    )


def word(one: Phrase, language: Language = "en") -> str:
    """Put a phrase in words.

    Raises:
        KeyError: as for a finding.
    """
    return _say(one.phrase, _facts(one.facts, language), language)


def where(place: Place, language: Language = "en") -> str:
    """Put a place in words: the line of a text, or the move, peg and band, and the path in the document."""
    if place.line is not None:
        return word(phrase("place-line", line=place.line, column=place.column or 1), language)
    parts: list[Phrase] = []
    if place.step is not None:
        parts.append(phrase("place-step", step=place.step))
    if place.peg is not None:
        parts.append(phrase("place-peg", **_holder(place.peg)))
    if place.band is not None:
        parts.append(phrase("place-band", band=place.band))
    said = ", ".join(word(part, language) for part in parts)
    if said and place.path:
        return f"{said} ({place.path})"
    return said or place.path or word(phrase("place-whole"), language)


def _say(name: str, facts: Mapping[str, Any], language: Language, attribute: str = "") -> str:
    bundle = _bundle(language)
    if not bundle.has_message(name):
        bundle.add_resource(FluentResource(_entries(language)[name]))
    message = bundle.get_message(name)
    pattern = message.attributes[attribute] if attribute else message.value
    if pattern is None:
        raise KeyError(name)
    # What the bundle itself does, but that it would take our numbers for its own and write 1234 as 1,234.
    at = ResolverEnvironment(context=bundle, current=CurrentEnvironment(args=dict(facts)), errors=[])
    text = pattern(at)
    if at.errors:
        raise KeyError(f"{name} in {language}: {at.errors[0]}")
    return str(text)


@cache
def _entries(language: Language) -> dict[str, str]:
    """Map the name of each entry to its source."""
    text = (_FOLDER / f"{language}.ftl").read_text(encoding="utf-8")
    return {entry.partition(" =")[0]: entry for entry in _ENTRY.split(text)}


@cache
def _bundle(language: Language) -> FluentBundle:
    def joined(name: str, several: _Several) -> str:
        *heads, last = several.said or ("",)
        if not heads:
            return last
        return _say(name, {"head": ", ".join(heads), "last": last, "initial": last[:1].lower()}, language)

    functions: dict[str, Any] = {
        "AND": lambda several: joined("list-and", several),
        "OR": lambda several: joined("list-or", several),
        "HOLDER": lambda name: _say("holder", _holder(name), language),
        "FIXED": lambda value, digits=0: _fixed(float(value), int(digits), language),
        "SHORT": lambda value: _short(float(value), language),
        "PERCENT": lambda value, digits=0: _percent(float(value), int(digits), language),
    }
    # No isolating marks: they would be copied, and come to a terminal as they are.
    return FluentBundle([language], functions=functions, use_isolating=False)


def _holder(name: str) -> dict[str, Fact]:
    kind = name if name in ("hook", "start") else "end" if "." in name else "peg"
    return {"kind": kind, "name": name.rpartition(".")[0] or name}


# --- facts as the library takes them ------------------------------------------------------------------


class _Whole(FluentInt):
    """A number that names or counts; written without marks between its thousands."""

    def format(self, _locale: Locale) -> str:
        return str(int(self))


class _Figure(FluentFloat):
    """A measure; written with six figures at most where the wording does not say how many decimals."""

    def format(self, locale: Locale) -> str:
        return _short(float(self), locale.language)


class _Several(FluentType):
    """Things in a row."""

    def __init__(self, said: tuple[str, ...]) -> None:
        self.said = said

    def format(self, _locale: Locale) -> str:
        return ", ".join(self.said)[:_LONGEST]


def _facts(facts: Mapping[str, Fact], language: Language) -> dict[str, Any]:
    return {name: _fact(fact, language) for name, fact in facts.items()}


def _fact(fact: Fact, language: Language) -> Any:
    match fact:
        case str():
            return fact if len(fact) <= _LONGEST else fact[: _LONGEST - 1] + "…"
        case Phrase():
            return word(fact, language)
        case tuple() | list():
            return _Several(tuple(_in_a_row(one, language) for one in fact))
        case int():
            return _Whole(fact)
        case float():
            return _Figure(fact)


def _in_a_row(fact: Fact, language: Language) -> str:
    said = _fact(fact, language)
    return said if isinstance(said, str) else str(said.format(Locale(language)))


# --- numbers ------------------------------------------------------------------------------------------


def _fixed(value: float, digits: int, language: str) -> str:
    if not math.isfinite(value):
        return str(value)
    return str(format_decimal(value, "#,##0" + "." * bool(digits) + "0" * digits, locale=language))


def _percent(value: float, digits: int, language: str) -> str:
    if not math.isfinite(value):
        return str(value)
    form = Locale(language).percent_formats[None].pattern
    return str(format_percent(value, form.replace("0", "0" + "." * bool(digits) + "0" * digits, 1), language))


def _short(value: float, language: str) -> str:
    text = f"{value:.6g}"
    if not math.isfinite(value):
        return text
    if value.is_integer() and abs(value) < 1e15:
        return _fixed(value, 0, language)
    return text if "e" in text else str(format_decimal(float(text), "#,##0.#########", locale=language))
