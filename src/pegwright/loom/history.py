"""Work a pattern's moves one after the other and keep every state."""

from __future__ import annotations

from typing import Any, NamedTuple

from pegwright.finding import Finding, Place, finding
from pegwright.loom.apply import Refused, apply
from pegwright.loom.board import Board
from pegwright.loom.events import Bight, Drawn, Event, Laid, Lifted
from pegwright.loom.notation import print_move
from pegwright.loom.state import State
from pegwright.pattern import Doing, Move

MOST_PASSES = 1_200_000
"""Bound on the record of what runs through what, in words of memory kept for all states together."""
_RECORD_WORDS = 8
MOST_REFUSED = 100
"""After so many refused moves the rest is not tried: what stands on the loom is no longer what was meant."""


class Done(NamedTuple):
    """One move made: what was done, the events it gave, and the state after it."""

    doing: Doing
    events: tuple[Event, ...]
    after: State


class History(NamedTuple):
    """All moves made on a board, in order, from the empty loom.

    `colours[b - 1]` is the colour letter of band b. Moves that were refused are left out and are findings.
    """

    board: Board
    done: tuple[Done, ...]
    colours: tuple[str, ...]
    findings: tuple[Finding, ...]

    @property
    def final(self) -> State:
        """The state after the last move."""
        return self.done[-1].after if self.done else State()

    def before(self, index: int) -> State:
        """Return the state before the move of that index."""
        return self.done[index - 1].after if index else State()

    @property
    def events(self) -> tuple[Event, ...]:
        """Everything that happened, in order."""
        return tuple(event for done in self.done for event in done.events)


def replay(board: Board, doings: tuple[Doing, ...]) -> History:
    """Make every move in turn. A refused move becomes a finding and the work goes on without it.

    It stops, and says so, after `MOST_REFUSED` refused moves, or where the record would pass `MOST_PASSES`.
    """
    state = State()
    passes = refused = 0
    done: list[Done] = []
    colours: list[str] = []
    findings = [finding("peg-double", peg=at, place=Place(peg=at)) for at in board.twice[:50]]
    for number, doing in enumerate(doings, start=1):
        outcome = apply(board, state, doing.move)
        if isinstance(outcome, Refused):
            findings.append(_refusal(outcome, doing, number))
            refused += 1
            if refused == MOST_REFUSED and number < len(doings):
                left = len(doings) - number
                findings.append(
                    finding("too-many-refused", Place(path=doing.path, step=number), count=refused, left=left)
                )
                break
            continue
        passes += sum(
            _RECORD_WORDS + len(outcome.state.inside[loop])
            for event in outcome.events
            for loop in _threaded(event)
        )
        if passes > MOST_PASSES:
            findings.append(finding("too-many-passes", Place(path=doing.path, step=number)))
            break
        state = outcome.state
        done.append(Done(doing, outcome.events, state))
        colours += [_colour(doing.move)] * sum(isinstance(e, Laid) for e in outcome.events)
    return History(board, tuple(done), tuple(colours), tuple(findings))


def _threaded(event: Event) -> tuple[Bight, ...]:
    match event:
        case Drawn():
            return event.through
        case Lifted():
            return (event.bight,)
        case _:
            return ()


def _colour(move: Move) -> str:
    colour: Any = getattr(move, "colour", "")
    return str(colour)


def _refusal(refused: Refused, doing: Doing, number: int) -> Finding:
    place = Place(path=doing.path, step=number, peg=refused.peg)
    return finding(refused.code, place, move=print_move(doing.move), **refused.facts)
