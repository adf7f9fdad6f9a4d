"""Motifs, mirrors and repeats worked out into plain moves."""

from __future__ import annotations

from hypothesis import given

from pegwright import loom, pattern
from pegwright.pattern import Maker, Motif, Place, Repeat, Rows, Use
from tests.strategies import patterns


def lines(piece):
    expansion = pattern.expand(piece)
    return [loom.print_move(d.move) for d in expansion.doings], [f.code for f in expansion.findings]


def make():
    return Maker("Ebb", Rows(rows=3, pegs=9))


def test_a_repeat_moves_on_each_time():
    m = make()
    with m.repeat(3, pegs=2, rows=1):
        m.hook("A1", "A2")
    assert lines(m.pattern())[0] == ["hook A1 loop 1 to A2", "hook B3 loop 1 to B4", "hook C5 loop 1 to C6"]


def test_repeats_in_repeats_add_their_shifts():
    m = make()
    with m.repeat(2, rows=1), m.repeat(2, pegs=1):
        m.wind("A", "A1")
    assert [line.split()[3] for line in lines(m.pattern())[0]] == ["A1", "A2", "B1", "B2"]


def test_a_motif_takes_colours_and_counts():
    m = make()
    with m.motif("wave", "x", n=1), m.repeat("n", pegs=1):
        m.wind("x", "A1", 2)
    m.use("wave", colours={"x": "K"}, counts={"n": 2})
    assert lines(m.pattern()) == (["wind K on A1 2 turns", "wind K on A2 2 turns"], [])


def test_a_mirrored_motif_swaps_its_own_rows_and_its_shifts():
    m = make()
    with m.motif("wave", "x"), m.repeat(2, pegs=1):
        m.place("x", "A1", "B2")
    m.use("wave", colours={"x": "K"}, mirror=("rows",))
    m.use("wave", colours={"x": "K"}, mirror=("pegs",), pegs=4)
    assert lines(m.pattern())[0] == [
        "place K over B1 A2",
        "place K over B2 A3",
        "place K over A6 B5",
        "place K over A5 B4",
    ]


def test_mirroring_twice_changes_nothing():
    m = make()
    with m.motif("wave"):
        m.hook("A1", "C2")
    with m.motif("back"):
        m.use("wave", mirror=("rows", "pegs"))
    m.use("back")
    m.use("wave", mirror=("rows", "pegs"))
    assert lines(m.pattern())[0] == ["hook C2 loop 1 to A1"] * 2


def test_where_a_move_stands_in_the_document():
    m = make()
    with m.motif("wave"):
        m.turn()
    with m.repeat(2):
        m.use("wave")
    doing = pattern.expand(m.pattern()).doings[1]
    assert (doing.path, doing.rounds, doing.motif) == ("/motifs/0/steps/0", (("/steps/0", 2, 2),), "wave")


def test_what_cannot_be_worked_out_is_found():
    piece = pattern.Pattern(
        pegwright=2,
        title="Ebb",
        loom=Rows(rows=1, pegs=3),
        motifs=(
            Motif(name="eddy", steps=(Use(name="eddy"),)),
            Motif(name="wave", colours=("x",), steps=()),
            Motif(name="wave", steps=()),
        ),
        steps=(
            Use(name="eddy"),
            Use(name="gull"),
            Use(name="wave", colours={"y": "A"}),
            Repeat(times="n", steps=()),
            Repeat(times=3, pegs=-1, steps=(Place(colour="A", over=("A1", "A2")),)),
        ),
    )
    assert lines(piece)[1] == [
        "motif-twice",
        "motif-in-itself",
        "motif-unknown",
        "slot-unknown",
        "slot-empty",
        "count-unknown",
        "off-the-rows",
    ]


def test_a_thousand_million_rounds_stop_at_the_bound():
    for inner in ((), (pattern.Turn(),), (Repeat(times=10**9, steps=(pattern.Turn(),)),)):
        piece = pattern.Pattern(
            pegwright=2, title="Ebb", loom=Rows(rows=1, pegs=3), steps=(Repeat(times=10**9, steps=inner),)
        )
        assert lines(piece)[1] == ["too-many-moves"]


@given(patterns)
def test_any_pattern_is_worked_out_or_found_at_fault(piece):
    expansion = pattern.expand(piece)
    history = loom.replay(loom.board(piece.loom), expansion.doings)
    assert len(history.done) + sum(f.place.step is not None for f in history.findings) == len(
        expansion.doings
    )
