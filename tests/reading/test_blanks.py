"""What a maker does not say is asked, once and in words, and the answer is taken; nothing is made up."""

from __future__ import annotations

import re

import pytest

from pegwright.finding import LANGUAGES, word_phrase
from pegwright.pattern import Bind, Clip, Extend, Hook, Place, Rows, Wind
from pegwright.reading import read_free
from pegwright.workshop import work
from testing.maker_text import answer_as_meant, count_right, read_moves
from testing.maker_texts import LOOKED_AT, TEXTS
from testing.struck_words import strike_words

LANTERN = """Loom with 3 rows of 5 pegs.
One blue band from B2 to B3, one from B2 to A2, one from B2 to C2, one from B2 to B1.
"""
WHEEL = "Loom: 3 rows of 3 pegs. A red band from B2 to B3. "
CHAIN = "Loom: 1 row of 4 pegs. A red band from A1 to A2. A white band from A2 to A3. "
PAIR = "Loom: 1 row of 4 pegs. A red band from A1 to A2. A white band from A1 to A2. "
SHORT = [one for one in LOOKED_AT if len(one.text) < 420 and one.style != "addresses"]


def questions(told) -> list[str]:
    return [blank.key for blank in told.blanks]


def answered(text: str, **answers: str):
    """Read a text with all its blanks of these kinds answered."""
    first = read_free(text)
    given = {
        (blank.key, at): answers[blank.key]
        for blank in first.blanks
        if blank.key in answers
        for at in blank.sentences
    }
    return read_free(text, answers=given)


def test_no_step_is_invented_in_any_text():
    """After a maker has answered what was asked, no step is read that was not meant."""
    for one in TEXTS:
        told = answer_as_meant(one)[1]
        assert told.blanks == (), one.name
        assert count_right(one.moves, *read_moves(told))[1] == 0, one.name


def test_a_colour_at_the_end_is_read_and_the_turns_are_asked_for():
    told = read_free(LANTERN + "Cap on every centre, red.")
    moves, names = read_moves(told)
    assert (moves[-1].on, names[moves[-1].colour]) == ("B2", "red")
    assert questions(told) == ["turns"]
    assert told.blanks[0].choices == ("3", "2", "4")
    assert read_moves(answered(LANTERN + "Cap on every centre, red.", turns="2"))[0][-1].turns == 2


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        (CHAIN + "A band from A3 to A4.", ["colour"]),
        (CHAIN + "Stretch a band from A3 to A4 and a band from A3 to A4.", ["colour"]),
        (CHAIN + "A last band through the loops on A3.", ["colour"]),
        (CHAIN + "Pull a last red band through the loops.", ["peg"]),
        (CHAIN + "Pull a last red band through the loops on A1. Add a chain of red bands.", ["chain-bands"]),
        (CHAIN + "Hook the loop from A2 to A1.", ["loop"]),
        (CHAIN + "Hook the lowest loops from A2 to A1.", ["loops"]),
        (WHEEL + "Then one to A2.", ["pegs"]),
        (CHAIN + "A red cap on A3.", ["turns"]),
        (CHAIN + "Wind a band twice round A3.", ["colour"]),
        (CHAIN + "Do this again.", ["pegs"]),
        ("Loom: 1 row of 9 pegs. A red band from A1 to A2. And so on.", ["times"]),
        ("Loom: 1 row of 9 pegs. A red band from A1 to A2. Do this three times, one peg further.", ["times"]),
        ("Loom: 3 rows of 5 pegs. Start at B1. One red band out to the left.", ["pegs"]),
        ("A red band from A1 to A2.", ["loom"]),
    ],
)
def test_what_is_not_said_is_asked(text, asked):
    told = read_free(text)
    assert questions(told) == asked
    assert [found.code for found in told.findings] == ["words-leave-open"] * len(asked)
    for blank in told.blanks:
        assert blank.choices
        assert len({word_phrase(blank.question, language) for language in LANGUAGES}) == len(LANGUAGES)


