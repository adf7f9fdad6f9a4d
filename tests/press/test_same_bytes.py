"""A lesson does not depend on the seed of Python's hashes, which differs from process to process."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_a_lesson_is_the_same_for_every_hash_seed(tmp_path: Path) -> None:
    """All parts but the film, which `test_film.py` compares, and the picture.

    With a rehearsal, whose questions once came in the order of a set.
    """
    command = [sys.executable, "-m", "pegwright", "lesson", str(ROOT / "examples/lobster-pot.json")]
    options = ["--no-picture", "--rehearse"]
    running = [
        subprocess.Popen(
            [*command, "--folder", str(tmp_path / seed), *options],
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT / "src")},
            stdout=subprocess.DEVNULL,
        )
        for seed in ("1", "2")
    ]
    assert [each.wait() for each in running] == [0, 0]
    one, other = (files_under(tmp_path / seed) for seed in ("1", "2"))
    assert {"lesson.zip", "follow.html", "handout-a4.pdf", "prompter.html", "captions.vtt"} <= set(one)
    assert set(one) == set(other)
    assert [name for name in one if one[name] != other[name]] == []


def files_under(folder: Path) -> dict[str, bytes]:
    return {str(p.relative_to(folder)): p.read_bytes() for p in folder.rglob("*") if p.is_file()}
