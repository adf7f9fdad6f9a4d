# Was die Prüfungen sagen, auf Deutsch. Kein Punkt am Ende, Wörter der Werkstatt.
# Stifte stehen ohne Artikel und nach „auf“, damit kein Fall falsch wird.

## Das Dokument lesen

file-unreadable = { $file } lässt sich nicht lesen: { $reason }
    .hint = sieh nach, ob der Name stimmt und wer die Datei lesen darf
not-text = das ist keine Textdatei
    .hint = ein Muster ist ein JSON-Text in UTF-8
too-large = die Datei hat { FIXED($size) } Bytes; ein Muster darf { FIXED($limit) } haben
    .hint = nimm heraus, was nicht zum Muster gehört
not-json = der Text ist kein gültiges JSON: { $reason }
    .hint = bring den Text an dieser Stelle in Ordnung
not-a-pattern = { $reason }
    .hint = { $hint }
unknown-version = { $version ->
    [missing] dieses Muster nennt seine Fassung nicht; dieses Programm liest die Fassungen 1 bis { $newest }
   *[other] dieses Muster hat die Fassung { $version }; dieses Programm liest die Fassungen 1 bis { $newest }
}
    .hint = nimm ein neueres pegwright, oder berichtige das Feld pegwright

## Motive und Wiederholungen

motif-twice = zwei Motive heißen „{ $name }“; gearbeitet wird das erste
    .hint = gib dem zweiten einen eigenen Namen
motif-unknown = kein Motiv heißt „{ $name }“
    .hint = { $count ->
    [0] hier gibt es keine Motive
   *[other] die Motive hier sind: { $known }
}
motif-in-itself = das Motiv „{ $name }“ kommt in sich selbst vor
    .hint = schreib stattdessen eine Wiederholung; ein Motiv kann sich nicht selbst enthalten
slot-empty = dem Motiv „{ $name }“ wird nicht gesagt, für welche Farbe „{ $slot }“ steht
    .hint = nenn eine Farbe für „{ $slot }“
slot-unknown = das Motiv „{ $name }“ hat nichts namens „{ $slot }“ auszufüllen
    .hint = sieh nach, was das Motiv aufführt
count-unknown = die Wiederholung verlangt „{ $name }“ Runden, und nirgends steht, wie viele das sind
    .hint = schreib eine Zahl, oder führ „{ $name }“ unter den Zahlen des Motivs auf
nested-too-deeply = Wiederholungen liegen mehr als { $limit } tief ineinander
    .hint = mach aus den inneren Motive
too-many-moves = das Muster kommt auf mehr als { FIXED($limit) } Züge, also wird keiner gemacht
    .hint = wiederhol weniger oft
too-many-passes = hier laufen so viele Schlaufen durch Schlaufen, dass sie sich nicht alle festhalten lassen
    .hint = mach das Stück in Teilen; niemand könnte es so arbeiten
too-many-refused = { $count } Züge gingen nicht, also werden die { $left } danach nicht versucht
    .hint = behebe die ersten und sieh noch einmal nach
stack-full = auf { HOLDER($peg) } kämen mehr als { $limit } Schlaufen: { $move }
    .hint = arbeite erst einige Schlaufen ab, oder verteil sie auf mehr Stifte
too-many-pegs = der Webrahmen hat { FIXED($pegs) } Stifte; mehr als { FIXED($limit) } gehen nicht
    .hint = nimm einen kleineren Webrahmen
off-the-rows = { $reason }
    .hint = fang die Wiederholung weiter innen an, oder rück sie um weniger Reihen oder Stifte weiter

## Züge, die nicht gehen

peg-unknown = auf diesem Webrahmen gibt es keinen Stift { $peg }: { $move }
    .hint = der Webrahmen hat { $pegs }{ $more ->
    [0] {""}
   *[other] …
}
peg-double = zwei Stifte heißen { $peg }; nur der erste wird benutzt
    .hint = gib einem von beiden eine andere Adresse
peg-twice = { $peg } steht zweimal in einem Zug: { $move }
    .hint = nenn jede Stelle einmal
peg-bare = auf { HOLDER($peg) } liegt keine Schlaufe, die man nehmen könnte: { $move }
    .hint = leg oder häng erst ein Gummi dorthin
