"""The rehearsal of a worked piece: in two processes, with progress, cached until the piece changes."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from pathlib import Path
from threading import Event
from typing import NamedTuple

import msgspec

from pegwright import __version__
from pegwright.finding import Finding, RefusedError
from pegwright.pattern import mirror_holder, with_holders, write_pattern
from pegwright.rehearsal import (
    DEFAULT_WEIGHTS,
    Outcome,
    PartialRehearsal,
    Rehearsal,
    ShareWork,
    Slip,
    SlipOutcomes,
    SlipWeights,
    Symptom,
    assemble_rehearsal,
    find_slips,
    read_weights,
    rehearse,
    slip_chances,
    worker_pool,
    write_weights,
)
from pegwright.workshop.cache import fetch_result, key_of, source_of, store_result
from pegwright.workshop.files import read_bytes
from pegwright.workshop.line import Work
from pegwright.workshop.progress import ReportProgress, report_nothing

SETTLED = 60
_CHECKS = 3
_NICE = 3
"""How far a rehearsal beside other work of the same lesson stands back for it."""
_ROOMS = ("pattern", "loom", "structure", "proof", "rehearsal")  # the rooms whose source decides the results


class WeightsReading(NamedTuple):
    """A teacher's weights, or None if a file of them cannot be used, and the findings."""

    weights: SlipWeights | None
    findings: tuple[Finding, ...]


def read_weight_files(likelihood: Path | None, seen: Path | None) -> WeightsReading:
    """Read a table of likelihoods and, from another file of the same format, counts from class.

    Only `seen` of the second file is used; it is added to that of the first.
    """
    weights = DEFAULT_WEIGHTS
    for file in (likelihood, seen):
        if file is None:
            continue
        data = read_bytes(file)
        reading = read_weights(data) if isinstance(data, bytes) else None
        if reading is None or reading.weights is None:
            return WeightsReading(None, data.findings if reading is None else reading.findings)  # type: ignore[union-attr]
        more = reading.weights
        if file is seen:
            more = msgspec.structs.replace(weights, seen=(*weights.seen, *more.seen))
        weights = more
    return WeightsReading(weights, ())


def rehearse_piece(
    made: Work,
    weights: SlipWeights = DEFAULT_WEIGHTS,
    *,
    checks: int = _CHECKS,
    progress: ReportProgress = report_nothing,
    processes: int = 2,
    kept: bool = True,
) -> Rehearsal:
    """Rehearse a piece. With `kept`, the result is read from the cache and stored in it.

    A rehearsal that is interrupted stores what is finished and resumes from there next time.
    """
    known = _kept_rehearsal(made, weights, checks) if kept else None
    return known or _rehearse(
        made, weights, checks, progress, processes=min(processes, os.cpu_count() or 1), kept=kept
    )


@contextmanager
def rehearse_beside(
    made: Work, weights: SlipWeights = DEFAULT_WEIGHTS, *, progress: ReportProgress = report_nothing
) -> Iterator[Callable[[], Rehearsal]]:
    """Rehearse a piece in other processes while the caller goes on; the function given waits for the result.

    The caller's own work goes first. Progress is reported once the result is waited for. A rehearsal that is
    not waited for is broken off, and what is finished of it is stored.
    """
    known = _kept_rehearsal(made, weights, _CHECKS)
    if known or (os.cpu_count() or 1) < 2:
        yield lambda: known or rehearse_piece(made, weights, progress=progress)
        return
    waited_for, unwanted = Event(), Event()

    def report(what: str, done: int, total: int) -> None:
        if unwanted.is_set():
            raise _UnwantedError
        if waited_for.is_set():
            progress(what, done, total)

    with worker_pool(made.history, 2, nice=_NICE) as share, ThreadPoolExecutor(1) as thread:
        begun = thread.submit(_rehearse, made, weights, _CHECKS, report, share=share)

        def wait() -> Rehearsal:
            waited_for.set()
            return begun.result()

        try:
            yield wait
        finally:
            unwanted.set()


class _UnwantedError(Exception):
    """Nobody waits for the rehearsal any more."""


def _key(made: Work, weights: SlipWeights) -> str:
    return key_of(
        __version__, source_of(*_ROOMS), SETTLED, write_pattern(made.pattern), write_weights(weights)
    )


def _kept_rehearsal(made: Work, weights: SlipWeights, checks: int) -> Rehearsal | None:
    data = fetch_result(_key(made, weights))
    if data is None:
        return None
    found = msgspec.json.decode(data, type=SlipOutcomes)
    likely = slip_chances(weights, find_slips(made.history))
    return assemble_rehearsal(made.pattern.title, made.history, found, likely, checks)


def _rehearse(
    made: Work,
    weights: SlipWeights,
    checks: int,
    progress: ReportProgress,
    *,
    processes: int = 1,
    share: ShareWork | None = None,
    kept: bool = True,
) -> Rehearsal:
    key = _key(made, weights)
    left = fetch_result(key_of("begun", key)) if kept else None
    begun = msgspec.json.decode(left, type=PartialRehearsal) if left is not None else PartialRehearsal()
    try:
        rehearsal = rehearse(
            made.pattern,
            made.history,
            weights=weights,
            progress=progress,
            checks=checks,
            settle=SETTLED,
            processes=processes,
            share=share,
            begun=begun,
        )
    except BaseException:
        if kept:
            store_result(key_of("begun", key), msgspec.json.encode(begun))
        raise
    if kept:
        found = SlipOutcomes(
            tried=rehearsal.tried,
            judged=rehearsal.judged,
            open=rehearsal.open,
            outcomes=rehearsal.outcomes,
            proved=tuple(sorted(rehearsal.proved, key=str)),
        )
        store_result(key, msgspec.json.encode(found))
    return rehearsal


def mirror_rehearsal(
    rehearsal: Rehearsal, made: Work, mirrored: Work, *, checks: int = 3
) -> Rehearsal | None:
    """Return the rehearsal of the mirrored piece: every slip and its outcome, mirrored.

    A slip of one hand is the mirror image of a slip of the other, and so is its outcome, so nothing is
    replayed or judged again. None if the two pieces do not match move by move.
    """
    holder = mirror_holder(made.pattern)

    def mirror_slip(slip: Slip) -> Slip:
        return slip._replace(moves=tuple(with_holders(move, holder) for move in slip.moves))

    def mirror_symptom(symptom: Symptom | None) -> Symptom | None:
        return None if symptom is None else symptom._replace(holder=holder(symptom.holder))

    def mirror_outcome(outcome: Outcome) -> Outcome:
        return outcome._replace(
            slip=mirror_slip(outcome.slip),
            first=mirror_symptom(outcome.first),
            close=mirror_symptom(outcome.close),
        )

    try:
        moves = [with_holders(done.move, holder) for done in made.history.moves]
        if moves != [done.move for done in mirrored.history.moves]:
            return None
        found = SlipOutcomes(
            tried=rehearsal.tried,
            judged=rehearsal.judged,
            open=rehearsal.open,
            outcomes=tuple(map(mirror_outcome, rehearsal.outcomes)),
            proved=tuple(map(mirror_slip, rehearsal.proved)),
        )
        chances = {mirror_slip(slip): chance for slip, chance in rehearsal.chances.items()}
    except RefusedError:  # a slip goes to a peg that the mirrored loom does not have
        return None
    return assemble_rehearsal(mirrored.pattern.title, mirrored.history, found, chances, checks)
