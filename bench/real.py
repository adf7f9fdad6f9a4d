"""Real pieces from the record to rest: the demo pieces, random programs, and what makers say of lengths.

`python -m bench real` runs them alone; `python -m bench shape` runs them with all else. Each figure goes to
standard error as soon as it is measured.
"""

from __future__ import annotations

import math
import sys
import time
from collections.abc import Iterable, Iterator

from bench.report import Figure
from examples.pieces import PIECES
from pegwright import loom
from pegwright.loom import History, Laid
from pegwright.pattern import Pattern
from pegwright.shape import BandProperties, Goal, RestingPiece, relax_piece
from testing.histories import chain
from testing.programs import KINDS, program
from testing.rosettes import rosettes

_STANDARD = BandProperties(13.5, 1.5)
_QUICK = ("ebb-line", "twin-hulls", "herring-tail")
_EACH = 20  # random programs between two words on how they fare
_SMALL_MM, _LARGE_MM = 135.0, 180.0  # wrists; a piece is worn at about 0.9 of them


def run(quick: bool) -> list[Figure]:
    """Measure the real pieces alone."""
    return told(real(quick))


def told(figures: Iterable[Figure]) -> list[Figure]:
    """Say each figure on standard error as it comes, and return them all."""
    out = []
    for figure in figures:
        out.append(figure)
        say(f"{figure.name}: {figure.value:.6g} {figure.unit}")
    return out


def say(text: str) -> None:
    """Say something on standard error at once."""
    print(text, file=sys.stderr, flush=True)


def real(quick: bool) -> Iterator[Figure]:
    """Every demo piece to the end, the practice checks, and random programs."""
    crossed = 0
    for name in _QUICK if quick else [name for name in PIECES if "/" not in name]:
        seconds, used, rest = timed(PIECES[name]())
        crossed += rest.crossing_check.crossings
        yield from _fared(name, seconds, used, rest)
    yield Figure("pass-throughs in demo pieces", crossed, "", "0", crossed == 0)
    length = relax_piece(chain(25), _row, [_STANDARD] * 25).length_mm
    met = 130 <= length <= 160
    yield Figure("length of a plain chain of 25 bands", length, "mm", "130 to 160", met)
    if not quick:
        yield from _strip(length / 25)
    yield from _programs(10 if quick else 200)


def _row(peg: str) -> tuple[float, float]:
    return 0.0, 16.0 * int(peg[1:])


def timed(pattern: Pattern) -> tuple[float, float, RestingPiece]:
    """Relax a pattern's piece; seconds, seconds of processor time, and the piece."""
    done = _history(pattern)
    begin, used = time.perf_counter(), time.process_time()
    rest = relax_piece(done.events, done.board.spots, [_STANDARD] * done.final.bands)
    return time.perf_counter() - begin, time.process_time() - used, rest


def _history(pattern: Pattern) -> History:
    return loom.replay_pattern(pattern)


def _fared(name: str, seconds: float, used: float, rest: RestingPiece, goal: str = "") -> Iterator[Figure]:
    steps = f"{name}: {rest.bands} bands, {rest.relaxed.iterations} steps"
    yield Figure(steps, seconds, "s", f"< {goal}" if goal else "", seconds < float(goal) if goal else None)
    yield Figure("  processor time", used, "s")
    drop = rest.relaxed.residual_drop
    yield Figure("  residual left", drop, "of reference", "≤ 1e-3", rest.relaxed.converged)


def _programs(count: int) -> Iterator[Figure]:
    """Programs of all kinds, most of which no hand would keep: nothing may pass until they lie thick."""
    crossed, rested, least = 0, 0, math.inf
    for seed in range(count):
        made = program(seed, KINDS[seed % len(KINDS)])
        bands = sum(isinstance(e, Laid) for e in made.events)
        rest = relax_piece(made.events, made.spots, [_STANDARD] * bands, goal=Goal(iterations=60))
        crossed += rest.crossing_check.crossings
        rested += rest.relaxed.converged
        least = min(least, rest.crossing_check.smallest_gap_mm)
        if (seed + 1) % _EACH == 0:
            say(f"  {seed + 1} random programs: {rested} at rest, {crossed} pass-throughs")
    yield Figure(f"pass-throughs in {count} random programs", crossed, "", "0", crossed == 0)
    yield Figure("  of these at rest within 60 steps", rested, "")
    yield Figure("  least distance of centrelines", least, "mm", "> 0", least > 0)


def _strip(pitch_mm: float) -> Iterator[Figure]:
    """The strip of six rosettes (common practice, no source): bands to add for a small and a large wrist."""
    seconds, used, rest = timed(rosettes(6))
    short = [(0.9 * wrist - rest.length_mm) / pitch_mm for wrist in (_SMALL_MM, _LARGE_MM)]
    yield from _fared("strip of six rosettes", seconds, used, rest, "3")
    yield Figure("  its length", rest.length_mm, "mm")
    yield Figure("  bands short of a small wrist", short[0], "", "3 to 4", 2.5 <= short[0] <= 4.5)
    yield Figure("  bands short of a large wrist", short[1], "", "≥ 6", short[1] >= 5.5)
