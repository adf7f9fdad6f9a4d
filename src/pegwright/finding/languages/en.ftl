# What the checks say, in English. Lower case, no full stop, a maker's words.

## Reading the document

file-unreadable = { $file } cannot be read: { $reason }
    .hint = check the name and who may read the file
not-text = this is not a text file
    .hint = a pattern is a JSON text in UTF-8
too-large = the file is larger than { $limit_mb } MB, the most that is read
    .hint = take out what does not belong; write repeats instead of copies
not-json = the text is not valid JSON: { $reason }
    .hint = correct the text there
not-a-pattern = { $reason }
    .hint = { $hint }
line-unreadable = { $reason }
    .hint = { $hint }
sentence-unread = this sentence was not understood: { $sentence }
    .hint = say what is done, with which band, from which peg to which; or write the move as in docs/notation.md
no-steps-read = no step could be read from this text
    .hint = write one action a sentence: which band, from which peg, which way
steps-missing = { $count ->
    [one] step { $first } is missing from this text
   *[other] steps { $first } to { $last } are missing from this text
}
    .hint = the numbers of the steps jump here: copy what is missing too, or write it in at this place
language-unread = texts in this language ({ $language }) cannot be read yet
    .hint = write it in English, Spanish or German, or write the steps as in docs/notation.md
words-leave-open = { $question }
    .hint = say it in the text; until then the likeliest answer is used
text-too-long = the text is too long; only its first { $limit } characters are read
    .hint = put each piece in a text of its own
unknown-version = { $version ->
    [missing] this pattern does not say its version; this program reads versions 1 to { $newest }
   *[other] this pattern is of version { $version }; this program reads versions 1 to { $newest }
}
    .hint = use a newer pegwright, or correct the field pegwright
captions-too-large = the captions are longer than the { FIXED($limit) } bytes that are read
    .hint = cut the recording into parts
captions-bad-bytes = the captions are not in UTF-8; some letters may be read wrongly
    .hint = save the captions in UTF-8
captions-empty = nothing is said in these captions
    .hint = give WebVTT, SRT, or lines that begin with a time, such as [1:05]
cue-unreadable = this caption has no time that can be read, and is left out
    .hint = write its time like the others
cue-backward = this caption ends before it begins, and is left out
    .hint = mend its times
cues-overlap = this caption begins before an earlier one has ended
    .hint = mend its times if the words belong one after the other
recogniser-missing = this is sound or a film, and no recogniser is installed to hear it
    .hint = have its captions written by a site for films, a meeting program or a phone, and give that file (WebVTT, SRT); or install the recogniser with pip install 'pegwright[hear]'
model-missing = { $given ->
    [0] the recogniser needs a model of the language
   *[other] { $folder } holds no model that the recogniser reads
  }
    .hint = give its folder with --model, or give captions written elsewhere (docs/listening.md)
model-english-only = the model in { $folder } hears English only
    .hint = give a model for several languages, or captions written elsewhere
sound-unreadable = this sound or film cannot be read
    .hint = see whether it plays elsewhere, or give its captions
recording-too-long = only the first { FIXED($limit) } words are compared
    .hint = cut the recording into parts
chapter-not-heard = the chapter “{ $title }” is not heard in the recording
    .hint = see whether it was left out or said in other words
recording-contradicts = { $time }{ $step ->
    [0] {""}
   *[other] , step { $step }
}: { $what }
    .hint = say it right in a new recording, or mend the pattern if the recording is right
recording-unclear = { $time }{ $step ->
    [0] {""}
   *[other] , step { $step }
}: perhaps { $what }
    .hint = listen there: the captions may have misheard

## Motifs and repeats

motif-twice = two motifs are called { $name }; the first one is worked
    .hint = give the second a name of its own
motif-unknown = there is no motif called { $name }
    .hint = { $count ->
    [0] there are no motifs here
   *[other] the motifs here are: { $known }
}
motif-in-itself = the motif { $name } is worked within itself
    .hint = write a repeat instead; a motif cannot hold itself
slot-empty = the motif { $name } needs to know which colour { $slot } stands for
    .hint = name a colour for { $slot }
slot-unknown = the motif { $name } has nothing called { $slot } to fill in
    .hint = see what the motif lists
count-unknown = the repeat asks for { $name } rounds, and nothing says how many that is
    .hint = write a number, or list { $name } among the counts of the motif
nested-too-deeply = repeats lie inside repeats more than { $limit } deep
    .hint = make motifs of the inner ones
too-many-moves = the pattern comes to more than { FIXED($limit) } moves, so none of them is made
    .hint = repeat less often
too-many-passes = too many loops run through other loops here to keep track of
    .hint = make the piece in parts; no maker could work this one
too-many-refused = { $count } moves have been refused, so the { $left } after them are not tried
    .hint = mend the first ones and look again
stack-full = { HOLDER($peg) } would carry more than { $limit } loops: { $move }
    .hint = work some loops off the peg first, or share them out over more pegs
too-many-pegs = the loom has { FIXED($pegs) } pegs; { FIXED($limit) } is the most that can be worked
    .hint = take a smaller loom
pegs-out-of-reach = between { $peg } and { $other } there is no peg for { FIXED($gap_mm, digits: 0) } mm; a maker reaches { FIXED($limit_mm, digits: 0) } mm
    .hint = check where these two pegs stand: lengths are in mm
pegs-in-one-place = pegs { $peg } and { $other } stand in the same place
    .hint = move one of them, or leave it out
off-the-rows = { $reason }
    .hint = start the repeat further in, or move it on by fewer rows or pegs

## Moves that cannot be made

peg-unknown = there is no peg { $peg } on this loom: { $move }
    .hint = the loom has { $pegs }{ $more ->
    [0] {""}
   *[other] …
}
peg-double = two pegs are called { $peg }; only the first one is used
    .hint = give one of them another address
peg-twice = { $peg } is named twice in one move: { $move }
    .hint = name each place once
