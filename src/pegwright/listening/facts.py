"""The facts of a script that can be said wrong: numbers, pegs, colours, directions, which loop."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import Literal, NamedTuple

from pegwright.lesson import Script
from pegwright.listening.vocabulary import Vocabulary
from pegwright.listening.words import SaidWord
from pegwright.reading import PhraseReader, spread_contractions

FactKind = Literal["count", "repeats", "supplies", "peg", "row", "colour", "way", "loop", "hand"]
_REPEATS = ("step-again", "step-again-same", "step-again-counted")


class SpokenFact(NamedTuple):
    """A fact of a line: its kind, what it should be, and the words of the script that say it."""

    kind: FactKind
    values: tuple[str, ...]
    words: tuple[int, ...]
    line: int


def spoken_facts(script: Script, said: Sequence[SaidWord], vocabulary: Vocabulary) -> list[SpokenFact]:
    """Return the facts of a script in the order in which they are said."""
    found: list[SpokenFact] = []
    number_kinds: dict[int, FactKind] = dict.fromkeys(repeat_lines(script), "repeats")
    number_kinds |= dict.fromkeys(supply_lines(script), "supplies")
    steps = set(vocabulary.phrases["step"])
    i = 0
    while i < len(said):
        word = said[i]
        kind, value = vocabulary.kind_of(word.text)
        following = said[i + 1] if i + 1 < len(said) and said[i + 1].line == word.line else None
        length = 1
        if kind == "row" and following is not None and following.figure:
            found.append(SpokenFact("row", (value,), (i,), word.line))
            found.append(SpokenFact("peg", (following.text,), (i + 1,), word.line))
            length = 2
        elif kind == "colour":
            while (
                i + length < len(said)
                and said[i + length].line == word.line
                and vocabulary.kind_of(said[i + length].text)[0] == "colour"
            ):
                length += 1
            words = tuple(range(i, i + length))
            values = tuple(vocabulary.kind_of(said[k].text)[1] for k in words)
            found.append(SpokenFact("colour", values, words, word.line))
        elif kind in ("way", "loop"):
            found.append(SpokenFact("way" if kind == "way" else "loop", (value,), (i,), word.line))
        elif (
            kind == "number"
            and (word.figure or word.text in vocabulary.kinds)
            and not _names_step(said, i, steps)
        ):
            found.append(SpokenFact(number_kinds.get(word.line, "count"), (value,), (i,), word.line))
        i += length
    return found


def repeat_lines(script: Script) -> frozenset[int]:
    """Return the lines that say how often something is done again."""
    return frozenset(first for first, _ in _steps_that_say(script, _REPEATS))


def supply_lines(script: Script) -> frozenset[int]:
    """Return the lines that say how many bands to lay out."""
    steps = _steps_that_say(script, ("step-prepare-bands",))
    return frozenset(i for first, last in steps for i in range(first, last + 1))


def _steps_that_say(script: Script, messages: Sequence[str]) -> Iterator[tuple[int, int]]:
    """Yield the first and last line of each step whose words begin with one of the messages."""
    reader = PhraseReader(script.language)
    for step, lines in groupby(range(len(script.lines)), key=lambda i: script.lines[i].step):
        numbers = list(lines)
        text = " ".join(script.lines[i].text for i in numbers)
        if step and reader.begins(spread_contractions(text, script.language), messages) is not None:
            yield numbers[0], numbers[-1]


def _names_step(said: Sequence[SaidWord], i: int, steps: set[str]) -> bool:
    """Say whether a number is that of a step: speakers count their steps otherwise, or not at all."""
    for k in range(i - 1, max(-1, i - 4), -1):
        if said[k].line != said[i].line:
            return False
        if said[k].text in steps:
            return True
        if not (said[k].text.isdecimal() or len(said[k].text) <= 3):
            return False
    return False
