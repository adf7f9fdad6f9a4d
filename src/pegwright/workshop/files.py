"""Open and save files without loss: a fault is a finding, a file is replaced whole or not at all."""

from __future__ import annotations

import errno
import os
import stat
import tempfile
from pathlib import Path

from pegwright.finding import Location, finding, phrase
from pegwright.pattern import MAX_BYTES, PatternReading
from pegwright.text import read_any_pattern


def open_pattern(path: Path) -> PatternReading:
    """Read the pattern in a file, as text or as JSON. An unreadable file is a finding."""
    data = read_bytes(path)
    return data if isinstance(data, PatternReading) else read_any_pattern(data, path.name)


def read_bytes(path: Path) -> bytes | PatternReading:
    """Return a file's bytes, at most one more than a pattern may have, or a reading that says why not."""
    try:
        return read_plain_file(path, MAX_BYTES + 1)
    except OSError as error:
        known = errno.errorcode.get(error.errno or 0, "")
        reason = phrase("os-reason", errno=known, text=error.strerror or type(error).__name__)
        return PatternReading(
            None, (finding("file-unreadable", Location(path=str(path)), file=str(path), reason=reason),)
        )


def read_plain_file(path: Path, most_bytes: int = -1, *, follow: bool = True) -> bytes:
    """Return the first bytes of a file; never block on a pipe or a device.

    Raises:
        OSError: the path is no plain file, or it cannot be read.
    """
    flags = os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0)
    handle = os.open(path, flags | (0 if follow else getattr(os, "O_NOFOLLOW", 0)))
    mode = os.fstat(handle).st_mode
    if not stat.S_ISREG(mode):
        os.close(handle)
        known = errno.EISDIR if stat.S_ISDIR(mode) else errno.EINVAL
        raise OSError(known, os.strerror(known), str(path))
    with os.fdopen(handle, "rb") as file:
        return file.read(most_bytes)


def replace_file(path: Path, data: bytes, *, follow: bool = True) -> None:
    """Replace a file atomically: write beside it, flush to disk, then rename over it (POSIX rename).

    Replaces the file that a link points to, or the link itself if `follow` is false.

    Raises:
        OSError: the folder cannot be written to, or the path is a folder, a pipe or a device; an old file is
            left untouched.
    """
    target = Path(os.path.realpath(path)) if follow else path
    try:
        mode = target.lstat().st_mode
    except FileNotFoundError:
        mode = stat.S_IFREG | 0o644
    if stat.S_ISLNK(mode) and not follow:
        mode = stat.S_IFREG | 0o644
    if not stat.S_ISREG(mode):
        raise OSError(
            errno.EEXIST, f"{path} is no plain file (a folder, a pipe, a device), so it is left alone"
        )
    handle, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        Path(name).chmod(stat.S_IMODE(mode))
        Path(name).replace(target)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
