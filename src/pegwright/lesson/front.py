"""What stands round the steps: level, supplies, tools, key, hold statement, cautions."""

from __future__ import annotations

import re

from pegwright.fit.supplies import Heap, Supplies
from pegwright.lesson.say import Speaker
from pegwright.lesson.scene import PLAIN_TINT, Look, highest_stack
from pegwright.lesson.sheet import Block, Hold, Supplied, SupplyLine, Swatch
from pegwright.lesson.verdict import Verdict
from pegwright.lesson.words import Words, line
from pegwright.loom import History
from pegwright.pattern import Clip, Hang, Hook, Lift, Pattern, Place, Slide, Wind

_CAUTIONS = ("small", "tight", "sleep", "eyes", "pets", "latex", "old", "rules")
_TERMS = (
    "band", "loom", "peg", "channel", "hook", "loop", "cap", "half-turn", "free-end", "clip", "chain",
)  # fmt: skip
_BANDS_NAMED = 6


def level(words: Words, pattern: Pattern, history: History) -> Block:
    """Give the designer's level and what in the piece speaks for it."""
    moves = [done.doing.move for done in history.done]
    highest = highest_stack(history)
    reasons = [words.say("reason-count", n=history.final.bands)]
    reasons.append(words.say("reason-colours", n=len(set(history.colours))))
    if any(done.doing.rounds for done in history.done):
        reasons.append(words.say("reason-repeat"))
    if highest:
        reasons.append(words.say("reason-stack", n=highest))
    told = (
        ("reason-wide", any(isinstance(m, Place) and len(m.over) > 2 for m in moves)),
        ("reason-twist", any(isinstance(m, Place) and any(m.twists) for m in moves)),
        ("reason-cap", any(isinstance(m, Wind) for m in moves)),
        ("reason-hook", any(isinstance(m, Hook | Slide) for m in moves)),
        ("reason-lift", any(isinstance(m, Lift) for m in moves)),
        ("reason-hang", any(isinstance(m, Hang) for m in moves)),
    )
    reasons += [words.say(name) for name, so in told if so]
    heading = f"{words.say('heading-level')}: {words.say(f'level-{pattern.level}')}"
    return Block(heading=heading, lines=tuple(reasons))


def supplied(words: Words, look: Look, supplies: Supplies) -> Supplied:
    """Lay out the supplies as a table and a list."""
    lines = tuple(_line(words, look, heap) for heap in supplies.heaps)
    heading = "heading-supplies" if supplies.pieces == 1 else "heading-supplies-many"
    things = []
    if supplies.clips and supplies.spare_clips:
        things.append(words.say("thing-clips-spare", n=supplies.clips, spare=supplies.spare_clips))
    elif supplies.clips:
        things.append(words.say("thing-clips", n=supplies.clips))
    return Supplied(
        heading=words.say(heading, **({"n": supplies.pieces} if supplies.pieces != 1 else {})),
        columns=tuple(words.say(f"column-{name}") for name in ("band", "for", "count", "weight")),
        bands=lines,
        total=words.say("total"),
        total_count=supplies.bands,
        things=tuple(things),
    )


def _line(words: Words, look: Look, heap: Heap) -> SupplyLine:
    jobs = ("placed", "caps", "hung", "finishing", "extension", "spares")
    purposes = [words.say(f"purpose-{job}", n=getattr(heap, job)) for job in jobs if getattr(heap, job)]
    _, tint, hatch = look.colours.get(heap.letter, ("", PLAIN_TINT, 0))
    grams = heap.mass_g
    weight = ""
    if grams is not None:
        # Unweighed bands are reckoned from their size: one figure less, and said to be about.
        weight = words.say("weight" if heap.weighed else "weight-about", grams=words.decimal(round(grams, 1)))
    return SupplyLine(
        letter=heap.letter,
        name=line(heap.name),
        count=heap.total,
        purpose=", ".join(purposes),
        weight=weight,
        tint=tint,
        hatch=hatch,
    )


