"""Pegs of a step that are changed: each to another place, or not at all."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from pegwright.pattern import Address, Clip, Place, parse_address, peg_name, with_pegs


@given(st.integers(0, 701), st.integers(1, 99_999))
def test_a_peg_is_named_as_it_is_read(row: int, number: int) -> None:
    name = peg_name(row, number)
    assert name is not None
    assert parse_address(name) == Address(row, number)


@pytest.mark.parametrize(("row", "number"), [(-1, 3), (702, 3), (0, 0), (4, -2)])
def test_there_is_no_peg_past_the_rows_and_none_before_the_first(row: int, number: int) -> None:
    assert peg_name(row, number) is None


def test_a_step_moves_with_all_its_pegs_or_not_at_all() -> None:
    place = Place(colour="A", over=("ZY1", "ZZ2"))
    assert with_pegs(place, lambda peg: Address(peg.row - 1, peg.number + 1)) == Place(
        colour="A", over=("ZX2", "ZY3")
    )
    assert with_pegs(place, lambda peg: Address(peg.row + 1, peg.number)) is None
    assert with_pegs(Clip(at=("end", "A1")), lambda peg: Address(peg.row, peg.number + 4)) == Clip(
        at=("end", "A5")
    )
