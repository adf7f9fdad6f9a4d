"""Child processes of the studio: starting one, limiting its memory, and talking to it.

A pipe carries frames: a length (4 bytes, big-endian) and that many bytes.
"""

from __future__ import annotations

import os
import struct
import subprocess
import sys
from contextlib import suppress
from typing import BinaryIO

MOST_FRAME_BYTES = 64_000_000
_LENGTH = struct.Struct(">I")


def start_child(module: str) -> subprocess.Popen[bytes]:
    """Start a process that runs `main` of a module and talks through its standard input and output."""
    # Without -P, modules in the current folder, where the pieces are, would shadow ours.
    command = [sys.executable, "-P", "-c", f"from {module} import main; main()"]
    return subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE)


def take_output() -> BinaryIO:
    """Return this process's output for frames only; whatever a library prints goes to stderr instead."""
    out = os.fdopen(os.dup(sys.stdout.fileno()), "wb")
    os.dup2(sys.stderr.fileno(), sys.stdout.fileno())
    return out


def limit_memory(most_bytes: int) -> None:
    """Limit the memory of this process, where the system supports that."""
    with suppress(ImportError, ValueError, OSError):
        import resource  # noqa: PLC0415 - not on every system

        resource.setrlimit(resource.RLIMIT_DATA, (most_bytes, most_bytes))


def write_frame(pipe: BinaryIO, data: bytes) -> None:
    """Write a frame and flush it.

    Raises:
        ValueError: the data is larger than a frame may be.
            OSError: the other end is closed.
    """
    if len(data) > MOST_FRAME_BYTES:
        raise ValueError(f"{len(data)} bytes are too many to be handed over")
    pipe.write(_LENGTH.pack(len(data)) + data)
    pipe.flush()


def read_frame(pipe: BinaryIO) -> bytes | None:
    """Read a frame; None at the end, or if the frame is truncated or too large."""
    head = pipe.read(_LENGTH.size)
    if len(head) < _LENGTH.size:
        return None
    (length,) = _LENGTH.unpack(head)
    if length > MOST_FRAME_BYTES:
        return None
    data = pipe.read(length)
    return data if len(data) == length else None
