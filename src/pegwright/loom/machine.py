"""Make one move on a state: the new state and what happened, or a refusal that says why.

The rules are the ones every maker knows; the record (`events`) says exactly which loop went through which.
"""

from __future__ import annotations

from itertools import groupby, pairwise
from typing import Any, NamedTuple

from pegwright.finding import phrase
from pegwright.loom.board import Board, hull, is_inside
from pegwright.loom.events import (
    Bight,
    Drawn,
    Event,
    Fastened,
    Laid,
    Lifted,
    Moved,
    Seat,
    Turned,
)
from pegwright.loom.state import HOOK, START, State, end_holder, first_loop_is_off
from pegwright.loom.transitions import apply_event
from pegwright.pattern import (
    MAX_REACH_MM,
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    Move,
    Place,
    Put,
    Slide,
    Transfer,
    Turn,
    Wind,
)

MAX_LOOPS = 60
"""Loops a holder may carry: several times what a peg takes, so that a stack can be shown to be too high."""


class Effect(NamedTuple):
    """The move was made."""

    state: State
    events: tuple[Event, ...]


class RefusedMove(NamedTuple):
    """The move cannot be made; `code` is a finding's code, `facts` are its facts."""

    code: str
    facts: dict[str, Any]
    peg: str | None = None


class _RefusedMoveError(Exception):
    """Carries a refusal up to `apply`."""

    def __init__(self, code: str, peg: str | None = None, **facts: Any) -> None:
        self.refused = RefusedMove(code, facts if peg is None else {"peg": peg, **facts}, peg)


def apply_move(board: Board, state: State, move: Move) -> Effect | RefusedMove:
    """Make the move, or refuse it with the reason. Never changes `state`."""
    try:
        events = _events(board, state, move)
    except _RefusedMoveError as no:
        return no.refused
    for event in events:
        state = apply_event(state, event)
        for holder in _holders_filled_by(event):
            if len(state.stack(holder)) > MAX_LOOPS:
                return RefusedMove("stack-full", {"peg": holder, "limit": MAX_LOOPS}, holder)
    return Effect(state, events)


def _holders_filled_by(event: Event) -> tuple[str, ...]:
    match event:
        case Laid():
            return tuple(seat.holder for seat in event.seats)
        case Drawn() | Moved():
            return (event.target,)
        case _:
            return ()


def _events(board: Board, state: State, move: Move) -> tuple[Event, ...]:
    match move:
        case Place():
            return (_place(board, state, move),)
        case Wind():
            _require_peg(board, move.on)
            return (_wind(state, move.on, move.turns),)
        case Hang():
            return (_wind(state, HOOK, move.turns),)
        case Turn():
            return (Turned(),)
        case Hook():
            return _hook(board, state, move)
        case Slide():
            return _slide(board, state, move)
        case Lift():
            return _lift(board, state, move)
        case Transfer():
            return _transfer(board, state, move)
        case Bind():
            return _bind(board, state, move)
        case Put():
            return _put(board, state, move)
        case Extend():
            return _extend(state, move)
        case Knot() | Clip():
            return (_fasten(board, state, move),)


# --- bands laid ---------------------------------------------------------------------------------------


def _place(board: Board, state: State, move: Place) -> Laid:
    for peg in move.over:
        _require_peg(board, peg)
    for peg in move.over:
        if move.over.count(peg) > 1:
            raise _RefusedMoveError("peg-twice", peg=peg)
    if move.turns and len(move.turns) != len(move.over):
        raise _RefusedMoveError("turns-mismatch", given=len(move.turns), pegs=len(move.over))
    if move.twists and len(move.twists) != len(move.over) - 1:
        raise _RefusedMoveError("twists-mismatch", given=len(move.twists), pegs=len(move.over))
    turns = move.turns or (1,) * len(move.over)
    twists = move.twists or (0,) * (len(move.over) - 1)
    for peg, other in pairwise((*move.over, move.over[0])):
        _refuse_far(board, peg, other)
    _refuse_enclosed(board, move.over, twists)
    band = state.bands + 1
    seats: list[Seat] = []
    sign = 1
    for i, peg in enumerate(move.over):
        if i and twists[i - 1] % 2:
            sign = -sign
        seats += [Seat(Bight(band, len(seats) + k), peg, sign) for k in range(turns[i])]
    return Laid(band, tuple(seats), twists)


