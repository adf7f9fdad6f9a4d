"""The language files are sound, and the user's own words are harmless."""

from __future__ import annotations

import unicodedata
from pathlib import Path

import pytest
from fluent.syntax import FluentParser, ast, visitor
from hypothesis import given
from hypothesis import strategies as st

from pegwright.lesson import languages
from pegwright.lesson import words as room
from pegwright.lesson.words import Words, line, plain

FOLDER = Path(room.__file__).parent / "languages"


class _Facts(visitor.Visitor):
    def __init__(self) -> None:
        self.names: set[str] = set()

    def visit_VariableReference(self, node: ast.VariableReference) -> None:
        self.names.add(node.id.name)


def _messages(language: str) -> dict[str, set[str]]:
    resource = FluentParser().parse((FOLDER / f"{language}.ftl").read_text(encoding="utf-8"))
    assert not [entry for entry in resource.body if isinstance(entry, ast.Junk)]
    found = {}
    for entry in resource.body:
        if isinstance(entry, ast.Message):
            facts = _Facts()
            facts.visit(entry)
            assert entry.id.name not in found, f"{entry.id.name} stands twice"
            found[entry.id.name] = facts.names
    return found


@pytest.mark.parametrize("language", languages())
def test_every_language_says_everything_with_the_same_facts(language: str) -> None:
    """Each file has the messages of the English one, no more, no less, and uses its facts."""
    assert _messages(language) == _messages("en")


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("n", [0, 1, 2, 5, 21])
def test_every_message_can_be_said_with_every_count(language: str, n: int) -> None:
    """No message fails or shows a raw fact, whatever the count."""
    for name, facts in _messages(language).items():
        text = Words(language).say(name, **dict.fromkeys(facts, n))
        assert text
        assert "{" not in text


def test_plurals_follow_the_count() -> None:
    """One band, two bands; once, twice, three times."""
    words = Words("en")
    assert [words.say("thing-clips", n=n) for n in (1, 2)] == ["1 clip", "2 clips"]
    assert [words.say("times", n=n) for n in (1, 2, 3)] == ["once", "twice", "3 times"]
    assert words.say("check-bands", n=1) == "1 band has been used so far."


def test_a_missing_fact_is_not_passed_over() -> None:
    """A slip of the programmer's shows at once."""
    with pytest.raises(KeyError):
        Words("en").say("thing-clips")
    with pytest.raises(KeyError):
        Words("en").say("no-such-message")


def test_lists_are_joined_as_one_speaks() -> None:
    """Nothing, one, two, three."""
    both = Words("en").both
    assert [both([]), both(["A1"]), both(["A1", "A2"]), both(["A1", "A2", "B1"])] == [
        "",
        "A1",
        "A1 and A2",
        "A1, A2 and B1",
    ]


def test_markup_and_emoji_stay_and_what_acts_is_shown_by_its_number() -> None:
    """Markup is text like any other; a direction override is made visible."""
    assert line('#eval("1+1") <script> $x$ \u202e 🙂') == '#eval("1+1") <script> $x$ ⟨U+202E⟩ 🙂'
    assert line("חוף\nים") == "חוף ים"
    assert plain("a\x00b\u2028c") == "a⟨U+0000⟩b⟨U+2028⟩c"


@given(st.text(max_size=200))
def test_no_character_that_acts_is_left(text: str) -> None:
    """Checked against the bidirectional classes (UAX #9): no embedding, override or isolate is left."""
    shown = plain(text)
    acting = {"LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI"}
    assert not [c for c in shown if unicodedata.bidirectional(c) in acting]
    assert not [c for c in shown if unicodedata.category(c) in ("Cc", "Cs") and c != "\n"]
