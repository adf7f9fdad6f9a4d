shelf = Regal
begin = Leg ein erstes Stück
begin-more = Such dir eines aus und ändere es, wie du magst. Nichts verlässt diesen Rechner.
your-pieces = Deine Stücke
search = Suchen
none-found = Kein Stück dieses Namens.
bands = { $count ->
    [0] noch keine Gummis
    [one] 1 Gummi
   *[other] { $count } Gummis
}
unreadable = nicht lesbar
empty-loom = Ein leerer Webrahmen
undo = Zurück
redo = Wieder vor
saved = Gesichert
saving = Wird gesichert…
not-saved = Nicht gesichert: das Studio antwortet nicht
not-saved-because = Nicht gesichert: { $reason }
changed-elsewhere = Dieses Stück wurde in einem anderen Fenster geändert.
take-theirs = Das andere zeigen
keep-mine = Meines als Kopie behalten
title = Name des Stücks
press = Anleitung drucken
pressing = Wird gesetzt…
pressed = Die Anleitung ist fertig
versions = Fassungen
keep-version = Diese Fassung aufheben
kept = aufgehoben { $when }
go-back-to = Dahin zurück
copy = Verdoppeln
copy-of = { $title } (Kopie)
download = Dokument sichern
open-file = Dokument öffnen
read-words = Eigene Worte lesen
read-words-more = Füg ein Muster ein, wie du es aufgeschrieben hast, oder zieh eine Datei damit hierher.
words-here = Das Muster in deinen eigenen Worten
words-example = Ein Webrahmen mit 1 Reihe und 12 Stiften. Spann ein rotes Gummi von A1 zu A2. …
read-it = Lesen
accept-piece = Das Stück öffnen
questions-left = { $count ->
    [one] Eine Frage ist noch offen.
   *[other] { $count } Fragen sind noch offen.
  }
words-hold = Alles ist gelesen, und jedes Gummi hält.
words-do-not-hold = Alles ist gelesen, aber nicht jedes Gummi hält. Öffne das Stück, um zu sehen, warum.
take-answer-back = Letzte Antwort zurücknehmen
take-answer = So
another-answer = andere
top-loop = die oberste
lowest-loop = die unterste
the-words = Deine Worte
the-loom = Der Webrahmen
not-understood = nicht verstanden
about-piece = über das Stück

# Eine Aufnahme nachhören
listen-back = Nachhören
listen-back-short = Sagt deine Aufnahme, was die Anleitung sagt? Zieh ihre Untertitel hierher.
listen-back-what = Zieh die Untertitel einer Aufnahme dieser Stunde hierher und, wenn du sie hier hören willst, auch den Ton oder Film. Du erfährst, was sie anders sagt, wann jedes Kapitel beginnt und welche Wörter der Untertitel verhört sind. Nichts verlässt diesen Rechner.
captions-how = Untertitel sind eine Datei mit Zeiten: WebVTT, SRT oder Zeilen, die mit einer Zeit beginnen, wie [1:05]. Eine Filmseite, ein Besprechungsprogramm oder ein Handy kann sie schreiben; such dort nach „Untertitel“ oder „Transkript“ und speichere sie.
choose-captions = Untertitel…
choose-sound = Ton oder Film…
language-heard = Gesprochen auf
no-recording = { $file } ist weder Untertitel noch Aufnahme.
captions-too-long = { $file } ist für Untertitel zu lang. Teile die Datei.
sound-not-played = Dieser Browser kann { $file } nicht abspielen. Die Untertitel werden trotzdem gelesen.
listening = Wird angehört…
listen-again = Noch einmal anhören
heard-before = Seitdem hat sich das Stück geändert.
heard-all = { $chapters ->
    [one] Ein Kapitel
   *[other] { $chapters } Kapitel
  } gehört. { $otherwise ->
    [0] Nichts wird mit Sicherheit anders gesagt
    [one] Eine Stelle wird anders gesagt
   *[other] { $otherwise } Stellen werden anders gesagt
  }; { $questions ->
    [0] keine Fragen
    [one] eine Frage
   *[other] { $questions } Fragen
  }.
line-of = Zeile { $line }:
timeline = Die Aufnahme von Anfang bis Ende
place-in-recording = Stelle in der Aufnahme
go-to-time = Zu { $time }
said-otherwise = Was die Aufnahme anders sagt
heard-otherwise = anders
heard-question = eine Frage
how-sure = zu { $share } sicher
nothing-otherwise = Nichts. Was zu hören war, ist so, wie die Stunde es sagt.
mended-captions = Berichtigte Untertitel
take-all = Alle übernehmen
refuse-all = Alle ablehnen
take-mend = „{ $after }“ statt „{ $before }“ übernehmen
nothing-mended = Kein Wort musste berichtigt werden.
chapters = Kapitel
words-heard = { $share } der Wörter gehört
could-be-cut = Was herausgeschnitten werden könnte
trim-silence = Stille
trim-aside = eine Abschweifung
trim-again = angefangen, dann neu gesagt
pace-heard = { $count ->
    [one] Es war zu hören, wie lange du einen Schritt gezeigt hast.
   *[other] Es war zu hören, wie lange du { $count } Schritte gezeigt hast.
  } Die Minuten und der Zeitplan der Stunde können sich danach richten.
