"""One finding: what is wrong or worth knowing, where, and how to mend it.

A user's mistake is a `Finding`; a programmer's mistake is an exception. A finding is data: a code and facts.
Every room names a code and hands over the facts; they are put in words, in any language, by
`pegwright.finding.wording`, and only where somebody reads them.
"""

from __future__ import annotations

from typing import Any, Literal

import msgspec

from pegwright.finding.catalogue import CATALOGUE
from pegwright.finding.phrases import PHRASES

Language = Literal["en", "es", "de"]
Severity = Literal["error", "warning", "note"]
_ORDER: dict[str, int] = {"error": 0, "warning": 1, "note": 2}


class Phrase(msgspec.Struct, frozen=True):
    """A part of a sentence that is worded where the whole is: its name in the catalogue, and its facts."""

    phrase: str
    facts: dict[str, Fact] = {}

    def __str__(self) -> str:
        from pegwright.finding.wording import word_phrase  # noqa: PLC0415 - slow to load, and seldom asked for

        return word_phrase(self)


class RefusedError(Exception):
    """What was asked for cannot be done, and no fault of the program: `reason` says why, in any language.

    Whoever asked on the user's behalf catches it, and nothing wider: any other exception is a bug.
    """

    def __init__(self, reason: Phrase) -> None:
        super().__init__(reason)
        self.reason = reason

    def __str__(self) -> str:
        return str(self.reason)


Fact = str | int | float | Phrase | tuple[str | int | float | Phrase, ...]
"""What a wording is made of. A holder of loops is named as the loom names it: a peg, `hook`, `end.3`."""


class Location(msgspec.Struct, frozen=True, omit_defaults=True):
    """Where a finding points: a path into the document, and what a maker would point at.

    `path` is a JSON Pointer (RFC 6901). `line` and `column` count from 1 and are there for a text that
    could not be read. `step` counts the maker's moves from 1; `band` counts bands in the order taken up.
    """

    path: str = ""
    line: int | None = None
    column: int | None = None
    step: int | None = None
    peg: str | None = None
    band: int | None = None

    def __str__(self) -> str:
        from pegwright.finding.wording import word_location  # noqa: PLC0415 - as above

        return word_location(self)


class Fix(msgspec.Struct, frozen=True):
    """A cure that can be carried out by itself: what it does and a JSON Patch (RFC 6902) on the document."""

    label: Phrase
    patch: tuple[dict[str, Any], ...]


class Finding(msgspec.Struct, frozen=True, omit_defaults=True):
    """What is wrong or worth knowing; `message` and `hint` say it in English."""

    code: str
    severity: Severity
    place: Location
    fix: Fix | None = None
    facts: dict[str, Fact] = {}

    @property
    def message(self) -> str:
        """What is wrong."""
        from pegwright.finding.wording import word_finding  # noqa: PLC0415 - as above

        return word_finding(self).message

    @property
    def hint(self) -> str:
        """What to do about it."""
        from pegwright.finding.wording import word_finding  # noqa: PLC0415 - as above

        return word_finding(self).hint

    def __str__(self) -> str:
        return f"{self.severity}[{self.code}] {self.message}\n  at {self.place}\n  hint: {self.hint}"


def finding(code: str, place: Location | None = None, *, fix: Fix | None = None, **facts: Fact) -> Finding:
    """Return the finding `code` with its facts.

    Raises:
        KeyError: no such code, or a fact that its wording needs is missing.
    """
    entry = CATALOGUE[code]
    _require_facts(code, entry.facts, facts)
    return Finding(code=code, severity=entry.severity, place=place or Location(), fix=fix, facts=facts)


def phrase(name: str, /, **facts: Fact) -> Phrase:
    """Return a phrase with its facts.

    Raises:
        KeyError: no such phrase, or a fact that its wording needs is missing.
    """
    _require_facts(name, PHRASES[name], facts)
    return Phrase(name, facts)


def _require_facts(name: str, needed: frozenset[str], facts: dict[str, Fact]) -> None:
    if not needed <= facts.keys():
        raise KeyError(f"{name} lacks {', '.join(sorted(needed - facts.keys()))}")


def worst_severity(findings: tuple[Finding, ...] | list[Finding]) -> Severity | None:
    """Return the gravest severity among the findings, or None where there are none."""
    return min((f.severity for f in findings), key=_ORDER.__getitem__, default=None)
