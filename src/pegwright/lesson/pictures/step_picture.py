"""The picture of one move: what is there now, what is new, what the hand does."""

from __future__ import annotations

import math
from typing import Literal, NamedTuple

from pegwright.lesson.say.say import Speaker
from pegwright.lesson.scene.outline import middle_of
from pegwright.lesson.scene.picture import (
    ArrowMark,
    BadgeMark,
    BandMark,
    FastenerMark,
    HookMark,
    Mark,
    Picture,
    Spot,
    Window,
)
from pegwright.lesson.scene.scene import Scene
from pegwright.lesson.scene.view import View, choose_window
from pegwright.loom import AppliedMove, Drawn, Fastened, Laid, Lifted, Moved
from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    Place,
    Put,
    Slide,
    Transfer,
    Turn,
    Wind,
    named_pegs,
)

CARD_MM = (56.0, 62.0)
CARD_SCALE = 1.25
_TURN_TALL_MM = 42.0
"""The loom that is turned: nothing in it is to be looked at closely."""
STRIP_MM = 122.0
STRIP_WIDE_MM = 112.0
BARE_SCALE = 0.8
_NUMBERS_AT_MOST = 150
_FAR_APART_MM = 70.0
_END_MM = 100.0


class Moment(NamedTuple):
    """One move in the history: what was done, the scene before and after it."""

    done: AppliedMove
    before: Scene
    after: Scene


def draw_step(speaker: Speaker, number: int, moment: Moment, last: Window | None) -> tuple[Picture, ...]:
    """Show one move: where the bands lie after it (before it, for a fastener), what is new highlighted.

    A fastener that joins places far apart is shown at each of them.
    """
    move = moment.done.move
    scene = moment.before if isinstance(move, Knot | Clip) else moment.after
    focus = focus_of(scene, moment.done)
    far = max(max(s[i] for s in focus) - min(s[i] for s in focus) for i in (0, 1))
    spots = [[spot] for spot in focus] if 1 < len(focus) < 4 and far > _FAR_APART_MM else [focus]
    return tuple(draw_picture(speaker, number, moment, scene, window_of(scene, each, last)) for each in spots)


def window_of(scene: Scene, focus: list[Spot], last: Window | None) -> Window:
    """Choose the window for a card."""
    least = (CARD_MM[0] / CARD_SCALE, CARD_MM[1] / CARD_SCALE)
    return choose_window(scene.view, focus, least, 0.7 * scene.view.pitch_mm, last)


def draw_picture(
    speaker: Speaker, number: int, moment: Moment, scene: Scene, frame: Window, *, raised: bool = True
) -> Picture:
    """Show one move in a window of one's choice. What it moves is drawn on top, unless it is not `raised`."""
    move = moment.done.move
    bands = scene.bands(frame, touched_bands(moment.done), raised=raised)
    marks: list[Mark] = [*scene.pegs(frame, named_pegs(move)), *bands]
    marks += _arrows(scene, moment, frame)
    marks += _letter_badges(bands)
    marks += fasteners_of(scene, moment.done)
    tall_mm = _TURN_TALL_MM if isinstance(move, Turn) else CARD_MM[1]
    return Picture(
        title=speaker.phrasebook.say("picture-step", n=number),
        text=f"{_picture_text(speaker, moment)} {view_text(speaker, scene, frame)}",
        window=frame,
        marks=tuple(marks),
        scale=min(CARD_SCALE, CARD_MM[0] / frame.width_mm, tall_mm / frame.height_mm),
    )


def touched_bands(done: AppliedMove) -> set[int]:
    """Return the bands that a move lays or moves."""
    found = set()
    for event in done.events:
        match event:
            case Laid():
                found.add(event.band)
            case Drawn():
                found |= {event.bight.band, *(hung.band for hung in event.slid)}
            case Moved() | Lifted():
                found.add(event.bight.band)
            case _:
                pass
    return found


# --- parts ----------------------------------------------------------------------------------------------


