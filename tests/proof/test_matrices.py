"""Long words judged by random matrices, a third way beside letters and certificates."""

from __future__ import annotations

from hypothesis import given, settings

from pegwright.proof import reduce_words
from pegwright.structure import structure_of
from testing import histories
from testing.proof_programs import programs
from tests.proof import naive
from tests.proof.facts import proved
from tests.proof.matrices import trivial


@settings(max_examples=150, deadline=None)
@given(programs)
def test_matrices_tell_trivial_words(events: list) -> None:
    """A fastener's word is trivial when its letters all cancel, and only then."""
    words = reduce_words(structure_of(events), flat=True)
    assert trivial(words) == [not word for word in naive.fastener_words(events)]


def test_a_chain_far_too_long_to_write_out_is_brunnian() -> None:
    """The word of 60 bands is not trivial, and without any one band it is."""
    structure = structure_of(histories.chain(60))
    assert trivial(reduce_words(structure)) == [False]
    for band in structure.bands:
        assert trivial(reduce_words(structure, {band})) == [True]
    assert len(proved(histories.chain(60)).held) == 60


def test_a_twin_chain_is_not() -> None:
    """No single band's loss makes the word trivial; that of a pair of twins does."""
    structure = structure_of(histories.chain(30, strands=2))
    for band in structure.bands:
        assert trivial(reduce_words(structure, {band})) == [False]
    for band in structure.bands[::2]:
        assert trivial(reduce_words(structure, {band, band + 1})) == [True]
