"""Real pieces from the record to rest: the demo pieces, random programs, and what makers say of lengths."""

from __future__ import annotations

import math
import time

from bench.pieces import chain
from bench.report import Figure
from examples.pieces import PIECES
from pegwright import loom
from pegwright.loom import History, Laid
from pegwright.pattern import Pattern, expand
from pegwright.shape import Goal, Kind, Piece, piece_at_rest
from tests.fit.rosettes import rosettes
from tests.programs import KINDS, program

_STANDARD = Kind(13.5, 1.5)
_QUICK = ("ebb-line", "twin-hulls", "herring-tail")
_SMALL_MM, _LARGE_MM = 135.0, 180.0  # wrists; a piece is worn at about 0.9 of them


def real(quick: bool) -> list[Figure]:
    """Every demo piece to the end, programs until they have thickened, and the practice checks."""
    out: list[Figure] = []
    crossed = 0
    for name in _QUICK if quick else [name for name in PIECES if "/" not in name]:
        seconds, rest = timed(PIECES[name]())
        crossed += rest.certified.crossings
        out.append(Figure(f"{name}: {rest.bands} bands, {rest.relaxed.iterations} steps", seconds, "s"))
        out.append(_rested(rest))
    out.append(Figure("pass-throughs in demo pieces", crossed, "", "0", crossed == 0))
    length = piece_at_rest(chain(25), _row, [_STANDARD] * 25).length_mm
    met = 130 <= length <= 160
    out.append(Figure("length of a plain chain of 25 bands", length, "mm", "130 to 160", met))
    out += _programs(10 if quick else 200)
    return out if quick else out + _strip(length / 25)


def _row(peg: str) -> tuple[float, float]:
    return 0.0, 16.0 * int(peg[1:])


def timed(pattern: Pattern) -> tuple[float, Piece]:
    """Relax a pattern's piece; seconds and the piece."""
    done = _history(pattern)
    begin = time.perf_counter()
    rest = piece_at_rest(done.events, done.board.spots, [_STANDARD] * done.final.bands)
    return time.perf_counter() - begin, rest


def _history(pattern: Pattern) -> History:
    return loom.replay(loom.board(pattern.loom), expand(pattern).doings)


def _rested(rest: Piece) -> Figure:
    drop = rest.relaxed.residual_drop
    return Figure("  residual left", drop, "of reference", "≤ 1e-3", rest.relaxed.converged)


def _programs(count: int) -> list[Figure]:
    """Programs of all kinds, most of which no hand would keep: nothing may pass until they lie thick."""
    crossed, rested, least = 0, 0, math.inf
    for seed in range(count):
        made = program(seed, KINDS[seed % len(KINDS)])
        bands = sum(isinstance(e, Laid) for e in made.events)
        rest = piece_at_rest(made.events, made.spots, [_STANDARD] * bands, goal=Goal(iterations=60))
        crossed += rest.certified.crossings
        rested += rest.relaxed.converged
        least = min(least, rest.certified.smallest_gap_mm)
    return [
        Figure(f"pass-throughs in {count} random programs", crossed, "", "0", crossed == 0),
        Figure("  of these at rest within 60 steps", rested, ""),
        Figure("  least distance of centrelines", least, "mm", "> 0", least > 0),
    ]


def _strip(pitch_mm: float) -> list[Figure]:
    """The strip of six rosettes (common practice, no source): bands to add for a small and a large wrist."""
    seconds, rest = timed(rosettes(6))
    short = [(0.9 * wrist - rest.length_mm) / pitch_mm for wrist in (_SMALL_MM, _LARGE_MM)]
    return [
        Figure(f"strip of six rosettes: {rest.bands} bands, {rest.relaxed.iterations} steps", seconds, "s"),
        _rested(rest),
        Figure("  its length", rest.length_mm, "mm"),
        Figure("  bands short of a small wrist", short[0], "", "3 to 4", 2.5 <= short[0] <= 4.5),
        Figure("  bands short of a large wrist", short[1], "", "≥ 6", short[1] >= 5.5),
    ]
