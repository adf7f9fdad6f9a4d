"""Lessons and the editor's check by command: every option reaches the files, nothing leaves the folder."""

from __future__ import annotations

import json
import re
import zipfile

import msgspec
import pytest
import webvtt
from pypdf import PdfReader

from pegwright.pattern import PatternBuilder, Rows, mirror, read_pattern, write_pattern
from pegwright.workshop import example_files

GOOD = str(example_files()["ebb-line"])
MIRRORED = str(example_files()["slack-water-mat"])
MOTIFS = str(example_files()["riding-lights"])
BROKEN = str(example_files()["broken/runs-out"])


def text(file):
    return " ".join(" ".join(page.extract_text().split()) for page in PdfReader(file).pages)


def test_everything_is_written_and_said(run, tmp_path):
    """The JSON lists what lies in the folder, no more and no less; the zip holds the same bytes."""
    code, out, _ = run("lesson", GOOD, str(tmp_path / "out"), "--json")
    value = json.loads(out)
    assert (code, value["ok"], value["title"], value["hand"]) == (0, True, "Ebb line", "right")
    found = {
        str(f.relative_to(tmp_path / "out")): f.stat().st_size
        for f in (tmp_path / "out").rglob("*")
        if f.is_file()
    }
    assert found == {each["name"]: each["bytes"] for each in value["files"]}
    assert {"handout-a4.pdf", "follow.html", "captions.vtt", "kit.pdf", "lesson.zip"} <= found.keys()
    with zipfile.ZipFile(tmp_path / "out" / "lesson.zip") as zipped:
        for name in found.keys() - {"lesson.zip"}:
            assert zipped.read(name) == (tmp_path / "out" / name).read_bytes()
    assert list(tmp_path.iterdir()) == [tmp_path / "out"], "nothing beside the folder"


@pytest.mark.parametrize(
    ("language", "words"), [("en", "Stop and look"), ("es", "Para y mira"), ("de", "Halt an und schau")]
)
def test_language_paper_edition_and_units(run, tmp_path, language, words):
    """ANSI letter is 8.5 × 11 in, ISO A4 210 × 297 mm; the words are the language's."""
    out = tmp_path / language
    code, _, _ = run(
        "lesson", GOOD, str(out), "--language", language, "--parts", "handout,captions",
        "--paper", "both", "--edition", "all", "--units", "inches",
    )  # fmt: skip
    assert code == 0
    assert sorted(f.name for f in out.glob("*.pdf")) == [
        "handout-a4-giant.pdf", "handout-a4-grey.pdf", "handout-a4-large.pdf", "handout-a4-left-handed.pdf",
        "handout-a4.pdf", "handout-letter.pdf",
    ]  # fmt: skip
    for name, (wide, high) in {"a4": (210 / 25.4, 297 / 25.4), "letter": (8.5, 11)}.items():
        box = PdfReader(out / f"handout-{name}.pdf").pages[0].mediabox
        assert (box.width / 72, box.height / 72) == pytest.approx((wide, high), abs=0.01)
    assert words.casefold() in text(out / "handout-a4.pdf").casefold()
    assert len(webvtt.read(str(out / "captions.vtt"))) > 20


def test_the_left_hand_is_taught_the_mirrored_pattern(run, tmp_path):
    """Naive second way: mirror the document and order it for the right hand; the pegs named are the same."""
    document = read_pattern(open(MIRRORED, "rb").read()).pattern  # noqa: PTH123, SIM115
    other = tmp_path / "mirrored.json"
    other.write_bytes(write_pattern(mirror(document)))
    run("lesson", MIRRORED, str(tmp_path / "left"), "--hand", "left", "--parts", "captions")
    run("lesson", str(other), str(tmp_path / "right"), "--parts", "captions")
    run("lesson", MIRRORED, str(tmp_path / "plain"), "--parts", "captions")
    pegs = {}
    for name in ("left", "right", "plain"):
        told = (tmp_path / name / "captions.srt").read_text(encoding="utf-8")
        pegs[name] = re.findall(r"\b[A-Z][1-9][0-9]?\b", told)
    assert pegs["left"] == pegs["right"]
    assert pegs["left"] != pegs["plain"]


