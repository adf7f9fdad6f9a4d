"""A text taken apart into its sentences, and the language that it is written in."""

from __future__ import annotations

import re
from typing import NamedTuple

from pegwright.reading.lexicon import Lexicon, free_languages

MOST_CHARACTERS = 60_000
MOST_SENTENCES = 1_500
_SENTENCE = re.compile(r"[^.;!?\n]+(?:[.;!?](?=\s|$)|\n|$)")
_CLAUSE = re.compile(
    r", (?=(?:one|1|eins|una) (?!peg|row|more|time|pin|clip|clavija|fila|vez|más))",
    re.IGNORECASE,
)
_LIST_NUMBER = re.compile(r"(?mi)^[ \t]*(?:(?:step|schritt|paso)[ \t]+)?(\d{1,3})[.):][ \t]+")


class Piece(NamedTuple):
    """A sentence or clause of the text, with its line and the number of its step, 0 where it has none."""

    text: str
    line: int
    step: int = 0


def free_language(text: str) -> str:
    """Return the language whose word list covers most of a text."""
    sample = text[:6000]
    known = {}
    for language in free_languages():
        tokens = Lexicon(language).tokens(sample[:600]) + Lexicon(language).tokens(sample[600:1200])
        known[language] = sum(token.kind not in ("word", "mark", "number", "peg-name") for token in tokens)
    return max(known, key=lambda language: (known[language], language == "en"))


def split_sentences(text: str) -> list[Piece]:
    """Return the sentences of a text, split at clauses, each with its line."""
    found: list[Piece] = []
    line = 1
    at = 0
    text = text[:MOST_CHARACTERS]
    labels = [0]
    for each in text.split("\n"):
        number = _LIST_NUMBER.match(each)
        labels.append(int(number[1]) if number else labels[-1])
    labels = labels[1:]
    unnumbered = _LIST_NUMBER.sub(" ", text)
    for match in _SENTENCE.finditer(unnumbered):
        line += unnumbered.count("\n", at, match.start())
        at = match.start()
        for clause in _CLAUSE.split(match[0]):
            bare = clause.strip(" \t\r\n.;!?•*-–,")
            if any(sign.isalnum() for sign in bare):
                found.append(Piece(bare, line, labels[line - 1]))
        if len(found) >= MOST_SENTENCES:
            break
    return found[:MOST_SENTENCES]
