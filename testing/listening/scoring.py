"""How well chapters and contradictions found in a recording agree with the truth."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import NamedTuple

from rapidfuzz.distance import Levenshtein

from pegwright.lesson import Script
from pegwright.listening import Contradiction, Cue, HeardChapter
from pegwright.listening.chapters import time_chapters
from pegwright.listening.comparison import find_contradictions, gather_evidence, is_certain
from pegwright.listening.corrections import correct_cues, find_corrections
from pegwright.listening.words import split_words
from testing.listening.recordings import Recording, script_of
from testing.listening.talk import Planted

COLOURS = ("slate blue", "foam white", "weed green", "lamp yellow", "buoy red", "sand")
_KINDS = {"row": "peg", "loop": "order", "way": "direction"}


class Score(NamedTuple):
    """Counts over recordings: contradictions right, wrong, missed; chapters' errors in s, chapters missed.

    `wrong` and `missed` name the recording and what it is about.
    """

    right: int
    wrong: tuple[str, ...]
    missed: tuple[str, ...]
    chapter_errors_s: tuple[float, ...]
    chapters_missed: int
    noise: float
    left: int = 0
    """Planted contradictions that still stand in the captions: no more can be told."""

    @property
    def precision(self) -> float:
        """Share of the contradictions told that are true."""
        return self.right / max(1, self.right + len(self.wrong))

    @property
    def recall(self) -> float:
        """Share of the planted contradictions that are told."""
        return self.right / max(1, self.right + len(self.missed))


def score_recordings(recordings: Iterable[tuple[Recording, tuple[Cue, ...]]]) -> Score:
    """Listen to recordings and compare with the truth; questions do not count."""
    right, wrong, missed, errors, lost, noise, there = 0, [], [], [], 0, [], 0
    for truth, cues in recordings:
        script = script_of(truth.piece)
        evidence, _ = gather_evidence(script, cues, COLOURS)
        noise.append(evidence.follow.noise)
        left = list(truth.planted)
        there += sum(is_left(truth, cues, one) for one in left)
        for one in find_contradictions(evidence, "right"):
            if not is_certain(one, evidence.follow.noise):
                continue
            hit = next((planted for planted in left if is_planted(one, planted)), None)
            if hit is None:
                wrong.append(f"{truth.seed}: {one.kind} step {one.step} {one.meant} → {one.heard}")
            else:
                left.remove(hit)
                right += 1
        missed += [f"{truth.seed}: {one.kind} step {one.step} {one.meant} → {one.said}" for one in left]
        chapters, _ = time_chapters(script, evidence.said, evidence.heard, evidence.hearings)
        here, gone = chapter_errors(script, truth, chapters)
        errors += here
        lost += gone
    return Score(
        right,
        tuple(wrong),
        tuple(missed),
        tuple(sorted(errors)),
        lost,
        sum(noise) / max(1, len(noise)),
        there,
    )


def is_planted(one: Contradiction, planted: Planted) -> bool:
    """Say whether a contradiction is the planted one: its kind, and its step (an extra one: next to it)."""
    if _KINDS.get(one.kind, one.kind) != planted.kind:
        return False
    if planted.kind == "hand":
        return True
    return abs(one.step - planted.step) <= (1 if planted.kind == "extra" else 0)


def is_left(truth: Recording, cues: Iterable[Cue], planted: Planted) -> bool:
    """Say whether what was said wrong still stands in the captions: a reader with the pattern could tell.

    A value does if one of its words is heard at its time that the right one does not have; an added sentence
    if half of its words are. A step left out or said too late always does.
    """
    if planted.kind in ("unsaid", "swapped"):
        return True
    spoken = truth.spoken[planted.utterance]
    heard = {
        word
        for cue in cues
        if cue.end_s > spoken.start_s and cue.start_s < spoken.end_s
        for word, _ in split_words(cue.text, "en")
    }
    said = {word for word, _ in split_words(planted.said, "en")}
    if planted.kind == "extra":
        return len(said & heard) >= len(said) / 2
    return bool((said - {word for word, _ in split_words(planted.meant, "en")}) & heard)


def chapter_errors(
    script: Script, truth: Recording, chapters: Iterable[HeardChapter]
) -> tuple[list[float], int]:
    """Return by how many seconds each chapter heard is off, and how many of those said are missed."""
    heard = {chapter.title: chapter.start_s for chapter in chapters}
    errors, missed = [], 0
    for chapter in script.chapters:
        lines = {i for i, line in enumerate(script.lines) if chapter.start_s <= line.start_s < chapter.end_s}
        true_s = min((one.start_s for one in truth.spoken if one.line in lines), default=None)
        if true_s is not None and chapter.title in heard:
            errors.append(abs(heard[chapter.title] - true_s))
        elif true_s is not None:
            missed += 1
    return errors, missed


TRADE = frozenset(
    re.findall(
        r"\w+",
        "peg pegs band bands loop loops loom hook clip row rows lowest top left right away towards "
        "blue white green yellow red slate foam weed lamp buoy sand",
    )
)


class MendScore(NamedTuple):
    """Garbled trade words and numbers, how many of them put right; right words, how many made wrong."""

    garbled: int
    put_right: int
    right: int
    made_wrong: int


def score_mends(recordings: Iterable[tuple[Recording, tuple[Cue, ...]]]) -> MendScore:
    """Mend captions and compare with what was truly said."""
    counts = [0, 0, 0, 0]
    for truth, cues in recordings:
        evidence, _ = gather_evidence(script_of(truth.piece), cues, COLOURS)
        mended = correct_cues(cues, find_corrections(evidence, cues))
        said = [word for one in truth.spoken for word, _ in split_words(one.text, "en")]
        before, after = _beside(said, cues), _beside(said, mended)
        for word, was, now in zip(said, before, after, strict=True):
            if was == word:
                counts[2] += 1
                counts[3] += now != word
            elif word in TRADE or word.isdecimal():
                counts[0] += 1
                counts[1] += now == word
    return MendScore(*counts)


def _beside(said: list[str], cues: Iterable[Cue]) -> list[str]:
    """Return for each word said the one heard in its place, or nothing."""
    heard = [word for cue in cues for word, _ in split_words(cue.text, "en")]
    found = [""] * len(said)
    for part in Levenshtein.opcodes(said, heard):
        length = min(part.src_end - part.src_start, part.dest_end - part.dest_start)
        found[part.src_start : part.src_start + length] = heard[part.dest_start : part.dest_start + length]
    return found
