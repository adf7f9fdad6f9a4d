"""The finished files of a lesson, written by command and each read back by its own reader, agree.

Only the files are looked at, never the lesson they were made from: handout, script, kit sheet and filming
plan (pypdf), captions (webvtt-py, pysubs2), page and prompter (html5lib), stills (Pillow), film (MediaInfo
and ffmpeg), bundle (zipfile), and the supplies that another command counts.
"""

from __future__ import annotations

import io
import json
import re
import subprocess
import zipfile
from functools import lru_cache
from itertools import pairwise
from pathlib import Path
from typing import Any

import imageio_ffmpeg
import pysubs2
import pytest
import webvtt
from PIL import Image
from pymediainfo import MediaInfo
from pypdf import PdfReader

from pegwright.cli import main
from pegwright.lesson import Phrasebook
from pegwright.workshop import example_files
from tests.press.test_handout import _bare, _figures, _present
from tests.press.test_page import H, read, words

LANGUAGES = {"en": "Step", "es": "Paso", "de": "Schritt"}
PIECES = {"en": "herring-tail", "es": "buoy-line", "de": "ebb-line"}
LEARNERS = 12


class Finished:
    """The files of one lesson, read."""

    def __init__(self, folder: Path, language: str, piece: str) -> None:
        self.folder, self.language, self.piece = folder, language, piece
        self.step = LANGUAGES[language]
        page = read((folder / "follow.html").read_text(encoding="utf-8"))
        self.editions = {d.get("data-hand"): d for d in page.iter(f"{H}div") if d.get("data-hand")}
        self.mark = next(page.iter(f"{H}main")).get("data-mark")

    def pdf(self, name: str) -> str:
        return _pdf_text(self.folder / name)

    def steps(self, hand: str = "right") -> dict[int, list[str]]:
        """The sentences of every step on the page, by its number."""
        found = {}
        for leaf in self.editions[hand].iter(f"{H}section"):
            named = re.match(rf"{self.step} ([0-9]+):", leaf.get("data-name"))
            if named:
                told = [words(p) for p in leaf.iter(f"{H}p") if p.get("data-say") is not None]
                found[int(named[1])] = told
        return found

    def cues(self, name: str = "captions.vtt") -> list[str]:
        return [" ".join(cue.text.split()) for cue in webvtt.read(str(self.folder / name))]


@lru_cache(maxsize=32)
def _pdf_text(file: Path) -> str:
    return _bare("".join(page.extract_text() for page in PdfReader(file).pages))


@pytest.fixture(scope="module", params=LANGUAGES)
def made(request: Any, tmp_path_factory: Any) -> Finished:
    language = request.param
    folder = tmp_path_factory.mktemp("lesson") / language
    parts = "handout,page,script,prompter,captions,filming,kit,pictures,stills,film,bundle"
    with pytest.raises(SystemExit) as ended:
        main(
            ["lesson", str(example_files()[PIECES[language]]), str(folder), "--language", language,
             "--parts", parts, "--edition", "all", "--learners", str(LEARNERS), "--excerpt", "--no-voice",
             "--film-tall", "240", "--json"]
        )  # fmt: skip
    assert ended.value.code == 0
    return Finished(folder, language, PIECES[language])


def test_steps_are_numbered_alike_and_say_the_same_everywhere(made: Finished) -> None:
    """Page, three editions of the handout, script, captions, prompter: every sentence of every step."""
    steps = made.steps()
    assert list(steps) == list(range(1, len(steps) + 1))
    handouts = [made.pdf(f"handout-a4{edition}.pdf") for edition in ("", "-large", "-grey")]
    script, spoken = made.pdf("script.pdf"), _bare("".join(made.cues()))
    prompter = _bare(words(next(read((made.folder / "prompter.html").read_text("utf-8")).iter(f"{H}main"))))
    phrasebook = Phrasebook(made.language)
    # On paper a small picture stands beside the step; a voice and a film have none to point at.
    aloud = {phrasebook.say("intro-work"): phrasebook.say("intro-work-film")}
    for number, told in steps.items():
        assert told
        for text in told:
            for handout in handouts:
                assert _present(text, handout), (number, text)
            heard = aloud.get(text, text)
            for other in (spoken, prompter):
                assert _present(heard, other), (number, heard)
            for sentence in re.split(r"(?<=[.!?])\s", heard):
                assert _present(sentence, script), (number, sentence)
    assert not _present(f"{made.step} {len(steps) + 1}", made.pdf("filming.pdf"))
    assert _present(f"{made.step} {len(steps)}", made.pdf("filming.pdf"))


def test_the_left_hands_page_and_handout_say_the_same(made: Finished) -> None:
    left = made.pdf("handout-a4-left-handed.pdf")
    steps = made.steps("left")
    assert len(steps) == len(made.steps())
    assert all(_present(text, left) for told in steps.values() for text in told)


