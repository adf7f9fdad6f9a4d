"""What is counted covers every move once and is truly the same again."""

from __future__ import annotations

import random
from itertools import pairwise

from hypothesis import given, strategies as st

from pegwright.lesson.scene.rounds import CountedRounds, Shift, group_rounds, shift_between
from pegwright.loom import replay_pattern
from pegwright.pattern import PatternBuilder, Place, Round, Rows

LOOM = Rows(rows=2, pegs=40)


def _flat(seed: int, blocks: list[tuple[int, int, int]]) -> PatternBuilder:
    """Write blocks of placings one after the other, each so many moves long, so often, moved on so far."""
    rng = random.Random(seed)
    m = PatternBuilder("Flood", LOOM).colour("A", "slate", "#445566").colour("B", "foam", "#ddeeee")
    for size, times, on in blocks:
        start = rng.randint(1, 8)
        moves = [(rng.choice("AB"), rng.choice("AB"), start + rng.randint(0, 3)) for _ in range(size)]
        for k in range(times):
            for colour, row, peg in moves:
                m.place(colour, f"{row}{peg + k * on}", f"{row}{peg + k * on + 1}")
    return m


@given(
    st.integers(0, 10_000),
    st.lists(st.tuples(st.integers(1, 4), st.integers(1, 6), st.integers(0, 3)), min_size=1, max_size=4),
)
def test_every_move_is_taught_once(seed: int, blocks: list[tuple[int, int, int]]) -> None:
    """Laid end to end, what is taught and what is counted are all the moves in order."""
    pattern = _flat(seed, blocks).pattern()
    done = replay_pattern(pattern).moves
    found: list[int] = []
    for taught in group_rounds(done):
        if isinstance(taught, CountedRounds):
            assert tuple(found[-len(taught.model) :]) == taught.model
            found += [index for each in taught.rounds for index in each]
        else:
            found.append(taught)
    assert found == list(range(len(done)))


@given(
    st.integers(0, 10_000),
    st.lists(st.tuples(st.integers(1, 4), st.integers(1, 6), st.integers(0, 3)), min_size=1, max_size=4),
)
def test_a_counted_round_lies_one_even_step_further_on(seed: int, blocks: list[tuple[int, int, int]]) -> None:
    """Checked peg by peg, without the shift that the room worked out."""
    pattern = _flat(seed, blocks).pattern()
    done = replay_pattern(pattern).moves

    def pegs(indices: tuple[int, ...]) -> list[tuple[str, int]]:
        moves = [done[i].move for i in indices]
        return [(at[0], int(at[1:])) for move in moves if isinstance(move, Place) for at in move.over]

    for taught in group_rounds(done):
        if isinstance(taught, CountedRounds):
            rows = [pegs(each) for each in (taught.model, *taught.rounds)]
            steps = {
                (ord(q[0]) - ord(p[0]), q[1] - p[1])
                for a, b in pairwise(rows)
                for p, q in zip(a, b, strict=True)
            }
            assert len(steps) == 1


def test_a_long_even_run_is_found_without_a_repeat_in_the_document() -> None:
    """Twelve single placings in a row are one move and eleven rounds."""
    done = replay_pattern(_flat(1, [(1, 12, 1)]).pattern()).moves
    taught = group_rounds(done)
    assert len(taught) == 2
    assert isinstance(taught[1], CountedRounds)
    assert len(taught[1].rounds) == 11


def test_a_step_with_its_own_note_is_not_swallowed() -> None:
    """The fifth placing carries a warning, so it is taught by itself."""
    m = PatternBuilder("Flood", LOOM).colour("A", "slate", "#445566")
    for k in range(10):
        m.place("A", f"A{k + 1}", f"A{k + 2}", warning="Tight here." if k == 4 else "")
    done = replay_pattern(m.pattern()).moves
    assert 4 in group_rounds(done)


def test_colours_may_change_from_round_to_round_but_consistently() -> None:
    """A for B is a change of colour; A for B and A for A at once is another thing."""
    one, two = Place(colour="A", over=("A1", "A2")), Place(colour="A", over=("A2", "A3"))
    other = Place(colour="B", over=("A2", "A3"))
    assert shift_between([one], [other]) == Shift(0, 1)
    assert shift_between([one, one], [other, two]) is None


def test_on_a_ring_the_first_peg_comes_after_the_last() -> None:
    """Twelve bands from peg to peg, the last one back to the first: one step, and eleven times again."""
    m = PatternBuilder("Ring", Round(pegs=12, diameter_mm=62.0)).colour("A", "slate", "#445566")
    with m.repeat(11, pegs=1):
        m.place("A", "A1", "A2")
    m.place("A", "A12", "A1")
    done = replay_pattern(m.pattern()).moves
    assert group_rounds(done, 12) == [0, CountedRounds((0,), tuple((k,) for k in range(1, 12)))]
    assert len(group_rounds(done)) == 3
    one, two = Place(colour="A", over=("A12", "A1")), Place(colour="A", over=("A1", "A2"))
    assert shift_between([one], [two], 12) == Shift(0, 1)
    assert shift_between([two], [one], 12) == Shift(0, -1)
    assert shift_between([one], [two]) is None


def test_a_round_in_which_a_move_was_refused_is_taught_by_itself() -> None:
    """Such a repeat crashed the lesson and the review: its rounds were taken to be of one length."""
    m = PatternBuilder("Flood", Rows(rows=1, pegs=6)).colour("A", "slate", "#445566")
    with m.repeat(4, pegs=1):
        m.place("A", "A1", "A2")
        m.place("A", "A3", "A4")  # the loom ends before the last of these
    done = replay_pattern(m.pattern()).moves
    assert group_rounds(done) == [0, 1, CountedRounds((0, 1), ((2, 3), (4, 5))), 6]


def test_a_course_of_rounds_that_comes_again_is_taught_once() -> None:
    """Courses of four placings and four lifts, colours changing: only the first of them is taught."""
    m = PatternBuilder("Courses", Rows(rows=2, pegs=6))
    m.colour("A", "slate", "#445566").colour("B", "foam", "#ddeeee")
    for k in range(6):
        with m.repeat(4, pegs=1):
            m.place("AB"[k % 2], "A1", "B1")
        with m.repeat(4, pegs=1):
            m.lift("A1") if k else m.place("B", "A2", "A3")
    done = replay_pattern(m.pattern()).moves
    taught = group_rounds(done)
    spans = [span for span in taught if isinstance(span, CountedRounds) and len(span.model) == 8]
    assert [len(span.rounds) for span in spans] == [4]
    assert spans[0].model == tuple(range(8, 16))
    assert [index for each in spans[0].rounds for index in each] == list(range(16, 48))
