"""A draft: what the sentences so far amount to, and the loom as it stands after them."""

from __future__ import annotations

import math
from typing import NamedTuple

from pegwright.loom import Board, RefusedMove, State, apply_move
from pegwright.pattern import Move, Wind, is_address, named_pegs, parse_address, peg_name


class Gap(NamedTuple):
    """What a sentence does not say, by its key, and what may be meant, the likeliest first."""

    key: str
    offers: tuple[str, ...] = ()


class Reading(NamedTuple):
    """One way to take a sentence: the moves it asks for, its likelihood, and what is known after it.

    `opens` means that a new block of steps starts after it; a later “repeat” reaches back no further.
    What the sentence leaves open stands in `gaps`; the moves then take the first that is offered.
    """

    moves: tuple[Move, ...]
    likelihood: float
    colour: str = ""
    cursor: str = ""
    opens: bool = False
    gaps: tuple[Gap, ...] = ()


class Draft(NamedTuple):
    """The moves so far, the loom as they leave it, and what later sentences may refer to.

    `cursor` is the peg where the last band ended, `block` the first move that a “repeat” may reach,
    `units` where the moves of each sentence begin; `score` is the product of the likelihoods, `before`
    the draft without the last sentence, `started` says that the cursor is where a sentence began, not where a
    band ended.
    """

    board: Board
    state: State
    moves: tuple[Move, ...] = ()
    score: float = 1.0
    colour: str = ""
    cursor: str = ""
    block: int = 0
    units: tuple[int, ...] = ()
    chosen: tuple[Reading, ...] = ()
    before: Draft | None = None
    started: bool = False

    @property
    def side(self) -> int:
        """Return 1, or −1 if the loom has been turned round, which swaps left and right, far and near."""
        return -1 if self.state.turned else 1

    def extend(self, reading: Reading) -> Draft | None:
        """Return the draft with a reading added, or None if the loom refuses it."""
        state = self.state
        for move in reading.moves:
            done = apply_move(self.board, state, move)
            if isinstance(done, RefusedMove):
                return None
            state = done.state
        made = (*self.moves, *reading.moves)
        ends = [peg for move in reading.moves if not isinstance(move, Wind) for peg in named_pegs(move)[-1:]]
        return self._replace(
            state=state,
            moves=made,
            score=self.score * reading.likelihood,
            colour=reading.colour or self.colour,
            cursor=reading.cursor or (ends[-1] if ends else self.cursor),
            block=len(made) if reading.opens else self.block,
            units=(*self.units, len(self.moves)) if reading.moves else self.units,
            chosen=(*self.chosen, reading),
            before=self,
            started=bool(reading.cursor) or (self.started and not reading.moves),
        )

    def join_readings(self, kept: int) -> Draft:
        """Return the draft with the readings after the first `kept` as one: those of a sentence's clauses."""
        several = self.chosen[kept:]
        joined = Reading(
            moves=tuple(move for one in several for move in one.moves),
            likelihood=math.prod(one.likelihood for one in several),
            gaps=tuple(gap for one in several for gap in one.gaps),
        )
        before = self.before
        while before is not None and len(before.chosen) > kept:
            before = before.before
        return self._replace(chosen=(*self.chosen[:kept], joined), before=before)

    def take_back(self) -> Draft | None:
        """Return the draft without what the last sentence came to, though the sentence still counts."""
        return (
            None
            if self.before is None
            else self.before._replace(chosen=(*self.before.chosen, Reading((), 1.0)))
        )

    def moves_of(self, sentences: tuple[int, ...]) -> tuple[Move, ...]:
        """Return the moves of some of the sentences that were read, by their order among these."""
        return tuple(move for at in sentences if at < len(self.chosen) for move in self.chosen[at].moves)

    def loaded_pegs(self) -> list[str]:
        """Return the pegs that hold loops, nearest to the maker first."""
        held = [holder for holder, loops in self.state.stacks.items() if loops and is_address(holder)]
        return sorted(held, key=lambda peg: (parse_address(peg).number * self.side, parse_address(peg).row))

    def beside(self, peg: str, rows: int, pegs: int) -> str | None:
        """Return the peg `rows` to the maker's right and `pegs` away from the maker, or None."""
        row, number = parse_address(peg)
        row, number = row + rows * self.side, number + pegs * self.side
        return peg_name(row, number)

    def run_of(self, pair: tuple[str, str]) -> tuple[tuple[str, str], ...]:
        """Return the pair and those that follow it in the same way as far as the loom goes."""
        one, other = parse_address(pair[0]), parse_address(pair[1])
        rows, pegs = other.row - one.row, other.number - one.number
        found: list[tuple[str, str]] = []
        while (rows or pegs) and pair[0] in self.board.pegs and pair[1] in self.board.pegs:
            found.append(pair)
            here = parse_address(pair[1])
            following = peg_name(here.row + rows, here.number + pegs)
            if following is None:
                break
            pair = (pair[1], following)
        return tuple(found)
