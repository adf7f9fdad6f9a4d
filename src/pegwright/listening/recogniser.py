"""Sound and film become captions, where the recogniser of the extra `hear` is installed and a model is given.

The model is a folder on this machine in the form of CTranslate2. Nothing is fetched, and nothing leaves the
machine.
"""

from __future__ import annotations

from collections.abc import Callable
from importlib.util import find_spec
from pathlib import Path

from pegwright.finding import Location, finding
from pegwright.listening.captions import CaptionReading, Cue

SOUND_ENDINGS = (
    *(".mp3", ".m4a", ".wav", ".ogg", ".oga", ".opus", ".flac", ".aac"),
    *(".mp4", ".m4v", ".mov", ".webm", ".mkv", ".avi"),
)
"""What the names of sound and films end with, as recorders and cameras write them."""


def is_recording(path: Path) -> bool:
    """Say whether a file's name is that of sound or a film, and not of captions."""
    return path.suffix.lower() in SOUND_ENDINGS


def hear_recording(
    path: Path, model: Path | None, language: str, heard_until: Callable[[float], None] = lambda _s: None
) -> CaptionReading:
    """Return what is said in sound or a film, with times in s. Never raises on bad input.

    `heard_until` is called with the seconds heard so far.
    """
    place = Location(path=str(path))
    if find_spec("faster_whisper") is None:
        return CaptionReading((), (finding("recogniser-missing", place),))
    if model is None or not (model / "model.bin").is_file():
        return CaptionReading(
            (), (finding("model-missing", place, given=int(model is not None), folder=str(model)),)
        )
    from faster_whisper import WhisperModel  # noqa: PLC0415 - an extra

    try:
        listener = WhisperModel(str(model), device="cpu", compute_type="int8", local_files_only=True)
        if language != "en" and not listener.model.is_multilingual:
            return CaptionReading((), (finding("model-english-only", place, folder=str(model)),))
        segments, _ = listener.transcribe(
            str(path), language=language, beam_size=1, condition_on_previous_text=False
        )
        cues = []
        for one in segments:
            cues.append(Cue(one.start, one.end, one.text.strip()))
            heard_until(one.end)
    except (OSError, ValueError, RuntimeError, IndexError):  # whatever its decoder and its model say
        return CaptionReading((), (finding("sound-unreadable", place),))
    kept = tuple(cue for cue in cues if cue.text and cue.end_s > cue.start_s)
    return CaptionReading(kept, () if kept else (finding("captions-empty"),))
