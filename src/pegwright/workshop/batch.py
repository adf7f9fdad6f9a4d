"""A batch: any part of the line over many patterns, sizes, colourways, languages and hands.

Everything goes into one folder and stands there under its place; a small file beside it tells from what it
was made. A batch that is started again makes only what is missing or different.
"""

from __future__ import annotations

import hashlib
import time
from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import product
from pathlib import Path
from typing import NamedTuple

import msgspec

from pegwright.finding import Language, RefusedError, phrase, word_phrase
from pegwright.lesson import Hand
from pegwright.pattern import Pattern, write_pattern
from pegwright.variants import BandColour
from pegwright.workshop.batch_cluster import BatchCluster
from pegwright.workshop.batch_engine import TaskOutcome, run_tasks
from pegwright.workshop.batch_tasks import (
    BatchNote,
    BatchPart,
    BatchResult,
    BatchTask,
    VariantResult,
    VariantTask,
    address_of,
    do_task,
    do_variant_task,
    source_digest,
)
from pegwright.workshop.files import read_plain_file
from pegwright.workshop.folder import write_into
from pegwright.workshop.progress import ReportProgress, report_nothing
from pegwright.workshop.variant_pieces import VariantOrder

__all__ = ["BatchFailure", "BatchOrder", "BatchPlace", "BatchRun", "run_batch"]

_MADE = "made.json"
_KEPT = "kept"
_MOST = 100_000


class BatchOrder(msgspec.Struct, frozen=True, kw_only=True):
    """What to make of every pattern.

    `variants` lists sizes, bands, looms and colourways; its hands are not looked at.
    """

    parts: tuple[BatchPart, ...] = ("pattern", "picture", "handout")
    languages: tuple[Language, ...] = ("en",)
    hands: tuple[Hand, ...] = ("right",)
    variants: VariantOrder = VariantOrder()
    rehearse: bool = False
    fit: bool = False


class BatchPlace(msgspec.Struct, frozen=True, kw_only=True, order=True):
    """One thing that was made: where it lies in the folder, from what, and what it is.

    `address` is the content address of the task; `files` has the SHA-256 in hex of each file.
    """

    folder: str
    piece: str
    variant: str
    language: str
    hand: str
    address: str
    title: str
    holds: bool
    bands: int
    colours: tuple[tuple[str, str, str, int], ...]
    files: dict[str, str]
    findings: tuple[BatchNote, ...] = ()


class BatchFailure(msgspec.Struct, frozen=True, kw_only=True, order=True):
    """One thing that could not be made, and why; `lost` if it ended the processes it was made in."""

    folder: str
    why: str
    lost: bool = False


class BatchRun(NamedTuple):
    """Everything in the folder, how many of it were there before, what failed, notes on the variants."""

    places: tuple[BatchPlace, ...]
    known: int
    failures: tuple[BatchFailure, ...]
    notes: tuple[tuple[str, BatchNote], ...]


class _Wanted(NamedTuple):
    folder: str
    piece: str
    variant: str
    task: BatchTask


def run_batch(
    patterns: Mapping[str, Pattern],
    order: BatchOrder,
    folder: Path,
    cluster: BatchCluster,
    *,
    colours: Sequence[BandColour] = (),
    language: Language = "en",
    progress: ReportProgress = report_nothing,
) -> BatchRun:
    """Make a batch on a cluster and write it into a folder; each thing stands there as soon as it is made.

    `language` is that of the notes.

    Raises:
        RefusedError: more than 100,000 things are ordered, or there are no workers any more.
        OSError: the folder cannot be written to.
    """
    source = source_digest()
    failures: list[BatchFailure] = []
    tasks = _variant_tasks(patterns, order, colours, source, language)
    variants = _make_variants(tasks, folder, cluster, failures, language=language, progress=progress)
    notes = tuple((piece, found) for piece in variants for found in variants[piece].findings)
    wanted = [one for piece in variants for one in _list_wanted(piece, variants[piece], order, source)]
    if len(wanted) > _MOST:
        raise RefusedError(phrase("batch-too-large", count=len(wanted), most=_MOST))
    places = {one.folder: place for one in wanted if (place := _known_place(folder, one)) is not None}
    known = len(places)
    missing = [one for one in wanted if one.folder not in places]
    clock = _Clock(progress, "making everything", known, len(wanted))
    encoded = [msgspec.msgpack.encode(one.task) for one in missing]
    for outcome in run_tasks(cluster, do_task, encoded, clock.tell):
        one = missing[outcome.number]
        clock.count()
        if outcome.result is None:
            failures.append(BatchFailure(folder=one.folder, why=_why(outcome, language), lost=outcome.lost))
        else:
            result = msgspec.msgpack.decode(outcome.result, type=BatchResult)
            places[one.folder] = _write_place(folder, one, result)
    return BatchRun(tuple(sorted(places.values())), known, tuple(sorted(failures)), notes)


