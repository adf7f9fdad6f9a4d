"""The document: exact round trips, migrations, the published schema, and every problem reported."""

from __future__ import annotations

import json

import jsonschema
import pytest
from hypothesis import given, settings

from pegwright import pattern
from pegwright.pattern import PatternBuilder, Rows
from pegwright.pattern.migrations import MIGRATIONS, migrate
from testing.strategies import patterns

SMALLEST = {"pegwright": 2, "title": "Ebb", "loom": {"kind": "rows", "rows": 1, "pegs": 3}}


def reading(**changes):
    return pattern.read_pattern(json.dumps({**SMALLEST, **changes}).encode())


@given(patterns)
def test_a_pattern_reads_back_from_its_text(piece):
    text = pattern.write_pattern(piece)
    back = pattern.read_pattern(text)
    assert back.findings == ()
    assert back.pattern == piece
    assert pattern.write_pattern(back.pattern) == text


@given(patterns)
@settings(max_examples=30)
def test_every_pattern_obeys_the_published_schema(piece):
    jsonschema.validate(
        json.loads(pattern.write_pattern(piece)),
        pattern.pattern_schema(),
        cls=jsonschema.Draft202012Validator,
    )


def test_the_schema_is_a_schema_and_refuses_what_the_reader_refuses():
    jsonschema.Draft202012Validator.check_schema(pattern.pattern_schema())
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({**SMALLEST, "steps": [{"do": "hook", "from": "A1"}]}, pattern.pattern_schema())


def test_all_problems_are_reported_with_their_paths():
    found = reading(
        title=5,
        loom={"kind": "rows", "rows": 0, "pegs": "x", "colour": 1},
        steps=[
            {"do": "zap"},
            {"do": "repeat", "times": 2, "steps": [{"do": "place", "colour": "A", "over": ["A1"]}]},
            3,
        ],
    ).findings
    assert [f.place.path for f in found] == [
        "/title",
        "/loom/colour",
        "/loom/rows",
        "/loom/pegs",
        "/steps/0",
        "/steps/1/steps/0/over",
        "/steps/2",
    ]


def test_a_fault_in_the_text_has_its_line_and_column():
    (found,) = pattern.read_pattern(b'{\n  "pegwright": 2,\n  "title": "\xc3\xa9" oops\n}').findings
    assert (found.code, found.place.line, found.place.column) == ("not-json", 3, 16)


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (b"", "not-json"),
        (b"\x00\xff\xfe", "not-text"),
        (b"[]", "not-a-pattern"),
        (b"[" * 200_000, "not-json"),
        (b'{"pegwright": 99}', "unknown-version"),
        (b'{"pegwright": true}', "unknown-version"),
        (b'{"title": "x"}', "unknown-version"),
        (b'{"pegwright": 2, "title": "' + b"x" * 9_000_000 + b'"}', "too-large"),
        (json.dumps({**SMALLEST, "title": "x" * 7_000_000}).encode(), "not-a-pattern"),
        (b'{"pegwright": 2, "title": NaN}', "not-json"),
    ],
    ids=lambda v: v if isinstance(v, str) else "",
)
def test_anything_at_all_gives_a_finding(data, code):
    result = pattern.read_pattern(data)
    assert result.pattern is None
    assert result.findings[0].code == code


def test_version_1_is_brought_up():
    old = {**SMALLEST, "pegwright": 1, "band": {"bore_mm": 12.0, "thickness_mm": 1.4}}
    new = migrate(old)
    assert new["bands"] == [{"name": "standard", "bore_mm": 12.0, "thickness_mm": 1.4}]
    assert "band" not in new
    piece = pattern.read_pattern(json.dumps(old).encode()).pattern
    assert piece is not None
    assert piece.bands[0].bore_mm == 12.0
    assert old["pegwright"] == 1, "the old document is left as it was"


def test_there_is_a_migration_from_every_version():
    assert sorted(MIGRATIONS) == list(range(1, pattern.VERSION))


def test_a_maker_says_what_the_document_says():
    m = PatternBuilder("Ebb", Rows(rows=1, pegs=3)).colour("A", "slate", "#445566")
    with m.repeat(2, pegs=1):
        m.place("A", "A1", "A2")
    m.turn(note="turn it away from you")
    m.hook("A2", "A1")
    m.knot("A1")
    text = json.loads(pattern.write_pattern(m.pattern()))
    assert text["steps"] == [
        {
            "do": "repeat",
            "times": 2,
            "steps": [{"do": "place", "colour": "A", "over": ["A1", "A2"]}],
            "pegs": 1,
        },
        {"do": "turn", "note": "turn it away from you"},
        {"do": "hook", "from": "A2", "to": "A1"},
        {"do": "knot", "at": ["A1"]},
    ]


