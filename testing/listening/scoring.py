"""How well chapters and contradictions found in a recording agree with the truth."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from pegwright.lesson import Script
from pegwright.listening import Contradiction, Cue, HeardChapter
from pegwright.listening.chapters import time_chapters
from pegwright.listening.comparison import find_contradictions, gather_evidence, is_certain
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
    right, wrong, missed, errors, lost, noise = 0, [], [], [], 0, []
    for truth, cues in recordings:
        script = script_of(truth.piece)
        evidence, _ = gather_evidence(script, cues, COLOURS)
        noise.append(evidence.follow.noise)
        left = list(truth.planted)
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
        right, tuple(wrong), tuple(missed), tuple(sorted(errors)), lost, sum(noise) / max(1, len(noise))
    )


def is_planted(one: Contradiction, planted: Planted) -> bool:
    """Say whether a contradiction is the planted one: its kind, and its step (an extra one: next to it)."""
    if _KINDS.get(one.kind, one.kind) != planted.kind:
        return False
    if planted.kind == "hand":
        return True
    return abs(one.step - planted.step) <= (1 if planted.kind == "extra" else 0)


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
