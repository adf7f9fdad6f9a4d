"""The closure from near by: the clip or the cord, and every loop that it goes through."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from pegwright.lesson.pictures.stack_chart import LoopRun, runs_of
from pegwright.lesson.pictures.step_picture import Moment
from pegwright.lesson.say.say import Speaker
from pegwright.lesson.scene.outline import Disc, FlatStrand
from pegwright.lesson.scene.picture import (
    BadgeMark,
    BandMark,
    FastenerMark,
    HookMark,
    LabelMark,
    Mark,
    Picture,
    Spot,
    Window,
)
from pegwright.lesson.scene.scene import Look
from pegwright.loom import Fastened
from pegwright.pattern import is_address

_SINGLY_AT_MOST = 10
_SHOWN_AT_MOST = 14
_LONG_MM, _ROUND_MM, _THICK_MM = 9.0, 1.5, 1.3
_APART_MM = 5.4


class _Hung(NamedTuple):
    """A loop, or several alike, on the fastener: where they come from, their letter, how many they are."""

    holder: str
    letter: str
    times: int


def draw_closure(speaker: Speaker, moment: Moment) -> Picture | None:
    """Show the clip or the cord with the loops that it goes through; None where the move fastens nothing.

    Up to ten loops are shown one by one, more of them in runs of one colour.
    """
    fastened = next((e for e in moment.done.events if isinstance(e, Fastened)), None)
    if fastened is None or not fastened.caught:
        return None
    hung = _hung_loops(moment, fastened)
    shown = (
        hung if len(hung) <= _SHOWN_AT_MOST else [*hung[: _SHOWN_AT_MOST // 2], *hung[-_SHOWN_AT_MOST // 2 :]]
    )
    look = moment.before.look
    if fastened.kind == "clip" and len(shown) <= _SHOWN_AT_MOST:
        marks, frame = _on_a_clip(look, shown)
    else:
        marks, frame = _on_a_cord(look, shown, left_out=len(shown) < len(hung))
    say = speaker.phrasebook.say
    told = [say("chart-run", n=count, letter=letter) for letter, count in _totals(hung)]
    name = "clip" if fastened.kind == "clip" else "cord"
    return Picture(
        title=say(f"label-closure-{name}"),
        text=say(f"picture-closure-{name}", loops=speaker.phrasebook.both(told), n=len(fastened.caught)),
        window=frame,
        marks=tuple(marks),
        scale=min(1.0, 50.0 / frame.height_mm, 110.0 / frame.width_mm),
    )


def _hung_loops(moment: Moment, fastened: Fastened) -> list[_Hung]:
    """Return what hangs on the fastener, holder by holder, the lowest loop of each first."""
    found = []
    start = 0
    for holder, count in zip(fastened.holders, fastened.counts, strict=True):
        stack = fastened.caught[start : start + count][::-1]
        start += count
        runs = runs_of(moment.before.look, stack)
        if len(fastened.caught) <= _SINGLY_AT_MOST:
            runs = tuple(LoopRun(run.letter, 1) for run in runs for _ in range(run.times))
        found += [_Hung(holder, run.letter, run.times) for run in runs]
    return found


def _totals(hung: Sequence[_Hung]) -> list[tuple[str, int]]:
    letters = dict.fromkeys(each.letter for each in hung)
    return [(letter, sum(each.times for each in hung if each.letter == letter)) for letter in letters]


def _loop(look: Look, each: _Hung, top: Spot, foot: Spot) -> list[Mark]:
    """Draw a loop from where it goes round the fastener to its far end, with its letter."""
    _, tint, hatch = look.colours.get(each.letter, ("", "#b9b4a8", 0))
    line = FlatStrand((Disc(*top, _ROUND_MM), Disc(*foot, _ROUND_MM))).outline
    marks: list[Mark] = [
        BandMark(
            band=1,
            letter=each.letter,
            tint=tint,
            hatch=hatch,
            outlines=(line,),
            thick_mm=_THICK_MM,
            highlighted=True,
        ),
        BadgeMark(x_mm=foot[0], y_mm=foot[1], text=each.letter, r_mm=1.9),
    ]
    if each.times > 1:
        away = math.hypot(foot[0] - top[0], foot[1] - top[1]) or 1.0
        x, y = foot[0] + 4.4 * (foot[0] - top[0]) / away, foot[1] + 4.4 * (foot[1] - top[1]) / away
        marks.append(LabelMark(x_mm=x, y_mm=y, text=f"×{each.times}", size_mm=2.4))
    return marks


def _on_a_clip(look: Look, hung: Sequence[_Hung]) -> tuple[list[Mark], Window]:
    """Hang loops on the lower half of an open ring, its gap to the right."""
    ring = max(7.0, 1.4 * len(hung))
    spread = min(160.0, 360.0 / math.tau * _APART_MM * (len(hung) - 1) / (ring + _LONG_MM))
    marks: list[Mark] = []
    out = ring + _LONG_MM
    for i, each in enumerate(hung):
        turn = math.radians(265.0 + spread * (i / max(1, len(hung) - 1) - 0.5))
        u = (math.cos(turn), math.sin(turn))
        inner = ring - 2.6
        marks += _loop(look, each, (u[0] * inner, u[1] * inner), (u[0] * out, u[1] * out))
    marks.append(FastenerMark(x_mm=0.0, y_mm=0.0, r_mm=ring, kind="clip"))
    wide = out + 4.0 + (3.0 if any(each.times > 1 for each in hung) else 0.0)
    return marks, Window(left_mm=-wide, near_mm=-wide, right_mm=wide, far_mm=ring + 2.5)


def _on_a_cord(look: Look, hung: Sequence[_Hung], left_out: bool) -> tuple[list[Mark], Window]:
    """Hang loops on a straight cord in their order, peg by peg, its ends tied."""
    marks: list[Mark] = []
    x, last = 0.0, ""
    half = len(hung) // 2
    for i, each in enumerate(hung):
        if left_out and i == half:
            marks.append(LabelMark(x_mm=x, y_mm=-4.0, text="…", size_mm=4.0, bold=True))
            x += _APART_MM
        if each.holder != last:
            x += 2.0 if last else 0.0
            if is_address(each.holder):
                marks.append(LabelMark(x_mm=x, y_mm=-16.0, text=each.holder, size_mm=2.4, bold=True))
        last = each.holder
        marks += _loop(look, each, (x, 1.2), (x, -_LONG_MM))
        x += _APART_MM
    right = x - _APART_MM
    marks.insert(0, HookMark(spots=((-6.0, 1.6), (right + 8.0, 1.6)), thick_mm=0.9))
    marks.append(FastenerMark(x_mm=right + 8.0, y_mm=1.6, r_mm=3.2, kind="knot"))
    return marks, Window(left_mm=-8.0, near_mm=-18.5, right_mm=right + 13.0, far_mm=6.5)
