"""One finding: what is wrong or worth knowing, where, and how to mend it.

A user's mistake is a `Finding`; a programmer's mistake is an exception. The words live in one place,
`pegwright.finding.catalogue`; every other room names a code and hands over the facts.
"""

from __future__ import annotations

from typing import Any, Literal

import msgspec

from pegwright.finding.catalogue import CATALOGUE

__all__ = ["CATALOGUE", "Finding", "Fix", "Place", "Severity", "finding", "spoken", "worst"]

Severity = Literal["error", "warning", "note"]
_ORDER: dict[str, int] = {"error": 0, "warning": 1, "note": 2}


class Place(msgspec.Struct, frozen=True, omit_defaults=True):
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
        if self.line is not None:
            return f"line {self.line}, column {self.column}"
        parts = []
        if self.step is not None:
            parts.append(f"move {self.step}")
        if self.peg is not None:
            parts.append(spoken(self.peg) if _is_no_peg(self.peg) else f"peg {self.peg}")
        if self.band is not None:
            parts.append(f"band {self.band}")
        said = ", ".join(parts)
        if said and self.path:
            return f"{said} ({self.path})"
        return said or self.path or "the whole pattern"


def spoken(holder: str) -> str:
    """Return what carries loops in words: a peg, the hook, a free end (`end.3`) by its name."""
    if holder == "hook":
        return "the hook"
    return f"the free end called {holder.rpartition('.')[0]}" if _is_no_peg(holder) else holder


def _is_no_peg(holder: str) -> bool:
    return holder == "hook" or "." in holder


class Fix(msgspec.Struct, frozen=True):
    """A cure that can be carried out by itself: a label and a JSON Patch (RFC 6902) on the document."""

    label: str
    patch: tuple[dict[str, Any], ...]


class Finding(msgspec.Struct, frozen=True, omit_defaults=True):
    """What is wrong or worth knowing. `facts` are the values the message was worded from."""

    code: str
    severity: Severity
    message: str
    place: Place
    hint: str = ""
    fix: Fix | None = None
    facts: dict[str, Any] = {}

    def __str__(self) -> str:
        text = f"{self.severity}[{self.code}] {self.message}\n  at {self.place}"
        return f"{text}\n  hint: {self.hint}" if self.hint else text


def finding(code: str, place: Place | None = None, *, fix: Fix | None = None, **facts: Any) -> Finding:
    """Word the finding `code` from its facts.

    Raises:
        KeyError: no such code, or a fact that its wording needs is missing.
    """
    entry = CATALOGUE[code]
    return Finding(
        code=code,
        severity=entry.severity,
        message=entry.message.format_map(facts),
        place=place or Place(),
        hint=entry.hint.format_map(facts),
        fix=fix,
        facts=facts,
    )


def worst(findings: tuple[Finding, ...] | list[Finding]) -> Severity | None:
    """Return the gravest severity among the findings, or None where there are none."""
    return min((f.severity for f in findings), key=_ORDER.__getitem__, default=None)
