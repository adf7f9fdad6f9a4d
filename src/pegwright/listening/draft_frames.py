"""Cut a garbled recording into things said of a move, each known by its signs, and leave the rest.

The likeliest cut into stretches, by dynamic programming (a semi-Markov model, as in Sarawagi and Cohen 2004):
a stretch is worth the signs in it, each once, less what a stretch costs; a cut is dearer inside a sentence.
The weights have no source; they were chosen on the recordings that may be looked at.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from pegwright.listening.draft_words import DraftWord

LONGEST = 26
"""Words that say one thing of a move, at most."""
COST, INSIDE, ACROSS = 2.6, 0.8, 1.6
"""What a stretch costs; a cut inside a sentence; a sentence's beginning inside a stretch."""

WEIGHTS: dict[str, dict[str, float]] = {
    "place": {"stretch": 2, "band": 1.5, "colour": 1, "from": 0.8, "to": 0.4, "way": 0.5, "peg1": 1, "peg2": 2, "peg3": -2, "hook": -2, "loop": -1.5, "lowest": -2, "above": -1, "each": -1.5, "last": -1.5, "holds": -1.5, "times": -1.5, "again": -1.5, "half": -2, "number": -0.5, "used": -1, "nearest": -2, "together": -1, "through": -1, "need": -0.7, "push": -1, "pegs": -1.5, "step": -1.5},
    "wind": {"wind": 2, "times": 1.2, "round": 1.5, "over": 0, "band": 1.2, "colour": 1, "everything": 1.2, "peg1": 1, "peg2": -3, "number": 0.6, "further": -2, "each": -2, "more": -2, "again": -2, "loop": -1, "last": -1.5, "shaft": -2, "finger": -3, "step": -2, "above": -1.5},
    "hang": {"wind": 1.5, "shaft": 2.5, "hook": 0.6, "band": 1, "colour": 0.8, "times": 0.6, "round": 0.5, "number": 0.3, "peg1": -3},
    "again": {"again": 1.8, "more": 1.5, "times": 1.2, "step": 1.5, "number": 0.8, "each": -2, "peg1": -1.5, "further": -2, "way": -1.5, "loop": -1.5, "place": 0.5, "above": -1, "way-more": -1},
    "shift": {"move": 1.4, "further": 1.6, "each": 1.3, "times": 0.6, "peg": 0.8, "row": 0.6, "way": 0.8, "number": 0.3, "round-way": 1.5, "back-way": 1.5, "again": -1.5, "peg1": -2, "loop": -1.5, "more": -1, "holds": -1.5, "band": -1.5},
    "ends": {"last": 1.6, "ends": 1.6, "one": 0.5, "peg1": 1.6, "peg2": -2, "band": -1.5, "colour": -1.5, "loop": -1.5, "way": -1, "through": -1, "up": -0.7, "together": -1},
    "turn": {"turn": 1.8, "whole": 1.4, "loom": 1.2, "round": 0.5, "ends": 0.3, "nearest": 1.2, "peg1": 0.4, "peg2": -3, "band": -1.5, "it": -0.1, "turned-over": -2, "over": -0.5, "times": -1.5, "through": -1, "off": -1.5, "loop": -0.8, "front": -1},
    "facing": {"loom": 1, "nearest": 1.8, "peg1": 0.6, "peg2": -2, "need": 0.6, "turn": -2, "whole": -2, "round": -1, "band": -1.5},
    "down": {"push": 1, "hook": 1.2, "open": 1, "side": 1, "inside": 1.6, "above": 1, "loop": 0.4, "peg1": 1.2, "peg2": -2.5, "number": 0.2, "through": -2, "band": -1, "each": -1.5, "put": 0.3, "pull": -1, "lowest": -1, "colour": -0.7, "way": -0.7, "holds": -1, "off": -0.5},
    "catch": {"catch": 1.2, "lowest": 1.8, "loop": 0.6, "pull": 1, "up": 0.8, "through": 1, "bottom": 0.8, "colour": 0.5, "number": 0.2, "peg1": -2.5, "band": -1.5, "half": -2.5, "above": -0.6, "hook": -0.2, "drop": -1.5, "over": -1, "holds": -0.5, "together": -1.5, "way": -0.5, "ends": -1},
    "grip": {"catch": 1.2, "lowest": 1.8, "loop": 0.6, "hook": 1, "peg1": 1.8, "peg2": -2, "bottom": 0.6, "colour": 0.3, "inside": -2, "push": -1.5, "open": -1, "side": -1, "through": -1.5, "pull": -0.6, "band": -1.2, "half": -2, "keep": -1.5, "finger": -2, "holds": -0.8, "way": -1, "above": -0.8, "lift": -0.5, "number": 0.1, "off": -1},
    "drop": {"lift": 1.3, "over": 1.3, "above": 1, "drop": 1.4, "off": 1, "up": 0.4, "it": 0.3, "loop": 0.2, "number": 0.2, "peg1": -1.5, "band": -1.5, "through": -1.5, "loom": -2, "ends": -1, "inside": -1.5, "again": -1},
    "put": {"put": 1.4, "it": 0.6, "to": 0.3, "over": 0.4, "way": 1, "peg1": 1.8, "peg2": -2.5, "hook": -1.5, "inside": -2, "above": -1, "band": -1.5, "colour": -1.5, "last": -1.5, "ends": -1.5, "loop": -0.8, "each": -1.5, "nearest": -2, "from": -1, "through": -1, "holds": -1.5, "together": -1, "catch": -0.8, "lowest": -1.5, "times": -1.2, "whole": -1},
    "move-over": {"take": 0.7, "loop": 0.7, "off": 0.8, "put": 0.9, "peg1": 0.2, "peg2": 2.6, "peg3": -2, "way": 0.5, "colour": 0.3, "hook": -1, "above": -1, "band": -1, "from": 0.2, "last": -0.6, "stretch": -2, "holds": -1.5, "each": -1.5, "through": -1, "loom": -2, "ends": -1.5, "lift": -1},
    "slide": {"slide": 2.4, "band": 0.5, "hook": 0.5, "loop": 0.5, "colour": 0.4, "peg1": -1},
    "bind": {"through": 1.3, "all": 0.5, "free": 0.5, "loop": 0.8, "hook": 1, "push": 1, "peg1": 1.4, "peg2": -2, "number": 0.2, "above": -2, "inside": -2, "open": -1, "side": -1, "clip": -2, "cord": -2, "band": -1, "colour": -1, "way": -1, "pull": -0.7, "holds": -1},
    "half": {"half": 2, "until": 1, "catch": 0.7, "pull": 0.7, "up": 0.4, "band": 1.2, "colour": 1, "through": 0.6, "loop": -1, "peg1": -2, "lowest": -1},
    "extend": {"chain": 2.4, "band": 0.8, "colour": 0.8, "number": 0.6, "peg1": -2, "clip": -1},
    "gather": {"together": 1.6, "pull": 0.5, "free": 0.8, "ends": 0.8, "loop": 0.6, "first": 0.6, "band": 0.2, "peg1": 1.2, "peg2": -2, "colour": -1, "inside": -2, "finger": -1.5, "keep": -1.5, "off": -1.5, "over": -1, "lift": -1.5, "way": -1.5},
    "clip": {"clip": 2.6, "through": 0.7, "all": 0.5, "hook": 0.4, "number": 0.2, "finger": -1.5, "until": -1.5, "keep": -1},
    "cord": {"cord": 1.8, "through": 0.7, "all": 0.4, "loop": 0.3, "number": 0.2, "peg1": 1, "peg2": 1, "peg3": 0.8, "first": 0, "last": -0.6},
    "need": {"need": 1.2, "band": 0.8, "colour": 1, "number": 0.9, "peg1": -3, "way": -1, "loop": -1, "used": -1, "stretch": -1, "catch": -1, "through": -1, "one": -0.4, "chain": -1, "half": -2},
    "used": {"used": 2, "band": 1, "number": 0.6, "peg1": -2, "colour": -0.6, "need": -0.6},
    "look": {"pegs": 0.8, "holds": 1.6, "each": 0.8, "loop": 1, "number": 0.4, "peg1": 0.8, "peg2": 0.8, "peg3": 0.8, "empty": 2, "way": -1, "band": -0.7, "keep": 0.4, "finger": 0.6, "above": -1, "inside": -1, "through": -1, "from": -0.6, "lowest": -1.5, "last": -0.5, "stretch": -2},
    "keep": {"keep": 1.6, "finger": 1.4, "loop": 0.6, "peg1": 1.4, "peg2": -2, "together": 0.3, "above": -1, "inside": -1, "through": -1, "lowest": -1.5},
    "only": {"only": 2, "through": 1, "loop": 0.6, "lowest": 0.5, "peg1": -2, "pull": -2, "up": -1.5, "above": -0.6},
    "twist": {"between": 1.6, "half": 1, "turn": 1, "band": 0.6, "peg1": 0.6, "peg2": 0.6, "number": 0.2, "from": -1.5, "stretch": -2, "pull": -1.5, "until": -2},
    "recolour": {"colours": 1.8, "change": 1.8, "round": 0.5, "from": 0.2, "to": 0.2, "peg1": -2, "band": -1.5},
    "back": {"correction": 2.8},
    "shown": {"shown": 3.2},
}  # fmt: skip
"""What each sign is worth for each thing said of a move."""
KINDS = tuple(WEIGHTS)


