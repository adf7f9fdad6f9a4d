"""What stands in for the tasks of a batch: they take a while, fail, or take their process with them."""

from __future__ import annotations

import os
import signal
import time


def wait_or_fail(task: bytes) -> bytes:
    """Return the task with a word more; kill the process for `poison`, raise for `bad`.

    Raises:
        ValueError: the task is `bad`.
    """
    if task == b"poison":
        os.kill(os.getpid(), signal.SIGKILL)
    if task == b"bad":
        raise ValueError("this one cannot be made")
    time.sleep(0.05)
    return task + b" done"
