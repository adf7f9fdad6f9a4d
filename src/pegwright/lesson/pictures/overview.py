"""Pictures of the whole: the bare loom, and many rounds at once with their order in numbers."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence
from typing import NamedTuple

from pegwright.lesson.pictures.step_picture import bowed_arrow, pegs_in_view, touched_bands, view_text
from pegwright.lesson.say.say import Speaker
from pegwright.lesson.scene.picture import ArrowMark, BadgeMark, Mark, Picture, Spot, Window
from pegwright.lesson.scene.scene import Scene
from pegwright.lesson.scene.view import contains, cut_strips
from pegwright.loom import AppliedMove
from pegwright.pattern import Hook, Place, Slide, Transfer, Wind, named_pegs

STRIP_MM = 122.0
STRIP_WIDE_MM = 112.0
BARE_SCALE = 0.7
BARE_STRIP_MM = 100.0
_NUMBERS_AT_MOST = 150
_STRIPS_AT_MOST = 10
_BADGE_ROOM_MM = 5.0


class Overview(NamedTuple):
    """The strips in order, nearest first, and a sentence on those left out of a very long loom."""

    pictures: tuple[Picture, ...]
    left_out: tuple[str, ...] = ()


def loom_pictures(speaker: Speaker, scene: Scene) -> Overview:
    """Show the whole loom in strips that fit a page."""
    pegs = [scene.view.spot(at) for at in scene.view.board.pegs]
    frames = cut_strips(scene.view, BARE_STRIP_MM / BARE_SCALE, STRIP_WIDE_MM / BARE_SCALE, pegs, 20.0)
    found = []
    shown = _strips_to_show(len(frames))
    for k in shown:
        frame = frames[k - 1]
        title = speaker.phrasebook.say("picture-loom")
        if len(frames) > 1:
            title = speaker.phrasebook.say("picture-part", n=k, count=len(frames))
        found.append(
            Picture(
                title=title,
                text=speaker.phrasebook.say("picture-loom-text", pegs=pegs_in_view(speaker, scene, frame)),
                window=frame,
                marks=tuple(scene.pegs(frame)),
                scale=min(BARE_SCALE, STRIP_WIDE_MM / frame.width_mm),
            )
        )
    return Overview(tuple(found), _omission_text(speaker, shown))


def rounds_pictures(speaker: Speaker, scene: Scene, rounds: Sequence[Sequence[AppliedMove]]) -> Overview:
    """Show all rounds at once on the loom as it is after them: their bands highlighted, the order in numbers.

    Rounds in one and the same place have no order to show. Rounds that name no peg (turning the loom, hanging
    bands on the hook, extending a free end) have no place on the loom, so nothing is shown of them.
    """
    placing = all(isinstance(done.move, Place | Wind) for each in rounds for done in each)
    still = len({tuple(named_pegs(done.move) for done in each) for each in rounds}) == 1
    highlighted = (
        {band for each in rounds for done in each for band in touched_bands(done)} if placing else set()
    )
    focus = [scene.view.spot(peg) for each in rounds for done in each for peg in named_pegs(done.move)]
    if not focus:
        return Overview(())
    room = 0.8 * scene.view.pitch_mm
    cut = cut_strips(scene.view, STRIP_MM, STRIP_WIDE_MM, focus, room)
    ways = sorted({y for _, y in focus})
    frames = [f for f in cut if bisect_left(ways, f.near_mm) < bisect_left(ways, f.far_mm)]
    found = []
    shown = _strips_to_show(len(frames))
    for k in shown:
        frame = frames[k - 1]
        bands = scene.bands(frame, highlighted)
        marks: list[Mark] = [*scene.pegs(frame), *bands]
        if not still and sum(len(each) for each in rounds) <= _NUMBERS_AT_MOST:
            for number, each in enumerate(rounds, start=1):
                marks += _number_round(scene, number, each)
        title = speaker.phrasebook.say("label-after" if still else "label-order")
        if len(frames) > 1:
            title = speaker.phrasebook.say("picture-part", n=k, count=len(frames))
        text = speaker.phrasebook.say(f"picture-again-{'still' if still else 'place' if placing else 'work'}")
        found.append(
            Picture(
                title=title,
                text=f"{text} {view_text(speaker, scene, frame)}",
                window=frame,
                marks=tuple(mark for mark in marks if _is_visible(mark, frame)),
                scale=min(1.0, STRIP_WIDE_MM / frame.width_mm),
            )
        )
    return Overview(tuple(found), _omission_text(speaker, shown))


def _number_round(scene: Scene, number: int, each: Sequence[AppliedMove]) -> list[Mark]:
    """Mark a round with its number: on its band, on its arrow, or where it begins."""
    move = each[0].move
    if len(each) == 1 and isinstance(move, Hook | Slide | Transfer):
        arrow = bowed_arrow(scene.view, move.source, move.target, "hook")
        x = (arrow.start[0] + 2 * arrow.bend[0] + arrow.end[0]) / 4
        y = (arrow.start[1] + 2 * arrow.bend[1] + arrow.end[1]) / 4
        return [arrow, _number_badge(number, (x, y))]
    first = next((p for p in (named_pegs(done.move) for done in each) if len(p) > 1), ())
    pegs = [scene.view.spot(peg) for peg in first or named_pegs(move)]
    if len(pegs) > 1:
        return [
            _number_badge(number, (sum(p[0] for p in pegs) / len(pegs), sum(p[1] for p in pegs) / len(pegs)))
        ]
    if not pegs:
        return []
    # One peg: beside it, on the side away from the middle of the loom.
    x, y = pegs[0]
    length = math.hypot(x, y)
    beside = scene.look.base_mm + 2.8
    out = (x / length, y / length) if length > 1e-6 else (1.0, 0.0)
    return [_number_badge(number, (x + out[0] * beside, y + out[1] * beside))]


def _number_badge(number: int, spot: Spot) -> BadgeMark:
    return BadgeMark(x_mm=spot[0], y_mm=spot[1], text=str(number), r_mm=2.1, role="number")


def _strips_to_show(count: int) -> list[int]:
    """Return which of so many strips to show, from 1: all, or of very many the first and the last two."""
    if count <= _STRIPS_AT_MOST:
        return list(range(1, count + 1))
    return [*range(1, _STRIPS_AT_MOST - 1), count - 1, count]


def _omission_text(speaker: Speaker, shown: list[int]) -> tuple[str, ...]:
    if not shown or shown[-1] == len(shown):
        return ()
    first, last = len(shown) - 1, shown[-2] - 1
    return (speaker.phrasebook.say("detail-left-out", first=first, last=last),)


def _is_visible(mark: Mark, frame: Window) -> bool:
    """Say whether a number or an arrow lies in the window; other marks were chosen for it."""
    match mark:
        case BadgeMark():  # whole, in large print too; what a torn edge would cut stands in the next strip
            near = frame.near_mm + (_BADGE_ROOM_MM if "near" in frame.goes_on else 0.0)
            far = frame.far_mm - (_BADGE_ROOM_MM if "far" in frame.goes_on else 0.0)
            return contains(frame, (mark.x_mm, mark.y_mm)) and near < mark.y_mm < far
        case ArrowMark():
            return any(contains(frame, spot) for spot in (mark.start, mark.bend, mark.end))
        case _:
            return True