keep-pace = Mein Tempo behalten
pace-kept = Dein Tempo ist beim Stück gespeichert; die Stunde richtet sich danach.
edit-pace = Tempo behalten
take-along = Zum Mitnehmen
draft-of = Entwurf aus { $file }
draft-steps = { $steps ->
    [one] Ein Schritt ist gelesen
   *[other] { $steps } Schritte sind gelesen
  }, aus { $sentences ->
    [one] einem Satz
   *[other] { $sentences } Sätzen
  }.
draft-what = Gelesen wird nur, was klar gesagt ist. Alle anderen Sätze schreibst du selbst neben ihre Zeiten: Nichts wird geraten.
draft-open = { $count ->
    [one] Eines ist am Stück noch offen
   *[other] { $count } Dinge sind am Stück noch offen
  }
left-to-you = bleibt dir
open-recording = Untertitel einer Aufnahme öffnen
save-sentences = Sätze mit ihren Zeiten speichern
sentences = Saetze

close = Schließen
language = Sprache
left-handed = Linkshändig
tools = Werkzeug
tool-point = Zeigen
tool-lay = Legen
tool-hook = Haken
tool-lift = Überheben
tool-transfer = Umhängen
tool-slide = Aufschieben
tool-bind = Schluss­gummi
tool-clip = Clip
tool-knot = Knoten
tool-snap = Reißen
do-turn = Umdrehen
do-hang = An den Haken
do-again = Noch einmal
do-to-end = Weiter bis ans Ende
tip-point = Drück auf ein Gummi oder einen Stift, um ihn von der Seite zu sehen.
tip-lay = Geh von Stift zu Stift. Zweimal derselbe wickelt eine Kappe.
tip-lay-more = Von { $pegs }: der nächste Stift, oder Eingabe.
tip-hook = Drück auf den Stift mit der Schlaufe, dann auf den, zu dem sie kommt.
tip-hook-to = Schlaufe { $loop } von { $peg }: zu welchem Stift kommt sie?
tip-lift = Drück auf den Stift: seine unterste Schlaufe geht über die anderen und ab. Zu einem anderen Stift gezogen, kommt sie auf diesen.
tip-lift-on = Schlaufe { $loop } von { $peg }: auf welchen Stift? Noch einmal derselbe: ab.
tip-transfer = Drück auf den Stift mit der Schlaufe, dann auf den, zu dem sie kommt.
tip-transfer-end = Drück auf den Stift mit der Schlaufe oder auf das lose Ende, dann auf den Stift, zu dem es kommt.
tip-put = Drück auf den Stift, auf den das lose Ende kommt; mit Umschalt auf mehrere.
tip-put-more = Das lose Ende auf { $pegs }: der nächste Stift, oder Fertig.
tip-slide = Häng erst Gummis an den Haken; dann drück auf die zwei Stifte.
tip-bind = Drück auf den Stift, durch dessen Schlaufen das Schlussgummi geht; mit Umschalt nur durch einige.
tip-bind-some = Drück auf die unterste Schlaufe, durch die das Schlussgummi geht.
tip-clip = Drück auf den Stift, dessen Schlaufen in den Clip kommen.
tip-knot = Drück auf den Stift, dessen Schlaufen verknotet werden.
tip-snap = Drück auf ein Gummi: was fällt, wenn es reißt?
turns = Mal um jeden Stift
twist = Halbe Drehung
several-pegs = Mehrere Stifte
on-another-peg = Auf anderen Stift
some-loops = Nur einige Schlaufen
done = Fertig
stash = Gummis
add-colour = Neue Farbe
colour-name = Name
colour-letter = Buchstabe
colour-tint = Farbton
change = Ändern
add = Dazu
loom = Webrahmen
change-loom = Webrahmen ändern
rows = Reihen
pegs = Stifte je Reihe
pitch = Abstand, mm
row-gap = Zwischen den Reihen, mm
shift = Jede zweite Reihe um die Hälfte versetzt
channel = Rille öffnet sich
channel-far = von dir weg
channel-near = zu dir
channel-left = links
channel-right = rechts
larger = Größer
smaller = Kleiner
whole = Ganz
across = Quer
you = du
steps = Schritte
phase-place = Legen
phase-turn = Drehen
phase-work = Arbeiten
phase-finish = Abschließen
first = Zum Anfang
back = Einen Schritt zurück
on = Einen Schritt weiter
last = Zum Ende
step-of = Schritt { $step } von { $of }
no-steps = Noch liegt nichts.
holds = Alle { $count } Gummis halten.
holds-none = Noch liegt nichts.
falls = { $count ->
    [one] 1 von { $of } Gummis fällt.
   *[other] { $count } von { $of } Gummis fallen.
}
unproved = { $count ->
    [one] 1 Gummi ist weder so noch so bewiesen.
   *[other] { $count } Gummis sind weder so noch so bewiesen.
}
working = Wird angesehen…
findings = Was auffiel
no-findings = Nichts dagegen zu sagen.
mend = Beheben: { $label }
severity-error = Fehler
severity-warning = Hinsehen
severity-note = Hinweis
needs = Was man braucht
clips = { $count ->
    [one] 1 Clip
   *[other] { $count } Clips
}
snap-falls = Reißt Gummi { $band }, { $count ->
    [0] fällt sonst nichts
    [one] fällt noch eines
   *[other] fallen noch { $count }
}.
snap-free = Gummi { $band } hält ohnehin nicht.
stack-of = Stift { $peg }
stack-at = Stapel von {$peg}
stack-bare = Keine Schlaufe darauf.
loop-name = Schlaufe { $loop } { $letter }: { $colour }, Gummi { $band }
take-loop = Nehmen
bind-from-here = Das Schlussgummi geht durch diese und die darüber
band-of = Gummi { $band }
delete = Herausnehmen
move-band = Versetzen
copy-band = Noch eins davon
only-this = Nur dieses
all-of-repeat = Alle { $count } der Wiederholung
peg-name = Stift { $peg }, { $count ->
    [0] leer
    [one] 1 Schlaufe
   *[other] { $count } Schlaufen
}
moved-off-rows = Das führt vom Rahmen hinunter.
no-way-on = Weiter geht es hier nicht.
edit-lay = Ein Gummi legen
edit-move = { $what }
edit-colour = Eine Farbe ändern
edit-recolour = Ein Gummi umfärben
edit-delete = Einen Schritt herausnehmen
edit-loom = Webrahmen ändern
edit-title = Umbenennen
edit-version = Zu einer Fassung zurück
no-difference = Kein Unterschied.
differs-title = Hieß „{ $old }“, heißt jetzt „{ $now }“.
differs-loom = Ein anderer Webrahmen.
differs-more = { $count ->
    [one] ein Gummi mehr in { $letter }
   *[other] { $count } Gummis mehr in { $letter }
}
differs-fewer = { $count ->
    [one] ein Gummi weniger in { $letter }
   *[other] { $count } Gummis weniger in { $letter }
}
differs-new = { $count ->
    [one] Schritt { $from } neu
   *[other] Schritte { $from } bis { $to } neu
}
differs-gone = { $count ->
    [one] Schritt { $from } herausgenommen
   *[other] Schritte { $from } bis { $to } herausgenommen
}
differs-changed = { $count ->
    [one] Schritt { $from } geändert
   *[other] Schritte { $from } bis { $to } geändert
}
differs-colours = Die Farben sind anders.
not-closed = Noch schließt nichts das Stück. { $count ->
    [one] 1 Gummi liegt.
   *[other] { $count } Gummis liegen.
}
more-like-it = { $count } weitere davon
recolour = Farbe
take-step-out = Diesen Schritt herausnehmen
motifs = Motive
tip-motif = Drück auf den Stift, an dem { $name } beginnt.
tip-move = Drück auf den Stift, auf den sein erster Stift kommt.
tip-copy = Drück auf den Stift, auf den der erste Stift der Kopie kommt.
tip-marks = Umschalt merkt mehrere Schritte vor.
with-run = { $count ->
    [one] Mit diesem Schritt …
   *[other] Mit diesen { $count } Schritten …
}
colours-in-turn = Farben im Wechsel, Runde für Runde
times = Wie oft im Ganzen
on-by-rows = Jedes Mal weiter, in Reihen
on-by-pegs = Jedes Mal weiter, in Stiften
repeat = Wiederholen
mirror-sides = Links und rechts spiegeln
mirror-ends = Nah und fern spiegeln
half-round = Halb umdrehen
motif-name = Name des Motivs
make-motif = Zum Motiv machen
take-run-out = Herausnehmen
unmark = Markierung aufheben
with-steps = Mit den gemerkten Schritten, oder mit allen
mark-steps = Schritte merken
edit-repeat = Schritte wiederholen
edit-mirror = Schritte spiegeln
edit-rotate = Schritte halb umdrehen
edit-copy = Gummi kopieren
edit-move-band = Gummi versetzen
edit-motif = Ein Motiv machen
refused = Nicht gesichert: sieh nach, was auffiel
lesson = Die Anleitung
lesson-preview = Die Anleitung, wie sie gelesen wird
hand = Gearbeitet mit der
hand-right = rechten Hand
hand-left = linken Hand
units = Längen in
paper = Papier
edition = Handblatt
edition-standard = wie üblich
edition-large = Großdruck, 18 Punkt
edition-giant = Großdruck, 24 Punkt
edition-grey = schwarz auf weiß
learners = Lernende
press-holds = Gedruckt wird, sobald alle Bänder halten.
stop = Anhalten
download-zip = Alles herunterladen
job-failed = Etwas ging schief. Versuch es noch einmal.
finished = Vom Rahmen genommen
finished-size = { $length } × { $width } cm
finished-keys = Pfeiltasten drehen es, Plus und Minus holen es näher, 0 zeigt die Vorderseite.
finished-empty = Sobald eine Klammer oder ein Knoten es schließt, ist das fertige Stück hier zu sehen.
finished-open = Noch schließt es nichts.
finished-waiting = Es hat sich geändert.
settle-now = Vom Rahmen nehmen
settling = Kommt zur Ruhe…
see-large = Genau ansehen
beside-loom = Zurück zum Rahmen
once-more = Noch einmal
no-3d = Dieser Browser kann nicht räumlich zeichnen.
turn-left = Nach links drehen
turn-right = Nach rechts drehen
turn-up = Von dir weg drehen
turn-down = Zu dir her drehen
front = Vorn
worn = Am Handgelenk
tension = Zug
other-colours = Andere Farben
keep-colours = Diese behalten
edit-colourway = Farben tauschen
band-reading = Band { $band }, { $letter } { $name }: { $tension } N
fit = Passform
wrist = Handgelenk
wrist-hint = Ein Handgelenk: 16 cm, M, 8 Jahre. Oder ein anderer Umfang: Knöchel 22 cm, Hals 34 cm, Ring 54, Flasche 25 cm.
measuring = Wird gemessen…
measure = Messen, wie es sich dehnt
fits = Passt an { $part ->
    [ankle] Knöchel
    [neck] Hälse
    [finger] Finger
    [key] Schlüssel
    [bottle] Flaschen
   *[wrist] Handgelenke
 } von { $low } bis { $high }:
