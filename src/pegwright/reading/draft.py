"""A draft: what the sentences so far amount to, and the loom as it stands after them."""

from __future__ import annotations

from typing import NamedTuple

from pegwright.loom import Board, RefusedMove, State, apply_move
from pegwright.pattern import Address, Move, Wind, is_address, named_pegs, parse_address


class Reading(NamedTuple):
    """One way to take a sentence: the moves it asks for, its likelihood, and what is known after it.

    `opens` means that a new block of steps starts after it; a later “repeat” reaches back no further.
    """

    moves: tuple[Move, ...]
    likelihood: float
    colour: str = ""
    cursor: str = ""
    opens: bool = False
    blanks: tuple[str, ...] = ()


class Draft(NamedTuple):
    """The moves so far, the loom, and what later sentences can refer to.

    `cursor` is the peg where the last band ended, `block` the first move that a “repeat” can reach, `units`
    the index where each sentence's moves start, and `score` the product of the likelihoods.
    """

    state: State
    moves: tuple[Move, ...] = ()
    score: float = 1.0
    colour: str = ""
    cursor: str = ""
    block: int = 0
    units: tuple[int, ...] = ()
    chosen: tuple[Reading, ...] = ()

    @property
    def side(self) -> int:
        """Return 1, or −1 if the loom has been turned round, which swaps left and right, far and near."""
        return -1 if self.state.turned else 1

    def extend(self, board: Board, reading: Reading) -> Draft | None:
        """Return the draft with a reading added, or None if the loom refuses it."""
        state = self.state
        for move in reading.moves:
            done = apply_move(board, state, move)
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
        )

    def loaded_pegs(self) -> list[str]:
        """Return the pegs that hold loops, nearest to the maker first."""
        held = [holder for holder, loops in self.state.stacks.items() if loops and is_address(holder)]
        return sorted(held, key=lambda peg: (parse_address(peg).number * self.side, parse_address(peg).row))

    def beside(self, peg: str, rows: int, pegs: int) -> str | None:
        """Return the peg `rows` to the maker's right and `pegs` away from the maker, or None."""
        row, number = parse_address(peg)
        row, number = row + rows * self.side, number + pegs * self.side
        return str(Address(row, number)) if row >= 0 and number >= 1 else None
