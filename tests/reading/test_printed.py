"""Our own printed steps, read back from the text alone, are the same piece."""

from __future__ import annotations

import random
import re

import pytest

from pegwright.lesson import languages
from pegwright.loom import replay_pattern
from pegwright.pattern import Pattern, PatternBuilder, Repeat, Rows, mirror
from pegwright.reading import read_printed
from pegwright.workshop import example_files, lesson_of, work
from testing.mutate_text import mutate_text
from testing.printed_text import print_steps


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
    told = read_printed(print_steps(lesson_of(made, language, hand=hand)))
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
    assert_same(print_steps(lesson_of(made, phrases=phrases)), made, phrases=phrases)


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
    for seed in range(100):
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
