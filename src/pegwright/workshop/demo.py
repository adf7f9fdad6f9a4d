"""The built-in pieces, and the main job run on all of them."""

from __future__ import annotations

import multiprocessing
import signal
from collections.abc import Collection, Iterator
from multiprocessing.pool import AsyncResult, Pool
from pathlib import Path
from typing import NamedTuple

from pegwright.fit.measured import Suited, suit
from pegwright.lesson import UNASKED, Finish, languages
from pegwright.pattern import Pattern
from pegwright.press import PARTS
from pegwright.rehearsal import Rehearsal
from pegwright.workshop.files import open_pattern
from pegwright.workshop.finished import finish
from pegwright.workshop.folder import write_into
from pegwright.workshop.lessons import FilmOrder, Order, Piece, pressed, teach
from pegwright.workshop.line import Work, work
from pegwright.workshop.progress import Progress, silent
from pegwright.workshop.rehearse import rehearsed

FILMED = ("herring-tail", "riding-lights")
TRANSLATED = "ebb-line"
WRIST = "16 cm"
_POLL_S = 0.2


class Made(NamedTuple):
    """One piece of the demo: its name, what the line made of it, and the files written.

    `suited` says how the piece suits the wrist of the demo, where it was pulled at; `told` is its rehearsal,
    None where it does not hold.
    """

    name: str
    work: Work
    files: tuple[Path, ...] = ()
    finish: Finish = UNASKED
    suited: Suited | None = None
    told: Rehearsal | None = None


def examples_folder() -> Path:
    """Return where the built-in pieces lie: inside the installed package, or beside its source."""
    packaged = Path(__file__).parents[1] / "examples"
    return packaged if packaged.is_dir() else Path(__file__).parents[3] / "examples"


def example_files() -> dict[str, Path]:
    """Return the built-in pieces by name, the broken ones last."""
    folder = examples_folder()
    whole = sorted(folder.glob("*.json"))
    broken = sorted(folder.glob("broken/*.json"))
    return {str(p.relative_to(folder).with_suffix("")): p for p in (*whole, *broken)}


def demo(folder: Path, progress: Progress = silent, only: Collection[str] = ()) -> Iterator[Made]:
    """Run the main job on the built-in pieces and write the whole lesson of those that hold.

    Every piece has a folder of its own, named after it; `only` names the pieces that are wanted. Films are
    excerpts, of `FILMED` only; one piece is told in every language. While one piece is rehearsed and its
    lesson pressed, a second process brings the next ones to rest.

    Raises:
        OSError: the folder cannot be written to.
        ValueError: there is no such piece.
    """
    pieces = example_files()
    unknown = sorted(set(only) - set(pieces))
    if unknown:
        raise ValueError(f"no piece is called {unknown[0]}; there are {', '.join(pieces)}")
    chosen = {name: path for name, path in pieces.items() if not only or name in only}
    folder.mkdir(parents=True, exist_ok=True)
    worked = {name: work(_pattern(path), _under(name, progress)) for name, path in chosen.items()}
    with _second() as second:
        waiting = {
            name: second.apply_async(_finished, (chosen[name],))
            for name, made in worked.items()
            if made.holds
        }
        for name, made in worked.items():
            if not made.holds:
                yield Made(name, made)
                continue
            report = _under(name, progress)
            told = rehearsed(made, progress=report, processes=1)
            found = _awaited(waiting[name], report)
            files: list[Path] = []
            for place, order in _orders(name):
                there = _under(place, progress)
                taught = teach(made, order, there, finish=found)
                files += [write_into(folder / place, *one) for one in pressed(taught, order, there)]
            suited = suit(found.measured, WRIST, found.lengths) if found.measured else None
            yield Made(name, made, tuple(files), found, suited, told)


def _pattern(path: Path) -> Pattern:
    pattern = open_pattern(path).pattern
    if pattern is None:
        raise AssertionError(f"the built-in piece {path.stem} cannot be read")
    return pattern


def _second() -> Pool:
    """Return a second process that works for the demo and ends with it."""
    return multiprocessing.get_context("spawn").Pool(1, signal.signal, (signal.SIGINT, signal.SIG_IGN))


def _finished(path: Path) -> Finish:
    return finish(work(_pattern(path)))


def _awaited(waiting: AsyncResult[Finish], report: Progress) -> Finish:
    while True:
        report("bringing it to rest", 0, 1)
        try:
            return waiting.get(_POLL_S)
        except multiprocessing.TimeoutError:
            continue


def _orders(name: str) -> Iterator[tuple[str, Order]]:
    """Yield the folders of a piece and what goes into each."""
    film: tuple[Piece, ...] = ("film",) if name in FILMED else ()
    everything = Order(
        papers=("a4", "letter"),
        editions=("standard", "large", "grey"),
        parts=(*PARTS, *film, "bundle"),
        learners=12,
        rehearse=True,
        film=FilmOrder(excerpt=True),
    )
    yield name, everything
    if name == TRANSLATED:
        for language in languages():
            if language != everything.language:
                parts: tuple[Piece, ...] = ("handout", "page", "captions", "kit")
                order = Order(language=language, parts=parts, learners=12, rehearse=True)
                yield f"{name}-{language}", order


def _under(name: str, progress: Progress) -> Progress:
    return lambda what, done, total: progress(f"{name}: {what}", done, total)
