"""Captions mended: garbled words put right where the lesson tells which word was said.

A word is changed if it sounds like the script's and stands near words that are heard as the script has them,
or if these leave room for no other word and what was heard says nothing of its own. A number, colour or
direction that is heard clearly stays, even if it contradicts the lesson. Nothing is added.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from pegwright.listening.captions import Cue
from pegwright.listening.contradictions import Evidence
from pegwright.listening.hearings import SURE, Hearing
from pegwright.listening.vocabulary import SEEN

LEAST_ALIKE = 0.5
"""A word that is put right sounds at least so much like what was heard (0 to 1; no source)."""
LEAST_CONFIDENCE, NOISY_CONFIDENCE = 0.6, 0.9
"""The second where more than two words in five are misheard."""
LONGEST_ENDING = 2
"""Words that differ only in so many letters at their end may be forms of one."""
REMOTELY_ALIKE = 0.3
"""So much like the script's word sounds one that is put right for its place (0 to 1; no source)."""


class WordCorrection(NamedTuple):
    """A word of a caption put right: which cue, when in s, where in its text, and how sure (0 to 1)."""

    cue: int
    start_s: float
    span: tuple[int, int]
    before: str
    after: str
    confidence: float


def find_corrections(evidence: Evidence, cues: Sequence[Cue]) -> tuple[WordCorrection, ...]:
    """Return the words to be put right, in the order of time."""
    open_pairs = [
        (hearing, i, t)
        for hearing in evidence.hearings
        if hearing.gain >= SURE
        for i, t in hearing.pairs
        if evidence.said[i].text != evidence.heard[t].text
    ]
    if not open_pairs:
        return ()
    rows = sorted({evidence.said[i].text for _, i, _ in open_pairs})
    columns = sorted({evidence.heard[t].text for _, _, t in open_pairs})
    alike = evidence.vocabulary.likeness(rows, columns)
    row, column = {w: k for k, w in enumerate(rows)}, {w: k for k, w in enumerate(columns)}
    ours = {word.text for word in evidence.said}
    found = []
    for hearing, i, t in open_pairs:
        said, heard = evidence.said[i], evidence.heard[t]
        text = cues[heard.cue].text[slice(*heard.span)]
        after = _right_word(evidence, hearing, i, t)
        if after is None:
            continue
        likeness = 1.0 if after != said.text else float(alike[row[said.text], column[heard.text]])
        by_sound = _confidence_by_sound(evidence, hearing, (i, t), likeness, heard.text in ours)
        by_place = _confidence_by_place(evidence, hearing, (i, t), likeness, heard.text in ours)
        confidence = max(by_sound, by_place)
        if confidence >= (NOISY_CONFIDENCE if evidence.follow.noise > 0.4 else LEAST_CONFIDENCE):
            shown = after[0].upper() + after[1:] if text[:1].isupper() or len(after) == 1 else after
            found.append(WordCorrection(heard.cue, heard.start_s, heard.span, text, shown, confidence))
    return tuple(sorted(found, key=lambda one: (one.cue, one.span)))


def correct_cues(cues: Sequence[Cue], corrections: Sequence[WordCorrection]) -> tuple[Cue, ...]:
    """Return the cues with the corrections made."""
    texts = [cue.text for cue in cues]
    for one in sorted(corrections, key=lambda one: one.span, reverse=True):
        start, end = one.span
        texts[one.cue] = texts[one.cue][:start] + one.after + texts[one.cue][end:]
    return tuple(cue._replace(text=text) for cue, text in zip(cues, texts, strict=True))


def _right_word(evidence: Evidence, hearing: Hearing, i: int, t: int) -> str | None:
    """Return what a heard word should read, or None where it must stay as it is."""
    said, heard = evidence.said[i].text, evidence.heard[t].text
    kind_of = evidence.vocabulary.kind_of
    (sort, _), (kind, _) = kind_of(said), kind_of(heard)
    if said.isdecimal() and heard.isdecimal():
        letter = evidence.said[i - 1].text if i else ""
        if letter == "a" and heard == f"8{said}" and hearing.heard_of(i - 1) is None:
            return f"A{said}"  # the letter A is heard as eight
        return None
    return None if kind == sort != "plain" else said


def _confidence_by_sound(
    evidence: Evidence, hearing: Hearing, pair: tuple[int, int], likeness: float, is_ours: bool
) -> float:
    """Return how sure it is that a word which sounds much like the script's is that one."""
    said, heard = evidence.said[pair[0]].text, evidence.heard[pair[1]].text
    if likeness < (SEEN if is_ours or _has_value(evidence, heard) else LEAST_ALIKE):
        return 0.0
    if likeness < SEEN and _are_forms(said, heard):
        return 0.0
    near = _exact_neighbours(evidence, hearing, *pair)
    return near / 2 / (1 + math.exp(-4 * (likeness - 0.6) - float(evidence.follow.gains[pair[1]])))


def _confidence_by_place(
    evidence: Evidence, hearing: Hearing, pair: tuple[int, int], likeness: float, is_ours: bool
) -> float:
    """Return how sure it is that a word is the script's because the words beside it leave room for no other.

    It must sound at least remotely like it; a number needs not, but for the words that may be said instead.
    """
    said, heard = evidence.said[pair[0]].text, evidence.heard[pair[1]].text
    is_number = evidence.vocabulary.kind_of(said)[0] == "number"
    if _has_value(evidence, heard) or _are_forms(said, heard) or heard in evidence.vocabulary.instead:
        return 0.0
    if not is_number and (is_ours or likeness < REMOTELY_ALIKE):
        return 0.0
    before, after = (_exact_in_row(evidence, hearing, pair, way) for way in (-1, 1))
    return 1 - 0.5 ** (before + after) if before and after else 0.0


def _exact_in_row(evidence: Evidence, hearing: Hearing, pair: tuple[int, int], way: int) -> int:
    """Return how many of the next three words on one side, followed one by one, are heard exactly."""
    pairs, exact = set(hearing.pairs), 0
    for k in range(1, 4):
        i, t = pair[0] + way * k, pair[1] + way * k
        if (i, t) not in pairs:
            break
        exact += evidence.said[i].text == evidence.heard[t].text
    return exact


def _are_forms(said: str, heard: str) -> bool:
    """Say whether two words may be forms of one, of which either may well have been said."""
    short, long = sorted((said, heard), key=len)
    return long.startswith(short) and len(long) - len(short) <= LONGEST_ENDING


def _has_value(evidence: Evidence, word: str) -> bool:
    """Say whether a word is a number, colour, direction or the like by itself."""
    return evidence.vocabulary.kind_of(word)[0] not in ("plain", "row")


def _exact_neighbours(evidence: Evidence, hearing: Hearing, i: int, t: int) -> float:
    """Return on how many sides the next word followed is heard exactly; the end of a line counts for half."""
    sides = 0.0
    for way in (-1, 1):
        near = [(k, u) for k, u in hearing.pairs if 0 < (k - i) * way <= 3 and 0 < (u - t) * way <= 3]
        if any(evidence.said[k].text == evidence.heard[u].text for k, u in near):
            sides += 1
        elif not near:
            sides += 0.5
    return min(2.0, sides + 0.3)
