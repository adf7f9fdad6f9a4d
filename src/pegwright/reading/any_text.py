"""Read any maker's text: a printed lesson by the phrasebook that printed it, anything else by the grammar."""

from __future__ import annotations

from collections.abc import Mapping

from pegwright.pattern import Layout
from pegwright.reading.free import read_free
from pegwright.reading.printed import printed_language, read_printed
from pegwright.reading.split import free_language
from pegwright.reading.text_reading import Answers, TextReading

MOST_PRINTED = 400_000
"""Characters of a printed lesson that are looked at."""


def read_maker_text(
    text: str,
    language: str | None = None,
    *,
    loom: Layout | None = None,
    answers: Answers | None = None,
    phrases: Mapping[str, str] | None = None,
) -> TextReading:
    """Return the pattern that a text says, with its blanks. Never raises on bad input.

    `loom` and `answers` are what the maker answers to the blanks of an earlier reading.
    """
    if len(text) <= MOST_PRINTED:
        printed = printed_language(text, phrases)
        if printed is not None:
            return read_printed(text, phrases, printed)
    return read_free(text, language or free_language(text), loom, answers)
