"""Single changes that may make a piece hold, those nearest to the cause first."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import msgspec

from pegwright.finding import phrase
from pegwright.loom import (
    START,
    Bight,
    Board,
    Drawn,
    Event,
    Fastened,
    History,
    Laid,
    Lifted,
    Moved,
    State,
    end_holder,
    print_move,
)
from pegwright.pattern import (
    Bind,
    Clip,
    Expansion,
    Extend,
    Hook,
    Knot,
    Lift,
    Move,
    Pattern,
    Place,
    Put,
    Repeat,
    Slide,
    Transfer,
    Use,
    Wind,
)
from pegwright.planner.regularity import find_irregularities
from pegwright.planner.step_lists import (
    StepEdit,
    StepList,
    change_step,
    put_in,
    step_lists,
    swap_steps,
    take_out,
)

__all__ = ["step_edits"]

_NEAR = 1.6  # times the least gap between pegs: how far off a mistaken peg can be
_MOST_IRREGULAR = 120
_MOST_ENDS = 8


class _Scene(NamedTuple):
    """What changes are sought in. `roots` are the bands that start the fall."""

    pattern: Pattern
    history: History
    roots: frozenset[int]
    homes: dict[Bight, tuple[str, ...]]
    first: dict[str, int]  # for each path the place of its first move among all of the pattern, from 0
    made: dict[str, int]  # for each path the place of its first move in the history
    refused: frozenset[str]

    def number(self, path: str) -> int:
        """Return the number of a step's first move, as the maker counts."""
        return self.first.get(path, 0) + 1


def step_edits(
    pattern: Pattern, expansion: Expansion, history: History, roots: frozenset[int]
) -> list[StepEdit]:
    """Return single changes to the steps, the likeliest to mend the piece first."""
    first: dict[str, int] = {}
    for at, located in enumerate(expansion.moves):
        first.setdefault(located.path, at)
    made: dict[str, int] = {}
    for at, done in enumerate(history.moves):
        made.setdefault(done.path, at)
    refused = frozenset(f.place.path for f in history.findings if f.severity == "error")
    scene = _Scene(pattern, history, roots, _homes_of(history), first, made, refused)
    found = [*_closings(scene)]
    for steps in step_lists(pattern):
        found += _irregular(scene, steps)
        for at, move in steps.moves():
            found += _changes(scene, steps, at, move)
    unique: dict[str, StepEdit] = {}
    for edit in sorted(found, key=lambda one: one.doubt):
        unique.setdefault(msgspec.json.encode(edit.patch).decode(), edit)
    return list(unique.values())


def _homes_of(history: History) -> dict[Bight, tuple[str, ...]]:
    return {
        seat.bight: tuple(s.holder for s in event.seats if s.holder != seat.holder)
        for event in history.events
        if isinstance(event, Laid)
        for seat in event.seats
    }


# --- closing -------------------------------------------------------------------------------------------


def _closings(scene: _Scene) -> Iterator[StepEdit]:
    """Yield ways to close a piece without a fastener, where it was worked last."""
    final = scene.history.final
    if final.fasteners:
        return
    end, pegs = len(scene.pattern.steps), scene.history.board.pegs
    free_ends = sorted({holder.rpartition(".")[0] for holder in final.stacks if "." in holder})
    for name in free_ends:
        yield _close(end, 0.0, Clip(at=(name,)))
    worked = [e.target for e in scene.history.events if isinstance(e, Drawn | Moved) and e.target in pegs]
    worked += [e.holder for e in scene.history.events if isinstance(e, Lifted)]
    for doubt, peg in enumerate(dict.fromkeys(reversed(worked))):
        if final.stack(peg) and doubt < _MOST_ENDS:
            yield _close(end, doubt / 10, Clip(at=(peg,)))
            colour = scene.history.colours[final.stack(peg)[0].band - 1]
            yield _close(end, 0.05 + doubt / 10, Bind(colour=colour, at=peg), Clip(at=("end",)))
    holding = tuple(peg for peg in pegs if final.stack(peg))
    if 1 < len(holding) <= _MOST_ENDS:
        yield _close(end, 1.0, Knot(at=holding))


