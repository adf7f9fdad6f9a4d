"""Compiling in two processes: what is ready is left alone, and whoever stops the work stops both."""

from __future__ import annotations

import subprocess
import sys

import pytest

from pegwright.shape import kernel_compilation


@pytest.fixture
def forgetful():
    """A process that has not yet seen to its kernels."""
    _forget()
    yield
    _forget()


def _forget() -> None:
    kernel_compilation._readiness.cache_clear()
    kernel_compilation._helper_process.cache_clear()


def test_factorisation_compiles_by_itself() -> None:
    """The second process's work needs nothing from the first (and runs uncompiled too)."""
    kernel_compilation.compile_factorisation()
    kernel_compilation.compile_remaining()
    assert kernel_compilation._is_compiled(kernel_compilation.multifrontal._factorise_fronts)
    assert all(kernel_compilation._is_compiled(last) for _, last in kernel_compilation._OWN_SHARE)


def test_helper_process_starts_once(forgetful, monkeypatch) -> None:
    """However often it is asked for, and not where nothing is left to do."""
    started: list[int] = []
    monkeypatch.setattr(kernel_compilation, "_spawn_helper", lambda: started.append(1))
    monkeypatch.setattr(kernel_compilation, "_is_compiled", lambda kernel: True)
    kernel_compilation.start_helper()
    assert not started
    monkeypatch.setattr(kernel_compilation, "_is_compiled", lambda kernel: False)
    _forget()
    kernel_compilation.start_helper()
    kernel_compilation.start_helper()
    assert started == [1]


def test_compiled_kernels_are_left_alone(forgetful, monkeypatch) -> None:
    """Where every kernel is at hand, nobody is told and no process starts."""
    monkeypatch.setattr(kernel_compilation, "_is_compiled", lambda kernel: True)
    monkeypatch.setattr(kernel_compilation, "_spawn_helper", lambda: pytest.fail("no process is wanted"))
    assert kernel_compilation.compile_kernels(lambda step: pytest.fail("nothing is left to do"))


@pytest.mark.parametrize("last", [0, 1, 4])
def test_stopping_ends_the_helper_process(last: int, forgetful, monkeypatch) -> None:
    """Told to stop, at the start or while it waits, it ends the other process and says so."""
    monkeypatch.setattr(kernel_compilation, "_is_compiled", lambda kernel: False)
    helper = subprocess.Popen([sys.executable, "-c", "import time; time.sleep(600)"])
    monkeypatch.setattr(kernel_compilation, "_spawn_helper", lambda: helper)
    steps: list[int] = []

    def hear(step: int) -> bool:
        steps.append(step)
        return step < last

    assert not kernel_compilation.compile_kernels(hear)
    assert steps == list(range(last + 1))
    assert helper.poll() is not None


def test_a_failing_helper_process_is_no_harm(forgetful, monkeypatch) -> None:
    """Where no second process can be had, or it fails, this one still gets kernel_compilation."""
    monkeypatch.setattr(kernel_compilation, "_is_compiled", lambda kernel: False)
    for start in (lambda: None, lambda: subprocess.Popen([sys.executable, "-c", "raise SystemExit(1)"])):
        _forget()
        monkeypatch.setattr(kernel_compilation, "_spawn_helper", start)
        assert kernel_compilation.compile_kernels(lambda step: True)
