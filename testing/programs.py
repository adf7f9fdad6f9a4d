"""Random programs of moves, worked on the machine, closed with fasteners: whatever hands might do."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from typing import NamedTuple

from pegwright.loom import (
    Bight,
    Board,
    Drawn,
    Effect,
    Event,
    Fastened,
    Laid,
    Lifted,
    Moved,
    State,
    apply_move,
    board_of,
    parse_move,
    print_move,
)
from pegwright.loom.state import first_loop_is_off
from pegwright.pattern import (
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    Move,
    PegAt,
    Pegs,
    Place,
    Put,
    Slide,
    Transfer,
    Turn,
    Wind,
)

KINDS = (
    "hooks",
    "shallow",
    "twists",
    "both ways",
    "lifts",
    "transfers",
    "slides",
    "winds",
    "ends",
    "wide",
    "carried",
    "puts",
    "several",
    "mixed",
)


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
    loom = board_of(layout(name))
    state = State()
    events: list[Event] = []
    for line in lines:
        outcome = apply_move(loom, state, parse_move(line))
        if not isinstance(outcome, Effect):
            raise ValueError(f"{line}: {outcome.code}")
        state = outcome.state
        events += outcome.events
    spots = {at: (p.x_mm, p.y_mm) for at, p in loom.pegs.items()}
    return Program(kind, name, tuple(events), tuple(lines), spots)


def program(seed: int, kind: str = "mixed") -> Program:
    """Make one program of 2–8 bands with the moves that `kind` allows; a seed gives the same one always."""
    hand = _Hand(random.Random(f"{seed}/{kind}"), kind)
    rng = hand.rng
    limit = rng.randint(2, 7)
    for _ in range(rng.randint(1, 2)):
        hand.lay()
    for _ in range(rng.randint(4, 14)):
        if kind == "mixed" and rng.random() < 0.05:
            hand.do(Turn())
        if hand.state.bands < limit and rng.random() < 0.5:
            hand.lay()
        else:
            hand.work()
    hand.finish()
    spots = {at: (p.x_mm, p.y_mm) for at, p in hand.loom.pegs.items()}
    return Program(kind, hand.layout, tuple(hand.events), tuple(hand.moves), spots)


class _Hand:
    """A hand at the loom that does as chance has it, within what its kind of program allows."""

    def __init__(self, rng: random.Random, kind: str) -> None:
        self.rng = rng
        self.kind = kind
        self.layout = _any_layout(rng)
        self.loom = board_of(layout(self.layout))
        self.names = list(self.loom.pegs)
        self.state = State()
        self.events: list[Event] = []
        self.moves: list[str] = []

    def may(self, kind: str, chance: float) -> bool:
        return self.kind in (kind, "mixed") and self.rng.random() < chance

    def do(self, move: Move) -> bool:
        outcome = apply_move(self.loom, self.state, move)
        if not isinstance(outcome, Effect):
            return False
        if sum(isinstance(e, Laid) for e in (*self.events, *outcome.events)) > 8:
            return False
        self.state = outcome.state
        self.events.extend(outcome.events)
        self.moves.append(print_move(move))
        return True

    def loops(self, peg: str) -> int:
        return len(self.state.stack(peg))

    def lay(self) -> None:
        rng = self.rng
        size = rng.choice((2, 2, 2, 2, 3, 4)) if self.kind in ("wide", "both ways", "mixed") else 2
        over = tuple(rng.sample(self.names, size))
        if rng.random() < 0.6 and size == 2:  # near neighbours make for piles
            over = (over[0], _near(self.loom, rng, over[0]))
        twists: tuple[int, ...] = ()
        if self.may("twists", 0.4):
            twists = tuple(rng.choice((0, 1, 1, 2)) for _ in over[1:])
        elif self.kind == "both ways" and rng.random() < 0.6:
            twists = tuple(rng.choice((-2, -1, -1, 1)) for _ in over[1:])
        turns: tuple[int, ...] = ()
        if self.may("winds", 0.25):
            turns = tuple(rng.choice((1, 1, 2, 3)) for _ in over)
        if self.may("winds", 0.15):
            self.do(Wind(colour="A", on=rng.choice(self.names), turns=rng.randint(1, 3)))
            return
        self.do(Place(colour="A", over=over, twists=twists, turns=turns))

    def put_new_band(self) -> None:
        """Pull a band through all loops of a peg or some, and put its ends, or those of a chain, on pegs."""
        rng = self.rng
        full = [p for p in self.names if self.loops(p)]
        if not full:
            return
        peg = rng.choice(full)
        catch = rng.choice((None, rng.randint(1, self.loops(peg))))
        several = 2 if self.may("several", 0.6) else 1
        if self.do(Bind(colour="C", at=peg, catch=catch, together=several)):
            if rng.random() < 0.2:
                self.do(Extend(colour="C", bands=several, end="end", together=several))
            self.do(Put(on=tuple(rng.sample(self.names, rng.choice((1, 1, 2))))))

    def work(self) -> None:
        rng = self.rng
        if self.kind in ("puts", "several") and rng.random() < (0.4 if self.kind == "puts" else 0.2):
            self.put_new_band()
            return
        piled = [p for p in self.names if self.loops(p) > 1]
        if not piled:
            return
        peg = rng.choice(piled)
        loop = rng.randint(1, self.loops(peg))
        target = rng.choice(self.names) if rng.random() < 0.5 else _near(self.loom, rng, peg)
        through = rng.randint(0, self.loops(peg) - loop) if self.may("shallow", 0.4) else None
        if self.may("carried", 0.6 if self.kind == "carried" else 0.15):
            self.do(Lift(at=peg, loop=loop, target=target))
        elif self.may("lifts", 0.6 if self.kind == "lifts" else 0.25):
            self.do(Lift(at=peg, loop=loop))
        elif self.may("transfers", 0.4 if self.kind == "transfers" else 0.2):
            self.do(Transfer(source=peg, target=target, together=rng.choice((1, 1, 1, 2))))
        elif self.may("slides", 0.5 if self.kind == "slides" else 0.25):
            for _ in range(rng.choice((1, 1, 1, 2))):
                self.do(Hang(colour="B", turns=rng.randint(1, 3)))
            self.do(Slide(source=peg, target=target, loop=loop, through=through))
        elif self.may("several", 0.5 if self.kind == "several" else 0.1):
            self.do(Hang(colour="B", turns=rng.randint(1, 3)))
            few = rng.choice((2, 2, 3))
            self.do(Slide(source=peg, target=target, loop=loop, through=through, together=few))
        else:
            together = rng.choice((1, 1, 1, 1, 2))
            self.do(Hook(source=peg, target=target, loop=loop, through=through, together=together))

    def finish(self) -> None:
        """Fasten at one holder or two, knot or clip, sometimes through a last band and an extension."""
        rng = self.rng
        full = sorted((p for p in self.names if self.loops(p)), key=lambda p: -self.loops(p))
        if not full:
            return
        at = [rng.choice(full[:2])]
        catch = rng.randint(1, 3) if self.may("ends", 0.2) else None
        several = rng.choice((2, 2, 3)) if self.may("several", 0.8) else 1
        bound = several > 1 or self.may("ends", 0.5)
        if bound and self.do(Bind(colour="C", at=at[0], together=several)):
            self.do(Extend(colour="C", bands=rng.randint(1, 2) * several, end="end", together=several))
            at = ["end"]
        others = [p for p in full if p not in at and self.loops(p)]
        if others and rng.random() < 0.4:
            at.append(rng.choice(others))
        elif first_loop_is_off(self.state) and _lifted_off(self.events) and rng.random() < 0.5:
            at.append("start")
        self.do((Clip if rng.random() < 0.5 else Knot)(at=tuple(at), catch=catch))
        rest = [p for p in self.names if self.loops(p)]
        if rest and self.may("ends", 0.2):
            self.do(Knot(at=(rng.choice(rest),)))


def _lifted_off(events: list[Event]) -> bool:
    """Say whether the first loop was lifted straight off the peg it was laid on, as `start` means it."""
    first = [e for e in events if isinstance(e, Drawn | Moved | Lifted) and e.bight == Bight(1, 0)]
    return len(first) == 1 and isinstance(first[0], Lifted)


def _near(loom: Board, rng: random.Random, peg: str) -> str:
    by = sorted((n for n in loom.pegs if n != peg), key=lambda n: loom.distance_mm(peg, n))
    return rng.choice(by[:3])


def fastened(p: Program) -> bool:
    """Say whether the program ends with a fastener, as a judgement needs."""
    return any(isinstance(e, Fastened) for e in p.events)
