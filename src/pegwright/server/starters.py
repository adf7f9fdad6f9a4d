"""Pieces to start from: the built-in ones that hold, each with a small picture."""

from __future__ import annotations

from functools import cache
from typing import Any

import msgspec

from pegwright.loom import History, Laid
from pegwright.pattern import Pattern, colours_by_letter, write_pattern
from pegwright.workshop import example_files, open_pattern, starter_pattern, work


class GlanceBand(msgspec.Struct, frozen=True):
    """A band in a glance: its tint, and the indices of the pegs that it was laid over."""

    tint: str
    over: tuple[int, ...]


class Glance(msgspec.Struct, frozen=True):
    """A small picture of a piece: its pegs in mm (x to the right, y away), and the bands as they are laid.

    `arrows` go from peg to peg as loops are carried, if that is shown.
    """

    pegs: tuple[tuple[float, float], ...]
    bands: tuple[GlanceBand, ...]
    arrows: tuple[tuple[int, int], ...] = ()


class Starter(msgspec.Struct, frozen=True, kw_only=True):
    """A piece to start from."""

    name: str
    title: str
    notes: str
    level: str
    bands: int
    glance: Glance
    document: dict[str, Any]


@cache
def load_starters() -> tuple[Starter, ...]:
    """Return the pieces to start from, easy ones first."""
    patterns = {"chain": starter_pattern("Plain chain")}
    for name, path in example_files().items():
        read = open_pattern(path).pattern
        if read is not None and "/" not in name:
            patterns[name] = read
    order = ("basic", "easy", "intermediate", "complex")
    found = [_starter(name, pattern) for name, pattern in patterns.items()]
    return tuple(sorted(found, key=lambda start: (order.index(start.level), start.bands)))


def _starter(name: str, pattern: Pattern) -> Starter:
    made = work(pattern)
    return Starter(
        name=name,
        title=pattern.title,
        notes=pattern.notes,
        level=pattern.level,
        bands=len(made.proof.verdicts),
        glance=glance(pattern, made.history),
        document=msgspec.json.decode(write_pattern(pattern)),
    )


def glance(pattern: Pattern, history: History) -> Glance:
    """Return the small picture of a piece. Bands that touch no peg are left out."""
    board = history.board
    index = {at: i for i, at in enumerate(board.pegs)}
    tints = {letter: colour.hex for letter, colour in colours_by_letter(pattern).items()}
    letters = history.colours
    bands = []
    for event in history.events:
        if isinstance(event, Laid):
            over = tuple(dict.fromkeys(index[s.holder] for s in event.seats if s.holder in index))
            if over:
                bands.append(GlanceBand(tints.get(letters[event.band - 1], "#b9b4a8"), over))
    spots = tuple((round(peg.x_mm, 2), round(peg.y_mm, 2)) for peg in board.pegs.values())
    return Glance(spots, tuple(bands))