@pytest.mark.parametrize(
    "said",
    [
        "Do not put a white band from A3 to A4.",
        "A red or a white band from A3 to A4.",
        "A red band from A3 to.",
        "A chain of 900 red bands is added.",
        "Wind a red band twenty times round A3.",
        "The loom.",
        "The lowest loop over the others, on A2 and on A3.",
        "Two red bands, a white band and a blue band from A1 to A2, from A2 to A3.",
        "Take the pretty loop.",
        "The red band from A3 to A4 should look loose.",
        "No, a nice one.",
    ],
)
def test_what_forbids_or_leaves_to_choose_or_breaks_off_is_named_and_not_read(said):
    told = read_free(CHAIN + said)
    assert [found.code for found in told.findings] == ["sentence-unread"]
    assert len(read_moves(told)[0]) == 2


@pytest.mark.parametrize("one", SHORT, ids=lambda one: one.name)
def test_a_peg_or_number_left_out_of_a_text_is_never_made_up(one):
    """Each peg and each counting word is struck out in turn: no new step comes of it without a finding."""
    meant = {repr(move) for move in read_moves(read_free(one.text, one.language))[0]}
    for word in re.finditer(
        r"\b(?:[A-C][1-9]\d?|two|three|four|five|eleven|dos|tres|zwei|dreimal)\b", one.text
    ):
        told = read_free(one.text[: word.start()] + one.text[word.end() :], one.language)
        new = [move for move in read_moves(told)[0] if repr(move) not in meant]
        assert not new or told.findings, (word[0], one.text[: word.start()][-40:], new[:2])


@pytest.mark.parametrize(
    ("text", "struck"),
    [
        (PAIR + "Lift the lowest loop over the others on A1 and on A2.", "A2"),
        (PAIR + "Lift the lowest loop over the others on A1 and on A2.", "A1"),
        (CHAIN + "A blue band from A3 to A4, half turn.", "turn"),
        (PAIR + "Lift the lowest loop on A2 over the others, then do the same on A1.", "A1"),
        (
            "Loom: 3 rows of 5 pegs. Start at B1. One red band towards ten o'clock, one towards two o'clock.",
            "one",
        ),
        (
            "Loom: 3 rows of 5 pegs. Start at B1. A red band to A2, one back to B3. The same on the right.",
            "same",
        ),
        (
            "Telar de 2 filas y 1 clavija. Estira una gomita azul de A1 a B1 y otra gomita roja de A1 a B1.",
            "azul",
        ),
        ("Loom: 3 rows of 5 pegs. Start at B2. One red band up to B3.", "to "),
    ],
)
def test_a_word_that_carried_something_is_missed(text, struck):
    """Without it the words no longer say what the pattern said; the reading asks, or names the sentence."""
    assert not read_free(text).findings or questions(read_free(text)) == ["pegs"]
    at = text.rindex(struck) if struck != "one" else text.rindex("one ")
    told = read_free(text[:at] + text[at + len(struck) :])
    assert len(told.findings) > len(read_free(text).findings)


def test_few_words_change_a_pattern_unnoticed():
    """Every ninth word of the short texts; the words left may still say it: “blue”, not “sea blue”.

    `python -m bench read` strikes every word of every text.
    """
    strikes = [one for text in SHORT for one in strike_words(text, every=9)]
    silent = [one for one in strikes if one.silent]
    assert len(strikes) > 100
    assert len(silent) * 50 <= len(strikes), [(one.text, one.before[-20:], one.word) for one in silent]


def test_a_list_of_colours_with_one_band_at_its_end_is_counted():
    told = read_free("You need 2 blue and 1 red bands. Loom: 1 row of 4 pegs. A blue band from A1 to A2.")
    assert told.pattern.stated.bands == {"B": 2, "R": 1}


def test_one_question_for_all_bands_without_a_colour():
    text = "Loom: 1 row of 4 pegs. A band from A1 to A2.\nA band from A2 to A3.\nA red band from A3 to A4."
    told = read_free(text)
    assert questions(told) == ["colour"]
    assert told.blanks[0].sentences == (1, 2)
    assert word_phrase(told.blanks[0].question) == "which colour are the bands in lines 1 and 2?"
    moves, names = read_moves(answered(text, colour="sea green"))
    assert [names[move.colour] for move in moves] == ["sea green", "sea green", "red"]


