"""Long work: one job of a kind for each piece, each in a process that can be ended at once."""

from __future__ import annotations

import secrets
import subprocess
import time
from collections import OrderedDict
from contextlib import suppress
from threading import BoundedSemaphore, Condition, Lock, Thread
from typing import IO, Literal

import msgspec

from pegwright.finding import WordedFinding
from pegwright.server.child_process import read_frame, start_child, write_frame
from pegwright.server.job_requests import (
    EndFrame,
    FileFrame,
    Frame,
    JobMessage,
    JobRequest,
    ProgressFrame,
)

AT_ONCE = 2
MOST_JOBS = 24  # kept, with their files
MOST_WAITING = 8
MOST_BYTES = 200_000_000
LONGEST_S = 900.0
FORGOTTEN_S = 90.0  # a job that no page has asked about for this long is ended
_LOOK_S = 10.0

JobState = Literal["waiting", "running", "done", "refused", "failed", "ended"]
_OPEN = ("waiting", "running")


class NoJobError(LookupError):
    """There is no such job, or it has made no such file."""


class BusyError(Exception):
    """Too many jobs are waiting."""


class JobStatus(msgspec.Struct, frozen=True, kw_only=True):
    """The status of a job. `serial` rises with every change; `files` are ready to fetch.

    `refused` is a request that cannot be met, for the `reason` given; `failed` is our own fault; `ended` is a
    job that a newer one replaced, or that took too long.
    """

    job: str
    state: JobState
    serial: int = 0
    what: str = ""
    done: int = 0
    total: int = 0
    files: tuple[str, ...] = ()
    reason: str = ""
    findings: tuple[WordedFinding, ...] = ()


class _Job:
    def __init__(self, slot: str) -> None:
        self.slot = slot
        self.status = JobStatus(job=secrets.token_urlsafe(24), state="waiting")
        self.files: dict[str, bytes] = {}
        self.process: subprocess.Popen[bytes] | None = None
        self.asked_s = time.monotonic()
        self.changed = Condition()

    def update(self, **news: object) -> None:
        """Update the status, unless the job is already closed."""
        with self.changed:
            if self.status.state in _OPEN:
                self.status = msgspec.structs.replace(self.status, serial=self.status.serial + 1, **news)
                self.changed.notify_all()

    def end(self, state: JobState = "ended") -> None:
        self.update(state=state)
        if self.process is not None:
            self.process.kill()


class Jobs:
    """Starts jobs, reports on them, keeps their files. All methods are thread-safe."""

    def __init__(self) -> None:
        self._jobs: OrderedDict[str, _Job] = OrderedDict()
        self._lock = Lock()
        self._turn = BoundedSemaphore(AT_ONCE)
        self._spare: subprocess.Popen[bytes] | None = None

    def start(self, slot: str, request: JobRequest, document: dict[str, object]) -> JobStatus:
        """Start a job and end whatever was running in its slot.

        Raises:
            BusyError: too many jobs are waiting.
        """
        job = _Job(slot)
        with self._lock:
            for other in self._jobs.values():
                if other.slot == slot:
                    other.end()
            if sum(each.status.state in _OPEN for each in self._jobs.values()) >= MOST_WAITING:
                raise BusyError
            self._jobs[job.status.job] = job
            self._forget()
        sent = msgspec.msgpack.encode(JobMessage(request, document))
        Thread(target=self._run, args=(job, sent), daemon=True).start()
        return job.status

    def status(self, name: str, seen: int = -1) -> JobStatus:
        """Return the status of a job as soon as it is newer than `seen`, or after 10 s.

        Raises:
            NoJobError: there is no such job.
        """
        job = self._job(name)
        with job.changed:
            job.asked_s = time.monotonic()
            job.changed.wait_for(lambda: job.status.serial > seen or job.status.state not in _OPEN, _LOOK_S)
            job.asked_s = time.monotonic()
            return job.status

    def file(self, name: str, file: str) -> bytes:
        """Return a file that a job has made.

        Raises:
            NoJobError: there is no such job or file.
        """
        try:
            return self._job(name).files[file]
        except KeyError as error:
            raise NoJobError(file) from error

    def end(self, name: str) -> JobStatus:
        """End a job.

        Raises:
            NoJobError: there is no such job.
        """
        job = self._job(name)
        job.end()
        return job.status

    def close(self) -> None:
        """End every job and process."""
        with self._lock:
            for job in self._jobs.values():
                job.end()
            if self._spare is not None:
                self._spare.kill()
                self._spare = None

    def _job(self, name: str) -> _Job:
        job = self._jobs.get(name)
        if job is None:
            raise NoJobError(name)
        return job

    def _forget(self) -> None:
        """Forget the oldest closed jobs."""
        for name in [n for n, each in self._jobs.items() if each.status.state not in _OPEN]:
            if len(self._jobs) <= MOST_JOBS:
                break
            del self._jobs[name]

    def _run(self, job: _Job, sent: bytes) -> None:
        while not self._turn.acquire(timeout=0.5):
            self._end_if_forgotten(job)
            if job.status.state not in _OPEN:
                return
        try:
            if job.status.state in _OPEN:
                self._work(job, sent)
        finally:
            self._turn.release()

    def _work(self, job: _Job, sent: bytes) -> None:
        process = job.process = self._take_worker()
        if job.status.state not in _OPEN:  # it ended in the meantime
            process.kill()
        assert process.stdin is not None
        assert process.stdout is not None
        Thread(target=self._watch, args=(job, process), daemon=True).start()
        try:
            write_frame(process.stdin, sent)  # type: ignore[arg-type]
            job.update(state="running")
            self._listen(job, process.stdout)
        except OSError:  # it was ended before it started
            job.update(state="failed")
        finally:
            process.kill()
            process.wait()
            process.stdout.close()
            with suppress(OSError):  # the reader is gone
                process.stdin.close()

    def _listen(self, job: _Job, pipe: IO[bytes]) -> None:
        size = 0
        while (data := read_frame(pipe)) is not None:  # type: ignore[arg-type]
            size += len(data)
            frame: Frame = msgspec.msgpack.decode(data, type=Frame)
            match frame:
                case ProgressFrame():
                    job.update(what=frame.what, done=frame.done, total=frame.total)
                case FileFrame():
                    job.files[frame.name] = frame.data
                    job.update(files=tuple(job.files))
                case EndFrame(reason, findings):
                    job.update(state="refused" if reason else "done", reason=reason, findings=findings)
                    return
            if size > MOST_BYTES:
                break
        job.update(state="failed")

    def _watch(self, job: _Job, process: subprocess.Popen[bytes]) -> None:
        begun_s = time.monotonic()
        while process.poll() is None:
            self._end_if_forgotten(job)
            if time.monotonic() - begun_s > LONGEST_S:
                job.end()
            time.sleep(0.5)

    @staticmethod
    def _end_if_forgotten(job: _Job) -> None:
        if time.monotonic() - job.asked_s > FORGOTTEN_S:
            job.end()

    def _take_worker(self) -> subprocess.Popen[bytes]:
        """Return a process that is ready for a request, and warm up the next one."""
        with self._lock:
            ready, self._spare = self._spare, _start_worker()
        return ready if ready is not None and ready.poll() is None else _start_worker()


def _start_worker() -> subprocess.Popen[bytes]:
    return start_child("pegwright.server.job_requests")
