"""The phrasebook read backwards: which message a text is, and the facts it was made from.

Reader and printer share one source of words, so they cannot drift apart.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from functools import lru_cache
from typing import NamedTuple

from fluent.syntax import ast

from pegwright.lesson import message_patterns

_PEG = r"[A-Z]{1,2}[1-9]\d{0,4}"
_FORMS = {
    "n": r"\d[\d.,/ ]*(?<=\d)",
    "first": r"[^\s.,]+",
    "last": r"[^\s.,]+",
    "way": ".*?",
    **dict.fromkeys(("peg", "source", "target", "near"), _PEG),
}
"""What facts of these names look like; any other may be anything."""


class UnreadableError(Exception):
    """A printed sentence does not say what its message needs; it stays unread."""


class FactSlot(NamedTuple):
    """A group of a template: its fact and which choice of it, or None for the fact's text."""

    fact: str
    choice: str | None


class Template(NamedTuple):
    """A message as a regular expression, with the meaning of each group, and its words without facts."""

    name: str
    form: re.Pattern[str]
    slots: dict[str, FactSlot]
    plain: str

    def facts(self, found: re.Match[str]) -> dict[str, str]:
        """Return the facts of a match."""
        facts: dict[str, str] = {}
        for group, (fact, choice) in self.slots.items():
            if found[group] is None:
                continue
            if choice is None:
                facts[fact] = found[group]
            elif choice != "other":
                facts.setdefault(fact, {"one": "1"}.get(choice, choice))
        return facts


class Said(NamedTuple):
    """A message found in a text: its name and facts, and where it starts and ends."""

    name: str
    facts: dict[str, str]
    start: int
    end: int

    def text(self, fact: str) -> str:
        """Return a fact as it is written.

        Raises:
            UnreadableError: the wording found does not mention it.
        """
        if fact not in self.facts:
            raise UnreadableError(fact)
        return self.facts[fact]

    def number(self, fact: str, default: int = 1) -> int:
        """Return a fact as a whole number."""
        text = self.facts.get(fact, "")
        return int(text) if text.isdecimal() and len(text) < 9 else default


class PhraseReader:
    """Finds messages of one language in a text; `phrases` are the teacher's own wordings."""

    def __init__(self, language: str, phrases: Mapping[str, str] | None = None) -> None:
        self.language = language
        self._templates = _load_templates(language, tuple(sorted((phrases or {}).items())))

    def begins(self, text: str, names: Iterable[str]) -> Said | None:
        """Return the message that the text starts with, the shortest if several do, or None."""
        found = [said for name in names if (said := self._match(text, name))]
        return min(found, key=lambda said: said.end, default=None)

    def whole(self, text: str, names: Iterable[str]) -> Said | None:
        """Return the first message that is the whole text, or None."""
        for name in names:
            template = self._templates[name]
            if match := template.form.fullmatch(text):
                return Said(name, template.facts(match), 0, len(text))
        return None

    def all(self, text: str, name: str) -> Iterator[Said]:
        """Yield every occurrence of a message in a text."""
        template = self._templates[name]
        for match in template.form.finditer(text):
            yield Said(name, template.facts(match), *match.span())

    def plain(self, name: str) -> str:
        """Return the words of a message without its facts."""
        return self._templates[name].plain

    def first_words(self, names: Iterable[str]) -> str:
        """Return a regular expression for the first word of any of these messages."""
        found = {one[0] for name in names if (one := re.match(r"[^\W\d_]*", self.plain(name)))}
        return f"(?:{'|'.join(sorted(found))})"

    def names(self, prefix: str) -> list[str]:
        """Return the messages whose names start with `prefix`."""
        return [name for name in self._templates if name.startswith(prefix)]

    def _match(self, text: str, name: str) -> Said | None:
        template = self._templates[name]
        match = template.form.match(text)
        if match is None or text[match.end() : match.end() + 1] not in ("", " "):
            return None
        return Said(name, template.facts(match), *match.span())


def spread_contractions(text: str, language: str) -> str:
    """Collapse white space, and spread Spanish `del` and `al` into two words."""
    text = re.sub(r"\s+", " ", text)
    if language == "es":
        text = re.sub(r"\b(de|a)l\b", lambda found: f"{found[1]} el", text)
    return text


@lru_cache(maxsize=16)
def _load_templates(language: str, phrases: tuple[tuple[str, str], ...]) -> dict[str, Template]:
    patterns = message_patterns(language, dict(phrases))
    forms = {"times": rf"(?:\d+|{_TemplateMaker('times', language, {}).bare_form(patterns['times'])})"}
    return {name: _TemplateMaker(name, language, forms).make(value) for name, value in patterns.items()}


class _TemplateMaker:
    """Makes the template of a message; `forms` are the forms of facts that are messages themselves."""

    def __init__(self, name: str, language: str, forms: Mapping[str, str]) -> None:
        self.name, self.language = name, language
        self.forms = {**_FORMS, **forms}
        self.slots: dict[str, FactSlot] = {}

    def make(self, pattern: ast.Pattern) -> Template:
        first = pattern.elements[0]
        words = (one.value if isinstance(one, ast.TextElement) else "" for one in pattern.elements)
        plain = "".join(words) if isinstance(first, ast.TextElement) else ""
        return Template(self.name, re.compile(self._pattern(pattern), re.IGNORECASE), self.slots, plain)

    def bare_form(self, pattern: ast.Pattern) -> str:
        """Return the form of a message without its groups, to go inside another."""
        return re.sub(r"\(\?P<\w+>", "(?:", self._pattern(pattern))

    def _pattern(self, pattern: ast.Pattern) -> str:
        return "".join(map(self._element, pattern.elements))

    def _element(self, element: ast.TextElement | ast.Placeable) -> str:
        if isinstance(element, ast.TextElement):
            return re.escape(spread_contractions(element.value, self.language))
        inside = element.expression
        if isinstance(inside, ast.VariableReference):
            return self._group(self.forms.get(inside.id.name, ".+?"), inside.id.name, None)
        if isinstance(inside, ast.SelectExpression) and isinstance(inside.selector, ast.VariableReference):
            fact = inside.selector.id.name
            forms = [self._group(self._pattern(one.value), fact, _key(one.key)) for one in inside.variants]
            return f"(?:{'|'.join(forms)})"
        return ".+?"

    def _group(self, form: str, fact: str, choice: str | None) -> str:
        group = f"g{len(self.slots)}"
        while group in self.slots:
            group += "_"
        self.slots[group] = FactSlot(fact, choice)
        return f"(?P<{group}>{form})"


def _key(key: ast.Identifier | ast.NumberLiteral) -> str:
    return key.name if isinstance(key, ast.Identifier) else str(key.value)
