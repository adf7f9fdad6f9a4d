"""Every code and phrase is worded in every language, documented and used, and reads as it should."""

from __future__ import annotations

import ast
import json
import re
from collections.abc import Iterator
from pathlib import Path

import msgspec
import pytest
from fluent.syntax import FluentParser, ast as ftl, visitor
from hypothesis import given, strategies as st

from pegwright.finding import (
    CATALOGUE,
    LANGUAGES,
    PHRASES,
    Fact,
    Finding,
    Fix,
    Location,
    Phrase,
    finding,
    phrase,
    sum_up,
    word_finding,
    word_location,
    word_phrase,
    wording,
)

ROOT = Path(__file__).parents[2]
DOCS = (ROOT / "docs" / "findings.md").read_text(encoding="utf-8")
FOLDER = Path(wording.__file__).parent / "languages"
RAISERS = {"finding", "report", "_RefusedMoveError", "RefusedMove", "refuse"}
NAMES = {name: entry.facts for name, entry in CATALOGUE.items()} | PHRASES


def entries() -> dict[str, tuple[str, str]]:
    """Split docs/findings.md into {code: (severity, text)}."""
    parts = re.split(r"^### `([a-z-]+)` · (\w+)$", DOCS, flags=re.M)
    return {
        code: (severity, text)
        for code, severity, text in zip(parts[1::3], parts[2::3], parts[3::3], strict=True)
    }


def sources() -> dict[Path, ast.Module]:
    files = (ROOT / "src").rglob("*.py")
    lists = {ROOT / "src/pegwright/finding" / name for name in ("catalogue.py", "phrases.py")}
    return {p: ast.parse(p.read_text(encoding="utf-8")) for p in files if p not in lists}


class Uses(visitor.Visitor):
    """Gathers what a message draws on, and the names between which it chooses."""

    def __init__(self, message: ftl.Message) -> None:
        self.facts: set[str] = set()
        self.choices: set[tuple[str, str]] = set()
        self.visit(message)

    def visit_VariableReference(self, node: ftl.VariableReference) -> None:
        self.facts.add(node.id.name)

    def visit_SelectExpression(self, node: ftl.SelectExpression) -> None:
        for variant in node.variants:
            named = isinstance(variant.key, ftl.Identifier) and variant.key.name
            if named and isinstance(node.selector, ftl.VariableReference):
                self.choices.add((node.selector.id.name, named))
        self.generic_visit(node)

    @property
    def named(self) -> set[tuple[str, str]]:
        """Choices other than those of grammar and of sound, which each language makes in its own way."""
        grammar = {"one", "other", "i", "o"}
        return {choice for choice in self.choices if choice[1] not in grammar}


def messages(language: str) -> dict[str, ftl.Message]:
    parsed = FluentParser().parse((FOLDER / f"{language}.ftl").read_text(encoding="utf-8"))
    junk = [one.content for one in parsed.body if isinstance(one, ftl.Junk)]
    assert not junk
    found = [one for one in parsed.body if isinstance(one, ftl.Message)]
    assert len({one.id.name for one in found}) == len(found), "an entry stands twice"
    return {one.id.name: one for one in found}


WORDED = {language: messages(language) for language in LANGUAGES}


# --- the catalogue and the languages --------------------------------------------------------------------


def test_there_is_a_file_for_every_language_and_no_other() -> None:
    assert {path.stem for path in FOLDER.glob("*.ftl")} == set(LANGUAGES)


def test_no_code_is_a_phrase() -> None:
    assert not CATALOGUE.keys() & PHRASES.keys()


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_code_and_phrase_is_worded_and_no_other(language: str) -> None:
    assert WORDED[language].keys() == NAMES.keys()
    for code in CATALOGUE:
        assert [a.id.name for a in WORDED[language][code].attributes] == ["hint"]
    for name in PHRASES:
        assert not WORDED[language][name].attributes


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_wording_draws_on_the_facts_of_the_catalogue_and_on_all_of_them(language: str) -> None:
    for name, message in WORDED[language].items():
        facts = Uses(message).facts | ({"initial"} if name in ("list-and", "list-or") else set())
        assert facts == NAMES[name], name


@pytest.mark.parametrize("language", LANGUAGES)
def test_what_is_told_apart_in_english_is_told_apart_in_every_language(language: str) -> None:
    for name, message in WORDED[language].items():
        assert Uses(message).named == Uses(WORDED["en"][name]).named, name


