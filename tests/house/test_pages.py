"""The tutorial and the pages about fit and calibration are run as they stand."""

from __future__ import annotations

import doctest
from pathlib import Path

import pytest

DOCS = Path(__file__).parents[2] / "docs"


@pytest.mark.parametrize("page", ["calibration.md", "fit.md", "tutorial.md"])
def test_a_page_shows_what_comes_out(page: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(DOCS.parent)
    ran = doctest.testfile(str(DOCS / page), module_relative=False, encoding="utf-8")
    assert ran.attempted > 5
    assert ran.failed == 0
