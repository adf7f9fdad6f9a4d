# Every sentence of a lesson, in English. One message a sentence; the reader may be twelve years old.
# A new language is a file of the same messages beside this one. Facts: $n and other counts are numbers.

## Joining

list-comma = { $head }, { $next }
list-and = { $head } and { $last }
span = { $first } to { $last }
span-dash = { $first }–{ $last }

## Names of things

band-name = { $colour } band ({ $letter })
band-plain = band ({ $letter })
band-short = { $colour }, { $letter }
bands-of = { $n ->
    [one] 1 { $colour } band ({ $letter })
   *[other] { $n } { $colour } bands ({ $letter })
}
bands-plain = { $n ->
    [one] 1 band ({ $letter })
   *[other] { $n } bands ({ $letter })
}
loop-lowest = the lowest loop ({ $band })
loop-top = the top loop ({ $band })
loop-only = the loop ({ $band })
loop-counted = loop { $n } from the bottom ({ $band })
loops-lowest = the { $n } lowest loops
loops-top = the { $n } top loops
loops-counted = loops { $first } to { $last } from the bottom
peg-one = peg { $peg }
peg-many = pegs { $pegs }
end-name = the free end “{ $end }”
end-plain = the free end
end-start = the first band (the one hanging below the loom)

way-far = away from you
way-near = towards you
way-left = to your left
way-right = to your right
way-far-left = away from you and to your left
way-far-right = away from you and to your right
way-near-left = towards you and to your left
way-near-right = towards you and to your right
way-clause = , { $way }
side-far = away from you
side-near = towards you
side-left = to your left
side-right = to your right

length-mm = { $n } mm
length-in = { $n } in

times = { $n ->
    [one] once
    [2] twice
   *[other] { $n } times
}

## Headings and furniture

byline = A piece by { $designer }
byline-none = A piece for the peg loom
edition-right = Right-handed edition: hold the hook in your right hand.
edition-left = Left-handed edition: hold the hook in your left hand. The whole piece is mirrored, not only its pictures.
heading-level = Level
heading-supplies = You need
heading-supplies-many = You need, for { $n ->
    [one] 1 piece
   *[other] { $n } pieces
}
heading-tools = Tools
heading-key = Key to the bands
heading-hold = Does it hold?
heading-cautions = Keep safe
heading-check = Stop and look
heading-chart = What lies on every peg now, the lowest loop first (×2: two alike)
heading-notes = From the designer
heading-glossary = Words used here
glossary-line = { $term }: { $means }
heading-finished = The finished piece
finished-size = Off the loom and at rest it is { $length } long, { $width } wide and { $height } thick.
finished-size-high = Off the loom and at rest it is { $length } long, { $width } wide and { $height } high.
finished-wrists = Closed, it can be worn on wrists from { $low } to { $high }.
finished-no-wrist = As it is, it suits no wrist.
finished-unasked = Its picture and its size are worked out for the whole lesson only.
finished-nothing = Its picture and its size are left out: there is no band yet.
finished-restless = Its picture and its size are left out: the calculation did not settle.
shown-true = Actual size.
shown-twice = Twice actual size.
shown-larger = Larger than actual size.
shown-smaller = Smaller than actual size.
picture-finished = { $title }, finished, seen from the front. Bands: { $colours }.
picture-front = { $title } at rest, { $length } mm long and { $width } mm wide, seen from the front; { $key }
picture-back = { $title } at rest, { $length } mm long and { $width } mm wide, turned over and seen from the back; { $key }
picture-side = { $title } at rest, { $length } mm long and { $width } mm wide, seen from the side with the front on top; { $key }
picture-worn = { $title } on a wrist of { $girth } mm; { $key }
heading-extension = Make it fit
extension-now = { $bands ->
    [0] As shown here, it has no extension.
    [one] As shown here, it has an extension of 1 band.
   *[other] As shown here, it has an extension of { $bands } bands.
}
extension-line = For a wrist of { $wrist }: { $bands ->
    [0] no extension.
    [one] an extension of 1 band.
   *[other] an extension of { $bands } bands.
}
repeats-now = As shown here, the repeat is worked { $times } times in all. { $bands ->
    [one] Each time takes 1 band.
   *[other] Each time takes { $bands } bands.
}
repeats-line = For a wrist of { $wrist }: { $times ->
    [one] 1 time
   *[other] { $times } times
} in all.
sizes-line = For a wrist of { $wrist }: work the repeat { $times ->
    [one] 1 time
   *[other] { $times } times
} in all, with { $bands ->
    [0] no extension.
    [one] an extension of 1 band.
   *[other] an extension of { $bands } bands.
}
sizes-count = { $n } of { $letter }
sizes-bands = It takes { $list }, { $n ->
    [one] 1 band
   *[other] { $n } bands
} in all.
sizes-pegs = With another number of repeats the piece ends on another peg. Wherever a step names peg { $peg }, take the last peg from the table, and count the pegs beside it from there.
sizes-best = “Wrist” is where it fits best, “Possible on” where it can be worn.
sizes-wrists = The table is made for wrists of { $wrists }, from a child of about seven to a large adult.
sizes-no-shorter = For smaller wrists than it lists, the piece cannot be made short enough.
sizes-no-longer = For larger wrists than it lists, the piece cannot be made long enough.
sizes-step = Step { $step }: { $times ->
    [one] once more
   *[other] { $times } more times
}.
sizes-last-peg = Peg { $peg } takes the place of peg { $own }.
sizes-extend = The extension comes after step { $step }: catch a new band with the hook and pull it through the two ends of the last band, then keep its own two ends on the hook. Do so once for every band of the extension, then close the piece.
column-possible = Possible on
column-last-peg = Last peg
column-times-step = Step { $step }, more times
heading-sizes = Bands for each wrist
column-wrist = Wrist
column-times = Repeats
column-extension = Extension
label-page = Page { $page } of { $pages }
label-ruler = Check the print: this bar is 50 mm long, the one below it 2 in.
label-ruler-metric = 50 mm
label-ruler-inch = 2 in
label-note = Note
label-warning = Take care
label-hook = Hook
label-closeup = Peg from the side
label-held-band = Laying a band
label-held-hook = Holding the hook
label-closure-clip = The clip and its loops
label-closure-cord = The cord and its loops
label-order = In this order
label-after = How it looks after that
label-tick = Tick each one off

