"""A scratch narration by a speech program on this machine; without one the film is silent.

The program, espeak-ng or piper, runs without a shell or a network; it reads a sentence from its input and
writes a WAV. The teacher is meant to replace it with their own voice.
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

from pegwright.finding import RefusedError, phrase
from pegwright.lesson import ScriptLine

Sound = np.ndarray[Any, np.dtype[np.int16]]
HERTZ = 48_000
_FASTEST = 2.0
_PATIENCE_S = 60


class Voice(NamedTuple):
    """A speech program and, for piper, the file of its voice model."""

    program: str
    model: str = ""


def find_voice(model: Path | None = None) -> Voice | None:
    """Return the voice to use: piper if a voice model is given, else espeak-ng, else None.

    Raises:
        RefusedError: the model does not exist, or piper is not installed.
    """
    if model is not None:
        piper = shutil.which("piper")
        if not model.is_file() or piper is None:
            why = phrase("no-piper") if model.is_file() else phrase("no-voice-in", file=str(model))
            raise RefusedError(why)
        return Voice(piper, str(model))
    program = shutil.which("espeak-ng")
    return Voice(program) if program else None


def narrate(lines: Sequence[ScriptLine], length_s: float, language: str, voice: Voice) -> Sound:
    """Return the sound of a film: every line starts at its second and ends before the next one.

    A line that would take too long is spoken faster, at most twice as fast, and then cut off. One channel at
    48 kHz.

    Raises:
        OSError: the program cannot be run.
            RefusedError: the program fails, or gives no usable WAV.
    """
    sound = np.zeros(round(length_s * HERTZ), np.int16)
    for line in lines:
        room = line.end_s - line.start_s
        spoken = _speak(line.text, language, voice, 1.0)
        if len(spoken) > room * HERTZ:
            faster = min(_FASTEST, len(spoken) / (room * HERTZ) * 1.05)
            spoken = _speak(line.text, language, voice, faster)
        start = round(line.start_s * HERTZ)
        part = spoken[: min(round(room * HERTZ), len(sound) - start)]
        sound[start : start + len(part)] = part
    return sound


def _speak(text: str, language: str, voice: Voice, faster: float) -> Sound:
    if voice.model:
        command = [voice.program, "--model", voice.model, "--length_scale", f"{1 / faster:.3f}"]
        command += ["--output_file", "-"]
    else:
        command = [voice.program, "-v", language, "-s", str(round(150 * faster)), "--stdin", "--stdout"]
    said = subprocess.run(command, input=text.encode(), capture_output=True, timeout=_PATIENCE_S, check=False)
    if said.returncode:
        message = said.stderr.decode(errors="replace")[:200]
        raise RefusedError(phrase("voice-failed", program=Path(voice.program).name, told=message))
    return _samples(said.stdout)


def _samples(data: bytes) -> Sound:
    """Read a 16-bit WAV, whether or not it states its length, as one channel at 48 kHz."""
    try:
        with wave.open(io.BytesIO(data)) as read:
            hertz, channels, width = read.getframerate(), read.getnchannels(), read.getsampwidth()
            raw = read.readframes(len(data))
    except (wave.Error, EOFError) as error:
        raise RefusedError(phrase("voice-silent", reason=str(error))) from error
    if width != 2:
        raise RefusedError(phrase("voice-bits", bits=8 * width))
    samples = np.frombuffer(raw[: len(raw) // (2 * channels) * 2 * channels], "<i2").reshape(-1, channels)[
        :, 0
    ]
    if not len(samples):
        return np.zeros(0, np.int16)
    times = np.arange(round(len(samples) * HERTZ / hertz)) * hertz / HERTZ
    heard: Sound = np.interp(times, np.arange(len(samples)), samples).astype(np.int16)
    return heard