peg-bare = there is no loop on { HOLDER($peg) } to take: { $move }
    .hint = place or hook a band there first
out-of-reach = { $peg } and { $other } are { FIXED($gap_mm, digits: 0) } mm apart; a maker reaches { FIXED($limit_mm, digits: 0) } mm: { $move }
    .hint = take pegs nearer to each other
peg-inside-band = the band would run round the outside of { $peg } without making a loop on it: { $move }
    .hint = leave { $peg } out, or place the band over fewer pegs
peg-enclosed = the band would close round { $peg }, which it does not name: { $move }
    .hint = name { $peg } too where the band turns there, or place it over pegs with none in between
turns-mismatch = turns are given for { $given } pegs, but the band goes over { $pegs }: { $move }
    .hint = give one number of turns for each peg, or none at all
twists-mismatch = half-twists are given for { $given } legs, but over { $pegs } pegs there is one leg fewer: { $move }
    .hint = give one number for each leg from a peg to the next, or none at all
loop-missing = there is no loop { $loop } on peg { $peg }, which carries { $loops }: { $move }
    .hint = count the loops from 1 at the bottom, or from −1 at the top
not-so-many-above = the hook cannot go through { $through } loops above on peg { $peg }, where there are { $above }: { $move }
    .hint = leave the number out to go through all of them
same-peg = the loop would go back on to { $peg }, where it comes from: { $move }
    .hint = name another peg
nothing-to-lift-over = nothing lies above the loop on peg { $peg } to lift it over: { $move }
    .hint = place a band there first
hook-empty = nothing hangs on the hook to slide on: { $move }
    .hint = hang a band on it first
end-unknown = there is no free end called { $end } at this point: { $move }
    .hint = finish with a last band first
end-taken = there is a free end called { $end } already: { $move }
    .hint = give this end another name
loops-uneven = the free end { $end } has { $loops } loops, which cannot be shared evenly among { $pegs } pegs: { $move }
    .hint = name one peg, or as many as there are loops

## What a craft editor would say

loop-dragged = the loop of band { $band } ({ $colour }) on { HOLDER($peg) } is moved while { $count ->
    [one] band { $others } passes
   *[other] bands { AND($others) } pass
} through it
    .hint = work the upper loop first; then nothing is dragged along
band-not-worked = band { $band } ({ $colour }) is never worked: nothing is hooked, lifted or caught of it
    .hint = work it, or leave it out
loop-left = { $count ->
    [one] a loop is
   *[other] { $count } loops are
} left behind on peg { $peg } with nothing through: { $loops }
    .hint = see whether a move is missing there, or whether the loop above was taken instead
start-not-held = the loop of band { $band } ({ $colour }) is pulled through nothing: no loop lies above it on { HOLDER($peg) }
    .hint = put a cap or a first band on { HOLDER($peg) }, or start one peg further on
channel-opens-away = the hook would go down { HOLDER($peg) } on its closed side: the channel opens away from the maker{ $more ->
    [0] {""}
    [one] , and 1 more time after this
   *[other] , and { $more } more times after this
}
    .hint = turn the loom round before hooking, or give the side on which the channels of your loom open
stack-too-high = { $loops } loops on peg { $peg } stand { FIXED($stack_mm, digits: 1) } mm high; the peg holds { FIXED($room_mm, digits: 1) } mm
    .hint = work some of them before more are added, or use a loom with taller pegs
no-finish = nothing closes the piece: there is no clip and no knot
    .hint = end with a clip or a knot through the last loops
catches-one = the { $kind ->
    [clip] clip
   *[knot] knot
} catches 1 of { $loops } loops on { HOLDER($peg) }
    .hint = catch them all: a single loop slips off, and the rest comes undone
catches-more = the { $kind ->
    [clip] clip
   *[knot] knot
} should catch { $wanted } loops on { HOLDER($peg) }, which has only { $loops }
    .hint = leave the number out to catch them all, and check whether a loop is missing there
laid-after-clip = a band is laid after the clip of move { $clip } has closed the piece{ $more ->
    [0] {""}
   *[other] , and { $more } more
}
    .hint = close the piece last
letter-twice = two colours have the letter { $letter }; the first one counts
    .hint = give one another letter
colour-not-listed = colour { $letter } is used but not listed among the colours
    .hint = list it, so that its bands can be named, weighed and bought
colour-unused = colour { $letter } ({ $name }) is listed but never used
    .hint = take it off the list, or use it
band-kind-twice = two kinds of band are called { $name }; the first one counts
    .hint = give one another name
band-kind-unknown = colour { $letter } is of a kind of band called { $band }, which is not listed
    .hint = { $count ->
    [0] no kind of band is listed
   *[other] listed are: { $known }
}

## What a technical editor would say of the lesson

contact-missing = nobody is named to report mistakes to
    .hint = name yourself or your workshop as the designer
licence-missing = nothing says who may copy or teach the piece
    .hint = name a licence, such as CC BY 4.0
about-missing = nothing says what the piece is and whom it suits
    .hint = write a sentence or two in the notes
level-low = the level is { $level ->
    [basic] basic
    [easy] easy
   *[intermediate] intermediate
}, but these make the piece { $reckoned ->
    [easy] easy
   *[intermediate] intermediate
}: { $reasons }
    .hint = raise the level, or keep it if you teach these moves first
motif-unused = the motif { $name } is never worked
    .hint = work it, or take it out
repeat-of-none = a repeat is done no times, so its steps are never worked
    .hint = write how often, or take the repeat out
side-named = the text says “{ $word }”; in the mirrored edition that is the other side
    .hint = name pegs instead of sides, or change the text for the other hand
term-mixed = the text says “{ $word }” where the lesson says “{ $term }”
    .hint = use one word for one thing, or make “{ $word }” your own word for it throughout
text-peg-unknown = the text names { $peg }, but the loom has no such peg
    .hint = correct the peg
