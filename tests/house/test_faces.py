"""Every room has a face, and the rooms know each other by their faces only."""

from __future__ import annotations

import ast
import importlib
import types
from collections.abc import Iterator
from pathlib import Path

import pytest

SOURCE = Path(__file__).parents[2] / "src" / "pegwright"
ROOMS = sorted(face.parent.name for face in SOURCE.glob("*/__init__.pyi"))


def imports(file: Path) -> Iterator[str]:
    """Yield the dotted module of every import of ours in the file, wherever in it it stands."""
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.startswith("pegwright."):
            inside = SOURCE.joinpath(*node.module.split(".")[1:])
            for name in node.names:
                yield f"{node.module}.{name.name}" if (inside / f"{name.name}.py").exists() else node.module
        elif isinstance(node, ast.Import):
            yield from (name.name for name in node.names if name.name.startswith("pegwright."))


@pytest.mark.parametrize("room", ROOMS)
def test_what_a_face_shows_is_there(room: str) -> None:
    """Every name loads, and none is hidden behind a module of the same name."""
    face = importlib.import_module(f"pegwright.{room}")
    assert face.__all__
    for name in face.__all__:
        assert not isinstance(getattr(face, name), types.ModuleType), name
        assert not (SOURCE / room / f"{name}.py").exists(), f"{name} would be shadowed by its module"


def test_a_room_is_entered_by_its_face() -> None:
    """No file reaches past another room's face, and none goes round by its own."""
    deep, round_about = [], []
    for file in sorted(SOURCE.rglob("*.py")):
        here = file.relative_to(SOURCE).parts
        for module in imports(file):
            room, *inner = module.split(".")[1:]
            if inner and room in ROOMS and room != here[0]:
                deep.append(f"{'/'.join(here)}: {module}")
            if not inner and room in ROOMS and room == here[0] and file.name != "__init__.py":
                round_about.append(f"{'/'.join(here)}: {module}")
    assert deep == []
    assert round_about == []


def test_tests_and_benches_share_testing_only() -> None:
    """What both need lies in `testing/`; neither imports the other, and `testing/` imports neither."""
    root = SOURCE.parents[1]
    barred = {
        "tests": {"bench"},
        "bench": {"tests"},
        "testing": {"tests", "bench"},
        "src": {"tests", "bench", "testing"},
    }
    found = []
    for folder, others in barred.items():
        for file in sorted((root / folder).rglob("*.py")):
            for node in ast.walk(ast.parse(file.read_text("utf-8"))):
                names = [node.module or ""] if isinstance(node, ast.ImportFrom) and not node.level else []
                names += [name.name for name in node.names] if isinstance(node, ast.Import) else []
                found += [
                    f"{file.relative_to(root)}: {name}" for name in names if name.split(".")[0] in others
                ]
    assert found == []
