"""Least words by cuts, against every set of bands tried, and on pieces whose words are too long for that."""

from __future__ import annotations

import pytest
from hypothesis import given, settings, strategies as st

from pegwright.loom import Bight, Event
from pegwright.proof import check
from pegwright.proof.fastener_words import FastenerWords
from pegwright.proof.least import make_least
from pegwright.proof.ropes import Ropes
from pegwright.proof.word_reduction import reduce_words
from pegwright.structure import structure_of
from testing.histories import Sketch
from testing.proof_programs import program
from tests.proof import naive
from tests.proof.facts import proved


def tail(bands: int, pegs: int) -> list[Event]:
    """A tail on several pegs: the lowest of three bands is lifted over the others on every one."""
    loom = Sketch()
    names = [f"p{i}" for i in range(pegs)]
    laid: list[int] = []
    for i in range(bands):
        laid.append(loom.lay(*names, twists=(1,) + (0,) * (pegs - 2) if i == 0 else ()))
        if i >= 2:
            for index in range(pegs):
                loom.lift(Bight(laid[i - 2], index))
    loom.fasten(*names)
    return loom.events


@settings(max_examples=300, deadline=None)
@given(st.integers(0, 2**48))
def test_cuts_find_what_trying_every_set_finds(seed: int) -> None:
    """The same length, and the same bands."""
    events = program(seed, most_bands=6)
    ropes = Ropes()
    words = FastenerWords(ropes).write(reduce_words(structure_of(events)))
    least = make_least(ropes, words)
    slow = naive.shortest(naive.fastener_words(events))
    assert least.flows is not None
    assert sum(ropes.length[word >> 1] for word in least.words) == naive.total(slow)
    assert set().union(*(ropes.bands_in(w) for w in least.words)) == {abs(x) for w in slow for x in w}


@pytest.mark.parametrize("pegs", [2, 3, 4])
@pytest.mark.parametrize("bands", [6, 12, 22, 34])
def test_a_tail_on_any_number_of_pegs_is_held(bands: int, pegs: int) -> None:
    """Whatever the number of its repeats, every band is, and the checker agrees."""
    events = tail(bands, pegs)
    proof = proved(events)
    assert proof.held == tuple(range(1, bands + 1))
    assert check(events, proof) is None


def uneven_tail(bands: int) -> list[Event]:
    """A tail on two pegs, one lift ahead on the second; half of it, then a chain of single lifts.

    Its clip catches the first band's loop as well.
    """
    loom = Sketch()
    loom.lay("p", "q", twists=(1,))
    loom.lay("p", "q")
    loom.lift(Bight(1, 1))
    for band in range(3, bands + 1):
        loom.lay("p", "q")
        loom.lift(loom.stacks["p"][0])
        loom.lift(loom.stacks["q"][0])
        if band == bands // 2:
            loom.lift(loom.stacks["p"][0])
    loom.move("q", "p")
    loom.stacks["start"] = [Bight(1, 0)]
    loom.fasten("start", "p")
    return loom.events


@pytest.mark.parametrize("bands", [20, 30, 50])
def test_a_word_as_long_as_a_hundred_steps_is_one_step(bands: int) -> None:
    """A block of bands is conjugated by a long word of its own letters: the other bands by its inverse.

    Letter by letter that took 435 steps for 50 bands and was given up.
    """
    events = uneven_tail(bands)
    proof = proved(events)
    assert proof.held == tuple(range(1, bands + 1))
    assert check(events, proof) is None
    assert proof.least is not None
    assert len(proof.least.steps) < 2 * bands


@pytest.mark.parametrize("field", ["flows", "steps", "joins", "words", "letters"])
def test_nothing_may_be_missing_from_least_words(field: str) -> None:
    """Without its last step, join, word, band or flow a certificate is worth nothing."""
    events = tail(9, 3)
    proof = proved(events)
    assert proof.least is not None
    given = getattr(proof.least, field)
    assert given
    less = dict(list(given.items())[:-1]) if isinstance(given, dict) else given[:-1]
    assert check(events, proof._replace(least=proof.least._replace(**{field: less})))