text-peg-moves = the text names { $peg }, but its step is repeated on other pegs
    .hint = word it so that it is true of every round
text-step-unknown = the text mentions step { $number }, but the lesson has only { $steps }
    .hint = correct the number
text-hard = the text is hard to read for a child of twelve ({ $words } words a sentence, or long words)
    .hint = write shorter sentences with everyday words
text-length-wrong = the text says “{ $quote }”; the piece comes out { $counted } mm long
    .hint = write the length that was worked out, or leave it to the lesson, which prints it
text-time-wrong = the text says “{ $quote }”; a beginner takes about { $counted } min
    .hint = write the time that was worked out, or leave it to the lesson, which prints it
text-unsafe = the text says “{ $word }”, which is not safe with small parts and tight bands
    .hint = say who may not have it and when it is taken off, as the cautions do
text-vague = the text says “{ $word }”, but only one way gives this piece
    .hint = say which one: the lesson does
text-loop-wrong = the text says “{ $word }”, but the step takes another one
    .hint = say which loop the step takes, or change the step
text-colour-wrong = the text says “{ $word }”, but the step touches no band of that colour
    .hint = correct the colour in the text or in the step
text-misspelt = “{ $word }” is misspelled
    .hint = perhaps { OR($meant) } was meant
colour-name-twice = colours { $one } and { $other } have the same name, { $name }
    .hint = give each a name of its own, or make them one colour
clip-unwarned = a clip joins two ends here, and the step carries no warning
    .hint = warn of it: ends that spring open let all the bands go and can hit a face
translation-missing = there is no { $language ->
    [de] German
    [en] English
    [es] Spanish
   *[other] { $language }
} for “{ $text }”; the lesson prints it as it is
    .hint = add it to translations, or read the lesson in the language of the pattern
translation-outdated = a translation ({ $language }) is kept for “{ $text }”, which the pattern no longer says
    .hint = take it out, or put the new text in its place
colours-alike = colours { $one } and { $other } are hard to tell apart for { AND($who) }
    .hint = make one of them lighter or darker; letters and patterns help on paper, not in the heap
lesson-disagrees = the lesson and the working disagree on { $what }: { $said } said, { $counted } counted
    .hint = plan the lesson again from the pattern

## Is it held?

band-falls = { $reason }{ $hanging ->
    [0] {""}
    [one] ; one more is held only by { $count ->
        [one] it
       *[other] these
    }
   *[other] ; { $hanging } more are held only by { $count ->
        [one] it
       *[other] these
    }
}{ $loose ->
    [0] {""}
   *[other] ; band { $loose } ({ $colour }) is loose already on the loom ({ $since })
}
    .hint = see that a loop passes through each band, and that the last ones are caught
band-not-proved = { $count ->
    [one] band { AND($named) }
   *[other] bands { AND($named) }
} could be neither proved held nor proved free: { $reason }
    .hint = try it on the loom before you teach it
losses-left-out = what falls if one band snaps is worked out for up to { $limit } bands; this piece has { $bands }
    .hint = ask for a shorter piece with the same repeat

## The order of working

order-not-found = no order of working was found in which all { $bands } bands hold; { $tried } were tried
    .hint = lay a band that joins what hangs loose, wind a cap on the peg where the work begins, or work a part by hand and ask again
order-none = no order of working holds all { $laid } bands; { $count ->
    [0] each can be caught, but never all of them at once
    [one] band { $bands } can never be caught
   *[other] bands { AND($bands) } can never be caught
}
    .hint = lay a band that joins what hangs loose, or wind a cap on the peg where the work begins
order-pinned = no order was found that keeps { $pinned }{ $count ->
    [0] {" "}with the bands as they lie
   *[other] {" "}together with { AND($others) }
}
    .hint = take that move out and ask again, or work that part by hand
nothing-to-work = no band lies ready to be worked: { $bands } are laid, and { $tried } orders were tried
    .hint = lay bands over two pegs each, and leave out the hooks; or ask for the piece to be worked afresh
holds-already = the piece is worked already: all { $bands } bands hold
    .hint = ask for it to be worked afresh, to see other orders
no-simpler-order = no simpler order of the same moves was found; { $tried } were compared
    .hint = look for other orders: they work the laid bands in other ways, and may make another piece
fall-with-it = { $bands ->
    [one] one more band falls too, held only by what falls
   *[other] { $bands } more bands fall too, held only by what falls
}
    .hint = mend what starts it: they then hold as well
mend-not-found = neither one change nor two together were found that make every band hold; { $tried } were tried
    .hint = put back the last part that held, or lay the bands and ask for a working order

## Size and counts

band-slack = a { $name } band hangs slack over { AND($pegs) }: { FIXED($taut_mm, digits: 1) } mm round, { FIXED($rest_mm, digits: 1) } mm at rest{ $more ->
    [0] {""}
   *[other] , and { $more } more like it
}
    .hint = use smaller bands, a loom with wider pitch, or wind the band once more
band-taut = a { $name } band is stretched { FIXED($stretch, digits: 1) } times over { AND($pegs) }{ $more ->
    [0] {""}
   *[other] , and { $more } more like it
}
    .hint = bands are worked up to about three times; try it with one of your own, and protect your eyes
band-overstretched = a { $name } band is stretched { FIXED($stretch, digits: 1) } times over { AND($pegs) }, and may snap{ $more ->
    [0] {""}
   *[other] , and { $more } more like it
}
    .hint = use pegs closer together or larger bands; a snapping band can hurt an eye
stated-count-wrong = { $what }: { $stated } stated, but the pattern takes { $counted }
    .hint = correct the number or the steps
text-count-wrong = the text says “{ $quote }”, but the pattern takes { $counted }
    .hint = correct the number, or say which part of the piece is meant

## Wrists

wrist-unreadable = “{ $said }” is not understood as a wrist
    .hint = write a girth with its unit (16.5 cm, 6 1/2 in), a size ({ $sizes }) or an age (age 8)