fits-nobody = So passt es an { $part ->
    [ankle] keinen Knöchel
    [neck] keinen Hals
    [finger] keinen Finger
    [key] keinen Schlüssel
    [bottle] keine Flasche
   *[wrist] kein Handgelenk
 }:
feel-loose = an diesem locker
feel-easy = an diesem bequem
feel-snug = an diesem anliegend
feel-tight = an diesem eng
trying-lengths = Andere Längen werden versucht…
one-repeat = Ein Rapport hat { $count ->
    [one] 1 Gummi
   *[other] { $count } Gummis
}, { $length }.
repeats-more = { $count ->
    [one] ein Rapport mehr
   *[other] { $count } Rapporte mehr
} ({ $all } im Ganzen)
repeats-fewer = { $count ->
    [one] ein Rapport weniger
   *[other] { $count } Rapporte weniger
} ({ $all } im Ganzen)
extension-bands = { $count ->
    [0] keine Verlängerung
    [one] 1 Gummi Verlängerung
   *[other] { $count } Gummis Verlängerung
}
mend-fit = Passend machen: { $what }, { $length }
mend-nearest = Näher kommt es nicht als: { $what }, { $length }
wearing = Es wird um das Handgelenk geschlossen…
worn-bent = Um das Handgelenk gebogen gezeichnet, dort nicht zur Ruhe gekommen.
worn-closed = Um das Handgelenk geschlossen und dort zur Ruhe gekommen.
edit-fit = Passend machen für { $wrist }
care = Was eng sitzt, ist nichts zum Schlafen und nichts für kleine Kinder. Halte dich an die Regeln deines Ortes.

