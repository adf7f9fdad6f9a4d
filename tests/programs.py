"""Random programs of moves, worked on the machine, closed with fasteners: whatever hands might do."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from typing import NamedTuple

from pegwright.loom import (
    Applied,
    Bight,
    Drawn,
    Event,
    Fastened,
    Laid,
    Lifted,
    Moved,
    apply,
    board,
    parse_move,
    print_move,
)
from pegwright.loom.state import State, first_loop_is_off
from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    PegAt,
    Pegs,
    Place,
    Slide,
    Transfer,
    Turn,
    Wind,
)

KINDS = ("hooks", "shallow", "twists", "lifts", "transfers", "slides", "winds", "ends", "wide", "mixed")


class Program(NamedTuple):
    """A program: its layout, its record, its moves in their one-line form, where its pegs stand (mm)."""

    kind: str
    layout: str
    events: tuple[Event, ...]
    moves: tuple[str, ...]
    spots: dict[str, tuple[float, float]]


def layout(name: str) -> Pegs:
    """Return the pegs of a named layout: `ring 7`, `rows 2 4`, or `shifted 3 2` (every other row by half)."""
    style, first, *rest = name.split()
    n = int(first)
    if style == "ring":
        radius = 8.0 / math.sin(math.pi / n)
        turns = [2 * math.pi * k / n for k in range(n)]
        spots = {f"A{k + 1}": (radius * math.cos(a), radius * math.sin(a)) for k, a in enumerate(turns)}
    else:
        half = 0.5 if style == "shifted" else 0.0
        spots = {
            f"{'ABC'[r]}{k + 1}": (14.0 * r, 16.0 * (k + half * (r % 2)))
            for r in range(n)
            for k in range(int(rest[0]))
        }
    return Pegs(pegs=tuple(PegAt(at=at, x_mm=x, y_mm=y) for at, (x, y) in spots.items()))


def _any_layout(rng: random.Random) -> str:
    style = rng.choice(("rows", "shifted", "ring"))
    if style == "ring":
        return f"ring {rng.randint(6, 9)}"
    rows, length = rng.choice(((2, 3), (2, 4), (3, 3), (3, 2)))
    return f"{style} {rows} {length}"


def worked(name: str, lines: Sequence[str], kind: str = "named") -> Program:
    """Work moves in their one-line form on a named layout; refused ones are an error."""
    loom = board(layout(name))
    state = State()
    events: list[Event] = []
    for line in lines:
        outcome = apply(loom, state, parse_move(line))
        if not isinstance(outcome, Applied):
            raise ValueError(f"{line}: {outcome.code}")
        state = outcome.state
        events += outcome.events
    spots = {at: (p.x_mm, p.y_mm) for at, p in loom.pegs.items()}
    return Program(kind, name, tuple(events), tuple(lines), spots)


def program(seed: int, kind: str = "mixed") -> Program:
    """Make one program of 2–8 bands with the moves that `kind` allows; a seed gives the same one always."""
    rng = random.Random(f"{seed}/{kind}")
    name = _any_layout(rng)
    loom = board(layout(name))
    names = list(loom.pegs)
    state = State()
    events: list[Event] = []
    moves: list[str] = []
    limit = rng.randint(2, 7)

    def do(move: object) -> bool:
        nonlocal state
        outcome = apply(loom, state, move)  # type: ignore[arg-type]
        if not isinstance(outcome, Applied):
            return False
        if sum(isinstance(e, Laid) for e in (*events, *outcome.events)) > 8:
            return False
        state = outcome.state
        events.extend(outcome.events)
        moves.append(print_move(move))  # type: ignore[arg-type]
        return True

    def loops(peg: str) -> int:
        return len(state.stack(peg))

    def lay() -> None:
        size = rng.choice((2, 2, 2, 2, 3, 4)) if kind in ("wide", "mixed") else 2
        over = tuple(rng.sample(names, size))
        if rng.random() < 0.6 and size == 2:  # near neighbours make for piles
            over = _near(loom, rng, over[0])
        twists: tuple[int, ...] = ()
        if kind in ("twists", "mixed") and rng.random() < 0.4:
            twists = tuple(rng.choice((0, 1, 1, 2)) for _ in over[1:])
        turns: tuple[int, ...] = ()
        if kind in ("winds", "mixed") and rng.random() < 0.25:
            turns = tuple(rng.choice((1, 1, 2, 3)) for _ in over)
        if kind in ("winds", "mixed") and rng.random() < 0.15:
            do(Wind(colour="A", on=rng.choice(names), turns=rng.randint(1, 3)))
            return
        do(Place(colour="A", over=over, twists=twists, turns=turns))

    def work() -> None:
        piled = [p for p in names if loops(p) > 1]
        if not piled:
            return
        peg = rng.choice(piled)
        loop = rng.randint(1, loops(peg))
        target = rng.choice(names) if rng.random() < 0.5 else _near(loom, rng, peg)[1]
        through = None
        if kind in ("shallow", "mixed") and rng.random() < 0.4:
            through = rng.randint(0, loops(peg) - loop)
        draw = rng.random()
        if kind in ("lifts", "mixed") and draw < (0.6 if kind == "lifts" else 0.25):
            do(Lift(at=peg, loop=loop))
        elif kind in ("transfers", "mixed") and draw < 0.4:
            do(Transfer(source=peg, target=target, together=rng.choice((1, 1, 1, 2))))
        elif kind in ("slides", "mixed") and draw < 0.55:
            do(Hang(colour="B", turns=rng.randint(1, 3)))
            if rng.random() < 0.3:
                do(Hang(colour="B", turns=rng.randint(1, 3)))
            do(Slide(source=peg, target=target, loop=loop, through=through))
        else:
            do(
                Hook(
                    source=peg,
                    target=target,
                    loop=loop,
                    through=through,
                    together=rng.choice((1, 1, 1, 1, 2)),
                )
            )

    for _ in range(rng.randint(1, 2)):
        lay()
    for _ in range(rng.randint(4, 14)):
        if kind == "mixed" and rng.random() < 0.05:
            do(Turn())
        if state.bands < limit and rng.random() < 0.5:
            lay()
        else:
            work()
    _finish(rng, kind, names, do, lambda: state, events)
    spots = {name: (p.x_mm, p.y_mm) for name, p in loom.pegs.items()}
    return Program(kind, name, tuple(events), tuple(moves), spots)


def _finish(rng, kind, names, do, state, events) -> None:  # type: ignore[no-untyped-def]
    """Fasten at one holder or two, knot or clip, sometimes through a last band and an extension."""
    full = sorted((p for p in names if state().stack(p)), key=lambda p: -len(state().stack(p)))
    if not full:
        return
    at = [rng.choice(full[:2])]
    catch = rng.randint(1, 3) if kind in ("ends", "mixed") and rng.random() < 0.2 else None
    if kind in ("ends", "mixed") and rng.random() < 0.5 and do(Bind(colour="C", at=at[0])):
        do(Extend(colour="C", bands=rng.randint(1, 2), end="end"))
        at = ["end"]
    others = [p for p in full if p not in at and state().stack(p)]
    if others and rng.random() < 0.4:
        at.append(rng.choice(others))
    elif first_loop_is_off(state()) and _lifted_off(events) and rng.random() < 0.5:
        at.append("start")
    do((Clip if rng.random() < 0.5 else Knot)(at=tuple(at), catch=catch))
    rest = [p for p in names if state().stack(p)]
    if rest and kind in ("ends", "mixed") and rng.random() < 0.2:
        do(Knot(at=(rng.choice(rest),)))


def _lifted_off(events: list[Event]) -> bool:
    """Say whether the first loop was lifted straight off the peg it was laid on: then `start` has a meaning."""
    first = [e for e in events if isinstance(e, Drawn | Moved | Lifted) and e.bight == Bight(1, 0)]
    return len(first) == 1 and isinstance(first[0], Lifted)


def _near(loom, rng: random.Random, peg: str) -> tuple[str, str]:  # type: ignore[no-untyped-def]
    by = sorted((n for n in loom.pegs if n != peg), key=lambda n: loom.distance_mm(peg, n))
    return peg, rng.choice(by[:3])


def fastened(p: Program) -> bool:
    """Say whether the program ends with a fastener, as a judgement needs."""
    return any(isinstance(e, Fastened) for e in p.events)
