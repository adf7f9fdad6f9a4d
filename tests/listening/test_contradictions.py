"""What a recording says otherwise is found, with its step and time; what was only misheard is not."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import example, given, settings, strategies as st

from pegwright.finding import Language
from pegwright.lesson import Lesson, ScriptLine, write_script
from pegwright.listening import Cue, compare_recording, read_captions
from pegwright.listening.facts import SpokenFact, spoken_facts
from pegwright.listening.vocabulary import Vocabulary
from pegwright.listening.words import script_words, split_words
from pegwright.workshop import example_files, lesson_of, open_pattern, work
from testing.listening.by_hand import BY_HAND, HandWritten
from testing.listening.recordings import load_recordings, talk_of
from testing.listening.scoring import score_recordings

OTHER = {
    "left": "right",
    "right": "left",
    "away": "towards",
    "towards": "away",
    "lowest": "top",
    "top": "lowest",
}


@pytest.fixture(scope="module")
def lessons() -> dict[str, Lesson]:
    """The ebb line in every language."""
    pattern = open_pattern(example_files()["ebb-line"]).pattern
    assert pattern is not None
    made = work(pattern)
    return {language: lesson_of(made, language) for language in ("en", "de", "es")}


def cues_of(lines: list[ScriptLine]) -> list[Cue]:
    return [Cue(one.start_s, one.end_s, one.text) for one in lines]


def codes(lesson: Lesson, cues: list[Cue]) -> list[str]:
    return [one.code for one in compare_recording(lesson, cues).findings]


@pytest.mark.parametrize("language", ["en", "de", "es"])
def test_the_lesson_itself_says_nothing_otherwise(lessons: dict[str, Lesson], language: Language) -> None:
    lesson = lessons[language]
    told = compare_recording(lesson, cues_of(list(write_script(lesson).lines)))
    assert told.findings == ()
    assert told.contradictions == ()


@pytest.mark.parametrize("language", ["en", "de", "es"])
def test_each_fact_said_wrong_is_found_at_its_place(lessons: dict[str, Lesson], language: Language) -> None:
    """One number or peg at a time, in every step that has one; the language does not matter."""
    lesson = lessons[language]
    script = write_script(lesson)
    vocabulary = Vocabulary(language, [one.name for one in lesson.key])
    said = script_words(script.lines, language)
    facts = [one for one in spoken_facts(script, said, vocabulary) if one.kind not in ("colour", "row")]
    facts = [one for one in facts if script.lines[one.line].step and not _is_repeated(facts, one)]
    assert {one.kind for one in facts} >= {"count", "repeats", "supplies", "peg"}
    missed = []
    for fact in facts[::7]:
        lines = list(script.lines)
        lines[fact.line] = _said_wrong(lines[fact.line], fact, said[fact.words[0]].text, language)
        if lines[fact.line] == script.lines[fact.line]:
            continue
        told = compare_recording(lesson, cues_of(lines))
        here = [one for one in told.contradictions if one.line == fact.line and one.kind == fact.kind]
        if len(here) != 1 or abs(here[0].start_s - lines[fact.line].start_s) > 10:
            missed.append((fact, told.contradictions))
        assert len(told.contradictions) <= 1
    assert missed == []


def _is_repeated(facts: list[SpokenFact], one: SpokenFact) -> bool:
    """Say whether its value stands more than once in its line."""
    return sum(other.line == one.line and other.values == one.values for other in facts) > 1


def _said_wrong(line: ScriptLine, fact: SpokenFact, word: str, language: str) -> ScriptLine:
    for text, (start, end) in split_words(line.text, language):
        if text == word and (line.text[start:end].isdecimal() or text in OTHER):
            wrong = OTHER.get(word) or str(int(word) + 2 + (int(word) % 10 == 8))
            return msgspec.structs.replace(line, text=line.text[:start] + wrong + line.text[end:])
    return line


WRONG = {
    "a colour": ("slate blue band (A) from peg A1", "foam white band from peg A1", "colour", 3),
    "a direction": ("A25 to peg A26, away from", "A25 to peg A26, towards", "way", 6),
    "a loop": ("the lowest loop (foam", "the top loop (foam", "loop", 8),
    "a hand": ("Put it on peg A24", "Hold the hook in your left hand. Put it on peg A24", "hand", 8),
}


@pytest.mark.parametrize("name", WRONG)
def test_words_said_wrong_are_found(lessons: dict[str, Lesson], name: str) -> None:
    before, after, kind, step = WRONG[name]
    lines = [
        msgspec.structs.replace(one, text=one.text.replace(before, after))
        for one in write_script(lessons["en"]).lines
    ]
    told = compare_recording(lessons["en"], cues_of(lines))
    assert [(one.kind, one.step) for one in told.contradictions] == [(kind, step)]
    assert [one.code for one in told.findings] == ["recording-contradicts"]


def test_a_step_left_out_added_or_said_too_late_is_found(lessons: dict[str, Lesson]) -> None:
    lines = list(write_script(lessons["en"]).lines)
    third = next(i for i, one in enumerate(lines) if one.step == 3)
    without = [Cue(0.9 * i, 0.9 * i + 0.9, one.text) for i, one in enumerate(lines) if one.step != 4]
    assert [(o.kind, o.step) for o in compare_recording(lessons["en"], without).contradictions] == [
        ("unsaid", 4)
    ]
    turned = lines[:]
    turned[third], turned[third + 1] = (
        msgspec.structs.replace(lines[third], text=lines[third + 1].text),
        msgspec.structs.replace(lines[third + 1], text=lines[third].text),
    )
    found = compare_recording(lessons["en"], cues_of(turned)).contradictions
    assert [(one.kind, one.step) for one in found] == [("swapped", 3)]
    more = cues_of(lines)
    more.insert(
        third + 2,
        Cue(more[third + 1].end_s, more[third + 2].start_s, "Stretch a green band from peg B4 to peg D7."),
    )
    found = compare_recording(lessons["en"], more).contradictions
    assert [one.kind for one in found] == ["extra"]


MISHEARD = {
    "free for three": ("all 3 of them", "all free of them"),
    "a peg in one word": ("peg A26 is nearest", "pagate 26 is nearest"),
    "a letter heard as eight": ("to peg A26, away", "to peg 826 away"),
    "pen for peg": ("peg A25, inside", "pen A25, inside"),
    "book for hook": ("Push the hook", "Push the book"),
    "nothing at all": ("11 more times", "more times"),
    "a slip taken back": (
        "Catch the lowest loop",
        "Catch the top loop, no, that was the wrong one, put it back. Catch the lowest loop",
    ),
    "an aside": ("Place the bands.", "Place the bands. Mind the ferry, it hoots at noon, three times."),
    "music": ("Turn the loom.", "[Music] Turn the loom."),
}


@pytest.mark.parametrize("name", MISHEARD)
def test_what_is_misheard_or_taken_back_is_no_contradiction(lessons: dict[str, Lesson], name: str) -> None:
    before, after = MISHEARD[name]
    script = write_script(lessons["en"])
    assert any(before in one.text for one in script.lines)
    cues = [Cue(one.start_s, one.end_s, one.text.replace(before, after)) for one in script.lines]
    assert codes(lessons["en"], cues) == []


def test_where_the_words_around_are_garbled_it_is_a_question(lessons: dict[str, Lesson]) -> None:
    clear, garbled = "Hook one clip through all 3 of them.", "Huck one clip through awl 5 off dem."
    script = write_script(lessons["en"])
    cues = [Cue(one.start_s, one.end_s, one.text.replace(clear, garbled)) for one in script.lines]
    assert codes(lessons["en"], cues) == ["recording-unclear"]


def test_rounds_shown_after_a_repeat_are_no_contradiction(lessons: dict[str, Lesson]) -> None:
    script = write_script(lessons["en"])
    shown = " Like this, stretch one slate blue band from peg A3 to peg A4, away from you."
    cues = [
        Cue(one.start_s, one.end_s, one.text + (shown if "The last one ends on peg A25" in one.text else ""))
        for one in script.lines
    ]
    assert codes(lessons["en"], cues) == []


@pytest.mark.parametrize("one", BY_HAND, ids=[one.name for one in BY_HAND])
def test_a_careless_speakers_own_words_are_followed(lessons: dict[str, Lesson], one: HandWritten) -> None:
    """What is wrong is found, a slip taken back, garbled words, asides and lines left out are not."""
    told = compare_recording(lessons[one.language], read_captions(one.text.encode()).cues)
    assert tuple((each.kind, each.step) for each in told.contradictions) == one.wrong
    assert {each.code for each in told.findings} <= {"recording-contradicts", "chapter-not-heard"}


def test_a_recognisers_captions_are_judged_rightly() -> None:
    """Of the recordings that may be looked at; those kept apart are measured by the bench."""
    score = score_recordings(one for one in load_recordings(kept=False) if one[0].level < 2)
    assert score.wrong == ()
    assert score.recall >= 0.5
    assert score.chapter_errors_s[len(score.chapter_errors_s) // 2] <= 1.5
    assert sum(error <= 5 for error in score.chapter_errors_s) >= 0.95 * len(score.chapter_errors_s)


def test_the_recordings_are_those_of_the_script_that_makes_them() -> None:
    for truth, _ in load_recordings(kept=False):
        talk = talk_of(truth.seed)
        assert [one.text for one in truth.spoken] == [one.text for one in talk.utterances]
        assert truth.planted == talk.planted


WORDS = ("peg", "A1", "3", "blue", "left", "band", "the", "lowest", "of", "again", "more", "times")


@settings(max_examples=15)
@example(words=[])
@given(words=st.lists(st.sampled_from(WORDS), max_size=60))
def test_any_words_at_all_are_compared(lessons: dict[str, Lesson], words: list[str]) -> None:
    cues = [Cue(i, i + 1.0, word) for i, word in enumerate(words)]
    told = compare_recording(lessons["en"], cues)
    assert all(0 <= one.confidence <= 1 for one in told.contradictions)
    assert len(told.findings) < 200
