"""The keyframes of a move, from the scene before it to the scene after it."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import chain
from typing import Literal

import msgspec

from pegwright.lesson.film.motion import HAND_MM, LAID, SHAFT_MM, SWAP, TAKEN, Keyframe, Motion, Mover, lerp
from pegwright.lesson.pictures.step_picture import Moment, fasteners_of, touched_bands
from pegwright.lesson.scene.outline import Disc, FlatStrand
from pegwright.lesson.scene.picture import BandMark, FastenerMark, HookMark, Mark, Spot, Window
from pegwright.loom import Bight, Drawn, Event, Lifted, Moved
from pegwright.pattern import Turn

BandOrLoop = int | Bight
_OPENED, _CAUGHT = 0.32, 0.42
"""When the loops above are pulled aside, when the loop is on the hook."""
_ARC_MM = 6.0
_LOOP_MM = 1.3
_RING_MM = 4.5
_WIDER_MM = 2.6


def motion_of(moment: Moment, frame: Window, hand: Literal["left", "right"] = "right") -> Motion:
    """Set one move in motion as it is seen in a window; `hand` holds the hook."""
    side = 1.0 if hand == "right" else -1.0
    shaft = (side * SHAFT_MM[0], SHAFT_MM[1])
    scene = moment.before
    if isinstance(moment.done.move, Turn):
        still: tuple[Mark, ...] = (*scene.pegs(frame), *scene.bands(frame))
        return Motion(before=still, after=still, turned=True)
    highlighted = touched_bands(moment.done)
    was = {band: scene.strands(band) for band in highlighted if band <= scene.state.bands}
    now = {band: moment.after.strands(band) for band in highlighted}
    pulled = list(_pulled_aside(moment))
    without = {part for parts in (*was.values(), *now.values()) for part in parts}
    aside = {part for part, _ in pulled} - without
    movers = [
        _make_mover(moment, part, keys, SWAP, highlighted=False) for part, keys in pulled if part in aside
    ]
    for order, band in enumerate(sorted(highlighted)):
        event = _event_of(moment.done.events, band)
        for part, keys, gone in _band_movers(
            event, was.get(band, {}), now[band], (order, len(highlighted)), side
        ):
            mover = _make_mover(moment, part, keys, gone, highlighted=True)
            movers.append(msgspec.structs.replace(mover, over=_seen_over(event, keys)))
    put = fasteners_of(scene, moment.done)
    cords = [mark for mark in put if isinstance(mark, HookMark)]
    return Motion(
        before=(*scene.pegs(frame), *scene.bands(frame, without=without | aside)),
        after=(*moment.after.pegs(frame), *moment.after.bands(frame, without=without), *cords),
        movers=tuple(movers),
        hook=tuple(_hook_way(moment)),
        shaft=shaft,
        fasteners=tuple(mark for mark in put if isinstance(mark, FastenerMark)),
    )


_Keys = tuple[Keyframe, ...]


def _seen_over(event: Drawn | Moved | Lifted | None, keys: _Keys) -> float:
    """Say from when on a part of a band is seen over the loops that it comes through or is lifted over.

    A loop that is drawn out lies under them until it is pulled, and what stays behind of its band always.
    """
    if isinstance(event, Drawn):
        return 2.0 if keys[0].share == 0.0 else 0.0
    return _CAUGHT if isinstance(event, Lifted) else 0.0


def _make_mover(moment: Moment, part: BandOrLoop, keys: _Keys, gone: float, *, highlighted: bool) -> Mover:
    band = part if isinstance(part, int) else part.band
    letter, _, tint, hatch = moment.after.look.of(band)
    thick = moment.after.look.thick_mm
    mark = BandMark(
        band=band, letter=letter, tint=tint, hatch=hatch, outlines=(), thick_mm=thick, highlighted=highlighted
    )
    return Mover(mark=mark, keys=keys, gone=gone)


def _band_movers(
    event: Drawn | Moved | Lifted | None,
    was: dict[BandOrLoop, list[FlatStrand]],
    now: dict[BandOrLoop, list[FlatStrand]],
    turn: tuple[int, int],
    side: float,
) -> Iterator[tuple[BandOrLoop, _Keys, float]]:
    """Yield each strand of a band that the move lays or moves: its keys, and when it is gone."""
    for part in dict.fromkeys(chain(was, now)):
        old, new = was.get(part, []), now.get(part, [])
        for i in range(max(len(old), len(new))):
            if i < len(old) and i < len(new):
                yield part, _morph_keys(event, old[i], new[i]), 2.0
            elif i < len(old):
                yield part, (Keyframe(0.0, old[i]),), SWAP
            elif was:
                yield part, _drawn_keys(new[i]), 2.0
            else:
                yield part, _laid_keys(new[i], i, len(new), turn, side), 2.0


def _event_of(events: tuple[Event, ...], band: int) -> Drawn | Moved | Lifted | None:
    for event in events:
        if isinstance(event, Drawn | Moved | Lifted) and event.bight.band == band:
            return event
    return None


def _morph_keys(event: Drawn | Moved | Lifted | None, old: FlatStrand, new: FlatStrand) -> _Keys:
    """Move a strand that was there from its old place to its new one."""
    if len(old.discs) != len(new.discs):
        return (Keyframe(0.0, old), Keyframe(SWAP, old), Keyframe(SWAP, new))
    keys = [Keyframe(0.0, old), Keyframe(_CAUGHT, old)]
    if isinstance(event, Lifted):
        wide = [
            d._replace(r_mm=d.r_mm + _WIDER_MM) if _distance_mm(d, e) > 0.5 else d
            for d, e in zip(old.discs, new.discs, strict=True)
        ]
        keys.append(Keyframe(0.6, FlatStrand(tuple(wide), old.along)))
    elif isinstance(event, Moved):
        for at in (0.25, 0.5, 0.75):
            discs = tuple(_on_the_way(d, e, at) for d, e in zip(old.discs, new.discs, strict=True))
            keys.append(Keyframe(lerp(_CAUGHT, LAID, at), FlatStrand(discs, old.along)))
    return (*keys, Keyframe(LAID, new))


def _drawn_keys(new: FlatStrand) -> _Keys:
    """Draw a loop out of the peg it was on: its tip stays there, its head is carried over in a bow."""
    tip, head = new.discs[0], new.discs[-1]
    start = tip._replace(r_mm=_LOOP_MM)
    keys = []
    for at in (0.0, 0.25, 0.5, 0.75, 1.0):
        carried = _on_the_way(start, head._replace(r_mm=_LOOP_MM), at)
        keys.append(Keyframe(lerp(_CAUGHT, LAID - 0.08, at), FlatStrand((tip, carried))))
    return (*keys, Keyframe(LAID, new))


def _laid_keys(new: FlatStrand, index: int, count: int, turn: tuple[int, int], side: float) -> _Keys:
    """Lay a fresh strand: a ring comes from the hand and is stretched from peg to peg, in its turn."""
    order, bands = turn
    length = LAID / bands
    begin, end = order * length, (order + 1) * length
    discs = new.discs
    if index:  # a further turn round the peg: pulled out, crossed, laid back over it
        step = (end - begin) * 0.7 / max(1, count - 1)
        start = end - step * (count - index)
        return _wound_keys(new, start, start + step, side)
    ring = Disc(discs[0].x_mm + side * HAND_MM[0], discs[0].y_mm + HAND_MM[1], _RING_MM)
    keys = [Keyframe(begin, FlatStrand((ring,) * len(discs)))]
    first = begin + 0.3 * (end - begin) / (count if len(discs) == 1 else 1)
    keys.append(Keyframe(first, FlatStrand((discs[0],) * len(discs))))
    last = begin + 0.3 * (end - begin) if count > 1 and len(discs) == 1 else end
    for i in range(1, len(discs)):
        reached = (*discs[: i + 1], *(discs[i],) * (len(discs) - i - 1))
        plain = tuple(disc._replace(sense=1) for disc in reached)
        keys.append(Keyframe(lerp(first, last, i / (len(discs) - 1)), FlatStrand(plain)))
    # A half-twist is given when the loop is put on.
    return (*keys, Keyframe(last, new))


def _wound_keys(new: FlatStrand, start: float, end: float, side: float) -> _Keys:
    disc = new.discs[0]
    out = Disc(disc.x_mm + side * 11.0, disc.y_mm - 9.0, 2.6)
    half = (start + end) / 2
    return (
        Keyframe(start, FlatStrand((disc, disc))),
        Keyframe(half, FlatStrand((disc, out))),
        Keyframe(half + 0.001, FlatStrand((disc, out._replace(sense=-1)), along=True)),
        Keyframe(lerp(half, end, 0.5), FlatStrand((disc, out._replace(sense=-1)), along=True)),
        Keyframe(lerp(half, end, 0.5) + 0.001, FlatStrand((disc, out))),
        Keyframe(end, FlatStrand((disc, disc))),
        Keyframe(end, new),
    )


def _on_the_way(a: Disc, b: Disc, share: float) -> Disc:
    """Return a disc on its bowed way to another."""
    dx, dy = b.x_mm - a.x_mm, b.y_mm - a.y_mm
    long = math.hypot(dx, dy) or 1.0
    out = min(_ARC_MM, 0.4 * long) * 4 * share * (1 - share)
    return Disc(
        a.x_mm + dx * share + dy / long * out,
        a.y_mm + dy * share - dx / long * out,
        lerp(a.r_mm, b.r_mm, share),
        a.sense,
    )


def _pulled_aside(moment: Moment) -> Iterator[tuple[BandOrLoop, _Keys]]:
    """Yield the strands, pulled aside, of the loops that a loop is drawn through or lifted over."""
    scene = moment.before
    for event in moment.done.events:
        match event:
            case Drawn():
                holder, loops = event.source, tuple(b for b in event.through if b not in event.slid)
            case Lifted():
                holder, loops = event.holder, event.over
            case _:
                continue
        if holder not in scene.view.board.pegs:
            continue
        x, y = scene.view.spot(holder)
        angle = math.radians(scene.view.channel_deg(holder))
        way = (math.cos(angle), math.sin(angle))
        found: dict[BandOrLoop, list[FlatStrand]] = {}
        for bight in loops:
            parts = scene.strands(bight.band)
            part: BandOrLoop = bight if bight in parts else bight.band
            found[part] = parts[part]
        for part, strands in found.items():
            for strand in strands:
                opened = tuple(
                    d._replace(x_mm=d.x_mm + way[0], y_mm=d.y_mm + way[1], r_mm=d.r_mm + 0.7)
                    if math.hypot(d.x_mm - x, d.y_mm - y) < 0.5
                    else d
                    for d in strand.discs
                )
                yield (
                    part,
                    (
                        Keyframe(0.0, strand),
                        Keyframe(TAKEN, strand),
                        Keyframe(_OPENED, FlatStrand(opened, strand.along)),
                        Keyframe(SWAP - 0.12, FlatStrand(opened, strand.along)),
                        Keyframe(SWAP, strand),
                        Keyframe(2.0, strand),
                    ),
                )


def _hook_way(moment: Moment) -> Iterator[tuple[float, Spot]]:
    """Yield where the hook's tip is: down the channel, out in a bow to the other peg, and away."""
    scene = moment.before
    event = next((e for e in moment.done.events if isinstance(e, Drawn | Moved | Lifted)), None)
    source = "" if event is None else event.holder if isinstance(event, Lifted) else event.source
    if event is None or source not in scene.view.board.pegs or event.bight.band > scene.state.bands:
        return
    x, y = scene.view.spot(source)
    peg = scene.view.board.peg_mm / 2
    angle = math.radians(scene.view.channel_deg(source))
    way = (math.cos(angle), math.sin(angle))
    yield 0.0, (x + 16 * way[0], y + 16 * way[1])
    yield TAKEN, (x + 1.1 * peg * way[0], y + 1.1 * peg * way[1])
    if isinstance(event, Lifted):
        rim = scene.radius(event.bight, source)
        yield _CAUGHT, (x + rim * way[0], y + rim * way[1])
        after = moment.after.strands(event.bight.band)
        part: BandOrLoop = event.bight if event.bight in after else event.bight.band
        discs = [d for strand in after[part] for d in strand.discs]
        end = min(discs, key=lambda d: (d.r_mm > _LOOP_MM + 0.01, math.hypot(d.x_mm - x, d.y_mm - y)))
        onto = next((e.target for e in moment.done.events if isinstance(e, Drawn) and e.lifted), "")
        target = scene.place(onto) or (end.x_mm, end.y_mm)
        yield 0.6, (x + (rim + _WIDER_MM) * way[0], y + (rim + _WIDER_MM) * way[1])
    else:
        yield _CAUGHT, (x + 0.8 * peg * way[0], y + 0.8 * peg * way[1])
        there = scene.place(event.target)
        target = there if there is not None else (x + 16 * way[0], y + 16 * way[1])
        start, goal = Disc(x, y, 1.0), Disc(*target, 1.0)
        for at in (0.25, 0.5, 0.75):
            disc = _on_the_way(start, goal, at)
            yield lerp(_CAUGHT, LAID - 0.08, at), (disc.x_mm, disc.y_mm)
    yield LAID - 0.08, target
    yield 1.0, (target[0] + 16 * way[0], target[1] + 16 * way[1])


def _distance_mm(a: Disc, b: Disc) -> float:
    return math.hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm)
