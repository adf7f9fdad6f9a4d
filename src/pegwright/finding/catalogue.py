"""The wording of every finding, by code. Lower case, no full stop, a maker's words.

Each code has an entry of the same name in `docs/findings.md`; a test fails where one is missing.
"""

from __future__ import annotations

from typing import Literal, NamedTuple


class Entry(NamedTuple):
    """How a finding is graded and worded; the texts are `str.format` templates over its facts."""

    severity: Literal["error", "warning", "note"]
    message: str
    hint: str = ""


CATALOGUE: dict[str, Entry] = {
    # --- reading the document -------------------------------------------------------------------
    "not-text": Entry("error", "this is not a text file", "a pattern is a JSON text in UTF-8"),
    "too-large": Entry(
        "error", "the file holds {size} bytes; a pattern may hold {limit}", "take out what is not a pattern"
    ),
    "not-json": Entry("error", "the text is not valid JSON: {reason}", "mend the text at that place"),
    "not-a-pattern": Entry("error", "{reason}", "see the schema: pegwright schema"),
    "unknown-version": Entry(
        "error",
        "this pattern is of version {version}; this program reads versions 1 to {newest}",
        "use a newer pegwright, or correct the field pegwright",
    ),
}