def _close(end: int, doubt: float, *moves: Move) -> StepEdit:
    said = ", ".join(print_move(move) for move in moves)
    return StepEdit(phrase("mend-close", moves=said), put_in("/steps", end, *moves), doubt)


# --- what breaks regularity -----------------------------------------------------------------------------


def _irregular(scene: _Scene, steps: StepList) -> Iterator[StepEdit]:
    """Yield changes that restore the regularity of runs of plain moves."""
    run: list[Move] = []
    places: list[int] = []
    for at, step in enumerate((*steps.steps, None)):
        if step is None or hasattr(step, "steps") or step.__class__.__name__ == "Use":
            if len(run) > 3:
                yield from _irregular_run(scene, steps, run, places)
            run, places = [], []
        else:
            run.append(step)  # type: ignore[arg-type]
            places.append(at)


def _irregular_run(scene: _Scene, steps: StepList, run: list[Move], places: list[int]) -> Iterator[StepEdit]:
    for rank, one in enumerate(find_irregularities(run)[:_MOST_IRREGULAR]):
        at = places[one.at] if one.at < len(places) else places[-1] + 1
        doubt = 0.2 + rank / 200 - (0.1 if f"{steps.path}/{at}" in scene.refused else 0)
        match one.kind:
            case "change":
                assert one.move is not None
                yield _change(scene, steps, at, one.move, doubt)
            case "put-in":
                assert one.move is not None
                yield _put_in(scene, steps, at, one.move, doubt)
            case "take-out":
                yield _take_out(scene, steps, at, doubt)
            case _:
                yield _swap(scene, steps, at, doubt)


def _change(scene: _Scene, steps: StepList, at: int, move: Move, doubt: float) -> StepEdit:
    step = scene.number(f"{steps.path}/{at}")
    label = phrase("mend-change", step=step, move=print_move(move))
    return StepEdit(label, change_step(steps.path, at, move), doubt)


def _put_in(scene: _Scene, steps: StepList, at: int, move: Move, doubt: float) -> StepEdit:
    before = scene.number(f"{steps.path}/{at - 1}") if at else 0
    label = phrase("mend-put-in", step=before, move=print_move(move))
    return StepEdit(label, put_in(steps.path, at, move), doubt)


def _take_out(scene: _Scene, steps: StepList, at: int, doubt: float) -> StepEdit:
    step = steps.steps[at]
    label = phrase("mend-take-out", step=scene.number(f"{steps.path}/{at}"), move=print_move(step))  # type: ignore[arg-type]
    return StepEdit(label, take_out(steps.path, at), doubt)


def _swap(scene: _Scene, steps: StepList, at: int, doubt: float) -> StepEdit:
    first = scene.number(f"{steps.path}/{at}")
    label = phrase("mend-swap", first=first, second=first + 1)
    return StepEdit(label, swap_steps(steps.path, at, steps.steps), doubt)


# --- move by move --------------------------------------------------------------------------------------


