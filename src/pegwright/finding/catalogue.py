"""The wording of every finding, by code. Lower case, no full stop, a maker's words.

Each code has an entry of the same name in `docs/findings.md`; a test fails where one is missing.
"""

from __future__ import annotations

from typing import Literal, NamedTuple


class Entry(NamedTuple):
    """How a finding is graded and worded; the texts are `str.format` templates over its facts."""

    severity: Literal["error", "warning", "note"]
    message: str
    hint: str = ""


CATALOGUE: dict[str, Entry] = {
    # --- reading the document -------------------------------------------------------------------
    "file-unreadable": Entry(
        "error", "{file} cannot be read: {reason}", "look at the name and at who may read the file"
    ),
    "not-text": Entry("error", "this is not a text file", "a pattern is a JSON text in UTF-8"),
    "too-large": Entry(
        "error", "the file holds {size} bytes; a pattern may hold {limit}", "take out what is not a pattern"
    ),
    "not-json": Entry("error", "the text is not valid JSON: {reason}", "mend the text at that place"),
    "not-a-pattern": Entry("error", "{reason}", "{hint}"),
    "unknown-version": Entry(
        "error",
        "this pattern is of version {version}; this program reads versions 1 to {newest}",
        "use a newer pegwright, or correct the field pegwright",
    ),
    # --- motifs and repeats ---------------------------------------------------------------------
    "motif-twice": Entry(
        "error", "two motifs are called {name}; the first one is worked", "give the second a name of its own"
    ),
    "motif-unknown": Entry("error", "there is no motif called {name}", "the motifs here are: {known}"),
    "motif-in-itself": Entry(
        "error",
        "the motif {name} is worked within itself",
        "write a repeat instead; a motif cannot hold itself",
    ),
    "slot-empty": Entry(
        "error", "the motif {name} is not told which colour {slot} stands for", "name a colour for {slot}"
    ),
    "slot-unknown": Entry(
        "error", "the motif {name} has nothing called {slot} to fill in", "look at what the motif lists"
    ),
    "count-unknown": Entry(
        "error",
        "the repeat asks for {name} rounds, and nothing says how many that is",
        "write a number, or list {name} among the counts of the motif",
    ),
    "nested-too-deeply": Entry(
        "error", "repeats lie inside repeats more than {limit} deep", "make motifs of the inner ones"
    ),
    "too-many-moves": Entry(
        "error", "the pattern comes to more than {limit} moves, so none of them is made", "repeat less often"
    ),
    "too-many-passes": Entry(
        "error",
        "so many loops run through loops here that the record of them would not fit",
        "make the piece in parts; no maker could work this one",
    ),
    "too-many-refused": Entry(
        "error",
        "{count} moves have been refused, so the {left} after them are not tried",
        "mend the first ones and look again",
    ),
    "stack-full": Entry(
        "error",
        "{peg} would carry more than {limit} loops: {move}",
        "work some loops off the peg first, or share them out over more pegs",
    ),
    "too-many-pegs": Entry(
        "error", "the loom has {pegs} pegs; {limit} is the most that can be worked", "take a smaller loom"
    ),
    "off-the-rows": Entry(
        "error", "{reason}", "start the repeat further in, or move it on by fewer rows or pegs"
    ),
    # --- moves that cannot be made --------------------------------------------------------------
    "peg-unknown": Entry("error", "there is no peg {peg} on this loom: {move}", "the loom has {pegs}"),
    "peg-double": Entry(
        "error", "two pegs are called {peg}; only the first one is used", "give one of them another address"
    ),
    "peg-twice": Entry("error", "{peg} is named twice in one move: {move}", "name each place once"),
    "peg-bare": Entry(
        "error", "there is no loop on {peg} to take: {move}", "place or hook a band there first"
    ),
    "peg-inside-band": Entry(
        "error",
        "the band would run round the outside of {peg} without making a loop on it: {move}",
        "leave {peg} out, or place the band over fewer pegs",
    ),
    "peg-enclosed": Entry(
        "error",
        "the band would close round {peg}, which it does not name: {move}",
        "name {peg} too where the band turns there, or place it over pegs with none in between",
    ),
    "turns-mismatch": Entry(
        "error",
        "turns are given for {given} pegs, but the band goes over {pegs}: {move}",
        "give one number of turns for each peg, or none at all",
    ),
    "twists-mismatch": Entry(
        "error",
        "half-twists are given for {given} legs, but over {pegs} pegs there is one leg fewer: {move}",
        "give one number for each leg from a peg to the next, or none at all",
    ),
    "loop-missing": Entry(
        "error",
        "there is no loop {loop} on peg {peg}, which carries {loops}: {move}",
        "count the loops from 1 at the bottom, or from −1 at the top",
    ),
    "not-so-many-above": Entry(
        "error",
        "the hook cannot go through {through} loops above on peg {peg}, where there are {above}: {move}",
        "leave the number out to go through all of them",
    ),
    "same-peg": Entry(
        "error", "the loop would go back on to {peg}, where it comes from: {move}", "name another peg"
    ),
    "nothing-to-lift-over": Entry(
        "error",
        "nothing lies above the loop on peg {peg} to lift it over: {move}",
        "place a band there first",
    ),
    "hook-empty": Entry("error", "nothing hangs on the hook to slide on: {move}", "hang a band on it first"),
    "end-unknown": Entry(
        "error", "there is no free end called {end} at this point: {move}", "finish with a last band first"
    ),
    "end-taken": Entry(
        "error", "there is a free end called {end} already: {move}", "give this end another name"
    ),
    # --- what a craft editor would say ----------------------------------------------------------
    "loop-dragged": Entry(
        "warning",
        "the loop of band {band} ({colour}) on {peg} is moved while {others} through it",
        "work the upper loop first; then nothing is dragged along",
    ),
    "band-not-worked": Entry(
        "warning",
        "band {band} ({colour}) is never worked: nothing is hooked, lifted or caught of it",
        "work it, or leave it out",
    ),
    "loop-left": Entry(
        "warning",
        "{count} left behind on peg {peg} with nothing through: {loops}",
        "see whether a move is missing there, or whether the loop above was taken instead",
    ),
    "start-not-held": Entry(
        "warning",
        "the loop of band {band} ({colour}) is pulled through nothing: no loop lies above it on {peg}",
        "put a cap or a first band on {peg}, or start one peg further on",
    ),
    "stack-too-high": Entry(
        "warning",
        "{loops} loops on peg {peg} stand {stack_mm:.1f} mm high; the peg holds {room_mm:.1f} mm",
        "work some of them before more are added, or use a loom with taller pegs",
    ),
    "no-finish": Entry(
        "warning",
        "nothing closes the piece: there is no clip and no knot",
        "end with a clip or a knot through the last loops",
    ),
    "catches-one": Entry(
        "warning",
        "the {kind} catches 1 of {loops} loops on {peg}",
        "catch them all; a single one slips off, and the rest runs out",
    ),
    "catches-more": Entry(
        "warning",
        "the {kind} is to catch {wanted} loops on {peg}, where there is no more than {loops}",
        "leave the number out to catch them all, and look whether a loop is missing there",
    ),
    "laid-after-clip": Entry(
        "warning",
        "a band is laid after the clip of step {clip} has closed the piece{more}",
        "close the piece last",
    ),
    "letter-twice": Entry(
        "error", "two colours have the letter {letter}; the first one counts", "give one another letter"
    ),
    "colour-not-listed": Entry(
        "warning",
        "colour {letter} is used but not listed among the colours",
        "list it, so that its bands can be named, weighed and bought",
    ),
    "colour-unused": Entry(
        "note", "colour {letter} ({name}) is listed but never used", "take it off the list, or use it"
    ),
    "band-kind-twice": Entry(
        "error", "two kinds of band are called {name}; the first one counts", "give one another name"
    ),
    "band-kind-unknown": Entry(
        "error",
        "colour {letter} is of a kind of band called {band}, which is not listed",
        "listed are: {known}",
    ),
    # --- what a technical editor would say of the lesson ---------------------------------------
    "contact-missing": Entry(
        "note",
        "nobody is named to whom mistakes can be told",
        "name yourself or your workshop as the designer",
    ),
    "licence-missing": Entry(
        "note", "nothing says who may copy or teach the piece", "name a licence, such as CC BY 4.0"
    ),
    "about-missing": Entry(
        "note", "nothing says what the piece is and whom it suits", "write a sentence or two in the notes"
    ),
    "level-low": Entry(
        "note",
        "the level is {level}, but the piece has what makes it {reckoned}: {reasons}",
        "raise the level, or keep it if you teach these moves first",
    ),
    "motif-unused": Entry("note", "the motif {name} is never worked", "work it, or take it out"),
    "repeat-of-none": Entry(
        "warning",
        "a repeat is done no times, so its steps can never be reached",
        "write how often, or take the repeat out",
    ),
    "side-named": Entry(
        "note",
        "the text says “{word}”; in the mirrored edition that is the other side",
        "name pegs instead of sides, or change the text for the other hand",
    ),
    "term-mixed": Entry(
        "note",
        "the text says “{word}” where the lesson says “{term}”",
        "use one word for one thing, or make “{word}” your own word for it throughout",
    ),
    "text-peg-unknown": Entry(
        "warning", "the text names {peg}, and no such peg is on the loom", "correct the peg"
    ),
    "text-peg-moves": Entry(
        "note",
        "the text names {peg}, but its step is repeated on other pegs",
        "say it so that it holds for every round",
    ),
    "text-step-unknown": Entry(
        "warning", "the text speaks of step {number}, and the lesson has {steps}", "correct the number"
    ),
    "text-hard": Entry(
        "note",
        "the text is hard to read for a child of twelve ({words} words a sentence, or long words)",
        "write shorter sentences with everyday words",
    ),
    "colours-alike": Entry(
        "note",
        "colours {one} and {other} are hard to tell apart for {who}",
        "make one of them lighter or darker; letters and patterns help on paper, not in the heap",
    ),
    "lesson-disagrees": Entry(
        "error",
        "the lesson and the working disagree on {what}: {said} said, {counted} counted",
        "plan the lesson again from the pattern",
    ),
    # --- is it held? ----------------------------------------------------------------------------
    "band-falls": Entry(
        "error",
        "band {band} ({colour}) falls off: {reason}",
        "see that a loop passes through it, and that the last ones are caught",
    ),
    "band-not-proved": Entry(
        "warning",
        "band {band} ({colour}) could be neither proved held nor proved free: {reason}",
        "try it on the loom before you teach it",
    ),
    "losses-left-out": Entry(
        "note",
        "what falls if one band snaps is worked out for up to {limit} bands; this piece has {bands}",
        "ask for a shorter piece with the same repeat",
    ),
    # --- size and counts ------------------------------------------------------------------------
    "band-slack": Entry(
        "warning",
        "a {name} band hangs slack over {pegs}: {taut_mm:.1f} mm round, {rest_mm:.1f} mm at rest{more}",
        "use smaller bands, a loom with wider pitch, or wind the band once more",
    ),
    "band-taut": Entry(
        "warning",
        "a {name} band is stretched {stretch:.1f} times over {pegs}{more}",
        "bands are worked up to about three times; try it with one of your own, eyes guarded",
    ),
    "band-overstretched": Entry(
        "error",
        "a {name} band is stretched {stretch:.1f} times over {pegs}, and may snap{more}",
        "use pegs closer together or larger bands; a snapping band can hurt an eye",
    ),
    "stated-count-wrong": Entry(
        "warning",
        "{what}: {stated} stated, but the pattern takes {counted}",
        "correct the number or the steps",
    ),
    "text-count-wrong": Entry(
        "warning",
        "the text says “{quote}”, but the pattern takes {counted}",
        "correct the number, or say which part of the piece is meant",
    ),
    # --- wrists ---------------------------------------------------------------------------------
    "wrist-unreadable": Entry(
        "error",
        "“{said}” is not understood as a wrist",
        "write a girth with its unit (16.5 cm, 6 1/2 in), a size ({sizes}) or an age (age 8)",
    ),
    "wrist-nonsense": Entry(
        "error", "{what} cannot be right", "measure round the wrist just past its bone, and look at the unit"
    ),
    "wrist-unusual": Entry(
        "warning",
        "a wrist of {said} lies outside {low_cm:.1f} to {high_cm:.1f} cm, where the surveys found wrists",
        "measure once more, and look at the unit",
    ),
    "wrist-too-young": Entry(
        "error",
        "no wrist is worked out for an age of {years:g} years: small bands are not for children under 3",
        "small bands and clips can choke; keep them away, and follow the rules where you live",
    ),
    # --- on the loom ----------------------------------------------------------------------------
    "band-near-breaking": Entry(
        "warning",
        "a {name} band over {pegs} is at {stretch:.1f} times its length and pulls with {force_n:.1f} N{more};"
        " bands break from about {breaks:g} times",
        "point it down and away from faces, wear glasses; better take pegs closer together or larger bands",
    ),
    # --- how the piece fits ---------------------------------------------------------------------
    "fit-loose": Entry(
        "warning",
        "at {length_mm:.0f} mm the piece hangs loose on a wrist of {wrist_mm:.0f} mm",
        "leave out extension bands or a repeat: {low_mm:.0f} to {high_mm:.0f} mm at rest would lie close",
    ),
    "fit-tight": Entry(
        "warning",
        "{length_mm:.0f} mm long the piece is tight on a wrist of {wrist_mm:.0f} mm{pulls}",
        "add extension bands until it is {low_mm:.0f} to {high_mm:.0f} mm at rest; a finger must slip under"
        " it easily, and it must come off at once where skin turns pale, puffy or numb",
    ),
    "fit-hand": Entry(
        "warning",
        "to pass a hand of {hand_mm:.0f} mm the piece must be pulled open with {pull_n:.0f} N",
        "add extension bands, or put it on open and clip it on the wrist",
    ),
    "fit-unmeasured": Entry(
        "note",
        "how the piece pulls is known up to {known_mm:.0f} mm; {what} needs {needed_mm:.0f} mm",
        "stretch it further, in the model or with weights, eyes guarded",
    ),
    "extension-nowhere": Entry(
        "warning",
        "{bands} extension bands would be needed, and the pattern has no free end to put them on",
        "finish with a last band whose two ends stay free, and clip there",
    ),
    "stretch-curve-nonsense": Entry(
        "error",
        "the stretch curve makes no sense: {reason}",
        "list lengths with the force that holds each, from rest upwards",
    ),
    "gauge-nonsense": Entry(
        "error",
        "a {what} comes out at {value_mm:.1f} mm",
        "measure both pieces at rest in the same way, and count again what they differ in",
    ),
    # --- calibration ----------------------------------------------------------------------------
    "measure-nonsense": Entry("error", "{what} of {value:g} {unit} makes no sense: {reason}", "{cure}"),
    "measure-few": Entry(
        "note",
        "{count} different weights are too few for {what}, which takes {needed}",
        "hang more weights, from slack to about three times the length",
    ),
    "density-odd": Entry(
        "warning",
        "from flat length, thickness and weight of 100 the density is {density_g_cm3:.2f} g/cm³;"
        " bands of silicone, rubber or TPE have {low:.2f} to {high:.2f}",
        "thickness tells most: measure it on several bands laid side by side; then weigh and count again",
    ),
    "modulus-odd": Entry(
        "warning",
        "the shear modulus comes out at {shear_mpa:.3f} MPa; small bands have {low:.2f} to {high:.2f}",
        "look at the unit of the weights (grams), at the thickness, and whether a single band hung there",
    ),
    "moduli-tangled": Entry(
        "note",
        "the weights stretch the band from {low:.1f} to {high:.1f} times, which does not tell C10 from C01",
        "their sum is well known and enough up to there; to part them, hang weights up to about three times",
    ),
    "stretch-misfit": Entry(
        "warning",
        "under {mass_g:g} g the band was {length_mm:.1f} mm long; the fitted rubber says {fitted_mm:.1f} mm",
        "measure that weight again; the ruler was taken to be good to {reading_mm:g} mm",
    ),
    # --- the stash ------------------------------------------------------------------------------
    "not-a-stash": Entry("error", "{reason}", "a stash lists packs with their size and price"),
    "stash-lacks": Entry(
        "note",
        "the stash has no pack of {what} to buy, so the cost is left open",
        "add a pack with its price to the entry",
    ),
    "currency-missing": Entry(
        "note", "prices are given without a currency", "name one, such as your bank writes it"
    ),
    # --- the table of slips ---------------------------------------------------------------------
    "not-a-slip-table": Entry("error", "{reason}", "a table gives chances to classes and classes to slips"),
    "slip-unknown": Entry("error", "there is no slip called {slip}", "the slips are: {known}"),
    "slip-class-unknown": Entry(
        "error", "there is no class of chance called {given}", "name one of these, or list it: {known}"
    ),
    # --- many of the same -----------------------------------------------------------------------
    "more-of-the-same": Entry(
        "note", "and {count} more of the same: {of}", "mend the first ones and look again"
    ),
    # --- the shape at rest ----------------------------------------------------------------------
    "bands-drawn-crossing": Entry(
        "error",
        "a strand of this band is drawn through another, with {gap_mm:.3f} mm between them",
        "draw the strands apart; nothing can say which side they belong on",
    ),
    "rest-not-reached": Entry(
        "warning",
        "the piece had not come to rest after {iterations} steps: forces are at {drop:.2%} of what they were",
        "look at the picture with care, or allow more steps",
    ),
    "rest-interrupted": Entry(
        "note",
        "the work was stopped after {iterations} steps; the shape is the one reached so far",
        "let it run on for the shape at rest",
    ),
}
