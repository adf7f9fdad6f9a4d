"""The same piece in a simpler order: only what commutes changes places, and nothing gets worse."""

from __future__ import annotations

import random

import msgspec
import pytest

from examples.pieces import PIECES
from pegwright.loom import replay_pattern
from pegwright.pattern import Pattern, PatternBuilder, Rows, expand
from pegwright.planner import find_simpler, measure_effort
from pegwright.workshop import work


def two_chains(seed: int = 0, swaps: int = 60) -> Pattern:
    """Two chains side by side that a cord joins, a link now here, now there, as a hasty maker writes it."""
    m = PatternBuilder("Ferry wake", Rows(rows=2, pegs=7))
    m.colour("A", "slate blue", "#34506b").colour("F", "foam white", "#f2efe6")
    for peg in range(1, 6):
        m.place("A", f"A{peg}", f"A{peg + 1}")
        m.place("F", f"B{peg}", f"B{peg + 1}")
    for peg in range(5, 1, -1):
        m.hook(f"A{peg}", f"A{peg - 1}")
        m.hook(f"B{peg}", f"B{peg - 1}")
    m.knot("A1", "B1", "A6", "B6")
    moves = [done.move for done in expand(m.pattern()).moves]
    rng = random.Random(seed)
    for _ in range(swaps):
        at = rng.randrange(len(moves) - 2)
        one, other = moves[at : at + 2]
        if type(one) is type(other) and not _pegs(one) & _pegs(other):
            moves[at : at + 2] = [other, one]
    return msgspec.structs.replace(m.pattern(), steps=tuple(moves))


@pytest.mark.parametrize("seed", range(6))
def test_chains_worked_by_turns_become_one_after_the_other(seed):
    """Two repeats lay them, two work them, or one that comes twice; and the cord: eight phrases."""
    given = two_chains(seed)
    found = find_simpler(given, seconds=60)
    assert found.after is not None
    assert found.pattern is not None
    assert found.after.is_better_than(found.before)
    assert found.after.phrases <= 8
    assert work(found.pattern).holds == work(given).holds
    assert measure_effort(replay_pattern(found.pattern)) == found.after


def test_it_is_never_worse_in_anything():
    """By turns from end to end takes one phrase less than one chain after the other, and more changes."""
    found = find_simpler(two_chains(swaps=0), seconds=60)
    assert (found.before.phrases, found.before.colour_changes) == (7, 9)
    assert found.after is not None
    assert (found.after.phrases, found.after.colour_changes) == (7, 9)
    assert found.after.travel_mm < found.before.travel_mm


def _pegs(move) -> set[str]:
    return {*getattr(move, "over", ()), getattr(move, "source", ""), getattr(move, "target", "")} - {""}


def test_a_chain_has_no_simpler_order():
    found = find_simpler(PIECES["ebb-line"](), seconds=60)
    assert (found.after, found.pattern) == (None, None)
    assert [one.code for one in found.findings] == ["no-simpler-order"]


def test_the_first_band_of_a_tail_stays_first():
    """The clip catches it as `start`."""
    tail = PIECES["herring-tail"]()
    found = find_simpler(tail, seconds=60)
    assert found.pattern is not None
    assert found.pattern.steps[0] == tail.steps[0]
    assert work(found.pattern).holds


def test_what_cannot_be_made_is_not_put_in_another_order():
    m = PatternBuilder("Off the loom", Rows(rows=1, pegs=2)).colour("A", "slate", "#4A5A6A")
    m.place("A", "A1", "A9")
    assert [one.code for one in find_simpler(m.pattern()).findings] == ["peg-unknown"]
