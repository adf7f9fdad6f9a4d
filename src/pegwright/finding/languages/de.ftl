# Was die Prüfungen sagen, auf Deutsch. Kein Punkt am Ende, Wörter der Werkstatt.
# Stifte stehen ohne Artikel und nach „auf“, damit kein Fall falsch wird.

## Das Dokument lesen

file-unreadable = { $file } lässt sich nicht lesen: { $reason }
    .hint = sieh nach, ob der Name stimmt und wer die Datei lesen darf
not-text = das ist keine Textdatei
    .hint = ein Muster ist ein JSON-Text in UTF-8
too-large = die Datei ist größer als { $limit_mb } MB; mehr wird nicht gelesen
    .hint = nimm heraus, was nicht hineingehört; schreib Wiederholungen statt Kopien
not-json = der Text ist kein gültiges JSON: { $reason }
    .hint = bring den Text an dieser Stelle in Ordnung
not-a-pattern = { $reason }
    .hint = { $hint }
line-unreadable = { $reason }
    .hint = { $hint }
sentence-unread = dieser Satz wurde nicht verstanden: { $sentence }
    .hint = sag, was getan wird, mit welchem Gummi, von welchem Stift zu welchem; oder schreib den Zug wie in docs/notation.md
no-steps-read = aus diesem Text ließ sich kein Schritt lesen
    .hint = schreib eine Handlung je Satz: welches Gummi, von welchem Stift, wohin
steps-missing = { $count ->
    [one] Schritt { $first } fehlt in diesem Text
   *[other] die Schritte { $first } bis { $last } fehlen in diesem Text
}
    .hint = hier springen die Nummern der Schritte: Kopiere auch, was fehlt, oder schreib es an diese Stelle
language-unread = Texte in dieser Sprache ({ $language }) lassen sich noch nicht lesen
    .hint = schreib ihn auf Deutsch, Englisch oder Spanisch, oder schreib die Schritte wie in docs/notation.md
words-leave-open = { $question }
    .hint = sag es im Text; bis dahin gilt das Wahrscheinlichste
text-too-long = der Text ist zu lang; nur seine ersten { $limit } Zeichen werden gelesen
    .hint = gib jedem Stück einen eigenen Text
unknown-version = { $version ->
    [missing] dieses Muster nennt seine Fassung nicht; dieses Programm liest die Fassungen 1 bis { $newest }
   *[other] dieses Muster hat die Fassung { $version }; dieses Programm liest die Fassungen 1 bis { $newest }
}
    .hint = nimm ein neueres pegwright, oder berichtige das Feld pegwright
captions-too-large = die Untertitel haben mehr als die { FIXED($limit) } Bytes, die gelesen werden
    .hint = teile die Aufnahme
captions-bad-bytes = die Untertitel sind nicht in UTF-8; einige Buchstaben können falsch gelesen sein
    .hint = speichere die Untertitel in UTF-8
captions-empty = in diesen Untertiteln wird nichts gesagt
    .hint = nimm WebVTT, SRT oder Zeilen, die mit einer Zeit wie [1:05] beginnen
cue-unreadable = dieser Untertitel hat keine lesbare Zeit und wird ausgelassen
    .hint = schreib seine Zeit so wie bei den anderen
cue-backward = dieser Untertitel endet, bevor er beginnt, und wird ausgelassen
    .hint = berichtige seine Zeiten
cues-overlap = dieser Untertitel beginnt, bevor ein früherer zu Ende ist
    .hint = berichtige seine Zeiten, wenn die Worte nacheinander gesagt werden
recogniser-missing = das ist Ton oder Film, und kein Spracherkenner ist installiert, der ihn anhört
    .hint = lass die Untertitel von einer Filmseite, einem Besprechungsprogramm oder einem Handy schreiben und gib diese Datei (WebVTT, SRT); oder installiere den Erkenner mit pip install 'pegwright[hear]'
model-missing = { $given ->
    [0] der Spracherkenner braucht ein Modell der Sprache
   *[other] in { $folder } liegt kein Modell, das der Spracherkenner liest
  }
    .hint = gib den Ordner mit --model an, oder gib Untertitel, die anderswo geschrieben wurden (docs/listening.md)
model-english-only = das Modell in { $folder } versteht nur Englisch
    .hint = gib ein Modell für mehrere Sprachen, oder anderswo geschriebene Untertitel
sound-unreadable = dieser Ton oder Film ist nicht lesbar
    .hint = sieh nach, ob er anderswo läuft, oder gib seine Untertitel
recording-too-long = nur die ersten { FIXED($limit) } Wörter werden verglichen
    .hint = teile die Aufnahme
chapter-not-heard = das Kapitel „{ $title }“ ist in der Aufnahme nicht zu hören
    .hint = sieh nach, ob es fehlt oder mit anderen Worten gesagt wurde
recording-contradicts = { $time }{ $step ->
    [0] {""}
   *[other] , Schritt { $step }
}: { $what }
    .hint = sag es in einer neuen Aufnahme richtig, oder ändere die Anleitung, wenn die Aufnahme stimmt
