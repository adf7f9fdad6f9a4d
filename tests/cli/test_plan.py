"""The commands plan and mend: what they print, what they write, and how they end."""

from __future__ import annotations

import json

from pegwright.workshop import example_files, open_pattern, work

LINE = str(example_files()["ebb-line"])


def test_it_proposes_orders_and_writes_the_one_taken(run, tmp_path):
    new = tmp_path / "planned.json"
    code, out, _ = run(
        "plan", LINE, "--afresh", "--most", "2", "--take", "2", "--no-rehearse", "--out", str(new)
    )
    assert code == 0
    assert "every band is proved held in each" in out
    assert "as it is" in out
    taken = open_pattern(new).pattern
    assert taken is not None
    assert work(taken).holds
    code, out, _ = run("plan", LINE, "--afresh", "--most", "1", "--json")
    value = json.loads(out)
    assert (code, value["ok"], len(value["proposals"])) == (0, True, 1)
    assert value["proposals"][0]["phrases"] == 5
    assert value["proposals"][0]["failures"] > 0


def test_it_compares_with_a_simpler_order_of_the_same_moves(run, tmp_path):
    new = tmp_path / "simpler.json"
    tail = str(example_files()["herring-tail"])
    code, out, _ = run("plan", tail, "--simpler", "--out", str(new))
    assert code == 0
    assert "as it is" in out
    code, out, _ = run("plan", tail, "--simpler", "--json")
    value = json.loads(out)
    assert value["after"]["travel_mm"] < value["before"]["travel_mm"]
    assert value["after"]["phrases"] <= value["before"]["phrases"]
    taken = open_pattern(new).pattern
    assert taken is not None
    assert work(taken).holds
    code, out, _ = run("plan", LINE, "--simpler", "--json")
    assert (code, [f["code"] for f in json.loads(out)["findings"]]) == (0, ["no-simpler-order"])


def test_a_finished_piece_holds_already(run):
    code, out, _ = run("plan", LINE, "--language", "de")
    assert code == 0
    assert "schon gearbeitet" in out


def test_what_cannot_be_is_told_in_a_sentence(run, tmp_path):
    there = tmp_path / "there.json"
    there.write_text("mine")
    assert run("plan", LINE, "--out", str(there))[0] == 2
    assert there.read_text() == "mine"
    assert run("plan", LINE, "--take", "6")[0] == 2
    assert run("plan", LINE, "--afresh", "--no-rehearse", "--most", "50", "--take", "50")[0] == 2
    caps = {"do": "wind", "colour": "A", "on": "A1"}
    document = json.loads(open_text(LINE)) | {"steps": [caps]}
    alone = tmp_path / "alone.json"
    alone.write_text(json.dumps(document))
    code, out, _ = run("plan", str(alone), "--json")
    assert (code, [f["code"] for f in json.loads(out)["findings"]]) == (1, ["nothing-to-work"])


def open_text(path: str) -> str:
    with open(path, encoding="utf-8") as file:  # noqa: PTH123
        return file.read()


def test_mend_tells_the_cause_and_writes_the_change(run, tmp_path):
    new = tmp_path / "mended.json"
    code, out, _ = run("mend", str(example_files()["broken/flat-tail"]), "--out", str(new))
    assert code == 1
    assert "1  put the band of move 1 on crossed, with a half-twist between A1 and B1" in out
    assert out.count("band-falls") == 1
    mended = open_pattern(new).pattern
    assert mended is not None
    assert work(mended).holds
    code, out, _ = run("mend", str(new), "--json")
    value = json.loads(out)
    assert (code, value["ok"], value["mends"]) == (0, True, [])
