"""Write a pattern as text, and publish the schema of that text."""

from __future__ import annotations

from typing import Any

import msgspec

from pegwright.pattern.document import VERSION, Pattern


def write_pattern(pattern: Pattern) -> bytes:
    """Return the one canonical text: UTF-8 JSON, two spaces, defaults left out, newline at the end."""
    return msgspec.json.format(msgspec.json.encode(pattern), indent=2) + b"\n"


def pattern_schema() -> dict[str, Any]:
    """Return the JSON Schema (draft 2020-12) of the pattern document."""
    body = msgspec.json.schema(Pattern)
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": f"Pegwright pattern, version {VERSION}",
        **body,
    }
