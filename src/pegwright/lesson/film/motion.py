"""A move in motion: keyframes of strands round discs, and what is seen at each moment of it.

Time runs from 0 to 1 over a move. Until `SWAP` the rest of the loom is seen as it was, then as it is. Between
two keys discs go straight, slowly at first and at the end. The picture is the plan; how deep the hook goes is
told by the stack from the side.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Iterator, Sequence
from itertools import pairwise

import msgspec

from pegwright.lesson.scene.outline import Disc, FlatStrand, middle_of
from pegwright.lesson.scene.picture import (
    Arc,
    ArrowMark,
    BadgeMark,
    BandMark,
    BarMark,
    FastenerMark,
    HookMark,
    Mark,
    PegMark,
    Picture,
    Spot,
)

TAKEN, SWAP, LAID = 0.2, 0.7, 0.86
"""When the hook or hand has come, when the loom is shown as it will be, when all lies where it belongs."""
HAND_MM = (9.0, -15.0)
SHAFT_MM = (12.0, -22.0)
_HOOK_MM = 1.5


class Keyframe(msgspec.Struct, frozen=True):
    """Where a strand lies at a moment of the move."""

    share: float
    strand: FlatStrand


class Mover(msgspec.Struct, frozen=True, kw_only=True):
    """A strand of a band that moves; `mark` says how it looks. It is seen from its first key to `gone`.

    Before `over` it lies under all else that moves.
    """

    mark: BandMark
    keys: tuple[Keyframe, ...]
    gone: float = 2.0
    over: float = 0.0


class Motion(msgspec.Struct, frozen=True, kw_only=True):
    """One move in motion.

    `before` and `after` are the marks that stand still until and from `SWAP`. `hook` is the way of the
    hook's tip, `shaft` where its handle is from there, in mm. Fasteners come in from the hand. If `turned`,
    all that stands still turns half round.
    """

    before: tuple[Mark, ...]
    after: tuple[Mark, ...]
    movers: tuple[Mover, ...] = ()
    hook: tuple[tuple[float, Spot], ...] = ()
    shaft: Spot = SHAFT_MM
    fasteners: tuple[FastenerMark, ...] = ()
    turned: bool = False


def still_marks_at(motion: Motion, share: float) -> tuple[Mark, ...]:
    """Return what stands still at a moment; while the loom is turned, it stands at that angle."""
    if motion.turned:
        degrees = 180.0 * _ease((share - TAKEN) / (LAID - TAKEN))
        return tuple(turn_mark(mark, degrees) for mark in motion.before)
    return motion.before if share < SWAP else motion.after


def moving_marks_at(motion: Motion, share: float) -> tuple[Mark, ...]:
    """Return what moves, at a moment: bands with their letters, fasteners, the hook over all."""
    marks: list[Mark] = []
    letters: dict[int, BadgeMark] = {}
    for mover in sorted(motion.movers, key=lambda mover: share >= mover.over):
        if not mover.keys[0].share <= share < mover.gone:
            continue
        outline = _strand_between(mover.keys, share).outline
        marks.append(msgspec.structs.replace(mover.mark, outlines=(outline,)))
        if mover.mark.highlighted:
            x, y = middle_of(outline)
            letters[mover.mark.band] = BadgeMark(x_mm=x, y_mm=y, text=mover.mark.letter, r_mm=1.9)
    for fastener in motion.fasteners:
        away = 1.0 - _ease((share - TAKEN) / (SWAP - TAKEN))
        x, y = fastener.x_mm + away * HAND_MM[0], fastener.y_mm + away * HAND_MM[1]
        marks.append(msgspec.structs.replace(fastener, x_mm=x, y_mm=y))
    return (*marks, *letters.values(), *_hook_mark_at(motion, share))


def stack_at(side: Picture, share: float, *, taken: bool) -> Picture:
    """Return the stack from the side at a moment: what is `taken` rises out of it, what is new comes down.

    The loops that are highlighted in the picture move, each with its letter; the hook's tip goes with them,
    and the loops above sink when there is room. The arrows are seen until it begins.
    """
    begun = _ease((share - TAKEN) / (LAID - TAKEN)) if taken else 1.0 - _ease((share - 0.1) / (SWAP - 0.1))
    if begun <= 0.0:
        return side if taken else msgspec.structs.replace(side, marks=_without_arrows(side.marks))
    far = side.window.far_mm
    moving = [m.y_mm for m in side.marks if isinstance(m, BarMark) and m.highlighted]
    if not moving:
        return side
    rise = begun * (far + 4.0 - min(moving))
    sink = _ease((share - SWAP) / (1.0 - SWAP)) * (_step_mm(side) * len(moving)) if taken else 0.0
    marks: list[Mark] = []
    for mark in _without_arrows(side.marks):
        match mark:
            case BarMark() | BadgeMark():
                moves = mark.highlighted if isinstance(mark, BarMark) else mark.y_mm in moving
                up = rise if moves else -sink if mark.y_mm > min(moving) else 0.0
                marks.append(msgspec.structs.replace(mark, y_mm=mark.y_mm + up))
            case HookMark():
                spots = tuple((x, y + rise) for x, y in mark.spots)
                marks.append(msgspec.structs.replace(mark, spots=spots))
            case _:
                marks.append(mark)
    return msgspec.structs.replace(side, marks=tuple(marks))


def _without_arrows(marks: tuple[Mark, ...]) -> tuple[Mark, ...]:
    return tuple(mark for mark in marks if not isinstance(mark, ArrowMark))


def _step_mm(side: Picture) -> float:
    """Return how much higher each loop of a stack lies than the one below it."""
    heights = sorted(m.y_mm for m in side.marks if isinstance(m, BarMark))
    return min((b - a for a, b in pairwise(heights)), default=0.0)


def turn_mark(mark: Mark, degrees: float) -> Mark:
    """Return a peg or band with the loom turned about its middle, anticlockwise."""
    a = math.radians(degrees)

    def turn(x: float, y: float) -> Spot:
        return x * math.cos(a) - y * math.sin(a), x * math.sin(a) + y * math.cos(a)

    match mark:
        case PegMark():
            x, y = turn(mark.x_mm, mark.y_mm)
            return msgspec.structs.replace(mark, x_mm=x, y_mm=y, channel_deg=mark.channel_deg + degrees)
        case BandMark():
            outlines = tuple(
                tuple(
                    Arc(*turn(arc.x_mm, arc.y_mm), arc.r_mm, arc.start_deg + degrees, arc.sweep_deg)
                    for arc in outline
                )
                for outline in mark.outlines
            )
            return msgspec.structs.replace(mark, outlines=outlines)
        case _:
            return mark


def _hook_mark_at(motion: Motion, share: float) -> Iterator[HookMark]:
    if not motion.hook:
        return
    (x, y), (dx, dy) = _spot_at(motion.hook, share), motion.shaft
    long = math.hypot(dx, dy)
    ux, uy = dx / long, dy / long
    barb = (x + 1.7 * ux - 1.6 * uy, y + 1.7 * uy + 1.6 * ux)
    yield HookMark(spots=((x + dx, y + dy), (x, y), barb), thick_mm=_HOOK_MM)


def _ease(share: float) -> float:
    share = min(1.0, max(0.0, share))
    return share * share * (3 - 2 * share)


def _strand_between(keys: Sequence[Keyframe], share: float) -> FlatStrand:
    i = bisect_right([key.share for key in keys], share)
    if i == 0 or i == len(keys):
        return keys[max(0, i - 1)].strand
    a, b = keys[i - 1], keys[i]
    if len(a.strand.discs) != len(b.strand.discs):
        return a.strand
    at = _ease((share - a.share) / (b.share - a.share or 1.0))
    discs = tuple(
        Disc(lerp(p.x_mm, q.x_mm, at), lerp(p.y_mm, q.y_mm, at), lerp(p.r_mm, q.r_mm, at), p.sense)
        for p, q in zip(a.strand.discs, b.strand.discs, strict=True)
    )
    return FlatStrand(discs, a.strand.along)


def _spot_at(way: Sequence[tuple[float, Spot]], share: float) -> Spot:
    i = bisect_right([at for at, _ in way], share)
    if i == 0 or i == len(way):
        return way[max(0, i - 1)][1]
    (s, p), (t, q) = way[i - 1], way[i]
    at = _ease((share - s) / (t - s or 1.0))
    return lerp(p[0], q[0], at), lerp(p[1], q[1], at)


def lerp(a: float, b: float, share: float) -> float:
    """Return what lies between two values, so much of the way."""
    return a + (b - a) * share
