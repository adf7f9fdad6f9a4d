"""Align what was heard with the script, word by word, and read off when each chapter begins.

A global alignment with free gaps (Needleman and Wunsch 1970) that maximises the words in common; similar
words count in part.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from rapidfuzz import fuzz, process

from pegwright.finding import Finding, finding
from pegwright.lesson import Script
from pegwright.listening.captions import Cue

MOST_WORDS = 12_000
"""Words that are compared on either side: two hours of steady talk."""
LEAST_SHARE = 0.5
"""Of a sentence's words, so many must be heard before it gives a chapter its time (no source)."""
_ALIKE = 75.0


class HeardChapter(NamedTuple):
    """A chapter, its start and end in the recording in s, and the share of its words heard (0 to 1)."""

    start_s: float
    end_s: float
    title: str
    share: float


def find_chapters(
    script: Script, cues: Sequence[Cue]
) -> tuple[tuple[HeardChapter, ...], tuple[Finding, ...]]:
    """Return the chapters heard in the cues at their true times, and a finding for each one missed."""
    said = [(word, i) for i, line in enumerate(script.lines) for word in _words(line.text)]
    heard = [(word, at, n) for n, cue in enumerate(cues) for word, at in _timed_words(cue)]
    found: list[Finding] = []
    if max(len(said), len(heard)) > MOST_WORDS:
        found.append(finding("recording-too-long", limit=MOST_WORDS))
        said, heard = said[:MOST_WORDS], heard[:MOST_WORDS]
    pairs = dict(_match_words([word for word, _ in said], [word for word, _, _ in heard]))
    taken = set(pairs.values())
    times: dict[int, list[float | None]] = {}
    for k, (_, i) in enumerate(said):
        line = times.setdefault(i, [])
        at = pairs.get(k)
        if at is not None and all(before is None for before in line):
            for _ in line:  # the sentence starts with words that were not recognised
                if at and at - 1 not in taken and heard[at - 1][2] == heard[at][2]:
                    at -= 1
        line.append(None if at is None else heard[at][1])
    begun: list[tuple[float, str, float]] = []
    for chapter in script.chapters:
        inside = [
            times.get(i, [])
            for i, line in enumerate(script.lines)
            if chapter.start_s <= line.start_s < chapter.end_s
        ]
        words = [at for line in inside for at in line]
        share = sum(at is not None for at in words) / len(words) if words else 0.0
        start = next((_first(line) for line in inside if _is_heard(line)), None)
        if start is None or share < LEAST_SHARE / 2:
            found.append(finding("chapter-not-heard", title=chapter.title))
        else:
            begun.append((start, chapter.title, share))
    ends = [*(start for start, _, _ in begun[1:]), max((cue.end_s for cue in cues), default=0.0)]
    chapters = (HeardChapter(s, end, t, share) for (s, t, share), end in zip(begun, ends, strict=False))
    return tuple(chapters), tuple(found)


def _words(text: str) -> list[str]:
    return re.findall(r"\w+", text.casefold())


def _timed_words(cue: Cue) -> list[tuple[str, float]]:
    """Return the words of a cue with their times in s, spread evenly over the cue."""
    words = _words(cue.text)
    return [(w, cue.start_s + (cue.end_s - cue.start_s) * i / len(words)) for i, w in enumerate(words)]


def _is_heard(line: list[float | None]) -> bool:
    return bool(line) and sum(at is not None for at in line) >= LEAST_SHARE * len(line)


def _first(line: list[float | None]) -> float:
    return next(at for at in line if at is not None)


def _match_words(said: list[str], heard: list[str]) -> list[tuple[int, int]]:
    """Return the pairs of words, in order on both sides, with the greatest total similarity."""
    if not said or not heard:
        return []
    rows, columns = sorted(set(said)), sorted(set(heard))
    alike = process.cdist(rows, columns, scorer=fuzz.ratio, score_cutoff=_ALIKE, dtype=np.float32) / 100
    row_of, column_of = {w: i for i, w in enumerate(rows)}, {w: i for i, w in enumerate(columns)}
    order = np.array([column_of[w] for w in heard])
    best = np.zeros(len(heard) + 1, dtype=np.float64)
    ways = np.zeros(
        (len(said) + 1, len(heard) + 1), dtype=np.int8
    )  # 0 skips a heard word, 1 skips a said word, 2 pairs them
    for i, word in enumerate(said, start=1):
        gain = alike[row_of[word]][order]
        paired = np.where(gain > 0, best[:-1] + gain, -1.0)
        now = best.copy()
        now[1:] = np.maximum(now[1:], paired)
        now = np.maximum.accumulate(now)
        ways[i][now == best] = 1
        ways[i, 1:][now[1:] == paired] = 2
        best = now
    pairs = []
    i, j = len(said), len(heard)
    while i and j:
        way = ways[i, j]
        if way == 2:
            pairs.append((i - 1, j - 1))
        i, j = i - (way > 0), j - (way != 1)
    return pairs[::-1]
