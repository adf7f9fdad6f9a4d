"""Our own printed steps, read back from the text alone, are the same piece."""

from __future__ import annotations

import random
import re

import pytest

from pegwright.finding import word_finding
from pegwright.lesson import languages, script_leaf, write_script
from pegwright.loom import replay_pattern
from pegwright.pattern import Pattern, PatternBuilder, Repeat, Rows, mirror
from pegwright.press import handout_pdf, leaf_pdf
from pegwright.reading import read_printed
from pegwright.workshop import example_files, lesson_of, work
from testing.mutate_text import mutate_text
from testing.printed_text import copied_texts, print_script, print_steps


def assert_same(printed: str, made, **options) -> Pattern:
    """The same events on the loom, so the same structure and the same proof."""
    told = read_printed(printed, **options)
    assert told.findings == ()
    assert replay_pattern(told.pattern).events == made.history.events
    return told.pattern


@pytest.mark.parametrize("hand", ["right", "left"])
@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("name", example_files())
def test_a_printed_piece_reads_back(pieces, name, language, hand):
    made = pieces[name]
    if hand == "left":
        made = work(mirror(made.pattern))
    lesson = lesson_of(made, language, hand=hand)
    for text in (print_steps(lesson), print_script(lesson)):
        told = read_printed(text)
        assert (told.language, told.findings) == (language, ())
        assert replay_pattern(told.pattern).events == made.history.events


def test_the_teachers_own_words_are_read_as_printed(pieces):
    phrases = {
        "peg": "pin",
        "pegs": "pins",
        "band": "ring",
        "bands": "rings",
        "hook": "needle",
        "loop": "bight",
    }
    made = pieces["riding-lights"]
    lesson = lesson_of(made, phrases=phrases)
    assert_same(print_steps(lesson), made, phrases=phrases)
    assert_same(print_script(lesson), made, phrases=phrases)


def test_what_is_copied_out_of_the_pdf_is_read(pieces):
    """Numbers stand alone, words break at hyphens, and labels and running heads come between."""
    made = pieces["herring-tail"]
    lesson = lesson_of(made, "de", hand="left")
    script = script_leaf(lesson, write_script(lesson))
    for pdf in (handout_pdf(lesson), leaf_pdf(script)):
        for text in copied_texts(pdf).values():
            assert_same(text, made)


def test_numbers_may_stand_anywhere_before_their_step(pieces):
    made = pieces["twin-hulls"]
    text = print_steps(lesson_of(made))
    assert_same(" ".join(text.split()), made)
    assert_same(re.sub(r"(?m)^(\d+) ", r"\n\1\n", text), made)


@pytest.mark.parametrize("language", languages())
def test_every_step_left_out_of_a_copy_is_missed(pieces, language):
    """Take each step away, once with its number and once without: it is named, or its words are not read."""
    made = pieces["herring-tail"]
    lesson = lesson_of(made, language)
    text = print_steps(lesson)
    steps = [step for phase in lesson.phases for step in phase.steps]
    for step in steps[2:-1]:
        line = f"{step.number} {step.instruction}"
        missing = read_printed(text.replace(line, "", 1), language=language).findings
        named = [
            (found.facts["first"], found.facts["last"]) for found in missing if found.code == "steps-missing"
        ]
        assert named == [(step.number, step.number)]
        told = read_printed(text.replace(line, step.instruction, 1), language=language)
        same = told.pattern and replay_pattern(told.pattern).events == made.history.events
        assert told.findings or same, "“Round 12” right before it may stand for its number"
    for found in missing:
        assert word_finding(found, language).message


def test_an_excerpt_says_what_comes_before_it(pieces):
    text = print_steps(lesson_of(pieces["ebb-line"]))
    told = read_printed(text[text.index("\n7 ") :])
    assert [(f.code, f.facts["first"], f.facts["last"]) for f in told.findings] == [("steps-missing", 1, 6)]
    assert [one.use for one in told.sentences][:2] == ["steps", "steps"]


def test_rounds_of_a_step_that_is_missing_are_not_made_up(pieces):
    text = print_steps(lesson_of(pieces["ebb-line"]))
    told = read_printed(re.sub(r"(?m)^4 .*$", "", text))
    assert {found.code for found in told.findings} == {"steps-missing", "sentence-unread"}
    assert not any(isinstance(step, Repeat) for step in told.pattern.steps[:2])


def test_a_round_whose_colours_the_words_do_not_say_is_unread(pieces):
    text = print_script(lesson_of(pieces["riding-lights"]))
    without = re.sub(r"(?m)^.*Round 2: all bands.*$", "", text)
    assert without != text
    assert [found.code for found in read_printed(without).findings] == ["sentence-unread"]


