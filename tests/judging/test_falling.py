"""A fall is told by its causes: who starts it, what hangs on that, and since when a band is loose."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from examples.pieces import PIECES
from pegwright.finding import LANGUAGES, word_finding
from pegwright.judging import FALL_CODES, find_falling
from pegwright.judging.falling import _causes, _hanging
from pegwright.loom import replay
from pegwright.pattern import LocatedMove, PatternBuilder, Rows
from pegwright.proof import prove
from pegwright.structure import structure_of
from pegwright.workshop import lesson_of, work
from testing.strategies import SMALL, programs


def chains(*shallow: bool) -> PatternBuilder:
    """Lay short chains in rows of their own, each hooked and clipped; a shallow one lets its start go."""
    m = PatternBuilder("Moorings", Rows(rows=len(shallow), pegs=6, row_gap_mm=60)).colour(
        "A", "slate", "#4A5A6A"
    )
    for row, fails in zip("ABCD", shallow, strict=False):
        for peg in range(1, 6):
            m.place("A", f"{row}{peg}", f"{row}{peg + 1}")
        m.hook(f"{row}5", f"{row}4")
        m.hook(f"{row}4", f"{row}3")
        m.hook(f"{row}3", f"{row}2", through=1 if fails else None)
        m.hook(f"{row}2", f"{row}1")
        m.clip(f"{row}1")
    return m


def told(pattern) -> list[str]:
    return [found.message for found in work(pattern).findings if found.code in FALL_CODES]


def test_a_cause_is_one_finding_with_what_comes_of_it():
    assert told(PIECES["broken/flat-tail"]()) == [
        "bands 24 (F) and 25 (A) slide off over band 26 (F); 22 more are held only by these; "
        "band 1 (A) is loose already on the loom (move 5)"
    ]


def test_two_causes_are_two_findings():
    """Each chain falls by its own shallow hook; the chain between them holds."""
    made = work(chains(True, False, True).pattern())
    found = [one for one in made.findings if one.code in FALL_CODES]
    assert [one.code for one in found] == ["band-falls", "band-falls"]
    bands = {band for one in found for band in one.facts["bands"]}
    assert len(bands) + sum(one.facts["hanging"] for one in found) == len(made.proof.free)
    assert found[0].place.band in range(1, 6)
    assert found[1].place.band in range(11, 16)


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_handout_says_what_the_check_says(language):
    """In each language; only that it counts in steps of the lesson, not in moves."""
    for name in ("broken/flat-tail", "broken/shallow-water", "broken/runs-out"):
        made = work(PIECES[name]())
        [cause] = [found for found in made.findings if found.code in FALL_CODES]
        said = word_finding(cause, language).message.partition(" (A) is loose")[0].partition("; ")[0]
        assert said in made_lesson(made, language)


def made_lesson(made, language: str) -> str:
    return " ".join(lesson_of(made, language).hold.lines)


@given(programs())
def test_every_band_that_falls_is_told_once(moves):
    history = replay(SMALL, tuple(LocatedMove(move, "") for move in moves))
    proof = prove(structure_of(history.events, history.board.spots))
    found = find_falling(history, proof)
    if any(one.code == "more-of-the-same" for one in found):
        return
    causes = [one.facts for one in found if one.code == "band-falls"]
    named = [band for facts in causes for band in facts["bands"]]
    shared = sum(one.facts["bands"] for one in found if one.code == "fall-with-it")
    assert len(named) == len(set(named))
    assert set(named) <= set(proof.free)
    assert len(named) + sum(facts["hanging"] for facts in causes) + shared == len(proof.free)
    opened = [band for one in found if one.code == "band-not-proved" for band in one.facts["bands"]]
    assert sorted(opened) == sorted(proof.unproved)


@given(
    st.dictionaries(st.integers(1, 12), st.frozensets(st.integers(1, 12), max_size=3)),
    st.frozensets(st.integers(1, 12)),
)
def test_whatever_runs_through_what_the_causes_explain_every_band(passing, falling):
    """Also where bands that fall run through one another in a ring."""
    passing = {band: others - {band} for band, others in passing.items()}
    causes = _causes(falling, passing)
    hanging = _hanging(falling, passing, causes)
    starting = [band for cause in causes for band in cause.bands]
    following = [band for bands in hanging.values() for band in bands]
    assert sorted(starting + following) == sorted(falling)
    for cause in causes:
        others = {other for band in cause.bands for other in passing.get(band, ())}
        match cause.reason:
            case "falls-passed-by-none":
                assert not others
            case "falls-off":
                assert others - falling == set(cause.over) != set()
            case "falls-together":
                assert set() != others <= set(cause.bands)
