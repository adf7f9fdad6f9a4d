"""When each chapter of the lesson begins in the recording."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from pegwright.finding import Finding, finding
from pegwright.lesson import Script
from pegwright.listening.hearings import Hearing
from pegwright.listening.words import HeardWord, SaidWord

LEAST_GAIN = 3.0
"""A line that begins a chapter needs so much to speak for it, at least (no source)."""
HEADING = 5
"""So many words that were not recognised before a chapter's first line may be its heading."""
BREATH_S = 0.7
"""A longer silence parts what was said before it from what comes after (no source)."""


class HeardChapter(NamedTuple):
    """A chapter, its start and end in the recording in s, and the share of its words heard (0 to 1)."""

    start_s: float
    end_s: float
    title: str
    share: float


def time_chapters(
    script: Script, said: Sequence[SaidWord], heard: Sequence[HeardWord], hearings: Sequence[Hearing]
) -> tuple[tuple[HeardChapter, ...], tuple[Finding, ...]]:
    """Return the chapters that are heard, at their true times, and a finding for each one missed."""
    found: list[Finding] = []
    begun: list[tuple[float, str, float]] = []
    followed = {t for one in hearings for _, t in one.pairs}
    for chapter in script.chapters:
        lines = {i for i, line in enumerate(script.lines) if chapter.start_s <= line.start_s < chapter.end_s}
        inside = [one for one in hearings if one.line in lines and one.in_order]
        words = [i for i, word in enumerate(said) if word.line in lines]
        share = len({i for one in inside for i, _ in one.pairs} & set(words)) / max(1, len(words))
        first = next((one for one in inside if one.gain >= LEAST_GAIN), None)
        if first is None or sum(one.gain for one in inside) < 2 * LEAST_GAIN:
            found.append(finding("chapter-not-heard", title=chapter.title))
            continue
        lacking = min(HEADING, first.pairs[0][0] - words[0])
        begin = first.first
        while lacking and begin and begin - 1 not in followed and not _is_parted(heard, begin):
            begin, lacking = begin - 1, lacking - 1
        begun.append((heard[begin].start_s, chapter.title, share))
    begun.sort(key=lambda one: one[0])
    ends = [*(start for start, _, _ in begun[1:]), max((word.end_s for word in heard), default=0.0)]
    chapters = (HeardChapter(s, end, t, share) for (s, t, share), end in zip(begun, ends, strict=False))
    return tuple(chapters), tuple(found)


def _is_parted(heard: Sequence[HeardWord], t: int) -> bool:
    return heard[t].start_s - heard[t - 1].end_s > BREATH_S
