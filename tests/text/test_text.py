"""A pattern as plain text: the same pattern again, from either form; faults by line and column."""

from __future__ import annotations

import random

import pytest
from hypothesis import given, settings

from pegwright.finding import LANGUAGES, word_finding
from pegwright.pattern import (
    VERSION,
    BandType,
    MooneyRivlin,
    Move,
    Pattern,
    PatternBuilder,
    Place,
    Rows,
    Turn,
    read_pattern,
    write_pattern,
)
from pegwright.text import (
    encode_pattern,
    is_pattern_text,
    read_any_pattern,
    read_pattern_text,
    write_pattern_text,
)
from pegwright.text.examples import EXAMPLES
from pegwright.text.moves import fields_of_line
from pegwright.workshop import example_files
from testing.random_documents import random_pattern
from testing.strategies import patterns

HEAD = "pegwright 2\ntitle: Ebb\nloom: kind rows, rows 1, pegs 4\n"


def reading(rest: str, head: str = HEAD):
    return read_pattern_text((head + rest).encode())


def assert_same(piece: Pattern) -> None:
    """The same value, the same bytes of the document, the same text."""
    text = write_pattern_text(piece)
    back = read_pattern_text(text.encode())
    assert back.findings == ()
    assert back.pattern == piece
    assert write_pattern(back.pattern) == write_pattern(piece)
    assert write_pattern_text(back.pattern) == text


@given(patterns)
@settings(max_examples=15, deadline=None)
def test_a_pattern_reads_back_from_its_text(piece):
    assert_same(read_pattern(write_pattern(piece)).pattern)


def test_documents_made_from_the_schema_read_back():
    for seed in range(80):
        assert_same(random_pattern(random.Random(seed)))


@pytest.mark.parametrize("name", example_files())
def test_every_built_in_piece_reads_back(name):
    assert_same(read_pattern(example_files()[name].read_bytes()).pattern)


def test_the_text_says_what_a_maker_says():
    m = PatternBuilder("Ebb", Rows(rows=1, pegs=4), notes="One line.\nAnd another.")
    m.colour("A", "slate blue", "#34506b")
    with m.motif("a link", "rim"):
        m.place("rim", "A1", "A2")
    with m.repeat(3, pegs=1):
        m.use("a link", colours={"rim": "A"})
    m.turn(note="Turn it, please: now.")
    m.hook("A3", "A2")
    m.clip("A2")
    assert write_pattern_text(m.pattern()) == (
        f"pegwright {VERSION}\ntitle: Ebb\nnotes:\n  | One line.\n  | And another.\n"
        "loom: kind rows, rows 1, pegs 4\n\nband:\n\n"
        "colour A: slate blue, #34506b\n\n"
        "motif a link: colours rim\n  place rim over A1 A2\n\n"
        "steps:\n  repeat 3: pegs 1\n    use a link: colours rim=A\n  turn\n    note: Turn it, please: now.\n"
        "  hook A3 loop 1 to A2\n  clip A2\n"
    )


def test_what_goes_without_saying_may_be_left_out_and_comments_are_passed_over():
    text = "# mine\nsteps:\n\thook A3 to A2\n\n\t# here\n\twind A on A2\n\tbind A through A1\n"
    full = "steps:\n  hook A3 loop 1 to A2\n  wind A on A2 3 turns\n  bind A through A1 as end\n"
    assert reading(text).findings == ()
    assert reading(text).pattern == reading(full).pattern
    assert reading(text.replace("\n", "\r\n")).pattern == reading(full).pattern


def test_what_a_moves_line_cannot_say_stands_below_it():
    odd = Place(colour="A", over=("A1", "A2"), turns=(1, 1), twists=(0,), warning="mind")
    piece = PatternBuilder("Ebb", Rows(rows=1, pegs=4)).pattern()
    piece = Pattern(pegwright=VERSION, title=piece.title, loom=piece.loom, steps=(odd, Turn()))
    assert "\n    turns: 1 1\n    twists: 0\n" in write_pattern_text(piece)
    assert_same(piece)