peg-inside-band = das Gummi liefe außen um { $peg } herum, ohne dort eine Schlaufe zu bilden: { $move }
    .hint = lass { $peg } weg, oder leg das Gummi um weniger Stifte
peg-enclosed = das Gummi schlösse sich um { $peg }, ohne es zu nennen: { $move }
    .hint = nenn auch { $peg }, wo das Gummi dort umkehrt, oder leg es um Stifte ohne andere dazwischen
turns-mismatch = Windungen sind für { $given } Stifte angegeben, aber das Gummi geht um { $pegs }: { $move }
    .hint = gib für jeden Stift eine Zahl von Windungen an, oder gar keine
twists-mismatch = halbe Drehungen sind für { $given } Strecken angegeben, aber zwischen { $pegs } Stiften liegt eine Strecke weniger: { $move }
    .hint = gib für jede Strecke von Stift zu Stift eine Zahl an, oder gar keine
loop-missing = auf Stift { $peg } gibt es keine Schlaufe { $loop }; er trägt { $loops }: { $move }
    .hint = zähl die Schlaufen von 1 an von unten, oder von −1 an von oben
not-so-many-above = der Haken kann auf Stift { $peg } nicht durch { $through } Schlaufen darüber gehen, dort sind { $above }: { $move }
    .hint = lass die Zahl weg, um durch alle zu gehen
same-peg = die Schlaufe käme wieder auf { $peg }, woher sie kommt: { $move }
    .hint = nenn einen anderen Stift
nothing-to-lift-over = auf Stift { $peg } liegt nichts über der Schlaufe, worüber man sie heben könnte: { $move }
    .hint = leg erst ein Gummi dorthin
hook-empty = am Haken hängt nichts zum Aufschieben: { $move }
    .hint = häng erst ein Gummi daran
end-unknown = hier gibt es noch kein freies Ende namens „{ $end }“: { $move }
    .hint = schließ erst mit einem letzten Gummi ab
end-taken = es gibt schon ein freies Ende namens „{ $end }“: { $move }
    .hint = gib diesem Ende einen anderen Namen

## Was an der Arbeit auffällt

loop-dragged = die Schlaufe von Gummi { $band } ({ $colour }) auf { HOLDER($peg) } wird bewegt, während { $count ->
    [one] Gummi { $others } durch sie hindurchgeht
   *[other] die Gummis { AND($others) } durch sie hindurchgehen
}
    .hint = arbeite zuerst die obere Schlaufe; dann wird nichts mitgezogen
band-not-worked = Gummi { $band } ({ $colour }) wird nie gearbeitet: keine Schlaufe davon wird gehakt, gehoben oder gefasst
    .hint = arbeite es, oder lass es weg
loop-left = { $count ->
    [one] eine Schlaufe bleibt
   *[other] { $count } Schlaufen bleiben
} auf Stift { $peg } zurück, und nichts geht hindurch: { $loops }
    .hint = sieh nach, ob dort ein Zug fehlt oder die Schlaufe darüber genommen wurde
start-not-held = die Schlaufe von Gummi { $band } ({ $colour }) wird durch nichts gezogen: keine Schlaufe liegt über ihr auf { HOLDER($peg) }
    .hint = setz eine Kappe oder ein erstes Gummi auf { HOLDER($peg) }, oder fang einen Stift weiter an
stack-too-high = { $loops } Schlaufen auf Stift { $peg } sind { FIXED($stack_mm, digits: 1) } mm hoch; der Stift fasst { FIXED($room_mm, digits: 1) } mm
    .hint = arbeite einige davon, bevor mehr dazukommen, oder nimm einen Webrahmen mit höheren Stiften
no-finish = nichts schließt das Stück: Es fehlt ein Clip oder ein Knoten
    .hint = schließ mit einem Clip oder einem Knoten durch die letzten Schlaufen
catches-one = { $kind ->
    [clip] der Clip
   *[knot] der Knoten
} fasst 1 von { $loops } Schlaufen auf { HOLDER($peg) }
    .hint = fass alle; eine einzelne rutscht ab, und der Rest läuft heraus
catches-more = { $kind ->
    [clip] der Clip
   *[knot] der Knoten
} soll { $wanted } Schlaufen auf { HOLDER($peg) } fassen, dort gibt es nur { $loops }
    .hint = lass die Zahl weg, um alle zu fassen, und sieh nach, ob dort eine Schlaufe fehlt
