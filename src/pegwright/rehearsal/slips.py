"""The slips a maker plausibly makes at every step, as values: what is done in place of what was said."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice, takewhile
from typing import NamedTuple

from msgspec.structs import replace

from pegwright.loom import Drawn, Effect, History, Stack, State, apply_move
from pegwright.pattern import (
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
    with_holders,
)
from pegwright.rehearsal.peg_neighbours import PegNeighbours, find_peg_neighbours

__all__ = ["SLIP_KINDS", "Slip", "find_slips"]

SLIP_KINDS: dict[str, str] = {
    "loop-above": "the loop above is taken",
    "loop-below": "the loop below is taken",
    "too-shallow": "the hook goes through too few of the loops above",
    "outside": "the loop is pulled up outside all the loops above",
    "wrong-peg": "the loop or the band goes to a neighbouring peg",
    "wrong-start": "the hook takes the loop from a neighbouring peg",
    "mirrored-peg": "the peg on the other side is taken",
    "step-skipped": "the step is left out",
    "step-doubled": "the step is done twice",
    "steps-swapped": "the step is done after the next one",
    "wrong-order": "the loops of a peg are worked in the opposite order",
    "wrong-colour": "a band of a neighbouring colour is taken",
    "cap-forgotten": "the cap is left out",
    "cap-wound-once": "the cap is wound once only",
    "twist-forgotten": "the half-twist is left out",
    "twisted-by-accident": "a flat band gets a half-twist",
    "one-of-several": "one loop too few is taken",
    "two-at-once": "one loop too many is taken",
    "neighbour-snagged": "the hook catches the top loop of a neighbouring peg and takes it along",
    "loop-dropped": "the lifted loop drops off the hook on its way to the other peg",
    "charm-not-slid": "what hangs on the hook is not slid on",
    "miscounted": "one band too many or too few is added",
    "not-all-caught": "one loop too few is caught at the finish",
    "caught-too-many": "the last band goes through one loop too many",
    "one-loop-caught": "the clip goes through one loop",
    "end-slips-off": "an end slips off before it is caught",
    "wrong-end": "the pegs are worked in the opposite order, from the last to the first",
    "loom-turned": "the loom is turned without need, and every later move is made at the opposite peg",
    "loom-not-turned": "the loom is not turned, and every later move is made at the opposite peg",
}


class Slip(NamedTuple):
    """At the move of index `at` (from 0, of those made), `moves` are done in place of `replaces` moves.

    With `about`, every later move is made on the pegs opposite to those named.
    """

    at: int
    kind: str
    moves: tuple[Move, ...]
    replaces: int = 1
    about: bool = False


class _StepContext(NamedTuple):
    neighbours: PegNeighbours
    before: State
    colours: tuple[str, ...]  # neighbouring colours of band

    def nearby_pegs(self, peg: str) -> tuple[str, ...]:
        return self.neighbours.near.get(peg, ())

    def mirrored_peg(self, peg: str, about: str) -> tuple[str, ...]:
        found = self.neighbours.mirror_peg(peg, about)
        return (found,) if found else ()

    def stack(self, holder: str) -> Stack:
        return self.before.stack(holder)


def find_slips(history: History) -> tuple[Slip, ...]:
    """Return every slip of every step, in the order of the steps; none of them twice."""
    nearby = find_peg_neighbours(history.board)
    moves = [done.move for done in history.moves]
    found: list[Slip] = []
    for at, move in enumerate(moves):
        context = _StepContext(nearby, history.before(at), _neighbouring_colours(moves, at))
        seen: set[tuple[tuple[Move, ...], int, bool]] = {((move,), 1, False)}
        for slip in _slips_of_step(history, moves, at, context):
            what = (slip.moves, slip.replaces, slip.about)
            if what not in seen:
                seen.add(what)
                found.append(slip)
    return tuple(found)


def _slips_of_step(history: History, moves: list[Move], at: int, context: _StepContext) -> Iterator[Slip]:
    move = moves[at]
    if isinstance(move, Turn):
        yield Slip(at, "loom-not-turned", (), about=True)
        return
    for kind, wrong in _replacement_moves(move, context):
        yield Slip(at, kind, wrong)
    yield Slip(at, "cap-forgotten" if isinstance(move, Wind) else "step-skipped", ())
    yield Slip(at, "step-doubled", (move, move))
    if at + 1 < len(moves) and moves[at + 1] != move:
        yield Slip(at, "steps-swapped", (moves[at + 1], move), replaces=2)
    run = _reversed_hooks(history, at)
    if run:
        yield Slip(at, "wrong-order", run, replaces=len(run))
    if isinstance(move, Hook | Slide | Lift | Transfer) and at == _first_worked(moves):
        back = _worked_backwards(moves, at)
        if back:
            yield Slip(at, "wrong-end", back, replaces=len(back))
        opposite = context.neighbours.opposite
        if not any(isinstance(one, Turn) for one in moves):
            about = with_holders(move, lambda holder: opposite.get(holder, holder))
            yield Slip(at, "loom-turned", (about,), about=True)


def _replacement_moves(move: Move, context: _StepContext) -> Iterator[tuple[str, tuple[Move, ...]]]:
    match move:
        case Place():
            yield from _place_slips(move, context)
        case Wind():
            if move.turns > 1:
                yield "cap-wound-once", (replace(move, turns=1),)
            for peg in context.nearby_pegs(move.on):
                yield "wrong-peg", (replace(move, on=peg),)
        case Hang():
            if move.turns > 1:
                yield "cap-wound-once", (replace(move, turns=1),)
        case Hook() | Slide():
            yield from _hook_slips(move, context)
        case Lift():
            yield from _lift_slips(move, context)
        case Transfer():
            if move.together > 1:
                yield "one-of-several", (replace(move, together=move.together - 1),)
            if move.together < len(context.stack(move.source)):
                yield "two-at-once", (replace(move, together=move.together + 1),)
            for peg in context.nearby_pegs(move.target):
                if peg != move.source:
                    yield "wrong-peg", (replace(move, target=peg),)
        case Bind():
            yield from _bind_slips(move, context)
        case Put():
            for number, peg in enumerate(move.on):
                for other in context.nearby_pegs(peg):
                    if other not in move.on:
                        yield (
                            "wrong-peg",
                            (replace(move, on=(*move.on[:number], other, *move.on[number + 1 :])),),
                        )
        case Extend():
            fewer = (replace(move, bands=move.bands - 1),) if move.bands > 1 else ()
            yield "miscounted", fewer
            yield "miscounted", (move, replace(move, bands=1))
        case Clip() | Knot():
            yield from _fasten_slips(move, context)
        case Turn():
            pass
    if isinstance(move, Place | Wind | Hang | Bind | Extend):
        for letter in context.colours:
            yield "wrong-colour", (replace(move, colour=letter),)


def _place_slips(move: Place, context: _StepContext) -> Iterator[tuple[str, tuple[Move, ...]]]:
    for i, peg in enumerate(move.over):
        for other in context.nearby_pegs(peg):
            if other not in move.over:
                yield "wrong-peg", (replace(move, over=(*move.over[:i], other, *move.over[i + 1 :])),)
    first, *rest = move.over
    across = [context.mirrored_peg(peg, first) or (peg,) for peg in rest]
    yield "mirrored-peg", (replace(move, over=(first, *(peg for (peg,) in across))),)
    if any(move.twists):
        yield "twist-forgotten", (replace(move, twists=()),)
    elif len(move.over) == 2:
        yield "twisted-by-accident", (replace(move, twists=(1,)),)


def _hook_slips(move: Hook | Slide, context: _StepContext) -> Iterator[tuple[str, tuple[Move, ...]]]:
    loops = len(context.stack(move.source))
    together = move.together
    low = move.loop if move.loop > 0 else loops + move.loop + 1
    above = loops - low - together + 1
    if low + together <= loops:
        yield "loop-above", (replace(move, loop=low + 1, through=None),)
    if low > 1:
        yield "loop-below", (replace(move, loop=low - 1, through=None),)
    meant = above if move.through is None else move.through
    for through in range(meant - 1, 0, -1):
        yield "too-shallow", (replace(move, through=through),)
    if meant:
        yield "outside", (replace(move, through=0),)
    for peg in context.nearby_pegs(move.target):
        if peg != move.source:
            yield "wrong-peg", (replace(move, target=peg),)
    for peg in context.mirrored_peg(move.target, move.source):
        yield "mirrored-peg", (replace(move, target=peg),)
    for peg in context.nearby_pegs(move.source):
        if peg != move.target and context.stack(peg):
            yield "wrong-start", (replace(move, source=peg),)
    if isinstance(move, Slide):
        plain = Hook(
            source=move.source,
            target=move.target,
            loop=move.loop,
            through=move.through,
            together=together,
        )
        yield "charm-not-slid", (plain,)
    if together > 1:
        yield "one-of-several", (replace(move, together=together - 1),)
    if above:
        yield "two-at-once", (replace(move, together=together + 1, through=None),)
    snagged = (peg for peg in context.nearby_pegs(move.source) if peg != move.target and context.stack(peg))
    for peg in islice(snagged, 1):
        yield "neighbour-snagged", (Hook(source=peg, target=move.target, loop=-1), move)


def _lift_slips(move: Lift, context: _StepContext) -> Iterator[tuple[str, tuple[Move, ...]]]:
    loops = len(context.stack(move.at))
    low = move.loop if move.loop > 0 else loops + move.loop + 1
    if low + move.together < loops:
        yield "loop-above", (replace(move, loop=low + 1),)
    if low > 1:
        yield "loop-below", (replace(move, loop=low - 1),)
    if move.together > 1:
        yield "one-of-several", (replace(move, together=move.together - 1),)
    if low + move.together < loops:
        yield "two-at-once", (replace(move, together=move.together + 1),)
    for peg in context.nearby_pegs(move.at):
        if len(context.stack(peg)) > 1 and peg != move.target:
            yield "wrong-peg", (replace(move, at=peg),)
    if move.target is not None:
        yield "loop-dropped", (replace(move, target=None),)
        for peg in context.nearby_pegs(move.target):
            if peg != move.at:
                yield "wrong-peg", (replace(move, target=peg),)


def _bind_slips(move: Bind, context: _StepContext) -> Iterator[tuple[str, tuple[Move, ...]]]:
    """The uppermost loop is missed: it stays behind, here said as put on the peg beside."""
    if move.together > 1:
        yield "miscounted", (replace(move, together=move.together - 1),)
    if move.catch is not None:
        if move.catch > 1:
            yield "not-all-caught", (replace(move, catch=move.catch - 1),)
        if move.catch < len(context.stack(move.at)):
            yield "caught-too-many", (replace(move, catch=move.catch + 1),)
        return
    aside = sorted(context.nearby_pegs(move.at), key=lambda peg: bool(context.stack(peg)))
    if aside and len(context.stack(move.at)) > 1:
        yield "not-all-caught", (Transfer(source=move.at, target=aside[0]), move)


def _fasten_slips(move: Clip | Knot, context: _StepContext) -> Iterator[tuple[str, tuple[Move, ...]]]:
    if move.catch is None:
        most = max((len(context.stack(at)) for at in move.at if at[0].isupper()), default=2)
        if most > 2:
            yield "not-all-caught", (replace(move, catch=most - 1),)
        if most > 1:
            yield "one-loop-caught", (replace(move, catch=1),)
    if len(move.at) > 1:
        for holder in move.at:
            yield "end-slips-off", (replace(move, at=tuple(at for at in move.at if at != holder)),)


def _neighbouring_colours(moves: list[Move], at: int) -> tuple[str, ...]:
    """Return the nearest other colours before and after a step: those that lie at hand."""
    mine = getattr(moves[at], "colour", None)
    found = []
    for side in (moves[at + 1 :], moves[:at][::-1]):
        letters = (letter for move in side if (letter := getattr(move, "colour", mine)) != mine)
        found.append(next(letters, None))
    return tuple(dict.fromkeys(letter for letter in found if letter is not None))


def _reversed_hooks(history: History, at: int) -> tuple[Move, ...] | None:
    """Return a run of hooks from one peg that starts here, worked in the opposite order, or None."""
    run = [at]
    source = _hook_source(history, at)
    if source is None or (at and _hook_source(history, at - 1) == source):
        return None
    while _hook_source(history, run[-1] + 1) == source:
        run.append(run[-1] + 1)
    state = history.before(at)
    moves: list[Move] = []
    for i in reversed(run) if len(run) > 1 else ():
        move, event = history.moves[i].move, history.moves[i].events[-1]
        assert isinstance(move, Hook)
        assert isinstance(event, Drawn)
        if event.bight not in state.stack(event.source):
            return None
        turned = replace(move, loop=state.stack(event.source).index(event.bight) + 1, through=None)
        outcome = apply_move(history.board, state, turned)
        if not isinstance(outcome, Effect):
            return None
        state = outcome.state
        moves.append(turned)
    return tuple(moves) or None


def _first_worked(moves: list[Move]) -> int | None:
    works = (at for at, move in enumerate(moves) if isinstance(move, Hook | Slide | Lift | Transfer))
    return next(works, None)


def _worked_backwards(moves: list[Move], at: int) -> tuple[Move, ...]:
    """Return the moves of one kind from here on, worked from three pegs or more, last first; else nothing."""
    kind = type(moves[at])
    run = list(takewhile(lambda move: type(move) is kind, moves[at:]))
    pegs = {getattr(move, "source", getattr(move, "at", "")) for move in run}
    return tuple(reversed(run)) if len(pegs) > 2 else ()


def _hook_source(history: History, at: int) -> str | None:
    if at >= len(history.moves):
        return None
    move = history.moves[at].move
    return move.source if isinstance(move, Hook) and move.together == 1 else None
