"""The proof against its naive twin, and what every proof must satisfy."""

from __future__ import annotations

import random

import pytest
from hypothesis import assume, given, settings, strategies as st

from pegwright.loom import Bight, replay_pattern
from pegwright.proof import HeldInLeast, NotProved
from pegwright.structure import structure_of
from testing import histories
from testing.mat import mat
from testing.proof_programs import program, programs, ring
from tests.proof import naive
from tests.proof.facts import bands_of, proved, renamed, sides
from tests.proof.regressions import PAST

seeds = st.integers(0, 2**48)


@settings(max_examples=300, deadline=None)
@given(seeds)
def test_verdicts_are_those_of_every_set_of_bands_tried(seed: int) -> None:
    """Held is held by the least words, free is out of them; what is open is a twist that words cannot see."""
    events = program(seed, most_bands=6)
    held = naive.held(events)
    twisted = structure_of(events).twists
    for band, verdict in proved(events).verdicts.items():
        if isinstance(verdict, NotProved):
            assert verdict.reason == "twist"
            assert band not in held
            assert set(verdict.because) <= twisted.keys()
            assert verdict.because
        else:
            assert (band in held) == (sides(proved(events))[band] == "held"), (band, verdict)


@settings(max_examples=150, deadline=None)
@given(seeds)
def test_without_moves_that_twist_nothing_stays_open(seed: int) -> None:
    """Flat bands hooked home, whole or shallow, and lifted: every band is decided."""
    events = program(seed, most_bands=6, kinds=("lay", "lay", "home", "home", "home", "lift"), twists=False)
    assume(not structure_of(events).twists)  # a fold within a band over three pegs is one
    assert not proved(events).unproved


@settings(max_examples=150, deadline=None)
@given(programs, st.randoms(use_true_random=False))
def test_renaming_bands_changes_nothing(events: list, rng: random.Random) -> None:
    """The verdicts follow the bands, not their numbers."""
    bands = bands_of(events)
    names = dict(zip(bands, rng.sample(range(1, 50), len(bands)), strict=True))
    assert sides(proved(renamed(events, names))) == dict(
        sorted((names[band], side) for band, side in sides(proved(events)).items())
    )


@settings(max_examples=100, deadline=None)
@given(programs)
def test_an_unconnected_band_changes_nothing(events: list) -> None:
    """A band laid over two pegs of its own falls, and the others do not notice."""
    loom = histories.Sketch()
    loom.bands = max(bands_of(events), default=0)
    lone = loom.lay("far", "farther")
    assert sides(proved([*loom.events, *events])) == sides(proved(events)) | {lone: "free"}


def test_without_a_fastener_everything_falls() -> None:
    """A plain chain not closed at its end runs out completely (common practice, no source)."""
    proof = proved(histories.chain(30, closed=False))
    assert len(proof.free) == 30


@pytest.mark.parametrize("bands", [2, 3, 5, 12, 200])
def test_a_closed_plain_chain_is_held(bands: int) -> None:
    """Every band of a plain chain is held by a fastener at its start peg (common practice, no source)."""
    assert proved(histories.chain(bands)).held == tuple(range(1, bands + 1))


@pytest.mark.parametrize("bands", [4, 5, 6, 60])
@pytest.mark.parametrize("both_ends", [True, False])
def test_a_fish_tail_hangs_on_its_first_half_twist(bands: int, both_ends: bool) -> None:
    """Without it, or caught at one end only, the last two bands alone hold (common practice, no source)."""
    everything, last_two = tuple(range(1, bands + 1)), (bands - 1, bands)
    twisted = proved(histories.fish_tail(bands, twisted_first=True, both_ends=both_ends))
    flat = proved(histories.fish_tail(bands, twisted_first=False, both_ends=both_ends))
    assert twisted.held == (everything if both_ends else last_two)
    assert flat.held == last_two
    assert not twisted.unproved
    assert not flat.unproved


@pytest.mark.parametrize(
    "events",
    [
        histories.chain(60, strands=2),
        histories.chain(60, strands=3),
        histories.strip(6),
        replay_pattern(mat(4, 6)).events,
    ],
    ids=["twin chain", "triple chain", "strip", "mat"],
)
def test_whole_pieces_are_held(events: list) -> None:
    """Twin and triple chains, a strip of filled motifs and a mat hold, band for band."""
    assert proved(events).held == tuple(bands_of(events))


def test_a_mat_whose_last_row_is_hooked_sideways_falls() -> None:
    """A last row of cross bands folded back through nothing lets go, and with it the whole mat."""
    loom = histories.Sketch()
    for c in range(3):
        loom.lay(f"{c}.0", f"{c}.1")
    for c in range(2):
        loom.lay(f"{c}.1", f"{c + 1}.1")
    for c in (1, 0):
        loom.draw(Bight(4 + c, 1), f"{c}.1")
    for c in range(3):
        loom.draw(Bight(1 + c, 1), f"{c}.0")
    loom.fasten("0.0", "1.0", "2.0")
    assert sides(proved(loom.events)) == dict.fromkeys(range(1, 6), "free")


def test_a_clasp_that_words_cannot_see_is_left_open() -> None:
    """A full twist, folded back on itself: a trivial word, and yet the Whitehead link (LinkInfo L5a1)."""
    loom = histories.Sketch()
    loom.lay("a", "b", twists=(2,))
    loom.draw(Bight(1, 1), "a")
    loom.fasten("a")
    assert proved(loom.events).verdicts == {1: NotProved("twist", (1,))}


def test_a_half_twist_folded_back_holds() -> None:
    """With a half-twist the fastener goes twice round the band in the same sense."""
    loom = histories.Sketch()
    loom.lay("a", "b", twists=(1,))
    loom.draw(Bight(1, 1), "a")
    loom.fasten("a")
    assert proved(loom.events).held == (1,)


def test_least_words_hold_what_no_path_reaches() -> None:
    """A product of squares has no holding path."""
    found = [
        verdict
        for seed in range(60)
        for verdict in proved(program(seed)).verdicts.values()
        if isinstance(verdict, HeldInLeast)
    ]
    assert found


@pytest.mark.parametrize("name", PAST)
def test_what_once_went_wrong(name: str) -> None:
    """Every band of these is held: so say all sets of bands tried."""
    events = PAST[name]()
    assert naive.held(events) == set(bands_of(events))
    assert proved(events).held == tuple(bands_of(events))


def test_the_far_end_of_a_ring_may_let_go() -> None:
    """[a, c] · c is a conjugate of c: the fastener through both ends of two bands does not hold the first."""
    events = ring(2, half_twists=1)
    (word,) = naive.fastener_words(events)
    assert naive.shortest([word]) == [[-2]]
    assert sides(proved(events)) == {1: "open", 2: "held"}


@pytest.mark.parametrize("bands", [3, 4, 5, 40])
@pytest.mark.parametrize("half_twists", [0, 1])
def test_from_three_bands_on_a_ring_holds(bands: int, half_twists: int) -> None:
    """[a, [b, c]] · c needs all three."""
    events = ring(bands, half_twists)
    assert bands > 5 or naive.held(events) == set(range(1, bands + 1))
    assert proved(events).held == tuple(range(1, bands + 1))