def tools(words: Words, supplies: Supplies) -> Block:
    """List looms, hook and scissors."""
    lines = []
    for loom in supplies.looms:
        pitch = "" if loom.pitch_mm is None else words.length(loom.pitch_mm)
        text = words.say(f"tool-{loom.kind}", n=loom.count, rows=loom.rows, pegs=loom.pegs, pitch=pitch)
        lines.append(text)
    if supplies.hooks:
        lines.append(words.say("tool-hooks", n=supplies.hooks))
    if supplies.knots:
        lines.append(words.say("tool-cord", n=supplies.knots))
    if supplies.scissors:
        lines.append(words.say("tool-scissors", n=supplies.scissors))
    return Block(
        heading=words.say("heading-tools"), lines=tuple(text[:1].upper() + text[1:] for text in lines)
    )


def key(look: Look, supplies: Supplies) -> tuple[Swatch, ...]:
    """List the colours that are used: letter, name, tint, pattern."""
    found = []
    for heap in supplies.heaps:
        _, tint, hatch = look.colours.get(heap.letter, ("", PLAIN_TINT, 0))
        found.append(Swatch(letter=heap.letter, name=line(heap.name), tint=tint, hatch=hatch))
    return tuple(found)


def hold(speaker: Speaker, verdict: Verdict, steps: dict[int, int]) -> Hold:
    """Say what is proved."""
    say = speaker.words.say

    def which(bands: tuple[int, ...]) -> str:
        named = [
            say("hold-band", number=band, band=speaker.short(band), step=steps.get(band, 0))
            for band in bands[:_BANDS_NAMED]
        ]
        if len(bands) > _BANDS_NAMED:
            named.append(say("hold-more", n=len(bands) - _BANDS_NAMED))
        return speaker.words.both(named)

    lines = []
    if verdict.left_out:
        lines.append(say("hold-left-out", n=verdict.left_out))
    if verdict.held:
        lines.append(say("hold-yes", n=verdict.bands))
    if verdict.falling:
        lines.append(say("hold-no", n=len(verdict.falling), which=which(verdict.falling)))
    if verdict.unproved:
        lines.append(say("hold-unproved", n=len(verdict.unproved), which=which(verdict.unproved)))
    if not lines:
        lines.append(say("hold-not-shown"))
    if verdict.snap is not None:
        worst = verdict.snap.worst_loses
        lines.append(say("hold-snap-worst", n=worst) if worst else say("hold-snap-none"))
        if worst and verdict.snap.harmless:
            lines.append(say("hold-snap-harmless", n=verdict.snap.harmless))
    lines += [line(text, 600) for text in verdict.lines]
    return Hold(heading=say("heading-hold"), held=verdict.held, lines=tuple(lines))


def is_worn(history: History) -> bool:
    """Say whether the piece closes round a wrist: a clip joins two of its ends."""
    moves = (done.doing.move for done in history.done)
    return any(isinstance(move, Clip) and len(move.at) > 1 for move in moves)


def cautions(words: Words, worn: bool = True) -> Block:
    """List the usual cautions; that of sleeping only for a piece that is worn."""
    names = (name for name in _CAUTIONS if worn or name != "sleep")
    return Block(
        heading=words.say("heading-cautions"),
        lines=tuple(words.say(f"caution-{name}") for name in names),
    )


def glossary(words: Words, text: str) -> Block:
    """Explain the trade terms that a text uses."""
    used = [name for name in _TERMS if _uses(text, words.say(f"term-{name}"))]
    lines = tuple(
        words.say("glossary-line", term=words.say(f"term-{name}"), means=words.say(f"means-{name}"))
        for name in used
    )
    return Block(heading=words.say("heading-glossary"), lines=lines)


def _uses(text: str, term: str) -> bool:
    """Say whether a text uses a term, however its words are inflected at their ends."""
    return all(re.search(rf"\b{re.escape(word[:5])}", text, re.IGNORECASE) for word in term.split())


def terms(words: Words) -> dict[str, tuple[str, ...]]:
    """Map each trade term to the other words for it that a lesson should not mix with it."""
    found = {}
    for name in _TERMS:
        others = (other.strip() for other in words.say(f"others-{name}").split(","))
        term = words.say(f"term-{name}")
        found[term] = tuple(other for other in others if other not in ("", "–", "-", term))
    return found
