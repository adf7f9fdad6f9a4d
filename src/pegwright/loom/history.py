"""Work a pattern's moves one after the other and keep every state."""

from __future__ import annotations

from typing import Any, NamedTuple

from pegwright.finding import Finding, Location, finding
from pegwright.loom.board import Board, board_of
from pegwright.loom.events import Bight, Drawn, Event, Laid, Lifted
from pegwright.loom.machine import RefusedMove, apply_move
from pegwright.loom.notation import print_move
from pegwright.loom.state import State
from pegwright.pattern import Expansion, LocatedMove, Move, Pattern, expand

MAX_PASSES = 1_200_000
"""Bound on the record of what runs through what, in words of memory kept for all states together."""
_RECORD_WORDS = 8
MAX_REFUSED = 100
"""After so many refused moves the rest is not tried: what stands on the loom is no longer what was meant."""


class AppliedMove(NamedTuple):
    """A move that was made: where it stands in the pattern, its events, and the state after it."""

    located: LocatedMove
    events: tuple[Event, ...]
    after: State

    @property
    def move(self) -> Move:
        """The move itself."""
        return self.located.move

    @property
    def path(self) -> str:
        """Where it stands in the document (JSON Pointer)."""
        return self.located.path


class History(NamedTuple):
    """All moves made on a board, in order, from the empty loom.

    `colours[b - 1]` is the colour letter of band b. Moves that were refused are left out and are findings.
    """

    board: Board
    moves: tuple[AppliedMove, ...]
    colours: tuple[str, ...]
    findings: tuple[Finding, ...]

    @property
    def final(self) -> State:
        """The state after the last move."""
        return self.moves[-1].after if self.moves else State()

    def before(self, index: int) -> State:
        """Return the state before the move of that index."""
        return self.moves[index - 1].after if index else State()

    @property
    def events(self) -> tuple[Event, ...]:
        """Everything that happened, in order."""
        return tuple(event for applied in self.moves for event in applied.events)


def replay(board: Board, moves: tuple[LocatedMove, ...]) -> History:
    """Make every move in turn. A refused move becomes a finding and the work goes on without it.

    It stops, and says so, after `MAX_REFUSED` refused moves, or where the record would pass `MAX_PASSES`.
    """
    state = State()
    passes = refused = 0
    applied: list[AppliedMove] = []
    colours: list[str] = []
    findings = [finding("peg-double", peg=at, place=Location(peg=at)) for at in board.twice[:50]]
    for number, located in enumerate(moves, start=1):
        outcome = apply_move(board, state, located.move)
        if isinstance(outcome, RefusedMove):
            findings.append(_refusal_finding(outcome, located, number))
            refused += 1
            if refused == MAX_REFUSED and number < len(moves):
                left = len(moves) - number
                findings.append(
                    finding(
                        "too-many-refused", Location(path=located.path, step=number), count=refused, left=left
                    )
                )
                break
            continue
        passes += sum(
            _RECORD_WORDS + len(outcome.state.inside[loop])
            for event in outcome.events
            for loop in _loops_threaded_by(event)
        )
        if passes > MAX_PASSES:
            findings.append(finding("too-many-passes", Location(path=located.path, step=number)))
            break
        state = outcome.state
        applied.append(AppliedMove(located, outcome.events, state))
        colours += [_colour_of(located.move)] * sum(isinstance(e, Laid) for e in outcome.events)
    return History(board, tuple(applied), tuple(colours), tuple(findings))


def replay_pattern(pattern: Pattern, expansion: Expansion | None = None) -> History:
    """Expand a pattern, unless its expansion is given, and make every move on its own loom (see `replay`)."""
    return replay(board_of(pattern.loom), (expansion or expand(pattern)).moves)


def _loops_threaded_by(event: Event) -> tuple[Bight, ...]:
    match event:
        case Drawn():
            return event.through
        case Lifted():
            return (event.bight,)
        case _:
            return ()


def _colour_of(move: Move) -> str:
    colour: Any = getattr(move, "colour", "")
    return str(colour)


def _refusal_finding(refused: RefusedMove, located: LocatedMove, number: int) -> Finding:
    place = Location(path=located.path, step=number, peg=refused.peg)
    return finding(refused.code, place, move=print_move(located.move), **refused.facts)
