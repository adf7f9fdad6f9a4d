"""What a teacher reads of a slip, told by hand: what is done, what comes of it, how it shows."""

from __future__ import annotations

import pytest

from pegwright.lesson import MistakeWriter, Phrasebook
from pegwright.loom import step_numbers
from tests.rehearsal.pieces import outcome, rehearsed


@pytest.fixture(name="teller")
def _teller() -> MistakeWriter:
    history = rehearsed("jetty").history
    return MistakeWriter(Phrasebook("en"), history, step_numbers(history).__getitem__)


def test_a_band_left_out_is_a_band_not_a_move(teller: MistakeWriter) -> None:
    """Step 3 lays the third band, A3 to A4: A3 then has the one loop of the second band, not two."""
    slip = outcome(rehearsed("jetty"), "step-skipped", 3)
    assert teller.slip(slip) == "You leave one band out."
    assert teller.warning(slip) == "Count the bands. It is easy to leave one out."
    assert teller.sign(slip) == "You see it at once: 1 loop on peg A3; there should be 2."


def test_a_loop_passed_over_a_last_band_and_an_end_left_open(teller: MistakeWriter) -> None:
    told = rehearsed("jetty")
    assert (
        teller.slip(outcome(told, "step-skipped", 8)) == "You pass one loop over, and it stays where it is."
    )
    assert teller.slip(outcome(told, "step-skipped", 11)) == "You leave the last band out."
    shut = outcome(told, "step-skipped", 12)
    assert teller.slip(shut) == "You take it off the loom before it is closed."
    assert teller.warning(shut) == "Close it before you take it off the loom."
    assert teller.end(shut) == "In the end the piece comes apart."


def test_another_peg_of_a_lift_has_its_turn() -> None:
    """In a fish-tail the lifts change sides; to lift at the same peg twice is not to put a loop anywhere."""
    told = rehearsed("herring-tail")
    teller = MistakeWriter(Phrasebook("en"), told.history, step_numbers(told.history).__getitem__)
    slip = next(o for o in told.outcomes if o.slip.kind == "wrong-peg" and o.step == 56)
    assert teller.slip(slip) == "You do it at peg A1, not at peg B1."
    assert teller.warning(slip) == "Check which peg is next."


def test_many_bands_are_counted_few_are_named() -> None:
    told = rehearsed("twin-hulls")
    teller = MistakeWriter(Phrasebook("en"), told.history, step_numbers(told.history).__getitem__)
    looks = [o for o in told.outcomes if o.result == "looks-different"]
    few = [o for o in looks if len(o.differs) <= 4]
    many = [o for o in looks if len(o.differs) > 4]
    assert few
    assert many
    total = told.history.final.bands
    for one in few:
        named = [f"band {band} (" if band <= total else "one band too many" for band in one.differs]
        assert all(name in teller.end(one) for name in named)
    assert all(teller.end(one).endswith(f"{len(one.differs)} bands lie in another way.") for one in many)