wrist-nonsense = { $what } cannot be right
    .hint = measure round the wrist just past its bone, and check the unit
wrist-unusual = a wrist of { $said } lies outside { FIXED($low_cm, digits: 1) } to { FIXED($high_cm, digits: 1) } cm, where the surveys found wrists
    .hint = measure again, and check the unit
girth-unreadable = “{ $said }” gives no girth
    .hint = write the girth with its unit (ankle 22 cm, neck 14 in, bottle 9 cm){ $part ->
        [finger] , or a ring size (ring 54)
        [ankle] , or ankle adult
        [neck] , or neck adult
       *[other] {""}
    }
girth-nonsense = { $what } cannot be right: { FIXED($low_cm, digits: 1) } to { FIXED($high_cm, digits: 1) } cm are read
    .hint = measure round it once more, and check the unit
girth-unusual = { $part ->
        [ankle] an ankle
        [neck] a neck
        [finger] a finger
        [key] a key
        [bottle] a bottle
       *[wrist] a wrist
    } of { $said } lies outside { FIXED($low_cm, digits: 1) } to { FIXED($high_cm, digits: 1) } cm, where such girths were found
    .hint = measure again, and check the unit
girth-neck = round a neck a piece must come open by itself when it catches: a closed band of rubber can strangle
    .hint = close it with a clasp made to come apart at a light pull (breakaway), never knot it or clip it shut; not for children, nor for sleep or play; keep to your local rules
girth-finger = never put a band tightly round a finger
    .hint = a ring must turn and slide off easily; take it off, or cut it, at once if the finger turns pale, blue, puffy or numb
wrist-too-young = no wrist is worked out for an age of { SHORT($years) } years: small bands are not for children under 3
    .hint = small bands and clips can choke; keep them away, and follow the rules where you live

## On the loom

band-near-breaking = a { $name } band over { AND($pegs) } is at { FIXED($stretch, digits: 1) } times its length and pulls with { FIXED($force_n, digits: 1) } N{ $more ->
    [0] {""}
   *[other] , and { $more } more like it
}; bands break from about { SHORT($breaks) } times
    .hint = point it down and away from faces, and wear glasses; better still, use pegs closer together or larger bands

## How the piece fits

fit-loose = at { FIXED($length_mm) } mm the piece hangs loose on { $part ->
        [ankle] an ankle
        [neck] a neck
        [finger] a finger
        [key] a key
        [bottle] a bottle
       *[wrist] a wrist
    } of { FIXED($wrist_mm) } mm
    .hint = leave out extension bands or a repeat: { FIXED($low_mm) } to { FIXED($high_mm) } mm at rest would lie close
fit-tight = { FIXED($length_mm) } mm long the piece is tight on { $part ->
        [ankle] an ankle
        [neck] a neck
        [finger] a finger
        [key] a key
        [bottle] a bottle
       *[wrist] a wrist
    } of { FIXED($wrist_mm) } mm{ $pulls }
    .hint = add extension bands until it is { FIXED($low_mm) } to { FIXED($high_mm) } mm at rest; a finger must slip under it easily, and it must come off at once where skin turns pale, puffy or numb
fit-hand = to pass { $part ->
        [ankle] a heel
        [neck] a head
        [finger] a knuckle
        [key] a key
        [bottle] a bottle
       *[wrist] a hand
    } of { FIXED($hand_mm) } mm the piece must be pulled open with { FIXED($pull_n) } N
    .hint = add extension bands, or put it on open and clip it there
fit-unmeasured = how the piece pulls is known up to { FIXED($known_mm) } mm; { $part ->
        [ankle] the heel
        [neck] the head
        [finger] the knuckle
        [key] the key
        [bottle] the bottle
       *[wrist] the hand
    } needs { FIXED($needed_mm) } mm
    .hint = stretch it further, in the model or with weights, and protect your eyes
fit-not-closed = this piece is not closed round a wrist: no clip joins two of its ends, so only its size is given
    .hint = if it is to be worn, clip two of its ends together
fit-falls-apart = this piece falls apart, so it fits no wrist
    .hint = see what the check says of the bands that come off, and mend that first
extension-nowhere = { $bands } extension bands would be needed, and the pattern has no free end to put them on
    .hint = finish with a last band whose two ends stay free, and clip there
stretch-curve-nonsense = the stretch curve makes no sense: { $reason }
    .hint = the piece did not come to rest in the same way under each pull; hang weights on it and measure it by hand, and protect your eyes
gauge-nonsense = { $what } comes out at { FIXED($value_mm, digits: 1) } mm
    .hint = measure both pieces at rest in the same way, and count again what they differ in

## Calibration

measure-nonsense = { $what } of { SHORT($value) } { $unit } makes no sense: { $reason }
    .hint = { $cure }
measure-few = { $count ->
    [0] no weights at all are too few
    [one] 1 weight is too few
   *[other] { $count } different weights are too few
} for { $what }, which takes { $needed }
    .hint = hang more weights, from slack to about three times the length
density-odd = from flat length, thickness and weight of 100 the density is { FIXED($density_g_cm3, digits: 2) } g/cm³; bands of silicone, rubber or TPE have { FIXED($low, digits: 2) } to { FIXED($high, digits: 2) }
    .hint = thickness matters most: measure it on several bands laid side by side; then weigh and count again
modulus-odd = the shear modulus comes out at { FIXED($shear_mpa, digits: 3) } MPa; small bands have { FIXED($low, digits: 2) } to { FIXED($high, digits: 2) }
    .hint = check the unit of the weights (grams), the thickness, and whether it was a single band
moduli-tangled = the weights stretch the band from { FIXED($low, digits: 1) } to { FIXED($high, digits: 1) } times, which does not tell C10 from C01
    .hint = their sum is well known, which is enough up to there; to tell them apart, add weights up to about three times the length
