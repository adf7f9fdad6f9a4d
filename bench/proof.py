"""How fast pieces are replayed and proved, how that grows, and how often nothing can be proved."""

from __future__ import annotations

import math
import resource
import subprocess
import sys
import time
from collections import Counter
from collections.abc import Callable, Sequence
from functools import partial

from bench.report import Figure
from pegwright import loom, pattern
from pegwright.loom import Board, pause_collector
from pegwright.pattern import LocatedMove, Pattern
from pegwright.proof import Free, Held, HeldInLeast, NotProved, check, prove, snap_losses
from pegwright.structure import Structure, structure_of
from pegwright.variants import TECHNIQUES
from pegwright.workshop import starter_pattern
from testing.mat import mat
from testing.proof_programs import program
from testing.rosettes import rosettes

_WHOLE = 10_000  # bands of the largest piece
_SNAPPED = 500  # bands of the piece whose single snaps are looked at
_PATTERNS: dict[str, Callable[[int], Pattern]] = {
    "chain": lambda bands: starter_pattern("chain", pegs=min(bands, 10_000)),
    "strip": lambda bands: rosettes(bands // 13),
    "mat": lambda bands: mat(10, bands // 19),
}


def run(quick: bool) -> list[Figure]:
    """Measure whole pieces, growth, single snaps and what random programs leave open."""
    bands = _WHOLE // 4 if quick else _WHOLE
    figures: list[Figure] = []
    for name in _PATTERNS:
        figures += _in_a_process_of_its_own(name, bands)
    figures += [_growth(name, bands) for name in _PATTERNS]
    figures += [_snaps(name, _SNAPPED) for name in _PATTERNS]
    return (
        figures
        + _techniques((2, 9) if quick else (2, 3, 8, 9, 20, 60))
        + _random_programs(300 if quick else 3000)
    )


def _in_a_process_of_its_own(name: str, bands: int) -> list[Figure]:
    """Replay, prove and check a piece in a fresh process, so that the memory is its own."""
    command = [sys.executable, "-m", "bench.proof", name, str(bands)]
    said = subprocess.run(command, check=True, capture_output=True, text=True).stdout.split()
    made, seconds, checked, megabytes = int(said[0]), *map(float, said[1:])
    what = f"{name} of {made:,} bands"
    return [
        Figure(f"{what}: replayed and proved", seconds, "s", "< 2", seconds < 2),
        Figure(f"{what}: proof checked", checked, "s"),
        Figure(f"{what}: memory at most", megabytes, "MB", "< 1000", megabytes < 1000),
    ]


def _measure(name: str, bands: int) -> None:
    board, moves = _moves(name, bands)
    with pause_collector():
        start = time.perf_counter()
        events = loom.replay(board, moves).events
        proof = prove(structure_of(events, board.spots))
        proved = time.perf_counter()
        rejected = check(events, proof)
        checked = time.perf_counter()
    if rejected is not None or len(proof.held) < len(proof.verdicts):
        raise SystemExit(f"{name}: {rejected or 'not every band is proved held'}")
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(len(proof.verdicts), proved - start, checked - proved, memory)


def _growth(name: str, most: int) -> Figure:
    """Fit the time of replaying and proving against the number of bands, as a power."""
    points = []
    for bands in (most // 8, most // 4, most // 2, most):
        board, moves = _moves(name, bands)
        with pause_collector():
            spent = min(_timed(partial(_prove, board, moves)) for _ in range(3))
        points.append((math.log(bands), math.log(spent)))
    middle = [sum(values) / len(points) for values in zip(*points, strict=True)]
    rise = sum((x - middle[0]) * (y - middle[1]) for x, y in points)
    slope = rise / sum((x - middle[0]) ** 2 for x, _ in points)
    n_log_n = 1 + math.log(math.log(most) / math.log(most // 8)) / math.log(8)
    goal = round(n_log_n + 0.05, 2)  # n · log n over the same range, and 0.05 for the clock
    return Figure(f"{name}: growth exponent up to {most:,} bands", slope, "", f"≤ {goal}", slope <= goal)


def _moves(name: str, bands: int) -> tuple[Board, Sequence[LocatedMove]]:
    document = _PATTERNS[name](bands)
    return loom.board_of(document.loom), pattern.expand(document).moves


def _prove(board: Board, moves: Sequence[LocatedMove]) -> Structure:
    structure = structure_of(loom.replay(board, moves).events, board.spots)
    prove(structure)
    return structure


def _timed(task: Callable[[], object]) -> float:
    start = time.perf_counter()
    task()
    return time.perf_counter() - start


def _snaps(name: str, bands: int) -> Figure:
    structure = _prove(*_moves(name, bands))
    proof = prove(structure)
    with pause_collector():
        spent = _timed(lambda: snap_losses(structure, proof))
    made = len(structure.bands)
    return Figure(f"{name} of {made}: every single snap", spent, "s", "< 2", spent < 2)


def _techniques(repeats: Sequence[int]) -> list[Figure]:
    """Prove every technique at several numbers of repeats: the verdict must not depend on them."""
    left, slowest, most = 0, 0.0, 0
    for technique in TECHNIQUES.values():
        for times in repeats:
            history = loom.replay_pattern(technique.make(times))
            structure = structure_of(history.events, history.board.spots)
            start = time.perf_counter()
            proof = prove(structure)
            slowest = max(slowest, time.perf_counter() - start)
            left += len(proof.verdicts) - len(proof.held)
            most = max(most, len(proof.verdicts))
    what = f"{len(TECHNIQUES)} techniques, {repeats[0]} to {repeats[-1]} repeats, up to {most} bands"
    return [
        Figure(f"{what}: bands not held", left, "", "0", left == 0),
        Figure(f"{what}: slowest proof", slowest, "s", "≤ 0.5", slowest <= 0.5),
    ]


def _random_programs(count: int) -> list[Figure]:
    """Count by which certificate random programs of up to 8 bands are decided, and what stays open."""
    kinds: Counter[str] = Counter()
    rejected = 0
    for seed in range(count):
        events = program(seed, most_bands=8, moves=20)
        proof = prove(structure_of(events))
        rejected += check(events, proof) is not None
        for verdict in proof.verdicts.values():
            match verdict:
                case Held():
                    kinds["held, by a holding path"] += 1
                case HeldInLeast():
                    kinds["held, by the least words"] += 1
                case Free(least=False):
                    kinds["free, by cancelling loops"] += 1
                case Free():
                    kinds["free, by the least words"] += 1
                case NotProved(reason=reason):
                    kinds[f"not proved: {reason}"] += 1
    total = sum(kinds.values())
    figures = [Figure(f"random programs: {kind}", 100 * kinds[kind] / total, "%") for kind in sorted(kinds)]
    return [*figures, Figure(f"proofs rejected of {count:,}", rejected, "", "0", rejected == 0)]


if __name__ == "__main__":
    _measure(sys.argv[1], int(sys.argv[2]))
