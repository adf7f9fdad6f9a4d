"""Techniques of the craft, each as a pattern of any number of repeats; numbers tell them apart.

Every one of them is a small piece that holds; how it lies is for the solver to say. Colours alternate, so
that one sees which band goes where.
"""

from __future__ import annotations

from itertools import pairwise

from pegwright.finding import phrase
from pegwright.pattern import Pattern, Round, Rows
from pegwright.variants.closed_and_joined import make_fringe, make_joined, make_ring
from pegwright.variants.technique import RING_MM, Technique, begin_swatch, colour_of

__all__ = ["TECHNIQUES"]

_TAIL_MM = {3: 14.0, 4: 16.0, 6: 20.0}  # across the pegs of the loom of a tail


def _chain(bands: int) -> Technique:
    title = phrase("technique-chain", bands=bands)

    def make(repeats: int) -> Pattern:
        pegs = 2 * repeats + 1
        m = begin_swatch(Rows(rows=1, pegs=pegs))
        with m.repeat(repeats, pegs=2):
            for peg in (1, 2):
                for _ in range(bands):
                    m.place(colour_of(peg + 1), f"A{peg}", f"A{peg + 1}")
        m.turn()
        with m.repeat(pegs - 2, pegs=-1):
            m.hook(f"A{pegs - 1}", f"A{pegs - 2}", together=bands)
        m.bind("A", "A1")
        m.clip("end", f"A{pegs}")
        return m.pattern()

    return Technique(f"chain-{bands}", "chains", title, make)


def _strip(rows: int, every: int, bands: int = 1) -> Technique:
    """Chains side by side, tied across at every so many pegs."""
    title = phrase("technique-strip", rows=rows, every=every, bands=bands)

    def make(repeats: int) -> Pattern:
        pegs = every * repeats + 1
        m = begin_swatch(Rows(rows=rows, pegs=pegs))
        with m.repeat(rows, rows=1), m.repeat(pegs - 1, pegs=1):
            for _ in range(bands):
                m.place("A", "A1", "A2")
        with m.repeat(repeats + 1, pegs=every), m.repeat(rows - 1, rows=1):
            m.place("F", "A1", "B1")
        m.turn()
        with m.repeat(rows, rows=1), m.repeat(pegs - 1, pegs=-1):
            m.hook(f"A{pegs}", f"A{pegs - 1}", together=bands)
        m.knot(*(f"{row}1" for row in "ABCDEFGH"[:rows]))
        return m.pattern()

    name = f"strip-{rows}-tied-{every}" + (f"-bands-{bands}" if bands > 1 else "")
    return Technique(name, "strips", title, make, (8, 12) if every == 1 else (3, 5))


def _zigzag(rows: int, bands: int) -> Technique:
    title = phrase("technique-zigzag", rows=rows, bands=bands)
    turns = [*range(rows), *range(rows - 2, 0, -1)]

    def make(repeats: int) -> Pattern:
        pegs = repeats * len(turns) + 1
        m = begin_swatch(Rows(rows=rows, pegs=pegs))
        path = [f"{'ABCD'[turns[k % len(turns)]]}{k + 1}" for k in range(pegs)]
        for number, (one, other) in enumerate(pairwise(path)):
            for _ in range(bands):
                m.place(colour_of(number), one, other)
        m.turn()
        for one, other in pairwise(path[-2::-1]):
            m.hook(one, other, together=bands)
        m.bind("A", path[0])
        m.clip("end", path[-1])
        return m.pattern()

    return Technique(f"zigzag-{rows}-bands-{bands}", "zigzags", title, make)


