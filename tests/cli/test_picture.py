"""`pegwright picture` on a small chain: files of the form asked for, JSON as documented, faults told."""

from __future__ import annotations

import json

import pytest

import pegwright.workshop.pictures as paint
from pegwright.pattern import write_pattern
from pegwright.workshop import replace_file, starter_pattern


@pytest.fixture
def chain(tmp_path):
    file = tmp_path / "ferry.json"
    replace_file(file, write_pattern(starter_pattern("Ferry", pegs=6)))
    return file


def test_every_view_and_its_sizes(run, chain, tmp_path):
    folder = tmp_path / "out"
    code, out, _ = run("picture", str(chain), str(folder), "--view", "all", "--width", "200", "--json")
    value = json.loads(out)
    assert (code, value["ok"], value["title"]) == (0, True, "Ferry")
    assert [one["view"] for one in value["files"]] == ["front", "back", "side"]
    for one in value["files"]:
        data = (folder / f"ferry-{one['view']}.png").read_bytes()
        assert data[:8] == b"\x89PNG\r\n\x1a\n"  # ISO/IEC 15948, 5.2
        assert int.from_bytes(data[16:20], "big") == 200
        assert len(data) == one["bytes"]
    (lie,) = value["lies"]
    assert (lie["lie"], lie["girth_mm"], lie["at_rest"], lie["crossings"]) == ("flat", None, True, 0)
    assert lie["length_mm"] > lie["width_mm"] > lie["height_mm"] > 0


def test_the_ending_says_the_form_and_the_same_piece_gives_the_same_bytes(run, chain, tmp_path):
    svg, again, glb = tmp_path / "a.svg", tmp_path / "b.svg", tmp_path / "a.glb"
    for file in (svg, again, glb):
        assert run("picture", str(chain), str(file))[0] == 0
    assert svg.read_bytes().startswith(b"<svg")
    assert svg.read_bytes() == again.read_bytes()
    assert glb.read_bytes()[:4] == b"glTF"  # glTF 2.0, 4.4.2
    other = tmp_path / "c.svg"
    assert run("picture", str(chain), str(other), "--colourway", "A=#123456")[0] == 0
    assert b"#123456" in other.read_bytes()
    assert b"#123456" not in svg.read_bytes()


@pytest.mark.parametrize(("language", "told"), [("de", "von hinten gesehen"), ("es", "vista posterior")])
def test_the_description_is_in_the_language_asked_for(run, chain, tmp_path, language, told):
    svg = tmp_path / "a.svg"
    assert run("picture", str(chain), str(svg), "--view", "back", "--language", language)[0] == 0
    assert told in svg.read_text("utf-8").split("<desc>")[1].split("</desc>")[0]


@pytest.mark.parametrize(
    ("options", "told"),
    [
        (["--view", "worn"], "needs the girth"),
        (["--colourway", "Z=#123456"], "no colour Z"),
        (["--colourway", "A"], "write A=#204060"),
        (["--width", "5"], "100 to 8000"),
        (["--format", "glb", "--tension"], "png or svg"),
    ],
)
def test_faults_are_told_before_anything_is_solved(run, chain, monkeypatch, options, told):
    monkeypatch.setattr(paint, "bring_to_rest", lambda *_, **__: pytest.fail("solved"))
    code, _, err = run("picture", str(chain), *options)
    assert code == 2
    assert told in err


def test_ctrl_c_keeps_what_is_finished(run, chain, tmp_path, monkeypatch):
    painted = paint.portrait_png

    def stopped(seen, view, width, **options):
        if view == "back":
            raise KeyboardInterrupt
        return painted(seen, view, width, **options)

    monkeypatch.setattr(paint, "portrait_png", stopped)
    code, out, err = run("picture", str(chain), "--view", "all", "--width", "200", "--json")
    value = json.loads(out)
    assert (code, value["ok"], [one["view"] for one in value["files"]]) == (130, False, ["front"])
    assert "ferry-front.png" in err
    assert sorted(p.name for p in tmp_path.iterdir()) == ["ferry-front.png", "ferry.json"]
