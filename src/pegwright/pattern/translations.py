"""A pattern's texts in another language: put in, and looked for where they lack."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

import msgspec

from pegwright.pattern.document import Pattern
from pegwright.pattern.moves import PatternStep, Repeat

__all__ = [
    "LocatedText",
    "localise",
    "outdated_translations",
    "texts_of",
    "translations_into",
    "untranslated_texts",
]

_STEP_FIELDS = ("note", "warning", "picture")


class LocatedText(NamedTuple):
    """A text of a pattern and its place as a JSON Pointer. A name may stay as it is in any language."""

    path: str
    text: str
    is_name: bool = False


def localise(pattern: Pattern, language: str) -> Pattern:
    """Return the pattern with its texts in that language, as far as they are translated; the rest is kept."""
    table = translations_into(pattern, language)
    if not table:
        return pattern
    return msgspec.structs.replace(
        pattern,
        title=table.get(pattern.title, pattern.title),
        designer=table.get(pattern.designer, pattern.designer),
        notes=table.get(pattern.notes, pattern.notes),
        colours=tuple(
            msgspec.structs.replace(colour, name=table.get(colour.name, colour.name))
            for colour in pattern.colours
        ),
        motifs=tuple(
            msgspec.structs.replace(
                motif, note=table.get(motif.note, motif.note), steps=_localise_steps(motif.steps, table)
            )
            for motif in pattern.motifs
        ),
        steps=_localise_steps(pattern.steps, table),
    )


def translations_into(pattern: Pattern, language: str) -> dict[str, str]:
    """Map each text to what it reads in another language than the pattern's; blank ones are left out."""
    if language == pattern.language:
        return {}
    table = pattern.translations.get(language, {})
    return {text: read for text, read in table.items() if text.strip() and read.strip()}


def _localise_steps(steps: tuple[PatternStep, ...], table: Mapping[str, str]) -> tuple[PatternStep, ...]:
    made: list[PatternStep] = []
    for step in steps:
        changed = {
            name: table[text] for name in _STEP_FIELDS if (text := getattr(step, name)) and text in table
        }
        if isinstance(step, Repeat):
            inner = _localise_steps(step.steps, table)
            made.append(msgspec.structs.replace(step, steps=inner, **changed))
        else:
            made.append(msgspec.structs.replace(step, **changed) if changed else step)
    return tuple(made)


def texts_of(pattern: Pattern) -> Iterator[LocatedText]:
    """Yield every text that a reader of the lesson may see; empty ones are left out."""
    if pattern.title:
        yield LocatedText("/title", pattern.title, is_name=True)
    if pattern.designer:
        yield LocatedText("/designer", pattern.designer, is_name=True)
    if pattern.notes:
        yield LocatedText("/notes", pattern.notes)
    for i, colour in enumerate(pattern.colours):
        yield LocatedText(f"/colours/{i}/name", colour.name)
    for i, motif in enumerate(pattern.motifs):
        if motif.note:
            yield LocatedText(f"/motifs/{i}/note", motif.note)
        yield from _step_texts(motif.steps, f"/motifs/{i}/steps")
    yield from _step_texts(pattern.steps, "/steps")


def _step_texts(steps: tuple[PatternStep, ...], path: str) -> Iterator[LocatedText]:
    for i, step in enumerate(steps):
        for name in _STEP_FIELDS:
            if text := getattr(step, name):
                yield LocatedText(f"{path}/{i}/{name}", text)
        if isinstance(step, Repeat):
            yield from _step_texts(step.steps, f"{path}/{i}/steps")


def untranslated_texts(pattern: Pattern, language: str) -> Iterator[LocatedText]:
    """Yield each text that lacks in that language, where it first stands; a name need not be translated."""
    if language == pattern.language:
        return
    known = set(translations_into(pattern, language))
    for one in texts_of(pattern):
        if not one.is_name and one.text.strip() and one.text not in known:
            known.add(one.text)
            yield one


def outdated_translations(pattern: Pattern, language: str) -> Iterator[LocatedText]:
    """Yield each translation into that language whose text stands nowhere in the pattern any more."""
    here = {one.text for one in texts_of(pattern)}
    for text in pattern.translations.get(language, {}):
        if text not in here:
            yield LocatedText(f"/translations/{language}", text)
