"""Techniques that close upon themselves, join, or branch: rings, chains joined at both ends, fringes."""

from __future__ import annotations

from pegwright.finding import phrase
from pegwright.pattern import Pattern, Round, Rows
from pegwright.variants.technique import RING_MM, Technique, begin_swatch, colour_of

__all__ = ["make_fringe", "make_joined", "make_ring"]


def make_ring(bands: int) -> Technique:
    """Return a chain that closes upon itself on a round loom; a repeat is two pegs more."""

    def make(repeats: int) -> Pattern:
        pegs = 2 * repeats + 4
        m = begin_swatch(Round(pegs=pegs, diameter_mm=round(RING_MM * pegs / 3.1416, 1)))
        for peg in range(1, pegs + 1):
            for _ in range(bands):
                m.place(colour_of(peg), f"A{peg}", f"A{peg % pegs + 1}")
        for peg in range(pegs, 1, -1):
            m.hook(f"A{peg}", f"A{peg - 1}", together=bands)
        m.knot("A1")
        return m.pattern()

    return Technique(f"ring-bands-{bands}", "rings", phrase("technique-ring", bands=bands), make, closed=True)


def make_joined(chains: int) -> Technique:
    """Return chains that part at one end, lie free, and are joined again at the other."""

    def make(repeats: int) -> Pattern:
        last = 2 * repeats + 2
        rows = "ABC"[:chains] if chains == 3 else "AC"
        m = begin_swatch(Rows(rows=3, pegs=last + 1))
        for row in rows:
            m.place("A", "B1", f"{row}2")
            for peg in range(2, last):
                m.place(colour_of(peg + 1), f"{row}{peg}", f"{row}{peg + 1}")
            m.place("A", f"{row}{last}", f"B{last + 1}")
        m.wind("F", f"B{last + 1}", 3)
        m.turn()
        for loop in range(chains, 0, -1):
            m.hook(f"B{last + 1}", f"{rows[loop - 1]}{last}", loop=loop)
        for row in rows:
            for peg in range(last, 2, -1):
                m.hook(f"{row}{peg}", f"{row}{peg - 1}")
            m.hook(f"{row}2", "B1")
        m.bind("A", "B1")
        m.clip("end", f"B{last + 1}")
        return m.pattern()

    return Technique(f"joined-{chains}", "joined", phrase("technique-joined", chains=chains), make)


def make_fringe(every: int) -> Technique:
    """Return a chain from which a short chain with a cap hangs at every so many pegs."""

    def make(repeats: int) -> Pattern:
        pegs = every * repeats + 2
        m = begin_swatch(Rows(rows=3, pegs=pegs))
        with m.repeat(pegs - 1, pegs=1):
            m.place("A", "C1", "C2")
        with m.repeat(repeats, pegs=every):
            m.place("F", "C2", "B2")
            m.place("F", "B2", "A2")
            m.wind("F", "A2", 3)
        m.turn()
        with m.repeat(repeats, pegs=every):
            m.hook("A2", "B2")
            m.hook("B2", "C2")
        with m.repeat(pegs - 2, pegs=-1):
            m.hook(f"C{pegs - 1}", f"C{pegs - 2}")
        m.bind("A", "C1")
        m.clip("end", f"C{pegs}")
        return m.pattern()

    return Technique(f"fringe-every-{every}", "fringes", phrase("technique-fringe", every=every), make)
