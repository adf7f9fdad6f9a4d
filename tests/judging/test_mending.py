"""A fix that would let bands fall is not offered; one that puts the work right is."""

from __future__ import annotations

from pegwright.pattern import PatternBuilder, Rows
from pegwright.workshop import work


def dragged(maker: PatternBuilder):
    made = work(maker.pattern())
    return made, [found for found in made.findings if found.code == "loop-dragged"]


def chain() -> PatternBuilder:
    m = PatternBuilder("Mooring", Rows(rows=1, pegs=4)).colour("A", "slate", "#4A5A6A")
    for here, there in (("A1", "A2"), ("A2", "A3"), ("A3", "A4")):
        m.place("A", here, there)
    return m


def test_no_fix_that_lets_the_piece_fall():
    """Worked as written all four bands are held; with the upper loop first all four fall."""
    m = chain()
    for source, target in (("A3", "A2"), ("A3", "A4"), ("A2", "A1")):
        m.hook(source, target)
    m.bind("A", "A1")
    m.clip("end", "A4")
    made, (found,) = dragged(m)
    assert made.holds
    assert found.fix is None


def test_the_fix_of_a_filling_worked_from_below_is_offered():
    m = PatternBuilder("Lantern", Rows(rows=1, pegs=3)).colour("A", "slate", "#4A5A6A")
    m.place("A", "A1", "A2")
    m.place("A", "A2", "A3")
    m.wind("A", "A2", turns=2)
    m.hook("A2", "A1")
    m.hook("A2", "A3")
    m.clip("A1", "A3")
    _, found = dragged(m)
    assert found
    assert found[0].fix is not None


def test_a_clip_is_offered_only_where_it_holds_every_band():
    """A chain hooked back to its first peg is closed there; of one hooked half way the rest would fall."""

    def open_chain(*hooks: tuple[str, str]) -> PatternBuilder:
        m = chain()
        for source, target in hooks:
            m.hook(source, target)
        return m

    def fix_of(maker: PatternBuilder):
        [found] = [each for each in work(maker.pattern()).findings if each.code == "no-finish"]
        return found.fix

    whole = (("A3", "A2"), ("A2", "A1"))
    assert fix_of(open_chain(*whole)) is not None
    closed = open_chain(*whole)
    closed.clip("A1")
    assert work(closed.pattern()).holds

    half = open_chain(("A3", "A4"))
    assert fix_of(half) is None
    half.clip("A4")
    assert not work(half.pattern()).holds
