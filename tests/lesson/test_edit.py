"""The editor's check: each thing it looks for, found once where it is and never where it is not."""

from __future__ import annotations

from typing import Any

import msgspec
import pytest

from examples.pieces import PIECES
from pegwright.finding import Finding, phrase
from pegwright.fit import count_supplies
from pegwright.lesson import FinishedPiece, Lesson, review_lesson
from pegwright.lesson.review.review import disagreements, wrong_sizes
from pegwright.pattern import Pattern, PatternBuilder, Rows
from tests.lesson.pieces import ebb, lesson, work
from tests.lesson.test_finished import row
from tests.lesson.test_sizes import LONG


def checked(pattern: Pattern, **options: Any) -> tuple[Finding, ...]:
    history = work(pattern)
    return review_lesson(pattern, history, count_supplies(pattern, history), lesson(pattern, **options))


def codes(pattern: Pattern) -> list[tuple[str, str]]:
    return [(f.code, f.place.path) for f in checked(pattern)]


def piece(note: str = "", notes: str = "A short chain for a first try.", **about: Any) -> Pattern:
    """A sound little chain; `note` stands on its first step."""
    given = {"designer": "the Saturday workshop", "licence": "CC BY 4.0", "notes": notes, **about}
    m = PatternBuilder("Ebb", Rows(rows=1, pegs=4), **given).colour("A", "slate", "#4a5a6a")
    m.place("A", "A1", "A2", note=note)
    m.place("A", "A2", "A3")
    m.place("A", "A3", "A4")
    m.hook("A3", "A2")
    m.hook("A2", "A1")
    m.knot("A1")
    return m.pattern()


@pytest.mark.parametrize("name", PIECES)
def test_the_workshops_own_pieces_are_edited(name: str) -> None:
    """Nothing is left to say about the pieces that come with the program."""
    assert checked(PIECES[name]()) == ()


@pytest.mark.parametrize(
    ("about", "code"),
    [
        ({"designer": ""}, "contact-missing"),
        ({"licence": ""}, "licence-missing"),
        ({"notes": ""}, "about-missing"),
    ],
)
def test_contact_licence_and_a_word_about_the_piece(about: dict[str, str], code: str) -> None:
    """Each is missed by itself."""
    assert codes(piece(**about)) == [(code, "/" + next(iter(about)))]


@pytest.mark.parametrize(
    ("note", "code"),
    [
        ("Push it down on A9.", "text-peg-unknown"),
        ("See step 40.", "text-step-unknown"),
        ("See steps 40 and 41.", "text-step-unknown"),
        ("Left side first.", "side-named"),
        ("Put it on the pin.", "term-mixed"),
        (
            "Notwithstanding considerable elasticity, manufacturers' recommendations regarding maximum "
            "elongation necessitate conscientious observation throughout.",
            "text-hard",
        ),
    ],
)
def test_what_a_note_should_not_say(note: str, code: str) -> None:
    """A peg that is not there, a step that is not there, a side, another word, a hard sentence."""
    assert codes(piece(note=note)) == [(code, "/steps/0/note")]
    assert codes(piece(notes=note)) == [(code, "/notes")]


@pytest.mark.parametrize(
    "note", ["Now on A4, as in step 3.", "Print it on A5 paper.", "Leftover bands spin.", "OK."]
)
def test_what_a_note_may_say(note: str) -> None:
    """A peg and a step that are there, a size of paper, words that only begin like others."""
    assert codes(piece(note=note)) == []


def test_the_teachers_own_word_is_then_the_one_to_keep_to() -> None:
    """With peg made pin, pin is right and peg is mixed in."""
    own = {"peg": "pin", "pegs": "pins"}
    for note, found in (("On the pin.", []), ("On the pegs.", []), ("On the post.", ["term-mixed"])):
        said = checked(piece(note=note), phrases=own)
        assert [f.code for f in said] == found


def test_a_peg_named_in_a_repeat_that_moves_on() -> None:
    """True in one round only."""
    m = PatternBuilder("Ebb", Rows(rows=1, pegs=6), designer="us", licence="own", notes="A chain.").colour(
        "A", "slate", "#4a5a6a"
    )
    with m.repeat(5, pegs=1):
        m.place("A", "A1", "A2", note="Begin on A1.")
    m.knot("A6")
    assert codes(m.pattern()) == [("text-peg-moves", "/steps/0/steps/0/note")]


def test_a_level_that_is_too_low() -> None:
    """Half-turns are no basic matter."""
    m = PatternBuilder("Ebb", Rows(rows=1, pegs=2), designer="us", licence="own", notes="A ring.").colour(
        "A", "slate", "#4a5a6a"
    )
    m.place("A", "A1", "A2", twists=(1,))
    m.knot("A1", "A2")
    (only,) = checked(m.pattern())
    assert (only.code, only.facts["reckoned"], only.facts["reasons"]) == (
        "level-low",
        "easy",
        (phrase("level-twists"),),
    )
    easy = msgspec.structs.replace(m.pattern(), level="easy")
    assert codes(easy) == []