def test_captions_are_the_same_in_both_files_and_follow_the_chapters(made: Finished) -> None:
    """SRT read by another reader; chapters cover the film without a gap, in both lists."""
    srt = pysubs2.load(str(made.folder / "captions.srt"))
    assert [" ".join(e.plaintext.split()) for e in srt] == made.cues()
    times = [(e.start, e.end) for e in srt]
    vtt = webvtt.read(str(made.folder / "captions.vtt"))
    assert [_ms(c.start) for c in vtt] == [start for start, _ in times]
    chapters = webvtt.read(str(made.folder / "chapters.vtt"))
    listed = (made.folder / "chapters.txt").read_text(encoding="utf-8").splitlines()
    assert [line.partition(" ")[2] for line in listed] == [c.text for c in chapters]
    assert _ms(chapters[0].start) == 0
    assert all(_ms(a.end) == _ms(b.start) for a, b in pairwise(chapters))
    assert _ms(chapters[-1].end) >= times[-1][1]
    handout = made.pdf("handout-a4.pdf")
    assert all(_present(c.text, handout) for c in chapters)


def test_counts_agree_with_the_supplies(made: Finished, capsys: Any) -> None:
    """What another command counts for one and for the class stands on handout, page, and kit sheet."""
    counted = {}
    for learners in (1, LEARNERS):
        spare = "0.1" if learners > 1 else "0"
        with pytest.raises(SystemExit):
            main(
                [
                    "supplies",
                    str(example_files()[made.piece]),
                    "--learners",
                    str(learners),
                    "--spare",
                    spare,
                    "--json",
                ]
            )
        counted[learners] = json.loads(capsys.readouterr().out)
    rows = [words(tr) for tr in next(made.editions["right"].iter(f"{H}table")).iter(f"{H}tr")][1:]
    heaps = counted[1]["heaps"]
    for heap, row in zip(heaps, rows, strict=False):
        assert row.startswith(heap["letter"])
        assert row.endswith(str(heap["total"]))
    assert rows[-1].endswith(str(counted[1]["bands"]))
    kit = made.pdf("kit.pdf")
    for one, many in zip(heaps, counted[LEARNERS]["heaps"], strict=True):
        assert f"{LEARNERS}×{one['total']}{many['spares']}{many['total']}" in kit
    assert f"{LEARNERS}×{counted[1]['bands']}" in kit
    assert _bare(str(counted[1]["bands"])) in made.pdf("handout-a4.pdf")


def test_every_step_with_a_picture_has_it_in_every_form(made: Finished) -> None:
    """Figures on the page, SVG files, stills as SVG and PNG: as many for each step, PNG of the size named."""
    figures = {}
    say = Phrasebook(made.language).say
    held = (say("label-held-band"), say("label-held-hook"))
    for leaf in made.editions["right"].iter(f"{H}section"):
        named = re.match(rf"{made.step} ([0-9]+):", leaf.get("data-name"))
        if named:
            # What is folded away shows right beside wrong, not the step.
            folded = {figure for part in leaf.iter(f"{H}details") for figure in part.iter(f"{H}figure")}
            shown = set(leaf.iter(f"{H}figure")) - folded
            # How hands hold band or hook is shown where that is first done, beside the step.
            figures[int(named[1])] = sum(not words(figure).startswith(held) for figure in shown)
    for folder, suffix in (("pictures", ".svg"), ("stills", ".svg"), ("stills", "-1080.png")):
        files = [f.name for f in (made.folder / folder).glob(f"*{suffix}")]
        files = [name for name in files if not name.startswith("holding-") and "-chart-" not in name]
        counted = {n: sum(name.startswith(f"step-{n:03}") for name in files) for n in figures}
        assert counted == figures
        assert len(files) == sum(figures.values())
    for file in (made.folder / "stills").glob("*.png"):
        with Image.open(file) as image:
            assert image.size == (1920, 1080)


def _is_run(part: list[str], whole: list[str]) -> bool:
    return any(whole[i : i + len(part)] == part for i in range(len(whole)))


