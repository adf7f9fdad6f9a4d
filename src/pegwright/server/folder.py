"""The pieces in the studio's folder: named, opened, saved whole, and kept in versions.

A piece is a file `NAME.json` in the folder, or a maker's text `NAME.pegwright`, named with its ending: text
stays text when it is saved. A piece's edition is the digest of the file's bytes. Every save names
the edition it started from, so that two pages never overwrite each other silently.
"""

from __future__ import annotations

import errno
import hashlib
import os
import re
import time
import unicodedata
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from threading import Lock
from typing import NamedTuple

from pegwright.pattern import MAX_BYTES
from pegwright.text import SUFFIX
from pegwright.workshop import read_plain_file, replace_file

MOST_PIECES = 2000
MOST_VERSIONS = 200
_NAME = re.compile(r"[^\W_](?:[\w ()+-]|\.(?!\.)){0,79}", re.UNICODE)
STASH = "stash"  # no piece can have this name
_VERSIONS = ".versions"
_REMOVED = ".removed"
_HALF_WRITTEN_S = 60.0
_STAMP = "%Y%m%dT%H%M%S%fZ"


class NoPieceError(LookupError):
    """There is no such piece or version, or no piece can have that name."""


class TooLargeError(Exception):
    """The file is larger than a pattern may be."""


class FolderGoneError(OSError):
    """The folder is gone: it was removed or renamed, or its disk was taken out."""


class ChangedError(Exception):
    """Someone else has changed the piece since the edition that this save started from."""


class KeptVersion(NamedTuple):
    """A version: its name within the piece, and when it was kept (seconds since 1970)."""

    version: str
    kept_s: float


