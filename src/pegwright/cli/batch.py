"""The command that makes a whole catalogue at once."""

from __future__ import annotations

import re
from contextlib import AbstractContextManager
from pathlib import Path
from typing import Any, Literal, get_args

from pegwright.cli.mat import read_colours
from pegwright.cli.shared import Json, answer, cannot, load_pattern, reason
from pegwright.cli.terminal import FINE, FOUND, progress, say
from pegwright.finding import Language, RefusedError, phrase
from pegwright.pattern import Pattern
from pegwright.variants import read_band_size, read_loom_size
from pegwright.workshop import (
    BatchCluster,
    BatchOrder,
    BatchPart,
    BatchRun,
    LessonOutput,
    VariantOrder,
    connect_cluster,
    example_files,
    run_batch,
    start_cluster,
    write_gallery,
)

_LESSON = tuple(part for group in get_args(LessonOutput) for part in get_args(group) or (group,))
_PARTS: tuple[BatchPart, ...] = ("pattern", "picture", *_LESSON)
_LANGUAGES: tuple[Language, ...] = get_args(Language)


def batch_(
    *files: Path,
    out: Path,
    parts: str = "pattern,picture,handout",
    sizes: str = "",
    colourways: int = 0,
    stash: Path | None = None,
    colours: str = "",
    bands: str = "",
    looms: str = "",
    seed: int = 1,
    languages: str = "en",
    hands: Literal["right", "left", "both"] = "right",
    rehearse: bool = False,
    fit: bool = False,
    workers: int = 2,
    scheduler: str = "",
    language: Language = "en",
    json: Json = False,
) -> int:
    """Make lessons, pictures and patterns of many pieces, sizes, colourways, languages and hands at once.

    What is there already is not made again; what is missing or different is. A page shows everything.

    Parameters
    ----------
    files
        pattern documents; without any, the built-in pieces that hold.
    out
        the folder for everything.
    parts
        what to make of each: pattern, picture, and any part of a lesson, with commas between.
    sizes
        sizes, girths or ages with commas between, as S,M,L; a piece that has none is made once.
    colourways
        how many colourways of each piece, from your stash or the colours told.
    stash
        your stash, for the colourways.
    colours
        instead of a stash: names and tints, as "foam white=#f2efe6, slate=#4a5a6a".
    bands
        other bands: bore x thickness in mm with commas between, as 15x1.8.
    looms
        other straight looms: rows x pegs with commas between, as 3x26; a piece on no straight loom has none.
    seed
        another number draws other colourways.
    languages
        of the lessons, with commas between: en,es,de.
    hands
        right, left, or both.
    rehearse
        rehearse every likely slip too, and carry warnings and wrong pictures in the lessons.
    fit
        measure whom each piece suits too.
    workers
        how many processes work at it on this machine.
    scheduler
        instead: the address of a Dask scheduler whose workers have this version of pegwright.
    language
        the language of the page: en, es or de.
    """
    named = {part.strip() for part in languages.split(",") if part.strip()}
    spoken = tuple(one for one in _LANGUAGES if one in named)
    unknown = sorted(named - set(_LANGUAGES))
    if unknown:
        return cannot(f"there is no language {unknown[0]}: there are {', '.join(_LANGUAGES)}", json)
    if not 1 <= workers <= 64 or not 0 <= colourways <= 100:
        return cannot("there are 1 to 64 workers and 0 to 100 colourways", json)
    try:
        patterns = _patterns(files, json)
        had = read_colours(stash, colours, json, language) if colourways else ()
        if isinstance(had, int):
            return had
        order = BatchOrder(
            parts=_read_parts(parts),
            languages=spoken or ("en",),
            hands=("right", "left") if hands == "both" else (hands,),
            variants=VariantOrder(
                sizes=tuple(part.strip() for part in sizes.split(",") if part.strip()),
                bands=tuple(read_band_size(part) for part in bands.split(",") if part.strip()),
                looms=tuple(read_loom_size(part) for part in looms.split(",") if part.strip()),
                colourways=colourways,
                seed=seed,
            ),
            rehearse=rehearse,
            fit=fit,
        )
        with progress(json) as report, _cluster(scheduler, workers) as cluster:
            run = run_batch(patterns, order, out, cluster, colours=had, language=language, progress=report)
        page = write_gallery(run, out, language)
    except (RefusedError, OSError) as error:
        return cannot(reason(error, language), json)
    return _tell(run, page, json)


def _cluster(scheduler: str, workers: int) -> AbstractContextManager[BatchCluster]:
    return connect_cluster(scheduler) if scheduler else start_cluster(workers)


def _patterns(files: tuple[Path, ...], json: bool) -> dict[str, Pattern]:
    """Return the patterns by a plain name each, which becomes a folder."""
    found: dict[str, Pattern] = {}
    chosen = files or [path for name, path in example_files().items() if "/" not in name]
    for path in chosen:
        plain = re.sub(r"[^A-Za-z0-9]+", "-", path.stem).strip("-")[:60] or "piece"
        if plain == "kept":
            plain = "kept-piece"
        name, again = plain, 2
        while name in found:
            name, again = f"{plain}-{again}", again + 1
        found[name] = load_pattern(path, json)
    return found


def _read_parts(text: str) -> tuple[BatchPart, ...]:
    named = {part.strip() for part in text.split(",") if part.strip()}
    unknown = sorted(named - set(_PARTS))
    if unknown:
        raise RefusedError(phrase("no-such-part", name=unknown[0], known=_PARTS))
    return tuple(part for part in _PARTS if part in named)


def _tell(run: BatchRun, page: Path, json: bool) -> int:
    code = FOUND if run.failures else FINE
    if json:
        facts: dict[str, Any] = {
            "page": str(page),
            "made": len(run.places) - run.known,
            "known": run.known,
            "places": [
                {
                    "folder": place.folder,
                    "title": place.title,
                    "holds": place.holds,
                    "bands": place.bands,
                    "files": sorted(place.files),
                }
                for place in run.places
            ],
            "failures": run.failures,
            "notes": [{"piece": piece, "message": note.message} for piece, note in run.notes],
        }
        return answer(facts, code=code)
    say(f"{len(run.places) - run.known} made, {run.known} were there already")
    for piece, note in run.notes:
        say(f"  {piece}: {note.message}")
    for failure in run.failures:
        say(f"not made: {failure.folder}: {failure.why}", style="bold red")
    say(f"{page}: everything on one page")
    return code
