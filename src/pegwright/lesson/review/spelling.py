"""Words spelled wrong: no word of the language, of the craft or of the piece, and one letter away from one.

A dictionary of word forms says what is a word (simplemma, MIT; its lists come from Wiktionary and others).
It does not hold every word: German compounds, Spanish diminutives and verbs with pronouns at their ends are
taken apart, and a word that is like no other is let pass as a name. A slip that makes another word is not
found.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache

import simplemma

from pegwright.finding import Finding, Location, finding
from pegwright.lesson.handout.front import term_variants
from pegwright.lesson.handout.sheet import Lesson
from pegwright.pattern import Pattern

_WORD = re.compile(r"[^\W\d_]+(?:[’'][^\W\d_]+)*")
_SHORTEST = 3
_OFFERED = 3
_LETTERS = {
    "en": "abcdefghijklmnopqrstuvwxyz",
    "de": "abcdefghijklmnopqrstuvwxyzäöüß",
    "es": "abcdefghijklmnopqrstuvwxyzáéíñóúü",
}
_JOINTS = ("", "s", "es", "n", "en", "er", "e")
_PRONOUNS = re.compile(r"(?:me|te|se|nos)?(?:l[oae]s?)?")
_DIMINUTIVE = re.compile(r"(.{2,})it([oa])s?")
_ACCENTS = str.maketrans("áéíóú", "aeiou")


def spelling_findings(
    pattern: Pattern, lesson: Lesson, texts: Sequence[tuple[str, str]]
) -> Iterator[Finding]:
    """Find words spelled wrong in texts (place and text), each once a text, with the words that are meant."""
    language = lesson.language
    own = _words_of_the_piece(pattern, lesson)
    for path, text in texts:
        for word in dict.fromkeys(
            found[0] for found in _WORD.finditer(text) if not _is_name(found, language)
        ):
            plain = word.casefold().replace("’", "'")
            if len(plain) < _SHORTEST or plain in own or _is_word(plain, language):
                continue
            meant = [near for near in one_letter_away(plain, language) if near in own]
            meant += [w for w in one_letter_away(plain, language) if w not in own and _is_listed(w, language)]
            if meant:
                place = Location(path=path)
                yield finding("text-misspelt", place, word=word, meant=tuple(meant[:_OFFERED]))


def one_letter_away(word: str, language: str) -> tuple[str, ...]:
    """Return what a word becomes by one slip of the pen, likeliest kind first: two letters exchanged, one
    doubled or left out, one too many, one wrong."""
    parts = [(word[:i], word[i:]) for i in range(len(word) + 1)]
    letters = _LETTERS[language]
    exchanged = [a + b[1] + b[0] + b[2:] for a, b in parts if len(b) > 1]
    missing = [a + c + b for a, b in parts for c in letters]
    surplus = [a + b[1:] for a, b in parts if b]
    wrong = [a + c + b[1:] for a, b in parts if b for c in letters]
    found = dict.fromkeys((*exchanged, *missing, *surplus, *wrong))
    return tuple(near for near in found if near != word and len(near) >= _SHORTEST)


def _words_of_the_piece(pattern: Pattern, lesson: Lesson) -> frozenset[str]:
    """Return the words of the trade, of the lesson's own sentences, and the names that the piece gives."""
    terms = term_variants(lesson.phrasebook)
    named = (
        pattern.title,
        pattern.designer,
        pattern.licence,
        *(colour.name for colour in pattern.colours),
        *(motif.name for motif in pattern.motifs),
        *terms,
        *(other for others in terms.values() for other in others),
        *(step.instruction for step in lesson.steps),
        *lesson.phrases.values(),
    )
    return frozenset(word.casefold() for text in named for word in _WORD.findall(text))


def _is_name(found: re.Match[str], language: str) -> bool:
    """Say whether a word is a name: a capital within a sentence, where nouns have none; or letters alone."""
    word, before = found[0], found.string[: found.start()].rstrip(" \t\"'“”‘’«»„(¡¿")
    inside = before != "" and before[-1] not in ".!?:;…\n"
    return word[:1].isupper() and inside and not word.isupper() and language != "de"


@lru_cache(maxsize=20_000)
def _is_listed(word: str, language: str) -> bool:
    return any(simplemma.is_known(form, lang=language) for form in (word, word.capitalize()))


def _is_word(word: str, language: str) -> bool:
    """Say whether a word is listed, or is made of listed parts as its language makes them."""
    if _is_listed(word, language):
        return True
    match language:
        case "en":
            return _is_listed(word.partition("'")[0], language)
        case "de":
            verb = word.endswith(("el", "er")) and _is_listed(word + "n", language)
            return verb or _is_compound(word)
        case _:
            small = _DIMINUTIVE.fullmatch(word)
            return bool(small and _is_listed(small[1] + small[2], language)) or _has_pronouns(word)


def _is_compound(word: str) -> bool:
    """Say whether a German word is two listed ones of three letters or more, with or without a joint."""
    for i in range(_SHORTEST, len(word) - _SHORTEST + 1):
        head, tail = word[:i], word[i:]
        heads = (head.removesuffix(joint) for joint in _JOINTS if head.endswith(joint))
        if _is_noun(tail) and any(len(each) >= _SHORTEST and _is_listed(each, "de") for each in heads):
            return True
    return False


def _is_noun(word: str) -> bool:
    return simplemma.is_known(word.capitalize(), lang="de")


def _has_pronouns(word: str) -> bool:
    """Say whether a Spanish word is a listed verb with pronouns at its end: ponlo, cuéntalas, sujétala."""
    for i in range(_SHORTEST, len(word)):
        if _PRONOUNS.fullmatch(word[i:]):
            stem = word[:i]
            if any(_is_listed(verb, "es") for verb in (stem, stem.translate(_ACCENTS))):
                return True
    return False
