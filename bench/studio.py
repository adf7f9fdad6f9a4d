"""How quickly the studio answers in a real headless browser: first view, edits, findings, scroll, memory; and
that it loses nothing."""

from __future__ import annotations

import gzip
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median
from typing import Any

from playwright.sync_api import Page, sync_playwright

from bench.kills import kill_figures
from bench.pressing import press_figures
from bench.report import Figure
from pegwright.pattern import Pattern, PatternBuilder, Rows, write_pattern
from pegwright.server import PAGE
from pegwright.workshop import starter_pattern
from testing.browser import FLAGS

_FLAGS = [*FLAGS, "--js-flags=--expose-gc"]

# Lays a band from one peg to the next by the page's own events, and waits for what comes of it: the band on
# the screen, then the findings of the line. Times are the page's own, to the frame after the change.
_EDIT = """async ([from, to]) => {
  const middle = (at) => {
    const box = document.querySelector(`[data-peg="${at}"] .reach`).getBoundingClientRect();
    return [box.x + box.width / 2, box.y + box.height / 2];
  };
  const svg = document.querySelector('.board svg');
  const send = (type, [clientX, clientY], buttons) => svg.dispatchEvent(new PointerEvent(type,
    { clientX, clientY, buttons, button: 0, pointerId: 1, bubbles: true, isPrimary: true }));
  svg.setPointerCapture = () => {};
  const bands = () => Number(document.querySelector('.board').dataset.bands);
  const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
  const before = bands();
  send('pointerdown', middle(from), 1);
  send('pointermove', middle(to), 1);
  const start = performance.now();
  send('pointerup', middle(to), 0);
  let shown = 0;
  while (!shown || document.querySelector('.verdict small')) {
    await frame();
    if (!shown && bands() > before) shown = performance.now() - start;
    if (performance.now() - start > 20000) throw new Error('the edit never showed');
  }
  return [shown, performance.now() - start];
}"""

# Takes the band that was laid last out again, by the page's own key; times to the frame after the change.
_UNDO = """async () => {
  const bands = () => Number(document.querySelector('.board').dataset.bands);
  const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
  const before = bands();
  const start = performance.now();
  document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'z', ctrlKey: true, bubbles: true }));
  while (bands() === before) {
    await frame();
    if (performance.now() - start > 20000) throw new Error('the undo never showed');
  }
  await frame();
  return performance.now() - start;
}"""

_SCROLL = """async (frames) => {
  const table = document.querySelector('.table');
  const gaps = [];
  let last = 0;
  let way = 1;
  for (let k = 0; k < frames; k++) {
    const now = await new Promise((done) => requestAnimationFrame(done));
    if (last) gaps.push(now - last);
    last = now;
    const [most, at] = [table.scrollHeight - table.clientHeight, table.scrollTop];
    const [mostX, atX] = [table.scrollWidth - table.clientWidth, table.scrollLeft];
    if ((most > 0 ? at >= most - 1 : atX >= mostX - 1) && way > 0) way = -1;
    else if ((most > 0 ? at : atX) <= 0 && way < 0) way = 1;
    table.scrollBy(way * 24, way * 24);
  }
  return gaps;
}"""


