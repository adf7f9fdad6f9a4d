"""Invented texts of the Saturday workshop, as makers write, each with the moves that it means.

The grammar may be built on these; those that it is only measured by are in `kept_texts.py`.
"""

from __future__ import annotations

from pegwright.pattern import Move, Place, Wind
from testing.kept_texts import KEPT_TEXTS
from testing.maker_text import MakerText, chain, lanterns, tail, worked_lanterns


def _text(name: str, style: str, text: str, moves: tuple[Move, ...], *, language: str = "en") -> MakerText:
    return MakerText(name, style, language, text, moves)


LOOKED_AT: tuple[MakerText, ...] = (
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
    _text("evening line", "prose", """Evening line
You will want a loom with one row of nine pegs.
Put one blue band from A1 to A2, then one white band from A2 to A3. Do that three more times, two pegs further each time.
Flip the loom. Take the bottom loop on each peg and place it on the next peg, all the way.
Bring a last blue band through all loops on A1. Clip both ends together.
""", chain(9, ("blue", "white"), "blue")),
    _text("pier", "numbered", """Pier
Loom: 1 row of 7 pegs
1) Stretch a lamp yellow band from A1 to A2.
2) Repeat five times more, one peg further each time.
3) Turn the loom around.
4) Pull the lowest loop of A6 to A5.
5) Go on like that until A1.
6) Finishing band in lamp yellow through A1.
7) Clip at the end and at A7.
""", chain(7, ("lamp yellow",), "lamp yellow")),
    _text("tail notes", "shorthand", """tail; loom 2 rows of 1 peg
red band from A1 to B1 crossed
red band from A1 to B1
white band from A1 to B1
bottom loop on A1 lifted over the rest, same on B1
""", tail(("red", "red", "white"))),
    _text("two lanterns", "block", """Two lanterns, 3 rows of 5 pegs
Begin at B1. One red band to the left, one back to the middle. Same on the right. Once more, two pegs further.
""", lanterns(2, "red", ("x",))[:8]),
    _text("buoys", "counts", """Buoys
In all you need 5 green bands and 4 white bands. The loom is one row of 9 pegs.
Stretch one green band from A1 to A2. Stretch one white band from A2 to A3. Again, three more times, two pegs further.
Turn the loom. Take the lowest loop of each peg to the next one, along the row.
Pull a green band through the loops on A1. Clip the two ends.
""", chain(9, ("green", "white"), "green")),
    _text("caps", "reference", """Caps
Loom with 3 rows of 5 pegs.
Stretch one blue band from B2 to B3, one from B2 to A2, one from B2 to C2, one from B2 to B1.
Cap on every centre, red.
""", (*(Place(colour="blue", over=("B2", to)) for to in ("B3", "A2", "C2", "B1")), Wind(colour="red", on="B2"))),
    # --- more ways to say it
    _text("ferry line", "spoken", """Ferry line
Right, the loom: one row of six pegs.
A white band goes over A1 and A2. Then a white one over A2 and A3. Another white one over A3 and A4, then one over A4 and A5, and one over A5 and A6.
Now turn the loom around. Reach into A5 and pull the lowest loop over to A4. Then A4 to A3 with the lowest loop. Next the lowest loop from A3 goes to A2. Last, the lowest loop from A2 goes to A1.
Pull a white band through everything on A1. Clip the free end and A6.
""", chain(6, ("white",), "white")),
    _text("fog signal", "letter", """Dear all,
this is how the line from last week is made. You need a loom with one row of eight pegs. Stretch a grey band from A1 to A2, and go on like that up to A8. Turn the loom round. Take the lowest loop on every peg and put it on the next peg, along the row. Pull a grey band through the loops on A1 and close the two ends with a clip.
Have fun, and watch your fingers!
""", chain(8, ("grey",), "grey")),
    _text("buoy count", "counts", """Buoy count
20 red bands, 1 clip.
Loom: one row of 20 pegs.
Put a band over A1 and A2. Carry on along the whole row.
Turn the loom.
Hook the lowest loop of each peg on to the next peg, the whole row.
Pull the last band through the loops on A1.
Clip both ends.
""", chain(20, ("red",), "red")),
    _text("short notes", "shorthand", """rope: loom 1 row, 5 pegs
teal A1 A2
teal A2 A3
teal A3 A4
teal A4 A5
turn
lowest loop A4 > A3
lowest loop A3 > A2
lowest loop A2 > A1
teal through A1
clip end + A5
""", chain(5, ("teal",), "teal")),
    _text("flat eel", "numbered", """Flat eel
Loom: 2 rows of 1 peg
Step 1: Put a blue band on A1 and B1 in a figure of eight.
Step 2: Put a blue band on A1 and B1.
Step 3: Put a white band on A1 and B1.
Step 4: Lift the lowest loop over the others on A1, then on B1.
Step 5: Put a white band on A1 and B1.
Step 6: As in step 4.
""", tail(("blue", "blue", "white", "white"))),
    _text("lantern by lantern", "block", """Lantern by lantern
The loom has 3 rows of 5 pegs.
For the rim, stretch a slate band from B1 to A2, from A2 to B3, from B1 to C2 and from C2 to B3.
For the glass, stretch a lemon band from B2 to B3, to A2, to C2 and to B1. Put a lemon cap on B2, wound three times.
Make one more lantern two pegs further on.
""", (
        *lanterns(1, "slate", ("lemon",)),
        *(move for move in lanterns(2, "slate", ("lemon",)) if move not in lanterns(1, "slate", ("lemon",))),
    )),
    _text("capped", "reference", """Capped
Loom with 3 rows of 5 pegs.
Stretch one blue band from B2 to B3, one from B2 to A2, one from B2 to C2, one from B2 to B1.
Cap on every centre, wound twice, in red.
Sorry, no: the cap is wound three times.
""", (*(Place(colour="blue", over=("B2", to)) for to in ("B3", "A2", "C2", "B1")), Wind(colour="red", on="B2"))),
    _text("the other one", "correction", """A line with a slip
Loom: one row of four pegs.
A green band from A1 to A2. A green band from A1 to A2. No, from A2 to A3.
A white band from A3 to A4. No, a green one.
""", tuple(Place(colour="green", over=(f"A{k}", f"A{k + 1}")) for k in (1, 2, 3))),
    _text("clockwork", "clock", """Clockwork
A loom with 3 rows of 3 pegs.
From B2, a black band goes towards 12 o'clock. From B2, a black band goes towards 3 o'clock. From B2, a black band goes towards 6 o'clock. From B2, a black band goes towards 9 o'clock.
Wind a white band twice round B2.
""", (*(Place(colour="black", over=("B2", to)) for to in ("B3", "C2", "B1", "A2")), Wind(colour="white", on="B2", turns=2))),
    _text("lantern strip worked", "numbered", """Three lanterns, worked
A loom with three rows of 7 pegs.
1. Stretch one blue band from B1 to A2, one from A2 to B3, one from B1 to C2 and one from C2 to B3. Do this two more times, two pegs further each time.
2. Stretch one yellow band from B2 to B3, one from B2 to A2, one from B2 to C2 and one from B2 to B1, and put a yellow cap on B2. Do the last five bands two more times, two pegs further each time.
3. Put a blue cap on B7.
4. Turn the loom.
5. Hook the fourth loop from the top of B6 to B5. Hook the fourth loop from the top of B6 to C6. Hook the fourth loop from the top of B6 to A6. Hook the fourth loop from the top of B6 to B7.
6. Hook the second loop of B7 to C6. Hook the lowest loop of B7 to A6. Hook the lowest loop of A6 to B5. Hook the lowest loop of C6 to B5.
7. Do the last eight steps two more times, two pegs further each time.
8. Pull a last blue band through all the loops on B1. Clip the free end and B7.
""", worked_lanterns(3, "blue", "yellow")),
    # --- German and Spanish
    _text("ebbe", "prose", """Ebbe
Ein Webrahmen mit einer Reihe zu sechs Stiften, also 1 Reihe und 6 Stifte.
Spann ein blaues Gummi von A1 zu A2. Noch vier Mal, jedes Mal einen Stift weiter.
Dreh den Webrahmen herum.
Nimm an jedem Stift die unterste Schlaufe und leg sie auf den nächsten Stift, die ganze Reihe.
Zieh ein letztes Gummi durch alle Schlaufen auf A1.
Schließ beide Enden mit einer Klammer.
""", chain(6, ("blau",), "blau"), language="de"),
    _text("leine", "addresses", """Leine
Webrahmen: 1 Reihe, 4 Stifte.
Spann ein rotes Gummi von A1 zu A2. Spann ein weißes Gummi von A2 zu A3. Spann ein rotes Gummi von A3 zu A4.
Dreh den Webrahmen.
Zieh die unterste Schlaufe von A3 auf A2. Zieh die unterste Schlaufe von A2 auf A1.
Zieh ein rotes Gummi durch alle Schlaufen auf A1. Eine Klammer durch das freie Ende und A4.
""", chain(4, ("rot", "weiß"), "rot"), language="de"),
    _text("schwanz", "shorthand", """Fischschwanz, Webrahmen mit 2 Reihen und 1 Stift
Spann ein blaues Gummi von A1 zu B1, gekreuzt.
Spann ein blaues Gummi von A1 zu B1.
Spann ein weißes Gummi von A1 zu B1.
Heb die unterste Schlaufe über die anderen, auf A1 und auf B1.
""", tail(("blau", "blau", "weiß")), language="de"),
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
""", chain(4, ("rojo", "blanco"), "rojo"), language="es"),
    _text("cola", "shorthand", """Cola, telar de 2 filas y 1 clavija
Estira una gomita azul de A1 a B1, cruzada.
Estira una gomita azul de A1 a B1.
Estira una gomita blanca de A1 a B1.
Levanta el lazo de abajo por encima de los demás, en A1 y en B1.
""", tail(("azul", "azul", "blanco")), language="es"),
    _text("bojenkette", "counts", """Bojenkette
Du brauchst 7 orange Gummis und 7 weiße Gummis. Der Webrahmen hat 1 Reihe mit 14 Stiften.
Spann ein oranges Gummi von A1 zu A2. Spann ein weißes Gummi von A2 zu A3. Mach das noch fünf Mal, jedes Mal zwei Stifte weiter.
Spann ein oranges Gummi von A13 zu A14.
Dreh den Webrahmen.
Nimm von jedem Stift die unterste Schlaufe auf den nächsten Stift, die ganze Reihe.
Zieh ein weißes Gummi durch die Schlaufen auf A1. Schließ die beiden Enden mit einem Clip.
""", (*chain(14, ("orange", "weiß"), "weiß"),), language="de"),
    _text("zwei laternen", "block", """Zwei Laternen
Ein Webrahmen mit 3 Reihen und 5 Stiften.
Spann ein weißes Gummi von B1 zu A2, eins von A2 zu B3, eins von B1 zu C2 und eins von C2 zu B3. Noch einmal, zwei Stifte weiter.
Spann ein rotes Gummi von B2 zu B3, eins von B2 zu A2, eins von B2 zu C2 und eins von B2 zu B1. Wickle ein rotes Gummi dreimal um B2.
""", lanterns(2, "weiß", ("rot",))[:13], language="de"),
    _text("kurze leine", "letter", """Liebe Gruppe,
so geht die kurze Leine. Du brauchst einen Webrahmen mit 1 Reihe und 4 Stiften. Spann zuerst ein lila Gummi von A1 zu A2, dann ein lila Gummi von A2 zu A3 und zuletzt ein lila Gummi von A3 zu A4. Dreh den Webrahmen um. Zieh die unterste Schlaufe von A3 zu A2 und die unterste Schlaufe von A2 zu A1. Zieh ein lila Gummi durch alle Schlaufen auf A1 und verbinde das freie Ende und A4 mit einer Klammer.
Bis Samstag!
""", chain(4, ("lila",), "lila"), language="de"),
    _text("boyas", "counts", """Boyas
Necesitas 7 gomitas rojas y 7 gomitas blancas. El telar tiene 1 fila de 14 clavijas.
Estira una gomita roja de A1 a A2. Estira una gomita blanca de A2 a A3. Repite cinco veces más, dos clavijas más adelante cada vez.
Estira una gomita roja de A13 a A14.
Gira el telar.
Toma el lazo más bajo de cada clavija y ponlo en la siguiente, toda la fila.
Pasa una gomita blanca por los lazos de A1. Cierra los dos extremos con un cierre.
""", chain(14, ("rojo", "blanco"), "blanco"), language="es"),
    _text("dos faroles", "block", """Dos faroles
Un telar de 3 filas y 5 clavijas.
Estira una gomita blanca de B1 a A2, una de A2 a B3, una de B1 a C2 y una de C2 a B3. Otra vez, dos clavijas más adelante.
Estira una gomita roja de B2 a B3, una de B2 a A2, una de B2 a C2 y una de B2 a B1. Enrolla una gomita roja tres veces en B2.
""", lanterns(2, "blanco", ("rojo",))[:13], language="es"),
    _text("cabo corto", "letter", """Querido grupo:
así se hace el cabo corto. Necesitas un telar de 1 fila y 4 clavijas. Primero estira una gomita lila de A1 a A2, luego una gomita lila de A2 a A3 y al final una gomita lila de A3 a A4. Gira el telar. Pasa el lazo más bajo de A3 a A2 y el lazo más bajo de A2 a A1. Pasa una gomita lila por todos los lazos de A1 y une el extremo libre y A4 con un cierre.
¡Hasta el sábado!
""", chain(4, ("lila",), "lila"), language="es"),
)  # fmt: skip

TEXTS = (*LOOKED_AT, *KEPT_TEXTS)