def focus_of(scene: Scene, done: AppliedMove) -> list[Spot]:
    """Return the spots a picture of the move must show."""
    move = done.move
    holders: tuple[str, ...] = named_pegs(move)
    if isinstance(move, Knot | Clip):
        holders = next((e.holders for e in done.events if isinstance(e, Fastened)), holders)
    elif isinstance(move, Put):
        holders = (*holders, scene.positions.ends.get(move.end, ""))
    elif isinstance(move, Extend | Bind):
        holders = (*holders, *(h for h in scene.state.stacks if "." in h))
        holders += tuple(scene.positions.ends.get(h.partition(".")[0], "") for h in holders if "." in h)
    place = scene.spot_of if isinstance(move, Knot | Clip | Extend) else scene.place
    spots = [spot for spot in map(place, filter(None, holders)) if spot is not None]
    if spots:
        return spots
    return _near_end(scene)


def _near_end(scene: Scene) -> list[Spot]:
    """Return the pegs across the near end of the loom; of a wide one only the nearest."""
    all_pegs = [scene.view.spot(at) for at in scene.view.board.pegs]
    nearest = min(all_pegs, key=lambda s: (s[1], s[0]))
    across = [spot for spot in all_pegs if spot[1] - nearest[1] < 0.75 * scene.view.pitch_mm]
    wide = max(x for x, _ in across) - min(x for x, _ in across)
    return across if wide <= _END_MM else [nearest]


def _letter_badges(bands: list[BandMark]) -> list[Mark]:
    """Put the colour letter on what is highlighted, once for each band."""
    spots: dict[int, tuple[Spot, str]] = {}
    for mark in bands:
        if mark.highlighted:
            spots[mark.band] = (middle_of(mark.outlines[-1]), mark.letter)
    return [BadgeMark(x_mm=s[0], y_mm=s[1], text=letter, r_mm=1.9) for s, letter in spots.values()]


def fasteners_of(scene: Scene, done: AppliedMove) -> list[Mark]:
    """Return the clips or knots that a move puts in, and the cord that a knot ties."""
    r = scene.look.base_mm + 2.5
    found: list[Mark] = []
    for event in done.events:
        if isinstance(event, Fastened):
            spots = [spot for spot in map(scene.spot_of, event.holders) if spot is not None]
            kind: Literal["clip", "knot"] = "clip" if event.kind == "clip" else "knot"
            if kind == "knot" and len(spots) > 1:  # one cord through them all, tied where it ends
                found.append(HookMark(spots=tuple(spots), thick_mm=0.9))
            elif spots:  # one clip: the other ends are brought to it
                found += [
                    arrow
                    for spot in spots[:-1]
                    if (arrow := _bring_arrow(scene, spot, spots[-1])) is not None
                ]
            found += [FastenerMark(x_mm=x, y_mm=y, r_mm=r, kind=kind) for x, y in spots[-1:]]
    return found


def _bring_arrow(scene: Scene, a: Spot, b: Spot) -> ArrowMark | None:
    """Return an arrow from an end towards the place where it is fastened; short, where that is far away."""
    length = math.hypot(b[0] - a[0], b[1] - a[1])
    clear = scene.look.base_mm + 1.0
    long = min(length - clear - scene.look.base_mm - 3.5, 14.0)
    if long < 3.0:
        return None
    u = ((b[0] - a[0]) / length, (b[1] - a[1]) / length)
    start = (a[0] + u[0] * clear, a[1] + u[1] * clear)
    end = (start[0] + u[0] * long, start[1] + u[1] * long)
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    return ArrowMark(start=start, bend=middle, end=end, act="move")


def _arrows(scene: Scene, moment: Moment, frame: Window) -> list[Mark]:
    move = moment.done.move
    view = scene.view
    match move:
        case Place() if len(move.over) == 2:
            return _placing_arrow(scene, move.over[0], move.over[1])
        case Hook() | Slide():
            return [bowed_arrow(view, move.source, move.target, "hook")]
        case Transfer():
            return [bowed_arrow(view, move.source, move.target, "move")]
        case Lift(target=str(peg)):
            return [bowed_arrow(view, move.at, peg, "lift")]
        case Lift():
            return _lifting_arrows(scene, moment)
        case Turn():
            w, h = frame.width_mm, frame.height_mm
            x, y = (frame.left_mm + frame.right_mm) / 2, (frame.near_mm + frame.far_mm) / 2
            return [
                ArrowMark(
                    start=(x + s * 0.40 * w, y - s * 0.34 * h),
                    bend=(x + s * 0.53 * w, y),
                    end=(x + s * 0.40 * w, y + s * 0.34 * h),
                    act="turn",
                )
                for s in (1, -1)
            ]
        case _:
            return []