laid-after-clip = ein Gummi wird gelegt, nachdem der Clip von Schritt { $clip } das Stück geschlossen hat{ $more ->
    [0] {""}
    [one] , und noch 1 weiteres
   *[other] , und noch { $more } weitere
}
    .hint = schließ das Stück zuletzt
letter-twice = zwei Farben haben den Buchstaben { $letter }; es gilt die erste
    .hint = gib einer einen anderen Buchstaben
colour-not-listed = Farbe { $letter } wird verwendet, steht aber nicht bei den Farben
    .hint = nimm sie in die Liste auf, damit ihre Gummis benannt, gewogen und gekauft werden können
colour-unused = Farbe { $letter } ({ $name }) steht in der Liste, wird aber nie verwendet
    .hint = nimm sie aus der Liste, oder verwende sie
band-kind-twice = zwei Sorten Gummi heißen „{ $name }“; es gilt die erste
    .hint = gib einer einen anderen Namen
band-kind-unknown = Farbe { $letter } ist von einer Sorte Gummi namens „{ $band }“, die nicht in der Liste steht
    .hint = { $count ->
    [0] keine Sorte Gummi steht in der Liste
   *[other] in der Liste stehen: { $known }
}

## Was an der Lektion auffällt

contact-missing = niemand ist genannt, dem man Fehler melden kann
    .hint = nenn dich oder deine Werkstatt als Entwerfende
licence-missing = nirgends steht, wer das Stück kopieren oder lehren darf
    .hint = nenn eine Lizenz, etwa CC BY 4.0
about-missing = nirgends steht, was das Stück ist und wem es passt
    .hint = schreib ein, zwei Sätze in die Notizen
level-low = die Stufe ist { $level ->
    [basic] „Grundstufe“
    [easy] „leicht“
   *[intermediate] „mittel“
}, aber das Stück hat, was es { $reckoned ->
    [easy] „leicht“
   *[intermediate] „mittel“
} macht: { $reasons }
    .hint = heb die Stufe an, oder lass sie, wenn du diese Griffe vorher lehrst
motif-unused = das Motiv „{ $name }“ wird nie gearbeitet
    .hint = arbeite es, oder nimm es heraus
repeat-of-none = eine Wiederholung geschieht kein Mal, also kommt es nie zu ihren Schritten
    .hint = schreib, wie oft, oder nimm die Wiederholung heraus
side-named = der Text sagt „{ $word }“; in der gespiegelten Ausgabe ist das die andere Seite
    .hint = nenn Stifte statt Seiten, oder ändere den Text für die andere Hand
term-mixed = der Text sagt „{ $word }“, wo die Lektion „{ $term }“ sagt
    .hint = nimm ein Wort für eine Sache, oder mach „{ $word }“ durchweg zu deinem Wort dafür
text-peg-unknown = der Text nennt { $peg }, aber diesen Stift gibt es auf dem Webrahmen nicht
    .hint = berichtige den Stift
text-peg-moves = der Text nennt { $peg }, aber sein Schritt wird auf anderen Stiften wiederholt
    .hint = sag es so, dass es für jede Runde gilt
text-step-unknown = der Text spricht von Schritt { $number }, aber die Lektion hat { $steps }
    .hint = berichtige die Zahl
text-hard = der Text ist schwer zu lesen für ein Kind von zwölf ({ $words } Wörter im Satz, oder lange Wörter)
    .hint = schreib kürzere Sätze mit Wörtern des Alltags
colours-alike = die Farben { $one } und { $other } sind schwer zu unterscheiden für { AND($who) }
    .hint = mach eine davon heller oder dunkler; Buchstaben und Muster helfen auf dem Papier, nicht im Haufen
lesson-disagrees = Lektion und Arbeit stimmen nicht überein ({ $what }): gesagt { $said }, gezählt { $counted }
    .hint = plan die Lektion neu nach dem Muster

## Hält es?

band-falls = Gummi { $band } ({ $colour }) fällt ab: { $reason }
    .hint = sorg dafür, dass eine Schlaufe hindurchgeht und die letzten gefasst sind
band-not-proved = ob Gummi { $band } ({ $colour }) hält, ist weder so noch so zu beweisen: { $reason }
    .hint = probier es am Webrahmen aus, bevor du es lehrst