stretch-misfit = under { SHORT($mass_g) } g the band was { FIXED($length_mm, digits: 1) } mm long; the fitted rubber says { FIXED($fitted_mm, digits: 1) } mm
    .hint = measure that weight again; the ruler was taken to be good to { SHORT($reading_mm) } mm

## The stash

not-a-stash = { $reason }
    .hint = a stash lists packs with their size and price
stash-lacks = the stash has no pack of { $what } to buy, so the cost is left open
    .hint = add a pack with its price to the entry
currency-missing = prices are given without a currency
    .hint = name one, as your bank writes it

## Pictures that become mats

picture-unreadable = this picture cannot be read: { $reason }
    .hint = save it as PNG or JPEG, and try that file
picture-too-large = this picture is too large: at most 100 MB and { $limit } million dots are read
    .hint = save a smaller copy; a mat needs only a few hundred dots each way
picture-all-clear = there is nothing to see in this picture: all of it is transparent
    .hint = save it with what is behind it
picture-clear-parts = { $share } % of this picture is transparent and becomes white
    .hint = put a colour behind it if you want another
picture-moves = this picture moves: the first of its { $frames } frames becomes the mat
    .hint = save the frame you want as a picture of its own
picture-one-colour = the whole mat comes out in one colour: { $name }
    .hint = take a picture with more contrast, crop it closer, or give more colours
colour-runs-short = the mat takes { $needed } { $needed ->
    [one] band
   *[other] bands
} in { $name }; you have { $have }
    .hint = make the mat smaller, leave the colour out, or get some more before you start

## Variants

variant-left-out = the variant { $name } is left out: { $why }
    .hint = ask for another one, or change the piece first
colourway-alike = colourway { $number } has colours that not every eye can tell apart
    .hint = add bands of a lighter or darker colour to the stash
colourway-runs-short = colourway { $number } takes more bands of a colour than you have
    .hint = get some more before you start

## The table of slips

not-a-slip-table = { $reason }
    .hint = a table gives chances to classes and classes to slips
slip-unknown = there is no slip called { $slip }
    .hint = the slips are: { $known }
slip-class-unknown = there is no class of chance called { $given }
    .hint = name one of these, or list it: { $known }

## Many of the same

more-of-the-same = and { $count } more of the same: { $of }
    .hint = mend the first ones and look again

## The shape at rest

bands-drawn-crossing = a strand of this band is drawn through another, with { FIXED($gap_mm, digits: 3) } mm between them
    .hint = draw the strands apart; nothing can say which side they belong on
bands-lie-loose = the piece falls apart when it is tugged: { $loose } of its { $bands } bands are not held to the rest and lie beside it
    .hint = its length and width are those of what still hangs together; see what the check says of these bands
nothing-hangs-together = nothing hangs together: all { $bands } bands lie loose, so there is no length
    .hint = see what the check says of the bands that come off
length-impossible = a length of { FIXED($length_mm) } mm came out, which the bands cannot span together: it is left out
    .hint = see what the check says of the bands that come off
rests-otherwise = the piece rests otherwise than it is worked: bands that are many links or rows apart do not lie in that order
    .hint = take its picture and its size with care; it may lie in a heap
rest-not-reached = the piece had not come to rest after { $iterations } steps: forces are at { PERCENT($drop, digits: 2) } of what they were
    .hint = look at the picture with care, or allow more steps
rest-interrupted = the work was stopped after { $iterations } steps; the shape is the one reached so far
    .hint = let it run on for the shape at rest

## What every wording draws on

list-and = { $initial ->
   *[other] { $head } and { $last }
}
list-or = { $initial ->
   *[other] { $head } or { $last }
}
holder = { $kind ->
    [hook] the hook
    [end] the free end called { $name }
    [start] the start
   *[peg] { $name }
}
place-line = line { $line }, column { $column }
place-step = move { $step }
place-peg = { $kind ->
    [hook] the hook
    [end] the free end called { $name }
    [start] the start
   *[peg] peg { $name }
}
place-band = band { $band }
place-whole = the whole pattern
place-at = at { $place }
hint-is = hint: { $hint }
fix-is = fix: { $label }
as-told = { $text }
band-named = { $band } ({ $colour })
the-band = band { $band } ({ $colour })
so-many-more = { $count } more

## What a recording says otherwise

said-otherwise = “{ $heard }” is said where the lesson says “{ $meant }”: { $sentence }
said-never = the step is not said: { $sentence }
said-besides = something is said that is in no step: “{ $heard }”
said-too-late = the step is said after step { $later }
said-other-hand = the hook is in the other hand than in the lesson: “{ $heard }”

## Reading

