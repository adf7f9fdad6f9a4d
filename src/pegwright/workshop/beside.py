"""A job done in another process while this one goes on with its own."""

from __future__ import annotations

import multiprocessing
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from multiprocessing.connection import Connection
from threading import current_thread, main_thread
from typing import TypeVar

from pegwright.rehearsal import follow_parent, hold_interrupts

__all__ = ["do_beside"]

T = TypeVar("T")


@contextmanager
def do_beside(job: Callable[[], T]) -> Iterator[Callable[[], T]]:
    """Begin a job in a process forked now; the function given waits for its result.

    The job is done here, when it is waited for, if there is only one processor, if no process can be forked,
    or if that process dies. It must not use the typesetter, whose threads do not survive a fork. An error in
    it is raised where it is waited for.
    """
    if not _can_fork():
        yield job
        return
    context = multiprocessing.get_context("fork")
    receiver, sender = context.Pipe(duplex=False)
    process = context.Process(target=_do, args=(job, sender), daemon=True)
    with hold_interrupts():
        process.start()
    sender.close()

    def wait() -> T:
        try:
            result, error = receiver.recv()
        except EOFError:  # it was killed
            return job()
        if error is not None:
            raise error
        return result  # type: ignore[no-any-return]

    try:
        yield wait
    finally:
        process.kill()
        process.join()
        receiver.close()


def _can_fork() -> bool:
    """Say whether a fork is of use and safe: in another thread, locks may be held for ever."""
    return (
        (os.cpu_count() or 1) > 1
        and "fork" in multiprocessing.get_all_start_methods()
        and current_thread() is main_thread()
        and not multiprocessing.current_process().daemon
    )


def _do(job: Callable[[], T], sender: Connection) -> None:
    follow_parent()
    result, error = None, None
    try:
        result = job()
    except Exception as raised:  # whoever waits hears of it
        error = raised
    with suppress(OSError):  # nobody waits any more
        sender.send((result, error))
