"""More repeats or fewer of the same design."""

from __future__ import annotations

import itertools

import msgspec
import pytest

from examples.pieces import PIECES
from pegwright.finding import RefusedError
from pegwright.pattern import Pattern, PatternBuilder, Rows, repeats_of, with_repeats
from pegwright.pattern.repeats import Repeats
from pegwright.workshop import work

WHOLE = {name: make() for name, make in PIECES.items() if not name.startswith("broken/")}
STRIPS = {
    "ebb-line": Repeats(12, 12, 2),  # two colours by turns: a repeat is two links
    "twin-hulls": Repeats(23, 23, 1),
    "riding-lights": Repeats(3, 3, 4),  # two lights of two colours
    "buoy-line": Repeats(5, 5, 4),
    "herring-tail": Repeats(12, None, 0),  # grows away from the loom, as long as one likes
}


@pytest.mark.parametrize("name", STRIPS)
def test_a_strip_holds_with_every_number_of_repeats(name: str) -> None:
    """Each is worked and proved; the bands grow evenly; there and back again is the same piece."""
    pattern = WHOLE[name]
    of = repeats_of(pattern)
    assert of == STRIPS[name]
    bare = msgspec.structs.replace(pattern, stated=None)
    known = {f.code for f in work(pattern).findings} | {"text-count-wrong"}
    counts = []
    for repeats in range(1, of.now + 1 if of.most else of.now + 4):
        other = with_repeats(pattern, repeats)
        made = work(other)
        assert made.holds
        assert {f.code for f in made.findings} <= known
        counts.append(len(made.proof.verdicts))
        if 2 * repeats > of.now:  # the halves of a very short piece cannot be told apart
            assert with_repeats(other, of.now) == bare
    assert len({b - a for a, b in itertools.pairwise(counts)}) == 1


def test_a_full_loom_has_no_room_for_another() -> None:
    """The line says so: the pegs are not there."""
    made = work(with_repeats(WHOLE["ebb-line"], 13))
    assert "peg-unknown" in {f.code for f in made.findings}
    assert not made.holds


@pytest.mark.parametrize("name", ["lobster-pot", "slack-water-mat"])
def test_what_cannot_be_shortened_so_does_not_hold(name: str) -> None:
    """A ring of twelve pegs has no eleven; a mat's rows are repeats within repeats."""
    of = repeats_of(WHOLE[name])
    assert of is not None
    assert not work(with_repeats(WHOLE[name], of.now - 1)).holds


def piece() -> Pattern:
    m = PatternBuilder("Spar", Rows(rows=1, pegs=4)).colour("A", "slate", "#4A5A6A")
    m.place("A", "A1", "A2")
    return m.pattern()


def test_a_piece_without_repeats_has_one_length() -> None:
    assert repeats_of(piece()) is None
    with pytest.raises(RefusedError, match="no piece of 2 repeats"):
        with_repeats(piece(), 2)
    with pytest.raises(RefusedError, match="no piece of 0 repeats"):
        with_repeats(WHOLE["ebb-line"], 0)
