"""The colours of bands that a maker has: from the stash, or told by name and tint."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from pegwright.finding import RefusedError, phrase
from pegwright.fit import Stash

__all__ = ["BandColour", "band_colours_of", "letter_colours", "read_band_colours"]

_LETTER = re.compile(r"[A-Za-z][A-Za-z0-9]{0,5}")
_TINT = re.compile(r"#[0-9a-fA-F]{6}")


class BandColour(NamedTuple):
    """A colour of bands: its letter, name and tint (#rrggbb), and how many are at hand (None: not told)."""

    letter: str
    name: str
    tint: str
    have: int | None = None


def band_colours_of(stash: Stash, band: str = "standard") -> tuple[BandColour, ...]:
    """Return the colours of one kind of band that the stash has or can buy, and whose tint it tells.

    Entries of one name and tint are one colour. A pack for any colour makes none.
    """
    found: dict[tuple[str, str], tuple[int, bool]] = {}
    for goods in stash.bands:
        if goods.tint and goods.colour and goods.band in ("", band):
            key = (goods.colour, goods.tint.lower())
            have, buy = found.get(key, (0, False))
            found[key] = (have + goods.have, buy or bool(goods.packs))
    usable = {key: have for key, (have, buy) in found.items() if have or buy}
    return letter_colours((name, tint, have) for (name, tint), have in usable.items())


def read_band_colours(text: str) -> tuple[BandColour, ...]:
    """Read colours told as `foam white=#f2efe6, slate=#4a5a6a`.

    Raises:
        RefusedError: a part of the text is no name with a tint, or a colour is told twice.
    """
    told: list[tuple[str, str]] = []
    for part in filter(None, (each.strip() for each in text.split(","))):
        name, _, tint = (each.strip() for each in part.partition("="))
        if not name or len(name) > 60 or not name.isprintable() or not _TINT.fullmatch(tint):
            raise RefusedError(phrase("colours-unreadable", part=part))
        if name in [known for known, _ in told]:
            raise RefusedError(phrase("colours-twice", name=name))
        told.append((name, tint.lower()))
    return letter_colours((name, tint, None) for name, tint in told)


def letter_colours(told: Iterable[tuple[str, str, int | None]]) -> tuple[BandColour, ...]:
    """Return colours of a name, a tint (#rrggbb) and a number at hand, each with a letter of its own."""
    known = list(told)
    letters = _letters([name for name, _, _ in known])
    return tuple(BandColour(letter, *each) for letter, each in zip(letters, known, strict=True))


def _letters(names: Sequence[str]) -> list[str]:
    """Return a letter of its own for each name: the name itself if it is one, else one of its letters."""
    taken = {name for name in names if _LETTER.fullmatch(name) and len(name) <= 2}
    letters = []
    for name in names:
        letter = name if name in taken else next(each for each in _tries(name) if each not in taken)
        taken.add(letter)
        letters.append(letter)
    return letters


def _tries(name: str) -> Iterable[str]:
    plain = [each.upper() for each in name if each.isascii() and each.isalpha()]
    yield from plain
    yield from "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
    first = plain[0] if plain else "C"
    yield from (f"{first}{number}" for number in range(2, 10_000))
