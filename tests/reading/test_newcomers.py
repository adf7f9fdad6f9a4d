"""Plain chains as newcomers wrote them down who did not know what is read: they hold."""

from __future__ import annotations

import pytest

from pegwright.pattern import Hook, Place, expand
from pegwright.reading import read_free
from pegwright.workshop import work
from testing.maker_text import chain, count_right, read_moves

CHATTY = (
    "Harbour chain\n"
    "You need a loom with one row of 12 pegs and 12 sea green bands.\n"
    "Put a sea green band over A1 and A2. Put the next one over A2 and A3. "
    "Keep going like this until you reach the last peg.\n"
    "Swivel the loom round so that the far end is close to you.\n"
    "Reach into A11 with the hook, pick up the bottom band and pull it over to A10. "
    "Then pick up the bottom band on A10 and pull it over to A9. Go on like this until you get to A1.\n"
    "Push one more sea green band through all the loops on A1.\nJoin the two ends with a clip."
)
STORY = (
    "My niece and I made this one on a wet Saturday.\n"
    "We took the small loom, which has a single row of eight pegs. First we stretched a red band "
    "between A1 and A2, then another between A2 and A3, and so on as far as A8. When that was done "
    "we turned the loom round. With the hook we took the lower loop on A7 and brought it to A6, and "
    "did the same on every peg down to A1. We pulled one last red band through the loops that were "
    "left on A1 and clipped the ends together."
)
GERMAN = """Flutkette
Du brauchst einen Rahmen mit einer Reihe und 10 Stiften und 10 blaue Gummis.
Leg ein blaues Gummi über A1 und A2. Das nächste kommt über A2 und A3.
Mach so weiter, bis du bei A10 bist.
Dreh den Rahmen um.
Geh mit dem Haken in A9, hol die untere Schlaufe heraus und leg sie auf A8.
Das machst du mit jedem Stift bis A1.
Zieh ein letztes blaues Gummi durch alle Schlaufen auf A1.
Verbinde die Enden mit einem Clip.
"""
SPANISH = """Cadena del muelle
Hace falta un telar con una fila de 10 clavijas y 10 gomitas verdes.
Pon una gomita verde entre A1 y A2. Pon otra entre A2 y A3. Sigue así hasta A10.
Da la vuelta al telar.
Mete el gancho en A9, coge el lazo de abajo y llévalo a A8.
Haz lo mismo en cada clavija hasta llegar a A1.
Pasa una última gomita verde por todos los lazos de A1.
Une los dos extremos con un cierre.
"""


@pytest.mark.parametrize(
    ("text", "pegs", "colour"),
    [(CHATTY, 12, "sea green"), (STORY, 8, "red"), (GERMAN, 10, "blau"), (SPANISH, 10, "verde")],
)
def test_a_newcomers_chain_is_read_and_holds(text, pegs, colour):
    told = read_free(text)
    meant = chain(pegs, (colour,), colour)
    assert count_right(meant, *read_moves(told)) == (len(meant), 0)
    assert (told.blanks, told.findings) == ((), ())
    assert work(told.pattern).holds


@pytest.mark.parametrize(
    ("text", "count"),
    [
        (
            "Loom: 1 row of 9 pegs.\n1. A red band from A1 to A2.\n2. A white band from A2 to A3.\n"
            "3. Repeat steps 1 and 2 two more times, two pegs further.",
            6,
        ),
        (
            "Telar de 1 fila y 9 clavijas.\n1. gomita roja de A1 a A2\n2. gomita blanca de A2 a A3\n"
            "3. repite los pasos 1 y 2 dos veces más, dos clavijas más adelante",
            6,
        ),
        (
            "Webrahmen mit 1 Reihe zu 9 Stiften.\nrotes Gummi von A1 nach A2\n"
            "Das noch viermal, einen Stift weiter",
            5,
        ),
        (
            "Loom: 1 row of 9 pegs. A red band from A1 to A2.\n"
            "Fill the other three gaps the same way, two pegs further up.",
            4,
        ),
    ],
)
def test_how_often_is_read_where_it_is_said(text, count):
    told = read_free(text)
    assert sum(isinstance(one.move, Place) for one in expand(told.pattern).moves) == count
    assert told.findings == ()


def test_a_bottom_band_that_is_picked_up_is_a_loop():
    """It was once read as a new band from peg to peg."""
    told = read_free(
        "Loom: 1 row of 4 pegs. A red band from A1 to A2. A red band from A2 to A3. Turn the loom.\n"
        "Then pick up the bottom band on A2 and pull it over to A1."
    )
    assert expand(told.pattern).moves[-1].move == Hook(source="A2", target="A1")
    assert told.findings == ()


def test_what_should_be_done_and_is_not_understood_is_no_aside():
    head = "Loom: 1 row of 4 pegs. A red band from A1 to A2. "
    for said in ("Then do the pretty bit as Lena showed you.", "\nbind R through\n"):
        assert [found.code for found in read_free(head + said).findings] == ["sentence-unread"]
