"""Read a pattern from the maker's text: a pattern, or everything that is wrong, by line and column."""

from __future__ import annotations

import re
from pathlib import PurePath

from pegwright.finding import Finding, Location, finding
from pegwright.pattern import (
    MAX_FINDINGS,
    VERSION,
    PatternReading,
    decode_text,
    read_document,
    read_pattern,
)
from pegwright.text.lines import LineFault, line_tree
from pegwright.text.values import ValueReader
from pegwright.text.writer import SUFFIX

__all__ = ["is_pattern_text", "read_any_pattern", "read_pattern_text"]

_FIRST = re.compile(rb"(?:\xef\xbb\xbf)?(?:[ \t\r]*(?:#[^\n]*)?\n)*[ \t]*pegwright\b")
_VERSION = re.compile(r"pegwright\s*:?\s*(.*)")


def is_pattern_text(data: bytes) -> bool:
    """Say whether the first line with anything on it is that of a pattern's text."""
    return _FIRST.match(data) is not None


def read_any_pattern(data: bytes, name: str = "") -> PatternReading:
    """Read a pattern from its text or its JSON document; a file's name tells where its content does not."""
    begins = data.removeprefix(b"\xef\xbb\xbf").lstrip()[:1]
    if is_pattern_text(data) or (PurePath(name).suffix.lower() == SUFFIX and begins not in (b"{", b"[")):
        return read_pattern_text(data)
    return read_pattern(data)


def read_pattern_text(data: bytes) -> PatternReading:
    """Read a pattern from its text in UTF-8. Never raises on bad input."""
    text = decode_text(data)
    if isinstance(text, Finding):
        return PatternReading(None, (text,))
    lines, faults = line_tree(text)
    first = _VERSION.fullmatch(lines[0].text) if lines else None
    if first is None or not re.fullmatch(r"\d{1,9}", first[1]):
        place = Location(line=lines[0].number if lines else 1, column=1, path="/pegwright")
        said = first[1][:60] if first and first[1] else "missing"
        return PatternReading(None, (finding("unknown-version", place, version=said, newest=VERSION),))
    values = ValueReader(faults)
    values.places["/pegwright"] = (lines[0].number, lines[0].column)
    raw = {"pegwright": int(first[1]), **values.pattern(lines[1:])}
    if values.faults:
        found = sorted(values.faults, key=lambda one: (one.line, one.column))[:MAX_FINDINGS]
        return PatternReading(None, tuple(_finding_of(one) for one in found))
    reading = read_document(raw)
    return PatternReading(reading.pattern, tuple(values.locate(one) for one in reading.findings))


def _finding_of(fault: LineFault) -> Finding:
    place = Location(line=fault.line, column=fault.column)
    return finding("line-unreadable", place, reason=fault.reason, hint=fault.hint)
