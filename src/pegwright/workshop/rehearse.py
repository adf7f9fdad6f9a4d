"""The rehearsal of a worked piece: in two processes, with progress, kept until the piece changes."""

from __future__ import annotations

import os
from pathlib import Path
from typing import NamedTuple

import msgspec

from pegwright import __version__
from pegwright.finding import Finding
from pegwright.pattern import write
from pegwright.rehearsal import (
    DEFAULT,
    Rehearsal,
    Weights,
    read_weights,
    rehearse,
    write_weights,
)
from pegwright.rehearsal.likelihood import chances
from pegwright.rehearsal.rehearse import Begun, Found, draw_up
from pegwright.rehearsal.slips import find_slips
from pegwright.workshop.cache import fetch, keep, key_of, source_of
from pegwright.workshop.files import read_bytes
from pegwright.workshop.line import Work
from pegwright.workshop.progress import Progress, silent

SETTLED = 60
_ROOMS = ("pattern", "loom", "structure", "proof", "rehearsal")  # what the findings are made by


class Table(NamedTuple):
    """A teacher's weights, or None where a file of them cannot be used, and what was found."""

    weights: Weights | None
    findings: tuple[Finding, ...]


def weights_from(likelihood: Path | None, seen: Path | None) -> Table:
    """Read a table of likelihoods and, from another file of the same form, what was seen in class.

    Of the second only `seen` counts; it is added to what the first has seen.
    """
    weights = DEFAULT
    for file in (likelihood, seen):
        if file is None:
            continue
        data = read_bytes(file)
        reading = read_weights(data) if isinstance(data, bytes) else None
        if reading is None or reading.weights is None:
            return Table(None, data.findings if reading is None else reading.findings)  # type: ignore[union-attr]
        more = reading.weights
        if file is seen:
            more = msgspec.structs.replace(weights, seen=(*weights.seen, *more.seen))
        weights = more
    return Table(weights, ())


def rehearsed(
    made: Work,
    weights: Weights = DEFAULT,
    *,
    checks: int = 3,
    progress: Progress = silent,
    processes: int = 2,
    kept: bool = True,
) -> Rehearsal:
    """Rehearse a piece. With `kept`, what was found is taken from the cache if it is there, or left there.

    Broken off, it leaves there what is finished, and goes on from that the next time.
    """
    key = key_of(__version__, source_of(*_ROOMS), SETTLED, write(made.pattern), write_weights(weights))
    data = fetch(key) if kept else None
    if data is not None:
        found = msgspec.json.decode(data, type=Found)
        likely = chances(weights, find_slips(made.history))
        return draw_up(made.pattern.title, made.history, found, likely, checks)
    left = fetch(key_of("begun", key)) if kept else None
    begun = msgspec.json.decode(left, type=Begun) if left is not None else Begun()
    try:
        told = rehearse(
            made.pattern,
            made.history,
            weights=weights,
            progress=progress,
            checks=checks,
            settle=SETTLED,
            processes=min(processes, os.cpu_count() or 1),
            begun=begun,
        )
    except BaseException:
        if kept:
            keep(key_of("begun", key), msgspec.json.encode(begun))
        raise
    if kept:
        found = Found(
            tried=told.tried,
            judged=told.judged,
            open=told.open,
            outcomes=told.outcomes,
            proved=tuple(sorted(told.proved, key=str)),
        )
        keep(key, msgspec.json.encode(found))
    return told
