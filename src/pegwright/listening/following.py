"""Follow the script through what was heard: which word of it each heard word is.

A hidden Markov model whose states are the script's words, each with an aside after it, decoded by the
algorithm of Viterbi (1967). The speaker goes on word by word, leaves words or lines out, goes back to the
start of a line, or says something that is in no line. The probabilities of these ways have no source; they
were chosen on the recordings that may be looked at.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from pegwright.listening.vocabulary import Vocabulary
from pegwright.listening.words import HeardWord, SaidWord

ON, SKIP_ONE, SKIP_TWO = np.log(np.array((0.80, 0.07, 0.02), np.float32))
ASIDE, STAY, RETURN, RETURN_LATER = np.log(np.array((0.06, 0.80, 0.12, 0.03), np.float32))
AHEAD, AHEAD_LINE = np.log(np.array((0.015, 0.75), np.float32))
"""Leave the rest of a line out; leave out one more line."""
BACK, BACK_LINE = np.log(np.array((0.004, 0.80), np.float32))
"""Go back to the start of the line; of one more line before it."""
LATE_START = np.log(np.array((1.0, 0.4, 0.25, 0.1), np.float32))
"""How likely a line begins with its first word heard, its second, third, fourth."""
LEAST = -3.0
"""Least gain of a pair of words, however unlike (log of the likelihood ratio to an aside)."""
MOST = 6.0


class Follow(NamedTuple):
    """For each heard word the script's word that it is, or −1, and what speaks for that.

    `gains` are logs of likelihood ratios against an aside; `noise` is the share of words not heard exactly.
    """

    at: NDArray[np.int32]
    gains: NDArray[np.float64]
    noise: float


def follow_script(said: Sequence[SaidWord], heard: Sequence[HeardWord], vocabulary: Vocabulary) -> Follow:
    """Return the likeliest way through the script, given the noise that a first try has found."""
    if not said or not heard:
        return Follow(np.full(len(heard), -1, dtype=np.int32), np.zeros(len(heard)), 0.0)
    compared = _Comparison(said, heard, vocabulary)
    at, gains = _best_way(compared, 0.25)
    noise = compared.noise(at)
    if noise > 0.4 or noise < 0.1:
        at, gains = _best_way(compared, noise)
        noise = compared.noise(at)
    return Follow(at, gains, noise)


class _Comparison:
    """How much each pair of words speaks for being the same, and the places where lines begin."""

    def __init__(self, said: Sequence[SaidWord], heard: Sequence[HeardWord], vocabulary: Vocabulary) -> None:
        self.rows = sorted({word.text for word in said})
        self.columns, self.column, counts = np.unique(
            [word.text for word in heard], return_inverse=True, return_counts=True
        )
        row = {text: i for i, text in enumerate(self.rows)}
        self.row = np.array([row[word.text] for word in said])
        columns = [str(text) for text in self.columns]
        self.alike = vocabulary.likeness(self.rows, columns)
        pairs = [a.text + b.text for a, b in pairwise(said)]
        merged = sorted(set(pairs))
        place = {text: i for i, text in enumerate(merged)}
        self.merged_row = np.array([len(merged), *(place[text] for text in pairs)])
        alike = vocabulary.likeness(merged, columns) if merged else np.zeros((0, len(columns)), np.float32)
        self.merged = np.vstack([alike, np.zeros((1, len(columns)), np.float32)])
        said_often = dict.fromkeys(columns, 0)
        for word in said:
            if word.text in said_often:
                said_often[word.text] += 1
        self.rate = (counts + np.array([said_often[text] for text in columns]) + 1) / (
            len(heard) + len(said) + len(columns)
        )
        self.line = np.array([word.line for word in said])
        self.starts = np.flatnonzero(np.diff(self.line, prepend=-1))

    def gains(self, noise: float) -> tuple[NDArray[np.float32], NDArray[np.float32]]:
        """Return the gain of each pair of different words, and that of two words heard as one."""
        with np.errstate(divide="ignore"):
            likely = noise * 0.3 * self.alike**6
            likely[self.alike >= 1.0] = 1 - noise
            plain = np.clip(np.log(likely / self.rate), LEAST, MOST)
            merged = np.clip(np.log(noise * 0.3 * self.merged**6 / self.rate), LEAST, MOST)
        merged[self.merged < 0.7] = LEAST
        return plain.astype(np.float32), merged.astype(np.float32)

    def noise(self, at: NDArray[np.int32]) -> float:
        """Return the share of words that were followed but not heard exactly, or skipped within a line."""
        here = np.flatnonzero(at >= 0)
        if len(here) == 0:
            return 0.5
        exact = self.alike[self.row[at[here]], self.column[here]] >= 1.0
        steps = np.diff(at[here])
        missed = steps[(steps > 1) & (steps <= 3)].sum() - ((steps > 1) & (steps <= 3)).sum()
        between = np.diff(here)
        extra = between[(between > 1) & (between <= 3)].sum() - ((between > 1) & (between <= 3)).sum()
        wrong = float((~exact).sum() + missed + 0.5 * extra)
        return min(0.9, max(0.02, wrong / (len(here) + float(missed))))


def _best_way(compared: _Comparison, noise: float) -> tuple[NDArray[np.int32], NDArray[np.float64]]:
    plain, merged = (np.ascontiguousarray(table.T) for table in compared.gains(noise))
    count, starts = len(compared.row), compared.starts
    lines = np.searchsorted(starts, np.arange(count), side="right") - 1
    late = [_places(starts, lines, k) for k in range(len(LATE_START))]
    length = len(compared.column)
    word_way = np.zeros((length, count), dtype=np.int8)
    aside_way = np.zeros((length, count), dtype=bool)
    from_line = np.full((length, 2, len(starts)), -1, dtype=np.int32)
    everywhere = np.arange(count)
    ways = np.full((8, count), -np.inf, dtype=np.float32)
    on = np.full(count, -np.inf, dtype=np.float32)
    away = np.full(count, -np.inf, dtype=np.float32)
    for k, places in enumerate(late):  # before the first word: to any line, rather an early one
        ways[6, places] = LATE_START[k] + AHEAD + AHEAD_LINE * 0.3 * lines[places]
    away[0] = ASIDE
    for t, column in enumerate(compared.column):
        gain = plain[column].take(compared.row)
        if t:
            both = merged[column].take(compared.merged_row) - gain
            ways[0, 1:] = on[:-1] + ON
            ways[1, 2:] = on[:-2] + SKIP_ONE + np.maximum(both[2:], 0)
            ways[2, 3:] = on[:-3] + SKIP_TWO
            ways[3, 1:] = away[:-1] + RETURN
            ways[4, 2:] = away[:-2] + RETURN_LATER
            ways[5, 3:] = away[:-3] + RETURN_LATER - 1
            ahead, back = _from_lines(on, away, starts, lines, from_line[t])
            for k, places in enumerate(late):
                ways[6, places] = ahead[lines[places]] + LATE_START[k]
                ways[7, places] = back[lines[places]] + LATE_START[k]
            stay, begin = away + STAY, on + ASIDE
            aside_way[t] = stay >= begin
            away = np.maximum(stay, begin)
        word_way[t] = ways.argmax(axis=0)
        on = ways[word_way[t], everywhere] + gain
        best = max(on.max(), away.max())
        on, away = on - best, away - best
    return _trace(compared, plain, (word_way, aside_way, from_line), (on, away), lines)


def _places(starts: NDArray[np.intp], lines: NDArray[np.intp], k: int) -> NDArray[np.intp]:
    """Return the words that stand k words after the start of their line."""
    places = starts + k
    inside = places < len(lines)
    kept: NDArray[np.intp] = places[inside][lines[places[inside]] == np.flatnonzero(inside)]
    return kept


def _from_lines(
    on: NDArray[np.float32],
    away: NDArray[np.float32],
    starts: NDArray[np.intp],
    lines: NDArray[np.intp],
    origin: NDArray[np.int32],
) -> tuple[NDArray[np.float32], NDArray[np.float32]]:
    """Return the best way to the start of each line from an earlier one, and from itself or a later one.

    `origin` is filled with where each comes from: the word's number, or −2 less it for the aside after it.
    """
    either = np.maximum(on, away)
    best = np.maximum.reduceat(either, starts)
    order = np.arange(len(starts), dtype=np.float32)
    # Ahead: from line k to line L > k at AHEAD + (L - k - 1) * AHEAD_LINE.
    lifted = best - order * AHEAD_LINE
    reach = np.maximum.accumulate(lifted)
    ahead = np.full(len(starts), -np.inf, dtype=np.float32)
    ahead[1:] = reach[:-1] + (order[1:] - 1) * AHEAD_LINE + AHEAD
    # Back: from line k to line L <= k at BACK + (k - L) * BACK_LINE.
    lowered = (best + order * BACK_LINE)[::-1]
    fall = np.maximum.accumulate(lowered)
    back = fall[::-1] - order * BACK_LINE + BACK
    places = np.arange(len(on), dtype=np.int32)
    at = np.maximum.reduceat(np.where(either == best[lines], places, -1), starts)
    place = np.where(on[at] >= away[at], at, -2 - at)
    origin[0, 1:] = place[_who_leads(lifted, reach)[:-1]]
    origin[1] = place[len(starts) - 1 - _who_leads(lowered, fall)[::-1]]
    return ahead, back


def _who_leads(values: NDArray[np.float32], running: NDArray[np.float32]) -> NDArray[np.int32]:
    """Return for each place where its running maximum was reached."""
    return np.asarray(np.maximum.accumulate(np.where(values == running, np.arange(len(values)), 0)), np.int32)


def _trace(
    compared: _Comparison,
    plain: NDArray[np.float32],
    kept: tuple[NDArray[np.int8], NDArray[np.bool_], NDArray[np.int32]],
    last: tuple[NDArray[np.float32], NDArray[np.float32]],
    lines: NDArray[np.intp],
) -> tuple[NDArray[np.int32], NDArray[np.float64]]:
    word_way, aside_way, from_line = kept
    on, away = last
    length = len(compared.column)
    at = np.full(length, -1, dtype=np.int32)
    gains = np.zeros(length)
    here = int(on.argmax()) if on.max() >= away.max() else -2 - int(away.argmax())
    for t in range(length - 1, -1, -1):
        if here < -1:
            place = -2 - here
            here = here if aside_way[t, place] or t == 0 else place
            continue
        at[t] = here
        gains[t] = plain[compared.column[t], compared.row[here]]
        way = int(word_way[t, here])
        if way <= 2:
            here = here - 1 - way
        elif way <= 5:
            here = -2 - (here - 1 - (way - 3))
        else:
            here = int(from_line[t, way - 6, lines[here]])
        if here == -1:
            break
    return at, gains