# The rehearsal
rehearsal = Wo es schiefgeht
rehearsal-what = Jeder naheliegende Fehler wird bei jedem Schritt durchgespielt: wo geht es am ehesten schief?
rehearse = Durchspielen
rehearsing = Fehler werden durchgespielt…
rehearsed = { $count ->
    [one] Ein Fehler wurde durchgespielt. Die Balken bei den Schritten zeigen, wo er am meisten kostet.
   *[other] { $count } Fehler wurden durchgespielt. Die Balken bei den Schritten zeigen, wo sie am meisten kosten.
  }
rehearsed-none = Kein Fehler schadet diesem Stück.
slip-steps = { $count ->
    [one] Schritt { $first }:
   *[other] { $count } Schritte, { $first } bis { $last }:
  }
slip-guess = nicht bewiesen
slip-right = Richtig
slip-wrong = Falsch
slip-show = Schritt { $step } zeigen
slip-end = Zeigen, wie es endet
slip-falls = { $count ->
    [0] Kein Gummi fällt ab.
    [one] Das Gummi, das abfällt, ist markiert.
   *[other] Die { $count } Gummis, die abfallen, sind markiert.
  }
slip-back = Der Weg zurück
look-after = Halt nach Schritt { $steps } an und schau nach: Das deckt das meiste auf.
often-wrong = geht oft schief

