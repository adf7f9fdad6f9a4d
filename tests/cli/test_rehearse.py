"""The rehearsal by command: exit codes, JSON, a teacher's own tables, what is kept."""

from __future__ import annotations

import json

from pegwright.workshop import example_files

GOOD = str(example_files()["ebb-line"])


def test_troubles_checks_heat_and_an_order_against_itself(run, tmp_path):
    code, out, _ = run("rehearse", GOOD, "--against", GOOD, "--pairs", "5", "--json")
    value = json.loads(out)
    assert (code, value["ok"], value["title"], len(value["heat"])) == (0, True, "Ebb line", 52)
    assert value["troubles"][0]["ways"][0]["slip"] == "too-shallow"
    assert all(way["proved"] for way in value["troubles"][0]["ways"][:2])
    assert value["against"]["failures"][0] == value["against"]["failures"][1]
    assert value["pairs"]["sampled"] <= 5
    assert run("rehearse", GOOD, "--against", GOOD, "--pairs", "5", "--json")[1] == out, "kept and read again"
    seen = tmp_path / "seen.json"
    seen.write_text('{"rehearsal": 1, "seen": [{"slip": "too-shallow", "made": 0, "makers": 50}]}')
    code, out, _ = run("rehearse", GOOD, "--seen", str(seen), "--json")
    assert json.loads(out)["failures"] < value["failures"]


def test_a_table_that_cannot_be_used_stops_it(run, tmp_path):
    table = tmp_path / "table.json"
    table.write_text('{"rehearsal": 1, "slips": {"hum": "often"}}')
    code, out, _ = run("rehearse", GOOD, "--likelihood", str(table), "--json")
    assert (code, json.loads(out)["findings"][0]["code"]) == (2, "slip-unknown")
    assert run("rehearse", GOOD, "--likelihood", str(tmp_path / "none.json"))[0] == 2
