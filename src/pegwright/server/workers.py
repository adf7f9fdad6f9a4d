"""Processes that stay warm and answer the pages' requests, each with a limit on time and memory."""

from __future__ import annotations

import subprocess
import time
from collections import OrderedDict, deque
from contextlib import suppress
from threading import Condition, Lock, Thread

import msgspec

from pegwright.server.child_process import read_frame, start_child, write_frame
from pegwright.server.line_requests import REMEMBERED, Give, GiveUp, LineReply, LineRequest

MOST_WORKERS = 4
LONGEST_S = 60.0
GIVE_UP_S = 3.0  # time to give up an unwanted request before the process is ended
_START_S = 120.0
_LOOK_S = 0.25
_REMEMBERED_SLOTS = 100


class OvertakenError(Exception):
    """The same page has since asked for newer work, so this request was dropped."""


class TooMuchError(Exception):
    """The request takes more time or memory than the studio allows."""


class _Worker:
    """A process and its current request. Fields are changed only with the lock of `Workers` held."""

    def __init__(self) -> None:
        self.process: subprocess.Popen[bytes] = start_child("pegwright.server.line_requests")
        self.busy = False
        self.slot = ""
        self.serial = 0
        self.number = 0
        self.until_s = 0.0
        self.remembers: deque[str] = deque(maxlen=REMEMBERED)
        self._ready = False
        self._writing = Lock()

    def exchange(self, request: LineRequest, limit_s: float) -> LineReply | None:
        """Return the reply, or None if the process ended before replying."""
        self.wait_until_ready()
        self.until_s = time.monotonic() + limit_s
        try:
            self._say(Give(self.number, request))
            data = self._read()
        except (OSError, ValueError):
            return None
        return None if data is None else msgspec.msgpack.decode(data, type=LineReply)

    def wait_until_ready(self) -> None:
        """Wait until the process has loaded what it needs: its first frame says so."""
        if not self._ready:
            self._read()
            self._ready = True

    def _read(self) -> bytes | None:
        assert self.process.stdout is not None
        return read_frame(self.process.stdout)  # type: ignore[arg-type]

    def give_up(self, number: int) -> None:
        """Tell the process that a request is no longer wanted."""
        with suppress(OSError, ValueError):  # the process has ended
            self._say(GiveUp(number))

    def end(self) -> None:
        """End the process."""
        self.process.kill()
        self.process.wait()
        for pipe in (self.process.stdin, self.process.stdout):
            with suppress(OSError):
                pipe.close()  # type: ignore[union-attr]

    def _say(self, said: Give | GiveUp) -> None:
        assert self.process.stdin is not None
        with self._writing:
            write_frame(self.process.stdin, msgspec.msgpack.encode(said))  # type: ignore[arg-type]


class Workers:
    """Hands requests to processes. All methods are thread-safe.

    A slot (a page) has one request running at a time, and a newer one overtakes it. Another slot's request
    gets its own process, and one stays ready, so that a slow piece keeps only its own page waiting. A process
    that exceeds its limit is ended and replaced.
    """

    def __init__(self, most: int = MOST_WORKERS) -> None:
        self._most = most
        self._workers: list[_Worker] = []
        self._newest: OrderedDict[str, int] = OrderedDict()
        self._serials: OrderedDict[tuple[str, str], int] = OrderedDict()
        self._numbers = 0
        self._changed = Condition()
        self._watching = False

    def ask(
        self,
        request: LineRequest,
        slot: str = "",
        serial: int = 0,
        *,
        edition: str = "",
        limit_s: float = LONGEST_S,
    ) -> LineReply:
        """Return the reply to a request. Without a slot it waits for no other request and overtakes none.

        A process that has recently worked the document of that `edition` is preferred.

        Raises:
            OvertakenError: the slot has meanwhile asked for a higher serial number.
                TooMuchError: the request takes longer than `limit_s` seconds, or more memory than it may.
        """
        worker = self._take(slot, serial, edition)
        reply = None
        try:
            reply = worker.exchange(request, limit_s)
        finally:
            self._give_back(worker, ended=reply is None or reply.state == "too-much")
        if self._is_overtaken(slot, serial):
            raise OvertakenError
        if reply is None or reply.state == "too-much":
            raise TooMuchError
        return reply

    def prepare(self) -> None:
        """Start a process before the first request needs one."""
        with self._changed:
            self._keep_one_ready()

    def wait_until_ready(self) -> None:
        """Wait until a process is ready for a request."""
        worker = self._take("", 0, "")
        worker.wait_until_ready()
        self._give_back(worker, ended=False)

    def serial_of(self, slot: str, edition: str) -> int:
        """Return the number of a slot's document, in order of first request."""
        with self._changed:
            key = (slot, edition)
            if key not in self._serials:
                self._numbers += 1
                self._serials[key] = self._numbers
                while len(self._serials) > _REMEMBERED_SLOTS:
                    self._serials.popitem(last=False)
            return self._serials[key]

    def close(self) -> None:
        """End every process."""
        with self._changed:
            workers, self._workers = self._workers, []
            self._watching = False
            self._changed.notify_all()
        for worker in workers:
            worker.end()

    def _is_overtaken(self, slot: str, serial: int) -> bool:
        return bool(slot) and self._newest.get(slot, serial) > serial

    def _take(self, slot: str, serial: int, edition: str) -> _Worker:
        with self._changed:
            if slot:
                self._newest[slot] = max(serial, self._newest.get(slot, serial))
                self._newest.move_to_end(slot)
                while len(self._newest) > _REMEMBERED_SLOTS:
                    self._newest.popitem(last=False)
            while True:
                if self._is_overtaken(slot, serial):
                    raise OvertakenError
                under_way = [each for each in self._workers if slot and each.busy and each.slot == slot]
                for worker in under_way:
                    if worker.serial < serial and worker.until_s > time.monotonic() + GIVE_UP_S:
                        worker.until_s = time.monotonic() + GIVE_UP_S
                        Thread(target=worker.give_up, args=(worker.number,), daemon=True).start()
                ready = None if under_way else self._ready_worker(slot, edition)
                if ready is not None:
                    break
                self._changed.wait(_LOOK_S)
            self._numbers += 1
            ready.busy, ready.slot, ready.serial, ready.number = True, slot, serial, self._numbers
            ready.until_s = time.monotonic() + _START_S
            ready.remembers.append(edition)
            self._keep_one_ready()
            if not self._watching:
                self._watching = True
                Thread(target=self._watch, daemon=True).start()
            return ready

    def _ready_worker(self, slot: str, edition: str) -> _Worker | None:
        """Return an idle process, preferably one that remembers the document; None if all are busy."""
        self._keep_one_ready()
        idle = [each for each in self._workers if not each.busy]
        return min(idle, key=lambda each: (edition not in each.remembers, each.slot != slot), default=None)

    def _keep_one_ready(self) -> None:
        for worker in [each for each in self._workers if not each.busy and each.process.poll() is not None]:
            self._workers.remove(worker)
            worker.end()
        if len(self._workers) < self._most and all(each.busy for each in self._workers):
            self._workers.append(_Worker())

    def _give_back(self, worker: _Worker, *, ended: bool) -> None:
        with self._changed:
            worker.busy = False
            if ended and worker in self._workers:
                self._workers.remove(worker)
                worker.end()
            self._changed.notify_all()

    def _watch(self) -> None:
        """End processes that have run longer than allowed."""
        while True:
            with self._changed:
                if not self._watching:
                    return
                for worker in self._workers:
                    if worker.busy and time.monotonic() > worker.until_s:
                        worker.process.kill()
            time.sleep(_LOOK_S)