## Level

level-basic = Basic
level-easy = Easy
level-intermediate = Intermediate
level-complex = Complex
age-from = From about { $n } years, with an adult near.
time-by-hand = A beginner works for about { $hours ->
    [0] { $minutes } minutes
    [one] { $minutes ->
        [0] an hour
       *[other] an hour and { $minutes } minutes
    }
   *[other] { $minutes ->
        [0] { $hours } hours
       *[other] { $hours } hours and { $minutes } minutes
    }
}.
band-size = Bands: { $bore } across inside, lying flat on the table, { $thick } thick, { $material }.
band-size-named = Bands “{ $kind }”: { $bore } across inside, lying flat on the table, { $thick } thick, { $material }.
material-silicone = silicone
material-rubber = natural rubber
material-tpe = plastic (TPE)
letters-are = The letter after a colour is its short name: it stands in the pictures and beside every count.
safe-small = Bands and clips can choke: keep them away from children under 3.
safe-tight = Never put a band tightly round a finger, a neck or a baby’s wrist.
safe-eyes = Point stretched bands away from eyes.
safe-rules = Local rules come first.
safe-more = All the cautions are on the last page.
tool-joined-beside = Join the { $n } looms side by side, all pegs level, with { $gap } between the rows that meet.
tool-joined-beyond = Join the { $n } looms end to end, with { $gap } between the pegs that meet.
tool-hook-size = thin enough for the open side of the pegs ({ $low } to { $high } thick), with a blunt tip
tool-cord-length = about { $length } long and no thicker than a band, with a blunt needle to thread it
reason-colours = { $n ->
    [one] One colour of band.
   *[other] { $n } colours of band.
}
reason-repeat = Short runs of moves, done over and over.
reason-stack = { $n ->
    [one] Never more than one loop on a peg.
   *[other] Up to { $n } loops on one peg.
}
reason-wide = Some bands go round three pegs or more.
reason-twist = Some bands are given a half-twist.
reason-cap = Cap bands are wound round single pegs.
reason-hook = Loops are pulled through loops with the hook.
reason-lift = Loops are lifted over other loops.
reason-hang = Bands are hung from the hook and slid on.
reason-count = { $n ->
    [one] One band in all.
   *[other] { $n } bands in all.
}

## Supplies

column-band = Band
column-for = For
column-count = How many
column-weight = Weight
total = All bands
purpose-placed = { $n } to place
purpose-caps = { $n ->
    [one] 1 cap
   *[other] { $n } caps
}
purpose-hung = { $n } to hang
purpose-finishing = { $n } to finish
purpose-extension = { $n } for the extension
purpose-spares = { $n ->
    [one] 1 spare
   *[other] { $n } spares
}
weight = { $grams } g
weight-about = about { $grams } g
thing-clips = { $n ->
    [one] 1 clip
   *[other] { $n } clips
}
thing-clips-spare = { $n ->
    [one] 1 clip
   *[other] { $n } clips
} and { $spare ->
    [one] 1 spare
   *[other] { $spare } spare
}
tool-straight = { $n ->
    [one] a loom
   *[other] { $n } looms
} with { $rows ->
    [one] one row
   *[other] { $rows } rows
} of { $pegs ->
    [one] 1 peg
   *[other] { $pegs } pegs, { $pitch } from peg to peg
}
tool-round = { $n ->
    [one] a round loom
   *[other] { $n } round looms
} with { $rows ->
    [one] one ring
   *[other] { $rows } rings
} of { $pegs ->
    [one] 1 peg
   *[other] { $pegs } pegs, { $pitch } from peg to peg
}
tool-pegs = { $n ->
    [one] a board
   *[other] { $n } boards
} with { $pegs ->
    [one] 1 peg
   *[other] { $pegs } pegs
}
tool-cord = { $n ->
    [one] a piece of cord to tie off with
   *[other] { $n } pieces of cord to tie off with
}
tool-hooks = { $n ->
    [one] a hook
   *[other] { $n } hooks
}
tool-scissors = { $n ->
    [one] scissors, to trim the knot
   *[other] { $n } pairs of scissors, to trim the knots
}

## Phases

phase-prepare = Get ready
phase-place = Place the bands
phase-turn = Turn the loom
phase-work = Work the loops
phase-finish = Finish
phase-extend = Make it longer
phase-close = Close it
phase-wear = Wear it safely
phase-use = Use it safely

intro-place = Each new band goes on top of the bands already there. Push it down a little before you take the next one. Hold it on its first peg with a finger of one hand, and stretch it with the other.
intro-work = The small picture shows the peg from the side: which loop to take, and which loops lie above it. Hold the hook like a pencil; a finger of the other hand keeps the bands on the peg down.
intro-work-film = Look at the peg from the side: it shows which loop to take, and which loops lie above it. Hold the hook like a pencil; a finger of the other hand keeps the bands on the peg down.
intro-finish = Keep hold of the loops until they are fastened.

## Steps

step-prepare = Lay the loom in front of you with peg { $near } nearest you.
step-prepare-bands = Lay out { $bands }, and count them.
detail-rows = The rows are lettered { $letters } from your left. Pegs are counted away from you.
detail-row-one = There is one row, { $letter }. Its pegs are counted away from you.
detail-round = Pegs are counted round the ring, starting nearest you and going to your right.
legend-channel = In the pictures a dot marks the open side of each peg.
detail-channel = The open side of every peg faces { $side }.
detail-channel-out = The open side of every peg faces outwards.
detail-channel-in = The open side of every peg faces inwards.
detail-channel-any = Every peg has one open side. Look for it: the hook goes in there.

