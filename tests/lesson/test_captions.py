"""Captions keep the limits, say what is said, and are read back by independent parsers."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import pysubs2
import pytest
import webvtt
from hypothesis import given, settings, strategies as st

from pegwright.lesson import Caption, Lesson, Script, ScriptLine, caption_script, write_script
from pegwright.press import captions_srt, captions_vtt, chapters_text, chapters_vtt
from tests.lesson.pieces import buoys, dinghy, ebb, lesson, smack
from tests.press.test_svg import HOSTILE

PIECES = {"ebb": ebb(), "dinghy": dinghy(), "smack": smack(), "buoys": buoys(), "hostile": ebb(note=HOSTILE)}
piece = pytest.mark.parametrize("made", [lesson(p) for p in PIECES.values()], ids=PIECES)


def _plain(found: tuple[Caption, ...]) -> str:
    return " ".join(text for caption in found for text in caption.lines)


@piece
@pytest.mark.parametrize("wpm", [110, 130])
def test_captions_keep_the_published_limits(made: Lesson, wpm: int) -> None:
    """BBC Subtitle Guidelines 1.2.5: two lines of 37, 0.3 s a word, a gap of a second or none; 5/6 to 7 s."""
    found = caption_script(write_script(made, wpm))
    for caption in found:
        assert 1 <= len(caption.lines) <= 2
        assert all(0 < len(text) <= 37 for text in caption.lines)
        words = sum(len(text.split()) for text in caption.lines)
        assert 5 / 6 <= caption.end_s - caption.start_s <= 7.0 + 1e-6
        assert caption.end_s - caption.start_s >= 0.3 * words
    for a, b in pairwise(found):
        gap = b.start_s - a.end_s
        assert abs(gap) < 1e-9 or gap >= 1.0


@piece
def test_captions_say_what_is_said(made: Lesson) -> None:
    """Word for word, and no caption runs over the end of its sentence."""
    told = write_script(made)
    found = caption_script(told)
    assert _plain(found) == " ".join(line.text for line in told.lines)
    ends = {round(line.end_s, 6) for line in told.lines}
    assert ends <= {round(caption.end_s, 6) for caption in found}


@piece
def test_no_line_ends_on_a_word_that_clings_to_the_next(made: Lesson) -> None:
    """Articles stay with their nouns; where a break must fall elsewhere it is rare (under 1 in 50)."""
    found = caption_script(write_script(made))
    lines = [text for caption in found for text in caption.lines]
    bad = [text for text in lines if re.search(r"\b(a|an|the|of|to|from|with|in|on)$", text)]
    assert len(bad) * 50 <= len(lines), bad


@piece
def test_webvtt_is_read_back_by_an_independent_parser(made: Lesson, tmp_path: Path) -> None:
    """webvtt-py gives the same times and words."""
    found = caption_script(write_script(made))
    file = tmp_path / "captions.vtt"
    file.write_text(captions_vtt(found, "en"), encoding="utf-8")
    read = webvtt.read(str(file))
    assert len(read) == len(found)
    for cue, caption in zip(read, found, strict=True):
        assert cue.start_in_seconds == pytest.approx(int(caption.start_s + 0.0005), abs=1)
        assert _ms(cue.start) == round(caption.start_s * 1000)
        assert _ms(cue.end) == round(caption.end_s * 1000)
        assert _unescaped(cue.raw_text) == "\n".join(caption.lines)


def _ms(stamp: str) -> int:
    h, m, s, ms = map(int, re.fullmatch(r"(\d\d):(\d\d):(\d\d)\.(\d{3})", stamp).groups())  # type: ignore[union-attr]
    assert m < 60
    assert s < 60
    return ((h * 60 + m) * 60 + s) * 1000 + ms


def _unescaped(text: str) -> str:
    return text.replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")


@piece
def test_srt_is_read_back_by_an_independent_parser(made: Lesson) -> None:
    """pysubs2 gives the same times and words, and finds no tag in them."""
    found = caption_script(write_script(made))
    read = pysubs2.SSAFile.from_string(captions_srt(found), format_="srt")
    assert len(read) == len(found)
    for event, caption in zip(read, found, strict=True):
        assert (event.start, event.end) == (round(caption.start_s * 1000), round(caption.end_s * 1000))
        assert event.plaintext.replace("\u2060", "") == "\n".join(caption.lines)


@piece
def test_the_structure_of_webvtt_is_the_specifications(made: Lesson) -> None:
    """W3C WebVTT: header, blank line, unique ids, timing lines; no arrow, no bare `<` or `&` in a payload."""
    for text in (
        captions_vtt(caption_script(write_script(made)), "en"),
        chapters_vtt(write_script(made).chapters),
    ):
        head, *blocks = text.rstrip("\n").split("\n\n")
        assert head == "WEBVTT"
        cues = [block.split("\n") for block in blocks if not block.startswith("NOTE")]
        assert [cue[0] for cue in cues] == [str(k) for k in range(1, len(cues) + 1)]
        stamp = r"\d{2,}:[0-5]\d:[0-5]\d\.\d{3}"
        for cue in cues:
            assert re.fullmatch(f"{stamp} --> {stamp}", cue[1])
            assert cue[2:]
            for payload in cue[2:]:
                assert "-->" not in payload
                assert not re.search(r"<|&(?!(?:amp|lt|gt);)", payload)


@piece
def test_chapters_agree_with_the_list_and_with_the_lesson(made: Lesson) -> None:
    """The same titles at the same whole seconds in both forms; consecutive and never overlapping."""
    told = write_script(made)
    cues = re.findall(r"^(\S+) --> (\S+)\n(.+)$", chapters_vtt(told.chapters), flags=re.M)
    lines = chapters_text(told.chapters).splitlines()
    assert [title for _, _, title in cues] == [line.partition(" ")[2] for line in lines]
    for (start, _, _), line in zip(cues, lines, strict=True):
        minutes, seconds = map(int, line.split(" ")[0].split(":"))
        assert _ms(start) // 1000 == 60 * minutes + seconds
    assert all(a[1] == b[0] for a, b in pairwise(cues))
    assert lines[0].startswith("0:00 ")


LINE_TEXT = st.lists(
    st.text(st.characters(exclude_categories=["Cc", "Cs", "Z"]), min_size=1, max_size=90), min_size=1
)


@settings(max_examples=60, deadline=None)
@given(LINE_TEXT, st.sampled_from(["en", "es", "de", "xx"]))
def test_any_words_at_all_are_cut_within_the_lines(words: list[str], language: str) -> None:
    """Whatever is said: nothing is lost, no line is too long, time runs forward."""
    text = " ".join(words)
    line = ScriptLine(start_s=2.0, end_s=2.0 + max(1.0, 0.5 * len(words)), text=text)
    told = Script(title="", language=language, wpm=120, lines=(line,), shots=(), chapters=())
    found = caption_script(told)
    assert _plain(found).replace(" ", "") == "".join(text.split())
    assert all(len(t) <= 37 for c in found for t in c.lines)
    assert all(len(c.lines) <= 2 for c in found)
    assert all(c.start_s < c.end_s for c in found)
    assert found[0].start_s == 2.0
    assert found[-1].end_s == line.end_s
    assert all(a.end_s == b.start_s for a, b in pairwise(found))


def test_hours_are_written_where_the_film_has_them() -> None:
    """Past an hour the list shows hours throughout."""
    made = lesson(ebb())
    told = write_script(made)
    late = [type(c)(start_s=c.start_s * 20, end_s=c.end_s * 20, title=c.title) for c in told.chapters]
    assert chapters_text(late).splitlines()[0].startswith("0:00:00 ")
    assert "01:" in chapters_vtt(late)
