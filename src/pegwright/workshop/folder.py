"""Write files into a folder and never outside it."""

from __future__ import annotations

import re
from pathlib import Path

from pegwright.finding import RefusedError, phrase
from pegwright.workshop.files import replace_file

_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]{0,99}")


def write_into(folder: Path, name: str, data: bytes) -> Path:
    """Write a file (`part/file.ext`) into a folder atomically and return its path.

    Raises:
        ValueError: the name is not a plain relative path.
        RefusedError: a folder on its path is a link to elsewhere.
        OSError: the folder cannot be written to.
    """
    if not all(_NAME.fullmatch(part) for part in name.split("/")):
        raise ValueError(f"{name!r} is no plain name for a file")
    folder.mkdir(parents=True, exist_ok=True)
    target = folder / name
    target.parent.mkdir(parents=True, exist_ok=True)
    if not target.parent.resolve().is_relative_to(folder.resolve()):
        raise RefusedError(phrase("leads-out-of-folder", path=str(target.parent), folder=str(folder)))
    replace_file(target, data, follow=False)  # a link could lead out of the folder
    return target