# The library of motifs, and the stash
motif-of = aus { $title }
no-motifs-found = Kein Motiv dieses Namens.
motifs-more = Fang mit einem an, oder hol es in ein Stück.
from-shelf = Aus dem Regal
edit-bring = Motiv { $name } holen
at-hand = Vorrat
from-stash = Aus deinem Vorrat
stash-short = { $count } fehlen
stash-has = { $count } da
take-away = Aus dem Regal nehmen
taken-away = „{ $title }“ ist aus dem Regal genommen.
put-back = Zurücklegen

# Kinds of loom
loom-rows = gerade
loom-joined = mehrere gerade verbunden
loom-round = rund
loom-pegs = jeder Stift an seinem Ort
looms = Verbundene Webrahmen
joined-how = Verbunden
joined-beside = Seite an Seite
joined-beyond = Ende an Ende
pegs-of-ring = Stifte im Ring
rings = Ringe
diameter = Durchmesser, mm
channel-out = nach außen
channel-in = nach innen

# Ein Bild wird zur Matte
mat = Matte
mat-of-picture = Aus einem Bild eine Matte machen
mat-of-picture-more = Wähle ein Foto oder eine Zeichnung, oder lass es irgendwo hier fallen.
picture-to-mat = Eine Matte aus deinem Bild
picture-too-large = „{ $file }“ ist zu groß, um es hier anzusehen.
picture-unreadable = „{ $file }“ lässt sich nicht lesen.
your-picture = Dein Bild
crop = Welcher Ausschnitt
crop-left = Von links
crop-right = bis rechts
crop-top = Von oben
crop-bottom = bis unten
crop-whole = Das ganze Bild
mat-choices = Was du wählst
mat-size = Größe
mat-across = Gummis quer
band-bore = Innenweite eines Gummis, mm
band-thickness = Dicke eines Gummis, mm
mat-colours = Farben
mat-most = Höchstens so viele Farben
mat-takes = { $count ->
    [one] braucht 1
   *[other] braucht { $count }
}
mat-look = So wird sie liegen
mat-about = { $across } Gummis quer, { $rows } Reihen, zusammen { $bands } Gummis; etwa { $width } × { $height } cm.
mat-looms = Sie braucht { $pegs } Stifte in einer Reihe{ $count ->
    [one] .
   *[other] : { $count } Webrahmen, der Länge nach verbunden.
}
mat-shades = Farbtöne
mat-areas = Klare Flächen
mat-mixed = Aus Punkten gemischt
mat-front = Die erste Reihe, die du arbeitest, ist der obere Rand des Bildes, der erste Stift seine linke Seite.
mat-no-colours = Wähle mindestens eine Farbe.
mat-make = Die Matte machen
mat-making = Die Matte wird gearbeitet und bewiesen
tint-tar-black = teerschwarz
tint-stone-grey = steingrau

# Die Sammlung der Techniken
techniques = Techniken
techniques-more = Wähle eine nach ihren Zahlen: in Ruhe gemessen und geprobt. Du beginnst mit etwa 15 cm davon, bewiesen.
techniques-lay = Lege eine als Motiv: die Gummis, wie sie gelegt werden, bis der Webrahmen gedreht oder das Stück geschlossen wird.
techniques-found = { $count ->
    [0] Keine Technik ist so.
    [one] Eine Technik.
   *[other] { $count } Techniken.
}
technique-width = Breite, cm
technique-least = Breite ab, cm
technique-most = Breite bis, cm
technique-colours = Farben
technique-time = Zeit
technique-level = Höchstens so schwer
technique-any = beliebig
technique-all = Alle zeigen
technique-minutes = { $minutes } min
technique-size = { $width } cm breit, { $height } cm hoch.
technique-bracelet = 15 cm: { $bands } Gummis, etwa { $minutes } min beim ersten Mal.
technique-swatch = Probe: { $bands } Gummis, etwa { $minutes } min beim ersten Mal.
technique-wrists = Passt um Handgelenke von { $low } bis { $high } cm.
technique-more = Mehr Zahlen
technique-repeat = Eine Wiederholung
technique-repeat-bands = Gummis je Wiederholung
technique-stretch = Länge bei einem Zug von 1 N
technique-stack = Meiste Schlaufen auf einem Stift
technique-strain = Stärkste Dehnung am Webrahmen
technique-snap = Weitere Gummis, die fallen, wenn eines reißt
technique-begin = Ein Stück beginnen
technique-lay = Legen
technique-other-loom = Sie wird auf einer anderen Art von Webrahmen gearbeitet.

