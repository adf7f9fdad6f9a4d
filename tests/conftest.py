"""Settings shared by all tests."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from hypothesis import HealthCheck, settings

from pegwright.shape import kernel_cache

if TYPE_CHECKING:
    from playwright.sync_api import Playwright

# Machines differ and are shared: no test may depend on how long an example takes.
settings.register_profile("pegwright", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("pegwright")


def pytest_configure() -> None:
    """Give every process of a run one private place for compiled kernels.

    Without one each process would compile them anew, 20 s of processor time each: hours in all.
    """
    if kernel_cache.cache_folder() is not None:
        return
    for place in (None, "/var/tmp", "/dev/shm", str(Path(__file__).parents[1])):
        if place is None or os.access(place, os.W_OK):
            os.environ["NUMBA_CACHE_DIR"] = tempfile.mkdtemp(prefix="pegwright-tests-", dir=place)
            kernel_cache.cache_folder.cache_clear()
            if kernel_cache.cache_folder() is not None:
                return
    del os.environ["NUMBA_CACHE_DIR"]


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    """The driver of browsers: a process can have one at a time."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as started:
        yield started


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Say where the compiled kernels were kept: a run without such a place is slow for that reason."""
    terminalreporter.write_line(f"compiled kernels: {kernel_cache.cache_folder() or 'KEPT NOWHERE'}")
