"""Pieces about which the proof was once wrong, written out by hand, and the bands that are held in them."""

from __future__ import annotations

from pegwright.loom import Bight, Event
from testing.histories import Sketch


def lifted_over_what_went_through_a_ring() -> list[Event]:
    """Band 2 went through band 3 with one loop; then band 1 is lifted over both its loops.

    Both loops went through band 1's word, but the first through that of band 3 besides: so band 2 does not
    ride back out of what the two have in common, and band 1 is in use.
    """
    loom = Sketch()
    loom.lay("b", "c")
    loom.lay("b", "a")
    loom.lay("z", "a")
    loom.draw(Bight(2, 1), "b")
    loom.lift(Bight(1, 0))
    loom.draw(Bight(3, 1), "b")
    loom.fasten("b")
    return loom.events


def ridden_through_a_loop_by_both_ends() -> list[Event]:
    """Both loops of band 1 went through band 3, one first through band 2; then 3 is lifted over itself."""
    loom = Sketch()
    loom.lay("d", "e")
    loom.lay("e", "f")
    loom.draw(Bight(1, 1), "d")
    loom.lay("d", "e")
    loom.draw(Bight(1, 1), "f")
    loom.draw(Bight(1, 0), "f")
    loom.move("e", "d")
    loom.lay("f", "a")
    loom.draw(Bight(2, 0), "f")
    loom.lift(Bight(3, 0))
    loom.fasten("a", "f")
    return loom.events


PAST = {
    "lifted over what went through a ring": lifted_over_what_went_through_a_ring,
    "ridden through a loop by both ends": ridden_through_a_loop_by_both_ends,
}
