"""Lines of moves that say the same thing in two ways."""

from __future__ import annotations

from pegwright import loom, pattern


def test_turns_of_one_and_twists_of_none_are_as_if_nothing_were_said() -> None:
    said = pattern.Place(colour="A", over=("A1", "A2"), turns=(1, 1), twists=(0,))
    plain = pattern.Place(colour="A", over=("A1", "A2"))
    assert loom.parse_move(loom.print_move(said)) == plain
    assert loom.print_move(said) == loom.print_move(plain)
