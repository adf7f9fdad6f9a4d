"""What a recording is made of: when each step is shown, and what could be cut."""

from __future__ import annotations

from itertools import pairwise
from typing import Literal, NamedTuple

from pegwright.listening.contradictions import Evidence
from pegwright.listening.hearings import SURE

SILENCE_S = 3.0
"""A silence of so long could be cut (no source)."""
ASIDE = 6
"""So many words that are in no line of the lesson could be cut (no source)."""


class HeardStep(NamedTuple):
    """A step of the lesson in the recording: its number, when it begins, when its picture can go, in s.

    `spoken_s` is how long it is spoken of: the teacher's pace.
    """

    number: int
    start_s: float
    end_s: float
    spoken_s: float


class Trim(NamedTuple):
    """A stretch of the recording that could be cut, in s, and why."""

    start_s: float
    end_s: float
    why: Literal["silence", "aside", "again"]


def time_steps(evidence: Evidence) -> tuple[HeardStep, ...]:
    """Return the steps that are heard in their order, each until the next one begins."""
    spans: dict[int, list[float]] = {}
    for one in evidence.hearings:
        step = evidence.steps[one.line]
        if one.in_order and step and (one.gain >= SURE or step in spans):
            start, end = evidence.heard[one.first].start_s, evidence.heard[one.last].end_s
            span = spans.setdefault(step, [start, end])
            span[1] = max(span[1], end)
    numbers = sorted(spans, key=lambda number: spans[number][0])
    begins = [*(spans[number][0] for number in numbers[1:]), None]
    return tuple(
        HeardStep(number, spans[number][0], after or spans[number][1], spans[number][1] - spans[number][0])
        for number, after in zip(numbers, begins, strict=False)
    )


def find_trims(evidence: Evidence) -> tuple[Trim, ...]:
    """Return silences, asides, and lines that are begun and then said anew."""
    heard, found = evidence.heard, []
    for one, after in pairwise(heard):
        if after.start_s - one.end_s >= SILENCE_S:
            found.append(Trim(one.end_s, after.start_s, "silence"))
    begin = None
    for t, i in enumerate([*evidence.follow.at.tolist(), 0]):
        if i < 0 and begin is None:
            begin = t
        elif i >= 0 and begin is not None:
            if t - begin >= ASIDE:
                found.append(Trim(heard[begin].start_s, heard[t - 1].end_s, "aside"))
            begin = None
    for n, first in enumerate(evidence.hearings[:-1]):
        second = evidence.hearings[n + 1]
        if second.line == first.line and second.in_order and not evidence.shown_again(n + 1):
            found.append(Trim(heard[first.first].start_s, heard[second.first].start_s, "again"))
    return tuple(sorted(found))
