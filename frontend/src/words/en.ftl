# The studio's words. A maker's words, few of them.
shelf = Shelf
begin = Lay a first piece
begin-more = Choose one and change it as you like. Nothing leaves this machine.
your-pieces = Your pieces
search = Search
none-found = No piece with that name.
bands = { $count ->
    [0] no bands yet
    [one] 1 band
   *[other] { $count } bands
}
unreadable = cannot be read
empty-loom = An empty loom

undo = Undo
redo = Redo
saved = Saved
saving = Saving…
not-saved = Not saved: the studio does not answer
not-saved-because = Not saved: { $reason }
changed-elsewhere = This piece was changed in another window.
take-theirs = Show the other one
keep-mine = Keep mine as a copy
title = Name of the piece
press = Press the lesson
pressing = Pressing…
pressed = The lesson is pressed
versions = Versions
keep-version = Keep this version
kept = kept { $when }
go-back-to = Go back to it
copy = Duplicate
copy-of = { $title } (copy)
download = Save the document
open-file = Open a document
read-words = Read your own words
read-words-more = Paste or drop a pattern as you wrote it down, or a file with it.
words-here = The pattern in your own words
words-example = A loom with 1 row of 12 pegs. Stretch a red band from A1 to A2. Carry on up to A12. …
read-it = Read it
accept-piece = Open the piece
questions-left = { $count ->
    [one] One question is left.
   *[other] { $count } questions are left.
  }
words-hold = All is read, and every band holds.
words-do-not-hold = All is read, but not every band holds. Open the piece to see why.
take-answer-back = Take the last answer back
take-answer = That one
another-answer = another
top-loop = the top one
lowest-loop = the lowest one
the-words = Your words
the-loom = The loom
not-understood = not understood
about-piece = about the piece

# Listening back to a recording
listen-back = Listen back
listen-back-short = Does your recording say what the pattern says? Drop its captions here.
listen-back-what = Drop the captions of a recording of this lesson, and the sound or film too if you like to hear it here. You are told what it says otherwise, when each chapter begins, and which words of the captions were misheard. Nothing leaves this machine.
captions-how = Captions are a file with times: WebVTT, SRT, or lines that begin with a time, as [1:05]. A site for films, a meeting program or a phone can write them; look there for “captions”, “subtitles” or “transcript”, and save them.
choose-captions = Captions…
choose-sound = Sound or film…
language-heard = Spoken in
no-recording = { $file } is neither captions nor a recording.
captions-too-long = { $file } is too long to be read as captions. Cut it into parts.
sound-not-played = This browser cannot play { $file }. Its captions are read all the same.
listening = Listening…
listen-again = Listen again
heard-before = The piece has changed since this was heard.
heard-all = { $chapters ->
    [one] One chapter
   *[other] { $chapters } chapters
  } heard. { $otherwise ->
    [0] Nothing is said otherwise for certain
    [one] One thing is said otherwise
   *[other] { $otherwise } things are said otherwise
  }; { $questions ->
    [0] no questions
    [one] one question
   *[other] { $questions } questions
  }.
line-of = Line { $line }:
timeline = The recording from beginning to end
place-in-recording = Place in the recording
go-to-time = Go to { $time }
said-otherwise = What the recording says otherwise
heard-otherwise = otherwise
heard-question = a question
how-sure = { $share } sure
nothing-otherwise = Nothing. What could be heard is as the lesson says it.
mended-captions = Captions put right
take-all = Take all
refuse-all = Refuse all
take-mend = Take “{ $after }” for “{ $before }”
nothing-mended = No word had to be put right.
chapters = Chapters
words-heard = { $share } of its words heard
could-be-cut = What could be cut
trim-silence = silence
trim-aside = an aside
trim-again = begun, then said anew
pace-heard = { $count ->
    [one] It was heard how long you took to show one step.
   *[other] It was heard how long you took to show { $count } steps.
  } The lesson's minutes and its timetable can go by that.
