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
    "The open side of every peg now looks at you.": (
        "Die offene Seite jedes Stiftes schaut jetzt zu dir.",
        "El lado abierto de cada clavija mira ahora hacia ti.",
    ),
    "Reach down inside the loops above and take the lowest loop.": (
        "Greif innen in den oberen Schlaufen hinunter und nimm die unterste Schlaufe.",
        "Baja el gancho por dentro de los lazos de arriba y toma el lazo más bajo.",
    ),
    "Pull the last band through every loop on the peg and keep both its ends on the hook.": (
        "Zieh das letzte Gummi durch alle Schlaufen auf dem Stift und behalt beide Enden auf dem Haken.",
        "Pasa la última gomita por todos los lazos de la clavija y deja sus dos extremos en el gancho.",
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
    "Take the two lowest loops at once.": (
        "Nimm die beiden untersten Schlaufen auf einmal.",
        "Toma los dos lazos más bajos a la vez.",
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
    "The lowest loop, up over the others and off.": (
        "Die unterste Schlaufe, über die anderen hinweg und vom Stift.",
        "El lazo más bajo, por encima de los otros y fuera de la clavija.",
    ),
    "Both loops of the last band on one peg.": (
        "Beide Schlaufen des letzten Gummis auf einen Stift.",
        "Los dos lazos de la última gomita en una sola clavija.",
    ),
    "Slack water mat": ("Stauwasser-Untersetzer", "Posavasos de aguas quietas"),
    "A coaster. The cross bands are never worked: the chains pass through both their loops.": (
        "Ein Untersetzer. Die Quergummis werden nie gearbeitet: Die Ketten gehen durch ihre beiden Schlaufen.",
        "Un posavasos. Las gomitas cruzadas no se trabajan: las cadenas pasan por sus dos lazos.",
    ),
    "The lowest loop, up through the cross bands and all that lies above.": (
        "Die unterste Schlaufe, durch die Quergummis und alles, was darüber liegt.",
        "El lazo más bajo, por dentro de las gomitas cruzadas y de todo lo que hay encima.",
    ),
    "Run a cord through all the loops of the last pegs and tie it.": (
        "Zieh eine Schnur durch alle Schlaufen der letzten Stifte und verknote sie.",
        "Pasa un cordón por todos los lazos de las últimas clavijas y anúdalo.",
    ),
    "Lobster pot": ("Hummerkorb", "Nasa de langostas"),
    "A little net bag. Each round is laid peg to peg, then the round below is lifted over it.": (
        "Ein kleiner Netzbeutel. Jede Runde wird von Stift zu Stift gelegt, dann wird die untere über sie gehoben.",
        "Una bolsita de red. Cada vuelta se pone de clavija en clavija; luego se alza sobre ella la de abajo.",
    ),
    "The two lowest loops, over the two above them and off.": (
        "Die zwei untersten Schlaufen, über die zwei darüber hinweg und vom Stift.",
        "Los dos lazos más bajos, por encima de los otros dos y fuera de la clavija.",
    ),
    "Thread a cord through every loop and draw it shut.": (
        "Fädel eine Schnur durch jede Schlaufe und zieh sie zu.",
        "Pasa un cordón por cada lazo y tira de él hasta cerrar la bolsita.",
    ),
    "Buoy line": ("Bojenleine", "Línea de boyas"),
    "Five little buoys ride on a plain line.": (
        "Fünf kleine Bojen hängen an einer einfachen Leine.",
        "Cinco boyas pequeñas cuelgan de una línea sencilla.",
    ),
    "Wind the band three times round the shaft of the hook.": (
        "Wickle das Gummi dreimal um den Schaft des Hakens.",
        "Enrolla la gomita tres veces alrededor del mango del gancho.",
    ),
    "Take the loop, slide the buoy down on to it, put it on its peg.": (
        "Nimm die Schlaufe, schieb die Boje darauf und häng die Schlaufe auf ihren Stift.",
        "Toma el lazo, desliza la boya sobre él y pon el lazo en su clavija.",
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
