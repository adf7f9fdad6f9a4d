"""One program judged twice: by the proof from its record, by knot theory from its curves."""

from __future__ import annotations

from typing import NamedTuple

from pegwright.proof import prove
from pegwright.structure import Curves, strand_curves, structure_of
from pegwright.structure.passages import passages_from_curves, passages_from_events
from testing.oracle import verdict
from testing.programs import Program

THICKNESS_MM = 1.5


class Judgement(NamedTuple):
    """What was found. Everything but `bands` and `unproved` should be empty."""

    bands: int
    unproved: tuple[int, ...]
    linked: tuple[tuple[int, int], ...]  # pairs of bands with a linking number: the drawing is wrong
    unthreaded: tuple[str, ...]  # loops through which other strands pass than the record says
    not_held: tuple[int, ...]  # proved held, yet a diagram splits them off
    not_free: tuple[int, ...]  # proved free, yet no diagram splits them off

    @property
    def agrees(self) -> bool:
        """Whether drawing, proof and knot theory say the same."""
        return not (self.linked or self.unthreaded or self.not_held or self.not_free)


def judge(program: Program, seed: int = 0, tries: int = 30) -> Judgement:
    """Draw and prove a program, and compare.

    Every projection is simplified until all bands proved free have come off, up to `tries` projections; a
    band that was split off in any of them is split off.
    """
    drawn = strand_curves(program.events, program.spots, THICKNESS_MM)
    proof = prove(structure_of(program.events, program.spots))
    maybe = frozenset(proof.held) | frozenset(proof.unproved)
    stays = verdict.held(drawn, maybe, seed, tries)
    return Judgement(
        len(drawn.bands),
        proof.unproved,
        tuple(verdict.linked_bands(drawn, seed)),
        tuple(unthreaded(program, drawn)),
        tuple(b for b in proof.held if b not in stays),
        tuple(b for b in proof.free if b in stays),
    )


def unthreaded(program: Program, drawn: Curves) -> list[str]:
    """Name the loops through which the curves pass otherwise than the record says."""
    record, picture = passages_from_events(program.events), passages_from_curves(drawn)
    return [
        f"{p.bight} on {p.holder}: {record[p]} ≠ {picture[p]}" for p in picture if record[p] != picture[p]
    ]
