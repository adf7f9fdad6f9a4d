"""Either form of a pattern: written by its name, converted, and taken by every command."""

from __future__ import annotations

import json

from pegwright.workshop import example_files, open_pattern

GOOD = example_files()["ebb-line"]


def test_new_writes_the_text_where_the_name_asks_for_it(run, tmp_path):
    file, other = tmp_path / "low-tide.pegwright", tmp_path / "low-tide.json"
    assert run("new", str(file))[0] == run("new", str(other))[0] == 0
    assert file.read_text("utf-8").startswith("pegwright 3\ntitle: low tide\n")
    assert other.read_text("utf-8").startswith("{")
    assert open_pattern(file) == open_pattern(other)
    assert run("check", str(file))[0] == 0


def test_convert_goes_both_ways_and_overwrites_nothing(run, tmp_path):
    text, back = tmp_path / "ebb.pegwright", tmp_path / "ebb.json"
    assert run("convert", str(GOOD), str(text))[0] == 0
    code, out, _ = run("convert", str(text), str(back), "--json")
    assert (code, json.loads(out)["title"]) == (0, "Ebb line")
    assert back.read_bytes() == GOOD.read_bytes()
    before = text.read_bytes()
    code, _, err = run("convert", str(GOOD), str(text))
    assert (code, text.read_bytes()) == (2, before)
    assert "--force" in err


def test_a_fault_of_a_text_is_told_with_line_and_column(run, tmp_path):
    file = tmp_path / "bad.pegwright"
    file.write_text(
        "pegwright 2\ntitle: Ebb\nloom: kind rows, rows 1, pegs 4\nsteps:\n  plase A over A1 A2\n"
    )
    code, out, _ = run("show", str(file))
    assert code == 2
    assert "at line 5, column 3" in out
    assert "hint: write it as in: place A over A1 A2" in out