def _placing_arrow(scene: Scene, a: str, b: str) -> list[Mark]:
    p, q = scene.view.spot(a), scene.view.spot(b)
    length = math.hypot(q[0] - p[0], q[1] - p[1])
    clear = scene.view.board.peg_mm / 2 + 1.4
    if length < 2 * clear + 3:
        return []
    u = ((q[0] - p[0]) / length, (q[1] - p[1]) / length)
    start = (p[0] + u[0] * clear, p[1] + u[1] * clear)
    end = (q[0] - u[0] * clear, q[1] - u[1] * clear)
    return [
        ArrowMark(start=start, bend=((start[0] + end[0]) / 2, (start[1] + end[1]) / 2), end=end, act="place")
    ]


def bowed_arrow(view: View, a: str, b: str, act: str) -> ArrowMark:
    """Return an arrow from peg to peg that bows out to the right of its way."""
    p, q = view.spot(a), view.spot(b)
    dx, dy = q[0] - p[0], q[1] - p[1]
    length = math.hypot(dx, dy)
    out = min(0.5 * length, 12.0) + 4.0
    nx, ny = dy / length, -dx / length
    clear = view.board.peg_mm / 2 + 0.4
    start = (p[0] + nx * clear, p[1] + ny * clear)
    end = (q[0] + nx * clear, q[1] + ny * clear)
    bend = ((p[0] + q[0]) / 2 + nx * out, (p[1] + q[1]) / 2 + ny * out)
    return ArrowMark(start=start, bend=bend, end=end, act=act)  # type: ignore[arg-type]


def _lifting_arrows(scene: Scene, moment: Moment) -> list[Mark]:
    """Return the bent arrows of lifted loops: over the top of the peg, each towards its own band."""
    ways: dict[tuple[int, int], tuple[Spot, Spot]] = {}
    for lifted in moment.done.events:
        if not isinstance(lifted, Lifted):
            continue
        x, y = scene.view.spot(lifted.holder)
        others = [
            scene.place(seat.holder)
            for seat in scene.positions.laid[lifted.bight.band].seats
            if seat.holder != lifted.holder
        ]
        towards = next((o for o in others if o is not None), (x, y + 1.0))
        length = math.hypot(towards[0] - x, towards[1] - y) or 1.0
        u = ((towards[0] - x) / length, (towards[1] - y) / length)
        ways.setdefault((round(u[0] * 4), round(u[1] * 4)), ((x, y), u))
    far = scene.look.base_mm + 3.0
    return [
        ArrowMark(
            start=(x - u[0] * far, y - u[1] * far),
            bend=(x - u[1] * 2.2 * far * side, y + u[0] * 2.2 * far * side),
            end=(x + u[0] * (far + 1.0), y + u[1] * (far + 1.0)),
            act="lift",
        )
        for ((x, y), u), side in zip(ways.values(), (1.0, -1.0, 1.0, -1.0), strict=False)
    ]


def pegs_in_view(speaker: Speaker, scene: Scene, frame: Window) -> str:
    """Name the pegs in a window."""
    return speaker.pegs([mark.at for mark in scene.pegs(frame)])


def view_text(speaker: Speaker, scene: Scene, frame: Window) -> str:
    """Say which pegs the picture shows."""
    return speaker.phrasebook.say("picture-view", pegs=pegs_in_view(speaker, scene, frame))


def _picture_text(speaker: Speaker, moment: Moment) -> str:
    say = speaker.phrasebook.say
    move = moment.done.move
    match move:
        case Place():
            return say(
                "picture-place", band=speaker.band(move.colour), pegs=speaker.phrasebook.both(list(move.over))
            )
        case Wind():
            return say("picture-wind", band=speaker.band(move.colour), peg=move.on)
        case Hook() | Slide() | Transfer():
            return say("picture-hook", source=move.source, target=move.target)
        case Lift(target=str(peg)):
            return say("picture-lift-on", source=move.at, target=peg)
        case Lift():
            return say("picture-lift", peg=move.at)
        case Turn():
            return say("picture-turn")
        case Hang():
            return say("picture-hang", band=speaker.band(move.colour))
        case Bind():
            return say("picture-bind", peg=move.at)
        case Put():
            return say("picture-put", where=speaker.places(list(move.on)))
        case Extend():
            return say("picture-extend")
        case Knot() | Clip():
            return say("picture-fasten", where=speaker.places(move.at))