class Folder:
    """A folder of pieces on disk. Every path stays inside it; links that lead out are not followed."""

    def __init__(self, root: Path) -> None:
        self.root = root.resolve()
        self._lock = Lock()
        self._sweep()

    def names(self) -> list[str]:
        """Return the names of the pieces, most recently changed first.

        Raises:
            FolderGoneError: the folder was removed.
        """
        self._find_root()
        found = []
        for path in self._files():
            name = path.name if is_text_name(path.name) else path.stem
            if _is_name(name) and path.is_file() and not path.is_symlink():
                found.append((-path.stat().st_mtime, name))
        return [name for _, name in sorted(found)[:MOST_PIECES]]

    def state(self, name: str) -> os.stat_result:
        """Return the status of a piece's file: when it was saved, how large it is.

        Raises:
            NoPieceError: there is no such piece.
        """
        try:
            return self._path(name).stat()
        except OSError as error:
            raise NoPieceError(name) from error

    def open(self, name: str) -> bytes:
        """Return the bytes of a piece's file.

        Raises:
            NoPieceError: there is no such piece.
            TooLargeError: the file is larger than a pattern may be.
        """
        return _read(self._path(name), name)

    def save(self, name: str, data: bytes, edition: str | None) -> str:
        """Replace a piece atomically and return its new edition; without an `edition`, make a new piece.

        Saving what the file holds already succeeds whatever edition it started from: a page whose save was
        written but not answered for, because the studio was killed, sends it once more.

        Raises:
            ChangedError: the file no longer has that edition or, with None, already exists.
                NoPieceError: no piece can have that name.
            OSError: the folder cannot be written to.
        """
        path = self._path(name)
        with self._lock:
            now = edition_of(_read(path, name)) if path.exists() else None
            made = edition_of(data)
            if edition is not None and now == made:
                return made
            if now != edition:
                raise ChangedError(name)
            replace_file(path, data, follow=False)
        return made

    def remove(self, name: str) -> None:
        """Take a piece off the shelf. Its file is set aside in the folder under the time of removal.

        Raises:
            NoPieceError: there is no such piece.
            OSError: the folder cannot be written to.
        """
        path = self._path(name)
        with self._lock:
            if not path.is_file():
                raise NoPieceError(name)
            aside = self._inner(_REMOVED)
            path.replace(aside / f"{path.stem} {datetime.now(UTC).strftime(_STAMP)}{path.suffix}")

    def free_name(self, title: str) -> str:
        """Return an unused name for a new piece with this title."""
        words = (
            re.sub(r"[^\w]+", "-", unicodedata.normalize("NFKC", title).lower()).strip("-_")[:60] or "piece"
        )
        taken = {path.stem.casefold() for path in self._files()} | {STASH}
        name, number = words, 2
        while name.casefold() in taken:
            name, number = f"{words}-{number}", number + 1
        return name

    def keep(self, name: str) -> str:
        """Keep the piece as it is on disk as a version, and return the version's name.

        Raises:
            NoPieceError: there is no such piece.
            OSError: the folder cannot be written to.
        """
        data = self.open(name)
        shelf = self._inner(_VERSIONS, name)
        version = datetime.now(UTC).strftime(_STAMP)
        replace_file(shelf / _file_of(name, version), data, follow=False)
        others = sorted(path for path in shelf.glob(_file_of(name, "*")) if path.stem != version)
        for old in others[
            : max(0, len(others) + 1 - MOST_VERSIONS)
        ]:  # one kept under a wrong clock may be later
            old.unlink()
        return version

    def versions(self, name: str) -> list[KeptVersion]:
        """Return the kept versions of a piece, latest first."""
        self._path(name)
        shelf = self.root / _VERSIONS / name
        found = []
        for path in shelf.glob(_file_of(name, "*")):
            when = _when(path.stem)
            if when is not None:
                found.append(KeptVersion(path.stem, when))
        return sorted(found, key=lambda kept: -kept.kept_s)

    def open_version(self, name: str, version: str) -> bytes:
        """Return the bytes of a version.

        Raises:
            NoPieceError: there is no such version.
        """
        self._path(name)
        if _when(version) is None:
            raise NoPieceError(name)
        return _read(self.root / _VERSIONS / name / _file_of(name, version), name)

    def open_stash(self) -> tuple[bytes, str]:
        """Return the bytes of the stash's file and its edition; both are empty if there is none.

        Raises:
            NoPieceError: the path is not a plain file.
            TooLargeError: the stash is too large.
            FolderGoneError: the folder was removed.
        """
        self._find_root()
        path = self.root / f"{STASH}.json"
        if not path.exists():
            return b"", ""
        data = _read(path, STASH)
        return data, edition_of(data)

    def save_stash(self, data: bytes, edition: str) -> str:
        """Replace the stash atomically and return its new edition; an empty edition makes a new file.

        Raises:
            ChangedError: the file no longer has that edition.
            NoPieceError: the path is not a plain file.
            TooLargeError: the stash is too large.
            OSError: the folder cannot be written to.
        """
        with self._lock:
            if self.open_stash()[1] != edition:
                raise ChangedError(STASH)
            replace_file(self.root / f"{STASH}.json", data, follow=False)
        return edition_of(data)

    def _files(self) -> Iterator[Path]:
        yield from self.root.glob("*.json")
        yield from self.root.glob(f"*{SUFFIX}")

    def _inner(self, *names: str) -> Path:
        """Return a folder inside the folder, made if needed.

        Raises:
            OSError: there is a link in its place, which could lead out of the folder.
        """
        path = self.root
        for name in names:
            path /= name
            if path.is_symlink():
                raise OSError(errno.ELOOP, os.strerror(errno.ELOOP), str(path))
            path.mkdir(exist_ok=True)
        return path

    def _sweep(self) -> None:
        """Remove half-written files left by a killed studio; a file being written now is younger."""
        for path in (*self.root.glob(".*.json.*"), *self.root.glob(f".*{SUFFIX}.*")):
            if path.is_file() and time.time() - path.stat().st_mtime > _HALF_WRITTEN_S:
                path.unlink(missing_ok=True)

    def _find_root(self) -> None:
        """Check that the folder exists.

        Raises:
            FolderGoneError: it was removed.
        """
        if not self.root.is_dir():
            raise FolderGoneError(errno.ENOENT, os.strerror(errno.ENOENT), str(self.root))

    def _path(self, name: str) -> Path:
        self._find_root()
        if not _is_name(name):
            raise NoPieceError(name)
        path = self.root / (name if is_text_name(name) else f"{name}.json")
        if path.parent != self.root or path.is_symlink():
            raise NoPieceError(name)
        return path


def is_text_name(name: str) -> bool:
    """Say whether a piece of that name is kept as a maker's text."""
    return name.endswith(SUFFIX)


def _file_of(name: str, version: str) -> str:
    """Return the file of a version: of the same kind as the piece's."""
    return f"{version}{SUFFIX if is_text_name(name) else '.json'}"


def _is_name(name: str) -> bool:
    return _NAME.fullmatch(name) is not None and name.casefold() != STASH


def edition_of(data: bytes) -> str:
    """Return the edition of a file's bytes."""
    return hashlib.sha256(data).hexdigest()[:32]


def _read(path: Path, name: str) -> bytes:
    try:
        data = read_plain_file(path, MAX_BYTES + 1, follow=False)
    except OSError as error:
        raise NoPieceError(name) from error
    if len(data) > MAX_BYTES:
        raise TooLargeError(name)
    return data


def _when(version: str) -> float | None:
    try:
        return datetime.strptime(version, _STAMP).replace(tzinfo=UTC).timestamp()
    except ValueError:
        return None
