"""The teacher's table: read, kept, and sharpened by what was seen."""

from __future__ import annotations

import jsonschema
import msgspec
import pytest
from hypothesis import given, strategies as st

from pegwright.rehearsal import (
    DEFAULT_WEIGHTS,
    SLIP_KINDS,
    ClassTally,
    SlipWeights,
    compare_orders,
    find_slips,
    read_weights,
    rehearse,
    slip_chances,
    weights_schema,
    write_weights,
)
from tests.rehearsal.pieces import history_of, jetty, rehearsed

weights = st.builds(
    SlipWeights,
    classes=st.dictionaries(
        st.sampled_from(["often", "seldom", "in June"]), st.floats(0.0001, 0.9), max_size=3
    ),
    slips=st.dictionaries(
        st.sampled_from(sorted(SLIP_KINDS)), st.sampled_from(["often", "rarely"]), max_size=5
    ),
    worth=st.floats(1, 1000),
    seen=st.lists(
        st.builds(
            ClassTally,
            slip=st.sampled_from(sorted(SLIP_KINDS)),
            made=st.integers(0, 50),
            makers=st.integers(1, 90),
        ),
        max_size=4,
    ).map(tuple),
)


@given(weights)
def test_reading_gives_back_what_was_written(table: SlipWeights) -> None:
    data = write_weights(table)
    assert read_weights(data) == (table, ())
    jsonschema.validate(msgspec.json.decode(data), weights_schema())


@given(weights)
def test_chances_are_chances(table: SlipWeights) -> None:
    slips = find_slips(history_of(jetty()))
    for chance in slip_chances(table, slips).values():
        assert 0 < chance < 1


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (b'{"rehearsal": 1, "classes": {"often": 3}}', "not-a-slip-table"),
        (b'{"rehearsal": 1, "colour": "A"}', "not-a-slip-table"),
        (b'{"rehearsal": 1, "seen": [{"slip": "fell-asleep", "made": 1, "makers": 8}]}', "slip-unknown"),
        (b'{"rehearsal": 1, "slips": {"loop-above": "hourly"}}', "slip-class-unknown"),
        (b'{"rehearsal": 1, "slips": {"hum": "often"}}', "slip-unknown"),
        (b"[", "not-json"),
        (b"\xff", "not-text"),
    ],
)
def test_what_is_wrong_is_found(data: bytes, code: str) -> None:
    table, findings = read_weights(data)
    assert table is None
    assert [f.code for f in findings] == [code]


def test_every_kind_has_a_class() -> None:
    assert all(0 < DEFAULT_WEIGHTS.prior(kind) < 0.1 for kind in SLIP_KINDS)


def test_what_was_seen_is_weighed_by_hand() -> None:
    """At three steps of the jetty the hook can be too shallow (the first of four goes through one loop).

    Twelve makers made the slip 9 times in 36 chances; 200 chances at 0.03 are worth 6 more:
    (6 + 9) / (200 + 36).
    """
    slips = find_slips(history_of(jetty()))
    steps = {slip.at for slip in slips if slip.kind == "too-shallow"}
    assert len(steps) == 3
    table = SlipWeights(seen=(ClassTally(slip="too-shallow", made=9, makers=12),))
    sharpened = slip_chances(table, slips)
    for slip in slips:
        if slip.kind == "too-shallow":
            assert sharpened[slip] == pytest.approx(15 / 236)
        else:
            assert sharpened[slip] == slip_chances(DEFAULT_WEIGHTS, slips)[slip]


def test_forms_of_a_slip_share_its_chance() -> None:
    slips = find_slips(history_of(jetty()))
    given_to = slip_chances(DEFAULT_WEIGHTS, slips)
    for at in {slip.at for slip in slips}:
        some = [given_to[slip] for slip in slips if slip.at == at and slip.kind == "wrong-peg"]
        assert not some or sum(some) == pytest.approx(DEFAULT_WEIGHTS.prior("wrong-peg"))


def test_weights_move_the_ranking() -> None:
    pattern = jetty()
    history = history_of(pattern)
    usual = rehearsed("jetty")
    table = SlipWeights(classes={"always": 0.9}, slips={"wrong-colour": "always", "too-shallow": "rarely"})
    other = rehearse(pattern, history, weights=table)
    # Which of the outcomes the whole proof looks at again depends on the ranking; the slips do not.
    assert {repr(one.slip) for one in other.outcomes} == {repr(one.slip) for one in usual.outcomes}
    assert other.risky_steps != usual.risky_steps
    assert compare_orders(usual, other).better == 1
    assert compare_orders(usual, other).failures[1] < compare_orders(usual, other).failures[0]
