"""What a repeat adds, against pieces that were brought to rest themselves."""

from __future__ import annotations

import msgspec
import pytest

from pegwright.pattern import with_repeats
from pegwright.workshop import bring_to_rest, measure_lengths, starter_pattern, work


def test_a_repeat_told_is_a_repeat_made() -> None:
    """The length told for a number of repeats that was not looked at, against the solver's."""
    made = work(starter_pattern("Skiff", pegs=13))
    found = measure_lengths(made)
    assert found is not None
    assert (found.now, found.least, found.most, found.bands) == (11, 1, 11, 1)
    six = bring_to_rest(work(with_repeats(made.pattern, 6)))
    told_mm = bring_to_rest(made).length_mm - 5 * found.one_mm
    assert six.length_mm == pytest.approx(told_mm, rel=0.03)


def test_a_piece_that_falls_apart_has_no_other_lengths() -> None:
    """Nothing is offered for a piece that does not hold itself."""
    pattern = starter_pattern("Skiff", pegs=6)
    open_ended = msgspec.structs.replace(pattern, steps=pattern.steps[:-1])
    assert measure_lengths(work(open_ended)) is None