class Frame(NamedTuple):
    """Something said of a move: what kind of thing, its words, and what speaks for it."""

    kind: str
    words: tuple[DraftWord, ...]
    first: int
    gain: float

    @property
    def start_s(self) -> float:
        """When it begins in s."""
        return self.words[0].start_s


def find_frames(words: Sequence[DraftWord], corrections: frozenset[int]) -> list[Frame]:
    """Return what is said of moves, in the order of time; `corrections` are words that take something back."""
    signs = sorted({sign for weights in WEIGHTS.values() for sign in weights})
    column = {sign: k for k, sign in enumerate(signs)}
    table = np.zeros((len(signs), len(KINDS)), np.float64)
    for k, kind in enumerate(KINDS):
        for sign, weight in WEIGHTS[kind].items():
            table[column[sign], k] = weight
    shown = [
        [(column[sign], weight) for sign, weight in _signs(word, t in corrections) if sign in column]
        for t, word in enumerate(words)
    ]
    pegs = [column[f"peg{k}"] for k in (1, 2, 3)]
    count = len(words)
    best = np.zeros(count + 1)
    came: list[tuple[int, int, float]] = [(0, -1, 0.0)] * (count + 1)
    gains = np.full((count + 1, LONGEST + 1), -np.inf)
    which = np.zeros((count + 1, LONGEST + 1), dtype=np.int16)
    for first in range(count):
        total = np.zeros(len(KINDS))
        had: dict[int, float] = {}
        named, crossed = 0, 0.0
        for length in range(1, min(LONGEST, count - first) + 1):
            word = words[first + length - 1]
            if length > 1 and word.begins:
                crossed += ACROSS
            for sign, weight in shown[first + length - 1]:
                more = weight - had.get(sign, 0.0)
                if more > 0:
                    had[sign] = weight
                    total += table[sign] * more
            if word.peg is not None and named < 3:
                total += table[pegs[named]]
                named += 1
            k = int(total.argmax())
            gains[first, length] = total[k] - crossed
            which[first, length] = k
    starts = [COST + (0.0 if word.begins else INSIDE) for word in words]
    for end in range(1, count + 1):
        best[end], came[end] = best[end - 1], (end - 1, -1, 0.0)
        for length in range(1, min(LONGEST, end) + 1):
            first = end - length
            gain = gains[first, length] - starts[first]
            if gain > 0 and best[first] + gain > best[end]:
                best[end], came[end] = best[first] + gain, (first, int(which[first, length]), gain)
    found = []
    end = count
    while end:
        first, kind, gain = came[end]
        if kind >= 0:
            found.append(Frame(KINDS[kind], tuple(words[first:end]), first, gain))
        end = first
    return found[::-1]


def _signs(word: DraftWord, takes_back: bool) -> list[tuple[str, float]]:
    found = list(word.signs)
    if takes_back:
        found.append(("correction", 1.0))
    if word.peg is not None:
        return [one for one in found if one[0] == "correction"]
    if word.number is not None:
        found.append(("number", 1.0))
    for sign, value in (("colour", word.colour), ("way", word.way), ("lowest", word.loop)):
        if value is not None:
            found.append((sign, 1.0))
    if word.loop == "top":
        found.append(("top-loop", 1.0))
    return found
