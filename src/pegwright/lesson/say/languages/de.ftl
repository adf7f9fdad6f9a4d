# Jeder Satz einer Anleitung auf Deutsch. Eine Meldung ein Satz; wer liest, ist vielleicht zwölf Jahre alt.
# Stifte stehen ohne Artikel und Farben in Klammern, damit kein Fall falsch wird.

## Verbinden

list-comma = { $head }, { $next }
list-and = { $head } und { $last }
span = { $first } bis { $last }
span-dash = { $first }–{ $last }

## Namen der Dinge

band-name = Gummi ({ $colour }, { $letter })
band-plain = Gummi ({ $letter })
band-short = { $colour }, { $letter }
bands-of = { $n ->
    [one] 1 Gummi ({ $colour }, { $letter })
   *[other] { $n } Gummis ({ $colour }, { $letter })
}
bands-plain = { $n ->
    [one] 1 Gummi ({ $letter })
   *[other] { $n } Gummis ({ $letter })
}
loop-lowest = die unterste Schlaufe ({ $band })
loop-top = die oberste Schlaufe ({ $band })
loop-only = die Schlaufe ({ $band })
loop-counted = die { $n }. Schlaufe von unten ({ $band })
loops-lowest = die { $n } untersten Schlaufen
loops-top = die { $n } obersten Schlaufen
loops-counted = die Schlaufen { $first } bis { $last } von unten
peg-one = Stift { $peg }
peg-many = Stifte { $pegs }
end-name = das freie Ende „{ $end }“
end-plain = das freie Ende
end-start = das erste Gummi (das unter dem Webrahmen hängt)

way-far = von dir weg
way-near = zu dir hin
way-left = nach links
way-right = nach rechts
way-far-left = von dir weg und nach links
way-far-right = von dir weg und nach rechts
way-near-left = zu dir hin und nach links
way-near-right = zu dir hin und nach rechts
way-clause = , { $way }
side-far = von dir weg
side-near = zu dir hin
side-left = nach links
side-right = nach rechts

length-mm = { $n } mm
length-in = { $n } Zoll

times = { $n ->
    [one] einmal
    [2] zweimal
   *[other] { $n } Mal
}

## Überschriften und Beiwerk

byline = Ein Stück von { $designer }
byline-none = Ein Stück für den Webrahmen mit Stiften
edition-right = Ausgabe für Rechtshänder: Halt den Haken in der rechten Hand.
edition-left = Ausgabe für Linkshänder: Halt den Haken in der linken Hand. Das ganze Stück ist gespiegelt, nicht nur die Bilder.
heading-level = Stufe
heading-supplies = Du brauchst
heading-supplies-many = Du brauchst für { $n ->
    [one] 1 Stück
   *[other] { $n } Stücke
}
heading-tools = Werkzeug
heading-key = Welches Gummi ist welches
heading-hold = Hält es?
heading-cautions = Damit nichts passiert
heading-check = Halt an und schau nach
heading-chart = Was jetzt auf jedem Stift liegt, die unterste Schlaufe zuerst (×2: zwei gleiche)
heading-notes = Dazu
heading-glossary = Wörter in dieser Anleitung
glossary-line = { $term }: { $means }
heading-finished = Das fertige Stück
finished-size = Abgenommen und ungedehnt ist es { $length } lang, { $width } breit und { $height } dick.
finished-size-high = Abgenommen und ungedehnt ist es { $length } lang, { $width } breit und { $height } hoch.
finished-wrists = Geschlossen lässt es sich an Handgelenken von { $low } bis { $high } tragen.
finished-no-wrist = So, wie es ist, passt es um kein Handgelenk.
finished-unasked = Bild und Größe werden nur für die ganze Anleitung berechnet.
finished-nothing = Bild und Größe fehlen hier: Es gibt noch kein Gummi.
finished-restless = Bild und Größe fehlen hier: Die Berechnung kam zu keinem Ergebnis.
shown-true = Originalgröße.
shown-twice = Doppelte Originalgröße.
shown-larger = Größer als das Original.
shown-smaller = Kleiner als das Original.
picture-finished = { $title }, fertig, von vorn gesehen. Gummis: { $colours }.
picture-front = { $title } ungedehnt, { $length } mm lang und { $width } mm breit, von vorn gesehen; { $key }
picture-back = { $title } ungedehnt, { $length } mm lang und { $width } mm breit, umgedreht und von hinten gesehen; { $key }
picture-side = { $title } ungedehnt, { $length } mm lang und { $width } mm breit, von der Seite gesehen, die Vorderseite oben; { $key }
picture-worn = { $title } an einem Handgelenk von { $girth } mm; { $key }
heading-extension = Damit es passt
extension-now = { $bands ->
    [0] So, wie es hier steht, hat es keine Verlängerung.
    [one] So, wie es hier steht, hat es eine Verlängerung von 1 Gummi.
   *[other] So, wie es hier steht, hat es eine Verlängerung von { $bands } Gummis.
}
extension-line = Handgelenk { $wrist }: { $bands ->
    [0] keine Verlängerung.
    [one] 1 Gummi Verlängerung.
   *[other] { $bands } Gummis Verlängerung.
}
repeats-now = So, wie es hier steht, wird der Rapport insgesamt { $times } Mal gearbeitet. { $bands ->
    [one] Jedes Mal brauchst du 1 Gummi.
   *[other] Jedes Mal brauchst du { $bands } Gummis.
}
repeats-line = Handgelenk { $wrist }: insgesamt { $times } Mal.
sizes-line = Für ein Handgelenk von { $wrist }: Arbeite den Rapport insgesamt { $times } Mal, { $bands ->
    [0] ohne Verlängerung.
    [one] mit 1 Gummi Verlängerung.
   *[other] mit { $bands } Gummis Verlängerung.
}
sizes-count = { $n } von { $letter }
sizes-bands = Dafür brauchst du { $list }, zusammen { $n ->
    [one] 1 Gummi
   *[other] { $n } Gummis
}.
sizes-pegs = Mit einer anderen Zahl von Rapporten endet das Stück an einem anderen Stift. Wo ein Schritt Stift { $peg } nennt, nimm den letzten Stift aus der Tabelle, und zähl die Stifte daneben von dort.
sizes-best = „Handgelenk“ sagt, wo es am besten passt, „Möglich an“, wo man es tragen kann.
sizes-wrists = Die Tabelle gilt für Handgelenke von { $wrists }: von einem etwa siebenjährigen Kind bis zu kräftigen Erwachsenen.
sizes-no-shorter = Für kleinere Handgelenke, als sie nennt, lässt sich das Stück nicht kurz genug arbeiten.
sizes-no-longer = Für größere Handgelenke, als sie nennt, lässt sich das Stück nicht lang genug arbeiten.
sizes-step = Schritt { $step }: noch { $times ->
    [one] einmal
   *[other] { $times } Mal
}.
sizes-last-peg = Stift { $peg } tritt an die Stelle von Stift { $own }.
sizes-extend = Die Verlängerung kommt nach Schritt { $step }: Fang ein neues Gummi mit dem Haken und zieh es durch die beiden Enden des letzten Gummis. Behalt beide Enden des neuen Gummis auf dem Haken. Mach das für jedes Gummi der Verlängerung, dann schließ das Stück.
column-possible = Möglich an
column-last-peg = Letzter Stift
column-times-step = Schritt { $step }, noch … mal
heading-sizes = Gummis für jedes Handgelenk
column-wrist = Handgelenk
column-times = Rapporte
column-extension = Verlängerung
label-page = Seite { $page } von { $pages }
label-ruler = Prüf den Druck: Dieser Balken ist 50 mm lang, der darunter 2 Zoll.
label-ruler-metric = 50 mm
label-ruler-inch = 2 Zoll
label-note = Hinweis
label-warning = Vorsicht
label-hook = Haken
label-closeup = Stift von der Seite
label-held-band = Ein Gummi legen
label-held-hook = Den Haken halten
label-closure-clip = Der Clip und seine Schlaufen
label-closure-cord = Die Schnur und ihre Schlaufen
label-order = In dieser Reihenfolge
label-after = So sieht es dann aus
label-tick = Hak jede Runde ab