def test_a_class_and_its_prices_reach_the_kit_sheet(run, tmp_path):
    stash = tmp_path / "stash.json"
    stash.write_text(
        json.dumps({"stash": 1, "currency": "EUR", "bands": [{"packs": [{"size": 100, "price": "1.50"}]}]})
    )
    options = ("--parts", "kit", "--learners", "10", "--spare", "0.1", "--stash", str(stash))
    code, _, _ = run("lesson", GOOD, str(tmp_path / "out"), *options)
    kit = text(tmp_path / "out" / "kit.pdf")
    assert code == 0
    assert "10 × 14" in kit  # 14 slate and 12 foam bands a piece, 154 and 132 with a tenth to spare
    assert "154" in kit
    assert "132" in kit
    assert "6.00 EUR" in kit  # two packs of each


def test_a_teachers_own_timing_scales_every_time(run, tmp_path):
    """Twice the seconds for the motif, twice the seconds of everything done by hand on the filming plan."""
    told = {}
    for seconds in (60, 120):
        out = tmp_path / str(seconds)
        code, _, _ = run("lesson", MOTIFS, str(out), "--parts", "kit", "--timing", f"outline={seconds}")
        assert code == 0
        times = re.search(
            r"Place the bands ([0-9]+) min ([0-9]+) s ([0-9]+) min ([0-9]+) s", text(out / "kit.pdf")
        )
        told[seconds] = 60 * int(times[3]) + int(times[4])
    assert told[120] == pytest.approx(2 * told[60], abs=2)


def test_a_teachers_own_words_are_used(run, tmp_path):
    words = tmp_path / "words.json"
    words.write_text(json.dumps({"peg": "pin", "pegs": "pins"}))
    run("lesson", GOOD, str(tmp_path / "out"), "--parts", "captions", "--phrases", str(words))
    told = (tmp_path / "out" / "captions.srt").read_text(encoding="utf-8")
    assert len(re.findall(r"\bpins? A[0-9]", told)) > 5
    assert not re.search(r"\bpegs? A[0-9]", told)


def test_a_piece_that_falls_apart_is_taught_with_a_warning(run, tmp_path):
    code, out, _ = run("lesson", BROKEN, str(tmp_path / "out"), "--parts", "page", "--json")
    assert code == 1
    assert any(f["code"] == "band-falls" for f in json.loads(out)["findings"])


@pytest.mark.parametrize(
    ("arguments", "reason"),
    [
        (("--parts", "handout,poster"), "poster"),
        (("--timing", "outline"), "not a timing"),
        (("--timing", "9000-9001=5"), "9000"),
        (("--timing", "tide=5"), "tide"),
        (("--learners", "0"), "learner"),
        (("--wpm", "400"), "400"),
        (("--phrases", "missing.json"), "missing.json"),
    ],
)
def test_an_order_that_cannot_be_met_is_told_and_writes_nothing(run, tmp_path, arguments, reason):
    code, out, err = run("lesson", GOOD, str(tmp_path / "out"), *arguments, "--json")
    value = json.loads(out)
    assert (code, value["ok"]) == (2, False)
    assert reason in value["reason"]
    assert "Traceback" not in out + err
    assert not (tmp_path / "out").exists()


def test_nothing_is_written_outside_the_folder(run, tmp_path):
    """A folder inside that leads elsewhere is refused; a file that is a link is replaced, not followed."""
    inside, elsewhere = tmp_path / "out", tmp_path / "elsewhere"
    inside.mkdir()
    elsewhere.mkdir()
    (inside / "pictures").symlink_to(elsewhere)
    (tmp_path / "mine.txt").write_text("mine")
    (inside / "captions.srt").symlink_to(tmp_path / "mine.txt")
    code, out, _ = run("lesson", GOOD, str(inside), "--parts", "captions,pictures", "--json")
    assert code == 2
    assert "leads out" in json.loads(out)["reason"]
    assert list(elsewhere.iterdir()) == []
    assert (tmp_path / "mine.txt").read_text() == "mine"
    assert not (inside / "captions.srt").is_symlink()


