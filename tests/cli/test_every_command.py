"""Awkward documents and names through every command: each ends with 0, 1 or 2, none with a fault inside.

`python -m bench attack` takes 20,000 spoilt documents through the same commands.
"""

from __future__ import annotations

import json
import os
import random
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from pegwright.cli.commands import COMMANDS as NAMES
from pegwright.pattern import write_pattern
from pegwright.text import encode_pattern
from pegwright.workshop import open_pattern, starter_pattern
from testing.every_command import COMMANDS, PLACES, fault_of, odd_arguments

PLACED = [{"do": "place", "colour": "A", "over": [f"A{k}", f"A{k + 1}"]} for k in (1, 2, 3)]
WORKED = [
    *PLACED,
    {"do": "hook", "from": "A3", "to": "A2"},
    {"do": "hook", "from": "A2", "to": "A1"},
    {"do": "clip", "at": ["A1"]},
]
COLOURS = [{"letter": "A", "name": "slate", "hex": "#4A5A6A"}]


def loom(*places_mm: tuple[float, float]) -> dict[str, Any]:
    pegs = [{"at": f"A{k}", "x_mm": x, "y_mm": y} for k, (x, y) in enumerate(places_mm, start=1)]
    return {"kind": "pegs", "pegs": pegs}


AWKWARD = {
    "two pegs in one place": (loom((0, 0), (16, 0), (16, 0), (32, 0)), WORKED),
    "all pegs in one place": (loom((0, 0), (0, 0), (0, 0), (0, 0)), WORKED),
    "pegs a hair apart": (loom((0, 0), (1e-9, 0), (16, 0), (16, 1e-9)), WORKED),
    "pegs as near as they may be": (loom((0, 0), (1, 0), (2, 0), (3, 0)), WORKED),
    "a round of pegs where rings meet": (
        {"kind": "round", "pegs": 4, "diameter_mm": 64, "rings": 3, "ring_gap_mm": 16},
        WORKED,
    ),
    "nothing at all": ({"kind": "rows", "rows": 1, "pegs": 1}, []),
}


@pytest.mark.parametrize("name", AWKWARD)
def test_awkward_looms_go_through_every_command(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Two pegs at one place were divided by their distance."""
    monkeypatch.setenv("PEGWRIGHT_CACHE", str(tmp_path / "cache"))
    layout, steps = AWKWARD[name]
    document = {"pegwright": 2, "title": "Ebb", "loom": layout, "colours": COLOURS, "steps": steps}
    (tmp_path / PLACES["FILE"]).write_text(json.dumps(document))
    pattern = open_pattern(tmp_path / PLACES["FILE"]).pattern
    assert pattern is not None
    (tmp_path / PLACES["TEXT"]).write_bytes(encode_pattern(pattern, PLACES["TEXT"]))
    (tmp_path / PLACES["WORDS"]).write_text("Place a band over A1 and A2. Put a clip on A1.")
    (tmp_path / PLACES["CAPTIONS"]).write_text("[0:01] Place a band over A1 and A2.\n[0:05] Clip it.\n")
    (tmp_path / PLACES["STASH"]).write_text('{"stash": 1}')
    assert {command.arguments: fault for command in COMMANDS if (fault := command.run(tmp_path))} == {}


def test_every_command_is_tried() -> None:
    """A new command is to be tried with bad documents from its first day."""
    tried = {command.arguments.split()[0] for command in COMMANDS} | {"calibrate", "new"}
    assert NAMES.keys() - tried == {"studio", "schema", "demo", "batch", "atlas"}, (
        "these read no document, or start processes"
    )


@pytest.mark.parametrize("seed", range(40))
def test_odd_arguments_are_told_in_a_sentence(seed: int, tmp_path: Path) -> None:
    assert fault_of(odd_arguments(tmp_path, random.Random(seed))) == ""


@pytest.mark.parametrize("option", ["supplies --stash", "rehearse --likelihood", "rehearse --seen"])
def test_a_pipe_given_beside_the_piece_is_not_waited_for(option: str, run: Any, tmp_path: Path) -> None:
    """A named pipe as the stash made the command wait for ever."""
    (tmp_path / "ebb.json").write_bytes(write_pattern(starter_pattern("Ebb", pegs=4)))
    os.mkfifo(tmp_path / "pipe")
    command, name = option.split()
    code, out, err = run(command, str(tmp_path / "ebb.json"), name, str(tmp_path / "pipe"))
    assert code == 2
    assert "cannot be read" in out + err


@pytest.mark.parametrize("port", ["99999999", "65536", "-1", "1e9", "x"])
def test_a_port_that_cannot_be_is_told(port: str, run: Any, tmp_path: Path) -> None:
    """`studio --port 99999999` "went wrong inside"."""
    code, out, err = run("studio", str(tmp_path), f"--port={port}", "--no-browser")
    assert code == 2
    assert "port" in out + err
    assert "went wrong" not in out + err


@pytest.mark.parametrize("size", [{"bore_mm": 1e-6}, {"thickness_mm": 1e-6}])
def test_bands_too_small_to_see_are_refused(size: dict[str, float], run: Any, tmp_path: Path) -> None:
    """Bands of a millionth of a millimetre took 2 GB."""
    document = json.loads(write_pattern(starter_pattern("Ebb", pegs=4)))
    (tmp_path / "ebb.json").write_text(json.dumps({**document, "bands": [size]}))
    for command in ("check", "fit", "picture", "lesson"):
        code, out, err = run(command, str(tmp_path / "ebb.json"))
        assert code == 2
        assert next(iter(size)) in out + err


def test_a_chain_of_ten_thousand_is_shown(tmp_path: Path) -> None:
    """It was not done within a minute. The processor limit is wide: it is there to stop a hang."""
    (tmp_path / "flood.json").write_bytes(write_pattern(starter_pattern("Flood", pegs=9999)))
    code = (
        "import resource, sys; resource.setrlimit(resource.RLIMIT_CPU, (40, 40))\n"
        "from pegwright.cli import main; main(sys.argv[1:])"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, "show", str(tmp_path / "flood.json")],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode in (0, 1), done.stderr[-500:]
    assert "place A over A9998 A9999" in done.stdout
