"""Words by name, one Fluent file a language; and what is done to the user's own words before use."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping, Sequence
from fractions import Fraction
from functools import lru_cache
from pathlib import Path
from typing import Literal

from babel.numbers import format_decimal
from fluent.runtime import FluentBundle, FluentResource
from fluent.syntax import ast, parse, visitor

Units = Literal["metric", "inches"]

_FOLDER = Path(__file__).parent / "languages"
_LONGEST = 2000  # the library takes no longer text for a part of a sentence
_STAND_IN = re.compile("\ue000([0-9]+)\ue001")  # of private use, so in no text that was made plain
_KEPT = {"\n", "\u200c", "\u200d", "\u200e", "\u200f", "\ufe0e", "\ufe0f"}


def languages() -> tuple[str, ...]:
    """Return the languages there are words for."""
    return tuple(sorted(path.stem for path in _FOLDER.glob("*.ftl")))


class Phrasebook:
    """Says things in one language, with the teacher's own phrases for ours, in metric units or inches.

    `phrases` maps a word or phrase of ours to the teacher's, such as `peg` to `pin` and `pegs` to `pins`; it
    is exchanged in every message, as whole words only, never in what a designer wrote.

    Raises:
        ValueError: there is no file for the language.
    """

    def __init__(
        self, language: str, phrases: Mapping[str, str] | None = None, units: Units = "metric"
    ) -> None:
        if language not in languages():
            raise ValueError(f"no words for {language!r}; there are {', '.join(languages())}")
        self.language = language
        self.units = units
        self._bundle = _load_bundle(language, tuple(sorted((phrases or {}).items())))

    def say(self, name: str, **facts: str | int | float) -> str:
        """Word the message of that name.

        Raises:
            KeyError: there is no such message, or a fact that it needs is missing.
        """
        value = self._bundle.get_message(name).value if self._bundle.has_message(name) else None
        if value is None:
            raise KeyError(name)
        long = [fact for fact in facts.values() if isinstance(fact, str) and len(fact) > _LONGEST]
        if long:  # such as a clip through a thousand loops
            facts = {
                key: f"\ue000{long.index(fact)}\ue001" if fact in long else fact
                for key, fact in facts.items()
            }
        text, errors = self._bundle.format_pattern(value, facts)
        if errors:
            raise KeyError(f"{name}: {errors[0]}")
        said = _STAND_IN.sub(lambda found: long[int(found[1])], str(text)) if long else str(text)
        return _contract(said) if self.language == "es" else said

    def both(self, things: Sequence[str]) -> str:
        """Join things with commas and an “and”."""
        if len(things) < 2:
            return "".join(things)
        head = self.say("list-comma", head="", next="").join(things[:-1])
        return self.say("list-and", head=head, last=things[-1])

    def has(self, name: str) -> bool:
        """Say whether there is a message of that name."""
        return bool(self._bundle.has_message(name))

    def decimal(self, value: float, digits: int = 1) -> str:
        """Write a number with so many decimals at most, as the language writes it."""
        return str(format_decimal(value, "#,##0." + "#" * digits, locale=self.language))

    def length(self, mm: float) -> str:
        """Write a length: millimetres to a tenth, or inches to the nearest sixteenth."""
        if self.units == "metric":
            return self.say("length-mm", n=self.decimal(mm))
        sixteenths = round(mm / 25.4 * 16)
        whole, rest = divmod(sixteenths, 16)
        part = f"{Fraction(rest, 16)}" if rest else ""
        return self.say("length-in", n=f"{whole or ''} {part}".strip() or "0")

    def length_range(self, low_mm: float, high_mm: float) -> str:
        """Write the lengths from one to another, the unit once: 130–140 mm."""
        low, high = self.length(low_mm), self.length(high_mm)
        unit = self.say("length-mm" if self.units == "metric" else "length-in", n="")
        return self.say("span-dash", first=low.removesuffix(unit), last=high)


@lru_cache(maxsize=64)
def _load_bundle(language: str, phrases: tuple[tuple[str, str], ...]) -> FluentBundle:
    # No isolating marks: they would be read out and copied; `plain` has taken the user's own out already.
    bundle = FluentBundle([language], use_isolating=False)
    resource = FluentResource((_FOLDER / f"{language}.ftl").read_text(encoding="utf-8"))
    if any(ours.strip() for ours, _ in phrases):
        _PhraseExchange(dict(phrases)).visit(resource)
    bundle.add_resource(resource)
    return bundle


def message_patterns(language: str, phrases: Mapping[str, str] | None = None) -> dict[str, ast.Pattern]:
    """Return the source of every message, with the teacher's own phrases for ours, to be read back."""
    resource = parse((_FOLDER / f"{language}.ftl").read_text(encoding="utf-8"))
    if any(ours.strip() for ours in phrases or {}):
        _PhraseExchange(phrases or {}).visit(resource)
    return {
        entry.id.name: entry.value
        for entry in resource.body
        if isinstance(entry, ast.Message) and entry.value is not None
    }


class _PhraseExchange(visitor.Visitor):
    """Exchanges phrases in the texts of messages, the longest first, each text once."""

    def __init__(self, phrases: Mapping[str, str]) -> None:
        self.phrases = {_fold_case(ours): single_line(own) for ours, own in phrases.items() if ours.strip()}
        order = sorted(self.phrases, key=len, reverse=True)
        forms = (r"\s+".join(map(re.escape, ours.split())) for ours in order)
        self.form = re.compile(rf"(?<![\w-])(?:{'|'.join(forms)})(?![\w-])", re.IGNORECASE)

    def visit_TextElement(self, node: ast.TextElement) -> None:  # noqa: N802 - named by the visitor
        """Exchange in one text; a capital stays a capital."""
        node.value = self.form.sub(self._own, node.value)

    def _own(self, match: re.Match[str]) -> str:
        own = self.phrases.get(_fold_case(match[0]), match[0])
        return own[:1].upper() + own[1:] if match[0][:1].isupper() else own


def _contract(text: str) -> str:
    """Contract `de el` to `del` and `a el` to `al`, as Spanish must: a fact may begin with its article."""
    return re.sub(r"\b(de|a) el\b", lambda found: {"de": "del", "a": "al"}[found[1]], text)


def _fold_case(text: str) -> str:
    return " ".join(text.split()).casefold()


def plain_text(text: str, limit: int = 4000) -> str:
    """Make a user's text harmless: characters that act instead of showing are shown by their number.

    Letters of every script, emoji and markup stay as they are; controls, overrides of direction and
    unassigned or lone surrogate code points become, for example, ⟨U+202E⟩.
    """
    shown = []
    for char in unicodedata.normalize("NFC", text.replace("\r\n", "\n").replace("\t", " "))[:limit]:
        acts = unicodedata.category(char) in ("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp")
        tag = 0xE0020 <= ord(char) <= 0xE007F
        shown.append(f"⟨U+{ord(char):04X}⟩" if acts and not tag and char not in _KEPT else char)
    return "".join(shown)


def single_line(text: str, limit: int = 300) -> str:
    """Make a user's text harmless and one line."""
    return " ".join(plain_text(text, limit).split())
