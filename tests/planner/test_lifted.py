"""Bands laid round on round over the same pegs are worked by lifting each round over the next."""

from __future__ import annotations

import jsonpatch
import msgspec
import pytest

from examples.pieces import PIECES
from pegwright.pattern import Hook, Lift, Pattern, Place, Transfer, Use, expand, write_pattern
from pegwright.planner import Proposals, measure_given_working, propose, without_working
from pegwright.workshop import work


@pytest.fixture(scope="module")
def lifted() -> dict[str, Proposals]:
    names = ("herring-tail", "lobster-pot")
    return {name: propose(without_working(PIECES[name]()), most=4, tries=12, seconds=60) for name in names}


def test_the_tail_and_the_tube_take_no_more_phrases_than_by_hand(lifted):
    for name, plans in lifted.items():
        by_hand = measure_given_working(PIECES[name]())
        assert by_hand is not None
        assert plans.found[0].measures.phrases <= by_hand.phrases
        assert plans.found[0].measures.loops_above <= by_hand.loops_above


def test_every_lifted_working_passes_the_ordinary_line(lifted):
    for plans in lifted.values():
        for one in plans.found:
            assert work(one.pattern).holds
            moves = [done.move for done in expand(one.pattern).moves]
            assert any(isinstance(move, Lift) for move in moves)
            assert not any(isinstance(move, Hook) for move in moves)


def test_the_bands_are_laid_in_the_order_given(lifted):
    for name, plans in lifted.items():
        given = [done.move for done in expand(without_working(PIECES[name]())).moves]
        for one in plans.found:
            assert [done.move for done in expand(one.pattern).moves if isinstance(done.move, Place)] == given


def test_motifs_stay_where_the_lifts_come_between_them(lifted):
    best = lifted["lobster-pot"].found[0].pattern
    assert best.motifs == without_working(PIECES["lobster-pot"]()).motifs
    assert [step.name for step in best.steps if isinstance(step, Use)] == ["round"] * 5


def test_the_last_loops_are_gathered_on_one_peg_and_clipped(lifted):
    ends = [one.pattern.steps[-2:] for one in lifted["herring-tail"].found]
    assert any(isinstance(one, Transfer) and "A1" in clip.at for one, clip in ends)


def test_a_tail_laid_flat_needs_its_first_band_crossed():
    """Common practice, no source: a fish-tail begins with a band put on crossed."""
    given = without_working(PIECES["broken/flat-tail"]())
    [told] = propose(given, tries=12, seconds=60).findings
    assert told.code == "order-not-found"
    assert told.fix is not None
    raw = jsonpatch.apply_patch(msgspec.json.decode(write_pattern(given)), list(told.fix.patch))
    assert msgspec.convert(raw, Pattern).steps == without_working(PIECES["herring-tail"]()).steps
