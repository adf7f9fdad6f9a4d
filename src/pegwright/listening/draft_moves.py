"""Make moves of the steps heard in a recording, as far as they can be told, and leave the others blank.

What is said twice in other words must agree: where a band goes to and in which direction; where a loop is put;
how often something is done again, by how much it moves on, and where the last round ends. Of such a group one
that was not heard follows from the others. Where they disagree the step is left blank.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple

from pegwright.listening.draft_steps import Palette, SaidStep
from pegwright.listening.draft_words import HeardPeg
from pegwright.pattern import (
    Address,
    Bind,
    Clip,
    Extend,
    Hang,
    Hook,
    Knot,
    Lift,
    Move,
    Place,
    Slide,
    Transfer,
    Turn,
    Wind,
    row_letter,
    with_pegs,
)

Spot = tuple[int, int]
"""A row and a peg's number in it."""
HABIT = 0.75
"""In so many of the clear steps a direction must mean the next peg, for it to tell one (no source)."""
MOST_ROUNDS = 400


class MadeStep(NamedTuple):
    """A step with the moves that it adds, none where it is blank, and of a repeat how its block is repeated."""

    said: SaidStep
    moves: tuple[Move, ...] = ()
    block: int = 0
    """How many steps before it are done again."""
    times: int = 1
    rows: int = 0
    pegs: int = 0
    wrapped: int = 0
    """How many of the last rounds go on with peg 1 of a ring."""


