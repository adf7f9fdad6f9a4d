"""A maker's text becomes a pattern file; nothing is half written."""

from __future__ import annotations

import io
import json
import sys

from pegwright.workshop import open_pattern
from testing.maker_texts import TEXTS

TEXT = next(one.text for one in TEXTS if one.name == "mooring line")


def test_a_text_is_read_shown_and_written(run, tmp_path):
    file, made = tmp_path / "line.txt", tmp_path / "line.pegwright"
    file.write_text(TEXT)
    code, out, _ = run("read", str(file), str(made))
    assert code == 0
    assert "place S over A1 A2" in out
    assert "it holds" in out
    assert open_pattern(made).pattern.title == "Mooring line"
    code, out, _ = run("read", str(file), "--json")
    value = json.loads(out)
    assert (code, value["holds"], value["blanks"]) == (0, True, [])
    assert [one["use"] for one in value["sentences"]][:3] == ["head", "head", "head"]
    assert run("read", str(file), str(made))[0] == 2


def test_a_loom_that_is_not_named_is_asked_for_and_can_be_given(run, tmp_path):
    file = tmp_path / "bit.txt"
    file.write_text("One red band from A1 to A2. One red band from A2 to A3. Clip A1, A2 and A3.")
    code, out, _ = run("read", str(file))
    assert code == 1
    assert "which loom is it made on? Perhaps 1 × 3 pegs" in out
    _, out, _ = run("read", str(file), "--loom", "2x5")
    assert "which loom" not in out
    assert run("read", str(file), "--loom", "big")[0] == 2


def test_what_is_no_text_is_refused_and_nothing_written(run, tmp_path):
    file, made = tmp_path / "x.txt", tmp_path / "x.json"
    for data in (b"\xff\xfe\x00", b"", b"Buy milk."):
        file.write_bytes(data)
        assert run("read", str(file), str(made))[0] == 2
        assert not made.exists()


BIT = """Kai
One red band from A1 to A2. A red band from A2 to A3.
Turn the loom. Hook the loop from A2 to A1.
A red cap on A1.
"""


def test_what_is_left_open_is_asked_at_the_terminal(run, tmp_path, monkeypatch):
    """A loom, a choice by its number, a number, and Enter for the first; what is no answer is asked again."""
    file, made = tmp_path / "bit.txt", tmp_path / "bit.pegwright"
    file.write_text(BIT)
    monkeypatch.setattr(sys, "stdin", io.StringIO("huge\n2x5\n2\n4\n"))
    _, out, _ = run("read", str(file), str(made), "--ask")
    assert out.count("which loom is it made on?") == 2
    assert "does not answer this" in out
    assert "3: Hook the loop from A2 to A1" in out
    pattern = open_pattern(made).pattern
    assert (pattern.loom.rows, pattern.loom.pegs) == (2, 5)
    assert (pattern.steps[3].loop, pattern.steps[4].turns) == (-1, 4)


def test_enter_takes_what_is_offered_and_a_dash_leaves_it_open(run, tmp_path, monkeypatch):
    file = tmp_path / "bit.txt"
    file.write_text(BIT)
    monkeypatch.setattr(sys, "stdin", io.StringIO("\n-\n\n"))
    _, out, _ = run("read", str(file), "--ask", "--json")
    assert [one["key"] for one in json.loads(out)["blanks"]] == ["loop"]


def test_nobody_is_asked_where_nobody_can_answer(run, tmp_path, monkeypatch):
    file = tmp_path / "bit.txt"
    file.write_text(BIT)
    monkeypatch.setattr(sys, "stdin", io.StringIO(""))
    assert run("read", str(file), "--ask")[0] == 1
    assert "press Enter" not in run("read", str(file))[1]


def test_a_script_can_give_the_answers(run, tmp_path):
    file = tmp_path / "bit.txt"
    file.write_text(BIT)
    given = ("--answer", "loom=1x6", "--answer", "loop@3=top", "--answer", "turns=2")
    _, out, _ = run("read", str(file), "--json", *given)
    value = json.loads(out)
    assert value["blanks"] == []
    assert [step for one in value["sentences"] for step in one["steps"]][-2:] == [
        "hook A2 loop -1 to A1",
        "wind R on A1 2 turns",
    ]
    code, _, said = run("read", str(file), "--answer", "colour=red")
    assert (code, "does not ask for colour=red; it leaves open: loom@1, loop@3, turns@4" in said) == (2, True)
    assert run("read", str(file), "--answer", "red")[0] == 2


def test_text_steps_loops_and_findings_stand_side_by_side_in_the_language_of_the_text(run, tmp_path):
    file = tmp_path / "bit.txt"
    file.write_text("Steg\nEin rotes Gummi von A1 nach A2.\nEine Kappe auf A2, dreimal gewickelt.\n")
    _, out, _ = run("read", str(file))
    assert out.splitlines()[1].split()[:4] == ["Zeile", "Text", "Schritte", "Schlaufen"]
    assert "über das Stück" in out
    row = next(line for line in out.splitlines() if "place R over A1 A2" in line)
    assert "Ein rotes Gummi" in row
    assert row.split()[-2:] == ["1", "2"], "the pegs, over the loops on them"
    assert "Auf welchem Webrahmen" in out or "welchem Webrahmen" in out
