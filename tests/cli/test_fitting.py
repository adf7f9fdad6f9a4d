"""`pegwright fit` on a small chain: the documented JSON, and how its numbers hang together."""

from __future__ import annotations

import itertools
import json

import pytest

from pegwright.pattern import Extend, write_pattern
from pegwright.workshop import open_pattern, replace_file, starter_pattern, work


@pytest.fixture
def chain(tmp_path):
    file = tmp_path / "ferry.json"
    replace_file(file, write_pattern(starter_pattern("Ferry", pegs=6)))
    return file


def test_a_small_chain_is_measured_and_told(run, chain):
    """0.85 to 1.0 of the wrist is common practice, no source."""
    code, out, _ = run("fit", str(chain), "--wrist", "6 1/2 in", "--grade", "S,nothing", "--json")
    value = json.loads(out)
    assert value["title"] == "Ferry"
    assert value["ok"] is (code == 0)
    pulls = value["curve"]
    assert pulls[0] == {"pull_n": 0.0, "length_mm": value["length_mm"]}
    for less, more in itertools.pairwise(pulls):
        assert less["pull_n"] < more["pull_n"]
        assert less["length_mm"] < more["length_mm"]
    assert value["worn"]["wrist_mm"] == pytest.approx(6.5 * 25.4)
    assert value["worn"]["ease"] == pytest.approx(value["length_mm"] / (6.5 * 25.4))
    assert value["worn"]["feel"] == "tight", "five bands are no bracelet"
    assert "fit-tight" in {one["code"] for one in value["findings"]}
    assert code == 1
    small, unread = value["grades"]
    repeats = value["repeats"]
    longer_mm = small["extension"] * value["extension_mm"]
    longer_mm += (small["repeats"] - repeats["now"]) * repeats["one_mm"]
    assert small["length_mm"] == pytest.approx(value["length_mm"] + longer_mm)
    assert (repeats["least"], repeats["now"], repeats["most"], repeats["bands"]) == (1, 4, 4, 1)
    assert small["supplies"]["bands"] > small["extension"] > 0
    assert (unread["asked"], unread["extension"], unread["supplies"]) == ("nothing", None, None)
    if value["wrists_mm"] is not None:
        assert value["wrists_mm"][0] == pytest.approx(value["length_mm"])
        assert value["wrists_mm"][1] <= value["length_mm"] / 0.85 + 1e-9


def test_the_piece_for_a_wrist_is_written_and_holds(run, chain, tmp_path):
    """What is written has the repeats and the extension that were told; an old file is never replaced."""
    new = tmp_path / "ferry-for-me.json"
    code, out, _ = run("fit", str(chain), "--size", "S", "--out", str(new), "--json")
    plan = json.loads(out)["plan"]
    made = work(open_pattern(new).pattern)
    assert made.holds
    assert sum(step.bands for step in made.pattern.steps if isinstance(step, Extend)) == plan["extension"]
    assert len(made.proof.verdicts) == 6 + plan["extension"] + plan["repeats"] - 4
    before = new.read_bytes()
    code, _, err = run("fit", str(chain), "--size", "S", "--out", str(new))
    assert (code, "there already" in err) == (2, True)
    assert new.read_bytes() == before


@pytest.mark.parametrize(
    ("finish", "code"), [({"do": "knot", "at": ["A1"]}, "fit-not-closed"), (None, "fit-falls-apart")]
)
def test_no_wrist_is_named_for_what_is_not_worn(run, tmp_path, finish, code):
    """A key tag hangs from a cord; three bands that were never hooked hang from nothing."""
    document = json.loads(write_pattern(starter_pattern("Tag", pegs=4)))
    laid, turn, hooked, *_ = document["steps"]
    document["steps"] = [laid] if finish is None else [laid, turn, hooked, finish]
    file = tmp_path / "tag.json"
    file.write_text(json.dumps(document))
    _, out, _ = run("fit", str(file), "--wrist", "16 cm", "--json")
    value = json.loads(out)
    assert code in {one["code"] for one in value["findings"]}
    assert "fit-tight" not in {one["code"] for one in value["findings"]}
    assert value["wrists_mm"] is None
    assert (value["length_mm"] > 0) is (finish is not None)
    _, out, _ = run("fit", str(file))
    assert "suits" not in out


def test_the_words_take_care(run, chain):
    code, out, _ = run("fit", str(chain))
    assert "mm long at rest" in out
    assert "Follow the rules where you live" in out
    assert code == 0


@pytest.mark.parametrize(
    ("options", "told"),
    [
        (["--wrist", "16 cm", "--size", "M"], "one of --wrist, --size and --age"),
        (["--wrist", "3 m"], "cannot be right"),
        (["--size", "enormous"], "enormous"),
        (["--out", "new.json"], "--wrist, --size or --age"),
    ],
)
def test_slips_in_the_line(run, chain, options, told):
    code, out, err = run("fit", str(chain), *options)
    assert code == 2
    assert told in out + err
