"""A maker's text becomes a pattern file; nothing is half written."""

from __future__ import annotations

import json

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