def test_a_hostile_name_stays_in_the_folder(run, tmp_path):
    """Path tricks, formulas and markup in every text of the designer's reach no file's name."""
    document = read_pattern(open(GOOD, "rb").read()).pattern  # noqa: PTH123, SIM115
    nasty = "../../x <img src=x onerror=alert(1)> =cmd|'/c calc'!A1 \u202e 🙂"
    file = tmp_path / "nasty.json"
    file.write_bytes(
        write_pattern(msgspec.structs.replace(document, title=nasty, designer=nasty, notes=nasty))
    )

    def beside():
        """All that lies beside the folder, but for rehearsals that the program keeps for itself."""
        others = (f for f in tmp_path.parent.rglob("*") if tmp_path not in f.parents)
        return {f for f in others if not any(part.startswith("kept") for part in f.parts)}

    before = beside()
    code, _, _ = run("lesson", str(file), str(tmp_path / "out"))
    assert code == 0
    assert beside() == before
    assert {f.name for f in tmp_path.iterdir()} == {"nasty.json", "out"}
    assert "<img src=x" not in (tmp_path / "out" / "follow.html").read_text(encoding="utf-8")
    assert "onerror=alert(1)" in text(tmp_path / "out" / "handout-a4.pdf")


def test_edit_looks_at_the_sizes_where_they_are_known_or_asked_for(run, tmp_path, monkeypatch):
    """What is left out is said; once asked for, it is kept, and looked at without asking."""
    monkeypatch.setenv("PEGWRIGHT_CACHE", str(tmp_path / "kept"))
    m = PatternBuilder(
        "Punt", Rows(rows=1, pegs=6), designer="the Saturday workshop", licence="CC0", notes="Short."
    )
    m.colour("A", "slate", "#34506b")
    with m.repeat(5, pegs=1):
        m.place("A", "A1", "A2")
    m.turn()
    with m.repeat(4, pegs=-1):
        m.hook("A5", "A4")
    m.bind("A", "A1")
    m.clip("end", "A6")
    file = tmp_path / "punt.json"
    file.write_bytes(write_pattern(m.pattern()))
    assert "--sizes" in run("review", str(file))[1]
    for asked, looked in ((), False), (("--sizes",), True), ((), True):
        code, out, _ = run("review", str(file), *asked, "--json")
        assert code == 0
        assert json.loads(out)["sizes"] is looked


def test_edit_finds_what_an_editor_would(run, tmp_path):
    assert run("review", MOTIFS)[0] == 0
    document = read_pattern(open(GOOD, "rb").read()).pattern  # noqa: PTH123, SIM115
    file = tmp_path / "unedited.json"
    file.write_bytes(write_pattern(msgspec.structs.replace(document, designer="", notes="Start at peg Q99.")))
    code, out, _ = run("review", str(file), "--json")
    codes = {f["code"]: f["place"]["path"] for f in json.loads(out)["findings"]}
    assert codes["contact-missing"] == "/designer"
    assert codes["text-peg-unknown"] == "/notes"
    german = run("review", str(file), "--language", "de")[1]
    assert "niemand ist genannt, dem man Fehler melden kann" in german
    assert "Rat: nenn dich oder deine Werkstatt" in german
    spanish = json.loads(run("review", str(file), "--language", "es", "--json")[1])["findings"]
    assert "el texto nombra Q99, y esa clavija no está en el telar" in {f["message"] for f in spanish}
    weighty = any(f["severity"] != "note" for f in json.loads(out)["findings"])
    assert code == int(weighty)
    assert run("review", BROKEN)[0] == 1
    assert run("review", str(tmp_path / "missing.json"))[0] == 2
