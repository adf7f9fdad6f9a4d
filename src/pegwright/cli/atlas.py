"""The command that builds the atlas of techniques."""

from __future__ import annotations

from pathlib import Path

from pegwright.cli.shared import Json, answer, cannot, reason
from pegwright.cli.terminal import FINE, progress, say
from pegwright.finding import Language, RefusedError
from pegwright.workshop import build_atlas, start_cluster


def atlas_(
    out: Path, *, only: str = "", workers: int = 2, language: Language = "en", json: Json = False
) -> int:
    """Measure every technique of the atlas and show them on one page, to choose one by its numbers.

    Parameters
    ----------
    out
        the folder for the page, the numbers (atlas.json) and a pattern of each; what is there is not
        measured again.
    only
        names of techniques with commas between; without it, all.
    workers
        how many processes work at it.
    language
        the language of the page: en, es or de.
    """
    if not 1 <= workers <= 64:
        return cannot("there are 1 to 64 workers", json)
    names = [name.strip() for name in only.split(",") if name.strip()]
    try:
        with progress(json) as report, start_cluster(workers) as cluster:
            measures = build_atlas(out, cluster, only=names, language=language, progress=report)
    except (RefusedError, OSError) as error:
        return cannot(reason(error, language), json)
    page = out / "index.html"
    if json:
        return answer({"page": str(page), "techniques": measures}, code=FINE)
    say(f"{page}: {len(measures)} techniques, each proved and measured")
    return FINE
