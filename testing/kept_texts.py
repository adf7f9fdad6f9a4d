"""Makers' texts that are for measuring only: written in one go before the grammar was built further.

Nobody looks at how one of them is read, only at the figure that they all give together (`python -m bench read`).
A text that has been looked at moves to `looked_at_texts.py`, and a fresh one takes its place.
"""

from __future__ import annotations

from pegwright.pattern import Bind, Hook, Place, Turn, Wind
from testing.maker_text import MakerText, chain, lanterns, tail


def _kept(name: str, style: str, text: str, moves: tuple, language: str = "en") -> MakerText:
    return MakerText(name, style, language, text, moves, kept=True)


KEPT_TEXTS: tuple[MakerText, ...] = (
    _kept("harbour rope", "prose", """Harbour rope
This is a plain chain for a loom with one row of 14 pegs.
Stretch one navy band from A1 to A2, then one cream band from A2 to A3. Repeat this five more times, moving two pegs further each time.
Finish the row with a navy band from A13 to A14.
Now turn the loom round so that the open sides face you.
Take the lowest loop on each peg and bring it over to the next peg, all along the row.
Pull one last navy band through all the loops on A1. Close both ends with a clip.
""", chain(14, ("navy", "cream"), "navy")),
    _kept("slipway", "numbered", """Slipway
Loom: 1 row of 8 pegs
1. Place a green band over A1 and A2.
2. Place a green band over A2 and A3.
3. Repeat until A8.
4. Turn the loom.
5. Hook the lowest loop of A7 to A6.
6. Repeat until A1.
7. Put a green band through both loops on A1.
8. Close the free end and A8 with a clip.
""", chain(8, ("green",), "green")),
    _kept("oars", "shorthand", """oars - loom 1 row of 6 pegs
blue band A1 to A2
white band A2 to A3
blue band A3 to A4
white band A4 to A5
blue band A5 to A6
turn loom
lowest loop A5 to A4, A4 to A3, A3 to A2, A2 to A1
last blue band through A1
clip free end and A6
""", chain(6, ("blue", "white"), "blue")),
    _kept("gangway", "counts", """Gangway
You need 10 grey bands and 9 red bands, and a clip. The loom has one row of 10 pegs.
Put one grey band and one red band from A1 to A2. Do the same eight more times, one peg further each time.
Turn the loom. From every peg take the two lowest loops and put them on the next peg, along the whole row.
Pull a grey band through all four loops on A1. Clip the free end and A10 together.
""", chain(10, ("grey", "red"), "grey", twin=True)),
    _kept("eel", "prose", """Eel
For this you only need a loom with two rows of 1 peg.
Put a black band from A1 to B1, crossed in the middle.
Put a black band from A1 to B1 and then a yellow band from A1 to B1.
Lift the lowest loop on A1 over the others, then do the same on B1.
Put a black band from A1 to B1. Lift the lowest loop on both pegs over the others.
""", tail(("black", "black", "yellow", "black"))),
    _kept("mackerel", "numbered", """Mackerel, on a loom with 2 rows of 1 peg
1. One silver band from A1 to B1, with a half turn.
2. One silver band from A1 to B1.
3. One green band from A1 to B1.
4. Lift the bottom loop off both pegs, over the others.
5. One silver band from A1 to B1.
6. Lift the bottom loop off both pegs, over the others.
""", tail(("silver", "silver", "green", "silver"))),
    _kept("beacons", "block", """Beacons
A loom with three rows of nine pegs.
Begin at B1. One blue band to the left towards A2, one back to B3. The same on the right. Three more times, two pegs further.
Start at B2. One gold band to B3, one gold band from B2 to A2, one gold band from B2 to C2, one gold band from B2 to B1. Wind a gold cap three times round B2.
""", (*lanterns(4, "blue", ("gold",))[:16], *lanterns(4, "blue", ("gold",))[16:21])),
    _kept("two beacons", "addresses", """Two beacons
Loom: 3 rows of 5 pegs.
A white band from B1 to A2, a white band from A2 to B3, a white band from B1 to C2, a white band from C2 to B3.
The same again, two pegs further.
A red band from B2 to B3, from B2 to A2, from B2 to C2 and from B2 to B1. A red cap on B2, wound three times.
Do the last five bands once more, two pegs further.
""", lanterns(2, "white", ("red",))),
    _kept("compass", "clock", """Compass
Loom with 3 rows of 5 pegs.
Start at B2. One red band towards twelve o'clock. Start at B2. One white band towards nine o'clock. Start at B2. One white band towards three o'clock. Start at B2. One red band towards six o'clock.
""", (
        Place(colour="red", over=("B2", "B3")), Place(colour="white", over=("B2", "A2")),
        Place(colour="white", over=("B2", "C2")), Place(colour="red", over=("B2", "B1")),
    )),
    _kept("lids", "reference", """Lids
It is made on a loom with 3 rows of 7 pegs.
Stretch one sea green band from B2 to B3, one from B2 to A2, one from B2 to C2 and one from B2 to B1. Again two pegs further.
A cap on every centre, wound four times, in coral.
""", (
        *(Place(colour="sea green", over=(f"B{n}", to)) for n in (2, 4) for to in (f"B{n + 1}", f"A{n}", f"C{n}", f"B{n - 1}")),
        Wind(colour="coral", on="B2", turns=4), Wind(colour="coral", on="B4", turns=4),
    )),
    _kept("letter", "letter", """Dear Saturday group,
here is the short chain that you asked for. Use a loom with 1 row of 7 pegs. First stretch a pink band from A1 to A2. Then do it again five more times, one peg further each time. Turn the loom. Next, take the lowest loop of every peg over to the next peg, the whole row. Then pull one more pink band through all the loops on A1, and fasten the free end and A7 with a clip. Mind your fingers with the hook.
See you on Saturday!
""", chain(7, ("pink",), "pink")),
    _kept("with a tail", "prose", """Tow line
Loom: one row of nine pegs. You need 8 orange bands, and more for the extension.
Lay an orange band from A1 to A2. Carry on in the same way up to A9.
Turn the loom. Lift nothing yet: take the lowest loop on each peg to the next peg, all along.
Pull an orange band through the loops on A1. Then add a chain of five orange bands. Close with a clip at the free end and A9.
""", chain(9, ("orange",), "orange", extension=5)),
    _kept("pairs", "reference", """Pairs of oars
Loom with one row of 5 pegs.
Stretch one brown band from A1 to A2, one from A2 to A3, one from A3 to A4 and one from A4 to A5.
The same again with white.
Turn the loom round.
""", (*(Place(colour=c, over=(f"A{k}", f"A{k + 1}")) for c in ("brown", "white") for k in (1, 2, 3, 4)), Turn())),
    _kept("anchor", "spoken", """Anchor line, spoken
So we take a loom with one row of five pegs.
Okay, now a blue band goes from A1 to A2. Another blue one from A2 to A3. Then a blue one from A3 to A4. And the last blue one from A4 to A5.
Now we turn the loom around.
We reach down into A4 and pull the lowest loop to A3. Then the lowest loop of A3 goes to A2. And the lowest loop of A2 goes to A1.
A blue band goes through the loops on A1. And then we clip the free end to A5.
""", chain(5, ("blue",), "blue")),
    _kept("net corner", "addresses", """Net corner. Loom: 2 rows of 3 pegs.
place R over A1 B1
place R over B1 B2
place R over B2 A2
hook B2 to A2
bind R through A2
""", (
        Place(colour="R", over=("A1", "B1")), Place(colour="R", over=("B1", "B2")),
        Place(colour="R", over=("B2", "A2")), Hook(source="B2", target="A2"), Bind(colour="R", at="A2"),
    )),
    # --- German
    _kept("hafentau", "prose", """Hafentau
Du brauchst einen Webrahmen mit 1 Reihe und 9 Stiften.
Spann ein grünes Gummi von A1 zu A2, dann ein weißes Gummi von A2 zu A3. Wiederhole das noch dreimal, jedes Mal zwei Stifte weiter.
Dreh den Webrahmen um.
Nimm von jedem Stift die unterste Schlaufe und leg sie auf den nächsten Stift, die ganze Reihe entlang.
Zieh ein letztes grünes Gummi durch alle Schlaufen auf A1. Verbinde das freie Ende und A9 mit einem Clip.
""", chain(9, ("grün", "weiß"), "grün"), "de"),
    _kept("steg", "numbered", """Steg
Webrahmen: 1 Reihe mit 5 Stiften
1. Leg ein gelbes Gummi über A1 und A2.
2. Leg ein gelbes Gummi über A2 und A3.
3. Wiederhole das bis A5.
4. Dreh den Webrahmen.
5. Hol die unterste Schlaufe von A4 auf A3.
6. Mach so weiter bis A1.
7. Zieh ein gelbes Gummi durch beide Schlaufen auf A1.
8. Häng den Clip in das freie Ende und A5.
""", chain(5, ("gelb",), "gelb"), "de"),
    _kept("aal", "shorthand", """Aal, Webrahmen 2 Reihen, 1 Stift
schwarzes Gummi von A1 zu B1, gekreuzt
schwarzes Gummi von A1 zu B1
rotes Gummi von A1 zu B1
unterste Schlaufe über die anderen heben, auf A1 und B1
schwarzes Gummi von A1 zu B1
unterste Schlaufe über die anderen heben, auf beiden Stiften
""", tail(("schwarz", "schwarz", "rot", "schwarz")), "de"),
    _kept("deckel", "reference", """Deckel
Webrahmen mit 3 Reihen und 5 Stiften.
Spann ein blaues Gummi von B2 zu B3, eins von B2 zu A2, eins von B2 zu C2 und eins von B2 zu B1.
Wickle ein rotes Gummi dreimal um B2.
""", (*(Place(colour="blau", over=("B2", to)) for to in ("B3", "A2", "C2", "B1")), Wind(colour="rot", on="B2")), "de"),
    # --- Spanish
    _kept("amarra", "prose", """Amarra
Necesitas un telar de 1 fila y 9 clavijas.
Estira una gomita verde de A1 a A2 y luego una gomita blanca de A2 a A3. Repite esto tres veces más, dos clavijas más adelante cada vez.
Gira el telar.
Toma el lazo más bajo de cada clavija y pásalo a la siguiente clavija, toda la fila.
Pasa una última gomita verde por todos los lazos de A1. Une el extremo libre y A9 con un cierre.
""", chain(9, ("verde", "blanco"), "verde"), "es"),
    _kept("muelle", "numbered", """Muelle
Telar: 1 fila de 5 clavijas
1. Pon una gomita amarilla en A1 y A2.
2. Pon una gomita amarilla en A2 y A3.
3. Repite hasta A5.
4. Gira el telar.
5. Pasa el lazo más bajo de A4 a A3.
6. Sigue así hasta A1.
7. Pasa una gomita amarilla por los dos lazos de A1.
8. Pon el cierre en el extremo libre y en A5.
""", chain(5, ("amarillo",), "amarillo"), "es"),
    _kept("anguila", "shorthand", """Anguila, telar de 2 filas y 1 clavija
gomita negra de A1 a B1, cruzada
gomita negra de A1 a B1
gomita roja de A1 a B1
levanta el lazo más bajo por encima de los otros en A1 y en B1
gomita negra de A1 a B1
levanta el lazo más bajo por encima de los otros en las dos clavijas
""", tail(("negro", "negro", "rojo", "negro")), "es"),
    _kept("tapas", "reference", """Tapas
Un telar de 3 filas y 5 clavijas.
Estira una gomita azul de B2 a B3, una de B2 a A2, una de B2 a C2 y una de B2 a B1.
Enrolla una gomita roja tres veces en B2.
""", (*(Place(colour="azul", over=("B2", to)) for to in ("B3", "A2", "C2", "B1")), Wind(colour="rojo", on="B2")), "es"),
)  # fmt: skip
