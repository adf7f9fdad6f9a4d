"""Processes forked from this one: started without being torn, and never left behind."""

from __future__ import annotations

import multiprocessing
import os
import signal
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Thread, current_thread, main_thread

__all__ = ["follow_parent", "hold_interrupts"]


@contextmanager
def hold_interrupts() -> Iterator[None]:
    """Hold interrupts back while processes are started: a pool that is half started waits for them for ever.

    The signal is not masked, as any other thread may hear it and Python then interrupts the main one.
    """
    if current_thread() is not main_thread():
        yield
        return
    heard: list[int] = []
    before = signal.signal(signal.SIGINT, lambda number, _frame: heard.append(number))
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, signal.SIG_DFL if before is None else before)
        if heard:
            signal.raise_signal(signal.SIGINT)


def follow_parent() -> None:
    """Let this forked process end with the one that forked it, which alone hears interrupts."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    Thread(target=_end_with_parent, daemon=True).start()


def _end_with_parent() -> None:
    """End this process as soon as the one that forked it is gone: killed, it tells nobody."""
    parent = multiprocessing.parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)