losses-left-out = was fällt, wenn ein Gummi reißt, wird für höchstens { $limit } Gummis berechnet; dieses Stück hat { $bands }
    .hint = frag nach einem kürzeren Stück mit derselben Wiederholung

## Größe und Zahlen

band-slack = ein Gummi ({ $name }) hängt schlaff um { AND($pegs) }: { FIXED($taut_mm, digits: 1) } mm rundherum, in Ruhe { FIXED($rest_mm, digits: 1) } mm{ $more ->
    [0] {""}
    [one] , und noch 1 weiteres wie dieses
   *[other] , und noch { $more } weitere wie dieses
}
    .hint = nimm kleinere Gummis oder einen Webrahmen mit größerem Abstand, oder wickle das Gummi einmal mehr
band-taut = ein Gummi ({ $name }) ist um { AND($pegs) } auf das { FIXED($stretch, digits: 1) }-Fache gedehnt{ $more ->
    [0] {""}
    [one] , und noch 1 weiteres wie dieses
   *[other] , und noch { $more } weitere wie dieses
}
    .hint = Gummis werden bis etwa auf das Dreifache gedehnt; probier es mit einem eigenen, die Augen geschützt
band-overstretched = ein Gummi ({ $name }) ist um { AND($pegs) } auf das { FIXED($stretch, digits: 1) }-Fache gedehnt und kann reißen{ $more ->
    [0] {""}
    [one] , und noch 1 weiteres wie dieses
   *[other] , und noch { $more } weitere wie dieses
}
    .hint = nimm Stifte, die näher beieinander stehen, oder größere Gummis; ein reißendes Gummi kann ins Auge gehen
stated-count-wrong = { $what }: angegeben { $stated }, aber das Muster braucht { $counted }
    .hint = berichtige die Zahl oder die Schritte
text-count-wrong = der Text sagt „{ $quote }“, aber das Muster braucht { $counted }
    .hint = berichtige die Zahl, oder sag, welcher Teil des Stücks gemeint ist

## Handgelenke

wrist-unreadable = „{ $said }“ ist nicht als Handgelenk zu verstehen
    .hint = schreib einen Umfang mit Einheit (16.5 cm, 6 1/2 in), eine Größe ({ $sizes }) oder ein Alter (age 8)
wrist-nonsense = { $what } kann nicht stimmen
    .hint = miss rund um das Handgelenk, gleich hinter seinem Knochen, und sieh auf die Einheit
wrist-unusual = ein Handgelenk von { $said } liegt außerhalb von { FIXED($low_cm, digits: 1) } bis { FIXED($high_cm, digits: 1) } cm, wo die Messreihen Handgelenke fanden
    .hint = miss noch einmal, und sieh auf die Einheit
wrist-too-young = für ein Alter von { SHORT($years) } Jahren wird kein Handgelenk berechnet: kleine Gummis sind nichts für Kinder unter 3
    .hint = an kleinen Gummis und Clips kann man ersticken; halt sie fern, und halt dich an die Regeln deines Orts

## Auf dem Webrahmen

band-near-breaking = ein Gummi ({ $name }) um { AND($pegs) } ist auf das { FIXED($stretch, digits: 1) }-Fache gedehnt und zieht mit { FIXED($force_n, digits: 1) } N{ $more ->
    [0] {""}
    [one] , und noch 1 weiteres wie dieses
   *[other] , und noch { $more } weitere wie dieses
}; Gummis reißen etwa vom { SHORT($breaks) }-Fachen an
    .hint = halt es nach unten und weg von Gesichtern, trag eine Brille; besser nimm nähere Stifte oder größere Gummis

## Wie das Stück passt

fit-loose = mit { FIXED($length_mm) } mm hängt das Stück locker an einem Handgelenk von { FIXED($wrist_mm) } mm
    .hint = lass Verlängerungsgummis oder eine Wiederholung weg: { FIXED($low_mm) } bis { FIXED($high_mm) } mm in Ruhe lägen gut an
fit-tight = mit { FIXED($length_mm) } mm ist das Stück eng an einem Handgelenk von { FIXED($wrist_mm) } mm{ $pulls }
    .hint = setz Verlängerungsgummis an, bis es in Ruhe { FIXED($low_mm) } bis { FIXED($high_mm) } mm lang ist; ein Finger muss leicht darunter passen, und es muss sofort ab, wenn die Haut blass, dick oder taub wird
