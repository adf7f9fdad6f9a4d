"""The real thing: the studio's own command, and Chromium driven by hand."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import time
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, Playwright

from pegwright.server import PAGE
from testing.browser import FLAGS

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
DEEP_FLAGS = [*FLAGS[:-1], "--use-angle=swiftshader", "--enable-unsafe-swiftshader"]
SHOTS = Path(__file__).parents[2] / "build" / "shots"


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Leave the browser's tests out only where there is no browser, and say so."""
    lacks = [
        name
        for name, there in (
            ("Chromium", CHROMIUM),
            ("the built page (make frontend)", (PAGE / "index.html").is_file()),
        )
        if not there
    ]
    for item in items:
        if Path(__file__).parent not in item.path.parents:
            continue
        if lacks and not os.environ.get("CI"):
            reason = f"LEFT OUT, for want of {' and '.join(lacks)}: {item.name}"
            warnings.warn(reason, stacklevel=1)
            item.add_marker(pytest.mark.skip(reason=reason))


@pytest.fixture(scope="session")
def browser(playwright: Playwright) -> Iterator[Browser]:
    opened = playwright.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
    yield opened
    opened.close()


@pytest.fixture(scope="session")
def deep_browser(playwright: Playwright) -> Iterator[Browser]:
    """A browser that draws in three dimensions, its graphics card played by software."""
    opened = playwright.chromium.launch(executable_path=CHROMIUM, args=DEEP_FLAGS)
    yield opened
    opened.close()


@pytest.fixture(scope="session")
def studio(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[str, Path]]:
    """One studio for all tests, as its command starts it: its address and its folder."""
    folder = tmp_path_factory.mktemp("studio") / "pieces"
    for address in start_studio(folder):
        yield address, folder


@pytest.fixture
def address(studio: tuple[str, Path], tmp_path: Path) -> str:
    """The studio on an empty folder, which the test finds at `tmp_path / "pieces"`."""
    address, folder = studio
    for path in folder.iterdir():
        shutil.rmtree(path) if path.is_dir() else path.unlink()
    (tmp_path / "pieces").symlink_to(folder, target_is_directory=True)
    return address


def start_studio(folder: Path) -> Iterator[str]:
    command = [sys.executable, "-m", "pegwright", "studio", str(folder), "--no-browser"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout is not None
        try:
            yield process.stdout.readline().strip()
        finally:
            process.kill()


class Bench:
    """The page as a maker uses it. Any error that the browser reports fails the test."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.faults: list[str] = []
        page.on("pageerror", lambda error: self.faults.append(str(error)))
        page.on("console", lambda said: self.faults.append(said.text) if said.type == "error" else None)

    def begin(self, title: str) -> None:
        """Take up one of the pieces to begin from."""
        named = self.page.get_by_text(title, exact=True)
        self.page.locator("li button").filter(has=named).last.click()
        if title == "An empty loom":
            self.page.get_by_role("button", name="Begin", exact=True).click()
        self.page.locator(".verdict").wait_for()
        self.settle()

    def settle(self) -> None:
        """Wait until the line has been asked and all is saved."""
        self.page.wait_for_function(
            "() => document.querySelector('.state')?.textContent === 'Saved' &&"
            " !document.querySelector('.verdict small')"
        )

    def middle(self, peg: str) -> tuple[float, float]:
        """Return where a peg is on the screen."""
        box: Any = self.page.locator(f'[data-peg="{peg}"] .reach').bounding_box()
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2

    def press(self, peg: str, *, shift: bool = False) -> None:
        if shift:
            self.page.keyboard.down("Shift")
        self.page.mouse.click(*self.middle(peg))
        if shift:
            self.page.keyboard.up("Shift")

    def press_band(self, a: str, b: str) -> None:
        """Press the band that lies round two pegs, on its side halfway between them."""
        (ax, ay), (bx, by) = self.middle(a), self.middle(b)
        length = float(((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5)
        aside = 0.23 * length  # base_mm over the pitch, see kernels/parts.ts
        self.page.mouse.click(
            (ax + bx) / 2 - (by - ay) / length * aside, (ay + by) / 2 + (bx - ax) / length * aside
        )

    def drag(self, *pegs: str) -> None:
        self.page.mouse.move(*self.middle(pegs[0]))
        self.page.mouse.down()
        for peg in pegs[1:]:
            self.page.mouse.move(*self.middle(peg), steps=4)
        self.page.mouse.up()
        self.settle()

    def tool(self, name: str) -> None:
        self.page.get_by_role("toolbar").get_by_role("button", name=name, exact=True).click()

    def click(self, name: str, *, exact: bool = False) -> None:
        self.page.get_by_role("button", name=name, exact=exact).first.click()

    @property
    def verdict(self) -> str:
        return " ".join(self.page.locator(".verdict").inner_text().split())

    @property
    def step(self) -> str:
        return self.page.locator("output").inner_text()

    def settle_off_the_loom(self) -> None:
        """Wait until the piece lies at rest and is measured."""
        self.page.get_by_role("region", name="Fit").get_by_text("Fits wrists").or_(
            self.page.get_by_text("It fits no wrist")
        ).wait_for(timeout=180_000)

    def stack(self, peg: str) -> str:
        return str(self.page.locator(f'[data-peg="{peg}"]').get_attribute("aria-label"))

    def shot(self, name: str) -> None:
        SHOTS.mkdir(parents=True, exist_ok=True)
        self.page.screenshot(path=SHOTS / f"{name}.png")


@pytest.fixture
def page(browser: Browser, address: str) -> Iterator[Page]:
    with open_page(browser, address) as opened:
        yield opened


@pytest.fixture
def deep_bench(deep_browser: Browser, tmp_path: Path) -> Iterator[Bench]:
    """The bench in a browser that draws in three dimensions, of a studio that nothing else keeps busy."""
    for address in start_studio(tmp_path / "pieces"):
        with open_page(deep_browser, address) as page:
            made = Bench(page)
            made.page.get_by_role("heading", name="Lay a first piece").wait_for()
            yield made
            assert made.faults == []


@contextmanager
def open_page(browser: Browser, address: str) -> Iterator[Page]:
    """Open the studio; whatever happens, the page is gone before the studio is."""
    context = browser.new_context(
        viewport={"width": 1366, "height": 850}, locale="en-GB", accept_downloads=True
    )
    try:
        opened = context.new_page()
        opened.set_default_timeout(60_000)
        opened.goto(address, timeout=60_000)  # the first page of a browser on a busy machine is slow
        yield opened
    finally:
        context.close()


@pytest.fixture
def bench(page: Page) -> Iterator[Bench]:
    made = Bench(page)
    made.page.get_by_role("heading", name="Lay a first piece").wait_for()
    yield made
    assert made.faults == []


def wait_until(what: Any, seconds: float = 60.0) -> None:
    """Wait until a question is answered with yes."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if what():
            return
        time.sleep(0.03)
    raise AssertionError("it did not come about")