## Stufe

level-basic = Grundstufe
level-easy = Leicht
level-intermediate = Mittel
level-complex = Anspruchsvoll
age-from = Ab etwa { $n } Jahren, mit einem Erwachsenen in der Nähe.
time-by-hand = Beim ersten Mal dauert es etwa { $hours ->
    [0] { $minutes } Minuten
    [one] { $minutes ->
        [0] eine Stunde
       *[other] eine Stunde und { $minutes } Minuten
    }
   *[other] { $minutes ->
        [0] { $hours } Stunden
       *[other] { $hours } Stunden und { $minutes } Minuten
    }
}.
band-size = Gummis: innen { $bore } weit, wenn sie flach liegen, { $thick } dick, aus { $material }.
band-size-named = Gummis „{ $kind }“: innen { $bore } weit, wenn sie flach liegen, { $thick } dick, aus { $material }.
material-silicone = Silikon
material-rubber = Naturkautschuk
material-tpe = Kunststoff (TPE)
letters-are = Der Buchstabe hinter einer Farbe ist ihr Kurzname: Er steht in den Bildern und bei jeder Zahl.
safe-small = An Gummis und Clips kann man ersticken: Halt sie von Kindern unter 3 Jahren fern.
safe-tight = Leg nie ein Gummi eng um einen Finger, einen Hals oder um das Handgelenk eines Babys.
safe-eyes = Halt gespannte Gummis von den Augen weg.
safe-rules = Die örtlichen Regeln gehen vor.
safe-more = Alle Vorsichtsregeln stehen auf der letzten Seite.
tool-joined-beside = Setz die { $n } Webrahmen nebeneinander, alle Stifte auf gleicher Höhe, mit { $gap } zwischen den Reihen, die sich treffen.
tool-joined-beyond = Setz die { $n } Webrahmen hintereinander, mit { $gap } zwischen den Stiften, die sich treffen.
tool-hook-size = so dünn, dass er in die offene Seite der Stifte passt ({ $low } bis { $high } dick), mit stumpfer Spitze
tool-cord-length = etwa { $length } lang und nicht dicker als ein Gummi, mit einer stumpfen Nadel zum Einfädeln
reason-colours = { $n ->
    [one] Eine Farbe.
   *[other] { $n } Farben.
}
reason-repeat = Kurze Abläufe, die sich oft wiederholen.
reason-stack = { $n ->
    [one] Nie mehr als eine Schlaufe auf einem Stift.
   *[other] Bis zu { $n } Schlaufen auf einem Stift.
}
reason-wide = Manche Gummis gehen um drei Stifte oder mehr.
reason-twist = Manche Gummis bekommen eine halbe Drehung.
reason-cap = Kappen werden um einzelne Stifte gewickelt.
reason-hook = Schlaufen werden mit dem Haken durch Schlaufen gezogen.
reason-lift = Schlaufen werden über andere Schlaufen gehoben.
reason-hang = Gummis hängen am Haken und werden aufgeschoben.
reason-count = { $n ->
    [one] Im Ganzen ein Gummi.
   *[other] Im Ganzen { $n } Gummis.
}

## Material

column-band = Gummi
column-for = Wofür
column-count = Wie viele
column-weight = Gewicht
total = Alle Gummis
purpose-placed = { $n } zum Legen
purpose-caps = { $n ->
    [one] 1 Kappe
   *[other] { $n } Kappen
}
purpose-hung = { $n } zum Anhängen
purpose-finishing = { $n } für den Schluss
purpose-extension = { $n } für die Verlängerung
purpose-spares = { $n ->
    [one] 1 als Reserve
   *[other] { $n } als Reserve
}
weight = { $grams } g
weight-about = etwa { $grams } g
thing-clips = { $n ->
    [one] 1 Clip
   *[other] { $n } Clips
}
thing-clips-spare = { $n ->
    [one] 1 Clip
   *[other] { $n } Clips
} und { $spare ->
    [one] 1 als Reserve
   *[other] { $spare } als Reserve
}
tool-straight = { $n ->
    [one] ein Webrahmen
   *[other] { $n } Webrahmen
} mit { $rows ->
    [one] einer Reihe
   *[other] { $rows } Reihen
} zu { $pegs ->
    [one] 1 Stift
   *[other] { $pegs } Stiften, { $pitch } von Stift zu Stift
}
tool-round = { $n ->
    [one] ein runder Webrahmen
   *[other] { $n } runde Webrahmen
} mit { $rows ->
    [one] einem Ring
   *[other] { $rows } Ringen
} zu { $pegs ->
    [one] 1 Stift
   *[other] { $pegs } Stiften, { $pitch } von Stift zu Stift
}
tool-pegs = { $n ->
    [one] ein Brett
   *[other] { $n } Bretter
} mit { $pegs ->
    [one] 1 Stift
   *[other] { $pegs } Stiften
}
tool-cord = { $n ->
    [one] ein Stück Schnur zum Zubinden
   *[other] { $n } Stücke Schnur zum Zubinden
}
tool-hooks = { $n ->
    [one] ein Haken
   *[other] { $n } Haken
}
tool-scissors = { $n ->
    [one] eine Schere, um die Schnur zu kürzen
   *[other] { $n } Scheren, um die Schnüre zu kürzen
}

## Abschnitte

phase-prepare = Vorbereiten
phase-place = Gummis legen
phase-turn = Webrahmen umdrehen
phase-work = Schlaufen arbeiten
phase-finish = Abschließen
phase-extend = Verlängern
phase-close = Schließen
phase-wear = Sicher tragen
phase-use = Sicher benutzen

intro-place = Jedes neue Gummi kommt oben auf die anderen. Drück es ein wenig hinunter, bevor du das nächste nimmst. Halt es mit einem Finger der einen Hand auf seinem ersten Stift fest und spann es mit der anderen.
intro-work = Das kleine Bild zeigt den Stift von der Seite: welche Schlaufe du nimmst und welche darüber liegen. Halt den Haken wie einen Bleistift; ein Finger der anderen Hand hält die übrigen Gummis auf dem Stift unten.
intro-work-film = Schau den Stift von der Seite an: Dort siehst du, welche Schlaufe du nimmst und welche darüber liegen. Halt den Haken wie einen Bleistift; ein Finger der anderen Hand hält die übrigen Gummis auf dem Stift unten.
intro-finish = Halt die Schlaufen fest, bis sie gesichert sind.

## Schritte

step-prepare = Leg den Webrahmen so vor dich, dass Stift { $near } dir am nächsten ist.
step-prepare-bands = Leg bereit: { $bands }. Zähl nach.
detail-rows = Die Reihen heißen von links { $letters }. Die Stifte zählst du von dir weg.
detail-row-one = Es gibt eine Reihe, { $letter }. Ihre Stifte zählst du von dir weg.
detail-round = Die Stifte zählst du rundherum. Fang bei dem an, der dir am nächsten ist, und geh nach rechts.
legend-channel = In den Bildern markiert ein Punkt die offene Seite jedes Stifts.
detail-channel = Die offene Seite jedes Stifts zeigt { $side }.
detail-channel-out = Die offene Seite jedes Stifts zeigt nach außen.
detail-channel-in = Die offene Seite jedes Stifts zeigt nach innen.
detail-channel-any = Jeder Stift hat eine offene Seite. Such sie: Dort geht der Haken hinein.