recording-unclear = { $time }{ $step ->
    [0] {""}
   *[other] , Schritt { $step }
}: vielleicht { $what }
    .hint = hör dort nach: Die Untertitel können sich verhört haben

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
pegs-out-of-reach = zwischen { $peg } und { $other } steht { FIXED($gap_mm, digits: 0) } mm weit kein Stift; die Arme reichen { FIXED($limit_mm, digits: 0) } mm weit
    .hint = sieh nach, wo diese beiden Stifte stehen: Längen sind in mm
pegs-in-one-place = die Stifte { $peg } und { $other } stehen an derselben Stelle
    .hint = versetz einen von beiden, oder lass ihn weg
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
out-of-reach = { $peg } und { $other } sind { FIXED($gap_mm, digits: 0) } mm voneinander entfernt; die Arme reichen { FIXED($limit_mm, digits: 0) } mm weit: { $move }
    .hint = nimm Stifte, die näher beieinander stehen
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
loops-uneven = das freie Ende „{ $end }“ hat { $loops } Schlaufen, die sich nicht gleichmäßig auf { $pegs } Stifte verteilen lassen: { $move }
    .hint = nenn einen Stift oder so viele, wie es Schlaufen sind

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
channel-opens-away = der Haken müsste an { HOLDER($peg) } auf der geschlossenen Seite hinein: Die offene Seite zeigt von dir weg{ $more ->
    [0] {""}
    [one] , danach noch 1-mal
   *[other] , danach noch { $more }-mal
}
    .hint = dreh den Webrahmen um, bevor du Schlaufen ziehst, oder gib an, auf welcher Seite seine Stifte offen sind
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
laid-after-clip = ein Gummi wird gelegt, nachdem der Clip von Zug { $clip } das Stück geschlossen hat{ $more ->
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

## Was an der Anleitung auffällt

contact-missing = niemand ist genannt, dem man Fehler melden kann
    .hint = nenn dich oder deine Werkstatt als Urheber
licence-missing = nirgends steht, wer das Stück kopieren oder unterrichten darf
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
    .hint = heb die Stufe an, oder lass sie, wenn du diese Techniken vorher zeigst
motif-unused = das Motiv „{ $name }“ wird nie gearbeitet
    .hint = arbeite es, oder nimm es heraus
repeat-of-none = eine Wiederholung wird nullmal gemacht, also kommen ihre Schritte nie vor
    .hint = schreib, wie oft, oder nimm die Wiederholung heraus
side-named = der Text sagt „{ $word }“; in der gespiegelten Ausgabe ist das die andere Seite
    .hint = nenn Stifte statt Seiten, oder ändere den Text für die andere Hand
term-mixed = der Text sagt „{ $word }“, wo die Anleitung „{ $term }“ sagt
    .hint = nimm ein Wort für eine Sache, oder mach „{ $word }“ durchweg zu deinem Wort dafür
text-peg-unknown = der Text nennt { $peg }, aber diesen Stift gibt es auf dem Webrahmen nicht
    .hint = berichtige den Stift
text-peg-moves = der Text nennt { $peg }, aber sein Schritt wird auf anderen Stiften wiederholt
    .hint = sag es so, dass es für jede Runde gilt
text-step-unknown = der Text spricht von Schritt { $number }, aber die Anleitung hat { $steps }
    .hint = berichtige die Zahl
text-hard = der Text ist schwer zu lesen für ein Kind von zwölf Jahren ({ $words } Wörter im Satz, oder lange Wörter)
    .hint = schreib kürzere Sätze mit Wörtern des Alltags
text-length-wrong = der Text sagt „{ $quote }“; das Stück wird { $counted } mm lang
    .hint = schreib die berechnete Länge, oder überlass sie der Anleitung, die sie druckt
text-time-wrong = der Text sagt „{ $quote }“; beim ersten Mal dauert es etwa { $counted } min
    .hint = schreib die berechnete Zeit, oder überlass sie der Anleitung, die sie druckt
text-unsafe = der Text sagt „{ $word }“; das ist mit Kleinteilen und engen Gummis nicht sicher
    .hint = sag, wer es nicht haben darf und wann es abgenommen wird, wie die Vorsichtsregeln
text-vague = der Text sagt „{ $word }“, aber nur auf eine Art entsteht dieses Stück
    .hint = sag, auf welche: Die Anleitung tut es auch
text-loop-wrong = der Text sagt „{ $word }“, aber der Schritt nimmt eine andere
    .hint = nenn die Schlaufe, die der Schritt nimmt, oder ändere den Schritt
text-colour-wrong = der Text sagt „{ $word }“, aber der Schritt berührt kein Gummi dieser Farbe
    .hint = berichtige die Farbe im Text oder im Schritt
text-misspelt = „{ $word }“ ist falsch geschrieben
    .hint = gemeint ist vielleicht { OR($meant) }
colour-name-twice = die Farben { $one } und { $other } haben denselben Namen, { $name }
    .hint = gib jeder einen eigenen Namen, oder mach eine Farbe daraus
clip-unwarned = ein Clip verbindet hier zwei Enden, und der Schritt warnt nicht
    .hint = warne davor: Enden, die aufspringen, lassen alle Gummis los und treffen Gesichter
translation-missing = { $language ->
    [de] die deutsche
    [en] die englische
    [es] die spanische
   *[other] eine
} Fassung von „{ $text }“ fehlt; die Anleitung druckt den Text, wie er ist
    .hint = ergänze sie unter translations, oder lies die Anleitung in der Sprache des Musters
translation-outdated = für „{ $text }“ ist eine Übersetzung da ({ $language }), aber der Text steht nicht mehr im Muster
    .hint = nimm sie heraus, oder schreib den neuen Text an ihre Stelle
colours-alike = die Farben { $one } und { $other } sind schwer zu unterscheiden für { AND($who) }
    .hint = mach eine davon heller oder dunkler; Buchstaben und Muster helfen auf dem Papier, nicht im Haufen
lesson-disagrees = Anleitung und Muster stimmen nicht überein ({ $what }): gesagt { $said }, gezählt { $counted }
    .hint = mach die Anleitung neu aus dem Muster

## Hält es?

band-falls = { $reason }{ $hanging ->
    [0] {""}
    [one] ; ein weiteres hält nur { $count ->
        [one] durch dieses
       *[other] durch diese
    }
   *[other] ; { $hanging } weitere halten nur { $count ->
        [one] durch dieses
       *[other] durch diese
    }
}{ $loose ->
    [0] {""}
   *[other] ; Gummi { $loose } ({ $colour }) ist schon auf dem Webrahmen lose ({ $since })
}
    .hint = sorg dafür, dass durch jedes Gummi eine Schlaufe geht und dass die letzten Schlaufen gefasst sind
band-not-proved = ob { $count ->
    [one] Gummi { AND($named) } hält
   *[other] die Gummis { AND($named) } halten
}, ist weder so noch so zu beweisen: { $reason }
    .hint = probier es am Webrahmen aus, bevor du es unterrichtest
losses-left-out = was fällt, wenn ein Gummi reißt, wird für höchstens { $limit } Gummis berechnet; dieses Stück hat { $bands }
    .hint = frag nach einem kürzeren Stück mit derselben Wiederholung

## Die Reihenfolge der Arbeit

order-not-found = es fand sich keine Reihenfolge, in der alle { $bands } Gummis halten; { $tried } wurden versucht
    .hint = leg ein Gummi, das das Lose verbindet, wickle eine Kappe auf den Stift, an dem die Arbeit beginnt, oder arbeite einen Teil von Hand und frag noch einmal
order-none = keine Reihenfolge hält alle { $laid } Gummis; { $count ->
    [0] jedes lässt sich fassen, aber nie alle zugleich
    [one] Gummi { $bands } lässt sich nie fassen
   *[other] die Gummis { AND($bands) } lassen sich nie fassen
}
    .hint = leg ein Gummi, das das Lose verbindet, oder wickle eine Kappe auf den Stift, an dem die Arbeit beginnt
order-pinned = es fand sich keine Reihenfolge, in der { $pinned } stehen bleiben kann, { $count ->
    [0] so wie die Gummis liegen
   *[other] wenn auch { AND($others) } stehen bleibt
}
    .hint = nimm diesen Zug heraus und frag noch einmal, oder arbeite diesen Teil von Hand
nothing-to-work = kein Gummi liegt zum Abarbeiten bereit: { $bands } sind gelegt, { $tried } Reihenfolgen wurden versucht
    .hint = leg Gummis über je zwei Stifte und lass weg, was der Haken tut; oder lass das Stück neu abarbeiten
holds-already = das Stück ist schon gearbeitet: alle { $bands } Gummis halten
    .hint = lass es neu abarbeiten, um andere Reihenfolgen zu sehen
no-simpler-order = es fand sich keine einfachere Reihenfolge derselben Züge; { $tried } wurden verglichen
    .hint = such nach anderen Reihenfolgen: sie arbeiten die gelegten Gummis anders ab, und es kann ein anderes Stück werden
fall-with-it = { $bands ->
    [one] ein weiteres Gummi fällt mit ab, das nur Fallendes hält
   *[other] { $bands } weitere Gummis fallen mit ab, die nur Fallendes hält
}
    .hint = behebe, womit es anfängt: dann halten auch sie
mend-not-found = weder eine Änderung noch zwei zusammen fanden sich, mit denen jedes Gummi hält; { $tried } wurden versucht
    .hint = stell den letzten Teil wieder her, der hielt, oder leg die Gummis und frag nach einer Reihenfolge

## Größe und Zahlen

band-slack = ein Gummi ({ $name }) hängt schlaff um { AND($pegs) }: { FIXED($taut_mm, digits: 1) } mm rundherum, ungedehnt { FIXED($rest_mm, digits: 1) } mm{ $more ->
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
    .hint = nimm Stifte, die näher beieinander stehen, oder größere Gummis; ein reißendes Gummi kann ein Auge verletzen
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
girth-unreadable = „{ $said }“ nennt keinen Umfang
    .hint = schreib den Umfang mit seiner Einheit (Knöchel 22 cm, Hals 36 cm, Flasche 9 cm){ $part ->
        [finger] {" "}oder eine Ringgröße (Ring 54)
        [ankle] {" "}oder ankle adult
        [neck] {" "}oder neck adult
       *[other] {""}
    }
girth-nonsense = { $what } kann nicht stimmen: gelesen werden { FIXED($low_cm, digits: 1) } bis { FIXED($high_cm, digits: 1) } cm
    .hint = miss noch einmal rundherum, und sieh auf die Einheit
girth-unusual = { $part ->
        [ankle] ein Knöchel
        [neck] ein Hals
        [finger] ein Finger
        [key] ein Schlüssel
        [bottle] eine Flasche
       *[wrist] ein Handgelenk
    } von { $said } liegt außerhalb von { FIXED($low_cm, digits: 1) } bis { FIXED($high_cm, digits: 1) } cm, wo solche Umfänge gefunden wurden
    .hint = miss noch einmal, und sieh auf die Einheit
girth-neck = um einen Hals muss ein Stück von selbst aufgehen, wenn es hängen bleibt: Ein geschlossenes Gummi kann strangulieren
    .hint = schließ es mit einem Verschluss, der bei leichtem Zug aufgeht (Sicherheitsverschluss), nie mit Knoten oder festem Clip; nicht für Kinder, nicht zum Schlafen oder Toben; es gelten die Regeln vor Ort
girth-finger = leg nie ein Gummi eng um einen Finger
    .hint = ein Ring muss sich drehen und leicht abziehen lassen; nimm ihn sofort ab oder schneid ihn auf, wenn der Finger blass, blau, geschwollen oder taub wird
wrist-too-young = für ein Alter von { SHORT($years) } Jahren wird kein Handgelenk berechnet: kleine Gummis sind nichts für Kinder unter 3
    .hint = an kleinen Gummis und Clips kann man ersticken; halt sie fern, und halt dich an die örtlichen Regeln

## Auf dem Webrahmen

band-near-breaking = ein Gummi ({ $name }) um { AND($pegs) } ist auf das { FIXED($stretch, digits: 1) }-Fache gedehnt und zieht mit { FIXED($force_n, digits: 1) } N{ $more ->
    [0] {""}
    [one] , und noch 1 weiteres wie dieses
   *[other] , und noch { $more } weitere wie dieses
}; Gummis reißen etwa vom { SHORT($breaks) }-Fachen an
    .hint = halt es nach unten und weg von Gesichtern, trag eine Brille; besser nimm Stifte, die näher beieinander stehen, oder größere Gummis

## Wie das Stück passt

fit-loose = mit { FIXED($length_mm) } mm hängt das Stück locker an { $part ->
        [ankle] einem Knöchel
        [neck] einem Hals
        [finger] einem Finger
        [key] einem Schlüssel
        [bottle] einer Flasche
       *[wrist] einem Handgelenk
    } von { FIXED($wrist_mm) } mm
    .hint = lass Verlängerungsgummis oder eine Wiederholung weg: { FIXED($low_mm) } bis { FIXED($high_mm) } mm ungedehnt lägen gut an
fit-tight = mit { FIXED($length_mm) } mm ist das Stück eng an { $part ->
        [ankle] einem Knöchel
        [neck] einem Hals
        [finger] einem Finger
        [key] einem Schlüssel
        [bottle] einer Flasche
       *[wrist] einem Handgelenk
    } von { FIXED($wrist_mm) } mm{ $pulls }
    .hint = setz Verlängerungsgummis an, bis es ungedehnt { FIXED($low_mm) } bis { FIXED($high_mm) } mm lang ist; ein Finger muss leicht darunter passen, und es muss sofort ab, wenn die Haut blass, geschwollen oder taub wird
fit-hand = um über { $part ->
        [ankle] eine Ferse
        [neck] einen Kopf
        [finger] ein Fingergelenk
        [key] einen Schlüssel
        [bottle] eine Flasche
       *[wrist] eine Hand
    } von { FIXED($hand_mm) } mm zu kommen, muss man das Stück mit { FIXED($pull_n) } N aufziehen
    .hint = setz Verlängerungsgummis an, oder leg es offen um und schließ den Clip dort
fit-unmeasured = wie das Stück zieht, ist bis { FIXED($known_mm) } mm bekannt; { $part ->
        [ankle] die Ferse
        [neck] der Kopf
        [finger] das Fingergelenk
        [key] der Schlüssel
        [bottle] die Flasche
       *[wrist] die Hand
    } braucht { FIXED($needed_mm) } mm
    .hint = dehn es weiter, im Modell oder mit Gewichten, die Augen geschützt
fit-not-closed = dieses Stück schließt sich nicht um ein Handgelenk: Kein Clip verbindet zwei seiner Enden, darum steht hier nur seine Größe
    .hint = wenn man es tragen soll, verbinde zwei seiner Enden mit einem Clip
fit-falls-apart = dieses Stück fällt auseinander, also passt es an kein Handgelenk
    .hint = lies, was die Prüfung zu den losen Gummis sagt, und behebe zuerst das
extension-nowhere = { $bands ->
    [one] 1 Verlängerungsgummi wäre
   *[other] { $bands } Verlängerungsgummis wären
} nötig, und das Muster hat kein freies Ende dafür
    .hint = schließ mit einem letzten Gummi ab, dessen zwei Enden frei bleiben, und häng den Clip dort ein
stretch-curve-nonsense = die Dehnungskurve ergibt keinen Sinn: { $reason }
    .hint = das Stück kam nicht bei jedem Zug gleich zur Ruhe; häng Gewichte daran, die Augen geschützt, und miss es von Hand
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

## Bilder, aus denen Matten werden

picture-unreadable = dieses Bild lässt sich nicht lesen: { $reason }
    .hint = speichere es als PNG oder JPEG und nimm diese Datei
picture-too-large = dieses Bild ist zu groß: gelesen werden höchstens 100 MB und { $limit } Millionen Bildpunkte
    .hint = speichere es kleiner; einer Matte genügen ein paar Hundert Bildpunkte in jeder Richtung
picture-all-clear = auf diesem Bild ist nichts zu sehen: es ist ganz durchsichtig
    .hint = speichere es mit dem, was dahinter liegt
picture-clear-parts = { $share } % dieses Bildes sind durchsichtig und werden weiß
    .hint = leg eine Farbe dahinter, wenn du eine andere willst
picture-moves = dieses Bild bewegt sich: das erste seiner { $frames } Einzelbilder wird zur Matte
    .hint = speichere das Einzelbild, das du willst, als eigenes Bild
picture-one-colour = die ganze Matte bekommt eine einzige Farbe: { $name }
    .hint = nimm ein Bild mit mehr Kontrast, schneide es enger zu oder gib mehr Farben an
colour-runs-short = die Matte braucht { $needed } { $needed ->
    [one] Gummi
   *[other] Gummis
} in { $name }; du hast { $have }
    .hint = mach die Matte kleiner, lass die Farbe weg oder besorge vorher mehr

## Varianten

variant-left-out = die Variante { $name } fehlt: { $why }
    .hint = verlang eine andere, oder ändere zuerst das Stück
colourway-alike = die Farbstellung { $number } hat Farben, die nicht jedes Auge unterscheidet
    .hint = leg Gummis einer helleren oder dunkleren Farbe zum Vorrat
colourway-runs-short = die Farbstellung { $number } braucht von einer Farbe mehr Gummis, als du hast
    .hint = besorge mehr, bevor du anfängst

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
bands-lie-loose = beim Zupfen fällt das Stück auseinander: { $loose } seiner { $bands } Gummis hält nichts am Rest, sie liegen daneben
    .hint = Länge und Breite sind die von dem, was noch zusammenhängt; lies nach, was die Prüfung zu diesen Gummis sagt
nothing-hangs-together = nichts hängt zusammen: Alle { $bands } Gummis liegen lose, eine Länge gibt es nicht
    .hint = lies nach, was die Prüfung zu den Gummis sagt, die abgehen
length-impossible = es kamen { FIXED($length_mm) } mm Länge heraus, so weit reichen die Gummis zusammen nicht: Sie ist weggelassen
    .hint = lies nach, was die Prüfung zu den Gummis sagt, die abgehen
rests-otherwise = das Stück liegt anders, als es gearbeitet ist: Gummis, zwischen denen viele Glieder oder Reihen sind, liegen nicht in dieser Reihenfolge
    .hint = nimm Bild und Maße mit Vorsicht, vielleicht liegt es auf einem Haufen
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

## Was eine Aufnahme anders sagt

said-otherwise = gesagt wird „{ $heard }“, in der Lektion steht „{ $meant }“: { $sentence }
said-never = der Schritt wird nicht gesagt: { $sentence }
said-besides = gesagt wird etwas, das in keinem Schritt steht: „{ $heard }“
said-too-late = der Schritt wird erst nach Schritt { $later } gesagt
said-other-hand = der Haken ist in der anderen Hand als in der Lektion: „{ $heard }“

## Lesen

os-reason = { $errno ->
    [ENOENT] es gibt sie nicht
    [EACCES] sie darf nicht gelesen werden
    [EISDIR] es ist ein Ordner
   *[other] { $text }
}
write-reason = { $errno ->
    [ENOSPC] der Datenträger ist voll
    [EACCES] dort darf nicht geschrieben werden
    [EROFS] sein Datenträger lässt sich nur lesen
    [ELOOP] wo ein Ordner hingehört, steht eine Verknüpfung
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
line-between-levels = die Zeile ist weder so eingerückt wie die Zeilen darüber noch unter einer von ihnen
write-level = rück gleich weit ein, was zusammengehört, und weiter, was zur Zeile darüber gehört
quote-not-closed = ein Text in Anführungszeichen ist nicht geschlossen
close-quote = setz " dahinter; für ein Anführungszeichen im Text schreib \"
field-says-nothing = „{ $said }“ ist kein Feld mit seinem Wert
write-field = schreib den Namen des Feldes, ein Leerzeichen und den Wert, vor dem nächsten ein Komma: pegs 2, rows 1
line-says-nothing = „{ $said }“ ist kein Feld mit seinem Wert
write-line-field = schreib den Namen des Feldes, einen Doppelpunkt und den Wert, etwa title: Ebb line
line-belongs-nowhere = die Zeile gehört zu nichts, was darüber steht
pair-says-nothing = „{ $said }“ ist kein Name mit seinem Wert
write-pair = schreib = dazwischen, etwa A=14
line-no-move = „{ $said }“ ist kein Schritt
write-like = schreib es so: { $example }
write-step = ein Schritt beginnt mit { OR($choices) }
read-line = Zeile
read-words = Text
read-steps = Schritte
read-loom = Schlaufen auf den Stiften
read-head = über das Stück
read-aside = –
read-unread = ?
read-times = { $n }-mal:
read-more = … und noch { $n }
read-holds = es hält
read-falls = es hält nicht
read-choose = Enter heißt „{ $first }“; oder schreib deine Antwort; - lässt es offen
read-write = schreib deine Antwort; - lässt es offen
read-no-answer = „{ $said }“ beantwortet das nicht
ask-loom = auf welchem Webrahmen wird gearbeitet? Vielleicht { $rows } × { $pegs } Stifte (Reihen × Stifte je Reihe)
ask-colour = { $count ->
    [one] welche Farbe hat das Gummi in Zeile { AND($lines) }?
   *[other] welche Farbe haben die Gummis in den Zeilen { AND($lines) }?
}
ask-turns = wie oft wird die Kappe in Zeile { AND($lines) } um ihren Stift gewickelt?
ask-chain-bands = wie viele Gummis hat die Kette in Zeile { AND($lines) }?
ask-peg = welcher Stift ist in Zeile { AND($lines) } gemeint?
ask-pegs = welche Stifte sind in Zeile { AND($lines) } gemeint?
ask-loop = welche Schlaufe wird in Zeile { AND($lines) } genommen, die unterste oder die oberste?
ask-times = wie oft wird es in Zeile { AND($lines) } noch gemacht?
ask-how-many-loops = wie viele Schlaufen werden in Zeile { AND($lines) } auf einmal genommen?
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
is-no-language = { $said } ist kein Sprachkürzel
is-no-tint = { $said } ist kein Farbton
write-language = schreib es wie en, de oder pt-BR
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
span = { $first } bis { $last }

## Webrahmen und Beweis

open-twist = soweit es sich sagen lässt, hält sonst nichts, aber Gummis hier sind in sich gedreht und könnten haften
open-across = soweit es sich sagen lässt, hält sonst nichts, aber ein Gummi, das teils darüber und teils darunter liegt, könnte halten
open-tangled = es ist zu verschlungen, um es zu entscheiden
falls-unfastened = { $count ->
    [one] das Gummi fällt ab
   *[other] alle { $count } Gummis fallen ab
}: nichts schließt das Stück: verknote die letzten Schlaufen, nimm einen Clip oder ein letztes Gummi
falls-passed-by-none = { $count ->
    [one] Gummi { AND($named) } fällt ab: nichts geht durch eine seiner Schlaufen
   *[other] die Gummis { AND($named) } fallen ab: nichts geht durch eine ihrer Schlaufen
}
falls-off = { $count ->
    [one] Gummi { AND($named) } rutscht ab über
   *[other] die Gummis { AND($named) } rutschen ab über
} { $passing ->
    [one] Gummi { AND($over) }
   *[other] die Gummis { AND($over) }
}
falls-together = die Gummis { AND($named) } fallen ab: durch ihre Schlaufen gehen nur sie selbst

## Die Anleitung

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
girth-of-part = { $part ->
        [ankle] ein Knöchel
        [neck] ein Hals
        [finger] ein Finger
        [key] ein Schlüssel
        [bottle] eine Flasche
       *[wrist] ein Handgelenk
    } von { $said }
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
request-too-large = was die Seite geschickt hat, ist größer als { $limit_mb } MB; mehr darf ein Muster nicht haben
folder-gone = den Ordner { $folder } gibt es nicht mehr; leg ihn wieder dorthin oder starte das Studio in einem anderen
no-such-piece = dieses Stück gibt es hier nicht
no-such-work = diese Arbeit gibt es nicht
too-much-under-way = es ist schon zu viel im Gang
changed-elsewhere = dieses Stück wurde inzwischen anderswo geändert
overtaken = von neuerer Arbeit überholt
piece-asks-too-much = dieses Stück verlangt mehr Zeit oder Speicher, als das Studio einem Stück gibt; mach es in Teilen
folder-read-only = in den Ordner lässt sich nicht schreiben: { $reason }
wrong-inside = in pegwright ist etwas schiefgegangen

## Abhilfe

fix-cap = erst eine Kappe auf { $peg } wickeln
fix-turn = erst den Webrahmen umdrehen
fix-upper-first = erst die oberen Schlaufen von { $peg } arbeiten
fix-catch-all = alle Schlaufen fassen
fix-clip = die Schlaufen von { $at } mit einem Clip schließen
fix-clip-both = die beiden Enden mit einem Clip verbinden: { $at } und { $far }
fix-list-colour = Farbe { $letter } in die Liste aufnehmen
fix-call-it = { $letter } nennen
fix-call-second = die zweite { $letter } nennen
fix-take-off = { $letter } aus der Liste nehmen
fix-take-second = das zweite aus der Liste nehmen
fix-use-kind = „{ $name }“ nehmen
fix-write = { $number } schreiben
fix-tint = { $letter } in { $tint } ändern
mend-close = schließ das Stück: { $moves }
mend-change = tu bei Zug { $step } stattdessen dies: { $move }
mend-put-in = { $step ->
    [0] fang an mit: { $move }
   *[other] füg nach Zug { $step } ein: { $move }
}
mend-take-out = lass Zug { $step } weg: { $move }
mend-swap = mach Zug { $second } vor Zug { $first }
mend-through-all = zieh bei Zug { $step } innen durch alle Schlaufen auf { $peg } hoch
mend-catch-all = lass den Verschluss von Zug { $step } alle Schlaufen fassen
mend-catch-also = lass den Verschluss von Zug { $step } auch { $peg } fassen
mend-twist = leg das Gummi von Zug { $step } gekreuzt auf, mit einer halben Drehung zwischen { $peg } und { $other }
mend-untwist = leg das Gummi von Zug { $step } flach auf, zwischen { $peg } und { $other }
mend-cap = wickle vor Zug { $step } eine Kappe auf { $peg }
mend-both = { $first }; dann { $second }
pinned-move = Zug { $step } ({ $move })
pinned-moves = die Folge der Züge { $first } bis { $last }
let-go = lass weg: { $pinned }
lay-cap = wickle eine Kappe auf { $peg }, bevor du arbeitest
lay-band = leg ein Gummi über { $peg } und { $other }, bevor du arbeitest

## Techniken des Atlas

technique-chain = { $bands ->
    [one] einfache Kette
   *[other] Kette aus { $bands } Gummis je Glied
}
technique-strip = { $rows } Ketten, verbunden { $every ->
    [one] an jedem Stift
   *[other] an jedem { $every }. Stift
}{ $bands ->
    [one] {""}
   *[other] , { $bands } Gummis je Glied
}
technique-zigzag = Zickzack über { $rows } Reihen{ $bands ->
    [one] {""}
   *[other] , { $bands } Gummis je Glied
}
technique-lozenge-open = Reihe offener Rauten
technique-lozenge-capped = Reihe gefüllter Rauten mit Kappe
technique-tail = Zopf an { $pegs } Stiften, über { $over ->
    [one] ein Gummi
   *[other] { $over } Gummis
} gehoben{ $bands ->
    [one] {""}
   *[other] , { $bands } auf einmal
}
technique-tube = Schlauch an { $pegs } Stiften{ $bands ->
    [one] {""}
   *[other] , { $bands } Gummis nebeneinander
}
technique-mat = flache Matte, { $across } Gummis breit{ $bands ->
    [one] {""}
   *[other] , { $bands } Gummis nebeneinander
}
technique-hung = Kette mit angehängten Gummis zu { $turns } Windungen, je eines auf { $every } Glieder
technique-points = Kette mit Spitzen, je eine auf { $every } Glieder
technique-fork = Stiel, der sich in { $arms } Arme teilt
technique-ring = geschlossener Ring, Kette aus { $bands ->
    [one] 1 Gummi
   *[other] { $bands } Gummis
} je Glied
technique-joined = { $chains } Ketten, an beiden Enden verbunden
technique-fringe = Kette mit Fransen, eine auf { $every } Glieder
technique-failed = die Technik { $name } ließ sich nicht messen: { $why }
no-such-technique = es gibt keine Technik namens { $name }

## Ein Bild wird zur Matte

picture-empty = die Datei ist leer
picture-unknown-kind = es ist von keiner bekannten Art; bekannt sind { $known }
picture-damaged = die Datei ist beschädigt oder nicht vollständig
colours-unreadable = „{ $part }“ ist keine Farbe; schreib ihren Namen und ihren Farbton, etwa slate=#4a5a6a, dazwischen Kommas
colours-twice = die Farbe { $name } ist zweimal angegeben
no-colours-told = es gibt keine Farben für die Matte: gib --colours an oder einen Vorrat, der die Farbtöne seiner Gummis nennt
mat-size = eine Matte mit { $across } Gummis in der Breite und { $down } Reihen geht nicht: sie hat 2 bis { $widest } in der Breite, mindestens 2 Reihen und höchstens { $most } Gummis im Ganzen
mat-pegs = ein Webrahmen für eine Matte hat 3 bis 1.000 Stifte in einer Reihe, nicht { $pegs }
most-colours = eine Matte hat 1 bis 40 Farben, nicht { $most }
crop-impossible = der Ausschnitt ist leer oder reicht über das Bild hinaus; gib links, oben, rechts und unten als Anteile von 0 bis 1 an
stash-few-colours = das Stück braucht { $needed } Farben zur Auswahl; da sind { $have }
band-size-unreadable = „{ $text }“ ist keine Größe eines Gummis; schreib Innendurchmesser x Dicke in mm, etwa 15x1.8
loom-size-unreadable = „{ $text }“ ist keine Größe eines Webrahmens; schreib Reihen x Stifte, etwa 3x26, mit höchstens 10.000 Stiften
loom-not-straight = dieses Stück wird auf einem Webrahmen ohne gerade Reihen gearbeitet, also passt kein anderer gerader
no-other-size = dieses Stück hat keine Wiederholungen und kein freies Ende oder schließt sich um kein Handgelenk, also gibt es keine anderen Größen
variant-refused = einer seiner Schritte geht dort nicht
variant-falls = nicht jedes Gummi würde gehalten
variant-name = { $parts }
variant-size = Größe { $size }
variant-loom = auf einem Webrahmen mit { $rows } × { $pegs } Stiften
variant-bands = aus Gummis von { $bore_mm } × { $thickness_mm } mm
variant-colours = Farben { $number }
variant-left = für die linke Hand
batch-no-workers = die Arbeitsprozesse enden, sobald sie anfangen; so lässt sich nichts machen
batch-lost = es hat jeden Prozess beendet, der daran arbeitete
batch-no-scheduler = unter { $address } antwortet kein Scheduler
batch-too-large = { $count } Sachen sind zu viele für einen Stapel; höchstens { $most } werden gemacht
mat-about = eine Matte nach einem Bild, Reihe auf Reihe gearbeitet; von vorn gesehen ist die erste Reihe ihr oberer Rand, und Stift A1 liegt am linken
mat-row = Reihe { $row } der Matte
mat-rows = Reihen { $first } bis { $last } der Matte
mat-end = zieh eine Schnur durch alle Schlaufen, nimm die Matte von den Stiften und verknote die Schnur, ohne den Rand zusammenzuziehen

## Was abgelehnt wird

no-demo-piece = es gibt kein Stück namens { $name }; es gibt { $known }
leads-out-of-folder = { $path } führt aus { $folder } hinaus; dorthin wurde nichts geschrieben
worn-needs-girth = für ein getragenes Stück braucht es den Umfang eines Handgelenks, etwa 16 cm
tension-form = die Spannungskarte gibt es als png oder svg
picture-width = ein solches Bild ist 100 bis { $widest_px } Pixel breit, nicht { $width_px }
no-such-colour = das Muster hat keine Farbe { $letter }
no-photo-renderer = fotoähnliche Bilder brauchen den Renderer: pip install 'pegwright[photo]'
starter-size = eine Kette braucht 3 bis 10.000 Stifte, und ein Webrahmen hat 1 bis 700 Reihen
starter-pegs = ein Webrahmen mit { FIXED($count) } Stiften ist zu groß: höchstens { FIXED($limit) } im Ganzen
starter-title = ein Titel hat 1 bis 200 sichtbare Zeichen; gib einen mit --title an
timing-unreadable = { $text } ist keine Zeitangabe; schreib outline=42 oder 1-8=60
timing-impossible = keine Zeitangabe: Züge { $first } bis { $last } von { $moves } in { $seconds } s
motif-never-worked = das Motiv { $name } wird nie gearbeitet
narration-pace = { $wpm } Wörter in der Minute; zum Mitarbeiten spricht man 110 bis 130
no-bands = es gibt keine Gummis, also nichts, was zur Ruhe kommen könnte
not-a-tint = { $tint } ist keine Farbe; schreib #rrggbb
class-size = Lernende ab 1, Reserve von 0 bis 10; nicht { $learners } und { $spare_share }
beyond-the-loom = { HOLDER($peg) } liegt jenseits des Webrahmens; bring das Muster in Ordnung, bevor es gespiegelt wird
repeats-impossible = aus diesem Stück lässt sich keines mit { $repeats } Wiederholungen machen
film-height = ein Film ist eine gerade Zahl von Pixeln hoch, von 180 bis 2160, nicht { $tall_px }
no-piper = piper ist nicht installiert; lass die Stimme weg oder installiere es
no-film-encoder = für Filme braucht es die Erweiterung „film“, die nicht installiert ist: pip install 'pegwright[film]'; ihr Kodierer enthält Teile unter der GPL
no-voice-in = in { $file } ist keine Stimme; lass die Stimme weg oder installiere eine
voice-failed = die Stimme { $program } versagte: { $told }
voice-silent = die Stimme gab keinen Ton: { $reason }
voice-bits = die Stimme gab Ton mit { $bits } Bit; erwartet waren 16
does-not-close = kein Clip verbindet zwei Enden dieses Stücks: es schließt sich um kein Handgelenk
slid-in-part = nur einige Schlaufen von Gummi { $band } wurden aufgeschoben; so ein Gummi kann noch nicht gezeichnet werden
no-way-between-pegs = die Stifte lassen keinen Weg zwischen sich, also kann das Stück nicht gezeichnet werden
no-way-through-column = auf einer Höhe kreuzen sich so viele Schlaufen, dass das Stück nicht gezeichnet werden kann
pegs-coincide = zwei Stifte stehen an einer Stelle, also kann das Stück nicht gezeichnet werden
wire-or-reading = Draht und Ablesefehler sind mm, mehr als 0 und weniger als 100
no-weight-and-length = { $text } ist kein Gewicht mit Länge; schreib GRAMM=MM, etwa 100=29.8
no-such-part = kein Teil heißt { $name }; es gibt { $known }
cannot-read = { $file } lässt sich nicht lesen: { $reason }
no-words-to-exchange = { $file } enthält keine Wörter zum Austauschen: { $reason }
names-no-colour = { $text } nennt keine Farbe; schreib A=#204060
no-such-trouble = es gibt { $count } schwierige Stellen, also keine mit der Nummer { $number }
trouble-not-seen = die schwierige Stelle { $number } zeigt sich weder auf dem Webrahmen noch am Stück
