"""Read the lines of a text as the values of a document, each by what may stand in its place."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import msgspec

from pegwright.finding import Finding, phrase
from pegwright.pattern import Pattern, PatternStep
from pegwright.text.examples import nearest_example
from pegwright.text.kinds import FieldKind, Kind, fields_of, kind_of, tag_of
from pegwright.text.lines import Line, LineFault
from pegwright.text.moves import fields_of_line
from pegwright.text.words import NONE, OpenQuote, TextPart, read_word, split_label, split_parts, split_words
from pegwright.text.writer import ENTRIES, LABELS

_ANYTHING = Kind(text=True, others=True)
_NAME = Kind(text=True)
_LONG_TEXT = Kind(text=True, long=True)
_STEPS = {tag_of(struct)[1]: struct for struct in kind_of(PatternStep).structs}
_WORDS = {word: (do, label) for do, (word, label) in LABELS.items()}


class ValueReader:
    """Reads values and keeps account of where each of them stands, and of what could not be read."""

    def __init__(self, faults: list[LineFault]) -> None:
        self.faults = faults
        self.places: dict[str, tuple[int, int]] = {}

    def locate(self, found: Finding) -> Finding:
        """Return a finding about a part of the document with the line and column of that part."""
        path = found.place.path
        while path not in self.places and path:
            path = path.rpartition("/")[0]
        line, column = self.places.get(path, (1, 1))
        return msgspec.structs.replace(
            found, place=msgspec.structs.replace(found.place, line=line, column=column)
        )

    def pattern(self, lines: list[Line]) -> dict[str, Any]:
        """Read the fields of a whole pattern."""
        raw: dict[str, Any] = {}
        fields = fields_of(Pattern)
        for line in lines:
            word, rest = _first_word(line.text)
            if word in ENTRIES:
                listed, label, more = ENTRIES[word]
                several = raw.setdefault(listed, [])
                if not isinstance(several, list):
                    self._twice(line, listed)
                    continue
                struct = kind_of(kind_of(fields[listed].type).items).structs[0]
                path = f"/{listed}/{len(several)}"
                offset = len(line.text) - len(rest)
                several.append(
                    self._entry(struct, line, TextPart(rest, offset), path, label=label, more=more)
                )
                self.places.setdefault(f"/{listed}", (line.number, line.column))
            else:
                self._field(line, _kind_in(fields), raw, "")
        return raw

    def _guard(self, line: Line, error: OpenQuote | ValueError, offset: int = 0) -> None:
        at = error.offset if isinstance(error, OpenQuote) else offset
        self.faults.append(line.fault(phrase("quote-not-closed"), phrase("close-quote"), at))

    def _twice(self, line: Line, name: str) -> None:
        self.faults.append(line.fault(phrase("given-twice", field=repr(name)[:60]), phrase("take-one-out")))

    def _mark(self, path: str, line: Line, offset: int = 0) -> None:
        self.places[path] = (line.number, line.column + offset)

    # --- records ----------------------------------------------------------------------------------------

    def _entry(
        self,
        struct: type[msgspec.Struct],
        line: Line,
        said: TextPart,
        path: str,
        *,
        label: str = "",
        more: tuple[str, ...] = (),
    ) -> dict[str, Any]:
        """Read `LABEL: value, value, field value` and what belongs below it."""
        raw: dict[str, Any] = {}
        self._mark(path, line)
        fields = fields_of(struct)
        try:
            head, rest = split_label(said.text)
            if head.text and label:
                raw[label] = read_word(head.text, kind_of(fields[label].type))
                self._mark(f"{path}/{label}", line, said.offset)
            parts = list(split_parts(rest.text, said.offset + rest.offset)) if rest else []
        except (OpenQuote, ValueError) as error:
            self._guard(line, _shift(error, said.offset), said.offset)
            return raw
        for name in more:
            if not parts or parts[0].text.split(" ")[0] in fields:
                break
            part = parts.pop(0)
            raw[name] = self._value(kind_of(fields[name].type), line, part, [], f"{path}/{name}")
        self._record(struct, line, parts, raw, path)
        return raw

    def _record(
        self,
        struct: type[msgspec.Struct] | None,
        line: Line,
        parts: list[TextPart],
        raw: dict[str, Any],
        path: str,
    ) -> None:
        """Read `field value` from each part, then the fields below the line, and the steps among them."""
        fields = fields_of(struct) if struct else {}
        tag = tag_of(struct)[0] if struct else ""
        for part in parts:
            name, _, said = part.text.partition(" ")
            name = name.rstrip(":")
            if not said.strip():
                self.faults.append(
                    line.fault(
                        phrase("field-says-nothing", said=part.text[:60]), phrase("write-field"), part.offset
                    )
                )
                continue
            if name in raw:
                self._twice(line, name)
                continue
            kind = _NAME if name == tag else _kind_in(fields)(name)
            start = part.offset + len(part.text) - len(said.lstrip())
            raw[name] = self._value(kind, line, TextPart(said.strip(), start), [], f"{path}/{name}")
        steps = "steps" in fields
        if steps:
            self._mark(f"{path}/steps", line)
            raw.setdefault("steps", [])
        for inner in line.inner:
            head, colon, _ = inner.text.partition(":")
            if colon and head in fields and not (steps and head == "steps"):
                self._field(inner, _kind_in(fields), raw, path)
            elif steps:
                at = f"{path}/steps/{len(raw['steps'])}"
                raw["steps"].append(self._step(inner, at))
            else:
                self._field(inner, _kind_in(fields), raw, path)

    def _field(self, line: Line, kind_named: Callable[[str], Kind], raw: dict[str, Any], path: str) -> None:
        """Read `name: value` into `raw`, where a value of that name is of the kind `kind_named` returns."""
        try:
            head, rest = split_label(line.text)
            name = str(read_word(head.text, _NAME))
        except (OpenQuote, ValueError) as error:
            self._guard(line, error)
            return
        if rest is None:
            self.faults.append(
                line.fault(phrase("line-says-nothing", said=line.text[:60]), phrase("write-line-field"))
            )
            return
        if name in raw:
            self._twice(line, name)
            return
        raw[name] = self._value(kind_named(name), line, rest, line.inner, f"{path}/{name}")

    # --- values -----------------------------------------------------------------------------------------

    def _value(self, kind: Kind, line: Line, part: TextPart, inner: list[Line], path: str) -> Any:
        self._mark(path, line, part.offset)
        text = part.text
        try:
            if text.startswith(("{", "[")) and kind not in (_LONG_TEXT, _NAME):
                return json.loads(text)
            if not text:
                return self._block(kind, line, inner, path)
            if kind.structs and not kind.items:
                raw: dict[str, Any] = {}
                here = Line(line.text, line.number, line.column, inner)
                self._record(
                    _struct(kind, text, inner), here, list(split_parts(text, part.offset)), raw, path
                )
                return raw
            if inner:
                lone = inner[0]
                self.faults.append(lone.fault(phrase("line-belongs-nowhere"), phrase("write-level")))
            if kind.items is not None:
                return [] if text == NONE else self._list(kind_of(kind.items), line, part, path)
            if kind.values is not None and not kind.text:
                return {} if text == NONE else self._table(kind_of(kind.values), line, part, path)
            return read_word(text, kind)
        except (OpenQuote, ValueError, RecursionError) as error:
            self._guard(line, error if isinstance(error, OpenQuote) else ValueError(), part.offset)
            return None

    def _list(self, kind: Kind, line: Line, part: TextPart, path: str) -> list[Any]:
        values: list[Any] = []
        for word in split_words(part.text, part.offset):
            self._mark(f"{path}/{len(values)}", line, word.offset)
            values.append(read_word(word.text, kind))
        return values

    def _table(self, kind: Kind, line: Line, part: TextPart, path: str) -> dict[str, Any]:
        table: dict[str, Any] = {}
        for word in split_words(part.text, part.offset):
            if word.text.startswith('"'):
                key, end = json.JSONDecoder().raw_decode(word.text)
            else:
                end = word.text.find("=")
                key = word.text[:end]
            said = word.text[end + 1 :]
            if end < 0 or word.text[end : end + 1] != "=" or not said:
                shown = phrase("pair-says-nothing", said=word.text[:60])
                self.faults.append(line.fault(shown, phrase("write-pair"), word.offset))
            elif key in table:
                self._twice(line, str(key))
            else:
                self._mark(f"{path}/{key}", line, word.offset)
                table[str(key)] = read_word(said, kind)
        return table

    def _block(self, kind: Kind, line: Line, inner: list[Line], path: str) -> Any:
        """Read a value that stands in the lines below its name."""
        if inner and inner[0].text.startswith("|"):
            for lone in (one for one in inner if not one.text.startswith("|")):
                self.faults.append(lone.fault(phrase("line-belongs-nowhere"), phrase("write-level")))
            return "\n".join(_bar_text(one.text) for one in inner)
        if kind.steps:
            return [self._step(one, f"{path}/{i}") for i, one in enumerate(inner)]
        if inner and inner[0].text.startswith("-"):
            return [self._item(kind, one, f"{path}/{i}") for i, one in enumerate(inner)]
        raw: dict[str, Any] = {}
        if kind.structs and not kind.items:
            self._record(_struct(kind, "", inner), line, [], raw, path)
            return raw
        if inner or kind.values is not None:
            each = _ANYTHING if kind.values is None else kind_of(kind.values)
            for one in inner:
                self._field(one, lambda _: each, raw, path)
            return raw
        return [] if kind.items is not None else ""

    def _item(self, kind: Kind, line: Line, path: str) -> Any:
        """Read a line of a list of records, after its dash."""
        if not line.text.startswith("-"):
            self.faults.append(line.fault(phrase("line-belongs-nowhere"), phrase("write-level")))
            return None
        text = line.text[1:].strip()
        inner = kind_of(kind.items) if kind.items is not None else _ANYTHING
        part = TextPart(text, len(line.text) - len(text))
        if not text and inner.structs:
            return self._block(inner, line, line.inner, path)
        if inner.structs and not text.startswith(("{", "[")):
            raw: dict[str, Any] = {}
            self._mark(path, line)
            try:
                parts = list(split_parts(text, part.offset))
            except OpenQuote as error:
                self._guard(line, error)
                return raw
            self._record(_struct(inner, text, line.inner), line, parts, raw, path)
            return raw
        return self._value(inner, line, part, line.inner, path)

    # --- steps ------------------------------------------------------------------------------------------

    def _step(self, line: Line, path: str) -> dict[str, Any]:
        self._mark(path, line)
        word, rest = _first_word(line.text)
        offset = len(line.text) - len(rest)
        if word in _WORDS:
            do, label = _WORDS[word]
            return {"do": do, **self._entry(_STEPS[do], line, TextPart(rest, offset), path, label=label)}
        if word == "do":
            do = rest.partition(":")[0].strip()
            if do in _STEPS:
                after = rest[len(rest.partition(":")[0]) :]
                part = TextPart(after, len(line.text) - len(after))
                return {"do": do, **self._entry(_STEPS[do], line, part, path)}
        try:
            raw = fields_of_line(line.text)
        except ValueError:
            self.faults.append(line.fault(phrase("line-no-move", said=line.text[:60]), nearest_example(word)))
            return {"do": "turn"}
        fields = fields_of(_STEPS[raw["do"]])
        said: dict[str, Any] = {}
        for inner in line.inner:
            self._field(inner, _kind_in(fields), said, path)
        return raw | said


def _struct(kind: Kind, text: str, inner: list[Line]) -> type[msgspec.Struct] | None:
    """Pick the record that is meant, by its tag on the line or below it."""
    if len(kind.structs) == 1:
        return kind.structs[0]
    field = tag_of(kind.structs[0])[0]
    said = [part.text.split() for part in split_parts(text)] + [
        one.text.replace(":", " ", 1).split() for one in inner
    ]
    chosen = next((words[1] for words in said if len(words) == 2 and words[0] == field), "")
    return next((one for one in kind.structs if tag_of(one)[1] == chosen), None)


def _kind_in(fields: dict[str, FieldKind]) -> Callable[[str], Kind]:
    """Return what looks up the kind of a record's field; a field that does not exist may hold anything."""
    return lambda name: kind_of(fields[name].type) if name in fields else _ANYTHING


def _first_word(text: str) -> tuple[str, str]:
    """Part a line into its first word, without a colon after it, and the rest, with it."""
    end = next((at for at, sign in enumerate(text) if sign in ": "), len(text))
    return text[:end], text[end:].lstrip(" ")


def _bar_text(text: str) -> str:
    return text[2:] if text.startswith("| ") else text[1:]


def _shift(error: OpenQuote | ValueError, offset: int) -> OpenQuote | ValueError:
    return OpenQuote(error.offset + offset) if isinstance(error, OpenQuote) else error
