"""Captions of invented recordings are read and laid beside the script, the true times known."""

from __future__ import annotations

import json
import time
from itertools import pairwise
from pathlib import Path

import pysubs2
import pytest
import webvtt

from pegwright.cli import main
from pegwright.lesson import Chapter, Script, ScriptLine, caption_script, write_script
from pegwright.listening import find_chapters, read_captions
from pegwright.pattern import MAX_BYTES
from pegwright.press import captions_srt, captions_vtt
from pegwright.workshop import example_files, lesson_of, open_pattern, work

PIECES = sorted(example_files().items())
SAID = (
    ("Welcome to the Saturday workshop.", 0),
    ("Today we make the ebb line.", 0),
    ("Lay three blue bands from peg A1 to peg A2.", 10),
    ("Do the same once more with white.", 10),
    ("Hook the lower loop over its neighbour.", 20),
    ("Close the clip round both ends.", 20),
)


def _script() -> Script:
    lines = tuple(
        ScriptLine(start_s=5.0 * i, end_s=5.0 * i + 4, text=text) for i, (text, _) in enumerate(SAID)
    )
    chapters = tuple(
        Chapter(start_s=s, end_s=s + 10, title=t) for s, t in ((0.0, "Start"), (10.0, "Lay"), (20.0, "Work"))
    )
    return Script(title="Ebb line", language="en", wpm=120, lines=lines, shots=(), chapters=chapters)


EXACT = "\n".join(f"[0:{i * 7:02}] {text}" for i, (text, _) in enumerate(SAID))
RECORDINGS = {
    "exact": (EXACT, [0, 14, 28]),
    "garbled": (
        EXACT.replace("three blue", "tree blew").replace("Hook the lower", "Huck the lover"),
        [0, 14, 28],
    ),
    "skipped repeat": (EXACT.replace("[0:21] Do the same once more with white.\n", ""), [0, 14, 28]),
    "an aside": (
        EXACT.replace("[0:14]", "[0:13] Mind the ferry outside, it hoots at noon.\n[0:14]"),
        [0, 14, 28],
    ),
    "a wrong count": (EXACT.replace("three", "five"), [0, 14, 28]),
    "a wrong colour": (EXACT.replace("blue", "green"), [0, 14, 28]),
}


@pytest.mark.parametrize("name", RECORDINGS)
def test_chapters_begin_at_their_true_times(name: str) -> None:
    text, starts = RECORDINGS[name]
    told = read_captions(text.encode())
    chapters, findings = find_chapters(_script(), told.cues)
    assert [c.start_s for c in chapters] == pytest.approx(starts, abs=0.5)
    assert (*told.findings, *findings) == ()


def test_a_chapter_that_is_left_out_is_a_finding() -> None:
    chapters, findings = find_chapters(_script(), read_captions(EXACT.split("[0:28]")[0].encode()).cues)
    assert [c.title for c in chapters] == ["Start", "Lay"]
    assert [(f.code, f.facts["title"]) for f in findings] == [("chapter-not-heard", "Work")]


def test_of_a_recording_that_is_too_long_the_beginning_is_used() -> None:
    long = EXACT + "\n[0:40] " + "hush " * 12_001
    chapters, findings = find_chapters(_script(), read_captions(long.encode()).cues)
    assert [c.start_s for c in chapters] == pytest.approx([0, 14, 28], abs=0.5)
    assert [f.code for f in findings] == ["recording-too-long"]


@pytest.mark.parametrize(
    ("data", "codes", "count"),
    [
        (b"", ["captions-empty"], 0),
        (b"WEBVTT\n\n0:xx --> 0:05\nlost\n\n00:01.000 --> 00:02.000\nkept\n", ["cue-unreadable"], 1),
        (b"WEBVTT\n\n00:09.000 --> 00:07.000\nlost\n\n00:10.000 --> 00:12.000\nkept\n", ["cue-backward"], 1),
        (b"WEBVTT\n\n00:01.000 --> 00:05.000\na\n\n00:02.000 --> 00:06.000\nb\n", ["cues-overlap"], 2),
        ("[0:01] größer".encode("latin-1"), ["captions-bad-bytes"], 1),
        (b"x" * (MAX_BYTES + 1), ["captions-too-large"], 0),
        (b"\x00\x01\xff\xfe" * 50, ["captions-bad-bytes", "cue-unreadable", "captions-empty"], 0),
        (b"WEBVTT\n\n00:01.000 --> 00:05.000\na\n00:05.000 --> 00:0", ["cue-unreadable"], 1),
        (b"WEBVTT\r\r00:01.000 --> 00:05.000 align:left\r<v Ann>a</v>\r", [], 1),
        (
            b"2\n00:00:09,000 --> 00:00:12,000\nb\n\n1\n00:00:01,000 --> 00:00:05,000\na\n",
            ["cues-overlap"],
            2,
        ),
        (b"1\n00:00:01,0 --> 00:00:05,0\na\n2\n00:00:05,0 --> 00:00:09,0\nb\n", [], 2),
        (b"[0:01] a\nno time\n[0:xx] lost\n[0:09] b", ["cue-unreadable", "cue-unreadable"], 2),
    ],
)
def test_what_is_wrong_is_a_finding_and_the_rest_is_kept(data: bytes, codes: list[str], count: int) -> None:
    told = read_captions(data)
    assert [f.code for f in told.findings] == codes
    assert len(told.cues) == count


