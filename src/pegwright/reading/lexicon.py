"""Words by meaning: the longest phrase in the word list wins, and misspellings are recognised."""

from __future__ import annotations

import re
import tomllib
from functools import lru_cache
from pathlib import Path
from typing import Any, NamedTuple

from rapidfuzz import fuzz, process
from text_to_num import alpha2digit

_FOLDER = Path(__file__).parent / "languages"
_WORD = re.compile(r"[A-Z]{1,2}[1-9]\d{0,4}\b|\d+|o['’]clock|[^\W\d_]+(?:[-’'][^\W\d_]+)*|[(),:;]")
_PEG = re.compile(r"[A-Za-z]{1,2}[1-9]\d{0,4}")
_STUCK_TO_NUMBERS = {"de": "mal"}
"""The word for “times” of a language that writes it on to the number."""
GREY = "#808080"
"""The tint of a colour whose words do not say one."""
LONGEST_PHRASE = 5
LONGEST_SENTENCE = 600
"""Characters of a sentence that are looked at; nobody says one move in more."""
ALIKE = 86.0
"""How like a word of the list (0 to 100) a word of six letters or more is that is taken for it."""


class Token(NamedTuple):
    """A word or phrase: its meaning (`peg-name`, `number`, `word` or one of the word list) and text."""

    kind: str
    text: str

    @property
    def number(self) -> int:
        """Return the number it stands for."""
        return min(int(self.text[:6]), 100_000)


class Lexicon:
    """The word list of one language."""

    def __init__(self, language: str) -> None:
        self.language = language
        self.phrases = _load_phrases(language)
        self.colours = _load_colours(language)
        self.tints: dict[str, str] = _load_lists(language)["tints"]
        self._single = [phrase for phrase in self.phrases if " " not in phrase and len(phrase) >= 6]

    def tint(self, name: str) -> str:
        """Return the tint of a colour by its words, “sea green” as green; grey where none is known."""
        known = [word for word in name.lower().split() if word in self.tints]
        return self.tints[known[-1]] if known else GREY

    def tokens(self, sentence: str) -> list[Token]:
        """Return the words of a sentence by meaning, in order."""
        words = _WORD.findall(figures(sentence[:LONGEST_SENTENCE], self.language))
        found: list[Token] = []
        at = 0
        while at < len(words):
            token, length = self._longest(words, at)
            found.append(token)
            at += length
        return found

    def _longest(self, words: list[str], at: int) -> tuple[Token, int]:
        word = words[at]
        if word.isdecimal():
            return Token("number", word), 1
        if _PEG.fullmatch(word) and any(sign.isdecimal() for sign in word):
            return Token("peg-name", word.upper()), 1
        for length in range(min(LONGEST_PHRASE, len(words) - at), 0, -1):
            phrase = " ".join(words[at : at + length]).lower()
            if phrase in self.phrases and not (length == 1 and word.isupper() and len(word) == 1 and at):
                return Token(self.phrases[phrase], phrase), length
        if len(word) >= 6:
            best = process.extractOne(word.lower(), self._single, scorer=fuzz.ratio, score_cutoff=ALIKE)
            if best is not None:
                return Token(self.phrases[best[0]], word.lower()), 1
        return Token("word" if word[0].isalpha() else "mark", word), 1


def figures(sentence: str, language: str) -> str:
    """Return a sentence with its number words as figures; “dreimal” is 3 and “mal”."""
    if stuck := _STUCK_TO_NUMBERS.get(language):
        sentence = re.sub(rf"\b(\w+)({stuck})\b", lambda found: _part_number(found, language), sentence)
    return str(alpha2digit(sentence, language, threshold=0))


def _part_number(found: re.Match[str], language: str) -> str:
    number = str(alpha2digit(found[1].lower(), language, threshold=0))
    return f"{number} {found[2]}" if number.isdecimal() else found[0]


@lru_cache(maxsize=8)
def _load_phrases(language: str) -> dict[str, str]:
    lists = {
        kind: phrases for kind, phrases in _load_lists(language).items() if kind not in ("colours", "tints")
    }
    return {figures(phrase, language): kind for kind, phrases in lists.items() for phrase in phrases}


@lru_cache(maxsize=8)
def _load_colours(language: str) -> dict[str, str]:
    """Return the colours that are known by name: every form of each with the plain one."""
    plain = _load_lists(language)["colours"]
    return {form: name for name, forms in plain.items() for form in (name, *forms)}


@lru_cache(maxsize=8)
def _load_lists(language: str) -> dict[str, Any]:
    return tomllib.loads((_FOLDER / f"{language}.toml").read_text(encoding="utf-8"))


def free_languages() -> tuple[str, ...]:
    """Return the languages that have word lists."""
    return tuple(sorted(path.stem for path in _FOLDER.glob("*.toml")))