keep-pace = Keep my pace
pace-kept = Your pace is kept with the piece; the lesson goes by it.
edit-pace = Keep the pace
take-along = To take along
draft-of = A draft of { $file }
draft-steps = { $steps ->
    [one] One step is read
   *[other] { $steps } steps are read
  } from { $sentences ->
    [one] one sentence
   *[other] { $sentences } sentences
  }.
draft-what = Only what is said clearly is read. All other sentences are left for you to write beside their times: nothing is guessed.
draft-open = { $count ->
    [one] One thing is still open in the piece
   *[other] { $count } things are still open in the piece
  }
left-to-you = left to you
open-recording = Open the captions of a recording
save-sentences = Save the sentences with their times
sentences = sentences

close = Close
language = Language
left-handed = Left-handed

tools = Tools
tool-point = Point
tool-lay = Lay
tool-hook = Hook
tool-lift = Lift over
tool-transfer = Transfer
tool-slide = Slide on
tool-bind = Last band
tool-clip = Clip
tool-knot = Knot
tool-snap = Snap
do-turn = Turn round
do-hang = Hang on the hook
do-again = Once more
do-to-end = On to the end
tip-point = Press a band or a peg to see it from the side.
tip-lay = Go from peg to peg. The same peg twice winds a cap.
tip-lay-more = From { $pegs }: the next peg, or Enter.
tip-hook = Press the peg with the loop, then the peg it goes to.
tip-hook-to = Loop { $loop } of { $peg }: which peg does it go to?
tip-lift = Press the peg: its lowest loop goes over the others and off. Dragged to another peg, it goes on there.
tip-lift-on = Loop { $loop } of { $peg }: on to which peg? The same one: off.
tip-transfer = Press the peg with the loop, then the peg it goes to.
tip-transfer-end = Press the peg with the loop, or the loose end, then the peg it goes to.
tip-put = Press the peg that the loose end goes on; with Shift, several.
tip-put-more = The loose end on { $pegs }: the next peg, or Done.
tip-slide = Hang bands on the hook first; then press the two pegs.
tip-bind = Press the peg whose loops the last band goes through; with Shift, only some of them.
tip-bind-some = Press the lowest loop that the last band goes through.
tip-clip = Press the peg whose loops are clipped.
tip-knot = Press the peg whose loops are tied.
tip-snap = Press a band: what falls if it snaps?
turns = Times round each peg
twist = Half-twist
several-pegs = Several pegs
on-another-peg = On another peg
some-loops = Only some loops
done = Done

stash = Bands
add-colour = New colour
colour-name = Name
colour-letter = Letter
colour-tint = Tint
change = Change
add = Add

loom = Loom
change-loom = Change the loom
rows = Rows
pegs = Pegs in a row
pitch = Pitch, mm
row-gap = Between rows, mm
shift = Every second row shifted by half
channel = Channel opens
channel-far = away
channel-near = towards you
channel-left = left
channel-right = right
larger = Larger
smaller = Smaller
whole = Whole
across = On its side
you = you

steps = Steps
phase-place = Place
phase-turn = Turn
phase-work = Work
phase-finish = Finish
first = To the beginning
back = One step back
on = One step on
last = To the end
step-of = Step { $step } of { $of }
no-steps = Nothing is laid yet.

holds = All { $count } bands are held.
holds-none = Nothing is laid yet.
falls = { $count ->
    [one] 1 of { $of } bands falls.
   *[other] { $count } of { $of } bands fall.
}
unproved = { $count ->
    [one] 1 band is not proved either way.
   *[other] { $count } bands are not proved either way.
}
working = Looking…
findings = What was found
no-findings = Nothing wrong was found.
mend = Mend it: { $label }
severity-error = fault
severity-warning = look
severity-note = note
needs = What it takes
clips = { $count ->
    [one] 1 clip
   *[other] { $count } clips
}
snap-falls = If band { $band } snaps, { $count ->
    [0] nothing else falls
    [one] one more band falls
   *[other] { $count } more bands fall
}.
snap-free = Band { $band } is not held anyway.