# Varianten
variants = Varianten
variants-what = Dasselbe Stück in anderen Größen und Farben, für die andere Hand, auf einem anderen Webrahmen: jede Variante neu gearbeitet und bewiesen.
variants-sizes = Größen
variants-own-sizes = Andere Größen oder Umfänge, etwa „16 cm, Alter 8“
variants-colourways = Farbstellungen
variants-how-many = Wie viele zu sehen sind
variants-stash = Aus den { $count } Farben deines Vorrats.
variants-own-colours = Dein Vorrat hat noch zu wenige Farben, deshalb kommen die des Studios dazu.
variants-others = Andere zeigen
variants-left = Auch für die linke Hand
variants-loom = Auf einem anderen Webrahmen
variants-bands = Aus anderen Gummis
variants-make = Anlegen
variants-making = Die Varianten werden gearbeitet und bewiesen
variants-picturing = Sie kommen zur Ruhe, für ihre Bilder
variants-made = { $count ->
    [0] Keine davon hält.
    [one] Eine Variante, bewiesen, dass sie hält.
   *[other] { $count } Varianten, von jeder bewiesen, dass sie hält.
}
variant-same = Wie es ist
variant-size = Größe { $size }
variant-long = { $length } cm in Ruhe
variant-left = linke Hand
variant-loom = anderer Webrahmen
variant-bands = andere Gummis
variant-apart = Abstand der zwei ähnlichsten Farben: { $apart }
variant-uses = braucht { $share } % von dem, was du hast
variant-buy = braucht mehr, als du hast
variant-take = Hier übernehmen
variant-new = Neues Stück
variant-on-shelf = „{ $title }“ liegt im Regal.
variant-open = Öffnen
edit-variant = Eine Variante übernehmen

# Ärger mit dem Studio
locked = Noch nicht gespeichert: Das Studio wurde neu gestartet. Öffne die Adresse, die es ausgibt; diese Seite macht dann von selbst weiter.
not-saved-changed = Nicht gespeichert
no-answer = Das Studio antwortet nicht.
no-document = „{ $file }“ ist kein Muster des Studios.
unsaved-edits = „{ $title }“ hat Änderungen, die nicht gespeichert wurden.
recover = Damit weitermachen
discard = Verwerfen
recovered = Änderungen, die zuletzt nicht gespeichert wurden, sind wieder da.
undo-recovered = Herausnehmen
keep-recovered = Behalten
edit-recovered = Ungespeicherte Änderungen zurückholen

# Blätter, Tasten
panels = Blätter
panel-found = Befund
panel-bands = Gummis
panel-steps = Schritte
panel-piece = Fertig
panel-menu = Mehr
letters = Buchstaben
help = Tasten
help-arrows = von Stift zu Stift
help-enter = den Stift drücken; Begonnenes abschließen
help-more = noch einen Stift dazu
help-escape = lassen
help-steps = einen Schritt zurück, einen vor
help-stack = der Stapel des Stifts
help-save = jetzt speichern

