"""Words by name, one Fluent file a language; and what is done to the user's own words before use."""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path

from fluent.runtime import FluentBundle, FluentResource

_FOLDER = Path(__file__).parent / "languages"
_KEPT = {"\n", "\u200c", "\u200d", "\u200e", "\u200f", "\ufe0e", "\ufe0f"}


def languages() -> tuple[str, ...]:
    """Return the languages there are words for."""
    return tuple(sorted(path.stem for path in _FOLDER.glob("*.ftl")))


class Words:
    """Says things in one language.

    Raises:
        ValueError: there is no file for the language.
    """

    def __init__(self, language: str) -> None:
        if language not in languages():
            raise ValueError(f"no words for {language!r}; there are {', '.join(languages())}")
        self.language = language
        self._bundle = _bundle(language)

    def say(self, name: str, **facts: str | int | float) -> str:
        """Word the message of that name.

        Raises:
            KeyError: there is no such message, or a fact that it needs is missing.
        """
        value = self._bundle.get_message(name).value if self._bundle.has_message(name) else None
        if value is None:
            raise KeyError(name)
        text, errors = self._bundle.format_pattern(value, facts)
        if errors:
            raise KeyError(f"{name}: {errors[0]}")
        return str(text)

    def both(self, things: Sequence[str]) -> str:
        """Join things with commas and an “and”."""
        if len(things) < 2:
            return "".join(things)
        head = things[0]
        for thing in things[1:-1]:
            head = self.say("list-comma", head=head, next=thing)
        return self.say("list-and", head=head, last=things[-1])


@lru_cache
def _bundle(language: str) -> FluentBundle:
    # No isolating marks: they would be read out and copied; `plain` has taken the user's own out already.
    bundle = FluentBundle([language], use_isolating=False)
    bundle.add_resource(FluentResource((_FOLDER / f"{language}.ftl").read_text(encoding="utf-8")))
    return bundle


def plain(text: str, limit: int = 4000) -> str:
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


def line(text: str, limit: int = 300) -> str:
    """Make a user's text harmless and one line."""
    return " ".join(plain(text, limit).split())
