"""What stands round the steps: level, supplies, tools, key, hold statement, cautions."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterable, Set

import msgspec

from pegwright.finding import LANGUAGES, Finding, phrase, word_finding
from pegwright.fit import Heap, Supplies
from pegwright.judging import FALL_CODES
from pegwright.lesson.handout.results import HoldResult
from pegwright.lesson.handout.sheet import Block, HoldStatement, SuppliesTable, SupplyLine, Swatch
from pegwright.lesson.handout.step_writer import StepWriter
from pegwright.lesson.say.phrasebook import Phrasebook, single_line
from pegwright.lesson.say.say import Speaker
from pegwright.lesson.scene.scene import PLAIN_TINT, Look, highest_stack
from pegwright.loom import History, step_numbers
from pegwright.pattern import (
    BandType,
    Clip,
    Hang,
    Hook,
    JoinedLooms,
    Knot,
    Level,
    Lift,
    Pattern,
    Place,
    Slide,
    Wind,
    band_types_by_letter,
)

_CAUTIONS = ("small", "tight", "sleep", "eyes", "pets", "latex", "old", "rules")
_TERMS = (
    "band", "loom", "peg", "channel", "hook", "loop", "cap", "half-twist", "free-end", "clip", "chain",
    "extension",
)  # fmt: skip
_BANDS_NAMED = 6
_AGES: dict[Level, int] = {"basic": 7, "easy": 8, "intermediate": 10, "complex": 12}
"""From what age a maker can work a piece of that level, an adult near (common practice, no source)."""


def level_block(
    phrasebook: Phrasebook, pattern: Pattern, history: History, learner_s: float = 0.0, timed: int = 0
) -> Block:
    """Give the level, the maker's age, the time by hand, and what in the piece speaks for the level.

    `timed` steps take as long as the teacher was heard to take.
    """
    moves = [done.move for done in history.moves]
    highest = highest_stack(history)
    reasons = [phrasebook.say("age-from", n=_AGES[pattern.level])]
    if learner_s:
        reasons.append(time_by_hand(phrasebook, learner_s))
    if timed:
        reasons.append(phrasebook.say("times-heard", n=timed))
    reasons.append(phrasebook.say("reason-count", n=history.final.bands))
    reasons.append(phrasebook.say("reason-colours", n=len(set(history.colours))))
    if any(done.located.rounds for done in history.moves):
        reasons.append(phrasebook.say("reason-repeat"))
    if highest:
        reasons.append(phrasebook.say("reason-stack", n=highest))
    present = (
        ("reason-wide", any(isinstance(m, Place) and len(m.over) > 2 for m in moves)),
        ("reason-twist", any(isinstance(m, Place) and any(m.twists) for m in moves)),
        ("reason-cap", any(isinstance(m, Wind) for m in moves)),
        ("reason-hook", any(isinstance(m, Hook | Slide) for m in moves)),
        ("reason-lift", any(isinstance(m, Lift) for m in moves)),
        ("reason-hang", any(isinstance(m, Hang) for m in moves)),
    )
    reasons += [phrasebook.say(name) for name, so in present if so]
    heading = f"{phrasebook.say('heading-level')}: {phrasebook.say(f'level-{pattern.level}')}"
    return Block(heading=heading, lines=tuple(reasons))


def time_by_hand(phrasebook: Phrasebook, seconds: float) -> str:
    """Say how long a beginner works, as roughly as is known: to 5 minutes, from an hour on to 15."""
    step = 5 if seconds < 3600 else 15
    minutes = max(step, round(seconds / 60 / step) * step)
    return phrasebook.say("time-by-hand", hours=minutes // 60, minutes=minutes % 60)


def safety_box(phrasebook: Phrasebook, worn: bool = True) -> Block:
    """Give the few cautions that stand on the first page; `cautions_block` has them all."""
    names = ("small", "tight", "eyes") if worn else ("small", "eyes")
    lines = (*(phrasebook.say(f"safe-{name}") for name in names), phrasebook.say("safe-rules"))
    return Block(heading=phrasebook.say("heading-cautions"), lines=lines)


def supplies_table(phrasebook: Phrasebook, look: Look, supplies: Supplies) -> SuppliesTable:
    """Lay out the supplies as a table and a list."""
    lines = tuple(_supply_line(phrasebook, look, heap) for heap in supplies.heaps)
    heading = "heading-supplies" if supplies.pieces == 1 else "heading-supplies-many"
    things = []
    if supplies.clips and supplies.spare_clips:
        things.append(phrasebook.say("thing-clips-spare", n=supplies.clips, spare=supplies.spare_clips))
    elif supplies.clips:
        things.append(phrasebook.say("thing-clips", n=supplies.clips))
    return SuppliesTable(
        heading=phrasebook.say(heading, **({"n": supplies.pieces} if supplies.pieces != 1 else {})),
        columns=tuple(phrasebook.say(f"column-{name}") for name in ("band", "for", "count", "weight")),
        bands=lines,
        total=phrasebook.say("total"),
        total_count=supplies.bands,
        things=tuple(things),
    )


def _supply_line(phrasebook: Phrasebook, look: Look, heap: Heap) -> SupplyLine:
    jobs = ("placed", "caps", "hung", "finishing", "extension", "spares")
    purposes = [phrasebook.say(f"purpose-{job}", n=getattr(heap, job)) for job in jobs if getattr(heap, job)]
    name, tint, hatch = look.colours.get(heap.letter, ("", PLAIN_TINT, 0))
    grams = heap.mass_g
    weight = ""
    if grams is not None:
        # Unweighed bands are reckoned from their size: one figure less, and said to be about.
        weight = phrasebook.say(
            "weight" if heap.weighed else "weight-about", grams=phrasebook.decimal(round(grams, 1))
        )
    return SupplyLine(
        letter=heap.letter,
        name=single_line(name),
        count=heap.total,
        purpose=", ".join(purposes),
        weight=weight,
        tint=tint,
        hatch=hatch,
    )


def bands_lines(phrasebook: Phrasebook, pattern: Pattern, letters: Iterable[str]) -> tuple[str, ...]:
    """Say how large the bands are that these letters stand for, each kind once, and what letters are."""
    kinds = band_types_by_letter(pattern)
    used = dict.fromkeys(kinds.get(letter) or BandType() for letter in letters)
    name = "band-size" if len(used) == 1 else "band-size-named"
    lines = [
        phrasebook.say(
            name,
            kind=single_line(kind.name),
            bore=phrasebook.length(kind.bore_mm),
            thick=phrasebook.length(kind.thickness_mm),
            material=phrasebook.say(f"material-{kind.material}"),
        )
        for kind in used
    ]
    return (*lines, phrasebook.say("letters-are")) if lines else ()


def _cord_mm(history: History) -> float:
    """Return the cord of the longest knot in mm: twice its way from peg to peg and back, 200 to tie."""
    spots = history.board.spots
    longest = 0.0
    for done in history.moves:
        if isinstance(done.move, Knot):
            pegs = [spots[at] for at in done.move.at if at in spots]
            around = sum(math.dist(a, b) for a, b in zip(pegs, pegs[1:] + pegs[:1], strict=True))
            longest = max(longest, around)
    return math.ceil((2 * longest + 200) / 50) * 50


def tools_block(
    phrasebook: Phrasebook, supplies: Supplies, pattern: Pattern | None = None, history: History | None = None
) -> Block:
    """List looms and how they are joined, hook, cord, needle and scissors."""
    lines = []
    for loom in supplies.looms:
        pitch = "" if loom.pitch_mm is None else phrasebook.length(loom.pitch_mm)
        text = phrasebook.say(f"tool-{loom.kind}", n=loom.count, rows=loom.rows, pegs=loom.pegs, pitch=pitch)
        lines.append(text)
    if pattern is not None and isinstance(pattern.loom, JoinedLooms):
        gap = phrasebook.length(pattern.loom.gap_mm)
        lines.append(phrasebook.say(f"tool-joined-{pattern.loom.side}", n=len(pattern.loom.looms), gap=gap))
    if supplies.hooks:
        size = phrasebook.say(
            "tool-hook-size", low=phrasebook.length(2.5), high=phrasebook.length(3.5)
        )  # common practice
        lines.append(f"{phrasebook.say('tool-hooks', n=supplies.hooks)}, {size}")
    if supplies.knots:
        cord = phrasebook.say("tool-cord", n=supplies.knots)
        size = (
            ""
            if history is None
            else phrasebook.say("tool-cord-length", length=phrasebook.length(_cord_mm(history)))
        )
        lines.append(f"{cord}, {size}" if size else cord)
    if supplies.scissors:
        lines.append(phrasebook.say("tool-scissors", n=supplies.scissors))
    return Block(
        heading=phrasebook.say("heading-tools"), lines=tuple(text[:1].upper() + text[1:] for text in lines)
    )


def colour_key(look: Look, supplies: Supplies) -> tuple[Swatch, ...]:
    """List the colours that are used: letter, name, tint, pattern."""
    found = []
    for heap in supplies.heaps:
        name, tint, hatch = look.colours.get(heap.letter, ("", PLAIN_TINT, 0))
        found.append(Swatch(letter=heap.letter, name=single_line(name), tint=tint, hatch=hatch))
    return tuple(found)


def hold_statement(speaker: Speaker, verdict: HoldResult, writer: StepWriter) -> HoldStatement:
    """Say what is proved, and why bands fall: as the findings have it, with the lesson's own steps."""
    say = speaker.phrasebook.say
    steps = writer.steps_of_bands()

    def which(bands: tuple[int, ...]) -> str:
        named = [
            say("hold-band", number=band, band=speaker.short(band), step=steps.get(band, 0))
            for band in bands[:_BANDS_NAMED]
        ]
        if len(bands) > _BANDS_NAMED:
            named.append(say("hold-more", n=len(bands) - _BANDS_NAMED))
        return speaker.phrasebook.both(named)

    def why(codes: Set[str]) -> str:
        told = (_word_cause(found, writer, say) for found in verdict.causes if found.code in codes)
        return "; ".join(told)

    lines = []
    if verdict.left_out:
        lines.append(say("hold-left-out", n=verdict.left_out))
    if verdict.held:
        lines.append(say("hold-yes", n=verdict.bands))
    if verdict.falling:
        told = why(FALL_CODES - {"band-not-proved"}) or which(verdict.falling)
        lines.append(say("hold-no", n=len(verdict.falling), which=told))
    if verdict.unproved:
        told = why({"band-not-proved"}) or which(verdict.unproved)
        lines.append(say("hold-unproved", n=len(verdict.unproved), which=told))
    if not lines:
        lines.append(say("hold-not-shown"))
    if verdict.snap is not None:
        worst = verdict.snap.worst_loses
        lines.append(say("hold-snap-worst", n=worst) if worst else say("hold-snap-none"))
        if worst and verdict.snap.harmless:
            lines.append(say("hold-snap-harmless", n=verdict.snap.harmless))
    return HoldStatement(heading=say("heading-hold"), held=verdict.held, lines=tuple(lines))