os-reason = { $errno ->
    [ENOENT] there is no such file
    [EACCES] it may not be read
    [EISDIR] it is a folder
   *[other] { $text }
}
write-reason = { $errno ->
    [ENOSPC] the disk is full
    [EACCES] writing there is not allowed
    [EROFS] the disk is read-only
    [ELOOP] there is a link where a folder should be
   *[other] { $text }
}
json-reason = { $kind ->
    [truncated] it ends too early
    [trailing-characters] something follows after its end
    [trailing-comma-in-object] a comma stands after the last field
    [trailing-comma-in-array] a comma stands after the last entry
    [object-keys-must-be-strings] the name of a field must be in double quotes
    [invalid-character] a character is out of place
    [invalid-number] a number is badly written
    [number-out-of-range] a number is too large
    [invalid-escape] a backslash is followed by something without meaning
    [expected] expected { OR($signs) }
   *[other] { $text }
}
pattern-braces = a pattern is an object in braces
nested-deeply = brackets are nested too deeply
line-between-levels = the line is indented neither as the lines above it nor below one of them
write-level = give lines that belong together the same indent, and more to what belongs to the line above
quote-not-closed = a text in double quotes is not closed
close-quote = put " after it; within it write \" for a quote
field-says-nothing = '{ $said }' is not a field and its value
write-field = write the name of a field, a blank and the value, and a comma before the next: pegs 2, rows 1
line-says-nothing = '{ $said }' is not a field and its value
write-line-field = write the name of a field, a colon and the value, as in title: Ebb line
line-belongs-nowhere = the line belongs to nothing above it
pair-says-nothing = '{ $said }' is not a name and its value
write-pair = write them with = between, as in A=14
line-no-move = '{ $said }' is not a step
write-like = write it as in: { $example }
write-step = a step begins with { OR($choices) }
read-line = line
read-words = words
read-steps = steps
read-loom = loops on the pegs
read-head = about the piece
read-aside = –
read-unread = ?
read-times = { $n } times:
read-more = … and { $n } more
read-holds = it holds
read-falls = it does not hold
read-choose = press Enter for “{ $first }”, or write your answer; - leaves it open
read-write = write your answer; - leaves it open
read-no-answer = “{ $said }” does not answer this
ask-loom = which loom is it made on? Perhaps { $rows } × { $pegs } pegs (rows × pegs in a row)
ask-colour = { $count ->
    [one] which colour is the band in line { AND($lines) }?
   *[other] which colour are the bands in lines { AND($lines) }?
}
ask-turns = how many times is the cap in line { AND($lines) } wound round its peg?
ask-chain-bands = how many bands does the chain in line { AND($lines) } have?
ask-peg = which peg is meant in line { AND($lines) }?
ask-pegs = which pegs are meant in line { AND($lines) }?
ask-loop = which loop is taken in line { AND($lines) }, the lowest or the top one?
ask-times = how many more times is it done, in line { AND($lines) }?
ask-how-many-loops = how many loops are taken at once, in line { AND($lines) }?
given-twice = the field { $field } is given twice
take-one-out = take one of the two out
no-such-field = there is no field { $field } here; there may be { $known }
field-missing = the field { $field } is missing
see-schema = see the schema: pegwright schema
is-not = { $said } is not { OR($types) }
a-text = a text
true-or-false = true or false
a-whole-number = a whole number
a-number = a number
an-object = an object in braces
a-list = a list in brackets
great-number = so great a number
quote-it = put it in double quotes
write-true = write true or false, without quotes
write-digits = write it in digits, without quotes
write-braces = write it as {"{"}"…": …{"}"}
write-brackets = write it as […], also where it holds one thing only
write-tag = write it as {"{"}"{ $tag }": "{ $choice }", …{"}"}
is-no-address = { $said } is not a peg address
write-address = give the row in capitals, then the number from the maker, as in B3
is-no-end = { $said } is not the name of an end
write-end = small letters, digits and hyphens, as in end or tail-1
is-no-holder = { $said } is neither a peg nor an end
write-holder = name a peg, as in B3, or an end, as in start or end
is-no-letter = { $said } is not a colour letter
write-letter = one to six letters or digits, beginning with a letter, as in A
is-no-mirror = { $said } is not a way to mirror
write-mirror = choose rows or pegs
is-no-language = { $said } is not a language tag
is-no-tint = { $said } is not a tint
write-language = write it as en, de or pt-BR
write-tint = a # and six of 0-9 and a-f: red, green, blue, as in #34506b
shows-nothing = { $said } shows nothing
write-visible = give at least one character that can be seen
write-visible-or-none = leave it out, or give a character that can be seen
out-of-bounds = { $said } is out of bounds
take-at-least = take at least { SHORT($least) } and at most { SHORT($most) }
take-more-than = take more than { SHORT($least) } and at most { SHORT($most) }
too-many = { FIXED($size) } { $what ->
    [characters] characters
   *[entries] entries
} are too many
at-most = at most { FIXED($most) } fit here
too-few = { FIXED($size) } { $what ->
    [characters] characters
   *[entries] entries
} are too few
at-least = at least { FIXED($least) } are needed here
no-choice = { $said } is not a choice
no-choice-for = { $said } is not a choice for { $field }
choices = there are { $choices }
choices-near = perhaps { $near }; there are { $choices }
one-of = it is one of { $choices }
rubber-never-pulls = C10 and C01 are both zero: such a band would not pull
rubber-pushes = C2 is too far below zero: such a band would push where it should pull
moved-before-row = { $peg } moved here lies before row A
moved-before-peg = { $peg } moved here lies before peg 1
moved-past-rows = { $peg } moved here lies past the last row there can be
span = { $first } to { $last }

## The loom and the proof

open-twist = as far as can be told nothing else holds, but bands here carry a twist of their own, which may cling
open-across = as far as can be told nothing else holds, but a band that lies partly over and partly under may
open-tangled = it is too tangled to decide
falls-unfastened = { $count ->
    [one] the band falls off
   *[other] all { $count } bands fall off
}: nothing fastens the piece: tie, clip or bind its last loops
falls-passed-by-none = { $count ->
    [one] band { AND($named) } falls off: nothing passes through any of its loops
   *[other] bands { AND($named) } fall off: nothing passes through any of their loops
}
falls-off = { $count ->
    [one] band { AND($named) } slides off over
   *[other] bands { AND($named) } slide off over
} { $passing ->
    [one] band { AND($over) }
   *[other] bands { AND($over) }
}
falls-together = bands { AND($named) } fall off: nothing but these themselves passes through their loops

## The lesson

level-caps = caps
level-wide = wide bands
level-twists = half-twists
level-hung = hung bands
level-tall = tall stacks
sight-everybody = everybody
sight-protan = eyes that see little red
sight-deutan = eyes that see little green
sight-tritan = eyes that see little blue
what-bands = bands in all
what-bands-of = bands of colour { $letter }
what-key = colours in the key
what-number = the number of a step
what-first = the first move of step { $step }
what-moves = moves taught
what-rounds = rounds of step { $step }
what-boxes = boxes of step { $step }
what-strong = bands drawn bold in step { $step }
what-size = the size of the finished piece
what-size-bands = bands for a wrist of { $wrist }

