"""The pictures of one move, of many rounds, and of the bare loom."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Literal, NamedTuple

from pegwright.lesson.outline import middle
from pegwright.lesson.picture import (
    ArrowMark,
    BadgeMark,
    BandMark,
    BarMark,
    FastenerMark,
    LabelMark,
    Mark,
    Picture,
    PostMark,
    Spot,
    Window,
)
from pegwright.lesson.rounds import pegs_of
from pegwright.lesson.say import Speaker
from pegwright.lesson.scene import Scene
from pegwright.lesson.view import View, holds, pitch_mm, strips, window
from pegwright.loom import HOOK, Bight, Done, Drawn, Fastened, Laid, Lifted, Moved, State
from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    Place,
    Slide,
    Transfer,
    Turn,
    Wind,
)

CARD_MM = (56.0, 62.0)
CARD_SCALE = 1.25
STRIP_MM = 122.0
STRIP_WIDE_MM = 112.0
BARE_SCALE = 0.8
_NUMBERS_AT_MOST = 150
_FAR_APART_MM = 70.0


class Moment(NamedTuple):
    """One move in the history: what was done, the scene before and after it."""

    done: Done
    before: Scene
    after: Scene


def step_pictures(speaker: Speaker, number: int, moment: Moment, last: Window | None) -> tuple[Picture, ...]:
    """Show one move: where the bands lie after it (before it, for a fastener), what is new strong.

    A fastener that joins places far apart is shown at each of them.
    """
    move = moment.done.doing.move
    scene = moment.before if isinstance(move, Knot | Clip) else moment.after
    focus = _focus(scene, moment.done)
    far = max(max(s[i] for s in focus) - min(s[i] for s in focus) for i in (0, 1))
    spots = [[spot] for spot in focus] if 1 < len(focus) < 4 and far > _FAR_APART_MM else [focus]
    return tuple(_picture(speaker, number, moment, scene, window_of(scene, each, last)) for each in spots)


def window_of(scene: Scene, focus: list[Spot], last: Window | None) -> Window:
    """Choose the window for a card."""
    least = (CARD_MM[0] / CARD_SCALE, CARD_MM[1] / CARD_SCALE)
    return window(scene.view, focus, least, 0.7 * pitch_mm(scene.view.board), last)


def _picture(speaker: Speaker, number: int, moment: Moment, scene: Scene, frame: Window) -> Picture:
    move = moment.done.doing.move
    bands = scene.bands(frame, touched(moment.done))
    marks: list[Mark] = [*scene.pegs(frame, pegs_of(move)), *bands]
    marks += _arrows(scene, moment, frame)
    marks += _letters(bands)
    marks += _fasteners(scene, moment.done)
    return Picture(
        title=speaker.words.say("picture-step", n=number),
        text=f"{_text(speaker, moment)} {_in_view(speaker, scene, frame)}",
        window=frame,
        marks=tuple(marks),
        scale=min(CARD_SCALE, CARD_MM[0] / frame.width_mm, CARD_MM[1] / frame.height_mm),
    )


def loom_pictures(speaker: Speaker, scene: Scene) -> tuple[Picture, ...]:
    """Show the whole loom in strips that fit a page, with row letters."""
    pegs = [scene.view.spot(at) for at in scene.view.board.pegs]
    frames = strips(scene.view, STRIP_MM / BARE_SCALE, STRIP_WIDE_MM / BARE_SCALE, pegs, 20.0)
    found = []
    for k, frame in enumerate(frames, start=1):
        title = speaker.words.say("picture-loom")
        if len(frames) > 1:
            title = speaker.words.say("picture-part", n=k, count=len(frames))
        found.append(
            Picture(
                title=title,
                text=speaker.words.say("picture-loom-text", pegs=_span(speaker, scene, frame)),
                window=frame,
                marks=tuple(scene.pegs(frame)),
                scale=min(BARE_SCALE, STRIP_WIDE_MM / frame.width_mm),
            )
        )
    return tuple(found)


def rounds_pictures(speaker: Speaker, scene: Scene, rounds: Sequence[Sequence[Done]]) -> tuple[Picture, ...]:
    """Show all rounds at once on the loom as it is after them: bands strong, the order in numbers.

    Rounds in one and the same place have no order to show.
    """
    placing = all(isinstance(done.doing.move, Place | Wind) for each in rounds for done in each)
    still = len({tuple(pegs_of(done.doing.move) for done in each) for each in rounds}) == 1
    strong = {band for each in rounds for done in each for band in touched(done)} if placing else set()
    focus = [scene.view.spot(peg) for each in rounds for done in each for peg in pegs_of(done.doing.move)]
    room = 0.8 * pitch_mm(scene.view.board)
    cut = strips(scene.view, STRIP_MM, STRIP_WIDE_MM, focus, room)
    frames = [frame for frame in cut if any(holds(frame, spot) for spot in focus)]
    found = []
    for k, frame in enumerate(frames, start=1):
        bands = scene.bands(frame, strong)
        marks: list[Mark] = [*scene.pegs(frame), *bands]
        if not still and sum(len(each) for each in rounds) <= _NUMBERS_AT_MOST:
            for number, each in enumerate(rounds, start=1):
                marks += _numbered(scene, bands, number, each)
        title = speaker.words.say("label-after" if still else "label-order")
        if len(frames) > 1:
            title = speaker.words.say("picture-part", n=k, count=len(frames))
        text = speaker.words.say(f"picture-again-{'still' if still else 'place' if placing else 'work'}")
        found.append(
            Picture(
                title=title,
                text=f"{text} {_in_view(speaker, scene, frame)}",
                window=frame,
                marks=tuple(
                    m for m in marks if not isinstance(m, BadgeMark) or holds(frame, (m.x_mm, m.y_mm))
                ),
                scale=min(1.0, STRIP_WIDE_MM / frame.width_mm),
            )
        )
    return tuple(found)


def closeup(speaker: Speaker, moment: Moment) -> Picture | None:
    """Show from the side the stack that the move is about, if there is more than one loop to tell apart."""
    move = moment.done.doing.move
    holder, state, marked = _stack(moment)
    stack = state.stack(holder)
    if len(stack) < 2 and not isinstance(move, Hang):
        return None
    thick, gap = 2.6, 3.3
    high = max(16.0, 2.0 + gap * len(stack) + 2.0)
    width = scene_width = 11.0
    marks: list[Mark] = [PostMark(x_mm=0.0, y_mm=0.0, w_mm=5.0, h_mm=high)]
    said = []
    for level, bight in enumerate(stack):
        letter, _, tint, hatch = moment.after.look.of(bight.band)
        y = 2.0 + gap * level + thick / 2
        marks.append(
            BarMark(
                x_mm=0.0,
                y_mm=y,
                w_mm=width,
                h_mm=thick,
                letter=letter,
                tint=tint,
                hatch=hatch,
                strong=bight in marked,
            )
        )
        marks.append(BadgeMark(x_mm=-scene_width / 2 - 2.6, y_mm=y, text=letter, r_mm=1.7))
        if bight in marked:
            marks.append(ArrowMark(start=(13.0, y), bend=(10.0, y), end=(6.6, y), act="hook"))
        said.append(letter)
    name = holder if holder != HOOK else ""
    if name:
        marks.append(LabelMark(x_mm=0.0, y_mm=-2.4, text=name, size_mm=3.0, bold=True))
    frame = Window(left_mm=-11.0, near_mm=-5.0, right_mm=14.0, far_mm=high + 1.5)
    text = speaker.words.say("picture-closeup", peg=name or "–", loops=speaker.words.both(said))
    numbers = [str(level) for level, bight in enumerate(stack, start=1) if bight in marked]
    if numbers:
        told = "picture-new" if isinstance(move, Place | Wind | Hang) else "picture-taken"
        text = f"{text} {speaker.words.say(told, loops=speaker.words.both(numbers))}"
    return Picture(
        title=speaker.words.say("label-closeup"),
        text=text,
        window=frame,
        marks=tuple(marks),
        scale=min(1.0, CARD_MM[1] / frame.height_mm),
    )


def touched(done: Done) -> set[int]:
    """Return the bands that a move lays or moves."""
    found = set()
    for event in done.events:
        match event:
            case Laid():
                found.add(event.band)
            case Drawn() | Moved() | Lifted():
                found.add(event.bight.band)
            case _:
                pass
    return found


# --- parts ----------------------------------------------------------------------------------------------


def _focus(scene: Scene, done: Done) -> list[Spot]:
    """Return the spots a picture of the move must show."""
    move = done.doing.move
    holders: tuple[str, ...] = pegs_of(move)
    if isinstance(move, Knot | Clip):
        holders = next((e.holders for e in done.events if isinstance(e, Fastened)), holders)
    elif isinstance(move, Extend | Bind):
        holders = (*holders, *(h for h in scene.state.stacks if "." in h))
        holders += tuple(scene.lie.ends.get(h.partition(".")[0], "") for h in holders if "." in h)
    spots = [spot for spot in map(scene.place, filter(None, holders)) if spot is not None]
    if spots:
        return spots
    nearest = min((scene.view.spot(at) for at in scene.view.board.pegs), key=lambda s: (s[1], s[0]))
    return [nearest]


def _stack(moment: Moment) -> tuple[str, State, tuple[Bight, ...]]:
    """Return which holder to show from the side, when, and the loops the move is about."""
    move = moment.done.doing.move
    before, after = moment.before.state, moment.after.state
    bights = tuple(e.bight for e in moment.done.events if isinstance(e, Drawn | Moved | Lifted))
    match move:
        case Hook() | Slide() | Transfer():
            return move.source, before, bights
        case Lift():
            return move.at, before, bights
        case Bind():
            return move.at, before, ()
        case Place():
            peg = max(move.over, key=lambda at: len(after.stack(at)))
            return peg, after, after.stack(peg)[-1:]
        case Wind():
            return move.on, after, after.stack(move.on)[-move.turns :]
        case Hang():
            return HOOK, after, after.stack(HOOK)[-move.turns :]
        case Knot() | Clip():
            holder = next((e.holders[0] for e in moment.done.events if isinstance(e, Fastened)), "")
            caught = next((e.caught for e in moment.done.events if isinstance(e, Fastened)), ())
            return (holder, before, caught) if move.catch is not None else ("", before, ())
        case _:
            return "", before, ()


def _letters(bands: list[BandMark]) -> list[Mark]:
    """Put the colour letter on what is strong, once for each band."""
    spots: dict[int, tuple[Spot, str]] = {}
    for mark in bands:
        if mark.strong:
            spots[mark.band] = (middle(mark.outlines[-1]), mark.letter)
    return [BadgeMark(x_mm=s[0], y_mm=s[1], text=letter, r_mm=1.9) for s, letter in spots.values()]


def _fasteners(scene: Scene, done: Done) -> list[Mark]:
    r = scene.look.base_mm + 2.5
    found: list[Mark] = []
    for event in done.events:
        if isinstance(event, Fastened):
            spots = [spot for spot in map(scene.place, event.holders) if spot is not None]
            kind: Literal["clip", "knot"] = "clip" if event.kind == "clip" else "knot"
            found += [FastenerMark(x_mm=x, y_mm=y, r_mm=r, kind=kind) for x, y in spots]
    return found


def _arrows(scene: Scene, moment: Moment, frame: Window) -> list[Mark]:
    move = moment.done.doing.move
    view = scene.view
    match move:
        case Place() if len(move.over) == 2:
            return _between(scene, move.over[0], move.over[1])
        case Hook() | Slide():
            return [_bow(view, move.source, move.target, "hook")]
        case Transfer():
            return [_bow(view, move.source, move.target, "move")]
        case Lift():
            return [_over(scene, moment)]
        case Turn():
            w, h = frame.width_mm, frame.height_mm
            x, y = (frame.left_mm + frame.right_mm) / 2, (frame.near_mm + frame.far_mm) / 2
            return [
                ArrowMark(
                    start=(x + s * 0.30 * w, y - s * 0.34 * h),
                    bend=(x + s * 0.60 * w, y),
                    end=(x + s * 0.30 * w, y + s * 0.34 * h),
                    act="turn",
                )
                for s in (1, -1)
            ]
        case _:
            return []


def _between(scene: Scene, a: str, b: str) -> list[Mark]:
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


def _bow(view: View, a: str, b: str, act: str) -> ArrowMark:
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


def _over(scene: Scene, moment: Moment) -> ArrowMark:
    """Return the bent arrow of a lifted loop: from outside the peg over its top to the inside."""
    lifted = next(e for e in moment.done.events if isinstance(e, Lifted))
    x, y = scene.view.spot(lifted.holder)
    others = [
        scene.place(seat.holder)
        for seat in scene.lie.laid[lifted.bight.band].seats
        if seat.holder != lifted.holder
    ]
    towards = next((o for o in others if o is not None), (x, y + 1.0))
    length = math.hypot(towards[0] - x, towards[1] - y) or 1.0
    u = ((towards[0] - x) / length, (towards[1] - y) / length)
    far = scene.look.base_mm + 3.0
    return ArrowMark(
        start=(x - u[0] * far, y - u[1] * far),
        bend=(x - u[1] * 2.2 * far, y + u[0] * 2.2 * far),
        end=(x + u[0] * (far + 1.0), y + u[1] * (far + 1.0)),
        act="lift",
    )


def _numbered(scene: Scene, bands: list[BandMark], number: int, each: Sequence[Done]) -> list[Mark]:
    """Mark a round with its number: on its band, on its arrow, or where it begins."""
    move = each[0].doing.move
    if len(each) == 1 and isinstance(move, Hook | Slide | Transfer):
        arrow = _bow(scene.view, move.source, move.target, "hook")
        x = (arrow.start[0] + 2 * arrow.bend[0] + arrow.end[0]) / 4
        y = (arrow.start[1] + 2 * arrow.bend[1] + arrow.end[1]) / 4
        return [arrow, _number(number, (x, y))]
    first = next((p for p in (pegs_of(done.doing.move) for done in each) if len(p) > 1), ())
    pegs = [scene.view.spot(peg) for peg in first or pegs_of(move)]
    if len(pegs) > 1:
        return [_number(number, (sum(p[0] for p in pegs) / len(pegs), sum(p[1] for p in pegs) / len(pegs)))]
    own = touched(each[0])
    mark = next((m for m in reversed(bands) if m.band in own), None)
    return [] if mark is None else [_number(number, middle(mark.outlines[0]))]


def _number(number: int, spot: Spot) -> BadgeMark:
    return BadgeMark(x_mm=spot[0], y_mm=spot[1], text=str(number), r_mm=2.1, role="number")


def _span(speaker: Speaker, scene: Scene, frame: Window) -> str:
    return speaker.pegs([mark.at for mark in scene.pegs(frame)])


def _in_view(speaker: Speaker, scene: Scene, frame: Window) -> str:
    return speaker.words.say("picture-view", pegs=_span(speaker, scene, frame))


def _text(speaker: Speaker, moment: Moment) -> str:
    say = speaker.words.say
    move = moment.done.doing.move
    match move:
        case Place():
            return say(
                "picture-place", band=speaker.band(move.colour), pegs=speaker.words.both(list(move.over))
            )
        case Wind():
            return say("picture-wind", band=speaker.band(move.colour), peg=move.on)
        case Hook() | Slide() | Transfer():
            return say("picture-hook", source=move.source, target=move.target)
        case Lift():
            return say("picture-lift", peg=move.at)
        case Turn():
            return say("picture-turn")
        case Hang():
            return say("picture-hang", band=speaker.band(move.colour))
        case Bind():
            return say("picture-bind", peg=move.at)
        case Extend():
            return say("picture-extend")
        case Knot() | Clip():
            return say("picture-fasten", where=speaker.places(move.at))