stack-of = Peg { $peg }
stack-at = Stack of {$peg}
stack-bare = No loop on it.
loop-name = Loop { $loop } { $letter }: { $colour }, band { $band }
take-loop = Take it
bind-from-here = The last band goes through this one and those above
band-of = Band { $band }
delete = Take it out
move-band = Move it
copy-band = Copy it
only-this = Only this one
all-of-repeat = All { $count } of the repeat
peg-name = Peg { $peg }, { $count ->
    [0] bare
    [one] 1 loop
   *[other] { $count } loops
}
moved-off-rows = That would lead off the loom.
no-way-on = There is nowhere to go on to.

edit-lay = Lay a band
edit-move = { $what }
edit-colour = Change a colour
edit-recolour = Recolour a band
edit-delete = Take a step out
edit-loom = Change the loom
edit-title = Rename
edit-version = Go back to a version
no-difference = No difference.
differs-title = Called “{ $old }” then, “{ $now }” now.
differs-loom = Another loom.
differs-more = { $count ->
    [one] one more band in { $letter }
   *[other] { $count } more bands in { $letter }
}
differs-fewer = { $count ->
    [one] one band fewer in { $letter }
   *[other] { $count } bands fewer in { $letter }
}
differs-new = { $count ->
    [one] step { $from } new
   *[other] steps { $from } to { $to } new
}
differs-gone = { $count ->
    [one] step { $from } taken out
   *[other] steps { $from } to { $to } taken out
}
differs-changed = { $count ->
    [one] step { $from } changed
   *[other] steps { $from } to { $to } changed
}
differs-colours = The colours changed.
not-closed = Nothing closes it yet. { $count ->
    [one] 1 band is laid.
   *[other] { $count } bands are laid.
}
more-like-it = { $count } more like it
recolour = Colour
take-step-out = Take this step out
motifs = Motifs
tip-motif = Press the peg where { $name } begins.
tip-move = Press the peg where its first peg goes.
tip-copy = Press the peg where the first peg of the copy goes.
tip-marks = Shift marks several steps.
with-run = { $count ->
    [one] With this step …
   *[other] With these { $count } steps …
}
colours-in-turn = Colours in turn, round by round
times = Times in all
on-by-rows = Move on each time, in rows
on-by-pegs = Move on each time, in pegs
repeat = Repeat
mirror-sides = Mirror left to right
mirror-ends = Mirror near to far
half-round = Turn half round
motif-name = Name of the motif
make-motif = Make a motif
take-run-out = Take them out
unmark = Clear the marks
with-steps = With the steps marked, or with all
mark-steps = Mark steps
edit-repeat = Repeat steps
edit-mirror = Mirror steps
edit-rotate = Turn steps half round
edit-copy = Copy a band
edit-move-band = Move a band
edit-motif = Make a motif
refused = Not saved: see what was found
lesson = The lesson
lesson-preview = The lesson as its readers follow it
hand = Worked with the
hand-right = right hand
hand-left = left hand
units = Lengths in
paper = Paper
edition = Handout
edition-standard = as usual
edition-large = large print, 18 points
edition-giant = large print, 24 points
edition-grey = black on white
learners = Learners
press-holds = It is pressed once all bands are held.
stop = Stop
download-zip = Download it all
job-failed = Something went wrong. Try again.
finished = Off the loom
finished-size = { $length } × { $width } cm
finished-keys = Arrow keys turn it, plus and minus bring it nearer, 0 shows the front.
finished-empty = Once it is closed with a clip or a knot, the finished piece is shown here.
finished-open = Nothing closes it yet.
finished-waiting = It changed.
settle-now = Take it off the loom
settling = Settling…
see-large = Look closely
beside-loom = Back to the loom
once-more = Once more
no-3d = This browser cannot draw in three dimensions.
turn-left = Turn to the left
turn-right = Turn to the right
turn-up = Turn away
turn-down = Turn towards you
front = Front
worn = On the wrist
tension = Pull
other-colours = Other colours
keep-colours = Keep these
edit-colourway = Change the colours round
band-reading = Band { $band }, { $letter } { $name }: { $tension } N
fit = Fit
wrist = Wrist
wrist-hint = A wrist: 16 cm, 6 1/4 in, M, age 8. Or another girth: ankle 22 cm, neck 34 cm, ring 54, bottle 25 cm.
measuring = Measuring…
measure = Measure how it stretches
fits = Fits { $part ->
    [ankle] ankles
    [neck] necks
    [finger] fingers
    [key] keys
    [bottle] bottles
   *[wrist] wrists
 } from { $low } to { $high }:
