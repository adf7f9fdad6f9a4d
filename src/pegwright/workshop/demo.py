"""The built-in pieces, and the main job run on all of them."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from pathlib import Path
from typing import NamedTuple

from pegwright.lesson import languages
from pegwright.press import PARTS
from pegwright.workshop.files import open_pattern
from pegwright.workshop.folder import write_into
from pegwright.workshop.lessons import FilmOrder, Order, Piece, pressed, teach
from pegwright.workshop.line import Work, work
from pegwright.workshop.pictures import PictureOrder, pictures
from pegwright.workshop.progress import Progress, silent

FILMED = ("herring-tail", "riding-lights")
TRANSLATED = "ebb-line"
PICTURED = ("ebb-line", "riding-lights")


class Made(NamedTuple):
    """One piece of the demo: its name, what the line made of it, and the files written."""

    name: str
    work: Work
    files: tuple[Path, ...]


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
    excerpts, of `FILMED` only; one piece is told in every language; `PICTURED` are brought to rest.

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
    for name, path in chosen.items():
        progress(f"{name}: working it", 0, 1)
        pattern = open_pattern(path).pattern
        if pattern is None:
            raise AssertionError(f"the built-in piece {name} cannot be read")
        made = work(pattern)
        files: list[Path] = []
        for place, order in _orders(name) if made.holds else ():
            report = _under(place, progress)
            taught = teach(made, order, report)
            files += [write_into(folder / place, file, data) for file, data in pressed(taught, order, report)]
        if made.holds and name in PICTURED:
            for lie in pictures(made, PictureOrder(width_px=1200), _under(name, progress)):
                files += [write_into(folder / name, f"at-rest-{one.ending}", one.data) for one in lie.painted]
        yield Made(name, made, tuple(files))


def _orders(name: str) -> Iterator[tuple[str, Order]]:
    """Yield the folders of a piece and what goes into each."""
    film: tuple[Piece, ...] = ("film",) if name in FILMED else ()
    everything = Order(
        papers=("a4", "letter"),
        editions=("standard", "large", "grey"),
        parts=(*PARTS, *film, "bundle"),
        learners=12,
        film=FilmOrder(excerpt=True),
    )
    yield name, everything
    if name == TRANSLATED:
        for language in languages():
            if language != everything.language:
                parts: tuple[Piece, ...] = ("handout", "page", "captions", "kit")
                yield f"{name}-{language}", Order(language=language, parts=parts, learners=12)


def _under(name: str, progress: Progress) -> Progress:
    return lambda what, done, total: progress(f"{name}: {what}", done, total)
