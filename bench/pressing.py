"""How long a lesson takes when it is pressed in the studio, beside the same one by command in the same run.

Both start with no results kept. The kernels of the solver are compiled before, as on the second day of use.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import psutil
from playwright.sync_api import Page, sync_playwright

from bench.lesson import strip
from bench.report import Figure
from pegwright.pattern import write_pattern
from testing.browser import FLAGS

_PRESS_S, _READ_S = 20.0, 3.0
_PATIENCE_MS = 900_000


def press_figures(lanterns: int) -> list[Figure]:
    """Measure the strip of so many lanterns; with eight it has 81 bands and an extension of 6."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        piece = folder / "pieces" / "lights.json"
        piece.parent.mkdir()
        piece.write_bytes(write_pattern(strip(lanterns)))
        _compile_kernels(folder)
        command_s, command_cpu_s = _by_command(piece, folder)
        read_s, press_s, press_cpu_s = _in_the_studio(piece.parent, folder)
    return [
        Figure("lesson pressed in the studio: handout readable", read_s, "s", "≤ 3", read_s <= _READ_S),
        Figure("lesson pressed in the studio", press_s, "s", "≤ 20", press_s <= _PRESS_S),
        Figure("lesson pressed in the studio, processors", press_cpu_s, "s"),
        Figure("the same lesson by command", command_s, "s"),
        Figure("the same lesson by command, processors", command_cpu_s, "s"),
        Figure("studio to command", press_s / command_s, "times"),
    ]


def _compile_kernels(folder: Path) -> None:
    """Make a small lesson, which compiles what the solver needs."""
    small = folder / "small.json"
    small.write_bytes(write_pattern(strip(2)))
    _run_lesson(small, folder / "small", folder / "kept-small")


def _by_command(piece: Path, folder: Path) -> tuple[float, float]:
    """Return how long the command takes, and how much of it on the processors."""
    start, busy = time.perf_counter(), psutil.Process().cpu_times()
    _run_lesson(piece, folder / "lesson", folder / "kept-command")
    took, after = time.perf_counter() - start, psutil.Process().cpu_times()
    return took, sum(after[2:4]) - sum(busy[2:4])


def _run_lesson(piece: Path, target: Path, kept: Path) -> None:
    command = [sys.executable, "-m", "pegwright", "lesson", str(piece), str(target), "--json"]
    subprocess.run(command, env=_cold(kept), check=True, stdout=subprocess.DEVNULL)


def _cold(kept: Path) -> dict[str, str]:
    return os.environ | {"PEGWRIGHT_CACHE": str(kept)}


def _in_the_studio(pieces: Path, folder: Path) -> tuple[float, float, float]:
    """Press the lesson on the page; the button is pressed when the preview is there, as a maker would."""
    with _studio(pieces, folder / "kept-studio") as (page, server):
        page.locator("li button", has_text="Riding lights").first.click()
        page.locator(".board").wait_for()
        page.wait_for_function("() => !document.querySelector('.verdict small')")
        page.get_by_role("button", name="The lesson", exact=True).click()
        page.frame_locator("dialog iframe").locator("h1").first.wait_for()
        busy = _spent_s(server)
        start = time.perf_counter()
        page.get_by_role("button", name="Press the lesson").click()
        page.get_by_role("button", name="handout-a4.pdf").first.wait_for()
        read_s = time.perf_counter() - start
        page.get_by_role("button", name="Download it all").wait_for()
        return read_s, time.perf_counter() - start, _spent_s(server) - busy


def _spent_s(server: psutil.Process) -> float:
    """Return the processor time of a process and of its children, those that have ended included."""
    each = [server, *server.children(recursive=True)]
    return sum(sum(process.cpu_times()[:4]) for process in each)


@contextmanager
def _studio(pieces: Path, kept: Path) -> Iterator[tuple[Page, psutil.Process]]:
    command = [sys.executable, "-m", "pegwright", "studio", str(pieces), "--no-browser"]
    with (
        subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=_cold(kept)) as process,
        sync_playwright() as play,
    ):
        assert process.stdout is not None
        address = process.stdout.readline().strip()
        browser = play.chromium.launch(executable_path=shutil.which("chromium"), args=FLAGS)
        page = browser.new_page(viewport={"width": 1366, "height": 850}, locale="en-GB")
        page.set_default_timeout(_PATIENCE_MS)
        page.goto(address)
        page.get_by_role("heading", name="Your pieces").wait_for()
        try:
            yield page, psutil.Process(process.pid)
        finally:
            browser.close()
            process.kill()