# Schritte, wie man sie sagt
say-place = { $colour } über { $pegs } legen{ $twisted ->
    [yes] , mit einer halben Drehung
   *[no] {""}
}
say-wind = { $colour } { $turns }-mal um { $peg } wickeln
say-hook = { $loop ->
    [1] Die unterste Schlaufe
    [-1] Die oberste Schlaufe
   *[other] { $top ->
        [0] Schlaufe { $loop }
       *[other] Schlaufe { $top } (von oben)
    }
} von { $from } nach { $to } holen
say-slide = Was am Haken hängt, auf { $loop ->
    [1] die unterste Schlaufe
    [-1] die oberste Schlaufe
   *[other] { $top ->
        [0] Schlaufe { $loop }
       *[other] Schlaufe { $top } (von oben)
    }
} von { $from } schieben und diese nach { $to } holen
say-transfer = { $count ->
    [one] Die oberste Schlaufe
   *[other] Die obersten { $count } Schlaufen
} von { $from } nach { $to } umhängen
say-lift = { $loop ->
    [1] Die unterste Schlaufe
    [-1] Die oberste Schlaufe
   *[other] { $top ->
        [0] Schlaufe { $loop }
       *[other] Schlaufe { $top } (von oben)
    }
} von { $peg } über die anderen und ab heben
say-lift-on = { $loop ->
    [1] Die unterste Schlaufe
    [-1] Die oberste Schlaufe
   *[other] { $top ->
        [0] Schlaufe { $loop }
       *[other] Schlaufe { $top } (von oben)
    }
} von { $peg } über die anderen und auf { $to } heben
say-put = Das freie Ende auf { $pegs } legen
say-bind = Das letzte Gummi, { $colour }, durch die Schlaufen von { $peg } ziehen
say-only-top = { $said }, nur { $count ->
    [one] die oberste
   *[other] die obersten { $count }
}
say-through = { $said }, dabei { $count ->
    [0] außerhalb aller Schlaufen darüber
    [one] nur innerhalb der obersten darüber
   *[other] nur innerhalb der obersten { $count } darüber
}
say-together = { $said }, { $count } zusammen
say-extend = Um { $count } Gummis in { $colour } verlängern
say-hang = { $colour } an den Haken hängen
say-clip = Die Schlaufen von { $pegs } mit einem Clip schließen
say-knot = Die Schlaufen von { $pegs } verknoten
say-turn = Den Rahmen umdrehen
the-free-end = dem freien Ende
the-hook = Haken
and = { $first } und { $last }
impossible-step = Schritt { $step } geht nicht.
job-ended = Es wurde angehalten, bevor es fertig war.
falls-apart = Es fällt auseinander: { $count } von { $of } Gummis fallen ab.
what-is-left = Das bleibt übrig.
nothing-left = Es bleibt nichts, was man zeichnen könnte.

# Schließen
loose-end = Loses Ende
tip-end = Drück jetzt auf den Stift am anderen Ende, mit dem es geschlossen wird.
do-extend = Verlängerung
extension-count = Gummis zum Verlängern

# Bands chosen together, copied, chained
tip-usual = Noch einmal { $peg }: nach { $usual }.
tip-chain = Geh an den Stiften entlang: ein Gummi von jedem zum nächsten.
tip-paste = Drück auf den Stift, auf den der erste Stift der Kopie kommt.
edit-paste = Kopiertes legen
through = Innerhalb der Schlaufen darüber:
through-all = { $count ->
    [one] der einen darüber
   *[other] aller { $count }
}
through-some = { $count ->
    [0] keiner
    [one] nur der obersten
   *[other] nur der obersten { $count }
}
bands-chosen = { $count ->
    [one] 1 Gummi gewählt
   *[other] { $count } Gummis gewählt
}
all-of-motif = Alle { $letter } in diesem Motiv
all-of-colour = Alle { $letter } in dieser Wiederholung
copy-chosen = Gewähltes kopieren
delete-chosen = Gewähltes herausnehmen
paste = Kopiertes legen
recolour-run = { $colour } wird zu
several-bands = Mehrere Gummis
chain = Kette
cap-turns = Windungen einer Kappe

# Notes on a step, steps moved
add-note = Notiz dazu
change-note = Notiz ändern
notes-of = Schritt { $step }: was dabeisteht
note = Notiz
warning = Warnung
write = Aufschreiben
edit-note = Bei einem Schritt etwas aufschreiben
edit-move-steps = Schritte verschieben
help-ends = zum ersten oder letzten Stift der Reihe
help-shift = einen Schritt früher oder später einordnen

# Commands
find = Suchen
find-command = Einen Befehl suchen
no-command = Kein Befehl heißt so.
take-colour = Mit { $colour } legen
take-motif = Das Motiv { $name } legen

# The tour
tour = Der Rundgang
tour-of = { $step } von { $of }:
tour-leave = Rundgang verlassen
tour-1 = Zieh von einem Stift zum nächsten, und ein Gummi liegt über beiden.
tour-2 = Drück „Weiter bis ans Ende“, und es geht die Reihe entlang weiter.
tour-3 = Nimm „Haken“ und drück einen Stift mit zwei Schlaufen, dann den davor: Die untere Schlaufe kommt dorthin. Oder leg erst alle Gummis und drück „Reihenfolge finden“.
tour-4 = Schließ das Stück mit „Clip“ oder „Knoten“, oder mit einer Abhilfe, die bei den Befunden steht.
tour-5 = Wart, bis das Stück vom Webrahmen ist, und sieh es dir genau an.
tour-6 = Öffne „Die Anleitung“: Seiten, Bilder und Film für alle, die es machen sollen.

# A new piece
new-piece = Neues Stück
piece-name = Wie heißt es?
begin-it = Anfangen

# Colours that pieces begin with
tint-slate-blue = schieferblau
tint-foam-white = schaumweiß
tint-buoy-red = bojenrot
tint-lamp-yellow = lampengelb
tint-weed-green = tanggrün
tint-sand = sandfarben