def test_the_film_says_and_shows_what_the_other_files_do(made: Finished) -> None:
    """Captions, chapters and title are those of the other files; the cautions in short come between."""
    file = made.folder / "film-excerpt.webm"
    info = MediaInfo.parse(file)
    titles = [c.text for c in webvtt.read(str(made.folder / "chapters.vtt"))]
    menu = info.menu_tracks[0].to_data()
    shown = [text for name, text in sorted(menu.items()) if re.match(r"\d\d_\d\d_\d", name)]
    assert shown
    assert set(shown) <= set(titles)
    command = [
        imageio_ffmpeg.get_ffmpeg_exe(),
        "-loglevel",
        "error",
        "-i",
        str(file),
        "-map",
        "0:s",
        "-f",
        "webvtt",
        "-",
    ]
    text = subprocess.run(command, capture_output=True, check=True, text=True).stdout
    said = [" ".join(c.text.split()) for c in webvtt.from_buffer(io.StringIO(text))]
    assert said
    every = made.cues()
    opening = next(k for k in range(len(said) + 1) if said[: k + 1] != every[: k + 1])
    runs = [k for k in range(opening, len(said)) if _is_run(said[k:], every)]
    assert opening
    assert runs, "what is shown is said as in the whole film"
    between = " ".join(said[opening : runs[0]])
    say = Phrasebook(made.language).say
    assert all(say(name) in between for name in ("safe-small", "safe-eyes", "safe-rules"))
    assert info.text_tracks[0].language == made.language
    title = words(next(read((made.folder / "follow.html").read_text("utf-8")).iter(f"{H}h1")))
    assert info.general_tracks[0].title == title


def test_sizes_and_their_bands_are_the_same_everywhere(made: Finished) -> None:
    """For every wrist, the numbers of the page's sentence stand in a row of handout and kit, and add up."""
    items = [words(li) for li in list(made.editions["right"].iter(f"{H}section"))[-1].iter(f"{H}li")]
    of_colour = r"[0-9] (?:of|de|von) [A-Z]"
    told = [text for text in items if re.search(r"[0-9] mm", text) and re.search(of_colour, text)]
    assert len(told) >= 3
    letters = len(re.findall(of_colour, told[0]))
    for text in told:
        numbers = re.findall(r"[0-9]+", text)
        counts, bands = numbers[-1 - letters : -1], int(numbers[-1])
        assert sum(map(int, counts)) == bands
        wrists = r"mm\D+".join(re.findall(r"([0-9]+) mm", text))  # one, or the ends of a row for several
        # Between them stand the wrists that are possible, how it is worked, and on which peg it ends.
        row = rf"{wrists}mm[0-9–mA-Z]*?{''.join(counts)}{bands}"
        for name in ("handout-a4.pdf", "handout-a4-grey.pdf", "handout-a4-left-handed.pdf", "kit.pdf"):
            assert re.search(row, made.pdf(name)), (name, text)


def test_all_come_from_one_pattern_and_lie_in_the_bundle(made: Finished) -> None:
    """The print mark on page, handout and leaves, and in the manifest, is one; the zip holds every file."""
    with zipfile.ZipFile(made.folder / "lesson.zip") as zipped:
        manifest = json.loads(zipped.read("manifest.json"))
        inside = {name: zipped.read(name) for name in zipped.namelist()}
    assert manifest["mark"] == made.mark
    assert manifest["language"] == made.language
    for name in ("handout-a4.pdf", "kit.pdf", "script.pdf", "filming.pdf"):
        assert made.mark in made.pdf(name)
    files = {str(f.relative_to(made.folder)): f.read_bytes() for f in made.folder.rglob("*") if f.is_file()}
    del files["lesson.zip"]
    assert {name: inside[name] for name in files} == files
    assert inside.keys() - files.keys() == {"manifest.json", "LICENCE.txt", "SHA256SUMS.txt"}


def test_the_finished_piece_has_one_size_everywhere(made: Finished, capsys: Any) -> None:
    """What the command picture measures stands on the first page of every handout, on page and in captions.

    Each handout has one figure more than it has steps' pictures, and the page shows the piece for each hand.
    """
    with pytest.raises(SystemExit):
        main(["picture", str(example_files()[made.piece]), str(made.folder.parent / "x.png"), "--json"])
    lie = json.loads(capsys.readouterr().out)["lies"][0]
    told = [f"{round(lie[name])} mm" for name in ("length_mm", "width_mm", "height_mm")]
    handouts = sorted(file.name for file in made.folder.glob("handout-*.pdf"))
    assert len(handouts) == 5
    text = next(made.editions["right"].iter(f"{H}img")).get("alt")
    for name in handouts:
        reader = PdfReader(made.folder / name)
        front = _bare(reader.pages[0].extract_text())
        assert all(_bare(size) in front for size in told), name
        found: list[str] = []
        _figures(reader.trailer["/Root"]["/StructTreeRoot"], found)
        assert found.count(text) == 1
    for edition in made.editions.values():
        assert len(list(edition.iter(f"{H}img"))) == 1
        assert all(size in words(next(edition.iter(f"{H}section"))) for size in told)
    spoken = " ".join(made.cues()[:12])
    assert all(size in spoken for size in told)
    with Image.open(made.folder / "finished.png") as image:
        assert image.size[0] == 1200


def _ms(clock: str) -> int:
    hours, minutes, rest = clock.split(":")
    return round(1000 * (3600 * int(hours) + 60 * int(minutes) + float(rest)))
