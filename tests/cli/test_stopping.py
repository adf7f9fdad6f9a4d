"""Ctrl-C at any moment: one sentence, exit 130, no stack trace. And what needs little, loads little."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time

import pytest

from pegwright.pattern import write_pattern
from pegwright.workshop import replace_file, starter_pattern


def stopped_when(loaded, wait_s, *arguments):
    """Run a command and stop it once a module is loaded, which Python itself tells (`-X importtime`)."""
    with subprocess.Popen(
        [sys.executable, "-X", "importtime", "-m", "pegwright", *arguments],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        # A shell may start its jobs deaf to the signal; the command is not to inherit that.
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.default_int_handler),  # noqa: PLW1509
    ) as process:
        for line in process.stderr:
            if line.rstrip().endswith(f" {loaded}"):
                break
        else:
            pytest.fail(f"{loaded} was never loaded")
        time.sleep(wait_s)
        os.kill(process.pid, signal.SIGINT)
        out, err = process.communicate(timeout=120)
    told = [line for line in err.splitlines() if not line.startswith("import time:")]
    # A shell has 128 + N for "ended by signal N"; Python may end so when the signal met code made from text.
    code = process.returncode if process.returncode >= 0 else 128 - process.returncode
    return code, out, told


@pytest.fixture(scope="module")
def long_piece(tmp_path_factory):
    """A chain so long that working it takes seconds."""
    file = tmp_path_factory.mktemp("long") / "flood.json"
    replace_file(file, write_pattern(starter_pattern("Flood", pegs=9000)))
    return file


@pytest.mark.parametrize(
    ("loaded", "wait_s"),
    [
        ("cyclopts.exceptions", 0),  # the command line itself is being loaded
        ("rich.console", 0),
        ("pegwright.proof.word_reduction", 0),  # the line is
        ("pegwright.proof.least_checker", 0.05),
        ("pegwright.cli.views", 0.1),  # the piece is being worked; a quick machine needs a second for it
        ("pegwright.cli.views", 0.4),
    ],
)
def test_ctrl_c_ends_with_a_sentence(long_piece, loaded, wait_s):
    code, out, told = stopped_when(loaded, wait_s, "check", str(long_piece))
    assert (code, out, told) == (130, "", ["stopped; nothing is left half written"])


def test_ctrl_c_in_json(long_piece):
    code, out, told = stopped_when("pegwright.cli.views", 0.3, "check", str(long_piece), "--json")
    assert (code, told) == (130, ["stopped; nothing is left half written"])
    assert json.loads(out) == {"ok": False, "reason": told[0], "findings": []}


def test_ctrl_c_when_all_is_said_changes_nothing():
    """In the very last moment it ended with 130 and no sentence, or with a trace."""
    code = (
        "import atexit, os, signal, sys; from pegwright.cli import main\n"
        "signal.signal(signal.SIGINT, signal.default_int_handler)\n"
        "atexit.register(os.kill, os.getpid(), signal.SIGINT)\n"
        "sys.argv = ['pegwright', 'schema']; main()"
    )
    ended = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert (ended.returncode, ended.stderr) == (0, "")
    assert json.loads(ended.stdout)


@pytest.mark.parametrize("arguments", [["--help"], ["schema"], ["new", "neap.json"]])
def test_what_needs_little_loads_little(tmp_path, arguments):
    heavy = {"numpy", "scipy", "numba", "proof", "lesson", "press", "rehearsal", "shape", "server"}
    code = (
        "import sys; from pegwright.cli import main\n"
        f"try: main({arguments!r})\n"
        "except SystemExit as end: assert not end.code\n"
        f"print([m for m in sys.modules if m.split('.')[:2][-1] in {heavy!r}], file=sys.stderr)"
    )
    ended = subprocess.run(
        [sys.executable, "-c", code], cwd=tmp_path, capture_output=True, text=True, check=True
    )
    assert ended.stderr.strip() == "[]"
