"""A leaf: a few pages of headings, lines and tables, decided to the last word (kit, filming plan, script)."""

from __future__ import annotations

import msgspec

from pegwright.lesson.handout.sheet import Block


class Table(msgspec.Struct, frozen=True, kw_only=True):
    """A table under a heading. `wide` is the column that takes the room left over; `right` are flush right.

    `last` says that the last row is a sum.
    """

    heading: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    wide: int = 0
    right: tuple[int, ...] = ()
    last: bool = False


class Leaf(msgspec.Struct, frozen=True, kw_only=True):
    """What stands on the leaf, from top to bottom."""

    title: str
    language: str
    designer: str
    about: str
    parts: tuple[Table | Block, ...]
    foot: tuple[str, ...]
    page: str
