"""The glossary names every public noun of the house, with its type and room, and nothing else.

A new noun of a face gets a row in its room's table in `docs/glossary.md`, sorted by name.
"""

from __future__ import annotations

import ast
import importlib
import re
import types
import typing
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

import msgspec
import pytest

from tests.house.test_faces import ROOMS, SOURCE

GLOSSARY = Path(__file__).parents[2] / "docs" / "glossary.md"


def type_of(thing: object) -> str | None:
    """Return the type of a noun as the glossary says it, or None for functions and constants."""
    if isinstance(thing, type) and not isinstance(thing, types.GenericAlias):
        if issubclass(thing, BaseException):
            return "exception"
        if issubclass(thing, msgspec.Struct):
            return "Struct"
        return "NamedTuple" if issubclass(thing, tuple) and hasattr(thing, "_fields") else "class"
    return "alias" if typing.get_origin(thing) is not None else None


def nouns(room: str) -> dict[str, object]:
    """Return what a room's face shows besides functions and constants."""
    face = importlib.import_module(f"pegwright.{room}")
    shown = {name: getattr(face, name) for name in face.__all__}
    return {name: thing for name, thing in shown.items() if type_of(thing)}


def sections() -> dict[str, list[tuple[str, str, str]]]:
    """Return the rows of each room's table."""
    found: dict[str, list[tuple[str, str, str]]] = {}
    for part in re.split(r"^## ", GLOSSARY.read_text("utf-8"), flags=re.MULTILINE)[1:]:
        room = part.splitlines()[0].strip()
        found[room] = re.findall(r"^\| `(\w+)` \| (\w+) \| (.+) \|$", part, flags=re.MULTILINE)
    return found


def same(one: object, other: object) -> bool:
    """Say whether two nouns are one and the same thing; an alias is what it stands for."""
    return one is other or (type_of(one) == "alias" and one == other)


def shown_again(room: str) -> set[str]:
    """Return the nouns of a room's face that an earlier room shows too: they stand with that one."""
    line = list(sections())
    earlier = [nouns(other) for other in line[: line.index(room)] if other in ROOMS]
    return {
        name
        for name, thing in nouns(room).items()
        if any(name in face and same(face[name], thing) for face in earlier)
    }


def homonyms() -> dict[str, list[str]]:
    """Return the nouns that mean different things in different faces, with their rooms."""
    meanings: defaultdict[str, dict[str, object]] = defaultdict(dict)
    for room in ROOMS:
        for name, thing in nouns(room).items():
            meanings[name][room] = thing
    return {
        name: list(by_room)
        for name, by_room in meanings.items()
        if not all(same(thing, next(iter(by_room.values()))) for thing in by_room.values())
    }


@pytest.mark.parametrize("room", ROOMS)
def test_every_noun_of_a_face_is_in_the_glossary(room: str) -> None:
    written = {name for name, _, _ in sections()[room]}
    assert set(nouns(room)) - written - shown_again(room) == set()


@pytest.mark.parametrize("room", ROOMS)
def test_the_glossary_names_nothing_that_is_not_there(room: str) -> None:
    face = nouns(room)
    rows = sections()[room]
    assert [name for name, _, _ in rows if name not in face] == []
    assert {name: kind for name, kind, _ in rows} == {name: type_of(face[name]) for name, _, _ in rows}
    assert [name for name, _, _ in rows] == sorted({name for name, _, _ in rows}, key=str.casefold)


def test_an_entry_is_one_sentence() -> None:
    rows = [row for room in sections().values() for row in room]
    assert rows
    assert [name for name, _, text in rows if not text.endswith(".") or ". " in text] == []


def test_one_word_means_one_thing() -> None:
    assert homonyms() == {}


ARRAYS = {"Flags", "Floats", "Ints", "Vector"}
"""Names of plain arrays and of three numbers mean the same wherever they are given."""


def own_nouns(text: str) -> Iterator[str]:
    """Yield the classes and aliases that a module makes, but for those that it keeps to itself."""
    for node in ast.parse(text).body:
        if isinstance(node, ast.ClassDef):
            yield node.name
        elif isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name):
            name = node.targets[0].id
            if name[:1].isupper() and not name.isupper():
                yield name


def test_classes_and_aliases_are_seen() -> None:
    assert list(own_nouns("class Part: ...\nPhase = int\nMOST = 3\nmost = 4\n")) == ["Part", "Phase"]


def test_no_noun_is_made_in_two_places() -> None:
    """Inside the rooms too: what is no face's business may still be read beside its namesake."""
    made: defaultdict[str, list[str]] = defaultdict(list)
    for file in sorted(SOURCE.rglob("*.py")):
        for name in own_nouns(file.read_text("utf-8")):
            if not name.startswith("_") and name not in ARRAYS:
                made[name].append(file.relative_to(SOURCE).as_posix())
    assert {name: files for name, files in made.items() if len(files) > 1} == {}
