"""The checker accepts every proof and no spoiled one."""

from __future__ import annotations

import ast
import inspect
import random
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from bench import pieces
from pegwright.loom.events import Bight, Fastened
from pegwright.proof import Free, Held, HeldByPart, NotProved, Part, Proof, Slip, check, prove
from pegwright.structure import structure_of
from pegwright.structure.plan import across
from tests.programs import KINDS
from tests.programs import program as worked_program
from tests.proof.facts import proved, sides
from tests.proof.programs import lattice, program, programs, ring

seeds = st.integers(0, 2**48)
WHOLE = [
    pieces.chain(12),
    pieces.chain(8, strands=2),
    pieces.fish_tail(9),
    pieces.fish_tail(9, twisted_first=False),
    pieces.strip(2),
    pieces.mat(3, 3),
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
    steps, parts = len(proof.steps), len(proof.parts)
    spoiled = {
        "held": [Free(), Free(slid=True)],
        "free": [
            Held(rng.randrange(-1, steps + 1), rng.random() < 0.5),
            HeldByPart(rng.randrange(-1, parts + 1)),
        ],
        "open": [Free(), Free(slid=True), Held(rng.randrange(-1, steps + 1), rng.random() < 0.5)],
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
        for claim in (Free(), Free(slid=True)):
            assert check(made.events, proof._replace(verdicts=proof.verdicts | {band: claim}), made.spots)


@settings(max_examples=600, deadline=None)
@given(st.one_of(seeds.map(program), st.sampled_from(WHOLE)), seeds)
@example(pieces.chain(6), 3)
def test_a_spoiled_certificate_is_rejected_or_still_proves_the_same(events: list, choice: int) -> None:
    """A random change in any certificate never makes the checker accept something that is not so."""
    proof = proved(events)
    spoiled = _spoiled(proof, random.Random(choice))
    if check(events, spoiled) is None:
        claimed, true = sides(spoiled), sides(proof)
        for band, claim in claimed.items():
            # What the prover left open another certificate may hold; it may never set it free.
            assert claim in ("open", true[band]) or (true[band], claim) == ("open", "held")
        assert claimed.keys() == true.keys()


@settings(max_examples=150, deadline=None)
@given(st.one_of(seeds.map(program), st.sampled_from(WHOLE)), seeds)
def test_nothing_may_be_missing_from_a_certificate(events: list, choice: int) -> None:
    """A slip, a verdict or a part left out, a slip too many: each is noticed."""
    proof = proved(events)
    rng = random.Random(choice)
    slip = Slip(
        rng.randrange(len(events)), *next((e.caught * 2)[:2] for e in events if isinstance(e, Fastened))
    )
    spoiled = [proof._replace(slips=(*proof.slips, slip)), proof._replace(parts=(*proof.parts, Part((1,))))]
    band = rng.choice(list(proof.verdicts))
    spoiled.append(proof._replace(verdicts={b: v for b, v in proof.verdicts.items() if b != band}))
    spoiled.append(proof._replace(verdicts=proof.verdicts | {99: Free()}))
    if proof.slips:
        at = rng.randrange(len(proof.slips))
        spoiled.append(proof._replace(slips=proof.slips[:at] + proof.slips[at + 1 :]))
    if proof.parts:
        spoiled.append(proof._replace(parts=proof.parts[1:]))
    for one in spoiled:
        assert check(events, one), one


def test_the_proof_of_another_piece_is_rejected() -> None:
    """A closed chain's proof does not prove the chain whose last hook was left out."""
    closed, missed = pieces.chain(9), pieces.chain(9)
    del missed[-2]
    assert check(missed, proved(closed))


@pytest.mark.parametrize("one", range(len(WHOLE)))
@pytest.mark.parametrize("other", range(len(WHOLE)))
def test_the_proof_of_one_piece_is_none_of_another(one: int, other: int) -> None:
    """Whatever is accepted says nothing but what is so."""
    proof = proved(WHOLE[one])
    if one != other and check(WHOLE[other], proof) is None:
        assert sides(proof) == sides(proved(WHOLE[other]))


@pytest.mark.parametrize("events", [pieces.chain(6), ring(6), pieces.strip(2), lattice(181)])
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
    *made, _ = pieces.chain(bands)
    end = Fastened(1, "clip", (f"p{bands}",), (Bight(bands, 1),), (1,))
    assert check([*made, end], proved(pieces.chain(bands)))
    assert check([*made, end], proved(ring(bands)))


def test_the_checker_stands_alone() -> None:
    """It needs the record, the shape of a proof, what lies across what and the standard library."""
    own = {"pegwright.loom.events", "pegwright.proof.values", "pegwright.structure.plan"}
    assert _imported(check) - own <= sys.stdlib_module_names
    assert _imported(across) - own <= sys.stdlib_module_names
    assert len(Path(inspect.getfile(check)).read_text("utf-8").splitlines()) < 300


def _imported(function: Callable[..., object]) -> set[str]:
    """Return what the function's file imports, of other packages the first name alone."""
    tree = ast.parse(Path(inspect.getfile(function)).read_text("utf-8"))
    names = {n.module or "" for n in ast.walk(tree) if isinstance(n, ast.ImportFrom)}
    names |= {alias.name for n in ast.walk(tree) if isinstance(n, ast.Import) for alias in n.names}
    return {name if name.startswith("pegwright") else name.partition(".")[0] for name in names}


def _spoiled(proof: Proof, rng: random.Random) -> Proof:
    """The proof with one field of one certificate changed."""
    places = [name for name in ("steps", "parts", "slips", "slides") if getattr(proof, name)]
    place = rng.choice([*places, "verdicts"])
    if place == "verdicts":
        band = rng.choice(list(proof.verdicts))
        verdict = proof.verdicts[band]
        other = NotProved("too-long") if isinstance(verdict, NotProved) else _changed(verdict, rng)
        return proof._replace(verdicts=proof.verdicts | {band: other})
    items = list(getattr(proof, place))
    at = rng.randrange(len(items))
    kind = rng.choice(("change", "change", "change", "drop", "double", "swap"))
    if kind == "change":
        items[at] = _changed(items[at], rng)
    elif kind == "drop":
        del items[at]
    elif kind == "double":
        items.insert(at, items[at])
    else:
        other_at = rng.randrange(len(items))
        items[at], items[other_at] = items[other_at], items[at]
    return proof._replace(**{place: tuple(items)})


def _changed(item: tuple, rng: random.Random) -> tuple:
    if not item:
        return item
    at = rng.randrange(len(item))
    value = item[at]
    if isinstance(value, bool):
        new = not value
    elif isinstance(value, int):
        new = value + rng.choice((-2, -1, 1, 2))
    elif isinstance(value, tuple) and value and rng.random() < 0.5:
        new = value[1:] if rng.random() < 0.5 else (*value[:-1], _nudged(value[-1], rng))
    elif isinstance(value, tuple):
        new = (*value, rng.randrange(1, 6))
    else:
        new = value
    return item._replace(**{item._fields[at]: new}) if hasattr(item, "_replace") else new


def _nudged(value: object, rng: random.Random) -> object:
    return value + rng.choice((-1, 1)) if isinstance(value, int) else _changed(value, rng)
