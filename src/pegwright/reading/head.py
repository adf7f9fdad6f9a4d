"""What a text says before its steps: the title, the loom, the colours and the counts."""

from __future__ import annotations

import itertools
import re
from collections.abc import Mapping
from typing import NamedTuple

from pegwright.pattern import Layout, Round, Rows
from pegwright.reading.lexicon import Token
from pegwright.reading.sentence import NamedBands

MOST_COLOURS = 26
_ARTICLES = frozenset({"a", "an"})
_ONE = frozenset("a an one single einer eine einzigen una un sola".split())  # noqa: SIM905
_LETTER = re.compile(r"\(([A-Z])\)")


class Colours:
    """The colours that a text names, each with a letter of its own; `forms` are those known by name."""

    def __init__(self, forms: Mapping[str, str]) -> None:
        self.forms = forms
        self.names: dict[str, str] = {}
        """Name to letter, in the order of their naming."""

    def letter(self, name: str, given: str = "") -> str:
        """Return the letter of a colour; a new one takes its first letter, or the next that is free.

        Empty where there are as many colours as letters.
        """
        name = self.plain(name)
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

    def plain(self, name: str) -> str:
        """Return the name of a colour in its plain form: “blaues” is “blau”, “roja” is “rojo”."""
        words = name.strip().lower().split()
        return " ".join(self.forms.get(word, word) for word in words)


def bands_of(
    tokens: list[Token], colours: Colours, text: str, stopped: frozenset[str], after: bool = False
) -> tuple[NamedBands, ...]:
    """Return the bands of a sentence that name their colour, with their number: those at a “band” first.

    Without one a colour counts after “with”, after a comma at the end, or where its name is known.
    `after` means that a colour follows its noun, as in Spanish.
    """
    given = _LETTER.search(text)
    found: list[NamedBands] = []
    for at, token in enumerate(tokens):
        first = at - 1
        words: list[str] = []
        if token.kind in ("band", "last-band", "cap"):
            words = _colour_words(tokens, at, stopped, after)
            first = at - 1 if after else at - len(words) - 1
        elif not after and _is_listed(tokens, at, colours):
            words = [*_colour_words(tokens, at, stopped, after=False), token.text]
            first = at - len(words)
        number = tokens[first].number if first >= 0 and tokens[first].kind == "number" else None
        if words:
            letter = colours.letter(" ".join(words), given[1] if given else "")
            found.append(NamedBands(letter, number))
        elif (
            token.kind == "band"
            and first >= 0
            and (number is not None or tokens[first].text.lower() in _ARTICLES)
        ):
            found.append(NamedBands("", number))
    if given and given[1] in colours.names.values():
        return (NamedBands(given[1]),)
    if any(one.letter for one in found):
        return tuple(found)
    loose = _loose_colour(tokens, colours, stopped)
    return (NamedBands(loose, found[0].number if found else None),) if loose else ()


def _is_listed(tokens: list[Token], at: int, colours: Colours) -> bool:
    """Say whether a colour stands for a band beside others: “one green and one sand band”."""
    if tokens[at].kind != "word" or colours.plain(tokens[at].text) not in colours.forms.values():
        return False
    before = tokens[max(at - 2, 0) : at]
    follows = tokens[at + 1].kind if at + 1 < len(tokens) else ""
    counted = any(one.kind == "number" or one.text.lower() in _ARTICLES for one in before)
    return counted and follows in ("and", "from", "mark", "to", "over")


def _loose_colour(tokens: list[Token], colours: Colours, stopped: frozenset[str]) -> str:
    """Return the letter of a colour that stands away from its band; empty where there is none."""
    said = [token.text.lower() if token.kind == "word" else "" for token in tokens]
    plain = [colours.plain(word) for word in said]
    whole = f" {' '.join(plain)} "
    for name, letter in colours.names.items():
        if f" {name} " in whole or name.split(" ")[-1] in plain:
            return letter
    for at, word in enumerate(said):
        if word in colours.forms:
            first = at
            while first and at - first < 2 and said[first - 1] and said[first - 1] not in stopped:
                first -= 1
            return colours.letter(" ".join(said[first : at + 1]))
    for at, token in enumerate(tokens[:-1]):
        last = at + 2 == len(tokens)
        if token.kind == "with" and last and said[at + 1] and said[at + 1] not in stopped:
            return colours.letter(said[at + 1])
    return ""


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
    if rows is None and any(
        b.kind == "row" and a.text.lower() in _ONE for a, b in itertools.pairwise(tokens)
    ):
        rows = 1  # “a single row of eight pegs”
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


def is_about_counts(tokens: list[Token]) -> bool:
    """Return whether a sentence counts what the piece needs."""
    kinds = {token.kind for token in tokens}
    listed = kinds <= {"number", "word", "band", "clip", "knot", "mark", "and"} and "band" in kinds
    return ("need" in kinds or listed) and "number" in kinds and "peg-name" not in kinds