def _changes(scene: _Scene, steps: StepList, at: int, move: Move) -> Iterator[StepEdit]:
    path = f"{steps.path}/{at}"
    place = scene.made.get(path)
    events = scene.history.moves[place].events if place is not None else ()
    before = scene.history.before(place) if place is not None else State()
    near = path in scene.refused or not scene.roots.isdisjoint(_bands_in(events))
    doubt = 1.0 if near else 3.0
    board = scene.history.board
    if isinstance(move, Hook | Slide) and move.through is not None:
        deep = msgspec.structs.replace(move, through=None)
        label = phrase("mend-through-all", step=scene.number(path), peg=move.source)
        yield StepEdit(label, change_step(steps.path, at, deep), 0.1)
    if path in scene.refused and isinstance(move, Extend | Clip | Put):
        yield from _missing_ends(scene, steps, at, move)
        if at + 1 < len(steps.steps) and isinstance(steps.steps[at + 1], Bind):
            yield _swap(scene, steps, at, 0.1)
    if isinstance(move, Clip | Knot):
        yield from _fastener_changes(scene, steps, at, move, before)
        if at + 1 < len(steps.steps) and not isinstance(steps.steps[at + 1], Repeat | Use):
            yield _swap(scene, steps, at, 0.3)  # what closes the piece comes last
    if isinstance(move, Place) and len(move.over) == 2:
        twisted = msgspec.structs.replace(move, twists=() if any(move.twists) else (1,))
        name = "mend-untwist" if any(move.twists) else "mend-twist"
        label = phrase(name, step=scene.number(path), peg=move.over[0], other=move.over[1])
        first = place is not None and before.bands == 0
        yield StepEdit(label, change_step(steps.path, at, twisted), doubt - (0.2 if first else 0))
    for other in _other_moves(board, move, before, events, scene.homes):
        yield _change(scene, steps, at, other, doubt + 0.2)
    if isinstance(move, Hook | Lift | Transfer | Slide):
        yield _take_out(scene, steps, at, doubt + 0.4)
        if near and at + 1 < len(steps.steps) and isinstance(steps.steps[at + 1], Hook | Lift | Transfer):
            yield _swap(scene, steps, at, doubt + 0.3)
        yield from _put_in_working(scene, steps, at, before, doubt + 0.5)
        source = getattr(move, "source", None)
        if source is not None and any(isinstance(e, Drawn) and not e.through for e in events):
            colour = scene.history.colours[before.stack(source)[0].band - 1] if before.stack(source) else "A"
            cap = Wind(colour=colour, on=source)
            label = phrase("mend-cap", step=scene.number(path), peg=source)
            yield StepEdit(label, put_in(steps.path, at, cap), doubt + 0.6)
    elif isinstance(move, Place | Wind) and near:
        yield _take_out(scene, steps, at, doubt + 1.5)


def _bands_in(events: tuple[Event, ...]) -> set[int]:
    bands: set[int] = set()
    for event in events:
        match event:
            case Laid():
                bands.add(event.band)
            case Drawn():
                bands.update(b.band for b in (event.bight, *event.through, *event.skipped))
            case Lifted():
                bands.update(b.band for b in (event.bight, *event.over))
            case Moved():
                bands.add(event.bight.band)
            case Fastened():
                bands.update(b.band for b in event.caught)
            case _:
                pass
    return bands


def _missing_ends(scene: _Scene, steps: StepList, at: int, move: Extend | Clip | Put) -> Iterator[StepEdit]:
    """Yield last bands that make the free end a move asks for, at the pegs that were worked last."""
    history = scene.history
    pegs, final = history.board.pegs, history.final
    named = move.at if isinstance(move, Clip) else (move.end,)
    worked = [e.target for e in history.events if isinstance(e, Drawn | Moved) and e.target in pegs]
    last = [peg for peg in dict.fromkeys(reversed(worked)) if final.stack(peg)]
    for end in named:
        if end in pegs or end == START or end_holder(final, end) is not None:
            continue
        for more, peg in enumerate(last[:_MOST_ENDS]):
            bind = Bind(colour=history.colours[final.stack(peg)[0].band - 1], at=peg, end=end)
            yield _put_in(scene, steps, at, bind, 0.15 + more / 10)


def _fastener_changes(
    scene: _Scene, steps: StepList, at: int, move: Clip | Knot, before: State
) -> Iterator[StepEdit]:
    step = scene.number(f"{steps.path}/{at}")
    if move.catch is not None:
        whole = msgspec.structs.replace(move, catch=None)
        yield StepEdit(phrase("mend-catch-all", step=step), change_step(steps.path, at, whole), 0.1)
    taken = set(move.at)
    for peg in scene.history.board.pegs:
        loops = before.stack(peg)
        if loops and peg not in taken:
            more = msgspec.structs.replace(move, at=(*move.at, peg))
            label = phrase("mend-catch-also", step=step, peg=peg)
            rooted = any(loop.band in scene.roots for loop in loops)
            yield StepEdit(label, change_step(steps.path, at, more), 1.1 if rooted else 2.5)


