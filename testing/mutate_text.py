"""Spoil a maker's text: words dropped, doubled, swapped and misspelt, numbers changed, rubbish put in."""

from __future__ import annotations

import random

RUBBISH = (
    "\x00",
    "999999999999",
    "ZZ99999",
    "A0",
    "🐟",
    "\u202e",
    "((((",
    "the " * 50,
    "again",
    "1000000 more times",
    "loom",
    "same",
)


def mutate_text(text: str, rng: random.Random) -> str:
    """Return the text spoilt in one to eight places."""
    words = text.split(" ")
    for _ in range(rng.randint(1, 8)):
        at = rng.randrange(len(words))
        match rng.randrange(6):
            case 0 if len(words) > 1:
                del words[at]
            case 1:
                words.insert(at, words[at])
            case 2:
                other = rng.randrange(len(words))
                words[at], words[other] = words[other], words[at]
            case 3:
                words[at] = rng.choice(RUBBISH)
            case 4 if words[at]:
                cut = rng.randrange(len(words[at]))
                words[at] = words[at][:cut] + words[at][cut + 1 :]
            case _:
                words.insert(at, rng.choice(RUBBISH))
    return " ".join(words)
