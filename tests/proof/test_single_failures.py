"""What falls if a band snaps or a loop is missed, against proofs of the piece without it."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import example, given, settings, strategies as st

from pegwright.loom import Bight, Event, Fastened, Laid
from pegwright.proof import (
    Loss,
    Reader,
    bands_in_use,
    find_holding_paths,
    missed_loop_losses,
    passengers,
    prove,
    snap_losses,
)
from pegwright.proof.single_failures import note_paths
from pegwright.proof.word_reduction import Reduction, first_passing_events
from pegwright.structure import structure_of
from testing import histories
from testing.proof_programs import lattice, programs
from tests.proof import naive
from tests.proof.facts import proved, sides


def _snaps(events: list[Event]) -> dict[int, Loss]:
    structure = structure_of(events)
    return snap_losses(structure, prove(structure))


@settings(max_examples=200, deadline=None)
@given(programs)
def test_a_snap_is_the_proof_of_what_is_left(events: list) -> None:
    """Bands that fall are out of the least words without the snapped band; the others are in them."""
    held = proved(events).held
    for band, loss in _snaps(events).items():
        words = naive.shortest(naive.fastener_words(events, frozenset({band})))
        still = {abs(letter) for word in words for letter in word}
        others = set(held) - {band}
        assert set(loss.falls).isdisjoint(still)
        assert others - still <= {*loss.falls, *loss.unproved}
        assert not set(loss.unproved) & still


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 2**48), st.integers(0, 3))
@example(653, 0)
@example(650, 2)
def test_no_band_stays_that_nothing_uses_after_the_snap(seed: int, drawn: int) -> None:
    """What a set of paths says of a snap, borrowed chains and all, against what cancels in what is left."""
    structure = structure_of(lattice(seed))
    base = Reduction(structure)
    held, steps = find_holding_paths(Reader(base.run()), set(structure.bands), (drawn,))
    stays = np.eye(len(held), dtype=np.bool_)
    place = {band: at for at, band in enumerate(held)}
    note_paths(stays, place, held, steps)
    for snapped in held:
        used = bands_in_use(base.without(snapped), first_passing_events(structure)) | {snapped}
        assert {band for band in held if stays[place[snapped], place[band]]} <= used


def test_a_closed_plain_chain_is_brunnian() -> None:
    """The loss of any one band frees all the others (H. Brunn 1892; references of the trade agree)."""
    everything = set(range(1, 26))
    losses = _snaps(histories.chain(25))
    assert {band: set(loss.falls) for band, loss in losses.items()} == {
        b: everything - {b} for b in everything
    }
    assert not passengers(losses)


def test_a_twin_chain_survives_every_single_snap() -> None:
    """Each of two bands does the other's work."""
    losses = _snaps(histories.chain(40, strands=2))
    assert set(losses.values()) == {Loss(())}
    assert passengers(losses) == tuple(range(1, 41))


def test_a_strip_loses_only_what_hangs_on_the_snapped_band() -> None:
    """Two paths lead from end to end: most of the strip stays, whatever snaps."""
    losses = _snaps(histories.strip(3))
    assert len(losses) == 40
    assert max(len(loss.falls) for loss in losses.values()) < 8


def test_the_half_twisted_band_carries_a_fish_tail() -> None:
    """Without the first band of a fish-tail all but the last two fall (common practice, no source)."""
    assert _snaps(histories.fish_tail(7))[1] == Loss((2, 3, 4, 5))


def test_the_fastener_needs_both_loops_of_a_plain_chain() -> None:
    """One loop alone holds its own band and nothing else."""
    structure = structure_of(histories.chain(6))
    needed = missed_loop_losses(structure, prove(structure))
    assert needed == dict.fromkeys((Bight(1, 1), Bight(1, 0)), Loss((2, 3, 4, 5, 6)))


@settings(max_examples=100, deadline=None)
@given(programs)
def test_a_missed_loop_is_a_fastening_without_it(events: list) -> None:
    """The answer is that of a history whose last fastener never caught the loop."""
    last = max((at for at, event in enumerate(events) if isinstance(event, Fastened)), default=None)
    structure = structure_of(events)
    proof = prove(structure)
    found = missed_loop_losses(structure, proof)
    if last is None:
        assert found == {}
        return
    caught = events[last].caught
    assert set(found) == set(caught)
    for bight, loss in found.items():
        without = Fastened(9, "clip", ("x",), tuple(b for b in caught if b != bight), (len(caught) - 1,))
        after = sides(proved([*events[:last], without, *events[last + 1 :]]))
        assert loss.falls == tuple(band for band in proof.held if after[band] == "free")
        assert loss.unproved == tuple(band for band in proof.held if after[band] == "open")


@pytest.mark.parametrize("bands", [1, 2])
def test_the_smallest_pieces(bands: int) -> None:
    """One band, or two, on a fastener."""
    losses = _snaps(histories.chain(bands))
    assert len(losses) == sum(isinstance(event, Laid) for event in histories.chain(bands))
