"""The stored recordings: captions that a recogniser wrote, and what was truly said.

**A third is kept apart**: those whose number divides by three are only measured, never looked at.
"""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

import msgspec

from pegwright.lesson import Script, write_script
from pegwright.listening import Cue, read_captions
from pegwright.workshop import example_files, lesson_of, open_pattern, work
from testing.listening.talk import Planted, Talk, give_talk

FOLDER = Path(__file__).parent / "captions"


class Spoken(msgspec.Struct, array_like=True, frozen=True):
    """An utterance with its true times in s; `line` is that of the script, -1 for none."""

    start_s: float
    end_s: float
    text: str
    line: int
    music: bool = False


class Recording(msgspec.Struct, frozen=True):
    """What was truly said in a recording, how noisy it is (0 to 2), and what is wrong in it."""

    piece: str
    seed: int
    level: int
    spoken: tuple[Spoken, ...]
    planted: tuple[Planted, ...]

    @property
    def kept(self) -> bool:
        """Say whether it is only measured."""
        return self.seed % 3 == 0


def level_of(seed: int) -> int:
    """Return how noisy a recording is, 0 to 2, the same mix in the kept third and the rest."""
    return seed // 3 % 3


def piece_of(seed: int) -> str:
    """Return the piece that is taught."""
    names = sorted(example_files())
    return names[seed % len(names)]


@lru_cache(maxsize=32)
def script_of(piece: str) -> Script:
    """Return the script of a built-in piece as it was when the recordings were made.

    It is stored beside them: should a lesson's words change, the recordings stay true.
    """
    stored = FOLDER / f"{piece.replace('/', '-')}.script"
    if stored.exists():
        return msgspec.json.decode(stored.read_bytes(), type=Script)
    pattern = open_pattern(example_files()[piece]).pattern
    assert pattern is not None
    script = msgspec.structs.replace(write_script(lesson_of(work(pattern), "en")), shots=())
    stored.write_bytes(msgspec.json.encode(script) + b"\n")
    return script


def talk_of(seed: int) -> Talk:
    """Return the talk of a number."""
    return give_talk(piece_of(seed), script_of(piece_of(seed)), seed)


def load_recordings(kept: bool) -> list[tuple[Recording, tuple[Cue, ...]]]:
    """Return the stored recordings, those that are only measured or those that may be looked at."""
    found = []
    for path in sorted(FOLDER.glob("*.json")):
        truth = msgspec.json.decode(path.read_bytes(), type=Recording)
        if truth.kept == kept:
            found.append((truth, read_captions(path.with_suffix(".vtt").read_bytes()).cues))
    return found
