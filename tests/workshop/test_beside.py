"""A job done in another process: the same result, its errors too, and none left behind."""

from __future__ import annotations

import os
import signal
from threading import Thread

import psutil
import pytest

from pegwright.finding import RefusedError, phrase
from pegwright.workshop import beside
from pegwright.workshop.beside import do_beside

forked = pytest.mark.skipif(not beside._can_fork(), reason="one processor, or no forks here")


@forked
def test_it_is_done_elsewhere_and_comes_back() -> None:
    with do_beside(lambda: (os.getpid(), b"x" * 3_000_000)) as wait:
        pid, data = wait()
    assert pid != os.getpid()
    assert len(data) == 3_000_000
    assert not psutil.pid_exists(pid)


def test_its_error_is_raised_where_it_is_waited_for() -> None:
    def refuse() -> None:
        raise RefusedError(phrase("no-film-encoder"))

    with do_beside(refuse) as wait, pytest.raises(RefusedError):
        wait()


@forked
def test_what_is_not_waited_for_is_ended() -> None:
    reader, writer = os.pipe()

    def stay() -> None:
        os.write(writer, str(os.getpid()).encode())
        signal.pause()

    with do_beside(stay):
        pid = int(os.read(reader, 20))
    assert not psutil.pid_exists(pid)


@forked
def test_a_killed_process_is_made_up_for() -> None:
    """Where the system ends it, say for want of memory, the job is done here."""
    here = os.getpid()

    def die_elsewhere() -> int:
        if os.getpid() != here:
            os.kill(os.getpid(), signal.SIGKILL)
        return 7

    with do_beside(die_elsewhere) as wait:
        assert wait() == 7


def test_in_another_thread_nothing_is_forked() -> None:
    found = []

    def run() -> None:
        with do_beside(os.getpid) as wait:
            found.append(wait())

    thread = Thread(target=run)
    thread.start()
    thread.join()
    assert found == [os.getpid()]