step-place-two = Stretch one { $band } from peg { $first } to peg { $last }{ $way }.
step-place-many = Stretch one { $band } round pegs { $pegs }.
detail-twist = Between { $first } and { $last } give the band { $n ->
    [one] a half-twist, so that it makes an 8
   *[other] { $n } half-twists
}.
detail-twist-back = Between { $first } and { $last } give the band { $n ->
    [one] a half-twist the other way round
   *[other] { $n } half-twists the other way round
}: seen from { $first }, the strand on the right crosses over the other.
detail-turns = Wind it round { $peg } { $times }.
step-wind = Wind one { $band } { $times } round peg { $peg }, on top of everything there. This is the cap: it keeps the loops below it on the peg.
step-turn = Turn the whole loom round, end for end, so that peg { $near } is nearest you.
detail-turned = What was on your left is now on your right. The names of the pegs stay the same.
step-hook = Push the hook down the open side of peg { $source }, inside { $above ->
    [all] all the loops
    [any] all the loops, if any,
    [one] the loop
   *[other] the { $above } loops
} above. Catch { $loop } and pull { $taken ->
    [one] it
   *[other] them
} up through { $above ->
    [one] that loop
   *[other] those loops
}. Put { $taken ->
    [one] it
   *[other] them
} on peg { $target }{ $way }.
step-hook-top = Catch { $loop } on peg { $source } with the hook. Put { $taken ->
    [one] it
   *[other] them
} on peg { $target }{ $way }.
detail-skipped = Go through the top { $through ->
    [one] loop
   *[other] { $through } loops
} only. Leave the { $n ->
    [one] loop
   *[other] { $n } loops
} just above the one you catch where { $n ->
    [one] it is
   *[other] they are
}.
detail-skipped-all = Do not go through the { $n ->
    [one] loop
   *[other] { $n } loops
} above it: bring it out at the side.
step-slide = Push the hook down the open side of peg { $source } and catch { $loop }. Slide the { $hung } from the hook on to { $taken ->
    [one] the loop you caught. Then put the loop
   *[other] the loops you caught. Then put the loops
} on peg { $target }{ $way }.
step-slide-through = Push the hook down the open side of peg { $source }, inside { $above ->
    [all] all the loops
    [any] all the loops, if any,
    [one] the loop
   *[other] the { $above } loops
} above, and catch { $loop }. Slide the { $hung } from the hook on to { $taken ->
    [one] the loop you caught, pull the loop
   *[other] the loops you caught, pull the loops
} up through { $above ->
    [all] all the loops
    [any] all the loops, if any,
    [one] the loop
   *[other] the { $above } loops
} above, and put { $taken ->
    [one] it
   *[other] them
} on peg { $target }{ $way }.
step-lift = On peg { $peg }, catch { $loop } with the hook. Lift { $taken ->
    [one] it
   *[other] them
} up over { $above ->
    [all] all the loops
    [any] all the loops, if any,
    [one] the loop
   *[other] the { $above } loops
} above, and let { $taken ->
    [one] it
   *[other] them
} drop off the peg.
step-lift-on = On peg { $peg }, catch { $loop } with the hook. Lift { $taken ->
    [one] it
   *[other] them
} up over { $above ->
    [all] all the loops
    [any] all the loops, if any,
    [one] the loop
   *[other] the { $above } loops
} above and over the peg, and put { $taken ->
    [one] it
   *[other] them
} on peg { $target }{ $way }.
step-transfer = Take { $loop } off peg { $source } and put { $taken ->
    [one] it
   *[other] them
} on peg { $target }{ $way }. Do not turn { $taken ->
    [one] it
   *[other] them
} over.
step-hang = Wind one { $band } { $times } round the shaft of the hook. Leave it hanging there.
step-bind = Push the hook down through { $n ->
    [one] the loop
    [2] both loops
   *[other] all { $n } loops
} on peg { $peg }. Catch { $count ->
    [one] one { $band } and pull it up until half of it is through. Keep both its ends
   *[other] { $bands } side by side and pull them up until half of each is through. Keep all their ends
} on the hook, and slip the loops off the peg.
step-bind-some = Push the hook down through { $n ->
    [one] only the top loop
   *[other] only the top { $n } loops
} on peg { $peg }. Catch { $count ->
    [one] one { $band } and pull it up until half of it is through. Keep both its ends
   *[other] { $bands } side by side and pull them up until half of each is through. Keep all their ends
} on the hook, and slip { $n ->
    [one] that loop
   *[other] those loops
} off the peg. The others stay.
step-put = Slide { $n ->
    [one] the loop
    [2] both loops
   *[other] all { $n } loops
} of the free end off the tip of the hook and on to peg { $peg }.
step-put-apart = Take the loops of the free end off the hook and put { $n ->
    [one] one
   *[other] { $n }
} on each of the pegs { $pegs }, in this order, flat as they lie.
step-extend = Add a chain of { $bands }: pull each new band through both ends of the one before.
detail-extend-together = Take { $n } bands at a time, side by side as if they were one, and pull them through all the ends before them.
step-knot = Run a cord through { $n ->
    [one] the loop
    [2] both loops
   *[other] all { $n } loops
} on { $where } and tie it off. Pull the knot tight.
step-clip = Hook a clip through { $n ->
    [one] the loop
    [2] both loops
   *[other] all { $n } loops
} on { $where }.
step-clip-join = Bring together the loops of { $where }, and hook one clip through all { $n } of them.
step-clip-join-off = Bring together the loops of { $ends } and those that lay on { $pegs }. Hook one clip through all { $n } of them.
detail-catch = Take the top { $n ->
    [one] loop
   *[other] { $n } loops
} only.
detail-off = Then slip the loops off.
step-release = Lift the piece off the loom, from one end to the other, loop by loop. Do not tear it off.
detail-rough = It looks rough at first. Pull it gently along its length, a few times, and it settles.
detail-keep = Keep the { $n ->
    [one] loop
   *[other] { $n } loops
} of { $pegs } { $n ->
    [one] on a finger
   *[other] { $many ->
        [one] together on a finger
       *[other] all together on a finger
    }
}. You need { $n ->
    [one] it
   *[other] them
} to close the piece.