@pytest.mark.parametrize("language", LANGUAGES)
def test_numbers_are_written_alike(language: str) -> None:
    """As many decimals, and the same functions of the same facts, in every language."""

    def calls(message: ftl.Message) -> list[str]:
        found: list[str] = []

        class Calls(visitor.Visitor):
            def visit_FunctionReference(self, node: ftl.FunctionReference) -> None:
                given = [a.id.name for a in node.arguments.positional if isinstance(a, ftl.VariableReference)]
                digits = [n.value.value for n in node.arguments.named]
                if node.id.name in ("FIXED", "SHORT", "PERCENT"):
                    found.append(f"{node.id.name} {given} {digits}")

        Calls().visit(message)
        return sorted(set(found))

    for name, message in WORDED[language].items():
        assert calls(message) == calls(WORDED["en"][name]), name


def _texts(message: ftl.Message) -> Iterator[str]:
    for pattern in (message.value, *(a.value for a in message.attributes)):
        assert pattern is not None
        yield "".join(e.value if isinstance(e, ftl.TextElement) else "x" for e in pattern.elements)


@pytest.mark.parametrize("language", LANGUAGES)
def test_lower_case_and_no_full_stop(language: str) -> None:
    """German writes its nouns with a capital, and a name begins as it does."""
    for name, message in WORDED[language].items():
        for text in _texts(message):
            assert text
            assert not text.endswith(".")
            assert not text[0].isupper() or language == "de" or text.startswith(("C10", "C2")), name


@pytest.mark.parametrize("language", ["es", "de"])
def test_nothing_is_left_in_english(language: str) -> None:
    """A text of more than one word is never the English one."""
    same = {
        name
        for name, message in WORDED[language].items()
        for mine, english in zip(_texts(message), _texts(WORDED["en"][name]), strict=True)
        if mine == english and re.search(r"[a-z]{2,} [a-z]{2,}", english)
    }
    assert not same


def fact(name: str) -> Fact:
    """Some fact of the kind that a name tells of."""
    lists = {
        "others",
        "pegs",
        "loops",
        "bands",
        "known",
        "who",
        "reasons",
        "sizes",
        "types",
        "choices",
        "signs",
        "lines",
        "named",
        "meant",
        "over",
    }
    if name in lists:
        return ("A1", "I3")
    figures = {"value", "low", "high", "drop", "stretch", "breaks", "years", "least", "most", "times"}
    if name.endswith(("_mm", "_n", "_g", "_cm", "_mpa", "_cm3")) or name in figures:
        return 2.5
    counts = {
        "count",
        "more",
        "limit",
        "left",
        "given",
        "loop",
        "through",
        "above",
        "band",
        "needed",
        "wanted",
    }
    return 3 if name in counts else "peg"


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_wording_can_be_said(language: str) -> None:
    for code, entry in CATALOGUE.items():
        several = {"loops", "bands", "pegs"} if code in ALONE else set()
        facts = {name: 4 if name in several else fact(name) for name in entry.facts}
        said = word_finding(finding(code, **facts), language)
        assert said.message
        assert said.hint
        assert "{" not in said.message + said.hint
    for name, needed in PHRASES.items():
        if not name.startswith("list-"):
            sizes = {"size": 3} if "size" in needed else {}
            assert (
                word_phrase(phrase(name, **{f: fact(f) for f in needed} | sizes), language)
                or "unknown" in name
            )


ALONE = {
    "stack-too-high",
    "catches-one",
    "catches-more",
    "loop-missing",
    "too-many-pegs",
    "turns-mismatch",
} | {
    "twists-mismatch",
    "losses-left-out",
    "extension-nowhere",
}


def test_plurals_and_lists() -> None:
    dragged = finding(
        "loop-dragged",
        band=2,
        colour="B",
        peg="hook",
        others=(phrase("band-named", band=3, colour="A"),),
        count=1,
    )
    assert word_finding(dragged, "de").message == (
        "die Schlaufe von Gummi 2 (B) auf dem Haken wird bewegt, während Gummi 3 (A) durch sie hindurchgeht"
    )
    assert word_finding(dragged, "es").message == (
        "el lazo de la gomita 2 (B) en el gancho se mueve mientras la gomita 3 (A) pasa por él"
    )
    facts = {"name": "foam", "taut_mm": 1234.5, "rest_mm": 40.0, "more": 1}
    slack = finding("band-slack", pegs=("A1", "B2", "I3"), **facts)
    assert "over A1, B2 and I3: 1,234.5 mm round, 40.0 mm" in slack.message
    assert "en A1, B2 e I3: 1.234,5 mm de vuelta" in word_finding(slack, "es").message
    assert "um A1, B2 und I3: 1.234,5 mm rundherum" in word_finding(slack, "de").message
    assert word_finding(slack, "de").message.endswith(", und noch 1 weiteres wie dieses")
    assert "1,23 %" in word_finding(
        finding("rest-not-reached", iterations=1, drop=0.0123), "es"
    ).message.replace("\u00a0", " ")


