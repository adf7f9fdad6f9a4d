"""Listening: chapters, contradictions and speed, on recordings that nobody looked at while building."""

from __future__ import annotations

import statistics
import time

from bench.report import Figure
from pegwright.listening import Cue, compare_recording
from pegwright.workshop import example_files, lesson_of, open_pattern, work
from testing.listening.draft_scoring import DraftScore, score_drafts
from testing.listening.garble import garble, time_talk
from testing.listening.recordings import load_recordings, talk_of
from testing.listening.scoring import MendScore, Score, score_mends, score_recordings

KEPT = range(3, 91, 3)
"""Numbers of the talks that are only measured."""
LEVELS = {0: "about 15 %", 1: "about 30 %", 2: "about 55 %"}


def run(quick: bool) -> list[Figure]:
    """Measure on what a recogniser wrote, and on talks garbled by the table of its errors."""
    figures: list[Figure] = []
    kept = load_recordings(kept=True)
    for level, name in LEVELS.items():
        here = [one for one in kept if one[0].level == level]
        figures += _figures(f"recogniser, {name}", score_recordings(here), len(here), level)
        figures += _mends(f"recogniser, {name}", score_mends(here))
        figures += _drafts(f"recogniser, {name}", score_drafts(here), level)
    talks = [time_talk(talk_of(seed)) for seed in (KEPT[:8] if quick else KEPT)]
    for share, level in ((0.1, 0), (0.3, 1), (0.55, 2)):
        score = score_recordings((one, garble(one, share)) for one in talks)
        figures += _figures(f"table, {share:.0%}", score, len(talks), level)
        figures += _mends(f"table, {share:.0%}", score_mends((one, garble(one, share)) for one in talks))
        figures += _drafts(
            f"table, {share:.0%}", score_drafts((one, garble(one, share)) for one in talks), level
        )
    return [*figures, _speed()]


def _figures(name: str, score: Score, count: int, level: int) -> list[Figure]:
    """Goals are those of a word error rate of 30 %, for precision also of 55 %."""
    errors = score.chapter_errors_s
    if not errors:
        return []
    within = sum(error <= 5 for error in errors) / (len(errors) + score.chapters_missed)
    median = statistics.median(errors)
    told = score.right + len(score.wrong)
    figures = [
        Figure(f"{name}: recordings", count, "recordings"),
        Figure(f"{name}: chapters off, median", median, "s", "<= 1.5 s", median <= 1.5),
        Figure(f"{name}: chapters within 5 s", 100 * within, "%", ">= 95 %", within >= 0.95),
        Figure(f"{name}: contradictions told", told, "of " + str(score.right + len(score.missed))),
    ]
    planted = score.right + len(score.missed)
    figures.append(
        Figure(f"{name}: contradictions that still stand in the captions", score.left, f"of {planted}")
    )
    goal = 0.9 if level == 2 else 0.95
    met = score.precision >= goal
    figures.append(Figure(f"{name}: precision", score.precision, "", f">= {goal}", met))
    if level < 2:
        figures.append(Figure(f"{name}: recall", score.recall, "", ">= 0.85", score.recall >= 0.85))
    else:
        figures.append(Figure(f"{name}: recall", score.recall))
    return figures


def _mends(name: str, score: MendScore) -> list[Figure]:
    if not score.garbled:
        return []
    share, wrong = score.put_right / score.garbled, score.made_wrong / max(1, score.right)
    return [
        Figure(f"{name}: trade words and numbers put right", 100 * share, "%", ">= 70 %", share >= 0.7),
        Figure(f"{name}: words made wrong", 100 * wrong, "%", "<= 1 %", wrong <= 0.01),
    ]


def _drafts(name: str, score: DraftScore, level: int) -> list[Figure]:
    """Goals are those of word error rates of 10 % and 30 %."""
    goal = {0: 0.85, 1: 0.6}.get(level)
    share = 100 * score.share
    invented = Figure(
        f"{name}: steps invented", len(score.invented), f"of {score.drafted}", "0", not score.invented
    )
    if goal is None:
        return [Figure(f"{name}: steps right in drafts", share, "%"), invented]
    met = score.share >= goal
    return [Figure(f"{name}: steps right in drafts", share, "%", f">= {100 * goal:.0f} %", met), invented]


def _speed() -> Figure:
    """Half an hour of captions beside the longest built-in lesson."""
    pattern = open_pattern(example_files()["riding-lights"]).pattern
    assert pattern is not None
    lesson = lesson_of(work(pattern))
    truth = time_talk(talk_of(7))
    cues = list(garble(truth, 0.3))
    length = cues[-1].end_s
    while cues[-1].end_s < 1800:
        cues += [Cue(one.start_s + length, one.end_s + length, one.text) for one in garble(truth, 0.3)]
        length = cues[-1].end_s
    compare_recording(lesson, cues[:10])
    began = time.process_time()
    compare_recording(lesson, [one for one in cues if one.end_s <= 1800])
    spent = time.process_time() - began
    return Figure("30 minutes of captions", spent, "s", "<= 1 s", spent <= 1)
