"""The smallest changes that make a piece hold, each proved."""

from __future__ import annotations

import time
from typing import NamedTuple

import msgspec

from pegwright.finding import Finding, Fix, finding
from pegwright.judging import find_falling
from pegwright.loom import History, pause_collector
from pegwright.pattern import Pattern
from pegwright.planner.mend_search import Mend, MendSearch
from pegwright.planner.proposals import ReportTries, report_no_tries
from pegwright.planner.trials import TriedPiece, work_piece
from pegwright.proof import Proof, prove
from pegwright.structure import structure_of

__all__ = ["Mends", "find_mends"]

_ROOT_CODES = ("band-falls", "band-not-proved")


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
    """Find up to `most` changes under which every band is proved held and the checker agrees.

    Single changes come first; only where none helps, two are made together. After `seconds` the best so far
    are returned. `progress` may raise to cancel.
    """
    ends = time.monotonic() + seconds
    with pause_collector():
        piece = work_piece(pattern)
        history = piece.history
        proof = prove(structure_of(history.events, history.board.spots))
        if not (proof.free or proof.unproved or piece.refused or not proof.verdicts):
            held = finding("holds-already", bands=len(proof.verdicts))
            return Mends((), 0, cut_short=False, findings=(held,))
        expansion = piece.expansion
        if any(f.severity == "error" for f in expansion.findings) or not proof.verdicts:
            return Mends((), 0, cut_short=False, findings=expansion.findings)
        search = MendSearch(piece, _find_roots, most, ends, progress)
        search.run()
    found = sorted(search.found, key=lambda mend: mend.rank)[:most]
    causes = _causes(history, proof)
    findings = _one_cause(causes, found[0].fix if found else None, search.tried, proof)
    return Mends(tuple(found), search.tried, time.monotonic() > ends, findings)


def _causes(history: History, proof: Proof) -> list[Finding]:
    refused = [f for f in history.findings if f.severity == "error"]
    return refused + [f for f in find_falling(history, proof) if f.code in _ROOT_CODES]


def _find_roots(piece: TriedPiece) -> frozenset[int]:
    """Return the bands that start the fall: those that held bands, or no bands, pass through."""
    history = piece.history
    proof = prove(structure_of(history.events, history.board.spots))
    falling = {*proof.free, *proof.unproved}
    passing: dict[int, set[int]] = {}
    for loop, ribbons in history.final.inside.items():
        passing.setdefault(loop.band, set()).update(bight.band for bight in ribbons)
    roots = {band for band in falling if not passing.get(band, set()) or not passing[band] <= falling}
    first = next((f.place.band for f in _causes(history, proof) if f.place.band), None)
    return frozenset(roots | ({first} if first else set()) | ({1} if 1 in falling else set()))


def _one_cause(causes: list[Finding], fix: Fix | None, tried: int, proof: Proof) -> tuple[Finding, ...]:
    """Return the cause with its fix, and a finding that counts the other bands, which merely fall with it."""
    told: list[Finding] = []
    if causes:
        told.append(msgspec.structs.replace(causes[0], fix=fix))
    others = len(proof.free) + len(proof.unproved)
    if causes and causes[0].code in _ROOT_CODES:
        others -= int(str(causes[0].facts["count"])) + int(str(causes[0].facts.get("hanging", 0)))
    if others:
        told.append(finding("fall-with-it", bands=others))
    if fix is None:
        told.append(finding("mend-not-found", tried=tried))
    return tuple(told)