def test_a_translation_of_what_begins_like_a_remark_is_kept():
    """Found by the property test: the line of the key `#` was read as a remark."""
    loom = Rows(rows=1, pegs=4)
    for said in ("#", "#1 of the tide", "# "):
        assert_same(Pattern(pegwright=VERSION, title="Ebb", loom=loom, translations={"de": {said: "Ebbe"}}))


def test_a_measured_rubber_and_no_kind_of_band_are_written():
    kind = BandType(name="wide", rubber=MooneyRivlin(c10_mpa=0.1, c01_mpa=0.2))
    for bands in ((kind,), ()):
        assert_same(Pattern(pegwright=VERSION, title="Ebb", loom=Rows(rows=1, pegs=4), bands=bands))


@pytest.mark.parametrize(
    ("rest", "line", "column", "said"),
    [
        ("steps:\n  plase A over A1 A2\n", 5, 3, "'plase A over A1 A2' is not a step"),
        ("steps:\n  place A over A1\n", 5, 3, "is not a step"),
        ("steps:\n    turn\n  turn\n", 6, 3, "indented"),
        ('designer: "Harbour\n', 4, 11, "not closed"),
        ("loom: kind rows\n", 4, 1, "given twice"),
        ("stated: bands A:14\n", 4, 15, "not a name and its value"),
        ("level: expert\n", 4, 8, "'expert' is not a choice"),
        ("steps:\n  repeat 2: pegs 2000000\n    turn\n", 5, 18, "out of bounds"),
        ("steps:\n  repeat 2: pages 2\n    turn\n", 5, 19, "there is no field 'pages' here"),
        ("colour A: slate, red\n", 4, 18, "'red' is not a tint"),
        ("colour A: slate\n", 4, 1, "the field hex is missing"),
        ("steps:\n  turn\n    note\n", 6, 5, "not a field and its value"),
        ("nonsense\n", 4, 1, "not a field and its value"),
        ("notes: here\n  | and there\n", 5, 3, "belongs to nothing"),
    ],
)
def test_a_fault_has_its_line_and_column(rest, line, column, said):
    found = reading(rest)
    assert found.pattern is None
    places = [(one.place.line, one.place.column) for one in found.findings]
    assert (line, column) in places
    assert said in found.findings[places.index((line, column))].message
    for language in LANGUAGES:
        assert all(word_finding(one, language).hint for one in found.findings)


def test_all_faults_are_told():
    found = reading("level: expert\nsteps:\n  plase\n  turm\n  hook A1\n").findings
    assert [one.place.line for one in found] == [6, 7, 8]
    assert "write it as in: turn" in found[1].hint


def test_either_form_is_told_from_its_first_sign():
    piece = read_pattern(example_files()["ebb-line"].read_bytes()).pattern
    text, document = encode_pattern(piece, "x.pegwright"), encode_pattern(piece, "x.json")
    assert is_pattern_text(text)
    assert not is_pattern_text(document)
    assert read_any_pattern(text).pattern == read_any_pattern(document).pattern == piece
    assert read_any_pattern(b"\xef\xbb\xbf# a piece\n\n" + text).pattern == piece
    (found,) = read_any_pattern(b"title: Ebb\n", "ebb.pegwright").findings
    assert (found.code, found.place.line) == ("unknown-version", 1)


@pytest.mark.parametrize(
    "data",
    [
        b"pegwright",
        b"pegwright 2",
        b"pegwright 99\n",
        b"pegwright 2\n\xff",
        b"pegwright 2\n" + b" \n" * 9_000_000,
        b"pegwright 2\n" + b"".join(b" " * i + b"repeat 2:\n" for i in range(2000)),
        b'pegwright 2\ntitle: "' + b"x" * 1_000_000,
        b"pegwright 2\nloom: " + b"[" * 100_000,
    ],
    ids=range(8),
)
def test_anything_at_all_gives_a_finding(data):
    found = read_pattern_text(data)
    assert found.pattern is None
    assert found.findings


def test_every_move_has_an_example_that_is_one():
    moves = {fields_of_line(line)["do"] for word, line in EXAMPLES.items() if word not in ("repeat", "use")}
    assert moves == {kind.__struct_config__.tag for kind in Move.__args__}
    for word in ("repeat", "use"):
        assert reading(f"steps:\n  {EXAMPLES[word]}\n").findings == ()
