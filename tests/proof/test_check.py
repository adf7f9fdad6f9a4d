"""The checker accepts every proof and no spoiled one."""

from __future__ import annotations

import ast
import inspect
import random
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import example, given, settings, strategies as st

from pegwright.loom import Bight, Fastened, replay_pattern
from pegwright.proof import Cancellation, Free, Held, HeldInLeast, NotProved, Proof, check, prove
from pegwright.proof.least_checker import check_least
from pegwright.structure import find_bands_across, structure_of
from testing import histories
from testing.mat import mat
from testing.programs import KINDS, program as worked_program
from testing.proof_programs import lattice, program, programs, ring
from testing.spoil_proofs import spoil_proof
from tests.proof.facts import proved, sides

seeds = st.integers(0, 2**48)
WHOLE = [
    histories.chain(12),
    histories.chain(8, strands=2),
    histories.fish_tail(9),
    histories.fish_tail(9, twisted_first=False),
    histories.strip(2),
    replay_pattern(mat(3, 3)).events,
    ring(9),
    ring(5, half_twists=1),
    lattice(181),
]


@settings(max_examples=300, deadline=None)
@given(programs)
def test_every_proof_is_accepted(events: list) -> None:
    """Whatever the program, the checker agrees with every certificate."""
    assert check(events, proved(events)) is None


@pytest.mark.parametrize("events", WHOLE)
def test_proofs_of_whole_pieces_are_accepted(events: list) -> None:
    """Chains, fish-tails, a strip and a mat."""
    assert check(events, proved(events)) is None


@settings(max_examples=300, deadline=None)
@given(seeds, seeds)
def test_a_changed_verdict_is_rejected(seed: int, choice: int) -> None:
    """Held said of a free band, free of a held one, or the certificate of another kind borrowed for it."""
    events = program(seed)
    proof = proved(events)
    rng = random.Random(choice)
    band = rng.choice(list(proof.verdicts))
    side = sides(proof)[band]
    steps = len(proof.steps)
    spoiled = {
        "held": [Free(), Free(least=True)],
        "free": [
            Held(rng.randrange(-1, steps + 1), rng.random() < 0.5),
            HeldInLeast(rng.randrange(-1, 3)),
        ],
        "open": [Free(), Free(least=True), Held(rng.randrange(-1, steps + 1), rng.random() < 0.5)],
    }[side]
    for verdict in spoiled:
        assert check(events, proof._replace(verdicts=proof.verdicts | {band: verdict}))


@settings(max_examples=300, deadline=None)
@given(seeds, st.sampled_from(KINDS))
def test_a_band_left_open_is_never_free(seed: int, kind: str) -> None:
    """With every kind of move, and the pegs' places known."""
    made = worked_program(seed, kind)
    proof = prove(structure_of(made.events, made.spots))
    assert check(made.events, proof, made.spots) is None
    for band in proof.unproved:
        for claim in (Free(), Free(least=True)):
            assert check(made.events, proof._replace(verdicts=proof.verdicts | {band: claim}), made.spots)


@settings(max_examples=600, deadline=None)
@given(st.one_of(seeds.map(program), st.sampled_from(WHOLE)), seeds)
@example(histories.chain(6), 3)
def test_a_spoiled_certificate_is_rejected_or_still_proves_the_same(events: list, choice: int) -> None:
    """A random change in any certificate never makes the checker accept something that is not so."""
    proof = proved(events)
    spoiled = spoil_proof(proof, random.Random(choice))
    if check(events, spoiled) is None:
        claimed, true = sides(spoiled), sides(proof)
        for band, claim in claimed.items():
            # What the prover left open another certificate may hold; it may never set it free.
            assert claim in ("open", true[band]) or (true[band], claim) == ("open", "held")
        assert claimed.keys() == true.keys()


@settings(max_examples=150, deadline=None)
@given(st.one_of(seeds.map(program), st.sampled_from(WHOLE)), seeds)
@example(program(7), 0)  # a twisted band's loops are apart here
def test_nothing_may_be_missing_from_a_certificate(events: list, choice: int) -> None:
    """A cancellation, a verdict or the least words left out, a cancellation too many: each is noticed."""
    proof = proved(events)
    rng = random.Random(choice)
    another = Cancellation(
        rng.randrange(len(events)), *next((e.caught * 2)[:2] for e in events if isinstance(e, Fastened))
    )
    spoiled = [proof._replace(cancellations=(*proof.cancellations, another))]
    band = rng.choice(list(proof.verdicts))
    spoiled.append(proof._replace(verdicts={b: v for b, v in proof.verdicts.items() if b != band}))
    spoiled.append(proof._replace(verdicts=proof.verdicts | {99: Free()}))
    if proof.cancellations:
        at = rng.randrange(len(proof.cancellations))
        spoiled.append(proof._replace(cancellations=proof.cancellations[:at] + proof.cancellations[at + 1 :]))
    if any(isinstance(verdict, HeldInLeast) for verdict in proof.verdicts.values()):
        spoiled.append(proof._replace(least=None))
    if proof.apart:
        spoiled.append(proof._replace(apart=None))
        spoiled.append(proof._replace(apart=proof.least))  # whose loops of one band undo each other
        spoiled.append(proof._replace(apart=proof.apart._replace(letters=proof.apart.letters[:-1])))
    for one in spoiled:
        assert check(events, one), one


