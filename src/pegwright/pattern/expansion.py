"""Work out a pattern's motifs and repeats into the plain run of moves a maker does."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from pegwright.finding import Finding, Location, RefusedError, finding, phrase
from pegwright.pattern.address import LAST_ROW, Address, is_address, parse_address
from pegwright.pattern.document import Motif, Pattern
from pegwright.pattern.holders import named_pegs, with_holders
from pegwright.pattern.layout import (
    MAX_REACH_MM,
    Layout,
    find_coincident_pegs,
    find_empty_stretch,
    peg_count,
    pegs,
)
from pegwright.pattern.moves import Move, PatternStep, Repeat, Use

MAX_MOVES = 60_000
MAX_PEGS = 25_000
MAX_DEPTH = 24


class LocatedMove(NamedTuple):
    """A move, where it stands in the document (JSON Pointer), and in which round of which repeat.

    `rounds` holds, outermost first, (path of the repeat, round from 1, of how many).
    """

    move: Move
    path: str
    rounds: tuple[tuple[str, int, int], ...] = ()
    motif: str = ""


class Expansion(NamedTuple):
    """All moves in order, and what was found on the way."""

    moves: tuple[LocatedMove, ...]
    findings: tuple[Finding, ...]


class _Axis(NamedTuple):
    """How row or peg numbers of the place at hand map to the loom's: number → sign · number + offset."""

    sign: int = 1
    offset: int = 0

    def after(self, sign: int, offset: int) -> _Axis:
        """Return this mapping preceded by another."""
        return _Axis(self.sign * sign, self.sign * offset + self.offset)


class _Scope(NamedTuple):
    rows: _Axis = _Axis()
    pegs: _Axis = _Axis()
    colours: Mapping[str, str] = {}
    counts: Mapping[str, int] = {}
    rounds: tuple[tuple[str, int, int], ...] = ()
    motif: str = ""
    calls: tuple[str, ...] = ()

    def colours_in_round(self, step: Repeat, k: int) -> dict[str, str]:
        """Return what the letters of a repeat stand for in its round k, counted from 0."""
        here = {slot: turns[k % len(turns)] for slot, turns in step.colours.items()}
        return {slot: self.colours.get(given, given) for slot, given in here.items()}


def expand(pattern: Pattern) -> Expansion:
    """Return every move of the pattern in order; none past `MAX_MOVES`, or on a loom nobody can work at."""
    motifs: dict[str, tuple[int, Motif]] = {}
    expander = _Expander(motifs)
    for i, motif in enumerate(pattern.motifs):
        if motif.name in motifs:
            expander.report("motif-twice", f"/motifs/{i}", name=motif.name)
        motifs.setdefault(motif.name, (i, motif))
    count = peg_count(pattern.loom)
    if count > MAX_PEGS:
        expander.report("too-many-pegs", "/loom", pegs=count, limit=MAX_PEGS)
    elif misplaced := _misplaced_pegs(pattern.loom):
        code, facts = misplaced
        expander.report(code, "/loom", **facts)
    elif (sizes := _Sizes(motifs)).of(pattern.steps, {}, 0) > MAX_MOVES and sizes.too_deep:
        expander.report("nested-too-deeply", "/steps", limit=MAX_DEPTH)
    elif sizes.of(pattern.steps, {}, 0) > MAX_MOVES:
        expander.report("too-many-moves", "/steps", limit=MAX_MOVES)
    else:
        expander.run(pattern.steps, "/steps", _Scope())
    return Expansion(tuple(expander.moves), tuple(expander.findings))


def _misplaced_pegs(layout: Layout) -> tuple[str, dict[str, Any]] | None:
    """Return the code and the facts of what makes a loom one that nobody can work at, or None."""
    placed = pegs(layout)
    if far := find_empty_stretch(placed):
        facts = {"peg": far.peg, "other": far.other, "gap_mm": far.gap_mm, "limit_mm": MAX_REACH_MM}
        return "pegs-out-of-reach", facts
    if near := find_coincident_pegs(placed):
        return "pegs-in-one-place", {"peg": near.peg, "other": near.other}
    return None


