"""What a piece that holds would lose: if one band snaps, or if the fastener misses one loop."""

from __future__ import annotations

from typing import NamedTuple

from pegwright.finding import Finding, finding
from pegwright.loom import Bight
from pegwright.proof import Loss, needed_loops, passengers, snaps
from pegwright.workshop.line import Work
from pegwright.workshop.progress import Progress, silent
from pegwright.workshop.verdict import MOST_BANDS_SNAPPED


class Losses(NamedTuple):
    """`snaps` maps each held band to what falls with it; `passengers` are those that take none along.

    `caught` maps each loop that the last fastener caught to what falls where that loop is missed.
    """

    snaps: dict[int, Loss]
    passengers: tuple[int, ...]
    caught: dict[Bight, Loss]


def losses(made: Work, progress: Progress = silent) -> Losses | Finding:
    """Work out every single loss of a piece, or say that it has too many bands for that."""
    bands = len(made.proof.verdicts)
    if bands > MOST_BANDS_SNAPPED:
        return finding("losses-left-out", bands=bands, limit=MOST_BANDS_SNAPPED)
    what = "taking out one band after the other"
    found = snaps(made.structure, made.proof, lambda done, of: progress(what, done, of))
    return Losses(found, passengers(found), needed_loops(made.structure, made.proof))
