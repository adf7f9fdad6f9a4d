"""A lesson does not depend on the seed of Python's hashes, which differs from process to process."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_the_page_is_the_same_for_every_hash_seed(tmp_path: Path) -> None:
    """With a rehearsal, whose questions once came in the order of a set."""
    command = [sys.executable, "-m", "pegwright", "lesson", str(ROOT / "examples/lobster-pot.json")]
    options = ["--parts", "page", "--no-picture", "--rehearse"]
    running = [
        subprocess.Popen(
            [*command, "--folder", str(tmp_path / seed), *options],
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT / "src")},
            stdout=subprocess.DEVNULL,
        )
        for seed in ("1", "2")
    ]
    assert [each.wait() for each in running] == [0, 0]
    pages = [(tmp_path / seed / "follow.html").read_bytes() for seed in ("1", "2")]
    assert pages[0] == pages[1]
