"""What a program can check of PDF/UA-1 (ISO 14289-1): by a kept validator, and by reading the tree.

`pdfua` (MIT, on pikepdf) checks a part of the Matterhorn Protocol's failure conditions; the rest asks for a
person. Rules that it cannot evaluate count as not passed, but for the one on headings, which is checked here.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

import pdfua
import pikepdf
import pytest

from examples.pieces import PIECES
from pegwright.lesson import filming_plan, write_script
from pegwright.press import Edition, handout_pdf, leaf_pdf
from tests.lesson.pieces import lesson

CASES: list[tuple[str, str, Edition]] = [
    ("twin-hulls", "en", "standard"),
    ("herring-tail", "de", "large"),
    ("ebb-line", "es", "giant"),
    ("lobster-pot", "de", "grey"),
]
_HEADINGS = "UA-14-001"


def broken_rules(pdf: bytes, folder: Path) -> list[str]:
    """Return what the validator finds, and what it could not look at."""
    path = folder / "checked.pdf"
    path.write_bytes(pdf)
    report = pdfua.validate(str(path))
    found = [f"{finding.rule_id}: {finding.message}" for finding in report.findings]
    left = [one.rule_id for one in report.outcomes if one.skipped_reason and one.rule_id != _HEADINGS]
    assert len(report.outcomes) >= 12
    return found + left


def walk(node: Any) -> Iterator[Any]:
    """Yield every element of the tree of structure in reading order."""
    if isinstance(node, pikepdf.Array):
        for kid in node:
            yield from walk(kid)
    elif isinstance(node, pikepdf.Dictionary):
        if "/S" in node:
            yield node
        if "/K" in node:
            yield from walk(node["/K"])


def kind(node: Any) -> str:
    return str(node.get("/S", ""))


@pytest.mark.parametrize(("name", "language", "edition"), CASES)
def test_a_handout_breaks_no_rule_that_is_checked(
    name: str, language: str, edition: Edition, tmp_path: Path
) -> None:
    """The validator has nothing to say; and the tree is one that a screen reader can walk."""
    made = lesson(PIECES[name](), language=language)
    pdf = handout_pdf(made, edition=edition)
    assert broken_rules(pdf, tmp_path) == []
    with pikepdf.open(io.BytesIO(pdf)) as document:
        assert str(document.Root.Lang) == language
        assert document.Root.ViewerPreferences.DisplayDocTitle
        assert all(page.get("/Tabs", pikepdf.Name.S) == pikepdf.Name.S for page in document.pages)
        tree = list(walk(document.Root.StructTreeRoot.K))
        levels = [int(kind(node)[2]) for node in tree if kind(node) in {f"/H{n}" for n in range(1, 7)}]
        assert levels[0] == 1
        assert levels.count(1) == 1
        assert all(b <= a + 1 for a, b in pairwise(levels))
        assert levels.count(3) >= len(made.steps)
        figures = [node for node in tree if kind(node) == "/Figure"]
        assert figures
        assert all(str(node.Alt).strip() for node in figures)
        for node in tree:
            if kind(node) == "/L":
                assert {kind(kid) for kid in node.K} <= {"/LI", "/Caption"}
            if kind(node) == "/LI":
                assert "/LBody" in {kind(kid) for kid in node.K}
            if kind(node) == "/TR":
                assert {kind(kid) for kid in node.K} <= {"/TH", "/TD"}
        assert any(kind(node) == "/TH" for node in tree), "the supplies have heads"


def test_leaves_break_no_rule_that_is_checked(tmp_path: Path) -> None:
    """The filming plan, of which script and kit sheet are the like."""
    made = lesson(PIECES["buoy-line"](), language="es")
    assert broken_rules(leaf_pdf(filming_plan(made, write_script(made))), tmp_path) == []


def test_the_validator_sees_what_is_broken(tmp_path: Path) -> None:
    """A handout without its language, its title shown or its marks is found out."""
    pdf = handout_pdf(lesson(PIECES["twin-hulls"]()))
    for name in ("/Lang", "/MarkInfo", "/StructTreeRoot"):
        with pikepdf.open(io.BytesIO(pdf)) as document:
            del document.Root[name]
            spoiled = io.BytesIO()
            document.save(spoiled)
        assert broken_rules(spoiled.getvalue(), tmp_path) != [], name