def test_motifs_never_worked_and_repeats_of_no_rounds() -> None:
    """What can never be reached is said, once, at its place."""
    m = PatternBuilder("Ebb", Rows(rows=1, pegs=4), designer="us", licence="own", notes="A chain.").colour(
        "A", "slate", "#4a5a6a"
    )
    with m.motif("wave"):
        m.place("A", "A1", "A2")
    with m.motif("inner"):
        m.place("A", "A1", "A2")
    with m.motif("outer"):
        m.use("inner")
    m.use("outer")
    with m.repeat(0):
        m.place("A", "A1", "A2")
    m.knot("A1", "A2")
    assert codes(m.pattern()) == [("motif-unused", "/motifs/0"), ("repeat-of-none", "/steps/1/times")]


def _spoiled(made: Lesson, how: str) -> Lesson:
    """Change one number of a lesson, as a careless hand would."""
    raw: dict[str, Any] = {name: getattr(made, name) for name in made.__struct_fields__}
    replace = msgspec.structs.replace
    if how == "total":
        raw["supplies"] = replace(made.supplies, total_count=made.supplies.total_count - 1)
    elif how == "row":
        rows = made.supplies.bands
        raw["supplies"] = replace(made.supplies, bands=(replace(rows[0], count=rows[0].count + 1), *rows[1:]))
    elif how == "key":
        raw["key"] = made.key[1:]
    else:
        phases = list(made.phases)
        steps = list(phases[1].steps)
        if how == "number":
            steps[0] = replace(steps[0], number=7)
        elif how == "gap":
            steps[1] = replace(steps[1], first=steps[1].first + 1)
        elif how == "boxes":
            steps[1] = replace(steps[1], ticks=steps[1].ticks[:-1])
        else:
            faded = tuple(
                replace(m, highlighted=False) if hasattr(m, "highlighted") and m.band == 1 else
                (replace(m, highlighted=True) if hasattr(m, "highlighted") else m)
                for m in phases[1].steps[0].pictures[0].marks
            )  # fmt: skip
            other = made.phases[1].steps[1].pictures[0].marks
            picture = replace(
                steps[0].pictures[0], marks=tuple(m for m in (*faded, *other) if getattr(m, "band", 0) != 1)
            )
            steps[0] = replace(steps[0], pictures=(picture,))
        phases[1] = replace(phases[1], steps=tuple(steps))
        raw["phases"] = tuple(phases)
    return Lesson(**raw)


@pytest.mark.parametrize("how", ["total", "row", "key", "number", "gap", "boxes", "picture"])
def test_a_lesson_changed_by_hand_is_caught(how: str) -> None:
    """Any one number or picture that no longer agrees with the working."""
    pattern = ebb()
    history = work(pattern)
    made, needs = lesson(pattern), count_supplies(pattern, history)
    assert list(disagreements(made, history, needs)) == []
    found = list(disagreements(_spoiled(made, how), history, needs))
    assert found
    assert {f.code for f in found} == {"lesson-disagrees"}


def test_a_size_that_is_not_the_solvers_is_found() -> None:
    """The sentence is compared with what the portrait measures."""
    history = work(ebb())
    needs = count_supplies(ebb(), history)
    made = lesson(ebb(), finish=FinishedPiece(portrait=row(9, (123.0, 15.0, 8.0))))
    assert list(disagreements(made, history, needs)) == []
    wrong = msgspec.structs.replace(made.finished, size=made.finished.size.replace("123", "132"))
    found = list(disagreements(msgspec.structs.replace(made, finished=wrong), history, needs))
    assert [f.facts["what"] for f in found] == [phrase("what-size")]


@pytest.mark.parametrize("note", ["{0.__class__} {known}", "<script> $(x) ](", "((((", "A1" * 500])
def test_hostile_texts_are_only_read(note: str) -> None:
    """Nothing in a note is a template, a pattern or a command."""
    for one in checked(piece(note=note)):
        assert one.code in {"text-hard", "term-mixed"}


def test_bands_of_a_size_that_do_not_add_up_are_found() -> None:
    """Every count and every sum of the table is made and counted again; one that is changed is found."""
    made = lesson(ebb(), finish=LONG)
    assert list(wrong_sizes(made, ebb())) == []
    table = made.sizes
    assert table is not None
    for at, size in enumerate(table.rows):
        for wrong in (
            {"bands": size.bands + 1},
            {"counts": (size.counts[0] + 1, *size.counts[1:])},
            {"counts": (size.counts[0] + 1, size.counts[1] - 1)},
            {"extension": size.extension + 1},
            {"repeats": size.repeats - 1},
        ):
            rows = list(table.rows)
            rows[at] = msgspec.structs.replace(size, **wrong)
            spoiled = msgspec.structs.replace(made, sizes=msgspec.structs.replace(table, rows=tuple(rows)))
            found = list(wrong_sizes(spoiled, ebb()))
            assert {f.code for f in found} == {"lesson-disagrees"}
            what = phrase("what-size-bands", wrist=size.wrist)
            assert all(f.facts["what"] == what for f in found)