fit-hand = um über eine Hand von { FIXED($hand_mm) } mm zu kommen, muss man das Stück mit { FIXED($pull_n) } N aufziehen
    .hint = setz Verlängerungsgummis an, oder leg es offen an und schließ den Clip am Handgelenk
fit-unmeasured = wie das Stück zieht, ist bis { FIXED($known_mm) } mm bekannt; die Hand braucht { FIXED($needed_mm) } mm
    .hint = dehn es weiter, im Modell oder mit Gewichten, die Augen geschützt
extension-nowhere = { $bands ->
    [one] 1 Verlängerungsgummi wäre
   *[other] { $bands } Verlängerungsgummis wären
} nötig, und das Muster hat kein freies Ende dafür
    .hint = schließ mit einem letzten Gummi ab, dessen zwei Enden frei bleiben, und häng den Clip dort ein
stretch-curve-nonsense = die Dehnungskurve ergibt keinen Sinn: { $reason }
    .hint = führ Längen auf und zu jeder die Kraft, die sie hält, von der Ruhe an aufwärts
gauge-nonsense = { $what } käme auf { FIXED($value_mm, digits: 1) } mm
    .hint = miss beide Stücke in Ruhe auf dieselbe Weise, und zähl noch einmal, worin sie sich unterscheiden

## Kalibrieren

measure-nonsense = { $what } von { SHORT($value) } { $unit } ergibt keinen Sinn: { $reason }
    .hint = { $cure }
measure-few = { $count ->
    [0] gar keine Gewichte sind zu wenig
    [one] 1 Gewicht ist zu wenig
   *[other] { $count } verschiedene Gewichte sind zu wenig
} für { $what }; nötig { $needed ->
    [one] ist 1
   *[other] sind { $needed }
}
    .hint = häng mehr Gewichte an, von schlaff bis etwa zur dreifachen Länge
density-odd = aus flacher Länge, Dicke und dem Gewicht von 100 folgt eine Dichte von { FIXED($density_g_cm3, digits: 2) } g/cm³; Gummis aus Silikon, Kautschuk oder TPE haben { FIXED($low, digits: 2) } bis { FIXED($high, digits: 2) }
    .hint = am meisten liegt an der Dicke: miss sie an mehreren Gummis nebeneinander; dann wieg und zähl noch einmal
modulus-odd = der Schubmodul kommt auf { FIXED($shear_mpa, digits: 3) } MPa; kleine Gummis haben { FIXED($low, digits: 2) } bis { FIXED($high, digits: 2) }
    .hint = sieh auf die Einheit der Gewichte (Gramm), auf die Dicke, und ob dort ein einzelnes Gummi hing
moduli-tangled = die Gewichte dehnen das Gummi vom { FIXED($low, digits: 1) }- bis zum { FIXED($high, digits: 1) }-Fachen; das trennt C10 nicht von C01
    .hint = ihre Summe ist gut bekannt und genügt bis dorthin; um sie zu trennen, häng Gewichte bis etwa zum Dreifachen an
stretch-misfit = unter { SHORT($mass_g) } g war das Gummi { FIXED($length_mm, digits: 1) } mm lang; nach der Anpassung wären es { FIXED($fitted_mm, digits: 1) } mm
    .hint = miss dieses Gewicht noch einmal; das Lineal galt als auf { SHORT($reading_mm) } mm genau

## Der Vorrat

not-a-stash = { $reason }
    .hint = ein Vorrat führt Packungen mit Größe und Preis auf
stash-lacks = im Vorrat steht keine Packung zu kaufen ({ $what }), also bleiben die Kosten offen
    .hint = ergänz eine Packung mit ihrem Preis
currency-missing = Preise stehen ohne Währung da
    .hint = nenn eine, so wie deine Bank sie schreibt

## Die Tabelle der Versehen

not-a-slip-table = { $reason }
    .hint = eine Tabelle gibt Klassen ihre Wahrscheinlichkeit und Versehen ihre Klasse
slip-unknown = kein Versehen heißt { $slip }
    .hint = die Versehen sind: { $known }
slip-class-unknown = keine Klasse heißt { $given }
    .hint = nenn eine von diesen, oder führ sie auf: { $known }