fits-nobody = It fits no { $part ->
    [ankle] ankle
    [neck] neck
    [finger] finger
    [key] key
    [bottle] bottle
   *[wrist] wrist
 } as it is:
feel-loose = loose on this one
feel-easy = easy on this one
feel-snug = snug on this one
feel-tight = tight on this one
trying-lengths = Trying other lengths…
one-repeat = One repeat is { $count ->
    [one] 1 band
   *[other] { $count } bands
}, { $length }.
repeats-more = { $count ->
    [one] one repeat more
   *[other] { $count } repeats more
} ({ $all } in all)
repeats-fewer = { $count ->
    [one] one repeat fewer
   *[other] { $count } repeats fewer
} ({ $all } in all)
extension-bands = { $count ->
    [0] no extension bands
    [one] 1 extension band
   *[other] { $count } extension bands
}
mend-fit = Make it fit: { $what }, { $length }
mend-nearest = The nearest it comes is: { $what }, { $length }
wearing = Closing it round the wrist…
worn-bent = Drawn bent round the wrist, not settled there.
worn-closed = Closed round the wrist and settled there.
edit-fit = Make it fit { $wrist }
care = Never sleep in a tight band, and keep bands away from small children. Follow your local rules.

# The rehearsal
rehearsal = Where makers slip
rehearsal-what = Every likely slip at every step is tried out, to find where makers go wrong.
rehearse = Rehearse it
rehearsing = Trying out slips…
rehearsed = { $count ->
    [one] One slip was tried. The bars at the steps show where it costs most.
   *[other] { $count } slips were tried. The bars at the steps show where they cost most.
  }
rehearsed-none = No slip does harm to this piece.
slip-steps = { $count ->
    [one] Step { $first }:
   *[other] { $count } steps, { $first } to { $last }:
  }
slip-guess = not proved
slip-right = Right
slip-wrong = Wrong
slip-show = Show step { $step }
slip-end = Show how it ends
slip-falls = { $count ->
    [0] No band falls off.
    [one] The band that falls off is marked.
   *[other] The { $count } bands that fall off are marked.
  }
slip-back = The way back
look-after = Stop and look after step { $steps }: that catches most.
often-wrong = often goes wrong

# The library of motifs, and the stash
motif-of = of { $title }
no-motifs-found = No motif with that name.
motifs-more = Begin with one, or bring it into a piece.
from-shelf = From the shelf
edit-bring = Bring the motif { $name }
at-hand = At hand
from-stash = From your stash
stash-short = { $count } short
stash-has = { $count } at hand
take-away = Take it off the shelf
taken-away = “{ $title }” was taken off the shelf.
put-back = Put it back

# Kinds of loom
loom-rows = straight
loom-joined = joined straight ones
loom-round = round
loom-pegs = each peg placed by itself
looms = Looms joined
joined-how = Joined
joined-beside = side by side
joined-beyond = end to end
pegs-of-ring = Pegs of a ring
rings = Rings
diameter = Diameter, mm
channel-out = outwards
channel-in = inwards

