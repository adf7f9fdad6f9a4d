"""Compiled kernels on disk, only in a folder that nobody else can write to; damaged ones are ignored.

Numba's cache files are pickles, and whoever can write one can execute code. So they go to a folder of the
user's own, whose owner and mode are checked, never beside the source and never in the current folder. Each
file starts with the SHA-256 of the rest; a truncated or altered one counts as missing and is written again.
Without such a folder, every process compiles its kernels and nothing is kept.
"""

# Numba's cache has no types.
# mypy: disable-error-code="no-untyped-call, misc"

from __future__ import annotations

import contextlib
import hashlib
import os
import pickle
import shutil
import stat
import sys
import tempfile
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import Any

import numba
from numba.core.caching import CompileResultCacheImpl, FunctionCache, IndexDataCacheFile

__all__ = ["KernelCache", "private_folder", "use_kernel_cache"]

_DIGEST = 32
_VERSIONS_KEPT = 8  # the newest compiled versions of the source


def use_kernel_cache(compiled: Any) -> None:
    """Cache a numba function's code on disk, if there is a private folder."""
    folder = cache_folder()
    if folder is not None and hasattr(compiled, "_cache"):
        compiled._cache = KernelCache(compiled.py_func, folder)


@cache
def cache_folder() -> Path | None:
    """Return the folder of this version's kernels, created if missing; None if none is safe.

    It is named after the source of all kernels: one kernel is compiled into another, so a change in one
    changes all.
    """
    for base in _base_folders():
        folder = base / source_digest()
        fresh = not folder.exists()
        if private_folder(folder):
            if fresh:
                _drop_old_versions(base)
            return folder
    return None


def _base_folders() -> Iterator[Path]:
    """Yield the folders that may hold kernels, best first.

    NUMBA_CACHE_DIR alone if it is set; else the user's cache (XDG Base Directory 0.8), then a private
    temporary folder, since homes that others can write to are not rare.
    """
    own = os.environ.get("NUMBA_CACHE_DIR", "")
    if Path(own).is_absolute():
        yield Path(own) / "pegwright-kernels"
        return
    shared = os.environ.get("XDG_CACHE_HOME", "")
    if Path(shared).is_absolute():
        yield Path(shared) / "pegwright" / "kernels"
    else:
        with contextlib.suppress(RuntimeError):
            yield Path.home() / ".cache" / "pegwright" / "kernels"
    user = os.geteuid() if hasattr(os, "geteuid") else "user"
    with contextlib.suppress(OSError):
        yield Path(tempfile.gettempdir()) / f"pegwright-kernels-{user}"


@cache
def source_digest() -> str:
    """Return a digest of the source of all kernels and the versions of their compiler."""
    digest = hashlib.sha256(numba.__version__.encode())
    for path in sorted(Path(__file__).parent.glob("*.py")):
        text = path.read_bytes()
        if b"kernel\ndef " in text:
            digest.update(path.name.encode() + text)
    return digest.hexdigest()[:24]


def private_folder(folder: Path) -> bool:
    """Create a folder and return whether only this user can write to it or change its path.

    The folder and its parent must be this user's, no links, and writable by nobody else. Folders above may
    belong to the system; one that others can write to is accepted only if it is sticky, like the temporary
    folder. On a system without owners, the user's cache is taken as private.
    """
    try:
        for place in (folder.parent, folder):
            place.mkdir(mode=0o700, parents=True, exist_ok=True)
        if not hasattr(os, "geteuid"):
            return os.access(folder, os.W_OK)
        inner = all(_is_own(place.lstat(), stat.S_ISDIR) for place in (folder.parent, folder))
        return inner and os.access(folder, os.W_OK) and all(_is_safe(p) for p in folder.resolve().parents)
    except OSError:
        return False


def _is_own(facts: os.stat_result, is_kind: Callable[[int], bool]) -> bool:
    return is_kind(facts.st_mode) and facts.st_uid == os.geteuid() and not facts.st_mode & 0o022


def _is_safe(folder: Path) -> bool:
    facts = folder.stat()
    mine = facts.st_uid in (0, os.geteuid())
    group = facts.st_mode & 0o020 and facts.st_gid not in (0, os.getegid())
    return mine and (bool(facts.st_mode & stat.S_ISVTX) or not (facts.st_mode & 0o002 or group))