step-place-two = Spann ein { $band } von Stift { $first } zu Stift { $last }{ $way }.
step-place-many = Spann ein { $band } um die Stifte { $pegs }.
detail-twist = Zwischen { $first } und { $last } gib dem Gummi { $n ->
    [one] eine halbe Drehung, sodass eine 8 entsteht
   *[other] { $n } halbe Drehungen
}.
detail-twist-back = Zwischen { $first } und { $last } gib dem Gummi { $n ->
    [one] eine halbe Drehung andersherum
   *[other] { $n } halbe Drehungen andersherum
}: Von { $first } aus gesehen geht der rechte Strang über den anderen.
detail-turns = Wickle es { $times } um Stift { $peg }.
step-wind = Wickle ein { $band } { $times } um Stift { $peg }, über alles, was dort liegt. Das ist die Kappe: Sie hält die Schlaufen darunter auf dem Stift.
step-turn = Dreh den ganzen Webrahmen herum, bis Stift { $near } dir am nächsten ist.
detail-turned = Was links war, ist jetzt rechts. Die Namen der Stifte bleiben.
step-hook = Schieb den Haken an der offenen Seite von Stift { $source } hinunter, innen durch { $above ->
    [all] alle Schlaufen darüber
    [any] alle Schlaufen darüber, falls dort welche liegen
    [one] die Schlaufe darüber
   *[other] die { $above } Schlaufen darüber
}. Fang { $loop } und zieh sie durch { $above ->
    [one] diese Schlaufe
   *[other] diese Schlaufen
} hoch. Leg sie auf Stift { $target }{ $way }.
step-hook-top = Fang mit dem Haken { $loop } auf Stift { $source }. Leg sie auf Stift { $target }{ $way }.
detail-skipped = Geh nur durch { $through ->
    [one] die oberste Schlaufe
   *[other] die { $through } obersten Schlaufen
}. Lass { $n ->
    [one] die Schlaufe
   *[other] die { $n } Schlaufen
} gleich über der gefangenen, wo { $n ->
    [one] sie ist
   *[other] sie sind
}.
detail-skipped-all = Geh nicht durch { $n ->
    [one] die Schlaufe
   *[other] die { $n } Schlaufen
} darüber: Zieh sie an der Seite heraus.
step-slide = Schieb den Haken an der offenen Seite von Stift { $source } hinunter und fang { $loop }. Schieb vom Haken auf { $taken ->
    [one] diese Schlaufe
   *[other] diese Schlaufen
}: { $hung }. Leg dann { $taken ->
    [one] die Schlaufe
   *[other] die Schlaufen
} auf Stift { $target }{ $way }.
step-slide-through = Schieb den Haken an der offenen Seite von Stift { $source } hinunter, innen durch { $above ->
    [all] alle Schlaufen darüber
    [any] alle Schlaufen darüber (falls dort welche liegen)
    [one] die Schlaufe darüber
   *[other] die { $above } Schlaufen darüber
}, und fang { $loop }. Schieb vom Haken auf { $taken ->
    [one] diese Schlaufe
   *[other] diese Schlaufen
}: { $hung }. Zieh sie durch { $above ->
    [all] alle Schlaufen darüber
    [any] alle Schlaufen darüber (falls dort welche liegen)
    [one] die Schlaufe darüber
   *[other] die { $above } Schlaufen darüber
} hoch und leg sie auf Stift { $target }{ $way }.
step-lift = Fang auf Stift { $peg } mit dem Haken { $loop }. Heb sie über { $above ->
    [all] alle Schlaufen darüber
    [any] alle Schlaufen darüber (falls dort welche liegen)
    [one] die Schlaufe darüber
   *[other] die { $above } Schlaufen darüber
} und lass sie vom Stift gleiten.
step-lift-on = Fang auf Stift { $peg } mit dem Haken { $loop }. Heb sie über { $above ->
    [all] alle Schlaufen darüber
    [any] alle Schlaufen darüber (falls dort welche liegen)
    [one] die Schlaufe darüber
   *[other] die { $above } Schlaufen darüber
} und über die Spitze des Stifts, und leg sie auf Stift { $target }{ $way }.
step-transfer = Nimm von Stift { $source } { $loop } und leg sie auf Stift { $target }{ $way }. Dreh sie dabei nicht um.
step-hang = Wickle ein { $band } { $times } um den Schaft des Hakens. Lass es dort hängen.
step-bind = Schieb den Haken durch { $n ->
    [one] die Schlaufe
    [2] beide Schlaufen
   *[other] alle { $n } Schlaufen
} auf Stift { $peg } hinunter. Fang { $count ->
    [one] ein { $band } und zieh es hoch, bis die Hälfte durch ist. Behalt beide Enden
   *[other] nebeneinander { $bands } und zieh sie hoch, bis von jedem die Hälfte durch ist. Behalt alle Enden
} auf dem Haken und nimm die Schlaufen vom Stift.
step-bind-some = Schieb den Haken nur durch { $n ->
    [one] die oberste Schlaufe
   *[other] die obersten { $n } Schlaufen
} auf Stift { $peg } hinunter. Fang { $count ->
    [one] ein { $band } und zieh es hoch, bis die Hälfte durch ist. Behalt beide Enden
   *[other] nebeneinander { $bands } und zieh sie hoch, bis von jedem die Hälfte durch ist. Behalt alle Enden
} auf dem Haken und nimm { $n ->
    [one] diese Schlaufe
   *[other] diese Schlaufen
} vom Stift. Die anderen bleiben.
step-put = Schieb { $n ->
    [one] die Schlaufe
    [2] beide Schlaufen
   *[other] alle { $n } Schlaufen
} des freien Endes über die Spitze vom Haken auf Stift { $peg }.
step-put-apart = Nimm die Schlaufen des freien Endes vom Haken und leg je { $n ->
    [one] eine
   *[other] { $n }
} auf die Stifte { $pegs }, in dieser Reihenfolge und flach, wie sie liegen.
step-extend = Häng eine Kette an, { $bands }: Zieh jedes neue Gummi durch beide Enden des vorigen.
detail-extend-together = Nimm immer { $n } Gummis auf einmal, nebeneinander wie eines, und zieh sie durch alle Enden davor.
step-knot = Zieh eine Schnur durch { $n ->
    [one] die Schlaufe
    [2] beide Schlaufen
   *[other] alle { $n } Schlaufen
} ({ $where }) und verknote sie. Zieh den Knoten fest.
step-clip = Häng einen Clip durch { $n ->
    [one] die Schlaufe
    [2] beide Schlaufen
   *[other] alle { $n } Schlaufen
} ({ $where }).
step-clip-join = Bring diese Schlaufen zusammen: { $where }. Häng einen Clip durch alle { $n }.
step-clip-join-off = Bring diese Schlaufen zusammen: { $ends } und die, die vorher hier lagen: { $pegs }. Häng einen Clip durch alle { $n }.
detail-catch = Nimm nur { $n ->
    [one] die oberste Schlaufe
   *[other] die { $n } obersten Schlaufen
}.
detail-off = Nimm dann die Schlaufen ab.
step-release = Heb das Stück vom Webrahmen, von einem Ende zum anderen, Schlaufe um Schlaufe. Reiß es nicht ab.
detail-rough = Zuerst sieht es ungleichmäßig aus. Zieh es ein paarmal sanft in die Länge, dann legt es sich zurecht.
detail-keep = Halt { $n ->
    [one] die Schlaufe
   *[other] die { $n } Schlaufen
} { $many ->
    [one] von
   *[other] der
} { $pegs } auf einem Finger fest. Du brauchst sie zum Schließen.