# A picture becomes a mat
mat = Mat
mat-of-picture = Make a mat of a picture
mat-of-picture-more = Choose a photo or a drawing, or drop it anywhere here.
picture-to-mat = A mat of your picture
picture-too-large = “{ $file }” is too large to be looked at here.
picture-unreadable = “{ $file }” cannot be read.
your-picture = Your picture
crop = Which part of it
crop-left = From the left
crop-right = to the right
crop-top = From the top
crop-bottom = to the bottom
crop-whole = All of it
mat-choices = What you choose
mat-size = Size
mat-across = Bands across
band-bore = Inside width of a band, mm
band-thickness = Thickness of a band, mm
mat-colours = Colours
mat-most = Colours at most
mat-takes = { $count ->
    [one] takes 1
   *[other] takes { $count }
}
mat-look = How it will lie
mat-about = { $across } bands across, { $rows } rows, { $bands } bands in all; about { $width } × { $height } cm.
mat-looms = It takes { $pegs } pegs in a row{ $count ->
    [one] .
   *[other] : { $count } looms joined end to end.
}
mat-shades = Shades
mat-areas = Clear areas
mat-mixed = Mixed from dots
mat-front = The first row you work is the top of the picture, the first peg its left side.
mat-no-colours = Choose at least one colour.
mat-make = Make the mat
mat-making = Working and proving the mat
tint-tar-black = tar black
tint-stone-grey = stone grey

# The library of techniques
techniques = Techniques
techniques-more = Choose one by its numbers: measured at rest and rehearsed. You begin with about 15 cm of it, proved.
techniques-lay = Lay one as a motif: the bands as they are laid, up to where the loom is turned round or the piece is closed.
techniques-found = { $count ->
    [0] No technique is like that.
    [one] One technique.
   *[other] { $count } techniques.
}
technique-width = Width, cm
technique-least = Width from, cm
technique-most = Width to, cm
technique-colours = Colours
technique-time = Time
technique-level = As hard as
technique-any = any
technique-all = Show all
technique-minutes = { $minutes } min
technique-size = { $width } cm wide, { $height } cm high.
technique-bracelet = 15 cm: { $bands } bands, about { $minutes } min for a beginner.
technique-swatch = Swatch: { $bands } bands, about { $minutes } min for a beginner.
technique-wrists = Suits wrists of { $low } to { $high } cm.
technique-more = More numbers
technique-repeat = One repeat
technique-repeat-bands = Bands a repeat
technique-stretch = Length when pulled with 1 N
technique-stack = Most loops on a peg
technique-strain = Most stretch on the loom
technique-snap = More bands that fall if one snaps
technique-begin = Begin a piece
technique-lay = Lay it
technique-other-loom = It is worked on another kind of loom.

# Variants
variants = Variants
variants-what = The same piece in other sizes and colours, for the other hand, on another loom: each worked and proved anew.
variants-sizes = Sizes
variants-own-sizes = Other sizes or girths, as “16 cm, age 8”
variants-colourways = Colourways
variants-how-many = How many to show
variants-stash = From the { $count } colours of your stash.
variants-own-colours = Your stash has too few colours yet, so the studio’s own come in.
variants-others = Show others
variants-left = For the left hand too
variants-loom = On another loom
variants-bands = Of other bands
variants-make = Make them
variants-making = Working and proving the variants
variants-picturing = Bringing them to rest for their pictures
variants-made = { $count ->
    [0] None of them holds.
    [one] One variant, proved to hold.
   *[other] { $count } variants, each proved to hold.
}
variant-same = As it is
variant-size = size { $size }
variant-long = { $length } cm at rest
variant-left = left hand
variant-loom = another loom
variant-bands = other bands
variant-apart = the nearest two colours are { $apart } apart
variant-uses = takes { $share } % of what you have
variant-buy = takes more than you have
variant-take = Take it here
variant-new = New piece
variant-on-shelf = “{ $title }” is on the shelf.
variant-open = Open it
edit-variant = Take a variant

# Trouble with the studio
locked = Not saved yet: the studio was started again. Open the address that it printed; this page then goes on by itself.
not-saved-changed = Not saved
no-answer = The studio does not answer.
no-document = “{ $file }” is not a pattern.
unsaved-edits = “{ $title }” has edits that were not saved.
recover = Go on with them
discard = Drop them
recovered = Edits that were not saved the last time were put back.
undo-recovered = Take them out
keep-recovered = Keep them
edit-recovered = Put unsaved edits back

# Panels, keys
panels = Panels
panel-found = Found
panel-bands = Bands
panel-steps = Steps
panel-piece = Finished
panel-menu = More
letters = Letters
help = Keys
help-arrows = from peg to peg
help-enter = press the peg; finish what you began
help-more = press one more peg
help-escape = leave it
help-steps = a step back, a step on
help-stack = the stack of the peg
help-save = save now