def test_the_proof_of_another_piece_is_rejected() -> None:
    """A closed chain's proof does not prove the chain whose last hook was left out."""
    closed, missed = histories.chain(9), histories.chain(9)
    del missed[-2]
    assert check(missed, proved(closed))


@pytest.mark.parametrize("verdict", [None, True, "held", (0, True), NotProved])
def test_a_verdict_of_no_known_kind_is_rejected(verdict: object) -> None:
    """For one band or for all of them, with certificates or without."""
    events = histories.chain(6)
    proof = proved(events)
    assert check(events, proof._replace(verdicts=proof.verdicts | {3: verdict}))
    assert check(events, Proof(dict.fromkeys(proof.verdicts, verdict)))


@pytest.mark.parametrize("one", range(len(WHOLE)))
@pytest.mark.parametrize("other", range(len(WHOLE)))
def test_the_proof_of_one_piece_is_none_of_another(one: int, other: int) -> None:
    """Whatever is accepted says nothing but what is so."""
    proof = proved(WHOLE[one])
    if one != other and check(WHOLE[other], proof) is None:
        assert sides(proof) == sides(proved(WHOLE[other]))


@pytest.mark.parametrize("events", [histories.chain(6), ring(6), histories.strip(2), lattice(181)])
def test_every_field_of_every_step_counts(events: list) -> None:
    """A field that a step has no use for must be empty, or it would be one more thing to be trusted."""
    proof = proved(events)
    for at, step in enumerate(proof.steps):
        for field in ("parent", "root", "loan", "without"):
            for nudge in (-2, -1):
                spoiled = step._replace(**{field: getattr(step, field) + nudge})
                assert check(
                    events, proof._replace(steps=(*proof.steps[:at], spoiled, *proof.steps[at + 1 :]))
                )


@pytest.mark.parametrize("bands", [3, 9])
def test_a_fastener_moved_elsewhere_is_noticed(bands: int) -> None:
    """A fastener through its far end alone holds neither a chain nor what was a ring."""
    *made, _ = histories.chain(bands)
    end = Fastened(1, "clip", (f"p{bands}",), (Bight(bands, 1),), (1,))
    assert check([*made, end], proved(histories.chain(bands)))
    assert check([*made, end], proved(ring(bands)))


def test_the_checker_stands_alone() -> None:
    """It needs the record, the shape of a proof, what lies across what and the standard library."""
    own = {"pegwright.loom", "pegwright.proof.values", "pegwright.structure", "pegwright.proof.least_checker"}
    assert _imported(check_least) - own <= sys.stdlib_module_names
    assert _imported(check) - own <= sys.stdlib_module_names
    assert _imported(find_bands_across) - own <= sys.stdlib_module_names
    assert len(Path(inspect.getfile(check)).read_text("utf-8").splitlines()) < 300


def test_importing_the_checker_loads_no_prover_and_no_arrays() -> None:
    """Besides the standard library only what the record of a piece is made of: its events are msgspec's."""
    code = (
        "import sys; known = {*sys.modules}; import pegwright.proof.checker; print(*{*sys.modules} - known)"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    loaded = set(run.stdout.split())
    inside = {name.removeprefix("pegwright.") for name in loaded if name.count(".") == 2 and "pegwr" in name}
    checker = {"proof.checker", "proof.least_checker", "proof.values"}
    assert inside == checker | {"loom.events", "structure.crossings"}
    others = {name.partition(".")[0] for name in loaded} - sys.stdlib_module_names
    assert others <= {"pegwright", "lazy_loader", "msgspec", "typing_extensions"}


def _imported(function: Callable[..., object]) -> set[str]:
    """Return what the function's file imports, of other packages the first name alone."""
    tree = ast.parse(Path(inspect.getfile(function)).read_text("utf-8"))
    names = {n.module or "" for n in ast.walk(tree) if isinstance(n, ast.ImportFrom)}
    names |= {alias.name for n in ast.walk(tree) if isinstance(n, ast.Import) for alias in n.names}
    return {name if name.startswith("pegwright") else name.partition(".")[0] for name in names}
