"""A worked pattern as the page shows it: moves and their events, findings, verdict, supplies."""

from __future__ import annotations

from typing import Literal

import msgspec

from pegwright.finding import Language, WordedFinding, word_finding
from pegwright.loom import Event, print_move, step_numbers
from pegwright.pattern import Bind, Clip, Extend, Knot, Move, Peg, Place, Turn, Wind
from pegwright.workshop import Work

MovePhase = Literal["place", "turn", "work", "finish"]


class WorkedRound(msgspec.Struct, frozen=True):
    """Which round (from 1, and of how many) of which repeat (JSON Pointer) a move is in."""

    path: str
    round: int
    of: int


class WorkedMove(msgspec.Struct, frozen=True, kw_only=True):
    """One move that was made: its number, its place in the document, its line, its events."""

    step: int
    path: str
    phase: MovePhase
    do: str
    line: str
    note: str
    motif: str
    rounds: tuple[WorkedRound, ...]
    events: tuple[Event, ...]


class WorkedHeap(msgspec.Struct, frozen=True, kw_only=True):
    """The bands of one colour and kind, and how many the piece takes."""

    letter: str
    name: str
    band: str
    count: int


class WorkResponse(msgspec.Struct, frozen=True, kw_only=True):
    """A pattern as the line sees it. Lengths in mm; `colours[b - 1]` is the letter of band b.

    If the text is no pattern, everything but the findings is empty.
    """

    readable: bool
    pegs: tuple[Peg, ...] = ()
    peg_mm: float = 5.0
    height_mm: float = 16.0
    moves: tuple[WorkedMove, ...] = ()
    colours: tuple[str, ...] = ()
    findings: tuple[WordedFinding, ...] = ()
    holds: bool = False
    falls: tuple[int, ...] = ()
    unproved: tuple[int, ...] = ()
    heaps: tuple[WorkedHeap, ...] = ()
    clips: int = 0


def work_response(work: Work, language: Language = "en") -> WorkResponse:
    """Return what the line made of a pattern, with worded findings."""
    history = work.history
    moves = [
        WorkedMove(
            step=number,
            path=done.path,
            phase=phase_of(done.move),
            do=done.move.__struct_config__.tag or "",  # type: ignore[arg-type]
            line=print_move(done.move),
            note=done.move.note or done.move.warning,
            motif=done.located.motif,
            rounds=tuple(WorkedRound(*each) for each in done.located.rounds),
            events=done.events,
        )
        for number, done in zip(step_numbers(history), history.moves, strict=True)
    ]
    return WorkResponse(
        readable=True,
        pegs=tuple(history.board.pegs.values()),
        peg_mm=history.board.peg_mm,
        height_mm=history.board.height_mm,
        moves=tuple(moves),
        colours=history.colours,
        findings=tuple(word_finding(each, language) for each in work.findings),
        holds=work.holds,
        falls=work.proof.free,
        unproved=work.proof.unproved,
        heaps=tuple(
            WorkedHeap(letter=heap.letter, name=heap.name, band=heap.band, count=heap.worked)
            for heap in work.supplies.heaps
        ),
        clips=work.supplies.clips,
    )


def phase_of(move: Move) -> MovePhase:
    """Return the phase of making that a move belongs to."""
    match move:
        case Place() | Wind():
            return "place"
        case Turn():
            return "turn"
        case Bind() | Extend() | Knot() | Clip():
            return "finish"
        case _:
            return "work"
