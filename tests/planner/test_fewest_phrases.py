"""Of small designs the planner proposes a working of as few phrases as can be (bench/plan measures 200)."""

from __future__ import annotations

import random

import pytest

from pegwright.pattern import PatternBuilder, Rows, Turn
from pegwright.planner import propose
from testing.fewest_phrases import fewest_phrases
from testing.small_designs import random_design

SEEDS = (13, 14, 18, 21, 28)


@pytest.mark.parametrize("seed", SEEDS)
def test_no_working_takes_fewer_phrases(seed):
    design = random_design(random.Random(seed), seed)
    found = propose(design, most=5, seconds=60, with_fix=False).found
    assert found
    least = min(
        one.measures.phrases - sum(isinstance(step, Turn) for step in one.pattern.steps) for one in found
    )
    best = fewest_phrases(design, least)
    assert (best.phrases, best.settled) == (None, True)
    assert fewest_phrases(design, least + 1).phrases == least


def test_a_chain_is_one_repeat():
    """Two phrases: the hook, and how often it comes."""
    m = PatternBuilder("Mooring", Rows(rows=1, pegs=6)).colour("A", "slate", "#4A5A6A")
    with m.repeat(5, pegs=1):
        m.place("A", "A1", "A2")
    m.bind("A", "A1")
    m.clip("end")
    assert fewest_phrases(m.pattern(), 9).phrases == 2