def test_lines_may_break_anywhere_and_details_may_be_left_out(pieces):
    made = pieces["twin-hulls"]
    text = print_steps(lesson_of(made))
    broken = "\n".join(line.replace(" loop", "\n   loop") for line in text.splitlines())
    assert_same(broken, made)


def test_rounds_are_read_without_their_list(pieces):
    """“Move 2 pegs further each time; the last one ends on A25” is enough."""
    made = pieces["ebb-line"]
    text = print_steps(lesson_of(made))
    without = re.sub(r"^Round \d+:.*$", "", text, flags=re.MULTILINE)
    assert without != text
    assert_same(without, made)


@pytest.mark.parametrize("language", languages())
def test_spoilt_steps_are_unread_and_never_crash(pieces, language):
    """What is not understood is left unread; any other exception is a fault, and would be seen here."""
    text = print_steps(lesson_of(pieces["riding-lights"], language))
    for seed in range(40):
        told = read_printed(mutate_text(text, random.Random(seed)))
        assert told.pattern is not None or told.findings


def test_rounds_that_are_alike_are_a_repeat_of_the_document(pieces):
    told = read_printed(print_steps(lesson_of(pieces["ebb-line"])))
    repeat = told.pattern.steps[0]
    assert isinstance(repeat, Repeat)
    assert (repeat.times, repeat.pegs, len(repeat.steps)) == (12, 2, 2)
    assert [one.use for one in told.sentences[:3]] == ["aside", "aside", "steps"]


def test_the_order_in_which_pegs_are_tied_is_in_the_words():
    """A cord that runs from the far row to the near one is not the one that runs back."""
    m = PatternBuilder("Rope", Rows(rows=3, pegs=3)).colour("A", "slate", "#445566")
    for row in "ABC":
        m.place("A", f"{row}1", f"{row}2")
    m.knot("C1", "B1", "A1", "A2")
    made = work(m.pattern())
    for language in languages():
        told = assert_same(print_steps(lesson_of(made, language)), made)
        assert told.steps[-1].at == ("C1", "B1", "A1", "A2")


def test_a_step_that_is_not_ours_is_named():
    text = "Ebb\n1 Stretch one slate band (A) from peg A1 to peg A2, away from you.\n2 Do the pretty bit.\n"
    told = read_printed(text, language="en")
    assert [(f.code, f.place.line) for f in told.findings] == [("sentence-unread", 3)]
    assert [one.use for one in told.sentences] == ["steps", "unread"]
    assert [f.code for f in read_printed("Buy milk.").findings] == ["no-steps-read"]


@pytest.mark.parametrize("language", languages())
def test_a_join_and_a_loop_lifted_on_to_a_peg_read_back(language):
    """A band through some loops, ends put on one peg and on two, and a loop lifted on to another peg."""
    m = PatternBuilder("Mooring", Rows(rows=2, pegs=5)).colour("A", "slate", "#34506b")
    m.place("A", "A1", "A2")
    m.place("A", "A1", "A2")
    m.bind("A", "A2", catch=1)
    m.put("B2", "B3")
    m.bind("A", "A2")
    m.put("B3")
    m.place("A", "B3", "B4")
    m.lift("B3", target="A3")
    m.clip("A1")
    made = work(m.pattern())
    assert not [one for one in made.findings if one.severity == "error" and one.code != "band-falls"]
    assert_same(print_steps(lesson_of(made, language)), made)


@pytest.mark.parametrize("language", languages())
def test_what_is_done_with_two_at_once_reads_back(language):
    """A charm on two loops, with and without loops above them; a last band and a chain of two bands."""
    m = PatternBuilder("Twin buoys", Rows(rows=1, pegs=6)).colour("A", "slate", "#34506b")
    m.colour("R", "coral", "#c8553d")
    for peg in (1, 1, 2, 2):
        m.place("A", f"A{peg}", f"A{peg + 1}")
    for peg in (3, 2):
        m.hang("R")
        m.slide(f"A{peg}", f"A{peg - 1}", together=2)
    m.bind("A", "A1", together=2)
    m.extend("A", 5, together=2)
    m.clip("end")
    made = work(m.pattern())
    assert not [one for one in made.findings if one.severity == "error" and one.code != "band-falls"]
    assert made.supplies.heaps[0].finishing == 2
    assert_same(print_steps(lesson_of(made, language)), made)


@pytest.mark.parametrize("language", languages())
def test_the_way_of_a_half_twist_reads_back(language):
    """One half-twist the usual way, one and two the other way round, on a leg between three pegs too."""
    m = PatternBuilder("Crossed", Rows(rows=2, pegs=5)).colour("A", "slate", "#34506b")
    m.place("A", "A1", "A2", twists=(1,))
    m.place("A", "A2", "A3", twists=(-1,))
    m.place("A", "A3", "A4", "B4", twists=(-2, 1))
    m.clip("A3")
    made = work(m.pattern())
    assert_same(print_steps(lesson_of(made, language)), made)
