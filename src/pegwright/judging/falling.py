"""Which bands fall, or are not proved to hold, and why: as findings."""

from __future__ import annotations

from pegwright.finding import Finding, Location, Phrase, finding, phrase, sum_up
from pegwright.loom import Fastened, History, step_numbers
from pegwright.proof import NotProved, Proof

_OPEN = {"twist": "open-twist", "across": "open-across", "too-long": "open-tangled"}
_NAMED = 4


def find_falling(history: History, proof: Proof) -> tuple[Finding, ...]:
    """Return a finding for every band that falls or is not proved, with the reason; causes come first."""
    found = []
    fastened = any(isinstance(e, Fastened) for e in history.events)
    laid = _laid_at(history)
    hanging = _hanging(history, proof) if fastened else set()
    for band in (*sorted(proof.free, key=lambda band: (band in hanging, band)), *proof.unproved):
        path, step = laid[band]
        place = Location(path=path, step=step, band=band)
        colour = history.colours[band - 1]
        given = proof.verdicts[band]
        if isinstance(given, NotProved):
            code, reason = "band-not-proved", phrase(_OPEN[given.reason])
        else:
            code, reason = "band-falls", _why(history, proof, band, fastened)
        found.append(finding(code, place, band=band, colour=colour, reason=reason))
    return sum_up(found)


def _laid_at(history: History) -> dict[int, tuple[str, int]]:
    """Map each band to the document path and the number of the move that placed it."""
    found: dict[int, tuple[str, int]] = {}
    band = 0
    for number, done in zip(step_numbers(history), history.moves, strict=True):
        for _ in range(done.after.bands - band):
            band += 1
            found[band] = (done.path, number)
    return found


def _hanging(history: History, proof: Proof) -> set[int]:
    """Return the falling bands that only other falling bands pass through: they follow, and cause nothing."""
    passing: dict[int, set[int]] = {}
    for loop, ribbons in history.final.inside.items():
        passing.setdefault(loop.band, set()).update(bight.band for bight in ribbons)
    falling = set(proof.free)
    return {band for band in proof.free if passing.get(band) and passing[band] <= falling}


def _why(history: History, proof: Proof, band: int, fastened: bool) -> Phrase:
    if not fastened:
        return phrase("falls-unfastened")
    inside = history.final.inside
    passing = sorted({b.band for loop, ribbons in inside.items() if loop.band == band for b in ribbons})
    if not passing:
        return phrase("falls-passed-by-none")
    how = "falls-with" if set(proof.free).issuperset(passing) else "falls-off"
    more = max(0, len(passing) - _NAMED)
    return phrase(how, bands=tuple(passing[:_NAMED]), count=len(passing), more=more)
