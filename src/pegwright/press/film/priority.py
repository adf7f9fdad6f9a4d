"""Undo what an encoder does to the priority of this process."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

_THREADS = Path("/proc/self/task")


@contextmanager
def keep_priority() -> Iterator[None]:
    """Restore the scheduling of every thread on leaving; threads started meanwhile get the caller's.

    Run as root, the AV1 encoder gives its threads, and the one that opens it, real-time priority (SCHED_FIFO,
    99; see sched(7)). Processes started later inherit it and starve everything else on the machine. Systems
    without such policies need nothing.
    """
    if not hasattr(os, "sched_setscheduler"):
        yield
        return
    own = _scheduling(0)
    before: dict[int, tuple[int, os.sched_param]] = {}
    for thread in _threads():
        with suppress(OSError):  # the thread has ended
            before[thread] = _scheduling(thread)
    try:
        yield
    finally:
        for thread in _threads():
            policy, parameter = before.get(thread, own)
            with suppress(OSError):
                if os.sched_getscheduler(thread) != policy:
                    os.sched_setscheduler(thread, policy, parameter)


def _scheduling(thread: int) -> tuple[int, os.sched_param]:
    return os.sched_getscheduler(thread), os.sched_getparam(thread)


def _threads() -> list[int]:
    """Return the thread ids of this process; 0 stands for the calling thread."""
    if not _THREADS.is_dir():
        return [0]
    return [int(each.name) for each in _THREADS.iterdir()]