class MoveMaker:
    """Makes the moves of one recording's steps."""

    def __init__(self, steps: Sequence[SaidStep], palette: Palette, letter: Callable[[str], str]) -> None:
        self.steps = [step for step in steps if step.kind not in ("need", "used", "keep", "look") and not _is_off_loom(step)]
        self.all = steps
        self.palette = palette
        self.letter = letter
        self.made: list[MadeStep] = []
        self.ring = 0
        self.highest = max((peg.number or 0 for step in steps for peg in step.pegs if peg.clear), default=0)
        self.habit = self._habit()
        self.drops = any(step.kind == "drop" for step in steps)
        self.supplies = _supplies(steps, letter)
        loops = [step.loop for step in steps if step.kind in ("down", "slide", "drop", "grip") and step.loop]
        self.always_lowest = len(loops) >= 2 and set(loops) == {"lowest"}
        self.offset: int | None = None
        """By how much the number of a step as it is said is more than that of ours."""

    def make(self) -> list[MadeStep]:
        """Return the steps with their moves."""
        for step in self.steps:
            if step.kind == "again":
                self.made.append(self._again(step))
            else:
                moves = getattr(self, f"_{step.kind.replace('-', '_')}", self._blank)(step)
                self.made.append(MadeStep(step, moves))
        return self.made

    def _blank(self, step: SaidStep) -> tuple[Move, ...]:
        return ()

    def _habit(self) -> bool:
        """Say whether in this recording a direction always means the next peg that way."""
        agree = disagree = 0
        for step in self.steps:
            pair = _pair_of(step)
            if pair is None:
                continue
            one, other = (_spot(peg) for peg in pair)
            vector = _vector(step.way, step.turned)
            if one is None or other is None or vector is None:
                continue
            if (one[0] + vector[0], one[1] + vector[1]) == other:
                agree += 1
            else:
                disagree += 1
        return agree >= 1 and agree >= HABIT * (agree + disagree)

    def _pair(self, one: HeardPeg, other: HeardPeg, step: SaidStep) -> tuple[Spot, Spot] | None:
        """Return from which peg to which, or None where that cannot be told."""
        vector = _vector(step.way, step.turned)
        a, b = _spot(one), _spot(other)
        if vector is not None and (self.habit or one.number and other.number and (a is None or b is None)):
            if a is not None:
                follows = (a[0] + vector[0], a[1] + vector[1])
                if not _may_be(other, follows):
                    return self._clear_pair(one, other)
                if b is None and not (one.clear or other.number):
                    return None
                return (a, follows) if min(follows) >= 0 and follows[1] > 0 else None
            if b is not None:
                comes = (b[0] - vector[0], b[1] - vector[1])
                if not _may_be(one, comes) or not (other.clear or one.number):
                    return None
                return (comes, b) if min(comes) >= 0 and comes[1] > 0 else None
            return None
        if a is None or b is None or a == b:
            return None
        if vector is not None and not self.habit:
            return (a, b) if one.clear and other.clear else None
        return (a, b) if _are_near(a, b) else None

    def _clear_pair(self, one: HeardPeg, other: HeardPeg) -> tuple[Spot, Spot] | None:
        """Return two neighbours that are named clearly, though the direction is said otherwise."""
        a, b = _spot(one), _spot(other)
        if a is None or b is None or not (one.clear and other.clear):
            return None
        return (a, b) if _are_near(a, b) else None

    def _place(self, step: SaidStep) -> tuple[Move, ...]:
        if len(step.pegs) != 2 or step.colour is None:
            return ()
        pair = self._pair(step.pegs[0], step.pegs[1], step)
        if pair is None:
            return ()
        over = (_name(pair[0]), _name(pair[1]))
        return (Place(colour=self.letter(step.colour), over=over, twists=(step.through,) if step.through else ()),)

    def _down(self, step: SaidStep) -> tuple[Move, ...]:
        if step.target is None or not step.gripped:
            return ()
        source = step.pegs[0] if step.pegs else HeardPeg(None, None)
        pair = self._pair(source, step.target, step)
        loop = self._loop(step)
        if pair is None or loop is None:
            return ()
        through = step.through
        return (
            Hook(source=_name(pair[0]), target=_name(pair[1]), loop=loop, through=through, together=step.together or 1),
        )

    def _slide(self, step: SaidStep) -> tuple[Move, ...]:
        return tuple(
            Slide(source=one.source, target=one.target, loop=one.loop)
            for one in self._down(step)
            if isinstance(one, Hook)
        )

    def _loop(self, step: SaidStep) -> int | None:
        if step.loop == "lowest":
            return 1
        if step.loop == "top":
            return -1
        if step.loop is None and self.always_lowest and step.gripped:
            return 1
        return step.loop if isinstance(step.loop, int) else None

    def _drop(self, step: SaidStep) -> tuple[Move, ...]:
        spot = _spot(step.pegs[0]) if step.pegs else None
        loop = self._loop(step)
        if spot is None or loop is None:
            return ()
        return (Lift(at=_name(spot), loop=loop, together=step.together or 1),)

    def _grip(self, step: SaidStep) -> tuple[Move, ...]:
        return self._drop(step) if self.drops else ()

    def _move_over(self, step: SaidStep) -> tuple[Move, ...]:
        if len(step.pegs) != 2:
            return ()
        pair = self._pair(step.pegs[0], step.pegs[1], step)
        return (Transfer(source=_name(pair[0]), target=_name(pair[1])),) if pair else ()

    def _wind(self, step: SaidStep) -> tuple[Move, ...]:
        spot = _spot(step.pegs[0]) if step.pegs else None
        if spot is None or step.colour is None or step.number is None or not 1 < step.number <= 8:
            return ()
        return (Wind(colour=self.letter(step.colour), on=_name(spot), turns=step.number),)

    def _hang(self, step: SaidStep) -> tuple[Move, ...]:
        if step.colour is None or step.number is None or not 1 < step.number <= 8:
            return ()
        return (Hang(colour=self.letter(step.colour), turns=step.number),)

    def _turn(self, step: SaidStep) -> tuple[Move, ...]:
        return (Turn(),)

    def _bind(self, step: SaidStep) -> tuple[Move, ...]:
        if step.colour is None or not step.gripped:
            return ()
        spot = _spot(step.pegs[0]) if step.pegs else None
        last = self._last_target()
        if last is not None and (not step.pegs or _may_be(step.pegs[0], last)):
            spot = last
        elif spot is None or (last is not None and spot != last):
            return ()
        return (Bind(colour=self.letter(step.colour), at=_name(spot)),)

    def _last_target(self) -> Spot | None:
        """Return the peg to which the last loop was hooked, where that step is known."""
        for one in reversed(self.made):
            if one.said.kind in ("down", "slide", "again", "drop", "grip", "move-over"):
                move = one.moves[-1] if one.moves else None
                return _parse(move.target) if isinstance(move, Hook) else None
        return None

    def _extend(self, step: SaidStep) -> tuple[Move, ...]:
        if step.colour is None or step.number is None or not 1 <= step.number <= 60:
            return ()
        if not any(one.said.kind == "bind" for one in self.made):
            return ()
        return (Extend(colour=self.letter(step.colour), bands=step.number),)

    def _gather(self, step: SaidStep) -> tuple[Move, ...]:
        kept = [one.pegs[0] for one in self.all if one.kind in ("keep", "turn") and one.pegs]
        names = [spot for peg in (*step.pegs[:1], *kept) if (spot := _spot(peg)) is not None]
        if not names or not step.gripped:
            return ()
        spot = _spot(step.pegs[0]) if step.pegs else None
        if spot is None:
            spot, count = Counter(names).most_common(1)[0]
            if count < 2:
                return ()
        elif names and Counter(names)[spot] * 2 < len(names):
            return ()
        bound = any(one.said.kind == "bind" for one in self.made) or (step.loop == "end" and not step.same_place)
        if step.same_place == bound:  # the first band, or the free end: one of them
            return ()
        return (Clip(at=("end" if bound else "start", _name(spot))),)

    def _cord(self, step: SaidStep) -> tuple[Move, ...]:
        spots = [_spot(peg) for peg in step.pegs]
        if step.same_place and len(spots) == 2 and None not in spots:
            (row, first), (other, last) = spots  # type: ignore[misc]
            if row == other and first < last:
                return (Knot(at=tuple(_name((row, n)) for n in range(first, last + 1))),)
            return ()
        if len(spots) < 2 or None in spots or len(set(spots)) != len(spots):
            return ()
        known: list[Spot] = spots  # type: ignore[assignment]
        words = step.words
        at = [k for k, word in enumerate(words) if word.peg is not None]
        if any(word.peg is None and word.text.isdecimal() for word in words[at[0] :]):
            return ()
        steps = {(b[0] - a[0], b[1] - a[1]) for a, b in zip(known, known[1:], strict=False)}
        if len(steps) != 1:
            return ()
        return (Knot(at=tuple(_name(spot) for spot in known)),)

    # --- done again -----------------------------------------------------------------------------------

    def _again(self, step: SaidStep) -> MadeStep:
        blank = MadeStep(step)
        block = self._block(step)
        if block is None:
            return blank
        moves = self._moves_of(block)
        if not moves or (step.recoloured and any(hasattr(move, "colour") for move in moves)):
            return blank
        told = self._rounds(step, moves)
        if told is None:
            return blank
        times, rows, pegs = told
        added: list[Move] = []
        wrapped = 0
        for n in range(1, times + 1):
            for move in moves:
                moved = _moved(move, rows * n, pegs * n, self.ring)
                if moved is None:
                    return blank
                added.append(moved)
            if any(moved != _moved(move, rows * n, pegs * n, 0) for move, moved in zip(moves, added[-len(moves) :], strict=True)):
                wrapped = wrapped or times + 1 - n
        return MadeStep(step, tuple(added), block, times + 1, rows, pegs, wrapped)

    def _block(self, step: SaidStep) -> int | None:
        """Return how many of the steps before are done again."""
        at = len(self.made)
        if step.named is not None:
            first, last = step.named
            expected = self.offset
            if last is None and expected is not None and first is not None:
                last = at + expected
            if first is None or last is None:
                return None
            self.offset = last - at
            if expected is not None and self.offset != expected:
                return None  # a step was not heard, or one too many
            block = last - first + 1
            return block if 1 <= block <= at else None
        if not self.made:
            return None
        if step.same_place:
            return self._block_by_supplies(step)
        if self.made[-1].said.kind == "again":
            block = self.made[-1].block + 1
            return block if self.made[-1].block else None
        block = 0
        while block < at and self.made[at - 1 - block].said.kind not in ("again", "turn"):
            block += 1
        return block or None

    def _block_by_supplies(self, step: SaidStep) -> int | None:
        """Return the one block that, done again in its place, takes just the bands that are laid out."""
        found = []
        before = Counter(_colours(move for one in self.made for move in one.moves))
        for block in range(1, len(self.made) + 1):
            taken = Counter(_colours(self._moves_of(block)))
            needs = {colour: self.supplies.get(colour) for colour in taken}
            if step.number and taken and all(needs.values()):
                if all(before[one] + step.number * taken[one] == needs[one] for one in taken):
                    found.append(block)
        return found[0] if len(found) == 1 and step.number else None

    def _moves_of(self, block: int) -> tuple[Move, ...]:
        """Return the moves of the last steps, none where one of them is blank."""
        steps = self.made[len(self.made) - block :]
        if any(not one.moves for one in steps):
            return ()
        return tuple(move for one in steps for move in one.moves)

    def _rounds(self, step: SaidStep, moves: Sequence[Move]) -> tuple[int, int, int] | None:
        """Return how many more rounds there are, and by how many rows and pegs each is moved on."""
        times = step.number
        if step.same_place:
            return (times, 0, 0) if times and step.end is None and step.shift is None else None
        last = _last_spot(moves[-1])
        if last is None:
            return None
        shift = _shift(step)
        first, shown = _first_spot(moves[0]), _spot(step.pegs[0]) if step.pegs else None
        if shift is None and first is not None and shown is not None and step.pegs[0].clear:
            moved = shown[0] - first[0], shown[1] - first[1]
            if step.shift is None or step.shift[0] in (None, max(map(abs, moved))):
                shift = moved if (moved[0] == 0) != (moved[1] == 0) else None
        end = _spot(step.end) if step.end is not None else None
        ends = step.end or HeardPeg(None, None)
        if shift is not None and times:
            reached = (last[0] + shift[0] * times, last[1] + shift[1] * times)
            if _may_be(ends, reached) and min(reached) >= 0 and reached[1] > 0:
                return times, *shift
            if self._closes_ring(moves, shift, times, end):
                return times, *shift
            return self._rounds_by_votes(step, last, shift, times, reached)
        if end is None or end == last:
            return None
        rows, pegs = end[0] - last[0], end[1] - last[1]
        if shift is not None:
            for n in range(1, MOST_ROUNDS):
                if (shift[0] * n, shift[1] * n) == (rows, pegs):
                    return n, *shift
            return None
        if times and ends.clear and rows % times == 0 and pegs % times == 0 and (rows == 0 or pegs == 0):
            return times, rows // times, pegs // times
        return None

    def _rounds_by_votes(
        self, step: SaidStep, last: Spot, shift: Spot, times: int, reached: Spot
    ) -> tuple[int, int, int] | None:
        """Return how many rounds there are where their number and their end disagree: by what is said later."""
        end = _spot(step.end)
        if end is None or step.end is None or not step.end.clear:
            return None
        if (last[0] - shift[0] * times, last[1] - shift[1] * times) == end:
            return times, -shift[0], -shift[1]  # only the direction disagrees
        fitting = next(
            (n for n in range(1, MOST_ROUNDS) if (last[0] + shift[0] * n, last[1] + shift[1] * n) == end), None
        )
        later = Counter(
            _spot(peg)
            for one in self.all
            if one.start_s > step.start_s and one.kind in ("turn", "keep", "gather", "look", "bind", "place", "down")
            for peg in one.pegs[:1]
            if peg.clear
        )
        if fitting is not None and later[end] and not later[reached]:
            return fitting, *shift
        if later[reached] and not later[end]:
            return times, *shift
        return None

    def _closes_ring(self, moves: Sequence[Move], shift: Spot, times: int, end: Spot | None) -> bool:
        """Say whether the last round ends on the first peg of a ring."""
        first = _first_spot(moves[0])
        last = _last_spot(moves[-1])
        if end is None or first is None or last is None or shift != (0, 1):
            return False
        ring = last[1] + times - end[1]
        if end == first and ring > 2 and ring == (self.ring or self.highest):
            self.ring = ring
            return True
        return False


