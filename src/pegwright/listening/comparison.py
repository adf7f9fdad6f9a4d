"""A recording laid beside its lesson: chapters, steps, and what it says otherwise."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import NamedTuple

from pegwright.finding import Finding, Location, Phrase, finding, phrase, sum_up
from pegwright.lesson import Lesson, Script, write_script
from pegwright.listening.captions import Cue
from pegwright.listening.chapters import HeardChapter, time_chapters
from pegwright.listening.contradictions import Contradiction, Evidence, find_wrong_facts
from pegwright.listening.corrections import WordCorrection, correct_cues, find_corrections
from pegwright.listening.facts import repeat_lines, spoken_facts
from pegwright.listening.following import follow_script
from pegwright.listening.hearings import find_hearings
from pegwright.listening.steps_said import find_extra, find_hand, find_swapped, find_unsaid
from pegwright.listening.timeline import HeardStep, Trim, find_trims, time_steps
from pegwright.listening.vocabulary import Vocabulary
from pegwright.listening.words import caption_words, script_words

MOST_WORDS = 12_000
"""Words that are compared on either side: two hours of steady talk."""
CERTAIN, POSSIBLE = 0.8, 0.5
"""Above the first a contradiction is a warning, above the second a question; below it is left out."""
TOO_NOISY, MORE_CERTAIN = 0.4, 0.9
"""Where more of the words than the first are misheard, a warning must be surer."""


class RecordingComparison(NamedTuple):
    """The chapters at their true times, what the recording says otherwise, surest first, and the findings.

    `steps` says when the picture of each step can be shown, `trims` what could be cut out, `corrections`
    which words of the captions are put right, and `captions` are the captions with that done. `noise` is the
    share of the lesson's words that were not heard exactly (0 to 1).
    """

    chapters: tuple[HeardChapter, ...]
    contradictions: tuple[Contradiction, ...]
    steps: tuple[HeardStep, ...]
    trims: tuple[Trim, ...]
    corrections: tuple[WordCorrection, ...]
    captions: tuple[Cue, ...]
    noise: float
    findings: tuple[Finding, ...]


def gather_evidence(
    script: Script, cues: Sequence[Cue], colours: Sequence[str] = ()
) -> tuple[Evidence, tuple[Finding, ...]]:
    """Follow a script through captions; `colours` are the names of its bands.

    Raises:
        ValueError: there are no words for the language.
    """
    vocabulary = Vocabulary(script.language, colours)
    said, heard = script_words(script.lines, script.language), caption_words(cues, script.language)
    found: tuple[Finding, ...] = ()
    if max(len(said), len(heard)) > MOST_WORDS:
        found = (finding("recording-too-long", limit=MOST_WORDS),)
        said, heard = said[:MOST_WORDS], heard[:MOST_WORDS]
    script_text = f" {' '.join(word.text for word in said)} "
    follow = follow_script(said, heard, vocabulary)
    return Evidence(
        said,
        heard,
        follow,
        find_hearings(said, follow),
        spoken_facts(script, said, vocabulary),
        vocabulary,
        [line.step for line in script.lines],
        repeat_lines(script),
        Counter(word.line for word in said),
        tuple(one for one in vocabulary.phrases["correction"] if f" {one} " not in script_text),
    ), found


def find_chapters(
    script: Script, cues: Sequence[Cue]
) -> tuple[tuple[HeardChapter, ...], tuple[Finding, ...]]:
    """Return the chapters heard in the cues at their true times, and a finding for each one missed."""
    evidence, found = gather_evidence(script, cues)
    chapters, missed = time_chapters(script, evidence.said, evidence.heard, evidence.hearings)
    return chapters, (*found, *missed)


def compare_recording(lesson: Lesson, cues: Sequence[Cue]) -> RecordingComparison:
    """Return when the chapters of a lesson are heard in a recording, and where it says something else.

    Raises:
        ValueError: there are no words for the language.
    """
    script = write_script(lesson)
    evidence, found = gather_evidence(script, cues, [swatch.name for swatch in lesson.key])
    chapters, missed = time_chapters(script, evidence.said, evidence.heard, evidence.hearings)
    wrong = find_contradictions(evidence, lesson.hand)
    told = [
        _contradiction_finding(lesson, script, one, evidence.follow.noise)
        for one in sorted(wrong, key=lambda one: one.start_s)
    ]
    corrections = find_corrections(evidence, cues)
    return RecordingComparison(
        chapters,
        wrong,
        time_steps(evidence),
        find_trims(evidence),
        corrections,
        correct_cues(cues, corrections),
        evidence.follow.noise,
        sum_up((*found, *missed, *told)),
    )


def find_contradictions(evidence: Evidence, hand: str) -> tuple[Contradiction, ...]:
    """Return what is said otherwise, surest first; nothing below a question."""
    wrong, misfits = find_wrong_facts(evidence)
    every = [
        *wrong,
        *find_unsaid(evidence),
        *find_swapped(evidence),
        *find_hand(evidence, hand),
        *find_extra(evidence, misfits),
    ]
    kept = [one for one in every if one.confidence >= POSSIBLE]
    return tuple(sorted(kept, key=lambda one: (-one.confidence, one.start_s)))


def is_certain(one: Contradiction, noise: float) -> bool:
    """Say whether a contradiction is a warning; otherwise it is a question."""
    if noise > TOO_NOISY and one.kind == "unsaid":
        return False  # it may have been said and lost
    return one.confidence >= (MORE_CERTAIN if noise > TOO_NOISY else CERTAIN)


def contradiction_findings(lesson: Lesson, told: RecordingComparison) -> tuple[Finding, ...]:
    """Return the finding of each contradiction, in their order."""
    script = write_script(lesson)
    return tuple(_contradiction_finding(lesson, script, one, told.noise) for one in told.contradictions)


def _contradiction_finding(lesson: Lesson, script: Script, one: Contradiction, noise: float) -> Finding:
    minutes, seconds = divmod(int(one.start_s), 60)
    step = next((step for step in lesson.steps if step.number == one.step), None)
    place = Location(step=step.first) if step is not None and step.first else Location()
    time, what = f"{minutes}:{seconds:02}", _difference(script, one)
    if is_certain(one, noise):
        return finding("recording-contradicts", place, time=time, step=one.step, what=what)
    return finding("recording-unclear", place, time=time, step=one.step, what=what)


def _difference(script: Script, one: Contradiction) -> Phrase:
    sentence = script.lines[one.line].text
    match one.kind:
        case "unsaid":
            return phrase("said-never", sentence=sentence)
        case "extra":
            return phrase("said-besides", heard=one.heard)
        case "swapped":
            return phrase("said-too-late", later=int(one.heard))
        case "hand":
            return phrase("said-other-hand", heard=one.heard)
        case _:
            return phrase("said-otherwise", heard=one.heard, meant=one.meant, sentence=sentence)