def _word_cause(found: Finding, writer: StepWriter, say: Callable[..., str]) -> str:
    """Word a finding of the fall; where it names a move, with the step of the lesson that tells it."""
    if found.facts.get("loose") and found.place.step is not None:
        at = step_numbers(writer.history).index(found.place.step)
        step = phrase("as-told", text=say("back-step", n=writer.step_of(at)))
        found = msgspec.structs.replace(found, facts=found.facts | {"since": step})
    language = next(each for each in LANGUAGES if each == writer.speaker.phrasebook.language)
    return word_finding(found, language).message


def is_worn(history: History) -> bool:
    """Say whether the piece closes round a wrist: a clip joins two of its ends."""
    moves = (done.move for done in history.moves)
    return any(isinstance(move, Clip) and len(move.at) > 1 for move in moves)


def cautions_block(phrasebook: Phrasebook, worn: bool = True) -> Block:
    """List the usual cautions; that of sleeping only for a piece that is worn."""
    names = (name for name in _CAUTIONS if worn or name != "sleep")
    return Block(
        heading=phrasebook.say("heading-cautions"),
        lines=tuple(phrasebook.say(f"caution-{name}") for name in names),
    )


def glossary_block(phrasebook: Phrasebook, text: str) -> Block:
    """Explain the trade terms that a text uses."""
    used = [name for name in _TERMS if _mentions(text, phrasebook.say(f"term-{name}"))]
    lines = tuple(
        phrasebook.say(
            "glossary-line", term=phrasebook.say(f"term-{name}"), means=phrasebook.say(f"means-{name}")
        )
        for name in used
    )
    return Block(heading=phrasebook.say("heading-glossary"), lines=lines)


def _mentions(text: str, term: str) -> bool:
    """Say whether a text uses a term, however its words are inflected at their ends."""
    return all(re.search(rf"\b{re.escape(word[:5])}", text, re.IGNORECASE) for word in term.split())


def term_variants(phrasebook: Phrasebook) -> dict[str, tuple[str, ...]]:
    """Map each trade term to the other words for it that a lesson should not mix with it."""
    found = {}
    for name in _TERMS:
        others = (other.strip() for other in phrasebook.say(f"others-{name}").split(","))
        term = phrasebook.say(f"term-{name}")
        found[term] = tuple(other for other in others if other not in ("", "–", "-", term))
    return found
