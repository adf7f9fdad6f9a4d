"""The standard output may be closed, full or no longer read: one sentence, exit code 2, no trace."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from typing import IO

import pytest

ROOT = Path(__file__).parents[2]
PIECE = str(ROOT / "examples" / "slack-water-mat.json")
ENV = {**os.environ, "PYTHONPATH": str(ROOT / "src")}


def run_into(out: IO[str] | int) -> subprocess.CompletedProcess[str]:
    """Show a piece with that standard output."""
    return subprocess.run(
        [sys.executable, "-m", "pegwright", "show", PIECE],
        stdout=out,
        stderr=subprocess.PIPE,
        text=True,
        check=False,
        env=ENV,
        timeout=300,
    )


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
def test_a_full_output_ends_with_2() -> None:
    with Path("/dev/full").open("w") as full:
        done = run_into(full)
    assert done.returncode == 2
    assert done.stderr == f"the output cannot be written: {os.strerror(28)}\n"


@pytest.mark.skipif(os.name != "posix", reason="a shell closes it")
def test_a_closed_output_ends_with_2() -> None:
    done = subprocess.run(
        ["sh", "-c", f'"{sys.executable}" -m pegwright schema >&-'],
        capture_output=True,
        text=True,
        check=False,
        env=ENV,
        timeout=300,
    )
    assert (done.returncode, done.stderr) == (2, "the output cannot be written: it is closed\n")


def test_an_output_that_is_read_no_further_ends_with_2() -> None:
    reading, writing = os.pipe()
    os.close(reading)
    done = run_into(writing)
    os.close(writing)
    assert done.returncode == 2
    assert done.stderr.count("\n") == 1


def test_names_and_looms_that_are_too_large_are_told(run, tmp_path: Path) -> None:  # type: ignore[no-untyped-def]
    """`new` of 300 letters "went wrong inside", and `--rows 700 --pegs 10000` wrote what `check` refuses."""
    code, _, said = run("new", str(tmp_path / ("x" * 300 + ".json")))
    assert (code, "went wrong" in said) == (2, False)
    code, _, said = run("new", str(tmp_path / "tide.json"), "--title", "x" * 300)
    assert (code, "1 to 200" in said) == (2, True)
    code, _, said = run("new", str(tmp_path / "tide.json"), "--rows", "700", "--pegs", "10000")
    assert code == 2
    assert "7,000,000 pegs" in said
    assert list(tmp_path.iterdir()) == []
