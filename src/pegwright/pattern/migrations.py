"""Numbered migrations: what an older version of the format means in the next one.

Each takes and returns plain JSON values and touches only what changed. `MIGRATIONS[n]` leads from n to n+1.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from pegwright.pattern.document import VERSION

Raw = dict[str, Any]


def _one_band_to_many(raw: Raw) -> Raw:
    """Version 1 knew one kind of band (`band`); version 2 has a list, and colours name theirs."""
    raw = dict(raw)
    band = raw.pop("band", None)
    if isinstance(band, dict):
        raw["bands"] = [{"name": "standard", **band}]
    return raw


def _texts_have_a_language(raw: Raw) -> Raw:
    """Version 2 did not say in which language its texts are; version 3 takes them for English.

    In version 2 every lifted loop dropped off its peg, as it does in version 3 where `to` is left out.
    """
    return raw if "language" in raw else {**raw, "language": "en"}


MIGRATIONS: dict[int, Callable[[Raw], Raw]] = {1: _one_band_to_many, 2: _texts_have_a_language}


def migrate(raw: Raw) -> Raw | None:
    """Bring a document of any known version up to the newest.

    Returns None where the version is missing, no whole number, or not known.
    """
    version = raw.get("pegwright")
    if not isinstance(version, int) or isinstance(version, bool) or not 1 <= version <= VERSION:
        return None
    for step in range(version, VERSION):
        raw = MIGRATIONS[step](raw)
        raw["pegwright"] = step + 1
    return raw
