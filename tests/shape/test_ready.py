"""Compiling in two processes: what is ready is left alone, and whoever stops the work stops both."""

from __future__ import annotations

import subprocess
import sys

import pytest

from pegwright.shape import ready


@pytest.fixture
def forgetful():
    """A process that has not yet seen to its kernels."""
    _forget()
    yield
    _forget()


def _forget() -> None:
    ready._told.cache_clear()
    ready._second.cache_clear()


def test_orders_compile_by_themselves() -> None:
    """The second process's work needs nothing from the first (and runs uncompiled too)."""
    ready.compile_orders()
    ready.compile_rest()
    assert ready._compiled(ready.multifrontal._factor)
    assert all(ready._compiled(last) for _, last in ready._FORCES)


def test_second_process_begins_once(forgetful, monkeypatch) -> None:
    """However often it is asked for, and not where nothing is left to do."""
    started: list[int] = []
    monkeypatch.setattr(ready, "_start", lambda: started.append(1))
    monkeypatch.setattr(ready, "_compiled", lambda kernel: True)
    ready.begin()
    assert not started
    monkeypatch.setattr(ready, "_compiled", lambda kernel: False)
    _forget()
    ready.begin()
    ready.begin()
    assert started == [1]


def test_ready_kernels_are_left_alone(forgetful, monkeypatch) -> None:
    """Where every kernel is at hand, nobody is told and no process starts."""
    monkeypatch.setattr(ready, "_compiled", lambda kernel: True)
    monkeypatch.setattr(ready, "_start", lambda: pytest.fail("no process is wanted"))
    assert ready.get_ready(lambda step: pytest.fail("nothing is left to do"))


@pytest.mark.parametrize("last", [0, 1, 4])
def test_stopping_ends_the_second_process(last: int, forgetful, monkeypatch) -> None:
    """Told to stop, at the start or while it waits, it ends the other process and says so."""
    monkeypatch.setattr(ready, "_compiled", lambda kernel: False)
    helper = subprocess.Popen([sys.executable, "-c", "import time; time.sleep(600)"])
    monkeypatch.setattr(ready, "_start", lambda: helper)
    steps: list[int] = []

    def hear(step: int) -> bool:
        steps.append(step)
        return step < last

    assert not ready.get_ready(hear)
    assert steps == list(range(last + 1))
    assert helper.poll() is not None


def test_second_process_failing_is_no_harm(forgetful, monkeypatch) -> None:
    """Where no second process can be had, or it fails, this one still gets ready."""
    monkeypatch.setattr(ready, "_compiled", lambda kernel: False)
    for start in (lambda: None, lambda: subprocess.Popen([sys.executable, "-c", "raise SystemExit(1)"])):
        _forget()
        monkeypatch.setattr(ready, "_start", start)
        assert ready.get_ready(lambda step: True)
