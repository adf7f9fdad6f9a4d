"""Links made by our own moves and a closed fastener, recognised by knot theory from our own strand curves."""

from __future__ import annotations

from itertools import combinations

import numpy as np
import pytest
import spherogram

from pegwright.loom import Effect, Event, State, apply_move, board_of
from pegwright.pattern import Bind, Hook, Knot, Move, Place, Put, Rows
from pegwright.structure import Curves, strand_curves
from testing.oracle.diagram import diagram, linking, parts, rotation
from testing.oracle.passes import reduced
from testing.oracle.verdict import components
from tests.oracle.test_harness import BORROMEAN, VOLUME, link

LOOM = board_of(Rows(rows=1, pegs=9))


def made(*moves: Move) -> Curves:
    state = State()
    events: list[Event] = []
    for move in moves:
        outcome = apply_move(LOOM, state, move)
        assert isinstance(outcome, Effect)
        state = outcome.state
        events += outcome.events
    return strand_curves(events, lambda peg: (LOOM.pegs[peg].x_mm, LOOM.pegs[peg].y_mm), 1.5)


def chain(bands: int) -> Curves:
    """A plain chain worked from the far end, its last loops fastened on the first peg."""
    places = [Place(colour="A", over=(f"A{k}", f"A{k + 1}")) for k in range(1, bands + 1)]
    hooks = [Hook(source=f"A{k}", target=f"A{k - 1}") for k in range(bands, 1, -1)]
    return made(*places, *hooks, Knot(at=("A1",)))


def test_one_band_and_a_fastener_are_the_hopf_link() -> None:
    _, _, strands = components(made(Place(colour="A", over=("A1", "A2")), Knot(at=("A1",))))
    for seed in range(3):
        small = reduced(diagram(strands, rotation(np.random.default_rng(seed))))
        assert small.size() == 2
        assert abs(linking(small)[0, 1]) == 1


def test_two_band_chain_and_a_fastener_are_the_borromean_rings() -> None:
    """LinkInfo L6a4, volume 7.3277247534."""
    _, _, strands = components(chain(2))
    drawn = [reduced(diagram(strands, rotation(np.random.default_rng(seed)))) for seed in range(8)]
    small = min(drawn, key=lambda found: found.size())
    assert small.size() == 6
    assert not linking(small).any()
    assert small.jones() == link(BORROMEAN).jones()
    manifold = spherogram.Link([list(c) for c in small.pdData()]).exterior()
    assert float(manifold.volume()) == pytest.approx(VOLUME["borromean"], abs=1e-8)


@pytest.mark.parametrize("bands", [2, 3, 4, 5, 6])
def test_a_fastened_chain_is_brunnian(bands: int) -> None:
    """No two bands are linked; take any one thing away and the rest is an unlink."""
    _, _, strands = components(chain(bands))
    rng = np.random.default_rng(bands)
    whole = diagram(strands, rotation(rng))
    assert not linking(whole).any()
    assert len(parts(reduced(whole))) == 1
    for keep in combinations(strands, len(strands) - 1):
        assert any(reduced(diagram(list(keep), rotation(rng))).size() == 0 for _ in range(6))


@pytest.mark.parametrize("bands", [2, 4, 8])
def test_an_open_chain_is_an_unlink(bands: int) -> None:
    """Common practice, no source: a plain chain that is not closed at its end runs out."""
    drawn = chain(bands)
    rng = np.random.default_rng(bands)
    assert any(reduced(diagram(list(drawn.bands.values()), rotation(rng))).size() == 0 for _ in range(6))


def test_a_new_band_through_a_loop_put_on_a_peg_and_fastened_is_the_borromean_rings() -> None:
    """It is the two-band chain, made the other way round: LinkInfo L6a4."""
    bound = (Place(colour="A", over=("A1", "A2")), Bind(colour="A", at="A2"), Put(on=("A4",)))
    _, _, strands = components(made(*bound, Knot(at=("A4",))))
    drawn = [reduced(diagram(strands, rotation(np.random.default_rng(seed)))) for seed in range(8)]
    small = min(drawn, key=lambda found: found.size())
    assert small.size() == 6
    assert not linking(small).any()
    assert small.jones() == link(BORROMEAN).jones()


@pytest.mark.parametrize(("way", "crossings"), [(1, 0), (-1, 5)])
def test_the_way_of_a_half_twist_decides_whether_a_band_clings(way: int, crossings: int) -> None:
    """A half-twisted band, a cord through both its ends: an unlink one way, the other way LinkInfo L5a1."""
    _, _, strands = components(
        made(Place(colour="A", over=("A1", "A2"), twists=(way,)), Knot(at=("A1", "A2")))
    )
    drawn = [reduced(diagram(strands, rotation(np.random.default_rng(seed)))) for seed in range(6)]
    small = min(drawn, key=lambda found: found.size())
    assert small.size() == crossings
    assert not linking(small).any()
    if crossings:
        manifold = spherogram.Link([list(c) for c in small.pdData()]).exterior()
        assert float(manifold.volume()) == pytest.approx(VOLUME["whitehead"], abs=1e-8)
