"""Garbled captions are mended where the lesson tells the word; what is clearly said stays."""

from __future__ import annotations

from pathlib import Path

import pysubs2
import pytest
import webvtt
from hypothesis import given, settings, strategies as st

from pegwright.lesson import Lesson, write_script
from pegwright.listening import Cue, compare_recording, read_captions
from pegwright.workshop import example_files, lesson_of, open_pattern, recording_files, work
from testing.listening.recordings import load_recordings
from testing.listening.scoring import score_mends


@pytest.fixture(scope="module")
def lesson() -> Lesson:
    pattern = open_pattern(example_files()["ebb-line"]).pattern
    assert pattern is not None
    return lesson_of(work(pattern))


def said(lesson: Lesson, before: str, after: str) -> list[Cue]:
    lines = write_script(lesson).lines
    assert any(before in one.text for one in lines)
    return [Cue(one.start_s, one.end_s, one.text.replace(before, after)) for one in lines]


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("of peg A25, inside", "of pen A25, inside"),
        ("Push the hook down the", "Push the book down the"),
        ("open side of peg A25,", "open side of peg 825,"),
        ("through all 3 of them", "through all free of them"),
        ("through all 3 of them", "through all many of them"),
    ],
)
def test_a_garbled_word_is_put_right(lesson: Lesson, before: str, after: str) -> None:
    told = compare_recording(lesson, said(lesson, before, after))
    assert [one.text for one in told.captions] == [one.text for one in said(lesson, before, before)]
    assert {one.before for one in told.corrections} == {
        word.rstrip(",") for word in set(after.split()) - set(before.split())
    }
    assert all(0 < one.confidence <= 1 for one in told.corrections)


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("all 3 of them", "all 4 of them"),
        ("Catch the lowest loop (foam", "Catch the top loop (foam"),
        ("Catch the lowest loop (foam", "Catch the same loop (foam"),
        ("Catch the lowest loop (foam", "Get hold of the lowest loop (foam"),
        ("Close it.", "Close it. The ferry hoots at noon."),
    ],
)
def test_what_is_clearly_said_stays(lesson: Lesson, before: str, after: str) -> None:
    cues = said(lesson, before, after)
    told = compare_recording(lesson, cues)
    assert list(told.captions) == cues
    assert told.corrections == ()


def test_steps_follow_one_another_and_silences_can_be_cut(lesson: Lesson) -> None:
    script = write_script(lesson)
    cues = said(lesson, "Place the bands.", "Place the bands.")
    told = compare_recording(lesson, cues)
    numbers = sorted({line.step for line in script.lines} - {0})
    assert [one.number for one in told.steps] == numbers
    for one in told.steps:
        true_s = min(line.start_s for line in script.lines if line.step == one.number)
        assert one.start_s == pytest.approx(true_s, abs=0.5)
        assert one.start_s < one.end_s
    late = [Cue(c.start_s + 20 * (c.start_s > 200), c.end_s + 20 * (c.start_s > 200), c.text) for c in cues]
    [cut] = [one for one in compare_recording(lesson, late).trims if one.end_s - one.start_s > 15]
    assert cut.why == "silence"


def test_a_recognisers_captions_are_mended() -> None:
    """Of those that may be looked at; the bench measures the others."""
    score = score_mends(one for one in load_recordings(kept=False)[:6] if one[0].level < 2)
    assert score.put_right >= 0.4 * score.garbled
    assert score.made_wrong <= 0.01 * score.right


def test_the_files_are_read_by_others(lesson: Lesson, tmp_path: Path) -> None:
    told = compare_recording(lesson, said(lesson, "of peg A25", "of pen A25"))
    files = recording_files(lesson, told)
    (tmp_path / "a.vtt").write_bytes(files["captions.vtt"])
    texts = [one.text for one in told.captions]
    assert [one.text for one in webvtt.read(str(tmp_path / "a.vtt"))] == texts
    others = pysubs2.SSAFile.from_string(files["captions.srt"].decode(), format_="srt")
    assert [one.plaintext for one in others] == texts
    assert [one.text for one in read_captions(files["captions.vtt"]).cues] == texts


@settings(max_examples=60)
@given(
    data=st.one_of(st.binary(max_size=300), st.text(alphabet="0123456789:.->[] \n\rWEBVTNOSab", max_size=200))
)
def test_any_bytes_at_all_are_read(data: bytes | str) -> None:
    told = read_captions(data if isinstance(data, bytes) else data.encode())
    assert told.cues or told.findings
    assert all(cue.start_s < cue.end_s and cue.text for cue in told.cues)
    assert [cue.start_s for cue in told.cues] == sorted(cue.start_s for cue in told.cues)
    assert len(told.findings) <= 150


def test_of_many_faults_the_first_are_told() -> None:
    told = read_captions(
        b"WEBVTT\n\n" + b"0:xx --> 0:yy\nlost\n\n" * 500 + b"00:01.000 --> 00:02.000\nkept\n"
    )
    assert [cue.text for cue in told.cues] == ["kept"]
    assert len(told.findings) == 21
    assert told.findings[-1].facts["count"] == 480