def test_a_number_that_names_has_no_mark_between_its_thousands() -> None:
    assert word_location(Location(step=1234, band=5678), "de") == "Zug 1234, Gummi 5678"
    assert finding("captions-too-large", limit=8_000_000).message == (
        "the captions are longer than the 8,000,000 bytes that are read"
    )


def test_places_are_worded() -> None:
    place = Location(step=3, peg="end.2", band=4, path="/steps/1")
    assert str(place) == "move 3, the free end called end, band 4 (/steps/1)"
    assert word_location(place, "de") == "Zug 3, das freie Ende „end“, Gummi 4 (/steps/1)"
    assert word_location(Location(), "es") == "todo el patrón"
    assert word_location(Location(line=2, column=5), "es") == "línea 2, columna 5"


def test_a_fix_is_worded() -> None:
    one = finding("no-finish", fix=Fix(phrase("fix-clip", at="A3"), ({"op": "remove", "path": "/x"},)))
    fix = word_finding(one, "es").fix
    assert fix is not None
    assert fix.label == "poner un cierre en los lazos de A3"
    assert fix.patch == ({"op": "remove", "path": "/x"},)


def test_what_is_missing_is_a_mistake_of_ours() -> None:
    with pytest.raises(KeyError, match="colour"):
        finding("band-not-worked", band=3)
    with pytest.raises(KeyError, match="so-many"):
        phrase("so-many")
    with pytest.raises(KeyError, match="count"):
        phrase("so-many-more")
    with pytest.raises(KeyError):
        word_phrase(Phrase("so-many-more", {}))


FACTS = st.recursive(
    st.one_of(st.text(max_size=40), st.integers(-(2**53), 2**53), st.floats(allow_nan=False)),
    lambda inner: st.one_of(
        st.lists(inner.filter(lambda f: not isinstance(f, tuple)), max_size=3).map(tuple),
        inner.map(lambda f: Phrase("as-told", {"text": f})),
    ),
    max_leaves=5,
)


@given(FACTS)
def test_a_finding_is_plain_json_and_comes_back(given_: Fact) -> None:
    one = finding("band-not-proved", Location(band=1), bands=(1,), count=1, named=("1",), reason=given_)
    assert msgspec.msgpack.decode(msgspec.msgpack.encode(one), type=Finding) == one
    told = json.loads(msgspec.json.encode(word_finding(one, "de")))
    assert set(told) >= {"code", "severity", "message", "place", "hint", "facts"}


@given(st.text(), st.floats(), st.sampled_from(LANGUAGES))
def test_anything_at_all_can_be_said(text: str, value: float, language: str) -> None:
    """However long a name is, and whatever a number: nothing breaks, and a name stands as it is."""
    one = finding("motif-unknown", name=text * 500, known=(text,) * 400, count=400)
    said = word_finding(one, language).message
    assert text[:1000] in said
    nonsense = finding("measure-nonsense", what=text, value=value, unit="mm", reason=text, cure=text)
    assert word_finding(nonsense, language).hint == text


# --- the documents and the code -------------------------------------------------------------------------


def test_every_code_is_documented_once_and_no_other() -> None:
    assert entries().keys() == CATALOGUE.keys()
    assert len(re.findall(r"^### ", DOCS, flags=re.M)) == len(CATALOGUE)


@pytest.mark.parametrize("code", sorted(CATALOGUE))
def test_an_entry_says_what_why_and_how(code: str) -> None:
    severity, text = entries()[code]
    assert severity == CATALOGUE[code].severity
    what, _, rest = text.partition("**Why it matters:**")
    why, _, rest = rest.partition("**How to mend it:**")
    how, _, example = rest.partition("**Example:**")
    assert all(len(part.strip()) > 10 for part in (what, why, how, example))


