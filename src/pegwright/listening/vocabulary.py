"""The words that matter in a recording, by language, and how alike two words sound."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray
from rapidfuzz import fuzz, process

from pegwright.reading import Lexicon, figures

_FOLDER = Path(__file__).parent / "languages"
SEEN = 0.92
"""How alike two words count whose confusion a recogniser is known for (0 to 1; no source)."""
ONE_KIND = 0.62
"""How alike two numbers, colours or directions count at least: the one may stand where the other should."""
_SOUNDS = (
    ("ph", "f"), ("th", "t"), ("ck", "k"), ("sch", "s"), ("sh", "s"), ("ch", "k"), ("qu", "k"), ("wh", "w"),
    ("kn", "n"), ("wr", "r"),
)  # fmt: skip
_CLASSES = str.maketrans("bpdtgkcqfvwszxjmnlryaeiou", "pptttkkkfffsssjnnlliaaaaa")


class Vocabulary:
    """The meaning of single words in one language: directions, loops, numbers, colours; and phrases."""

    def __init__(self, language: str, colours: Sequence[str] = ()) -> None:
        lists = load_lists(language)
        self.language = language
        self.kinds: dict[str, tuple[str, str]] = {}
        for plain in Lexicon(language).colours.items():
            self.kinds[plain[0]] = ("colour", plain[1])
        for name in colours:
            for word in re.findall(r"[^\W\d_]+", name.casefold()):
                self.kinds.setdefault(word, ("colour", word))
        for kind in ("ways", "loops"):
            for value, words in lists[kind].items():
                self.kinds |= dict.fromkeys(words, (kind.removesuffix("s"), value))
        self.kinds |= {word: ("number", str(value)) for word, value in lists["numbers"].items()}
        self.sounds = {
            (figures(said, language), heard)
            for said, all_heard in lists["sounds"].items()
            for heard in all_heard
        }
        self.misheard = self.sounds | {
            (said, heard) for said, every in lists.get("misheard", {}).items() for heard in every
        }
        """Like `sounds`, with those of which nothing follows where the words beside them tell more."""
        self.instead = frozenset(lists["instead"]["number"])
        """Words that may be said in place of a number, and mean what they say."""
        self.phrases: dict[str, tuple[str, ...]] = {k: tuple(v) for k, v in lists["phrases"].items()}

    def find(self, name: str, text: str) -> str | None:
        """Return the first phrase of a list that a text has, or None."""
        return next((one for one in self.phrases[name] if re.search(rf"\b{re.escape(one)}\b", text)), None)

    def likeness(self, said: Sequence[str], heard: Sequence[str]) -> NDArray[np.float32]:
        """Return how alike words sound, 0 to 1: a row for each word said, a column for each heard."""
        plain = process.cdist(said, heard, scorer=fuzz.ratio, dtype=np.float32) / 100
        keys = process.cdist(
            [sound_key(w) for w in said], [sound_key(w) for w in heard], scorer=fuzz.ratio, dtype=np.float32
        )
        alike = (plain + keys / 100) / 2
        column = {word: j for j, word in enumerate(heard)}
        row = {word: i for i, word in enumerate(said)}
        for one, other in self.sounds:
            if one in row and other in column:
                alike[row[one], column[other]] = SEEN
        kinds_said, kinds_heard = ([self.kind_of(w)[0] for w in words] for words in (said, heard))
        for kind in ("number", "colour", "way", "loop", "row"):
            here = np.array([k == kind for k in kinds_said], dtype=bool)
            there = np.array([k == kind for k in kinds_heard], dtype=bool)
            alike[np.ix_(here, there)] = np.maximum(alike[np.ix_(here, there)], ONE_KIND)
        for word, i in row.items():
            if word in column:
                alike[i, column[word]] = 1.0
        return np.asarray(alike)

    def meant_by(self, word: str) -> tuple[str, str]:
        """Return what a word is, and its value; of a garbled one that of the words that it is known for."""
        kind, value = self.kind_of(word)
        if kind != "plain":
            return kind, value
        meant = {self.kind_of(said) for said, heard in self.misheard if heard == word}
        meant = {one for one in meant if one[0] in ("way", "loop")}
        return meant.pop() if len(meant) == 1 else (kind, value)

    def kind_of(self, word: str) -> tuple[str, str]:
        """Return what a word is (number, colour, way, loop, row or plain), and the value it stands for."""
        if word.isdecimal():
            return "number", word
        if word in self.kinds:
            return self.kinds[word]
        return ("row", word) if len(word) == 1 and word.isalpha() else ("plain", word)


@lru_cache(maxsize=20_000)
def sound_key(word: str) -> str:
    """Return a word with letters that sound alike made one, and its doubled letters single."""
    for letters, one in _SOUNDS:
        word = word.replace(letters, one)
    return re.sub(r"(.)\1+", r"\1", word.translate(_CLASSES))


@lru_cache(maxsize=8)
def load_lists(language: str) -> dict[str, Any]:
    """Return the word lists of a language."""
    return tomllib.loads((_FOLDER / f"{language}.toml").read_text(encoding="utf-8"))
