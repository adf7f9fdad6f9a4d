"""The pictures of the studio in the docs, taken from the real thing: `python -m tests.studio.pictures`."""

from __future__ import annotations

import io
import tempfile
from pathlib import Path

from PIL import Image
from playwright.sync_api import Page, sync_playwright

from tests.studio.conftest import CHROMIUM, DEEP_FLAGS, Bench, start_studio

FOLDER = Path(__file__).parents[2] / "docs" / "pictures-of-studio"
MOST_BYTES = 150_000


def main() -> None:
    """Take every picture anew."""
    FOLDER.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as pieces, sync_playwright() as playwright:
        studio = start_studio(Path(pieces))
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=DEEP_FLAGS)
        page = browser.new_page(viewport={"width": 1366, "height": 850}, locale="en-GB")
        page.goto(next(studio))
        page.get_by_role("heading", name="Lay a first piece").wait_for()
        _take(page)
        browser.close()
        for _ in studio:
            pass  # it stops when it is asked for more


def _take(page: Page) -> None:
    bench = Bench(page)
    _keep(page, "shelf")
    bench.begin("Riding lights")
    page.wait_for_function("() => document.querySelector('.size').textContent !== ''", timeout=500_000)
    page.wait_for_timeout(2000)
    _keep(page, "bench")
    bench.click("Look closely")
    bench.click("Turn away")
    page.wait_for_timeout(2000)
    _keep(page, "off-the-loom")
    bench.click("Back to the loom")
    bench.click("Rehearse it")
    page.locator("ol > li summary").first.click(timeout=300_000)
    page.get_by_role("button", name="Show how it ends").first.click()
    page.wait_for_timeout(1000)
    _keep(page, "rehearsal")
    bench.click("Shelf")

    bench.begin("Plain chain")
    bench.settle_off_the_loom()
    bench.click("Make it fit")
    bench.settle()
    bench.settle_off_the_loom()
    bench.click("Look closely")
    bench.click("On the wrist")
    page.get_by_text("Closed round the wrist and settled there.").wait_for(timeout=500_000)
    page.wait_for_timeout(2000)
    _keep(page, "fit")
    bench.click("Back to the loom")
    bench.click("The lesson")
    page.frame_locator("iframe").get_by_role("heading", name="Plain chain").wait_for()
    bench.click("Press the lesson")
    page.get_by_text("The lesson is pressed").wait_for(timeout=120_000)
    _keep(page, "lesson")
    bench.click("Close", exact=True)
    bench.click("Shelf")

    bench.begin("An empty loom")
    for pegs in (
        ("B1", "A2"),
        ("A2", "B3"),
        ("B1", "C2"),
        ("C2", "B3"),
        ("B2", "B1"),
        ("B2", "B3"),
        ("B2", "A2"),
    ):
        bench.drag(*pegs)
    page.keyboard.press("h")
    bench.press("B2")
    page.get_by_role("region", name="Peg B2").get_by_role("button", name="Loop 2").click()
    _keep(page, "stack")
    page.keyboard.press("Escape")
    bench.click("From the shelf")
    page.get_by_role("dialog").get_by_role("listitem").first.wait_for()
    page.wait_for_timeout(500)
    _keep(page, "motifs")


def _keep(page: Page, name: str) -> None:
    file = FOLDER / f"{name}.png"
    shot = Image.open(io.BytesIO(page.screenshot()))
    shot.convert("RGB").quantize(128, dither=Image.Dither.NONE).save(file, optimize=True)
    if file.stat().st_size > MOST_BYTES:
        raise ValueError(f"{file.name} is {file.stat().st_size} bytes; {MOST_BYTES} is the most")


if __name__ == "__main__":
    main()
