"""A mat of any size, as a document."""

from __future__ import annotations

from itertools import pairwise

from pegwright.pattern import Pattern, PatternBuilder, Rows


def mat(columns: int, rows: int) -> Pattern:
    """Return a mat: a chain along every column, and a band across from column to column in every row.

    The cross bands are hooked sideways (those of the last row stay flat, or the whole mat would fall), then
    every column is worked back to the first row; one fastener goes through the loops of the whole first row.
    """
    m = PatternBuilder("mat", Rows(rows=columns, pegs=rows + 1))
    m.colour("A", "slate", "#4A5A6A")
    names = [chr(ord("A") + c) for c in range(columns)]
    for r in range(1, rows + 1):
        for name in names:
            m.place("A", f"{name}{r}", f"{name}{r + 1}")
        for name, beside in pairwise(names):
            m.place("A", f"{name}{r + 1}", f"{beside}{r + 1}")
    for r in range(rows, 0, -1):
        for name, beside in reversed(list(pairwise(names))) if r < rows else ():
            m.hook(f"{beside}{r + 1}", f"{name}{r + 1}", loop=2)
        for name in names:
            m.hook(f"{name}{r + 1}", f"{name}{r}")
    m.clip(*(f"{name}1" for name in names))
    return m.pattern()
