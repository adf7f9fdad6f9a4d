"""Where a recording says something else than the lesson, and how sure that is.

For every fact of the script the words heard in its place are compared with what it should be. That another
value was said is weighed against the recogniser having heard wrongly (Bayes): by how noisy the recording is
just there, and by how often one value of its kind is heard for another.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from pegwright.listening.facts import SpokenFact
from pegwright.listening.following import Follow
from pegwright.listening.hearings import SURE, Hearing
from pegwright.listening.vocabulary import Vocabulary
from pegwright.listening.words import HeardWord, SaidWord

SLIPS = 0.03
"""So many facts are said wrong before anything is heard (no source)."""
MISHEARD = {
    "number": 0.006, "row": 0.15, "colour": 0.008, "way": 0.004, "loop": 0.004,
}  # fmt: skip
"""How often a misheard word becomes another value of its kind (counted in the recordings looked at)."""
ALIKE_NUMBERS = 15.0
"""So many times more often is a number misheard as one that sounds like it."""
ASTRAY = 0.015
"""By so much times the square of the noise the words near a fact are taken for it (no source)."""
WITHIN = 6
"""Words on either side by which the noise at a place is judged."""


LOOSE = 0.6
"""A value beside which no word is heard exactly, or whose line is begun anew, is a question at most."""
TAKEN_BACK = 10
"""Within so many words after a slip it is taken back (no source)."""
ANEW_S = 25.0
"""Within so many s a line is said anew; later it is only said again (no source)."""
OTHER = 4
"""So many words of another line part a slip from what is taken back after it (no source)."""


class Contradiction(NamedTuple):
    """Something that the recording says otherwise, at a time in s; `confidence` is 0 to 1.

    `kind` is that of a fact, or `unsaid`, `extra` or `swapped`; `line` is the script's, `step` the lesson's.
    """

    kind: str
    step: int
    line: int
    start_s: float
    meant: str
    heard: str
    confidence: float


class Evidence(NamedTuple):
    """All that contradictions are read from."""

    said: Sequence[SaidWord]
    heard: Sequence[HeardWord]
    follow: Follow
    hearings: Sequence[Hearing]
    facts: Sequence[SpokenFact]
    vocabulary: Vocabulary
    steps: Sequence[int]
    repeats: frozenset[int]
    """Lines that say how often something is done again."""
    lengths: Mapping[int, int]
    """How many words each line has."""
    take_backs: tuple[str, ...]
    """Phrases that take something back, and that the script itself does not have."""

    def shown_again(self, n: int) -> bool:
        """Say whether a hearing is a round shown after it was said that it is done again."""
        line = self.hearings[n].line
        return any(one.line in self.repeats and one.line > line for one in self.hearings[:n])


class Judged(NamedTuple):
    """What a hearing says of a fact: the value, None where it cannot be told, and how sure."""

    value: str | None
    heard: str
    at: int
    agrees: bool
    confidence: float


def find_wrong_facts(evidence: Evidence) -> tuple[list[Contradiction], list[int]]:
    """Return the facts said otherwise, and the hearings that fit their line too badly to be of it."""
    by_line: dict[int, list[SpokenFact]] = {}
    for fact in evidence.facts:
        by_line.setdefault(fact.line, []).append(fact)
    wrong: dict[SpokenFact, tuple[int, Contradiction]] = {}
    agreed: list[tuple[SpokenFact, int]] = []
    misfits: list[int] = []
    for n, hearing in enumerate(evidence.hearings):
        judged = [(fact, judge_fact(evidence, hearing, fact)) for fact in by_line.get(hearing.line, ())]
        apart = [(fact, one) for fact, one in judged if one.value is not None and not one.agrees]
        if evidence.shown_again(n):
            continue
        if len({fact.words for fact, one in apart if one.confidence > 0.3}) >= 3 or (
            len(apart) >= 2 and any(h.line == hearing.line for k, h in enumerate(evidence.hearings) if k != n)
        ):
            misfits.append(n)
            continue
        agreed += [(fact, n) for fact, one in judged if one.agrees]
        if not hearing.in_order:
            continue
        for fact, one in apart:
            if is_taken_back(evidence, one.at, hearing):
                continue
            wrong[fact] = (
                n,
                Contradiction(
                    fact.kind,
                    evidence.steps[fact.line],
                    fact.line,
                    evidence.heard[one.at].start_s,
                    " ".join(evidence.said[k].text for k in fact.words),
                    one.heard,
                    one.confidence,
                ),
            )
    found = []
    for fact, (n, told) in wrong.items():
        if any(other == fact and _is_said_anew(evidence, k, n) for other, k in agreed):
            continue
        again = any(
            hearing.line == fact.line and hearing.in_order and k > n and k not in misfits
            for k, hearing in enumerate(evidence.hearings)
            if _is_said_anew(evidence, k, n)
        )
        found.append(told._replace(confidence=min(told.confidence, LOOSE)) if again else told)
    return found, misfits


def _is_said_anew(evidence: Evidence, one: int, other: int) -> bool:
    """Say whether two hearings of a line are so near that one takes the other back."""
    starts = [evidence.heard[evidence.hearings[n].first].start_s for n in (one, other)]
    return one != other and abs(starts[0] - starts[1]) <= ANEW_S


def judge_fact(evidence: Evidence, hearing: Hearing, fact: SpokenFact) -> Judged:
    """Compare what a hearing says in the place of a fact with what it should say."""
    unknown = Judged(None, "", hearing.first, False, 0.0)
    places = [(k, _heard_of(evidence, hearing, k)) for k in fact.words]
    found = [(k, t) for k, t in places if t is not None]
    if not found:
        return unknown
    kind = "number" if fact.kind in ("count", "repeats", "supplies", "peg") else fact.kind
    values = []
    for _, t in found:
        sort, value = evidence.vocabulary.meant_by(evidence.heard[t].text)
        if sort == kind and not (fact.kind == "peg" and not evidence.heard[t].text.isdecimal()):
            values.append((value, t))
    if any(value in fact.values for value, _ in values):
        return Judged(fact.values[0], "", values[0][1], True, 1.0)
    if not values:
        return unknown
    value, t = values[0]
    alone = hearing.heard_of(fact.words[0] - 1) is None
    if fact.kind == "peg" and ((alone and value.endswith(fact.values[0])) or len(value) > 2):
        return unknown  # the row letter before it ran into it, or what came after: 826 is A 26
    noise = local_noise(evidence, hearing, fact)
    chance = (
        noise
        * MISHEARD[kind]
        * (ALIKE_NUMBERS if kind == "number" and sound_alike_numbers(value, fact.values[0]) else 1.0)
    )
    chance = chance * MISHEARD[kind] ** (len(values) - 1) + ASTRAY * noise**2
    slip = SLIPS * (1 - noise)
    confidence = slip / (slip + (1 - SLIPS) * chance)
    if not evidence.steps[fact.line] and confidence > LOOSE:
        confidence = LOOSE  # a list to look at, which nobody works from
    exact = sum(evidence.said[i].text == evidence.heard[t].text for i, t in hearing.pairs)
    if exact < 0.5 * len(hearing.pairs) or not _is_hemmed_in(evidence, hearing, fact.words, t):
        confidence = min(confidence, LOOSE)
    return Judged(value, " ".join(evidence.heard[k].text for _, k in values), t, False, confidence)


def _heard_of(evidence: Evidence, hearing: Hearing, k: int) -> int | None:
    """Return the heard word for one of the script: where none was followed, a number right after the last."""
    t = hearing.heard_of(k)
    if t is not None or evidence.said[k].text.isdecimal() is False:
        return t
    before = hearing.heard_of(k - 1)
    if before is None or before != hearing.last or before + 1 >= len(evidence.heard):
        return None
    word, after = evidence.heard[before], evidence.heard[before + 1]
    exact = word.text == evidence.said[k - 1].text
    return before + 1 if exact and after.cue == word.cue and after.text.isdecimal() else None


def is_taken_back(evidence: Evidence, first: int, hearing: Hearing) -> bool:
    """Say whether heard words are taken back right after: no, that was the wrong one."""
    others = (
        one.first
        for one in evidence.hearings
        if one.line != hearing.line
        and one.first > hearing.last
        and len(one.pairs) >= OTHER
        and one.gain >= SURE
    )
    last = min(hearing.last + 1 + TAKEN_BACK, next(others, len(evidence.heard)))
    return takes_back(evidence, first, last)


def takes_back(evidence: Evidence, first: int, last: int) -> bool:
    """Say whether words from `first` to before `last` take something back."""
    text = " ".join(word.text for word in evidence.heard[first:last])
    return any(re.search(rf"\b{re.escape(one)}\b", text) for one in evidence.take_backs)


def _is_hemmed_in(evidence: Evidence, hearing: Hearing, words: tuple[int, ...], t: int) -> bool:
    """Say whether a word next to it is heard exactly where it should be."""
    for i, at in hearing.pairs:
        apart = i - max(words) if i > max(words) else i - min(words)
        if i in words or abs(apart) > 3 or abs(at - t) > 4 or (at - t) * apart <= 0:
            continue
        if evidence.heard[at].text == evidence.said[i].text:
            return True
    return False


def local_noise(evidence: Evidence, hearing: Hearing, fact: SpokenFact) -> float:
    """Return how likely a word is misheard near a fact: from the words of its line around it, and overall."""
    near = [
        (i, t)
        for i, t in hearing.pairs
        if i not in fact.words and min(abs(i - k) for k in fact.words) <= WITHIN
    ]
    wrong = sum(evidence.said[i].text != evidence.heard[t].text for i, t in near)
    missing = sum(
        1
        for i in range(min(fact.words) - 2, max(fact.words) + 3)
        if 0 <= i < len(evidence.said)
        and evidence.said[i].line == fact.line
        and i not in fact.words
        and hearing.heard_of(i) is None
    )
    return min(0.95, (4 * evidence.follow.noise + wrong + 0.5 * missing) / (4 + len(near) + 0.5 * missing))


def sound_alike_numbers(one: str, other: str) -> bool:
    """Say whether one number is easily heard for another: 15 for 50, 20 for 23, 3 for 13, 826 for 26."""
    a, b = sorted((int(one), int(other)))
    if a == b:
        return True
    digits_a, digits_b = str(a), str(b)
    if len(digits_a) < len(digits_b) and (digits_b.startswith(digits_a) or digits_b.endswith(digits_a)):
        return True
    if 12 < a < 20 and b == (a - 10) * 10:
        return True
    return a >= 20 and a // 10 == b // 10 and (a % 10 == 0 or b % 10 == 0)