## Viele gleiche

more-of-the-same = und { $count } weitere derselben Art: { $of }
    .hint = behebe die ersten und sieh noch einmal nach

## Die Form in Ruhe

bands-drawn-crossing = ein Strang dieses Gummis ist durch einen anderen gezeichnet, mit { FIXED($gap_mm, digits: 3) } mm dazwischen
    .hint = zeichne die Stränge auseinander; nichts sagt, auf welche Seite sie gehören
rest-not-reached = nach { $iterations } Schritten war das Stück nicht zur Ruhe gekommen: Die Kräfte sind noch { PERCENT($drop, digits: 2) } von vorher
    .hint = nimm das Bild mit Vorsicht, oder lass mehr Schritte zu
rest-interrupted = nach { $iterations } Schritten wurde angehalten; die Form ist die bis dahin erreichte
    .hint = lass es weiterlaufen bis zur Form in Ruhe

## Woraus alles gesagt wird

list-and = { $initial ->
   *[other] { $head } und { $last }
}
list-or = { $initial ->
   *[other] { $head } oder { $last }
}
holder = { $kind ->
    [hook] dem Haken
    [end] dem freien Ende „{ $name }“
    [start] dem Anfang
   *[peg] { $name }
}
place-line = Zeile { $line }, Spalte { $column }
place-step = Zug { $step }
place-peg = { $kind ->
    [hook] der Haken
    [end] das freie Ende „{ $name }“
    [start] der Anfang
   *[peg] Stift { $name }
}
place-band = Gummi { $band }
place-whole = das ganze Muster
place-at = wo: { $place }
hint-is = Rat: { $hint }
fix-is = beheben: { $label }
as-told = { $text }
band-named = { $band } ({ $colour })
the-band = Gummi { $band } ({ $colour })
so-many-more = { $count } weitere

## Lesen

os-reason = { $errno ->
    [ENOENT] es gibt sie nicht
    [EACCES] sie darf nicht gelesen werden
    [EISDIR] es ist ein Ordner
   *[other] { $text }
}
json-reason = { $kind ->
    [truncated] er endet zu früh
    [trailing-characters] nach seinem Ende folgt noch etwas
    [trailing-comma-in-object] nach dem letzten Feld steht ein Komma
    [trailing-comma-in-array] nach dem letzten Eintrag steht ein Komma
    [object-keys-must-be-strings] der Name eines Feldes gehört in Anführungszeichen
    [invalid-character] ein Zeichen ist fehl am Platz
    [invalid-number] eine Zahl ist falsch geschrieben
    [number-out-of-range] eine Zahl ist zu groß
    [invalid-escape] nach einem Rückstrich steht, was nichts bedeutet
    [expected] erwartet wird { OR($signs) }
   *[other] { $text }
}
pattern-braces = ein Muster ist ein Objekt in geschweiften Klammern
nested-deeply = Klammern liegen zu tief ineinander
given-twice = das Feld { $field } steht zweimal da
take-one-out = nimm eines der beiden heraus
no-such-field = ein Feld { $field } gibt es hier nicht; es gibt { $known }
field-missing = das Feld { $field } fehlt
see-schema = sieh im Schema nach: pegwright schema
is-not = erwartet wird { OR($types) }, nicht { $said }
a-text = ein Text
true-or-false = true oder false
a-whole-number = eine ganze Zahl
a-number = eine Zahl
an-object = ein Objekt in geschweiften Klammern
a-list = eine Liste in eckigen Klammern
great-number = eine so große Zahl
quote-it = setz es in Anführungszeichen
write-true = schreib true oder false, ohne Anführungszeichen
write-digits = schreib es in Ziffern, ohne Anführungszeichen
write-braces = schreib es als {"{"}"…": …{"}"}
write-brackets = schreib es als […], auch wenn nur eines darin steht
write-tag = schreib es als {"{"}"{ $tag }": "{ $choice }", …{"}"}
is-no-address = { $said } ist keine Stiftadresse
write-address = gib die Reihe in Großbuchstaben an, dann die Nummer von dir aus, wie in B3
is-no-end = { $said } ist kein Name für ein Ende
write-end = kleine Buchstaben, Ziffern und Bindestriche, wie in end oder tail-1
is-no-holder = { $said } ist weder ein Stift noch ein Ende
write-holder = nenn einen Stift, wie B3, oder ein Ende, wie start oder end
is-no-letter = { $said } ist kein Farbbuchstabe
write-letter = ein bis sechs Buchstaben oder Ziffern, vorn ein Buchstabe, wie in A
is-no-mirror = { $said } ist keine Art zu spiegeln
write-mirror = nimm rows oder pegs
is-no-tint = { $said } ist kein Farbton
write-tint = ein # und sechs Zeichen von 0-9 und a-f: Rot, Grün, Blau, wie in #34506b
shows-nothing = { $said } zeigt nichts
write-visible = gib mindestens ein sichtbares Zeichen an
write-visible-or-none = lass es weg, oder gib ein sichtbares Zeichen an
out-of-bounds = { $said } liegt außerhalb der Grenzen
take-at-least = nimm mindestens { SHORT($least) } und höchstens { SHORT($most) }
take-more-than = nimm mehr als { SHORT($least) } und höchstens { SHORT($most) }
too-many = { FIXED($size) } { $what ->
    [characters] Zeichen
   *[entries] Einträge
} sind zu viele
at-most = höchstens { FIXED($most) } passen hierher
too-few = { FIXED($size) } { $what ->
    [characters] Zeichen
   *[entries] Einträge
} sind zu wenige
at-least = mindestens { FIXED($least) } müssen es hier sein
no-choice = { $said } steht nicht zur Wahl
no-choice-for = { $said } steht für { $field } nicht zur Wahl
choices = zur Wahl stehen { $choices }
choices-near = vielleicht { $near }; zur Wahl stehen { $choices }
one-of = es ist eines von { $choices }
rubber-never-pulls = C10 und C01 sind beide null: So ein Gummi würde nicht ziehen
rubber-pushes = C2 liegt zu weit unter null: So ein Gummi würde schieben, wo es ziehen soll
moved-before-row = { $peg } läge, hierher gerückt, vor Reihe A
moved-before-peg = { $peg } läge, hierher gerückt, vor Stift 1
moved-past-rows = { $peg } läge, hierher gerückt, hinter der letzten Reihe, die es geben kann
row-span = { $first } bis { $last }

