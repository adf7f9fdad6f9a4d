"""The built-in pieces, and the main job run on all of them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from pegwright.press import handout_pdf
from pegwright.workshop.files import open_pattern, write_whole
from pegwright.workshop.line import Work, lesson, work
from pegwright.workshop.progress import Progress, silent


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


def demo(folder: Path, progress: Progress = silent) -> Iterator[Made]:
    """Run the main job on every built-in piece and write the handouts of those that hold.

    Raises:
        OSError: the folder cannot be written to.
    """
    folder.mkdir(parents=True, exist_ok=True)
    pieces = example_files()
    for done, (name, path) in enumerate(pieces.items()):
        progress(name, done, len(pieces))
        pattern = open_pattern(path).pattern
        if pattern is None:
            raise AssertionError(f"the built-in piece {name} cannot be read")
        made = work(pattern)
        files = []
        if made.holds:
            planned = lesson(made)
            for paper in ("a4", "letter"):
                file = folder / f"{name}-{paper}.pdf"
                write_whole(file, handout_pdf(planned, paper))
                files.append(file)
        yield Made(name, made, tuple(files))