@pytest.mark.parametrize("encoding", ["utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"])
def test_captions_in_any_encoding_of_an_editor_keep_their_letters(encoding: str) -> None:
    text = "WEBVTT\n\n00:01.000 --> 00:05.000\nSpann ein Gummi, schaumweiß, über Stift A1.\n"
    told = read_captions(text.encode(encoding))
    assert [cue.text for cue in told.cues] == ["Spann ein Gummi, schaumweiß, über Stift A1."]
    assert [f.code for f in told.findings] == (["captions-bad-bytes"] if encoding == "cp1252" else [])


def test_one_bad_byte_does_not_garble_the_other_letters() -> None:
    data = "[0:01] schaumweiß\n[0:05] größer".encode() + b"\xff"
    assert [cue.text for cue in read_captions(data).cues] == ["schaumweiß", "größer\ufffd"]


def test_captions_that_roll_up_are_read_once() -> None:
    """Automatic captions often show each line a second time above the next; a speaker's repeat stays."""
    lines = [text for text, _ in SAID]
    shown = [lines[0], *(f"{a} {b}" for a, b in pairwise(lines))]
    rolling = "\n".join(f"[0:{7 * i:02}] {text}" for i, text in enumerate(shown))
    told = read_captions(rolling.encode())
    assert [cue.text for cue in told.cues] == lines
    twice = "\n".join(f"[0:{7 * i:02}] {text}" for i, text in enumerate([*lines, lines[-1]]))
    assert [cue.text for cue in read_captions(twice.encode()).cues] == [*lines, lines[-1]]


def test_four_megabytes_of_captions_are_read_in_seconds_faults_and_all() -> None:
    """Half of its cues end before they begin; a hundred hours and more of talk."""
    one = "00:{0:02}:{1:02}.000 --> 00:{0:02}:{2:02}.000\nHook the lower loop over its neighbour {3}.\n\n"
    cues = (one.format(k // 59 % 60, k % 59, k % 59 + (1 if k % 2 else -1), k) for k in range(45_000))
    data = ("WEBVTT\n\n" + "".join(cues)).encode()
    start = time.monotonic()
    told = read_captions(data)
    assert time.monotonic() - start < 20  # 1 s on a quiet machine
    assert len(told.cues) > 20_000
    assert {f.code for f in told.findings} == {"cue-backward", "cues-overlap", "more-of-the-same"}
    assert len(told.findings) < 1_000


@pytest.mark.parametrize("path", [p for _, p in PIECES], ids=[n for n, _ in PIECES])
def test_the_captions_of_a_demo_give_its_own_chapters(path: Path, tmp_path: Path) -> None:
    """What we read from WebVTT and SRT is what two other readers find there, too."""
    pattern = open_pattern(path).pattern
    assert pattern is not None
    script = write_script(lesson_of(work(pattern)))
    captions = caption_script(script)
    vtt, srt = captions_vtt(captions, "en"), captions_srt(captions)
    told = read_captions(vtt.encode())
    (tmp_path / "a.vtt").write_text(vtt, "utf-8")
    assert [c.start_s for c in told.cues] == pytest.approx(
        [c.start_in_seconds for c in webvtt.read(str(tmp_path / "a.vtt"))], abs=1.0
    )
    others = pysubs2.SSAFile.from_string(srt, format_="srt")
    again = read_captions(srt.encode())
    assert [round(c.start_s * 1000) for c in again.cues] == [e.start for e in others]
    for read in (told, again):
        chapters, findings = find_chapters(script, read.cues)
        assert (*read.findings, *findings) == ()
        assert [c.title for c in chapters] == [c.title for c in script.chapters]
        assert [c.start_s for c in chapters] == pytest.approx([c.start_s for c in script.chapters], abs=0.5)


def test_the_command_prints_the_chapters(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = PIECES[0][1]
    pattern = open_pattern(path).pattern
    assert pattern is not None
    script = write_script(lesson_of(work(pattern)))
    (tmp_path / "a.vtt").write_text(captions_vtt(caption_script(script), "en"), "utf-8")
    with pytest.raises(SystemExit) as ended:
        main(["listen", str(path), str(tmp_path / "a.vtt"), "--json"])
    assert ended.value.code == 0
    shown = json.loads(capsys.readouterr().out)
    assert [c["title"] for c in shown["chapters"]] == [c.title for c in script.chapters]
