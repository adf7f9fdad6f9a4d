"""What a piece that holds would lose if one band snaps, or if the fastener misses one loop."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from pegwright.finding import Finding, finding
from pegwright.loom import Bight
from pegwright.proof import Loss, Proof, missed_loop_losses, passengers, snap_losses
from pegwright.structure import Structure

MOST_BANDS_SNAPPED = 600
"""Above this many bands the lesson and the check leave out what happens when one snaps."""


class SingleFailures(NamedTuple):
    """`snaps` maps each held band to what falls with it; `passengers` are the bands that take none along.

    `caught` maps each loop that the last fastener caught to what falls if it misses that loop.
    """

    snaps: dict[int, Loss]
    passengers: tuple[int, ...]
    caught: dict[Bight, Loss]


class WorstSnap(NamedTuple):
    """The worst that one snapped band can do.

    `band` takes `loses` others with it, the most of any; `harmless` counts the bands that take none.
    """

    band: int
    loses: int
    harmless: int


def find_single_failures(
    structure: Structure, proof: Proof, progress: Callable[[str, int, int], None]
) -> SingleFailures | Finding:
    """Work out every single loss of a piece, or return a finding if it has too many bands.

    `progress` gets what is being done, the bands done, and their total.
    """
    bands = len(proof.verdicts)
    if bands > MOST_BANDS_SNAPPED:
        return finding("losses-left-out", bands=bands, limit=MOST_BANDS_SNAPPED)
    what = "taking out one band after the other"
    found = snap_losses(structure, proof, lambda done, of: progress(what, done, of))
    return SingleFailures(found, passengers(found), missed_loop_losses(structure, proof))


def find_worst_snap(structure: Structure, proof: Proof) -> WorstSnap | None:
    """Return the worst that one snapped band can do; None if there are too many bands, or none is held."""
    if not proof.held or len(proof.verdicts) > MOST_BANDS_SNAPPED:
        return None
    loses = {band: len(lost.falls) for band, lost in snap_losses(structure, proof).items()}
    worst = max(loses, key=lambda band: loses[band])
    return WorstSnap(worst, loses[worst], sum(not n for n in loses.values()))
