"""The smallest changes that make a piece hold, each proved."""

from __future__ import annotations

import math
import time
from collections import Counter
from typing import Any, NamedTuple

import jsonpatch
import msgspec

from pegwright.finding import Finding, Fix, finding
from pegwright.judging import find_falling
from pegwright.loom import History, check_loom, pause_collector, replay_pattern
from pegwright.pattern import Pattern, expand, write_pattern
from pegwright.planner.description import SpokenMove, describe
from pegwright.planner.hold_test import every_band_is_held
from pegwright.planner.proposals import ReportTries, report_no_tries
from pegwright.planner.step_edits import step_edits
from pegwright.planner.step_lists import StepEdit
from pegwright.proof import Proof, check, prove
from pegwright.structure import structure_of

__all__ = ["Mend", "Mends", "find_mends"]

_MOST_FOUND = 12
_FURTHER = 0.75
"""Once a mend is found, changes that are so much more doubtful are not tried any more."""
_ROOT_CODES = ("band-falls", "band-not-proved")


class Mend(NamedTuple):
    """One change that makes every band hold: what it does as a fix, and the mended pattern.

    `changed` counts the passages of loops through loops that differ, `more_bands` the bands added (negative:
    taken out), `phrases` the number of phrases that the whole working then takes.
    """

    fix: Fix
    pattern: Pattern
    changed: int
    more_bands: int
    phrases: int
    cautions: int

    @property
    def rank(self) -> tuple[float, ...]:
        """The sort key of mends: same number of bands, few warnings, regular, little changed."""
        return (abs(self.more_bands), self.cautions, self.phrases + self.changed)


class Mends(NamedTuple):
    """The mends found, smallest first, and what was wrong, as a single cause.

    `findings` holds the cause, with the first mend as its fix, and how many bands merely fall with it.
    `tried` counts the changes proved or rejected.
    """

    found: tuple[Mend, ...]
    tried: int
    cut_short: bool
    findings: tuple[Finding, ...]


def find_mends(
    pattern: Pattern, *, most: int = 3, seconds: float = 10.0, progress: ReportTries = report_no_tries
) -> Mends:
    """Find up to `most` single changes under which every band is proved held and the checker agrees.

    After `seconds` the best so far are returned. `progress` may raise to cancel.
    """
    ends = time.monotonic() + seconds
    with pause_collector():
        expansion = expand(pattern)
        history = replay_pattern(pattern, expansion)
        proof = prove(structure_of(history.events, history.board.spots))
        refused = any(f.severity == "error" for f in history.findings)
        if not (proof.free or proof.unproved or refused or not proof.verdicts):
            held = finding("holds-already", bands=len(proof.verdicts))
            return Mends((), 0, cut_short=False, findings=(held,))
        if any(f.severity == "error" for f in expansion.findings) or not proof.verdicts:
            return Mends((), 0, cut_short=False, findings=expansion.findings)
        causes = _causes(history, proof)
        edits = step_edits(pattern, expansion, history, frozenset(_roots(history, proof, causes)))
        known = _Broken(msgspec.json.decode(write_pattern(pattern)), history)
        found, tried = _try_edits(known, edits, ends, progress)
    found.sort(key=lambda mend: mend.rank)
    cut_short = time.monotonic() > ends
    return Mends(tuple(found[:most]), tried, cut_short, _one_cause(causes, found, tried, proof))


class _Broken(NamedTuple):
    """The piece that falls: its document, and its history."""

    raw: Any
    history: History


def _try_edits(
    broken: _Broken, edits: list[StepEdit], ends: float, progress: ReportTries
) -> tuple[list[Mend], int]:
    """Try the changes in turn; those that need a long proof wait until nothing else helps."""
    found: list[Mend] = []
    postponed: list[StepEdit] = []
    tried = 0
    enough = math.inf
    for thorough in (False, True):
        for edit in postponed if thorough else edits:
            progress("trying changes", tried, len(edits))
            if time.monotonic() > ends or len(found) >= _MOST_FOUND or edit.doubt > enough:
                break
            tried += not thorough
            mend = _try_edit(broken, edit, thorough=thorough)
            if isinstance(mend, Mend):
                found.append(mend)
                enough = min(enough, edit.doubt + _FURTHER)
            elif mend is None and not thorough:
                postponed.append(edit)
        if found:
            break
    return found, tried