def _colours(moves: Iterable[Move]) -> list[str]:
    return [move.colour for move in moves if isinstance(move, (Place, Wind, Hang))]


def _supplies(steps: Sequence[SaidStep], letter: Callable[[str], str]) -> dict[str, int]:
    """Return how many bands of each colour are to be laid out, as far as it was heard."""
    found: dict[str, int] = {}
    for step in steps:
        if step.kind != "need":
            continue
        number = None
        for word in step.words:
            if word.number is not None:
                number = word.number
            if word.colour and number is not None:
                found.setdefault(letter(word.colour), number)
                number = None
    return found


def _is_off_loom(step: SaidStep) -> bool:
    """Say whether a band is said to go to a row that the loom, by all else that is said, does not have."""
    return step.kind == "place" and any(peg.row and peg.number and not peg.clear for peg in step.pegs if peg.row != "a")


def _spot(peg: HeardPeg | None) -> Spot | None:
    if peg is None or not peg.row or not peg.number:
        return None
    return ord(peg.row) - ord("a"), peg.number


def _parse(name: str) -> Spot:
    return ord(name[0].lower()) - ord("a"), int(name[1:])


def _name(spot: Spot) -> str:
    return f"{row_letter(spot[0])}{spot[1]}"


def _are_near(one: Spot, other: Spot) -> bool:
    return max(abs(one[0] - other[0]), abs(one[1] - other[1])) == 1


