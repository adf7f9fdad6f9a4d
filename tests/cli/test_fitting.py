"""`pegwright fit` on a small chain: the documented JSON, and how its numbers hang together."""

from __future__ import annotations

import itertools
import json

import pytest

from pegwright.pattern import write
from pegwright.workshop import starter, write_whole


@pytest.fixture
def chain(tmp_path):
    file = tmp_path / "ferry.json"
    write_whole(file, write(starter("Ferry", pegs=6)))
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
    longer_mm = small["extension"] * value["extension_mm"]
    assert small["length_mm"] == pytest.approx(value["length_mm"] + longer_mm)
    assert small["supplies"]["bands"] > small["extension"] > 0
    assert (unread["asked"], unread["extension"], unread["supplies"]) == ("nothing", None, None)
    if value["wrists_mm"] is not None:
        assert value["wrists_mm"][0] == pytest.approx(value["length_mm"])
        assert value["wrists_mm"][1] <= value["length_mm"] / 0.85 + 1e-9


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
    ],
)
def test_slips_in_the_line(run, chain, options, told):
    code, out, err = run("fit", str(chain), *options)
    assert code == 2
    assert told in out + err