step-again = Do { $steps } again, { $times ->
    [one] once more
   *[other] { $times } more times
}. { $shift } The last one ends on { $end }.
step-again-same = Do { $steps } again in the same place, { $times ->
    [one] once more
   *[other] { $times } more times
}.
step-again-counted = Do { $steps } again, { $times ->
    [one] once more
   *[other] { $times } more times
}, on other pegs each time.
steps-one = step { $first }
steps-two = steps { $first } and { $last }
steps-many = steps { $first } to { $last }
shift-pegs = { $n ->
    [one] Move one peg further { $way } each time.
   *[other] Move { $n } pegs further { $way } each time.
}
shift-rows = { $n ->
    [one] Move one row further { $way } each time.
   *[other] Move { $n } rows further { $way } each time.
}
shift-round = { $n ->
    [one] Move one peg further round each time, { $turn }.
   *[other] Move { $n } pegs further round each time, { $turn }.
}
turn-anticlockwise = anticlockwise
turn-clockwise = clockwise
shift-both = Move along and across the loom each time.
detail-list-short = The list names the rounds up to { $last } only. Go on in the same way.
detail-left-out = Parts { $first } to { $last } look like the ones before them, and are left out here.
detail-colours = The colours change from round to round.
detail-above = { $n ->
    [0] In { $steps } there is no loop above from round 2 on.
    [one] In { $steps } there is 1 loop above from round 2 on.
   *[other] In { $steps } there are { $n } loops above from round 2 on.
}
detail-above-changes = In step { $step } the number of loops above changes from round to round. Always go inside all of them.
detail-over-changes = In step { $step } the number of loops above changes from round to round. Always go over all of them.
tick-round = Round { $n }
tick-span = { $first } to { $last }
tick-span-words = { $first }, and on until { $last }
tick-way = { $first } to { $last }
tick-colour = { $colour } ({ $letter })
tick-all = all bands { $colour }
tick-steps = { $colour } in { $steps }
tick-order = colours in order { $letters }

## Checks

check-bands = { $n ->
    [one] 1 band has been used so far.
   *[other] { $n } bands have been used so far.
}
check-loops = { $pegs } { $many ->
    [one] holds
   *[other] each hold
} { $n ->
    [0] no loop
    [one] 1 loop
   *[other] { $n } loops
}.
check-clip = { $n ->
    [one] The clip goes through 1 loop.
   *[other] The clip goes through { $n } loops. Count them.
}
check-cord = { $n ->
    [one] The cord goes through 1 loop.
   *[other] The cord goes through { $n } loops. Count them.
}
check-bare = No loop is left on the loom.
check-left = Every other peg is empty.
check-cure-place = If a peg holds too few loops, a band missed it. Take the bands off back to that place and go on from there.
check-cure-work = If a peg holds more or fewer loops than this, one was left behind or taken from the wrong place. Go back along the steps and find it before you fasten anything.

## Wearing

wear-fit = When it is on the wrist, one finger must slip under it easily. If not, the piece is too tight: make it longer.
use-safe = This piece is not made for a wrist: never pull it over a hand, a finger or a neck. Keep it away from heat, from small children and from pets. Throw it away when its bands get sticky or crack.

## Hold

hold-yes = { $n ->
    [one] Yes. The one band is proved to be held once the piece is finished as shown.
   *[other] Yes. All { $n } bands are proved to be held once the piece is finished as shown.
}
hold-no = { $n ->
    [one] No. One band is not held and falls off:
   *[other] No. { $n } bands are not held and fall off:
} { $which }.
hold-unproved = { $n ->
    [one] Not proved for one band:
   *[other] Not proved for { $n } bands:
} { $which }.
hold-left-out = { $n ->
    [one] This is not the whole pattern: a mistake in it meant that a step had to be left out. Correct it first.
   *[other] This is not the whole pattern: { $n } mistakes in it meant that steps had to be left out. Correct them first.
}
hold-not-shown = It is not proved that every band is held.
hold-band = band { $number } ({ $band }, step { $step })
hold-more = { $n } more
hold-snap-none = If any one band snaps, no other band falls.
hold-snap-worst = { $n ->
    [one] If a band snaps, it can take 1 other with it.
   *[other] If a band snaps, it can take up to { $n } others with it.
}
hold-snap-harmless = { $n ->
    [one] 1 band can snap without freeing another.
   *[other] { $n } bands can snap without freeing another.
}

## Cautions. Usual ones; local rules come first.

caution-small = Small bands and clips can choke. Keep them away from children under 3 and from anyone who still puts things in the mouth.
caution-tight = Never put a band tightly round a finger, toe, neck or a baby’s wrist. If skin turns pale, blue, puffy or numb, take the band off at once: cut it. Get help if the skin does not recover within minutes.
caution-sleep = Take bracelets off to sleep. One finger must slip under easily. Red grooves mean that it is too small.
caution-eyes = Point stretched bands down and away from faces. Wear glasses when you pull hard. A band that snaps or flicks can hurt an eye.
caution-pets = Pick up dropped bands. Pets swallow them.
caution-latex = Some bands are natural rubber. If anyone is allergic to latex, use bands declared free of latex, and do not go by look or feel.
caution-old = Throw away bands that are sticky, cracked or faded. They snap.
caution-rules = Buy bands declared to meet the toy rules where you live; this lesson cannot test them. The rules where you live, and those of your school or library, come first.