## Webrahmen und Beweis

open-twist = Gummis darin sind in sich gedreht und könnten haften
open-across = ein Gummi, das quer darüber liegt, könnte es halten
open-tangled = es ist zu verschlungen, um es zu entscheiden
falls-unfastened = nichts schließt das Stück: verknote die letzten Schlaufen, nimm einen Clip oder ein letztes Gummi
falls-passed-by-none = nichts geht durch eine seiner Schlaufen
falls-with = { $count ->
    [one] nur Gummi { $bands } geht hindurch, und das fällt auch ab
   *[other] nur die Gummis { $bands }{ $more ->
        [0] {""}
       *[other] {" "}…
    } gehen hindurch, und die fallen auch ab
}
falls-off = { $count ->
    [one] Gummi { $bands } geht hindurch, aber es rutscht darüber ab
   *[other] die Gummis { $bands }{ $more ->
        [0] {""}
       *[other] {" "}…
    } gehen hindurch, aber es rutscht über sie ab
}

## Die Lektion

level-caps = Kappen
level-wide = breite Gummis
level-twists = halbe Drehungen
level-hung = angehängte Gummis
level-tall = hohe Stapel
sight-everybody = alle
sight-protan = Augen, die wenig Rot sehen
sight-deutan = Augen, die wenig Grün sehen
sight-tritan = Augen, die wenig Blau sehen
what-bands = Gummis im Ganzen
what-bands-of = Gummis der Farbe { $letter }
what-key = Farben in der Legende
what-number = Nummer eines Schritts
what-first = erster Zug von Schritt { $step }
what-moves = gelehrte Züge
what-rounds = Runden von Schritt { $step }
what-boxes = Kästchen von Schritt { $step }
what-strong = kräftig gezeichnete Gummis in Schritt { $step }
what-size = Größe des fertigen Stücks
what-size-bands = Gummis für ein Handgelenk von { $wrist }

## Größe, Zahlen und Maße