step-again = Mach { $steps } noch { $times ->
    [one] einmal
   *[other] { $times } Mal
}. { $shift } Beim letzten Mal endest du hier: { $end }.
step-again-same = Mach { $steps } am selben Platz noch { $times ->
    [one] einmal
   *[other] { $times } Mal
}.
step-again-counted = Mach { $steps } noch { $times ->
    [one] einmal
   *[other] { $times } Mal
}, jedes Mal auf anderen Stiften.
steps-one = Schritt { $first }
steps-two = die Schritte { $first } und { $last }
steps-many = die Schritte { $first } bis { $last }
shift-pegs = { $n ->
    [one] Geh jedes Mal einen Stift weiter, { $way }.
   *[other] Geh jedes Mal { $n } Stifte weiter, { $way }.
}
shift-rows = { $n ->
    [one] Geh jedes Mal eine Reihe weiter, { $way }.
   *[other] Geh jedes Mal { $n } Reihen weiter, { $way }.
}
shift-round = { $n ->
    [one] Geh jedes Mal einen Stift weiter, { $turn }.
   *[other] Geh jedes Mal { $n } Stifte weiter, { $turn }.
}
turn-anticlockwise = gegen den Uhrzeigersinn
turn-clockwise = im Uhrzeigersinn
shift-both = Geh jedes Mal in der Länge und in der Breite des Webrahmens weiter.
detail-list-short = Die Liste nennt die Runden nur bis { $last }. Mach genauso weiter.
detail-left-out = Die Teile { $first } bis { $last } sehen aus wie die davor und fehlen hier.
detail-colours = Die Farben wechseln von Runde zu Runde.
detail-above = { $n ->
    [0] Ab Runde 2 liegt keine Schlaufe darüber ({ $steps }).
    [one] Ab Runde 2 liegt 1 Schlaufe darüber ({ $steps }).
   *[other] Ab Runde 2 liegen { $n } Schlaufen darüber ({ $steps }).
}
detail-above-changes = In Schritt { $step } liegen von Runde zu Runde verschieden viele Schlaufen darüber. Geh immer durch alle.
detail-over-changes = In Schritt { $step } liegen von Runde zu Runde verschieden viele Schlaufen darüber. Heb sie immer über alle.
tick-round = Runde { $n }
tick-span = { $first } bis { $last }
tick-span-words = { $first }, und weiter bis { $last }
tick-way = von { $first } nach { $last }
tick-colour = { $colour } ({ $letter })
tick-all = alle Gummis { $colour }
tick-steps = { $colour } ({ $steps })
tick-order = Farben der Reihe nach { $letters }

## Prüfen

check-bands = { $n ->
    [one] Bis jetzt hast du 1 Gummi verbraucht.
   *[other] Bis jetzt hast du { $n } Gummis verbraucht.
}
check-loops = { $pegs }: { $many ->
    [one] {""}
   *[other] je{" "}
}{ $n ->
    [0] keine Schlaufe
    [one] 1 Schlaufe
   *[other] { $n } Schlaufen
}.
check-clip = { $n ->
    [one] Der Clip geht durch 1 Schlaufe.
   *[other] Der Clip geht durch { $n } Schlaufen. Zähl sie.
}
check-cord = { $n ->
    [one] Die Schnur geht durch 1 Schlaufe.
   *[other] Die Schnur geht durch { $n } Schlaufen. Zähl sie.
}
check-bare = Auf dem Webrahmen ist keine Schlaufe mehr.
check-left = Alle anderen Stifte sind leer.
check-cure-place = Hat ein Stift zu wenige Schlaufen, liegt ein Gummi daneben. Nimm die Gummis bis dorthin ab und mach von da weiter.
check-cure-work = Hat ein Stift mehr oder weniger Schlaufen, blieb eine liegen oder kam vom falschen Stift. Geh die Schritte zurück und such sie, bevor du abschließt.

## Tragen

wear-fit = Am Handgelenk muss ein Finger leicht darunter passen. Wenn nicht, ist das Stück zu eng: Mach es länger.
use-safe = Dieses Stück ist nicht für das Handgelenk gemacht: Zieh es nie über Hand, Finger oder Hals. Halt es von Hitze, kleinen Kindern und Haustieren fern. Wirf es weg, wenn die Gummis klebrig oder rissig werden.

## Hält es

hold-yes = { $n ->
    [one] Ja. Es ist bewiesen, dass das eine Gummi hält, wenn du das Stück wie gezeigt abschließt.
   *[other] Ja. Es ist bewiesen, dass alle { $n } Gummis halten, wenn du das Stück wie gezeigt abschließt.
}
hold-no = { $n ->
    [one] Nein. Ein Gummi hält nicht und fällt ab:
   *[other] Nein. { $n } Gummis halten nicht und fallen ab:
} { $which }.
hold-unproved = { $n ->
    [one] Nicht bewiesen für ein Gummi:
   *[other] Nicht bewiesen für { $n } Gummis:
} { $which }.
hold-left-out = { $n ->
    [one] Dieses Blatt zeigt nicht die ganze Anleitung: Wegen eines Fehlers darin fehlt ein Schritt. Behebe ihn zuerst.
   *[other] Dieses Blatt zeigt nicht die ganze Anleitung: Wegen { $n } Fehlern darin fehlen Schritte. Behebe sie zuerst.
}
hold-not-shown = Es ist nicht bewiesen, dass jedes Gummi hält.
hold-band = Gummi { $number } ({ $band }, Schritt { $step })
hold-more = { $n } weitere
hold-snap-none = Reißt ein Gummi, fällt kein anderes ab.
hold-snap-worst = { $n ->
    [one] Reißt ein Gummi, kann 1 anderes mit abfallen.
   *[other] Reißt ein Gummi, können bis zu { $n } andere mit abfallen.
}
hold-snap-harmless = { $n ->
    [one] 1 Gummi kann reißen, ohne dass ein anderes frei wird.
   *[other] { $n } Gummis können reißen, ohne dass ein anderes frei wird.
}

## Vorsicht. Das Übliche; die Regeln am Ort gehen vor.

caution-small = An kleinen Gummis und Clips kann man ersticken. Halt sie fern von Kindern unter 3 und von allen, die noch Dinge in den Mund stecken.
caution-tight = Leg nie ein Gummi eng um Finger, Zeh, Hals oder das Handgelenk eines Babys. Wird die Haut blass, blau, geschwollen oder taub, nimm es sofort ab: Schneid es durch. Hol Hilfe, wenn sich die Haut nicht nach wenigen Minuten erholt.
caution-sleep = Nimm Armbänder zum Schlafen ab. Ein Finger muss leicht darunter passen. Rote Druckstellen heißen: Es ist zu eng.
caution-eyes = Halt gespannte Gummis nach unten und weg vom Gesicht. Trag eine Brille, wenn du fest ziehst. Ein Gummi, das reißt oder wegschnellt, kann ein Auge verletzen.
caution-pets = Heb heruntergefallene Gummis auf. Haustiere verschlucken sie.
caution-latex = Manche Gummis sind aus Naturkautschuk. Wer gegen Latex allergisch ist, braucht Gummis, die als latexfrei verkauft werden. Ansehen oder Anfassen genügt nicht.
caution-old = Wirf Gummis weg, die klebrig, rissig oder ausgeblichen sind. Sie reißen.
caution-rules = Kauf Gummis, die laut Hersteller die Regeln für Spielzeug bei dir erfüllen; diese Anleitung kann das nicht prüfen. Die Regeln vor Ort und die deiner Schule oder Bücherei gehen vor.

## Schluss

colophon-version = Diese Anleitung wurde mit Pegwright { $version } aus einem Muster im Format { $format } gemacht.
colophon-print = Druckzeichen { $mark }: Blätter mit demselben Zeichen enthalten dieselbe Anleitung.
colophon-errata = Einen Fehler gefunden? Sag es { $designer } und nenn das Druckzeichen.
colophon-errata-none = Einen Fehler gefunden? Sag es der Person, von der du das Blatt hast, und nenn das Druckzeichen.
colophon-licence = Lizenz: { $licence }