def _drop_old_versions(base: Path) -> None:
    with contextlib.suppress(OSError):
        versions = sorted(base.iterdir(), key=lambda path: path.lstat().st_mtime, reverse=True)
        for path in versions[_VERSIONS_KEPT:]:
            shutil.rmtree(path, ignore_errors=True)


class _Place:
    """Numba's interface for the place where a function's code is kept."""

    def __init__(self, folder: Path, source: str, line: int) -> None:
        self.folder, self.line = folder, line
        self._py_file = source  # numba names it if code cannot be kept

    def ensure_cache_path(self) -> None:
        if not private_folder(self.folder):
            raise PermissionError(f"others can write to {self.folder}")

    def get_cache_path(self) -> str:
        return str(self.folder)

    def get_source_stamp(self) -> str:
        return source_digest()

    def get_disambiguator(self) -> str:
        return str(self.line)


class _Reduction(CompileResultCacheImpl):
    """Numba's serialisation of a compiled function, in our place."""

    def __init__(self, function: Any, folder: Path) -> None:
        # Numba's own would import classes named in the environment or in a file of the current folder.
        code = function.__code__
        self._lineno = code.co_firstlineno
        self._locator = _Place(folder, code.co_filename, code.co_firstlineno)
        name = f"{Path(code.co_filename).stem}.{function.__qualname__}"
        self._filename_base = self.get_filename_base(name, getattr(sys, "abiflags", ""))


class _CheckedFile(IndexDataCacheFile):
    """Numba's index and data files, each after the SHA-256 of the rest."""

    def _load_index(self) -> dict[Any, str]:
        try:
            version, stamp, overloads = pickle.loads(_read_checked(Path(self._index_path)))
        except (OSError, EOFError, ValueError):
            return {}
        return overloads if (version, stamp) == (self._version, self._source_stamp) else {}

    def _save_index(self, overloads: dict[Any, str]) -> None:
        self._write(self._index_path, self._dump((self._version, self._source_stamp, overloads)))

    def _load_data(self, name: str) -> Any:
        return pickle.loads(_read_checked(Path(self._data_path(name))))

    def _save_data(self, name: str, data: Any) -> None:
        self._write(self._data_path(name), self._dump(data))

    def _write(self, path: str, data: bytes) -> None:
        with self._open_for_write(path) as file:
            if hasattr(os, "fchmod"):
                os.fchmod(file.fileno(), 0o600)  # whatever the user's umask allows
            file.write(hashlib.sha256(data).digest() + data)


def _read_checked(path: Path) -> bytes:
    """Return the content of a file after its digest.

    Raises:
        OSError: the file cannot be read, is not this user's, or is damaged.
    """
    flags = os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0)
    with os.fdopen(os.open(path, flags | getattr(os, "O_BINARY", 0)), "rb") as file:
        if hasattr(os, "geteuid") and not _is_own(os.fstat(file.fileno()), stat.S_ISREG):
            raise PermissionError(f"{path} can be written by others")
        data = file.read()
    if hashlib.sha256(data[_DIGEST:]).digest() != data[:_DIGEST]:
        raise OSError(f"{path} is damaged")
    return data[_DIGEST:]


class KernelCache(FunctionCache):
    """One function's code on disk in `folder`; if anything is wrong, the function is compiled."""

    def __init__(self, function: Any, folder: Path) -> None:
        self._name = repr(function)
        self._py_func = function
        self._impl = _Reduction(function, folder)
        self._cache_path = str(folder)
        self._cache_file = _CheckedFile(self._cache_path, self._impl.filename_base, source_digest())
        self.enable()

    def is_kept(self) -> bool:
        """Return whether a sound version of the function is there."""
        return bool(self._cache_file._load_index())

    def load_overload(self, sig: Any, target_context: Any) -> Any:
        """Return the code for these types, or None if there is no sound copy."""
        with self._without_harm():
            return super().load_overload(sig, target_context)
        return None

    def save_overload(self, sig: Any, data: Any) -> None:
        """Store the code for these types, if possible."""
        with self._without_harm():
            super().save_overload(sig, data)

    @contextlib.contextmanager
    def _without_harm(self) -> Iterator[None]:
        try:
            yield
        except OSError:  # no space, no permission, or no folder: go on without a cache
            self.disable()