stated-bands = Gummis { $letter } ({ $name })
stated-bands-unlisted = Gummis { $letter }
stated-clips = Clips
wrist-of-age = ein Alter von { SHORT($years) } Jahren
wrist-of-girth = ein Handgelenk von { $said }
pulls-with = {" "}und zieht mit { FIXED($force_n, digits: 1) } N
pulls-unknown = {""}
curve-few = es braucht mindestens zwei Punkte
curve-negative = eine Kraft oder Länge ist negativ oder keine Zahl
curve-falls = { SHORT($less_n) } N bei { SHORT($less_mm) } mm, aber { SHORT($more_n) } N bei { SHORT($more_mm) } mm
gauge-repeat = eine Wiederholung
gauge-extension = ein Verlängerungsgummi
few-for-rubber = das Gummi
few-for-both = beide Mooney-Rivlin-Konstanten
goods-bands = { $name } ({ $letter }), { $band }
goods-unlisted = Farbe { $letter }
goods-loom = { $kind ->
    [straight] Webrahmen, gerade
    [round] Webrahmen, rund
   *[pegs] Webrahmen aus Stiften
}, { $rows } × { $pegs }
goods = { $kind ->
    [clips] Clips
    [hooks] Haken
   *[scissors] Scheren
}
measured = { $what ->
    [flat] eine flache Länge
    [thickness] eine Dicke
    [weight-100] ein Gewicht von hundert
    [hook] ein Haken
    [error] ein Ablesefehler
    [weight] ein Gewicht
   *[length] eine Länge
}
measured-under = unter { SHORT($mass_g) } g eine Länge
between = es sollte zwischen { SHORT($low) } und { SHORT($high) } liegen
above-nought = es sollte über 0 liegen
no-hole = bei einer flachen Länge von { SHORT($flat_mm) } mm bliebe vom Loch nichts übrig
thin-wire = es sollte ein dünner Draht sein
error-useless = kein Ablesen ist ohne Fehler, und keines so weit daneben ist zu gebrauchen
flat-already = flach hingelegt ist das Gummi schon { SHORT($flat_mm) } mm lang
all-snapped = das ist mehr als das { SHORT($times) }-Fache, wo jedes Gummi gerissen ist
longer-before = unter { SHORT($mass_g) } g waren es schon { SHORT($length_mm) } mm
cure = { $how ->
    [flat] leg das Gummi flach, drück es, und lies mm von Ende zu Ende ab
    [thickness] leg zehn Gummis nebeneinander, lies mm quer darüber ab, und nimm ein Zehntel
    [weight-100] zähl hundert Gummis auf die Waage und lies Gramm ab
    [both] miss beides noch einmal
    [hook] gib seine Dicke in mm an
    [error] gib etwa die Hälfte des feinsten Strichs an
    [weight] wieg in Gramm, was unten hängt, den Haken mitgerechnet
    [length] lies mm ab, außen, von Ende zu Ende
    [alike] miss flache und gehängte Länge gleich: außen, von Ende zu Ende
    [unit] sieh auf die Einheit: mm
   *[weights] miss beide Gewichte noch einmal
}

## Was das Studio nicht tut

no-pattern = das ist kein Muster
file-no-pattern = diese Datei enthält kein Muster
file-no-stash = die Datei stash.json enthält keinen Vorrat
no-name-free = für dieses Stück ist kein Name frei
no-such-piece = dieses Stück gibt es hier nicht
no-such-work = diese Arbeit gibt es nicht
too-much-under-way = es ist schon zu viel im Gang
changed-elsewhere = dieses Stück wurde inzwischen anderswo geändert
overtaken = von neuerer Arbeit überholt
folder-read-only = in den Ordner lässt sich nicht schreiben: { $reason }
wrong-inside = in pegwright ist etwas schiefgegangen

## Abhilfe

fix-cap = erst eine Kappe auf { $peg } wickeln
fix-upper-first = erst die oberen Schlaufen von { $peg } arbeiten
fix-catch-all = alle Schlaufen fassen
fix-clip = die Schlaufen von { $at } mit einem Clip schließen
fix-list-colour = Farbe { $letter } in die Liste aufnehmen
fix-call-it = { $letter } nennen
fix-call-second = die zweite { $letter } nennen
fix-take-off = { $letter } aus der Liste nehmen
fix-take-second = das zweite aus der Liste nehmen
fix-use-kind = „{ $name }“ nehmen
fix-write = { $number } schreiben
fix-tint = { $letter } in { $tint } ändern