def run(quick: bool) -> list[Figure]:
    """Measure the studio; quick takes fewer edits and frames of the same pieces."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "long.json").write_bytes(write_pattern(_open_strip(300)))
        (folder / "huge.json").write_bytes(write_pattern(_mat(2000)))
        (folder / "chain.json").write_bytes(write_pattern(starter_pattern("Chain of 300", pegs=301)))
        figures = [_most("page, gzipped", _gzipped_kb(), "kB", 600)]
        with _studio(folder) as page:
            figures += _first_view(page)
            figures += _edits(page, 10 if quick else 40)
            figures += _memory(page, 60 if quick else 500)
            figures += _large_edits(page, 6 if quick else 20)
            figures += _scroll(page, 120 if quick else 400)
    return figures + kill_figures(2 if quick else 50) + press_figures(2 if quick else 8)


def _most(name: str, value: float, unit: str, goal: float) -> Figure:
    return Figure(name, value, unit, f"≤ {goal:g}", value <= goal)


def _open_strip(bands: int) -> Pattern:
    """Three rows, bands laid along two of them; the third row is free to lay more."""
    pegs = bands // 2 + 1
    m = PatternBuilder("Strip of 300", Rows(rows=3, pegs=pegs)).colour("A", "slate blue", "#34506b")
    for row in "AB":
        with m.repeat(bands // 2, pegs=1):
            m.place("A", f"{row}1", f"{row}2")
    m.turn()
    for row in "AB":
        with m.repeat(bands // 2 - 1, pegs=-1):
            m.hook(f"{row}{pegs - 1}", f"{row}{pegs - 2}")
    m.clip("A1", "B1")
    return m.pattern()


def _mat(bands: int) -> Pattern:
    side = round(bands**0.5)
    m = PatternBuilder("Mat of 2000", Rows(rows=side, pegs=bands // side + 1)).colour(
        "A", "weed green", "#2f6b4f"
    )
    with m.repeat(side, rows=1), m.repeat(bands // side, pegs=1):
        m.place("A", "A1", "A2")
    return m.pattern()


@contextmanager
def _studio(folder: Path) -> Iterator[Page]:
    command = [sys.executable, "-m", "pegwright", "studio", str(folder), "--no-browser"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process, sync_playwright() as play:
        assert process.stdout is not None
        address = process.stdout.readline().strip()
        browser = play.chromium.launch(executable_path=shutil.which("chromium"), args=_FLAGS)
        page = browser.new_page(viewport={"width": 1366, "height": 850}, locale="en-GB")
        page.set_default_timeout(60_000)
        page.goto(address)
        page.get_by_role("heading", name="Your pieces").wait_for()
        try:
            yield page
        finally:
            browser.close()
            process.kill()


def _first_view(page: Page) -> list[Figure]:
    """From a reload to the pieces on the shelf, the server being warm."""
    times = []
    for _ in range(5):
        start = time.perf_counter()
        page.reload()
        page.get_by_role("heading", name="Lay a first piece").wait_for()
        times.append(time.perf_counter() - start)
    return [_most("first view, warm", median(times), "s", 1.5)]


def _open(page: Page, title: str) -> None:
    shelf = page.get_by_role("button", name="Shelf", exact=True)
    if shelf.is_visible():  # a page that is loaded anew goes back to its piece
        shelf.click()
    page.reload()
    page.locator("li button", has_text=title).first.click()
    page.locator(".board").wait_for()
    page.wait_for_function("() => !document.querySelector('.verdict small')")


def _edits(page: Page, count: int) -> list[Figure]:
    _open(page, "Strip of 300")
    page.keyboard.press("l")
    shown, found = [], []
    for k in range(1, count + 1):
        a, b = page.evaluate(_EDIT, [f"C{k}", f"C{k + 1}"])
        shown.append(a)
        found.append(b)
    return [
        _most("an edit shows, 300 bands, median", median(shown), "ms", 50),
        _most("its findings, 300 bands, median", median(found), "ms", 150),
        Figure("its findings, 300 bands, slowest of 20", sorted(found)[-max(1, len(found) // 20)], "ms"),
    ]


def _large_edits(page: Page, count: int) -> list[Figure]:
    """Lay a band in a piece of 2,000 and take it out again, as a maker who waits for the findings."""
    _open(page, "Mat of 2000")
    page.keyboard.press("l")
    page.evaluate(_EDIT, ["A1", "A2"])  # the browser makes its scripts quick at the first
    page.evaluate(_UNDO)
    added, found, undone = [], [], []
    for k in range(1, count + 1):
        a, b = page.evaluate(_EDIT, [f"A{k}", f"A{k + 1}"])
        added.append(a)
        found.append(b)
        undone.append(page.evaluate(_UNDO))
    return [
        _most("an edit shows, 2,000 bands, median", median(added), "ms", 100),
        _most("an undo shows, 2,000 bands, median", median(undone), "ms", 100),
        Figure("findings, 2,000 bands, median", median(found), "ms"),
    ]


def _memory(page: Page, count: int) -> list[Figure]:
    """Lay and undo, over and over; the heap after, less the heap after the first 30, both swept."""
    _open(page, "Chain of 300")
    page.keyboard.press("l")
    heap: Any = "() => { gc(); gc(); return performance.memory.usedJSHeapSize / 1e6 }"
    first = 0.0
    for k in range(count):
        page.evaluate(_EDIT, ["A1", "A2"])
        page.keyboard.press("Control+z")
        page.wait_for_function("() => !document.querySelector('.verdict small')")
        if k == 29:
            first = page.evaluate(heap)
    grown = page.evaluate(heap) - first
    return [_most(f"heap grown over {2 * (count - 30)} edits", grown, "MB", 2)]


def _scroll(page: Page, frames: int) -> list[Figure]:
    _open(page, "Mat of 2000")
    page.get_by_role("button", name="Larger").click()
    gaps = page.evaluate(_SCROLL, frames)
    rate = 1000 * len(gaps) / sum(gaps)
    return [
        Figure("2,000 bands scroll", rate, "frames/s", "≥ 50", rate >= 50),
        Figure("2,000 bands scroll, slowest frame of 20", sorted(gaps)[-max(1, len(gaps) // 20)], "ms"),
    ]


def _gzipped_kb() -> float:
    """Scripts and styles; the two fonts are not compressed further."""
    files = [p for p in PAGE.rglob("*") if p.suffix in (".js", ".css", ".html", ".svg")]
    return sum(len(gzip.compress(p.read_bytes())) for p in files) / 1000
