"""Which lines of the script are heard when: runs of words that follow one line."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from pegwright.listening.following import Follow
from pegwright.listening.words import HeardWord, SaidWord

SURE = 6.0
"""A line whose words gain so much is heard: a likelihood ratio of 400 to 1 (no source)."""


class Hearing(NamedTuple):
    """One time that a line is heard: pairs of word numbers, said and heard, and what speaks for it.

    `first` and `last` are heard words. `in_order` says whether it fits the order of the script with the
    others.
    """

    line: int
    pairs: tuple[tuple[int, int], ...]
    gain: float
    in_order: bool = True

    @property
    def first(self) -> int:
        """The heard word that it begins with."""
        return self.pairs[0][1]

    @property
    def last(self) -> int:
        """The heard word that it ends with."""
        return self.pairs[-1][1]

    def heard_of(self, said: int) -> int | None:
        """Return the heard word that stands for a word of the script, or None."""
        return next((t for i, t in self.pairs if i == said), None)


def find_hearings(said: Sequence[SaidWord], follow: Follow) -> list[Hearing]:
    """Return the hearings in the order of time; one that begins its line anew is another."""
    runs: list[list[tuple[int, int]]] = []
    for t, i in enumerate(follow.at.tolist()):
        if i < 0:
            continue
        if not runs or said[runs[-1][-1][0]].line != said[i].line or i <= runs[-1][-1][0]:
            runs.append([])
        runs[-1].append((i, t))
    found = [Hearing(said[run[0][0]].line, tuple(run), sum(follow.gains[t] for _, t in run)) for run in runs]
    return _mark_order(found)


def _mark_order(hearings: list[Hearing]) -> list[Hearing]:
    """Mark those that belong to the weightiest row of hearings whose lines never go back."""
    best: list[tuple[float, int]] = []
    for n, one in enumerate(hearings):
        before = max(((best[k][0], k) for k in range(n) if hearings[k].line <= one.line), default=(0.0, -1))
        best.append((before[0] + one.gain, before[1] if before[0] > 0 else -1))
    kept = set()
    at = max(range(len(best)), key=lambda n: best[n][0], default=-1)
    while at >= 0:
        kept.add(at)
        at = best[at][1]
    return [one._replace(in_order=n in kept) for n, one in enumerate(hearings)]


def speech_starts_s(
    hearing: Hearing, said: Sequence[SaidWord], heard: Sequence[HeardWord], floor: int
) -> float:
    """Return when a line begins in s: at its first word, or as many unfollowed words earlier as it lacks.

    `floor` is the last heard word that belongs to something else.
    """
    i, t = hearing.pairs[0]
    lacking = 0
    while i - lacking - 1 >= 0 and said[i - lacking - 1].line == hearing.line:
        lacking += 1
    begin = t
    while lacking and begin - 1 > floor and heard[begin - 1].end_s > heard[begin].start_s - 1.0:
        begin, lacking = begin - 1, lacking - 1
    return heard[begin].start_s
