"""The commands: exit codes, JSON of the documented shape, no stack trace, nothing half written."""

from __future__ import annotations

import json
import math
import os
import pty
import subprocess
import sys

import jsonschema
import pytest
from pypdf import PdfReader

from pegwright.judging import find_single_failures
from pegwright.workshop import example_files, open_pattern, work

GOOD = str(example_files()["ebb-line"])
BROKEN = str(example_files()["broken/runs-out"])


@pytest.mark.parametrize(("file", "code", "holds"), [(GOOD, 0, True), (BROKEN, 1, False)])
def test_check_says_whether_it_holds(run, file, code, holds):
    got, out, _ = run("check", file, "--json")
    value = json.loads(out)
    assert (got, value["ok"], value["holds"]) == (code, code == 0, holds)
    got, out, _ = run("check", file)
    assert got == code
    assert ("all 26 bands are held" in out) == holds
    assert "\x1b" not in out, "no colour where there is no terminal"


def test_a_broken_piece_is_told_with_place_and_cure(run):
    _, out, _ = run("check", BROKEN)
    assert "bands fall off: nothing fastens the piece" in out
    assert "  at move 1, band 1 (/steps/0/steps/0)" in out
    assert "  hint: " in out


def test_a_place_names_move_path_and_free_end_in_words(run, tmp_path):
    """The document's own numbers beside the maker's: a move is no step of the handout, `end.0` is no peg."""
    document = json.loads(open(GOOD, encoding="utf-8").read())  # noqa: PTH123, SIM115
    number = next(i for i, step in enumerate(document["steps"]) if step["do"] == "clip")
    document["steps"][number] |= {"catch": 1}
    file = tmp_path / "x.json"
    file.write_text(json.dumps(document))
    _, out, _ = run("check", str(file))
    told = next(line for line in out.splitlines() if "catches-one" in line)
    place = out.splitlines()[out.splitlines().index(told) + 1]
    assert told.startswith("warning[catches-one] the clip catches 1 of 2 loops on the free end called end")
    assert place == f"  at move 52, the free end called end (/steps/{number})"
    _, out, _ = run("check", str(file), "--json")
    finding = next(f for f in json.loads(out)["findings"] if f["code"] == "catches-one")
    assert finding["place"] == {"path": f"/steps/{number}", "step": 52, "peg": "end.0"}


def test_check_takes_several_pieces(run, tmp_path):
    """The second document was taken for an option, and not looked at."""
    whole, falls, none = GOOD, BROKEN, str(tmp_path / "none.json")
    code, out, _ = run("check", whole, falls)
    assert code == 1
    assert "bands are held" in out
    assert "fall off" in out
    assert run("check", whole, whole)[0] == 0
    code, out, _ = run("check", whole, none, falls, "--json")
    value = json.loads(out)
    assert (code, value["ok"]) == (2, False)
    assert [one["file"] for one in value["pieces"]] == [whole, none, falls]
    assert [one.get("holds") for one in value["pieces"]] == [True, None, False]
    assert value["pieces"][1]["findings"][0]["code"] == "file-unreadable"


def test_check_says_what_one_snapped_band_costs(run):
    """Common practice, no source: in a plain chain each band carries the others; a twin has a spare."""
    code, out, _ = run("check", GOOD, "--losses", "--json")
    value = json.loads(out)
    assert code == 0
    falls = {one["band"]: len(one["falls"]) for one in value["snaps"]}
    assert falls == {band: 25 if band == 25 else 24 for band in range(1, 27)}
    assert [one["loop"] for one in value["caught"]] == ["26b", "26a", "25b"]
    _, out, _ = run("check", str(example_files()["twin-hulls"]), "--losses")
    assert "48 of 49 bands could snap without freeing another" in out


def test_losses_have_a_bound_and_show_how_far_they_are(run, tmp_path):
    """600 bands is the lesson's bound; a chain over n pegs has n bands."""
    small, large = tmp_path / "small.json", tmp_path / "large.json"
    run("new", str(small), "--pegs", "600")
    run("new", str(large), "--pegs", "601")
    code, out, _ = run("check", str(small), "--losses", "--json")
    assert (code, len(json.loads(out)["snaps"]), json.loads(out)["findings"]) == (0, 600, [])
    code, out, _ = run("check", str(large), "--losses", "--json")
    value = json.loads(out)
    assert (code, value["holds"], "snaps" in value) == (0, True, False)
    assert [f["code"] for f in value["findings"]] == ["losses-left-out"]
    _, out, _ = run("check", str(large), "--losses")
    assert "for up to 600 bands; this piece has 601" in out
    heard = []
    made = work(open_pattern(example_files()["twin-hulls"]).pattern)
    find_single_failures(made.structure, made.proof, lambda *told: heard.append(told))
    assert heard == [("taking out one band after the other", done, 49) for done in range(49)]


