"""Results kept on disk by what they were made from: found again, never believed when damaged.

An entry is the SHA-256 of its key and value and then the value; one that is torn, altered or under
the name of another counts as none.
"""

from __future__ import annotations

import hashlib
import os
from functools import cache
from pathlib import Path

from pegwright.workshop.files import read_plain_file, replace_file

MOST_BYTES = 256 * 2**20
_DIGEST = 32
_ENDING = ".kept"


def cache_folder() -> Path:
    """Return where results are kept: PEGWRIGHT_CACHE, else in the user's cache (XDG Base Directory 0.8)."""
    own = os.environ.get("PEGWRIGHT_CACHE", "")
    if own:
        return Path(own)
    shared = os.environ.get("XDG_CACHE_HOME", "")
    base = Path(shared) if Path(shared).is_absolute() else Path.home() / ".cache"
    return base / "pegwright" / "results"


def key_of(*parts: object) -> str:
    """Return the SHA-256, in hex, over the written-out forms of frozen values."""
    digest = hashlib.sha256()
    for part in parts:
        text = repr(part).encode("utf-8", "surrogatepass")
        digest.update(len(text).to_bytes(8, "big") + text)
    return digest.hexdigest()


@cache
def source_of(*rooms: str) -> str:
    """Name the source of some rooms (`shape`, `structure`): what another source made is not found."""
    digest = hashlib.sha256()
    for room in rooms:
        home = Path(__file__).parents[1] / room
        for path in sorted(home.rglob("*.py")):
            digest.update(path.relative_to(home).as_posix().encode() + path.read_bytes())
    return digest.hexdigest()


def fetch_result(key: str, folder: Path | None = None) -> bytes | None:
    """Return what is kept under a key, or None where nothing whole is."""
    path = (folder or cache_folder()) / f"{key}{_ENDING}"
    try:
        data = read_plain_file(path)
        os.utime(path)  # used last, so thrown out last
    except OSError:
        return None
    value = data[_DIGEST:]
    return value if _digest(key, value) == data[:_DIGEST] else None


def store_result(key: str, value: bytes, folder: Path | None = None, most_bytes: int = MOST_BYTES) -> None:
    """Keep a value; what was used longest ago goes while all together are larger than `most_bytes`.

    A folder that cannot be written to is no fault: the result is then made anew next time.
    """
    place = folder or cache_folder()
    try:
        place.mkdir(parents=True, exist_ok=True)
        replace_file(place / f"{key}{_ENDING}", _digest(key, value) + value, follow=False)
        _evict(place, most_bytes)
    except OSError:
        return


def _digest(key: str, value: bytes) -> bytes:
    return hashlib.sha256(key.encode() + value).digest()


def _evict(place: Path, most_bytes: int) -> None:
    entries = [(path.stat(), path) for path in place.glob(f"*{_ENDING}")]
    entries.sort(key=lambda entry: (entry[0].st_mtime_ns, entry[1].name))
    total = sum(about.st_size for about, _ in entries)
    for about, path in entries:
        if total <= most_bytes:
            return
        path.unlink(missing_ok=True)
        total -= about.st_size
