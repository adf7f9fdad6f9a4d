"""A rehearsal that is broken off: what is finished is kept, every process ends, and nothing is said twice."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import msgspec
import pytest

from pegwright.pattern import write_pattern
from pegwright.rehearsal import PartialRehearsal, rehearse
from testing.rosettes import rosettes
from tests.rehearsal.pieces import history_of, jetty

_PROCESSES = Path("/proc/self/task")


def test_one_broken_off_goes_on_where_it_was_and_comes_to_the_same() -> None:
    pattern = jetty()
    history = history_of(pattern)
    whole = rehearse(pattern, history)
    steps: list[str] = []
    rehearse(pattern, history, progress=lambda what, _done, _total: steps.append(what))
    for after in range(1, len(steps)):
        begun, told = PartialRehearsal(), []

        def stop(what: str, done: int, total: int, after: int = after, told: list[object] = told) -> None:
            told.append((what, done, total))
            if len(told) > after:
                raise KeyboardInterrupt

        with pytest.raises(KeyboardInterrupt):
            rehearse(pattern, history, progress=stop, begun=begun)
        left = msgspec.json.decode(msgspec.json.encode(begun), type=PartialRehearsal)
        assert left.worked
        again = rehearse(pattern, history, begun=left)
        assert again._replace(judged=whole.judged) == whole  # what was judged is not known the second time


@pytest.mark.skipif(not _PROCESSES.exists(), reason="the processes are counted as Linux lists them")
def test_an_interrupt_ends_every_process_without_a_trace_and_keeps_what_is_done(tmp_path: Path) -> None:
    """As a terminal does it: the whole group of processes is interrupted at once."""
    strip = tmp_path / "strip.json"
    strip.write_bytes(write_pattern(rosettes(6)))
    given = subprocess.Popen(
        [sys.executable, "-m", "pegwright", "rehearse", str(strip)],
        env={**os.environ, "PEGWRIGHT_CACHE": str(tmp_path / "kept")},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        start_new_session=True,
        # A shell may start its jobs deaf to the signal; the command is not to inherit that.
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.default_int_handler),  # noqa: PLW1509
    )
    try:
        while len(_children(given.pid)) < 2:
            assert given.poll() is None
            time.sleep(0.05)
        beside = _children(given.pid)
        os.killpg(given.pid, signal.SIGINT)
        told = b"".join(given.communicate(timeout=120))
    finally:
        if given.poll() is None:
            os.killpg(given.pid, signal.SIGKILL)
    assert given.returncode == 130
    assert b"Traceback" not in told
    assert not any(Path(f"/proc/{child}").exists() for child in beside)
    assert list((tmp_path / "kept").iterdir())


def _children(pid: int) -> list[int]:
    return [int(n) for n in Path(f"/proc/{pid}/task/{pid}/children").read_text(encoding="ascii").split()]