## Size, counts and measures

stated-bands = { $letter } ({ $name }) bands
stated-bands-unlisted = { $letter } bands
stated-clips = clips
wrist-of-age = an age of { SHORT($years) } years
girth-of-part = { $part ->
        [ankle] an ankle
        [neck] a neck
        [finger] a finger
        [key] a key
        [bottle] a bottle
       *[wrist] a wrist
    } of { $said }
wrist-of-girth = a wrist of { $said }
pulls-with = , and pulls with { FIXED($force_n, digits: 1) } N
pulls-unknown = {""}
curve-few = it takes at least two points
curve-negative = a force or length is negative or no number
curve-falls = { SHORT($less_n) } N at { SHORT($less_mm) } mm, but { SHORT($more_n) } N at { SHORT($more_mm) } mm
gauge-repeat = a repeat
gauge-extension = an extension band
few-for-rubber = the rubber
few-for-both = both Mooney–Rivlin constants
goods-bands = { $name } ({ $letter }), { $band }
goods-unlisted = colour { $letter }
goods-loom = { $kind ->
    [straight] straight
    [round] round
   *[pegs] pegs
}, { $rows } × { $pegs }
goods = { $kind ->
    [clips] clips
    [hooks] hooks
   *[scissors] scissors
}
measured = { $what ->
    [flat] a flat length
    [thickness] a thickness
    [weight-100] a weight of a hundred
    [hook] a hook
    [error] a reading error
    [weight] a weight
   *[length] a length
}
measured-under = under { SHORT($mass_g) } g, a length
between = it should be between { SHORT($low) } and { SHORT($high) }
above-nought = it should be above 0
no-hole = at a flat length of { SHORT($flat_mm) } mm nothing would be left of the hole
thin-wire = it should be a thin wire
error-useless = no reading is free of error, and one this far out is no use
flat-already = laid flat the band is { SHORT($flat_mm) } mm long already
all-snapped = that is more than { SHORT($times) } times its length, and every band snaps before that
longer-before = under { SHORT($mass_g) } g it was { SHORT($length_mm) } mm already
cure = { $how ->
    [flat] lay the band flat, press, and read mm end to end
    [thickness] lay ten bands side by side, read mm across, and take a tenth
    [weight-100] count a hundred bands on to the scales and read grams
    [both] measure both again
    [hook] give its thickness in mm
    [error] give about half of the finest mark
    [weight] weigh what hangs below in grams, its hook included
    [length] read mm, outside, end to end
    [alike] measure flat length and hung length alike, outside, end to end
    [unit] check the unit: mm
   *[weights] measure both weights again
}

## What the studio does not do

no-pattern = this is not a pattern
file-no-pattern = this file holds no pattern
file-no-stash = the file stash.json holds no stash
no-name-free = no name is free for this piece
request-too-large = what the page sent is larger than { $limit_mb } MB, the most that a pattern may have
folder-gone = the folder { $folder } is no longer there; put it back, or start the studio in another one
no-such-piece = there is no such piece here
no-such-work = there is no such job
too-much-under-way = too many jobs are already running
changed-elsewhere = this piece was changed elsewhere in the meantime
overtaken = overtaken by newer work
piece-asks-too-much = this piece needs more time or memory than the studio allows for one piece; make it in parts
folder-read-only = the folder cannot be written to: { $reason }
wrong-inside = something went wrong inside pegwright

## Fixes

fix-cap = wind a cap on { $peg } first
fix-turn = turn the loom first
fix-upper-first = work the upper loops of { $peg } first
fix-catch-all = catch all the loops
fix-clip = clip the loops of { $at }
fix-clip-both = clip the two ends together: { $at } and { $far }
fix-list-colour = list colour { $letter }
fix-call-it = call it { $letter }
fix-call-second = call the second one { $letter }
fix-take-off = take { $letter } off the list
fix-take-second = take the second one off the list
fix-use-kind = use { $name }
fix-write = write { $number }
fix-tint = make { $letter } { $tint }
mend-close = close the piece: { $moves }
mend-change = at move { $step } do this instead: { $move }
mend-put-in = { $step ->
    [0] begin with: { $move }
   *[other] after move { $step } put in: { $move }
}
mend-take-out = leave out move { $step }: { $move }
mend-swap = make move { $second } before move { $first }
mend-through-all = at move { $step } go up through all the loops on { $peg }
mend-catch-all = let the fastener of move { $step } catch all the loops
mend-catch-also = let the fastener of move { $step } take up { $peg } as well
mend-twist = put the band of move { $step } on crossed, with a half-twist between { $peg } and { $other }
mend-untwist = put the band of move { $step } on flat between { $peg } and { $other }
mend-cap = wind a cap on { $peg } before move { $step }
mend-both = { $first }; then { $second }
pinned-move = move { $step } ({ $move })
pinned-moves = moves { $first } to { $last }
let-go = leave out { $pinned }
lay-cap = wind a cap on { $peg } before you work
lay-band = lay a band over { $peg } and { $other } before you work

## Techniques of the atlas

technique-chain = { $bands ->
    [one] plain chain
   *[other] chain of { $bands } bands a link
}
technique-strip = { $rows } chains tied { $every ->
    [one] at every peg
   *[other] at every { $every } pegs
}{ $bands ->
    [one] {""}
   *[other] , { $bands } bands a link
}
technique-zigzag = zigzag over { $rows } rows{ $bands ->
    [one] {""}
   *[other] , { $bands } bands a link
}
technique-lozenge-open = row of open lozenges
technique-lozenge-capped = row of filled lozenges with a cap
technique-tail = tail on { $pegs } pegs, lifted over { $over ->
    [one] one band
   *[other] { $over } bands
}{ $bands ->
    [one] {""}
   *[other] , { $bands } at a time
}
technique-tube = tube on { $pegs } pegs{ $bands ->
    [one] {""}
   *[other] , { $bands } bands side by side
}
technique-mat = flat mat { $across } bands across{ $bands ->
    [one] {""}
   *[other] , { $bands } bands side by side
}
technique-hung = chain with hung bands of { $turns } turns, one every { $every } links
technique-points = chain with points, one every { $every } links
technique-fork = stem that parts into { $arms } arms
technique-ring = closed ring, chain of { $bands ->
    [one] 1 band
   *[other] { $bands } bands
} a link
technique-joined = { $chains } chains joined at both ends
technique-fringe = chain with a fringe, one strand every { $every } links
technique-failed = the technique { $name } could not be measured: { $why }
no-such-technique = there is no technique called { $name }