## Colophon

colophon-version = Lesson made with Pegwright { $version } from a pattern of format { $format }.
colophon-print = Print mark { $mark }: two sheets with the same mark hold the same lesson.
colophon-errata = Found a mistake? Tell { $designer }, and give the print mark.
colophon-errata-none = Found a mistake? Tell whoever gave you this sheet, and give the print mark.
colophon-licence = Licence: { $licence }

## Pictures in words

picture-loom = The empty loom
picture-loom-text = The empty loom as it lies before you: { $pegs }.
picture-part = Part { $n } of { $count }
picture-step = Step { $n }
picture-view = Pegs in the picture: { $pegs }.
picture-place = The new { $band } is drawn bold. It goes round { $pegs }.
picture-wind = The cap, a { $band }, is wound round peg { $peg }.
picture-hook = An arrow leads from peg { $source } to peg { $target }. The loop that moved is drawn bold where it now lies.
picture-lift = A bent arrow leads up and off peg { $peg }.
picture-lift-on = A bowed arrow leads up off peg { $source } and on to peg { $target }.
picture-turn = Two bent arrows show the loom turned half way round.
picture-fasten = The fastener is drawn on { $where }.
picture-hang = The { $band } hangs on the hook.
picture-put = The loops of the free end are drawn bold on { $where }.
picture-extend = The new chain is drawn bold at the free end.
picture-again-place = The bands of all rounds, with their order in numbers.
picture-again-still = The loom after the last round.
picture-again-work = Numbered arrows show the order of all rounds.
picture-closeup = Peg { $peg } from the side, bottom to top: { $loops }.
picture-closeup-hook = The shaft of the hook from the side: { $loops }.
picture-taken = Take loop { $loops } from the bottom.
picture-new = Loop { $loops } from the bottom is new.
picture-chart = Every peg with its loops, the lowest first: { $pegs }.
chart-peg = { $peg }: { $loops }
chart-run = { $n } of { $letter }
picture-held-band = Seen from above: a finger of one hand keeps the band on its first peg; thumb and finger of the other hand stretch it over the next.
picture-held-hook = Seen from the side: one hand holds the hook like a pencil, its tip at the open side of the peg; a finger of the other hand keeps the loops down.
picture-closure-clip = The clip from near by. It goes through { $n ->
    [one] 1 loop
   *[other] { $n } loops
}: { $loops }.
picture-closure-cord = The cord from near by. It goes through { $n ->
    [one] 1 loop
   *[other] { $n } loops
}: { $loops }.
picture-bind = The finishing band is drawn bold, through the loops of peg { $peg }.

## Film

shot-piece = The finished piece
view-piece = The whole finished piece, at rest, seen from above.
view-cautions = The teacher’s face, or the cautions to read.
view-bench = The loom and the bands laid ready, seen from above.
view-heaps = The heaps of bands, each beside its letter.
view-loom = The whole loom from above, empty.
view-turn = The whole loom from above, with room at both ends to turn it.
view-standing = The loom from above, as the work stands.
view-pegs = From above: { $where }.
view-side = Close up, from the side: the loops on peg { $peg } and the tip of the hook.
view-shaft = The shaft of the hook.
view-release = The whole loom from above, and both hands.
view-wear = The piece on a wrist, with one finger under it.
view-check-pegs = From above, in focus, no hands: { $pegs }.
view-check = The whole loom from above, every peg in focus, no hands.

## Glossary. A term, what it means, and other words for it, which a lesson should not mix with it.
## The other words are parted by commas; a dash stands for none.

term-band = band
means-band = a small elastic ring.
others-band = elastic, elastics
term-loom = loom
means-loom = a board with pegs in rows or in a ring.
others-loom = frame, rack
term-peg = peg
means-peg = an upright post on the loom, with one open side.
others-peg = pin, pins, post, posts, nail, nails, prong, prongs
term-channel = open side
means-channel = the groove along one side of a peg, where the hook goes in.
others-channel = groove, slot
term-hook = hook
means-hook = the tool that catches a loop and pulls it.
others-hook = needle, crook
term-loop = loop
means-loop = the part of a band that lies round one peg.
others-loop = bight, bights
term-cap = cap
means-cap = a band wound round one peg, on top of everything there.
others-cap = lid, plug
term-half-twist = half-twist
means-half-twist = a band crossed between two pegs, so that it makes an 8.
others-half-twist = half-turn, half-turns
term-free-end = free end
means-free-end = the two ends of the last band, held on hook or finger.
others-free-end = loose end, loose ends
term-clip = clip
means-clip = a small hook of plastic that closes the piece.
others-clip = clasp, clasps, fastener, fasteners
term-chain = chain
means-chain = bands in a row, each pulled through the one before.
others-chain = –
term-extension = extension
means-extension = a plain chain that makes the piece longer: each new band is pulled through both ends of the one before.
others-extension = –

## Filming plan and script

heading-filming = Filming plan: { $title }
filming-length = The film is about { $minutes } long, spoken at { $wpm } words a minute. The camera runs for about { $camera }.
heading-shots = Shots
column-shot = Shot
column-at = At
column-long = Camera runs
column-do = What is done
column-view = What must be in view
column-cut = Cut
cut-fast = { $speed } times as fast
cut-pause = Show “pause here”
heading-chapters = Chapters
column-chapter = Chapter
heading-filming-tips = Before you film
tip-camera = Fix the camera above the loom, with the near end of the loom at the near edge of the picture. Do not move it until the loom is turned.
tip-hands = Keep the hands out of the way of the peg that is worked. Hold still for two seconds after each step.
tip-light = Light from both sides, so that no hand throws a shadow on the pegs.
tip-close = Film the small picture of the peg close up, from the side, whenever loops lie on top of each other.
tip-faces = Film no child’s face or name without permission. Local rules come first.
heading-script = Script: { $title }
script-about = { $words } words, { $wpm } a minute, { $minutes } in all.
column-said = What is said
column-step = Step

