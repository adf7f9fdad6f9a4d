"""Whole lessons in every language and for both hands: sound, readable, and of one mind about every number."""

from __future__ import annotations

import re

import pytest

from pegwright.lesson import Lesson, Units, caption_script, languages, write_script
from pegwright.lesson.review.readability import script_readability
from pegwright.pattern import Pattern, mirror
from tests.lesson.pieces import buoys, dinghy, ebb, everything, lesson, smack

PIECES = {"ebb": ebb(), "dinghy": dinghy(), "smack": smack(), "buoys": buoys()}
each = pytest.mark.parametrize("name", PIECES)
tongue = pytest.mark.parametrize("language", languages())


def numbers(text: str) -> list[str]:
    return sorted(re.findall(r"\b[A-Z]?\d+\b", text))


@each
@tongue
def test_a_lesson_has_the_same_shape_in_every_language(name: str, language: str) -> None:
    """Steps, moves, pictures, boxes and checks are those of the English lesson; pegs and bands named too."""
    here, english = lesson(PIECES[name], language=language), lesson(PIECES[name])
    assert [(s.number, s.first, s.last, s.rounds, s.learner_s) for s in here.steps] == [
        (s.number, s.first, s.last, s.rounds, s.learner_s) for s in english.steps
    ]
    for a, b in zip(here.steps, english.steps, strict=True):
        assert [p.marks for p in a.pictures] == [p.marks for p in b.pictures]
        pegs = set(re.findall(r"\b[A-Z]\d+\b", b.instruction))
        assert set(re.findall(r"\b[A-Z]\d+\b", a.instruction)) == pegs
    assert [s.letter for s in here.key] == [s.letter for s in english.key]


@each
@tongue
def test_no_sentence_is_ragged(name: str, language: str) -> None:
    """No doubled blanks or stops, no blank before a comma, no leftover of a message, a capital first."""
    made = lesson(PIECES[name], language=language)
    text = everything(made)
    assert not re.search(r"[^\n ]  +[^ ]|\.\.|,,| [,.;]|\{|\}|\$", text)
    for step in made.steps:
        for told in (step.instruction, *step.detail):
            assert re.match(r"[A-ZÄÖÜ¿¡]", told), told


@each
@tongue
def test_it_can_be_read_by_a_child_of_twelve(name: str, language: str) -> None:
    """Reading ease of 60 or more: plain on each formula's own scale (grades are for English)."""
    assert script_readability(write_script(lesson(PIECES[name], language=language))).ease >= 60


@each
@tongue
def test_captions_keep_their_limits_in_every_language(name: str, language: str) -> None:
    """Two lines of 37, 0.3 s a word, however long the words."""
    for caption in caption_script(write_script(lesson(PIECES[name], language=language))):
        assert len(caption.lines) <= 2
        assert all(len(text) <= 37 for text in caption.lines)
        words = sum(len(text.split()) for text in caption.lines)
        assert caption.end_s - caption.start_s >= max(5 / 6, 0.3 * words)


def _other(pattern: Pattern, **options: str) -> Lesson:
    return lesson(mirror(pattern), hand="left", **options)


@each
@tongue
def test_the_other_hands_lesson_is_the_mirror_image(name: str, language: str) -> None:
    """Word for word the same but for rows, left and right; as many steps, bands and seconds."""
    here, there = lesson(PIECES[name], language=language), _other(PIECES[name], language=language)
    assert there.hand == "left"
    assert there.edition != here.edition
    assert len(there.steps) == len(here.steps)
    assert there.supplies.bands == here.supplies.bands
    for a, b in zip(here.steps, there.steps, strict=True):
        assert a.learner_s == pytest.approx(b.learner_s)
        assert len(numbers(a.instruction)) == len(numbers(b.instruction))
    sides = {"en": ("left", "right"), "de": ("links", "rechts"), "es": ("izquierda", "derecha")}[language]
    for a, b in zip(here.steps[2:], there.steps[2:], strict=True):
        for one, other in (sides, sides[::-1]):
            assert len(re.findall(one, a.instruction)) == len(re.findall(other, b.instruction))


@pytest.mark.parametrize("units", ["metric", "inches"])
@tongue
def test_lengths_are_in_the_units_asked_for(language: str, units: Units) -> None:
    """The loom's pitch of 16 mm is 5/8 of an inch."""
    made = lesson(ebb(), language=language, units=units)
    assert ("16 mm" in made.tools.lines[0]) == (units == "metric")
    assert ("5/8 " in made.tools.lines[0]) == (units == "inches")


@tongue
def test_every_caution_is_there_in_every_language(language: str) -> None:
    """Eight: small parts, tight bands, sleep, eyes, animals, latex, old bands, the rules of the place."""
    lines = lesson(ebb(), language=language).cautions.lines
    assert len(set(lines)) == 8
    assert "3" in lines[0]
    assert "atex" in lines[5] or "látex" in lines[5]


@tongue
def test_the_glossary_explains_what_the_lesson_says(language: str) -> None:
    """Terms used in the steps, each with its meaning; a plain chain has no cap, a capped piece has."""
    chain, sail = lesson(ebb(), language=language), lesson(dinghy(), language=language)
    cap = {"en": "cap", "de": "Kappe", "es": "remate"}[language]
    assert not any(line.startswith(f"{cap}: ") for line in chain.glossary.lines)
    assert any(line.startswith(f"{cap}: ") for line in sail.glossary.lines)
    assert len(chain.glossary.lines) >= 8
    clip = {"en": "clip", "de": "Clip", "es": "cierre"}[language]
    assert any(line.startswith(f"{clip}: ") for line in chain.glossary.lines)


def test_bands_whose_colour_is_not_listed_are_named_by_their_letter() -> None:
    """No empty name is left over."""
    pattern = ebb()
    bare = type(pattern)(**{f: getattr(pattern, f) for f in pattern.__struct_fields__} | {"colours": ()})
    for language in languages():
        made = lesson(bare, language=language)
        assert "(A)" in made.steps[2].instruction
        assert "(, A)" not in everything(made)
