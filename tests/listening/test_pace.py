"""How long the teacher was heard to show each step is kept with the piece, and its lesson goes by it."""

from __future__ import annotations

from pathlib import Path

import jsonpatch
import msgspec
import pytest

from pegwright.cli import main
from pegwright.finding import LANGUAGES, Language
from pegwright.lesson import Lesson, kit_sheet, write_script
from pegwright.listening import RecordingComparison, read_captions
from pegwright.pattern import Pattern, PatternBuilder, Rows, read_pattern, write_pattern
from pegwright.text import read_pattern_text, write_pattern_text
from pegwright.workshop import (
    Work,
    example_files,
    keep_pace,
    lesson_of,
    listen_to_lesson,
    open_pattern,
    pace_patch,
    work,
)
from testing.listening.by_hand import BY_HAND


@pytest.fixture(scope="module")
def ebb() -> Work:
    pattern = open_pattern(example_files()["ebb-line"]).pattern
    assert pattern is not None
    return work(pattern)


@pytest.fixture(scope="module")
def heard(ebb: Work) -> tuple[Lesson, RecordingComparison]:
    return listen_to_lesson(ebb, read_captions(BY_HAND[0].text.encode()).cues, "en")


@pytest.fixture(scope="module")
def kept(ebb: Work, heard: tuple[Lesson, RecordingComparison]) -> Pattern:
    return keep_pace(ebb, *heard)


def test_the_steps_that_are_shown_once_carry_their_seconds(
    ebb: Work, heard: tuple[Lesson, RecordingComparison], kept: Pattern
) -> None:
    """In the first talk step 3 is spoken of from 0:44 until 0:52, step 6 from 1:20 until 1:30."""
    lesson, told = heard
    timed = {step.number: step.teacher_s for step in lesson_of(work(kept)).steps if step.is_timed}
    spoken = {one.number: one.spoken_s for one in told.steps}
    assert set(timed) == {3, 4, 6, 7, 8, 10, 12}
    assert timed[3] == pytest.approx(8, abs=1.5)
    assert timed[6] == pytest.approx(10, abs=1.5)
    assert all(timed[n] <= spoken[n] + 0.05 for n in timed)
    raw = msgspec.json.decode(write_pattern(ebb.pattern))
    patch = [dict(op) for op in pace_patch(ebb, lesson, told)]
    assert read_pattern(msgspec.json.encode(jsonpatch.apply_patch(raw, patch))).pattern == kept


def test_the_lesson_goes_by_them_and_says_so(ebb: Work, kept: Pattern) -> None:
    before, after = lesson_of(ebb), lesson_of(work(kept))
    assert [(a.number, a.rounds, a.instruction) for a in after.steps] == [
        (b.number, b.rounds, b.instruction) for b in before.steps
    ]
    for a, b in zip(after.steps, before.steps, strict=True):
        assert a.learner_s == max(b.learner_s, a.teacher_s) if a.is_timed else a.learner_s == b.learner_s
    shots = {shot.step: shot for shot in write_script(after).shots if shot.step}
    for step in after.steps:
        if step.is_timed:
            shot = shots[step.number]
            assert shot.end_s - shot.start_s >= step.teacher_s
    assert "7 steps take as long as in the teacher's recording." in after.level.lines
    foot = kit_sheet(after, write_script(after), ebb.supplies, 8).parts
    assert any("7 steps take as long" in line for part in foot for line in getattr(part, "lines", ()))
    assert not any("recording" in line for line in before.level.lines)


def test_moves_that_repeat_are_counted_though_only_the_first_is_timed() -> None:
    """Six like moves that are no repeat: one is taught, the rest are rounds, whatever the first took."""

    def made(seconds: float | None) -> Pattern:
        m = PatternBuilder("Six", Rows(rows=1, pegs=9)).colour("A", "slate", "#445566")
        for k in range(1, 7):
            m.place("A", f"A{k}", f"A{k + 1}", **({"taught_s": seconds} if seconds and k == 1 else {}))
        return m.pattern()

    plain, timed = (lesson_of(work(made(seconds))) for seconds in (None, 90.0))
    assert [step.rounds for step in timed.steps] == [step.rounds for step in plain.steps]
    (one,) = [step for step in timed.steps if step.is_timed]
    assert one.teacher_s == one.learner_s == 90.0


def test_a_step_worked_in_many_places_is_timed_where_it_is_shown_first() -> None:
    m = PatternBuilder("Wave", Rows(rows=1, pegs=9)).colour("A", "slate", "#445566")
    with m.motif("crest"):
        m.place("A", "A1", "A2", taught_s=50.0)
    m.use("crest")
    m.wind("A", "A5")
    m.use("crest", pegs=3)
    assert [step.is_timed for step in lesson_of(work(m.pattern())).steps if step.first] == [
        True,
        False,
        False,
    ]


def test_it_is_written_as_text_and_refused_where_it_cannot_be(kept: Pattern) -> None:
    assert read_pattern_text(write_pattern_text(kept).encode()).pattern == kept
    raw = msgspec.json.decode(write_pattern(kept))
    for wrong in (0, -1, 3601, "long"):
        raw["steps"][0] = {**raw["steps"][0], "taught_s": wrong}
        assert read_pattern(msgspec.json.encode(raw)).pattern is None


@pytest.mark.parametrize("language", LANGUAGES)
def test_it_is_said_in_every_language(kept: Pattern, language: Language) -> None:
    said = {"en": "7 steps take", "de": "7 Schritte dauern", "es": "7 pasos duran"}[language]
    assert any(line.startswith(said) for line in lesson_of(work(kept), language).level.lines)


def test_the_command_writes_the_pattern_with_the_pace(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "talk.txt").write_text(BY_HAND[0].text, "utf-8")
    new = tmp_path / "mine.json"
    command = ["listen", str(example_files()["ebb-line"]), str(tmp_path / "talk.txt"), "--pace", str(new)]
    for exit_code in (1, 2):  # the talk has a slip in it; what is there is not replaced
        with pytest.raises(SystemExit) as ended:
            main(command)
        assert ended.value.code == exit_code
    pattern = open_pattern(new).pattern
    assert pattern is not None
    assert sum(step.is_timed for step in lesson_of(work(pattern)).steps) == 7
    assert str(new) in capsys.readouterr().out
