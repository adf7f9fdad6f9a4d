"""A first pattern to change: a plain chain that holds, on the loom one has."""

from __future__ import annotations

from pegwright.pattern import Maker, Pattern, Rows


def starter(title: str, *, rows: int = 1, pegs: int = 13) -> Pattern:
    """Return a plain chain along row A of a straight loom of `rows` × `pegs`.

    Raises:
        ValueError: fewer than three pegs, which make no chain, or more than a row may have.
    """
    if not 3 <= pegs <= 10_000 or not 1 <= rows <= 700:
        raise ValueError("a chain needs 3 to 10,000 pegs, and a loom has 1 to 700 rows")
    m = Maker(title, Rows(rows=rows, pegs=pegs), notes="A plain chain to begin with.")
    m.colour("A", "slate blue", "#34506b")
    with m.repeat(pegs - 1, pegs=1):
        m.place("A", "A1", "A2")
    m.turn()
    with m.repeat(pegs - 2, pegs=-1):
        m.hook(f"A{pegs - 1}", f"A{pegs - 2}")
    m.bind("A", "A1")
    m.clip("end", f"A{pegs}")
    return m.pattern()
