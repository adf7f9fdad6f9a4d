"""The command that pictures a piece at rest."""

from __future__ import annotations

from pathlib import Path
from typing import Any, Literal

from pegwright.cli.entry import STOPPED
from pegwright.cli.shared import Json, answer, cannot, load_work, reason, refuse
from pegwright.cli.terminal import err, exit_code, progress, say, say_findings
from pegwright.finding import Finding, Language, RefusedError, phrase
from pegwright.fit import read_wrist
from pegwright.workshop import PictureForm, PictureOrder, make_pictures, replace_file

ViewChoice = Literal["front", "back", "side", "worn", "all"]


def picture_(
    file: Path,
    out: Path | None = None,
    *,
    view: ViewChoice = "front",
    format: PictureForm | None = None,
    girth: str = "",
    tension: bool = False,
    width: int = 1600,
    colourway: str = "",
    language: Language = "en",
    json: Json = False,
) -> int:
    """Bring the piece to rest and picture it from the front, the back, the side or on a wrist.

    Parameters
    ----------
    file
        the pattern document.
    out
        a file ending in .png, .svg or .glb for one picture, or a folder; without it, beside the pattern.
    view
        from where: front, back, side, worn on a wrist, or all (worn only where a girth is given).
    format
        png, svg, glb (a model for other tools) or photo; without it, what the file's ending says, or png.
    girth
        of the wrist that it is worn on, as "16.5 cm" or "6 1/2 in"; a size or an age will do.
    tension
        colour the bands by how taut they are instead of by their own colours.
    width
        how many pixels wide a png or photo is; an svg is true to size.
    colourway
        other colours for some letters, as A=#204060,B=#e0c080.
    language
        the language of the names in the picture, of its description and of what was found: en, es or de.
    """
    ending = out.suffix.lower().lstrip(".") if out else ""
    single = ending in ("png", "svg", "glb")
    wrist = read_wrist(girth) if girth else None
    if wrist is not None and wrist.wrist is None:
        return refuse(wrist.findings, json, language)
    form: PictureForm = format or (ending if single else "png")  # type: ignore[assignment]
    if single and ending != {"photo": "png"}.get(form, form):
        return cannot(f"{out} ends in .{ending}, but a {form} was asked for", json)
    if single and view == "all":
        return cannot(f"all views are several pictures; give a folder instead of {out}", json)
    girth_mm = wrist.wrist.girth_mm if wrist and wrist.wrist else None
    made = load_work(file, json, language)
    findings: tuple[Finding, ...] = (*made.findings, *(wrist.findings if wrist else ()))
    written: list[dict[str, Any]] = []
    lies: list[dict[str, Any]] = []
    try:
        order = PictureOrder(
            views=_views(view, girth_mm),
            form=form,
            girth_mm=girth_mm,
            tension=tension,
            width_px=width,
            colourway=_tints(colourway),
            language=language,
        )
        with progress(json) as report:
            for lie in make_pictures(made, order, report):
                sizes = {"length_mm": lie.length_mm, "width_mm": lie.width_mm, "height_mm": lie.height_mm}
                lies.append(
                    {
                        "lie": lie.lie,
                        **{name: round(value, 2) for name, value in sizes.items()},
                        "girth_mm": girth_mm if lie.lie == "worn" else None,
                        "at_rest": lie.at_rest,
                        "crossings": lie.crossings,
                    }
                )
                findings += lie.findings
                for one in lie.painted:
                    target = _target(file, out, single, one.ending)
                    target.parent.mkdir(parents=True, exist_ok=True)
                    replace_file(target, one.data)
                    written.append({"name": str(target), "view": one.view, "bytes": len(one.data)})
    except (RefusedError, OSError) as error:
        return cannot(reason(error, language) + _say_finished_files(written), json)
    except KeyboardInterrupt:
        if not written:
            raise
        message = "stopped" + _say_finished_files(written)
        if json:
            answer({"reason": message, "files": written}, (), STOPPED)
        err.print(message, markup=False)
        return STOPPED
    if json:
        return answer(
            {"title": made.pattern.title, "lies": lies, "files": written}, findings, language=language
        )
    for size in lies:
        where = "lying flat" if size["lie"] == "flat" else f"on a wrist of {girth_mm:.0f} mm"
        say(f"{made.pattern.title}: {size['length_mm']:.0f} mm long and {size['width_mm']:.0f} wide, {where}")
    for done in written:
        say(f"  {done['name']}")
    say_findings(findings, language)
    return exit_code(findings)


def _views(view: ViewChoice, girth_mm: float | None) -> tuple[Literal["front", "back", "side", "worn"], ...]:
    if view != "all":
        return (view,)
    return ("front", "back", "side") if girth_mm is None else ("front", "back", "side", "worn")


def _target(file: Path, out: Path | None, single: bool, ending: str) -> Path:
    if out is not None and single:
        return out
    return (out or file.parent) / f"{file.stem}-{ending}"


def _tints(listed: str) -> dict[str, str]:
    """Return tints by letter.

    Raises:
        RefusedError: a part is no LETTER=#rrggbb.
    """
    found = {}
    for part in (part.strip() for part in listed.split(",") if part.strip()):
        letter, equals, tint = (text.strip() for text in part.partition("="))
        if not (letter and equals and tint):
            raise RefusedError(phrase("names-no-colour", text=part))
        found[letter] = tint
    return found


def _say_finished_files(written: list[dict[str, Any]]) -> str:
    """Say which files stay: each was finished before the next was begun."""
    if not written:
        return ""
    return f"; finished and kept: {', '.join(one['name'] for one in written)}"
