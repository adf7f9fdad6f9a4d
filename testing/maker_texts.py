"""Invented texts of the Saturday workshop, as makers write, each with the moves that it means.

A third of the English ones (`kept`) is for measuring only: the grammar was built without looking at them.
"""

from __future__ import annotations

from typing import NamedTuple

from pegwright.pattern import Bind, Clip, Extend, Hook, Lift, Move, Place, Turn, Wind


class MakerText(NamedTuple):
    """A text, what it means, its style and language; colours of the moves are the names in the text."""

    name: str
    style: str
    language: str
    text: str
    moves: tuple[Move, ...]
    kept: bool = False


def chain(
    pegs: int, colours: tuple[str, ...], last: str, twin: bool = False, extension: int = 0
) -> tuple[Move, ...]:
    """A plain chain along row A: colours in turn, or with `twin` all of them on every pair of pegs."""
    moves: list[Move] = []
    for k in range(1, pegs):
        several = colours if twin else (colours[(k - 1) % len(colours)],)
        moves += [Place(colour=one, over=(f"A{k}", f"A{k + 1}")) for one in several]
    moves.append(Turn())
    together = len(colours) if twin else 1
    moves += [Hook(source=f"A{k}", target=f"A{k - 1}", together=together) for k in range(pegs - 1, 1, -1)]
    moves.append(Bind(colour=last, at="A1"))
    if extension:
        moves.append(Extend(colour=last, bands=extension))
    return (*moves, Clip(at=("end", f"A{pegs}")))


def tail(colours: tuple[str, ...], twist: bool = True) -> tuple[Move, ...]:
    """The beginning of a fish-tail on A1 and B1: three bands, then the lowest over the others on both pegs."""
    moves: list[Move] = []
    for k, one in enumerate(colours):
        moves.append(Place(colour=one, over=("A1", "B1"), twists=(1,) if twist and not k else ()))
        if k >= 2:
            moves += [Lift(at="A1"), Lift(at="B1")]
    return tuple(moves)


def lanterns(count: int, rim: str, glass: tuple[str, ...]) -> tuple[Move, ...]:
    """Lanterns laid out along the middle row: outlines, fillings with their caps; not yet worked."""
    moves: list[Move] = []
    for n in range(1, 2 * count, 2):
        moves += [
            Place(colour=rim, over=(f"B{n}", f"A{n + 1}")),
            Place(colour=rim, over=(f"A{n + 1}", f"B{n + 2}")),
        ]
        moves += [
            Place(colour=rim, over=(f"B{n}", f"C{n + 1}")),
            Place(colour=rim, over=(f"C{n + 1}", f"B{n + 2}")),
        ]
    for k, n in enumerate(range(2, 2 * count + 1, 2)):
        one = glass[k % len(glass)]
        moves += [
            Place(colour=one, over=(f"B{n}", to)) for to in (f"B{n + 1}", f"A{n}", f"C{n}", f"B{n - 1}")
        ]
        moves.append(Wind(colour=one, on=f"B{n}"))
    return tuple(moves)


def _text(
    name: str, style: str, text: str, moves: tuple[Move, ...], *, language: str = "en", kept: bool = False
) -> MakerText:
    return MakerText(name, style, language, text, moves, kept)