def _variant_tasks(
    patterns: Mapping[str, Pattern],
    order: BatchOrder,
    colours: Sequence[BandColour],
    source: str,
    language: Language,
) -> dict[str, VariantTask]:
    variants = msgspec.structs.replace(order.variants, hands=("right",))
    return {
        piece: VariantTask(
            source=source,
            pattern=write_pattern(pattern),
            order=variants,
            colours=tuple((c.letter, c.name, c.tint, c.have) for c in colours),
            language=language,
        )
        for piece, pattern in patterns.items()
    }


def _list_wanted(piece: str, made: VariantResult, order: BatchOrder, source: str) -> Iterator[_Wanted]:
    """Yield all that is to be made of a piece: its variants, in every language and for each hand."""
    for (name, pattern, _), language, hand in product(made.variants, order.languages, order.hands):
        task = BatchTask(
            source=source,
            pattern=pattern,
            parts=order.parts,
            language=language,
            hand=hand,
            rehearse=order.rehearse,
            fit=order.fit,
        )
        place = f"{piece}/{name}/{language}{'-left' if hand == 'left' else ''}"
        yield _Wanted(place, piece, name, task)


def _make_variants(
    tasks: Mapping[str, VariantTask],
    folder: Path,
    cluster: BatchCluster,
    failures: list[BatchFailure],
    *,
    language: Language,
    progress: ReportProgress,
) -> dict[str, VariantResult]:
    """Return the variants of each piece; those worked out before are read from the folder."""
    made: dict[str, VariantResult] = {}
    for piece, task in tasks.items():
        known = _read_kept(folder, address_of(task))
        if known is not None:
            made[piece] = known
    missing = [piece for piece in tasks if piece not in made]
    clock = _Clock(progress, "working out the variants", len(made), len(tasks))
    encoded = [msgspec.msgpack.encode(tasks[piece]) for piece in missing]
    for outcome in run_tasks(cluster, do_variant_task, encoded, clock.tell):
        piece = missing[outcome.number]
        clock.count()
        if outcome.result is None:
            failures.append(BatchFailure(folder=piece, why=_why(outcome, language), lost=outcome.lost))
        else:
            digest = hashlib.sha256(outcome.result).digest()
            write_into(folder, f"{_KEPT}/{address_of(tasks[piece])}", digest + outcome.result)
            made[piece] = msgspec.msgpack.decode(outcome.result, type=VariantResult)
    return {piece: made[piece] for piece in tasks if piece in made}


def _why(outcome: TaskOutcome, language: Language) -> str:
    return word_phrase(phrase("batch-lost"), language) if outcome.lost else outcome.error


def _read_kept(folder: Path, address: str) -> VariantResult | None:
    """Return what is kept under an address, or None if there is nothing sound."""
    try:
        data = read_plain_file(folder / _KEPT / address)
        if hashlib.sha256(data[32:]).digest() != data[:32]:
            return None
        return msgspec.msgpack.decode(data[32:], type=VariantResult)
    except (OSError, msgspec.DecodeError):
        return None


def _known_place(folder: Path, one: _Wanted) -> BatchPlace | None:
    """Return what stands in a place if it is whole and made of the same, else None."""
    home = folder / one.folder
    try:
        place = msgspec.json.decode(read_plain_file(home / _MADE), type=BatchPlace)
        if place.address != address_of(one.task) or place.folder != one.folder:
            return None
        for name, digest in place.files.items():
            if hashlib.sha256(read_plain_file(home / name)).hexdigest() != digest:
                return None
    except (OSError, msgspec.DecodeError):
        return None
    return place


def _write_place(folder: Path, one: _Wanted, result: BatchResult) -> BatchPlace:
    """Write the files of a result, and last what they were made of: a place without it is not finished."""
    for name, data in result.files.items():
        write_into(folder, f"{one.folder}/{name}", data)
    place = BatchPlace(
        folder=one.folder,
        piece=one.piece,
        variant=one.variant,
        language=one.task.language,
        hand=one.task.hand,
        address=address_of(one.task),
        title=result.title,
        holds=result.holds,
        bands=result.bands,
        colours=result.colours,
        files={name: hashlib.sha256(data).hexdigest() for name, data in sorted(result.files.items())},
        findings=result.findings,
    )
    write_into(folder, f"{one.folder}/{_MADE}", msgspec.json.format(msgspec.json.encode(place)))
    return place


class _Clock:
    """Tells how far a run is and how long it will take, by the pace so far."""

    def __init__(
        self,
        progress: ReportProgress,
        what: str,
        known: int,
        total: int,
        now: Callable[[], float] = time.monotonic,
    ) -> None:
        self._progress, self._what, self._total, self._now = progress, what, total, now
        self._known = self._done = known
        self._began = now()
        self.tell()

    def count(self) -> None:
        self._done += 1
        self.tell()

    def tell(self) -> None:
        fresh = self._done - self._known
        what = self._what
        if fresh:
            left_s = (self._now() - self._began) / fresh * (self._total - self._done)
            what += f", about {_in_words(left_s)} left"
        self._progress(what, self._done, self._total)


def _in_words(seconds: float) -> str:
    return f"{seconds:.0f} s" if seconds < 90 else f"{seconds / 60:.0f} min"
