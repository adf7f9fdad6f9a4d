"""The words of a recording that has no pattern: signs of moves, pegs, numbers, colours, each as far as heard.

A garbled word still counts as a sign of what it is known to be heard for, or sounds like, but for less. A
peg, a number or a colour is only what was heard; what is missing stays None.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise, takewhile
from string import ascii_lowercase
from typing import NamedTuple

from rapidfuzz import fuzz

from pegwright.listening.captions import Cue
from pegwright.listening.vocabulary import Vocabulary, load_lists, sound_key
from pegwright.listening.words import HeardWord, caption_words
from pegwright.reading import Lexicon

GARBLED = 0.6
"""What a garbled word counts as a sign, where one heard right counts 1 (no source)."""
ALIKE = 82.0
"""How alike (0 to 100) two words sound and look of which one is taken for the other (no source)."""
LEAST_LETTERS = 4
BREAK_S = 0.12
"""A silence between captions that parts what was said before it from what comes after (no source)."""
MOST_PEGS = 80
"""Above it a number is no peg's: 826 is A26 (common practice: looms have fewer pegs in a row)."""


class HeardPeg(NamedTuple):
    """A peg as far as it was heard; `clear` says that its name is whole and no word of it garbled."""

    row: str | None
    number: int | None
    clear: bool = False

    @property
    def name(self) -> str | None:
        """Return the name, None if a part of it is missing."""
        return f"{self.row.upper()}{self.number}" if self.row and self.number else None


class DraftWord(NamedTuple):
    """A word, or the words of a peg's name: its signs with their weights, and what it says."""

    text: str
    start_s: float
    begins: bool
    signs: tuple[tuple[str, float], ...] = ()
    peg: HeardPeg | None = None
    number: int | None = None
    perhaps: int | None = None
    """The number that it is known to be misheard for."""
    colour: str | None = None
    way: str | None = None
    loop: str | None = None


class Signs:
    """The words of one language by what they are a sign of."""

    def __init__(self, language: str) -> None:
        lists = load_lists(language)
        self.vocabulary = Vocabulary(language)
        self.exact: dict[str, list[str]] = {}
        for sign, words in lists["signs"].items():
            for word in words:
                self.exact.setdefault(word, []).append(sign)
        self.long = [word for word in self.exact if len(word) >= LEAST_LETTERS]
        self.misheard: dict[str, list[str]] = {}
        for said, heard in sorted(self.vocabulary.misheard):
            self.misheard.setdefault(heard, []).append(said)
        self.common = set(Lexicon(language).phrases)
        self.known = set(self.exact) | set(self.vocabulary.kinds)
        self.pegs = set(lists["signs"]["peg"])
        self.of = lru_cache(maxsize=20_000)(self._of)

    def _of(self, word: str) -> tuple[tuple[str, float], ...]:
        """Return the signs of a word with their weights."""
        found = dict.fromkeys(self.exact.get(word, ()), 1.0)
        for said in self.misheard.get(word, ()):
            for sign in self.exact.get(said, ()):
                found.setdefault(sign, 0.3 if word in self.known or word in self.common else GARBLED)
        if not found and len(word) >= LEAST_LETTERS and word.isalpha():
            key = sound_key(word)
            for other in self.long:
                alike = (fuzz.ratio(word, other) + fuzz.ratio(key, sound_key(other))) / 2
                if alike >= ALIKE:
                    found |= {sign: GARBLED for sign in self.exact[other] if sign not in found}
        return tuple(found.items())

    def is_peg(self, word: str) -> bool:
        """Say whether a word may be “peg”, rightly heard or not."""
        return word in self.pegs or bool(self.pegs & set(self.misheard.get(word, ())))

    def compound(self, word: str) -> str | None:
        """Return the colour that a longer word ends with, as “blau” of “schieferblau”."""
        colours = (one for one, (kind, _) in self.vocabulary.kinds.items() if kind == "colour")
        return next((one for one in colours if len(one) >= LEAST_LETTERS and word.endswith(one)), None)

    def is_row(self, word: str) -> bool:
        """Say whether a word is known to be heard for the letter of a row."""
        return any(len(said) == 1 and said.isalpha() for said in self.misheard.get(word, ()))

    def number(self, word: str) -> tuple[int | None, int | None]:
        """Return the number that a word is, and the one that it is known to be misheard for."""
        if word.isdecimal():
            return int(word), None
        kind, value = self.vocabulary.kind_of(word)
        if kind == "number":
            return int(value), None
        meant = next((int(said) for said in self.misheard.get(word, ()) if said.isdecimal()), None)
        return (None, meant) if word in self.exact or len(word) < LEAST_LETTERS else (meant, None)


@lru_cache(maxsize=4)
def signs_of(language: str) -> Signs:
    """Return the signs of a language.

    Raises:
        ValueError: there are no words for it.
    """
    return Signs(language)