def _lozenge(filling: str) -> Technique:
    """Outlines of four bands in a row: open, or filled and capped."""
    title = phrase("technique-lozenge-open" if filling == "open" else "technique-lozenge-capped")

    def make(repeats: int) -> Pattern:
        m = begin_swatch(Rows(rows=3, pegs=2 * repeats + 1))
        with m.repeat(repeats, pegs=2):
            for one, other in (("B1", "A2"), ("A2", "B3"), ("B1", "C2"), ("C2", "B3")):
                m.place("A", one, other)
        if filling == "capped":
            with m.repeat(repeats, pegs=2):
                for peg in ("B3", "A2", "C2", "B1"):
                    m.place("F", "B2", peg)
                m.wind("F", "B2", 3)
        m.wind("A", f"B{2 * repeats + 1}", 3)
        m.turn()
        far = 2 * (repeats - 1)
        with m.repeat(repeats, pegs=-2):
            if filling == "capped":
                for row, number in (("B", 1), ("C", 2), ("A", 2), ("B", 3)):
                    m.hook(f"B{2 + far}", f"{row}{number + far}", loop=-4)
            m.hook(f"B{3 + far}", f"C{2 + far}", loop=2)
            m.hook(f"B{3 + far}", f"A{2 + far}")
            m.hook(f"A{2 + far}", f"B{1 + far}")
            m.hook(f"C{2 + far}", f"B{1 + far}")
        m.bind("A", "B1")
        m.clip("end", f"B{2 * repeats + 1}")
        return m.pattern()

    return Technique(f"lozenge-{filling}", "lozenges", title, make)


def _tail(pegs: int, over: int, bands: int = 1) -> Technique:
    """Bands over all pegs, the lowest lifted over those above on every peg, over and over."""
    title = phrase("technique-tail", pegs=pegs, over=over, bands=bands)

    def make(repeats: int) -> Pattern:
        loom: Rows | Round = Rows(rows=2, pegs=1)
        names = ["A1", "B1"]
        if pegs > 2:
            names = [f"A{k}" for k in range(1, pegs + 1)]
            loom = Round(pegs=pegs, diameter_mm=_TAIL_MM[pegs])
        m = begin_swatch(loom)

        def lay(colour: str, twists: tuple[int, ...] = ()) -> None:
            for _ in range(bands):
                m.place(colour, *names, **({"twists": twists} if twists else {}))

        def lift_all() -> None:
            for peg in names:
                m.lift(peg, together=bands)

        lay("A", (1,) + (0,) * (len(names) - 2))
        for number in range(1, over):
            lay(colour_of(number))
        with m.repeat(repeats):
            for number in range(2):
                lay(colour_of(over + number))
                lift_all()
        for _ in range(over - 1):
            lift_all()
        for peg in names[1:]:
            m.transfer(peg, names[0], together=bands)
        m.clip("start", names[0])
        return m.pattern()

    name = f"tail-{pegs}-over-{over}" + (f"-bands-{bands}" if bands > 1 else "")
    return Technique(name, "tails", title, make)


def _tube(pegs: int, bands: int = 1) -> Technique:
    """Rounds from peg to peg on a round loom, each lifted over the next."""
    title = phrase("technique-tube", pegs=pegs, bands=bands)

    def make(repeats: int) -> Pattern:
        m = begin_swatch(Round(pegs=pegs, diameter_mm=round(RING_MM * pegs / 3.1416, 1)))

        def lay(colour: str) -> None:
            for peg in range(1, pegs + 1):
                for _ in range(bands):
                    m.place(colour, f"A{peg}", f"A{peg % pegs + 1}")

        lay("A")
        for number in range(1, repeats + 1):
            lay(colour_of(number))
            with m.repeat(pegs, pegs=1):
                m.lift("A1", together=2 * bands)
        m.knot(*(f"A{k}" for k in range(1, pegs + 1)))
        return m.pattern()

    return Technique(f"tube-{pegs}" + (f"-bands-{bands}" if bands > 1 else ""), "tubes", title, make)


def _mat(across: int, bands: int = 1) -> Technique:
    title = phrase("technique-mat", across=across, bands=bands)

    def make(repeats: int) -> Pattern:
        m = begin_swatch(Rows(rows=1, pegs=across + 1))
        for row in range(repeats + 1):
            for peg in range(1, across + 1):
                for _ in range(bands):
                    m.place(colour_of(row), f"A{peg}", f"A{peg + 1}")
            for peg in range(1, across + 2) if row else ():
                m.lift(f"A{peg}", together=(2 if 1 < peg <= across else 1) * bands)
        m.knot(*(f"A{peg}" for peg in range(1, across + 2)))
        return m.pattern()

    return Technique(f"mat-{across}" + (f"-bands-{bands}" if bands > 1 else ""), "mats", title, make, (6, 10))


