"""The film, read by others: MediaInfo for what is in the file, another ffmpeg for words and images."""

from __future__ import annotations

import contextlib
import hashlib
import io
import os
import shutil
import stat
import subprocess
import sys
from pathlib import Path

import imageio_ffmpeg
import msgspec
import numpy as np
import pytest
import webvtt
from PIL import Image
from pymediainfo import MediaInfo

from pegwright.finding import RefusedError
from pegwright.lesson import Cut, Storyboard, clip_storyboard, draw_storyboard, excerpt, write_script
from pegwright.press import film_storyboard, find_voice, narrate
from pegwright.press.film.frames import FramePainter
from pegwright.press.film.voice import HERTZ, Voice
from pegwright.press.paint.inks import COLOUR
from tests.lesson.pieces import ebb, lesson, smack, work
from tests.press.test_svg import HOSTILE

FFMPEG = imageio_ffmpeg.get_ffmpeg_exe()
GROUND = tuple(int(COLOUR.ground[i : i + 2], 16) for i in (1, 3, 5))


def board(pattern: object = None, **options: object) -> Storyboard:
    piece = pattern or ebb(title="Ebb <line> & co")
    made = lesson(piece, **options)  # type: ignore[arg-type]
    return draw_storyboard(piece, work(piece), made, write_script(made))  # type: ignore[arg-type]


BOARD = board()
SHORT = excerpt(BOARD)
BOTH = clip_storyboard(BOARD, BOARD.chapters[1].end_s - 3, BOARD.chapters[1].end_s + 3)


def read(data: bytes, tmp_path: Path, name: str) -> tuple[MediaInfo, Path]:
    file = tmp_path / name
    file.write_bytes(data)
    return MediaInfo.parse(file), file


def chapters(info: MediaInfo) -> list[str]:
    """Titles of the chapters; MediaInfo names them by their time."""
    menu = info.menu_tracks[0].to_data()
    return [text for name, text in sorted(menu.items()) if name[:2].isdigit() and name[2:3] == "_"]


@pytest.mark.parametrize(
    ("codec", "name", "format_", "coded"),
    [
        ("vp9", "film.webm", "WebM", "VP9"),
        ("av1", "film.webm", "WebM", "AV1"),
        ("h264", "film.mp4", "MPEG-4", "AVC"),
    ],
)
def test_what_is_in_the_file(tmp_path: Path, codec: str, name: str, format_: str, coded: str) -> None:
    """Size, rate, length, chapters, a track of words in its language; title and names letter by letter."""
    told: list[tuple[int, int]] = []
    data = film_storyboard(
        BOTH, tall_px=240, codec=codec, progress=lambda _, done, of: told.append((done, of))
    )  # type: ignore[arg-type]
    info, file = read(data, tmp_path, name)
    (general,), (video,), (text,) = info.general_tracks, info.video_tracks, info.text_tracks
    assert (general.format, general.title) == (format_, "Ebb <line> & co")
    assert (video.format, video.width, video.height) == (coded, 426, 240)
    assert float(video.frame_rate) == 25.0
    assert float(general.duration) == pytest.approx(6000, abs=41)
    assert chapters(info) == [c.title for c in BOTH.chapters]
    assert len(BOTH.chapters) == 2
    assert text.language == "en"
    assert not info.audio_tracks
    assert told[0] == (0, 150)
    assert [done for done, _ in told] == sorted(done for done, _ in told)
    assert captions(file) == [(c.start_s, c.end_s, list(c.lines)) for c in BOTH.captions]


@pytest.mark.parametrize("codec", ["vp9", "av1", "h264"])
def test_a_film_is_the_same_to_the_byte(codec: str) -> None:
    """Another process, whose hashes begin elsewhere, makes the same file."""
    code = (
        "import hashlib; from tests.press.test_film import SHORT, film_storyboard;"
        f"print(hashlib.sha256(film_storyboard(SHORT, tall_px=180, codec={codec!r})).hexdigest())"
    )
    here = hashlib.sha256(film_storyboard(SHORT, tall_px=180, codec=codec)).hexdigest()  # type: ignore[arg-type]
    for seed in ("1", "2"):
        there = subprocess.run(
            [sys.executable, "-c", code],
            check=False,
            capture_output=True,
            text=True,
            cwd=Path(__file__).parents[2],
            env={**os.environ, "PYTHONHASHSEED": seed},
        )
        assert (there.returncode, there.stdout.strip()) == (0, here), there.stderr