def _other_moves(
    board: Board, move: Move, before: State, events: tuple[Event, ...], homes: dict[Bight, tuple[str, ...]]
) -> Iterator[Move]:
    """Yield the moves that were likely meant instead: another loop, another peg."""
    replace = msgspec.structs.replace
    if isinstance(move, Hook | Slide):
        stack = before.stack(move.source)
        at = move.loop - 1 if move.loop > 0 else len(stack) + move.loop
        for loop in sorted(range(len(stack)), key=lambda one: abs(one - at)):
            if loop != at:
                yield replace(move, loop=loop + 1)
        wanted = [peg for e in events if isinstance(e, Drawn) for peg in homes.get(e.bight, ())]
        for peg in dict.fromkeys((*wanted, *_beside(board, move.target))):
            if peg not in (move.source, move.target) and peg in board.pegs:
                yield replace(move, target=peg)
        for peg in _beside(board, move.source):
            if before.stack(peg) and peg != move.target:
                yield replace(move, source=peg)
    elif isinstance(move, Lift):
        stack = before.stack(move.at)
        at = move.loop - 1 if move.loop > 0 else len(stack) + move.loop
        for loop in range(max(0, len(stack) - 1)):
            if loop != at:
                yield replace(move, loop=loop + 1)
        for peg in _beside(board, move.at):
            if before.stack(peg):
                yield replace(move, at=peg)
    elif isinstance(move, Transfer):
        for peg in _beside(board, move.target):
            if peg != move.source:
                yield replace(move, target=peg)
    elif isinstance(move, Put):
        for number, named in enumerate(move.on):
            for peg in _beside(board, named):
                if peg not in move.on:
                    yield replace(move, on=(*move.on[:number], peg, *move.on[number + 1 :]))
    elif isinstance(move, Place):
        for end, named in enumerate(move.over):
            for peg in _beside(board, named):
                if peg not in move.over:
                    yield replace(move, over=(*move.over[:end], peg, *move.over[end + 1 :]))
    elif isinstance(move, Bind):
        for peg in _beside(board, move.at):
            if before.stack(peg):
                yield replace(move, at=peg)


def _put_in_working(
    scene: _Scene, steps: StepList, at: int, before: State, doubt: float
) -> Iterator[StepEdit]:
    """Yield edits that work a loop before this move, of a band that starts the fall and is unworked."""
    for peg in scene.history.board.pegs:
        stack = before.stack(peg)
        for index, bight in enumerate(stack):
            others = scene.homes.get(bight, ())
            if bight.band not in scene.roots or index == len(stack) - 1:
                continue
            for other in others[:1]:
                if other in scene.history.board.pegs:
                    yield _put_in(scene, steps, at, Hook(source=peg, target=other, loop=index + 1), doubt)
            if any(isinstance(step, Lift) for step in steps.steps):
                yield _put_in(scene, steps, at, Lift(at=peg, loop=index + 1), doubt)


def _beside(board: Board, peg: str) -> list[str]:
    """Return the pegs that a peg can be mistaken for: its neighbours, nearest first."""
    if peg not in board.pegs:
        return []
    here = board.pegs[peg]
    reach_mm = 40.0
    around = [
        (board.distance_mm(peg, other.at), other.at)
        for other in board.within(
            (here.x_mm - reach_mm, here.y_mm - reach_mm), (here.x_mm + reach_mm, here.y_mm + reach_mm)
        )
        if other.at != peg
    ]
    least = min((far for far, _ in around), default=0.0)
    return [other for far, other in sorted(around) if far <= least * _NEAR]