def test_every_code_that_is_raised_is_worded() -> None:
    for path, tree in sources().items():
        for node in ast.walk(tree):
            if isinstance(node, ast.Call) and node.args and isinstance(node.args[0], ast.Constant):
                name = getattr(node.func, "id", getattr(node.func, "attr", ""))
                code = node.args[0].value
                if name in RAISERS and isinstance(code, str) and re.fullmatch(r"[a-z]+(-[a-z]+)+", code):
                    assert code in CATALOGUE, f"{code} in {path.name}"
                if name == "phrase" and isinstance(code, str):
                    given = {keyword.arg for keyword in node.keywords}
                    assert None in given or given == PHRASES[code], f"{code} in {path.name}"


def test_every_code_that_is_worded_is_used() -> None:
    used = {
        node.value
        for tree in sources().values()
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    }
    assert CATALOGUE.keys() <= used
    # Some are put together from a word before the dash and one after it, or drawn on by the wordings alone.
    parts = {name for name in PHRASES if name.split("-")[0] in ("level", "sight", "list")}
    assert PHRASES.keys() - parts <= used


def test_how_findings_read() -> None:
    named = (phrase("band-named", band=14, colour="B"),)
    one = finding("band-not-proved", bands=(14,), count=1, named=named, reason=phrase("open-tangled"))
    assert one.message == (
        "band 14 (B) could be neither proved held nor proved free: it is too tangled to decide"
    )
    fallen = phrase("falls-passed-by-none", named=(phrase("band-named", band=3, colour="A"),), count=1)
    facts = {"bands": (3,), "count": 1, "hanging": 2, "loose": 0, "colour": "", "since": ""}
    two = finding("band-falls", reason=fallen, **facts)
    assert two.message == (
        "band 3 (A) falls off: nothing passes through any of its loops; 2 more are held only by it"
    )
    assert (one.severity, two.severity) == ("warning", "error")
    three = finding("rest-not-reached", iterations=400, drop=0.0123)
    assert (
        three.message
        == "the piece had not come to rest after 400 steps: forces are at 1.23% of what they were"
    )
    four = finding("rest-interrupted", iterations=7)
    assert four.message == "the work was stopped after 7 steps; the shape is the one reached so far"
    five = finding("bands-drawn-crossing", gap_mm=0.0021)
    assert five.message == "a strand of this band is drawn through another, with 0.002 mm between them"


def test_facts_are_text_and_never_a_template() -> None:
    """A hostile name with braces in it stays as it is."""
    one = finding("motif-unknown", name="{known}{0.__class__}{ $known }", known=(), count=0)
    assert one.message == "there is no motif called {known}{0.__class__}{ $known }"


def test_long_runs_are_summed_up() -> None:
    many = [finding("peg-double", peg=f"A{k}") for k in range(30)] + [finding("no-finish")]
    short = sum_up(many, most=4)
    assert [f.code for f in short] == ["peg-double"] * 4 + ["no-finish", "more-of-the-same"]
    assert short[-1].facts == {"count": 26, "of": "peg-double"}
    assert sum_up(many[:20]) == tuple(many[:20])


def test_what_is_summed_up_twice_is_counted_once() -> None:
    many = [finding("peg-double", peg=f"A{k}") for k in range(30)]
    again = sum_up((*sum_up(many, most=4), *sum_up(many[:7], most=4)), most=4)
    assert [f.code for f in again] == ["peg-double"] * 4 + ["more-of-the-same"]
    assert again[-1].facts == {"count": 33, "of": "peg-double"}


def test_sum_up_keeps_the_order_of_what_it_keeps() -> None:
    some: list[Finding] = [finding("peg-double", peg=str(k)) for k in range(3)]
    assert sum_up(some) == tuple(some)


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_list_of_thousands_can_be_said(language: str) -> None:
    """The library takes 2,500 characters for a part of a sentence; what is longer is cut with a mark."""
    bands = tuple(range(1, 3001))
    said = word_finding(finding("order-none", laid=3000, bands=bands, count=3000), language).message
    assert "1, 2, 3, " in said
    assert "…" in said
    assert "3000" in said
    deep = phrase("hint-is", hint=phrase("hint-is", hint="x" * 1990))
    for _ in range(60):
        deep = phrase("hint-is", hint=deep)
    assert word_phrase(deep, language).endswith("…")
