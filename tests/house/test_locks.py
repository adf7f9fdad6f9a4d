"""The locks name what `make demo` and `make test` install, and agree with what `pyproject.toml` asks for."""

from __future__ import annotations

import copy
import re
import tomllib
from pathlib import Path
from typing import Any

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).parents[2]
PROJECT: dict[str, Any] = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
EXTRAS = {"demo": ("film",), "test": ("film", "test", "dev")}
INTERPRETERS = ("3.11", "3.12", "3.13")

Lock = list[tuple[Requirement, list[str]]]
"""Requirements with their hashes."""


def read_lock(name: str) -> Lock:
    """Return what a lock names."""
    text = (ROOT / "locks" / f"{name}.txt").read_text("utf-8").replace("\\\n", " ")
    lines = [line for line in text.splitlines() if line and not line.lstrip().startswith("#")]
    return [(Requirement(line.partition(" --hash=")[0]), re.findall(r"--hash=(\S+)", line)) for line in lines]


def versions(lock: Lock, interpreter: str) -> dict[str, str]:
    """Return what a lock brings on Linux with one interpreter: versions by name."""
    here = {
        "python_version": interpreter,
        "python_full_version": f"{interpreter}.0",
        "os_name": "posix",
        "sys_platform": "linux",
        "platform_system": "Linux",
        "platform_python_implementation": "CPython",
    }
    found: dict[str, str] = {}
    for one, _ in lock:
        if one.marker is None or one.marker.evaluate(here):
            (pin,) = one.specifier
            assert pin.operator == "=="
            assert found.setdefault(canonicalize_name(one.name), pin.version) == pin.version
    return found


def disagreements(
    project: dict[str, Any], lock: Lock, extras: tuple[str, ...], interpreter: str
) -> list[str]:
    """Return what the project asks for and the lock does not bring."""
    brought = versions(lock, interpreter)
    optional = project["project"]["optional-dependencies"]
    asked = [
        *project["project"]["dependencies"],
        *(line for extra in extras for line in optional[extra]),
        *project["build-system"]["requires"],
        *project["dependency-groups"]["install"],
    ]
    return [
        line
        for line in asked
        for one in [Requirement(line)]
        if (version := brought.get(canonicalize_name(one.name))) is None or version not in one.specifier
    ]


@pytest.mark.parametrize("interpreter", INTERPRETERS)
@pytest.mark.parametrize("name", EXTRAS)
def test_the_lock_brings_what_the_project_asks_for(name: str, interpreter: str) -> None:
    assert not disagreements(PROJECT, read_lock(name), EXTRAS[name], interpreter), "run `make lock`"


def test_a_lock_that_lags_behind_is_noticed() -> None:
    """A new library, a raised version and one in an extra: the test above can fail."""
    changed = copy.deepcopy(PROJECT)
    changed["project"]["dependencies"] += ["never-locked>=1", "NumPy>=99"]
    changed["project"]["optional-dependencies"]["film"] = ["av>=99"]
    lagging = disagreements(changed, read_lock("demo"), EXTRAS["demo"], "3.11")
    assert lagging == ["never-locked>=1", "NumPy>=99", "av>=99"]


@pytest.mark.parametrize("interpreter", INTERPRETERS)
def test_what_the_demo_installs_is_what_the_tests_test(interpreter: str) -> None:
    demo, test = (versions(read_lock(name), interpreter) for name in ("demo", "test"))
    assert demo.items() <= test.items()


@pytest.mark.parametrize("name", EXTRAS)
def test_a_lock_names_hashes_and_no_place(name: str) -> None:
    """The machine that installs says where from: a lock that named a place would fail elsewhere."""
    for one, hashes in read_lock(name):
        assert one.url is None
        assert hashes
        assert all(re.fullmatch(r"sha256:[0-9a-f]{64}", each) for each in hashes)
    text = (ROOT / "locks" / f"{name}.txt").read_text("utf-8")
    assert not re.search(r"://|^-|file:", text, re.MULTILINE)


def test_the_classifiers_name_the_interpreters() -> None:
    named = [c.rpartition(" ")[2] for c in PROJECT["project"]["classifiers"] if ":: 3." in c]
    assert tuple(named) == INTERPRETERS
