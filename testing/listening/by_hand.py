"""Recordings written down by hand, in a careless speaker's words, with what is wrong in each.

All teach the built-in ebb line. `wrong` names each fact said wrong: its kind and its step.
"""

from __future__ import annotations

from typing import NamedTuple


class HandWritten(NamedTuple):
    """Lines that begin with a time, their language, and what is wrong in them."""

    name: str
    language: str
    text: str
    wrong: tuple[tuple[str, int], ...]


BY_HAND: tuple[HandWritten, ...] = (
    HandWritten(
        "tuesday's try",
        "en",
        """[0:02] Hello everybody, so this is the ebb line, from the Saturday workshop.
[0:10] Keep safe, you know the sheet: small bands and clips can choke.
[0:16] Right, lay the loom in front of you, peg A1 nearest you, one row, the open side faces away from you.
[0:26] Lay out fourteen slate blue bands and twelve foam white bands and count them please.
[0:36] Place the bands. Each new band goes on top of the ones already there.
[0:44] Stretch one slate blue band from peg A1 to peg A2, away from you.
[0:52] Then one foam white band from peg A2 to peg A3, away from you.
[1:00] And do steps three and four again, ten more times, moving two pegs further away from you each time.
[1:12] The last one ends on peg A25. I always count aloud here.
[1:20] Stretch one slate blue band from A25 to A26, away from you.
[1:30] Stop and look. Twenty-five bands have been used so far.
[1:38] Turn the loom. Turn the whole loom round, end for end, so that peg A26 is nearest you.
[1:50] Work the loops. Push the hook down the open side of peg A25, inside all the loops above.
[2:00] Catch the lowest loop and pull it up through those loops. Put it on peg A24, away from you.
[2:12] Do step eight again, twenty-three more times, one peg further away from you each time. The last one ends on peg A1.
[2:30] Finish. Push the hook down through both loops on peg A1.
[2:38] Catch one slate blue band and pull it up until half of it is through. Keep both its ends on the hook.
[2:50] Lift the piece off the loom, from one end to the other, loop by loop. Keep the loop of peg A26 on a finger.
[3:02] Close it. Bring together the loops of the free end and those that lay on peg A26.
[3:10] Hook one clip through all three of them.
[3:18] Wear it safely. When it is on the wrist one finger must slip under it easily.
""",
        (("repeats", 5),),
    ),
    HandWritten(
        "rain on the roof",
        "en",
        """[0:02] The ebb line. Sorry about the rain.
[0:06] Keep safe. Small bans and clips can choke.
[0:14] Lay the loom in front of you with peg a one nearest you. The open side of every peg faces away from you.
[0:24] Lay out 14 slate blue bands and 12 phone white bands and count them.
[0:34] Place the bands. Push it down a little before you take the next one.
[0:42] Stretch one slate blue ban from pegg A1 to peg A2 away from you.
[0:50] Stretch one foam white band from peg A2 to, no, that was the wrong one, put it back.
[0:56] Stretch one foam white band from peg A2 to peg A3 away from you.
[1:04] Do steps free and four again, eleven more times. Move to pegs further away from you each time.
[1:14] The last one ends on peg 825.
[1:20] Stretch one slate blue band from peg A25 to peg A26 away from you.
[1:28] Stop and look. Pegs A2 to A25 each hold two loops.
[1:36] Turn the room. Turn the whole loom round, end for end.
[1:46] Work the loops. Push the book down the open side of peg A25, inside all the loops above.
[1:56] Catch the top loop and pull it up through those loops. Put it on peg A24, away from you.
[2:08] Do step 8 again, 23 more times. Move one peg further away from you each time.
[2:20] Finish. Push the hook down through both loops on peg A1. Catch one slate blue band and pull it up until half of it is through.
[2:34] Lift the peace off the loom, from one end to the other. Keep the loop of peg A26 on a finger.
[2:46] Close it. Bring together the loops of the free end and those that lay on peg A26. Hook one clip through all free of them.
[2:58] Wear it safely. When it is on the wrist, one finger must slip under it easily.
""",
        (("loop", 8),),
    ),
    HandWritten(
        "Samstag früh",
        "de",
        """[0:02] Die Ebbelinie, aus der Samstagswerkstatt.
[0:08] Also, leg den Webrahmen so vor dich, dass Stift A1 dir am nächsten ist. Die offene Seite zeigt von dir weg.
[0:18] Leg bereit: vierzehn Gummis in Schieferblau und zwölf Gummis in Schaumweiß, zähl bitte nach.
[0:30] Jetzt spann ein Gummi, schieferblau, von Stift A1 zu Stift A2, von dir weg.
[0:40] Dann spann ein Gummi, schaumweiß, von Stift A2 zu Stift A3, von dir weg.
[0:50] Mach die Schritte drei und vier noch zwölf Mal, und geh jedes Mal zwei Stifte weiter, von dir weg.
[1:02] Draußen tutet übrigens die Fähre. Beim letzten Mal endest du hier: Stift A25.
[1:12] Spann ein Gummi, schieferblau, von Stift A25 zu Stift A26, von dir weg.
[1:22] Dreh den ganzen Webrahmen herum, bis Stift A26 dir am nächsten ist.
[1:34] Schieb den Hacken an der offenen Seite von Stift A25 hinunter, innen durch alle Schleifen darüber.
[1:44] Fang die oberste Schlaufe, nein, das war falsch, fang die unterste Schlaufe und zieh sie durch diese Schlaufen hoch.
[1:56] Leg sie auf Stift A24, von dir weg. Mach Schritt acht noch dreiundzwanzig Mal. Geh jedes Mal einen Stift weiter.
[2:10] Beim letzten Mal endest du bei Stift A1. Schieb den Haken durch beide Schlaufen auf Stift A1 hinunter.
[2:22] Fang ein Gummi, schieferblau, und zieh es hoch, bis die Hälfte durch ist. Behalt beide Enden auf dem Haken.
[2:36] Heb das Stück vom Webrahmen, Schlaufe um Schlaufe. Halt die Schlaufe von Stift A26 auf einem Finger fest.
[2:48] Bring diese Schlaufen zusammen, das freie Ende und die von Stift A26. Häng einen Clip durch alle drei.
[3:00] Am Handgelenk muss ein Finger leicht darunter passen.
""",
        (("repeats", 5),),
    ),
    HandWritten(
        "sábado por la mañana",
        "es",
        """[0:02] La línea de la bajamar, del taller del sábado.
[0:08] Pon el telar delante de ti, la clavija A1 la más cercana a ti. El lado abierto mira hacia delante, lejos de ti.
[0:18] Prepara catorce gomitas de azul pizarra y doce gomitas de blanco espuma y cuéntalas.
[0:30] Ahora estira una gomita azul pizarra de la clavija A1 a la clavija A2, hacia delante.
[0:40] Y luego estira una gomita blanco espuma de la clavija A2 a la clavija A3, hacia delante.
[0:50] Repite los pasos tres y cuatro, once veces más. Avanza cada vez dos clavijas más hacia delante.
[1:02] Fuera suena el transbordador. La última vez terminas aquí: la clavija A25.
[1:12] Estira una gomita azul pizarra de la clavija A25 a la clavija A27, hacia delante.
[1:22] Gira todo el telar, de punta a punta, hasta que la clavija A26 sea la más cercana a ti.
[1:34] Mete el ancho por el lado abierto de la clavija A25, por dentro de todos los lazos de encima.
[1:44] Toma el lazo más bajo y súbelo a través de esos lazos. Ponlo en la clavija A24, hacia delante.
[1:56] Repite el paso ocho, veintitrés veces más. Avanza cada vez una clavija más hacia delante.
[2:08] La última vez terminas en la clavija A1. Mete el gancho por los dos lazos de la clavija A1.
[2:20] Toma una gomita azul pizarra y tira de ella hasta que pase la mitad. Deja sus dos extremos en el gancho.
[2:32] Saca la pieza del telar, lazo a lazo. Guarda en un dedo el lazo de la clavija A26.
[2:44] Junta los lazos del extremo libre con los de la clavija A26. Engancha un cierre en los tres.
[2:56] En la muñeca, un dedo tiene que pasar por debajo con facilidad.
""",
        (("peg", 6),),
    ),
    HandWritten(
        "nothing amiss, without a full stop",
        "en",
        """[0:01] okay so ebb line again this is the short version for those who came late
[0:08] keep safe small bands and clips can choke and point stretched bands down away from faces
[0:18] lay the loom in front of you peg a one nearest you open side of every peg away from you
[0:28] you need fourteen slate blue bands and twelve foam white ones count them out
[0:38] now place the bands each new band on top of the ones already there
[0:46] one slate blue band goes from peg a one over to a two away from you
[0:54] then one foam white band from peg a two to peg a three away from you
[1:02] and do steps three and four again eleven more times move two pegs further away from you each time
[1:14] the last one ends on peg a twenty five and I will put the kettle on meanwhile
[1:24] stretch one slate blue band from peg a twenty five to peg a twenty six away from you
[1:34] now turn the whole loom round end for end so that peg a twenty six is nearest you
[1:46] push the hook down the open side of peg a twenty five inside all the loops above
[1:56] catch the lowest loop and pull it up through those loops
[2:04] put it on peg a twenty four away from you
[2:10] do step eight again twenty three more times one peg further away from you each time
[2:22] the last one ends on peg a one
[2:28] push the hook down through both loops on peg a one
[2:36] catch one slate blue band and pull it up until half of it is through keep both its ends on the hook
[2:48] lift the piece off the loom from one end to the other loop by loop keep the loop of peg a twenty six on a finger
[3:02] bring together the loops of the free end and those that lay on peg a twenty six
[3:12] hook one clip through all three of them
[3:20] when it is on the wrist one finger must slip under it easily
""",
        (),
    ),
    HandWritten(
        "the wrong colour on a Thursday",
        "en",
        """[0:02] Ebb line, a piece by the Saturday workshop. It is Thursday, I know.
[0:10] Keep safe. Small bands and clips can choke. Take bracelets off to sleep.
[0:20] Get ready. Lay the loom in front of you with peg A1 nearest you. There is one row, A.
[0:30] Please take 14 slate blue bands and 12 foam white bands, and count them.
[0:40] Place the bands. Hold it on its first peg with a finger of one hand, and stretch it with the other.
[0:50] Stretch one slate blue band from peg A1 to peg A2, away from you.
[0:58] And stretch one buoy red band from peg A2 to peg A3, away from you.
[1:06] Do steps 3 and 4 again, 11 more times. Move 2 pegs further away from you each time.
[1:18] [Music]
[1:40] The last one ends on peg A25. Stretch one slate blue band from peg A25 to peg A26, away from you.
[1:52] Stop and look. 25 bands have been used so far.
[2:00] Turn the loom. Turn the whole loom round, end for end, so that peg A26 is nearest you.
[2:12] Work the loops. Push the hook down the open side of peg A25, inside all the loops above.
[2:22] Catch the lowest loop and pull it up through those loops. Put it on peg A24, away from you.
[2:34] Do step 8 again, 23 more times. Move one peg further away from you each time. The last one ends on peg A1.
[2:50] Finish. Push the hook down through both loops on peg A1.
[2:58] Catch one slate blue band and pull it up until half of it is through.
[3:06] Lift the piece off the loom, from one end to the other, loop by loop. Keep the loop of peg A26 on a finger.
[3:18] Close it. Bring together the loops of the free end and those that lay on peg A26. Hook one clip through all 3 of them.
[3:32] Wear it safely. When it is on the wrist, one finger must slip under it easily.
""",
        (("colour", 4),),
    ),
    HandWritten(
        "one band too few on the table",
        "en",
        """[0:02] Right, the ebb line, and yes the heating is broken.
[0:08] Keep safe. Small bands and clips can choke.
[0:16] Lay the loom in front of you with peg A1 nearest you. The open side of every peg faces away from you.
[0:26] You need twelve slate blue bands and twelve foam white bands. Count them out, please.
[0:36] Place the bands. Each new band goes on top of the bands already there.
[0:44] Put one slate blue band on from peg A1 to A2, away from you.
[0:52] We put a foam white band from peg A2 to peg A3, like that, away from you.
[1:00] Do steps 3 and 4 again, 11 more times. Like this, one slate blue band goes from A3 over to A4, and so on.
[1:14] Move 2 pegs further away from you each time. The last one ends on peg A25.
[1:26] One slate blue band goes from A25 over to A26, away from you.
[1:36] Turn the loom. Turn the whole loom round, end for end, so that peg A26 is nearest you.
[1:48] Work the loops. Go down the open side of A25 with your hook, inside all the loops above it.
[1:58] Get hold of the lowest loop and bring it up through those loops. That goes on to peg A24, away from you.
[2:10] Repeat step 8, 23 more times. Move one peg further away from you each time. The last one ends on peg A1.
[2:26] Finish. Push the hook down through both loops on peg A1.
[2:34] Catch one slate blue band and pull it up until half of it is through. Keep both its ends on the hook.
[2:46] Lift the piece off the loom, from one end to the other, loop by loop. Keep the loop of peg A26 on a finger.
[2:58] Close it. Bring together the loops of the free end and those that lay on peg A26.
[3:08] The clip goes through all 3 of them.
[3:14] Wear it safely. One finger must slip under it easily when it is on the wrist.
""",
        (("supplies", 2),),
    ),
    HandWritten(
        "the wrong way home",
        "en",
        """[0:02] Hello. The ebb line once more, somebody asked.
[0:08] Keep safe. Small bans and clips can choke.
[0:16] Get ready. Lay the room in front of you with pegg A1 nearest you. The open side of every peg faces away from you.
[0:28] Lay out 14 slate blue bands and 12 foam white bands, and count them.
[0:38] Place the bands. Stretch one slate blue band from peg A1 to peg A2, away from you.
[0:48] Stretch one foam white band from peg A2 to peg A3, away from you.
[0:56] Do steps 3 and 4 again, 11 more times. Move 2 pegs further away from you each time. The last one ends on peg A25.
[1:12] Stretch one slate blue band from peg A25 to peg A26, away from you.
[1:20] Can everyone at the back see this? I can turn the lamp.
[1:26] Turn the loom. Turn the whole loom round, end for end, so that peg A26 is nearest you.
[1:38] Work the loops. Push the book down the open side of peg A25, inside all the loops above.
[1:48] Catch the lowest loop and pull it up through those loops. Put it on peg A24, towards you.
[2:00] Do step 8 again, 23 more times. Move one peg further away from you each time. The last one ends on peg A1.
[2:16] Finish. Push the hook down through both loops on peg A1.
[2:24] Catch one slate blue band and pull it up until half of it is through. Keep both its ends on the hook.
[2:36] Lift the piece off the loom, from one end to the other, loop by loop. Keep the loop of peg A26 on a finger.
[2:48] Close it. Bring together the loops of the free end and those that lay on peg A26. Hook one clip through all 3 of them.
[3:02] Wear it safely. When it is on the wrist, one finger must slip under it easily.
""",
        (("way", 8),),
    ),
    HandWritten(
        "a band that is in no step",
        "en",
        """[0:02] Good morning, this is the ebb line. A piece by the Saturday workshop, Harbour Street library.
[0:12] Keep safe. Small bands and clips can choke.
[0:20] Get ready. Lay the loom in front of you with peg A1 nearest you. The open side of every peg faces away from you.
[0:32] Lay out 14 slate blue bands and 12 foam white bands, and count them.
[0:42] Place the bands. Stretch one slate blue band from peg A1 to peg A2, away from you.
[0:52] Stretch one foam white band from peg A2 to peg A3, away from you.
[1:00] Then stretch one orange band from peg A2 to peg A5.
[1:08] Do steps 3 and 4 again, 11 more times. Move 2 pegs further away from you each time. The last one ends on peg A25.
[1:24] Stretch one slate blue band from peg A25 to peg A26, away from you.
[1:34] Turn the loom. Turn the whole loom round, end for end, so that peg A26 is nearest you.
[1:46] Work the loops. Push the hook down the open side of peg A25, inside all the loops above.
[1:56] Catch the lowest loop and pull it up through those loops. Put it on peg A24, away from you.
[2:08] Do step 8 again, 23 more times. Move one peg further away from you each time. The last one ends on peg A1.
[2:24] Finish. Push the hook down through both loops on peg A1. Catch one slate blue band and pull it up until half of it is through.
[2:38] Lift the piece off the loom, from one end to the other, loop by loop. Keep the loop of peg A26 on a finger.
[2:50] Close it. Bring together the loops of the free end and those that lay on peg A26. Hook one clip through all 3 of them.
[3:04] Wear it safely. When it is on the wrist, one finger must slip under it easily.
""",
        (("extra", 4),),
    ),
    HandWritten(
        "with the other hand",
        "en",
        """[0:02] The ebb line for left and right, ha.
[0:08] Keep safe. Small bands and clips can choke.
[0:16] Get ready. Lay the loom in front of you with peg A1 nearest you. The open side of every peg faces away from you.
[0:28] Lay out 14 slate blue bands and 12 foam white bands, and count them.
[0:38] Place the bands. Stretch one slate blue band from peg A1 to peg A2, away from you.
[0:48] Stretch one foam white band from peg A2 to peg A3, away from you.
[0:56] Do steps 3 and 4 again, 11 more times. Move 2 pegs further away from you each time. The last one ends on peg A25.
[1:12] Stretch one slate blue band from peg A25 to peg A26, away from you.
[1:22] Turn the loom. Turn the whole loom round, end for end, so that peg A26 is nearest you.
[1:34] Work the loops. Push the hook down the open side of peg A25, inside all the loops above.
[1:42] I hold the hook in my left hand, and so do you.
[1:48] Catch the lowest loop and pull it up through those loops. Put it on peg A24, away from you.
[2:00] Do step 8 again, 23 more times. Move one peg further away from you each time. The last one ends on peg A1.
[2:16] Finish. Push the hook down through both loops on peg A1. Catch one slate blue band and pull it up until half of it is through.
[2:30] Lift the piece off the loom, from one end to the other, loop by loop. Keep the loop of peg A26 on a finger.
[2:42] Close it. Bring together the loops of the free end and those that lay on peg A26. Hook one clip through all 3 of them.
[2:56] Wear it safely. When it is on the wrist, one finger must slip under it easily.
""",
        (("hand", 8),),
    ),
    HandWritten(
        "Sonntag, verschnupft",
        "de",
        """[0:02] Die Ebbelinie, ich bin etwas verschnupft.
[0:08] Leg den Webrahmen so vor dich, dass Stift A1 dir am nächsten ist. Die offene Seite zeigt von dir weg.
[0:18] Leg bereit: vierzehn Gummis in Schieferblau und zwölf Gummis in Schaumweiß, und zähl sie.
[0:30] Spann ein Gummi, schieferblau, von Stift A1 zu Stift A2, von dir weg.
[0:40] Spann ein Gummi, schaumweiß, von Stift A2 zu Stift A4, von dir weg.
[0:50] Mach die Schritte drei und vier noch elf Mal, und geh jedes Mal zwei Stifte weiter, von dir weg.
[1:02] Beim letzten Mal endest du hier: Stift A25. Wer möchte noch Tee?
[1:12] Spann ein Gummi, schieferblau, von Stift A25 zu Stift A26, von dir weg.
[1:22] Dreh den ganzen Webrahmen herum, bis Stift A26 dir am nächsten ist.
[1:34] Schieb den Haken an der offenen Seite von Stift A25 hinunter, innen durch alle Schlaufen darüber.
[1:44] Fang die unterste Schlaufe und zieh sie durch diese Schlaufen hoch.
[1:52] Leg sie auf Stift A24, von dir weg. Mach Schritt acht noch dreiundzwanzig Mal. Geh jedes Mal einen Stift weiter.
[2:06] Beim letzten Mal endest du bei Stift A1. Schieb den Haken durch beide Schlaufen auf Stift A1 hinunter.
[2:18] Fang ein Gummi, schieferblau, und zieh es hoch, bis die Hälfte durch ist. Behalt beide Enden auf dem Haken.
[2:32] Heb das Stück vom Webrahmen, Schlaufe um Schlaufe. Halt die Schlaufe von Stift A26 auf einem Finger fest.
[2:44] Bring diese Schlaufen zusammen, das freie Ende und die von Stift A26. Häng einen Clip durch alle drei.
[2:56] Am Handgelenk muss ein Finger leicht darunter passen.
""",
        (("peg", 4),),
    ),
    HandWritten(
        "sábado por la tarde, sin prisa",
        "es",
        """[0:02] La línea de la bajamar, otra vez, para quien llegó tarde.
[0:08] Pon el telar delante de ti, la clavija A1 la más cercana a ti. El lado abierto mira hacia delante, lejos de ti.
[0:18] Prepara catorce gomitas de azul pizarra y doce gomitas de blanco espuma y cuéntalas.
[0:30] Estira una gomita azul pizarra de la clavija A1 a la clavija A2, hacia delante.
[0:40] Estira una gomita blanco espuma de la clavija A2 a la clavija A3, hacia delante.
[0:50] Repite los pasos tres y cuatro, doce veces más. Avanza cada vez dos clavijas más hacia delante.
[1:02] La última vez terminas aquí: la clavija A25. Hay café en la cocina.
[1:12] Estira una gomita azul pizarra de la clavija A25 a la clavija A26, hacia delante.
[1:22] Gira todo el telar, de punta a punta, hasta que la clavija A26 sea la más cercana a ti.
[1:34] Mete el gancho por el lado abierto de la clavija A25, por dentro de todos los lazos de encima.
[1:44] Toma el lazo más bajo y súbelo a través de esos lazos. Ponlo en la clavija A24, hacia delante.
[1:56] Repite el paso ocho, veintitrés veces más. Avanza cada vez una clavija más hacia delante.
[2:08] La última vez terminas en la clavija A1. Mete el gancho por los dos lazos de la clavija A1.
[2:20] Toma una gomita azul pizarra y tira de ella hasta que pase la mitad. Deja sus dos extremos en el gancho.
[2:32] Saca la pieza del telar, lazo a lazo. Guarda en un dedo el lazo de la clavija A26.
[2:44] Junta los lazos del extremo libre con los de la clavija A26. Engancha un cierre en los tres.
[2:56] En la muñeca, un dedo tiene que pasar por debajo con facilidad.
""",
        (("repeats", 5),),
    ),
)