def _refuse_far(board: Board, peg: str, other: str) -> None:
    """No maker stretches a band, or carries a loop, further than the arms reach."""
    if peg in board.pegs and other in board.pegs and board.distance_mm(peg, other) > MAX_REACH_MM:
        gap_mm = board.distance_mm(peg, other)
        raise _RefusedMoveError("out-of-reach", peg=peg, other=other, gap_mm=gap_mm, limit_mm=MAX_REACH_MM)


def _refuse_enclosed(board: Board, over: tuple[str, ...], twists: tuple[int, ...]) -> None:
    """A band closes round every peg inside it; one that is not named would be held without a loop."""
    spots = {peg: (board.pegs[peg].x_mm, board.pegs[peg].y_mm) for peg in over}
    group: list[str] = [over[0]]
    groups = [group]
    for peg, twist in zip(over[1:], twists, strict=True):
        if twist:  # a leg with a half-twist passes between pegs on its own
            groups.append([group[-1], peg])
            group = []
            groups.append(group)
        group.append(peg)
    for members in groups:
        points = [spots[peg] for peg in members]
        if len(points) < 2:
            continue
        edge = {members[i] for i in hull(points)}
        for peg in members:
            if peg not in edge:
                raise _RefusedMoveError("peg-inside-band", peg=peg)
        low = (min(p[0] for p in points) - 1, min(p[1] for p in points) - 1)
        high = (max(p[0] for p in points) + 1, max(p[1] for p in points) + 1)
        for other in board.within(low, high):
            if other.at not in spots and is_inside(points, (other.x_mm, other.y_mm), board.peg_mm / 2):
                raise _RefusedMoveError("peg-enclosed", peg=other.at)


def _wind(state: State, holder: str, turns: int) -> Laid:
    band = state.bands + 1
    return Laid(band, tuple(Seat(Bight(band, k), holder, 1) for k in range(turns)), ())


# --- loops worked -------------------------------------------------------------------------------------


def _hook(board: Board, state: State, move: Hook) -> tuple[Event, ...]:
    source = _require_two_pegs(board, move.source, move.target)
    return _draw_together(state, source, move)


def _draw_together(
    state: State, source: str, move: Hook | Slide, hung: tuple[Bight, ...] = ()
) -> tuple[Event, ...]:
    """Draw one loop or several: the upper one comes off first and ends up underneath.

    So they lie nested, and nothing crosses. What hangs on the shaft is slid on to them all.
    """
    low = _loop_index(state, source, move.loop)
    stack = state.stack(source)
    if low + move.together > len(stack):
        raise _RefusedMoveError("loop-missing", peg=source, loop=move.loop, loops=len(stack))
    above = stack[low + move.together :]
    return tuple(
        event
        for bight in reversed(stack[low : low + move.together])
        for event in _draw(state, bight, above, move, hung)
    )


def _draw(
    state: State, bight: Bight, above: tuple[Bight, ...], move: Hook | Slide, slid: tuple[Bight, ...] = ()
) -> tuple[Event, ...]:
    """Draw a loop up inside the loops above it, or outside them all: then it is lifted over them.

    For the loop lies round its peg and comes off only over the top, so the legs of the loops that its front
    was pulled up outside of end up inside it.
    """
    dragged = state.inside.get(bight, ())
    if above and move.through == 0:
        lifted = Lifted(bight, move.source, above[::-1], dragged)
        return lifted, Drawn(bight, move.source, move.target, slid, slid=slid, lifted=True)
    through, skipped = _split_loops_above(move.source, above, move.through)
    return (Drawn(bight, move.source, move.target, slid + through, skipped, dragged, slid),)


