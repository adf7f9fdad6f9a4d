"""The bundle: whole, hashed, the same every time, and unable to leave its folder."""

from __future__ import annotations

import hashlib
import io
import json
import re
import subprocess
import zipfile
from pathlib import Path

import pytest
import webvtt
from pypdf import PdfReader

from pegwright.fit import count_supplies
from pegwright.lesson import kit_sheet, write_script
from pegwright.press import MEDIA, bundle_lesson, lesson_files
from tests.lesson.pieces import dinghy, lesson, work
from tests.press.test_handout import _bare, _present, _text
from tests.press.test_page import H, read, words


def _made() -> tuple[object, dict[str, bytes]]:
    pattern = dinghy()
    made = lesson(pattern)
    told = write_script(made)
    sheet = kit_sheet(made, told, count_supplies(pattern, work(pattern)), 6)
    other = lesson(dinghy(mirrored=True), hand="left")
    return made, lesson_files(made, told, other=other, kit=sheet)


MADE, FILES = _made()
ZIPPED = bundle_lesson(MADE, FILES)  # type: ignore[arg-type]


def _open() -> zipfile.ZipFile:
    return zipfile.ZipFile(io.BytesIO(ZIPPED))


def test_everything_is_in_it_unharmed() -> None:
    """Every file comes out as it went in; the archive tests sound."""
    with _open() as zipped:
        assert zipped.testzip() is None
        for name, data in FILES.items():
            assert zipped.read(name) == data
        own = set(zipped.namelist()) - FILES.keys()
    assert own == {"manifest.json", "LICENCE.txt", "SHA256SUMS.txt"}


def test_hashes_agree_with_another_programs(tmp_path: Path) -> None:
    """Unpacked by Python's zip reader and checked by the system's sha256sum; the manifest says the same."""
    with _open() as zipped:
        zipped.extractall(tmp_path)
    subprocess.run(
        ["sha256sum", "--check", "--strict", "--quiet", "SHA256SUMS.txt"], cwd=tmp_path, check=True
    )
    manifest = json.loads((tmp_path / "manifest.json").read_text(encoding="utf-8"))
    listed = {entry["name"]: entry for entry in manifest["files"]}
    assert listed.keys() == FILES.keys() | {"LICENCE.txt"}
    for name, entry in listed.items():
        data = (tmp_path / name).read_bytes()
        assert entry["sha256"] == hashlib.sha256(data).hexdigest()
        assert entry["bytes"] == len(data)
        assert entry["media"] == MEDIA[Path(name).suffix]
    assert manifest["title"] == "Dinghy"
    assert manifest["pegwright_bundle"] == 1


def test_the_same_lesson_gives_the_same_bytes() -> None:
    """Made again from the pattern, in another order: the same zip."""
    made, files = _made()
    assert bundle_lesson(made, dict(reversed(files.items()))) == ZIPPED  # type: ignore[arg-type]
    with _open() as zipped:
        assert {info.date_time for info in zipped.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        assert {info.external_attr >> 16 for info in zipped.infolist()} == {0o100644}


def test_the_licence_says_whose_it_is() -> None:
    """Title, designer, that no licence was named; and the typeface's own licence in full."""
    with _open() as zipped:
        text = zipped.read("LICENCE.txt").decode()
    assert text.startswith("Dinghy\n")
    assert "all rights stay with the designer" in text
    assert "SIL OPEN FONT LICENSE" in text


@pytest.mark.parametrize(
    "name",
    ["../x.txt", "/x.txt", "a/../x.txt", "a\\x.txt", "C:x.txt", "a//x.txt", "", ".hidden", "x\n.txt", "a/",
     "é.txt", "manifest.json", "licence.TXT"],
)  # fmt: skip
def test_a_name_that_could_do_harm_is_refused(name: str) -> None:
    """Nothing leads out of the folder, hides, or takes the place of the manifest."""
    with pytest.raises(ValueError, match="name"):
        bundle_lesson(MADE, {name: b""})  # type: ignore[arg-type]


def test_two_names_that_are_one_on_some_disks_are_refused() -> None:
    """Case does not tell files apart everywhere."""
    with pytest.raises(ValueError, match="one name"):
        bundle_lesson(MADE, {"a.txt": b"", "A.txt": b""})  # type: ignore[arg-type]


def test_all_outputs_of_one_lesson_say_the_same() -> None:
    """The finished files, each read by its own reader, agree step by step and number by number.

    Handout (pypdf), script (pypdf), page (html5lib), captions (webvtt-py), chapters, and the lesson value.
    """
    made = MADE
    handout = _text(PdfReader(io.BytesIO(FILES["handout-a4.pdf"])))
    spoken = _text(PdfReader(io.BytesIO(FILES["script.pdf"])))
    page = read(FILES["follow.html"].decode())
    first = next(d for d in page.iter(f"{H}div") if d.get("data-hand") == "right")
    follow = words(first)
    cues = webvtt.from_buffer(io.StringIO(FILES["captions.vtt"].decode()))
    captioned = " ".join(" ".join(cue.text.split()) for cue in cues)
    prompter = words(next(read(FILES["prompter.html"].decode()).iter(f"{H}main")))
    for step in made.steps:  # type: ignore[attr-defined]
        for text in (step.instruction, *step.detail):
            assert _present(text, handout)
            assert all(_present(part, spoken) for part in re.split(r"(?<=[.!?])\s", text))
            for told in (follow, captioned, prompter):
                assert _bare(text) in _bare(told)
    chapters = [line.partition(" ")[2] for line in FILES["chapters.txt"].decode().splitlines()]
    told = [made.cautions.heading, *(p.heading for p in made.phases)]  # type: ignore[attr-defined]
    assert chapters == ["The finished piece", *told]
    assert all(_present(title, handout) for title in chapters)
    pictures = {name for name in FILES if name.startswith("pictures/")}
    shown = {f"{step.number:03}" for step in made.steps if step.pictures or step.closeup}  # type: ignore[attr-defined]
    assert {name[14:17] for name in pictures if name.startswith("pictures/step-")} == shown
    total = made.supplies.total_count  # type: ignore[attr-defined]
    kit_text = _text(PdfReader(io.BytesIO(FILES["kit.pdf"])))
    assert f"6×{total}" in kit_text
