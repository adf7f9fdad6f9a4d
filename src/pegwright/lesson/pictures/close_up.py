"""The stack on one peg from the side: which loop is which, and which one the step is about."""

from __future__ import annotations

from pegwright.lesson.pictures.step_picture import CARD_MM, Moment
from pegwright.lesson.say.say import Speaker
from pegwright.lesson.scene.picture import (
    ArrowMark,
    BadgeMark,
    BarMark,
    HookMark,
    LabelMark,
    Mark,
    Picture,
    PostMark,
    Window,
)
from pegwright.loom import HOOK, Bight, Drawn, Fastened, Lifted, Moved, Stack, State
from pegwright.pattern import Bind, Clip, Hang, Hook, Knot, Lift, Place, Put, Slide, Transfer, Wind

THICK_MM, GAP_MM, WIDTH_MM = 2.6, 3.3, 11.0
HOOK_MM = 1.0


def draw_close_up(speaker: Speaker, moment: Moment) -> Picture | None:
    """Show from the side the stack that the move is about, if there is more than one loop to tell apart."""
    move = moment.done.move
    holder, state, marked = _stack_to_show(moment)
    stack = state.stack(holder)
    if len(stack) < 2 and not isinstance(move, Hang):
        return None
    high = max(16.0, 2.0 + GAP_MM * len(stack) + 2.0)
    marks: list[Mark] = [PostMark(x_mm=0.0, y_mm=0.0, w_mm=5.0, h_mm=high, open_side=holder != HOOK)]
    bars, said = _stack_bars(moment, stack, marked)
    hook = _hook_marks(moment, stack, marked, high)
    behind, front = _split_levels(moment, stack)
    marks += [*(bars[i] for i in behind), *hook[:1], *(bars[i] for i in front), *hook[1:]]
    for level, letter in enumerate(said):
        y = _height(level)
        marks.append(BadgeMark(x_mm=-WIDTH_MM / 2 - 2.6, y_mm=y, text=letter, r_mm=1.7))
        if stack[level] in marked:
            marks.append(ArrowMark(start=(13.0, y), bend=(10.0, y), end=(6.6, y), act="hook"))
    if hook and isinstance(move, Hook | Slide):  # where the hook goes in: at the top of the open side
        down = (3.4, high + 6.6), (3.4, high + 1.0)
        marks.append(ArrowMark(start=down[0], bend=(3.4, high + 3.8), end=down[1], act="hook"))
    name = holder if holder != HOOK else speaker.phrasebook.say("label-hook")
    marks.append(LabelMark(x_mm=0.0, y_mm=-2.4, text=name, size_mm=3.0, bold=True))
    frame = Window(left_mm=-11.0, near_mm=-5.0, right_mm=14.0, far_mm=high + (8.5 if hook else 1.5))
    if holder == HOOK:
        text = speaker.phrasebook.say("picture-closeup-hook", loops=speaker.phrasebook.both(said))
    else:
        text = speaker.phrasebook.say("picture-closeup", peg=holder, loops=speaker.phrasebook.both(said))
    numbers = [str(level) for level, bight in enumerate(stack, start=1) if bight in marked]
    if numbers:
        sentence = "picture-new" if isinstance(move, Place | Wind | Hang) else "picture-taken"
        text = f"{text} {speaker.phrasebook.say(sentence, loops=speaker.phrasebook.both(numbers))}"
    return Picture(
        title=speaker.phrasebook.say("label-closeup"),
        text=text,
        window=frame,
        marks=tuple(marks),
        scale=min(1.0, CARD_MM[1] / frame.height_mm),
    )


def _height(level: int) -> float:
    return 2.0 + GAP_MM * level + THICK_MM / 2


def _stack_bars(moment: Moment, stack: Stack, marked: tuple[Bight, ...]) -> tuple[list[BarMark], list[str]]:
    """Return each loop from the side, the lowest first, and its letter."""
    bars, said = [], []
    for level, bight in enumerate(stack):
        letter, _, tint, hatch = moment.after.look.of(bight.band)
        bars.append(
            BarMark(
                x_mm=0.0,
                y_mm=_height(level),
                w_mm=WIDTH_MM,
                h_mm=THICK_MM,
                letter=letter,
                tint=tint,
                hatch=hatch,
                highlighted=bight in marked,
            )
        )
        said.append(letter)
    return bars, said


def _split_levels(moment: Moment, stack: Stack) -> tuple[list[int], list[int]]:
    """Part the levels into those behind the hook, which it does not go through, and those before it."""
    skipped = {bight for e in moment.done.events if isinstance(e, Drawn) for bight in e.skipped}
    if isinstance(moment.done.move, Hook | Slide):  # outside them all
        skipped |= {bight for e in moment.done.events if isinstance(e, Lifted) for bight in e.over}
    behind = [i for i, bight in enumerate(stack) if bight in skipped]
    return behind, [i for i in range(len(stack)) if i not in behind]


def _hook_marks(moment: Moment, stack: Stack, marked: tuple[Bight, ...], high: float) -> list[Mark]:
    """Show where the hook goes in: down the channel inside the loops above, its tip round the loop it takes.

    The shaft goes before the bars in front of it, the tip after them.
    """
    if not isinstance(moment.done.move, Hook | Slide | Transfer | Lift) or not marked:
        return []
    low = min(stack.index(bight) for bight in marked)
    top, bottom = _height(low) + THICK_MM / 2, _height(low) - THICK_MM / 2 - 0.6
    shaft = HookMark(spots=((0.0, high + 7.0), (0.0, top - 1.0)), thick_mm=HOOK_MM)
    tip = HookMark(spots=((0.0, top), (0.0, bottom), (2.0, bottom), (2.0, bottom + 1.5)), thick_mm=HOOK_MM)
    return [shaft, tip]


def _stack_to_show(moment: Moment) -> tuple[str, State, tuple[Bight, ...]]:
    """Return which holder to show from the side, when, and the loops the move is about."""
    move = moment.done.move
    before, after = moment.before.state, moment.after.state
    moved = (e.bight for e in moment.done.events if isinstance(e, Drawn | Moved | Lifted))
    bights = tuple(dict.fromkeys(moved))
    match move:
        case Hook() | Slide() | Transfer():
            return move.source, before, bights
        case Lift():
            return move.at, before, bights
        case Bind():
            return move.at, before, ()
        case Put():
            each = len(bights) // len(move.on)
            return move.on[0], after, after.stack(move.on[0])[-each:]
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