def _may_be(peg: HeardPeg, spot: Spot) -> bool:
    """Say whether what was heard of a peg's name leaves it open that it is this one."""
    row = ord(peg.row) - ord("a") if peg.row else spot[0]
    return row == spot[0] and (not peg.number or peg.number == spot[1])


def _pair_of(step: SaidStep) -> tuple[HeardPeg, HeardPeg] | None:
    if step.kind == "place" and len(step.pegs) == 2:
        return step.pegs[0], step.pegs[1]
    if step.kind in ("down", "slide") and step.pegs and step.target is not None:
        return step.pegs[0], step.target
    return None


def _vector(way: frozenset[str], turned: bool) -> Spot | None:
    """Return which way a direction goes on the loom as it lies: rows to the right, pegs away."""
    rows = ("right" in way) - ("left" in way)
    pegs = ("away" in way) - ("towards" in way)
    if {"left", "right"} <= way or {"away", "towards"} <= way or not (rows or pegs):
        return None
    return (-rows, -pegs) if turned else (rows, pegs)


def _shift(step: SaidStep) -> Spot | None:
    if step.shift is None:
        return None
    number, unit, way = step.shift
    if "round" in way:
        return (0, number) if number == 1 or number else None
    vector = _vector(way, step.turned)
    if number is None or vector is None or not (vector[0] == 0 or vector[1] == 0):
        return None
    if unit is not None and (unit == "row") != (vector[0] != 0):
        return None
    return vector[0] * number, vector[1] * number


def _last_spot(move: Move) -> Spot | None:
    name = getattr(move, "target", None) or getattr(move, "on", None) or getattr(move, "at", None)
    if isinstance(move, Place):
        name = move.over[-1]
    return _parse(name) if isinstance(name, str) else None


def _first_spot(move: Move) -> Spot | None:
    if isinstance(move, Place):
        return _parse(move.over[0])
    name = getattr(move, "source", None) or getattr(move, "on", None) or getattr(move, "at", None)
    return _parse(name) if isinstance(name, str) else None


def _moved(move: Move, rows: int, pegs: int, ring: int) -> Move | None:
    """Return a move further on; None where no such peg can be."""
    def change(address: Address) -> Address:
        number = address.number + pegs
        return Address(address.row + rows, (number - 1) % ring + 1 if ring else number)

    return with_pegs(move, change)
