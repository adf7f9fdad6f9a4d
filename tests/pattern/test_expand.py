"""Motifs, mirrors and repeats worked out into plain moves."""

from __future__ import annotations

from collections import Counter

import msgspec
from hypothesis import given, strategies as st

from pegwright import loom, pattern
from pegwright.fit.stated_counts import _MotifCounter
from pegwright.pattern import Address, Motif, PatternBuilder, Place, Repeat, Rows, Use, parse_address
from testing.strategies import patterns


def lines(piece):
    expansion = pattern.expand(piece)
    return [loom.print_move(d.move) for d in expansion.moves], [f.code for f in expansion.findings]


def make():
    return PatternBuilder("Ebb", Rows(rows=3, pegs=9))


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
        "place K over A7 B6",
        "place K over A6 B5",
    ]


def test_a_motif_of_motifs_is_mirrored_about_the_middle_of_all_of_it():
    m = make()
    with m.motif("pegs"):
        m.place("A", "A1", "A2")
        m.place("A", "A2", "B2")
    with m.motif("pair"):
        m.use("pegs")
    m.use("pair", pegs=3, mirror=("pegs",))
    m.use("pegs", pegs=3, mirror=("pegs",))
    assert lines(m.pattern()) == (["place A over A5 A4", "place A over A4 B4"] * 2, [])


def test_a_run_that_moves_on_is_mirrored_about_the_middle_of_all_its_rounds():
    m = make()
    with m.motif("run", n=1), m.repeat("n", pegs=1):
        m.place("A", "A1", "A2")
    m.use("run", counts={"n": 3}, mirror=("pegs",))
    assert lines(m.pattern()) == (["place A over A4 A3", "place A over A3 A2", "place A over A2 A1"], [])


spots = st.tuples(st.integers(0, 9), st.integers(1, 30))
mirrors = st.sets(st.sampled_from(["rows", "pegs"])).map(sorted).map(tuple)
runs = st.recursive(
    st.builds(lambda a, b: Place(colour="A", over=(str(Address(*a)), str(Address(*b)))), spots, spots)
    | st.builds(
        Use,
        name=st.sampled_from(["wave", "keel"]),
        rows=st.integers(-2, 3),
        pegs=st.integers(-3, 3),
        mirror=mirrors,
        counts=st.sampled_from([{}, {"n": 3}]),
    ),
    lambda inner: st.builds(
        Repeat,
        times=st.integers(0, 3) | st.just("n"),
        steps=st.lists(inner, min_size=1, max_size=2).map(tuple),
        rows=st.integers(-1, 1),
        pegs=st.integers(-2, 2),
    ),
    max_leaves=5,
)


def worked_first(steps, motifs, counts):
    """The slow way: work all out to rows and numbers, and mirror the finished list about its middle."""
    made = []
    for step in steps:
        if isinstance(step, Repeat):
            times = counts[step.times] if isinstance(step.times, str) else step.times
            for k in range(times):
                inner = worked_first(step.steps, motifs, counts)
                made += [[(r + k * step.rows, n + k * step.pegs) for r, n in over] for over in inner]
        elif isinstance(step, Use):
            inner = worked_first(motifs[step.name].steps, motifs, {**motifs[step.name].counts, **step.counts})
            for axis, name in enumerate(("rows", "pegs")):
                numbers = [spot[axis] for over in inner for spot in over]
                if numbers and name in step.mirror:
                    total = min(numbers) + max(numbers)
                    turn = (lambda s, t: (t - s[0], s[1])) if axis == 0 else (lambda s, t: (s[0], t - s[1]))
                    inner = [[turn(spot, total) for spot in over] for over in inner]
            made += [[(r + step.rows, n + step.pegs) for r, n in over] for over in inner]
        else:
            made.append([tuple(parse_address(at)) for at in step.over])
    return made


