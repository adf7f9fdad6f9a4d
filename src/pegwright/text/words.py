"""Single values on a line: bare where they can be told from their neighbours, else quoted as in JSON."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from typing import Any, NamedTuple

from pegwright.text.kinds import Kind

NONE = "none"
_NUMBER = re.compile(r"[+-]?\d+(\.\d+)?([eE][+-]?\d+)?")
_BARE = re.compile(r"[^\W\d_][\w'’#./+*-]*( [\w'’#./+*-]+)*|[#\d][\w.-]*")
_PARTS = re.compile(r'"(?:\\.|[^"\\])*"|[^",]|(?P<end>,)|(?P<open>")')
_WORDS = re.compile(r'(?:"(?:\\.|[^"\\])*"|[^\s"])+|(?P<open>")')


class TextPart(NamedTuple):
    """A piece of a line, and how many characters before it."""

    text: str
    offset: int


class OpenQuote(Exception):  # noqa: N818 - a fault of the text, not of the program
    """A quote is opened and never closed, so many characters from the beginning."""

    def __init__(self, offset: int) -> None:
        super().__init__(offset)
        self.offset = offset


def write_word(value: Any, kind: Kind, *, spaces: bool = True) -> str:
    """Return a value as one word or, with `spaces`, as a few that read as one."""
    if isinstance(value, bool) or value is None:
        return {True: "true", False: "false", None: NONE}[value]
    if isinstance(value, float) and value.is_integer() and abs(value) < 1e15:
        return str(int(value)) if value or str(value) == "0.0" else "-0.0"
    if not isinstance(value, str):
        return repr(value)
    taken = kind.others and (_NUMBER.fullmatch(value) or value in ("true", "false", NONE))
    bare = bool(_BARE.fullmatch(value)) and value.isprintable() and not taken and value != NONE
    return value if bare and (spaces or " " not in value) else quote(value)


def read_word(text: str, kind: Kind) -> Any:
    """Return the value of a word; a number or a yes is a text where nothing but a text may stand.

    Raises:
        ValueError: a quoted word is no JSON text.
    """
    if text.startswith('"'):
        return json.loads(text)
    if kind.text and not kind.others:
        return text
    if text in ("true", "false", NONE):
        return {"true": True, "false": False, NONE: None}[text]
    if _NUMBER.fullmatch(text):
        return int(text) if re.fullmatch(r"[+-]?\d{1,4000}", text) else float(text)
    return text


def quote(value: str) -> str:
    """Return a text in double quotes, as JSON has it; all that does not show is escaped."""
    if value.isprintable():
        return json.dumps(value, ensure_ascii=False)
    return "".join(
        one if one.isprintable() else json.dumps(one)[1:-1] for one in json.dumps(value, ensure_ascii=False)
    )


def split_parts(text: str, offset: int = 0) -> Iterator[TextPart]:
    """Yield what stands between the commas of a line, but for those within quotes.

    Raises:
        OpenQuote: a quote is not closed.
    """
    begin = 0
    for found in _PARTS.finditer(text):
        if found["open"]:
            raise OpenQuote(offset + found.start())
        if found["end"]:
            yield _trim(text[begin : found.start()], offset + begin)
            begin = found.end()
    if text[begin:].strip() or begin:
        yield _trim(text[begin:], offset + begin)


def split_words(text: str, offset: int = 0) -> Iterator[TextPart]:
    """Yield the words of a line; what is quoted is part of one.

    Raises:
        OpenQuote: a quote is not closed.
    """
    for found in _WORDS.finditer(text):
        if found["open"]:
            raise OpenQuote(offset + found.start())
        yield TextPart(found[0], offset + found.start())


def split_label(text: str) -> tuple[TextPart, TextPart | None]:
    """Return what stands before the first colon that is not quoted, and what follows it, if there is one.

    Raises:
        OpenQuote: a quote is not closed before a colon.
    """
    found = re.match(r'((?:"(?:\\.|[^"\\])*"|[^":])*)(:|"|$)', text)
    if found is None or found[2] == '"':
        raise OpenQuote(found.end(1) if found else 0)
    head = TextPart(found[1].rstrip(), 0)
    return head, _trim(text[found.end() :], found.end()) if found[2] else None


def _trim(text: str, offset: int) -> TextPart:
    return TextPart(text.strip(), offset + len(text) - len(text.lstrip()))