def _slide(board: Board, state: State, move: Slide) -> tuple[Event, ...]:
    source = _require_two_pegs(board, move.source, move.target)
    hung = state.stack(HOOK)
    if not hung:
        raise _RefusedMoveError("hook-empty")
    return _draw_together(state, source, move, hung)


def _split_loops_above(
    peg: str, above: tuple[Bight, ...], through: int | None
) -> tuple[tuple[Bight, ...], ...]:
    """Split the loops above into those passed and those skipped, each top first."""
    top_first = above[::-1]
    if through is None:
        return top_first, ()
    if through > len(top_first):
        raise _RefusedMoveError("not-so-many-above", peg=peg, through=through, above=len(top_first))
    return top_first[:through], top_first[through:]


def _lift(board: Board, state: State, move: Lift) -> tuple[Event, ...]:
    peg = _require_peg(board, move.at)
    low = _loop_index(state, peg, move.loop)
    stack = state.stack(peg)
    if low + move.together > len(stack):
        raise _RefusedMoveError("loop-missing", peg=peg, loop=move.loop, loops=len(stack))
    above = stack[low + move.together :]
    if not above:
        raise _RefusedMoveError("nothing-to-lift-over", peg=peg)
    if move.target is not None:
        _require_two_pegs(board, peg, move.target)
    events: list[Event] = []
    for bight in reversed(stack[low : low + move.together]):
        events.append(Lifted(bight, peg, above[::-1], state.inside.get(bight, ())))
        if move.target is not None:
            events.append(Drawn(bight, peg, move.target, (), lifted=True))
    return tuple(events)


def _transfer(board: Board, state: State, move: Transfer) -> tuple[Event, ...]:
    source = _require_two_pegs(board, move.source, move.target)
    stack = state.stack(source)
    if len(stack) < move.together:
        raise _RefusedMoveError("loop-missing", peg=source, loop=move.together, loops=len(stack))
    return tuple(
        Moved(bight, source, move.target, state.inside.get(bight, ()))
        for bight in stack[-move.together :][::-1]
    )


# --- finishing ----------------------------------------------------------------------------------------


def _bind(board: Board, state: State, move: Bind) -> tuple[Event, ...]:
    peg = _require_peg(board, move.at)
    if not state.stack(peg):
        raise _RefusedMoveError("peg-bare", peg=peg)
    if end_holder(state, move.end) is not None:
        raise _RefusedMoveError("end-taken", end=move.end)
    stack = state.stack(peg)
    kept = 0 if move.catch is None else max(0, len(stack) - move.catch)
    bands = range(state.bands + 1, state.bands + 1 + move.together)
    return _pull_through(bands, peg, f"{move.end}.0", stack[kept:], stack[:kept])


def _put(board: Board, state: State, move: Put) -> tuple[Event, ...]:
    for peg in move.on:
        _require_peg(board, peg)
        if move.on.count(peg) > 1:
            raise _RefusedMoveError("peg-twice", peg=peg)
    for peg, other in pairwise(move.on):
        _refuse_far(board, peg, other)
    holder = end_holder(state, move.end)
    if holder is None:
        raise _RefusedMoveError("end-unknown", end=move.end)
    loops = state.stack(holder)
    each, over = divmod(len(loops), len(move.on))
    if over or not each:
        raise _RefusedMoveError("loops-uneven", end=move.end, loops=len(loops), pegs=len(move.on))
    pegs = [peg for peg in move.on for _ in range(each)]
    inside = state.inside
    pairs = list(zip(loops[::-1], pegs[::-1], strict=True))
    if each == 1 and len(loops) > 1:
        return tuple(Moved(bight, holder, peg, inside.get(bight, ())) for bight, peg in pairs)
    # They slide off the hook's tip: the upper loop comes first and ends up underneath, and all of them are
    # turned over with the hook, so that the whole end turns round and nothing crosses.
    return tuple(Drawn(bight, holder, peg, (), (), inside.get(bight, ())) for bight, peg in pairs)


