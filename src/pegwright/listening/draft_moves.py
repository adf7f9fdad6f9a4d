"""Make moves of the steps heard in a recording, as far as they can be told, and leave the others blank.

What is said twice in other words must agree: where a band goes to and in which direction; where a loop is
put; how often something is done again, by how much it moves on, and where the last round ends. Of such a
group one that was not heard follows from the others. Where they disagree the step is left blank.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from itertools import pairwise
from typing import NamedTuple

from pegwright.listening.draft_colours import Palette
from pegwright.listening.draft_spots import (
    PegSpot,
    are_near,
    colours_of,
    first_spot,
    is_off_loom,
    is_part_of,
    last_spot,
    may_be,
    move_on,
    name_of,
    pair_of,
    shift_of,
    spot_named,
    spot_of,
    supplies_in,
    vector_of,
)
from pegwright.listening.draft_steps import SaidStep
from pegwright.listening.draft_words import HeardPeg
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
    Slide,
    Transfer,
    Turn,
    Wind,
)

HABIT = 0.75
"""In so many of the clear steps a direction must mean the next peg, for it to tell one (no source)."""
MOST_ROUNDS = 400


class MadeStep(NamedTuple):
    """A step with the moves that it adds, none where it is blank, and how its block is repeated."""

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
        self.steps = [
            step
            for step in steps
            if step.kind not in ("need", "used", "keep", "look") and not is_off_loom(step)
        ]
        self.all = steps
        self.palette = palette
        self.letter = letter
        self.made: list[MadeStep] = []
        self.ring = 0
        self.highest = max((peg.number or 0 for step in steps for peg in step.pegs if peg.clear), default=0)
        self.rows = {peg.row for step in steps for peg in step.pegs if peg.clear}
        self.vectors, self.habit = self._count_vectors()
        self.drops = any(step.kind == "drop" for step in steps)
        self.supplies = supplies_in(steps, letter)
        loops = [step.loop for step in steps if step.kind in ("down", "slide", "drop", "grip") and step.loop]
        self.ends = {
            spot_of(peg)
            for step in steps
            for peg in ((step.end,) if step.kind == "again" else step.pegs if step.kind == "look" else ())
        }
        self.together = any(step.together for step in steps)
        self.always_lowest = len(loops) > 1 and set(loops) == {"lowest"}
        self.offset: int | None = None
        """By how much the number of a step as it is said is more than that of ours."""

    def make(self) -> list[MadeStep]:
        """Return the steps with their moves."""
        for k, step in enumerate(self.steps):
            if k + 1 < len(self.steps) and self.steps[k + 1].kind == "again":
                self._take_end(step, self.steps[k + 1])
            if step.kind == "again":
                self.made.append(self._again(step))
            else:
                moves = getattr(self, f"_{step.kind.replace('-', '_')}", self._blank)(step)
                self.made.append(MadeStep(step, moves))
        return self.made

    def _take_end(self, step: SaidStep, again: SaidStep) -> None:
        """Fill in where a step ends that was not heard, from where its last round ends."""
        shift, end = shift_of(again), spot_of(again.end)
        if shift is None or end is None or not again.number or again.end is None or not again.end.clear:
            return
        row, number = end[0] - shift[0] * again.number, end[1] - shift[1] * again.number
        if row < 0 or number < 1:
            return
        peg = HeardPeg(chr(ord("a") + row), number)
        if step.kind == "down" and step.target is None and step.gripped:
            step.target = peg
        elif step.kind == "place" and len(step.pegs) == 2 and step.pegs[1].number is None:
            step.pegs[1] = peg

    def _blank(self, _: SaidStep) -> tuple[Move, ...]:
        return ()

    def _count_vectors(self) -> tuple[Counter[PegSpot], bool]:
        """Return which ways bands and loops clearly go, and whether a direction always means the next peg."""
        seen: Counter[PegSpot] = Counter()
        disagree = 0
        for step in self.steps:
            pair = pair_of(step)
            vector = vector_of(step.way, step.turned)
            if pair is None or vector is None or not (pair[0].clear and pair[1].clear):
                continue
            one, other = (spot_of(peg) for peg in pair)
            if one is None or other is None:
                continue
            if (one[0] + vector[0], one[1] + vector[1]) == other:
                seen[vector] += 1
            else:
                disagree += 1
        return seen, seen.total() >= 1 and seen.total() >= HABIT * (seen.total() + disagree)

    def _pair(self, one: HeardPeg, other: HeardPeg, step: SaidStep) -> tuple[PegSpot, PegSpot] | None:
        """Return from which peg to which, or None where that cannot be told."""
        vector = vector_of(step.way, step.turned)
        a, b = spot_of(one), spot_of(other)
        if any(peg.row and not peg.clear and peg.row not in self.rows for peg in (one, other)):
            return None
        if a is not None and b is not None:
            if vector is not None and self.habit and (a[0] + vector[0], a[1] + vector[1]) == b:
                return a, b
            if vector is not None and not (one.clear and other.clear):
                return None
            return (a, b) if are_near(a, b) or (vector is not None and not self.habit and a != b) else None
        if vector is None:
            return None
        half = bool(one.number and other.number and len(self.rows) == 1)  # only the row was not heard
        if not half and not (self.habit and vector in self.vectors):
            return None
        if any(is_part_of(vector, whole) for whole in self.vectors):
            return None  # the other half of the direction may not have been heard
        if a is not None and one.clear:
            b = a[0] + vector[0], a[1] + vector[1]
        elif b is not None and other.clear:
            a = b[0] - vector[0], b[1] - vector[1]
        if a is None or b is None or not (may_be(one, a) and may_be(other, b)):
            return None
        return (a, b) if min(*a, *b) >= 0 and min(a[1], b[1]) > 0 else None

    def _place(self, step: SaidStep) -> tuple[Move, ...]:
        if len(step.pegs) != 2 or step.colour is None:
            return ()
        pair = self._pair(step.pegs[0], step.pegs[1], step)
        if pair is None:
            return ()
        over = (name_of(pair[0]), name_of(pair[1]))
        return (
            Place(colour=self.letter(step.colour), over=over, twists=(step.through,) if step.through else ()),
        )

    def _down(self, step: SaidStep) -> tuple[Move, ...]:
        if self.made and self.made[-1].said.kind == "hang" and step.kind == "down":
            return self._slide(step)
        return self._hook(step)

    def _hook(self, step: SaidStep) -> tuple[Hook, ...]:
        if step.target is None:
            return ()
        source = step.pegs[0] if step.pegs else HeardPeg(None, None)
        pair = self._pair(source, step.target, step)
        loop = self._loop(step)
        if pair is None or loop is None:
            return ()
        through = step.through
        return (
            Hook(
                source=name_of(pair[0]),
                target=name_of(pair[1]),
                loop=loop,
                through=through,
                together=step.together or 1,
            ),
        )

    def _slide(self, step: SaidStep) -> tuple[Move, ...]:
        return tuple(Slide(source=one.source, target=one.target, loop=one.loop) for one in self._hook(step))

    def _loop(self, step: SaidStep) -> int | None:
        if step.together is None and self.together:
            return None  # how many was not heard
        if step.loop == "lowest":
            return 1
        if step.loop == "top":
            return -1
        if step.loop is None and self.always_lowest:
            return 1
        return step.loop if isinstance(step.loop, int) else None

    def _drop(self, step: SaidStep) -> tuple[Move, ...]:
        spot = spot_of(step.pegs[0]) if step.pegs else None
        loop = self._loop(step)
        if spot is None or loop is None:
            return ()
        return (Lift(at=name_of(spot), loop=loop, together=step.together or 1),)

    def _grip(self, step: SaidStep) -> tuple[Move, ...]:
        return self._drop(step) if self.drops else ()

    def _move_over(self, step: SaidStep) -> tuple[Move, ...]:
        if len(step.pegs) != 2:
            return ()
        pair = self._pair(step.pegs[0], step.pegs[1], step)
        return (Transfer(source=name_of(pair[0]), target=name_of(pair[1])),) if pair else ()

    def _wind(self, step: SaidStep) -> tuple[Move, ...]:
        spot = spot_of(step.pegs[0]) if step.pegs else None
        if spot is None or step.colour is None or step.number is None or not 1 < step.number <= 8:
            return ()
        return (Wind(colour=self.letter(step.colour), on=name_of(spot), turns=step.number),)

    def _hang(self, step: SaidStep) -> tuple[Move, ...]:
        if step.colour is None or step.number is None or not 1 < step.number <= 8:
            return ()
        return (Hang(colour=self.letter(step.colour), turns=step.number),)

    def _turn(self, _: SaidStep) -> tuple[Move, ...]:
        return (Turn(),)

    def _bind(self, step: SaidStep) -> tuple[Move, ...]:
        if step.colour is None or not step.gripped:
            return ()
        spot = spot_of(step.pegs[0]) if step.pegs else None
        last = self._last_target()
        if last is not None and (not step.pegs or may_be(step.pegs[0], last)):
            spot = last
        elif spot is None or last is not None or spot not in self.ends:
            return ()
        return (Bind(colour=self.letter(step.colour), at=name_of(spot)),)

    def _last_target(self) -> PegSpot | None:
        """Return the peg to which the last loop was hooked, where that step is known."""
        for one in reversed(self.made):
            if one.said.kind in ("down", "slide", "again", "drop", "grip", "move-over"):
                move = one.moves[-1] if one.moves else None
                return spot_named(move.target) if isinstance(move, Hook) else None
        return None

    def _extend(self, step: SaidStep) -> tuple[Move, ...]:
        if step.colour is None or step.number is None or not 1 <= step.number <= 60:
            return ()
        if not any(one.said.kind == "bind" for one in self.made):
            return ()
        return (Extend(colour=self.letter(step.colour), bands=step.number),)

    def _gather(self, step: SaidStep) -> tuple[Move, ...]:
        kept = [one.pegs[0] for one in self.all if one.kind == "keep" and one.pegs]
        names = [spot for peg in (*step.pegs[:1], *kept) if (spot := spot_of(peg)) is not None]
        if not names or not step.gripped:
            return ()
        spot = spot_of(step.pegs[0]) if step.pegs else None
        if spot is None:
            spot, count = Counter(names).most_common(1)[0]
            if count < 2:
                return ()
        elif len(set(names)) > 1:
            return ()
        bound = any(one.said.kind == "bind" for one in self.made) or (
            step.loop == "end" and not step.same_place
        )
        if step.same_place == bound:  # the first band, or the free end: one of them
            return ()
        return (Clip(at=("end" if bound else "start", name_of(spot))),)

    def _cord(self, step: SaidStep) -> tuple[Move, ...]:
        spots = [spot_of(peg) for peg in step.pegs]
        if step.same_place and len(spots) == 2 and None not in spots:
            (row, first), (other, last) = spots  # type: ignore[misc]
            if row == other and first < last:
                return (Knot(at=tuple(name_of((row, n)) for n in range(first, last + 1))),)
            return ()
        if len(spots) < 2 or None in spots or len(set(spots)) != len(spots):
            return ()
        known: list[PegSpot] = spots  # type: ignore[assignment]
        words = step.words
        at = [k for k, word in enumerate(words) if word.peg is not None]
        if any(word.peg is None and word.text.isdecimal() for word in words[at[0] :]):
            return ()
        if "and" not in {sign for word in words[at[-2] + 1 : at[-1]] for sign, _ in word.signs}:
            return ()
        steps = {(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(known)}
        if len(steps) != 1:
            return ()
        return (Knot(at=tuple(name_of(spot) for spot in known)),)

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
                moved = move_on(move, rows * n, pegs * n, self.ring)
                if moved is None:
                    return blank
                added.append(moved)
            if any(
                moved != move_on(move, rows * n, pegs * n, 0)
                for move, moved in zip(moves, added[-len(moves) :], strict=True)
            ):
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
                block = None if step.same_place or not step.gripped else self._natural_block()
                return block if block is not None and block > 1 else None
            self.offset = last - at
            if expected is not None and self.offset != expected:
                return None  # a step was not heard, or one too many
            block = last - first + 1
            return block if 1 <= block <= at else None
        if not self.made:
            return None
        if step.same_place:
            return self._block_by_supplies(step)
        return self._natural_block()

    def _natural_block(self) -> int | None:
        """Return how many steps “that” is: all since the last that were done again, or since the turn."""
        at = len(self.made)
        if not self.made:
            return None
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
        before = Counter(colours_of(move for one in self.made for move in one.moves))
        for block in range(1, len(self.made) + 1):
            taken = Counter(colours_of(self._moves_of(block)))
            needs = {colour: self.supplies.get(colour) for colour in taken}
            times = step.number or 0
            if taken and all(before[one] + times * taken[one] == needs[one] for one in taken):
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
        last = last_spot(moves[-1])
        if last is None:
            return None
        shift = shift_of(step)
        first, shown = first_spot(moves[0]), spot_of(step.pegs[0]) if step.pegs else None
        if shift is None and first is not None and shown is not None and step.pegs[0].clear:
            moved = shown[0] - first[0], shown[1] - first[1]
            if step.shift is None or step.shift[0] in (None, max(map(abs, moved))):
                shift = moved if (moved[0] == 0) != (moved[1] == 0) else None
        end = spot_of(step.end) if step.end is not None else None
        ends = step.end or HeardPeg(None, None)
        if shift is not None and times:
            reached = (last[0] + shift[0] * times, last[1] + shift[1] * times)
            if may_be(ends, reached) and min(reached) >= 0 and reached[1] > 0:
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
        self, step: SaidStep, last: PegSpot, shift: PegSpot, times: int, reached: PegSpot
    ) -> tuple[int, int, int] | None:
        """Return how many rounds there are where number and end disagree: by what is said later."""
        end = spot_of(step.end)
        if end is None or step.end is None or not step.end.clear:
            return None
        if (last[0] - shift[0] * times, last[1] - shift[1] * times) == end:
            return times, -shift[0], -shift[1]  # only the direction disagrees
        fitting = next(
            (n for n in range(1, MOST_ROUNDS) if (last[0] + shift[0] * n, last[1] + shift[1] * n) == end),
            None,
        )
        later = Counter(
            spot_of(peg)
            for one in self.all
            if one.start_s > step.start_s
            and one.kind in ("turn", "keep", "gather", "look", "bind", "place", "down")
            for peg in one.pegs[:1]
            if peg.clear
        )
        if fitting is not None and later[end] and not later[reached]:
            return fitting, *shift
        if later[reached] and not later[end]:
            return times, *shift
        return None

    def _closes_ring(self, moves: Sequence[Move], shift: PegSpot, times: int, end: PegSpot | None) -> bool:
        """Say whether the last round ends on the first peg of a ring."""
        first = first_spot(moves[0])
        last = last_spot(moves[-1])
        if end is None or first is None or last is None or shift != (0, 1):
            return False
        ring = last[1] + times - end[1]
        if end == first and ring > 2 and ring == (self.ring or self.highest):
            self.ring = ring
            return True
        return False
