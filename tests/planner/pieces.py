"""Pieces that several tests of the planner work on."""

from __future__ import annotations

from typing import Any

from pegwright.pattern import Pattern, PatternBuilder, Rows


def two_lines(bands: int, **loom: Any) -> Pattern:
    """Return two chains side by side that nothing joins, a clip on the near end of the first."""
    m = PatternBuilder("Two lines", Rows(rows=2, **loom)).colour("A", "slate", "#4A5A6A")
    for row in "AB":
        for peg in range(1, bands + 1):
            m.place("A", f"{row}{peg}", f"{row}{peg + 1}")
    m.clip("A1")
    return m.pattern()
