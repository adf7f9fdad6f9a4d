"""Regular pieces with one slip: a few repeats of a technique, worked as a maker's mistake would have it."""

from __future__ import annotations

import random
from functools import cache

from pegwright.loom import Fastened, History, replay_pattern
from pegwright.rehearsal import find_slips
from pegwright.variants import TECHNIQUES
from testing.programs import Program
from testing.slow_rehearsal import slow_run


def slipped_piece(seed: int, most_bands: int = 32, kind: str | None = None) -> Program | None:
    """Return the piece of a seed, with a slip of the kind; None if it is too large, or nothing fastens it."""
    rng = random.Random(seed)
    name = rng.choice(list(TECHNIQUES))
    history = _worked(name, rng.choice((1, 2)))
    if history.final.bands > most_bands:
        return None
    slips = [slip for slip in find_slips(history) if kind in (None, slip.kind)]
    if not slips:
        return None
    slip = rng.choice(slips)
    events = tuple(slow_run(history, slip).events)
    if not any(isinstance(event, Fastened) for event in events):
        return None
    return Program(slip.kind, name, events, (), dict(history.board.spots))


@cache
def _worked(name: str, repeats: int) -> History:
    return replay_pattern(TECHNIQUES[name].make(repeats))
