"""A lesson speaks one language: the designer's texts too, or it warns."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from types import ModuleType

import msgspec
import pytest

import pegwright.finding
import pegwright.lesson
from examples.pieces import PIECES
from examples.translations import TEXTS
from pegwright.fit import count_supplies
from pegwright.lesson import HoldResult, Lesson, kit_sheet, plan_lesson, review_lesson, write_script
from pegwright.lesson.handout.sheet import Lesson as Sheet
from pegwright.pattern import Pattern
from pegwright.workshop import LessonOrder, prepare_lesson, work
from tests.lesson.pieces import ebb, lesson, work as replayed

NAMES = [name for name in PIECES if not name.startswith("broken/")]


def plan(pattern: Pattern, language: str) -> Lesson:
    history = replayed(pattern)
    verdict = HoldResult(held=True, bands=history.final.bands)
    return plan_lesson(pattern, history, count_supplies(pattern, history), verdict, language=language)


def everything_said(sheet: Sheet) -> str:
    told = write_script(sheet)
    return msgspec.json.encode([sheet, told]).decode()


@cache
def said_of(name: str, language: str) -> str:
    """All that is said of a demo piece, planned once for the tests of this file."""
    return everything_said(plan(PIECES[name](), language))


@pytest.mark.parametrize("language", ["de", "es"])
@pytest.mark.parametrize("name", NAMES)
def test_no_english_text_of_the_designers_is_left(name: str, language: str) -> None:
    """Handout, script, descriptions; a text of fewer than five letters may be common to languages."""
    piece = PIECES[name]()
    said = said_of(name, language)
    column = ("de", "es").index(language)
    for english in TEXTS:
        if len(english) > 4 and english in piece.translations[language]:
            assert english not in said
    for colour in piece.colours:
        assert TEXTS[colour.name][column] in said
    assert TEXTS[piece.notes][column] in said


def test_one_lesson_has_one_print_mark_in_every_language() -> None:
    piece = PIECES["ebb-line"]()
    assert len({plan(piece, language).mark for language in ("en", "de", "es")}) == 1


def test_the_kit_names_colours_in_the_language() -> None:
    piece = PIECES["ebb-line"]()
    planned = plan(piece, "es")
    history = replayed(piece)
    sheet = kit_sheet(planned, write_script(planned), count_supplies(piece, history), 4)
    assert "azul pizarra" in msgspec.json.encode(sheet).decode()


def test_a_text_that_lacks_is_warned_of_where_the_lesson_is_ordered() -> None:
    """`translation-missing`, once a text; nothing in the pattern's own language."""
    made = work(ebb(note="A short line."))
    found = prepare_lesson(made, LessonOrder(language="de")).findings
    lacking = [f.facts["text"] for f in found if f.code == "translation-missing"]
    assert {"A short line.", "slate", "foam"} <= set(lacking)
    assert len(lacking) == len(set(lacking))
    english = prepare_lesson(made, LessonOrder(language="en")).findings
    assert "translation-missing" not in {f.code for f in english}


def test_the_review_reads_the_texts_in_its_language() -> None:
    """`translation-outdated`, and a fault that only the German text has."""
    base = ebb(note="Pull gently.")
    pattern = msgspec.structs.replace(
        base, translations={"de": {"Pull gently.": "Wie in Schritt 99.", "Push.": "Schieb."}}
    )
    history = replayed(pattern)
    supplies = count_supplies(pattern, history)
    codes = {f.code for f in review_lesson(pattern, history, supplies, lesson(pattern, language="de"))}
    assert {"translation-outdated", "text-step-unknown", "translation-missing"} <= codes
    codes = {f.code for f in review_lesson(pattern, history, supplies, lesson(pattern))}
    assert not {"translation-outdated", "text-step-unknown", "translation-missing"} & codes


_NEVER = {
    "es": {
        "a contraction that is left open": r"\b(?:[Dd]e|[Aa]) el\b",
        "one of many": r"\b1 (?:gomitas|lazos|clavijas|vueltas|telares)\b",
        "the wrong article": r"\b(?:el|los|un|unos) (?:gomita|clavija|vuelta)s?\b"
        r"|\b(?:la|las|una|unas) (?:lazo|gancho|telar|cierre)(?:s|es)?\b",
    },
    "de": {
        "a contraction that is left open": r"(?<!, )\b(?:[Ii]n|[Aa]n|[Zz]u|[Vv]on|[Bb]ei) dem\b(?! \w+,|,)",
        "one of many": r"\b1 (?:Gummis|Schlaufen|Stifte|Runden)\b",
        "the wrong article": r"\b(?:die|eine) (?:Stift|Haken|Gummi|Clip|Webrahmen)\b"
        r"|\b(?:das|ein) (?:Schlaufe|Schnur|Runde)\b",
    },
    "en": {
        "one of many": r"\b1 (?:bands|loops|pegs|rounds)\b",
        "the wrong article": r"\ba (?:[aeio]\w+)|\ban (?:[bcdfgjklmnpqrstvwxz]\w+)",
    },
}
_NEVER_ANYWHERE = {"a gap or a point too many": r"\S  \S| [.,;]|\.\.|,,"}


@pytest.mark.parametrize("language", ["en", "de", "es"])
@pytest.mark.parametrize("name", NAMES)
def test_sentences_that_are_put_together_keep_the_grammar(name: str, language: str) -> None:
    """de + el, a + el; an + dem; one band, two bands; articles: as any grammar of the language has them."""
    said = said_of(name, language)
    for fault, form in (_NEVER[language] | _NEVER_ANYWHERE).items():
        found = re.search(form, said)
        assert found is None, (fault, said[max(0, found.start() - 40) : found.end() + 40])


@pytest.mark.parametrize("language", ["de", "es"])
@pytest.mark.parametrize("room", [pegwright.lesson, pegwright.finding], ids=["lesson", "finding"])
def test_no_message_leaves_a_contraction_open(room: ModuleType, language: str) -> None:
    """Every message of the file, said in the demos or not; a pronoun with its clause (bei dem, der) stays."""
    text = "\n".join(
        file.read_text(encoding="utf-8") for file in Path(room.__file__ or "").parent.rglob(f"{language}.ftl")
    )
    assert len(text) > 10_000
    found = re.search(_NEVER[language]["a contraction that is left open"], text)
    assert found is None, text[max(0, found.start() - 60) : found.end() + 60]
