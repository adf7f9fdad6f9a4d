"""Peg addresses: a row letter and a number counted from the maker, such as B3.

Rows are lettered from the maker's left as the loom lies at the start of the piece (A … Z, then AA, AB …).
The address stays with the peg when the loom is turned, as if it were written on the board.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import NamedTuple

_FORM = re.compile(r"([A-Z]{1,2})([1-9][0-9]{0,4})")
LAST_ROW = 26 + 26 * 26 - 1
"""Row ZZ; rows count from 0."""


class Address(NamedTuple):
    """A peg's row (0 for A) and number (from 1)."""

    row: int
    number: int

    def __str__(self) -> str:
        return f"{row_letter(self.row)}{self.number}"


def row_letter(row: int) -> str:
    """Name row 0 A, row 25 Z, row 26 AA.

    Raises:
        ValueError: the row is negative or past ZZ.
    """
    if not 0 <= row <= LAST_ROW:
        raise ValueError(f"no letter for row {row}; rows go from 0 to {LAST_ROW}")
    return chr(65 + row) if row < 26 else chr(65 + row // 26 - 1) + chr(65 + row % 26)


@lru_cache(maxsize=65_536)
def parse_address(text: str) -> Address:
    """Read an address such as B3.

    Raises:
        ValueError: the text is not an address.
    """
    match = _FORM.fullmatch(text)
    if match is None:
        raise ValueError(
            f"{text!r} is not a peg address: one or two capital letters, then a number, as in B3"
        )
    row = 0
    for letter in match[1]:
        row = row * 26 + ord(letter) - 64
    return Address(row - 1, int(match[2]))


def peg_name(row: int, number: int) -> str | None:
    """Return the address of a row (from 0) and number (from 1), or None where there is no such place."""
    return str(Address(row, number)) if 0 <= row <= LAST_ROW and number >= 1 else None


def is_address(text: str) -> bool:
    """Say whether the text has the form of a peg address."""
    return _FORM.fullmatch(text) is not None
