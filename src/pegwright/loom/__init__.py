"""The machine: pegs, stacks of loops, moves, refusals, history."""

from pegwright.loom.apply import Applied, Refused, apply
from pegwright.loom.board import Board, board
from pegwright.loom.events import Bight, Drawn, Event, Fastened, Laid, Lifted, Moved, Seat, Turned
from pegwright.loom.history import Done, History, replay
from pegwright.loom.legal import legal_moves
from pegwright.loom.notation import parse_bight, parse_move, parse_state, print_move, print_state
from pegwright.loom.record import enact, revert
from pegwright.loom.state import HOOK, Held, Stack, State, end_holder

__all__ = [
    "HOOK",
    "Applied",
    "Bight",
    "Board",
    "Done",
    "Drawn",
    "Event",
    "Fastened",
    "Held",
    "History",
    "Laid",
    "Lifted",
    "Moved",
    "Refused",
    "Seat",
    "Stack",
    "State",
    "Turned",
    "apply",
    "board",
    "enact",
    "end_holder",
    "legal_moves",
    "parse_bight",
    "parse_move",
    "parse_state",
    "print_move",
    "print_state",
    "replay",
    "revert",
]
