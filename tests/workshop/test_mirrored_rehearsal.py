"""The rehearsal of the other hand's piece is the mirror image of this hand's; the second way replays it."""

from __future__ import annotations

import pytest

from pegwright.pattern import Pattern, PatternBuilder, Round, Rows, mirror
from pegwright.rehearsal import Rehearsal
from pegwright.workshop import mirror_rehearsal, rehearse_piece, work


def strip() -> Pattern:
    """Three rows, not the same from left to right: two bands out from the middle and a cap."""
    m = PatternBuilder("Skerry", Rows(rows=3, pegs=4))
    m.colour("A", "slate", "#34506b").colour("B", "foam", "#f2efe6")
    m.place("A", "B1", "B2")
    m.place("B", "B2", "A2")
    m.place("A", "B2", "B3")
    m.wind("B", "B3", 2)
    m.turn()
    m.hook("B3", "B2", loop=1)
    m.hook("B2", "B1", loop=1)
    m.hook("A2", "B2", loop=1)
    m.knot("B1", "B2")
    return m.pattern()


def net() -> Pattern:
    """A ring whose rounds run one way."""
    m = PatternBuilder("Creel", Round(pegs=5, diameter_mm=40)).colour("A", "sand", "#d9b26f")
    for _ in range(2):
        with m.repeat(4, pegs=1):
            m.place("A", "A1", "A2")
        m.place("A", "A5", "A1")
    with m.repeat(5, pegs=1):
        m.lift("A1", together=2)
    m.knot(*(f"A{k}" for k in range(1, 6)))
    return m.pattern()


def account(told: Rehearsal) -> list[object]:
    """What a slip is and what comes of it, step by step; among equals the order does not matter."""
    return sorted(
        (
            (
                *(o.slip.at, o.slip.kind, sorted(map(str, o.slip.moves)), o.result, o.falls, o.differs),
                o.first and (o.first.at, o.first.how),  # of several pegs that show it, either may be named
            )
            for o in told.outcomes
        ),
        key=str,
    )


@pytest.mark.parametrize("piece", [strip(), net()], ids=["strip", "ring"])
def test_what_is_mirrored_is_what_is_rehearsed_anew(piece: Pattern) -> None:
    """Slip by slip and outcome by outcome, pegs and signs included; the checks stand at the same moves."""
    made, other = work(piece), work(mirror(piece))
    told = rehearse_piece(made, kept=False, processes=1)
    again = mirror_rehearsal(told, made, other)
    assert again is not None
    anew = rehearse_piece(other, kept=False, processes=1)
    assert again.tried == anew.tried > 10
    assert account(again) == account(anew)
    assert account(again) != account(told)
    assert sum(again.heat) == pytest.approx(sum(anew.heat))
    assert again.checks.after == anew.checks.after


def test_a_piece_that_is_worked_otherwise_is_not_taken_for_the_mirror_image() -> None:
    made = work(strip())
    told = rehearse_piece(made, kept=False, processes=1)
    assert mirror_rehearsal(told, made, made) is None