## A picture becomes a mat

picture-empty = the file is empty
picture-unknown-kind = it is none of the kinds that are known, which are { $known }
picture-damaged = the file is damaged, or not the whole of it is here
colours-unreadable = “{ $part }” is no colour; write its name and its tint, as slate=#4a5a6a, with commas between
colours-twice = the colour { $name } is given twice
no-colours-told = there are no colours to make the mat of: give --colours, or a stash that says the tints of its bands
mat-size = a mat of { $across } bands across and { $down } rows cannot be made: it has 2 to { $widest } across, at least 2 rows and at most { $most } bands in all
mat-pegs = a loom for a mat has 3 to 1,000 pegs in a row, not { $pegs }
most-colours = a mat has 1 to 40 colours, not { $most }
crop-impossible = the crop is empty or reaches beyond the picture; give left, top, right and bottom as shares from 0 to 1
stash-few-colours = the piece needs { $needed } colours to choose from; there are { $have }
band-size-unreadable = “{ $text }” is no size of a band; write bore x thickness in mm, as 15x1.8
loom-size-unreadable = “{ $text }” is no size of a loom; write rows x pegs, as 3x26, with at most 10,000 pegs
loom-not-straight = this piece is worked on a loom without straight rows, so no other straight loom suits it
no-other-size = this piece has no repeats and no free end, or does not close round a wrist, so there are no other sizes of it
variant-refused = one of its moves cannot be made there
variant-falls = not every band would be held
variant-name = { $parts }
variant-size = size { $size }
variant-loom = on a loom of { $rows } × { $pegs } pegs
variant-bands = of bands of { $bore_mm } × { $thickness_mm } mm
variant-colours = colours { $number }
variant-left = for the left hand
batch-no-workers = the worker processes end as soon as they start; nothing can be made
batch-lost = it ended every process that worked at it
batch-no-scheduler = no scheduler answers at { $address }
batch-too-large = { $count } things are too many for one batch; at most { $most } are made
mat-about = a mat made of a picture, worked row on row; seen from the front, the first row is its top, and peg A1 is at its left edge
mat-row = row { $row } of the mat
mat-rows = rows { $first } to { $last } of the mat
mat-end = run a cord through all the loops, take the mat off the pegs, and tie the cord without pulling the edge together

## What is refused

no-demo-piece = there is no piece called { $name }; there are { $known }
leads-out-of-folder = { $path } leads out of { $folder }; nothing was written there
worn-needs-girth = a worn piece needs the girth of a wrist, such as 16 cm
tension-form = the tension map is painted as png or svg
picture-width = a picture of this form is 100 to { $widest_px } pixels wide, not { $width_px }
no-such-colour = the pattern has no colour { $letter }
no-photo-renderer = photo-like pictures need the renderer: pip install 'pegwright[photo]'
starter-size = a chain needs 3 to 10,000 pegs, and a loom has 1 to 700 rows
starter-pegs = a loom of { FIXED($count) } pegs is too large: at most { FIXED($limit) } in all
starter-title = a title has 1 to 200 characters that can be seen; give one with --title
timing-unreadable = { $text } is not a timing; write outline=42 or 1-8=60
timing-impossible = this timing is impossible: moves { $first } to { $last } of { $moves } in { $seconds } s
motif-never-worked = the motif { $name } is never worked
narration-pace = { $wpm } words a minute; narration to work along with takes 110 to 130
no-bands = there are no bands, so there is nothing to bring to rest
not-a-tint = { $tint } is not a colour; write #rrggbb
class-size = a class has 1 learner or more and a spare share from 0 to 10, not { $learners } and { $spare_share }
beyond-the-loom = { HOLDER($peg) } lies beyond the loom; mend the pattern before it is mirrored
repeats-impossible = no piece of { $repeats } repeats can be made of this one
film-height = a film is an even number of pixels high, from 180 to 2160, not { $tall_px }
no-piper = piper is not installed; leave the voice out, or install it
no-film-encoder = films need the extra “film”, which is not installed: pip install 'pegwright[film]'; its encoder carries GPL parts
no-voice-in = there is no voice in { $file }; leave the voice out, or install one
voice-failed = the voice { $program } failed: { $told }
voice-silent = the voice gave no sound: { $reason }
voice-bits = the voice gave sound of { $bits } bits; 16 were expected
does-not-close = no clip joins two ends of this piece: it does not close round a wrist
slid-in-part = only some loops of band { $band } were slid, and such a band cannot be drawn yet
no-way-between-pegs = the pegs leave no way between them, so the piece cannot be drawn
no-way-through-column = so many loops cross at one height that the piece cannot be drawn
pegs-coincide = two pegs stand in one place, so the piece cannot be drawn
wire-or-reading = the wire and the error of a reading are mm, more than 0 and less than 100
no-weight-and-length = { $text } is no weight and length; write GRAMS=MM, as 100=29.8
no-such-part = no part is called { $name }; there are { $known }
cannot-read = { $file } cannot be read: { $reason }
no-words-to-exchange = { $file } holds no words to exchange: { $reason }
names-no-colour = { $text } names no colour; write A=#204060
no-such-trouble = there are { $count } trouble spots, so none of number { $number }
trouble-not-seen = trouble { $number } shows neither on the loom nor in the piece