def test_new_writes_a_chain_that_holds_and_never_replaces_unasked(run, tmp_path):
    file = tmp_path / "night-tide.json"
    assert run("new", str(file), "--pegs", "7")[0] == 0
    code, out, _ = run("check", str(file), "--json")
    assert (code, json.loads(out)["title"], json.loads(out)["bands"]) == (0, "night tide", 7)
    before = file.read_bytes()
    code, _, err = run("new", str(file))
    assert code == 2
    assert "there already" in err
    assert file.read_bytes() == before
    assert run("new", str(file), "--force", "--title", "Neap")[0] == 0
    assert run("new", str(tmp_path / "x.json"), "--pegs", "1")[0] == 2
    os.mkfifo(tmp_path / "pipe")
    code, _, err = run("new", str(tmp_path / "pipe"), "--force")
    assert (code, "no plain file" in err, (tmp_path / "pipe").is_fifo()) == (2, True, True)
    assert run("new", str(tmp_path / "no" / "folder.json"))[0] == 2


def test_show_prints_every_move_and_state(run):
    code, out, _ = run("show", GOOD, "--json")
    value = json.loads(out)
    assert code == 0
    assert len(value["moves"]) == 52
    assert value["moves"][0]["move"] == "place A over A1 A2"
    assert value["moves"][-1]["move"] == "clip end A26"
    assert "state" not in value["moves"][0], "the loom after each move only where it is asked for"
    states = [move["state"] for move in json.loads(run("show", GOOD, "--states", "--json")[1])["moves"]]
    assert states[0] == "near | 1 bands | A1 1a | A2 1b"
    _, out, _ = run("show", GOOD, "--states")
    assert "near | 1 bands | A1 1a | A2 1b" in out


def test_show_prints_the_forces(run):
    """The first band of a chain over pegs 16 mm apart: 32 + 6.5π mm, at rest 15π mm."""
    _, out, _ = run("show", GOOD, "--forces")
    assert out.count("band 1 ") >= 2
    assert "band 1 at 1.11 times its length, " in out
    first, *_, last = json.loads(run("show", GOOD, "--forces", "--json")[1])["moves"]
    assert first["bands"][0]["stretch"] == pytest.approx((32 + 6.5 * math.pi) / (15 * math.pi), abs=1e-3)
    a, b = first["loads"]
    assert (a["peg"], b["peg"], a["y_n"]) == ("A1", "A2", -b["y_n"])
    assert a["n"] == pytest.approx(2 * first["bands"][0]["tension_n"], abs=2e-3)
    assert [band["on_loom"] for band in last["bands"]] == [False] * len(last["bands"])


def test_supplies_for_a_class(run):
    code, out, _ = run("supplies", GOOD, "--learners", "10", "--spare", "0.1", "--json")
    value = json.loads(out)
    assert code == 0
    assert {h["letter"]: h["total"] for h in value["heaps"]} == {"A": 154, "F": 132}
    assert value["clips"] == 11
    assert run("supplies", GOOD, "--learners", "10", "--spare", "10%", "--json")[1] == out
    code, out, _ = run("supplies", GOOD)
    assert "1 clip" in out
    assert run("supplies", GOOD, "--learners", "0")[0] == 2
    for wrong in ("10", "110%", "a tenth", "-10%", "nan"):  # ten times the bands are no spares
        code, _, err = run("supplies", GOOD, f"--spare={wrong}")
        assert code == 2
        assert "10%, or 0.1" in err


def test_supplies_name_the_kind_of_band_and_all_tools(run, tmp_path):
    """Common practice, no source: a knot takes a piece of cord and scissors; the hook is a tool too."""
    document = json.loads(open(GOOD, encoding="utf-8").read())  # noqa: PTH123, SIM115
    next(step for step in document["steps"] if step["do"] == "clip")["do"] = "knot"
    file = tmp_path / "x.json"
    file.write_text(json.dumps(document))
    _, out, _ = run("supplies", str(file), "--learners", "2")
    lines = [line.strip() for line in out.splitlines()]
    assert {"2 pieces of cord to tie off with", "2 hooks", "2 pairs of scissors"} <= set(lines)
    kinds = {heap["band"] for heap in json.loads(run("supplies", str(file), "--json")[1])["heaps"]}
    assert "kind" in lines[1]
    assert all(any(kind in line for line in lines) for kind in kinds)


def test_supplies_with_a_stash(run, tmp_path):
    stash = tmp_path / "stash.json"
    stash.write_text(
        json.dumps({"stash": 1, "currency": "EUR", "bands": [{"packs": [{"size": 100, "price": "1.50"}]}]})
    )
    code, out, _ = run("supplies", GOOD, "--stash", str(stash), "--json")
    assert code == 0
    assert json.loads(out)["shopping"]["cost"] == "3.00"
    stash.write_text("{")
    code, out, _ = run("supplies", GOOD, "--stash", str(stash), "--json")
    assert (code, json.loads(out)["ok"]) == (2, False)


def test_schema_is_a_json_schema(run):
    code, out, _ = run("schema")
    assert code == 0
    jsonschema.Draft202012Validator.check_schema(json.loads(out))


def test_what_cannot_be_read_ends_with_2_and_a_place(run, tmp_path):
    bad = tmp_path / "bad.json"
    bad.write_text('{\n  "pegwright": 2,\n  oops\n}')
    code, out, _ = run("check", str(bad))
    assert code == 2
    assert "line 3, column 3" in out
    code, out, _ = run("check", str(tmp_path / "missing.json"), "--json")
    assert (code, json.loads(out)["findings"][0]["code"]) == (2, "file-unreadable")


