"""Every finding by its code, with its severity and the facts that its wording is made of.

The words are in `languages/*.ftl`, an entry of the same name in each; `docs/findings.md` explains each code.
Tests fail where one is missing, or where wordings and facts disagree.
"""

from __future__ import annotations

from typing import Literal, NamedTuple


class CatalogueEntry(NamedTuple):
    """How a finding is graded, and the facts it must come with."""

    severity: Literal["error", "warning", "note"]
    facts: frozenset[str]


def _error(facts: str = "") -> CatalogueEntry:
    return CatalogueEntry("error", frozenset(facts.split()))


def _warning(facts: str = "") -> CatalogueEntry:
    return CatalogueEntry("warning", frozenset(facts.split()))


def _note(facts: str = "") -> CatalogueEntry:
    return CatalogueEntry("note", frozenset(facts.split()))


CATALOGUE: dict[str, CatalogueEntry] = {
    # --- reading the document
    "file-unreadable": _error("file reason"),
    "not-text": _error(),
    "too-large": _error("limit_mb"),
    "not-json": _error("reason"),
    "not-a-pattern": _error("reason hint"),
    "unknown-version": _error("version newest"),
    "line-unreadable": _error("reason hint"),
    # --- reading a maker's words
    "sentence-unread": _warning("sentence"),
    "no-steps-read": _error(),
    "steps-missing": _warning("first last count"),
    "language-unread": _error("language"),
    "words-leave-open": _warning("question"),
    "text-too-long": _warning("limit"),
    # --- listening to a recording
    "captions-too-large": _error("limit"),
    "captions-bad-bytes": _warning(),
    "captions-empty": _error(),
    "cue-unreadable": _warning(),
    "cue-backward": _warning(),
    "cues-overlap": _warning(),
    "recogniser-missing": _error(),
    "model-missing": _error("given folder"),
    "model-english-only": _error("folder"),
    "sound-unreadable": _error(),
    "recording-too-long": _warning("limit"),
    "chapter-not-heard": _warning("title"),
    "recording-contradicts": _warning("time step what"),
    "recording-unclear": _note("time step what"),
    # --- motifs and repeats
    "motif-twice": _error("name"),
    "motif-unknown": _error("name known count"),
    "motif-in-itself": _error("name"),
    "slot-empty": _error("name slot"),
    "slot-unknown": _error("name slot"),
    "count-unknown": _error("name"),
    "nested-too-deeply": _error("limit"),
    "too-many-moves": _error("limit"),
    "too-many-passes": _error(),
    "too-many-refused": _error("count left"),
    "stack-full": _error("peg limit move"),
    "too-many-pegs": _error("pegs limit"),
    "pegs-out-of-reach": _error("peg other gap_mm limit_mm"),
    "pegs-in-one-place": _error("peg other"),
    "off-the-rows": _error("reason"),
    # --- moves that cannot be made
    "peg-unknown": _error("peg pegs more move"),
    "peg-double": _error("peg"),
    "peg-twice": _error("peg move"),
    "peg-bare": _error("peg move"),
    "out-of-reach": _error("peg other gap_mm limit_mm move"),
    "peg-inside-band": _error("peg move"),
    "peg-enclosed": _error("peg move"),
    "turns-mismatch": _error("given pegs move"),
    "twists-mismatch": _error("given pegs move"),
    "loop-missing": _error("loop loops peg move"),
    "not-so-many-above": _error("through above peg move"),
    "same-peg": _error("peg move"),
    "nothing-to-lift-over": _error("peg move"),
    "hook-empty": _error("move"),
    "end-unknown": _error("end move"),
    "end-taken": _error("end move"),
    "loops-uneven": _error("end loops pegs move"),
    # --- what a craft editor would say
    "loop-dragged": _warning("band colour peg others count"),
    "band-not-worked": _warning("band colour"),
    "loop-left": _warning("count peg loops"),
    "start-not-held": _warning("band colour peg"),
    "channel-opens-away": _warning("peg more"),
    "stack-too-high": _warning("loops peg stack_mm room_mm"),
    "no-finish": _warning(),
    "catches-one": _warning("kind loops peg"),
    "catches-more": _warning("kind wanted loops peg"),
    "laid-after-clip": _warning("clip more"),
    "letter-twice": _error("letter"),
    "colour-not-listed": _warning("letter"),
    "colour-unused": _note("letter name"),
    "band-kind-twice": _error("name"),
    "band-kind-unknown": _error("letter band known count"),
    # --- what a technical editor would say of the lesson
    "contact-missing": _note(),
    "licence-missing": _note(),
    "about-missing": _note(),
    "level-low": _note("level reckoned reasons"),
    "motif-unused": _note("name"),
    "repeat-of-none": _warning(),
    "side-named": _note("word"),
    "term-mixed": _note("word term"),
    "text-peg-unknown": _warning("peg"),
    "text-peg-moves": _note("peg"),
    "text-step-unknown": _warning("number steps"),
    "text-hard": _note("words"),
    "text-length-wrong": _warning("quote counted"),
    "text-time-wrong": _warning("quote counted"),
    "text-unsafe": _warning("word"),
    "text-vague": _warning("word"),
    "text-loop-wrong": _warning("word"),
    "text-colour-wrong": _warning("word"),
    "text-misspelt": _warning("word meant"),
    "colour-name-twice": _warning("name one other"),
    "clip-unwarned": _note(),
    "translation-missing": _warning("language text"),
    "translation-outdated": _note("language text"),
    "colours-alike": _note("one other who"),
    "lesson-disagrees": _error("what said counted"),
    # --- is it held?
    "band-falls": _error("count reason hanging loose colour since"),
    "band-not-proved": _warning("count named reason"),
    "losses-left-out": _note("bands limit"),
    # --- the order of working
    "order-not-found": _error("bands tried"),
    "order-none": _error("laid bands count"),
    "order-pinned": _error("pinned others count"),
    "nothing-to-work": _warning("bands tried"),
    "holds-already": _note("bands"),
    "no-simpler-order": _note("tried"),
    "fall-with-it": _note("bands"),
    "mend-not-found": _warning("tried"),
    # --- size and counts
    "band-slack": _warning("name pegs taut_mm rest_mm more"),
    "band-taut": _warning("name pegs stretch more"),
    "band-overstretched": _error("name pegs stretch more"),
    "stated-count-wrong": _warning("what stated counted"),
    "text-count-wrong": _warning("quote counted"),
    # --- wrists
    "wrist-unreadable": _error("said sizes"),
    "wrist-nonsense": _error("what"),
    "wrist-unusual": _warning("said low_cm high_cm"),
    "girth-unreadable": _error("said part"),
    "girth-nonsense": _error("what low_cm high_cm"),
    "girth-unusual": _warning("said part low_cm high_cm"),
    "girth-neck": _warning(""),
    "girth-finger": _warning(""),
    "wrist-too-young": _error("years"),
    # --- on the loom
    "band-near-breaking": _warning("name pegs stretch force_n breaks more"),
    # --- how the piece fits
    "fit-loose": _warning("length_mm wrist_mm part low_mm high_mm"),
    "fit-tight": _warning("length_mm wrist_mm part low_mm high_mm pulls"),
    "fit-hand": _warning("hand_mm pull_n part"),
    "fit-unmeasured": _note("known_mm needed_mm part"),
    "fit-not-closed": _note(),
    "fit-falls-apart": _error(),
    "extension-nowhere": _warning("bands"),
    "stretch-curve-nonsense": _error("reason"),
    "gauge-nonsense": _error("what value_mm"),
    # --- calibration
    "measure-nonsense": _error("what value unit reason cure"),
    "measure-few": _note("count what needed"),
    "density-odd": _warning("density_g_cm3 low high"),
    "modulus-odd": _warning("shear_mpa low high"),
    "moduli-tangled": _note("low high"),
    "stretch-misfit": _warning("mass_g length_mm fitted_mm reading_mm"),
    # --- the stash
    "not-a-stash": _error("reason"),
    "stash-lacks": _note("what"),
    "currency-missing": _note(),
    # --- pictures that become mats
    "picture-unreadable": _error("reason"),
    "picture-too-large": _error("limit"),
    "picture-all-clear": _error(),
    "picture-clear-parts": _note("share"),
    "picture-moves": _note("frames"),
    "picture-one-colour": _warning("name"),
    "colour-runs-short": _note("name needed have"),
    # --- variants
    "variant-left-out": _warning("name why"),
    "colourway-alike": _note("number"),
    "colourway-runs-short": _note("number"),
    # --- the table of slips
    "not-a-slip-table": _error("reason"),
    "slip-unknown": _error("slip known"),
    "slip-class-unknown": _error("given known"),
    # --- many of the same
    "more-of-the-same": _note("count of"),
    # --- the shape at rest
    "bands-drawn-crossing": _error("gap_mm"),
    "bands-lie-loose": _error("loose bands"),
    "nothing-hangs-together": _error("bands"),
    "length-impossible": _error("length_mm"),
    "rests-otherwise": _warning(),
    "rest-not-reached": _warning("iterations drop"),
    "rest-interrupted": _note("iterations"),
}
