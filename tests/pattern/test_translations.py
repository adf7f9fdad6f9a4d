"""A pattern's texts in other languages: put in place, missed where they lack, read from older documents."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import given

from examples.pieces import PIECES
from pegwright.pattern import (
    Pattern,
    PatternBuilder,
    Rows,
    localise,
    outdated_translations,
    read_pattern,
    texts_of,
    untranslated_texts,
)
from pegwright.pattern.migrations import MIGRATIONS
from testing import strategies


def skiff() -> Pattern:
    """Three bands with a text in every place that may hold one."""
    m = PatternBuilder(
        "Skiff",
        Rows(rows=1, pegs=4),
        designer="the boathouse",
        notes="A short line.",
        translations={
            "de": {
                "slate": "schiefer",
                "A short line.": "Eine kurze Leine.",
                "Pull gently.": "Zieh sanft.",
                "Mind your eyes.": "Gib auf die Augen acht.",
            }
        },
    )
    m.colour("A", "slate", "#34506b").colour("B", "foam", "#f2efe6")
    with m.motif("pair", note="Two at once."):
        m.place("A", "A1", "A2", warning="Mind your eyes.")
    m.use("pair")
    with m.repeat(2, pegs=1):
        m.place("B", "A2", "A3", note="Pull gently.", picture="From above.")
    return m.pattern()


def test_texts_are_put_in_where_they_are_translated_and_kept_where_not() -> None:
    german = localise(skiff(), "de")
    assert [one.text for one in texts_of(german)] == [
        "Skiff",
        "the boathouse",
        "Eine kurze Leine.",
        "schiefer",
        "foam",
        "Two at once.",
        "Gib auf die Augen acht.",
        "Zieh sanft.",
        "From above.",
    ]
    assert localise(skiff(), "en") == skiff()
    assert localise(skiff(), "pt-BR") == skiff()


def test_what_lacks_is_named_once_with_its_place_and_names_may_stay() -> None:
    assert [(one.path, one.text) for one in untranslated_texts(skiff(), "de")] == [
        ("/colours/1/name", "foam"),
        ("/motifs/0/note", "Two at once."),
        ("/steps/1/steps/0/picture", "From above."),
    ]
    assert list(untranslated_texts(skiff(), "en")) == []


def test_a_translation_of_a_text_that_was_changed_is_noticed() -> None:
    changed = msgspec.structs.replace(skiff(), notes="A long line.")
    assert [one.text for one in outdated_translations(changed, "de")] == ["A short line."]
    assert list(outdated_translations(skiff(), "de")) == []


@given(strategies.patterns)
def test_localising_changes_texts_only(one: Pattern) -> None:
    """The same places hold texts before and after; all else is alike."""
    there = localise(one, "de")
    assert [text.path for text in texts_of(there)] == [text.path for text in texts_of(one)]
    for name in ("loom", "bands", "stated", "translations", "language"):
        assert getattr(there, name) == getattr(one, name)


@pytest.mark.parametrize("language", ["en", "de", "es"])
@pytest.mark.parametrize("name", PIECES)
def test_the_workshops_pieces_are_complete_in_three_languages(name: str, language: str) -> None:
    piece = PIECES[name]()
    assert list(untranslated_texts(piece, language)) == []
    assert list(outdated_translations(piece, language)) == []


def test_a_document_of_version_2_is_in_english() -> None:
    raw = {"pegwright": 2, "title": "Skiff", "loom": {"kind": "rows", "rows": 1, "pegs": 2}}
    assert MIGRATIONS[2](raw)["language"] == "en"
    read = read_pattern(msgspec.json.encode(raw)).pattern
    assert read is not None
    assert (read.pegwright, read.language, read.translations) == (3, "en", {})


@pytest.mark.parametrize("tag", ["", "EN", "english", "de_DE", "e", "de-", "de\n"])
def test_a_language_is_a_tag(tag: str) -> None:
    raw = {"pegwright": 3, "title": "Skiff", "loom": {"kind": "rows", "rows": 1, "pegs": 2}, "language": tag}
    assert read_pattern(msgspec.json.encode(raw)).findings