class _Expander:
    def __init__(self, motifs: dict[str, tuple[int, Motif]]) -> None:
        self.motifs = motifs
        self.reaches = _Reaches(motifs)
        self.moves: list[LocatedMove] = []
        self.findings: list[Finding] = []
        self.reported: set[tuple[str, str]] = set()

    def report(self, code: str, path: str, **facts: Any) -> None:
        if (code, path) not in self.reported:
            self.reported.add((code, path))
            self.findings.append(finding(code, Location(path=path), **facts))

    def run(self, steps: tuple[PatternStep, ...], path: str, scope: _Scope) -> None:
        for i, step in enumerate(steps):
            here = f"{path}/{i}"
            match step:
                case Repeat():
                    self.repeat(step, here, scope)
                case Use():
                    self.use(step, here, scope)
                case _:
                    self.move(step, here, scope)

    def move(self, step: Move, path: str, scope: _Scope) -> None:
        try:
            moved = _relocate(step, scope)
        except RefusedError as refused:
            self.report("off-the-rows", path, reason=refused.reason)
            return
        self.moves.append(LocatedMove(moved, path, scope.rounds, scope.motif))

    def repeat(self, step: Repeat, path: str, scope: _Scope) -> None:
        if path.count("/steps") > MAX_DEPTH:
            self.report("nested-too-deeply", path, limit=MAX_DEPTH)
            return
        times = scope.counts.get(step.times) if isinstance(step.times, str) else step.times
        if times is None:
            self.report("count-unknown", f"{path}/times", name=str(step.times))
            return
        for k in range(times):
            self.run(
                step.steps,
                f"{path}/steps",
                scope._replace(
                    rows=scope.rows.after(1, k * step.rows),
                    pegs=scope.pegs.after(1, k * step.pegs),
                    colours={**scope.colours, **scope.colours_in_round(step, k)},
                    rounds=(*scope.rounds, (path, k + 1, times)),
                ),
            )

    def use(self, step: Use, path: str, scope: _Scope) -> None:
        if step.name not in self.motifs:
            known = tuple(sorted(self.motifs))
            self.report("motif-unknown", f"{path}/name", name=step.name, known=known, count=len(known))
            return
        if step.name in scope.calls or len(scope.calls) >= MAX_DEPTH:
            self.report("motif-in-itself", path, name=step.name)
            return
        index, motif = self.motifs[step.name]
        colours = {slot: scope.colours.get(given, given) for slot, given in step.colours.items()}
        for slot in sorted(colours.keys() - set(motif.colours)):
            self.report("slot-unknown", f"{path}/colours", slot=slot, name=motif.name)
        for slot in motif.colours:
            if slot not in colours:
                self.report("slot-empty", path, slot=slot, name=motif.name)
        for count in sorted(step.counts.keys() - motif.counts.keys()):
            self.report("slot-unknown", f"{path}/counts", slot=count, name=motif.name)
        rows, pegs = scope.rows.after(1, step.rows), scope.pegs.after(1, step.pegs)
        counts = {**motif.counts, **step.counts}
        reach = self.reaches.of_motif(step.name, counts) if step.mirror else None
        if reach is not None and "rows" in step.mirror:
            rows = rows.after(-1, reach.low.row + reach.high.row)
        if reach is not None and "pegs" in step.mirror:
            pegs = pegs.after(-1, reach.low.number + reach.high.number)
        self.run(
            motif.steps,
            f"/motifs/{index}/steps",
            scope._replace(
                rows=rows,
                pegs=pegs,
                colours=colours,
                counts=counts,
                motif=motif.name,
                calls=(*scope.calls, step.name),
            ),
        )


class _Sizes:
    """Count moves and rounds without making them, so that a bound can be kept before any work is done."""

    def __init__(self, motifs: dict[str, tuple[int, Motif]]) -> None:
        self.motifs = motifs
        self.known: dict[tuple[str, tuple[tuple[str, int], ...]], int] = {}
        self.too_deep = False

    def of(self, steps: tuple[PatternStep, ...], counts: Mapping[str, int], depth: int) -> int:
        """Return the number of moves and rounds in the steps; more than enough where they nest too deeply."""
        if depth > 2 * MAX_DEPTH:
            self.too_deep = True
            return MAX_MOVES + 1
        total = 0
        for step in steps:
            match step:
                case Repeat():
                    times = counts.get(step.times, 0) if isinstance(step.times, str) else step.times
                    total += times * (1 + self.of(step.steps, counts, depth + 1)) if times else 0
                case Use():
                    total += 1 + self.motif(step, depth)
                case _:
                    total += 1
        return total

    def motif(self, step: Use, depth: int) -> int:
        if step.name not in self.motifs:
            return 0
        motif = self.motifs[step.name][1]
        counts = {**motif.counts, **step.counts}
        key = (step.name, tuple(sorted(counts.items())))
        if key not in self.known:
            self.known[key] = 0  # a motif within itself is told apart while working
            self.known[key] = self.of(motif.steps, counts, depth + 1)
        return self.known[key]


