"""A scratch narration by a voice that is installed on this machine; without one the film is silent.

The voice is a program of its own, espeak-ng or piper, run without a shell and without a network; it gets the
sentence on its input and gives a WAV. It is meant to be replaced by the teacher's own.
"""

from __future__ import annotations

import io
import shutil
import subprocess
import wave
from collections.abc import Sequence
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np

from pegwright.lesson.script import Line

Sound = np.ndarray[Any, np.dtype[np.int16]]
HERTZ = 48_000
_FASTEST = 2.0
_PATIENCE_S = 60


class Voice(NamedTuple):
    """A program that speaks, and for piper the file of its voice."""

    program: str
    model: str = ""


def find_voice(model: Path | None = None) -> Voice | None:
    """Return the voice of this machine: piper where the file of a voice is given, else espeak-ng, or none.

    Raises:
        ValueError: there is no such file, or piper is not installed.
    """
    if model is not None:
        piper = shutil.which("piper")
        if not model.is_file() or piper is None:
            what = "piper is not installed" if model.is_file() else f"there is no voice in {model}"
            raise ValueError(f"{what}; leave the voice out, or install one")
        return Voice(piper, str(model))
    program = shutil.which("espeak-ng")
    return Voice(program) if program else None


def narrate(lines: Sequence[Line], length_s: float, language: str, voice: Voice) -> Sound:
    """Return the sound of a film: every line spoken from its second on, over before the next one begins.

    A line that would be too long is spoken faster, up to twice as fast. One channel, 48,000 samples a second.

    Raises:
        OSError, ValueError: the voice fails.
    """
    sound = np.zeros(round(length_s * HERTZ), np.int16)
    for line in lines:
        room = line.end_s - line.start_s
        spoken = _spoken(line.text, language, voice, 1.0)
        if len(spoken) > room * HERTZ:
            faster = min(_FASTEST, len(spoken) / (room * HERTZ) * 1.05)
            spoken = _spoken(line.text, language, voice, faster)
        start = round(line.start_s * HERTZ)
        part = spoken[: min(round(room * HERTZ), len(sound) - start)]
        sound[start : start + len(part)] = part
    return sound


def _spoken(text: str, language: str, voice: Voice, faster: float) -> Sound:
    if voice.model:
        command = [voice.program, "--model", voice.model, "--length_scale", f"{1 / faster:.3f}"]
        command += ["--output_file", "-"]
    else:
        command = [voice.program, "-v", language, "-s", str(round(150 * faster)), "--stdin", "--stdout"]
    said = subprocess.run(command, input=text.encode(), capture_output=True, timeout=_PATIENCE_S, check=False)
    if said.returncode:
        raise ValueError(
            f"the voice {Path(voice.program).name} failed: {said.stderr.decode(errors='replace')[:200]}"
        )
    return _samples(said.stdout)


def _samples(data: bytes) -> Sound:
    """Read a WAV of 16 bits, its length told or not, as one channel of 48,000 samples a second."""
    try:
        with wave.open(io.BytesIO(data)) as read:
            hertz, channels, width = read.getframerate(), read.getnchannels(), read.getsampwidth()
            raw = read.readframes(len(data))
    except (wave.Error, EOFError) as error:
        raise ValueError(f"the voice gave no sound: {error}") from error
    if width != 2:
        raise ValueError(f"the voice gave sound of {8 * width} bits; 16 were expected")
    samples = np.frombuffer(raw[: len(raw) // (2 * channels) * 2 * channels], "<i2").reshape(-1, channels)[
        :, 0
    ]
    if not len(samples):
        return np.zeros(0, np.int16)
    times = np.arange(round(len(samples) * HERTZ / hertz)) * hertz / HERTZ
    heard: Sound = np.interp(times, np.arange(len(samples)), samples).astype(np.int16)
    return heard
