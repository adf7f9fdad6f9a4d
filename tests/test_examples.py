"""The workshop's pieces: the documents are what their makers wrote, and each shows what it must show."""

from __future__ import annotations

from pathlib import Path

import msgspec
import pytest

from examples.pieces import PIECES, SWATCHES
from pegwright import pattern
from pegwright.finding import worst_severity
from pegwright.loom import Drawn, Lifted
from pegwright.pattern import JoinedLooms, Round
from pegwright.workshop import example_files, open_pattern, work

WHOLE = [name for name in PIECES if not name.startswith("broken/")]


@pytest.fixture(scope="module")
def works():
    return {name: work(piece()) for name, piece in PIECES.items()}


def test_the_documents_are_what_their_makers_wrote():
    assert {name: path.read_bytes() for name, path in example_files().items()} == {
        name: pattern.write_pattern(piece()) for name, piece in PIECES.items()
    }


@pytest.mark.parametrize("name", PIECES)
def test_every_document_reads(name):
    assert open_pattern(example_files()[name]).findings == ()


@pytest.mark.parametrize("name", WHOLE)
def test_every_whole_piece_holds_and_is_without_fault(works, name):
    made = works[name]
    assert made.holds
    assert worst_severity(made.findings) in (None, "note"), [str(f) for f in made.findings]


@pytest.mark.parametrize("name", SWATCHES)
def test_every_swatch_is_written_holds_and_is_without_fault(name):
    path = Path(__file__).parents[1] / "examples" / f"{name}.json"
    assert path.read_bytes() == pattern.write_pattern(SWATCHES[name]())
    made = work(open_pattern(path).pattern)
    assert made.holds
    assert worst_severity(made.findings) in (None, "note"), [str(f) for f in made.findings]


def test_a_point_begun_flat_slips_out_of_the_chain():
    """Both its loops lie on one peg; begun flat, they turn opposite ways, and what passes both slips out."""
    made = SWATCHES["swatches/reef-points"]()
    laid = made.steps[1].steps[0]
    flat = msgspec.structs.replace(
        made.steps[1], steps=(msgspec.structs.replace(laid, twists=()), *made.steps[1].steps[1:])
    )
    steps = (made.steps[0], flat, *made.steps[2:])
    assert work(msgspec.structs.replace(made, steps=steps)).proof.free == (8, 10, 12)


def test_the_pieces_show_what_they_are_for(works):
    assert isinstance(works["slack-water-mat"].pattern.loom, JoinedLooms)
    assert isinstance(works["lobster-pot"].pattern.loom, Round)
    kinds = {name: {type(e) for e in made.history.events} for name, made in works.items()}
    assert Lifted in kinds["herring-tail"]
    assert Drawn not in kinds["herring-tail"]
    assert sum(bool(e.slid) for e in works["buoy-line"].history.events if isinstance(e, Drawn)) == 5
    heaps = {h.letter: h for h in works["riding-lights"].supplies.heaps}
    assert (heaps["A"].placed, heaps["A"].caps, heaps["L"].placed, heaps["L"].caps) == (24, 1, 12, 3)


def test_a_chain_with_nothing_at_its_end_runs_out_completely(works):
    """Common practice, no source."""
    made = works["broken/runs-out"]
    assert made.proof.free == tuple(range(1, 8))
    assert "no-finish" in {f.code for f in made.findings}
    falls = [f for f in made.findings if f.code == "band-falls"]
    assert [f.message.partition(":")[0] for f in falls] == ["all 7 bands fall off"]
    assert "nothing fastens the piece" in falls[0].message


def test_a_fish_tail_begun_flat_comes_apart_and_begun_crossed_holds(works):
    """Common practice, no source."""
    assert works["herring-tail"].proof.free == ()
    assert works["broken/flat-tail"].proof.free == tuple(range(2, 26))


def test_a_hook_that_did_not_go_deep_enough_lets_the_chain_behind_it_go(works):
    """At A5 band 4 went through the upper loop of band 5 only: 6 and 7 fall, 8 hangs on the clip."""
    made = works["broken/shallow-water"]
    assert made.proof.free == (6, 7)
    [cause] = [f for f in made.findings if f.code == "band-falls"]
    assert cause.place.band == 6
    assert cause.message == "band 6 (A) slides off over band 5 (A); one more is held only by it"
