"""The page of the rooms draws the house as it is: every room, its storey and its imports."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest

HOUSE = Path(__file__).parents[2]
ROOMS = HOUSE / "src" / "pegwright"
PAGE = (HOUSE / "docs" / "rooms" / "README.md").read_text("utf-8")
ROWS = re.findall(r"^\| \[(\w+)\]\((\w+)\.md\) \| .+ \| (.+) \|$", PAGE, re.M)


def rooms_on_disk() -> set[str]:
    return {each.parent.name for each in ROOMS.glob("*/__init__.py")}


def rooms_imported_by(room: str) -> set[str]:
    text = "\n".join(each.read_text("utf-8") for each in (ROOMS / room).rglob("*.py"))
    return set(re.findall(r"(?:from|import) pegwright\.(\w+)", text)) - {room, "finding"}


def test_every_room_has_a_row_and_a_page() -> None:
    assert {room for room, _, _ in ROWS} == rooms_on_disk()
    for room, page, _ in ROWS:
        assert room == page
        assert (HOUSE / "docs" / "rooms" / f"{page}.md").read_text("utf-8").startswith("# ")


def test_storeys_are_those_of_the_contract() -> None:
    contracts = tomllib.loads((HOUSE / "pyproject.toml").read_text("utf-8"))["tool"]["importlinter"][
        "contracts"
    ]
    layers = next(each["layers"] for each in contracts if each["name"] == "The line runs one way")
    storeys = next(block for block in PAGE.split("```") if block.strip().startswith("cli\n"))
    drawn = [line.strip() for line in storeys.strip().splitlines()]
    assert drawn == [layer for layer in layers if layer != "__main__"]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row[0])
def test_a_room_imports_what_its_row_says(row: tuple[str, str, str]) -> None:
    room, _, imports = row
    if room in ("workshop", "server", "cli"):  # any lower room
        return
    assert rooms_imported_by(room) == set(re.findall(r"\w+", imports))
