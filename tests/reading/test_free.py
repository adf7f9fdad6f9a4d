"""What makers write becomes the pattern that they mean; what is not said is asked, never made up."""

from __future__ import annotations

import random
import time

import pytest

from pegwright.finding import LANGUAGES, word_finding
from pegwright.pattern import Bind, Hook, Place, Rows, expand, read_pattern, write_pattern
from pegwright.reading import read_free, read_maker_text
from pegwright.workshop import lesson_of, work
from testing.maker_text import answer_as_meant, count_right, read_moves
from testing.maker_texts import LOOKED_AT, TEXTS
from testing.mutate_text import mutate_text
from testing.printed_text import print_steps


def moves_of(told):
    return tuple(one.move for one in expand(told.pattern).moves) if told.pattern else ()


@pytest.mark.parametrize("one", LOOKED_AT, ids=lambda one: one.name)
def test_a_makers_text_is_read_as_it_is_meant(one):
    first, told = answer_as_meant(one)
    assert told.language == one.language
    assert count_right(one.moves, *read_moves(told)) == (len(one.moves), 0)
    assert all(sentence.use != "unread" for sentence in told.sentences)
    assert len(first.blanks) <= 3


def test_a_chain_that_was_read_is_proved_and_holds():
    text = next(one for one in TEXTS if one.name == "low tide").text
    made = work(read_free(text).pattern)
    assert made.holds
    assert made.findings == () or all(found.severity == "note" for found in made.findings)


def test_every_step_carries_the_sentence_that_it_came_from():
    told = read_free(
        "Ebb\nA loom with 1 row of 4 pegs.\nA red band from A1 to A2.\nDo this twice more, one peg further.\n"
    )
    steps = [(one.line, one.use, len(one.steps)) for one in told.sentences]
    assert steps[:3] == [(1, "head", 0), (2, "head", 0), (3, "steps", 1)]
    assert sum(count for _, _, count in steps) == len(moves_of(told))


def test_an_unnamed_loom_is_asked_for_once_with_the_likely_one():
    told = read_free("One red band from A1 to A2. One red band from A2 to A3.")
    assert [(blank.key, blank.choices) for blank in told.blanks] == [("loom", ("1 x 3",))]
    assert [found.code for found in told.findings] == ["words-leave-open"]
    answered = read_free("One red band from A1 to A2. One red band from A2 to A3.", loom=Rows(rows=2, pegs=9))
    assert answered.blanks == ()
    assert answered.pattern.loom == Rows(rows=2, pegs=9)


def test_a_colour_that_is_never_said_is_asked_for():
    told = read_free("Loom: 1 row of 4 pegs. Stretch a band from A1 to A2.")
    assert "colour" in [blank.key for blank in told.blanks]


def test_the_machine_decides_between_readings():
    """Nothing lies on A1 to be pulled; the row is worked from the near end away, or the piece falls off."""
    text = next(one for one in TEXTS if one.name == "ebbe").text
    hooks = [move for move in moves_of(read_free(text)) if isinstance(move, Hook)]
    assert [move.source for move in hooks] == ["A5", "A4", "A3", "A2"]


def test_counts_up_front_decide_how_often():
    head = (
        "Loom: 1 row of 9 pegs. You need {} red bands.\n"
        "A red band from A1 to A2. Repeat {} times, one peg further."
    )
    for count, times in ((4, 3), (8, 7)):
        moves = moves_of(read_free(head.format(count, times)))
        assert sum(isinstance(move, Place) for move in moves) == count


def test_what_is_not_understood_is_flagged_and_nothing_is_made_up():
    told = read_free("Loom: 1 row of 4 pegs. A red band from A1 to A2. Then hook it in the pretty way.")
    assert [found.code for found in told.findings] == ["sentence-unread"]
    assert len(moves_of(told)) == 1


def test_a_line_of_the_notation_that_no_document_can_hold_is_flagged():
    told = read_free("place R over A1 B1\nplace R over B2 A2\nhook B2 to A2\nbind 3 through A2\n")
    assert told.pattern is not None
    assert read_pattern(write_pattern(told.pattern)).pattern == told.pattern
    assert not any(isinstance(step, Bind) for step in told.pattern.steps)
    assert told.findings


def test_a_language_without_a_word_list_is_a_plain_finding(pieces):
    """Its printed steps would still be read: they need no word list."""
    told = read_free("Un élastique rouge de A1 à A2.", "fr")
    assert (told.pattern, [found.code for found in told.findings]) == (None, ["language-unread"])
    printed = print_steps(lesson_of(pieces["herring-tail"], "es"))
    assert read_maker_text(printed, "fr").findings == ()


@pytest.mark.parametrize(
    "text",
    [
        "",
        "\x00" * 50,
        "a" * 3_000_000,
        "9" * 100_000,
        "One band. " * 50_000,
        "A1 " * 40_000,
        "字" * 10_000,
        "\n" * 1_000_000,
    ],
    ids=range(8),
)
def test_any_text_at_all_ends_soon_in_findings(text):
    began = time.process_time()
    told = read_free(text)
    assert told.pattern is None or told.findings
    for language in LANGUAGES:
        assert all(word_finding(found, language).message for found in told.findings)
    assert time.process_time() - began < 20, "the bench holds it to 2 s"


def test_a_text_without_end_is_read_as_far_as_anyone_would():
    told = read_free("Loom: 1 row of 4 pegs. A red band from A1 to A2. " + "Mind your fingers. " * 20_000)
    assert [found.code for found in told.findings] == ["text-too-long"]
    assert len(moves_of(told)) == 1


def test_spoilt_texts_never_crash_and_findings_say_where():
    for seed in range(150):
        rng = random.Random(seed)
        told = read_free(mutate_text(rng.choice(TEXTS).text, rng))
        assert told.pattern is not None or told.findings
        assert all(found.place.line for found in told.findings if found.code != "text-too-long")
