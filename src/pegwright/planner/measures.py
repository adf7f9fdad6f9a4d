"""Measures that compare working orders for a teacher."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from pegwright.loom import AppliedMove, Board, Drawn, Fastened, Lifted, Moved

__all__ = ["Measures", "measure_working"]


class Measures(NamedTuple):
    """The measures of a working order; smaller ones make it easier to teach.

    `phrases` is the length of the shortest description by repeats of moves, `loops_above` the number of loops
    above the one taken, over all moves, `travel_mm` how far the hook travels. `symmetry` is the share of
    loops whose mirror image, left for right, is worked too; None if the bands are not symmetrical. `failures`
    is the average number of slips that bring bands down, if the order has been rehearsed. `loose_loops`
    counts the loops that nothing passes through in the end, and `cautions` the line's warnings. `ends` is the
    number of pegs at the finish.
    """

    phrases: int
    loops_above: int
    travel_mm: float
    symmetry: float | None
    failures: float | None = None
    loose_loops: int = 0
    cautions: int = 0
    ends: int = 1

    @property
    def rank(self) -> tuple[float, ...]:
        """The sort key of proposals: the easiest to teach first."""
        untidy = self.cautions + self.loose_loops
        return (
            untidy,
            self.phrases + self.ends - 1,
            self.loops_above,
            -(self.symmetry or 0),
            round(self.travel_mm, 3),
        )


def measure_working(
    board: Board, laid: Iterable[tuple[str, str]], applied: Sequence[AppliedMove], phrases: int, cautions: int
) -> Measures:
    """Measure the moves that work and close a piece; `laid` are the pairs of pegs that bands lie over."""
    above = 0
    travel_mm = 0.0
    here: str | None = None
    worked: Counter[tuple[str, str]] = Counter()
    for one in applied:
        for event in one.events:
            if isinstance(event, Lifted):
                source = target = event.holder
                above += len(event.over)
            elif isinstance(event, Drawn | Moved) and event.target in board.pegs:
                source, target = event.source, event.target
                if isinstance(event, Drawn):
                    above += len(event.through) - len(event.slid) + len(event.skipped)
            else:
                continue
            worked[source, target] += 1
            if here is not None and here != source:
                travel_mm += board.distance_mm(here, source)
            if source != target:
                travel_mm += board.distance_mm(source, target)
            here = target
    final = applied[-1].after
    loose = sum(not final.inside.get(loop) for loops in final.stacks.values() for loop in loops)
    ends = sum(len(e.holders) for one in applied for e in one.events if isinstance(e, Fastened))
    return Measures(
        phrases=phrases,
        loops_above=above,
        travel_mm=travel_mm,
        symmetry=_symmetry(board, laid, worked),
        loose_loops=loose,
        cautions=cautions,
        ends=ends,
    )


def _symmetry(
    board: Board, laid: Iterable[tuple[str, str]], worked: Counter[tuple[str, str]]
) -> float | None:
    """Return the share of worked loops whose mirror image, by the mirror of the laid bands, is worked too."""
    pairs = Counter(frozenset(pair) for pair in laid)
    mirrored = mirror_pegs(board, {peg for pair in pairs for peg in pair})
    if not mirrored or not worked:
        return None
    if any(pairs[frozenset(mirrored[peg] for peg in pair)] != count for pair, count in pairs.items()):
        return None
    both = sum(
        min(count, worked[mirrored.get(source, source), mirrored.get(target, target)])
        for (source, target), count in worked.items()
    )
    return both / worked.total()


def mirror_pegs(board: Board, used: set[str]) -> dict[str, str] | None:
    """Map each used peg to its mirror image, left for right about their middle; None if one has none."""
    if not used:
        return None
    middle = (min(board.pegs[at].x_mm for at in used) + max(board.pegs[at].x_mm for at in used)) / 2
    spots = {_spot(board.pegs[at].x_mm, board.pegs[at].y_mm): at for at in used}
    found = {at: spots.get(_spot(2 * middle - board.pegs[at].x_mm, board.pegs[at].y_mm)) for at in used}
    named = {at: image for at, image in found.items() if image is not None}
    return named if len(named) == len(used) else None


def _spot(x_mm: float, y_mm: float) -> tuple[int, int]:
    return math.floor(x_mm * 100 + 0.5), math.floor(y_mm * 100 + 0.5)
