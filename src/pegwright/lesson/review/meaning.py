"""What a designer's text means, held against the working: lengths, times, loops, colours, what is not safe.

Words are looked for, sentences are not understood: a text that says the same in other words is not found.
The words of each language stand with its sentences (`words-…`), parted by commas.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import combinations
from typing import NamedTuple

from pegwright.finding import Finding, Location, finding
from pegwright.lesson.handout.sheet import Lesson
from pegwright.lesson.say.phrasebook import Phrasebook
from pegwright.loom import AppliedMove, Drawn, History, Laid, Lifted, Moved, State
from pegwright.pattern import Clip, Hook, Lift, Pattern, PatternStep, Repeat, Slide

LENGTH_TOLERANCE = 0.1
"""How far a stated length may be from the piece's (common practice, no source)."""
TIME_TOLERANCE = 2.0
"""How many times longer or shorter than reckoned a stated time may be: makers differ (common practice)."""
SAFE_AGE = 3
"""Small parts are not for children under three: the age of the toy rules."""
_NUMBER = r"(?P<number>[0-9]{1,4}(?:[.,][0-9]{1,2})?)"


class ReviewedText(NamedTuple):
    """A designer's text in the lesson's language, its place, and the moves that it stands beside."""

    path: str
    text: str
    moves: tuple[int, ...] = ()


def meaning_findings(
    pattern: Pattern, history: History, lesson: Lesson, texts: Sequence[tuple[str, str]]
) -> Iterator[Finding]:
    """Find what texts (place and text) say that the working contradicts, or that is not safe to do."""
    words = lesson.phrasebook
    beside: dict[str, list[int]] = {}
    for index, done in enumerate(history.moves):
        beside.setdefault(done.path, []).append(index)
    for path, text in texts:
        one = ReviewedText(path, text, tuple(beside.get(path.rpartition("/")[0], ())))
        yield from _wrong_lengths(one, lesson)
        yield from _wrong_times(one, lesson)
        yield from _unsafe_words(one, words)
        yield from _vague_words(one, words)
        yield from _wrong_loops(one, words, history)
        yield from _wrong_colours(one, words, pattern, history)
    yield from _colours_of_one_name(pattern)
    yield from _clips_without_warning(pattern.steps, "/steps")


def _wrong_lengths(one: ReviewedText, lesson: Lesson) -> Iterator[Finding]:
    """Compare a stated length with the piece's, where it is known; a wrist that it suits may be named."""
    portrait = lesson.finished.portrait
    if portrait is None or one.moves:
        return
    known = [portrait.length_mm, portrait.width_mm, portrait.height_mm]
    wrists = [float(n) for n in re.findall(r"([0-9]+(?:\.[0-9]+)?) mm", lesson.finished.wrists)]
    # “12 in” is a length, “5 in a row” and “7 in jeder Reihe” are not.
    unit = r"(?P<unit>cm|mm|inch|inches|Zoll|pulgadas|in(?!\s+\w))"
    for found in re.finditer(rf"(?<![\w.]){_NUMBER}\s?-?{unit}\b", one.text, re.IGNORECASE):
        unit_mm = {"cm": 10.0, "mm": 1.0}.get(found["unit"].casefold(), 25.4)
        mm = float(found["number"].replace(",", ".")) * unit_mm
        near = any(abs(mm - size) <= LENGTH_TOLERANCE * size for size in known)
        worn = len(wrists) == 2 and wrists[0] * 0.95 <= mm <= wrists[1] * 1.05
        if not near and not worn and mm > 2 * max(portrait.width_mm, portrait.height_mm):
            yield finding(
                "text-length-wrong",
                Location(path=one.path),
                quote=found[0],
                counted=round(portrait.length_mm),
            )


def _wrong_times(one: ReviewedText, lesson: Lesson) -> Iterator[Finding]:
    """Compare a stated time with what a learner needs for all of it."""
    if one.moves:
        return
    whole_s = sum(step.learner_s for step in lesson.steps)
    for name, seconds in (("minute", 60.0), ("hour", 3600.0)):
        unit = _alternatives(lesson.phrasebook.say(f"words-{name}"))
        for found in re.finditer(rf"(?<![\w.]){_NUMBER}\s?-?(?:{unit})\b", one.text, re.IGNORECASE):
            stated_s = float(found["number"].replace(",", ".")) * seconds
            if not whole_s / TIME_TOLERANCE <= stated_s <= whole_s * TIME_TOLERANCE:
                counted = max(1, round(whole_s / 60))
                yield finding("text-time-wrong", Location(path=one.path), quote=found[0], counted=counted)