minutes = { $minutes ->
    [0] { $seconds } s
   *[other] { $minutes } min { $seconds } s
}

## Kit sheet

heading-kit = Kit sheet: { $title }
kit-about = { $n ->
    [one] For 1 learner.
   *[other] For { $n } learners, each with a loom, a hook and a bag of bands.
}
heading-bag = One bag for each learner
heading-class = For the whole class
column-spares = Spares
column-bag = In a bag
column-all = In all
class-bags = { $n ->
    [one] 1 bag
   *[other] { $n } bags
}
heading-tick = Tick off
heading-buy = To buy
column-have = At hand
column-need = Needed
column-packs = Packs
column-cost = Cost
packs-of = { $n } × { $size }
packs-none = nothing
packs-unknown = no pack known
cost-open = open
cost-total = Total
cost-part = Total of what is known
heading-timetable = Timetable
timetable-about = Times are worked out from single movements and from how quickly learners improve. They are for a class of beginners; time your own and change them.
times-heard = { $n ->
    [one] One step takes as long as in the teacher's recording.
   *[other] { $n } steps take as long as in the teacher's recording.
}
column-part = Part
column-show = Show
column-make = Make
column-from = From
timetable-sum = In all
timetable-slow = The slowest may need half as much again: about { $n } min.
kit-safe = Count bands and clips out and in again. Sweep the floor at the end.
thing-hooks = Hooks
thing-scissors = Scissors
thing-clips-word = Clips
thing-loom = Looms, { $rows } × { $pegs }

## Buttons of the page and of the prompter

page-next = Next
page-back = Back
page-first = Start
page-goto = Go to
page-left = Left-handed
page-right = Right-handed
page-large = Large text
page-read = Read aloud
page-stop = Stop reading
page-progress = { $n } of { $count }
page-keys = Arrow keys, a swipe or the buttons move on and back. This page works without a network and sends nothing; it keeps your place on this device only.
page-what = What the picture shows
page-tools = Reading tools
page-moving = Moving through the steps
prompter-start = Start
prompter-stop = Stop
prompter-again = From the top
prompter-slower = Slower
prompter-faster = Faster
prompter-smaller = Smaller
prompter-larger = Larger
prompter-mirror = Mirror
prompter-pace = { $wpm } words a minute
prompter-pause = Pause
prompter-keys = Space starts and stops, up and down change the pace, plus and minus the size.

## Licence

licence-as = Licence of this piece and its lesson: { $licence }
licence-none = No licence is named: all rights stay with the designer. Ask before you copy or change it.
licence-fonts = The pages contain the typeface Atkinson Hyperlegible, under the licence that follows.

## What goes wrong: the slips

slip-loop-above = You take the loop above the one meant.
slip-loop-below = You reach too deep and take the loop below the one meant.
slip-too-shallow = You go down inside { $n ->
    [one] only the top loop
   *[other] only the top { $n } loops
}, not inside all the loops above.
slip-outside = You pull the loop up at the side, not inside the loops above it.
slip-wrong-peg = You put it on { $wrong }, not on { $right }.
slip-wrong-peg-lift = You do it at { $wrong }, not at { $right }.
slip-mirrored-peg = You put it on the other side: on { $wrong }, not on { $right }.
slip-wrong-start = You take the loop from { $wrong }, not from { $right }.
slip-step-skipped = You leave this move out.
slip-step-skipped-place = You leave one band out.
slip-step-skipped-hook = You pass one loop over, and it stays where it is.
slip-step-skipped-bind = You leave the last band out.
slip-step-skipped-shut = You take it off the loom before it is closed.
slip-step-doubled = You make this move twice.
slip-steps-swapped = You make the next move first.
slip-wrong-order = You work the loops on { $where } the wrong way round, the lowest first.
slip-wrong-colour = You take a band of another colour ({ $letter }).
slip-cap-forgotten = You leave the cap out.
slip-cap-wound-once = You wind the band round only once.
slip-twist-forgotten = You put the band on flat, without its half-twist.
slip-twisted-by-accident = You cross the band by accident, so that it makes an 8.
slip-loop-dropped = You drop the lifted loop on its way to the other peg.
slip-one-of-several = You take one loop too few.
slip-neighbour-snagged = You catch a loop of the peg beside it as well, and take it along.
slip-two-at-once = You take one loop too many.
slip-charm-not-slid = You do not slide on what hangs on the hook.
slip-miscounted-few = You add one band too few.
slip-miscounted-many = You add one band too many.
slip-not-all-caught-clip = You miss one loop with the clip.
slip-not-all-caught-knot = You miss one loop with the cord.
slip-not-all-caught-bind = You do not pull the last band through the top loop.
slip-not-all-caught-some = You pull the last band through one loop too few.
slip-caught-too-many = You pull the last band through one loop too many.
slip-one-loop-caught-clip = You put the clip through one loop only.
slip-one-loop-caught-knot = You pull the cord through one loop only.
slip-one-loop-caught-bind = You pull the last band through one loop only.
slip-end-slips-off = You let the loops of { $where } slip off before they are caught.
slip-loom-not-turned = You do not turn the loom, and do all that follows at the wrong end.
slip-loom-turned = You turn the loom first, and do all that follows at the wrong end.
slip-wrong-end = You work from the wrong end, the last peg first.

## What comes of it