# Steps as they are said
say-place = Lay { $colour } over { $pegs }{ $twisted ->
    [yes] , with a half-twist
   *[no] {""}
}
say-wind = Wind { $colour } { $turns } times round { $peg }
say-hook = Hook { $loop ->
    [1] the lowest loop
    [-1] the top loop
   *[other] { $top ->
        [0] loop { $loop }
       *[other] loop { $top } from the top
    }
} of { $from } over to { $to }
say-slide = Slide what hangs on the hook on to { $loop ->
    [1] the lowest loop
    [-1] the top loop
   *[other] { $top ->
        [0] loop { $loop }
       *[other] loop { $top } from the top
    }
} of { $from }, and that over to { $to }
say-transfer = Move { $count ->
    [one] the top loop
   *[other] the top { $count } loops
} of { $from } to { $to }
say-lift = Lift { $loop ->
    [1] the lowest loop
    [-1] the top loop
   *[other] { $top ->
        [0] loop { $loop }
       *[other] loop { $top } from the top
    }
} of { $peg } over the others and off
say-lift-on = Lift { $loop ->
    [1] the lowest loop
    [-1] the top loop
   *[other] { $top ->
        [0] loop { $loop }
       *[other] loop { $top } from the top
    }
} of { $peg } over the others and on to { $to }
say-put = Put the free end on { $pegs }
say-bind = Pull the last band, { $colour }, through the loops of { $peg }
say-only-top = { $said }, only { $count ->
    [one] the top one
   *[other] the top { $count }
}
say-through = { $said }, inside only { $count ->
    [0] none
    [one] the top one
   *[other] the top { $count }
} of the loops above
say-together = { $said }, { $count } together
say-extend = Add an extension of { $count } bands in { $colour }
say-hang = Hang { $colour } on the hook
say-clip = Clip the loops of { $pegs }
say-knot = Tie the loops of { $pegs }
say-turn = Turn the loom round
the-free-end = the free end
the-hook = the hook
and = { $first } and { $last }
impossible-step = Step { $step } cannot be made.
job-ended = It was stopped before it was ready.
falls-apart = It falls apart: { $count } of { $of } bands fall.
what-is-left = This is what is left.
nothing-left = Nothing is left to be drawn.

# Closing
loose-end = Loose end
tip-end = Now press the peg at the far end that closes it.
do-extend = Extension
extension-count = Extension bands

# Bands chosen together, copied, chained
tip-usual = { $peg } once more: to { $usual }.
tip-chain = Go along the pegs: a band from each to the next.
tip-paste = Press the peg where the first peg of the copy goes.
edit-paste = Lay what was copied
through = Inside the loops above it:
through-all = { $count ->
    [one] the one above
   *[other] all { $count }
}
through-some = { $count ->
    [0] none of them
    [one] the top one only
   *[other] the top { $count } only
}
bands-chosen = { $count ->
    [one] 1 band chosen
   *[other] { $count } bands chosen
}
all-of-motif = All of { $letter } in this motif
all-of-colour = All of { $letter } in this repeat
copy-chosen = Copy what is chosen
delete-chosen = Take out what is chosen
paste = Lay what was copied
recolour-run = { $colour } becomes
several-bands = Several bands
chain = Chain
cap-turns = Turns of a cap

# Notes on a step, steps moved
add-note = Add a note
change-note = Change the note
notes-of = Notes on step { $step }
note = Note
warning = Warning
write = Write it down
edit-note = Write a note on a step
edit-move-steps = Move steps
help-ends = to the first or last peg of the row
help-shift = move a step earlier or later

# Commands
find = Find
find-command = Find a command
no-command = No command with that name.
take-colour = Lay with { $colour }
take-motif = Lay the motif { $name }