@given(
    wave=st.lists(runs, max_size=3).map(tuple).map(lambda steps: tuple(s for s in steps if bare(s))),
    keel=st.lists(runs, max_size=3).map(tuple).map(lambda steps: tuple(s for s in steps if bare(s, "wave"))),
    mirror=mirrors,
    n=st.integers(0, 4),
)
def test_mirroring_is_the_same_as_working_out_first_and_mirroring_afterwards(wave, keel, mirror, n):
    """Far out on the loom, so that nothing runs off it; the motif `keel` may hold `wave`, `wave` no motif."""
    motifs = {
        "wave": Motif(name="wave", steps=wave, counts={"n": 2}),
        "keel": Motif(name="keel", steps=keel, counts={"n": 1}),
    }
    use = Use(name="keel", rows=300, pegs=900, mirror=mirror, counts={"n": n})
    piece = pattern.Pattern(
        pegwright=2, title="Ebb", loom=Rows(rows=1, pegs=3), motifs=tuple(motifs.values()), steps=(use,)
    )
    expansion = pattern.expand(piece)
    assert not expansion.findings
    got = [[tuple(parse_address(at)) for at in doing.move.over] for doing in expansion.moves]
    assert got == worked_first((use,), motifs, {})


def bare(step, *allowed):
    """Say whether a step uses no motifs but those allowed."""
    if isinstance(step, Repeat):
        return all(bare(inner, *allowed) for inner in step.steps)
    return not isinstance(step, Use) or step.name in allowed


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
    doing = pattern.expand(m.pattern()).moves[1]
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
    history = loom.replay_pattern(piece, expansion)
    broken_off = sum(f.facts["left"] for f in history.findings if f.code == "too-many-refused")
    refused = {f.place.step for f in history.findings} - {None}
    assert len(history.moves) + len(refused) + broken_off == len(expansion.moves)


def test_colours_change_with_the_round():
    """A letter of a repeat stands for its colours in turn, from the first again; a repeat within sees it."""
    m = PatternBuilder("Tide", Rows(rows=1, pegs=20)).colour("A", "a", "#000000").colour("F", "f", "#ffffff")
    with m.motif("link", "x"):
        m.place("x", "A1", "A2")
    with m.repeat(5, pegs=2, colours={"ring": ("A", "F", "A2")}):
        m.place("ring", "A1", "A2")
        m.use("link", colours={"x": "ring"}, pegs=1)
    assert [one.move.colour for one in pattern.expand(m.pattern()).moves] == [
        "A",
        "A",
        "F",
        "F",
        "A2",
        "A2",
        *"AAFF",
    ]

    outer = Repeat(
        times=2,
        colours={"x": ("A", "F")},
        steps=(
            Repeat(times=3, colours={"y": ("x", "B")}, steps=(Place(colour="y", over=("A1", "A2")),)),
            Place(colour="x", over=("A1", "A2")),
        ),
    )
    piece = msgspec.structs.replace(m.pattern(), steps=(outer,), motifs=())
    assert [one.move.colour for one in pattern.expand(piece).moves] == [*"ABAA", *"FBFF"]


@given(
    turns=st.dictionaries(
        st.sampled_from("xyz"), st.lists(st.sampled_from("ABCD"), min_size=1, max_size=4).map(tuple)
    ),
    named=st.lists(st.sampled_from("xyzA"), min_size=1, max_size=4),
    times=st.integers(0, 9),
)
def test_stated_counts_of_a_motif_count_the_colours_that_its_rounds_really_have(turns, named, times):
    """The count that makes no moves against the moves."""
    steps = tuple(Place(colour=letter, over=("A1", "A2")) for letter in named)
    motif = Motif(name="wave", steps=(Repeat(times=times, colours=turns, steps=steps),))
    plain = PatternBuilder("Tide", Rows(rows=1, pegs=3)).pattern()
    piece = msgspec.structs.replace(plain, motifs=(motif,), steps=(Use(name="wave"),))
    counted = _MotifCounter(piece).motif(motif, 0)
    assert +Counter({k: n for k, n in counted.items() if len(k) == 1}) == Counter(
        one.move.colour for one in pattern.expand(piece).moves
    )