## Bilder in Worten

picture-loom = Der leere Webrahmen
picture-loom-text = Der leere Webrahmen, wie er vor dir liegt: { $pegs }.
picture-part = Teil { $n } von { $count }
picture-step = Schritt { $n }
picture-view = Stifte im Bild: { $pegs }.
picture-place = Das neue { $band } ist kräftig gezeichnet. Es geht um { $pegs }.
picture-wind = Die Kappe, ein { $band }, ist um Stift { $peg } gewickelt.
picture-hook = Ein Pfeil führt von Stift { $source } zu Stift { $target }. Die bewegte Schlaufe ist kräftig gezeichnet, wo sie jetzt liegt.
picture-lift = Ein gebogener Pfeil führt hoch und weg von Stift { $peg }.
picture-lift-on = Ein gebogener Pfeil führt von Stift { $source } hoch und auf Stift { $target }.
picture-turn = Zwei gebogene Pfeile zeigen, wie der Webrahmen umgedreht wird.
picture-fasten = Der Verschluss ist gezeichnet ({ $where }).
picture-hang = Am Haken hängt ein { $band }.
picture-put = Kräftig gezeichnet sind die Schlaufen des freien Endes, wo sie jetzt liegen: { $where }.
picture-extend = Die neue Kette ist kräftig am freien Ende gezeichnet.
picture-again-place = Die Gummis aller Runden, mit Zahlen für die Reihenfolge.
picture-again-still = Der Webrahmen nach der letzten Runde.
picture-again-work = Pfeile mit Zahlen zeigen die Reihenfolge aller Runden.
picture-closeup = Stift { $peg } von der Seite, von unten nach oben: { $loops }.
picture-closeup-hook = Der Schaft des Hakens von der Seite: { $loops }.
picture-taken = Nimm von unten gezählt Schlaufe { $loops }.
picture-new = Von unten gezählt ist Schlaufe { $loops } neu.
picture-chart = Jeder Stift mit seinen Schlaufen, die unterste zuerst: { $pegs }.
chart-peg = { $peg }: { $loops }
chart-run = { $n } von { $letter }
picture-held-band = Von oben: Ein Finger der einen Hand hält das Gummi auf seinem ersten Stift; Daumen und Finger der anderen Hand spannen es über den nächsten.
picture-held-hook = Von der Seite: Eine Hand hält den Haken wie einen Bleistift, die Spitze an der offenen Seite des Stifts; ein Finger der anderen Hand hält die Schlaufen unten.
picture-closure-clip = Der Clip aus der Nähe. Er geht durch { $n ->
    [one] 1 Schlaufe
   *[other] { $n } Schlaufen
}: { $loops }.
picture-closure-cord = Die Schnur aus der Nähe. Sie geht durch { $n ->
    [one] 1 Schlaufe
   *[other] { $n } Schlaufen
}: { $loops }.
picture-bind = Das Schlussgummi ist kräftig gezeichnet, durch die Schlaufen auf Stift { $peg }.

## Film

shot-piece = Das fertige Stück
view-piece = Das ganze fertige Stück, ungedehnt, von oben.
view-cautions = Das Gesicht der Person, die unterrichtet, oder die Vorsichtsregeln zum Lesen.
view-bench = Webrahmen und Gummis, bereitgelegt, von oben.
view-heaps = Die Häufchen Gummis, jedes neben seinem Buchstaben.
view-loom = Der ganze leere Webrahmen von oben.
view-turn = Der ganze Webrahmen von oben, mit Platz zum Drehen an beiden Enden.
view-standing = Der Webrahmen von oben, so wie er jetzt aussieht.
view-pegs = Von oben: { $where }.
view-side = Nah von der Seite: die Schlaufen auf Stift { $peg } und die Spitze des Hakens.
view-shaft = Der Schaft des Hakens.
view-release = Der ganze Webrahmen von oben und beide Hände.
view-wear = Das Stück am Handgelenk, mit einem Finger darunter.
view-check-pegs = Von oben, scharf, ohne Hände: { $pegs }.
view-check = Der ganze Webrahmen von oben, jeder Stift scharf, keine Hände.

## Wörterliste

term-band = Gummi
means-band = ein kleiner dehnbarer Ring.
others-band = Gummiband, Gummibänder, Ringlein
term-loom = Webrahmen
means-loom = ein Brett mit Stiften in Reihen oder im Kreis.
others-loom = Webstuhl, Gestell
term-peg = Stift
means-peg = ein senkrechter Pfosten auf dem Webrahmen mit einer offenen Seite.
others-peg = Zapfen, Pfosten, Nagel, Nägel, Pin, Pins
term-channel = offene Seite
means-channel = die Rille an einer Seite des Stifts, in die der Haken geht.
others-channel = Rille, Nut
term-hook = Haken
means-hook = das Werkzeug, das eine Schlaufe fängt und zieht.
others-hook = Nadel, Häkelnadel
term-loop = Schlaufe
means-loop = der Teil eines Gummis, der um einen Stift liegt.
others-loop = Schlinge, Schlingen, Masche, Maschen
term-cap = Kappe
means-cap = ein Gummi, das um einen Stift gewickelt ist, über allem dort.
others-cap = Deckel, Haube
term-half-twist = halbe Drehung
means-half-twist = ein Gummi, zwischen zwei Stiften gekreuzt, sodass eine 8 entsteht.
others-half-twist = Verdrehung, Twist
term-free-end = freies Ende
means-free-end = die zwei Enden des letzten Gummis, auf Haken oder Finger gehalten.
others-free-end = loses Ende, lose Enden
term-clip = Clip
means-clip = ein kleiner Haken aus Plastik, der das Stück schließt.
others-clip = Klammer, Klammern, Spange
term-chain = Kette
means-chain = Gummis hintereinander, jedes durch das vorige gezogen.
others-chain = –
term-extension = Verlängerung
means-extension = eine einfache Kette, die das Stück länger macht: Jedes neue Gummi wird durch beide Enden des vorigen gezogen.
others-extension = –

## Drehplan und Sprechtext

heading-filming = Drehplan: { $title }
filming-length = Der Film dauert etwa { $minutes }, gesprochen mit { $wpm } Wörtern in der Minute. Die Kamera läuft etwa { $camera }.
heading-shots = Aufnahmen
column-shot = Aufnahme
column-at = Bei
column-long = Kamera läuft
column-do = Was geschieht
column-view = Was zu sehen sein muss
column-cut = Schnitt
cut-fast = { $speed } Mal so schnell
cut-pause = „Hier anhalten“ zeigen
heading-chapters = Kapitel
column-chapter = Kapitel
heading-filming-tips = Vor dem Drehen
tip-camera = Befestige die Kamera so über dem Webrahmen, dass sein nahes Ende am unteren Bildrand liegt. Beweg sie erst, wenn der Webrahmen umgedreht wird.
tip-hands = Halt die Hände weg von dem Stift, um den es geht. Halt nach jedem Schritt zwei Sekunden still.
tip-light = Licht von beiden Seiten, damit keine Hand Schatten auf die Stifte wirft.
tip-close = Film das kleine Bild des Stifts nah und von der Seite, wenn Schlaufen übereinander liegen.
tip-faces = Film ohne Erlaubnis weder das Gesicht noch den Namen eines Kindes. Die örtlichen Regeln gehen vor.
heading-script = Sprechtext: { $title }
script-about = { $words } Wörter, { $wpm } in der Minute, zusammen { $minutes }.
column-said = Was gesagt wird
column-step = Schritt

