"""The studio dies at any moment, and no edit is lost: the browser keeps what is not on the disk yet."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, expect

from testing.mortal_studio import MortalStudio
from tests.studio.conftest import Bench, open_page


@pytest.fixture
def mortal(tmp_path: Path) -> Iterator[MortalStudio]:
    """A studio of its own, to be killed."""
    made = MortalStudio(tmp_path / "pieces")
    yield made
    made.kill()


def lay(bench: Bench, a: str, b: str) -> None:
    """Lay a band without waiting for anybody."""
    bench.page.mouse.move(*bench.middle(a))
    bench.page.mouse.down()
    bench.page.mouse.move(*bench.middle(b), steps=3)
    bench.page.mouse.up()


def pegs_of(document: dict[str, Any]) -> list[list[str]]:
    return [step["over"] for step in document.get("steps", [])]


def test_a_page_that_is_open_goes_on_with_the_studio_that_is_started_again(
    browser: Browser, mortal: MortalStudio
) -> None:
    """Killed, edited, started again: the page takes the new key and saves; the verdict is of the last."""
    first = mortal.start()
    with open_page(browser, first) as page:
        bench = Bench(page)
        bench.begin("An empty loom")
        lay(bench, "A1", "A2")
        bench.settle()
        mortal.kill()
        for a, b in (("A2", "A3"), ("A3", "A4"), ("A4", "A5")):
            lay(bench, a, b)
        page.get_by_text("Not saved: the studio does not answer").wait_for()
        again = mortal.start()
        assert again.split("#")[0] == first.split("#")[0], "a folder's studio comes back at its address"
        page.get_by_text("the studio was started again").wait_for()
        other = page.context.new_page()  # as the studio's own command opens it
        other.goto(again)
        other.get_by_role("heading", name="Your pieces").wait_for()
        bench.settle()
        assert bench.verdict == "Nothing closes it yet. 4 bands are laid."
        assert pegs_of(mortal.document()) == [["A1", "A2"], ["A2", "A3"], ["A3", "A4"], ["A4", "A5"]]


def test_a_reload_puts_back_what_was_not_saved(browser: Browser, mortal: MortalStudio) -> None:
    """Killed, edited, started again, the page loaded anew: the edits are there; one press takes them out."""
    first = mortal.start()
    with open_page(browser, first) as page:
        bench = Bench(page)
        bench.begin("An empty loom")
        lay(bench, "A1", "A2")
        bench.settle()
        mortal.kill()
        lay(bench, "B1", "B2")
        lay(bench, "B2", "B3")
        page.get_by_text("Not saved: the studio does not answer").wait_for()
        page.on("dialog", lambda dialog: dialog.accept())  # "leave the page?"
        page.goto("about:blank")
        page.goto(mortal.start())
        page.get_by_text("Edits that were not saved the last time were put back.").wait_for()
        bench.settle()
        assert pegs_of(mortal.document()) == [["A1", "A2"], ["B1", "B2"], ["B2", "B3"]]
        bench.click("Take them out")
        bench.settle()
        assert pegs_of(mortal.document()) == [["A1", "A2"]]
        bench.click("Redo")
        bench.settle()
        assert len(pegs_of(mortal.document())) == 3


def test_what_was_not_saved_is_offered_on_the_shelf(browser: Browser, mortal: MortalStudio) -> None:
    """In another window, or after the browser was closed, the shelf says so and goes on with it."""
    first = mortal.start()
    with open_page(browser, first) as page:
        bench = Bench(page)
        bench.begin("An empty loom")
        mortal.kill()
        lay(bench, "B1", "B2")
        page.get_by_text("Not saved: the studio does not answer").wait_for()
        other = Bench(page.context.new_page())
        address = mortal.start()
        page.close()
        other.page.goto(address)
        other.page.get_by_text("has edits that were not saved").wait_for()
        other.click("Go on with them")
        other.page.locator(".verdict").wait_for()
        other.settle()
        assert pegs_of(mortal.document()) == [["B1", "B2"]]
        other.click("Shelf")
        other.page.get_by_role("heading", name="Your pieces").wait_for()
        expect(other.page.get_by_text("has edits that were not saved")).to_have_count(0)


def test_many_kills_lose_no_edit(browser: Browser, mortal: MortalStudio) -> None:
    """A band laid, the studio killed whatever it does, started again: all are on the disk at the end."""
    address = mortal.start()
    with open_page(browser, address) as page:
        bench = Bench(page)
        bench.begin("An empty loom")
        laid = []
        for k in range(6):
            row, number = "ABC"[k // 2], 1 + 4 * (k % 2)
            for step in range(2):
                pegs = [f"{row}{number + step}", f"{row}{number + step + 1}"]
                lay(bench, *pegs)
                laid.append(pegs)
                if step == 0:
                    page.wait_for_timeout(60 * k)  # before the save, in its midst, after it
                    mortal.kill()
            other = page.context.new_page()
            other.goto(mortal.start())
            other.locator("h1").first.wait_for()
            other.close()
            bench.settle()
        assert pegs_of(mortal.document()) == laid


def test_a_file_that_is_no_pattern_is_refused_in_words(bench: Bench, tmp_path: Path) -> None:
    """No parser's own words reach the maker."""
    file = tmp_path / "tide.json"
    file.write_text("{ not JSON")
    chooser = bench.page.locator('input[type="file"]').first
    chooser.set_input_files(file)
    alert = bench.page.get_by_role("alert")
    alert.wait_for()
    assert alert.inner_text() == "“tide.json” is not a pattern."
    file.write_text(json.dumps({"pegwright": 2, "notes": "x" * 12_000_000}))
    chooser.set_input_files(file)
    expect(alert).to_have_text(re.compile("larger than 8 MB"))
    bench.faults.clear()  # the browser reports the refused request, as it should