def test_the_only_colour_of_the_counts_up_front_is_said():
    told = read_free("You need 3 teal bands. Loom: 1 row of 4 pegs. A band from A1 to A2.")
    assert told.blanks == ()
    assert read_moves(told)[1] == {"T": "teal"}


def test_every_kind_of_answer_is_taken():
    moves = read_moves(answered(CHAIN + "Hook the loop from A2 to A1.", loop="top"))[0]
    assert moves[-1] == Hook(source="A2", target="A1", loop=-1)
    moves = read_moves(answered(CHAIN + "Pull a last red band through the loops.", peg="A3"))[0]
    assert moves[-1] == Bind(colour="R", at="A3")
    moves = read_moves(answered(WHEEL + "Then one to A2.", pegs="B2 A2"))[0]
    assert moves[-1] == Place(colour="R", over=("B2", "A2"))
    text = CHAIN + "Pull a last red band through the loops on A1. Add a chain of red bands."
    assert read_moves(answered(text, **{"chain-bands": "7"}))[0][-1] == Extend(colour="R", bands=7)
    text = "Loom: 1 row of 9 pegs. A red band from A1 to A2. And so on."
    assert len(read_moves(answered(text, times="3"))[0]) == 4
    assert answered(text, times="3").blanks == ()


def test_an_answer_that_is_none_leaves_the_question():
    told = answered(CHAIN + "Pull a last red band through the loops.", peg="the big one")
    assert questions(told) == ["peg"]
    assert read_free(CHAIN, answers={("peg", 99): "A1", ("none", -1): "x"}) == read_free(CHAIN)


def test_a_correction_takes_the_place_of_what_it_corrects():
    text = CHAIN + "A white band from A2 to A3. No, from A3 to A4. Sorry, I mean a red one."
    moves, names = read_moves(read_free(text))
    assert (moves[-1].over, names[moves[-1].colour], len(moves)) == (("A3", "A4"), "red", 3)
    moves = read_moves(read_free(LANTERN + "A red cap on B2, wound twice. No, three times."))[0]
    assert moves[-1] == Wind(colour="R", on="B2", turns=3)


def test_a_step_is_named_by_its_number():
    text = "Loom: 1 row of 6 pegs.\n1. A red band from A1 to A2.\n2. A white band from A2 to A3.\n"
    moves, names = read_moves(read_free(text + "3. Repeat steps 1 and 2 once more, two pegs further.\n"))
    assert [(names[move.colour], move.over) for move in moves[2:]] == [
        ("red", ("A3", "A4")),
        ("white", ("A4", "A5")),
    ]


def test_the_clauses_of_a_sentence_are_all_read():
    text = CHAIN + "Turn the loom, take the lowest loop from A3 to A2, and clip A2 and A1 with a clip."
    moves = read_moves(read_free(text))[0]
    assert [type(move).__name__ for move in moves[2:]] == ["Turn", "Hook", "Clip"]
    assert moves[-1] == Clip(at=("A2", "A1"))


def test_a_given_loom_is_asked_for_no_more():
    assert read_free("A red band from A1 to A2.", loom=Rows(rows=1, pegs=5)).blanks == ()


def test_a_loop_is_counted_from_below_or_from_the_top():
    text = CHAIN + "A red band from A1 to A2. Hook the second loop {}of A2 to A1."
    assert read_moves(read_free(text.format("")))[0][-1] == Hook(source="A2", target="A1", loop=2)
    assert read_moves(read_free(text.format("from the top ")))[0][-1] == Hook(
        source="A2", target="A1", loop=-2
    )


def test_a_strip_of_filled_capped_lanterns_in_words_is_proved():
    told = answer_as_meant(next(one for one in TEXTS if one.name == "lantern strip worked"))
    assert len(told[0].blanks) <= 3
    assert work(told[1].pattern).holds