class _Reach(NamedTuple):
    """The least and the greatest row and peg number that steps touch, worked out."""

    low: Address
    high: Address

    def shift(self, rows: int, pegs: int) -> _Reach:
        """Return the reach moved on."""
        return _Reach(*(Address(a.row + rows, a.number + pegs) for a in self))

    def union(self, other: _Reach | None) -> _Reach:
        """Return the reach of both."""
        if other is None:
            return self
        low, high = other
        return _Reach(
            Address(min(self.low.row, low.row), min(self.low.number, low.number)),
            Address(max(self.high.row, high.row), max(self.high.number, high.number)),
        )


class _Reaches:
    """How far motifs reach with all their rounds and motifs within, found without working them out.

    A mirrored motif reaches as far as it does unmirrored, since it is mirrored about its own middle; a repeat
    reaches furthest in its first and its last round.
    """

    def __init__(self, motifs: Mapping[str, tuple[int, Motif]]) -> None:
        self.motifs = motifs
        self.known: dict[tuple[str, tuple[tuple[str, int], ...]], _Reach | None] = {}

    def of_motif(self, name: str, counts: Mapping[str, int]) -> _Reach | None:
        """Return the reach of a motif with its counts filled in; None where it names no peg."""
        if name not in self.motifs:
            return None
        key = (name, tuple(sorted(counts.items())))
        if key not in self.known:
            self.known[key] = None  # a motif within itself is told apart while working
            self.known[key] = self.of(self.motifs[name][1].steps, counts)
        return self.known[key]

    def of(self, steps: tuple[PatternStep, ...], counts: Mapping[str, int]) -> _Reach | None:
        found: _Reach | None = None
        for step in steps:
            reach = self.of_step(step, counts)
            found = reach.union(found) if reach is not None else found
        return found

    def of_step(self, step: PatternStep, counts: Mapping[str, int]) -> _Reach | None:
        match step:
            case Repeat():
                times = counts.get(step.times, 0) if isinstance(step.times, str) else step.times
                once = self.of(step.steps, counts) if times else None
                return once and once.union(once.shift((times - 1) * step.rows, (times - 1) * step.pegs))
            case Use():
                inner = self.motifs[step.name][1].counts if step.name in self.motifs else {}
                reach = self.of_motif(step.name, {**inner, **step.counts})
                return reach and reach.shift(step.rows, step.pegs)
            case _:
                places = [parse_address(text) for text in addresses_in((step,))]
                if not places:
                    return None
                rows, numbers = zip(*places, strict=True)
                return _Reach(Address(min(rows), min(numbers)), Address(max(rows), max(numbers)))


def _relocate(step: Move, scope: _Scope) -> Move:
    if scope.rows == _Axis() == scope.pegs and not scope.colours:
        return step
    colour = getattr(step, "colour", None)
    changes: dict[str, Any] = {} if colour is None else {"colour": scope.colours.get(colour, colour)}
    return with_holders(step, lambda holder: _relocate_holder(holder, scope), **changes)


def _relocate_holder(holder: str, scope: _Scope) -> str:
    if not is_address(holder):
        return holder
    row, number = parse_address(holder)
    row, number = scope.rows.sign * row + scope.rows.offset, scope.pegs.sign * number + scope.pegs.offset
    why = "moved-before-row" if row < 0 else "moved-past-rows" if row > LAST_ROW else ""
    if why or number < 1:
        raise RefusedError(phrase(why or "moved-before-peg", peg=holder))
    return str(Address(row, number))


def addresses_in(steps: tuple[PatternStep, ...]) -> set[str]:
    """Return the pegs that steps name themselves: first rounds of repeats, no motifs worked in them."""
    found: set[str] = set()
    for step in steps:
        if isinstance(step, Repeat):
            found |= addresses_in(step.steps)
        else:
            found |= set(named_pegs(step))
    return found