@pytest.mark.parametrize(
    "arguments",
    [["chekc", GOOD], ["check"], ["check", GOOD, "--paper", "a4"], ["lesson", GOOD, "--paper", "a5"]],
)
def test_a_slip_in_the_command_line_is_told_in_a_sentence(run, arguments):
    code, out, err = run(*arguments)
    assert code == 2
    assert "Traceback" not in out + err
    assert "pegwright --help" in err


def test_a_fault_inside_shows_no_stack_trace(run, monkeypatch):
    monkeypatch.setattr("pegwright.workshop.work", lambda *_: 1 / 0)
    code, out, err = run("check", GOOD)
    assert code == 2
    assert "Traceback" not in out + err
    report = err.rsplit(" ", 1)[-1].strip().replace("\n", "")
    assert "ZeroDivisionError" in open(report, encoding="utf-8").read()  # noqa: PTH123, SIM115


@pytest.mark.parametrize("command", ["check", "show", "supplies", "review", "rehearse"])
@pytest.mark.parametrize("file", [GOOD, BROKEN])
def test_ok_is_true_exactly_where_the_exit_code_is_0(run, command, file):
    code, out, _ = run(command, file, "--json")
    value = json.loads(out)
    assert value["ok"] == (code == 0)
    assert code == any(f["severity"] in ("error", "warning") for f in value["findings"])


@pytest.mark.parametrize(
    "arguments",
    [["chekc", GOOD], ["check"], ["check", GOOD, "--tide", "in"], ["rehearse", GOOD, "--top", "x"]],
)
def test_a_slip_in_the_command_line_is_json_where_json_is_asked_for(run, arguments):
    code, out, err = run(*arguments, "--json")
    value = json.loads(out)
    assert (code, value["ok"], value["findings"], err) == (2, False, [], "")
    assert value["reason"]


def test_a_fault_inside_is_json_where_json_is_asked_for(run, monkeypatch):
    monkeypatch.setattr("pegwright.workshop.work", lambda *_: 1 / 0)
    code, out, err = run("check", GOOD, "--json")
    value = json.loads(out)
    assert (code, value["ok"], err) == (2, False, "")
    assert "something went wrong" in value["reason"]


def test_a_hostile_title_is_printed_literally(run, tmp_path):
    file = tmp_path / "x.json"
    document = json.loads(open(GOOD, encoding="utf-8").read())  # noqa: PTH123, SIM115
    document["title"] = "[bold red]\x1b]0;owned\x07\u202eevil"
    file.write_text(json.dumps(document))
    _, out, _ = run("check", str(file))
    assert "[bold red]\\u001b]0;owned\\u0007\\u202eevil" in out


def test_colour_on_a_terminal():
    primary, secondary = pty.openpty()
    environment = {**os.environ, "TERM": "xterm-256color"}
    environment.pop("NO_COLOR", None)
    with subprocess.Popen(
        [sys.executable, "-m", "pegwright", "check", BROKEN],
        stdout=secondary,
        stderr=secondary,
        env=environment,
    ) as process:
        os.close(secondary)
        shown = b""
        while True:
            try:
                piece = os.read(primary, 65536)
            except OSError:
                break
            if not piece:
                break
            shown += piece
    assert process.returncode == 1
    assert b"\x1b[" in shown


def test_demo_writes_a_folder_for_every_piece_that_holds(run, tmp_path):
    safe_path = os.environ.get("PYTHONSAFEPATH")
    code, out, _ = run("demo", str(tmp_path), "--only", "herring-tail,broken/flat-tail", "--json")
    pieces = {p["piece"]: p for p in json.loads(out)["pieces"]}
    assert code == 0
    assert os.environ.get("PYTHONSAFEPATH") == safe_path, "children of this process start as before"
    assert {name: p["holds"] for name, p in pieces.items()} == {
        "herring-tail": True,
        "broken/flat-tail": False,
    }
    assert not pieces["broken/flat-tail"]["files"]
    written = {str(f) for f in tmp_path.rglob("*") if f.is_file()}
    assert written == set(pieces["herring-tail"]["files"])
    assert {"film-excerpt.webm", "handout-letter.pdf", "lesson.zip"} <= {
        f.rsplit("/", 1)[-1] for f in pieces["herring-tail"]["files"]
    }
    told = pieces["herring-tail"]
    front = " ".join(PdfReader(tmp_path / "herring-tail" / "handout-a4.pdf").pages[0].extract_text().split())
    for name in ("length_mm", "width_mm", "height_mm"):
        assert f"{round(told[name])} mm" in front
    low, high = told["wrists_mm"]
    assert f"from {round(low)} mm to {round(high)} mm" in front
    assert (told["wrist_mm"], told["worst"]["step"] in told["worst"]["steps"]) == (160, True)
    code, out, _ = run("demo", str(tmp_path), "--only", "spring-tide", "--json")
    assert (code, "spring-tide" in json.loads(out)["reason"]) == (2, True)