TEXTS: tuple[MakerText, ...] = (
    _text("low tide", "prose", """Low tide
A loom with one row of 26 pegs.
Stretch one slate blue band from A1 to A2. Stretch one foam white band from A2 to A3.
Do this eleven more times, two pegs further each time.
Stretch one slate blue band from A25 to A26.
Turn the loom round.
Take the lowest loop of each peg and put it on the next peg, all along the row.
Pull a last slate blue band through all the loops on A1.
Close the two ends with a clip.
""", chain(26, ("slate blue", "foam white"), "slate blue")),
    _text("mooring line", "numbered", """Mooring line
You need 12 sand bands in all. The loom has 1 row of 12 pegs.
1. Put a sand band over A1 and A2.
2. Put a sand band over A2 and A3, and so on up to A12.
3. Turn the loom.
4. Hook the bottom loop from A11 to A10.
5. Repeat down to A1.
6. Pull a sand band through both loops on A1.
7. Clip the end to A12.
""", chain(12, ("sand",), "sand")),
    _text("two ropes", "prose", """Two ropes
The loom: one row of ten pegs.
Lay one weed green band and then one sand band from A1 to A2. Repeat eight more times, one peg further each time.
Turn the whole loom.
On every peg take the two lowest loops and put them on the next peg, the whole row.
Pull a weed green band through all four loops on A1. Close with a clip at the free end and A10.
""", chain(10, ("weed green", "sand"), "weed green", twin=True)),
    _text("short line", "addresses", """Short line. Loom: 1 row of 6 pegs.
place A over A1 A2
place A over A2 A3
place A over A3 A4
place A over A4 A5
place A over A5 A6
turn
hook A5 to A4
hook A4 to A3
hook A3 to A2
hook A2 to A1
bind A through A1
clip end A6
""", chain(6, ("a",), "a")),
    _text("line with tail", "prose", """Line with a tail
Use a loom with 1 row of 8 pegs.
Stretch a red band from A1 to A2. Carry on the same way up to A8.
Turn the loom end for end.
Take the lowest loop on each peg over to the next peg, all along.
A last red band goes through the loops on A1.
Add a chain of six red bands.
Fasten with a clip: both ends.
""", chain(8, ("red",), "red", extension=6)),
    _text("herring start", "prose", """Herring start
A loom with two rows of 1 peg.
Stretch one blue band from A1 to B1, crossed like a figure of eight.
Stretch one white band from A1 to B1. Stretch one blue band from A1 to B1.
Lift the lowest loop over the others on A1 and on B1.
Stretch one white band from A1 to B1. Lift the lowest loop over the others on both pegs.
Stretch one blue band from A1 to B1. Lift the lowest loop over the others on both pegs.
""", tail(("blue", "white", "blue", "white", "blue"))),
    _text("herring notes", "shorthand", """herring, loom 2 rows of 1 peg
blue band A1 to B1, half turn
blue band A1 to B1
blue band A1 to B1
lift bottom loop on A1 and B1
blue band A1 to B1
lift bottom loop, both pegs
""", tail(("blue",) * 4)),
    _text("lantern strip", "block", """Lantern strip
A loom with 3 rows of 13 pegs.
Start at B1. One blue band out to the left, one back to the middle. The same on the right.
Five more times, two pegs further.
Start at B2. One yellow band up to B3. One yellow band from B2 to A2. One yellow band from B2 to C2. One yellow band from B2 to B1. Put a yellow cap on B2.
""", (*lanterns(6, "blue", ("yellow",))[:24], *lanterns(6, "blue", ("yellow",))[24:29])),
    _text("three lanterns", "addresses", """Three lanterns
Loom: 3 rows of 7 pegs. It takes 12 blue bands and 15 red bands.
One blue band from B1 to A2, one from A2 to B3, one from B1 to C2, one from C2 to B3. Repeat two more times, moving two pegs further.
One red band from B2 to B3, one from B2 to A2, one from B2 to C2, one from B2 to B1.
Wind a red band three times round B2.
Repeat the last five bands two more times, two pegs further.
""", lanterns(3, "blue", ("red",))),
    _text("clock lantern", "clock", """Clock lantern
A loom with 3 rows of 5 pegs.
Start at B1. One green band towards ten o'clock, one towards two o'clock. Start at B1. One green band towards two o'clock, one towards ten o'clock.
""", lanterns(1, "green", ("x",))[:4]),
    _text("a correction", "prose", """A plain chain again
The loom has one row of five pegs.
Stretch a sand band from A1 to A2. Do this three more times, one peg further each time.
Turn the loom round. Hook the lowest loop of A4 over to A3. Hook the lowest loop of A3 over to A2. Hook the lowest loop of A2 over to A1.
Pull a sand band through the loops on A1. Clip the free end and A5 together.
Keep a finger on it until the clip is shut.
""", chain(5, ("sand",), "sand")),
    _text("yellow too", "reference", """Pairs
Loom with 1 row of 4 pegs.
Stretch one red band from A1 to A2. One from A2 to A3. One from A3 to A4.
The same with yellow.
""", tuple(Place(colour=c, over=(f"A{k}", f"A{k + 1}")) for c in ("red", "yellow") for k in (1, 2, 3))),
    # --- kept apart: for measuring only
    _text("evening line", "prose", """Evening line
You will want a loom with one row of nine pegs.
Put one blue band from A1 to A2, then one white band from A2 to A3. Do that three more times, two pegs further each time.
Flip the loom. Take the bottom loop on each peg and place it on the next peg, all the way.
Bring a last blue band through all loops on A1. Clip both ends together.
""", chain(9, ("blue", "white"), "blue"), kept=True),
    _text("pier", "numbered", """Pier
Loom: 1 row of 7 pegs
1) Stretch a lamp yellow band from A1 to A2.
2) Repeat five times more, one peg further each time.
3) Turn the loom around.
4) Pull the lowest loop of A6 to A5.
5) Go on like that until A1.
6) Finishing band in lamp yellow through A1.
7) Clip at the end and at A7.
""", chain(7, ("lamp yellow",), "lamp yellow"), kept=True),
    _text("tail notes", "shorthand", """tail; loom 2 rows of 1 peg
red band from A1 to B1 crossed
red band from A1 to B1
white band from A1 to B1
bottom loop on A1 lifted over the rest, same on B1
""", tail(("red", "red", "white")), kept=True),
    _text("two lanterns", "block", """Two lanterns, 3 rows of 5 pegs
Begin at B1. One red band to the left, one back to the middle. Same on the right. Once more, two pegs further.
""", lanterns(2, "red", ("x",))[:8], kept=True),
    _text("buoys", "counts", """Buoys
In all you need 5 green bands and 4 white bands. The loom is one row of 9 pegs.
Stretch one green band from A1 to A2. Stretch one white band from A2 to A3. Again, three more times, two pegs further.
Turn the loom. Take the lowest loop of each peg to the next one, along the row.
Pull a green band through the loops on A1. Clip the two ends.
""", chain(9, ("green", "white"), "green"), kept=True),
    _text("caps", "reference", """Caps
Loom with 3 rows of 5 pegs.
Stretch one blue band from B2 to B3, one from B2 to A2, one from B2 to C2, one from B2 to B1.
Cap on every centre, red.
""", (*(Place(colour="blue", over=("B2", to)) for to in ("B3", "A2", "C2", "B1")), Wind(colour="red", on="B2")), kept=True),
    # --- German and Spanish
    _text("ebbe", "prose", """Ebbe
Ein Webrahmen mit einer Reihe zu sechs Stiften, also 1 Reihe und 6 Stifte.
Spann ein blaues Gummi von A1 zu A2. Noch vier Mal, jedes Mal einen Stift weiter.
Dreh den Webrahmen herum.
Nimm an jedem Stift die unterste Schlaufe und leg sie auf den nächsten Stift, die ganze Reihe.
Zieh ein letztes Gummi durch alle Schlaufen auf A1.
Schließ beide Enden mit einer Klammer.
""", chain(6, ("blaues",), "blaues"), language="de"),
    _text("leine", "addresses", """Leine
Webrahmen: 1 Reihe, 4 Stifte.
Spann ein rotes Gummi von A1 zu A2. Spann ein weißes Gummi von A2 zu A3. Spann ein rotes Gummi von A3 zu A4.
Dreh den Webrahmen.
Zieh die unterste Schlaufe von A3 auf A2. Zieh die unterste Schlaufe von A2 auf A1.
Zieh ein rotes Gummi durch alle Schlaufen auf A1. Eine Klammer durch das freie Ende und A4.
""", chain(4, ("rotes", "weißes"), "rotes"), language="de"),
    _text("schwanz", "shorthand", """Fischschwanz, Webrahmen mit 2 Reihen und 1 Stift
Spann ein blaues Gummi von A1 zu B1, gekreuzt.
Spann ein blaues Gummi von A1 zu B1.
Spann ein weißes Gummi von A1 zu B1.
Heb die unterste Schlaufe über die anderen, auf A1 und auf B1.
""", tail(("blaues", "blaues", "weißes")), language="de"),
    _text("marea", "prose", """Marea
Un telar de 1 fila y 6 clavijas.
Estira una gomita azul de A1 a A2. Repite 4 veces más, una clavija más adelante cada vez.
Gira el telar.
Toma el lazo más bajo de cada clavija y ponlo en la siguiente clavija, toda la fila.
Pasa una última gomita azul por todos los lazos de A1.
Cierra los dos extremos con un cierre.
""", chain(6, ("azul",), "azul"), language="es"),
    _text("cabo", "addresses", """Cabo
Telar: 1 fila, 4 clavijas.
Estira una gomita roja de A1 a A2. Estira una gomita blanca de A2 a A3. Estira una gomita roja de A3 a A4.
Gira el telar.
Saca el lazo más bajo de A3 a A2. Saca el lazo más bajo de A2 a A1.
Pasa una gomita roja por todos los lazos de A1. Pon un cierre en el extremo libre y A4.
""", chain(4, ("roja", "blanca"), "roja"), language="es"),
    _text("cola", "shorthand", """Cola, telar de 2 filas y 1 clavija
Estira una gomita azul de A1 a B1, cruzada.
Estira una gomita azul de A1 a B1.
Estira una gomita blanca de A1 a B1.
Levanta el lazo de abajo por encima de los demás, en A1 y en B1.
""", tail(("azul", "azul", "blanca")), language="es"),
)  # fmt: skip


def count_right(meant: tuple[Move, ...], read: tuple[Move, ...], names: dict[str, str]) -> tuple[int, int]:
    """Return how many of the moves meant were read, in their order, and how many were read that nobody meant."""
    import difflib

    one = [_plain(move, {}) for move in meant]
    other = [_plain(move, names) for move in read]
    same = sum(
        block.size
        for block in difflib.SequenceMatcher(None, one, other, autojunk=False).get_matching_blocks()
    )
    return same, len(other) - same


def _plain(move: Move, names: dict[str, str]) -> str:
    colour = getattr(move, "colour", "")
    return repr(move).replace(f"colour='{colour}'", f"colour='{names.get(colour, colour).lower()}'")
