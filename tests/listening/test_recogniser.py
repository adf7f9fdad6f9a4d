"""Sound and films are heard where a recogniser is installed; else a finding says how to get captions."""

from __future__ import annotations

import importlib.machinery
import json
import sys
import types
from collections.abc import Iterator
from pathlib import Path
from typing import Any, ClassVar

import pytest

from pegwright.cli import main
from pegwright.listening import Cue, hear_recording, is_recording, read_captions
from pegwright.workshop import example_files
from testing.listening.by_hand import BY_HAND

EBB = str(example_files()["ebb-line"])


@pytest.fixture
def talk(tmp_path: Path) -> Path:
    path = tmp_path / "talk.wav"
    path.write_bytes(b"RIFF")
    return path


@pytest.fixture
def model(tmp_path: Path) -> Path:
    (tmp_path / "model").mkdir()
    (tmp_path / "model" / "model.bin").touch()
    return tmp_path / "model"


class _Listener:
    """Stands in for the recogniser's own class, with the same arguments; it hears the first written talk."""

    opened: ClassVar[list[dict[str, Any]]] = []

    def __init__(self, folder: str, **how: Any) -> None:
        self.opened.append({"folder": folder, **how})
        self.model = types.SimpleNamespace(is_multilingual=False)

    def transcribe(self, path: str, *, language: str, **_: Any) -> tuple[Iterator[Any], None]:
        if Path(path).read_bytes() != b"RIFF":
            raise ValueError("no sound")
        cues = read_captions(BY_HAND[0].text.encode()).cues
        blank = types.SimpleNamespace(start=300.0, end=301.0, text=" ")
        return iter(
            [*(types.SimpleNamespace(start=c.start_s, end=c.end_s, text=f" {c.text}") for c in cues), blank]
        ), None


@pytest.fixture
def installed(monkeypatch: pytest.MonkeyPatch) -> None:
    module = types.ModuleType("faster_whisper")
    module.__spec__ = importlib.machinery.ModuleSpec("faster_whisper", None)
    module.WhisperModel = _Listener  # type: ignore[attr-defined]
    monkeypatch.setitem(sys.modules, "faster_whisper", module)


def test_sound_is_told_from_captions_by_its_name() -> None:
    assert [is_recording(Path(n)) for n in ("a.MP4", "a.wav", "a.vtt", "a.srt", "a.txt", "mp3")] == [
        True, True, False, False, False, False,
    ]  # fmt: skip


def test_without_the_recogniser_it_is_said_how_to_get_captions(
    talk: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setitem(sys.modules, "faster_whisper", None)
    monkeypatch.setattr("pegwright.listening.recogniser.find_spec", lambda _name: None)
    for command in ([EBB, str(talk)], [str(talk), "--draft"]):
        with pytest.raises(SystemExit) as ended:
            main(["listen", *command, "--json"])
        assert ended.value.code == 2
        (found,) = json.loads(capsys.readouterr().out)["findings"]
        assert found["code"] == "recogniser-missing"
        assert "WebVTT" in found["hint"]
        assert "pip install 'pegwright[hear]'" in found["hint"]


@pytest.mark.usefixtures("installed")
def test_what_stands_in_the_way_is_a_finding(talk: Path, model: Path, tmp_path: Path) -> None:
    broken = tmp_path / "broken.mp3"
    broken.write_bytes(b"no sound")
    for path, folder, language, code in (
        (talk, None, "en", "model-missing"),
        (talk, tmp_path, "en", "model-missing"),
        (talk, model, "de", "model-english-only"),
        (broken, model, "en", "sound-unreadable"),
    ):
        told = hear_recording(path, folder, language)
        assert told.cues == ()
        assert [f.code for f in told.findings] == [code]


@pytest.mark.usefixtures("installed")
def test_what_is_heard_is_laid_beside_the_lesson(
    talk: Path, model: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    written = read_captions(BY_HAND[0].text.encode()).cues
    reached: list[float] = []
    told = hear_recording(talk, model, "en", reached.append)
    assert told.cues == tuple(Cue(*one) for one in written)
    assert reached[: len(written)] == [one.end_s for one in written]
    assert _Listener.opened[-1]["local_files_only"] is True
    with pytest.raises(SystemExit):
        main(["listen", EBB, str(talk), "--model", str(model), "--json"])
    said = json.loads(capsys.readouterr().out)
    assert [(one["kind"], one["step"]) for one in said["contradictions"]] == list(BY_HAND[0].wrong)
