"""The language files are sound, and the user's own words are harmless."""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction
from functools import lru_cache
from pathlib import Path

import pytest
from babel import Locale
from fluent.syntax import FluentParser, ast, visitor
from hypothesis import given, settings, strategies as st

from pegwright.lesson import Phrasebook, languages, write_script
from pegwright.lesson.say import phrasebook as room
from pegwright.lesson.say.phrasebook import plain_text, single_line
from tests.lesson.pieces import buoys, ebb, everything, lesson

FOLDER = Path(room.__file__).parent / "languages"


class _Facts(visitor.Visitor):
    def __init__(self) -> None:
        self.names: set[str] = set()

    def visit_VariableReference(self, node: ast.VariableReference) -> None:
        self.names.add(node.id.name)


@lru_cache
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


class _Shown(visitor.Visitor):
    """Facts that are shown, not only chosen by; and the keys of every choice."""

    def __init__(self) -> None:
        self.names: set[str] = set()
        self.choices: list[tuple[str, list[str]]] = []

    def visit_SelectExpression(self, node: ast.SelectExpression) -> None:
        assert isinstance(node.selector, ast.VariableReference)
        keys = [v.key.value if isinstance(v.key, ast.NumberLiteral) else v.key.name for v in node.variants]
        self.choices.append((node.selector.id.name, keys))
        for variant in node.variants:
            self.visit(variant.value)

    def visit_VariableReference(self, node: ast.VariableReference) -> None:
        self.names.add(node.id.name)


@lru_cache
def _shown(language: str) -> dict[str, _Shown]:
    resource = FluentParser().parse((FOLDER / f"{language}.ftl").read_text(encoding="utf-8"))
    found = {}
    for entry in resource.body:
        if isinstance(entry, ast.Message):
            found[entry.id.name] = _Shown()
            found[entry.id.name].visit(entry)
    return found


def test_there_are_three_languages() -> None:
    """English, Spanish and German."""
    assert set(languages()) >= {"de", "en", "es"}


@pytest.mark.parametrize("language", languages())
def test_every_language_says_everything_with_the_same_facts(language: str) -> None:
    """Each file has the messages of the English one, no more, no less; every fact shown there is shown here.

    A fact that English only chooses by (it or them) may be one that the language does not need.
    """
    assert _messages(language).keys() == _messages("en").keys()
    for name, english in _shown("en").items():
        here = _shown(language)[name]
        assert here.names == english.names, name
        assert _messages(language)[name] <= _messages("en")[name], name


@pytest.mark.parametrize("language", languages())
def test_choices_by_count_are_those_of_the_language(language: str) -> None:
    """Keys are numbers or categories that CLDR's plural rules (read by babel) give for the language.

    Where English tells one from many, each language does that its rules tell apart; `many` of Spanish
    begins at a million and falls under the rest.
    """
    rules = Locale.parse(language).plural_form
    given = {rules(n) for n in range(200)}
    for name, told in _shown(language).items():
        for _, keys in told.choices:
            # `all` and `any` stand for a number that changes from round to round.
            words = {key for key in keys if not key.isdigit()} - {"all", "any"}
            assert words <= given, name
            assert "other" in words, name
            assert words >= given or any(key.isdigit() for key in keys), name


@pytest.mark.parametrize("language", languages())
def test_a_count_is_always_followed_by_the_right_form(language: str) -> None:
    """One thing and three are worded differently where English does so, words alike in both apart."""
    alike = {"de": {"purpose-spares", "class-bags"}, "es": {"purpose-spares"}}
    for name, english in _shown("en").items():
        if name in alike.get(language, ()):
            continue
        facts = _messages("en")[name]
        said = {
            (tongue, n): Phrasebook(tongue).say(name, **dict.fromkeys(facts, n)).replace(str(n), "#")
            for tongue in ("en", language)
            for n in (1, 3)
        }
        if english.choices and said["en", 1] != said["en", 3] and _shown(language)[name].choices:
            assert said[language, 1] != said[language, 3], name


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("n", [0, 1, 2, 5, 21])
def test_every_message_can_be_said_with_every_count(language: str, n: int) -> None:
    """No message fails or shows a raw fact, whatever the count."""
    for name, facts in _messages(language).items():
        text = Phrasebook(language).say(name, **dict.fromkeys(facts, n))  # facts not needed do no harm
        assert text
        assert "{" not in text


def test_plurals_follow_the_count() -> None:
    """One band, two bands; once, twice, three times."""
    phrasebook = Phrasebook("en")
    assert [phrasebook.say("thing-clips", n=n) for n in (1, 2)] == ["1 clip", "2 clips"]
    assert [phrasebook.say("times", n=n) for n in (1, 2, 3)] == ["once", "twice", "3 times"]
    assert phrasebook.say("check-bands", n=1) == "1 band has been used so far."


def test_a_missing_fact_is_not_passed_over() -> None:
    """A slip of the programmer's shows at once."""
    with pytest.raises(KeyError):
        Phrasebook("en").say("thing-clips")
    with pytest.raises(KeyError):
        Phrasebook("en").say("no-such-message")


def test_lists_are_joined_as_one_speaks() -> None:
    """Nothing, one, two, three."""
    both = Phrasebook("en").both
    assert [both([]), both(["A1"]), both(["A1", "A2"]), both(["A1", "A2", "B1"])] == [
        "",
        "A1",
        "A1 and A2",
        "A1, A2 and B1",
    ]


