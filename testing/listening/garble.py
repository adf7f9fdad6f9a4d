"""Captions with errors like a recogniser's, at a given rate: from the table counted in real ones."""

from __future__ import annotations

import random
import re
from functools import lru_cache

import msgspec
from rapidfuzz import fuzz, process

from pegwright.listening import Cue
from testing.listening.learn_confusions import TABLE
from testing.listening.recordings import Recording, Spoken
from testing.listening.talk import Talk

WORD_S, LONGEST_CUE = 0.42, 9
"""How long a word takes, and how many words a caption has at most."""
_NUMBERS_MISHEARD = {
    1: ("on", "won"), 2: ("to", "too"), 3: ("free", "tree"), 4: ("for", "fall"), 5: ("fife",), 6: ("sex",),
    7: ("heaven",), 8: ("ate", "hate"), 9: ("mine", "nigh"), 10: ("then", "tin"),
}  # fmt: skip
LOST, SPLIT, OTHER_NUMBER = 0.15, 0.05, 0.04
"""Of all errors: nothing heard, a word too many, and of those in numbers: another number.

In the recordings that may be looked at none of the first 16 misheard numbers became another one.
"""


def time_talk(talk: Talk) -> Recording:
    """Return a talk with the times at which it is said at a steady pace; no sound is made."""
    spoken, now = [], 0.0
    for one in talk.utterances:
        length = one.pause_s if one.music else WORD_S * len(one.text.split())
        spoken.append(Spoken(now, now + length, one.text, one.line, one.music))
        now += length + (0.0 if one.music else one.pause_s)
    return Recording(talk.piece, talk.seed, -1, tuple(spoken), talk.planted)


def garble(recording: Recording, share: float) -> tuple[Cue, ...]:
    """Return captions of a recording in which about this share of the words is wrong."""
    rng = random.Random(f"garble {recording.seed} {share}")
    cues = []
    for one in recording.spoken:
        if one.music:
            cues.append(Cue(one.start_s, one.end_s, "[Music]"))
            continue
        words = one.text.split()
        a_word = (one.end_s - one.start_s) / max(1, len(words))
        for at in range(0, len(words), LONGEST_CUE):
            part = words[at : at + LONGEST_CUE]
            text = " ".join(filter(None, (_hear(word, share, rng) for word in part)))
            start = one.start_s + at * a_word
            if text:
                cues.append(Cue(start, start + len(part) * a_word, text))
    return tuple(cues)


def _hear(word: str, share: float, rng: random.Random) -> str:
    bare = re.sub(r"\W", "", word).casefold()
    if rng.random() >= share or not bare:
        return word
    if rng.random() < LOST:
        return ""
    if rng.random() < SPLIT:
        return f"{word} {rng.choice(_common())}"
    if peg := re.fullmatch(r"([a-z])(\d+)", bare):
        return _hear_peg(peg[1], int(peg[2]), rng)
    if bare.isdecimal():
        return _hear_number(int(bare), rng)
    heard = _table().get(bare, {})
    if heard and rng.random() < 0.8:
        return rng.choices(list(heard), list(heard.values()))[0]
    near = [one for one, _, _ in process.extract(bare, _common(), scorer=fuzz.ratio, limit=8) if one != bare]
    return rng.choice(near)


def _hear_peg(row: str, number: int, rng: random.Random) -> str:
    ways = (f"8{number}", f"they {number}", f"{row} {_hear_number(number, rng)}", f"pay{number}", str(number))
    return rng.choice(ways)


def _hear_number(number: int, rng: random.Random) -> str:
    if rng.random() < OTHER_NUMBER:
        near = [number // 10 * 10, number % 10, number + 80, (number - 10) * 10 if 12 < number < 20 else 0]
        near = [one for one in near if one > 0 and one != number]
        return str(rng.choice(near))
    plain = _NUMBERS_MISHEARD
    return rng.choice((*plain.get(number, ()), "and", "many", "it"))


@lru_cache(maxsize=1)
def _table() -> dict[str, dict[str, int]]:
    return msgspec.json.decode(TABLE.read_bytes(), type=dict[str, dict[str, int]])


@lru_cache(maxsize=1)
def _common() -> list[str]:
    words = {heard for row in _table().values() for heard in row if heard.isalpha()}
    return sorted(words | set(_table()))