minutes = { $minutes ->
    [0] { $seconds } s
   *[other] { $minutes } min { $seconds } s
}

## Materialblatt

heading-kit = Materialblatt: { $title }
kit-about = { $n ->
    [one] Für 1 Person.
   *[other] Für { $n } Personen, jede mit Webrahmen, Haken und einem Beutel Gummis.
}
heading-bag = Ein Beutel für jede Person
heading-class = Für alle zusammen
column-spares = Reserve
column-bag = Im Beutel
column-all = Zusammen
class-bags = { $n ->
    [one] 1 Beutel
   *[other] { $n } Beutel
}
heading-tick = Abhaken
heading-buy = Zu kaufen
column-have = Vorhanden
column-need = Gebraucht
column-packs = Packungen
column-cost = Kosten
packs-of = { $n } × { $size }
packs-none = nichts
packs-unknown = keine Packung bekannt
cost-open = offen
cost-total = Summe
cost-part = Summe, soweit bekannt
heading-timetable = Zeitplan
timetable-about = Die Zeiten sind aus einzelnen Griffen berechnet und daraus, wie schnell man dabei besser wird. Sie gelten für Anfänger; miss selbst und ändere sie.
times-heard = { $n ->
    [one] Ein Schritt dauert so lange wie in der Aufnahme der Lehrerin oder des Lehrers.
   *[other] { $n } Schritte dauern so lange wie in der Aufnahme der Lehrerin oder des Lehrers.
}
column-part = Teil
column-show = Zeigen
column-make = Machen
column-from = Ab
timetable-sum = Zusammen
timetable-slow = Die Langsamsten brauchen vielleicht anderthalbmal so lange: etwa { $n } min.
kit-safe = Zähl Gummis und Clips beim Austeilen und beim Einsammeln. Feg am Ende den Boden.
thing-hooks = Haken
thing-scissors = Scheren
thing-clips-word = Clips
thing-loom = Webrahmen, { $rows } × { $pegs }

## Knöpfe der Seite und des Sprechpults

page-next = Weiter
page-back = Zurück
page-first = Zum Anfang
page-goto = Geh zu
page-left = Linkshändig
page-right = Rechtshändig
page-large = Große Schrift
page-read = Vorlesen
page-stop = Vorlesen beenden
page-progress = { $n } von { $count }
page-keys = Pfeiltasten, Wischen oder die Knöpfe führen weiter und zurück. Diese Seite braucht kein Netz und sendet nichts; sie merkt sich deine Stelle nur auf diesem Gerät.
page-what = Was das Bild zeigt
page-tools = Lesehilfen
page-moving = Durch die Schritte gehen
prompter-start = Start
prompter-stop = Anhalten
prompter-again = Von vorn
prompter-slower = Langsamer
prompter-faster = Schneller
prompter-smaller = Kleiner
prompter-larger = Größer
prompter-mirror = Spiegeln
prompter-pace = { $wpm } Wörter in der Minute
prompter-pause = Pause
prompter-keys = Die Leertaste startet und hält an, die Pfeile nach oben und unten ändern das Tempo, Plus und Minus die Größe.

## Lizenz

licence-as = Lizenz dieses Stücks und seiner Anleitung: { $licence }
licence-none = Es ist keine Lizenz genannt: Alle Rechte bleiben bei der Person, die es entworfen hat. Frag, bevor du es kopierst oder änderst.
licence-fonts = Die Seiten enthalten die Schrift Atkinson Hyperlegible unter der Lizenz, die hier folgt.

## Was schiefgeht: die Versehen

slip-loop-above = Du nimmst die Schlaufe über der gemeinten.
slip-loop-below = Du greifst zu tief und nimmst die Schlaufe unter der gemeinten.
slip-too-shallow = Du gehst innen nur durch { $n ->
    [one] die oberste Schlaufe
   *[other] die { $n } obersten Schlaufen
}, nicht durch alle darüber.
slip-outside = Du ziehst die Schlaufe an der Seite hoch, nicht innen durch die Schlaufen darüber.
slip-wrong-peg = Du legst es auf { $wrong } statt auf { $right }.
slip-wrong-peg-lift = Du machst es an { $wrong } statt an { $right }.
slip-mirrored-peg = Du legst es auf die andere Seite: auf { $wrong } statt auf { $right }.
slip-wrong-start = Du nimmst die Schlaufe von { $wrong } statt von { $right }.
slip-step-skipped = Du lässt diesen Zug aus.
slip-step-skipped-place = Du vergisst ein Gummi.
slip-step-skipped-hook = Du übergehst eine Schlaufe, und sie bleibt liegen.
slip-step-skipped-bind = Du vergisst das letzte Gummi.
slip-step-skipped-shut = Du nimmst das Stück herunter, bevor es zu ist.
slip-step-doubled = Du machst diesen Zug zweimal.
slip-steps-swapped = Du machst den nächsten Zug zuerst.
slip-wrong-order = Du arbeitest die Schlaufen auf { $where } in umgekehrter Reihenfolge, die unterste zuerst.
slip-wrong-colour = Du nimmst ein Gummi in einer anderen Farbe ({ $letter }).
slip-cap-forgotten = Du vergisst die Kappe.
slip-cap-wound-once = Du wickelst das Gummi nur einmal herum.
slip-twist-forgotten = Du legst das Gummi flach auf, ohne seine halbe Drehung.
slip-twisted-by-accident = Du verdrehst das Gummi aus Versehen, sodass eine 8 entsteht.
slip-loop-dropped = Dir fällt die gehobene Schlaufe auf dem Weg zum anderen Stift herunter.
slip-one-of-several = Du nimmst eine Schlaufe zu wenig.
slip-neighbour-snagged = Du fängst auch eine Schlaufe vom Stift daneben und nimmst sie mit.
slip-two-at-once = Du nimmst eine Schlaufe zu viel.
slip-charm-not-slid = Du schiebst nicht auf, was am Haken hängt.
slip-miscounted-few = Du nimmst ein Gummi zu wenig.
slip-miscounted-many = Du nimmst ein Gummi zu viel.
slip-not-all-caught-clip = Du verfehlst mit dem Clip eine Schlaufe.
slip-not-all-caught-knot = Du verfehlst mit der Schnur eine Schlaufe.
slip-not-all-caught-bind = Du ziehst das letzte Gummi nicht durch die oberste Schlaufe.
slip-not-all-caught-some = Du ziehst das letzte Gummi durch eine Schlaufe zu wenig.
slip-caught-too-many = Du ziehst das letzte Gummi durch eine Schlaufe zu viel.
slip-one-loop-caught-clip = Du hängst den Clip nur in eine Schlaufe.
slip-one-loop-caught-knot = Du ziehst die Schnur nur durch eine Schlaufe.
slip-one-loop-caught-bind = Du ziehst das letzte Gummi nur durch eine Schlaufe.
slip-end-slips-off = Dir rutschen die Schlaufen ab, bevor sie gefasst sind ({ $where }).
slip-loom-not-turned = Du drehst den Webrahmen nicht und machst alles Weitere am falschen Ende.
slip-loom-turned = Du drehst vorher den Webrahmen um und machst alles Weitere am falschen Ende.
slip-wrong-end = Du arbeitest vom falschen Ende her, den letzten Stift zuerst.

## Was daraus wird

end-all = Am Ende geht das Stück auseinander.
end-falls = { $n ->
    [one] Am Ende fällt ein Gummi ab.
   *[other] Am Ende fallen { $n } Gummis ab.
}
end-unproved = { $n ->
    [one] Ein Gummi kann abgehen: Nichts hält es sicher.
   *[other] { $n } Gummis können abgehen: Nichts hält sie sicher.
}
end-unproved-all = Das Stück kann auseinandergehen: Nichts hält es sicher.
end-weak = Es hält; reißt aber das falsche Gummi, geht alles auseinander.
end-looks = Es hält, sieht aber anders aus: { $bands }.
end-looks-many = Es hält, sieht aber anders aus: { $n } Gummis liegen anders.
end-harmless = Das macht keinen Unterschied.
looks-band = Gummi { $number } ({ $letter })
looks-band-more = ein Gummi zu viel

