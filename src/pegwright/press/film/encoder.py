"""Paint a storyboard and encode it as a film: VP9 or AV1 in WebM, H.264 in MP4, with captions and chapters.

A stretch in which nothing moves is painted once. Colours follow ITU-R BT.709.
"""

from __future__ import annotations

import io
import os
import struct
from collections.abc import Callable, Iterator
from fractions import Fraction
from typing import Any, cast

import av
import numpy as np
from av.packet import Packet

from pegwright.finding import RefusedError, phrase
from pegwright.lesson import Storyboard
from pegwright.press.film.captions import captions_vtt
from pegwright.press.film.codec import Codec
from pegwright.press.film.frames import FramePainter
from pegwright.press.film.priority import keep_priority

FPS = 25
os.environ.setdefault("SVT_LOG", "1")  # otherwise the AV1 encoder prints to the terminal
_CODECS: dict[Codec, tuple[str, str, dict[str, str]]] = {
    "vp9": (
        "webm",
        "libvpx-vp9",
        {"deadline": "realtime", "cpu-used": "8", "row-mt": "1", "tile-columns": "2", "crf": "30", "b": "0"},
    ),
    "av1": ("webm", "libsvtav1", {"preset": "11", "crf": "32"}),
    "h264": ("mp4", "libx264", {"preset": "veryfast", "crf": "20", "tune": "animation"}),
}
_GOP_S = 5
_MS = Fraction(1, 1000)
_LANGUAGES = {"en": "eng", "es": "spa", "de": "deu"}


def film_storyboard(
    board: Storyboard,
    *,
    tall_px: int = 720,
    codec: Codec = "vp9",
    voice: np.ndarray[Any, np.dtype[np.int16]] | None = None,
    voice_hz: int = 48_000,
    progress: Callable[[str, int, int], None] = lambda *_: None,
) -> bytes:
    """Return the film of a storyboard: 16:9, `tall_px` pixels high, 25 frames a second.

    `voice` is one channel of sound, starting with the film. `progress` gets the frames done and their number.

    Raises:
        RefusedError: the height is odd, under 180 or over 2160.
    """
    if tall_px % 2 or not 180 <= tall_px <= 2160:
        raise RefusedError(phrase("film-height", tall_px=tall_px))
    kind, name, options = _CODECS[codec]
    file = io.BytesIO()
    painter = FramePainter(board, tall_px)
    # Without this flag the muxer writes a random identifier, and no two films are byte-identical.
    with cast(Any, av.open(file, "w", format=kind, options={"fflags": "+bitexact"})) as out:
        picture: Any = out.add_stream(name, rate=FPS, options=options | {"g": str(FPS * _GOP_S)})
        picture.width, picture.height, picture.pix_fmt = painter.width, tall_px, "yuv420p"
        picture.codec_context.thread_count = 2
        for what in ("colorspace", "color_primaries", "color_trc"):
            setattr(picture.codec_context, what, 1)  # BT.709
        picture.codec_context.color_range = 1
        with keep_priority():
            picture.codec_context.open()
        sound = _add_sound(out, kind, voice_hz) if voice is not None else None
        stream, cues = _add_captions(out, kind, board)
        _add_metadata(out, board)
        frames = round(board.length_s * FPS)
        for number, image in enumerate(_frame_images(painter, frames)):
            if not number % FPS:
                progress("painting the film", number, frames)
            while cues and cues[0].pts <= number * 1000 / FPS:
                cue = cues.pop(0)
                cue.stream = stream
                out.mux(cue)
            image.pts, image.time_base = number, Fraction(1, FPS)
            out.mux(picture.encode(image))
            if sound is not None and voice is not None:
                out.mux(_encode_sound(sound, voice, voice_hz, number))
        out.mux(picture.encode())
        if sound is not None:
            out.mux(sound.encode())
    return file.getvalue()


def _frame_images(painter: FramePainter, frames: int) -> Iterator[av.VideoFrame]:
    """Yield an image for every frame: the same object while nothing changes."""
    last, image = None, None
    for number in range(frames):
        pixels = painter.frame(number / FPS)
        if image is None or pixels is not last:
            last = pixels
            whole = av.VideoFrame.from_ndarray(pixels, format="rgba")
            image = whole.reformat(format="yuv420p", dst_colorspace="ITU709", dst_color_range="MPEG")
        yield image


def _add_captions(out: Any, kind: str, board: Storyboard) -> tuple[Any, list[Any]]:
    """Open a track of captions and return it with its packets: WebVTT, or timed text in MP4."""
    if not board.captions:
        return None, []
    if kind == "webm":
        text = captions_vtt(board.captions, board.language).encode()
        with cast(Any, av.open(io.BytesIO(text), format="webvtt")) as read:
            stream = out.add_stream_from_template(read.streams[0])
            packets: list[Any] = [packet for packet in read.demux() if packet.size]
    else:
        stream = out.add_mux_stream("mov_text")
        packets = []
        for caption in board.captions:
            data = "\n".join(caption.lines).encode()
            packet = Packet(struct.pack(">H", len(data)) + data)
            packet.time_base = _MS
            packet.pts = packet.dts = round(caption.start_s * 1000)
            packet.duration = round((caption.end_s - caption.start_s) * 1000)
            packets.append(packet)
    stream.metadata["language"] = _LANGUAGES.get(board.language, "und")
    return stream, packets


def _add_metadata(out: Any, board: Storyboard) -> None:
    out.metadata["title"] = board.title
    if board.designer:
        out.metadata["artist"] = board.designer
    out.set_chapters(
        [
            {
                "id": i,
                "start": round(chapter.start_s * 1000),
                "end": round(chapter.end_s * 1000),
                "time_base": _MS,
                "metadata": {"title": chapter.title},
            }
            for i, chapter in enumerate(board.chapters, start=1)
        ]
    )


def _add_sound(out: Any, kind: str, hertz: int) -> Any:
    stream = out.add_stream("libopus" if kind == "webm" else "aac", rate=hertz)
    stream.layout = "mono"
    return stream


def _encode_sound(stream: Any, voice: np.ndarray[Any, np.dtype[np.int16]], hertz: int, number: int) -> Any:
    """Encode the sound of one frame; after the voice has ended, that is silence."""
    count = hertz // FPS
    part = voice[number * count : (number + 1) * count]
    padded = np.zeros((1, count), np.int16)
    padded[0, : len(part)] = part
    heard = av.AudioFrame.from_ndarray(padded, format="s16", layout="mono")
    heard.sample_rate, heard.pts, heard.time_base = hertz, number * count, Fraction(1, hertz)
    return stream.encode(heard)