def test_markup_and_emoji_stay_and_what_acts_is_shown_by_its_number() -> None:
    """Markup is text like any other; a direction override is made visible."""
    assert single_line('#eval("1+1") <script> $x$ \u202e 🙂') == '#eval("1+1") <script> $x$ ⟨U+202E⟩ 🙂'
    assert single_line("חוף\nים") == "חוף ים"
    assert plain_text("a\x00b\u2028c") == "a⟨U+0000⟩b⟨U+2028⟩c"


@given(st.text(max_size=200))
def test_no_character_that_acts_is_left(text: str) -> None:
    """Checked against the bidirectional classes (UAX #9): no embedding, override or isolate is left."""
    shown = plain_text(text)
    acting = {"LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI"}
    assert not [c for c in shown if unicodedata.bidirectional(c) in acting]
    assert not [c for c in shown if unicodedata.category(c) in ("Cc", "Cs") and c != "\n"]


def test_numbers_and_lengths_are_written_as_the_language_writes_them() -> None:
    """Points and commas by CLDR; millimetres to a tenth; inches to the nearest sixteenth (25.4 mm, exact)."""
    written = [Phrasebook(language).decimal(12345.67) for language in ("en", "de", "es")]
    assert written == ["12,345.7", "12.345,7", "12.345,7"]
    assert Phrasebook("de").length(12.5) == "12,5 mm"
    assert Phrasebook("en").length(16) == "16 mm"
    inches = Phrasebook("en", units="inches").length
    told = [inches(mm) for mm in (16, 25.4, 165, 0, 12.7, 3.175, 190.5)]
    assert told == ["5/8 in", "1 in", "6 1/2 in", "0 in", "1/2 in", "1/8 in", "7 1/2 in"]


@given(st.floats(0, 1000))
def test_inches_are_right_to_half_a_sixteenth(mm: float) -> None:
    """Read back as a sum of fractions."""
    said = Phrasebook("en", units="inches").length(mm).removesuffix(" in")
    total = sum(Fraction(part) for part in said.split())
    assert abs(float(total) * 25.4 - mm) <= 25.4 / 32 + 1e-9


def test_the_teachers_own_words_stand_everywhere_and_in_nothing_of_the_designers() -> None:
    """Whole words are exchanged, the longest first, capitals kept; facts and user text stay."""
    own = Phrasebook("en", {"peg": "pin", "pegs": "pins", "open side": "groove", "band": "loopy { $n }"})
    assert own.say("peg-one", peg="peg A1") == "pin peg A1"
    assert own.say("detail-channel-any") == "Every pin has one groove. Look for it: the hook goes in there."
    assert own.say("label-closeup") == "Pin from the side"
    assert own.say("column-band") == "Loopy { $n }"
    assert own.say("hold-snap-none") == "If any one loopy { $n } snaps, no other loopy { $n } falls."
    assert Phrasebook("en").say("peg-one", peg="A1") == "peg A1"


@settings(max_examples=30, deadline=None)  # every example reads a language file anew
@given(st.dictionaries(st.text(max_size=12), st.text(max_size=12), max_size=4))
def test_any_phrases_at_all_do_no_harm(phrases: dict[str, str]) -> None:
    """Whatever a teacher writes: nothing is carried out, nothing breaks."""
    phrasebook = Phrasebook("en", phrases)
    assert "A1" in phrasebook.say("step-wind", band="slate", times="twice", peg="A1")


@pytest.mark.parametrize("language", languages())
def test_a_lesson_never_speaks_of_the_sheet_in_the_film(language: str) -> None:
    """Script and captions are heard: nobody who hears them has a sheet or a list before them."""
    names = {"en": r"this sheet|as shown|the list|small picture", "de": r"dieses Blatt|die Liste|kleine Bild",
             "es": r"esta hoja|la lista\b|dibujo pequeño"}  # fmt: skip
    script = write_script(lesson(ebb(), language=language))
    spoken = " ".join(line.text for line in script.lines if line.step or line.start_s > 0)
    assert [found for found in re.findall(names[language], spoken) if found] == []


def test_spanish_contracts_its_articles() -> None:
    """`de el` is `del` and `a el` is `al`, whatever fact begins with the article (RAE, Ortografía 2010)."""
    phrasebook = Phrasebook("es")
    end = phrasebook.say("end-plain")
    assert phrasebook.say("slip-end-slips-off", where=end).count("del extremo libre") == 1
    for pattern in (ebb(), buoys()):
        told = everything(lesson(pattern, language="es"))
        assert re.findall(r"\b(?:de|a) el\b", told) == []


@pytest.mark.parametrize("language", languages())
def test_a_list_of_thousands_is_said_whole(language: str) -> None:
    """A clip through the loops of a whole wide loom ended the review: the library takes 2,500 characters."""
    phrasebook = Phrasebook(language)
    pegs = [f"A{number}" for number in range(1, 3001)]
    said = phrasebook.both(pegs)
    assert re.findall(r"A[0-9]+", said) == pegs
    assert said in phrasebook.say("span-dash", first=said, last=said.upper())
    assert phrasebook.both(pegs[:3]) == phrasebook.both(["A1, A2", "A3"])
