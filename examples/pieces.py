"""The workshop's pieces, written the way the maker says them. `python -m examples.pieces` writes the documents.

The documents beside this file are what the program ships; a test holds them equal to what stands here.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import msgspec

from examples.translations import translate_texts
from pegwright.pattern import JoinedLooms, Pattern, PatternBuilder, Round, Rows, StatedCounts, write_pattern

ABOUT = {"designer": "the Saturday workshop, Harbour Street library", "licence": "CC BY 4.0"}
SLATE, FOAM, BUOY, WEED, SAND, LAMP = (
    ("A", "slate blue", "#34506b"),
    ("F", "foam white", "#f2efe6"),
    ("R", "buoy red", "#b5382a"),
    ("W", "weed green", "#2f6b4f"),
    ("S", "sand", "#d9b26f"),
    ("L", "lamp yellow", "#f0b400"),
)


def ebb_line() -> Pattern:
    """A plain chain: one band a link, two colours in turn."""
    m = PatternBuilder(
        "Ebb line",
        Rows(rows=1, pegs=26),
        **ABOUT,
        level="basic",
        notes="A plain chain for a first Saturday: 26 bands in all and one clip.",
    )
    m.colour(*SLATE).colour(*FOAM)
    with m.repeat(12, pegs=2):
        m.place("A", "A1", "A2")
        m.place("F", "A2", "A3")
    m.place("A", "A25", "A26")
    m.turn(note="Leave the loom on the table while you turn it.")
    with m.repeat(24, pegs=-1):
        m.hook("A25", "A24", note="If the loop slips off the hook, put it back on its peg and try again.")
    m.bind("A", "A1", note="From now on the hook carries the whole chain.")
    m.clip("end", "A26", warning="Keep a finger on the last band until the clip is shut.")
    return translate_texts(m.pattern(StatedCounts(bands={"A": 14, "F": 12}, clips=1)))


def twin_hulls() -> Pattern:
    """A twin chain: every link is two bands side by side, worked together."""
    m = PatternBuilder(
        "Twin hulls",
        Rows(rows=1, pegs=25),
        **ABOUT,
        level="basic",
        notes="Two bands a link: if one ever snaps, its twin still carries the bracelet.",
    )
    m.colour(*WEED).colour(*SAND)
    with m.repeat(24, pegs=1):
        m.place("W", "A1", "A2")
        m.place("S", "A1", "A2")
    m.turn()
    with m.repeat(23, pegs=-1):
        m.hook("A24", "A23", together=2, note="The twins stay side by side: smooth them with a fingertip.")
    m.bind("W", "A1")
    m.clip("end", "A25", warning="Keep a finger on the last band until the clip is shut.")
    return translate_texts(m.pattern())


def riding_lights() -> Pattern:
    """A three-row strip of lanterns: outline of four, filling of four, a wound cap in the middle."""
    m = PatternBuilder(
        "Riding lights",
        Rows(rows=3, pegs=13),
        **ABOUT,
        level="intermediate",
        notes="Six lanterns in a row, each lit in the middle by its cap.",
    )
    m.colour(*SLATE).colour(*LAMP).colour(*BUOY)
    with m.motif("outline", "rim", note="Four bands round a lantern, left side first."):
        m.place("rim", "B1", "A2")
        m.place("rim", "A2", "B3")
        m.place("rim", "B1", "C2")
        m.place("rim", "C2", "B3")
    with m.motif("light", "glass", note="From the middle peg to its four neighbours, then the cap."):
        for peg in ("B3", "A2", "C2", "B1"):
            m.place("glass", "B2", peg)
        m.wind("glass", "B2", 3)
    with m.motif(
        "gather light", note="Under the cap, from the top of the stack down, each loop to its own peg."
    ):
        for peg in ("B1", "C2", "A2", "B3"):
            m.hook("B2", peg, loop=-4)
    with m.motif("gather outline", note="The lowest loop each time, through everything above it."):
        m.hook("B3", "C2", loop=2)
        m.hook("B3", "A2")
        m.hook("A2", "B1")
        m.hook("C2", "B1")
    with m.repeat(6, pegs=2):
        m.use("outline", colours={"rim": "A"})
    with m.repeat(3, pegs=4):
        m.use("light", colours={"glass": "L"})
        m.use("light", colours={"glass": "R"}, pegs=2)
    m.wind("A", "B13", 3, note="The end cap keeps the first loops from slipping off.")
    m.turn()
    with m.repeat(6, pegs=-2):
        m.use("gather light", pegs=10)
        m.use("gather outline", pegs=10)
    m.bind("A", "B1")
    m.extend("A", 6)
    m.clip("end", "B13", warning="Keep a finger on the last band until the clip is shut.")
    return translate_texts(m.pattern())


def herring_tail(twist: int = 1) -> Pattern:
    """A fish-tail on two pegs, made by lifting the lowest band over the others."""
    m = PatternBuilder(
        "Herring tail",
        Rows(rows=2, pegs=1),
        **ABOUT,
        level="easy",
        notes="Two pegs are enough. The first band goes on crossed, like a figure of eight.",
    )
    m.colour(*SLATE).colour(*FOAM)
    m.place("A", "A1", "B1", twists=(twist,) if twist else ())
    m.place("F", "A1", "B1")
    with m.repeat(12):
        for colour in ("A", "F"):
            m.place(colour, "A1", "B1")
            m.lift("A1", note="Hold the upper loops down with a fingertip while you lift.")
            m.lift("B1")
    m.lift("A1")
    m.lift("B1")
    m.transfer("B1", "A1", note="Both loops of the last band on one peg.")
    m.clip("start", "A1", warning="Keep a finger on the loops until the clip is shut.")
    return translate_texts(m.pattern())


def slack_water_mat() -> Pattern:
    """A wide mat on two looms joined side by side: chains along six rows, tied by cross bands."""
    m = PatternBuilder(
        "Slack water mat",
        JoinedLooms(looms=(Rows(rows=3, pegs=10), Rows(rows=3, pegs=10))),
        **ABOUT,
        level="easy",
        notes="A coaster. The cross bands are never worked: the chains pass through both their loops.",
    )
    m.colour(*WEED).colour(*FOAM)
    with m.repeat(6, rows=1), m.repeat(9, pegs=1):
        m.place("W", "A1", "A2")
    with m.repeat(10, pegs=1), m.repeat(5, rows=1):
        m.place("F", "A1", "B1")
    m.turn()
    with m.repeat(6, rows=1), m.repeat(9, pegs=-1):
        m.hook("A10", "A9", note="The cross bands stay where they are: the chain passes through them.")
    m.knot(
        "A1",
        "B1",
        "C1",
        "D1",
        "E1",
        "F1",
        note="A flat knot keeps the coaster flat.",
    )
    return translate_texts(m.pattern())


def lobster_pot() -> Pattern:
    """A tube on a round loom: round on round of bands, the lower loops lifted over the upper ones."""
    m = PatternBuilder(
        "Lobster pot",
        Round(pegs=12, diameter_mm=62),
        **ABOUT,
        level="easy",
        notes="A little net bag. Each round is laid peg to peg, then the round below is lifted over it.",
    )
    m.colour(*SAND).colour(*BUOY)
    with m.motif("round", "net"):
        with m.repeat(11, pegs=1):
            m.place("net", "A1", "A2")
        m.place("net", "A12", "A1")
    m.use("round", colours={"net": "S"})
    for colour in ("R", "S", "R", "S"):
        m.use("round", colours={"net": colour})
        with m.repeat(12, pegs=1):
            m.lift("A1", together=2, note="Let the loops drop into the ring.")
    m.knot(*(f"A{k}" for k in range(1, 13)), note="Pull the cord until the bag closes, then tie it.")
    return translate_texts(m.pattern())


def buoy_line() -> Pattern:
    """A plain chain with wound charms slid on from the hook."""
    m = PatternBuilder(
        "Buoy line",
        Rows(rows=1, pegs=22),
        **ABOUT,
        level="easy",
        notes="Five little buoys ride on a plain line.",
    )
    m.colour(*SLATE).colour(*BUOY)
    with m.repeat(21, pegs=1):
        m.place("A", "A1", "A2")
    m.turn()
    with m.repeat(5, pegs=-4):
        m.hook("A21", "A20")
        m.hook("A20", "A19")
        m.hang("R", 3, note="Three turns make one buoy.")
        m.slide("A19", "A18", note="Keep the loop taut, and the buoy slides by itself.")
        m.hook("A18", "A17")
    m.bind("A", "A1")
    m.clip("end", "A22", warning="Keep a finger on the last band until the clip is shut.")
    return translate_texts(m.pattern())


def reef_points() -> Pattern:
    """A swatch of loops lifted on to another peg: a plain chain with points that hang from a cord."""
    m = PatternBuilder(
        "Reef points",
        Rows(rows=2, pegs=8),
        **ABOUT,
        level="easy",
        notes="At every other peg two bands: the first, put on crossed, holds the second by its loop.",
    )
    m.colour(*SLATE).colour(*FOAM)
    with m.repeat(7, pegs=1):
        m.place("A", "A1", "A2")
    with m.repeat(3, pegs=2):
        m.place("F", "A2", "B2", twists=(1,))
        m.place("F", "A2", "B2")
        m.lift("B2", target="A2", note="The lower loop, up over the upper one, on to the peg across.")
    m.turn()
    with m.repeat(6, pegs=-1):
        m.hook("A7", "A6")
    m.bind("A", "A1")
    m.knot("B2", "B4", "B6")
    m.clip("end", "A8")
    return m.pattern()


def mooring_lines() -> Pattern:
    """A swatch of ends put on pegs: a doubled chain parts in two, both ends worked into another chain."""
    m = PatternBuilder(
        "Mooring lines",
        Rows(rows=2, pegs=7),
        **ABOUT,
        level="easy",
        notes="One band through the upper two loops, one through the others; each goes to the other row.",
    )
    m.colour(*SLATE).colour(*FOAM)
    with m.repeat(3, pegs=1):
        m.place("F", "A1", "A2")
        m.place("F", "A1", "A2")
    with m.repeat(6, pegs=1, colours={"line": ("A", "F")}):
        m.place("line", "B1", "B2")
    m.turn()
    with m.repeat(2, pegs=-1):
        m.hook("A3", "A2", together=2)
    m.bind("F", "A1", catch=2)
    m.put("B2")
    m.bind("F", "A1")
    m.put("B1")
    with m.repeat(5, pegs=-1):
        m.hook("B6", "B5")
    m.bind("A", "B1")
    m.clip("end", "B7")
    m.clip("A4")
    return m.pattern()


def runs_out() -> Pattern:
    """Broken: a plain chain that nothing holds at its end."""
    m = PatternBuilder("Runs out", Rows(rows=1, pegs=8), **ABOUT, notes="The clip at the end was forgotten.")
    m.colour(*SLATE)
    with m.repeat(7, pegs=1):
        m.place("A", "A1", "A2")
    m.turn()
    with m.repeat(6, pegs=-1):
        m.hook("A7", "A6")
    return translate_texts(m.pattern())


def flat_tail() -> Pattern:
    """Broken: the fish-tail with its first band put on flat."""
    tail = herring_tail(twist=0)
    flat = msgspec.structs.replace(tail, title="Flat tail", notes="The first band was not crossed.")
    return translate_texts(flat)


def shallow_water() -> Pattern:
    """Broken: half-way along, the hook went through the upper loop only."""
    m = PatternBuilder(
        "Shallow water", Rows(rows=1, pegs=9), **ABOUT, notes="At A5 the hook did not go deep enough."
    )
    m.colour(*SLATE)
    with m.repeat(8, pegs=1):
        m.place("A", "A1", "A2")
    m.turn()
    for peg in range(8, 1, -1):
        m.hook(f"A{peg}", f"A{peg - 1}", through=1 if peg == 5 else None)
    m.bind("A", "A1")
    m.clip("end", "A9", warning="Keep a finger on the last band until the clip is shut.")
    return translate_texts(m.pattern())


PIECES: dict[str, Callable[[], Pattern]] = {
    "ebb-line": ebb_line,
    "twin-hulls": twin_hulls,
    "riding-lights": riding_lights,
    "herring-tail": herring_tail,
    "slack-water-mat": slack_water_mat,
    "lobster-pot": lobster_pot,
    "buoy-line": buoy_line,
    "broken/runs-out": runs_out,
    "broken/flat-tail": flat_tail,
    "broken/shallow-water": shallow_water,
}

SWATCHES: dict[str, Callable[[], Pattern]] = {
    "swatches/reef-points": reef_points,
    "swatches/mooring-lines": mooring_lines,
}
"""Small pieces that show one move each; the demo leaves them out."""


def main() -> None:
    """Write every document beside this file."""
    here = Path(__file__).parent
    for name, piece in (PIECES | SWATCHES).items():
        (here / f"{name}.json").write_bytes(write_pattern(piece()))


if __name__ == "__main__":
    main()
