"""Pictures of a worked piece at rest: relaxed once flat and once worn, then painted view by view."""

from __future__ import annotations

import importlib.util
from collections.abc import Iterator, Mapping
from typing import Literal, NamedTuple

from pegwright.finding import Finding, Language, RefusedError, phrase
from pegwright.lesson import Phrasebook, Portrait, ViewName, portrait_of, view_text
from pegwright.pattern import localise
from pegwright.press import portrait_glb, portrait_photo, portrait_png, portrait_svg
from pegwright.workshop.at_rest import bring_to_rest
from pegwright.workshop.line import Work
from pegwright.workshop.progress import ReportProgress, report_nothing

PictureForm = Literal["png", "svg", "glb", "photo"]
_ENDING = {"png": "png", "svg": "svg", "glb": "glb", "photo": "png"}
_WIDEST = {"png": 8000, "photo": 4000}


class PictureOrder(NamedTuple):
    """The pictures wanted: views, form, the wrist's girth in mm for `worn`, width in px, tints by letter.

    A model (`glb`) is one file each for flat and worn, whatever the views. `language` is that of the names of
    the colours and of the description.
    """

    views: tuple[ViewName, ...] = ("front",)
    form: PictureForm = "png"
    girth_mm: float | None = None
    tension: bool = False
    width_px: int = 1600
    colourway: Mapping[str, str] = {}
    language: Language = "en"


class PictureFile(NamedTuple):
    """One finished picture: what it shows, its file suffix, its bytes."""

    view: str
    ending: str
    data: bytes


class PictureSet(NamedTuple):
    """All pictures of the piece flat or on the wrist, painted on demand, and what was measured."""

    lie: Literal["flat", "worn"]
    length_mm: float
    width_mm: float
    height_mm: float
    at_rest: bool
    crossings: int
    findings: tuple[Finding, ...]
    painted: Iterator[PictureFile]


def make_pictures(
    work: Work, order: PictureOrder, progress: ReportProgress = report_nothing
) -> Iterator[PictureSet]:
    """Bring a piece to rest flat, worn or both, as the views need, and paint it.

    Raises:
        RefusedError: the order makes no sense for this piece, there are no bands, or no renderer is
            installed.
    """
    _check_order(work, order)
    flat = tuple(view for view in order.views if view != "worn")
    worn = tuple(view for view in order.views if view == "worn")
    lies: tuple[tuple[tuple[ViewName, ...], float | None], ...] = ((flat, None), (worn, order.girth_mm))
    for views, girth in lies:
        if not views:
            continue
        piece = bring_to_rest(work, progress, girth_mm=girth)
        portrait = portrait_of(
            piece, localise(work.pattern, order.language), work.history.colours, colourway=order.colourway
        )
        yield PictureSet(
            lie="flat" if girth is None else "worn",
            length_mm=piece.length_mm,
            width_mm=piece.width_mm,
            height_mm=piece.height_mm,
            at_rest=piece.relaxed.converged,
            crossings=piece.crossing_check.crossings,
            findings=piece.relaxed.findings,
            painted=_paint_all(portrait, views, order, progress),
        )


def _check_order(work: Work, order: PictureOrder) -> None:
    if "worn" in order.views and order.girth_mm is None:
        raise RefusedError(phrase("worn-needs-girth"))
    if order.tension and order.form not in ("png", "svg"):
        raise RefusedError(phrase("tension-form"))
    widest = _WIDEST.get(order.form)
    if widest is not None and not 100 <= order.width_px <= widest:
        raise RefusedError(phrase("picture-width", widest_px=widest, width_px=order.width_px))
    strange = sorted(set(order.colourway) - {colour.letter for colour in work.pattern.colours})
    if strange:
        raise RefusedError(phrase("no-such-colour", letter=strange[0]))
    if order.form == "photo" and importlib.util.find_spec("mitsuba") is None:
        raise RefusedError(phrase("no-photo-renderer"))


def _paint_all(
    portrait: Portrait, views: tuple[ViewName, ...], order: PictureOrder, progress: ReportProgress
) -> Iterator[PictureFile]:
    if order.form == "glb":
        lie = "flat" if portrait.girth_mm is None else "worn"
        progress("writing the model", 0, 1)
        yield PictureFile(lie, f"{lie}.glb", portrait_glb(portrait))
        return
    for done, view in enumerate(views):
        progress(f"painting it: {view}", done, len(views))
        kind = "-tension" if order.tension else "-photo" if order.form == "photo" else ""
        yield PictureFile(view, f"{view}{kind}.{_ENDING[order.form]}", _paint(portrait, view, order))


def _paint(portrait: Portrait, view: ViewName, order: PictureOrder) -> bytes:
    if order.form == "svg":
        text = view_text(Phrasebook(order.language), portrait, view)
        return portrait_svg(portrait, view, tension=order.tension, text=text).encode()
    if order.form == "photo":
        return portrait_photo(portrait, view, order.width_px)
    return portrait_png(portrait, view, order.width_px, tension=order.tension)