# Orders of working, and mends
planning = Reihenfolge und Abhilfe
find-order = Reihenfolge finden
find-order-what = Leg deine Gummis; wie sie abgearbeitet werden, wird gefunden und bewiesen.
find-other-orders = Andere Reihenfolgen finden
finding-orders = Reihenfolgen werden gesucht…
orders-enough = Zeigen, was gefunden ist
orders-found = { $count ->
    [one] Eine Reihenfolge fand sich. Jedes Gummi hält darin, das ist bewiesen.
   *[other] { $count } Reihenfolgen fanden sich. Jedes Gummi hält in jeder, das ist bewiesen.
  }
orders-cut-short = Die Zeit reichte nicht, um alle zu versuchen.
orders-longer = Länger suchen
orders-afresh = Das bisher Gearbeitete weglassen und noch einmal suchen
order-shown = Die gezeigte Reihenfolge
order-of = Reihenfolge { $number } von { $of }, noch nicht übernommen:
order-phrases = { $count ->
    [one] ein Satz zum Beibringen
   *[other] { $count } Sätze zum Beibringen
  }
order-above = { $count ->
    [0] nie eine Schlaufe über der, die genommen wird
    [one] eine Schlaufe liegt über einer, die genommen wird
   *[other] { $count } Schlaufen liegen über denen, die genommen werden
  }
order-travel = der Haken geht { $length } cm weit
order-alike = links und rechts gleich
order-loose = { $count ->
    [one] eine Schlaufe, durch die nichts läuft
   *[other] { $count } Schlaufen, durch die nichts läuft
  }
order-warnings = { $count ->
    [one] eine Warnung
   *[other] { $count } Warnungen
  }
order-before = Die Reihenfolge davor
order-next = Die nächste Reihenfolge
order-take = Übernehmen
order-leave = Lassen, wie es war
edit-order = Reihenfolge übernehmen
mend-piece = Das Stück in Ordnung bringen
finding-mends = Es wird gesucht, was hilft…
mended = In Ordnung gebracht: { $change }.
mend-ways = Was hilft
mend-cause = Was nicht stimmte
order-failures = im Mittel { $count } Fehler, nach denen Gummis abfallen
orders-rehearsing = Es wird durchgespielt, was bei jeder schiefgeht.
simpler = Dasselbe Stück, einfacher gearbeitet
simpler-before = jetzt
simpler-after = dann
simpler-show = Am Webrahmen zeigen
simpler-shown = Dasselbe Stück, einfacher gearbeitet, noch nicht übernommen:
effort-phrases = Sätze zum Beibringen
effort-colours = Farbwechsel
effort-travel = Weg des Hakens
order-given = Wie es jetzt ist:

# Ein Stück als eine Datei
share-short = Weitergeben
share = Das Stück als eine Datei weitergeben
share-what = Die Datei geht mit einem Doppelklick in jedem Browser auf: Alle können das Stück darin nacharbeiten. Auf das Regal eines Studios gezogen, ist sie wieder das Stück selbst, ohne dass etwas verloren geht.
share-making = Die Datei entsteht…
share-made = „{ $file }“ liegt dort, wo dein Browser Dateien ablegt.

# Die Vorlage auf Papier
chart = Vorlage
byline = Ein Stück von { $designer }
print = Drucken
chart-steps = Schritt { $from } bis { $to }
chart-more = { $count } weitere Abschnitte sind nicht gezeichnet; ihre Schritte stehen unten.
chart-times = Insgesamt { $count }-mal, jedes Mal weitergerückt:

# Stifte von Hand gesetzt
pegs-how = Ein Druck setzt einen Stift, ein Zug verschiebt ihn; die Pfeiltasten verschieben den gewählten. Das Raster ist 10 mm weit.
peg-chosen = Stift
peg-name-field = Heißt
peg-x = Nach rechts, mm
peg-y = Von dir weg, mm
add-peg = Noch ein Stift
remove-peg = Stift herausnehmen

# Ein Bild zum Nachlegen
trace = Bild nachlegen
trace-what = Das Bild liegt unter dem Rahmen, während du Gummis darüberlegst. Es bleibt in diesem Browser.
trace-file = Bild
trace-strength = Deckkraft
trace-width = Breite, mm
trace-turn = Gedreht, Grad
trace-fit = Mit zwei Punkten einpassen
trace-remove = Bild herausnehmen
no-picture = „{ $file }“ ist kein Bild, das dieser Browser lesen kann.
tip-trace-1 = Drück einen Punkt im Bild, den du kennst.
tip-trace-2 = Drück jetzt den Stift, zu dem er gehört.
tip-trace-3 = Drück einen zweiten Punkt im Bild.
tip-trace-4 = Drück jetzt den Stift, zu dem dieser gehört.
