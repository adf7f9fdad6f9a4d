"""Of a few bands the planner's answer is complete: it finds an order exactly where there is one."""

from __future__ import annotations

import random

import jsonpatch
import msgspec
import pytest

from pegwright.pattern import Pattern, PatternBuilder, Rows, write_pattern
from pegwright.planner import propose
from pegwright.workshop import work
from testing.every_order import random_placement, some_order_holds


@pytest.mark.parametrize("seed", range(24))
def test_it_agrees_with_every_order_tried_one_after_the_other(seed):
    pattern = random_placement(random.Random(seed), 2 + seed % 3, closed=seed % 2 == 1)
    plans = propose(pattern, most=1, seconds=300, with_fix=False)
    assert not plans.cut_short
    assert bool(plans.found) == some_order_holds(pattern)
    if not plans.found:
        assert [f.code for f in plans.findings] == ["order-none"]


def apart() -> Pattern:
    """Return two bands on one pair of pegs, and another that has nothing to do with them."""
    m = PatternBuilder("Apart", Rows(rows=1, pegs=6)).colour("A", "slate", "#4A5A6A")
    m.place("A", "A1", "A2")
    m.place("A", "A2", "A3")
    m.place("A", "A4", "A5")
    m.clip("A1")
    return m.pattern()


def test_bands_that_can_never_be_caught_are_named_with_what_would_help():
    pattern = apart()
    (told,) = propose(pattern, seconds=300).findings
    assert told.code == "order-none"
    assert told.facts["bands"] == (3,)
    assert told.fix is not None
    raw = jsonpatch.apply_patch(msgspec.json.decode(write_pattern(pattern)), list(told.fix.patch))
    helped = propose(msgspec.convert(raw, Pattern), seconds=300)
    assert work(helped.found[0].pattern).holds


def test_the_sample_holds_placements_with_an_order_and_without():
    drawn = [random_placement(random.Random(seed), 2 + seed % 3, closed=seed % 2 == 1) for seed in range(24)]
    assert {some_order_holds(pattern) for pattern in drawn} == {True, False}
