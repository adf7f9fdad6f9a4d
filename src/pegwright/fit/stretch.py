"""Whether each band is slack or overstretched on its pegs when it is placed, and when a loop is moved.

A band at rest is π(bore + t) long along its middle. Taut round its pegs it is as long as the hull of their
centres and once round a peg, π(peg Ø + t), more; each further turn on a peg adds π(peg Ø + t). So over two
pegs s apart it is slack until s > π(bore − peg Ø)/2.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from pegwright.finding import Finding, Location, finding, sum_up
from pegwright.loom import Bight, Board, Drawn, History, Laid, Lifted, Moved, hull, step_numbers
from pegwright.pattern import BandType, Pattern, band_types_by_letter, colours_by_letter

__all__ = ["BREAK_STRETCH", "WORK_STRETCH", "Tautness", "check_stretch", "rest_mm", "taut_mm", "tautness"]

WORK_STRETCH = 3.0  # bands are worked up to about three times their length; common practice, no source
BREAK_STRETCH = 5.0  # and break from about five; common practice, no source


class Tautness(NamedTuple):
    """One band as it lies on its pegs: after which move of the history (from 0), and two lengths in mm."""

    band: int
    at: int
    pegs: tuple[str, ...]
    taut_mm: float
    rest_mm: float
    placed: bool

    @property
    def stretch(self) -> float:
        """Ratio of taut to rest length; below 1 the band is slack."""
        return self.taut_mm / self.rest_mm


def rest_mm(band: BandType) -> float:
    """Return the length of the band's middle line at rest, in mm."""
    return math.pi * (band.bore_mm + band.thickness_mm)


def taut_mm(board: Board, seats: Iterable[str], thickness_mm: float) -> float:
    """Return the length of a taut band in mm; `seats` names a peg once for each loop it has there.

    A leg with a half-twist is a little longer; the difference is ignored.
    """
    on = list(seats)
    spots = {peg: (board.pegs[peg].x_mm, board.pegs[peg].y_mm) for peg in on}
    return _hull_length_mm(list(spots.values())) + math.pi * (board.peg_mm + thickness_mm) * (
        1 + len(on) - len(spots)
    )


def tautness(pattern: Pattern, history: History) -> Iterator[Tautness]:
    """Yield every band as it is placed on pegs, and again each time one of its loops is put on another peg.

    Bands of an unlisted kind, and bands with a loop that is not on a peg, are left out.
    """
    board = history.board
    kinds = band_types_by_letter(pattern)
    lying: dict[Bight, str] = {}
    loops: dict[int, list[Bight]] = {}
    for at, done in enumerate(history.moves):
        for event in done.events:
            match event:
                case Laid():
                    band = event.band
                    loops[band] = [seat.bight for seat in event.seats]
                    lying |= {seat.bight: seat.holder for seat in event.seats}
                case Drawn() | Moved():
                    band = event.bight.band
                    lying[event.bight] = event.target
                case Lifted():
                    lying[event.bight] = ""
                    continue
                case _:
                    continue
            kind = kinds.get(history.colours[band - 1])
            holders = [lying[bight] for bight in loops[band]]
            if kind is not None and all(holder in board.pegs for holder in holders):
                yield Tautness(
                    band,
                    at,
                    tuple(dict.fromkeys(holders)),
                    taut_mm(board, holders, kind.thickness_mm),
                    rest_mm(kind),
                    isinstance(event, Laid),
                )


def check_stretch(pattern: Pattern, history: History) -> tuple[Finding, ...]:
    """Return one finding for each sort of band and span: slack as placed, or overstretched at any time."""
    numbers, names = step_numbers(history), colours_by_letter(pattern)
    same: dict[tuple[str, str, float], list[Tautness]] = {}
    for one in tautness(pattern, history):
        code = _finding_code(one)
        if code:
            key = (code, history.colours[one.band - 1], round(one.taut_mm, 2))
            same.setdefault(key, []).append(one)
    found = []
    for (code, letter, _), cases in same.items():
        one = cases[0]
        name = names[letter].name
        path = history.moves[one.at].path
        found.append(
            finding(
                code,
                Location(path=path, step=numbers[one.at], peg=one.pegs[0], band=one.band),
                name=name,
                pegs=one.pegs,
                taut_mm=one.taut_mm,
                rest_mm=one.rest_mm,
                stretch=one.stretch,
                count=len(cases),
                more=len(cases) - 1,
            )
        )
    return sum_up(found)


def _finding_code(one: Tautness) -> str:
    if one.stretch > BREAK_STRETCH:
        return "band-overstretched"
    if one.stretch > WORK_STRETCH:
        return "band-taut"
    return "band-slack" if one.placed and one.taut_mm <= one.rest_mm * (1 + 1e-9) else ""


def _hull_length_mm(spots: Sequence[tuple[float, float]]) -> float:
    """Return the perimeter of the spots' convex hull in mm; for two spots, there and back."""
    ring = hull(spots)
    if len(ring) > 2 and _are_in_line(spots):
        ring = [ring[0], ring[-1]]
    return sum(math.dist(spots[i], spots[j]) for i, j in zip(ring, ring[1:] + ring[:1], strict=True))


def _are_in_line(spots: Sequence[tuple[float, float]]) -> bool:
    (ax, ay), (bx, by) = min(spots), max(spots)
    return all(abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) < 1e-6 for x, y in spots)
