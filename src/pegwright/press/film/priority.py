"""What a coder does to the priority of this process is taken back."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

_THREADS = Path("/proc/self/task")


@contextmanager
def keep_priority() -> Iterator[None]:
    """Give every thread of this process the scheduling that it had before; new ones get the caller's.

    Run by root, the AV1 coder puts its threads, and the one that opens it, before all else on the machine
    (SCHED_FIFO, priority 99; see sched(7)), and every process started later inherits that: whatever else runs
    stands still. Where the system has no such policies, nothing is done.
    """
    if not hasattr(os, "sched_setscheduler"):
        yield
        return
    own = _scheduling(0)
    before: dict[int, tuple[int, os.sched_param]] = {}
    for thread in _threads():
        with suppress(OSError):  # it has ended
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
    """Return the threads of this process by their numbers; 0 is the calling one."""
    if not _THREADS.is_dir():
        return [0]
    return [int(each.name) for each in _THREADS.iterdir()]
