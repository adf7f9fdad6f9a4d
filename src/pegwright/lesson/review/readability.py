"""How hard a text is to read: Flesch's two formulas for English, and their kin for Spanish and German.

English: reading ease 206.835 − 1.015 w/s − 84.6 y/w and grade 0.39 w/s + 11.8 y/w − 15.59 (Flesch 1948;
Kincaid et al. 1975). Spanish: 206.84 − 60 y/w − 1.02 w/s (Fernández Huerta 1959); German: 180 − w/s −
58.5 y/w (Amstad 1978); these two from memory. w words, s sentences, y syllables, the last counted by rule.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from pegwright.lesson.film.script import Script, split_sentences

_VOWELS = {"en": "aeiouy", "es": "aeiouáéíóúüy", "de": "aeiouäöüy"}
_SILENT = re.compile(r"(?:[^laeiouy]es|[^aeioutdy]ed|[^laeiouy]e)$")
_APART = {
    "es": re.compile(r"[aeoáéó](?=[aeoáéó])|[íú](?=[aeo])|[aeo](?=[íú])"),
    "de": re.compile(r"(?:ie|ei|ai|au|eu|äu|aa|ee|oo)|[aeiouäöüy]"),
}


class Readability(NamedTuple):
    """Words a sentence, syllables a word, reading ease (higher is easier) and school grade (English only)."""

    words_a_sentence: float
    syllables_a_word: float
    ease: float
    grade: float | None


def measure_readability(text: str, language: str = "en") -> Readability:
    """Measure a text.

    Raises:
        ValueError: there is no word in it, or no formula for the language.
    """
    if language not in _VOWELS:
        raise ValueError(f"no reading formula for {language!r}; there are en, es and de")
    phrasebook = _split_words(text)
    if not phrasebook:
        raise ValueError("there is no word to read")
    per_sentence = len(phrasebook) / max(1, len([s for s in split_sentences(text) if _split_words(s)]))
    per_word = sum(count_syllables(word, language) for word in phrasebook) / len(phrasebook)
    match language:
        case "es":
            ease = 206.84 - 60 * per_word - 1.02 * per_sentence
        case "de":
            ease = 180 - per_sentence - 58.5 * per_word
        case _:
            ease = 206.835 - 1.015 * per_sentence - 84.6 * per_word
    grade = 0.39 * per_sentence + 11.8 * per_word - 15.59 if language == "en" else None
    return Readability(per_sentence, per_word, ease, grade)


def script_readability(script: Script) -> Readability:
    """Measure what is said in a script."""
    return measure_readability(" ".join(line.text for line in script.lines), script.language)


def count_syllables(word: str, language: str = "en") -> int:
    """Count the syllables of a word by rule; at least one. Names of pegs are spelled out: A1 has two."""
    word = word.casefold()
    spelled = re.fullmatch(r"([a-z]{1,2})([0-9]+)", word)
    if spelled:
        return len(spelled[1]) + len(spelled[2])
    if language == "de":
        return max(1, len(_APART["de"].findall(word)))
    groups = len(re.findall(f"[{_VOWELS[language]}]+", word))
    if language == "es":
        return max(1, groups + len(_APART["es"].findall(word)))
    if _SILENT.search(word) and groups > 1:
        groups -= 1
    return max(1, groups)


def _split_words(text: str) -> list[str]:
    return re.findall(r"[^\W_]+(?:[’'-][^\W_]+)*", text)
