"""The line: one function that takes a pattern through every stage, and one that takes it on to the lesson."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from pegwright.finding import Finding
from pegwright.finding.summing import sum_up
from pegwright.fit.on_loom import check_hooked
from pegwright.fit.stated import check_stated
from pegwright.fit.stretch import check_stretch
from pegwright.fit.supplies import Supplies, supplies
from pegwright.lesson import UNASKED, Finish, Hand, Lesson, Pace, Units, plan
from pegwright.loom import History, board, replay
from pegwright.loom.checks import check_loom
from pegwright.pattern import Expansion, Pattern, expand
from pegwright.proof import Proof, check, prove
from pegwright.rehearsal import Rehearsal
from pegwright.structure import Structure, structure_of
from pegwright.workshop.mending import sound_fixes
from pegwright.workshop.progress import Progress, collector_at_rest, silent
from pegwright.workshop.verdict import find_falling, verdict

_STAGES = 6


class Work(NamedTuple):
    """A pattern and all that the line has made of it, stage by stage, with every finding."""

    pattern: Pattern
    expansion: Expansion
    history: History
    structure: Structure
    proof: Proof
    supplies: Supplies
    findings: tuple[Finding, ...]

    @property
    def left_out(self) -> int:
        """How many faults made the line leave out what the pattern says: the piece worked is then another."""
        return sum(f.severity == "error" for f in (*self.expansion.findings, *self.history.findings))

    @property
    def holds(self) -> bool:
        """Whether every band of the pattern is proved held, with nothing left out."""
        return bool(self.proof.verdicts) and not (self.proof.free or self.proof.unproved or self.left_out)


def work(pattern: Pattern, progress: Progress = silent) -> Work:
    """Take a pattern through the line: work out, make every move, read the structure, prove it, count it."""
    with collector_at_rest():
        progress("working out the moves", 0, _STAGES)
        expansion = expand(pattern)
        progress("making every move", 1, _STAGES)
        history = replay(board(pattern.loom), expansion.doings)
        progress("looking at the working", 2, _STAGES)
        looked = check_loom(pattern, expansion, history)
        progress("reading what passes through what", 3, _STAGES)
        events = history.events
        structure = structure_of(events, history.board.spots)
        progress("proving that every band is held", 4, _STAGES)
        proof = prove(structure)
        rejected = check(events, proof, history.board.spots)
        if rejected is not None:
            raise AssertionError(f"the checker rejects the proof of this pattern: {rejected}")
        progress("counting the supplies", 5, _STAGES)
        needs = supplies(pattern, history)
        refused = any(found.severity == "error" for found in history.findings)
        findings = sum_up(
            (
                *expansion.findings,
                *history.findings,
                *sound_fixes(pattern, looked, proof),
                *check_stretch(pattern, history),
                *check_hooked(pattern, history),
                *(() if refused else check_stated(pattern, expansion)),
                *find_falling(history, proof),
            )
        )
    return Work(pattern, expansion, history, structure, proof, needs, findings)


def lesson(
    work: Work,
    language: str = "en",
    *,
    hand: Hand = "right",
    pace: Pace | None = None,
    units: Units = "metric",
    phrases: Mapping[str, str] | None = None,
    rehearsal: Rehearsal | None = None,
    finish: Finish = UNASKED,
) -> Lesson:
    """Plan the lesson of a piece that has been worked. Options as in `pegwright.lesson.plan`.

    Raises:
        ValueError: there are no words for the language.
    """
    return plan(
        work.pattern,
        work.history,
        work.supplies,
        verdict(work),
        language=language,
        hand=hand,
        pace=pace,
        units=units,
        phrases=phrases,
        rehearsal=rehearsal,
        finish=finish,
    )
