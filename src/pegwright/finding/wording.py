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

from pegwright.finding.findings import Fact, Finding, Language, Location, Phrase, Severity, phrase

__all__ = ["LANGUAGES", "WordedFinding", "WordedFix", "word_finding", "word_location", "word_phrase"]

LANGUAGES: tuple[Language, ...] = get_args(Language)

_FOLDER = Path(__file__).parent / "languages"
_ENTRY = re.compile(r"^(?=[a-z])", re.MULTILINE)
_LONGEST = 2000  # the library takes no longer text for a part of a sentence


class WordedFix(msgspec.Struct, frozen=True):
    """A cure in words: a label and a JSON Patch (RFC 6902) on the document."""

    label: str
    patch: tuple[dict[str, Any], ...]


class WordedFinding(msgspec.Struct, frozen=True, omit_defaults=True):
    """A finding in one language. `facts` are the values that its words were made from."""

    code: str
    severity: Severity
    message: str
    place: Location
    hint: str = ""
    fix: WordedFix | None = None
    facts: dict[str, Fact] = {}


def word_finding(found: Finding, language: Language = "en") -> WordedFinding:
    """Put a finding in words.

    Raises:
        KeyError: a wording lacks in that language, or a fact that it needs.
    """
    facts = _wording_facts(found.facts, language)
    fix = found.fix
    return WordedFinding(
        code=found.code,
        severity=found.severity,
        message=_format_entry(found.code, facts, language),
        place=found.place,
        hint=_format_entry(found.code, facts, language, "hint"),
        fix=None if fix is None else WordedFix(word_phrase(fix.label, language), fix.patch),
        facts=found.facts,
    )


def word_phrase(one: Phrase, language: Language = "en") -> str:
    """Put a phrase in words.

    Raises:
        KeyError: as for a finding.
    """
    return _format_entry(one.phrase, _wording_facts(one.facts, language), language)


def word_location(place: Location, language: Language = "en") -> str:
    """Put a place in words: the line of a text, or the move, peg and band, and the path in the document."""
    if place.line is not None:
        return word_phrase(phrase("place-line", line=place.line, column=place.column or 1), language)
    parts: list[Phrase] = []
    if place.step is not None:
        parts.append(phrase("place-step", step=place.step))
    if place.peg is not None:
        parts.append(phrase("place-peg", **_holder_facts(place.peg)))
    if place.band is not None:
        parts.append(phrase("place-band", band=place.band))
    said = ", ".join(word_phrase(part, language) for part in parts)
    if said and place.path:
        return f"{said} ({place.path})"
    return said or place.path or word_phrase(phrase("place-whole"), language)


def _format_entry(name: str, facts: Mapping[str, Any], language: Language, attribute: str = "") -> str:
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
    def join(name: str, several: _FactList) -> str:
        *heads, last = several.said or ("",)
        if not heads:
            return last
        return _format_entry(
            name,
            {"head": _cut(", ".join(heads)), "last": _cut(last), "initial": last[:1].lower()},
            language,
        )

    functions: dict[str, Any] = {
        "AND": lambda several: join("list-and", several),
        "OR": lambda several: join("list-or", several),
        "HOLDER": lambda name: _format_entry("holder", _holder_facts(name), language),
        "FIXED": lambda value, digits=0: _format_fixed(float(value), int(digits), language),
        "SHORT": lambda value: _format_short(float(value), language),
        "PERCENT": lambda value, digits=0: _format_percent(float(value), int(digits), language),
    }
    # No isolating marks: they would be copied, and come to a terminal as they are.
    return FluentBundle([language], functions=functions, use_isolating=False)


def _holder_facts(name: str) -> dict[str, Fact]:
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
        return _format_short(float(self), locale.language)


class _FactList(FluentType):
    """Things in a row."""

    def __init__(self, said: tuple[str, ...]) -> None:
        self.said = said

    def format(self, _locale: Locale) -> str:
        return _cut(", ".join(self.said))


def _wording_facts(facts: Mapping[str, Fact], language: Language) -> dict[str, Any]:
    return {name: _wording_fact(fact, language) for name, fact in facts.items()}


def _wording_fact(fact: Fact, language: Language) -> Any:
    match fact:
        case str():
            return _cut(fact)
        case Phrase():
            return _cut(word_phrase(fact, language))
        case tuple() | list():
            return _FactList(tuple(_list_item_text(one, language) for one in fact))
        case int():
            return _Whole(fact)
        case float():
            return _Figure(fact)


def _cut(text: str) -> str:
    """Return the beginning of a text that is too long for a part of a sentence."""
    return text if len(text) <= _LONGEST else text[: _LONGEST - 1] + "…"


def _list_item_text(fact: Fact, language: Language) -> str:
    said = _wording_fact(fact, language)
    return said if isinstance(said, str) else str(said.format(Locale(language)))


# --- numbers ------------------------------------------------------------------------------------------


def _format_fixed(value: float, digits: int, language: str) -> str:
    if not math.isfinite(value):
        return str(value)
    return str(format_decimal(value, "#,##0" + "." * bool(digits) + "0" * digits, locale=language))


def _format_percent(value: float, digits: int, language: str) -> str:
    if not math.isfinite(value):
        return str(value)
    form = Locale(language).percent_formats[None].pattern
    return str(format_percent(value, form.replace("0", "0" + "." * bool(digits) + "0" * digits, 1), language))


def _format_short(value: float, language: str) -> str:
    text = f"{value:.6g}"
    if not math.isfinite(value):
        return text
    if value.is_integer() and abs(value) < 1e15:
        return _format_fixed(value, 0, language)
    return text if "e" in text else str(format_decimal(float(text), "#,##0.#########", locale=language))
