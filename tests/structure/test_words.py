"""The shared words of the link against the same calculus written out letter by letter."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from pegwright.loom import Bight, Drawn, Fastened, Laid, Lifted
from pegwright.structure import Structure, structure_of
from testing import histories
from testing.proof_programs import programs
from tests.proof import naive


def letters(structure: Structure, word: int) -> naive.Word:
    """A word written out."""
    out: naive.Word = []
    for factor in structure.words[word]:
        loop, trail = structure.cores[factor >> 1]
        before: naive.Word = []
        while trail:
            inner, trail = structure.trails[trail]
            before += letters(structure, inner)
        band = structure.owner[loop]
        out += [*before, -band if factor & 1 else band, *naive.inverse(before)]
    return naive.reduced(out)


@settings(max_examples=300, deadline=None)
@given(programs)
def test_shared_words_say_what_the_letters_say(events: list) -> None:
    """Every fastener's word, written out, is that of the naive calculus."""
    structure = structure_of(events)
    found = [naive.cyclic(letters(structure, fastening.word)) for fastening in structure.fastenings]
    assert found == naive.fastener_words(events)


@settings(max_examples=200, deadline=None)
@given(programs)
def test_the_record_says_what_passes_through_each_loop(events: list) -> None:
    """Loops drawn through, lifted over and caught are listed with their events; the others are unused."""
    expected: dict[Bight, list[int]] = {}
    for when, event in enumerate(events):
        if isinstance(event, Laid):
            expected |= {seat.bight: [] for seat in event.seats}
        elif isinstance(event, Drawn):
            for bight in event.through:
                expected[bight].append(when)
        elif isinstance(event, Lifted):
            expected[event.bight] += [when] * bool(event.over)
        elif isinstance(event, Fastened):
            for bight in event.caught:
                expected[bight].append(when)
    structure = structure_of(events)
    assert dict(zip(structure.loops, map(list, structure.passing), strict=True)) == expected
    assert set(structure.unused_loops()) == {bight for bight, through in expected.items() if not through}


@pytest.mark.parametrize("bands", range(2, 9))
def test_words_stay_small_where_letters_double(bands: int) -> None:
    """A closed plain chain of n bands has a word of 3 · 2ⁿ⁻¹ − 2 letters; shared, n words of at most two."""
    structure = structure_of(histories.chain(bands))
    assert len(structure.words) == bands
    assert max(map(len, structure.words)) == 2
    assert len(letters(structure, structure.fastenings[0].word)) == 3 * 2 ** (bands - 1) - 2


@pytest.mark.parametrize(
    ("holders", "twists", "target", "reason"),
    [
        (("a", "b"), (0,), "a", None),
        (("a", "b"), (1,), "a", "half-twist"),
        (("a", "a"), (), None, "wound"),
        (("a", "b"), (0,), "c", "carried-on"),
        (("a", "b", "c"), (0, 0), "a", "carried-on"),
    ],
)
def test_bands_with_a_twist_of_their_own(
    holders: tuple[str, ...], twists: tuple[int, ...], target: str | None, reason: str | None
) -> None:
    """Half-twists, turns round one holder, loops carried on, and folds within a wider band count."""
    loom = histories.Sketch()
    loom.lay(*holders, twists=twists)
    if target:
        loom.draw(Bight(1, 1), target)
    assert structure_of(loom.events).twists.get(1) == reason


def test_a_loop_moved_flat_counts_as_twisted() -> None:
    """A loop put on another holder without being turned over."""
    loom = histories.Sketch()
    loom.lay("a", "b")
    loom.move("b", "c")
    assert structure_of(loom.events).twists == {1: "carried-flat"}


def test_a_history_that_names_what_was_never_laid_is_refused() -> None:
    """The event is named."""
    with pytest.raises(ValueError, match="event 0 names 1a"):
        structure_of([Drawn(Bight(1, 0), "a", "b", ())])
    laid = histories.chain(1, closed=False)
    with pytest.raises(ValueError, match="band 1 is laid twice"):
        structure_of([*laid, *laid])
