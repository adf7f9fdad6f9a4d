"""The built-in pieces, and the demo that runs the main job on all of them."""

from __future__ import annotations

import contextlib
import multiprocessing
import os
import signal
from collections.abc import Collection, Iterator
from multiprocessing.pool import AsyncResult, Pool
from pathlib import Path
from typing import NamedTuple

from pegwright.finding import RefusedError, phrase
from pegwright.fit import FitAdvice, advise_fit
from pegwright.lesson import UNKNOWN_FINISH, FinishedPiece, languages
from pegwright.pattern import Pattern
from pegwright.press import OUTPUTS, can_encode_films
from pegwright.rehearsal import Rehearsal
from pegwright.workshop.files import open_pattern
from pegwright.workshop.finishes import finish
from pegwright.workshop.folder import write_into
from pegwright.workshop.lesson_outputs import (
    FilmOrder,
    LessonOrder,
    LessonOutput,
    prepare_lesson,
    press_lesson,
)
from pegwright.workshop.line import Work, work
from pegwright.workshop.progress import ReportProgress, report_nothing
from pegwright.workshop.rehearsals import rehearse_piece

FILMED = ("herring-tail", "riding-lights")
TRANSLATED = "ebb-line"
WRIST = "16 cm"
_POLL_S = 0.2


class DemoPiece(NamedTuple):
    """One piece of the demo: its name, what the line made of it, and the files written.

    `suited` says how the piece suits the demo's wrist, if its stretch was measured; `rehearsal` is None if
    the piece does not hold.
    """

    name: str
    work: Work
    files: tuple[Path, ...] = ()
    finish: FinishedPiece = UNKNOWN_FINISH
    suited: FitAdvice | None = None
    rehearsal: Rehearsal | None = None


def examples_folder() -> Path:
    """Return the folder of the built-in pieces: in the installed package, or beside its source."""
    packaged = Path(__file__).parents[1] / "examples"
    return packaged if packaged.is_dir() else Path(__file__).parents[3] / "examples"


def example_files() -> dict[str, Path]:
    """Return the files of the built-in pieces by name, the broken ones last."""
    folder = examples_folder()
    whole = sorted(folder.glob("*.json"))
    broken = sorted(folder.glob("broken/*.json"))
    return {str(p.relative_to(folder).with_suffix("")): p for p in (*whole, *broken)}


def run_demo(
    folder: Path, progress: ReportProgress = report_nothing, only: Collection[str] = ()
) -> Iterator[DemoPiece]:
    """Run the main job on the built-in pieces and write the whole lesson of those that hold.

    Every piece has its own folder, named after it; `only` picks pieces by name. Films are excerpts, made only
    of `FILMED` and only if there is an encoder. One piece is taught in every language. While one piece is
    rehearsed and its lesson pressed, a second process brings the next ones to rest.

    Raises:
        OSError: the folder cannot be written to.
        RefusedError: there is no such piece.
    """
    pieces = example_files()
    unknown = sorted(set(only) - set(pieces))
    if unknown:
        raise RefusedError(phrase("no-demo-piece", name=unknown[0], known=tuple(pieces)))
    chosen = {name: path for name, path in pieces.items() if not only or name in only}
    folder.mkdir(parents=True, exist_ok=True)
    worked = {name: work(_pattern(path), _under(name, progress)) for name, path in chosen.items()}
    with _start_second_process() as second:
        waiting = {
            name: second.apply_async(_finish_file, (chosen[name],))
            for name, made in worked.items()
            if made.holds
        }
        for name, made in worked.items():
            if not made.holds:
                yield DemoPiece(name, made)
                continue
            report = _under(name, progress)
            rehearsal = rehearse_piece(made, progress=report, processes=1)
            found = _await_finish(waiting[name], report)
            files: list[Path] = []
            for place, order in _orders(name):
                there = _under(place, progress)
                taught = prepare_lesson(made, order, there, finish=found)
                files += [write_into(folder / place, *one) for one in press_lesson(taught, order, there)]
            suited = advise_fit(found.measured, WRIST, found.lengths) if found.measured else None
            yield DemoPiece(name, made, tuple(files), found, suited, rehearsal)


def _pattern(path: Path) -> Pattern:
    pattern = open_pattern(path).pattern
    if pattern is None:
        raise AssertionError(f"the built-in piece {path.stem} cannot be read")
    return pattern


@contextlib.contextmanager
def _start_second_process() -> Iterator[Pool]:
    """Yield a pool of one process, which ends with the demo; leave the environment as it was."""
    before = os.environ.get("PYTHONSAFEPATH")
    os.environ["PYTHONSAFEPATH"] = "1"  # the process must not import modules from the current folder
    try:
        with multiprocessing.get_context("spawn").Pool(
            1, signal.signal, (signal.SIGINT, signal.SIG_IGN)
        ) as pool:
            yield pool
    finally:
        if before is None:
            del os.environ["PYTHONSAFEPATH"]
        else:
            os.environ["PYTHONSAFEPATH"] = before


def _finish_file(path: Path) -> FinishedPiece:
    return finish(work(_pattern(path)))


def _await_finish(waiting: AsyncResult[FinishedPiece], report: ReportProgress) -> FinishedPiece:
    while True:
        report("bringing it to rest", 0, 1)
        try:
            return waiting.get(_POLL_S)
        except multiprocessing.TimeoutError:
            continue


def _orders(name: str) -> Iterator[tuple[str, LessonOrder]]:
    """Yield the folders of a piece, each with the order for what goes into it."""
    film: tuple[LessonOutput, ...] = ("film",) if name in FILMED and can_encode_films() else ()
    everything = LessonOrder(
        papers=("a4", "letter"),
        editions=("standard", "large", "grey"),
        parts=(*OUTPUTS, *film, "bundle"),
        learners=12,
        rehearse=True,
        film=FilmOrder(excerpt=True),
    )
    yield name, everything
    if name == TRANSLATED:
        for language in languages():
            if language != everything.language:
                parts: tuple[LessonOutput, ...] = ("handout", "page", "captions", "kit")
                order = LessonOrder(language=language, parts=parts, learners=12, rehearse=True)
                yield f"{name}-{language}", order


def _under(name: str, progress: ReportProgress) -> ReportProgress:
    return lambda what, done, total: progress(f"{name}: {what}", done, total)
