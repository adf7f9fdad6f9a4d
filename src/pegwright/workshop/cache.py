"""Results kept on disk by what they were made from; a damaged entry is ignored.

An entry is the SHA-256 of its key and value, then the value. One that is truncated, altered or filed under
another key counts as missing.
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
    """Return the folder of results: PEGWRIGHT_CACHE, else in the user's cache (XDG Base Directory 0.8)."""
    own = os.environ.get("PEGWRIGHT_CACHE", "")
    if own:
        return Path(own)
    shared = os.environ.get("XDG_CACHE_HOME", "")
    base = Path(shared) if Path(shared).is_absolute() else Path.home() / ".cache"
    return base / "pegwright" / "results"


def key_of(*parts: object) -> str:
    """Return the SHA-256 in hex of the `repr` of frozen values."""
    digest = hashlib.sha256()
    for part in parts:
        text = repr(part).encode("utf-8", "surrogatepass")
        digest.update(len(text).to_bytes(8, "big") + text)
    return digest.hexdigest()


@cache
def source_of(*rooms: str) -> str:
    """Return the SHA-256 in hex of some rooms' source, so that results of other versions are not found."""
    digest = hashlib.sha256()
    for room in rooms:
        home = Path(__file__).parents[1] / room
        for path in sorted(home.rglob("*.py")):
            digest.update(path.relative_to(home).as_posix().encode() + path.read_bytes())
    return digest.hexdigest()


def fetch_result(key: str, folder: Path | None = None) -> bytes | None:
    """Return the value under a key, or None if there is no sound one."""
    path = (folder or cache_folder()) / f"{key}{_ENDING}"
    try:
        data = read_plain_file(path)
        os.utime(path)  # marks it as used just now, so that it is evicted last
    except OSError:
        return None
    value = data[_DIGEST:]
    return value if _digest(key, value) == data[:_DIGEST] else None


def store_result(key: str, value: bytes, folder: Path | None = None, most_bytes: int = MOST_BYTES) -> None:
    """Store a value, and evict the least recently used ones while the total exceeds `most_bytes`.

    A folder that cannot be written to is not an error: the result is computed again next time.
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