def _unsafe_words(one: ReviewedText, words: Phrasebook) -> Iterator[Finding]:
    """Find children too young for small parts, and unsafe wearing; a "never" beside it makes it right."""
    place = Location(path=one.path)
    unsafe = re.compile(rf"\b(?:{_alternatives(words.say('words-unsafe'))})\b", re.IGNORECASE)
    denied = re.compile(rf"\b(?:{_alternatives(words.say('words-never'))})\b", re.IGNORECASE)
    for sentence in re.split(r"(?<=[.!?;])\s+", one.text):
        if denied.search(sentence):
            continue
        for found in unsafe.finditer(sentence):
            yield finding("text-unsafe", place, word=found[0])
        child = _alternatives(words.say("words-child"))
        young = re.search(
            rf"\b(?:{child})\b[^.]{{0,14}}?\b([0-2])\b|\b([0-2])\b[^.]{{0,14}}?\b(?:{child})\b",
            sentence,
            re.IGNORECASE,
        )
        if young:
            yield finding("text-unsafe", place, word=young[0])


def _vague_words(one: ReviewedText, words: Phrasebook) -> Iterator[Finding]:
    """Find words that leave the maker a choice that the working does not."""
    if not one.moves:
        return
    vague = re.search(rf"\b(?:{_alternatives(words.say('words-vague'))})\b", one.text, re.IGNORECASE)
    if vague:
        yield finding("text-vague", Location(path=one.path), word=vague[0])


def _wrong_loops(one: ReviewedText, words: Phrasebook, history: History) -> Iterator[Finding]:
    """Compare "the top loop" and "the lowest loop" with the loops that the step takes."""
    taken = [ends for index in one.moves for ends in _ends_taken(history, index)]
    if not taken:
        return
    for end in ("top", "lowest"):
        named = re.search(rf"\b(?:{_alternatives(words.say(f'words-{end}'))})\b", one.text, re.IGNORECASE)
        if named and not any(end in ends for ends in taken):
            yield finding("text-loop-wrong", Location(path=one.path), word=named[0])


def _ends_taken(history: History, index: int) -> Iterator[frozenset[str]]:
    """Yield for each loop that a move takes whether it is the top or the lowest of its stack, or both."""
    done = history.moves[index]
    if not isinstance(done.move, Hook | Slide | Lift):
        return
    before = history.moves[index - 1].after if index else State()
    events = [e for e in done.events if isinstance(e, Drawn | Lifted | Moved)]
    for event in events:
        stack = before.stack(event.holder if isinstance(event, Lifted) else event.source)
        if event.bight in stack:
            level = stack.index(event.bight)
            many = len({e.bight for e in events})
            yield frozenset(
                name for name, so in (("lowest", level < many), ("top", level >= len(stack) - many)) if so
            )


def _wrong_colours(
    one: ReviewedText, words: Phrasebook, pattern: Pattern, history: History
) -> Iterator[Finding]:
    """Find a colour that a step's text names and its moves do not touch."""
    if not one.moves:
        return
    touched = {history.colours[band - 1] for index in one.moves for band in _bands_of(history.moves[index])}
    if not touched:
        return
    used = " ".join(colour.name.casefold() for colour in pattern.colours if colour.letter in touched)
    whole = {colour.name.casefold() for colour in pattern.colours}
    common = {word.strip().casefold() for word in words.say("words-colours").split(",")}
    for name in sorted(whole | common, key=len, reverse=True):
        found = re.search(rf"(?<![\w-]){re.escape(name)}(?![\w-])", one.text, re.IGNORECASE)
        if found and name not in used and not any(part in used.split() for part in name.split()):
            yield finding("text-colour-wrong", Location(path=one.path), word=found[0])
            return


def _bands_of(done: AppliedMove) -> set[int]:
    bands: set[int] = set()
    for event in done.events:
        if isinstance(event, Laid):
            bands.add(event.band)
        elif isinstance(event, Drawn):
            bands |= {event.bight.band, *(bight.band for bight in event.through)}
        elif isinstance(event, Moved):
            bands.add(event.bight.band)
        elif isinstance(event, Lifted):
            bands |= {event.bight.band, *(bight.band for bight in event.over)}
    return bands


def _colours_of_one_name(pattern: Pattern) -> Iterator[Finding]:
    for (_, one), (j, other) in combinations(enumerate(pattern.colours), 2):
        if " ".join(one.name.split()).casefold() == " ".join(other.name.split()).casefold():
            place = Location(path=f"/colours/{j}/name")
            yield finding("colour-name-twice", place, name=other.name, one=one.letter, other=other.letter)


def _clips_without_warning(steps: tuple[PatternStep, ...], path: str) -> Iterator[Finding]:
    """A clip that joins two ends is the moment when all may spring apart: its step carries a warning."""
    for i, step in enumerate(steps):
        if isinstance(step, Repeat):
            yield from _clips_without_warning(step.steps, f"{path}/{i}/steps")
        elif isinstance(step, Clip) and len(step.at) > 1 and not step.warning.strip():
            yield finding("clip-unwarned", Location(path=f"{path}/{i}"))


def _alternatives(listed: str) -> str:
    return "|".join(re.escape(word.strip()).replace(r"\ ", r"\s+") for word in listed.split(","))
