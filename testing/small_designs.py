"""Small designs drawn at random, each with its finish given: bands anywhere, or a motif that comes again."""

from __future__ import annotations

import random
from itertools import combinations

from pegwright.loom import board_of
from pegwright.pattern import Pattern, PatternBuilder, Rows

MOST_BANDS = 12
_NEAR_MM = 25


def random_design(rng: random.Random, number: int) -> Pattern:
    """Draw a design of at most twelve bands; every other one repeats a motif along the rows."""
    return _repeated(rng) if number % 2 else _scattered(rng)


def _scattered(rng: random.Random) -> Pattern:
    loom = Rows(rows=2, pegs=4)
    return _close(rng, loom, [_pair(rng, loom, 1, 4) for _ in range(rng.randint(3, 7))])


def _repeated(rng: random.Random) -> Pattern:
    loom = Rows(rows=2, pegs=9)
    step = rng.choice((1, 1, 2))
    motif = [_pair(rng, loom, 1, 2 + step) for _ in range(rng.randint(1, 3))]
    times = rng.randint(2, min(MOST_BANDS // len(motif), 6 // step))
    over = [
        tuple(f"{peg[0]}{int(peg[1:]) + step * k}" for peg in pair) for k in range(times) for pair in motif
    ]
    return _close(rng, loom, over)


def _pair(rng: random.Random, loom: Rows, first: int, last: int) -> tuple[str, ...]:
    pegs = [f"{row}{peg}" for row in "AB" for peg in range(first, last + 1)]
    board = board_of(loom)
    near = [pair for pair in combinations(pegs, 2) if board.distance_mm(*pair) < _NEAR_MM]
    return tuple(rng.sample(rng.choice(near), 2))


def _close(rng: random.Random, loom: Rows, over: list[tuple[str, ...]]) -> Pattern:
    """Lay the bands and close the piece by a last band at the first or last peg that they use."""
    m = PatternBuilder("Drawn at random", loom).colour("A", "slate", "#4A5A6A")
    for pair in over:
        m.place("A", *pair)
    used = sorted({peg for pair in over for peg in pair}, key=lambda peg: (int(peg[1:]), peg))
    m.bind("A", rng.choice((used[0], used[-1])))
    m.clip("end")
    return m.pattern()
