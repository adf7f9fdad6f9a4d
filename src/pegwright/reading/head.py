"""What a text says before its steps: the title, the loom, the colours and the counts."""

from __future__ import annotations

import itertools
import re
from typing import NamedTuple

from pegwright.pattern import Layout, Round, Rows
from pegwright.reading.lexicon import Lexicon, Token

MOST_COLOURS = 26
_LETTER = re.compile(r"\(([A-Z])\)")


class Colours:
    """The colours that a text names, each with its own letter."""

    def __init__(self) -> None:
        self.names: dict[str, str] = {}
        """Name to letter, in the order of their naming."""

    def letter(self, name: str, given: str = "") -> str:
        """Return the letter of a colour. A new colour takes its initial, or else the next free letter."""
        name = name.strip().lower()
        known = self.names.get(name) or next(
            (letter for known, letter in self.names.items() if known.endswith(" " + name)), ""
        )
        if known:
            return known
        taken = set(self.names.values())
        wanted = [given, *(sign.upper() for sign in name if "a" <= sign <= "z"), *map(chr, range(65, 91))]
        letter = next((one for one in wanted if one and one not in taken), "")
        if letter and len(self.names) < MOST_COLOURS:
            self.names[name[:60]] = letter
        return letter


def colours_of_bands(
    tokens: list[Token], colours: Colours, text: str, stopped: frozenset[str], after: bool = False
) -> tuple[str, ...]:
    """Return the letters of a sentence's colours: at each “band”, after “with”, or a colour already known.

    `after` means that a colour follows its noun, as in Spanish.
    """
    given = _LETTER.search(text)
    found = []
    for at, token in enumerate(tokens):
        if token.kind in ("band", "last-band"):
            words = _colour_words(tokens, at, stopped, after)
            if words:
                found.append(colours.letter(" ".join(words), given[1] if given else ""))
    if given and given[1] in colours.names.values():
        return (given[1],)
    if found:
        return tuple(found)
    said = [token.text.lower() for token in tokens if token.kind == "word"]
    for name, letter in colours.names.items():
        if name in " ".join(said) or name.split(" ")[-1] in said:
            return (letter,)
    for at, token in enumerate(tokens[:-1]):
        if (
            token.kind == "with"
            and tokens[at + 1].kind == "word"
            and tokens[at + 1].text.lower() not in stopped
        ):
            return (colours.letter(tokens[at + 1].text),)
    return ()


def _colour_words(tokens: list[Token], at: int, stopped: frozenset[str], after: bool) -> list[str]:
    """Return the words before the band (or after it) that have no other meaning."""
    step = 1 if after else -1
    words: list[str] = []
    for k in range(at + step, at + 4 * step, step):
        if not 0 <= k < len(tokens) or tokens[k].kind != "word" or tokens[k].text.lower() in stopped:
            break
        words.append(tokens[k].text)
    return words if after else words[::-1]


class LoomSaid(NamedTuple):
    """A loom as a sentence describes it."""

    loom: Layout


def loom_of(tokens: list[Token]) -> LoomSaid | None:
    """Return the loom of a sentence that gives its rows and pegs, or the pegs of a ring; else None."""
    rows = _count_before(tokens, "row")
    pegs = _count_before(tokens, "peg")
    if pegs is None or not any(token.kind in ("loom", "row", "round-loom") for token in tokens):
        return None
    if any(token.kind == "round-loom" for token in tokens) and 3 <= pegs <= 2000:
        return LoomSaid(Round(pegs=pegs, diameter_mm=round(16 * pegs / 3.14159, 1)))
    if rows is None:
        return None
    return LoomSaid(Rows(rows=rows, pegs=pegs)) if 1 <= rows <= 700 and 1 <= pegs <= 10_000 else None


def _count_before(tokens: list[Token], kind: str) -> int | None:
    for one, other in itertools.pairwise(tokens):
        if one.kind == "number" and other.kind == kind:
            return one.number
    return None


def is_about_counts(tokens: list[Token], lexicon: Lexicon) -> bool:
    """Return whether a sentence counts what the piece needs."""
    del lexicon
    kinds = {token.kind for token in tokens}
    return "need" in kinds and "number" in kinds and "peg-name" not in kinds
