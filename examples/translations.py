"""The workshop's texts in German and Spanish, text by text as the pieces say them in English."""

from __future__ import annotations

import msgspec

from pegwright.pattern import Pattern, texts_of

# fmt: off
TEXTS: dict[str, tuple[str, str]] = {
    "the Saturday workshop, Harbour Street library": (
        "der Samstagswerkstatt der Bücherei Harbour Street",
        "el taller de los sábados de la biblioteca de Harbour Street",
    ),
    "slate blue": ("schieferblau", "azul pizarra"),
    "foam white": ("schaumweiß", "blanco espuma"),
    "buoy red": ("bojenrot", "rojo boya"),
    "weed green": ("tanggrün", "verde alga"),
    "sand": ("sand", "arena"),
    "lamp yellow": ("lampengelb", "amarillo farol"),
    "Ebb line": ("Ebbeleine", "Línea de bajamar"),
    "A plain chain for a first Saturday: 26 bands in all and one clip.": (
        "Eine einfache Kette für den ersten Samstag: 26 Gummis und ein Clip.",
        "Una cadena sencilla para el primer sábado: 26 gomitas en total y un cierre.",
    ),
    "Leave the loom on the table while you turn it.": (
        "Lass den Webrahmen beim Drehen auf dem Tisch liegen.",
        "Deja el telar sobre la mesa mientras lo giras.",
    ),
    "If the loop slips off the hook, put it back on its peg and try again.": (
        "Rutscht die Schlaufe vom Haken, leg sie zurück auf ihren Stift und versuch es noch einmal.",
        "Si el lazo se suelta del gancho, vuelve a ponerlo en su clavija e inténtalo otra vez.",
    ),
    "From now on the hook carries the whole chain.": (
        "Von jetzt an trägt der Haken die ganze Kette.",
        "Desde ahora el gancho lleva toda la cadena.",
    ),
    "Keep a finger on the last band until the clip is shut.": (
        "Halt das letzte Gummi mit einem Finger fest, bis der Clip zu ist.",
        "Sujeta la última gomita con un dedo hasta que el cierre esté cerrado.",
    ),
    "Keep a finger on the loops until the clip is shut.": (
        "Halt die Schlaufen mit einem Finger fest, bis der Clip zu ist.",
        "Sujeta los lazos con un dedo hasta que el cierre esté cerrado.",
    ),
    "Twin hulls": ("Doppelrumpf", "Doble casco"),
    "Two bands a link: if one ever snaps, its twin still carries the bracelet.": (
        "Zwei Gummis für jedes Glied: Reißt eins, trägt das andere das Armband weiter.",
        "Dos gomitas por eslabón: si una se rompe, su gemela sostiene la pulsera.",
    ),
    "The twins stay side by side: smooth them with a fingertip.": (
        "Beide Gummis liegen Seite an Seite. Streich sie mit dem Finger glatt.",
        "Las gemelas quedan una al lado de la otra: alísalas con la yema del dedo.",
    ),
    "Riding lights": ("Ankerlichter", "Luces de fondeo"),
    "Six lanterns in a row, each lit in the middle by its cap.": (
        "Sechs Laternen in einer Reihe. In jeder leuchtet in der Mitte die Kappe.",
        "Seis faroles en fila. En cada uno brilla el remate del centro.",
    ),
    "Four bands round a lantern, left side first.": (
        "Vier Gummis um eine Laterne.",
        "Cuatro gomitas alrededor de un farol.",
    ),
    "From the middle peg to its four neighbours, then the cap.": (
        "Vom mittleren Stift zu seinen vier Nachbarn, dann die Kappe.",
        "De la clavija del centro a sus cuatro vecinas; después, el remate.",
    ),
    "Under the cap, from the top of the stack down, each loop to its own peg.": (
        "Unter der Kappe, von oben nach unten, jede Schlaufe auf ihren eigenen Stift.",
        "Bajo el remate, de arriba abajo, cada lazo a su propia clavija.",
    ),
    "The lowest loop each time, through everything above it.": (
        "Jedes Mal die unterste Schlaufe, durch alles, was darüber liegt.",
        "Cada vez el lazo más bajo, por dentro de todo lo que tiene encima.",
    ),
    "The end cap keeps the first loops from slipping off.": (
        "Die Kappe am Ende hält die ersten Schlaufen fest, damit sie nicht abrutschen.",
        "El remate del extremo impide que los primeros lazos se salgan.",
    ),
    "Herring tail": ("Heringsschwanz", "Cola de arenque"),
    "Two pegs are enough. The first band goes on crossed, like a figure of eight.": (
        "Zwei Stifte genügen. Das erste Gummi kommt gekreuzt darauf, wie eine Acht.",
        "Bastan dos clavijas. La primera gomita se pone cruzada, como un ocho.",
    ),
    "Hold the upper loops down with a fingertip while you lift.": (
        "Halt die oberen Schlaufen beim Heben mit der Fingerspitze unten.",
        "Sujeta los lazos de encima con la yema del dedo mientras lo levantas.",
    ),
    "Both loops of the last band on one peg.": (
        "Beide Schlaufen des letzten Gummis auf einen Stift.",
        "Los dos lazos de la última gomita en una sola clavija.",
    ),
    "Slack water mat": ("Stauwasser-Untersetzer", "Posavasos de aguas quietas"),
    "A coaster. The cross bands are never worked: the chains pass through both their loops.": (
        "Ein Untersetzer. Die Gummis quer bleiben liegen: Durch ihre Schlaufen gehen die Ketten.",
        "Un posavasos. Las gomitas cruzadas no se trabajan: las cadenas pasan por sus dos lazos.",
    ),
    "The cross bands stay where they are: the chain passes through them.": (
        "Die Gummis quer bleiben, wo sie sind: Die Kette geht durch sie hindurch.",
        "Las gomitas cruzadas se quedan donde están: la cadena pasa por ellas.",
    ),
    "A flat knot keeps the coaster flat.": (
        "Mit einem flachen Knoten bleibt der Untersetzer eben.",
        "Con un nudo plano, el posavasos queda plano.",
    ),
    "Lobster pot": ("Hummerkorb", "Nasa de langostas"),
    "A little net bag. Each round is laid peg to peg, then the round below is lifted over it.": (
        "Ein kleiner Netzbeutel. Jede Runde wird von Stift zu Stift gelegt, dann wird die untere über sie gehoben.",
        "Una bolsita de red. Cada vuelta se pone de clavija en clavija; luego se alza sobre ella la de abajo.",
    ),
    "Let the loops drop into the ring.": (
        "Lass die Schlaufen in den Ring hineingleiten.",
        "Deja que los lazos caigan hacia dentro del anillo.",
    ),
    "Pull the cord until the bag closes, then tie it.": (
        "Zieh an der Schnur, bis der Beutel zu ist, und verknote sie dann.",
        "Tira del cordón hasta que la bolsita se cierre, y entonces átalo.",
    ),
    "Buoy line": ("Bojenleine", "Línea de boyas"),
    "Five little buoys ride on a plain line.": (
        "Fünf kleine Bojen hängen an einer einfachen Leine.",
        "Cinco boyas pequeñas cuelgan de una línea sencilla.",
    ),
    "Three turns make one buoy.": (
        "Drei Windungen ergeben eine Boje.",
        "Tres vueltas hacen una boya.",
    ),
    "Keep the loop taut, and the buoy slides by itself.": (
        "Halt die Schlaufe straff, dann gleitet die Boje von selbst.",
        "Mantén el lazo tirante y la boya se desliza sola.",
    ),
    "Runs out": ("Läuft aus", "Se escapa"),
    "The clip at the end was forgotten.": ("Der Clip am Ende wurde vergessen.", "Se olvidó el cierre del final."),
    "Flat tail": ("Flacher Schwanz", "Cola plana"),
    "The first band was not crossed.": (
        "Das erste Gummi wurde nicht gekreuzt.", "La primera gomita no se puso cruzada.",
    ),
    "Shallow water": ("Flachwasser", "Aguas someras"),
    "At A5 the hook did not go deep enough.": (
        "An A5 ging der Haken nicht tief genug.", "En A5 el gancho no bajó lo suficiente.",
    ),
}
# fmt: on


def translate_texts(pattern: Pattern) -> Pattern:
    """Return the pattern with all its texts in German and Spanish beside the English.

    Raises:
        KeyError: a text has no translation.
    """
    here = dict.fromkeys(one.text for one in texts_of(pattern))
    tables = {
        language: {text: TEXTS[text][column] for text in here} for column, language in enumerate(("de", "es"))
    }
    return msgspec.structs.replace(pattern, translations=tables)