@pytest.mark.parametrize(
    "text", [" ", "\t\n", "\u00a0", "\u200b", "\u202e\u2066", "\u2800", "\u3164", "\x1b"]
)
def test_a_name_that_shows_nothing_is_a_finding(text):
    colour = {"letter": "A", "name": text, "hex": "#445566"}
    result = reading(title=text, designer=text, colours=[colour])
    assert [f.place.path for f in result.findings] == ["/title", "/designer", "/colours/0/name"]
    assert reading(title=text + "e", designer="").findings == ()


@pytest.mark.parametrize(("letter", "peg", "tint"), [("A\n", "A1\n", "#445566\n")])
def test_a_line_end_after_a_name_is_a_finding(letter, peg, tint):
    result = reading(
        colours=[{"letter": letter, "name": "slate", "hex": tint}], steps=[{"do": "lift", "at": peg}]
    )
    assert [f.place.path for f in result.findings] == ["/colours/0/letter", "/colours/0/hex", "/steps/0/at"]


@pytest.mark.parametrize(
    ("title", "rows", "path"), [("x" * 300, 1, "/title"), (" ", 1, "/title"), ("Ebb", -3, "/loom/rows")]
)
def test_a_maker_does_not_make_what_cannot_be_read(title, rows, path):
    with pytest.raises(ValueError, match=path):
        PatternBuilder(title, Rows(rows=rows, pegs=3)).pattern()
    assert PatternBuilder("x" * 200, Rows(rows=1, pegs=3)).pattern().title == "x" * 200


@pytest.mark.parametrize(
    ("change", "path", "said", "advised"),
    [
        ({"level": "expert"}, "/level", "'expert' is not a choice", "basic, easy, intermediate, complex"),
        ({"steps": [{"do": "plce"}]}, "/steps/0", "'plce' is not a choice for do", "perhaps place"),
        ({"steps": [7]}, "/steps/0", "7 is not an object in braces", '{"do": "place", …}'),
        ({"steps": {}}, "/steps", "an object in braces is not a list in brackets", "[…]"),
        ({"title": "x" * 201}, "/title", "201 characters are too many", "at most 200"),
        ({"title": None}, "/title", "null is not a text", "double quotes"),
        (
            {"colours": [{"letter": "A", "name": "x", "hex": "red"}]},
            "/colours/0/hex",
            "'red' is not a tint",
            "#34506b",
        ),
        ({"steps": [{"do": "lift", "at": "a1"}]}, "/steps/0/at", "'a1' is not a peg address", "as in B3"),
        (
            {"loom": {"kind": "rows", "rows": 0, "pegs": 3}},
            "/loom/rows",
            "0 is out of bounds",
            "at least 1 and",
        ),
        (
            {"steps": [{"do": "repeat", "times": 0.5, "steps": []}]},
            "/steps/0/times",
            "0.5 is not a whole",
            "",
        ),
    ],
)
def test_a_fault_is_told_in_a_designers_words_with_the_choices(change, path, said, advised):
    (found,) = reading(**change).findings
    assert found.place.path == path
    assert said in found.message
    assert advised in found.hint


def test_a_key_given_twice_is_a_finding_with_its_place():
    text = '{"pegwright": 2, "title": "x",\n "title": "y", "loom": {"kind": "rows", "rows": 1, "pegs": 3}}'
    result = pattern.read_pattern(text.encode())
    assert result.pattern is None
    assert [(f.code, f.place.path, f.message) for f in result.findings] == [
        ("not-a-pattern", "/title", "the field 'title' is given twice")
    ]
    assert pattern.read_pattern(text.replace('"title": "y", ', "").encode()).findings == ()


def test_repeats_nested_too_deeply_are_named_so_however_deep():
    for depth in (26, 49, 55):
        inner = {"do": "turn"}
        for _ in range(depth):
            inner = {"do": "repeat", "times": 1, "steps": [inner]}
        found = pattern.expand(reading(steps=[inner]).pattern).findings
        assert [f.code for f in found] == ["nested-too-deeply"], depth
