"""The studio killed over and over with edits in between, its window lost too: is every edit there at the end?

Each round lays three bands, one before the studio is killed and two after; the kill comes before the save, in
its midst or after it. Then the window stays open, is closed, crashes, or is loaded anew, and the studio is
started again. What the browser kept of its own brings the edits back. After every round the file on the disk
is compared with all that was laid.
"""

from __future__ import annotations

import random
import shutil
import tempfile
import time
from contextlib import suppress
from pathlib import Path
from statistics import median

from playwright.sync_api import BrowserContext, Error as PageError, Page, expect, sync_playwright

from bench.report import Figure
from testing.browser import FLAGS
from testing.mortal_studio import MortalStudio

FATES = ("stays open", "is closed", "crashes", "is loaded anew")
_PATIENCE_MS = 90_000
_ROWS, _PEGS = "ABC", 13


def kill_figures(kills: int, seed: int = 0) -> list[Figure]:
    """Kill the studio so many times, the window sharing its end in three rounds of four."""
    draw = random.Random(seed)
    laid: list[list[str]] = []
    lost = wrong_alarms = 0
    back_s: list[float] = []
    with tempfile.TemporaryDirectory() as name, sync_playwright() as play:
        studio = MortalStudio(Path(name) / "pieces")
        browser = play.chromium.launch(executable_path=shutil.which("chromium"), args=FLAGS)
        context = browser.new_context(viewport={"width": 1366, "height": 850}, locale="en-GB")
        context.set_default_timeout(_PATIENCE_MS)
        page = _begin(context, studio.start())
        try:
            for k in range(kills):
                laid.append(_lay(page, draw))
                time.sleep(draw.uniform(0, 0.35))
                studio.kill()
                laid += [_lay(page, draw) for _ in range(2)]
                start = time.perf_counter()
                page = _lose(context, page, FATES[k % len(FATES)], studio)
                wrong_alarms += page.get_by_role("alert").count()
                _wait_until_saved(page)
                back_s.append(time.perf_counter() - start)
                missing = len(laid) - _common(laid, _bands(studio))
                lost += missing
                if missing:
                    laid = _bands(studio)  # what follows is counted on its own
        finally:
            browser.close()
            studio.kill()
    return [
        Figure(f"edits lost, {kills} kills, {3 * kills} edits", lost, "edits", "= 0", lost == 0),
        Figure("takes its own edits for another's", wrong_alarms, "times", "= 0", wrong_alarms == 0),
        Figure("from the kill to all saved again, median", median(back_s), "s"),
        Figure("from the kill to all saved again, slowest", max(back_s), "s"),
    ]


def _bands(studio: MortalStudio) -> list[list[str]]:
    """Return the pegs of each band, as they are on the disk."""
    return [step["over"] for step in studio.document().get("steps", [])]


def _begin(context: BrowserContext, address: str) -> Page:
    page = context.new_page()
    page.goto(address)
    page.get_by_role("button", name="An empty loom").click()
    page.get_by_role("button", name="Begin", exact=True).click()
    page.locator(".board").wait_for()
    _wait_until_saved(page)
    return page


def _lay(page: Page, draw: random.Random) -> list[str]:
    """Lay a band between two pegs of a row, without waiting for anybody."""
    row, number = draw.choice(_ROWS), draw.randrange(1, _PEGS)
    pegs = [f"{row}{number}", f"{row}{number + 1}"]
    page.keyboard.press("l")
    boxes = [page.locator(f'[data-peg="{peg}"] .reach').bounding_box() for peg in pegs]
    (ax, ay), (bx, by) = ((box["x"] + box["width"] / 2, box["y"] + box["height"] / 2) for box in boxes if box)
    page.mouse.move(ax, ay)
    page.mouse.down()
    page.mouse.move(bx, by, steps=3)
    page.mouse.up()
    return pegs


def _lose(context: BrowserContext, page: Page, fate: str, studio: MortalStudio) -> Page:
    """Let the window meet its fate, start the studio again, and return the window that goes on."""
    if fate == "stays open":
        other = context.new_page()  # as the studio's own command opens it
        other.goto(studio.start())
        other.locator("h1").first.wait_for()
        other.close()
        return page
    if fate == "is loaded anew":
        page.once("dialog", lambda dialog: dialog.accept())  # "leave the page?"
        page.goto("about:blank")
        page.goto(studio.start())
    else:
        if fate == "crashes":
            _crash(page)
        page.close()
        page = context.new_page()
        page.goto(studio.start())
        page.get_by_role("button", name="Go on with them").click()
    page.locator(".board").wait_for()
    return page


def _crash(page: Page) -> None:
    with suppress(PageError):  # it never answers
        page.goto("chrome://crash", timeout=5_000)


def _wait_until_saved(page: Page) -> None:
    expect(page.locator(".state")).to_have_text("Saved", timeout=_PATIENCE_MS)


def _common(laid: list[list[str]], found: list[list[str]]) -> int:
    """How many of the bands laid are found, in their order."""
    left = iter(found)
    return sum(any(each == pegs for each in left) for pegs in laid)
