"""A first pattern to start from: a plain chain that holds, on the maker's own loom."""

from __future__ import annotations

import msgspec

from pegwright.finding import RefusedError, phrase
from pegwright.pattern import MAX_PEGS, Pattern, PatternBuilder, Rows, Title


def starter_pattern(title: str, *, rows: int = 1, pegs: int = 13) -> Pattern:
    """Return a plain chain along row A of a straight loom of `rows` × `pegs`.

    Raises:
        RefusedError: there are fewer than three pegs, too few for a chain, or more than a row or a loom may
        have;
            or the title is empty or too long.
    """
    if not 3 <= pegs <= 10_000 or not 1 <= rows <= 700:
        raise RefusedError(phrase("starter-size"))
    if rows * pegs > MAX_PEGS:
        raise RefusedError(phrase("starter-pegs", count=rows * pegs, limit=MAX_PEGS))
    if not _is_title(title):
        raise RefusedError(phrase("starter-title"))
    m = PatternBuilder(title, Rows(rows=rows, pegs=pegs), notes="A plain chain to begin with.")
    m.colour("A", "slate blue", "#34506b")
    with m.repeat(pegs - 1, pegs=1):
        m.place("A", "A1", "A2")
    m.turn()
    with m.repeat(pegs - 2, pegs=-1):
        m.hook(f"A{pegs - 1}", f"A{pegs - 2}")
    m.bind("A", "A1")
    m.clip("end", f"A{pegs}")
    return m.pattern()


def _is_title(text: str) -> bool:
    """Say whether a document may have this title; it needs to be writable as UTF-8."""
    try:
        msgspec.convert(text, Title)
        text.encode()
    except (msgspec.ValidationError, UnicodeEncodeError):
        return False
    return True