@pytest.mark.skipif(not hasattr(os, "sched_getscheduler"), reason="no such policies here")
@pytest.mark.parametrize("codec", ["vp9", "av1", "h264"])
def test_a_coder_takes_no_priority(codec: str) -> None:
    """Run by root, the AV1 coder made this process, and all it started, stop the rest of the machine."""
    seen: set[int] = set()

    def look(*_: object) -> None:
        for thread in Path("/proc/self/task").iterdir():
            with contextlib.suppress(OSError):  # it has ended
                seen.add(os.sched_getscheduler(int(thread.name)))

    before = os.sched_getscheduler(0)
    film_storyboard(SHORT, tall_px=180, codec=codec, progress=look)  # type: ignore[arg-type]
    look()
    assert seen == {before}
    child = [sys.executable, "-c", "import os; print(os.sched_getscheduler(0))"]
    assert int(subprocess.check_output(child)) == before


def captions(file: Path) -> list[tuple[float, float, list[str]]]:
    """Read a film's words with another build of ffmpeg and a reader of WebVTT."""
    command = [FFMPEG, "-loglevel", "error", "-i", str(file), "-map", "0:s", "-f", "webvtt", "-"]
    cues = webvtt.from_buffer(
        io.StringIO(subprocess.run(command, capture_output=True, check=True, text=True).stdout)
    )

    def seconds(clock: str) -> object:
        hours, minutes, rest = clock.split(":")
        return pytest.approx(3600 * int(hours) + 60 * int(minutes) + float(rest), abs=0.002)

    return [(seconds(cue.start), seconds(cue.end), cue.text.split("\n")) for cue in cues]


def test_an_excerpt_is_twenty_seconds_long_and_moves(tmp_path: Path) -> None:
    """Images read back by ffmpeg: 500 of them, the loom in the middle, the lowest part free for captions."""
    info, file = read(film_storyboard(SHORT, tall_px=240), tmp_path, "film.webm")
    assert float(info.general_tracks[0].duration) == pytest.approx(20_000, abs=41)
    command = [FFMPEG, "-loglevel", "error", "-i", str(file), "-f", "rawvideo", "-pix_fmt", "rgb24", "-"]
    raw = subprocess.run(command, capture_output=True, check=True).stdout
    images = np.frombuffer(raw, np.uint8).reshape(-1, 240, 426, 3).astype(int)
    assert len(images) == 500
    far = np.abs(images - np.array(GROUND)).max(axis=3) > 40
    assert not far[:, 201:].any(), "nothing where captions stand"
    assert not far[:, :10].any() and not far[:, :, :19].any() and not far[:, :, -19:].any(), "title safe"  # noqa: PT018
    assert (far.sum(axis=(1, 2)) > 500).all(), "something is always shown"
    steps = np.abs(np.diff(images[::5], axis=0)).max(axis=(1, 2, 3)) > 60
    assert steps.sum() > 10


def test_a_frame_is_what_the_painter_painted(tmp_path: Path) -> None:
    """The coded image, decoded by another, is the painted one but for the coder's loss; BT.709."""
    data = film_storyboard(SHORT, tall_px=360, codec="h264")
    info, file = read(data, tmp_path, "film.mp4")
    assert info.video_tracks[0].matrix_coefficients == "BT.709"
    painter = FramePainter(SHORT, 360)
    for second in (1.0, 9.0):
        command = [FFMPEG, "-loglevel", "error", "-ss", str(second), "-i", str(file), "-frames:v", "1",
                   "-vf", "scale=in_color_matrix=bt709", "-f", "image2", "-c:v", "png", "-"]  # fmt: skip
        shown = Image.open(io.BytesIO(subprocess.run(command, capture_output=True, check=True).stdout))
        painted = painter.frame(second)[:, :, :3].astype(int)
        apart = np.abs(np.asarray(shown.convert("RGB")).astype(int) - painted)
        assert apart.mean() < 3.0


def test_what_stands_still_is_painted_once() -> None:
    """Within a cut that does not move the very same frame is given again; the next cut's is another."""
    still = next(c for c in BOARD.cuts if c.motion is None and c.pictures)
    painter = FramePainter(BOARD, 180)
    one, two = (painter.frame(t) for t in (still.start_s, still.end_s - 0.04))
    assert one is two
    assert painter.frame(still.end_s) is not one


def test_frames_do_not_depend_on_what_was_painted_before() -> None:
    """Asked for one second alone, or for all in order: the same frame."""
    seconds = np.arange(0, BOTH.length_s, 0.52)
    inorder = FramePainter(BOTH, 180)
    for second in seconds:
        assert np.array_equal(inorder.frame(second), FramePainter(BOTH, 180).frame(second))


@pytest.mark.parametrize("tall", [100, 721, 4320])
def test_a_height_no_film_has_is_refused(tall: int) -> None:
    with pytest.raises(RefusedError, match=str(tall)):
        film_storyboard(BOTH, tall_px=tall)


def test_a_film_in_another_language_and_of_another_craft() -> None:
    """Lifted loops, German words; the words in the track are the captions' own."""
    german = excerpt(board(smack(), language="de"))
    assert german.captions
    data = film_storyboard(german, tall_px=180)
    assert german.captions[0].lines[0].encode() in data


# --- narration ------------------------------------------------------------------------------------------

