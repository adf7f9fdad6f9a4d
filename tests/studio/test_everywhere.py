"""The whole job by touch on every screen, in every language, for either hand; and every dialog is clean."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, expect

from tests.studio.conftest import Bench
from tests.studio.test_everyone import complaints

WORDS = Path(__file__).parents[2] / "frontend" / "src" / "words"

# A phone, a tablet, and a desktop of 1366 × 768 at twice the size; each with a language and a hand.
SCREENS: dict[str, dict[str, Any]] = {
    "phone-de-left": {"viewport": {"width": 390, "height": 844}, "locale": "de-DE"},
    "tablet-es-dark": {
        "viewport": {"width": 820, "height": 1180},
        "locale": "es-ES",
        "color_scheme": "dark",
        "reduced_motion": "reduce",
    },
    "zoomed-en-forced-left": {
        "viewport": {"width": 683, "height": 384},
        "device_scale_factor": 2,
        "locale": "en-GB",
        "forced_colors": "active",
    },
}


@pytest.mark.parametrize("screen", SCREENS)
def test_the_whole_job_by_touch(browser: Browser, address: str, screen: str) -> None:
    """From an empty loom to "all held" by taps alone: nothing is out of reach, nothing is wider than it."""
    options = SCREENS[screen]
    context = browser.new_context(has_touch=True, **options)
    page = context.new_page()
    bench = Bench(page)
    text = (WORDS / f"{options['locale'][:2]}.ftl").read_text("utf-8")

    def word(key: str) -> str:
        found = re.search(rf"^{key} = (.*)$", text, re.M)
        assert found
        return found[1]

    def press(key: str) -> None:
        page.get_by_role("button", name=word(key), exact=True).first.tap()

    def tap(*pegs: str) -> None:
        for peg in pegs:
            page.locator(f'[data-peg="{peg}"]').scroll_into_view_if_needed()
            page.touchscreen.tap(*bench.middle(peg))
        saved()

    def saved() -> None:
        expect(page.locator(".state")).to_have_text(word("saved"))
        expect(page.locator(".verdict small")).to_have_count(0)

    page.goto(address)
    page.locator("li button").first.wait_for()
    if screen.endswith("left"):
        page.locator("header input").check()
    page.get_by_role("button", name=word("empty-loom")).tap()
    press("begin-it")
    page.locator("[data-peg]").first.wait_for()
    tap("A1", "A2")
    for _ in range(2):
        press("do-again")
        saved()
    page.locator('.tools button[aria-keyshortcuts="h"]').tap()
    tap("A3", "A2")
    tap("A2", "A1")
    page.locator('.tools button[aria-keyshortcuts="k"]').tap()
    tap("A1")
    expect(page.locator(".verdict")).to_contain_text(word("holds").replace("{ $count }", "3"))
    assert page.evaluate("document.documentElement.scrollWidth") <= options["viewport"]["width"]
    assert complaints(page) == []
    bench.shot(f"everywhere-{screen}")
    assert bench.faults == []
    context.close()


def test_axe_finds_nothing_in_any_dialog(bench: Bench) -> None:
    """Every dialog of the bench and of the shelf is clean, and closes by Escape."""
    page = bench.page
    opened = page.locator("dialog[open]")

    def look(name: str) -> None:
        opened.first.wait_for()
        assert complaints(page) == [], name
        page.keyboard.press("Escape")
        opened.first.wait_for(state="hidden")

    for name in ("An empty loom", "Read your own words"):
        page.get_by_role("button", name=name).click()
        look(name)
    bench.begin("Plain chain")
    for name in (
        "Versions",
        "Change the loom",
        "Trace a picture",
        "From the shelf",
        "Add a note",
        "New colour",
        "Change: A",
        "Listen back",
    ):
        bench.click(name)
        look(name)
    bench.click("Variants", exact=True)
    for asked in ("On another loom", "Of other bands"):
        page.get_by_label(asked).check()
    look("Variants")
    bench.click("Change the loom")
    opened.get_by_role("combobox").first.select_option("pegs")
    opened.locator("svg circle").first.wait_for()
    look("pegs drawn by hand")
    bench.click("Chart", exact=True)
    page.get_by_role("heading", name="Plain chain").wait_for()
    assert complaints(page) == [], "the chart"
    page.keyboard.press("Escape")
    page.locator(".board").wait_for()
    for key in ("?", "w", "Control+k"):
        page.wait_for_function("document.hasFocus()")
        page.wait_for_timeout(100)  # once in many runs the key that followed a dialog's closing was lost
        page.keyboard.press(key)
        look(key)