def draft_words(cues: Sequence[Cue], language: str) -> list[DraftWord]:
    """Return the words of captions, the names of pegs joined."""
    signs = signs_of(language)
    heard = [
        word for word in caption_words(cues, language) if not cues[word.cue].text.startswith(("[", "(", "♪"))
    ]
    rows = _rows(heard)
    found: list[DraftWord] = []
    at = 0
    begins = [k == 0 or _begins(heard[k - 1], word, cues) for k, word in enumerate(heard)]
    while at < len(heard):
        word = heard[at]
        end = next((k for k in range(at + 1, min(at + 4, len(heard))) if begins[k]), at + 4)
        peg, length = _peg_at(heard[at:end], heard[at - 1].text if at else "", signs, rows)
        if peg is not None:
            text = " ".join(one.text for one in heard[at : at + length])
            found.append(DraftWord(text, word.start_s, begins[at], signs.of(word.text), peg))
        else:
            found.append(_one_word(word, begins[at], signs))
        at += length
    return [_without_you(words, k) for words in (found,) for k in range(len(found))]


def _without_you(words: Sequence[DraftWord], k: int) -> DraftWord:
    """Return a word; “from” and “to” of “away from you” say nothing of pegs."""
    word = words[k]
    beside = {sign for one in words[k + 1 : k + 2] for sign, _ in one.signs}
    if "you" in beside or (k and words[k - 1].way is not None):
        return word._replace(signs=tuple(one for one in word.signs if one[0] not in ("from", "to")))
    return word


def _one_word(word: HeardWord, begins: bool, signs: Signs) -> DraftWord:
    kind, value = signs.vocabulary.kind_of(word.text)
    return DraftWord(
        word.text,
        word.start_s,
        begins,
        signs.of(word.text),
        None,
        *signs.number(word.text),
        value if kind == "colour" else _misheard(signs, word.text, "colour") or signs.compound(word.text),
        value if kind == "way" else _misheard(signs, word.text, "way"),
        value if kind == "loop" else _misheard(signs, word.text, "loop"),
    )


def _misheard(signs: Signs, word: str, kind: str) -> str | None:
    """Return the value of the one word of a kind that a word is misheard for."""
    if word in signs.known:
        return None
    meant = {signs.vocabulary.kind_of(said) for said in signs.misheard.get(word, ())}
    values = [value for sort, value in meant if sort == kind]
    if not values and kind != "colour" and len(word) > LEAST_LETTERS:
        values = [
            value
            for other, (sort, value) in signs.vocabulary.kinds.items()
            if sort == kind and fuzz.ratio(word, other) >= ALIKE
        ]
    return values[0] if len(set(values)) == 1 else None


def _begins(before: HeardWord, word: HeardWord, cues: Sequence[Cue]) -> bool:
    """Say whether a sentence may begin here: after a full stop, or a silence between captions."""
    if before.cue == word.cue:
        return any(sign in cues[word.cue].text[before.span[1] : word.span[0]] for sign in ".!?")
    gap_s = cues[word.cue].start_s - cues[before.cue].end_s
    return gap_s > BREAK_S or cues[before.cue].text.rstrip().endswith((".", "!", "?"))


def _rows(heard: Sequence[HeardWord]) -> frozenset[str]:
    """Return the letters of the rows that are heard more than now and then, from A without a gap."""
    counts: Counter[str] = Counter()
    for one, other in pairwise(heard):
        if len(one.text) == 1 and "a" <= one.text <= "z" and other.text.isdecimal():
            counts[one.text] += 1
    most = max(counts.values(), default=0)
    often = {letter for letter, count in counts.items() if count >= max(2, 0.04 * most)}
    return frozenset(takewhile(often.__contains__, ascii_lowercase))


_BEFORE = frozenset(("to", "from", "over", "round"))


def _peg_at(
    heard: Sequence[HeardWord], before: str, signs: Signs, rows: frozenset[str]
) -> tuple[HeardPeg | None, int]:
    """Return the peg whose name begins with the first of the words, and how many of them it takes."""
    texts = [word.text for word in heard]
    begin = 1 if signs.is_peg(texts[0]) and len(texts) > 1 else 0
    follows = texts[begin:]
    only = next(iter(rows)) if len(rows) == 1 else None
    leads = bool(begin) or bool(set(signs.exact.get(before, ())) & _BEFORE) or before == "on"
    plain = texts[0] in signs.pegs
    is_name = len(follows) > 1 and len(follows[0]) == 1 and follows[0].isalpha() and follows[1].isdecimal()
    if is_name and (follows[0] in rows or leads or not rows) and follows[2:3] != ["times"]:
        number, row = int(follows[1]), follows[0]
        return HeardPeg(row, number if number <= MOST_PEGS else None, row in rows or not rows), begin + 2
    if follows and follows[0].isdecimal() and leads:
        number = int(follows[0])
        after = {sign for word in follows[1:3] for sign, _ in signs.of(word)}
        if not begin and "ends" in after:
            return None, 1
        if not begin and after & {"times", "more", "loop", "band", "row", "peg"}:
            return None, 1
        if begin and not plain and texts[0] in signs.known and after & {"times", "more", "loop", "band"}:
            return None, 1
        if number > MOST_PEGS and follows[0].startswith("8") and "a" in (rows or "a"):
            return HeardPeg(only, int(follows[0][1:]) or None), begin + 1  # the letter A is heard as eight
        return (HeardPeg(only, number), begin + 1) if number <= MOST_PEGS else (None, 1)
    if begin and len(follows) > 1 and follows[1].isdecimal() and signs.is_row(follows[0]) and plain:
        number = int(follows[1])
        return HeardPeg(only, number if number <= MOST_PEGS else None), begin + 2  # “peg they 2”
    if begin and plain and follows and follows[0] in rows and follows[0] != "a":
        return HeardPeg(follows[0], None), begin + 1
    return None, 1