# The tour
tour = The tour
tour-of = { $step } of { $of }:
tour-leave = Leave the tour
tour-1 = draw from a peg to the next one, and a band lies over both.
tour-2 = press “On to the end”, and it goes on along the row.
tour-3 = take “Hook” and press a peg with two loops, then the peg before it: the lower loop goes there. Or lay every band first, and press “Find an order”.
tour-4 = close the piece with “Clip” or “Knot”, or by a mend that is offered among the findings.
tour-5 = wait for the piece off the loom, and look at it closely.
tour-6 = open “The lesson”: pages, pictures and film for those who are to make it.

# A new piece
new-piece = New piece
piece-name = What is it called?
begin-it = Begin

# Colours that pieces begin with
tint-slate-blue = slate blue
tint-foam-white = foam white
tint-buoy-red = buoy red
tint-lamp-yellow = lamp yellow
tint-weed-green = weed green
tint-sand = sand

# Orders of working, and mends
planning = Orders and mends
find-order = Find an order
find-order-what = Lay your bands; the way to work them is found and proved.
find-other-orders = Find other orders
finding-orders = Looking for orders…
orders-enough = Show what is found
orders-found = { $count ->
    [one] One order was found. Every band is proved held in it.
   *[other] { $count } orders were found. Every band is proved held in each.
  }
orders-cut-short = There was no time to try them all.
orders-longer = Look for longer
orders-afresh = Leave out what is worked so far, and look again
order-shown = The order that is shown
order-of = Order { $number } of { $of }, not taken yet:
order-phrases = { $count ->
    [one] one phrase to teach
   *[other] { $count } phrases to teach
  }
order-above = { $count ->
    [0] never a loop above the one that is taken
    [one] one loop lies above one that is taken
   *[other] { $count } loops lie above those that are taken
  }
order-travel = the hook goes { $length } cm
order-alike = left and right alike
order-loose = { $count ->
    [one] one loop that nothing passes through
   *[other] { $count } loops that nothing passes through
  }
order-warnings = { $count ->
    [one] one warning
   *[other] { $count } warnings
  }
order-before = The order before
order-next = The next order
order-take = Take it
order-leave = Leave it as it was
edit-order = Take an order
mend-piece = Mend the piece
finding-mends = Looking for what mends it…
mended = Mended: { $change }.
mend-ways = Ways to mend it
mend-cause = What was wrong
order-failures = { $count } slips that bring bands down, on average
orders-rehearsing = What goes wrong with each is being rehearsed.
simpler = The same piece, worked more simply
simpler-before = now
simpler-after = then
simpler-show = Show it on the loom
simpler-shown = The same piece, worked more simply, not taken yet:
effort-phrases = phrases to teach
effort-colours = changes of colour
effort-travel = the hook goes
order-given = As it is now:

# A piece as one file
share-short = Share
share = Share the piece as one file
share-what = The file opens by a double press in any browser: everybody can follow the piece on it. Dropped on the shelf of a studio it is the piece itself again, with nothing lost.
share-making = Making the file…
share-made = “{ $file }” is saved where your browser saves things.

# The chart, on paper
chart = Chart
byline = A piece by { $designer }
print = Print
chart-steps = steps { $from } to { $to }
chart-more = { $count } more phases are not drawn; their steps stand below.
chart-times = { $count } times in all, moved on each time:

# Pegs drawn by hand
pegs-how = A press puts a peg down, a drag moves it; the arrow keys move the one that is chosen. The grid is 10 mm wide.
peg-chosen = Peg
peg-name-field = Called
peg-x = To the right, mm
peg-y = Away from you, mm
add-peg = One more peg
remove-peg = Take the peg out

# A picture to trace
trace = Trace a picture
trace-what = The picture lies under the loom while you lay bands over it. It stays in this browser.
trace-file = Picture
trace-strength = Strength
trace-width = Width, mm
trace-turn = Turned, degrees
trace-fit = Fit it by two points
trace-remove = Take the picture out
no-picture = “{ $file }” is no picture that this browser can read.
tip-trace-1 = Press a point of the picture that you know.
tip-trace-2 = Now press the peg where it belongs.
tip-trace-3 = Press another point of the picture.
tip-trace-4 = Now press the peg where that one belongs.
