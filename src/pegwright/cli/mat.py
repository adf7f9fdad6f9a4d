"""The command that makes a mat of a picture."""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from typing import Any

from pegwright.cli.shared import Json, answer, cannot, reason, refuse, table
from pegwright.cli.terminal import FAILED, exit_code, out as screen, progress, say, say_findings
from pegwright.finding import Language, RefusedError
from pegwright.fit import read_stash
from pegwright.pattern import BandType
from pegwright.text import encode_pattern
from pegwright.variants import BandColour, band_colours_of, read_band_colours, read_band_size
from pegwright.workshop import Mat, MatOrder, chart_mat, make_mat, read_plain_file, replace_file

_MOST_BYTES = 101 * 2**20


def mat_(
    picture: Path,
    *,
    out: Path | None = None,
    chart: Path | None = None,
    stash: Path | None = None,
    colours: str = "",
    across: int = 25,
    down: int | None = None,
    crop: str = "",
    most: int = 8,
    diffuse: bool = False,
    clean: bool | None = None,
    pegs: int = 13,
    band: str = "",
    title: str = "",
    language: Language = "en",
    json: Json = False,
) -> int:
    """Make a mat of a picture, in the colours you have, every band proved held, to be worked row by row.

    Parameters
    ----------
    picture
        a photo or drawing: PNG, JPEG, WebP, GIF, BMP or TIFF.
    out
        write the pattern into this new file: as plain text where the name ends with .pegwright, else as JSON.
    chart
        write the chart into this new HTML file: what to lay out, the picture cell by cell, every row in
        numbers.
    stash
        your stash: the colours whose tint it says, and how many bands you have of them.
    colours
        instead of a stash: names and tints, as "foam white=#f2efe6, slate=#4a5a6a".
    across
        bands from edge to edge; one more than that are the pegs it takes.
    down
        rows of bands; without it, as many as the picture asks for.
    crop
        what of the picture to take: left, top, right and bottom as shares, as 0.1,0,0.9,1.
    most
        how many colours at most, the nearest to the picture first.
    diffuse
        mix shades from dots of the colours you have.
    clean
        take out cells that stand alone in their colour; without it, that is done unless you diffuse.
    pegs
        pegs in a row of your looms; as many looms as it takes are joined end to end.
    band
        other bands than the usual: bore x thickness in mm, as 15x1.8; the grid then has their proportions.
    title
        the name of the mat; without it, the file's name.
    language
        the language of the chart and of what was found: en, es or de.
    """
    there = next((path for path in (out, chart) if path is not None and path.exists()), None)
    if there is not None:
        return cannot(f"{there} is there already; choose another name", json)
    try:
        had = read_colours(stash, colours, json, language)
        if isinstance(had, int):
            return had
        order = MatOrder(
            title=title or picture.stem.replace("-", " ") or "Mat",
            across=across,
            down=down,
            crop=_crop(crop),
            most_colours=most,
            diffuse=diffuse,
            clean=clean,
            pegs=pegs,
            band=_band(band),
        )
        with progress(json) as report:
            mat = make_mat(read_plain_file(picture, _MOST_BYTES), had, order, report)
        if mat.work is None:
            return refuse(mat.findings, json, language)
        if out is not None:
            replace_file(out, encode_pattern(mat.work.pattern, out.name))
        if chart is not None:
            replace_file(chart, chart_mat(mat, language))
    except (RefusedError, OSError, ValueError) as error:
        return cannot(reason(error, language), json)
    return _tell(mat, out, chart, json=json, language=language)


def read_colours(
    stash: Path | None, colours: str, json: bool, language: Language
) -> tuple[BandColour, ...] | int:
    """Return the colours to match, or the exit code where there is no reading them."""
    if (stash is None) == (not colours):
        return cannot("give either --stash or --colours", json)
    if stash is None:
        return read_band_colours(colours)
    read, findings = read_stash(read_plain_file(stash))
    return refuse(findings, json, language) if read is None else band_colours_of(read)


def _band(text: str) -> BandType:
    """Return the kind of band that is told as `15x1.8`, the usual one if the text is empty.

    Raises:
        RefusedError: the text is none, or no band has that size.
    """
    if not text:
        return BandType()
    bore, thickness = read_band_size(text)
    return BandType(name=f"{bore:g} × {thickness:g} mm", bore_mm=bore, thickness_mm=thickness)


def _crop(text: str) -> tuple[float, float, float, float]:
    """Read a crop; the whole picture if the text is empty.

    Raises:
        ValueError: the text is not four numbers.
    """
    if not text:
        return (0.0, 0.0, 1.0, 1.0)
    try:
        left, top, right, bottom = (float(part) for part in text.split(","))
    except ValueError:
        raise ValueError(f'"{text}" is no crop: give left,top,right,bottom as shares from 0 to 1') from None
    return left, top, right, bottom


def _tell(mat: Mat, out: Path | None, chart: Path | None, *, json: bool, language: Language) -> int:
    made = mat.work
    if made is None:
        return FAILED
    needed = Counter(letter for row in mat.letters for letter in row)
    counts = [
        {"letter": colour.letter, "name": colour.name, "tint": colour.hex, "bands": needed[colour.letter]}
        for colour in made.pattern.colours
    ]
    if json:
        facts: dict[str, Any] = {
            "title": made.pattern.title,
            "holds": made.holds,
            "across": len(mat.letters[0]),
            "down": len(mat.letters),
            "bands": sum(needed.values()),
            "width_mm": mat.width_mm,
            "height_mm": mat.height_mm,
            "colours": counts,
            "rows": [" ".join(row) for row in mat.letters],
            "file": None if out is None else str(out),
            "chart": None if chart is None else str(chart),
        }
        return answer(facts, mat.findings, language=language)
    say(made.pattern.title, style="bold")
    say(
        f"{len(mat.letters[0])} bands across, {len(mat.letters)} rows, {sum(needed.values())} bands in all;"
        f" about {mat.width_mm / 10:.0f} × {mat.height_mm / 10:.0f} cm at rest"
    )
    screen.print(table([{key: str(value) for key, value in one.items()} for one in counts]))
    say("every band is proved held" if made.holds else "not every band is proved held")
    if out is not None:
        say(f"{out}: the pattern; `pegwright lesson {out}` makes the handout of it")
    if chart is not None:
        say(f"{chart}: the chart to work from")
    say_findings(mat.findings, language)
    return exit_code(mat.findings)