def _hang_chain(turns: int, every: int) -> Technique:
    title = phrase("technique-hung", turns=turns, every=every)

    def make(repeats: int) -> Pattern:
        pegs = every * repeats + 2
        m = begin_swatch(Rows(rows=1, pegs=pegs))
        with m.repeat(pegs - 1, pegs=1):
            m.place("A", "A1", "A2")
        m.turn()
        with m.repeat(repeats, pegs=-every):
            for step in range(every):
                at = pegs - 1 - step
                if step == every // 2:
                    m.hang("F", turns)
                    m.slide(f"A{at}", f"A{at - 1}")
                else:
                    m.hook(f"A{at}", f"A{at - 1}")
        m.bind("A", "A1")
        m.clip("end", f"A{pegs}")
        return m.pattern()

    return Technique(f"hung-{turns}-every-{every}", "hung", title, make)


def _points(every: int) -> Technique:
    """A chain with points that stand out: a crossed band holds each, and a cord runs through them."""
    title = phrase("technique-points", every=every)

    def make(repeats: int) -> Pattern:
        pegs = every * repeats + 2
        m = begin_swatch(Rows(rows=2, pegs=pegs))
        with m.repeat(pegs - 1, pegs=1):
            m.place("A", "A1", "A2")
        with m.repeat(repeats, pegs=every):
            m.place("F", "A2", "B2", twists=(1,))
            m.place("F", "A2", "B2")
            m.lift("B2", target="A2")
        m.turn()
        with m.repeat(pegs - 2, pegs=-1):
            m.hook(f"A{pegs - 1}", f"A{pegs - 2}")
        m.bind("A", "A1")
        m.knot(*(f"B{2 + every * k}" for k in range(repeats)))
        m.clip("end", f"A{pegs}")
        return m.pattern()

    return Technique(f"points-every-{every}", "points", title, make)


def _fork(arms: int) -> Technique:
    """A stem that parts into two or three arms; a repeat is one band more of the stem and of each arm."""
    title = phrase("technique-fork", arms=arms)

    def make(repeats: int) -> Pattern:
        m = begin_swatch(Rows(rows=3, pegs=2 * repeats + 2))
        rows = "ABC" if arms == 3 else "AC"
        join, end = repeats + 1, 2 * repeats + 2
        for peg in range(1, join):
            m.place("A", f"B{peg}", f"B{peg + 1}")
        for row in rows:
            m.place("F", f"B{join}", f"{row}{join + 1}")
            for peg in range(join + 1, end):
                m.place("F", f"{row}{peg}", f"{row}{peg + 1}")
        m.turn()
        for row in rows:
            for peg in range(end - 1, join, -1):
                m.hook(f"{row}{peg}", f"{row}{peg - 1}" if peg > join + 1 else f"B{join}")
        for peg in range(join, 1, -1):
            m.hook(f"B{peg}", f"B{peg - 1}")
        m.bind("A", "B1")
        m.knot(*(f"{row}{end}" for row in rows))
        m.clip("end")
        return m.pattern()

    return Technique(f"fork-{arms}", "forks", title, make)


TECHNIQUES: dict[str, Technique] = {
    one.name: one
    for one in (
        *(_chain(bands) for bands in (1, 2, 3)),
        *(_strip(rows, every) for rows in (2, 3, 4) for every in (1, 2, 3)),
        *(_strip(rows, 1, 2) for rows in (2, 3)),
        *(_zigzag(rows, bands) for rows in (2, 3) for bands in (1, 2)),
        *(_lozenge(filling) for filling in ("open", "capped")),
        *(_tail(2, over) for over in (1, 2, 3)),
        *(_tail(2, over, 2) for over in (1, 2)),
        *(_tail(pegs, over) for pegs in (3, 4, 6) for over in (1, 2)),
        *(_tube(pegs) for pegs in (6, 8, 12)),
        _tube(6, 2),
        *(_mat(across) for across in (2, 3, 4, 6)),
        _mat(3, 2),
        *(_hang_chain(turns, every) for turns in (2, 3, 4) for every in (4, 6)),
        *(_points(every) for every in (2, 3)),
        *(_fork(arms) for arms in (2, 3)),
        *(make_ring(bands) for bands in (1, 2)),
        *(make_joined(chains) for chains in (2, 3)),
        *(make_fringe(every) for every in (2, 3)),
    )
}
"""Every technique by its name, in the order of the groups."""