end-all = In the end the piece comes apart.
end-falls = { $n ->
    [one] In the end one band falls off.
   *[other] In the end { $n } bands fall off.
}
end-unproved = { $n ->
    [one] One band may come off: nothing is sure to hold it.
   *[other] { $n } bands may come off: nothing is sure to hold them.
}
end-unproved-all = The piece may come apart: nothing is sure to hold it.
end-weak = It holds, but if the wrong band snaps, all of it comes apart.
end-looks = It holds, but it looks different: { $bands }.
end-looks-many = It holds, but it looks different: { $n } bands lie in another way.
end-harmless = It makes no difference.
looks-band = band { $number } ({ $letter })
looks-band-more = one band too many

## How it shows

sign-none = Nothing shows on the loom. It shows when the piece comes off.
sign-loose = It looks right, but after step { $step } you can tell: tug band { $number } ({ $letter }), and it comes off.
sign-refused = You notice at step { $step }: it cannot be done.
sign-glance-now = You see it at once
sign-glance-step = You see it at step { $step }
sign-close-now = It looks right from above, so look closely now
sign-close-step = It looks right from above, so look closely at step { $step }
sign-loops = { $when }: { $n ->
    [0] no loop
    [one] 1 loop
   *[other] { $n } loops
} on { $where }; there should be { $right ->
    [0] none
   *[other] { $right }
}.
sign-clip = { $when }: the clip holds { $n ->
    [0] no loop
    [one] 1 loop
   *[other] { $n } loops
}; there should be { $right }.
sign-cord = { $when }: the cord holds { $n ->
    [0] no loop
    [one] 1 loop
   *[other] { $n } loops
}; there should be { $right }.
sign-colours = { $when }: the loops on { $where } are { $wrong } from the bottom up, not { $right }.
sign-strands = { $when }: { $n ->
    [one] 1 strand comes up inside a loop on { $where }; there should be { $right ->
        [0] none
       *[other] { $right }
    }.
   *[other] { $n } strands come up inside a loop on { $where }; there should be { $right ->
        [0] none
       *[other] { $right }
    }.
}
sign-strands-few = { $when }: the moved band should come up through every loop on { $where }.
sign-strands-colour = { $when }: a strand of another colour comes up inside a loop on { $where }.

## Warnings: short, for they are spoken

warn-loop-above = Take the loop named, not the one above it.
warn-loop-below = Do not reach too deep: the loop below stays where it is.
warn-too-shallow = Go down inside all the loops above, not only the top one.
warn-outside = Pull the loop up inside the loops above it, not at the side.
warn-wrong-peg = Count the pegs. It is easy to take the one beside it.
warn-wrong-peg-lift = Check which peg is next.
warn-mirrored-peg = Check which side it goes to.
warn-wrong-start = Start hooking at the peg named. It is easy to start at the one beside it.
warn-step-skipped = Keep your place. It is easy to leave one out here.
warn-step-skipped-place = Count the bands. It is easy to leave one out.
warn-step-skipped-hook = Keep your place. It is easy to pass one over here.
warn-step-skipped-bind = Do not forget the last band.
warn-step-skipped-shut = Close it before you take it off the loom.
warn-step-doubled = Do it only once.
warn-steps-swapped = Keep to the order.
warn-wrong-order = Work the loops in the order given.
warn-wrong-colour = Look at the colour before you stretch the band.
warn-cap-forgotten = Do not forget the cap.
warn-cap-wound-once = Wind it round the full number of times: once is not enough.
warn-twist-forgotten = Do not forget the half-twist. Without it the piece comes apart.
warn-twisted-by-accident = Look that the band lies flat, without a twist.
warn-loop-dropped = Keep the loop on your hook until it lies on the other peg.
warn-one-of-several = Count the loops on your hook before you pull.
warn-neighbour-snagged = Keep the hook close to its peg, or it catches the loop beside it.
warn-two-at-once = Count the loops on your hook: one too many lies there easily.
warn-charm-not-slid = Slide it on before you put the loop down.
warn-miscounted = Count the bands aloud.
warn-not-all-caught = Catch every loop. Count them.
warn-caught-too-many = Count the loops that the hook goes through.
warn-one-loop-caught = Go through every loop, not through one only.
warn-end-slips-off = Hold on to the loops until the piece is closed.
warn-loom-not-turned = Turn the loom before you go on.
warn-loom-turned = Leave the loom as it lies: it is not turned here.
warn-wrong-end = Begin at the peg named first, not at the other end.

## The way back

back-place = Take the band ({ $letter }) off { $where } again.
back-wind = Take the wound band off { $where } again.
back-hang = Take the last band off the hook again.
back-turn = Turn the loom back.
back-hook = Take the top loop off { $target }, pull it back down the way it came, and put it back on { $source }.
back-slide = Take the top loop off { $target }, slide what hangs on it back on to the hook, and put the loop back on { $source }.
back-lift = Lift the loop back over the others on { $where }, so that it lies lowest again.
back-lift-on = Take the loop off { $target } and lift it back over the others on { $source }, so that it lies lowest again.
back-bind = Pull out the last band again.
back-put = Take the loops of the free end off { $where } again and keep them on the hook.
back-clip = Open the clip and take it out.
back-knot = Untie the cord and pull it out.
back-undo-all = Undo the last { $n ->
    [one] move
   *[other] { $n } moves
}, newest first, back to { $move }.
back-start-again = Start again from step { $n }: first undo everything from there on.
back-step = step { $n }
back-step-at = step { $n } ({ $move })
back-only = Do { $steps } as shown.
back-do = Then do { $steps } as shown.
back-do-all = Then do the { $n ->
    [one] move
   *[other] { $n } moves
} from { $first } to { $last } again, as shown.

## Guided questions