## Woran man es sieht

sign-none = Auf dem Webrahmen sieht man nichts. Man sieht es erst, wenn das Stück herunterkommt.
sign-loose = Es sieht richtig aus, aber nach Schritt { $step } merkst du es: Zieh an Gummi { $number } ({ $letter }), und es geht ab.
sign-refused = Du merkst es bei Schritt { $step }: Der geht dann nicht.
sign-glance-now = Du siehst es gleich
sign-glance-step = Du siehst es bei Schritt { $step }
sign-close-now = Von oben sieht alles richtig aus; schau gleich genau hin
sign-close-step = Von oben sieht alles richtig aus; schau bei Schritt { $step } genau hin
sign-loops = { $when }: { $n ->
    [0] keine Schlaufe
    [one] 1 Schlaufe
   *[other] { $n } Schlaufen
} auf { $where }; { $right ->
    [0] da soll keine sein
    [one] es soll 1 sein
   *[other] es sollen { $right } sein
}.
sign-clip = { $when }: { $n ->
    [0] keine Schlaufe
    [one] 1 Schlaufe
   *[other] { $n } Schlaufen
} im Clip; es sollen { $right } sein.
sign-cord = { $when }: { $n ->
    [0] keine Schlaufe
    [one] 1 Schlaufe
   *[other] { $n } Schlaufen
} an der Schnur; es sollen { $right } sein.
sign-colours = { $when }: Die Schlaufen auf { $where } sind von unten nach oben { $wrong }, nicht { $right }.
sign-strands = { $when }: { $n ->
    [one] In einer Schlaufe auf { $where } kommt 1 Strang hoch; { $right ->
        [0] da soll keiner sein
       *[other] es sollen { $right } sein
    }.
   *[other] In einer Schlaufe auf { $where } kommen { $n } Stränge hoch; { $right ->
        [0] da soll keiner sein
        [one] es soll 1 sein
       *[other] es sollen { $right } sein
    }.
}
sign-strands-few = { $when }: Das bewegte Gummi soll durch jede Schlaufe hochkommen ({ $where }).
sign-strands-colour = { $when }: In einer Schlaufe auf { $where } kommt ein Strang anderer Farbe hoch.

## Warnungen: kurz, denn sie werden gesprochen

warn-loop-above = Nimm die genannte Schlaufe, nicht die darüber.
warn-loop-below = Greif nicht zu tief: Die untere Schlaufe bleibt liegen.
warn-too-shallow = Geh innen durch alle Schlaufen, nicht nur durch die oberste.
warn-outside = Zieh die Schlaufe innen durch die oberen hoch, nicht an der Seite.
warn-wrong-peg = Zähl die Stifte. Der daneben ist schnell genommen.
warn-wrong-peg-lift = Schau, welcher Stift als Nächstes kommt.
warn-mirrored-peg = Schau zweimal, auf welche Seite es geht.
warn-wrong-start = Fang am richtigen Stift an. Der daneben ist schnell genommen.
warn-step-skipped = Merk dir, wo du bist. Hier lässt man leicht etwas aus.
warn-step-skipped-place = Zähl die Gummis. Eins ist schnell vergessen.
warn-step-skipped-hook = Merk dir, wo du bist. Hier übergeht man leicht eine.
warn-step-skipped-bind = Vergiss das letzte Gummi nicht.
warn-step-skipped-shut = Mach es zu, bevor du es herunternimmst.
warn-step-doubled = Mach es nur einmal.
warn-steps-swapped = Bleib bei der Reihenfolge.
warn-wrong-order = Arbeite die Schlaufen in der genannten Reihenfolge.
warn-wrong-colour = Schau auf die Farbe, bevor du das Gummi spannst.
warn-cap-forgotten = Vergiss die Kappe nicht.
warn-cap-wound-once = Wickle es so oft wie gesagt: Einmal reicht nicht.
warn-twist-forgotten = Vergiss die halbe Drehung nicht. Ohne sie geht das Stück auseinander.
warn-twisted-by-accident = Sieh nach, ob das Gummi flach liegt und nicht verdreht ist.
warn-loop-dropped = Halt die Schlaufe auf dem Haken, bis sie auf dem anderen Stift liegt.
warn-one-of-several = Zähl die Schlaufen am Haken, bevor du ziehst.
warn-neighbour-snagged = Bleib mit dem Haken nah am Stift, sonst fängt er die Schlaufe daneben.
warn-two-at-once = Zähl die Schlaufen am Haken: Leicht ist eine zu viel darauf.
warn-charm-not-slid = Schieb es auf, bevor du die Schlaufe ablegst.
warn-miscounted = Zähl die Gummis laut.
warn-not-all-caught = Fass jede Schlaufe. Zähl sie.
warn-caught-too-many = Zähl die Schlaufen, durch die der Haken geht.
warn-one-loop-caught = Geh durch jede Schlaufe, nicht nur durch eine.
warn-end-slips-off = Halt die Schlaufen fest, bis alles zu ist.
warn-loom-not-turned = Dreh den Webrahmen, bevor du weitermachst.
warn-loom-turned = Lass den Webrahmen, wie er liegt: Hier wird er nicht gedreht.
warn-wrong-end = Fang beim zuerst genannten Stift an, nicht am anderen Ende.

## Der Weg zurück

back-place = Nimm das Gummi ({ $letter }) wieder ab: { $where }.
back-wind = Nimm das gewickelte Gummi wieder ab: { $where }.
back-hang = Nimm das letzte Gummi wieder vom Haken.
back-turn = Dreh den Webrahmen zurück.
back-hook = Nimm die oberste Schlaufe von { $target }, zieh sie zurück, wie sie kam, und leg sie wieder auf { $source }.
back-slide = Nimm die oberste Schlaufe von { $target }, schieb zurück auf den Haken, was daran hängt, und leg sie wieder auf { $source }.
back-lift = Heb die Schlaufe auf { $where } wieder über die anderen, sodass sie ganz unten liegt.
back-lift-on = Nimm die Schlaufe von { $target } und heb sie auf { $source } wieder über die anderen, sodass sie ganz unten liegt.
back-bind = Zieh das letzte Gummi wieder heraus.
back-put = Nimm die Schlaufen des freien Endes wieder herunter ({ $where }) und behalt sie auf dem Haken.
back-clip = Öffne den Clip und nimm ihn heraus.
back-knot = Mach die Schnur auf und zieh sie heraus.
back-undo-all = Nimm { $n ->
    [one] den letzten Zug
   *[other] die letzten { $n } Züge
} zurück, den neuesten zuerst, bis { $move }.
back-start-again = Fang bei Schritt { $n } neu an: Nimm zuerst alles ab dort zurück.
back-step = Schritt { $n }
back-step-at = Schritt { $n } ({ $move })
back-only = Mach { $steps }, wie es im Bild steht.
back-do = Mach dann { $steps }, wie es im Bild steht.
back-do-all = Dann mach { $n ->
    [one] den Zug
   *[other] die { $n } Züge
} von { $first } bis { $last } noch einmal, wie im Bild.

## Fragen