def _extend(state: State, move: Extend) -> tuple[Event, ...]:
    holder = end_holder(state, move.end)
    if holder is None:
        raise _RefusedMoveError("end-unknown", end=move.end)
    loops = state.stack(holder)
    number = int(holder.rpartition(".")[2])
    events: list[Event] = []
    last = state.bands + move.bands
    for k, first in enumerate(range(state.bands + 1, last + 1, move.together)):
        target = f"{move.end}.{number + 1 + k}"
        bands = range(first, min(first + move.together, last + 1))
        events += _pull_through(bands, holder, target, loops)
        holder = target
        loops = (*(Bight(band, 0) for band in reversed(bands)), *(Bight(band, 1) for band in bands))
    return tuple(events)


def _pull_through(
    bands: range, source: str, target: str, loops: tuple[Bight, ...], left: tuple[Bight, ...] = ()
) -> tuple[Event, ...]:
    """Lay a new band beneath the loops and pull it up through them; both its ends are the new end.

    It goes past those that are `left` below them. Several are pulled through side by side, each nested in the
    next, which lies beneath it.
    """
    ends = [(Bight(band, 0), Bight(band, 1)) for band in bands]
    laid = (
        Laid(one.band, (Seat(one, target, 1), Seat(other, source, 1)), (0,), beneath=True)
        for one, other in ends
    )
    drawn = (Drawn(other, source, target, loops[::-1], left[::-1]) for _, other in ends)
    return (*laid, *drawn)


def _fasten(board: Board, state: State, move: Knot | Clip) -> Fastened:
    caught: list[Bight] = []
    holders: list[str] = []
    counts: list[int] = []
    for at in move.at:
        holder = _find_holder(board, state, at)
        loops = (Bight(1, 0),) if holder == START else state.stack(holder)[::-1]
        if not loops:
            raise _RefusedMoveError("peg-bare", peg=at)
        if holder in holders:
            raise _RefusedMoveError("peg-twice", peg=at)
        holders.append(holder)
        taken = loops if move.catch is None else loops[: move.catch]
        counts.append(len(taken))
        caught += taken
    kind = "clip" if isinstance(move, Clip) else "knot"
    return Fastened(len(state.fasteners) + 1, kind, tuple(holders), tuple(caught), tuple(counts))


# --- names of holders and loops -----------------------------------------------------------------------


def _require_peg(board: Board, name: str) -> str:
    if name not in board.pegs:
        raise _RefusedMoveError("peg-unknown", peg=name, **_peg_ranges(board))
    return name


def _peg_ranges(board: Board) -> dict[str, Any]:
    rows = groupby(board.pegs, key=lambda at: at.rstrip("0123456789"))
    spans = [(row, [int(at[len(row) :]) for at in members]) for row, members in rows]
    pegs = (phrase("span", first=f"{row}{min(n)}", last=f"{row}{max(n)}") for row, n in spans[:6])
    return {"pegs": tuple(pegs), "more": max(0, len(spans) - 6)}


def _find_holder(board: Board, state: State, name: str) -> str:
    if name in board.pegs:
        return name
    if name[0].isupper():
        raise _RefusedMoveError("peg-unknown", peg=name, **_peg_ranges(board))
    if name == START and first_loop_is_off(state):
        return START
    holder = end_holder(state, name)
    if holder is None:
        raise _RefusedMoveError("end-unknown", end=name)
    return holder


def _require_two_pegs(board: Board, source: str, target: str) -> str:
    _require_peg(board, source)
    _require_peg(board, target)
    if source == target:
        raise _RefusedMoveError("same-peg", peg=source)
    _refuse_far(board, source, target)
    return source


def _loop_index(state: State, peg: str, loop: int) -> int:
    count = len(state.stack(peg))
    if not count:
        raise _RefusedMoveError("peg-bare", peg=peg)
    index = loop - 1 if loop > 0 else count + loop
    if loop == 0 or not 0 <= index < count:
        raise _RefusedMoveError("loop-missing", peg=peg, loop=loop, loops=count)
    return index