ask-where = Hold the loom beside the picture. On which pegs is the number of loops, or a colour, different?
ask-inside = Look into the loops. On which pegs do other strands come up inside them than in the picture?
ask-crossed = From which pegs do bands run to different pegs than in the picture?
ask-loops = How many loops are on { $where }?
ask-top = Which letter is the top loop on { $where }?
ask-lowest = Which letter is the lowest loop on { $where }?
ask-colours = Which letters are the loops on { $where }, from the bottom up?
ask-strands = How many strands come up inside each loop on { $where }, from the bottom up?
ask-strand-colours = Which letters are the strands that come up inside each loop on { $where }, from the bottom up?
ask-leads = To which pegs do the bands on { $where } lead, from the bottom up?
answer-none = none
answer-no-loop = none
answer-strands = { $first } in the lowest loop, then { $rest }

mistake-heading = Step { $n }: what can go wrong
label-right = Right
label-wrong = Wrong
label-back = How to undo it
look-heading = Stop and look
look-heading-round = Stop and look after round { $n }
look-sooner = { $when }. { $line }
look-later = When the last round is done: { $line }
look-why = Check now; mistakes are easy to fix here.
look-cure = If not, undo one move at a time until it does, then go on from there.
look-film = Show it wrong, then right: { $slip }
picture-wrong = Wrong. { $slip } { $text }
picture-right = Right. { $text }

wrong-open = Something looks wrong?
wrong-again = Start again
wrong-first = What is it?
wrong-look = It looks different
wrong-stuck = I cannot do this step
wrong-round = How far are you?
wrong-round-n = Round { $n }
wrong-found = This is what most likely happened
wrong-back = The way back
wrong-other = Something else
wrong-lost = Go back one step on this page and hold the loom next to that picture. Undo until the two match, and go on from there.
wrong-nothing = No mistake that we know of looks like this here. Go back one step on this page and try again there.

## What the editor's check looks for. Words parted by commas; nobody reads them in a lesson.

words-side = left, right
words-step = step, steps
words-minute = minute, minutes, min
words-hour = hour, hours
words-never = never, not, no, nobody, don’t, don't, away from, take it off, take bracelets off
words-unsafe = all night, overnight, in bed, while asleep, while sleeping, while you sleep, when you sleep, to sleep, round your neck, round the neck, around your neck, around the neck, toddler, toddlers, baby, babies, in your mouth, with your teeth, between your teeth
words-child = child, children, kid, kids, year, years, year-old, year-olds, age, aged
words-vague = as you like, whichever you like, if you like, either way, over or under, any loop, any peg, somehow, some loop, somewhere, it does not matter which, roughly here
words-top = top loop, topmost loop, uppermost loop, upper loop
words-lowest = lowest loop, bottom loop, lowest loops, bottom loops
words-colours = red, blue, green, yellow, white, black, orange, pink, purple, brown, grey

## The gallery of a batch

gallery-title = What was made
gallery-search = Search
gallery-counted = { $n } shown
gallery-none = Nothing here fits these words.
gallery-picture = Picture of the piece at rest
gallery-bands = { $n ->
    [one] 1 band
   *[other] { $n } bands
}
gallery-falls = { $bands }; not every band is proved held, so there is no lesson
gallery-files = { $n ->
    [one] 1 file
   *[other] { $n } files
}
gallery-left = { $language }, left-handed
gallery-failed = { $n ->
    [one] 1 thing could not be made
   *[other] { $n } things could not be made
}
gallery-failure = { $what }: { $why }

## The atlas of techniques

atlas-title = Atlas of techniques
atlas-group-chains = chains
atlas-group-strips = strips and ladders
atlas-group-zigzags = zigzags
atlas-group-lozenges = lozenges
atlas-group-tails = tails
atlas-group-tubes = tubes
atlas-group-mats = mats
atlas-group-hung = hung bands
atlas-group-points = points
atlas-group-forks = forks
atlas-group-rings = closed rings
atlas-group-joined = joined chains
atlas-group-fringes = fringes
atlas-width = Width at rest
atlas-height = Height at rest
atlas-repeat = One repeat
atlas-bands = Bands a repeat
atlas-stretch = Length when pulled with 1 N
atlas-stack = Most loops on a peg
atlas-strain = Most stretch on the loom
atlas-snap = If one band snaps
atlas-snaps = { $n ->
    [0] no other falls
    [one] 1 more falls at worst
   *[other] { $n } more fall at worst
}
atlas-minutes = Swatch, by a beginner
atlas-minutes-about = about { $n } min
atlas-slips = Slips that bring bands down
atlas-bracelet = About 15 cm of it
atlas-bracelet-about = { $bands } bands, { $n } min
atlas-wrists = Suits wrists
atlas-from-to = { $low } to { $high }
atlas-difficulty = Difficulty
atlas-where = Where makers slip
atlas-slip = { $n ->
    [one] Step { $steps }
   *[other] Steps { $steps }
}: { $slip } { $end }
atlas-times = { $n } times

## The chart of a mat

chart-about = A mat of { $across } bands across and { $down } rows: { $bands } bands in all, about { $width } by { $height } when it lies at rest.
chart-colours = Lay out these bands
chart-working = How a row is worked
chart-loom = You need { $pegs } pegs in one line: join looms end to end. Peg A1 is nearest to you.
chart-lay = Lay a row: a band over A1 and A2, the next over A2 and A3, and so on as far as { $last }, in the colours of the row.
chart-lift = From the second row on, go along the pegs with the hook: lift the two lowest loops over the two new ones and let them drop; at the first and the last peg there is one loop to lift over one.
chart-front = Seen from the front, row 1 is the top of the picture, and the band between A1 and A2 is at the left.
chart-end = After the last row run a cord through all the loops, take the mat off, and tie the cord without pulling the edge together.
chart-heading = The chart
chart-rows = The rows, from peg A1 on
chart-row = Row { $first }: { $runs }
chart-row-span = Rows { $first } to { $last }, all alike: { $runs }
