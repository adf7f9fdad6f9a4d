"""The proof against knot theory on random programs with every kind of move; a run's seed is printed."""

from __future__ import annotations

import os
import random

import pytest

from pegwright.proof import Free, check, prove
from pegwright.structure import strand_curves, structure_of
from testing.oracle.agreement import judge
from testing.oracle.verdict import clings
from testing.programs import KINDS, fastened, program, worked
from testing.short_twins import judge_twins
from testing.slipped_pieces import slipped_piece
from tests.oracle.regressions import MENDED

FRESH = 300


def test_fresh_programs_agree() -> None:
    """`AGREE_SEED=n` repeats a run."""
    seed = int(os.environ.get("AGREE_SEED") or random.SystemRandom().randrange(10**9))
    print(f"\nAGREE_SEED={seed}")
    wrong = []
    for k in range(FRESH):
        made = program(seed + k, KINDS[k % len(KINDS)])
        if fastened(made):
            found = judge(made, seed=k)
            if not found.agrees:
                wrong.append((made.kind, seed + k, found))
    assert not wrong, f"AGREE_SEED={seed}: {wrong}"


def test_regular_pieces_with_a_slip_agree() -> None:
    """Chains, tails, strips, nets, mats and tubes, each with one mistake of the rehearsal."""
    made = [(seed, slipped_piece(seed, 16)) for seed in range(100)]
    found = {seed: judge(piece, seed) for seed, piece in made if piece}
    assert len(found) > 60
    assert {seed: one for seed, one in found.items() if not one.agrees} == {}


@pytest.mark.parametrize("name", ["chain-1", "strip-2-tied-1", "zigzag-2-bands-1", "hung-2-every-4"])
def test_a_slip_ends_alike_in_a_short_piece_and_in_a_long_one(name: str) -> None:
    found = list(judge_twins(name, 3, 8, 4))
    assert len(found) > 1
    assert sum(one.compared for one in found) > 10
    assert [one for one in found if one.otherwise] == []


@pytest.mark.parametrize("seed", [1435, 454])
def test_a_loop_hooked_outside_a_cap_is_lifted_over_it(seed: int) -> None:
    """A band hooked so was called free, but clings: the cap's loops, worked before, come to lie inside it."""
    piece = slipped_piece(seed, kind="outside")
    assert piece is not None
    assert piece.kind == "outside"
    assert judge(piece, seed).agrees


@pytest.mark.parametrize("name", MENDED)
def test_past_failures_stay_mended(name: str) -> None:
    past = MENDED[name]
    assert judge(worked(past.layout, past.moves)).agrees, past.why


@pytest.mark.parametrize("name", [name for name, past in MENDED.items() if past.bands])
def test_the_jones_polynomial_sides_with_the_drawing(name: str) -> None:
    """An invariant shows that what was once called free does not come off: the oracle is not just weak."""
    past = MENDED[name]
    made = worked(past.layout, past.moves)
    drawn = strand_curves(made.events, made.spots, 1.5)
    assert all(clings(drawn, band) for band in past.bands), past.why


@pytest.mark.parametrize("name", [name for name, past in MENDED.items() if past.bands])
def test_the_checker_does_not_take_free_for_an_answer(name: str) -> None:
    """Whoever says that such a band is free, with any certificate of that kind, is not believed."""
    past = MENDED[name]
    made = worked(past.layout, past.moves)
    proof = prove(structure_of(made.events, made.spots))
    assert check(made.events, proof, made.spots) is None
    for band in past.bands:
        for claim in (Free(), Free(least=True)):
            false = proof._replace(verdicts=proof.verdicts | {band: claim})
            assert check(made.events, false, made.spots), past.why