SPEAKER = f"""#!{sys.executable}
import struct, sys, wave
words = sys.stdin.read().split()
hertz = 22050
seconds = 0.3 * len(words) * 150 / int(sys.argv[sys.argv.index("-s") + 1])
with wave.open(sys.stdout.buffer, "wb") as out:
    out.setnchannels(1); out.setsampwidth(2); out.setframerate(hertz)
    out.writeframes(struct.pack("<h", 9000) * int(seconds * hertz))
"""


@pytest.fixture
def speaker(tmp_path: Path) -> Voice:
    """A program that says every word for 0.3 s at its usual speed."""
    file = tmp_path / "speaker"
    file.write_text(SPEAKER)
    file.chmod(file.stat().st_mode | stat.S_IXUSR)
    return Voice(str(file))


def test_the_narration_is_heard_when_it_is_said(speaker: Voice, tmp_path: Path) -> None:
    """Sound within every line, silence after it where there is room; one track of the film's length."""
    sound = narrate(BOTH.lines, BOTH.length_s, "en", speaker)
    for line in BOTH.lines:
        said = sound[round(line.start_s * HERTZ) : round(line.end_s * HERTZ)]
        assert np.abs(said[: HERTZ // 10]).max() == 9000
    spoken = sum(line.end_s - line.start_s for line in BOTH.lines)
    assert 0 < np.count_nonzero(sound) <= spoken * HERTZ + len(BOTH.lines)
    info, _ = read(film_storyboard(BOTH, tall_px=180, voice=sound), tmp_path, "film.webm")
    assert info.audio_tracks[0].format == "Opus"
    assert float(info.general_tracks[0].duration) == pytest.approx(6000, abs=60)
    info, _ = read(film_storyboard(BOTH, tall_px=180, codec="h264", voice=sound), tmp_path, "film.mp4")
    assert info.audio_tracks[0].format == "AAC"


def test_a_voice_that_fails_says_so(tmp_path: Path) -> None:
    file = tmp_path / "mute"
    file.write_text(f"#!{sys.executable}\nimport sys\nsys.exit('no voice today')\n")
    file.chmod(0o755)
    with pytest.raises(RefusedError, match="no voice today"):
        narrate(BOTH.lines, BOTH.length_s, "en", Voice(str(file)))
    with pytest.raises(RefusedError, match=r"missing\.onnx"):
        find_voice(tmp_path / "missing.onnx")


@pytest.mark.skipif(shutil.which("espeak-ng") is None, reason="espeak-ng is not installed")
@pytest.mark.parametrize("language", ["en", "es", "de"])
def test_the_voice_of_this_machine_speaks_every_language(language: str) -> None:
    voice = find_voice()
    assert voice is not None
    short = excerpt(board(language=language), 6.0)
    sound = narrate(short.lines, short.length_s, language, voice)
    assert np.abs(sound).max() > 1000


def test_a_users_words_are_painted_not_obeyed(tmp_path: Path) -> None:
    """Markup, formulas, marks of direction and emoji in title, colour and note: a film all the same."""
    nasty = board(ebb(title=HOSTILE, colour=HOSTILE[:50], note=HOSTILE))
    first = clip_storyboard(nasty, 0.0, 3.0)
    info, file = read(film_storyboard(first, tall_px=180), tmp_path, "film.webm")
    assert "<script>alert(1)</script>" in info.general_tracks[0].title
    assert "\u202e" not in info.general_tracks[0].title
    said = " ".join(" ".join(lines) for _, _, lines in captions(file))
    assert "\u202e" not in said
    step = next(c for c in nasty.cuts if c.number and c.motion is None and c.pictures)
    assert FramePainter(nasty, 180).frame(step.start_s).shape == (180, 320, 4)


def test_right_and_wrong_are_told_apart_by_a_mark_and_a_word() -> None:
    """Side by side: the wrong one has a cross in the accent, the right one none; both have a title."""
    shown = next(c for c in BOARD.cuts if c.pictures and c.number)
    pair = tuple(msgspec.structs.replace(shown.pictures[0], title=title) for title in ("Right", "Wrong"))
    cut = Cut(start_s=0.0, end_s=1.0, heading="Step 9", pictures=pair, sound=(True, False))
    frame = FramePainter(msgspec.structs.replace(BOARD, cuts=(cut,)), 1080).frame(0.0)[:, :, :3].astype(int)
    accent = np.array([int(COLOUR.accent[i : i + 2], 16) for i in (1, 3, 5)])
    titles = frame[162:224]
    red = np.abs(titles - accent).max(axis=2) < 30
    dark = titles.max(axis=2) < 90
    middle = 96 + (1330 - 96) // 2
    assert not red[:, :middle].any()
    assert red[:, middle:].sum() > 100
    assert dark[:, 96:middle].sum() > 300
    assert dark[:, middle:1330].sum() > 300
