"""The cluster that a batch runs on: a scheduler here with a few worker processes, or one already there.

A worker process that dies is replaced. What it was at goes to another worker; what kills a second one is
given up.
"""

from __future__ import annotations

import contextlib
import importlib
import logging
import os
import subprocess
import sys
import tempfile
import time
import warnings
from collections.abc import Callable, Iterator
from threading import Event, Thread
from types import ModuleType
from typing import Any, NamedTuple

from pegwright.finding import RefusedError, phrase

__all__ = ["BatchCluster", "connect_cluster", "import_distributed", "start_cluster"]

ALLOWED_FAILURES = 1
"""How often a task may lose its worker before it is given up: another worker gets it once."""

_LOOK_S = 0.3
_CONNECT_S = 10
_START_S = 60.0
_QUICK_S = 4.0  # a worker that ends sooner has not come up
_QUICK_ENDS = 6


def import_distributed() -> ModuleType:
    """Return the module `distributed`.

    It looks for a compressor called snappy, and stumbles over the knot theory library of that name, which
    is not meant; so there is none while it loads.
    """
    if "distributed" not in sys.modules:
        missing = object()
        known: Any = sys.modules.get("snappy", missing)
        sys.modules["snappy"] = None  # type: ignore[assignment]  # importing it now raises an ImportError
        try:
            importlib.import_module("distributed")
        finally:
            del sys.modules["snappy"]
            if known is not missing:
                sys.modules["snappy"] = known
    logging.getLogger("distributed").setLevel(logging.CRITICAL)
    return sys.modules["distributed"]


class BatchCluster:
    """A client of a scheduler, and the worker processes that are ours, if any; started when first used."""

    def __init__(self, start: Callable[[], _Connection]) -> None:
        self._start = start
        self._connection: _Connection | None = None

    @property
    def client(self) -> Any:
        """The client; the first use starts everything.

        Raises:
            RefusedError: no worker comes up, or nobody answers.
        """
        if self._connection is None:
            self._connection = self._start()
        return self._connection.client

    def threads(self) -> int:
        """Return how many tasks can run at once now."""
        return sum(self.client.ncores().values())

    def process_ids(self) -> list[int]:
        """Return the process ids of our own workers."""
        workers = self._connection.workers if self._connection else None
        return workers.process_ids() if workers else []

    def check_health(self) -> None:
        """Notice that no worker comes up any more.

        Raises:
            RefusedError: our own workers end as soon as they start.
        """
        if self._connection and self._connection.workers and self._connection.workers.given_up:
            raise RefusedError(phrase("batch-no-workers"))


class _Connection(NamedTuple):
    client: Any
    workers: _Workers | None = None


@contextlib.contextmanager
def start_cluster(workers: int = 2) -> Iterator[BatchCluster]:
    """Offer a scheduler in this process with so many worker processes, all on this machine; end them at last.

    They start when they are first used: a batch of which everything is there already needs none.
    """
    with contextlib.ExitStack() as stack:
        yield BatchCluster(lambda: stack.enter_context(_start_here(workers)))


@contextlib.contextmanager
def _start_here(workers: int) -> Iterator[_Connection]:
    distributed = import_distributed()
    import dask  # noqa: PLC0415 - slow to load

    with (
        dask.config.set({"distributed.scheduler.allowed-failures": ALLOWED_FAILURES}),
        warnings.catch_warnings(
            action="ignore"
        ),  # that another scheduler has the usual port of the status page
    ):
        cluster = distributed.LocalCluster(
            n_workers=0,
            host="127.0.0.1",
            protocol="tcp://",
            scheduler_port=0,
            dashboard_address=None,
            silence_logs=logging.CRITICAL,
        )
        with contextlib.closing(cluster), distributed.Client(cluster, set_as_default=False) as client:
            ours = _Workers(cluster.scheduler_address, workers)
            try:
                began = time.monotonic()
                while not client.ncores():
                    if ours.given_up or time.monotonic() - began > _START_S:
                        raise RefusedError(phrase("batch-no-workers"))
                    time.sleep(0.02)
                yield _Connection(client, ours)
            finally:
                ours.end()


@contextlib.contextmanager
def connect_cluster(address: str) -> Iterator[BatchCluster]:
    """Connect to a scheduler that is there already; its workers need this version of pegwright.

    Raises:
        RefusedError: nobody answers there.
    """
    distributed = import_distributed()
    try:
        client = distributed.Client(address, timeout=_CONNECT_S, set_as_default=False)
    except (OSError, ValueError, TimeoutError) as error:
        raise RefusedError(phrase("batch-no-scheduler", address=address)) from error
    with client:
        connection = _Connection(client)
        yield BatchCluster(lambda: connection)


class _Workers:
    """Worker processes, each replaced when it dies, until `end`."""

    def __init__(self, address: str, count: int) -> None:
        self.given_up = False
        self._address = address
        self._folder = tempfile.TemporaryDirectory(prefix="pegwright-batch-", ignore_cleanup_errors=True)
        self._ending = Event()
        self._running: list[tuple[subprocess.Popen[bytes], float]] = []
        for _ in range(count):
            self._start()
        self._quick_ends = 0
        self._guard = Thread(target=self._replace_dead, daemon=True)
        self._guard.start()

    def process_ids(self) -> list[int]:
        return [process.pid for process, _ in self._running]

    def end(self) -> None:
        self._ending.set()
        self._guard.join()
        for process, _ in self._running:
            process.terminate()
        for process, _ in self._running:
            try:
                process.wait(3)
            except subprocess.TimeoutExpired:
                process.kill()
                process.wait()
        self._folder.cleanup()

    def _start(self) -> None:
        command = [sys.executable, "-m", "pegwright.workshop.batch_worker", self._address, self._folder.name]
        # The process must not import modules from the current folder, nor be stopped by the terminal's
        # Ctrl-C.
        process = subprocess.Popen(
            command,
            env={**os.environ, "PYTHONSAFEPATH": "1"},
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            start_new_session=True,
        )
        self._running.append((process, time.monotonic()))

    def _replace_dead(self) -> None:
        while not self._ending.wait(_LOOK_S):
            for one in list(self._running):
                process, began = one
                if process.poll() is None:
                    continue
                self._running.remove(one)
                # One that cannot start ends by itself; one that a task took with it was killed.
                quick = process.returncode > 0 and time.monotonic() - began < _QUICK_S
                self._quick_ends = self._quick_ends + 1 if quick else 0
                if self._quick_ends >= _QUICK_ENDS:
                    self.given_up = not self._running
                else:
                    self._start()