def _causes(history: History, proof: Proof) -> list[Finding]:
    refused = [f for f in history.findings if f.severity == "error"]
    return refused + [f for f in find_falling(history, proof) if f.code in _ROOT_CODES]


def _roots(history: History, proof: Proof, causes: list[Finding]) -> set[int]:
    """Return the bands that start the fall: those that held bands, or no bands, pass through."""
    falling = {*proof.free, *proof.unproved}
    passing: dict[int, set[int]] = {}
    for loop, ribbons in history.final.inside.items():
        passing.setdefault(loop.band, set()).update(bight.band for bight in ribbons)
    roots = {band for band in falling if not passing.get(band, set()) or not passing[band] <= falling}
    first = next((f.place.band for f in causes if f.place.band), None)
    return roots | ({first} if first else set()) | ({1} if 1 in falling else set())


def _drags(history: History) -> int:
    return sum(len(getattr(event, "dragged", ())) for event in history.events)


def _try_edit(broken: _Broken, edit: StepEdit, *, thorough: bool) -> Mend | bool | None:
    """Return the mend that a change makes; False if it makes none, None if not settled quickly."""
    before = broken.history
    try:
        changed = jsonpatch.apply_patch(broken.raw, list(edit.patch))
        pattern = msgspec.convert(changed, Pattern)
    except (jsonpatch.JsonPatchException, msgspec.ValidationError):
        return False
    expansion = expand(pattern)
    history = replay_pattern(pattern, expansion)
    if any(f.severity == "error" for f in (*expansion.findings, *history.findings)):
        return False
    if _drags(history) > _drags(before) or not history.final.fasteners:
        return False
    held = every_band_is_held(history.events, history.board.spots, thorough=thorough)
    if not held:
        return held
    proof = prove(structure_of(history.events, history.board.spots))
    if proof.unproved or proof.free:
        return False
    if (rejected := check(history.events, proof, history.board.spots)) is not None:
        raise AssertionError(f"the checker rejects the proof of this mend: {rejected}")
    said = describe([SpokenMove(done.move) for done in history.moves])
    cautions = sum(f.severity != "note" for f in check_loom(pattern, expansion, history))
    return Mend(
        Fix(edit.label, edit.patch),
        pattern,
        _difference(before, history),
        history.final.bands - before.final.bands,
        said.phrases,
        cautions,
    )


def _difference(one: History, other: History) -> int:
    """Count the passages of loop through loop, by pegs, that only one of two pieces has."""
    return (_passages(one) - _passages(other)).total() + (_passages(other) - _passages(one)).total()


def _passages(history: History) -> Counter[tuple[object, ...]]:
    seats: dict[object, str] = {}
    for event in history.events:
        for seat in getattr(event, "seats", ()):
            seats[seat.bight] = seat.holder
    return Counter(
        (seats.get(loop), seats.get(ribbon))
        for loop, ribbons in history.final.inside.items()
        for ribbon in ribbons
    )


def _one_cause(causes: list[Finding], found: list[Mend], tried: int, proof: Proof) -> tuple[Finding, ...]:
    """Return the cause with its fix, and a finding that counts the other bands, which merely fall with it."""
    told: list[Finding] = []
    if causes:
        fix = found[0].fix if found else None
        told.append(msgspec.structs.replace(causes[0], fix=fix))
    others = len(proof.free) + len(proof.unproved)
    if causes and causes[0].code in _ROOT_CODES:
        others -= int(str(causes[0].facts["count"])) + int(str(causes[0].facts.get("hanging", 0)))
    if others:
        told.append(finding("fall-with-it", bands=others))
    if not found:
        told.append(finding("mend-not-found", tried=tried))
    return tuple(told)
