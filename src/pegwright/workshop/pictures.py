"""Pictures of a worked piece at rest: brought to rest once for each lie, then painted view by view."""

from __future__ import annotations

import importlib.util
from collections.abc import Iterator, Mapping
from typing import Literal, NamedTuple

from pegwright.finding import Finding
from pegwright.lesson.portrait import Portrait, ViewName, portrait_of
from pegwright.press.gltf import portrait_glb
from pegwright.press.photo import NoRenderer, portrait_photo
from pegwright.press.portrait_png import portrait_png
from pegwright.press.portrait_svg import portrait_svg
from pegwright.workshop.at_rest import at_rest
from pegwright.workshop.line import Work
from pegwright.workshop.progress import Progress, silent

Form = Literal["png", "svg", "glb", "photo"]
_ENDING = {"png": "png", "svg": "svg", "glb": "glb", "photo": "png"}
_WIDEST = {"png": 8000, "photo": 4000}


class PictureOrder(NamedTuple):
    """What is wanted: views, a form, the wrist's girth in mm for `worn`, a width in pixels, tints by letter.

    A model (`glb`) is one file for each lie, flat or worn, whatever the views.
    """

    views: tuple[ViewName, ...] = ("front",)
    form: Form = "png"
    girth_mm: float | None = None
    tension: bool = False
    width_px: int = 1600
    colourway: Mapping[str, str] = {}


class Picture(NamedTuple):
    """One finished picture: what it shows, the end of its file's name, its bytes."""

    view: str
    ending: str
    data: bytes


class Pictures(NamedTuple):
    """All pictures of one lie, flat or on the wrist, painted as they are asked for, and what was measured."""

    lie: Literal["flat", "worn"]
    length_mm: float
    width_mm: float
    height_mm: float
    at_rest: bool
    crossings: int
    findings: tuple[Finding, ...]
    painted: Iterator[Picture]


def pictures(work: Work, order: PictureOrder, progress: Progress = silent) -> Iterator[Pictures]:
    """Bring a piece to rest for every lie that the views need, the flat one first, and paint it.

    Raises:
        ValueError: the order makes no sense for this piece, there are no bands, or no renderer for photos is
            installed.
    """
    _sensible(work, order)
    flat = tuple(view for view in order.views if view != "worn")
    worn = tuple(view for view in order.views if view == "worn")
    lies: tuple[tuple[tuple[ViewName, ...], float | None], ...] = ((flat, None), (worn, order.girth_mm))
    for views, girth in lies:
        if not views:
            continue
        piece = at_rest(work, progress, girth_mm=girth)
        seen = portrait_of(piece, work.pattern, work.history.colours, colourway=order.colourway)
        yield Pictures(
            lie="flat" if girth is None else "worn",
            length_mm=piece.length_mm,
            width_mm=piece.width_mm,
            height_mm=piece.height_mm,
            at_rest=piece.relaxed.converged,
            crossings=piece.certified.crossings,
            findings=piece.relaxed.findings,
            painted=_painted(seen, views, order, progress),
        )


def _sensible(work: Work, order: PictureOrder) -> None:
    if "worn" in order.views and order.girth_mm is None:
        raise ValueError("a worn piece needs the girth of a wrist, such as 16 cm")
    if order.tension and order.form not in ("png", "svg"):
        raise ValueError("the tension map is painted as png or svg")
    widest = _WIDEST.get(order.form)
    if widest is not None and not 100 <= order.width_px <= widest:
        raise ValueError(f"a picture of this form is 100 to {widest} pixels wide, not {order.width_px}")
    strange = sorted(set(order.colourway) - {colour.letter for colour in work.pattern.colours})
    if strange:
        raise ValueError(f"the pattern has no colour {strange[0]}")
    if order.form == "photo" and importlib.util.find_spec("mitsuba") is None:
        raise ValueError(str(NoRenderer()))


def _painted(
    seen: Portrait, views: tuple[ViewName, ...], order: PictureOrder, progress: Progress
) -> Iterator[Picture]:
    if order.form == "glb":
        lie = "flat" if seen.girth_mm is None else "worn"
        progress("writing the model", 0, 1)
        yield Picture(lie, f"{lie}.glb", portrait_glb(seen))
        return
    for done, view in enumerate(views):
        progress(f"painting it: {view}", done, len(views))
        kind = "-tension" if order.tension else "-photo" if order.form == "photo" else ""
        yield Picture(view, f"{view}{kind}.{_ENDING[order.form]}", _paint(seen, view, order))


def _paint(seen: Portrait, view: ViewName, order: PictureOrder) -> bytes:
    if order.form == "svg":
        return portrait_svg(seen, view, tension=order.tension).encode()
    if order.form == "photo":
        return portrait_photo(seen, view, order.width_px)
    return portrait_png(seen, view, order.width_px, tension=order.tension)
