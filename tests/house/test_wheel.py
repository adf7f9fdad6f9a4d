"""A wheel built where there is no node: one sentence, or the page that was built before."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PAGE = "src/pegwright/server/page"


@pytest.fixture
def source(tmp_path: Path) -> Path:
    """What the sdist holds, as far as the builder looks at it."""
    for name in ("pyproject.toml", "hatch_build.py", "README.md", "LICENSE"):
        shutil.copy(ROOT / name, tmp_path)
    (tmp_path / "src/pegwright").mkdir(parents=True)
    (tmp_path / "src/pegwright/__init__.py").touch()
    shutil.copytree(ROOT / "examples", tmp_path / "examples")
    return tmp_path


def build(source: Path) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "hatchling", "build", "-t", "wheel"]
    bare = {**os.environ, "PATH": str(source)}
    return subprocess.run(command, cwd=source, env=bare, capture_output=True, text=True, check=False)


def test_without_node_the_source_says_so_in_one_sentence(source: Path) -> None:
    built = build(source)
    assert built.returncode == 1
    (sentence,) = built.stderr.splitlines()
    assert "needs Node.js" in sentence
    assert sentence.endswith(".")
    assert not list(source.rglob("*.whl"))


def test_a_page_that_was_built_is_taken_with_its_licences_and_the_pieces(source: Path) -> None:
    page = source / PAGE
    page.mkdir(parents=True)
    for name in ("index.html", "LICENCES.md"):
        (page / name).write_text("as built", "utf-8")
    built = build(source)
    assert built.returncode == 0, built.stderr
    (wheel,) = source.rglob("*.whl")
    names = {Path(name) for name in zipfile.ZipFile(wheel).namelist()}
    pieces = {p.relative_to(ROOT / "examples") for p in (ROOT / "examples").rglob("*.json")}
    assert pieces
    assert {Path("pegwright/examples") / p for p in pieces} <= names
    assert {Path("pegwright/server/page/index.html"), Path("pegwright/server/page/LICENCES.md")} <= names
