"""How a piece comes off the loom for its lesson: the other hand's, and what is not known is told."""

from __future__ import annotations

from typing import Any

import pytest

from pegwright.lesson import is_worn
from pegwright.pattern import Pattern, PatternBuilder, Rows, mirror
from pegwright.workshop import bring_to_rest, finish, finishes, mirrored_finish, work
from pegwright.workshop.finishes import cached_finish


def skiff(clip: bool = True) -> Pattern:
    """A chain that is not its own mirror image: a band lies to one side of it."""
    m = (
        PatternBuilder("Skiff", Rows(rows=2, pegs=6))
        .colour("A", "slate", "#34506b")
        .colour("F", "foam", "#f2efe6")
    )
    with m.repeat(5, pegs=1):
        m.place("A", "A1", "A2")
    m.place("F", "A3", "B3")
    m.turn()
    with m.repeat(4, pegs=-1):
        m.hook("A5", "A4")
    m.bind("A", "A1")
    if clip:
        m.clip("end", "A6")
    else:
        m.knot("A6")
    return m.pattern()


@pytest.fixture(autouse=True)
def kept(tmp_path_factory: Any, monkeypatch: Any) -> None:
    monkeypatch.setenv("PEGWRIGHT_CACHE", str(tmp_path_factory.mktemp("kept")))


def test_the_mirrored_pattern_comes_out_as_the_mirror_image() -> None:
    """The second way: mirror the pattern, work it and bring it to rest; length and width within 2 %."""
    found = mirrored_finish(finish(work(skiff()), fit=False)).portrait
    again = bring_to_rest(work(mirror(skiff())))
    assert found is not None
    assert found.length_mm == pytest.approx(again.length_mm, rel=0.02)
    assert found.width_mm == pytest.approx(again.width_mm, rel=0.02)


def test_what_is_not_worn_is_not_pulled_at() -> None:
    assert is_worn(work(skiff()).history)
    flat = work(skiff(clip=False))
    assert not is_worn(flat.history)
    assert finish(flat).measured is None


def test_a_pattern_without_a_band_has_nothing_to_show() -> None:
    empty = PatternBuilder("Nothing", Rows(rows=1, pegs=3)).colour("A", "slate", "#34506b").pattern()
    assert finish(work(empty)).missing == "nothing"


def test_what_was_worked_out_once_is_read_back(monkeypatch: Any) -> None:
    """The same value without a sum; of another piece, and of one that was not pulled at, nothing is known."""
    made = work(skiff())
    assert cached_finish(made) is None
    found = finish(made)
    assert found.portrait is not None
    assert found.measured is not None
    monkeypatch.setattr(finishes, "_work_out", None)
    assert finish(made) == cached_finish(made) == found
    assert cached_finish(made, fit=False) is None
    assert cached_finish(work(skiff(clip=False))) is None
