"""Spoiled documents end in findings or in a piece, never in a crash; `python -m bench fuzz` spoils 20,000."""

from __future__ import annotations

import json
import random
import subprocess
import sys

import pytest

from pegwright.pattern import read_pattern
from pegwright.workshop import example_files, work
from testing.mutate import mutate

ORIGINALS = [path.read_bytes() for path in example_files().values()]


@pytest.mark.parametrize("batch", range(4))
def test_spoiled_documents_give_findings_or_a_piece(batch):
    for seed in range(batch * 100, batch * 100 + 100):
        rng = random.Random(seed)
        reading = read_pattern(mutate(rng.choice(ORIGINALS), rng))
        if reading.pattern is None:
            assert reading.findings, seed
        else:
            work(reading.pattern)


SMALL = {"pegwright": 2, "title": "Ebb", "loom": {"kind": "rows", "rows": 1, "pegs": 3}}
TURN = {"do": "turn"}


def test_a_refused_band_of_too_few_twists_has_its_line():
    """Seeds 6631, 8876 and 13457 of the bench once crashed here."""
    place = {"do": "place", "colour": "A", "over": ["A1", "A2", "A2"], "twists": [1], "turns": [2]}
    spoiled = {**SMALL, "colours": [{"letter": "A", "name": "grey", "hex": "#888888"}], "steps": [place]}
    reading = read_pattern(json.dumps(spoiled).encode())
    assert reading.pattern is not None, reading.findings
    (refused,) = [found for found in work(reading.pattern).findings if found.code == "peg-twice"]
    assert "place A over A1*2 ~ A2 A2" in refused.message


def test_a_long_run_of_refusals_is_broken_off_and_summed_up():
    reading = read_pattern(json.dumps({**SMALL, **GREEDY["refused bands"]}).encode())
    assert reading.pattern is not None
    made = work(reading.pattern)
    assert len(made.history.moves) == 60
    (broken_off,) = [found for found in made.findings if found.code == "too-many-refused"]
    assert broken_off.facts == {"count": 100, "left": 59_000 - 160}
    assert len([found for found in made.findings if found.code == "stack-full"]) == 20
    assert {"count": 80, "of": "stack-full"} in [found.facts for found in made.findings]


def nested(depth: int, inner: dict) -> dict:
    for _ in range(depth):
        inner = {"do": "repeat", "times": 10, "steps": [inner]}
    return inner


GREEDY = {
    "ten digits of rounds": {"steps": [{"do": "repeat", "times": 10**9, "steps": [TURN]}]},
    "empty rounds": {"steps": [{"do": "repeat", "times": 10**9, "steps": []}]},
    "rounds in rounds": {"steps": [nested(12, TURN)]},
    "motifs that double": {
        "motifs": [{"name": f"m{i}", "steps": [{"do": "motif", "name": f"m{i + 1}"}] * 2} for i in range(40)]
        + [{"name": "m40", "steps": [TURN]}],
        "steps": [{"do": "motif", "name": "m0"}],
    },
    "refused bands": {
        "colours": [{"letter": "A", "name": "grey", "hex": "#888888"}],
        "steps": [{"do": "place", "colour": "A", "over": ["A1", "A2"]}] * 59_000,
    },
    "one peg for all": {
        "steps": [
            {"do": "repeat", "times": 50_000, "steps": [{"do": "place", "colour": "A", "over": ["A1", "A2"]}]}
        ]
    },
    "to and fro": {
        "steps": [
            {"do": "repeat", "times": 50, "steps": [{"do": "place", "colour": "A", "over": ["A1", "A2"]}]},
            {
                "do": "repeat",
                "times": 500,
                "steps": [
                    {"do": "repeat", "times": 50, "steps": [{"do": "hook", "from": "A1", "to": "A3"}]},
                    {"do": "repeat", "times": 50, "steps": [{"do": "hook", "from": "A3", "to": "A1"}]},
                ],
            },
        ]
    },
    "long text": {"notes": "x" * 7_000_000},
    "many faults": {"steps": [{"do": "zap"}] * 200_000},
    "wrong steps": {"steps": [7] * 1_500_000},
    "many pegs": {"loom": {"kind": "rows", "rows": 700, "pegs": 10_000}},
    "two pegs 283 m apart": {
        "loom": {
            "kind": "pegs",
            "pegs": [
                {"at": "A1", "x_mm": -100_000, "y_mm": -100_000},
                {"at": "A2", "x_mm": 100_000, "y_mm": 100_000},
            ],
        },
        "colours": [{"letter": "A", "name": "grey", "hex": "#888888"}],
        "steps": [{"do": "place", "colour": "A", "over": ["A1", "A2"]}] * 2,
    },
    "a loom of 200 m": {
        "loom": {
            "kind": "pegs",
            "pegs": [{"at": f"A{k}", "x_mm": 2000 * k - 100_000, "y_mm": 0} for k in range(1, 101)],
        },
        "colours": [{"letter": "A", "name": "grey", "hex": "#888888"}],
        "steps": [
            {
                "do": "repeat",
                "times": 99,
                "pegs": 1,
                "steps": [{"do": "place", "colour": "A", "over": ["A1", "A2"]}],
            }
        ],
    },
    "many looms": {"loom": {"kind": "joined", "looms": [{"kind": "rows", "rows": 700, "pegs": 10_000}] * 50}},
}


@pytest.mark.parametrize("name", GREEDY)
def test_greedy_documents_stay_within_their_bounds(tmp_path, name):
    """At most 500 MB; the processor limit is wide, since machines differ: it is there to stop a hang."""
    file = tmp_path / "greedy.json"
    file.write_text(json.dumps({**SMALL, **GREEDY[name]}))
    done = subprocess.run(
        [sys.executable, "-c", CHILD, str(file)], capture_output=True, text=True, check=False
    )
    assert done.returncode in (1, 2), done.stderr[-2000:]
    assert int(done.stdout.rsplit("peak ", 1)[1]) < 500_000, "kilobytes"


CHILD = """
import resource, sys
resource.setrlimit(resource.RLIMIT_CPU, (60, 60))
from pegwright.cli import main
try:
    main(["check", sys.argv[1]])
finally:
    # ru_maxrss would start at the size of the process that started this one
    print("peak", next(line.split()[1] for line in open("/proc/self/status") if line.startswith("VmHWM")))
"""
