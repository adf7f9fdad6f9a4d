"""Captions: at most two lines of 37 letters, broken where one breathes, long enough to be read.

Limits: 37 characters a line, two lines, at least 0.3 s a word, a gap of 1 s or more or none at all, breaks at
punctuation and never between an article, a preposition or a pronoun and its word (BBC Subtitle Guidelines
1.2.5); 5/6 s to 7 s each (other houses).
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from pegwright.lesson.film.script import Script, ScriptLine, count_spoken_words

WIDEST = 37
LONGEST_S = 7.0
LEAST_S_A_WORD = 0.3
_CLOSES = (".", ",", ";", ":", "!", "?", "…", ")", "”", "»", "“")
_CLINGING = {
    "en": "a an the of to on in at by for from with up out over off through round under inside into and or "
    "no it its your you they them this that those these is are one each another which if so",
    "es": "un una unos unas el la los las de del a al en con por para desde hasta sobre bajo entre y o no su "
    "sus tu tus se lo le les que es son cada otro otra este esta ese esa si",
    "de": "ein eine einen einem einer eines der die das den dem des von vom zu zum zur an am auf aus bei in "
    "im ins mit nach über unter um durch für und oder nicht kein keine du dein deine sie es er ist sind jede "
    "jeder jedes dies diese dieser wenn so",
}


class Caption(NamedTuple):
    """One or two lines and when they stand, in seconds."""

    start_s: float
    end_s: float
    lines: tuple[str, ...]


def caption_script(script: Script) -> tuple[Caption, ...]:
    """Cut what is said into captions, each within one sentence."""
    return caption_lines(script.lines, script.language)


def caption_lines(lines: Iterable[ScriptLine], language: str) -> tuple[Caption, ...]:
    """Cut lines of a language into captions, each within one sentence."""
    clinging = frozenset(_CLINGING.get(language, "").split())
    found: list[Caption] = []
    for line in lines:
        found += _cut_line(line, clinging)
    return tuple(found)


def _cut_line(line: ScriptLine, clinging: frozenset[str]) -> list[Caption]:
    words = [piece for word in line.text.split() for piece in _word_pieces(word)]
    weights = [count_spoken_words(word) for word in words]
    a_word_s = (line.end_s - line.start_s) / max(1.0, sum(weights))
    found = []
    now = line.start_s
    groups = _choose_breaks(words, weights, a_word_s, clinging)
    for i, lines in enumerate(groups):
        weight = sum(count_spoken_words(word) for text in lines for word in text.split())
        end = line.end_s if i == len(groups) - 1 else now + weight * a_word_s
        found.append(Caption(now, end, lines))
        now = end
    return found


def _word_pieces(word: str) -> list[str]:
    return [word[i : i + WIDEST] for i in range(0, len(word), WIDEST)]


def _choose_breaks(
    words: list[str], weights: list[float], a_word_s: float, clinging: frozenset[str]
) -> list[tuple[str, ...]]:
    """Choose the breaks that cost least, by dynamic programming over where each caption begins."""
    breaks = [_break_cost(word, clinging) for word in words]
    best: list[tuple[float, int, tuple[str, ...]]] = [(0.0, 0, ())]
    for end in range(1, len(words) + 1):
        ways = []
        for start in range(end - 1, -1, -1):
            if len(" ".join(words[start:end])) > 2 * WIDEST + 1:
                break
            if start < end - 1 and sum(weights[start:end]) * a_word_s > LONGEST_S:
                break
            laid = _lay_lines(words, start, end, breaks)
            if laid is None:
                continue
            cost, lines = laid
            short = (
                12.0 if sum(weights[start:end]) * a_word_s < 1.6 and (start, end) != (0, len(words)) else 0
            )
            closing = 2 * breaks[end - 1] if end < len(words) else 0.0
            ways.append((best[start][0] + cost + short + closing + 3.0, start, lines))
        best.append(min(ways))
    groups = []
    end = len(words)
    while end:
        _, start, lines = best[end]
        groups.append(lines)
        end = start
    return groups[::-1]


def _lay_lines(
    words: list[str], start: int, end: int, breaks: list[float]
) -> tuple[float, tuple[str, ...]] | None:
    """Set words in one line, or in the two lines that break best; None where they do not fit."""
    whole = " ".join(words[start:end])
    if len(whole) <= WIDEST:
        return 0.0, (whole,)
    ways = []
    for middle in range(start + 1, end):
        a, b = " ".join(words[start:middle]), " ".join(words[middle:end])
        if max(len(a), len(b)) <= WIDEST:
            ways.append((breaks[middle - 1] + abs(len(a) - len(b)) / WIDEST, (a, b)))
    return min(ways) if ways else None


def _break_cost(word: str, clinging: frozenset[str]) -> float:
    """Return what it costs to break after a word."""
    if word.endswith(_CLOSES):
        return 0.0
    return 5.0 if word.casefold() in clinging else 1.5