ask-where = Halt den Webrahmen neben das Bild. Auf welchen Stiften ist die Zahl der Schlaufen oder eine Farbe anders?
ask-inside = Schau in die Schlaufen. Auf welchen Stiften kommen innen andere Stränge hoch als im Bild?
ask-crossed = Auf welchen Stiften führen die Gummis zu anderen Stiften als im Bild?
ask-loops = Wie viele Schlaufen liegen auf { $where }?
ask-top = Welchen Buchstaben hat die oberste Schlaufe auf { $where }?
ask-lowest = Welchen Buchstaben hat die unterste Schlaufe auf { $where }?
ask-colours = Welche Buchstaben haben die Schlaufen auf { $where }, von unten nach oben?
ask-strands = Wie viele Stränge kommen in jeder Schlaufe auf { $where } hoch, von unten nach oben?
ask-strand-colours = Welche Buchstaben haben die Stränge, die in jeder Schlaufe auf { $where } hochkommen, von unten nach oben?
ask-leads = Zu welchen Stiften führen die Gummis auf { $where }, von unten nach oben?
answer-none = keine
answer-no-loop = keine
answer-strands = { $first } in der untersten Schlaufe, dann { $rest }

mistake-heading = Schritt { $n }: was schiefgehen kann
label-right = Richtig
label-wrong = Falsch
label-back = So machst du es rückgängig
look-heading = Halt an und schau nach
look-heading-round = Nach Runde { $n }: Halt an und schau nach
look-sooner = { $when }. { $line }
look-later = Wenn die letzte Runde fertig ist: { $line }
look-why = Prüf jetzt: Hier lässt sich ein Fehler noch leicht beheben.
look-cure = Wenn nicht, nimm Zug um Zug zurück, bis es stimmt, und mach von da weiter.
look-film = Zeig es falsch, dann richtig: { $slip }
picture-wrong = Falsch. { $slip } { $text }
picture-right = Richtig. { $text }

wrong-open = Sieht etwas falsch aus?
wrong-again = Von vorn
wrong-first = Was ist los?
wrong-look = Es sieht anders aus
wrong-stuck = Dieser Schritt geht nicht
wrong-round = Wie weit bist du?
wrong-round-n = Runde { $n }
wrong-found = Wahrscheinlich ist das passiert
wrong-back = Der Weg zurück
wrong-other = Etwas anderes
wrong-lost = Geh auf dieser Seite einen Schritt zurück und halt den Webrahmen neben das Bild dort. Nimm Zug um Zug zurück, bis beide gleich aussehen, und mach von da weiter.
wrong-nothing = Kein Fehler, den wir kennen, sieht hier so aus. Geh auf dieser Seite einen Schritt zurück und versuch es dort noch einmal.

## Wonach die Prüfung sucht

words-side = links, rechts, linke, rechte, linken, rechten
words-step = Schritt, Schritte, Schritten
words-minute = Minute, Minuten, Min
words-hour = Stunde, Stunden
words-never = nie, niemals, nicht, kein, keine, keinen, keinem, fern, nimm es ab
words-unsafe = die ganze Nacht, über Nacht, nachts, im Bett, im Schlaf, beim Schlafen, zum Schlafen, um den Hals, Kleinkind, Kleinkinder, Baby, Babys, in den Mund, mit den Zähnen, zwischen die Zähne
words-child = Kind, Kinder, Kindern, Jahr, Jahre, Jahren, Zweijährige, Einjährige, Alter
words-vague = wie du magst, wie du willst, nach Belieben, egal wie, egal welche, darüber oder darunter, irgendwie, irgendeine, irgendeinen, irgendwo, drüber oder drunter
words-top = oberste Schlaufe, obersten Schlaufe, oberste
words-lowest = unterste Schlaufe, untersten Schlaufe, unterste, untersten Schlaufen
words-colours = rot, rote, roten, rotes, blau, blaue, blauen, blaues, grün, grüne, grünen, gelb, gelbe, gelben, weiß, weiße, weißen, schwarz, schwarze, orange, rosa, lila, braun, braune, grau, graue

## Die Galerie eines Stapels

gallery-title = Was gemacht wurde
gallery-search = Suchen
gallery-counted = { $n } zu sehen
gallery-none = Hier passt nichts zu diesen Wörtern.
gallery-picture = Bild des Stücks in Ruhe
gallery-bands = { $n ->
    [one] 1 Gummi
   *[other] { $n } Gummis
}
gallery-falls = { $bands }; nicht jedes ist nachweislich gehalten, also gibt es keine Anleitung
gallery-files = { $n ->
    [one] 1 Datei
   *[other] { $n } Dateien
}
gallery-left = { $language }, für Linkshänder
gallery-failed = { $n ->
    [one] 1 Sache ließ sich nicht machen
   *[other] { $n } Sachen ließen sich nicht machen
}
gallery-failure = { $what }: { $why }

## Der Atlas der Techniken

atlas-title = Atlas der Techniken
atlas-group-chains = Ketten
atlas-group-strips = Streifen und Leitern
atlas-group-zigzags = Zickzack
atlas-group-lozenges = Rauten
atlas-group-tails = Zöpfe
atlas-group-tubes = Schläuche
atlas-group-mats = Matten
atlas-group-hung = angehängte Gummis
atlas-group-points = Spitzen
atlas-group-forks = Gabeln
atlas-group-rings = geschlossene Ringe
atlas-group-joined = verbundene Ketten
atlas-group-fringes = Fransen
atlas-width = Breite in Ruhe
atlas-height = Höhe in Ruhe
atlas-repeat = Eine Wiederholung
atlas-bands = Gummis je Wiederholung
atlas-stretch = Länge bei einem Zug von 1 N
atlas-stack = Meiste Schlaufen auf einem Stift
atlas-strain = Stärkste Dehnung am Webrahmen
atlas-snap = Wenn ein Gummi reißt
atlas-snaps = { $n ->
    [0] fällt kein anderes
    [one] fällt schlimmstenfalls 1 weiteres
   *[other] fallen schlimmstenfalls { $n } weitere
}
atlas-minutes = Die Probe, beim ersten Mal
atlas-minutes-about = etwa { $n } min
atlas-slips = Fehler, durch die Gummis fallen
atlas-bracelet = Etwa 15 cm davon
atlas-bracelet-about = { $bands } Gummis, { $n } min
atlas-wrists = Passt um Handgelenke
atlas-from-to = { $low } bis { $high }
atlas-difficulty = Schwierigkeit
atlas-where = Wo Fehler passieren
atlas-slip = { $n ->
    [one] Schritt { $steps }
   *[other] Schritte { $steps }
}: { $slip } { $end }
atlas-times = { $n }-fach

## Die Zählvorlage einer Matte

chart-about = Eine Matte, { $across } Gummis breit und { $down } Reihen hoch: im Ganzen { $bands } Gummis, in Ruhe etwa { $width } mal { $height }.
chart-colours = Leg diese Gummis bereit
chart-working = So wird eine Reihe gearbeitet
chart-loom = Du brauchst { $pegs } Stifte in einer Linie: Setz Webrahmen aneinander. Stift A1 liegt dir am nächsten.
chart-lay = Leg eine Reihe: ein Gummi über A1 und A2, das nächste über A2 und A3, und so weiter bis { $last }, in den Farben der Reihe.
chart-lift = Von der zweiten Reihe an geh mit dem Haken die Stifte entlang: Heb die zwei untersten Schlaufen über die zwei neuen und lass sie fallen; am ersten und am letzten Stift ist es eine über eine.
chart-front = Von vorn gesehen ist Reihe 1 der obere Rand des Bildes, und das Gummi zwischen A1 und A2 liegt links.
chart-end = Zieh nach der letzten Reihe eine Schnur durch alle Schlaufen, nimm die Matte ab und verknote die Schnur, ohne den Rand zusammenzuziehen.
chart-heading = Die Zählvorlage
chart-rows = Die Reihen, von Stift A1 an
chart-row = Reihe { $first }: { $runs }
chart-row-span = Reihen { $first } bis { $last }, alle gleich: { $runs }
