"""The line: one function that takes a pattern through every stage, from the document to the proof."""

from __future__ import annotations

from typing import NamedTuple

from pegwright.finding import Finding, sum_up
from pegwright.fit import Supplies, check_hooked_bands, check_stated_counts, check_stretch, count_supplies
from pegwright.judging import find_falling, keep_safe_fixes
from pegwright.loom import History, check_loom, pause_collector, replay_pattern
from pegwright.pattern import Expansion, Pattern, expand
from pegwright.proof import Proof, check, prove
from pegwright.structure import Structure, structure_of
from pegwright.workshop.progress import ReportProgress, report_nothing

_STAGES = 6


class Work(NamedTuple):
    """A pattern and everything that the line has made of it, stage by stage, with every finding."""

    pattern: Pattern
    expansion: Expansion
    history: History
    structure: Structure
    proof: Proof
    supplies: Supplies
    findings: tuple[Finding, ...]

    @property
    def left_out(self) -> int:
        """How many faults made the line leave out part of the pattern, so that another piece was worked."""
        return sum(f.severity == "error" for f in (*self.expansion.findings, *self.history.findings))

    @property
    def holds(self) -> bool:
        """Whether every band of the pattern is proved held, and nothing was left out."""
        return bool(self.proof.verdicts) and not (self.proof.free or self.proof.unproved or self.left_out)


def work(pattern: Pattern, progress: ReportProgress = report_nothing) -> Work:
    """Take a pattern through the line: expand it, make every move, read the structure, prove it, count it."""
    with pause_collector():
        progress("working out the moves", 0, _STAGES)
        expansion = expand(pattern)
        progress("making every move", 1, _STAGES)
        history = replay_pattern(pattern, expansion)
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
        needs = count_supplies(pattern, history)
        refused = any(found.severity == "error" for found in history.findings)
        findings = sum_up(
            (
                *expansion.findings,
                *history.findings,
                *keep_safe_fixes(pattern, looked, proof),
                *check_stretch(pattern, history),
                *check_hooked_bands(pattern, history),
                *(() if refused else check_stated_counts(pattern, expansion)),
                *find_falling(history, proof),
            )
        )
    return Work(pattern, expansion, history, structure, proof, needs, findings)
